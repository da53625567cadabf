"""What a trim costs at least, wherever its long walls are spliced.

The planner's bound holds for the pieces as they are cut.  Here a wall that may be
spliced elsewhere is so many pieces of any length that together measure the
wall and its laps.  Worths that depend on length alone (those of ``steps.py`` before they
are raised, and length itself) hold for such pieces too: a wall counts with what it is
worth where its joints make it worth least.  The cheapest sticks that are worth enough
bound the cost from below, in whole numbers.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from functools import partial
from typing import Final

from trimlang.record import record
from trimlang.stock.buying import Buying
from trimlang.stock.certificate import FreeRun
from trimlang.stock.floor import Worth, cost_floor
from trimlang.stock.problem import Part, Problem
from trimlang.stock.steps import STEPS, rounded, shares
from trimlang.stock.timber import Size, Timber, timber_of
from trimlang.stock.whole_mix import TooManyMixesError, WholeMixes

STAND_IN: Final = "\0"
RESERVE: Final = "\1"
"""No part of a job is named so."""

WORTHS: Final = 12
"""How many worths the cheapest mix must satisfy: those that ask for most money."""


@record
class Argued:
    """A bound, and the values that show it: the least rooms of pieces worth 1, 2 and so on."""

    floor: int
    values: tuple[tuple[int, ...], ...] = ()


def floor_anywhere(fixed: Problem, free: Sequence[FreeRun], enough: int) -> Argued:
    """Return a bound on what the parts of ``fixed`` and the free runs cost, joints anywhere.

    It is ``enough`` at most, which is returned where every plan costs that or more.
    """
    timber = timber_of(replace(fixed, parts=(*_with_reserve(fixed, free), *_stand_ins(free))))
    if not timber.sizes or not timber.kinds:
        return Argued(0)
    runs = [_loads(run, timber) for run in free]
    # those come first that ask for most money; length needs no value
    argued: list[tuple[Worth, tuple[int, ...]]] = [(_length_worth(timber, runs), ())]
    argued += [_worth(timber, runs, value) for value in _values(timber)]
    argued.sort(
        key=lambda one: (-cost_floor(timber, one[0]), one[0].of_kind, one[0].needed, one[1])
    )
    worths = [worth for worth, _ in argued[:WORTHS]]
    values = tuple(value for _, value in argued[:WORTHS])
    floor = min(cost_floor(timber, worths[0]), enough)
    try:
        found = WholeMixes(timber, Buying(timber)).cheapest(worths, (), enough)
    except TooManyMixesError:
        return Argued(floor, values)
    return Argued(enough if found is None else max(floor, found[0]), values)


def _with_reserve(fixed: Problem, free: Sequence[FreeRun]) -> list[Part]:
    """Return the fixed parts, and one as long as the longest must be if any may be spoiled.

    With spare sticks none is added: one of those may serve for the spoiled piece.
    """
    parts = list(fixed.parts)
    if fixed.survive_loss and not fixed.spare:
        longest = [part.length for part in parts]
        # However a run is divided, its longest piece is at least the average.
        longest += [-(-run.total // run.pieces) for run in free]
        parts.append(Part(RESERVE, max(longest, default=1)))
    return parts


def _stand_ins(free: Sequence[FreeRun]) -> Iterator[Part]:
    """Yield parts that lean as the pieces of free runs may, as short as these may be.

    They only make ``timber_of`` see the leans; their own lengths count nothing (``_fixed``).
    """
    for number, run in enumerate(free):
        for piece in range(run.pieces):
            for way in (run.lean, -run.lean):
                yield Part(f"{STAND_IN}{number}.{piece}.{way}", max(run.least, 1), way, way)


@record
class _Loads:
    """The least room that a free run's pieces take together, and one of them alone."""

    pieces: int
    total: int
    least: int


def _loads(run: FreeRun, timber: Timber) -> _Loads:
    # An overlap is charged to one of its two ends; here both ends of a piece are charged, which
    # is never too little.
    leans, lean = (run.leans, 2 * run.lean) if timber.leaning else (0, 0)
    kerf = timber.problem.kerf
    return _Loads(
        run.pieces, run.total + run.pieces * kerf - leans, max(run.least + kerf - lean, 0)
    )


def _values(timber: Timber) -> Iterator[Callable[[int], int]]:
    """Yield functions from a piece's room to its worth; a longer piece is never worth less."""
    sold = {kind.room for kind in timber.kinds if kind.room > 0 and not kind.on_hand}
    for room in sorted(sold, reverse=True):
        yield partial(_longer, room=room)
        for steps in range(1, STEPS + 1):
            yield partial(shares, room=room, steps=steps)
        for steps in range(2, min(STEPS, room) + 1):
            yield partial(rounded, room=room, cut=room // steps)


def _longer(weight: int, room: int) -> int:
    """Return 1 for a piece that is too long for a stick, 0 for any other."""
    return int(weight > room)


def _length_worth(timber: Timber, runs: Sequence[_Loads]) -> Worth:
    needed = sum(size.least * _fixed(size) for size in timber.sizes)
    return Worth(
        tuple(max(kind.room, 0) for kind in timber.kinds),
        needed + sum(max(run.total, 0) for run in runs),
    )


def _worth(
    timber: Timber, runs: Sequence[_Loads], value: Callable[[int], int]
) -> tuple[Worth, tuple[int, ...]]:
    """Return the worth, valid for pieces of any length, that a function of the room gives.

    And the least rooms of a piece worth 1, 2 and so on.
    """
    top = max(kind.room for kind in timber.kinds)
    most = value(top)
    # At place n the least room of a piece worth n or more; `top + 1` where no piece is.
    begins = [bisect_left(range(top + 1), worth, key=value) for worth in range(most + 1)]
    begins.append(top + 1)
    needed = sum(value(size.least) * _fixed(size) for size in timber.sizes)
    needed += sum(_least_value(run, begins) for run in runs)
    filled = _least_rooms(begins[:-1], top)
    of_kind = tuple(bisect_right(filled, max(kind.room, 0)) - 1 for kind in timber.kinds)
    return Worth(of_kind, needed), tuple(begins[1:-1])


def _least_rooms(begins: Sequence[int], top: int) -> list[int]:
    """Return at place n the least room of pieces worth n together, for rooms up to the top."""
    filled = [0]
    while True:
        worth = len(filled)
        room = min(
            (
                begins[one] + filled[worth - one]
                for one in range(1, min(worth, len(begins) - 1) + 1)
            ),
            default=top + 1,
        )
        if room > top or not any(begins[1:]):
            return filled
        filled.append(room)


def _least_value(run: _Loads, begins: Sequence[int]) -> int:
    """Return the least that a run's pieces are worth together, wherever it is cut.

    ``reached[w]`` is the greatest length that so many pieces worth w together can have.
    """
    one = [begin - 1 if begin > run.least else None for begin in begins[1:]]
    reached: list[int | None] = [0]
    for _ in range(run.pieces):
        after: list[int | None] = [None] * (len(reached) + len(one) - 1)
        for before, length in enumerate(reached):
            for worth, longest in enumerate(one):
                if length is not None and longest is not None:
                    known = after[before + worth]
                    if known is None or length + longest > known:
                        after[before + worth] = length + longest
        reached = after
    enough = [w for w, length in enumerate(reached) if length is not None and length >= run.total]
    return min(enough, default=0)


def _fixed(size: Size) -> int:
    """Return how many parts of a size are real, not stand-ins for a free run's pieces."""
    return sum(not part.startswith(STAND_IN) for part in size.ids)
