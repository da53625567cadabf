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
    for mend, after in _mends(text, code):
        left = {one.code for one in check_job(after).diagnostics}
        assert code not in left, (mend, after)
        # a line of the file as it was meant: it can be read, and nothing in it is unknown
        assert not left & {"T100", "T101", "T103", "T123"}, (mend, after)


@pytest.mark.parametrize(
    "code",
    "T100 T101 T104 T112 T113 T114 T115 T119 T203 T204 T205 T207 T209 T210 T214 T216 T225 T226"
    " T227 T229 T231 T234 T236 T242 T243 T248 T253 T260 T261 T263 T265 T266 T281 T284 T290 T295"
    " T301 T302 T304 T305 T313 T317 T401 T412 T421 T431 T432 T435 T438 T441 T442 T443 T454 T456"
    " T468 T641 T704 T706".split(),
)
def test_a_plain_slip_can_be_mended(code: str) -> None:
    assert _mends(PAGES[code].example, code)


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
