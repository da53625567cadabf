"""A mend does away with its finding, and with nothing else."""

from __future__ import annotations

import pickle

import pytest

from tests.jobs import walls
from trimlang.compiler import check_job
from trimlang.diagnostics.code_pages import PAGES
from trimlang.diagnostics.mend import Mend
from trimlang.diagnostics.mending import mends
from trimlang.diagnostics.severity import Severity
from trimlang.letters import STEERING

WITH_EXAMPLE = sorted(code for code, page in PAGES.items() if page.example and code != "T106")


def _mended(text: str, mend: Mend) -> str:
    lines = text.split("\n")
    for edit in mend.edits:
        line = lines[edit.span.line - 1]
        lines[edit.span.line - 1] = (
            line[: edit.span.column - 1] + edit.text + line[edit.span.end - 1 :]
        )
    return "\n".join(lines)


def _mends(text: str, code: str) -> list[tuple[Mend, str]]:
    found = next(one for one in check_job(text).diagnostics if one.code == code)
    line = text.split("\n")[found.span.line - 1]
    return [(mend, _mended(text, mend)) for mend in mends(found, line)]


@pytest.mark.parametrize("code", WITH_EXAMPLE)
def test_each_mend_of_a_page_s_example_mends_it(code: str) -> None:
    text = PAGES[code].example
    if code not in {one.code for one in check_job(text).diagnostics}:
        return  # the plan brings it up, not the file's text
    for number, (mend, after) in enumerate(_mends(text, code)):
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
    "only a tape, a saw or a price list tells the figure": "T110 T111 T120 T122 T202 T208 T211 T212"
    " T228 T232 T233 T235 T237 T238 T239 T240 T241 T244 T245 T246 T249 T250 T254 T262 T264 T285"
    " T287 T288 T293 T296 T297 T298 T303 T310 T311 T312 T314 T316 T319 T404 T405 T408 T409 T414"
    " T420 T430 T433 T434 T437 T439 T440 T445 T446 T447 T450 T465 T466 T467 T470 T472 T473 T475"
    " T478 T482 T709",
    "several ways lead on, and which one is a choice, or a name that the user gives": "T121 T123"
    " T201 T206 T213 T215 T220 T221 T222 T223 T224 T282 T283 T286 T289 T291 T292 T318 T403 T406"
    " T407 T410 T411 T413 T436 T448 T451 T453 T455 T457 T469 T471 T474 T476 T477 T479 T480 T481"
    " T484 T491 T492",
    "it is not one place of one line": "T103 T105",
    "an action at the room's heading turns its walls round": "T315",
    "trimlang mark --pin writes it": "T712",
}
"""The findings of a file's text that an editor cannot mend, and why it cannot."""


def test_every_finding_has_a_mend_or_a_reason_why_it_has_none() -> None:
    reasoned = " ".join(WITHOUT.values()).split()
    assert len(reasoned) == len(set(reasoned))
    unmended = [
        code
        for code in WITH_EXAMPLE
        if code in {one.code for one in check_job(PAGES[code].example).diagnostics}
        and not _mends(PAGES[code].example, code)
    ]
    assert unmended == sorted(reasoned)


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


@pytest.mark.parametrize("mark", sorted(STEERING))
def test_every_mark_that_turns_text_is_taken_out(mark: str) -> None:
    text = walls(f'  N: 40 in, left=butt, right=butt, note "a{mark}b"')
    ((_, after),) = _mends(text, "T115")
    assert 'note "ab"' in after
