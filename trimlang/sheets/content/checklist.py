"""The checklist: the stages of the work in their order, each with its cautions.

The cautions are common practice and always give way to the local code, the
tool maker's manual and licensed trades.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.compiler import Result
from trimlang.joinery.fixings import fixings
from trimlang.record import record
from trimlang.settings.table import Settings
from trimlang.sheets.content.job_cautions import cautions_of_job
from trimlang.sheets.content.room_list import COLUMNS, RoomList, room_lists
from trimlang.sheets.wording import material_words
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.job import Job

LITTLE: Final = Fraction(1, 2)
"""A bite of this or less holds poorly (inches; common practice, no source)."""


@record
class Stage:
    """A stage of the whole job: what to do, and what to be careful about."""

    name: str
    steps: tuple[str, ...]
    cautions: tuple[str, ...]


@record
class Checklist:
    """The checklist's contents, as ready texts.

    ``before`` and ``during`` are the stages of the whole job, ``columns`` the boxes of each piece
    (key, word), ``rooms`` the lists of single rooms.
    """

    before: tuple[Stage, ...]
    during: tuple[Stage, ...]
    gear: tuple[str, ...]
    columns: tuple[tuple[str, str], ...]
    rooms: tuple[RoomList, ...]


def checklist(result: Result, pen: Pen) -> Checklist:
    """Return the job's checklist."""
    w = pen.words
    return Checklist(
        # In the order of the work; what is done before the first cut can still change the order.
        before=(_survey(result.job, pen), _order(pen), _prefinish(result.job.settings, pen)),
        during=(
            _cut(result, pen),
            _fit(pen),
            _fix(result.job, pen),
            _caulk(pen),
            _touch_up(pen),
        ),
        # What is wanted for every job, whatever its trims are.
        gear=(
            w("eye protection, for everybody in the room"),
            w("hearing protection at saw and nailer"),
            w("a fitted dust mask, and extraction at the saw"),
            w("tape, sharp pencil, square, angle finder, scrap to test corners on"),
            w("coping saw and file, wood glue, nail set, caulk gun, filler, sandpaper"),
        ),
        columns=tuple((text, w(text)) for text in COLUMNS),
        rooms=room_lists(result, pen),
    )


def _survey(job: Job, pen: Pen) -> Stage:
    w = pen.words
    steps = [
        w("Measure every wall again at trim height before buying; tick it in its room below."),
        w("Test the corners with two scraps: a corner that gaps wants its angle measured."),
    ]
    runs = [run for room in job.rooms for run in room.runs]
    if any(run.left.wider_below or run.right.wider_below for run in runs):
        steps.append(
            w(
                "Corners out of plumb: try scraps there before you cut, at the floor and at the"
                " ceiling; the tickets say what each piece is set for."
            )
        )
    steps.append(w("Look for humps, floor vents, heaters and outlets in the trim's way."))
    return Stage(
        # Before anything is bought: a wrong wall costs least while it is only a number.
        w("Survey check"),
        tuple(steps),
        (
            w(
                "In an older house old paint may hold lead and old flooring asbestos: have it"
                " tested before you sand, scrape or pry, and follow the local rules."
            ),
        ),
    )


def _order(pen: Pen) -> Stage:
    w = pen.words
    return Stage(
        w("Order"),
        (
            w("Order from the stock order; check count, length and profile on delivery."),
            w("Store flat, dry, in the rooms for some days, so that it settles."),
        ),
        (w("Long sticks: carry with two, mind lamps and glass."),),
    )


def _prefinish(settings: Settings, pen: Pen) -> Stage:
    w = pen.words
    steps = [w("Prime bare wood and cut MDF edges; sand lightly.")]
    # Trim that is stained or left bare is not painted.
    if settings.paint_coats:
        steps.append(
            w(
                "Paint face and top edge: {coats} coats in all, the last one after fixing.",
                coats=pen.decimal(settings.paint_coats, 1),
            )
        )
    return Stage(
        # Before the saw, because a stick is painted quicker than its pieces.
        w("Prefinish"),
        (
            *steps,
            w("Let each coat dry as its can says; give the trim a day before you cut it."),
        ),
        (w("Air the room, keep flames away, and follow the label of paint and primer."),),
    )


