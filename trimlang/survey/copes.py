"""Chooses which side of each coped corner is coped.

Each coped corner has exactly one coped side.  A piece that is hard to hold is not coped where the
other one can be, and no piece is coped at both ends where the room allows it.  After that, the
coped side is the one that is seen side-on from the entrance: looking along a wall one sees past
the cope, and looking across it one would see into the joint.  What the file fixes stays.  (Common
practice, no source.)
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from enum import IntEnum
from fractions import Fraction
from itertools import pairwise
from typing import Final, TypeAlias

from trimlang.joint_row import Fit
from trimlang.record import record
from trimlang.survey.job import Room, Run, Stretch, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.outline import Leg, Outline, Point, outline
from trimlang.survey.over_openings import goes_on_at

HARD_TO_HOLD: Final = Fraction(8)
"""Inches; shorter pieces are hard to hold at the saw (common practice, no source)."""


class _Coped(IntEnum):
    """The run that is coped at a corner: the one that begins there, or the one that ends there.

    Of two choices that cost the same the smaller number is taken, and so the run that begins
    there: chosen at every corner, it leaves no piece coped at both ends.
    """

    BEGINS = 0
    ENDS = 1


_Cost: TypeAlias = tuple[int, int, int, int]
"""How bad a choice is, the worst first: copes on a piece that is hard to hold where the other is
not, pieces coped at both ends, copes on the shorter of two that are hard to hold, corners coped at
the side that looks worse."""

_Way: TypeAlias = tuple[_Cost, tuple[_Coped, ...]]


def choose_copes(room: Room, trims: Mapping[str, Trim], findings: Findings) -> Room:
    """Return the room with exactly one coped side at each inside corner that is coped.

    ``trims`` are the job's by name: a trim that goes on past an opening is one piece between the
    corners on both sides of it.
    """
    corners = [index for index in range(len(room.walk)) if _is_coped(room, index)]
    if not corners:
        return room
    drawn = outline(room)
    wanted = {index: _side_on(room, drawn, index) for index in corners}
    allowed = {index: _allowed(room, index, trims) for index in corners}
    hard = {index: _hard(room, index) for index in corners}
    shorter = {index: _shorter(room, index) for index in corners}
    # Two corners share a piece where a trim runs from one to the other; it should not be coped at
    # both.
    shared = {
        (before, corner)
        for before, corner in zip(corners, (*corners[1:], corners[0]), strict=True)
        if _share_a_piece(room, before, corner, trims)
    }
    chosen = _Choice(shared, wanted, hard, shorter).cheapest(corners, allowed)
    walk = list(room.walk)
    for index, side in chosen.items():
        after = (index + 1) % len(walk)
        one, other = walk[index], walk[after]
        if isinstance(one, Run) and isinstance(other, Run):
            fits = (Fit.COPED, Fit.SQUARE) if side is _Coped.ENDS else (Fit.SQUARE, Fit.COPED)
            walk[index] = replace(one, right=replace(one.right, fit=fits[0]))
            walk[after] = replace(other, left=replace(other.left, fit=fits[1]))
    # A piece coped at both ends is hard to fit, so the one who cuts is told of it.
    for stretch in walk:
        if isinstance(stretch, Run) and stretch.left.fit is stretch.right.fit is Fit.COPED:
            findings.say("T306", stretch.span, run=stretch.label)
    return replace(room, walk=tuple(walk))


def _is_coped(room: Room, index: int) -> bool:
    """Tell whether the corner after a stretch is coped, by the file or by the setting."""
    count = len(room.walk)
    if count < 2 or (room.open_walk and index == count - 1):
        return False
    one, other = room.walk[index], room.walk[(index + 1) % count]
    if not isinstance(one, Run) or not isinstance(other, Run):
        return False
    if not (one.right.joint.is_inside and other.left.joint.is_inside):
        return False
    # The file may want one corner mitred in a room whose corners are coped.
    if one.right.mitred:
        return False
    return room.settings.cope or Fit.COPED in (one.right.fit, other.left.fit)


def _allowed(room: Room, index: int, trims: Mapping[str, Trim]) -> tuple[_Coped, ...]:
    one, other = room.walk[index], room.walk[(index + 1) % len(room.walk)]
    # What the file says of a corner leaves no choice there, but still counts for the pieces beside
    # it.
    if one.right is not None and one.right.fit is Fit.COPED:
        return (_Coped.ENDS,)
    if other.left is not None and other.left.fit is Fit.COPED:
        return (_Coped.BEGINS,)
    lower = _lower(one, other, trims)
    return tuple(_Coped) if lower is None else (lower,)


def _lower(one: Stretch, other: Stretch, trims: Mapping[str, Trim]) -> _Coped | None:
    """Return the side whose base is lower than the other's, None where they are as tall or one.

    What a taller trim has above the face that it ends at would stop short of the wall.
    """
    if not isinstance(one, Run) or not isinstance(other, Run):
        return None
    bases = [next((trim for trim in map(trims.__getitem__, run.trims) if _stands(trim)), None)
             for run in (one, other)]  # fmt: skip
    if None in bases or bases[0] is bases[1]:
        return None
    before, after = (base.height if base is not None else None for base in bases)
    if before is None or after is None or before == after:
        return None
    return _Coped.ENDS if before < after else _Coped.BEGINS


def _stands(trim: Trim) -> bool:
    """Tell whether a trim stands on the floor, in front of nothing."""
    return not trim.hangs and trim.in_front_of is trim.upon is None


def _side_on(room: Room, drawn: Outline, index: int) -> _Coped | None:
    """Return the side of a corner whose wall is seen most nearly along it, None if neither is."""
    if drawn.entrance is None:
        return None
    before, after = drawn.legs[index], drawn.legs[(index + 1) % len(room.walk)]
    corner = before.end
    seen = {
        _Coped.ENDS: _across(before, drawn.entrance, corner),
        _Coped.BEGINS: _across(after, drawn.entrance, corner),
    }
    # Seen alike, within the last digits of floats: no side is better, and the choice must not hang
    # on them.
    if abs(seen[_Coped.ENDS] - seen[_Coped.BEGINS]) < 1e-6:
        return None
    return min(_Coped, key=lambda side: seen[side])


def _across(leg: Leg, eye: Point, corner: Point) -> float:
    """Return how squarely the line of sight to a corner meets a wall: 0 along it, 1 across it."""
    along = complex(float(leg.end.x - leg.start.x), float(leg.end.y - leg.start.y))
    sight = complex(float(corner.x - eye.x), float(corner.y - eye.y))
    if not abs(along) or not abs(sight):
        return 0.0
    # The cross product of two directions over their lengths: the sine of the angle between them.
    return abs((along.conjugate() * sight).imag) / abs(along) / abs(sight)


def _hard(room: Room, index: int) -> _Coped | None:
    """Return the side of a corner whose piece is hard to hold, None where both or neither are."""
    one, other = room.walk[index], room.walk[(index + 1) % len(room.walk)]
    # A side without trim has nothing that is hard to hold.
    if not isinstance(one, Run) or not isinstance(other, Run):
        return None
    short = [
        side
        for side, run in ((_Coped.ENDS, one), (_Coped.BEGINS, other))
        if run.length < HARD_TO_HOLD
    ]
    # Where both are short, one must be coped all the same.
    return short[0] if len(short) == 1 else None


def _shorter(room: Room, index: int) -> _Coped | None:
    """Return the side of a corner whose piece is the shorter of two that are hard to hold."""
    one, other = room.walk[index], room.walk[(index + 1) % len(room.walk)]
    if not isinstance(one, Run) or not isinstance(other, Run):
        return None
    if max(one.length, other.length) >= HARD_TO_HOLD or one.length == other.length:
        return None
    return _Coped.ENDS if one.length < other.length else _Coped.BEGINS


@record
class _Choice:
    """What decides which side of each of a room's corners is coped.

    ``shared`` are the pairs of corners that one piece runs between.  ``wanted`` is the side of
    each corner that looks better coped, ``hard`` the side that is hard to hold, ``shorter`` that
    which is the shorter where both are.
    """

    shared: set[tuple[int, int]]
    wanted: dict[int, _Coped | None]
    hard: dict[int, _Coped | None]
    shorter: dict[int, _Coped | None]

    def cheapest(
        self, corners: list[int], allowed: dict[int, tuple[_Coped, ...]]
    ) -> dict[int, _Coped]:
        """Return the coped side of each corner, such that the cost of all is least.

        It goes round corner by corner and keeps the best way to reach each choice (dynamic
        programming), which is enough since only neighbouring corners share a piece.  Each choice
        at the first corner is tried, because the last corner may share a piece with it.
        """
        ways: list[_Way] = []
        for first in allowed[corners[0]]:
            reached: list[_Way] = [(self._at(corners[0], first), (first,))]
            for before, corner in pairwise(corners):
                reached = [
                    min(self._longer(way, before, corner, side) for way in reached)
                    for side in allowed[corner]
                ]
            for cost, way in reached:
                closing = self._both(corners[-1], way[-1], corners[0], first)
                ways.append(((cost[0], cost[1] + closing, *cost[2:]), way))
        # At equal cost ``min`` takes the run that begins at the corner, as _Coped says.
        return dict(zip(corners, min(ways)[1], strict=True))

    def _longer(self, way: _Way, before: int, corner: int, side: _Coped) -> _Way:
        """Return a way of choosing with one more corner, and its cost."""
        (hard, both, short, disliked), sides = way
        own = self._at(corner, side)
        both += self._both(before, sides[-1], corner, side)
        cost = (hard + own[0], both, short + own[2], disliked + own[3])
        return cost, (*sides, side)

    def _at(self, corner: int, side: _Coped) -> _Cost:
        wanted = self.wanted[corner]
        worse = wanted is not None and wanted is not side
        return int(self.hard[corner] is side), 0, int(self.shorter[corner] is side), int(worse)

    def _both(self, before: int, first: _Coped, corner: int, second: _Coped) -> int:
        """Return 1 where the piece between two corners would be coped at both ends, else 0."""
        return int(
            (before, corner) in self.shared and first is _Coped.BEGINS and second is _Coped.ENDS
        )


def _share_a_piece(room: Room, before: int, corner: int, trims: Mapping[str, Trim]) -> bool:
    """Tell whether one piece reaches from the corner after ``before`` to the next coped one."""
    at = (before + 1) % len(room.walk)
    if at == corner:
        return True
    run = room.walk[at]
    for name in run.trims if isinstance(run, Run) else ():
        reached: int | None = at
        # Trim that a window or a door lets past is one piece on both sides of it, so a cope at
        # either corner is at the ends of the same piece.
        while reached is not None and reached != corner:
            reached = goes_on_at(room, reached, trims[name])
        if reached == corner:
            return True
    return False
