"""Hover says why a piece is as long as it is: which end adds what, and what is taken off."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.jobs import CASE, CROWN, SHOE, TRIM
from trimlang.editor.hover import hover
from trimlang.editor.open_job import JobReading, read_job
from trimlang.incremental.cached_steps import CachedSteps

EXAMPLES = Path(__file__).parents[2] / "examples"
HALL = f"""{TRIM}{SHOE}
stock shoe: 12 ft at 7.10
{CROWN}
stock crown: 16 ft at 31.00
{CASE}
stock case: 16 ft at 12.10
trim rail: 5/8 in thick, 2 1/2 in tall, pine
stock rail: 16 ft at 11.00
room "Hall", trim base, shoe, rail, crown, casing case, open walk
  N: 60 in, left=butt, right=out-corner(91 deg), rail right=return
  E: 40 in, left=out-corner, right=in-corner
  S: 30 in, left=in-corner, right=butt, no shoe, no crown
  window 36 in, "bay", height 40 in, sill 40 in, stops nothing
  S2: 24 in, left=butt, right=butt, no crown, no shoe
  W: 18 ft, left=in-corner, right=butt, no rail, no crown
"""


def reading(text: str) -> JobReading:
    return read_job(None, "job.trim", {Path("job.trim"): text}, CachedSteps())


@pytest.fixture(scope="module")
def hall() -> JobReading:
    return reading(HALL)


def told(hall: JobReading, wall: str) -> str:
    line = next(at for at, text in enumerate(HALL.splitlines(), 1) if text.strip().startswith(wall))
    found = hover(hall, "job.trim", line, 4, {})
    assert found is not None
    return found.text


def test_each_trim_of_a_run_says_what_its_ends_add(hall: JobReading) -> None:
    base, shoe, rail, crown = (
        one for one in told(hall, "N:").split("\n\n") if "return**" not in one
    )
    assert "- the wall is 60 in\n- left end adds nothing: it stops at the wall's end" in base
    assert "- right end adds 0.553 in, round the outside corner its face is longer" in base
    assert "- together 60.553 in" in base
    assert "standing base off the wall" in shoe
    assert "and a return closes it" in rail
    assert "right end adds nothing: round the outside corner" in crown


def test_a_cope_or_mitre_inside_and_what_stands_there(hall: JobReading) -> None:
    base, shoe = told(hall, "E:").split("\n\n")[:2]
    assert "right end adds nothing: its back reaches into the inside corner" in base
    assert "right end takes off 9/16 in" in shoe


def test_a_trim_that_goes_on_below_a_window_is_told_at_both_walls(hall: JobReading) -> None:
    for wall in ("S:", "S2:"):
        assert "**HA-S-rail**" in told(hall, wall)
        # 30 in, 36 in of window with its reveals and its casing, 24 in
        assert "the wall is 94 7/8 in, with the openings that it goes on past" in told(hall, wall)
    assert "**HA-S2-base**" not in told(hall, "S2:")


def test_a_spliced_wall_says_what_its_parts_share(hall: JobReading) -> None:
    assert "part 1 of 2 of" in told(hall, "W:")
    assert "the joints lap by 9/16 in" in told(hall, "W:")


def test_a_casing_says_what_is_round_its_opening(hall: JobReading) -> None:
    text = told(hall, "window")
    assert "- the clear height is 40 in\n- adds 3/16 in: the reveal" in text
    assert "- adds 2 1/4 in: the mitre at its top, as long as the casing is wide" in text
    assert "- the clear width is 36 in" in text
    assert "- adds 4 1/2 in: the casing's width on both sides" in text


@pytest.mark.parametrize("job", ["crown", "attic", "doors", "stair", "bay", "round-end"])
def test_what_is_said_comes_to_the_length_in_every_example(job: str) -> None:
    from trimlang.editor.hover_lengths import LaidWalls, why_so_long
    from trimlang.sheets.wording.catalogue import words_in
    from trimlang.sheets.wording.quantities import Pen

    path = EXAMPLES / f"{job}.trim"
    read = read_job(path, path.name, {}, CachedSteps())
    settings = read.result.job.settings
    pen = Pen(words_in("en"), "$", settings.unit, scale=settings.saw_step)
    laid = LaidWalls(read.result.job)
    for piece in read.result.pieces:
        said = list(why_so_long(piece, laid, pen.of(piece.unit)))
        assert said
        assert not [one for one in said if "what else" in one or "goes on past that" in one], said
