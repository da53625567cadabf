"""What need not be said of a wall in the short form: units that hold anyway, words said twice."""

from __future__ import annotations

import re
from types import MappingProxyType
from typing import Final

from trimlang.language.tree import GapKind
from trimlang.lengths.tape import Unit

_OWN_UNIT: Final = MappingProxyType(
    {
        Unit.INCH: re.compile(r"(?<=[\d¼½¾⅐-⅞]) *in\.?$"),
        Unit.MM: re.compile(r"(?<=\d) *mm$"),
    }
)
"""The unit that a number has in any case."""

_CALLED_BY: Final = MappingProxyType(
    {
        GapKind.OPENING: frozenset({"door", "window", "stair"}),
        GapKind.BARE: frozenset({"cabinets", "radiator"}),
    }
)
"""Words that begin a line in the place of ``opening`` and ``bare``, and are also the name."""


def without_unit(text: str, unit: Unit) -> str:
    """Leave out the unit at the end of a text where a bare number has it too.

    >>> without_unit("10 ft 2 1/4 in", Unit.INCH), without_unit("740 mm", Unit.INCH)
    ('10 ft 2 1/4', '740 mm')
    """
    return _OWN_UNIT[unit].sub("", text)


def short_gap(kind: GapKind, head: str, name: str) -> str:
    """Return how an opening or bare wall begins: its word, its width and its name.

    ``name`` is as written: in quotes, or the word that stands in ``head`` for it; may be empty.

    >>> short_gap(GapKind.BARE, "bare 24", '"cabinets"')
    'cabinets 24'
    >>> short_gap(GapKind.BARE, "bare 24", '"tub"')
    'bare 24, "tub"'
    """
    if name[:1] not in ('"', "“"):
        return head
    word, _, width = head.partition(" ")
    plain = name[1:-1].casefold()
    if word.casefold() == kind and plain in _CALLED_BY.get(kind, ()) and name[1:-1] == plain:
        return f"{plain} {width}"
    # A quotation mark right behind a number would be an inch mark, hence the comma.
    return f"{head}, {name}"
