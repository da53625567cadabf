"""Three jobs written from notebook pages: they compile clean, and take half the keystrokes."""

from __future__ import annotations

import re

import pytest

from tests.conftest import ROOT
from tests.jobs import TRIM
from tests.story.long_form import keystrokes, long_form, walls_of
from trimlang.compiler import check_job, compile_job
from trimlang.language.meaning import same_meaning
from trimlang.language.source import Source
from trimlang.language.tidy_file import tidy
from trimlang.tables.room_writer import WallForm
from trimlang.tables.wall_forms import in_form

PAGES = ROOT / "tests" / "story" / "pad"
# of the rooms and walls, in percent of the form that says all: as measured, a ratchet
JOBS = {"flat": 38, "house": 54, "metric": 36}


@pytest.mark.parametrize("name", JOBS)
def test_a_notebook_page_is_a_job(name: str) -> None:
    result = compile_job((PAGES / f"{name}.trim").read_text(encoding="utf-8"))
    assert not result.diagnostics
    assert result.ok
    assert {piece.room for piece in result.pieces} == {room.name for room in result.job.rooms}
    # each room that is walked round comes back to within half an inch of where it began
    assert all(one.gap is None or one.gap < 0.5 for one in result.closings)


@pytest.mark.parametrize(("name", "most"), JOBS.items())
def test_it_takes_fewer_keystrokes_than_the_form_that_says_all(name: str, most: int) -> None:
    text = (PAGES / f"{name}.trim").read_text(encoding="utf-8")
    job = check_job(text).job
    long = long_form(text, job)
    again = check_job(long)
    assert not again.diagnostics
    for one, other in zip(job.rooms, again.job.rooms, strict=True):
        assert same_meaning(one.walk, other.walk)
    short, whole = keystrokes(walls_of(text)), keystrokes(walls_of(long))
    assert 100 * short <= most * whole


def test_the_shipped_house_takes_half_the_keystrokes_in_the_short_form() -> None:
    path = ROOT / "examples" / "house.trim"
    text = path.read_text(encoding="utf-8")
    short = tidy(Source("x", in_form(Source("x", text), path, WallForm.SHORT))).text
    assert same_meaning(check_job(short, path=path).pieces, check_job(text, path=path).pieces)
    # the whole file, with the lines above the rooms, which are the same in both
    assert 100 * keystrokes(short) <= 50 * keystrokes(text)
    assert 100 * keystrokes(walls_of(short)) <= 42 * keystrokes(walls_of(text))


def test_a_plain_room_with_a_door_takes_under_90_keystrokes_to_the_sixteenth() -> None:
    page = (ROOT / "docs" / "from-the-pad.md").read_text(encoding="utf-8")
    plain = "".join(re.findall(r"^    (.*\n)", page, re.MULTILINE))
    with_ft = re.sub(r"(\d)'(\d)", r"\1 ft \2", plain)
    feet = {"10'2": "122", "8'7": "103", "4'2": "50"}
    in_inches = re.sub(r"\d+'\d", lambda found: feet[found[0]], plain)
    ways = {77: plain, 89: with_ft, 74: in_inches, 88: plain.replace('"Den"', '"Den", trim base')}
    rooms = []
    for strokes, text in ways.items():
        assert keystrokes(walls_of(text)) == strokes
        result = check_job(TRIM + text)
        assert not result.diagnostics
        rooms.append(result.pieces)
    assert all(same_meaning(one, rooms[0]) for one in rooms)


def test_the_page_from_the_pad_shows_the_flat_as_drawn() -> None:
    page = (ROOT / "docs" / "from-the-pad.md").read_text(encoding="utf-8")
    (block,) = re.findall(r"^```trim\n(.*?)^```", page, re.MULTILINE | re.DOTALL)
    flat = (PAGES / "flat.trim").read_text(encoding="utf-8")
    assert block == flat
    drawn = (ROOT / "docs" / "pad.svg").read_text(encoding="utf-8")
    notes = re.findall(r"<text[^>]*>([^<]*)</text>", drawn)
    lengths = [one for one in notes if re.fullmatch(r"[\d /ftin]+", one)]
    assert len(lengths) > 20
    for length in lengths:
        assert re.search(rf"(?<![\d/]){re.escape(length)}(?![\d/])", flat), length
    assert {room.name.upper() for room in check_job(flat).job.rooms} <= set(notes)


def test_the_figures_of_the_page_are_those_that_are_counted() -> None:
    page = (ROOT / "docs" / "from-the-pad.md").read_text(encoding="utf-8")
    told = re.findall(r"^\| (\w+) \| [^|]* \| (\d+) \| (\d+) \| (\d+) % \|", page, re.MULTILINE)
    counted = []
    for name in JOBS:
        text = (PAGES / f"{name}.trim").read_text(encoding="utf-8")
        long = keystrokes(walls_of(long_form(text, check_job(text).job)))
        short = keystrokes(walls_of(text))
        counted.append((name, str(long), str(short), str(round(100 * short / long))))
    assert told == counted
