"""A mend does away with its finding, and with nothing else."""

from __future__ import annotations

import pickle
from collections.abc import Sequence

import pytest
from syrupy.assertion import SnapshotAssertion

from tests.every import every
from tests.jobs import TRIM, walls
from trimlang.compiler import check_job
from trimlang.diagnostics.code_pages import PAGES
from trimlang.diagnostics.mend import Edit, Mend
from trimlang.diagnostics.mending import mends
from trimlang.diagnostics.severity import Severity
from trimlang.letters import STEERING

WITH_EXAMPLE = sorted(code for code, page in PAGES.items() if page.example and code != "T106")


def after_edits(text: str, edits: Sequence[Edit]) -> str:
    """Return a text after edits, made one after the other as they come."""
    lines = text.split("\n")
    for edit in edits:
        line = lines[edit.span.line - 1]
        lines[edit.span.line - 1] = (
            line[: edit.span.column - 1] + edit.text + line[edit.span.end - 1 :]
        )
    return "\n".join(lines)


def _mends(text: str, code: str) -> list[tuple[Mend, str]]:
    found = next(one for one in check_job(text).diagnostics if one.code == code)
    lines = text.split("\n")
    return [
        (mend, after_edits(text, mend.edits))
        for mend in mends(found, lines[found.span.line - 1], lines)
    ]


@every("code", WITH_EXAMPLE)
def test_each_mend_of_a_page_s_example_mends_it(code: str) -> None:
    text = PAGES[code].example
    if code not in {one.code for one in check_job(text).diagnostics}:
        return  # the plan brings it up, not the file's text
    for number, (mend, after) in enumerate(_mends(text, code)):
        # of two edits at one place an editor need not write the one first that is meant to be
        assert len({edit.span for edit in mend.edits}) == len(mend.edits)
        left = {one.code for one in check_job(after).diagnostics}
        # a name may be written so in several lines, and each of them is mended in the same way
        for _ in range(4):
            if code in left and len(again := _mends(after, code)) > number:
                after = again[number][1]
                left = {one.code for one in check_job(after).diagnostics}
        assert code not in left, (mend, after)
        # a line of the file as it was meant: it can be read, and nothing in it is unknown
        assert not left & {"T100", "T101", "T103", "T123"}, (mend, after)


WITHOUT = {
    "T315": "the editor turns the walls round, or their names: tests/editor/test_walls.py",
    "T600": "nothing in a file of another kind is a job, so there is no line to mend",
    "T712": "the editor plans the job for it: tests/editor/test_log_in_full.py",
}
"""The findings of a file's text that are not mended from its text alone, and why."""


def test_every_finding_has_a_mend_or_a_reason_why_it_has_none() -> None:
    unmended = [
        code
        for code in WITH_EXAMPLE
        if code in {one.code for one in check_job(PAGES[code].example).diagnostics}
        and not _mends(PAGES[code].example, code)
    ]
    assert unmended == sorted(WITHOUT)


@pytest.mark.parametrize(
    ("settings", "after"),
    [
        ("", "saw: reaches 60 deg\nroom"),
        ("saw: kerf 3/32 in  # new blade\n", "saw: kerf 3/32 in, reaches 60 deg  # new blade\n"),
        ("saw: reaches 47 deg, kerf 3/32 in\n", "saw: reaches 60 deg, kerf 3/32 in\n"),
    ],
)
def test_a_setting_goes_where_its_topic_is_said(settings: str, after: str) -> None:
    text = walls("  N: 40 in, left=in-corner(60 deg), right=butt", settings=settings)
    (one,) = _mends(text.replace("\n\n", "\n"), "T404")
    assert after in one[1]
    assert "T404" not in {found.code for found in check_job(one[1]).diagnostics}


@every(
    "end, ways",
    [
        ("taper(55 deg)", ("right=taper(45 deg)", "reaches 60 deg")),
        # what a saw read is told of the corner that the file says, inside or outside
        ("out-corner(45 deg)", ("right=out-corner(mitre 45 deg)", "reaches 70 deg")),
        ("in-corner(46 deg)", ("right=in-corner(mitre 46 deg)", "reaches 70 deg")),
        ("in-corner(60 deg)", ("reaches 60 deg",)),
        # no saw swings to 78 deg, so none is asked for
        ("level, rising right 12 deg", ()),
    ],
)
def test_what_a_saw_cannot_reach_is_mended_as_its_end_is(end: str, ways: tuple[str, ...]) -> None:
    next_wall = "\n  E: 40 in, right=butt" if "corner" in end else ""
    made = _mends(walls(f"  N: 40 in, left=butt, right={end}{next_wall}"), "T404")
    assert len(made) == len(ways)
    for (_, after), way in zip(made, ways, strict=True):
        assert way in after
        assert not {one.code for one in check_job(after).diagnostics} & {"T404", "T101"}


