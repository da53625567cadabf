"""Letters that are not what they seem: hidden characters, and look-alikes across alphabets.

Two trims whose names print alike but differ would be two trims for trimlang and one for everybody
else.
"""

from __future__ import annotations

import unicodedata
from typing import Final

_LATIN: Final = str.maketrans(
    "авекмнорстухѕіјһԁԛԝАВЕКМНОРСТУХЅІЈҺԚԜαγικνορυϲϳΑΒΕΖΗΙΚΜΝΟΡΤΥΧϹͿցհոսօՕՍԼ",
    "abekmhopctyxsijhdqwABEKMHOPCTYXSIJhQWayiknopucjABEZHIKMNOPTYXCJghnuoOUL",
)
"""Cyrillic, Greek and Armenian letters that look much like a Latin letter in print.

Chosen from the table of Unicode Technical Standard 39, without rare scripts.
"""

STEERING: Final = frozenset(
    "\u061c\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069"
)
"""Marks that change the direction of text: they could show a length's figures backwards."""

_JOINERS: Final = "\u200c\u200d"
"""Allowed, although they are invisible: they shape letters of some scripts and join emoji."""

_CONFUSED: Final = frozenset({"CYRILLIC", "GREEK", "ARMENIAN"})


def is_hidden(sign: str) -> bool:
    """Tell whether a character is invisible: controls, formats, line separators."""
    return (
        unicodedata.category(sign) in ("Cc", "Cf", "Cs", "Zl", "Zp")
        and sign != "\t"
        and sign not in _JOINERS
    )


def stranger_in(name: str) -> int | None:
    """Return where a name has a letter that passes for one of another alphabet, None if nowhere.

    That is the first letter from a second alphabet, or a letter such as a full-width one, which
    only looks different from the plain one.
    """
    # The alphabet that a name begins with is taken for its own; the odd one out is what is marked.
    first = _alphabet(name[0])
    for at, sign in enumerate(name):
        # Digits and hyphens belong to no alphabet.
        if not sign.isalpha() or (sign.isascii() and first == "LATIN"):
            continue
        # A full-width or mathematical letter: a plain one in other clothes.
        if not sign.isascii() and unicodedata.normalize("NFKC", sign).isascii():
            return at
        here = _alphabet(sign)
        # Only these have letters that pass for Latin ones; other scripts beside Latin deceive
        # nobody.
        if here != first and {here, first} & _CONFUSED:
            return at
    return None


def looks_like(name: str) -> str:
    """Return what a name looks like: two names that print alike give the same text."""
    if name.isascii():
        return name
    return unicodedata.normalize("NFKC", name).translate(_LATIN)


def _alphabet(letter: str) -> str:
    return unicodedata.name(letter, "").partition(" ")[0]


def printable(text: str) -> str:
    """Return text that cannot control a terminal: tabs become blanks, controls a �."""
    return "".join(
        sign if sign.isprintable() else " " if sign == "\t" else "\N{REPLACEMENT CHARACTER}"
        for sign in text
    )
