"""Three jobs written from notebook pages: they compile clean, and take half the keystrokes."""

from __future__ import annotations

import re

import pytest

from tests.conftest import ROOT
from tests.jobs import TRIM
from tests.story.long_form import keystrokes, long_form, walls_of
from trimlang.compiler import check_job, compile_job
from trimlang.diagnostics.source import Source
from trimlang.language.meaning import same_meaning
from trimlang.language.tidy_file import tidy
from trimlang.tables.room_writer import WallForm
from trimlang.tables.wall_forms import in_form

PAGES = ROOT / "tests" / "story" / "pad"
# of the rooms and walls, in percent of the form that says all: as measured, a ratchet
JOBS = {"flat": 38, "house": 48, "metric": 31}


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
    counted = [keystrokes(one) for one in (text, short, walls_of(text), walls_of(short))]
    assert 2 * counted[1] <= counted[0]
    page = (ROOT / "docs" / "from-the-pad.md").read_text(encoding="utf-8")
    told = re.search(
        r"(\d+) keystrokes, its .*?in (\d+), (\S+) %, and .*? in (\S+) %", page, re.DOTALL
    )
    shares = [f"{100 * counted[at + 1] / counted[at]:.1f}" for at in (0, 2)]
    assert told is not None
    assert [*told.groups()] == [*map(str, counted[:2]), *shares]


def test_a_plain_room_with_a_door_takes_the_keystrokes_that_the_page_says() -> None:
    page = (ROOT / "docs" / "from-the-pad.md").read_text(encoding="utf-8")
    plain = "".join(re.findall(r"^    ((?:every|room|N|W) .*\n)", page, re.MULTILINE))
    feet = {"10'2": "122", "8'7": "103", "4'2": "50"}
    ways = [
        plain,
        re.sub(r"\d+'\d", lambda found: feet[found[0]], plain),
        re.sub(r"(\d)'(\d)", r"\1 ft \2", plain),
        plain.replace('"Den"', '"Den", trim base'),
    ]
    counted, cut = [], []
    for text in ways:
        named = text.replace("door 32", "door to hall 32")
        counted.append((str(keystrokes(walls_of(text))), str(keystrokes(walls_of(named)))))
        for one in (text, named):
            result = check_job(TRIM + one)
            assert not result.diagnostics
            cut.append([(piece.id, piece.to_mark) for piece in result.pieces])
    assert counted == re.findall(r"^\| .* \| (\d+) \| (\d+) \|$", page, re.MULTILINE)
    assert all(one == cut[0] for one in cut)
    assert all(int(unnamed) < 90 for unnamed, _ in counted)


DRAWINGS = {"flat": "pad.svg", "house": "pad-house.svg", "metric": "pad-metric.svg"}
LENGTH = r"\d+(?: ft)?(?: \d+)?(?: \d+/\d+)?(?: in)?"


@pytest.mark.parametrize(("name", "drawing"), DRAWINGS.items())
def test_a_drawn_page_and_its_job_file_say_the_same(name: str, drawing: str) -> None:
    page = (ROOT / "docs" / "from-the-pad.md").read_text(encoding="utf-8")
    text = (PAGES / f"{name}.trim").read_text(encoding="utf-8")
    before, _, behind = page.partition(f"```trim\n{text}```")
    assert behind
    assert before.rindex(f"]({drawing})") > before.rfind("```")  # the drawing stands right beside
    drawn = (ROOT / "docs" / drawing).read_text(encoding="utf-8")
    notes = re.findall(r"<text[^>]*>([^<]*)</text>", drawn)
    # each length of the drawing as often as a wall, an opening or a step of the file has it
    read = [one for one in notes if re.fullmatch(LENGTH, one)]
    written = re.findall(rf"[A-Za-z]\d? ({LENGTH})(?=[,\n]| over)", walls_of(text))
    assert sorted(read) == sorted(written)
    # what is noted beside them, the trims and what they cost, stands above the rooms
    above = text.split("\nroom ")[0]
    figure = r"\d+(?:\.\d\d)?(?: \d+/\d+|/\d+)?"
    day = {str(int(part)) for part in re.findall(r"-(\d\d)", above)}
    noted = " ; ".join(one for one in notes if one not in read)
    assert set(re.findall(figure, noted)) <= {*re.findall(figure, above), *day}
    assert {room.name.upper() for room in check_job(text).job.rooms} <= set(notes)


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
