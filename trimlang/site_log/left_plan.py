"""The plan of what is left, in inches and money, as the sheets show it."""

from __future__ import annotations

from fractions import Fraction

from trimlang.planning.layout import Bought, CutStick, Lost, StickPlace, TrimPlan
from trimlang.site_log.rack import Origin
from trimlang.site_log.replan import stick_number
from trimlang.site_log.trim_progress import TrimProgress


def trim_plan(progress: TrimProgress) -> TrimPlan:
    """Return one trim's plan: every stick with what was cut and what will be cut from it.

    ``cost`` and ``bound`` count only what is still to be bought.
    """
    scaled, rack, layout = progress.scaled, progress.rack, progress.layout
    todo = {laid.name: laid for laid in layout.sticks}
    sticks: list[CutStick] = []
    kerf = ends = offcut = scrap = 0
    worth = scaled.question.problem.usable
    # Begun sticks and planned ones in one list, so that the sheets show each stick once, whole.
    for name in sorted({*rack.started, *todo}, key=stick_number):
        begun, laid = rack.started.get(name), todo.get(name)
        source = begun if begun is not None else laid
        assert source is not None  # noqa: S101  the name came from one of the two
        done = () if begun is None else begun.done
        coming = () if laid is None else laid.todo
        parts = [*done, *(scaled.parts[one] for one in coming)]
        starts = scaled.starts(parts)
        squared = scaled.question.problem.end_waste
        places: list[StickPlace] = []
        for number, (part, start) in enumerate(zip(parts, starts, strict=True)):
            before = parts[number - 1] if number else None
            shared = before is not None and scaled.parting(before, part).one_pass
            # What is not among the job's pieces was spoiled, or its wall is gone: its wood is
            # scrap.
            if part.id in scaled.parts:
                at = squared + start
                places.append(
                    StickPlace(part.id, scaled.inches(at), scaled.inches(at + part.length), shared)
                )
            else:
                scrap += part.length
        rest = scaled.rest(source.length, parts)
        # A cut between each two, spoiled pieces too: the saw took its kerf for them all the same.
        kerf += (len(parts) - 1) * scaled.kerf
        ends += 2 * squared
        offcut += rest if rest >= worth else 0
        scrap += rest if rest < worth else 0
        if places:
            sticks.append(
                CutStick(
                    id=name,
                    trim=scaled.trim.name,
                    length=source.length,
                    on_hand=source.origin is Origin.SHOP,
                    price=source.price,
                    places=tuple(places),
                    offcut=scaled.inches(rest),
                    squared=scaled.inches(squared),
                    batch=scaled.trim.batch_of(source.length, on_hand=source.origin is Origin.SHOP),
                )
            )
    coin = scaled.question.per_coin
    return TrimPlan(
        trim=scaled.trim.name,
        sticks=tuple(sticks),
        bought=_bought(progress),
        whole_sticks=_whole(progress),
        spare_asked=scaled.inches(layout.spare),
        cost=Fraction(layout.cost, coin),
        bound=Fraction(layout.bound, coin),
        status=layout.status,
        survives_loss=layout.survives_loss,
        lost=Lost(*(scaled.inches(units) for units in (kerf, ends, offcut, scrap))),
        # How few sticks could do was not worked out, so nothing is claimed.
        stick_bound=0,
    )


def _bought(progress: TrimProgress) -> tuple[Bought, ...]:
    """Return what is still to be bought, and the shop's offcuts that are still to be used."""
    lines = [
        Bought(
            length=offer.length,
            pack=offer.pack,
            packs=packs,
            price=offer.price,
            on_hand=False,
            bundle=offer.bundle,
        )
        for offer, packs in progress.layout.order
    ]
    shop: dict[tuple[Fraction, Fraction], int] = {}
    for laid in progress.layout.sticks:
        # A rest that was begun is used up already; it is not taken off the rack again.
        if laid.origin is Origin.SHOP and laid.name not in progress.rack.started:
            key = (laid.length, laid.price)
            shop[key] = shop.get(key, 0) + 1
    for kind, count in progress.layout.aside:
        key = (kind.length, kind.price)
        shop[key] = shop.get(key, 0) + count
    lines += [
        Bought(length=length, pack=1, packs=count, price=price, on_hand=True)
        for (length, price), count in shop.items()
    ]
    return tuple(lines)


def _whole(progress: TrimProgress) -> tuple[Fraction, ...]:
    """Return the lengths of the sticks that stay whole.

    Those are bought sticks, in hand or on the order, and offcuts of the shop that are the spare.
    """
    left: dict[Fraction, int] = {}
    for kind, count in progress.rack.whole.items():
        if kind.origin is Origin.HAND:
            left[kind.length] = left.get(kind.length, 0) + count
    for offer, packs in progress.layout.order:
        left[offer.length] = left.get(offer.length, 0) + packs * offer.pack
    for laid in progress.layout.sticks:
        # A stick that pieces are planned on does not stay whole.
        if laid.name not in progress.rack.started and laid.origin is not Origin.SHOP:
            left[laid.length] = left.get(laid.length, 0) - 1
    aside = [kind.length for kind, count in progress.layout.aside for _ in range(count)]
    return tuple(sorted([*(one for one in left for _ in range(max(left[one], 0))), *aside]))
