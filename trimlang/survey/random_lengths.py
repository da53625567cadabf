"""Reads sticks of random length: a bundle that is bought whole, or a list to pick from."""

from __future__ import annotations

from fractions import Fraction

from trimlang.language.stick_facts import RandomLengths
from trimlang.lengths.tape import Unit
from trimlang.lengths.units import in_inches
from trimlang.money import to_the_cent
from trimlang.survey.job import Offer, Trim
from trimlang.survey.measures import Findings, money
from trimlang.survey.offers import read_count, stick_sold
from trimlang.survey.sticks import share_price


def read_random_lengths(
    line: RandomLengths, trim: Trim, unit: Unit, findings: Findings
) -> tuple[Offer, ...]:
    """Return the offers that a list of random lengths adds to a trim; none where it cannot be.

    Of a bundle each length is a pack with its share of the price, and all packs are bought
    together.  Of a list to pick from each stick has its price, and there are so many.
    """
    counts: dict[Fraction, int] = {}
    for one in line.sticks:
        long, count = stick_sold(one.length, unit, findings), read_count(one.count, findings)
        if long is None or count is None:
            return ()
        # A length may stand twice in a list; as one offer it is bought or left as a whole all the
        # same.
        counts[long] = counts.get(long, 0) + count
    price = money(line.price, findings)
    most = read_count(line.at_most, findings) if line.at_most else None
    if price is None or (line.at_most and most is None):
        return ()
    rate = None if line.by_unit is None else price / in_inches(Fraction(1), line.by_unit)
    if not line.whole:
        return tuple(
            Offer(
                length=long,
                price=price if rate is None else to_the_cent(rate * long),
                pack=1,
                at_most=count,
                span=line.span,
            )
            for long, count in counts.items()
        )
    lengths = [long * count for long, count in counts.items()]
    whole = price if rate is None else to_the_cent(rate * sum(lengths, Fraction(0)))
    # A number of its own for each bundle of a trim: two of the same price and lengths are still
    # bought one by one.
    number = 1 + max((one.bundle or 0 for one in trim.offers), default=0)
    return tuple(
        Offer(
            length=long,
            price=share,
            pack=count,
            at_most=None if most is None else most * count,
            span=line.span,
            bundle=number,
        )
        for (long, count), share in zip(counts.items(), share_price(whole, lengths), strict=True)
    )
