"""What buying the fewest sticks would take: fewer to carry, as a rule more money."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.planning.ask import Question
from trimlang.planning.placing import AT_ONCE
from trimlang.planning.sound_plan import sound_plan
from trimlang.record import record
from trimlang.stock.problem import Blank, NoPlan, Problem

MOST_PIECES: Final = 1000
"""More pieces of a trim than this take the quick planner longer than a sheet should wait."""


@record
class Offered:
    """A line of the alternative order: ``packs`` packs of ``pack`` sticks of one length."""

    length: Fraction
    pack: int
    packs: int


@record
class Fewest:
    """The fewest sticks to buy that the quick planner found, and what they cost.

    ``least`` is proven: no plan buys fewer sticks than that.  Whether another plan of
    as few sticks is cheaper is not asked.
    """

    sticks: int
    cost: Fraction
    lines: tuple[Offered, ...]
    least: int


def fewest_sticks(question: Question) -> Fewest | None:
    """Find a plan that buys few sticks; None: there are too many pieces, or none is found.

    One large amount is added to the price of every bought stick, so that the cheapest
    plan is one of few sticks, and among those a cheap one.  Rests from the shop
    stay as they are: they are carried already.
    """
    problem = question.problem
    if len(problem.parts) > MOST_PIECES:
        return None
    each = _large_price(problem)
    plan = sound_plan(
        # It goes through the same check as every plan, since its figures are printed too.
        replace(problem, blanks=tuple(_repriced(blank, each) for blank in problem.blanks)),
        effort=AT_ONCE,
    )
    if isinstance(plan, NoPlan):
        return None
    blanks = {blank.key: blank for blank in problem.blanks}
    bought = [line for line in plan.purchases if line.packs and not blanks[line.blank].on_hand]
    sticks = sum(line.packs * blanks[line.blank].pack for line in bought)
    cost = sum(line.packs * blanks[line.blank].price for line in plan.purchases)
    return Fewest(
        sticks,
        Fraction(cost, question.per_coin),
        tuple(
            Offered(
                question.sources[line.blank].length,
                blanks[line.blank].pack,
                line.packs,
            )
            for line in bought
        ),
        # The real prices together never reach the large amount, so dividing leaves the sticks.
        plan.bound // each,
    )


def _large_price(problem: Problem) -> int:
    """Return more than any plan without needless sticks costs."""
    shortest = min((blank.length for blank in problem.blanks), default=1)
    most = len(problem.parts) + problem.spare // max(shortest, 1) + 1
    return 1 + most * sum(blank.price for blank in problem.blanks)


def _repriced(blank: Blank, each: int) -> Blank:
    return blank if blank.on_hand else replace(blank, price=blank.price + each * blank.pack)