def _cut(result: Result, pen: Pen) -> Stage:
    w = pen.words
    return Stage(
        # A ticket that is not taped on at once is one that lies on the wrong piece.
        w("Cut and label"),
        (
            w("Set the saw by its own scale, then test both settings on scrap."),
            w("Cut from the stick layouts, longest first; tape the ticket on at once."),
        ),
        (
            w("Guard in place and working; hands out of the blade's path; wait until it stands."),
            w("Never hold a short piece by hand: clamp it or cut it off a long length."),
            w(
                "Ripping a long narrow strip: guard and riving knife on, a push stick; or have the"
                " yard rip it."
            ),
            *cautions_of_job(result, pen),
            w("Unplug, or take the battery out, before you change the blade or clear a jam."),
            w(
                "MDF dust harms the lungs: extraction, a fitted mask, and cut outdoors where"
                " you can."
            ),
            w("The saw maker's manual comes before anything printed here."),
        ),
    )


def _fit(pen: Pen) -> Stage:
    w = pen.words
    return Stage(
        # A mitre can be shaved as long as no nail is in it.
        w("Dry-fit"),
        (
            w("Fit a room's pieces in the order of its walls before any nail goes in."),
            w("Shave a tight mitre with the saw, a hair at a time; glue the returns."),
        ),
        (),
    )


def _fix(job: Job, pen: Pen) -> Stage:
    w, s = pen.words, job.settings
    # Where to nail depends on the job's own floor and plate, so these steps are worked out and not
    # only worded.
    steps = [w("Nail at both ends and every {every} at most.", every=pen.mark(s.nail_every))]
    # A trim that stands on the floor has the plate behind it; each trim has a height of its own.
    for fixing in fixings(job):
        steps.append(
            w(
                "{trim}: aim lower than {height} above the finished floor, where the plate is"
                " ({plate} less {floor} of flooring).",
                trim=fixing.trim,
                height=pen.mark(fixing.highest),
                plate=pen.mark(s.nail_plate),
                floor=pen.mark(s.nail_floor),
            )
            if s.nail_floor
            else w(
                "{trim}: aim lower than {height} above the finished floor, where the plate is.",
                trim=fixing.trim,
                height=pen.mark(fixing.highest),
            )
        )
        # Without the trim's thickness nobody can say what a nail bites.
        if fixing.bite is None:
            continue
        text = w(
            "{trim}: a {nail} brad through trim and {board} board bites {bite} into the plate.",
            trim=fixing.trim,
            nail=material_words.nail(s.nail_long, pen),
            board=material_words.nail(s.nail_wallboard, pen),
            bite=pen.mark(fixing.bite),
        )
        # The file says how long its nails are, so the sheet says too where they are too short.
        if fixing.bite <= LITTLE:
            text += " " + w("That is little: take a longer nail.")
        steps.append(text)
    return Stage(
        w("Fix"),
        tuple(steps),
        (
            w(
                "Wires and pipes run in walls and plates: find them before you nail, switch the"
                " circuit off where in doubt, and leave work on them to licensed trades."
            ),
            w(
                "Nailer: eyes and ears protected, free hand well away from the nail's path, air"
                " or battery off before you clear it; its maker's manual comes first."
            ),
            w(
                "Over your head: a ladder or trestle that stands level, used as its maker says, and"
                " a second pair of hands for a long piece."
            ),
            w("The local building code comes before anything printed here."),
        ),
    )


def _caulk(pen: Pen) -> Stage:
    w = pen.words
    return Stage(
        w("Caulk and fill"),
        (
            w("Caulk the top edge and the inside corners; wipe at once; not along the floor."),
            w("Set the nails below the face, fill, let dry, sand flush."),
        ),
        (w("Sanding: dust mask and eye protection again."),),
    )


def _touch_up(pen: Pen) -> Stage:
    w = pen.words
    return Stage(
        # Last, because caulk and filler show only when they are dry.
        w("Touch up"),
        (
            w("Last coat when the caulk has skinned over, as its tube says."),
            w("Walk every room with this list; look along each wall towards the light."),
        ),
        (),
    )
