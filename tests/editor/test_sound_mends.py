"""What a quick fix leaves of a line with a slip: it can be read, and says nothing twice."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

from hypothesis import given
from hypothesis import strategies as st

from tests.conftest import LAWS, ROOT
from tests.diagnostics.test_mending import after_edits
from tests.jobs import walls
from trimlang.compiler import check_job
from trimlang.diagnostics.mending import mends
from trimlang.editor.open_job import JobReading, read_job
from trimlang.editor.sound_mends import sound
from trimlang.incremental.cached_steps import CachedSteps

SHIPPED = sorted((ROOT / "examples").glob("*.trim"))
QUICK = [path for path in SHIPPED if path.stat().st_size < 2500]
UNREAD = {"T100", "T101", "T103", "T104", "T226"}
WORDS = [
    "",
    "left",
    "out-corner",
    "butt",
    "cope, ",
    "door ",
    "no splice, ",
    "0",
    "-4",
    "5/12",
    "12,5",
]


@cache
def _cached(_path: Path) -> CachedSteps:
    return CachedSteps()


def _read(path: Path, text: str) -> JobReading:
    return read_job(path, path.name, {path: text}, _cached(path))


@given(
    path=st.sampled_from(QUICK if LAWS == "suite" else SHIPPED),
    place=st.integers(0, 10_000),
    word=st.sampled_from(WORDS),
)
def test_no_mend_of_a_slip_makes_another_of_its_line(path: Path, place: int, word: str) -> None:
    text = path.read_text(encoding="utf-8")
    places = [found.span() for found in re.finditer(r"[\w./-]+|[=,:()\"]", text)]
    start, end = places[place % len(places)]
    slip = text[:start] + word + text[end:]
    lines = slip.split("\n")
    found = _read(path, slip).result.diagnostics
    here = slip.count("\n", 0, start) + 1
    for one in found[:5]:
        if one.span.file != path.name:
            continue
        known = {other.code for other in found}
        for mend in sound(mends(one, lines[one.span.line - 1], lines), one, lines):
            touched = {edit.span.line for edit in mend.edits}
            left = _read(path, after_edits(slip, mend.edits)).result.diagnostics
            told = {other.code for other in left if other.span.line in touched}
            assert not (told & UNREAD) - known, (lines[here - 1], one, mend)


def test_what_would_say_an_end_twice_or_read_no_better_is_not_offered() -> None:
    for wall, words in (
        ("  N: 40 in, return, left=butt, right=butt", []),
        ("  N: 40 in, left=incorner, right=butt", ["Write “in-corner”"]),
    ):
        text = walls(wall)
        lines = text.split("\n")
        (found,) = check_job(text).diagnostics
        offered = sound(mends(found, lines[found.span.line - 1], lines), found, lines)
        assert [mend.words for mend in offered] == words
