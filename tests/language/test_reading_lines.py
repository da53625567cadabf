"""Lengths in every written form, and what is said of lines that cannot be read."""

from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from lark import Lark
from lark.exceptions import UnexpectedInput

from tests.conftest import EXAMPLES
from tests.every import every
from tests.jobs import BASE, walls
from trimlang.compiler import Result, check_job
from trimlang.diagnostics.source import Source
from trimlang.language.facts import AtEnd, Unread
from trimlang.language.grammar import grammar_text, parser
from trimlang.language.parse import parse
from trimlang.language.tree import RunLine

Check = Callable[[str], Result]
INCH_29_1_8 = Fraction(233, 8)
MM = Fraction(5, 127)


def length_of(written: str, settings: str = "") -> Fraction:
    result = check_job(walls(f"N: {written}, left=butt, right=butt", settings=settings))
    assert not [one for one in result.diagnostics if one.code != "T112"], result.diagnostics
    return result.job.rooms[0].runs[0].length


@every(
    "written",
    [
        "29 1/8 in",
        "29-1/8 in",
        '29-1/8"',
        '29 1/8"',
        "29 1/8 inches",
        "29 1/8 inch",
        "29⅛ in",
        "29 ⅛ in",
        '29⅛"',
        "29.125 in",
        "29.125",
        "29 1/8",
        "2' 5 1/8\"",
        "2'5 1/8\"",
        "2'-5 1/8\"",
        "2′ 5 1/8″",
        "2’ 5 1/8”",
        "2 ft 5 1/8 in",
        "2 ft 5 1/8",
        "2ft 5⅛in",
        "2 feet 5 1/8 in",
        "29 1⁄8 in",
        "29\u00a01/8\u202fin",
        "29 2/16 IN",
    ],
)
def test_one_length_in_many_forms(written: str) -> None:
    assert length_of(written) == INCH_29_1_8


@every(
    "written, value",
    [
        ("740 mm", 740 * MM),
        ("7.4 m", 7400 * MM),
        ("74 cm", 740 * MM),
        ("12.5 mm", Fraction(25, 2) * MM),
        ("1/2 in", Fraction(1, 2)),
        ("⅞ in", Fraction(7, 8)),
        ("⅓ in", Fraction(1, 3)),
        (".5 in", Fraction(1, 2)),
        ("11 ft", Fraction(132)),
        ("1.5 ft", Fraction(18)),
        ("2 yd", Fraction(72)),
    ],
)
def test_other_lengths(written: str, value: Fraction) -> None:
    assert length_of(written) == value


def test_a_bare_number_is_in_the_files_unit() -> None:
    assert length_of("740", "unit mm") == 740 * MM
    assert length_of("740 in", "unit mm") == 740


@given(st.integers(1, 1199), st.integers(1, 15))
def test_what_the_tape_shows_is_what_is_read(whole: int, sixteenths: int) -> None:
    assert length_of(f"{whole} {sixteenths}/16 in") == whole + Fraction(sixteenths, 16)


def test_case_and_blanks_do_not_matter(check: Check) -> None:
    quiet = check(walls('N: 40 in, left=in-corner(91 deg), right=butt, note "A"')).job
    loud = check(walls('  N :40 IN ,LEFT = In-Corner( 91° ) ,Right=BUTT,NOTE "A"  # x')).job
    assert quiet.rooms[0].runs[0].length == loud.rooms[0].runs[0].length
    assert quiet.rooms[0].runs[0].left.corner == loud.rooms[0].runs[0].left.corner == 91
    assert loud.rooms[0].runs[0].note == "A"


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_line_ends_and_byte_order_marks(end: str, check: Check) -> None:
    text = "\ufeff" + walls("N: 40 in, left=butt, right=butt").replace("\n", end)
    assert check(text).ok


