"""How wide the sheets' type runs, so that a ticket's text is known to fit before it is printed.

The widths are those of the shipped fonts (regular and bold run alike), in
thousandths of the size.  A letter that they lack comes from another font and
counts as a full square, which is wide for most scripts and right for many.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Final
from unicodedata import category

_OTHER: Final = 1100


class _Widths(dict[str, int]):
    """Letter to width; of letters that the fonts lack it finds out and remembers."""

    def __missing__(self, letter: str) -> int:
        self[letter] = 0 if category(letter) in ("Mn", "Me", "Cf") else _OTHER
        return self[letter]


_WIDTHS: Final = _Widths(
    (letter, width)
    for width, letters in {
        0: "\xad",
        200: "'|¦",
        250: ",;·′",
        300: ".:Iij°²³¹ÌÍÎÏìíîï",
        350: " !l\xa0¡‘’‚",
        400: '"frtªº″',
        450: "()-J[sš",
        500: "=]cz¢§“”≈",
        550: "aç$*/?FLS\\_`ekvxy£¨©®¯´¸¿àáâãäåèéêë÷ýÿŠ–−",
        600: "+CEKPTYZbdghnopqu}¤¥±ÈÉÊËÝñòóôõöøùúûüþŸ•",
        650: "{0123456789<>ABDGRVXµÀÁÂÃÄÅÇÐÞßð",
        700: "&HU«¶»ÙÚÛÜ",
        750: "N^w~¼½¾Ñ…",
        800: "OQÒÓÔÕÖ×Ø↙↘↖↗",
        850: "#¬Ææ",
        900: "%Mm",
        950: "Wœ",
        1000: "@Œ",
        1050: "—",
    }.items()
    for letter in letters
)
_CARE: Final = 1.01
"""Lines are taken to be a hundredth fuller than they are: layouts round."""
CUT_SHORT: Final = "…"


def run(text: str, size: float) -> float:
    """Return how far a text runs on one line, in the unit of ``size``."""
    return _thousandths(text) * size / 1000 * _CARE


# Tickets say the same few words over and over, and often the same lines.
@lru_cache(maxsize=4096)
def _thousandths(text: str) -> int:
    return sum(map(_WIDTHS.__getitem__, text))


@lru_cache(maxsize=4096)
def lines(text: str, across: float, size: float) -> int:
    """Return how many lines of ``across`` a text takes; a word too long for one is broken."""
    count, used = 1, 0.0
    space = run(" ", size)
    # a space that does not break holds its words together
    for word in filter(None, text.split(" ")):
        wide = run(word, size)
        if used and used + space + wide <= across:
            used += space + wide
            continue
        count += bool(used)
        if wide > across:
            # a broken line may stay a letter short of full
            full = max(across - size, size)
            count += int(wide // full)
            wide %= full
        used = wide
    return count


def size_for(text: str, across: float, most: float, least: float) -> float:
    """Return the largest size from ``most`` down to ``least`` that sets a text in one line."""
    wide = run(text, most)
    if wide <= across:
        return most
    return max(int(most * across / wide * 20) / 20, least)


def shortened(text: str, across: float, size: float) -> str:
    """Return a text that runs no further than ``across``, its middle left out where it must be."""
    if run(text, size) <= across:
        return text
    keep = len(text)
    while keep > 1:
        keep = keep * 9 // 10 if keep > 40 else keep - 1
        head = (keep + 1) // 2
        cut = f"{text[:head].rstrip()}{CUT_SHORT}{text[len(text) - (keep - head) :].lstrip()}"
        if run(cut, size) <= across:
            return cut
    return CUT_SHORT
