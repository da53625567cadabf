"""Slips in how walls follow one another: lengths for two walls or for none, other signs between."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from trimlang.language.slips.slip_row import (
    END_OF_PART,
    WALL_NAME,
    WHOLE_LENGTH,
    Found,
    slip,
)

_A_WALL: Final = rf"{WALL_NAME}\s+{WHOLE_LENGTH}"
_EACH_WALL: Final = re.compile(rf"({WALL_NAME})\s*:?\s*({WHOLE_LENGTH})", re.IGNORECASE)
_OPPOSITE: Final = {"n": "s", "s": "n", "e": "w", "w": "e"}
_AND: Final = r"\s*(?:[/=&+]|and)\s*"


def _opposite_length(found: Found) -> str | None:
    """Return the length of the wall that is named, or else of the opposite one."""
    before = found.string[: found.start("slip")]
    of = found["of"] or _OPPOSITE.get(found["wall"][:1].casefold(), "")
    lengths = {wall.casefold(): long.strip() for wall, long in _EACH_WALL.findall(before)}
    return next((long for wall, long in lengths.items() if wall.startswith(of.casefold())), None)


def _with_commas(found: Found) -> str | None:
    if not re.search(r"[;|]|\.\s", found["slip"]):
        return None
    walls = (f"{wall} {long.strip(' .')}" for wall, long in _EACH_WALL.findall(found["slip"]))
    return ", ".join(walls)


_ROWS: Final = (
    slip(
        ("N 10 ft, E 8 ft, S same, W 8 ft", "N 10 ft, E 8 ft, S 10 ft, W 8 ft"),
        ("N 10 ft 2, E 8 ft, S as N", "N 10 ft 2, E 8 ft, S 10 ft 2"),
        ("North 122 1/4, East 8 ft, South ditto", "North 122 1/4, East 8 ft, South 122 1/4"),
        written=rf"(?:^|,)\s*(?P<wall>{WALL_NAME})\s*:?\s*(?P<slip>(?:(?:the )?same|ditto|as|like)"
        rf"(?: as)?(?: (?P<of>{WALL_NAME}))?){END_OF_PART}",
        wanted="the wall's own length",
        remedy="Measured again it would show a slip; write {} if it is the same.",
        instead=_opposite_length,
    ),
    slip(
        ("N/S 10 ft, E/W 8 ft", "N 10 ft, E 8 ft, S 10 ft, W 8 ft"),
        ("N=S 122 1/4, E=W 8 ft 3", "N 122 1/4, E 8 ft 3, S 122 1/4, W 8 ft 3"),
        written=rf"^\s*(?P<slip>(?P<a>{WALL_NAME}){_AND}(?P<c>{WALL_NAME})\s+(?P<one>{WHOLE_LENGTH})"
        rf",\s*(?P<b>{WALL_NAME}){_AND}(?P<d>{WALL_NAME})\s+(?P<two>{WHOLE_LENGTH}))(?=\s*(?:#|$))",
        wanted="each wall with its own length",
        remedy="Walls stand in the order of the walk: write {}.",
        instead=lambda found: (
            f"{found['a']} {found['one'].strip()}, {found['b']} {found['two'].strip()},"
            f" {found['c']} {found['one'].strip()}, {found['d']} {found['two'].strip()}"
        ),
    ),
    slip(
        ("N 10 ft; E 8 ft; S 10 ft", "N 10 ft, E 8 ft, S 10 ft"),
        ("N 10 ft. E 8 ft. S 10 ft.", "N 10 ft, E 8 ft, S 10 ft"),
        ("N 122 | E 96", "N 122, E 96"),
        written=rf"^\s*(?P<slip>{_A_WALL}(?:\s*[;|.]?\s*{_A_WALL})+\s*[;|.]?)(?=\s*(?:#|$))",
        wanted="a comma between two walls",
        remedy="Write {}.",
        instead=_with_commas,
    ),
    slip(
        ("N: 10 ft E: 8 ft", "N 10 ft, E 8 ft"),
        ("N: 122 1/4 E: 96 S: 122 1/4", "N 122 1/4, E 96, S 122 1/4"),
        written=rf"^\s*(?P<slip>{WALL_NAME}\s*:\s*{WHOLE_LENGTH}"
        rf"(?:\s+{WALL_NAME}\s*:\s*{WHOLE_LENGTH})+)(?=\s*(?:#|$))",
        wanted="a comma between two walls",
        remedy="Write {}.",
        instead=lambda found: ", ".join(
            f"{wall} {long.strip()}" for wall, long in _EACH_WALL.findall(found["slip"])
        ),
    ),
)

WALK_SLIPS: Final = tuple(replace(row, of_walls=True) for row in _ROWS)
"""How walls are jotted one after the other, and how they stand in a line."""
