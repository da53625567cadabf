"""What need not be said of a wall in the short form: units that hold anyway, words said twice."""

from __future__ import annotations

import re
import unicodedata
from types import MappingProxyType
from typing import Final

from trimlang.language.tree import GapKind
from trimlang.lengths.tape import Unit

_OWN_UNIT: Final = MappingProxyType(
    {
        Unit.INCH: re.compile(r"(?<=[\d¼½¾⅐-⅞]) *(?:in\.?|inch(?:es)?|[\"″”]|'')$"),
        Unit.MM: re.compile(r"(?<=\d) *mm$"),
    }
)
"""The unit that a number has in any case."""

_CALLED_BY: Final = MappingProxyType(
    {
        GapKind.OPENING: frozenset({"door", "window", "stair"}),
        GapKind.BARE: frozenset({"cabinets", "radiator", "newel"}),
    }
)
"""Words that begin a line in the place of ``opening`` and ``bare``, and their name with it."""

_WORDS: Final = re.compile(r"[^\W\d_][\w.\-]*( [^\W\d_][\w.\-]*)*")
_ANGLE_ALONE: Final = re.compile(r"\((?P<number>\d[^,()a-z]*?) *(?:deg|degrees|°)\)", re.IGNORECASE)


def without_unit(text: str, unit: Unit) -> str:
    """Leave out the unit at the end of a text where a bare number has it too.

    >>> without_unit("10 ft 2 1/4 in", Unit.INCH), without_unit("740 mm", Unit.INCH)
    ('10 ft 2 1/4', '740 mm')
    """
    return _OWN_UNIT[unit].sub("", text)


def without_degrees(brackets: str) -> str:
    """Leave out the unit of an angle that stands in brackets alone.

    >>> without_degrees("(90.5 deg)"), without_degrees("(mitre 44 deg)")
    ('(90.5)', '(mitre 44 deg)')
    """
    return _ANGLE_ALONE.sub(r"(\g<number>)", brackets)


def short_gap(kind: GapKind, word: str, width: str, name: str) -> str:
    """Return how an opening or bare wall called ``name`` begins; ``word`` is what it began with.

    >>> short_gap(GapKind.OPENING, "opening", "34 5/8", "door to hall")
    'door to hall 34 5/8'
    >>> short_gap(GapKind.BARE, "bare", "60", "tub"), short_gap(GapKind.BARE, "bare", "24", "104")
    ('bare tub 60', 'bare "104" 24')
    """
    # Quotes keep a name exactly as it was written; without them the language reads words, and puts
    # their letters in one form.
    plain = _WORDS.fullmatch(name) and unicodedata.is_normalized("NFC", name)
    usual, first = word.casefold() == kind, name.partition(" ")[0]
    if plain and first in (_CALLED_BY.get(kind, ()) if usual else (word.casefold(),)):
        return f"{name} {width}"
    # Before a number a name of words alone needs no quotes; behind “door” it would be “door …”.
    return f"{word} {name} {width}" if plain and usual else f'{word} "{name}" {width}'
