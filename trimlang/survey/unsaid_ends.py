"""Fills in ends that a line does not state from their neighbours: a joint is said only once.

Going round the room, the right end of one wall and the left end of the next are the two sides of
one joint.  A run beside an opening or bare wall stops square at it.  Where neither run says how
they meet, the room's setting for its ends holds; where there is none, that is an error, reported
once for the joint.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from trimlang.joints import Joint
from trimlang.joints_by_role import STOPPED, UPRIGHT
from trimlang.language import facts, tree
from trimlang.language.facts import Side
from trimlang.survey.job import End
from trimlang.survey.measures import Findings

Ends = dict[Side, End]
WallLine = tree.RunLine | tree.GapLine | tree.Unreadable


def fill_ends(
    lines: Sequence[WallLine],
    said: Sequence[Ends],
    usual: Joint | None,
    findings: Findings,
    heading: tree.RoomLine,
    *,
    open_walk: bool,
) -> list[Ends]:
    """Return the ends of a room's walls, in their order, with unstated ones filled in.

    ``said`` are the ends that each line states.  ``usual`` is what the room says of all its ends.
    An end that nothing is known of is left out and reported, once for its joint.
    """
    said = _between_walls(lines, said, open_walk=open_walk)
    filled = [dict(ends) for ends in said]
    for at, line in enumerate(lines):
        # An opening need not say its ends: the wall goes straight on past it.
        if not isinstance(line, tree.RunLine):
            continue
        for side in Side:
            if side in said[at]:
                continue
            neighbour = _neighbour(at, side, len(lines), open_walk=open_walk)
            if neighbour is not None and isinstance(lines[neighbour], tree.Unreadable):
                continue  # reported already, and it may be the line that says it
            joint = _joint(neighbour, side, lines, said) or usual
            if joint is STOPPED:
                joint = stopped(line)
            if joint is not None:
                filled[at][side] = _plain_end(joint, line)
                continue
            mate = None if neighbour is None else lines[neighbour]
            # What could not be read of the heading may be what says it of all ends.
            if not any(map(_unread, (line, mate, heading))):
                _say_unsaid(
                    line, mate, side, {} if neighbour is None else said[neighbour], findings
                )
    return filled


def _between_walls(
    lines: Sequence[WallLine], said: Sequence[Ends], *, open_walk: bool
) -> list[Ends]:
    """Return the ends with each corner beside an opening or bare wall at the side that has it.

    Said between a run and cabinets (``N 40, in, cabinets 6 ft``), a corner is at the cabinets and
    the run stops square; said between two bare walls, it is at both.
    """
    placed = [dict(ends) for ends in said]
    for at in range(len(lines)):
        after = _neighbour(at, Side.RIGHT, len(lines), open_walk=open_walk)
        if after is None:
            continue
        gap = lines[after]
        if not isinstance(gap, tree.GapLine) or Side.LEFT in placed[after]:
            continue
        end = placed[at].get(Side.RIGHT)
        if end is None or not end.joint.is_corner:
            continue
        # Two bare walls: none of them has trim that stops there, so both know the corner.
        if isinstance(lines[at], tree.GapLine):
            placed[after][Side.LEFT] = end
        elif _said_between(lines[at]):
            placed[after][Side.LEFT] = placed[at].pop(Side.RIGHT)
    return placed


def _said_between(line: WallLine) -> bool:
    return isinstance(line, tree.RunLine) and any(
        isinstance(fact, facts.AtEnd) and fact.between for fact in line.facts
    )


def stopped(line: WallLine) -> Joint:
    """Return how a wall's trim ends at what stops it, where its line does not say."""
    said = () if isinstance(line, tree.Unreadable) else line.facts
    # Casings and newels stand upright, so what climbs up to them ends upright too.
    return UPRIGHT if any(isinstance(fact, facts.Rising) for fact in said) else STOPPED


def _neighbour(at: int, side: Side, count: int, *, open_walk: bool) -> int | None:
    """Return the place of the wall beside an end, None where the walk ends there."""
    neighbour = at + side.step
    if not 0 <= neighbour < count:
        if open_walk or count == 1:
            return None
        # Past the last wall comes the first, and before the first the last.
        neighbour %= count
    return neighbour


def _joint(
    neighbour: int | None, side: Side, lines: Sequence[WallLine], said: Sequence[Mapping[Side, End]]
) -> Joint | None:
    if neighbour is None:
        return None
    if isinstance(lines[neighbour], tree.GapLine):
        return STOPPED
    mate = said[neighbour].get(side.other)
    # A return or an open end has no other side, so it says nothing about this end.
    shared = mate is not None and (mate.joint.has_mate or mate.joint.stops)
    return mate.joint if mate is not None and shared else None


def _plain_end(joint: Joint, line: tree.RunLine) -> End:
    return End(joint=joint, span=line.label.span)


def _say_unsaid(
    line: tree.RunLine,
    neighbour: WallLine | None,
    side: Side,
    said: Mapping[Side, End],
    findings: Findings,
) -> None:
    facts = {"run": line.label.text, "side": side, "at": line.span.end}
    if not isinstance(neighbour, tree.RunLine) or side.other in said:
        # There is no neighbour, or its end has no other side: only this end is missing.
        findings.say("T225", line.label.span, **facts)
    # Both sides of the joint are missing; it is reported at its left wall only.
    elif side is Side.RIGHT:
        findings.say("T252", line.label.span, other=neighbour.label.text, **facts)


def _unread(line: WallLine | tree.RoomLine | None) -> bool:
    """Tell whether a part of a line could not be read: it may be the end that is missing."""
    return isinstance(line, tree.RunLine | tree.GapLine | tree.RoomLine) and any(
        isinstance(fact, facts.Unread) for fact in line.facts
    )
