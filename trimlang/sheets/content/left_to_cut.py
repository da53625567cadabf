"""A job under way without the pieces that are cut already."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from trimlang.compiler import Result
from trimlang.planning.layout import CutStick, TrimPlan


def left_to_cut(result: Result) -> Result:
    """Return the result with only the pieces still to cut, and the sticks as they are now.

    A stick that was begun is as long as its rest, and its marks count from there.
    """
    if result.progress is None:
        return result
    return replace(
        result,
        pieces=tuple(piece for piece in result.pieces if not result.progress.is_cut(piece.id)),
        plans=tuple(_plan(result, plan) for plan in result.plans),
    )


def _plan(result: Result, plan: TrimPlan) -> TrimPlan:
    sticks = (_stick(result, stick) for stick in plan.sticks)
    return replace(plan, sticks=tuple(stick for stick in sticks if stick.places))


def _stick(result: Result, stick: CutStick) -> CutStick:
    progress = result.progress
    places = [
        place for place in stick.places if progress is None or not progress.is_cut(place.piece)
    ]
    # Nothing was cut from the left end yet: the marks count from there as before.
    if not places or places[0].start <= stick.squared:
        return replace(stick, places=tuple(places))
    # What is cut away was cut from the left end, so the first piece still to cut begins the stick
    # as it lies there now.
    gone = places[0].start
    return replace(
        stick,
        length=stick.length - gone,
        places=tuple(
            replace(place, start=place.start - gone, end=place.end - gone) for place in places
        ),
        squared=Fraction(0),
        right=stick.squared_right,
        gone=gone,
        before=len(stick.places) - len(places),
    )
