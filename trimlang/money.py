"""Money as text, exact, as in a price list."""

from __future__ import annotations

from fractions import Fraction
from math import floor


def money_text(amount: Fraction) -> str:
    """Write money that is not negative, with two decimals, or up to six where it has more.

    >>> money_text(Fraction("17.4")), money_text(Fraction("0.125"))
    ('17.40', '0.125')
    """
    places = 2
    # A price for a foot may have fractions of a cent; rounded here, a long order would come out
    # wrong.
    while places < 6 and (amount * 10**places).denominator != 1:
        places += 1
    scaled = round(amount * 10**places)
    return f"{scaled // 10**places}.{scaled % 10**places:0{places}d}"


def to_the_cent(amount: Fraction) -> Fraction:
    """Return money as a till rounds it: to the cent, half a cent up."""
    return Fraction(floor(amount * 100 + Fraction(1, 2)), 100)
