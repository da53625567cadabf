"""A trim's fixed pieces beside long walls that may be joined anywhere."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import Final

from trimlang.record import record
from trimlang.stock.certificate import FreeRun
from trimlang.stock.long_walls.wall_divisions import WallSort
from trimlang.stock.patterns.nesting import can_nest
from trimlang.stock.problem import Part, Problem
from trimlang.stock.sticks.floor import Worth, cost_floor
from trimlang.stock.sticks.mitres import Leans, least_weights, overlap
from trimlang.stock.sticks.timber import Size, Timber, timber_of

STAND_IN: Final = "\0"
RESERVE: Final = "\1"
"""No part of a job is named so."""

FEW: Final = 80
"""With no more pieces it tells that a size may be laid more often than there are pieces of it."""

LAID: Final = 300
"""Parts are laid one after another where the longest stick is filled in no more steps."""


def timber_beside_walls(fixed: Problem, free: Sequence[FreeRun]) -> tuple[Timber, Timber]:
    """Return the timber of the fixed pieces alone, and that among stand-ins for parts of walls.

    In both the pieces take the room that they take beside parts of walls.
    """
    real = replace(fixed, parts=tuple(_with_reserve(fixed, free)))
    among = timber_of(replace(real, parts=(*real.parts, *_stand_ins(free))))
    sizes = (
        replace(size, ids=tuple(part for part in size.ids if not part.startswith(STAND_IN)))
        for size in among.sizes
    )
    alone = replace(among, problem=real, sizes=tuple(size for size in sizes if size.ids))
    return alone, among


def _with_reserve(fixed: Problem, free: Sequence[FreeRun]) -> list[Part]:
    """Return the fixed parts, and one as long as the longest must be if any may be spoiled.

    With spare sticks none is added: one of those may serve for the spoiled piece.
    """
    parts = list(fixed.parts)
    if fixed.survive_loss and not fixed.spare:
        longest = [part.length for part in parts]
        # However a run is divided, its longest piece is at least the average.
        longest += [-(-run.total // run.pieces) for run in free]
        # It must be as long as the longest piece of any plan is at the least, or the bound would
        # ask for more room than some plan needs.
        parts.append(Part(RESERVE, max(longest, default=1)))
    return parts


def _stand_ins(free: Sequence[FreeRun]) -> Iterator[Part]:
    """Yield parts that lean as the pieces of free runs may, as short as these may be."""
    for number, run in enumerate(free):
        for piece in range(run.pieces):
            for place, (left, right) in enumerate(_part_leans(run)):
                name = f"{STAND_IN}{number}.{piece}.{place}"
                yield Part(name, max(run.least, 1), left, right)


@record
class WallRooms:
    """The room that the parts of each wall take, all together and one alone, at the least.

    Each stick that holds any part has ``lost`` less room.  With ``leans`` it is the parts' whole
    room: they are laid one after another, and these are the ways in which they may lean; without,
    what they may share is taken off.
    """

    sorts: tuple[WallSort, ...]
    lost: int = 0
    leans: tuple[Leans, ...] = ()


def wall_rooms(free: Sequence[FreeRun], alone: Timber, among: Timber) -> tuple[WallRooms, ...]:
    """Return ways to count the rooms of walls, given what ``timber_beside_walls`` returns.

    Where pieces lean they are laid one after another, if that takes fair time.  Otherwise, and
    first in a small job, overlaps are charged to ends.
    """
    kerf = among.problem.kerf
    if not free:
        return ()
    # What is taken off a part must leave some of it, or counted as the least room that there is it
    # would count for more than it takes.  Only a wall in parts as short as its own mitres is so;
    # laid one after another, parts keep their whole room.
    sound = not among.leaning or all(run.least + kerf > 2 * run.most_lean for run in free)
    if sound and among.leaning and not any(size.left or size.right for size in alone.sizes):
        return (_among_square(free, among),)
    charged = WallRooms(
        tuple(
            _sort(run, among, off, 2 * run.most_lean if among.leaning else 0)
            for run, off in zip(free, _charged(free, among), strict=True)
        )
    )
    leans = _most_leaning({lean for run in free for lean in _part_leans(run)})
    whole = tuple(_sort(run, among, 0, 0) for run in free)
    lying = [*alone.sizes, *(part_of(sort.least, *lean) for sort in whole for lean in leans)]
    if not among.leaning or not can_nest(lying, [kind.room for kind in alone.kinds], LAID):
        return (charged,) if sound else ()
    laid = WallRooms(whole, leans=leans)
    return (charged, laid) if sound and sum(alone.demand) <= FEW else (laid,)


def _among_square(free: Sequence[FreeRun], among: Timber) -> WallRooms:
    """Return the rooms of walls beside square pieces, where a part that lies alone saves nothing.

    Each part counts as shorter by the most that its run leans, and a stick with parts as shorter by
    the least of that of all runs.  Proof: only parts overlap.  Of those on a stick set one aside
    that leans least.  Each place where two parts meet is charged to the one farther from it, so
    every other part is charged once at most, and no overlap is more than what either part leans.
    So all overlaps together are no more than what all parts lean but for the least one.
    """
    sorts = (_sort(run, among, run.pieces * run.most_lean, run.most_lean) for run in free)
    return WallRooms(tuple(sorts), lost=min(run.most_lean for run in free))


def by_length(free: Sequence[FreeRun], among: Timber) -> int:
    """Return what all walls take by length alone, if sticks may hold any number of parts."""
    return sum(
        max(_sort(run, among, off, 0).total, 0)
        for run, off in zip(free, _charged(free, among), strict=True)
    )


def part_of(room: int, left: int, right: int) -> Size:
    """Return a part of a wall that takes a room and leans so, as if it were a size."""
    return Size(length=room, left=left, right=right, ids=(), weight=room, least=room)


def _most_leaning(leans: set[Leans]) -> tuple[Leans, ...]:
    """Return the leans without those that share no more at either end than some other."""
    return tuple(
        sorted(
            one
            for one in leans
            if not any(
                one != other
                and all(overlap(a, b) == abs(a) for a, b in zip(one, other, strict=True))
                for other in leans
            )
        )
    )


def _part_leans(run: FreeRun) -> list[Leans]:
    """Return how a run's pieces may lean at both ends, since a scarf may lap either way."""
    ways = run.lean, -run.lean
    found = {ends for way in ways for ends in ((run.left, way), (way, run.right))}
    if run.pieces > 2:
        found |= {(way, other) for way in ways for other in ways}
    return sorted(found)


