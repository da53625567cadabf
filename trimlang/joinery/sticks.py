"""How long a piece the sticks of a trim can give."""

from __future__ import annotations

from fractions import Fraction

from trimlang.survey.job import Trim


def longest_stick(trim: Trim, squares_off: Fraction) -> Fraction | None:
    """Return the longest piece that bought stock (else what is on hand) can give."""
    lengths = [offer.length for offer in (*trim.offers, *trim.logged)] or [
        rest.length for rest in trim.rests
    ]
    return max(lengths) - 2 * squares_off if lengths else None
