"""What openings are called on the pieces round and over them, whatever else is in the room.

An opening goes by the name that the file gives it (``door-to-hall``), else by the
run before it (``after-N``).  So a door that is added to the room gives none of the
others another name.  Only openings of one name, or several nameless ones behind
one run, are told apart by their order.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from trimlang.language.tree import GapKind
from trimlang.survey.job import Gap, Room, Run
from trimlang.survey.over_openings import door_walls

LONGEST: Final = 20
"""Letters of a name that a piece's id has room for; whole words as far as they go."""


def opening_names(room: Room) -> Mapping[int, str]:
    """Return the names of a room's openings that have pieces, by their places in the walk.

    Those are cased ones, and the first of a wall that is all opening: crown goes by it.
    """
    whole = {places[0] for places in door_walls(room, _may_let_past)}
    cased = [
        place
        for place, stretch in enumerate(room.walk)
        if isinstance(stretch, Gap) and (stretch.casing is not None or place in whole)
    ]
    own = {place: _plain(room.walk[place]) for place in cased}
    names: dict[int, str] = {}
    # those with a name of their own keep it from those that have none
    for place in sorted(cased, key=lambda place: not own[place]):
        name = own[place] or _beside(room, place)
        taken = {other.casefold() for other in names.values()}
        number = 2
        while f"{name}-{number}".casefold() in taken:
            number += 1
        names[place] = f"{name}-{number}" if name.casefold() in taken else name
    return {place: names[place] for place in cased}


def _plain(stretch: object) -> str:
    """Return what an opening is called in letters that fit into a piece's id, empty for none."""
    return in_an_id(stretch.called or "") if isinstance(stretch, Gap) else ""


def in_an_id(called: str) -> str:
    """Return a name in letters that fit into a piece's id, empty where it has none of them."""
    words = re.findall(r"[^\W_]+", re.sub(r"['’]", "", called).lower())
    while len(words) > 1 and len("-".join(words)) > LONGEST:
        words.pop()
    return "-".join(words)[:LONGEST]


def _beside(room: Room, place: int) -> str:
    """Name a nameless opening by the run before it, or where there is none by the one behind."""
    walk = room.walk
    before = [one.label for one in walk[:place] if isinstance(one, Run)]
    behind = [one.label for one in walk[place:] if isinstance(one, Run)]
    if before or (behind and not room.open_walk):
        return f"after-{before[-1] if before else behind[-1]}"
    return f"before-{behind[0]}" if behind else "opening"


def _may_let_past(gap: Gap) -> bool:
    return gap.kind is GapKind.OPENING or gap.stops is not None
