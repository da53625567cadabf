"""The ends of a room's walls as they may be written: all of them, or each joint once."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from typing import Final, TypeAlias

from trimlang.diagnostics import Span
from trimlang.joints import Joint
from trimlang.language import facts, tree
from trimlang.language.facts import Side
from trimlang.record import record
from trimlang.settings.setting_kinds import TakenAt
from trimlang.survey.job import Room, Run
from trimlang.survey.level_returns import with_level_returns
from trimlang.survey.unsaid_ends import stopped

WallLine: TypeAlias = tree.RunLine | tree.GapLine

_ANGLE: Final = re.compile(r"\([^,()a-z]*(?:deg|degrees|°)?\)", re.IGNORECASE)
"""Brackets with an angle alone: both sides of a corner may say it, and one of them is enough."""


@record
class EndAsWritten:
    """An end as it may be written: its joint, and what stands in brackets or behind it.

    ``between`` tells that it may stand between two walls, without its side.
    """

    joint: Joint
    rest: str
    between: bool = False


RoomEnds: TypeAlias = list[dict[Side, EndAsWritten | None]]
"""The ends of each wall of a room; None where nothing is said, or needs to be."""


def ends_as_written(room: Room, walls: Sequence[WallLine], text: Callable[[Span], str]) -> RoomEnds:
    """Return the ends of a room's walls, with those that the file leaves to the neighbour.

    ``text`` returns what stands at a place of the file.
    """
    said: RoomEnds = []
    walk = iter(room.walk)
    for wall in walls:
        # A wall with level returns is more than one stretch of the walk.
        stretches = [next(walk) for _ in with_level_returns(wall)]
        ends: dict[Side, EndAsWritten | None] = {}
        for side in Side:
            stretch = side.of(stretches[0], stretches[-1])
            joint = stretch.side(side).joint if isinstance(stretch, Run) else None
            ends[side] = EndAsWritten(joint, "") if joint is not None else None
        # What a line says itself goes before what the walk made of its neighbours.
        for fact in wall.facts:
            if isinstance(fact, facts.AtEnd):
                word = fact.end.joint
                rest = text(replace(fact.end.span, column=word.span.end))
                ends[fact.side] = EndAsWritten(Joint.of(word.text), rest, fact.between)
        said.append(ends)
    for at, after in _joints(room, walls):
        _beside_gap(at, after, walls, said)
    return said


def without_repeats(
    room: Room, walls: Sequence[WallLine], said: RoomEnds, usual: str, may_stand: Sequence[bool]
) -> RoomEnds:
    """Return the ends without those that a neighbour or the room says already.

    ``usual`` is the word of the joint that nobody needs to say.  ``may_stand`` tells of each wall
    whether a corner may stand between it and the next one.
    """
    left = [dict(ends) for ends in said]
    for at, after in _joints(room, walls):
        wall, other = walls[at], walls[after]
        one, two = said[at][Side.RIGHT], said[after][Side.LEFT]
        if isinstance(wall, tree.RunLine) and isinstance(other, tree.RunLine):
            # Between two runs the joint belongs to both, so one of the two sides can go.
            _one_joint(at, after, room, walls, left, usual)
            continue
        for end, place, side in ((one, at, Side.RIGHT), (two, after, Side.LEFT)):
            run = walls[place]
            if isinstance(run, tree.RunLine) and not _over_scraps(room, run):
                # Beside an opening a run stops square unless it says otherwise.
                plain = end is not None and end.joint is stopped(run) and not end.rest
                left[place][side] = None if plain else end
        if two is None or not two.joint.is_corner or not isinstance(other, tree.GapLine):
            continue
        if isinstance(wall, tree.GapLine):
            # Between two bare walls a corner said at the first holds for the second too.
            if one is not None and one.joint is two.joint and two.rest in ("", one.rest):
                left[after][Side.LEFT] = None
        elif left[at][Side.RIGHT] is None and may_stand[at]:
            left[at][Side.RIGHT] = replace(two, between=True)
            left[after][Side.LEFT] = None
    return left


def _joints(room: Room, walls: Sequence[WallLine]) -> list[tuple[int, int]]:
    """Return the places of the two walls of each joint, going round to the right."""
    count = len(walls)
    pairs = [(at, (at + 1) % count) for at in range(count)]
    # An open walk does not close, and a lone wall has no neighbour.
    return pairs[:-1] if room.open_walk or count == 1 else pairs


def _beside_gap(at: int, after: int, walls: Sequence[WallLine], said: RoomEnds) -> None:
    """Give an opening or bare wall the corner that was said between it and what is before it."""
    end = said[at][Side.RIGHT]
    if not isinstance(walls[after], tree.GapLine) or end is None or not end.joint.is_corner:
        return
    if isinstance(walls[at], tree.GapLine):
        said[after][Side.LEFT] = said[after][Side.LEFT] or end
    elif end.between:
        said[at][Side.RIGHT] = EndAsWritten(stopped(walls[at]), "")
        said[after][Side.LEFT] = end


def _one_joint(
    at: int, after: int, room: Room, walls: Sequence[WallLine], left: RoomEnds, usual: str
) -> None:
    """Leave out what two runs both say of the joint between them."""
    one, two = left[at][Side.RIGHT], left[after][Side.LEFT]
    if one is None or two is None or one.joint is not two.joint:
        return
    # A return or an open end says nothing of the next wall, so each must stand.
    if not (one.joint.has_mate or one.joint.stops):
        return
    # What is measured or coped stands where it was written, and so does how it was taken.
    may_go = [
        not end.rest and not _over_scraps(room, walls[place])
        for end, place in ((one, at), (two, after))
    ]
    twice = _ANGLE.fullmatch(two.rest) and two.rest == one.rest
    if may_go[1] or (twice and not _over_scraps(room, walls[after])):
        left[after][Side.LEFT] = None
    if may_go[0] and (not may_go[1] or one.joint.word == usual):
        left[at][Side.RIGHT] = None


def _over_scraps(room: Room, wall: WallLine) -> bool:
    """Tell whether a wall's own ends say how they were taken."""
    said = any(isinstance(fact, facts.WrittenTaken) for fact in wall.facts)
    return said or room.settings.taken is TakenAt.POINT
