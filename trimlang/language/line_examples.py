"""How each kind of line is written: shown where one cannot be read and no word is near."""

from __future__ import annotations

from types import MappingProxyType
from typing import Final

LINE_EXAMPLES: Final = MappingProxyType(
    {
        "job": 'job "Alder Row 12"',
        "surveyed": "surveyed 2026-04-18",
        "unit": "unit mm",
        "include": 'include "prices.trim"',
        "currency": 'currency "$"',
        "trim": "trim base: 9/16 in thick, 5 1/4 in tall, mdf",
        "assembly": "assembly foot: base, shoe in front of base",
        "block": "block plinth: 3 in wide, 7 in tall, at 6.50",
        "head": "head crosshead: board, cap returned",
        "stock": "stock base: 8 ft at 11.60, 12 ft at 17.40",
        "on-hand": "on-hand base: 2 of 61 1/2 in",
        "saw": "saw: kerf 1/8 in, reads to 1/2 deg",
        "spare": "spare 10 %",
        "tax": "tax 8.25 %",
        "ends": "ends in",
        "round": "round to 1/16 in",
        "corners": "corners: in-corner cope",
        "splices": "splices: least 24 in",
        "kerfs": "kerfs: leave 1/8 in",
        "closes": "closes within 1 in",
        "casings": "casings: reveal 3/16 in, height 80 in",
        "nails": "nails: every 16 in, 2 in long",
        "caulk": "caulk: bead 3/16 in, tube 10.1 fl oz at 4.60",
        "filler": "filler: tub 8 fl oz at 6.00",
        "putty": "putty: tub 4 fl oz at 3.50",
        "glue": "glue: bottle 8 fl oz at 5.90",
        "primer": "primer: backs, can 1 quart at 19.00",
        "paint": "paint: 2 coats, can 1 quart at 24.50",
        "every": "every room: trim base, ends in",
        "room": 'room "Den", trim base, ends in',
        "door": "door to hall 32 in, height 80 in",
        "window": "window garden 36 in, height 48 in, sill 30 in",
        "opening": "opening to hall 32 in",
        "bare": "bare tub 60 in",
        "boxes": "boxes N: 3, 24 in tall, margin 3 1/2 in, trim panel",
        "piece": 'piece "cleat", 4 of 22 1/2 in, trim base, square',
        "diagonal": "diagonal N-E 14 ft 2 1/2 in",
        "cut": "cut ST-N-base 29 1/8 in from base-1",
        "spoiled": "spoiled ST-N-base into 22 in",
        "shortened": "shortened ST-N-base to 28 7/8 in",
        "fitted": "fitted ST-N-base, ST-E-base",
        "bought": "bought 2 base 12 ft at 17.40",
        "rack": "rack base: 3 of 12 ft, 41 in",
    }
)
"""By the word that the line begins with."""

_WALL: Final = "N: 29 1/8 in, left=in-corner, right=butt"
_WALLS: Final = "N 10 ft 2 1/4, E 8 ft 7 9/16, door to hall 32"


def line_example(text: str) -> str:
    """Return a line of the same kind as one that cannot be read; a wall's where no word tells."""
    first = text.split(maxsplit=1)[0].rstrip(":").casefold() if text.strip() else ""
    one_wall = ":" in text.split(",")[0]
    return LINE_EXAMPLES.get(first, _WALL if one_wall else _WALLS)
