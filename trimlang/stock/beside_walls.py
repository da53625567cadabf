"""A trim's fixed pieces beside long walls that may be joined anywhere."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from typing import Final

from trimlang.record import record
from trimlang.stock.certificate import FreeRun
from trimlang.stock.floor import Worth
from trimlang.stock.problem import Part, Problem
from trimlang.stock.timber import Timber, timber_of
from trimlang.stock.wall_divisions import WallSort

STAND_IN: Final = "\0"
RESERVE: Final = "\1"
"""No part of a job is named so."""


def beside_walls(fixed: Problem, free: Sequence[FreeRun]) -> tuple[Timber, Timber]:
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
            for way in (run.lean, -run.lean):
                # Both ways, since a scarf may lap either way: what a fixed piece may share with a
                # part of a wall must not be less than it could be.
                yield Part(f"{STAND_IN}{number}.{piece}.{way}", max(run.least, 1), way, way)


@record
class WallRooms:
    """The room that the parts of each wall take, all together and one alone, at the least.

    Each stick that holds any part has ``lost`` less room.
    """

    sorts: tuple[WallSort, ...]
    lost: int


def wall_rooms(free: Sequence[FreeRun], timber: Timber) -> WallRooms:
    """Return the rooms of walls beside the fixed pieces of a timber.

    An overlap is charged to one of its two ends: both ends of a part may be charged, and of all
    parts of a run no more than its ``leans``.  But where no fixed piece leans, only parts overlap,
    and one that lies alone saves nothing.  Then each part counts as shorter by the lean of its
    run, and the stick as shorter by the least lean of all runs.  Proof: of the parts on a stick
    set one aside that leans least.  Each place where two parts meet is charged to the one farther
    from that part, so every other part is charged once at most, and no overlap is more than the
    lean of either part.  So all overlaps together are no more than all leans but the least one.
    """
    if not timber.leaning:
        return WallRooms(tuple(_sort(run, timber, 0, 0) for run in free), 0)
    if any(size.left or size.right for size in timber.sizes):
        return WallRooms(tuple(_sort(run, timber, run.leans, 2 * run.lean) for run in free), 0)
    sorts = tuple(_sort(run, timber, run.pieces * run.lean, run.lean) for run in free)
    return WallRooms(sorts, min((run.lean for run in free), default=0))


def _sort(run: FreeRun, timber: Timber, leans: int, lean: int) -> WallSort:
    kerf = timber.problem.kerf
    return WallSort(
        parts=run.pieces,
        total=run.total + run.pieces * kerf - leans,
        least=max(run.least + kerf - lean, 1),
    )


def worth_by_length(timber: Timber, free: Iterable[FreeRun]) -> Worth:
    """Return the worth by length, as in ``floor.py``, of pieces and walls together."""
    needed = sum(size.least * size.count for size in timber.sizes)
    # All overlaps of a run at once: a stick may hold any number of parts here.
    walls = (_sort(run, timber, run.leans if timber.leaning else 0, 0) for run in free)
    return Worth(
        tuple(max(kind.room, 0) for kind in timber.kinds),
        needed + sum(max(wall.total, 0) for wall in walls),
        tuple(size.least for size in timber.sizes),
    )


__all__ = ["WallRooms", "beside_walls", "wall_rooms", "worth_by_length"]
