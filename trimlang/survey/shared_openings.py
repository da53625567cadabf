"""Openings that two rooms share: seen from the other side, they change places.

An opening that has the same mark in two rooms, such as D3 on a door schedule, is one opening.  Two
of them stand as far apart in one room as in the other, and the one that is at the left in one is at
the right in the other.  If it is at the left in both, one of the rooms was listed turning left.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction
from itertools import combinations
from typing import Final

from trimlang.diagnostics import Span
from trimlang.lengths.angles import cosine, sine
from trimlang.lengths.tape import feet_text, steps_nearest
from trimlang.record import record
from trimlang.survey.job import Gap, Room, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.outline import Outline, Point, outline

_MARK: Final = re.compile(r"d\W?\d+[a-z]?|\d{3}[a-z]?")
"""How openings are numbered on a door schedule: d3, d-12a, 104 (common practice, no source).

Other names say too little: every bedroom has a “closet” and a door “to hall”.
"""
_CLEARLY: Final = Fraction(6)
"""Inches; middles of openings that are nearer to each other tell no order, and two distances that
differ by less may be the walls' own errors (common practice, no source)."""
_ALONGSIDE: Final = Fraction(5)
"""Degrees; walls that run more askew are not one wall seen from both sides."""


@record
class _Seen:
    """An opening as one room sees it: its middle, and its wall's heading in degrees."""

    name: str
    middle: Point
    heading: Fraction
    at: int
    span: Span


def check_shared_openings(rooms: Sequence[Room], trims: Sequence[Trim], findings: Findings) -> None:
    """Warn of openings with the same marks whose places in two rooms contradict each other."""
    named = [
        room
        for room in rooms
        if sum(isinstance(one, Gap) and _has_mark(one) for one in room.walk) > 1
    ]
    # Most jobs have no such marks, and then no plan needs to be walked.
    seen = [(room, _seen(room, trims)) for room in named] if len(named) > 1 else []
    for (one, here), (other, there) in combinations(seen, 2):
        for name, second in combinations(sorted(here.keys() & there.keys()), 2):
            mine, theirs = (here[name], here[second]), (there[name], there[second])
            # Round a corner “left of” means nothing that the other room could contradict.
            if all(pair is not None and _beside(*pair) for pair in (mine, theirs)):
                _compare(one, other, mine, theirs, findings)


def _seen(room: Room, trims: Sequence[Trim]) -> dict[str, _Seen]:
    """Return the room's openings by their marks in small letters; none that stands twice."""
    # With the trims, since a wall taken over scraps is shorter than its number.
    drawn = outline(room, trims)
    found: dict[str, _Seen | None] = {}
    for leg in drawn.legs:
        stretch = room.walk[leg.index]
        if isinstance(stretch, Gap) and stretch.called and _has_mark(stretch):
            name = stretch.called.casefold()
            place = _Seen(
                name=stretch.called,
                middle=Point((leg.start.x + leg.end.x) / 2, (leg.start.y + leg.end.y) / 2),
                heading=leg.heading,
                at=leg.index,
                span=stretch.span,
            )
            found[name] = None if name in found else place
    return {
        name: one for name, one in found.items() if one is not None and _is_known(drawn, one.at)
    }


def _has_mark(gap: Gap) -> bool:
    return bool(gap.called and _MARK.fullmatch(gap.called.casefold()))


def _is_known(drawn: Outline, at: int) -> bool:
    """Tell whether the file says how every wall before one meets the next."""
    return all(turn.known and not turn.disputed for turn in drawn.turns[:at])


def _beside(one: _Seen, other: _Seen) -> bool:
    """Tell whether two openings are in one wall, or in walls that run alongside."""
    askew = (one.heading - other.heading) % 360
    return min(askew, 360 - askew) <= _ALONGSIDE


def _along(one: _Seen, other: _Seen) -> Fraction:
    """Return how far to the right of the first opening the other is, as one faces the wall."""
    # The part of the way between both that goes along the first one's wall.
    x, y = other.middle.x - one.middle.x, other.middle.y - one.middle.y
    return x * cosine(one.heading) - y * sine(one.heading)


def _compare(
    room: Room,
    other: Room,
    mine: tuple[_Seen, _Seen],
    theirs: tuple[_Seen, _Seen],
    findings: Findings,
) -> None:
    here, there = _along(*mine), _along(*theirs)
    facts = {
        "one": mine[0].name,
        "other": mine[1].name,
        "room": room.name,
        "next_room": other.name,
    }
    # Too near each other: which is left of the other may be a matter of the tape.
    if min(abs(here), abs(there)) < _CLEARLY:
        return
    # From the other side of a wall its left is the right.
    if (here > 0) is (there > 0):
        side = "right" if here < 0 else "left"
        listed = (room.span, other.span)
        findings.say("T318", theirs[0].span, side=side, listed=listed, **facts)
    elif abs(here + there) > _CLEARLY:
        unit, step = room.settings.unit, room.settings.rounding_step
        far, again = (feet_text(steps_nearest(abs(one), step), unit) for one in (here, there))
        findings.say("T319", theirs[1].span, far=far, again=again, **facts)
