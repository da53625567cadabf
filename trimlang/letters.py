"""Letters that are not what they seem: hidden signs, and look-alikes of other alphabets."""

from __future__ import annotations

import unicodedata
from typing import Final

_LATIN: Final = str.maketrans(
    "авекмнорстухѕіјһԁԛԝАВЕКМНОРСТУХЅІЈҺԚԜαγικνορυϲϳΑΒΕΖΗΙΚΜΝΟΡΤΥΧϹͿցհոսօՕՍԼ",
    "abekmhopctyxsijhdqwABEKMHOPCTYXSIJhQWayiknopucjABEZHIKMNOPTYXCJghnuoOUL",
)
"""Cyrillic, Greek and Armenian letters that print much as a Latin letter does.

Picked from the table of Unicode Technical Standard 39, without rare scripts.
"""

STEERING: Final = frozenset(
    "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
)
"""Marks that turn the direction of text: they could show a length's figures backwards."""

_JOINERS: Final = "\u200c\u200d"
"""They shape letters of some scripts, and join emoji."""

_CONFUSED: Final = frozenset({"CYRILLIC", "GREEK", "ARMENIAN"})


def is_hidden(sign: str) -> bool:
    """Tell whether a sign has no look of its own: controls, formats, line separators."""
    return (
        unicodedata.category(sign) in ("Cc", "Cf", "Cs", "Zl", "Zp")
        and sign != "\t"
        and sign not in _JOINERS
    )


def stranger_in(name: str) -> int | None:
    """Return where a name has a letter that passes for one of another alphabet, if it has.

    That is the first letter of a second alphabet, or one that is another's only
    in shape, as full-width letters are.
    """
    first = _alphabet(name[0])
    for at, sign in enumerate(name):
        if not sign.isalpha() or (sign.isascii() and first == "LATIN"):
            continue
        if not sign.isascii() and unicodedata.normalize("NFKC", sign).isascii():
            return at
        here = _alphabet(sign)
        if here != first and {here, first} & _CONFUSED:
            return at
    return None


def looks_like(name: str) -> str:
    """Return what a name looks like: the same for two names that print alike."""
    if name.isascii():
        return name
    return unicodedata.normalize("NFKC", name).translate(_LATIN)


def _alphabet(letter: str) -> str:
    return unicodedata.name(letter, "").partition(" ")[0]


def printable(text: str) -> str:
    """Return text that cannot steer a terminal: tabs become blanks, controls a mark."""
    return "".join(
        sign if sign.isprintable() else " " if sign == "\t" else "\N{REPLACEMENT CHARACTER}"
        for sign in text
    )
