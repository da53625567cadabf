"""Where a wall that is longer than the stock is spliced.

A scarf is two parallel cuts, and the lap is counted in one of the two pieces, so together they
measure the wall and one lap.  All pieces but the last are a whole number of rounding steps, so
that rounding happens only once, in the last.
"""

from __future__ import annotations

from fractions import Fraction

from trimlang.language.facts import Side
from trimlang.lengths.tape import steps_down
from trimlang.record import record
from trimlang.settings.table import Settings
from trimlang.survey.outline import Leg, Point, distance


@record
class Studs:
    """Where the studs are, measured from the left end of the trim (inches)."""

    first: Fraction
    spacing: Fraction

    def at_or_before(self, place: Fraction) -> Fraction:
        """Return the last stud at or before ``place``, counted from the left."""
        # Studs stand at first, first + spacing, ...: the largest of these up to `place`.
        return self.first + steps_down(place - self.first, self.spacing)

    def nearest(self, place: Fraction) -> Fraction:
        """Return the stud nearest to ``place``."""
        return self.at_or_before(place + self.spacing / 2)


def least_piece(lap: Fraction, settings: Settings) -> Fraction:
    """Return how long a piece must be at least: as the settings say, and more than its lap."""
    return max(settings.splice_least, lap + settings.rounding_step)


def laps_too_far(lap: Fraction, longest: Fraction) -> bool:
    """Tell whether more of each stick would lie behind its neighbours than shows."""
    return 2 * lap > longest


def split(
    exact: Fraction,
    longest: Fraction,
    lap: Fraction,
    settings: Settings,
    *,
    force: bool,
    studs: Studs | None = None,
) -> tuple[Fraction, ...] | None:
    """Return the exact lengths of the pieces from the left, None where it cannot be done.

    ``force`` splices a wall that one stick would reach.  Full sticks come first, as they waste
    nothing.  No piece is shorter than the settings allow, which also keeps joints that far from
    the corners.  Where ``studs`` are known, the middle of each lap lies on one, to within a
    rounding step.  All lengths in inches.
    """
    step, least = settings.rounding_step, least_piece(lap, settings)
    full = steps_down(longest, step)
    # The last piece may be rounded up by as much as one step.
    room_for_last = longest - step
    if laps_too_far(lap, longest):
        return None
    if force and exact <= room_for_last:
        return _halves(exact, lap, step, least, studs)
    cut: list[Fraction] = []
    start = Fraction(0)
    while exact - start > room_for_last:
        # As far as a full stick reaches, but not so far that the rest, which begins a lap before
        # this end, would be shorter than the least.
        end = min(start + full, exact + lap - least)
        if studs is not None:
            end = studs.at_or_before(end - lap / 2) + lap / 2
        length = steps_down(end - start, step)
        # With studs far apart a stick may not reach the next one; a shorter piece is not allowed.
        if length < least:
            return None
        cut.append(length)
        # The next piece begins one lap before this one ends.
        start += length - lap
    return (*cut, exact - start)


def _halves(
    exact: Fraction, lap: Fraction, step: Fraction, least: Fraction, studs: Studs | None
) -> tuple[Fraction, ...] | None:
    middle = exact / 2 if studs is None else studs.nearest(exact / 2)
    # The middle of the lap, not its end, lies at the middle of the wall or on the stud.
    first = steps_down(middle + lap / 2, step)
    pair = (first, exact - (first - lap))
    return pair if min(pair) >= least else None


def lapping_side(leg: Leg | None, entrance: Point | None, at: Fraction) -> Side:
    """Return which piece laps over the other at ``at`` inches along a wall.

    The piece nearer to the entrance laps over, so that from there one looks along the joint and
    not into it; the left one where the entrance is not known.
    """
    if leg is None or entrance is None:
        return Side.LEFT
    x, y = leg.end.x - leg.start.x, leg.end.y - leg.start.y
    wall = distance(Point(x, y))
    if not wall:
        return Side.LEFT
    # Where on the wall one stands straight opposite the entrance: its projection on the wall (a
    # scalar product), in inches from the wall's left end.
    opposite = ((entrance.x - leg.start.x) * x + (entrance.y - leg.start.y) * y) / wall
    return Side.RIGHT if opposite > at else Side.LEFT