def test_every_way_of_a_remedy_is_offered() -> None:
    def words(code: str) -> list[str]:
        return [mend.words for mend, _ in _mends(PAGES[code].example, code)]

    assert words("T303") == ["Keep the angle of run N", "Keep the angle of run E"]
    assert words("T451") == ["Turn the corners level on the walls that climb"]
    assert words("T450") == ["Add no base", "Say that base is flexible"]
    assert words("T411") == ["Give both walls crown", "Give both walls cove", "End each in a butt"]
    assert words("T254") == ["Delete this stick", "Add at 11.60, to be asked"]
    assert words("T401") == ["Leave out “no splice”", "List base of 16 ft at 23.20, to be asked"]
    assert words("T243") == ["Write “butt”", "Add rising right 36 deg, to be measured"]
    assert words("T320")[-1] == "Mend this: the unwritten in-corner between run S and run W"
    assert words("T262") == ["Add spring 38 deg", "Add spring 45 deg"]
    assert words("T487") == [f"Add rail right={end}" for end in ("cope", "mitre", "butt")]
    assert words("T252")[-2:] == ["Say “ends in-corner” of the room", "Begin E with in-corner"]
    assert words("T457")[-1] == "Leave out “trim skirt” at N2"
    assert words("T326")[-1] == "Take E as 50 11/16 in, up to the wall"
    assert words("T310") == [
        "Mend this: run N read a foot too long: 11 ft instead",
        "Mend this: run S read a foot too short: 12 ft instead",
    ]


NOT_WRITTEN = {
    "T224": ("Add its walls", "only a tape tells them"),
    "T288": ("a smaller margin or another width", "which of them is a choice of looks"),
    "T298": ("two runs", "only a tape tells where one ends"),
    "T313": ("or measure it", "only a tape tells the corner"),
    "T314": ("diagonal N-E of walls", "only the surveyor knows which corner the tape went to"),
    "T319": ("Measure between them", "only a tape tells it"),
    "T405": ("between its marks", "it is set at the saw and not written"),
    "T407": ("set both to one level line", "it is done at the wall"),
    "T433": ("Take a smaller block", "its size is the yard's"),
    "T440": ("on the runs beside", "how many go there is a choice of looks"),
    "T450": ("or a thinner one", "which trim that is, is the yard's"),
    "T452": ("larger spring angle", "which crown that is, is the yard's"),
    "T453": ("smaller crown", "which crown that is, is the yard's"),
    "T470": ("add the lengths", "the yard's list tells them"),
    "T477": ("Shape a block", "it is done at the bench"),
    "T723": ("that curves out", "only a tape tells its radius and its length"),
    "T725": ("write the angle", "only the stair tells it"),
    "T482": ("Clamp the piece", "it is done at the saw"),
}
"""What a remedy names besides what is offered, and why a file cannot say it."""


@every("code, words", [(code, words) for code, (words, _) in NOT_WRITTEN.items()])
def test_what_is_not_offered_is_named_in_a_remedy_and_no_line_can_say_it(
    code: str, words: str
) -> None:
    found = [one for one in check_job(PAGES[code].example).diagnostics if one.code == code]
    assert words in found[0].remedy


def test_what_is_offered_for_each_code(snapshot: SnapshotAssertion) -> None:
    assert {
        code: [mend.words for mend, _ in _mends(PAGES[code].example, code)]
        for code in WITH_EXAMPLE
        if code in {one.code for one in check_job(PAGES[code].example).diagnostics}
    } == snapshot


@pytest.mark.parametrize(
    ("lines", "mended"),
    [
        ('N 10\' 2 1/4", E 8\' 7", S 10\' 2 1/4"\nW 3\' 7", door to hall 32", W2 1\' 4"',
         'W 3\' 7", door to hall 3 ft 8 in, W2 1\' 4"'),
        ("N: 10 ft\nE: 4 ft\nS1: 5 ft\nE2: 4 ft\nS2: 5 ft\nW: 8 ft", "S1: 5 ft, right=out-corner"),
        ("cabinets 3 ft, N 6 ft, E 8 ft, S 9 ft, W 8 ft", "cabinets 3 ft, left=in-corner, N"),
        ("door 30, N 90, E 8 ft, S 10 ft, W 8 ft", "door 30, left=in-corner, N 90"),
        (
            "N 9 ft, E 8 ft, cabinets 2 ft, S 6 ft, cabinets 3 ft, W 10 ft",
            "E 8 ft, cabinets 2 ft, right=in-corner, S 6 ft, cabinets 3 ft, right=in-corner, W",
        ),
        ("N 3.2 m, E 2.55 m, S 3.2 m, W 2.45 m", "N 3.2 m, E 2.55 m, S 3.2 m, W 8 ft 4 3/8 in"),
    ],
)  # fmt: skip
def test_a_slip_that_explains_the_walk_is_mended_where_it_stands(lines: str, mended: str) -> None:
    ends = ", left=in, right=in" if ":" in lines else ""
    walls = lines.replace("\n", f"{ends}\n") + ends
    text = f'{TRIM}room "R", trim base, ends in\n{walls}\n'
    (code,) = {one.code for one in check_job(text).diagnostics}
    closed = [after for _, after in _mends(text, code) if not check_job(after).diagnostics]
    if ends:
        mended = mended.replace(", right", ", left=in, right")
    assert any(mended in after for after in closed)


