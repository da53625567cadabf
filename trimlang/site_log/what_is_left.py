"""What is left to cut and what there is to cut it from, put as the planner's problem."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import replace
from fractions import Fraction
from typing import TypeAlias

from trimlang.joinery.piece import Piece
from trimlang.record import record
from trimlang.site_log.rack import Origin, Rack, WholeStick
from trimlang.site_log.whole_units import ScaledTrim
from trimlang.stock.problem import Blank, Problem
from trimlang.survey.job import Offer

Supply: TypeAlias = str | WholeStick | Offer
"""What a blank of the problem stands for: a begun stick (its name), sticks in hand, an offer."""


@record
class Spare:
    """The spare to have: whole sticks of so many units together, or room for any one piece."""

    whole: int = 0
    any_one: bool = False


@record
class Left:
    """The planner's problem, and what each of its blanks stands for, by the blank's key."""

    problem: Problem
    supply: Mapping[str, Supply]


def left(
    scaled: ScaledTrim,
    rack: Rack,
    to_cut: Collection[str],
    spare: Spare,
    held: Mapping[str, int],
) -> Left:
    """Return the planner's problem for the pieces still to cut.

    ``held`` is how much room the pieces take that stay on a begun stick, by the stick's name:
    they may share a mitre with what was cut off it, and so need more than its plain rest.
    """
    asked = scaled.question.problem
    ends = 2 * asked.end_waste
    blanks: list[Blank] = []
    supply: dict[str, Supply] = {}
    for name, stick in rack.started.items():
        room = max(scaled.rest(stick.length, stick.done), held.get(name, 0))
        if room > 0:
            key = f"stick {name}"
            supply[key] = name
            # The planner squares off both ends of every blank. This rest is between squared ends
            # already, so what the planner will take off is added.
            blanks.append(Blank(key, room + ends, 0, limit=1, on_hand=True))
    for number, (kind, count) in enumerate(sorted(rack.whole.items()), start=1):
        if count > 0 and scaled.units(kind.length) > 0:
            key = f"{kind.origin} {number}"
            supply[key] = kind
            # An offcut of the shop is paid for when it is first cut; a bought stick has been paid
            # for.
            due = kind.price if kind.origin is Origin.SHOP else 0
            blanks.append(
                Blank(
                    key,
                    scaled.units(kind.length),
                    int(due * scaled.question.per_coin),
                    limit=count,
                    on_hand=kind.origin is Origin.SHOP,
                )
            )
    for number, offer in enumerate(scaled.trim.offers, start=1):
        limit = offer.at_most
        if limit is not None:
            # The limit holds for the whole job, and some of it is bought already.
            limit = max(limit - rack.bought[offer.length], 0)
        key = f"offer-{number}"
        supply[key] = offer
        price = int(offer.price * scaled.question.per_coin)
        blanks.append(
            Blank(
                key=key,
                length=scaled.units(offer.length),
                price=price,
                pack=offer.pack,
                limit=limit,
                bundle="" if offer.bundle is None else f"bundle-{offer.bundle}",
            )
        )
    problem = replace(
        asked,
        # None of these blanks has a batch; the plan in force, which stays (see ``replan``), keeps
        # batches apart.
        parts=tuple(part for name, part in scaled.parts.items() if name in to_cut),
        blanks=tuple(blanks),
        spare=spare.whole,
        survive_loss=spare.any_one,
        # What was bought has met the yard's minimum; what is bought after it is between the two.
        least_sticks=0 if rack.was_bought else asked.least_sticks,
        least_spent=0 if rack.was_bought else asked.least_spent,
    )
    return Left(problem, supply)


def spare_asked(
    scaled: ScaledTrim, pieces: Mapping[str, Piece], to_cut: Collection[str], percent: Fraction
) -> Spare:
    """Return the spare that the job asks for, by what is still to cut."""
    needed = sum(
        (pieces[name].length for name in to_cut if not pieces[name].kind.is_glued),
        Fraction(0),
    )
    whole = scaled.question.room_for(needed * percent / 100)
    return Spare(whole, scaled.question.problem.survive_loss and bool(to_cut))
