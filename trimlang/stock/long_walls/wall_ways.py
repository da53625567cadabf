"""Ways to divide a long wall over sticks of a rack, and which of them is worth most."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from itertools import combinations_with_replacement as pairs
from typing import Any

from trimlang.record import record
from trimlang.stock.patterns.pricing import Pricing
from trimlang.stock.sticks.timber import Pattern


@record
class LongWall:
    """A wall in so many parts, in the problem's units.

    Together they measure ``total`` at the least, each from ``least`` to ``most``, in whole
    multiples of ``step`` but for the last one.  One part more makes that ``lap`` longer; None: no
    more parts than these.
    """

    total: int
    pieces: int
    least: int
    most: int
    step: int
    lap: int | None = None


@record
class Remainder:
    """What whole sticks of a kind leave of a wall: a piece of this length beside parts of that."""

    wall: int
    kind: int
    part: int
    length: int


@record
class Division:
    """Sticks (kind and fixed pieces) and what parts of a wall they give; the wall is None: of none.

    ``left`` is the place of the remainder that is still to be cut, if any; ``added`` tells how
    many joints it has more than the wall needs.
    """

    sticks: tuple[tuple[int, Pattern], ...]
    wall: int | None = None
    parts: tuple[int, ...] = ()
    left: int | None = None
    added: int = 0


@record
class Joined:
    """Kinds of stick for all parts of a wall; the last two share ``rest``, the first has ``at``."""

    wall: int
    others: tuple[int, ...]
    parts: tuple[int, ...]
    pair: tuple[int, int]
    rest: int
    longest: int
    at: int
    added: int = 0


class WallWays:
    """The ways to divide walls over sticks of some kinds.

    Args:
        walls: the long walls.
        rooms: of every kind of stick, a kerf included.
        kinds: those that parts are cut from.
        kerf: what a cut takes.
    """

    def __init__(
        self, walls: Sequence[LongWall], rooms: Sequence[int], kinds: Sequence[int], kerf: int
    ) -> None:
        self._walls, self._kinds = walls, kinds
        # The longest part that each kind of stick gives.
        self._lengths = [room - kerf for room in rooms]
        self._kerf = kerf
        # How many ways were looked at.
        self.work = 0

    def remainders(self, counts: Sequence[int]) -> Iterator[Remainder]:
        """Yield what whole sticks of one kind leave of each wall, where a rack has so many."""
        for wall, own in enumerate(self._walls):
            # A wall that one stick reaches is its own remainder, on whatever stick.
            if own.pieces == 1:
                yield Remainder(wall=wall, kind=0, part=0, length=own.total)
                continue
            for kind in self._kinds:
                part = self._whole_part(own, kind)
                rest = own.total - (own.pieces - 1) * part
                # A rest as long as a whole part is no remainder: it takes one more such stick.
                if own.least <= rest < part and counts[kind] >= own.pieces - 1:
                    yield Remainder(wall=wall, kind=kind, part=part, length=rest)

    def _whole_part(self, wall: LongWall, kind: int) -> int:
        """The longest part that a whole stick gives."""
        return min(wall.most, self._lengths[kind]) // wall.step * wall.step

    def ways(
        self, wall: int, by_room: Any, paid: Sequence[int], rack: Sequence[int]
    ) -> Iterator[tuple[int, Joined]]:
        """Yield for each choice of kinds the best place of the joint between the last two parts."""
        own = self._walls[wall]
        # A joint more than the wall needs can pay, where it uses up a short rest.
        for added in range(1 if own.lap is None else 2):
            pieces, total = own.pieces + added, own.total + added * (own.lap or 0)
            # A wall in one piece has no joint whose place could be chosen.
            if pieces > 1:
                yield from self._joined(wall, pieces, total, by_room, paid, rack)

    def _joined(
        self,
        wall: int,
        pieces: int,
        total: int,
        by_room: Any,
        paid: Sequence[int],
        rack: Sequence[int],
    ) -> Iterator[tuple[int, Joined]]:
        """Yield the ways with so many pieces, which measure ``total`` together."""
        own = self._walls[wall]
        kinds = [kind for kind in self._kinds if rack[kind]]
        # With two pieces there are no others, so one turn of the loop stands for every kind.
        for others in ((kind,) * (pieces - 2) for kind in kinds[: 1 if pieces == 2 else None]):
            parts = tuple(self._whole_part(own, kind) for kind in others)
            rest = total - sum(parts)
            if any(part < own.least for part in parts):
                continue
            for one, other in pairs(kinds, 2):
                used = Counter((*others, one, other))
                if any(number > rack[kind] for kind, number in used.items()):
                    continue
                self.work += 1
                room, across = self._lengths[one], self._lengths[other]
                # What the other stick or the longest part cannot take has to be on the first one.
                first = max(own.least, rest - min(own.most, across))
                # Rounded up to the step, since rounding down would overload the other stick.
                first = -(-first // own.step) * own.step
                last = min(own.most, room, rest - own.least)
                if first > last:
                    continue
                # What the two sticks hold beside each length of the part on the first of them.
                beside = by_room[room - last : room - first + 1][::-1]
                worth = (beside + by_room[across - rest + first : across - rest + last + 1])[
                    :: own.step
                ]
                # Of equal worths the first, so that every machine puts the joint at the same place.
                at = int(worth.argmax())
                gain = int(worth[at]) - sum(paid[kind] for kind in (*others, one, other))
                yield (
                    gain,
                    Joined(
                        wall=wall,
                        others=others,
                        parts=parts,
                        pair=(one, other),
                        rest=rest,
                        longest=last // own.step * own.step,
                        at=first + at * own.step,
                        added=pieces - own.pieces,
                    ),
                )

    def divided(
        self,
        way: Joined,
        pricing: Pricing,
        weights: Sequence[int],
        values: Sequence[int],
        wanted: Sequence[int],
    ) -> Division:
        """Return the division, no piece on both sticks that there is only once."""
        one, other = way.pair
        room, across = self._lengths[one], self._lengths[other]
        part = way.at
        here, there = pricing.pattern_in(room - part), pricing.pattern_in(across - way.rest + part)
        if not holds(wanted, (here, there)):
            # One piece was promised to both sticks: the first keeps it, and the other is filled
            # anew.
            beside = list(wanted)
            for size in here:
                beside[size] -= 1
            held = sum(weights[size] for size in here)
            step = self._walls[way.wall].step
            # The first part takes up what its pieces leave, so that the other stick gains room.
            part = min(way.longest, (room - held) // step * step)
            again = Pricing(weights, [across - way.rest + part], values, beside)
            there = again.pattern_in(across - way.rest + part)
        return Division(
            (*((kind, ()) for kind in way.others), (one, here), (other, there)),
            way.wall,
            (*way.parts, part, way.rest - part),
            added=way.added,
        )


def holds(wanted: Sequence[int], patterns: Iterable[Pattern]) -> bool:
    """Whether there are as many pieces as the patterns have together."""
    counted = Counter(size for pattern in patterns for size in pattern)
    return all(number <= wanted[size] for size, number in counted.items())


__all__ = ["Division", "LongWall", "Remainder", "WallWays", "holds"]
