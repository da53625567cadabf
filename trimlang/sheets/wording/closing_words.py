"""How a room closes, in the sheets' words."""

from __future__ import annotations

from trimlang.lengths.tape import steps_nearest, steps_up
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.job import Room
from trimlang.survey.outline import Outline
from trimlang.survey.verdict import Closing, Unchecked, Verdict


def closing_words(room: Room, drawn: Outline, closing: Closing | None, pen: Pen) -> str:
    """Say how near the walls come back to where they began; empty for an open walk."""
    if closing is not None and closing.why is Unchecked.TOO_FEW:
        return pen.words("Not checked: fewer than three walls enclose no room.")
    if drawn.misclosure is None and not room.open_walk:
        return pen.words(
            "Not checked: the corners as written do not go once round; bare wall may hide one."
        )
    if closing is None or closing.gap is None:
        return ""
    # The miss is rounded to the nearest mark; what the survey can tell is rounded up, so that no
    # more is promised than it can keep.
    step = room.settings.rounding_step
    off = pen.length(steps_nearest(closing.gap, step))
    tolerance = pen.length(steps_up(closing.tolerance, step))
    if closing.verdict is Verdict.GAPES:
        return pen.words(
            "The walk as surveyed ends {off} from its start (dashed on the plan): measure again.",
            off=off,
        )
    if closing.verdict is Verdict.CLASHES:
        return pen.words("Walls and diagonals contradict each other: measure again.")
    if closing.verdict is Verdict.CROOKED:
        return pen.words(
            "Walls and diagonals agree only if the corners are not square: measure them."
        )
    # A miss below half a step of the tape would be printed as “closes within 0”.
    if not steps_nearest(closing.gap, step):
        if closing.allowed_by_file:
            return pen.words("Closes; the file allows {told}.", told=tolerance)
        return pen.words("Closes; {told} is what this survey can tell.", told=tolerance)
    if closing.allowed_by_file:
        return pen.words("Closes within {off}; the file allows {told}.", off=off, told=tolerance)
    return pen.words(
        "Closes within {off}; {told} is what this survey can tell.", off=off, told=tolerance
    )
