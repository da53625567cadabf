"""What lies between two pieces on a stick, from the mark of one to the mark of the next."""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import Final

from trimlang.joinery.piece import Cut, Lean
from trimlang.lengths.angles import cosine
from trimlang.lengths.tape import NOTHING
from trimlang.record import record

HAIR: Final = Fraction(1, 64)
"""Inches: what one pass may leave on the next piece. More is taken off in a second pass
(common practice, no source: half of what an eye reads off a tape)."""


@record
class Parting:
    """From the long point of a piece's right end to that of the next piece's left end.

    ``apart`` is in steps of the tape, less than 0 where mitres lie within each other.
    ``one_pass`` tells that one cut makes both ends.
    """

    apart: int
    one_pass: bool


def parting(before: Cut | None, after: Cut | None, kerf: Fraction, step: Fraction) -> Parting:
    """Return what lies between two ends, up to the next mark of the tape.

    ``kerf`` and ``step`` are in inches.  An end that is None is square.  Two ends that
    lean the same way lie within each other, as deep as the one that leans less; one cut
    makes both where the saw is set alike for them.
    """
    wide = max(kerf_along(cut, kerf) for cut in (before, after))
    one, other = nested_depth(before), nested_depth(after)
    overlap = min(abs(one), abs(other)) if one * other > 0 else NOTHING
    apart = ceil((wide - overlap) / step)
    left_on = apart * step - (wide - overlap)
    return Parting(apart, one_pass=_set_alike(before, after) and left_on <= HAIR)


def kerf_along(cut: Cut | None, kerf: Fraction) -> Fraction:
    """Return what a cut takes along the stick (inches).

    A blade of thickness ``k`` swung by ``m`` and tilted by ``b`` takes
    ``k ÷ (cos m × cos b)``.
    """
    return kerf if cut is None else kerf / squareness(cut)


def squareness(cut: Cut) -> Fraction:
    """Return ``cos m × cos b`` of a cut, 1 where it is square."""
    swing, tilt = max(cut.exact, cut.setting), max(cut.bevel, cut.bevel_setting)
    return cosine(swing) * cosine(tilt)


def nested_depth(cut: Cut | None) -> Fraction:
    """Return how deep a neighbour may lie within an end (inches), less than 0 to the left."""
    if cut is None or (cut.lies_flat and not cut.crown):
        # cut flat on the table: it does not nest with the standing mitres of its neighbours
        return NOTHING
    return {Lean.LEFT: -cut.inset, Lean.RIGHT: cut.inset, Lean.UPRIGHT: NOTHING}[cut.lean]


def _set_alike(before: Cut | None, after: Cut | None) -> bool:
    square = (NOTHING, NOTHING, NOTHING)
    one, other = (
        square if cut is None else (cut.setting, cut.bevel_setting, nested_depth(cut))
        for cut in (before, after)
    )
    return one == other
