"""How badly a walk round a room fits itself, given how closely each thing was measured.

A walk that returns to its start must meet two conditions, to the right and forwards, and each
diagonal is one more.  What they are missed by is weighed against the errors that the survey's own
doubts allow, all at once, as land surveyors test a traverse: the sum is distributed as chi-squared
with that many degrees of freedom (Ghilani, Adjustment Computations, on global tests; from
memory).  The figures are only compared with one another and never become a length, so floats are
good enough.
"""

from __future__ import annotations

import cmath
from collections.abc import Iterable, Sequence
from math import fsum, radians, sqrt
from operator import mul
from typing import Final, TypeAlias

from trimlang.record import record
from trimlang.survey.chi_squared import SURE, allowed
from trimlang.survey.outline import MOST_SHARED, Turn

Row: TypeAlias = tuple[float, ...]
Matrix: TypeAlias = tuple[Row, ...]

_WHOLE_TURN: Final = 360.0
EVEN: Final = sqrt(3)  # an error equally likely anywhere within ±d has a deviation of d ÷ √3


@record
class Chord:
    """A measured diagonal: from the left end of one stretch to the left end of another.

    ``start`` and ``end`` are places in the walk, ``start`` being the smaller; ``length`` in inches.
    """

    start: int
    end: int
    length: float
    name: str


@record
class Walk:
    """A walk as it is judged: lengths in inches, and how the walk turns after each.

    ``wall_doubt`` (inches), ``corner_doubt`` and ``measured_doubt`` (degrees) are the most that a
    wall, a corner that nobody measured and a measured corner may be off.  ``own_doubts`` has the
    degrees for corners that were measured by a diagonal, None for the others.
    """

    lengths: Row
    turns: tuple[Turn, ...]
    own_doubts: tuple[float | None, ...]
    chords: tuple[Chord, ...]
    wall_doubt: float
    corner_doubt: float
    measured_doubt: float

    @property
    def turned(self) -> float:
        """The sum of all turns, in degrees."""
        return float(sum(turn.degrees for turn in self.turns))

    @property
    def goes_round(self) -> bool:
        """Whether the corners together make about one whole turn."""
        return abs(self.turned - _WHOLE_TURN) <= float(MOST_SHARED)


@record
class Misfit:
    """By how much a walk misses its conditions, and how much of that its doubts explain.

    ``missed`` is in inches: to the right and forwards (together ``closure``), then each diagonal.
    ``effects`` has a row for each error (walls, then turns, then diagonals): what one unit of it
    does to each condition; ``doubts`` are their standard deviations.  ``spread`` is the covariance
    that these give the conditions, ``weight`` its inverse.  ``total`` is chi-squared, including
    ``turned``, the share of what the corners lack of a whole turn.
    """

    closure: complex
    missed: Row
    effects: tuple[Row, ...]
    doubts: Row
    spread: Matrix
    weight: Matrix
    turned: float
    total: float

    @property
    def allowed(self) -> float:
        """The most that ``total`` comes to in a sound room, but for one in a hundred."""
        return allowed(len(self.missed) - 2)

    def tolerance(self, way: complex) -> float:
        """Return how far the end may be from the start in a direction (inches)."""
        (a, b), (_, d) = self.spread[0][:2], self.spread[1][:2]
        x, y = (way / abs(way)).real, (way / abs(way)).imag
        # The doubts make an ellipse: the direction, weighed by the inverse of their covariance.
        inner = (d * x * x - 2 * b * x * y + a * y * y) / (a * d - b * b)
        return sqrt(SURE[0] / inner)

    def pull(self, effect: Row) -> tuple[float, float]:
        """Return how large one error would have to be to explain the most, and how much that is.

        The first is in the error's own unit, the second in chi-squared: what ``total`` falls by.
        Its root tests a single measurement, as land surveyors do (data snooping: Baarda, 1968; from
        memory).
        """
        down = [dot(row, effect) for row in self.weight]
        stiff = dot(down, effect)
        if stiff < 1e-9:
            return 0.0, 0.0
        drawn = dot(down, self.missed)
        return -drawn / stiff, drawn * drawn / stiff

    @property
    def tells(self) -> float:
        """The least mistake that this survey can tell, wherever it is (inches)."""
        lengths = (len(self.effects) - len(self.missed) + 2) // 2
        return least_noticed(
            (weighed(one, self.weight) for one in self.effects[:lengths]), self.weight
        )


def least_noticed(walls: Iterable[float], weight: Matrix) -> float:
    """Return the least mistake that a survey of this weight can tell (inches).

    ``walls`` is by how many variances an inch at each wall shows.  With diagonals it is the wall
    where it shows least that counts: a room that can swing as a whole has no wrong wall.
    """
    if len(weight) > 2:
        return sqrt(SURE[0] / min(walls))
    (a, b), (_, d) = weight[0][:2], weight[1][:2]
    # The ellipse of the doubts is longest where its inverse is smallest: its lesser eigenvalue.
    least = (a + d) / 2 - sqrt(((a - d) / 2) ** 2 + b * b)
    return sqrt(SURE[0] / least)


