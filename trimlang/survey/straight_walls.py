"""The walls of a room as one faces them: what of its walk lies between two corners."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from trimlang.lengths.angles import sine
from trimlang.lengths.tape import NOTHING
from trimlang.record import record
from trimlang.survey.job import Room, Run, Stretch, Trim
from trimlang.survey.outline import depths, wall_length


@record
class Spot:
    """A place on a wall in inches: ``x`` from its left end, ``y`` upwards from its lowest floor."""

    x: Fraction
    y: Fraction


@record
class StraightWall:
    """A wall from corner to corner, seen from the room: left is left.

    ``places`` are the places in the walk of what it consists of, ``begins`` where each of these
    begins on the floor, and behind them where the last one ends.  A wall that curves is laid out
    flat.
    """

    places: tuple[int, ...]
    begins: tuple[Spot, ...]

    @property
    def long(self) -> Fraction:
        """How far it is from its left end to its right end, level (inches)."""
        return self.begins[-1].x

    def begin_of(self, place: int) -> Spot:
        """Return where the stretch at a place in the walk begins."""
        return self.begins[self.places.index(place)]


def straight_walls(room: Room, trims: Iterable[Trim]) -> tuple[StraightWall, ...]:
    """Return a room's walls in the order of the walk; ``trims`` are the job's."""
    thick = depths(trims)
    return tuple(
        StraightWall(
            places=places,
            begins=tuple(_on_the_floor([room.walk[place] for place in places], room, thick)),
        )
        for places in _between_corners(room)
    )


def _between_corners(room: Room) -> list[tuple[int, ...]]:
    walls: list[list[int]] = []
    for place, stretch in enumerate(room.walk):
        if walls and not _turns(room.walk[place - 1], stretch):
            walls[-1].append(place)
        else:
            walls.append([place])
    # A walk that goes all round may begin in the middle of a wall.
    if len(walls) > 1 and not room.open_walk and not _turns(room.walk[-1], room.walk[0]):
        walls[0] = walls.pop() + walls[0]
    return [tuple(wall) for wall in walls]


def _turns(one: Stretch, other: Stretch) -> bool:
    return any(end.joint.is_corner for end in (one.right, other.left) if end is not None)


def _on_the_floor(
    stretches: Iterable[Stretch], room: Room, thick: dict[str, Fraction]
) -> Iterator[Spot]:
    """Yield where each stretch begins and the last one ends; the lowest is at 0."""
    x = y = NOTHING
    found = [(x, y)]
    for one in stretches:
        curved = isinstance(one, Run) and one.curve is not None
        # A run that curves counts by its arc, as if it were unrolled.
        x += one.length if isinstance(one, Run) and curved else wall_length(one, room, thick)
        y += one.length * sine(one.slope) if isinstance(one, Run) and one.slope else NOTHING
        found.append((x, y))
    lowest = min(y for _, y in found)
    yield from (Spot(x=x, y=y - lowest) for x, y in found)
