"""Puts the plans of single jobs side by side, as one plan."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction

from trimlang.joinery.piece import Piece
from trimlang.planning.ask import ask, steepest_kerf
from trimlang.planning.layout import Bought, Lost, TrimPlan
from trimlang.planning.sound_plan import sound_plan
from trimlang.stock.planner import QUICK
from trimlang.stock.problem import Plan, Status
from trimlang.survey.job import Job, Trim


def can_be_had(trim: Trim, plans: Iterable[TrimPlan]) -> bool:
    """Tell whether there is enough stock for all these plans together.

    A limit (``at most``) is the supplier's and holds for all jobs together; an offcut on hand
    exists once.
    """
    taken: Counter[tuple[bool, Fraction, int, Fraction]] = Counter()
    for plan in plans:
        for line in plan.bought:
            taken[line.on_hand, line.length, line.pack, line.price] += line.sticks
    there: Counter[tuple[bool, Fraction, int, Fraction]] = Counter()
    without_end = set()
    for offer in trim.offers:
        kind = (False, offer.length, offer.pack, offer.price)
        if offer.at_most is None:
            without_end.add(kind)
        else:
            # Only whole packs are sold, so a limit that is no multiple of the pack counts down to
            # one.
            there[kind] += offer.at_most // offer.pack * offer.pack
    for rest in trim.rests:
        there[True, rest.length, 1, rest.price] += rest.count
    return all(kind in without_end or count <= there[kind] for kind, count in taken.items())


def side_by_side(
    job: Job,
    trim: Trim,
    parts: Sequence[tuple[TrimPlan, tuple[Piece, ...]]],
    pooled: TrimPlan | None,
    pooled_pieces: Iterable[Piece],
) -> TrimPlan:
    """Return the plans of single jobs as one, their sticks numbered from 1.

    The lower bound on the cost comes from the search for all jobs where that was for the same
    pieces and the same kerf; otherwise from a quick bound with the thinnest kerf.
    """
    plans = [plan for plan, _ in parts]
    sticks = [stick for plan in plans for stick in plan.sticks]
    cost = sum((plan.cost for plan in plans), Fraction(0))
    pieces = [piece for _, own in parts for piece in own]
    bound, quick = _bound(job, trim, [own for _, own in parts])
    same = {(one.id, one.length) for one in pieces} == {
        (one.id, one.length) for one in pooled_pieces if one.trim == trim.name
    }
    # A bound for other pieces says nothing here: with splices, a plan may cut the walls elsewhere.
    # And a wider kerf would prove too much.
    if pooled is not None and same and len(_kerfs(job, parts)) == 1:
        bound = max(bound, pooled.bound)
    bound = min(bound, cost)
    lines: dict[tuple[bool, Fraction, int, Fraction], Bought] = {}
    for plan in plans:
        for line in plan.bought:
            kind = (line.on_hand, line.length, line.pack, line.price)
            known = lines.get(kind)
            packs = line.packs + (known.packs if known else 0)
            lines[kind] = replace(line, packs=packs)
    return TrimPlan(
        trim=trim.name,
        sticks=tuple(
            replace(stick, id=f"{trim.name}-{number}")
            for number, stick in enumerate(sticks, start=1)
        ),
        bought=tuple(lines.values()),
        whole_sticks=tuple(length for plan in plans for length in plan.whole_sticks),
        spare_asked=sum((plan.spare_asked for plan in plans), Fraction(0)),
        cost=cost,
        bound=bound,
        status=Status.PROVEN if bound == cost else Status.GAP,
        survives_loss=all(plan.survives_loss for plan in plans),
        lost=_lost(plans),
        # No bound on the number of sticks is worked out for plans side by side; 0 claims nothing.
        stick_bound=0,
        plain_cost=quick[0] if quick else None,
        plain_sticks=quick[1] if quick else None,
    )


def _kerfs(job: Job, parts: Sequence[tuple[TrimPlan, tuple[Piece, ...]]]) -> set[Fraction]:
    return {steepest_kerf(own, job.settings.kerf) for _, own in parts}


def _bound(
    job: Job, trim: Trim, parts: Sequence[tuple[Piece, ...]]
) -> tuple[Fraction, tuple[Fraction, int] | None]:
    """Return a cost that no plan of these pieces goes below, and what plain packing costs."""
    question = ask(job, trim, [piece for own in parts for piece in own])
    # The kerf along the stick grows with the steepest mitre among the pieces. Each flat was planned
    # with its own, so only the thinnest is a bound for all.
    thin = min(steepest_kerf(own, job.settings.kerf) for own in parts)
    problem = replace(question.problem, kerf=question.room_in(thin))
    plan = sound_plan(problem, effort=replace(QUICK, seconds=0.0))
    if not isinstance(plan, Plan):
        return Fraction(0), None
    plain = plan.plain
    money = Fraction(1, question.per_coin)
    return plan.bound * money, None if plain is None else (plain.cost * money, plain.sticks)


def _lost(plans: Iterable[TrimPlan]) -> Lost:
    total = Lost()
    for plan in plans:
        total = Lost(
            total.kerf + plan.lost.kerf,
            total.ends + plan.lost.ends,
            total.offcut + plan.lost.offcut,
            total.scrap + plan.lost.scrap,
        )
    return total
