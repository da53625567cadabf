"""Blocks that trim ends at: in a corner, or between two unlike trims of one wall."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from trimlang.joints import Joint
from trimlang.language import facts, tree
from trimlang.lengths.angles import RIGHT, degrees_text
from trimlang.record import record
from trimlang.survey.job import End, Gap, Room, Run, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.near_names import unknown_trim
from trimlang.survey.on_walls import BlockInCorner, CasingBlock
from trimlang.survey.said_blocks import ByName, find_block

MOST_OFF_SQUARE = 5
"""Degrees that a corner may be off square for a block to fill it (common practice, no source)."""


@record
class BlocksThere:
    """How many of a block stand at one place: at an opening, in a wall or in a corner.

    ``place`` is what the place is called, empty for an opening without a name.
    """

    block: CasingBlock
    count: int
    place: str


def blocks_of(room: Room) -> Iterator[BlocksThere]:
    """Yield the blocks of a room, in the order of its walls; a corner's block once."""
    for at, stretch in enumerate(room.walk):
        if isinstance(stretch, Gap):
            for block, count in stretch.trimmings.blocks:
                yield BlocksThere(block=block, count=count, place=stretch.called or "")
        # A corner's block is told at both its walls: it is counted at the left one of them.
        first = at == 0 and room.open_walk
        for end in (stretch.left if first else None, stretch.right):
            if end is not None and end.block is not None:
                yield BlocksThere(block=end.block.block, count=1, place=_corner(room, at, end))


def read_corner_block(
    fact: facts.BlockHere, joint: Joint, known: ByName | None, findings: Findings
) -> BlockInCorner | None:
    """Return the block that an end's brackets name; None, and a finding, where there can be none.

    ``known`` is None where no corner can be: at a loose piece, or at the end of one trim alone.
    """
    if known is None or not joint.is_corner:
        findings.say("T474", fact.span, joint=joint)
        return None
    for word in fact.trims:
        if word.text not in known.trims:
            unknown_trim(word, known.trims, findings)
    block = find_block(fact.block, known, findings)
    if block is None:
        return None
    # Round an outside corner its face is as wide as said, and the wall begins behind its thickness.
    thick = block.thickness
    if joint.is_outside and (thick is None or thick >= block.wide):
        findings.say("T475", fact.span, block=block.name)
        return None
    stops = tuple(word.text for word in fact.trims) or None
    return BlockInCorner(block=block, stops=stops)


def one_block(right: End, left: End, findings: Findings) -> BlockInCorner | None:
    """Return the block of a corner that either side may name; reports two, and a crooked corner."""
    if right.block is not None and left.block is not None and right.block != left.block:
        names = {"one": right.block.block.name, "other": left.block.block.name}
        findings.say("T476", left.span, there=right.span, **names)
    # Either side may name it, as a joint is said only once.
    block = right.block or left.block
    corner = left.corner if right.corner is None else right.corner
    if block is not None and corner is not None and abs(corner - RIGHT) > MOST_OFF_SQUARE:
        said = right if right.block is not None else left
        findings.say(
            "T477", said.span, block=block.block.name, corner=degrees_text(corner).rstrip("°")
        )
    return block


def on_floor(
    of_room: tuple[str, ...], lines: Iterable[tree.Statement], trims: Mapping[str, Trim]
) -> set[str]:
    """Return the trims that stand on the floor: the first of a room, with shoe and cap.

    Those that runs among ``lines`` name for themselves too.
    """
    lists = [of_room]
    for line in lines:
        said = line.facts if isinstance(line, tree.RunLine) else ()
        named = (fact.trim.text for fact in said if isinstance(fact, facts.NamedTrim))
        lists.append(tuple(name for name in named if name in trims))
    # Crown and its frieze may be named first, and hang all the same.
    standing = [[name for name in names if not trims[name].hangs] for names in lists]
    first = {name for names in standing for name in names[:1]}
    listed = {name for names in lists for name in names}
    return {
        name
        for name in listed
        if {name, trims[name].in_front_of, trims[name].upon} & first  # shoe, and a cap
    }


def _corner(room: Room, at: int, end: End) -> str:
    """Return what a corner is called: by the walls at both its sides."""
    stretch = room.walk[at]
    beyond = at + 1 if end is stretch.right else at - 1
    sides = [stretch]
    if 0 <= beyond < len(room.walk) or not room.open_walk:
        sides.append(room.walk[beyond % len(room.walk)])
    names = (one.label if isinstance(one, Run) else one.called or one.kind.value for one in sides)
    return "/".join(names)
