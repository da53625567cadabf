"""Places a plan's names: beside their walls, or away from them at the end of a thin line.

A name that fits along its wall stands there.  One that does not, or would lie on
something else, goes to the nearest free place and a line leads to its wall.  All
coordinates are millimetres on paper.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from math import cos, radians, sin
from typing import Final

from trimlang.record import record
from trimlang.sheets.drawing.plan_scale import DrawnLabel, DrawnLine, fixed, line
from trimlang.sheets.drawing.polygons import Point, Shape, TakenPlaces, cross, sides
from trimlang.sheets.drawing.typeface import run, shortened

SIZES: Final = {"run": 3.2, "gap": 2.95, "piece": 2.95, "measure": 2.95, "name": 2.95}
LONGEST: Final = 44.0
CLEAR: Final = 0.5
"""How much stays free round each name (mm)."""
BETWEEN: Final = 2.5
"""How much stays free between two names in one line, so that they do not read as one (mm)."""
IN_LINES: Final = frozenset({"run", "gap"})
"""Names that stand along their walls, which go on in one line."""
STROKE: Final = 0.7
MARK: Final = 1.2


@record
class Wanted:
    """A name to place: its look, the ends of its wall, the unit direction away from the wall.

    ``off`` points to the preferred side; ``heading`` is the wall's direction in degrees.
    ``first`` are places for its middle, along the wall, that are better than any beside it;
    ``longest`` is how far it may run, ``instead`` makes what is placed where that fits nowhere.
    A line that leads to it may run ``over_lines`` of the drawing, though never through a name; it
    begins at one of ``starts``, the first that will do, or at the wall's middle.
    """

    look: str
    text: str
    one: Point
    other: Point
    off: Point
    heading: float
    first: Iterable[Point] = ()
    longest: float = LONGEST
    instead: Callable[[], Wanted] | None = None
    over_lines: bool = False
    starts: tuple[Point, ...] = ()

    @property
    def middle(self) -> Point:
        """The middle of the wall."""
        return ((self.one[0] + self.other[0]) / 2, (self.one[1] + self.other[1]) / 2)

    @property
    def along(self) -> Point:
        """The unit direction along the wall."""
        return (cos(radians(self.heading)), sin(radians(self.heading)))

    @property
    def long(self) -> float:
        """The wall's length on paper."""
        return abs(
            (self.other[0] - self.one[0]) * self.along[0]
            + (self.other[1] - self.one[1]) * self.along[1]
        )


@record
class Lettered:
    """The names as placed, the lines that lead to their walls, and how tall the paper must be."""

    labels: tuple[DrawnLabel, ...]
    leaders: tuple[DrawnLine, ...]
    tall: float


def letter(
    wanted: Sequence[Wanted], strokes: Sequence[DrawnLine], marks: Sequence[Point], size: Point
) -> Lettered:
    """Place every name where it lies on no stroke, no mark and no other name."""
    walls = [((float(one.x1), float(one.y1)), (float(one.x2), float(one.y2))) for one in strokes]
    solid = [_thick(*wall) for wall in walls]
    solid += [_box(mark, MARK * 2, MARK * 2, 0.0) for mark in marks]
    sheet = _Lettering(solid, walls, size)
    labels: dict[int, DrawnLabel] = {}
    # Long walls first: their names have room beside them, and later ones go round these.
    for number, one in sorted(enumerate(wanted), key=lambda pair: (-pair[1].long, pair[0])):
        text = shortened(one.text, min(one.longest, size[0] - 4), SIZES[one.look])
        spot = None
        if one.instead is None:
            spot = sheet.free(one, text)
        # A name that had to be cut short is not tried here: its number says more than half a name.
        elif text == one.text:
            spot = sheet.free(one, text, leads=False)
        if spot is None and one.instead is not None:
            # A name that would be cut short, or need a line to its wall, is said elsewhere.
            one = one.instead()
            text = one.text
            spot = sheet.free(one, text)
        labels[number] = sheet.take(one, text, spot or sheet.below(one, text))
    return Lettered(
        tuple(labels[number] for number in sorted(labels)), tuple(sheet.leaders), sheet.tall
    )