def _charged(free: Sequence[FreeRun], among: Timber) -> list[int]:
    """Return the most that is charged to each run, at both its ends and at each joint once.

    An overlap is charged to one of its two ends, as ``mitres.least_weights`` does: of a joint's
    two ends, whichever way they lean, always to one.
    """
    if not among.leaning:
        return [0] * len(free)
    shapes = [(size.length, size.left, size.right) for size in among.sizes]
    # Pieces that only lean as a run's own ends do, so long that something is left of them.
    long = 2 * max((run.most_lean for run in free), default=0)
    ends = [end for run in free for end in ((long, run.left, 0), (long, 0, run.right))]
    least = least_weights([*shapes, *ends], [*among.demand, *[0] * len(ends)], 0)
    off = [long - room for room in least[len(shapes) :]]
    return [
        max(run.pieces - 1, 0) * run.lean + left + right
        for run, left, right in zip(free, off[::2], off[1::2], strict=True)
    ]


def _sort(run: FreeRun, timber: Timber, together: int, one: int) -> WallSort:
    """Return a wall's parts with so much taken off all of them together, and off one alone."""
    kerf = timber.problem.kerf
    return WallSort(
        parts=run.pieces,
        total=run.total + run.pieces * kerf - together,
        least=max(run.least + kerf - one, 1),
    )


def worth_by_length(timber: Timber, walls: int) -> Worth:
    """Return the worth by length, as in ``floor.py``, of pieces beside ``walls`` of such room."""
    return Worth(
        tuple(max(kind.room, 0) for kind in timber.kinds),
        walls + sum(size.least * size.count for size in timber.sizes),
        tuple(size.least for size in timber.sizes),
    )


def floor_by_length(fixed: Problem, free: Sequence[FreeRun]) -> int:
    """Return what the pieces and the walls cost at the least by length alone."""
    alone, among = timber_beside_walls(fixed, free)
    return cost_floor(alone, worth_by_length(alone, by_length(free, among)))


__all__ = [
    "WallRooms",
    "by_length",
    "floor_by_length",
    "part_of",
    "timber_beside_walls",
    "wall_rooms",
    "worth_by_length",
]
