"""Checks the finished shared plan of one trim against what was asked.

Written from the definitions of ``TrimPlan`` and ``Trim`` alone, in inches and money.  It shares
no code with the planner or with the shared order, so that a mistake there cannot hide here.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from fractions import Fraction

from trimlang.joinery.piece import Piece
from trimlang.planning.layout import TrimPlan
from trimlang.survey.job import Trim


def faults(trim: Trim, pieces: Iterable[Piece], plan: TrimPlan, step: Fraction) -> tuple[str, ...]:
    """Return everything that is wrong with a plan for these pieces, in words; empty if sound.

    ``step`` is the distance between two marks of the tape, in inches.
    """
    lengths = {piece.id: piece.length for piece in pieces}
    return (*_placed(lengths, plan), *_on_sticks(lengths, plan, step), *_bought(trim, plan))


def _placed(lengths: dict[str, Fraction], plan: TrimPlan) -> list[str]:
    placed = Counter(place.piece for stick in plan.sticks for place in stick.places)
    found = [f"piece {name} lies on no stick" for name in lengths if name not in placed]
    found += [f"piece {name} lies on {n} sticks" for name, n in placed.items() if n > 1]
    found += [f"nobody asked for piece {name}" for name in placed if name not in lengths]
    return found


def _on_sticks(lengths: dict[str, Fraction], plan: TrimPlan, step: Fraction) -> list[str]:
    found = []
    if len({stick.id for stick in plan.sticks}) < len(plan.sticks):
        found.append("two sticks have one name")
    for stick in plan.sticks:
        reach = Fraction(0)
        for place in stick.places:
            # A piece begins and ends at marks of the tape, so it may take up to a step more than
            # its length.
            long = place.end - place.start
            if not 0 <= long - lengths.get(place.piece, long) < step:
                found.append(f"piece {place.piece} is {long} long on stick {stick.id}")
            # Neighbours overlap where they share a mitre, but a piece never ends before the one
            # before it.
            if place.start < 0 or place.end < reach:
                found.append(f"piece {place.piece} lies within another on stick {stick.id}")
            reach = max(reach, place.end)
        # Kerfs and squared-off ends lie between or behind them, so the sum may be less than the
        # stick's length, but never more.
        if reach + stick.offcut > stick.length:
            found.append(f"stick {stick.id} is overfilled")
    return found


def _bought(trim: Trim, plan: TrimPlan) -> list[str]:
    found = []
    bought: Counter[tuple[bool, Fraction]] = Counter()
    taken: Counter[tuple[bool, Fraction, int, Fraction]] = Counter()
    for line in plan.bought:
        bought[line.on_hand, line.length] += line.packs * line.pack
        taken[line.on_hand, line.length, line.pack, line.price] += line.packs
    # Sticks of one length are interchangeable, whichever offer they came from, so they are counted
    # by length.
    cut = Counter((stick.on_hand, stick.length) for stick in plan.sticks)
    found += [
        f"{count} sticks of {length} in are cut, and {bought[hand, length]} taken"
        for (hand, length), count in cut.items()
        if count > bought[hand, length]
    ]
    for (hand, length, pack, price), packs in taken.items():
        if hand:
            limits: list[int | None] = [
                rest.count for rest in trim.rests if (rest.length, rest.price) == (length, price)
            ]
        else:
            limits = [
                one.at_most
                for one in trim.offers
                if (one.length, one.pack, one.price) == (length, pack, price)
            ]
        if not limits:
            found.append(f"sticks of {length} in at {price} are not on offer")
        # Two offers may read the same; what they allow adds up.
        elif None not in limits and packs * pack > sum(limit or 0 for limit in limits):
            found.append(f"{packs * pack} sticks of {length} in are taken, more than there are")
    # Spare is whole bought sticks: what is bought and not cut.
    spare = sum(
        (
            length * (count - cut[hand, length])
            for (hand, length), count in bought.items()
            if not hand
        ),
        Fraction(0),
    )
    if spare < plan.spare_asked:
        found.append(f"whole sticks for spare are {spare} in long together")
    if plan.cost != sum((line.packs * line.price for line in plan.bought), Fraction(0)):
        found.append("the purchases do not come to the cost")
    if plan.bound > plan.cost:
        found.append("the bound is above the cost")
    return found
