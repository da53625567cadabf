"""Names the parts of a wall that a door breaks: ``W 4 ft 2, door 32, W 21`` are W and W2.

On a pad both parts bear the name of their wall.  Pieces need a name each, so a part behind an
opening or bare wall gets the next number that is free in its room.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Final

from trimlang.language import facts, tree
from trimlang.language.vocabulary import SHORT_JOINTS

_CORNERS: Final = frozenset(SHORT_JOINTS.values())
_SHORT: Final = 2
"""Letters of a name that takes its number without a dash: W2, but north-2."""


def with_parts_named(statements: Iterable[tree.Statement]) -> tuple[tree.Statement, ...]:
    """Return the statements with each later part of a broken wall called by a number of its own.

    Walls of one name that are parted by a corner, or by nothing, keep it: that is a mistake.
    """
    read = list(statements)
    places = _later_parts(read)
    for first, at in places:
        run, before = read[at], read[first]
        assert isinstance(run, tree.RunLine)  # noqa: S101  both are, or they were not found
        assert isinstance(before, tree.RunLine)  # noqa: S101
        free = _free(before.label.text, _room_labels(read, at))
        read[at] = replace(run, label=replace(run.label, text=free))
    return tuple(read)


def _later_parts(read: list[tree.Statement]) -> Iterator[tuple[int, int]]:
    """Yield where the first part of a broken wall stands, and where each later one does."""
    first: int | None = None
    broken = False
    for at, one in enumerate(read):
        if isinstance(one, tree.GapLine):
            broken = first is not None and not _turns(one)
            first = first if broken else None
        elif isinstance(one, tree.RunLine):
            before = read[first] if broken and first is not None else None
            same = isinstance(before, tree.RunLine) and _named_alike(before, one)
            if same and first is not None and not _turns(one, facts.Side.LEFT):
                yield first, at
            else:
                first = at
            broken = False
            # Behind a corner another wall begins.
            first = None if _turns(one, facts.Side.RIGHT) else first
        else:
            first, broken = None, False


def _named_alike(one: tree.RunLine, other: tree.RunLine) -> bool:
    word = other.label.text.casefold()
    return word[:1].isalpha() and one.label.text.casefold() == word


def _turns(one: tree.RunLine | tree.GapLine, *sides: facts.Side) -> bool:
    """Whether a corner is said at a stretch, at these sides of it or at any."""
    return any(
        isinstance(fact, facts.AtEnd)
        and (not sides or fact.side in sides)
        and fact.end.joint.text in _CORNERS
        for fact in one.facts
    )


def _room_labels(read: list[tree.Statement], at: int) -> set[str]:
    begin = max((n for n in range(at) if isinstance(read[n], tree.RoomLine)), default=0)
    end = next((n for n in range(at, len(read)) if isinstance(read[n], tree.RoomLine)), len(read))
    return {one.label.text.casefold() for one in read[begin:end] if isinstance(one, tree.RunLine)}


def _free(name: str, taken: set[str]) -> str:
    # N2 is itself a part of N, so the next one is N3.
    plain = name.rstrip("0123456789") or name
    begins = plain if len(plain) <= _SHORT else f"{plain.rstrip('-')}-"
    number = 2
    while f"{begins}{number}".casefold() in taken:
        number += 1
    return f"{begins}{number}"
