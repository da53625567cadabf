"""What lies between two pieces on a stick, from one's mark on the tape to the next one's."""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import Final

from trimlang.joinery.piece import Cut, Lean
from trimlang.joint_row import Edge
from trimlang.lengths.angles import cosine
from trimlang.lengths.tape import NOTHING
from trimlang.record import record

HAIR: Final = Fraction(1, 64)
"""Inches that one pass may leave on the next piece; more is taken off in a second pass (common
practice, no source: half of what an eye can read off a tape)."""


@record
class Parting:
    """What lies from the long point of a piece's right end to that of the next piece's left end.

    ``apart`` is in steps of the tape, negative where two mitres nest.  ``one_pass`` says that one
    cut makes both ends.
    """

    apart: int
    one_pass: bool


def parting(before: Cut | None, after: Cut | None, kerf: Fraction, step: Fraction) -> Parting:
    """Return what lies between two ends, rounded up to the next mark of the tape.

    ``kerf`` and ``step`` are in inches.  An end that is None is square.  Two ends that lean the
    same way nest, as deep as the one that leans less; one cut makes both where the saw has the
    same setting for them.
    """
    wide = max(kerf_along(cut, kerf) for cut in (before, after))
    one, other = nested_depth(before), nested_depth(after)
    # Only ends that lean alike nest; leaning apart they touch at their long points.
    overlap = min(abs(one), abs(other)) if one * other > 0 else NOTHING
    apart = ceil((wide - overlap) / step)
    # What rounding up to the mark leaves on the next piece: a hair may stay, more needs a second
    # pass.
    left_on = apart * step - (wide - overlap)
    return Parting(apart, one_pass=_set_alike(before, after) and left_on <= HAIR)


def kerf_along(cut: Cut | None, kerf: Fraction) -> Fraction:
    """Return what a cut takes along the stick (inches).

    A blade of thickness ``k``, swung by ``m`` and tilted by ``b``, takes ``k ÷ (cos m × cos b)``:
    it crosses the stick at a slant.
    """
    return kerf if cut is None else kerf / squareness(cut)


def squareness(cut: Cut) -> Fraction:
    """Return ``cos m × cos b`` of a cut: 1 where it is square, less the steeper it is."""
    # The steeper of what is wanted and what the saw reads, so that the kerf is never counted too
    # small.
    swing, tilt = max(cut.exact, cut.setting), max(cut.bevel, cut.bevel_setting)
    return cosine(swing) * cosine(tilt)


def nested_depth(cut: Cut | None) -> Fraction:
    """Return how deep a neighbour may lie within an end (inches), negative where it leans left."""
    if cut is None or (cut.lies_flat and (not cut.crown or cut.through_edge is not Edge.BOTH)):
        # Cut flat on the table, it does not nest with its neighbours' mitres, which are cut
        # standing; nor does a crown's end that is longest at its face at one edge only.
        return NOTHING
    return {Lean.LEFT: -cut.inset, Lean.RIGHT: cut.inset, Lean.UPRIGHT: NOTHING}[cut.lean]


def _set_alike(before: Cut | None, after: Cut | None) -> bool:
    # Ends that are cut flat and do not nest lie a kerf apart at their long points, so that a second
    # cut is needed even where both slope alike.
    if any(cut and squareness(cut) != 1 and not nested_depth(cut) for cut in (before, after)):
        return False
    square = (NOTHING, NOTHING, NOTHING)
    one, other = (
        square if cut is None else (cut.setting, cut.bevel_setting, nested_depth(cut))
        for cut in (before, after)
    )
    return one == other
