"""Reads diagonals, and finds which two corners of a room each runs between."""

from __future__ import annotations

from cmath import phase
from collections.abc import Iterator, Sequence
from math import pi

from trimlang.language import tree
from trimlang.settings.table import Settings
from trimlang.survey.job import Room, Run, Stretch
from trimlang.survey.measures import Findings, length
from trimlang.survey.misfit import Chord
from trimlang.survey.on_walls import RoomDiagonal
from trimlang.survey.outline import turn_between


def read_diagonals(
    lines: Sequence[tree.DiagonalLine],
    walk: Sequence[Stretch],
    settings: Settings,
    findings: Findings,
    *,
    open_walk: bool,
) -> tuple[RoomDiagonal, ...]:
    """Return a room's diagonals; ``diagonal N-E`` runs from N's left end to E's right end."""
    found: list[RoomDiagonal] = []
    for line in lines:
        name = line.walls.text
        long = length(line.length, settings.unit, findings, what=f"diagonal {name}")
        ends = next(_walls(name, walk), None)
        why = ""
        if open_walk:
            why = "belongs to a room that is walked round, and this one is an open walk"
        elif ends is None:
            # Only the first reason is reported; the others would follow from it.
            why = "names no two walls of this room"
        elif not _is_across(ends[0], ends[1], walk):
            why = (
                "runs along one wall, or comes back to where it begins"
                " (were the walls listed turning left?)"
            )
        if why:
            findings.say("T314", line.walls.span, name=name, why=why)
        elif ends is not None and long is not None:
            begin, end = ends
            found.append(
                RoomDiagonal(name=name, begin=begin, end=end, length=long, span=line.walls.span)
            )
    return tuple(found)


def _walls(name: str, walk: Sequence[Stretch]) -> Iterator[tuple[int, int]]:
    """Yield the pairs of walls that a name may mean, as walls' names may hold a dash themselves."""
    places = {one.label.casefold(): at for at, one in enumerate(walk) if isinstance(one, Run)}
    for at, sign in enumerate(name):
        first, last = name[:at].casefold(), name[at + 1 :].casefold()
        if sign == "-" and first in places and last in places:
            yield places[first], places[last]


def _is_across(begin: int, end: int, walk: Sequence[Stretch]) -> bool:
    """Tell whether there is a corner between the two ends both ways round, so that it is across."""
    count = len(walk)

    def turns(first: int, last: int) -> bool:
        steps = (last - first) % count
        return any(
            turn_between(walk[(first + at) % count], walk[(first + at + 1) % count]).degrees
            for at in range(steps)
        )

    return (
        # A diagonal between two ends of one straight line says no more than its walls do, and would
        # only make the survey look surer than it is.
        begin != (end + 1) % count
        and turns(begin, end)
        and turns((end + 1) % count, (begin - 1) % count)
    )


def in_view(corners: Sequence[complex], start: int, end: int) -> bool:
    """Tell whether a tape reaches through the room from one corner to another."""
    here, there = corners[start], corners[end]
    middle, turned = (here + there) / 2, 0.0
    for at, one in enumerate(corners):
        after = (at + 1) % len(corners)
        other = corners[after]
        if one == middle:
            return False
        turned += phase((other - middle) / (one - middle))
        crosses = (
            _side(here, there, one) * _side(here, there, other) <= 0
            and _side(one, other, here) * _side(one, other, there) <= 0
        )
        if crosses and start not in (at, after) and end not in (at, after):
            return False
    # Seen from within, the walls go all the way round.
    return abs(turned) > pi


def _side(one: complex, other: complex, place: complex) -> float:
    """Return on which side of a line a place lies: less than 0 on the right."""
    return ((other - one).conjugate() * (place - one)).imag


def span_of(diagonal: RoomDiagonal, count: int) -> tuple[int, int]:
    """Return the two places in the walk that it joins, as left ends of stretches, in order."""
    # The right end of a wall is the left end of the next.
    one, other = diagonal.begin, (diagonal.end + 1) % count
    return min(one, other), max(one, other)


def chords_of(room: Room) -> tuple[Chord, ...]:
    """Return the diagonals of a room as its walk is judged by them."""
    found = []
    for one in room.diagonals:
        start, end = span_of(one, len(room.walk))
        found.append(Chord(start, end, float(one.length), one.name))
    return tuple(found)