@every(
    "line, code, word, remedy",
    [
        ('rom "Hall"', "T100", "rom", "“room”"),
        ("opning 32 in", "T100", "opning", "“opening”"),
        ("N, left=butt, right=butt", "T101", ",", "behind its name"),
        ("splise 40 in, left=butt, right=butt", "T100", "splise", "“splice”"),
        ("N: 40 in, left=incorner, right=butt", "T101", "incorner", "“in-corner”"),
        ("N: 40 in, lft=butt, right=butt", "T101", "lft", "“left”"),
        ("N: 40 in, left butt, right=butt", "T101", "left butt", "left=butt"),
        ("N: forty in, left=butt, right=butt", "T101", "forty", "a number"),
        ("N: 40 in, left=butt right=butt", "T101", "right", "a comma"),
        ("N: 40 in left=butt, right=butt", "T101", "left", "Put a comma before “left”."),
        ("N: 40 in, left=butt, right=in-croner", "T101", "in-croner", "“in-corner”"),
        ("N:", "T103", "", "one line"),
        ('N: 40 in, left=butt, right=butt, note "x', "T104", "", "second quotation mark"),
        ("N: 40 in, left=butt, right=butt;", "T101", ";", "leave it out"),
        ("\x00", "T101", "\x00", "This sign cannot be seen: take it out."),
    ],
)
def test_mistakes(line: str, code: str, word: str, remedy: str, check: Check) -> None:
    text = walls(line + "\nZ: 40 in, left=butt, right=butt")
    found = [one for one in check(text).diagnostics if one.code == code]
    assert len(found) == 1, check(text).diagnostics
    span = found[0].span
    assert span.line == 5
    if word:
        assert line[span.column - 1 : span.end - 1] == word
    assert remedy in found[0].remedy


def test_every_mistake_of_a_line_and_of_a_file_is_reported(check: Check) -> None:
    text = walls('N: 40 in, left=incorner, rihgt=butt, nte "x"\nE: 50 in, left=but, right=butt')
    places = [(one.code, one.span.line) for one in check(text).diagnostics]
    assert places.count(("T101", 5)) == 3
    assert ("T101", 6) in places


def test_a_line_with_one_slip_keeps_the_rest() -> None:
    statements, findings = parse(Source("x", "N: 40 in, spliec=1, left=butt, right=butt"))
    assert len(findings) == 1
    (run,) = statements
    assert isinstance(run, RunLine)
    assert [type(fact) for fact in run.facts] == [AtEnd, AtEnd, Unread]


def _read(by: Lark, line: str) -> object:
    """Return a line's tree, or where it stops and what could have stood there."""
    try:
        return by.parse(line)
    except UnexpectedInput as stop:
        may = getattr(stop, "allowed", None) or getattr(stop, "expected", None)
        return type(stop), stop.pos_in_stream, may


def test_lines_are_read_as_lark_reads_them_with_its_own_lexer() -> None:
    """Also those that cannot be read: each line is tried with its halves changed over, too."""
    plain = Lark(grammar_text(), parser="lalr", start="line", maybe_placeholders=False)
    for path in sorted(EXAMPLES.glob("*.trim")):
        for line in path.read_text(encoding="utf-8").splitlines():
            words = line.split(" ")
            middle = len(words) // 2
            for text in (line, " ".join(words[middle:] + words[:middle])):
                assert _read(parser(), text) == _read(plain, text), text


@given(st.text(max_size=80))
def test_any_line_gives_statements_or_findings(line: str) -> None:
    for finding in check_job(walls(line)).diagnostics:
        assert finding.message


@given(
    st.lists(
        st.sampled_from(
            'room trim stock "a" N : , = left right in-corner 29 1/8 in ft ( ) 91 deg at 17.40'
            " pack of saw kerf - % # ⅛ ' \" note opening bare entrance round up".split()
        ),
        max_size=14,
    )
)
def test_any_line_of_the_languages_words_gives_statements_or_findings(words: list[str]) -> None:
    for glue in (" ", ""):
        for finding in check_job(walls(glue.join(words))).diagnostics:
            assert finding.message


def test_only_a_length_is_to_be_on_a_tape() -> None:
    walls = (
        "N: 40 5/12 in, left=butt, right=out-corner(90 1/10 deg)\nE: 9 in, left=out-corner(90 1/10)"
    )
    told = check_job(
        f"{BASE}\ncorners: doubt 1/10 deg\nspare 10 1/3 %\n"
        f'room "A", trim base, open walk\n{walls}\n'
    )
    found = [one.span.line for one in told.diagnostics if one.code == "T112"]
    assert found == [5]


def test_feet_are_not_guessed_behind_inches() -> None:
    told = check_job(walls("N: 12 3/10 in, left=butt, right=butt"))
    (found,) = [one for one in told.diagnostics if one.code == "T112"]
    assert found.remedy == "The nearest sixteenth is 5/16 in. Look at the tape once more."
