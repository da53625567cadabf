"""Quick stock plans for hover: which stick a piece is cut from, one trim at a time."""

from __future__ import annotations

from collections import OrderedDict
from dataclasses import replace
from typing import Final

from trimlang.compiler import Result, plan_checked
from trimlang.incremental.cache import placeless
from trimlang.planning.layout import CutStick, StickPlace
from trimlang.planning.wrong_plan import WrongPlanError
from trimlang.record import record
from trimlang.stock.planner import QUICK

# Plans kept, one a trim; the one that was kept longest goes first.
MOST_KEPT: Final = 16


@record
class Where:
    """The stick that a piece is cut from in the quick plan, and its place there."""

    stick: CutStick
    place: StickPlace


class QuickPlans:
    """Plans a trim when it is asked for, and keeps the plan until its pieces or stock change."""

    def __init__(self) -> None:
        self._plans: OrderedDict[object, dict[str, Where]] = OrderedDict()

    def plan(self, result: Result, trim: str) -> dict[str, Where]:
        """Return where a trim's pieces are cut from, by their ids; empty where there is no plan."""
        key = _key(result, trim)
        if key in self._plans:
            return self._plans[key]
        pieces = tuple(piece for piece in result.pieces if piece.trim == trim)
        try:
            planned = plan_checked(replace(result, pieces=pieces), effort=QUICK)
        # The build will say that; a hover only has less to tell.
        except WrongPlanError:
            planned = result
        found = {
            place.piece: Where(stick, place)
            for plan in planned.plans
            for stick in plan.sticks
            for place in stick.places
        }
        self._plans[key] = found
        while len(self._plans) > MOST_KEPT:
            self._plans.popitem(last=False)
        return found


def _key(result: Result, trim: str) -> object:
    pieces = tuple(piece for piece in result.pieces if piece.trim == trim)
    section = placeless(next((one for one in result.job.trims if one.name == trim), None))
    return (pieces, section, result.job.settings)
