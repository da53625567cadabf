"""Level returns: where trim that climbs goes on level at its foot or its head.

A run that says ``level left 8 in`` stands for two runs that meet in a rake: a level one of that
length, which has the end that the line says for that side, and the one that climbs.  So the
corner or the newel beyond a stair is met by level trim, as round any room.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from trimlang.joints_by_role import BEND
from trimlang.language import facts, tree
from trimlang.language.facts import Side
from trimlang.survey.unsaid_ends import WallLine

_OF_ALL = (facts.NamedTrim, facts.Without, facts.WrittenTaken)


def with_level_returns(line: WallLine) -> Iterator[WallLine]:
    """Yield a wall's line as those of its level returns and of what climbs, from the left."""
    if not isinstance(line, tree.RunLine):
        yield line
        return
    said = {fact.side: fact for fact in line.facts if isinstance(fact, facts.LevelReturn)}
    climbs = line
    for side, level in said.items():
        # The end that the line says for this side is the level piece's; the climbing run gets the
        # rake there, once for each side that has a return.
        climbs = replace(climbs, facts=(*_without_end(climbs, side), _end(side, level)))
    if Side.LEFT in said:
        yield _level(line, said[Side.LEFT])
    yield climbs
    if Side.RIGHT in said:
        yield _level(line, said[Side.RIGHT])


def _without_end(line: tree.RunLine, side: Side) -> tuple[facts.WallFact, ...]:
    """Return what a line says, without the end that its level return takes over."""
    return tuple(
        fact
        for fact in line.facts
        if not (isinstance(fact, facts.AtEnd | facts.TrimEnd | facts.Notch) and fact.side is side)
    )


def _level(line: tree.RunLine, level: facts.LevelReturn) -> tree.RunLine:
    # A name of its own: both are pieces with tickets, and a name may stand once in a room.
    label = replace(line.label, text=f"{line.label.text}-{level.side}")
    own = (
        fact
        for fact in line.facts
        if isinstance(fact, _OF_ALL)
        or (isinstance(fact, facts.AtEnd | facts.TrimEnd | facts.Notch) and fact.side is level.side)
    )
    ends = (*own, _end(level.side.other, level))
    return tree.RunLine(label=label, length=level.length, facts=ends, span=line.span)


def _end(side: Side, level: facts.LevelReturn) -> facts.AtEnd:
    bend = tree.WrittenEnd(tree.Word(BEND.word, level.span), (), level.span)
    return facts.AtEnd(side=side, end=bend, word=level.span, span=level.span)
