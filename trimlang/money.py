"""Money as text: exact, as a price list or an account has it."""

from __future__ import annotations

from fractions import Fraction


def money_text(amount: Fraction) -> str:
    """Write money with two places, more (six at most) where the job's prices have more.

    >>> money_text(Fraction("17.4")), money_text(Fraction("0.125"))
    ('17.40', '0.125')
    """
    places = 2
    while places < 6 and (amount * 10**places).denominator != 1:
        places += 1
    scaled = round(amount * 10**places)
    return f"{scaled // 10**places}.{scaled % 10**places:0{places}d}"
