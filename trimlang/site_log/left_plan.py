"""The plan of what is left, in inches and money, as the sheets show it."""

from __future__ import annotations

from fractions import Fraction

from trimlang.planning.layout import Bought, CutStick, Lost, Place, TrimPlan
from trimlang.site_log.replan import stick_number
from trimlang.site_log.replay import TrimSite


def trim_plan(site: TrimSite) -> TrimPlan:
    """Return one trim's plan: every stick with what was and what will be cut from it.

    ``cost`` and ``bound`` are of what is still to be bought.
    """
    bench, yard, layout = site.bench, site.yard, site.layout
    todo = {laid.name: laid for laid in layout.sticks}
    sticks: list[CutStick] = []
    kerf = ends = offcut = scrap = 0
    worth = bench.question.problem.usable
    for name in sorted({*yard.started, *todo}, key=stick_number):
        begun, laid = yard.started.get(name), todo.get(name)
        source = begun if begun is not None else laid
        assert source is not None  # noqa: S101  the name came from one of the two
        done = () if begun is None else begun.done
        coming = () if laid is None else laid.todo
        parts = [*done, *(bench.parts[one] for one in coming)]
        starts = bench.starts(parts)
        squared = bench.question.problem.end_waste
        places: list[Place] = []
        for number, (part, start) in enumerate(zip(parts, starts, strict=True)):
            before = parts[number - 1] if number else None
            shared = (
                before is not None
                and before.right_lean * part.left_lean > 0
                and before.right_lean == part.left_lean
            )
            if part.id in bench.parts:
                at = squared + start
                places.append(
                    Place(part.id, bench.inches(at), bench.inches(at + part.length), shared)
                )
            else:
                scrap += part.length
        rest = bench.rest(source.length, parts)
        kerf += (len(parts) - 1) * bench.kerf
        ends += 2 * squared
        offcut += rest if rest >= worth else 0
        scrap += rest if rest < worth else 0
        if places:
            sticks.append(
                CutStick(
                    name,
                    bench.trim.name,
                    source.length,
                    source.origin == "shop",
                    source.price,
                    tuple(places),
                    bench.inches(rest),
                    bench.inches(squared),
                )
            )
    coin = bench.question.per_coin
    return TrimPlan(
        bench.trim.name,
        tuple(sticks),
        _bought(site),
        _whole(site),
        bench.inches(layout.spare),
        Fraction(layout.cost, coin),
        Fraction(layout.bound, coin),
        layout.status,
        layout.survives_loss,
        Lost(*(bench.inches(units) for units in (kerf, ends, offcut, scrap))),
        len(sticks),
    )


def _bought(site: TrimSite) -> tuple[Bought, ...]:
    """Return what is still to be bought, and the offcuts that are still to be taken."""
    lines = [
        Bought(offer.length, offer.pack, packs, offer.price, False)
        for offer, packs in site.layout.order
    ]
    shop: dict[tuple[Fraction, Fraction], int] = {}
    for laid in site.layout.sticks:
        if laid.origin == "shop" and laid.name not in site.yard.started:
            key = (laid.length, laid.price)
            shop[key] = shop.get(key, 0) + 1
    lines += [Bought(length, 1, count, price, True) for (length, price), count in shop.items()]
    return tuple(lines)


def _whole(site: TrimSite) -> tuple[Fraction, ...]:
    """Return the bought sticks, had or to be had, that stay whole."""
    left: dict[Fraction, int] = {}
    for kind, count in site.yard.whole.items():
        if kind.origin == "hand":
            left[kind.length] = left.get(kind.length, 0) + count
    for offer, packs in site.layout.order:
        left[offer.length] = left.get(offer.length, 0) + packs * offer.pack
    for laid in site.layout.sticks:
        if laid.name not in site.yard.started and laid.origin != "shop":
            left[laid.length] = left.get(laid.length, 0) - 1
    return tuple(length for length in sorted(left) for _ in range(max(left[length], 0)))
