"""Facts about single entries of the log, for the replay."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from trimlang.survey.job import Trim
from trimlang.survey.log_entries import BoughtSticks, Counted, Entry, Spoiled


def same_line(one: Entry, other: Entry) -> bool:
    """Tell whether two entries stand in the same line."""
    return (one.span.file, one.span.line) == (other.span.file, other.span.line)


def most_for(trim: Trim, entry: BoughtSticks) -> Fraction | None:
    """Return what the sticks cost at most by the stock lines, None where these do not say."""
    offers = [offer for offer in trim.offers if offer.length == entry.length]
    # With a limit, the cheapest offer may be used up, so nothing is sure.
    if not offers or any(offer.at_most is not None for offer in offers):
        return None
    # The cheapest way that the yard offers, since the bound counts on no more.
    return min(ceil(Fraction(entry.count, offer.pack)) * offer.price for offer in offers)


def changes_stock(entry: Entry) -> bool:
    """Tell whether an entry changes what there is to cut from or to cut, so that a plan is due."""
    return isinstance(entry, BoughtSticks | Counted | Spoiled)
