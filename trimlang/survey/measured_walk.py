"""A room's walk as it is judged: what was measured, and how closely."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.language.facts import Side
from trimlang.lengths.tape import MM, Unit
from trimlang.record import record
from trimlang.survey.job import End, Gap, Room, Run, Stretch
from trimlang.survey.misfit import Chord, Walk
from trimlang.survey.outline import Turn, turn_between, wall_length

WALL_DOUBT: Final = {Unit.INCH: Fraction(1, 8), Unit.MM: 3 * MM}
"""Inches that a wall may be off: an eighth is two steps of the tape, one at each end (common
practice, no source).  The step that lengths are rounded to is used where that is more."""

READING_DOUBT: Final = Fraction(1, 4)
FINE_DOUBT: Final = Fraction(1, 8)
"""Degrees that a measured corner may be off, half a step of the protractor: a quarter in a room
whose corners are all written in half degrees, an eighth where readings are finer (common practice,
no source)."""


@record
class Course:
    """A room's stretches in order, as measured or with a slip mended to see whether that helps.

    ``thick`` is how far each trim stands out from the wall (inches), for walls that were taken
    over scraps of it.
    """

    room: Room
    stretches: tuple[Stretch, ...]
    thick: dict[str, Fraction]
    chords: tuple[Chord, ...] = ()

    @property
    def names(self) -> tuple[str, ...]:
        """The name of each stretch in a sentence."""
        return tuple(called(stretch) for stretch in self.stretches)

    @property
    def lengths(self) -> tuple[Fraction, ...]:
        """How much wall each stretch takes up, in inches."""
        return tuple(wall_length(one, self.room, self.thick) for one in self.stretches)

    @property
    def written(self) -> tuple[Fraction, ...]:
        """The number that the file gives for each stretch, in inches.

        That is not the wall that it takes up where an opening has a casing or scraps were used.
        """
        return tuple(one.width if isinstance(one, Gap) else one.written for one in self.stretches)

    @property
    def turns(self) -> tuple[Turn, ...]:
        """How the walk turns after each stretch."""
        return tuple(turn_between(one, self.after(at)) for at, one in enumerate(self.stretches))

    @property
    def disputes(self) -> int:
        """The number of joints whose two sides contradict each other."""
        return sum(disputed(one, self.after(at)) for at, one in enumerate(self.stretches))

    def after(self, at: int) -> Stretch:
        """Return the stretch that follows another; the first follows the last."""
        return self.stretches[(at + 1) % len(self.stretches)]

    def walk(self) -> Walk:
        """Return the walk with the doubt of everything that was measured."""
        settings, turns = self.room.settings, self.turns
        # Someone who writes 89.3° reads a protractor finer than halves.
        fine = any(turn.measured and (2 * turn.degrees).denominator > 1 for turn in turns)
        return Walk(
            lengths=tuple(float(length) for length in self.lengths),
            turns=turns,
            own_doubts=tuple(
                _own_doubt(one, self.after(at)) for at, one in enumerate(self.stretches)
            ),
            chords=self.chords,
            # A coarse tape cannot be off by less than its own marks.
            wall_doubt=float(max(WALL_DOUBT[settings.unit], settings.rounding_step)),
            corner_doubt=float(settings.corner_doubt),
            # where corners are said to be true, a reading of one is no worse
            measured_doubt=float(min(FINE_DOUBT if fine else READING_DOUBT, settings.corner_doubt)),
        )


def called(stretch: Stretch) -> str:
    """Return the name of a stretch in a sentence."""
    if isinstance(stretch, Run):
        return f"run {stretch.label}"
    if stretch.called:
        return f"“{stretch.called}”"
    return f"the {stretch.kind} in line {stretch.span.line}"


def disputed(one: Stretch, other: Stretch) -> bool:
    """Tell whether the two sides of a joint contradict each other."""
    right, left = one.right, other.left
    # What could not be read may be the very side that would agree.
    if any(isinstance(stretch, Gap) and stretch.is_lost for stretch in (one, other)):
        return False
    if right is None or left is None:
        # A corner that only one side states: wrong between runs, but an opening may say nothing.
        said = right or left
        neighbour = other if right is None else one
        return said is not None and said.joint.is_corner and isinstance(neighbour, Run)
    if right.joint is left.joint:
        return False
    # Beside an opening a butt says how the trim stops, not how the wall goes on: the other side may
    # well be a corner.
    if (right.joint.stops or left.joint.stops) and not (
        isinstance(one, Run) and isinstance(other, Run)
    ):
        return False
    return right.joint.is_corner or left.joint.is_corner


def sides_at(course: Course, at: int) -> list[End]:
    """Return what the file says of the joint after a stretch, from the one side or from both."""
    return [end for end in (course.stretches[at].right, course.after(at).left) if end is not None]


def angle_at(course: Course, at: int) -> Fraction | None:
    """Return the angle that the file gives for the corner after a stretch (degrees)."""
    return next((end.corner for end in sides_at(course, at) if end.corner is not None), None)


def replaced(stretches: Sequence[Stretch], at: int, *by: Stretch) -> tuple[Stretch, ...]:
    """Return the stretches with others in place of the one at ``at``."""
    return (*stretches[:at], *by, *stretches[at + 1 :])


def with_end(stretch: Stretch, side: Side, end: End) -> Stretch:
    """Return a stretch that ends otherwise at one side."""
    return replace(stretch, right=end) if side is Side.RIGHT else replace(stretch, left=end)


def with_angles(
    course: Course, angles: Mapping[int, Fraction | None], *, implied: bool = False
) -> tuple[Stretch, ...]:
    """Return the stretches with other angles (degrees) at the corners after some of them.

    ``implied`` says that these were worked out, not read.
    """
    for at, angle in angles.items():
        mended = with_corner(
            course,
            at,
            lambda end, angle=angle: replace(end, corner=angle, implied=implied),  # type: ignore[misc]
        )
        course = replace(course, stretches=mended)
    return course.stretches


def with_corner(course: Course, at: int, mend: Callable[[End], End]) -> tuple[Stretch, ...]:
    """Return the stretches with ``mend`` applied to both sides of one corner."""
    stretches, after = course.stretches, (at + 1) % len(course.stretches)
    for place, side in ((at, Side.RIGHT), (after, Side.LEFT)):
        end = side.of(stretches[place].left, stretches[place].right)
        if end is not None and end.joint.is_corner:
            stretches = replaced(stretches, place, with_end(stretches[place], side, mend(end)))
    return stretches


def _own_doubt(one: Stretch, other: Stretch) -> float | None:
    # A diagonal gives both the angle and how far it can be trusted; the first side that has one
    # counts.
    for end in (one.right, other.left):
        if end is not None and end.corner is not None and end.corner_error is not None:
            return float(end.corner_error)
    return None
