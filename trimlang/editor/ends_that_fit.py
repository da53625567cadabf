"""Which ends can be proposed where one is typed: none that the compiler would refuse there."""

from __future__ import annotations

from trimlang.editor.neighbour_end import TypedEnd
from trimlang.joints import Joint
from trimlang.language import facts, tree
from trimlang.survey.own_ends import why_not_alone

COPE = "cope"
MITRE = "mitre"
"""How one trim is fitted in its wall's corner: written in the place of a joint."""


def fits(end: TypedEnd, word: str) -> bool:
    """Tell whether an end can be cut so: by a joint's word, or by how its corner is fitted."""
    corner = end.own or end.there or end.usual
    if word in (COPE, MITRE):
        # Trims that go round an outside corner with the wall are mitred without being told.
        return end.trim is not None and corner is not None and corner.is_inside
    joint = Joint.of(word)
    climbs = any(isinstance(fact, facts.Rising) for fact in end.wall.facts)
    if end.trim is not None:
        # Of a corner it says no more than how it is fitted there, which has words of its own.
        return not joint.is_corner and why_not_alone(joint, corner, (), climbs=climbs) is None
    if isinstance(end.wall, tree.GapLine):
        # Nothing ends at an opening: what is said there is how the wall turns.
        return joint.is_corner and _meets(joint, end)
    if (joint.row.on_slope and not climbs) or (joint.row.on_level and _slopes(end.wall)):
        return False
    if joint.row.bends and not (_slopes(end.wall) or _slopes(end.neighbour)):
        return False
    return _meets(joint, end)


def _slopes(wall: tree.RunLine | tree.GapLine | None) -> bool:
    """Tell whether a wall's trim, or its crown below the ceiling, climbs."""
    slopes = facts.Rising | facts.CeilingRising
    return wall is not None and any(isinstance(fact, slopes) for fact in wall.facts)


def _meets(joint: Joint, end: TypedEnd) -> bool:
    """Tell whether a joint agrees with what the neighbour says of it."""
    if end.neighbour is None:
        # Where the walk ends no trim goes on.
        return not joint.goes_on
    there = end.there
    if there is None:
        return True
    return joint is there if there.has_mate else not joint.has_mate
