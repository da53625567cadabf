"""The sum that shows that boxes and margins fill their wall, to be checked with a tape."""

from __future__ import annotations

from typing import Final

from trimlang.language.box_facts import BoxPlace
from trimlang.marking import N_
from trimlang.sheets.wording.phrases import wall_name
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.job import Room
from trimlang.survey.on_walls import WallBoxes

_ON_A_WALL: Final = N_(
    "Boxes {name} ({ids}), {tall} tall: margin, boxes, margins between, margin: {parts} ="
    " {wall}, the whole wall."
)
_OVER_OR_UNDER: Final = N_(
    "Boxes {name} ({ids}), {tall} tall: margin, boxes, margins between, margin: {parts} ="
    " {wall}, as wide as the casing."
)


def box_sum(room: Room, boxes: WallBoxes, pen: Pen) -> str:
    """Say a set's margins and widths with their sum: ``4 in + 2 × 25 in + 4 in + 4 in = 62 in``.

    The first and the last margin stand at their ends of the sum, as they do on the wall.  Before
    it stands what the pieces' ids begin with.
    """
    first, *inner, last = boxes.margins
    # All boxes of a set are alike, and so are the margins between them; only the outer two may
    # differ.
    parts = [pen.length(first), f"{boxes.count} × {pen.length(boxes.wide)}"]
    if inner:
        parts.append(f"{len(inner)} × {pen.length(inner[0])}")
    parts.append(pen.length(last))
    wall = wall_name(boxes.called, pen.words)
    label = pen.words("“{name}”", name=boxes.label)
    name = f"{wall} {label}" if boxes.label else wall
    ids = boxes.id_in(room.tag)
    said = _OVER_OR_UNDER if boxes.place in (BoxPlace.OVER, BoxPlace.UNDER) else _ON_A_WALL
    return pen.words(
        said,
        ids=f"{ids}-1" if boxes.count == 1 else f"{ids}-1 … {boxes.count}",
        name=name,
        tall=pen.length(boxes.tall),
        parts=" + ".join(parts),
        wall=pen.length(boxes.wall),
    )