@record
class _Spot:
    """A place for a name: its middle, its turn, the box that it fills, the line to its wall."""

    centre: Point
    turn: float
    box: Shape
    leader: tuple[Point, Point] | None


class _Lettering:
    """A drawing with the names placed so far, which are obstacles for all that follow."""

    def __init__(
        self, solid: Sequence[Shape], walls: Sequence[tuple[Point, Point]], size: Point
    ) -> None:
        self._taken, self._walls = TakenPlaces(solid), walls
        self._wide, self.tall = size
        self._names: list[Shape] = []
        # Those that are turned alike, by how far they are.
        self._rows: defaultdict[int, TakenPlaces] = defaultdict(lambda: TakenPlaces(()))
        self._led: list[tuple[Point, Point]] = []
        self.leaders: list[DrawnLine] = []

    def free(self, one: Wanted, text: str, *, leads: bool = True) -> _Spot | None:
        """Return the best free place; ``leads`` is whether a line may lead there."""
        height = SIZES[one.look]
        across = run(text, height)
        for centre, turn, start in _places(one, across, height):
            if start is not None and not leads:
                break
            box = _box(centre, across + 2 * CLEAR, height + 2 * CLEAR, turn)
            if not all(0 <= x <= self._wide and 0 <= y <= self.tall for x, y in box):
                continue
            if not self._taken.leave_free(box):
                continue
            # A name at the end of a line of its own is told by that.
            if one.look in IN_LINES and start is None:
                row = _box(centre, across + 2 * BETWEEN, height, turn)
                if not self._rows[round(turn)].leave_free(row):
                    continue
            if any(_crosses(line, box) for line in self._led):
                continue
            leader = None if start is None else (start, _nearest(start, centre, across, height))
            walls = () if one.over_lines else self._walls
            if leader is not None and _blocked(leader, one, self._names, walls):
                continue
            # Places come with the best first, so the first free one is taken.
            return _Spot(centre=centre, turn=turn, box=box, leader=leader)
        return None

    def below(self, one: Wanted, text: str) -> _Spot:
        """Return a place in a new row below the drawing, with a line that runs over no name."""
        height = SIZES[one.look]
        across = run(text, height)
        for centre in _below(one, across, self._wide, self.tall):
            leader = (one.middle, _nearest(one.middle, centre, across, height))
            box = _box(centre, across, height, 0.0)
            through = any(_crosses(line, box) for line in self._led)
            if not through and not _blocked(leader, one, self._names, ()):
                break
        # The paper grows downwards for each such row: a name may be far away, but none is left out.
        self.tall += height + 1.5
        return _Spot(centre=centre, turn=0.0, box=box, leader=leader)

    def take(self, one: Wanted, text: str, spot: _Spot) -> DrawnLabel:
        """Return a name as it is drawn at its place, which is then taken."""
        self._names.append(spot.box)
        self._taken.take(spot.box)
        self._rows[round(spot.turn)].take(spot.box)
        if spot.leader is not None:
            self._led.append(spot.leader)
            self.leaders.append(line("leader", *spot.leader))
        return _label(one.look, text, spot.centre, spot.turn)


def _places(
    one: Wanted, across: float, height: float
) -> Iterator[tuple[Point, float, Point | None]]:
    """Yield places for a name, the best first: centre, turn, where a line to it begins, if any."""
    middle, off, along = one.middle, one.off, one.along
    # Turned by half a circle where the wall runs to the left, so that no name is upside down.
    turn = (one.heading + 90) % 180 - 90
    beside = height / 2 + CLEAR + STROKE + 0.4
    yield from ((at, turn, None) for at in one.first)
    # Along its own wall is best: it needs no line to say which wall it names.
    if across <= one.long:
        spare = (one.long - across) / 2
        for side in (1, -1):
            for part in (0.0, 0.5, -0.5, 0.9, -0.9):
                yield _from(middle, off, side * beside, along, part * spare), turn, None
    for side in (1, -1):
        # It may also reach past the wall's ends, if nothing is in the way there.
        yield _from(middle, off, side * beside, along, 0.0), turn, None
    # With a line the name stands level, which reads best, and near before far: a long line is hard
    # to follow.
    for far in range(5, 45, 2):
        for start in one.starts or (middle,):
            for side in (1, -1):
                for aside in (0, 4, -4, 8, -8, 14, -14, 20, -20):
                    yield _from(start, off, side * (far + height / 2), along, aside), 0.0, start


