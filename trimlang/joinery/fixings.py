"""Whether the nails reach: their height on the wall and their bite in the plate.

The bottom plate is 1 1/2 in thick and the finished floor hides the lower part of it, so the
highest line at which a nail still meets it is the plate less the floor; one aims lower.  The
bite is what is left of a nail behind trim and wallboard.  (Common practice, no source.)
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import Final

from trimlang.joinery.balustrades import caps
from trimlang.joinery.on_the_wall import floor_trim
from trimlang.lengths.tape import MM, NOTHING, Unit, length_text
from trimlang.record import record
from trimlang.survey.job import Job, Trim
from trimlang.survey.measures import Findings

LEAST_BITE: Final = Fraction(0)
WANTED_BITE: Final = Fraction(1, 4)
"""What a longer nail should hold in the plate (inches; common practice, no source)."""
NAIL_SIZE: Final = Fraction(1, 4)
NAIL_SIZE_MM: Final = 5 * MM
"""From one nail that is sold to the next (inches; common practice, no source)."""


@record
class Fixing:
    """How one trim that stands on the floor is nailed (inches).

    ``highest`` is the height above the finished floor below which a nail meets the plate.
    ``bite`` is how deep the nail goes into the plate, None where the trim's thickness is not
    known.  ``every`` is the largest distance between nails.
    """

    trim: str
    highest: Fraction
    bite: Fraction | None
    every: Fraction


def nail_height(plate: Fraction, floor: Fraction) -> Fraction:
    """Return the greatest height above the finished floor at which a nail meets the plate."""
    return plate - floor


def nail_bite(nail: Fraction, trim: Trim, wallboard: Fraction) -> Fraction | None:
    """Return how deep a nail goes into the plate behind trim and wallboard (inches)."""
    return None if trim.thickness is None else nail - trim.thickness - wallboard


def fixings(job: Job) -> tuple[Fixing, ...]:
    """Return how each trim that is nailed to the bottom plate is fixed.

    Trim in front of another is nailed to that one or to the floor, crown and casing to what
    is behind them, and a balustrade's cap to no wall, so they are left out.
    """
    settings = job.settings
    on_posts = caps(job)
    first = {
        floor.name
        for room in job.rooms
        for run in room.runs
        if (floor := floor_trim(job, run)) is not None
        and (room.name, run.label, floor.name) not in on_posts
    }
    return tuple(
        Fixing(
            trim.name,
            nail_height(settings.nail_plate, settings.nail_floor),
            nail_bite(settings.nail_long, trim, settings.nail_wallboard),
            settings.nail_every,
        )
        for trim in job.trims
        if trim.name in first
    )


def check_fixings(job: Job, findings: Findings) -> None:
    """Report trims whose nails are too short for the plate, or have no plate to meet."""
    for fixing in fixings(job):
        trim = job.trim(fixing.trim)
        span = trim.span
        # where thick and tall were most likely swapped, longer nails would be no remedy
        sound = trim.height is None or (trim.thickness or NOTHING) <= trim.height
        if sound and fixing.bite is not None and fixing.bite <= LEAST_BITE:
            findings.say(
                "T408",
                span,
                trim=fixing.trim,
                nail=length_text(job.settings.nail_long, job.settings.unit),
                short=length_text(-fixing.bite, job.settings.unit),
                longer=length_text(_next_nail(job, fixing.bite), job.settings.unit),
            )
        # A floor as thick as the plate hides all of it: no height is left at which a nail would
        # hold.
        if fixing.highest <= 0:
            findings.say("T409", span, trim=fixing.trim)


def _next_nail(job: Job, bite: Fraction) -> Fraction:
    """Return the nail that is long enough to hold in the plate, to the next size that is sold."""
    size = NAIL_SIZE_MM if job.settings.unit is Unit.MM else NAIL_SIZE
    # What is short of biting, and the bite that one wants, on top of the nail that was said.
    return ceil((job.settings.nail_long - bite + WANTED_BITE) / size) * size
