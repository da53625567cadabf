"""The plan of a trim with its joints moved, or with more of them, where that costs less."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from time import thread_time
from typing import Final

from trimlang.joinery.piece import Piece
from trimlang.joinery.pieces import Places
from trimlang.joinery.spliced_pieces import Splice
from trimlang.planning.ask import Asking, Question
from trimlang.planning.free_walls import free_walls
from trimlang.planning.layout import Added
from trimlang.planning.placing import with_places
from trimlang.planning.sound_plan import sound_plan
from trimlang.record import record
from trimlang.stock.planner import Effort, Watch
from trimlang.stock.problem import NoPlan, Plan

DRAWN: Final = 3
"""How often the joints of a trim are drawn anew."""


@record
class JoinedPlan:
    """A plan of a trim with its runs spliced at ``places``."""

    question: Question
    plan: Plan
    places: Places


def redrawn(
    asking: Asking,
    pieces: tuple[Piece, ...],
    moving: tuple[Splice, ...],
    best: JoinedPlan,
    effort: Effort,
    watch: Watch | None,
) -> tuple[JoinedPlan, int]:
    """Return a plan with joints drawn by a program over all of them, where that is better.

    And what the trim costs at least, wherever the joints are.  Those on studs are not drawn, but
    what holds for any place holds for each stud.
    """
    ends = thread_time() + effort.seconds
    walls = free_walls(best.question, moving)
    if not effort.prove:
        return best, walls.shown_by_length(best.plan.cost)
    # It searches with a solver, which a quick plan does not load.
    from trimlang.planning.drawn_joints import DrawnJoints

    drawn = DrawnJoints(walls, lambda: ends - thread_time())
    least = drawn.bound(best.plan.cost)
    free = tuple(one for one in moving if one.free)
    if not free or least >= best.plan.cost:
        return best, min(least, best.plan.cost)
    if free != moving:
        walls = free_walls(best.question, free)
        drawn = DrawnJoints(walls, lambda: ends - thread_time())
    for _ in range(DRAWN):
        seconds = ends - thread_time()
        places = drawn.places(best.question, best.plan.cost, least) if seconds > 0 else {}
        if not places:
            break
        question = asking.about(with_places(pieces, moving, {**best.places, **places}))
        plan = stock_plan(question, replace(effort, seconds=seconds / 2), watch)
        if plan is not None and plan.rank < best.plan.rank:
            best = JoinedPlan(question, plan, {**best.places, **places})
        if plan is None or plan.cost > least:
            drawn.refuse()
    return best, min(least, best.plan.cost)


def with_more_joints(
    asking: Asking,
    pieces: tuple[Piece, ...],
    runs: tuple[Splice, ...],
    best: JoinedPlan,
    effort: Effort,
    watch: Watch | None,
) -> tuple[JoinedPlan, int, Added]:
    """Return a plan with more joints than are needed where they save more than their price.

    And what the trim costs at least however it is joined, and what the joints save.
    """
    from trimlang.planning.more_joints import MoreJoints, joints_added

    ends = thread_time() + effort.seconds
    usual, per_coin = best.plan.cost, best.question.per_coin
    price = int((asking.job.settings.joint_price or Fraction(0)) * per_coin)
    joinable = {run.whole.id: run for run in runs if run.free or not run.is_joined}
    # Joints on studs that a wall needs stay where they are.
    kept = {name: cut for name, cut in best.places.items() if name not in joinable}
    question = asking.about(with_places(pieces, runs, kept))
    walls = tuple(joinable.values())
    more = MoreJoints(asking, question, walls, price, lambda: ends - thread_time())
    together = usual  # what sticks and joints cost: each proposal has to be better than that

    def pays(found: Places) -> bool:
        """Plan with such joints, and keep the plan where they pay."""
        nonlocal best, together
        places, seconds = {**kept, **found}, max(ends - thread_time(), 0.0)
        question = asking.about(with_places(pieces, runs, places))
        plan = stock_plan(question, replace(effort, seconds=seconds / 2), watch)
        paid = joints_added(runs, places) * price
        if plan is None or plan.cost + paid >= together:
            return False
        best, together = JoinedPlan(question, plan, places), plan.cost + paid
        return True

    on_studs = more.on_studs(asking, with_places(pieces, runs, kept))
    if on_studs and pays(on_studs):
        kept |= on_studs
    for _ in range(DRAWN):
        if not (found := more.places(together)):
            break
        if not pays(found):
            more.refuse()
    added = joints_added(runs, best.places)
    saved = Fraction(usual - best.plan.cost, per_coin) if added else Fraction(0)
    return best, min(more.least, best.plan.cost), Added(added, saved)


def stock_plan(question: Question, effort: Effort, watch: Watch | None) -> Plan | None:
    """Return the verified plan of a question; None: there is none."""
    plan = sound_plan(question.problem, effort=effort, watch=watch)
    return None if isinstance(plan, NoPlan) else plan
