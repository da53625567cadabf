"""What a long wall is worth at the least, divided into parts of any lengths."""

from __future__ import annotations

from typing import TypeAlias

from trimlang.record import record

Steps: TypeAlias = tuple[tuple[int, int], ...]
"""From which room on a part is worth how much, in rising order; below the first, nothing."""


@record
class WallSort:
    """Long walls that are alike: so many ``parts`` with this ``total`` and ``least`` room each."""

    parts: int
    total: int
    least: int


def steps_of(worths: dict[int, float], scale: float) -> Steps:
    """Return in whole numbers what a part is worth from each mark on, where that is more."""
    steps: list[tuple[int, int]] = []
    for room in sorted(worths):
        worth = int(worths[room] * scale)
        if worth > (steps[-1][1] if steps else 0):
            steps.append((room, worth))
    return tuple(steps)


def cheapest_divisions(
    steps: Steps, longest: int, parts: int, least: int
) -> list[tuple[int, int, tuple[int, ...]]]:
    """Return (room together, worth, rooms) of so many parts; none is longer and worth no more.

    A min-plus program, part after part.  Both rooms and worths rise along the list.
    """
    import numpy as np

    ends = [room - 1 for room, _ in steps] + [longest]
    worths = [0] + [value for _, value in steps]
    ways = [(end, worth) for end, worth in zip(ends, worths, strict=True) if end >= least]
    found: list[tuple[int, int, tuple[int, ...]]] = [(0, 0, ())]
    for _ in range(parts):
        # Each way so far with each part more.
        room, worth = (
            np.add.outer([one[place] for one in found], [way[place] for way in ways]).ravel()
            for place in (0, 1)
        )
        # By worth, and the longest first among equals: what is no longer than one before it is of
        # no use.
        order = np.lexsort((-room, worth))
        most = np.maximum.accumulate(room[order])
        kept = order[np.flatnonzero(np.diff(most, prepend=-1))]
        found = [
            (int(room[n]), int(worth[n]), (*found[n // len(ways)][2], ways[n % len(ways)][0]))
            for n in kept.tolist()
        ]
    return found


__all__ = ["Steps", "WallSort", "cheapest_divisions", "steps_of"]
