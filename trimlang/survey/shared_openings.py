"""Openings that two rooms share: seen from the other side, they change places.

An opening that has the same mark in two rooms, such as D3 on a door schedule, is one opening.  Two
of them stand as far apart in one room as in the other, and the one that is at the left in one is at
the right in the other.  If it is at the left in both, one of the rooms was listed turning left; so
it was where one room turns right from the first's wall to the second's, and the other left.  Of a
single opening the corners of its wall tell as much, where both rooms have that wall whole.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from fractions import Fraction
from itertools import combinations
from typing import Final

from trimlang.diagnostics import Span
from trimlang.language.end_facts import Side
from trimlang.lengths.angles import STRAIGHT, cosine, sine
from trimlang.lengths.tape import feet_text, steps_nearest
from trimlang.record import record
from trimlang.survey.job import Gap, Room, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.outline import Outline, Point, Turn, distance, outline

_MARK: Final = re.compile(r"d\W?\d+[a-z]?|\d{3}[a-z]?")
"""How openings are numbered on a door schedule: d3, d-12a, 104 (common practice, no source).

Other names say too little: every bedroom has a “closet” and a door “to hall”.
"""
_CLEARLY: Final = Fraction(6)
"""Inches; middles of openings that are nearer to each other tell no order, and two distances that
differ by less may be the walls' own errors (common practice, no source)."""
_ALONGSIDE: Final = Fraction(5)
"""Degrees; walls that run more askew are not one wall seen from both sides."""
_ROUND: Final = Fraction(45)
"""Degrees; walls that turn by more, and by less than a straight line lacks of it, go round."""


@record
class _Seen:
    """An opening as one room sees it: its middle, and its wall's heading in degrees.

    ``corners`` are how far that is from the wall's inside corners at the left and at the right
    (inches), None where the wall does not go from one to another.
    """

    name: str
    middle: Point
    heading: Fraction
    at: int
    span: Span
    corners: tuple[Fraction, Fraction] | None


def check_shared_openings(rooms: Sequence[Room], trims: Sequence[Trim], findings: Findings) -> None:
    """Warn of openings with the same marks whose places in two rooms contradict each other."""
    named = [
        room for room in rooms if any(isinstance(one, Gap) and _has_mark(one) for one in room.walk)
    ]
    # Most jobs have no such marks, and then no plan needs to be walked.
    seen = [(room, _seen(room, trims)) for room in named] if len(named) > 1 else []
    for (one, here), (other, there) in combinations(seen, 2):
        both = sorted(here.keys() & there.keys())
        for name, second in combinations(both, 2):
            mine, theirs = (here[name], here[second]), (there[name], there[second])
            if _beside(*mine) and _beside(*theirs):
                _compare(one, other, mine, theirs, findings)
            # Round a corner “left of” means nothing, but which way the walls turn does.
            elif _turn(*mine) * _turn(*theirs) < 0:
                side = Side.RIGHT if _turn(*mine) > 0 else Side.LEFT
                facts = _facts(one, other, *mine)
                findings.say("T327", theirs[0].span, side=side, again=side.other, **facts)
        if len(both) == 1:
            _compare_corners(one, other, here[both[0]], there[both[0]], findings)


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
                corners=_from_corners(drawn, leg.index),
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


def _turn(one: _Seen, other: _Seen) -> int:
    """Return 1 where the second's wall is turned to the right of the first's, -1 to the left."""
    turned = (other.heading - one.heading) % 360
    if _ROUND <= min(turned, 360 - turned) <= STRAIGHT - _ROUND:
        return 1 if turned < STRAIGHT else -1
    return 0


def _from_corners(drawn: Outline, at: int) -> tuple[Fraction, Fraction] | None:
    """Return how far the middle of a stretch is from the inside corners of its wall (inches)."""
    first, last = at, at
    while first > 0 and _goes_on(drawn.turns[first - 1]):
        first -= 1
    while last < len(drawn.legs) - 1 and _goes_on(drawn.turns[last]):
        last += 1
    # The turn before the walk's first wall is the one after its last, where it comes round.
    ends = drawn.turns[first - 1], drawn.turns[last]
    if drawn.misclosure is None or not all(turn.at_corner > 0 for turn in ends):
        return None
    whole = _apart(drawn.legs[first].start, drawn.legs[last].end)
    left = _apart(drawn.legs[first].start, drawn.legs[at].start)
    middle = left + _apart(drawn.legs[at].start, drawn.legs[at].end) / 2
    return middle, whole - middle


def _goes_on(turn: Turn) -> bool:
    return turn.known and not turn.degrees


def _apart(one: Point, other: Point) -> Fraction:
    return distance(Point(other.x - one.x, other.y - one.y))


def _compare_corners(
    room: Room, other: Room, mine: _Seen, theirs: _Seen, findings: Findings
) -> None:
    """Warn of a wall that both rooms have whole, with its opening as far from one side's corner."""
    if mine.corners is None or theirs.corners is None:
        return
    (left, right), (its_left, its_right) = mine.corners, theirs.corners
    # Walls of two lengths are not one wall from corner to corner.
    if abs(left + right - its_left - its_right) > _CLEARLY:
        return
    if abs(left - its_left) <= _CLEARLY < abs(left - its_right) / 2:
        unit, step = room.settings.unit, room.settings.rounding_step
        far, again = (feet_text(steps_nearest(one, step), unit) for one in (left, its_left))
        findings.say(
            "T328",
            theirs.span,
            one=mine.name,
            room=room.name,
            next_room=other.name,
            far=far,
            again=again,
            listed=(room.span, other.span),
        )


def _facts(room: Room, other: Room, one: _Seen, second: _Seen) -> dict[str, object]:
    return {
        "one": one.name,
        "other": second.name,
        "room": room.name,
        "next_room": other.name,
        "listed": (room.span, other.span),
    }


def _compare(
    room: Room,
    other: Room,
    mine: tuple[_Seen, _Seen],
    theirs: tuple[_Seen, _Seen],
    findings: Findings,
) -> None:
    here, there = _along(*mine), _along(*theirs)
    facts = _facts(room, other, *mine)
    # Too near each other: which is left of the other may be a matter of the tape.
    if min(abs(here), abs(there)) < _CLEARLY:
        return
    # From the other side of a wall its left is the right.
    if (here > 0) is (there > 0):
        side = "right" if here < 0 else "left"
        findings.say("T318", theirs[0].span, side=side, **facts)
    elif abs(here + there) > _CLEARLY:
        unit, step = room.settings.unit, room.settings.rounding_step
        far, again = (feet_text(steps_nearest(abs(one), step), unit) for one in (here, there))
        findings.say("T319", theirs[1].span, far=far, again=again, **facts)
