"""Small mistakes that people make get one message each, and an exact remedy."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests.every import every
from tests.jobs import TRIM, walls
from trimlang.compiler import check_job, compile_job
from trimlang.diagnostics import Diagnostic
from trimlang.language.parse import read_line
from trimlang.language.vocabulary import line_words, part_words

RUN = "  N: 40 in, left=butt, right=butt\n"


def findings(text: str) -> list[Diagnostic]:
    return list(compile_job(text).diagnostics)


def codes(text: str) -> list[str]:
    return [one.code for one in findings(text)]


@pytest.mark.parametrize(
    "line",
    ["N:, left=butt, right=butt", "N: left=butt, right=butt", "N: 40 in, left=, right=butt"],
)
def test_what_was_forgotten_is_said_once(line: str) -> None:
    assert codes(walls(line)) == ["T101"]


@pytest.mark.parametrize(
    ("lines", "told"),
    [
        (f'room "Hall", open walk\n{RUN}{RUN.replace("N:", "E:")}', ["T217"]),
        ("trim crown: 5/8 in thick, 3 5/8 in wide, spring 38\n" + walls(RUN), ["T103"]),
        ("kerf 1/8\n" + walls(RUN), ["T100"]),
    ],
)
def test_what_a_room_or_a_line_lacks_is_said_once(lines: str, told: list[str]) -> None:
    text = lines if "trim base" in lines else f"{TRIM}{lines}"
    assert [one.code for one in check_job(text).diagnostics if one.code != "T214"] == told


@pytest.mark.parametrize(
    ("written", "inches"),
    [
        ("9ft6", 114), ("9 ft. 3 in.", 111), ("9 in.", 9), ("29–1/8 in", Fraction(233, 8)),
        ("2'–5 1/8\"", Fraction(233, 8)), ("29‑⅛ in", Fraction(233, 8)), ("2 yd", 72),
    ],
)  # fmt: skip
def test_lengths_as_people_type_them(written: str, inches: Fraction) -> None:
    result = compile_job(walls(f"N: {written}, left=butt, right=butt"))
    assert result.job.rooms[0].runs[0].length == inches
    assert not result.diagnostics


@every(
    "line, remedy",
    [
        ('N: 3"1/8, left=butt, right=butt', "write 3 1/8 in"),
        ("N: 40 in, left=butt, right=in-corner 90 deg", "write in-corner(90 deg)"),
        ("N: 40 in, left=butt, right=out-corner 91.5°", "write out-corner(91.5 deg)"),
        ("N: 40 in, left=in–corner, right=butt", "“in-corner”"),
        ("N: 40 in, left=cope, right=butt", "Did you mean “in-corner cope”?"),
        ("N: 40 in, left=butt rigth=butt", "Put a comma here, and write “right”."),
        ("N: 40 in; left=butt, right=butt", "Write a comma instead of “;”."),
        ("N: 40 in, left=in-corner[91 deg), right=butt", "Write “(” instead of “[”."),
        ("40 in, left=butt, right=butt", "begins with its name and a colon: N: 29 1/8 in"),
        ("29 1/8 in, left=butt, right=butt", "begins with its name and a colon: N: 29 1/8 in"),
        ("4' 3\", left=butt, right=butt", "begins with its name and a colon: N: 29 1/8 in"),
        ("N: 9 7 in, left=butt, right=butt", "write 9 ft 7 in."),
        ("N: 2 740, left=butt, right=butt", "write 2740."),
        ("4 40 in, left=butt, right=butt", "has a colon: write 4:."),
    ],
)
def test_an_exact_remedy(line: str, remedy: str) -> None:
    (one,) = findings(walls(line))
    assert one.code == "T101"
    assert remedy in one.remedy


@every(
    "written, better",
    [
        ("134,375 in", "134.375"), ("1,2 m", "1.2"), ("1,234 m", "1.234"), ("40,5", "40.5"),
        ("1,200", "1200"), ("1,200 mm", "1200"), ("1,100 in", "1100"), ('29,125"', "29.125"),
    ],
)  # fmt: skip
def test_a_comma_in_a_number_is_what_the_wall_can_be(written: str, better: str) -> None:
    (one,) = findings(walls(f"N: {written}, left=butt, right=butt"))
    assert one.code == "T114"
    assert one.remedy.startswith(f"Write {better};")


@pytest.mark.parametrize(
    ("line", "wanted"),
    [
        ("N: 40 in; left=butt, right=butt", "expected a comma or the end of the line"),
        ("N: 40 in, left=in-corner[91 deg), right=butt", "expected “cope”, a comma, “(” or the"),
    ],
)
def test_a_sign_is_answered_with_what_the_line_could_go_on_with(line: str, wanted: str) -> None:
    assert wanted in findings(walls(line))[0].message


def test_an_end_without_its_side() -> None:
    found = findings(walls("N: 40 in, butt, left=butt, right=butt"))
    assert [one.code for one in found] == ["T210"]
    assert found[0].remedy == "An end says its side: left=butt or right=butt."


def test_a_skipped_wall_of_a_metric_room_is_guessed_in_round_millimetres() -> None:
    corners = "left=in-corner, right=in-corner"
    room = (
        f'room "R", trim base\n  N: 3000, {corners}\n  E: 2000, {corners}\n  S: 3000, {corners}\n'
    )
    (one,) = findings(f"unit mm\n{TRIM}{room}")
    assert "about 2 m long" in one.remedy


def test_two_prices_for_one_stick() -> None:
    stock = "stock base: 144 in at 18\n"
    assert codes(walls(RUN, settings=stock)) == ["T248"]
    assert codes(walls(RUN, settings=stock.replace("18", "17.40"))) == []
    limited = stock.replace("18", "9.00 at most 2")
    assert codes(walls(RUN, settings=limited)) == []


@pytest.mark.parametrize(
    ("setting", "code"),
    [
        ("round to 7 in", "T249"), ("round to 13 mm", "T249"), ("round to 1/2 in", None),
        ("saw: kerf 30 in", "T250"), ("saw: kerf 13 mm", "T250"), ("saw: kerf 1/2 in", None),
    ],
)  # fmt: skip
def test_absurd_steps_and_kerfs(setting: str, code: str | None) -> None:
    assert codes(walls(RUN, settings=setting)) == ([code] if code else [])


def test_a_trim_of_no_thickness() -> None:
    (one,) = findings(walls(RUN).replace("9/16 in thick", "0 in thick"))
    assert one.message == "the thickness of trim “base” cannot be zero or less"


def test_one_wrong_corner_is_one_finding() -> None:
    corners = "left=in-corner, right=in-corner"
    rows = [
        f"  {name}: {feet} ft, {corners}\n" for name, feet in zip("NESW", (10, 8) * 2, strict=True)
    ]
    rows[1] = rows[1].replace("right=in", "right=out")
    (one,) = findings(TRIM + 'room "R", trim base\n' + "".join(rows))
    assert (one.code, one.severity.value) == ("T312", "error")
    assert one.span.line == 5
    assert one.message.endswith("closes if the right end of run E is wrong")


def test_a_misspelt_word_in_a_rooms_heading_is_said_once() -> None:
    heading = 'room "B", trm base, open walk\n'
    (one,) = findings(TRIM + heading + RUN + RUN.replace("N:", "E:"))
    assert one.remedy == "Did you mean “trim”?"


def test_stock_that_runs_out_says_which_and_how_much() -> None:
    text = walls("\n".join(f"  {n}: 11 ft, left=butt, right=butt" for n in range(3)))
    text = text.replace("12 ft at 17.40, 16 ft at 24.10", "12 ft at 17.40 at most 2")
    (one,) = findings(text)
    assert one.code == "T501"
    assert one.span.line == 2
    assert "2 of 12 ft" in one.message
    assert one.message.endswith("1 piece of 11 ft finds no stick")


def test_two_feet_are_a_slip_too() -> None:
    corners = "left=in-corner, right=in-corner"
    rows = zip("NESW", (10, 8, 12, 8), strict=True)
    lines = "".join(f"  {name}: {feet} ft, {corners}\n" for name, feet in rows)
    (one,) = findings(TRIM + 'room "R", trim base\n' + lines)
    assert "run S read two feet too long: 10 ft" in one.remedy


@every("word", line_words())
def test_a_line_word_that_lacks_its_last_letter_is_known(word: str) -> None:
    (found,) = (one for one in check_job(f"{word[:-1]} x\n").diagnostics if one.code == "T100")
    assert found.remedy == f"Did you mean “{word}”?"


@every("word", [word for word in part_words() if " " not in word])
def test_a_comma_is_missed_before_every_part(word: str) -> None:
    text = walls(f"N: 40 in, left=butt, right=butt {word}")
    (found,) = (one for one in check_job(text).diagnostics if one.code == "T101")
    assert found.remedy == f"Put a comma before “{word}”."


@pytest.mark.parametrize("list_of_trims", ["trim bse, base", "trim base, bse, base"])
def test_a_misspelt_trim_is_no_list_without_its_word(list_of_trims: str) -> None:
    text = f'{TRIM}room "Study", {list_of_trims}, open walk\n{RUN}'
    assert codes(text) == ["T210"]


@pytest.mark.parametrize(
    ("stick", "run", "too_short"),
    [
        (45, "N: 40 in, left=butt, right=butt, splice", "the wall is too short"),
        (45, "N: 40 in, left=butt, right=butt, splice, first stud 2 in", "the wall is too short"),
        (45, "N: 46 in, left=butt, right=butt", "the wall is longer than a stick of base"),
        (20, "N: 80 in, left=butt, right=butt", "the sticks of base are too short"),
    ],
)
def test_what_is_too_short_to_splice_is_told(stick: int, run: str, too_short: str) -> None:
    (found,) = findings(walls(run).replace("12 ft at 17.40, 16 ft", f"{stick} in"))
    assert found.code == "T403"
    assert too_short in found.message


@pytest.mark.parametrize(
    "line",
    ["stock base: 12 at 17.40", "stock base: pack of 10 16 at 158", "bought 2 base 12 at 17"],
)
def test_a_stick_whose_feet_were_forgotten(line: str) -> None:
    text = f"{line}\n{walls(RUN)}" if line.startswith("stock") else walls(f"{RUN}{line}\n")
    (one,) = findings(text)
    assert one.code == "T116"
    number = "16" if "16" in line else "12"
    assert one.remedy.startswith(f"If feet were meant, write {number} ft;")
    for unit in (" ft", " in"):
        mended = text.replace(f"{number} at", f"{number}{unit} at")
        assert "T116" not in codes(mended)


def test_millimetres_in_a_job_in_inches() -> None:
    (one,) = findings(walls("N: 2740, left=butt, right=butt"))
    assert (one.code, one.span.column, one.span.end) == ("T203", 4, 8)
    assert one.remedy.startswith("If millimetres were meant, write 2740 mm. “unit mm” above")
    (metres,) = findings(walls("N: 2740 m, left=butt, right=butt", settings="unit mm"))
    assert metres.remedy.startswith("If millimetres were meant, write 2740 mm. Nothing")
    (feet,) = findings(walls("N: 129 ft, left=butt, right=butt"))
    assert feet.remedy == "If inches were meant, write 129 in. Nothing over 100 ft is taken."


@pytest.mark.parametrize(
    ("end", "code"),
    [("left=cope", "T101"), ("left=in-corner, door", "T101"), ("left=in-korner", "T101")],
)
def test_an_opening_that_could_not_be_read_whole_is_said_once(end: str, code: str) -> None:
    runs = "N: 40 in, left=butt, right=in-corner\n"
    text = walls(f"{runs}  opening 30 in, {end}\n  E: 9 in, left=butt, right=butt")
    assert codes(text) == [code]


@pytest.mark.parametrize("more", ["", ", stops rail", ", N 10 ft"])
def test_a_misspelt_word_behind_an_opening_is_no_wall_without_a_length(more: str) -> None:
    _, findings = read_line(f"opening 30 in, enterance{more}", "x", 1)
    assert [(one.code, one.remedy) for one in findings] == [("T101", "Did you mean “entrance”?")]


def test_a_wall_of_metres_in_a_metric_job_is_asked_about() -> None:
    text = walls("  N: 3.25, left=butt, right=in-corner\n  E: 900, left=in-corner, right=butt")
    (one,) = findings("unit mm\n" + text)
    assert (one.code, one.remedy.partition(". ")[0]) == (
        "T402",
        "If metres were meant, write 3.25 m",
    )
    (inches,) = findings(walls("  N: 1, left=in-corner, right=in-corner"))
    assert inches.remedy.startswith("Measure it again")


@pytest.mark.parametrize(
    ("stock", "better"),
    [("2,4 m at 5.90", ["2.4 m"]), ("2,4 m, 3,6 m at 2.45 a metre", ["2.4 m", "3.6 m"])],
)
def test_a_decimal_comma_in_a_stick_s_length_is_no_second_stick(
    stock: str, better: list[str]
) -> None:
    found = findings(f"unit mm\n{walls(RUN, settings=f'stock base: {stock}')}")
    told = [one for one in found if one.code == "T114"]
    assert [one.remedy.partition(";")[0] for one in told] == [f"Write {one}" for one in better]
    assert "T254" not in {one.code for one in found}