def _below(one: Wanted, across: float, wide: float, tall: float) -> Iterator[Point]:
    """Yield places in a new row below the drawing, the nearest to its wall first."""
    under = min(max(one.middle[0], across / 2), wide - across / 2)
    steps = range(int((wide - across) / 2) + 1)
    yield from sorted(
        ((across / 2 + 2 * step, tall + 2) for step in steps), key=lambda at: abs(at[0] - under)
    )
    yield (under, tall + 2)


def _from(start: Point, off: Point, out: float, along: Point, aside: float) -> Point:
    return (
        start[0] + off[0] * out + along[0] * aside,
        start[1] + off[1] * out + along[1] * aside,
    )


def _box(centre: Point, wide: float, tall: float, turn: float) -> Shape:
    """Return a rectangle round a centre, turned by ``turn`` degrees."""
    x, y = cos(radians(turn)), sin(radians(turn))
    return tuple(
        (
            centre[0] + dx * wide / 2 * x - dy * tall / 2 * y,
            centre[1] + dx * wide / 2 * y + dy * tall / 2 * x,
        )
        for dx, dy in ((-1, -1), (1, -1), (1, 1), (-1, 1))
    )


def _thick(one: Point, other: Point) -> Shape:
    """Return a stroke as the thin rectangle that it covers."""
    dx, dy = other[0] - one[0], other[1] - one[1]
    size = max((dx * dx + dy * dy) ** 0.5, 1e-6)
    x, y = -dy / size * STROKE / 2, dx / size * STROKE / 2
    return (
        (one[0] + x, one[1] + y),
        (other[0] + x, other[1] + y),
        (other[0] - x, other[1] - y),
        (one[0] - x, one[1] - y),
    )


def _nearest(start: Point, centre: Point, across: float, height: float) -> Point:
    """Return where a line from ``start`` meets the box of a name that is not turned."""
    half = (across / 2 + CLEAR / 2, height / 2 + CLEAR / 2)
    return (
        min(max(start[0], centre[0] - half[0]), centre[0] + half[0]),
        min(max(start[1], centre[1] - half[1]), centre[1] + half[1]),
    )


def _printed(at: Point) -> Point:
    return float(fixed(at[0])), float(fixed(at[1]))


def _crosses(leader: tuple[Point, Point], shape: Shape) -> bool:
    return any(cross(*leader, *side) for side in sides(shape))


def _blocked(
    leader: tuple[Point, Point],
    one: Wanted,
    names: Sequence[Shape],
    walls: Sequence[tuple[Point, Point]],
) -> bool:
    """Return whether a leader would run over another wall or through a name."""
    # A leader that ran over another wall would seem to name that one.  Strokes are as they are
    # printed, to the hundredth, and so must the name's own wall be, to be told from the others.
    own = {_printed(one.one), _printed(one.other)}
    if any(own != set(wall) and cross(*leader, *wall) for wall in walls):
        return True
    return any(_crosses(leader, shape) for shape in names)


def _label(look: str, text: str, centre: Point, turn: float) -> DrawnLabel:
    """Return a label; SVG places its base line, about a third of its size below the middle."""
    down = SIZES[look] * 0.35
    x = centre[0] - sin(radians(turn)) * down
    y = centre[1] + cos(radians(turn)) * down
    return DrawnLabel(look=look, x=fixed(x), y=fixed(y), turn=fixed(turn), text=text)