@pytest.mark.parametrize(
    ("written", "mended"),
    [
        ("40 5/12 in", "40 7/16 in"),
        ("40 17/16 in", "41 1/16 in"),
        ("5/12 in", "7/16 in"),
        ("3 ft 2-5/12 in", "3 ft 2 7/16 in"),
        ("40 31/33 in", "40 15/16 in"),
        ("40 99/100 in", "41 in"),
    ],
)
def test_the_nearest_mark_takes_the_whole_inches_with_it(written: str, mended: str) -> None:
    text = walls(f"  N: {written}, left=butt, right=butt")
    ((mend, after),) = _mends(text, "T112")
    assert f"N: {mended}, left" in after
    assert mend.sure


LONG = "by the door " * 200
BAY = "  N 40, left=butt, right=butt"


@every(
    "code, settings, wall, after",
    [
        ("T297", "", "  N: 40, left=butt, curves in 90 deg, right=butt", "N: 40 in radius, left"),
        ("T297", "", f"{BAY}, curves in 90 deg  # bay", "curves in radius 28 5/16 in  # bay"),
        ("T297", "", "  N: 4 ft radius, left=butt, right=butt", "4 ft radius, curves out 90 deg,"),
        ("T297", "", "  N: 4 ft radius, left=butt, right=butt, curves in 9 in", "N: 4 ft, left"),
        ("T409", "nails: floor 1 1/2 in", BAY, "\n# to measure again: floor 1 1/2 in\n"),
        (
            "T409",
            "nails: floor 1 1/2 in, every 9 in",
            BAY,
            "nails: every 9 in  # to measure again:",
        ),
        ("T105", "", f"{BAY}  # {LONG}", f"door\n{BAY}"),
        ("T105", "", ", ".join(["  N 40, left=butt, right=butt"] * 90), f"right=butt\n{BAY}"),
        ("T105", f"stock base: {', '.join(['12 ft at 9'] * 200)}", BAY, "at 9\nstock base: 12 ft"),
        ("T111", "", f"{BAY}, rising right 7 1/0 in over 10 in  # b", "# to measure: N 40, left"),
    ],
)
def test_what_only_a_tape_or_the_yard_tells_is_put_aside_or_asked(
    code: str, settings: str, wall: str, after: str
) -> None:
    made = [one for _, one in _mends(walls(wall, settings=settings), code)]
    assert any(after in one for one in made), made
    for one in made:
        assert not {found.code for found in check_job(one).diagnostics} & {code, "T101", "T103"}


def test_a_missing_end_goes_before_the_comment() -> None:
    text = walls('  N: 40 in, left=butt, note "# 1"  # by the door')
    after = {mend.words: after for mend, after in _mends(text, "T225")}
    assert 'note "# 1", right=butt  # by the door' in after["Add right=butt"]


def test_findings_can_be_sent_to_another_process() -> None:
    found = check_job(walls("  N: 40 in, left=incorner, right=butt")).diagnostics
    again = pickle.loads(pickle.dumps(found))  # noqa: S301 - our own
    assert again == found
    assert again[0].severity is Severity.ERROR
    line = "  N: 40 in, left=incorner, right=butt"
    assert mends(again[0], line) == mends(found[0], line) != ()


@every("mark", sorted(STEERING))
def test_every_mark_that_turns_text_is_taken_out(mark: str) -> None:
    text = walls(f'  N: 40 in, left=butt, right=butt, note "a{mark}b"')
    ((_, after),) = _mends(text, "T115")
    assert 'note "ab"' in after


@pytest.mark.parametrize(
    ("walls_", "code", "mended"),
    [
        ("N: 10 ft, E = 8 ft, S 10 ft, W 8 ft", "T101", []),
        (
            "N 10 ft, E 8 ft, right=return, S 10 ft, W 8 ft",
            "T302",
            ["N 10 ft, E 8 ft, right=in-corner, S 10 ft, W 8 ft"],
        ),
        (
            "N 10 ft, E 8 ft, left=return, S 10 ft, W 8 ft",
            "T302",
            ["N 10 ft, E 8 ft, left=in-corner, S 10 ft, W 8 ft"],
        ),
        (
            "N 10 feet 2 inches, E 8 ft, S 10 ft, W 96 inches",
            "T310",
            [
                "N 10 ft 1 in, E 8 ft, S 10 ft, W 96 inches",
                "N 10 feet 2 inches, E 8 ft, S 10 ft 1 in, W 96 inches",
            ],
        ),
    ],
)
def test_a_mend_takes_no_wall_away(walls_: str, code: str, mended: list[str]) -> None:
    text = f'{TRIM}room "Den", trim base, ends in\n{walls_}\n'
    assert [after.split("\n")[-2] for _, after in _mends(text, code)] == mended
