"""The names of openings in the ids of the pieces round and over them.

An opening has the name that the file gives it (``door-to-hall``), or else one from the run before
it (``after-N``).  So a door that is added to a room does not change the names of the others.  Only
openings with the same name, or several nameless ones after one run, are told apart by their order.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from trimlang.language.tree import GapKind
from trimlang.survey.job import Gap, Room, Run
from trimlang.survey.over_openings import door_walls

LONGEST: Final = 20
"""Letters of a name that there is room for in an id; whole words are kept as far as they fit."""


def opening_names(room: Room) -> Mapping[int, str]:
    """Return the names of those of a room's openings that have pieces, by place in the walk.

    Those are openings with casing or jamb strips, and the first of a wall that is all opening,
    which crown is named after.
    """
    # A wall that is all opening has no run to name the crown over it after.
    whole = {places[0] for places in door_walls(room, _may_let_past)}
    cased = [
        place
        for place, stretch in enumerate(room.walk)
        if isinstance(stretch, Gap) and (stretch.trims or place in whole)
    ]
    own = {place: _plain(room.walk[place]) for place in cased}
    names: dict[int, str] = {}
    # Openings with a name of their own come first, so that a nameless one cannot take it.
    for place in sorted(cased, key=lambda place: not own[place]):
        name = own[place] or _name_by_a_run(room, place)
        taken = {other.casefold() for other in names.values()}
        number = 2
        while f"{name}-{number}".casefold() in taken:
            number += 1
        names[place] = f"{name}-{number}" if name.casefold() in taken else name
    return {place: names[place] for place in cased}


def _plain(stretch: object) -> str:
    """Return an opening's own name in letters that fit into an id, empty where it has none."""
    return in_an_id(stretch.called or "") if isinstance(stretch, Gap) else ""


def in_an_id(called: str) -> str:
    """Return a name in letters that fit into an id, empty where it has none of them."""
    words = re.findall(r"[^\W_]+", re.sub(r"['’]", "", called).lower())
    # Whole words are dropped from the end until the name fits, so that it stays readable.
    while len(words) > 1 and len("-".join(words)) > LONGEST:
        words.pop()
    return "-".join(words)[:LONGEST]


def _name_by_a_run(room: Room, place: int) -> str:
    """Return a name for a nameless opening: from the run before it, or else from the one after."""
    walk = room.walk
    # The run before it, since that is what one has just measured when one comes to the door; in a
    # room that is walked all round the last run is before the first opening.
    before = [one.label for one in walk[:place] if isinstance(one, Run)]
    behind = [one.label for one in walk[place:] if isinstance(one, Run)]
    if before or (behind and not room.open_walk):
        return f"after-{before[-1] if before else behind[-1]}"
    return f"before-{behind[0]}" if behind else "opening"


def _may_let_past(gap: Gap) -> bool:
    return gap.kind is GapKind.OPENING or gap.stops is not None
