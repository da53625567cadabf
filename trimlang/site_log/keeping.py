"""Keeps the plan in force for all that the log did not touch."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable
from dataclasses import dataclass, field
from fractions import Fraction

from trimlang.site_log.in_hand import Whole, Yard
from trimlang.site_log.whole_units import Bench, Laid, Layout
from trimlang.stock.problem import Part


@dataclass(slots=True)
class Kept:
    """A stick of the plan that is kept.

    ``shop`` is the kind of offcut that it is, None for sticks begun and for
    sticks of the yard, in hand or still to be bought.
    """

    name: str
    length: Fraction
    begun: bool
    shop: Whole | None = None
    done: tuple[Part, ...] = ()
    todo: list[str] = field(default_factory=list)


def keep(bench: Bench, yard: Yard, layout: Layout, to_cut: Collection[str]) -> list[Kept] | None:
    """Return the sticks of the plan in force with every piece on one, None where there is no room.

    Pieces stay where they were; those without a stick go, the longest first, on
    the smallest rest that holds them, on a stick in hand, on one to be bought.
    """
    kept = _as_before(bench, yard, layout, to_cut)
    placed = {name for stick in kept for name in stick.todo}
    homeless = sorted(
        (name for name in bench.parts if name in to_cut and name not in placed),
        key=lambda name: (-bench.parts[name].length, name),
    )
    for name in homeless:
        stick = _roomiest(bench, kept, name) or _another(bench, yard, kept, layout, name)
        if stick is None:
            return None
        if bench.parts[name].length < bench.question.problem.short:
            stick.todo.insert(0, name)  # while the stick is still long
        else:
            stick.todo.append(name)
    return [stick for stick in kept if stick.todo]


def fits(bench: Bench, length: Fraction, done: Iterable[Part], todo: Iterable[str]) -> bool:
    """Tell whether the pieces fit on a stick behind what was cut from it."""
    parts = [*done, *(bench.parts[name] for name in todo)]
    return bench.reach(parts) <= bench.between(length)


def _as_before(bench: Bench, yard: Yard, layout: Layout, to_cut: Collection[str]) -> list[Kept]:
    shop = Counter({kind: n for kind, n in yard.whole.items() if kind.origin == "shop"})
    kept = [
        Kept(stick.name, stick.length, True, done=stick.done) for stick in yard.started.values()
    ]
    begun = {stick.name: stick for stick in kept}
    seen: set[str] = set()
    for laid in layout.sticks:
        todo = [name for name in laid.todo if name in to_cut and name not in seen]
        stick = begun.get(laid.name)
        if stick is None:
            stick = Kept(laid.name, laid.length, False)
            if laid.origin == "shop":
                kinds = [kind for kind, n in shop.items() if n and kind.length == laid.length]
                if not kinds:
                    continue  # that offcut is no longer there
                stick.shop = min(kinds, key=lambda kind: (kind.price != laid.price, kind.price))
                shop[stick.shop] -= 1
            kept.append(stick)
        while todo and not fits(bench, stick.length, stick.done, todo):
            todo.pop()
        stick.todo = todo
        seen.update(todo)
    return [stick for stick in kept if stick.todo or stick.begun]


def _roomiest(bench: Bench, kept: Iterable[Kept], name: str) -> Kept | None:
    """Return the stick with the smallest rest that still holds the piece."""
    able = [
        stick for stick in kept if fits(bench, stick.length, stick.done, [*stick.todo, name])
        and (bench.parts[name].length >= bench.question.problem.short
             or fits(bench, stick.length, stick.done, [name, *stick.todo]))
    ]  # fmt: skip
    return min(able, key=lambda stick: (_rest(bench, stick), stick.name), default=None)


def _rest(bench: Bench, stick: Kept) -> int:
    parts = [*stick.done, *(bench.parts[name] for name in stick.todo)]
    return bench.between(stick.length) - bench.reach(parts)


def _another(bench: Bench, yard: Yard, kept: list[Kept], layout: Layout, name: str) -> Kept | None:
    """Return one more stick that holds the piece: the cheapest, then the shortest."""
    taken = Counter(stick.shop for stick in kept if stick.shop is not None)
    used = Counter(stick.length for stick in kept if not stick.begun and stick.shop is None)
    choices: list[tuple[Fraction, Fraction, Whole | None]] = []
    hand: Counter[Fraction] = Counter()
    for kind, count in yard.whole.items():
        if kind.origin == "hand":
            hand[kind.length] += count
        elif count > taken[kind]:
            choices.append((kind.price, kind.length, kind))
    choices += [(Fraction(0), length, None) for length in hand if hand[length] > used[length]]
    for offer in bench.trim.offers:
        if offer.at_most is None or used[offer.length] < offer.at_most:
            choices.append((offer.price / offer.pack, offer.length, None))
    able = [choice for choice in choices if fits(bench, choice[1], (), [name])]
    if not able:
        return None
    _, length, shop = min(able, key=lambda choice: (choice[0], choice[1], choice[2] is None))
    number = next_number(bench, yard, [*(one.name for one in kept)], layout.sticks)
    kept.append(Kept(f"{bench.trim.name}-{number}", length, False, shop))
    return kept[-1]


def next_number(bench: Bench, yard: Yard, taken: Iterable[str], before: Iterable[Laid] = ()) -> int:
    """Return the first number that no stick of the trim has, or had in the plan before."""
    names = {*taken, *yard.started, *(laid.name for laid in before)}
    number = 1
    while f"{bench.trim.name}-{number}" in names:
        number += 1
    return number