def misfit(walk: Walk) -> Misfit:
    """Return by how much a walk misses its conditions, and what its doubts allow."""
    turns, doubts, lacking = shared_turns(walk)
    places, ways = walked(walk.lengths, turns)
    end, count = places[-1], len(walk.lengths)
    missed = [end.real, end.imag,
              *(abs(_chord(chord, places)) - chord.length for chord in walk.chords)]  # fmt: skip
    # One row for each error. A longer wall moves the end along the wall; a turn swings everything
    # after it, square to the line from the corner to the end (-1j turns that to the right).
    moved = [*ways, *(-1j * (end - place) for place in places[1:])]
    across = [along(chord, places, ways) for chord in walk.chords]
    effects: list[Row] = [
        (move.real, move.imag, *(row[at] for row in across)) for at, move in enumerate(moved)
    ]
    takers = takers_of(walk)
    # The corners make one whole turn whatever their errors are, so only how an error differs from
    # the mean swings the walk.
    middle = tuple(
        sum(effects[count + at][row] for at in takers) / len(takers) for row in range(len(missed))
    )
    effects[count:] = [
        tuple(value - mean for value, mean in zip(swing, middle, strict=True))
        for swing in effects[count:]
    ]
    errors = [walk.wall_doubt / EVEN] * count + [radians(doubt) / EVEN for doubt in doubts]
    for number in range(len(walk.chords)):
        # A diagonal measured too long is missed by as much less.
        effects.append(tuple(-1.0 if row == number + 2 else 0.0 for row in range(len(missed))))
        errors.append(walk.wall_doubt / EVEN)
    spread = _spread(effects, errors, len(missed))
    weight = inverse(spread)
    # The variance of the sum of the turns: each is d² ÷ 3.
    turned = lacking * lacking / (sum(doubt * doubt for doubt in doubts) / 3)
    return Misfit(
        closure=end,
        missed=tuple(missed),
        effects=tuple(effects),
        doubts=tuple(errors),
        spread=spread,
        weight=weight,
        turned=turned,
        total=weighed(missed, weight) + turned,
    )


def shared_turns(walk: Walk) -> tuple[Row, Row, float]:
    """Return turns that add up to a whole one, each one's doubt, and what they lacked (degrees).

    The corners that nobody measured share what is lacking; all of them where all were measured.
    """
    turns = [float(turn.degrees) for turn in walk.turns]
    doubts = tuple(
        # Nobody is in doubt whether a wall goes straight on past a door; a corner is as doubtful as
        # whoever read it with a protractor, or as its diagonal makes it.
        0.0 if not turn.degrees
        else walk.corner_doubt if not turn.measured
        else walk.measured_doubt if own is None
        else own
        for turn, own in zip(walk.turns, walk.own_doubts, strict=True)
    )  # fmt: skip
    # The turns of any room add up to 360°, so this is the sum of the corners' errors.
    lacking = _WHOLE_TURN - sum(turns)
    takers = takers_of(walk)
    for at in takers:
        turns[at] += lacking / len(takers)
    return tuple(turns), doubts, lacking


def takers_of(walk: Walk) -> list[int]:
    """Return the corners that share what is lacking: those that nobody measured, or else all."""
    corners = [at for at, turn in enumerate(walk.turns) if turn.degrees]
    return [at for at in corners if not walk.turns[at].measured] or corners


def dot(one: Sequence[float], other: Sequence[float]) -> float:
    """Return the scalar product of two rows."""
    return fsum(map(mul, one, other))


def walked(lengths: Row, turns: Row) -> tuple[list[complex], list[complex]]:
    """Return where each stretch begins, with the walk's end last, and each stretch's direction.

    Places are complex numbers: inches to the right, and forwards; directions have length 1.
    """
    places, ways, heading = [0j], [], 0.0
    for length, turn in zip(lengths, turns, strict=True):
        # Turning right is turning clockwise, hence the minus.
        way = cmath.exp(-1j * radians(heading))
        ways.append(way)
        places.append(places[-1] + length * way)
        heading += turn
    return places, ways


def weighed(missed: Sequence[float], weight: Matrix) -> float:
    """Return chi-squared of what is missed: mᵀ W m."""
    return dot(missed, [dot(row, missed) for row in weight])


def inverse(matrix: Matrix) -> Matrix:
    """Return the inverse of a positive definite matrix."""
    unit = tuple(tuple(float(one is row) for one in matrix) for row in matrix)
    return eliminated(matrix, unit)[0]


def eliminated(matrix: Matrix, beside: Matrix) -> tuple[Matrix, float]:
    """Return the inverse of a positive definite matrix times another, and its determinant.

    With so few rows, numpy takes longer to load than elimination takes.
    """
    size = len(matrix)
    rows = [[*row, *more] for row, more in zip(matrix, beside, strict=True)]
    determinant = 1.0
    # A positive definite matrix has no row that needs to change places with another.
    for at, row in enumerate(rows):
        lead = row[at]
        determinant *= lead
        rows[at] = [value / lead for value in row]
        for other in range(size):
            if other != at:
                times = rows[other][at]
                rows[other] = [
                    value - times * one for value, one in zip(rows[other], rows[at], strict=True)
                ]
    return tuple(tuple(row[size:]) for row in rows), determinant


def _spread(effects: Sequence[Row], errors: Sequence[float], rows: int) -> Matrix:
    found = [[0.0] * rows for _ in range(rows)]
    for effect, error in zip(effects, errors, strict=True):
        if error:
            for one, value in enumerate(effect):
                if value:
                    weighty = value * error * error
                    for other, also in enumerate(effect):
                        found[one][other] += weighty * also
    return tuple(map(tuple, found))


def _chord(chord: Chord, places: Sequence[complex]) -> complex:
    return places[chord.end] - places[chord.start]


def along(chord: Chord, places: Sequence[complex], ways: Sequence[complex]) -> list[float]:
    """Return what an inch of each wall, then a radian of each turn, adds to a diagonal."""
    # Multiplied by this, a movement's real part is what it adds to the diagonal's length.
    toward = cmath.rect(1.0, -cmath.phase(_chord(chord, places)))
    past = range(chord.start, chord.end)
    walls = [(way * toward).real if at in past else 0.0 for at, way in enumerate(ways)]
    swings = [
        (-1j * (places[chord.end] - corner) * toward).real if at in past else 0.0
        for at, corner in enumerate(places[1:])
    ]
    return [*walls, *swings]
