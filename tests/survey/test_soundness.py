"""Whether errors within their bounds explain what a walk misses, against other ways to tell."""

from dataclasses import replace
from fractions import Fraction

import mpmath
import numpy as np
import pytest

from benchmarks.closing_sampled import Likelihood, of_survey, smallest_bounds
from tests.every import every
from trimlang.survey.chi_squared import SURELY_NOT, allowed, surely_not
from trimlang.survey.even_errors import likely_misses
from trimlang.survey.misfit import Chord, Walk, misfit
from trimlang.survey.outline import Turn
from trimlang.survey.soundness import is_sound

SQUARE = Turn(Fraction(90), measured=False, known=True)
ROOM = Walk(
    lengths=(160.0, 120.0, 160.0, 120.0),
    turns=(SQUARE,) * 4,
    own_doubts=(None,) * 4,
    chords=(Chord(0, 2, 200.0, "N-E"), Chord(1, 3, 200.0, "E-S")),
    wall_doubt=0.125,
    corner_doubt=0.5,
    measured_doubt=0.125,
)
"""A room with both its diagonals (3, 4, 5)."""
MEASURED = replace(ROOM, turns=(replace(SQUARE, measured=True),) * 4)


@every("conditions", range(2, 30))
def test_one_sound_room_in_a_thousand_is_beyond_the_level(conditions):
    """And one in a hundred beyond what a slip may leave, however many diagonals there are."""
    for level, share in ((surely_not(conditions), 0.001), (allowed(conditions - 2), 0.01)):
        beyond = mpmath.gammainc(conditions / 2, level / 2, mpmath.inf, regularized=True)
        assert float(beyond) == pytest.approx(share, rel=0.07)


@every("miss", (0.0, 0.5, 1.0, 1.7, 2.5, 2.9, 2.99))
def test_the_density_of_three_even_errors_is_the_known_one(miss):
    """(3 - x²) ÷ 8 within an inch and (3 - x)² ÷ 16 beyond (Irwin and Hall; from memory)."""
    known = (3 - miss * miss) / 8 if miss < 1 else (3 - miss) ** 2 / 16
    for sign in (1, -1):
        found = likely_misses([(1.0,)] * 3, [sign * miss], [0.0])
        # a saddle point is right up to a factor that hardly changes from place to place
        assert np.exp(found.log_density) / known == pytest.approx(1.06, abs=0.035)
    away = likely_misses([(1.0,)] * 3, [miss], [0.0])
    assert likely_misses([(1.0,)] * 3, [miss], away.tilt).surprise == pytest.approx(away.surprise)


def test_the_density_falls_smoothly_where_series_stand_for_its_formulas():
    """Close by nothing, where tilt and miss of three errors are alike."""
    middle = likely_misses([(1.0,)] * 3, [0.0], [0.0]).log_density
    for miss in (0.0199, 0.0201):
        fallen = likely_misses([(1.0,)] * 3, [miss], [0.0]).log_density - middle
        assert np.exp(fallen) == pytest.approx((3 - miss * miss) / 3, abs=1e-4)


def test_what_no_errors_come_to_is_impossible():
    found = likely_misses([(1.0, 0.0), (1.0, 1.0), (0.5, -1.0)], [2.6, 0.0], [0.0, 0.0])
    assert found.log_density == -np.inf
    assert found.surprise >= max(SURELY_NOT)


def test_many_small_errors_are_as_good_as_normal():
    """Chi-squared of a sum of 3,000, each of variance a third."""
    found = likely_misses([(1.0,)] * 3000, [60.0], [0.0])
    assert found.surprise == pytest.approx(60**2 / 1000, rel=0.01)


def test_the_density_is_as_by_sampling():
    """Fourteen errors and four conditions; what the two differ by is the sampling's own scale."""
    effects = np.random.default_rng(2).normal(size=(14, 4))
    errors = of_survey(effects, np.ones(14), np.zeros(14))
    sampled = Likelihood(errors, seed=1)
    way = np.array([2.0, -1.0, 1.5, 0.5])
    apart = [
        likely_misses([tuple(row) for row in effects], list(far * way), [0.0] * 4).log_density
        - sampled.log_of(far * way)
        for far in (0.0, 0.5, 1.0, 1.5)
    ]
    assert np.ptp(apart) < 0.12


def test_what_no_bounds_explain_is_not_sound():
    """A linear program tells how far the bounds must be stretched (rounding counted in)."""
    told = []
    for inches in (0.3, 0.6, 0.9, 1.2, 1.5):
        walk = replace(MEASURED, lengths=(160 + inches, *MEASURED.lengths[1:]))
        fit = misfit(walk)
        bounds = np.array(fit.doubts) * 3**0.5
        rounded = np.where(np.arange(len(bounds)) // 4 == 1, 0.0, bounds / 4)
        errors = of_survey(np.array(fit.effects), bounds, rounded)
        impossible = smallest_bounds(errors, np.array(fit.missed)) > 1
        assert not (impossible and is_sound(walk, fit))
        told.append(impossible)
    assert told == sorted(told), "only from some length on"
    assert len(set(told)) == 2


@every("room, least", ((ROOM, 1.3), (MEASURED, 0.8)))
def test_how_many_inches_too_many_are_called_out(room, least):
    """What half a degree at each corner leaves open, a protractor tells."""
    for inches in (-least, least):
        for at in range(4):
            lengths = list(room.lengths)
            lengths[at] += inches
            longer = replace(room, lengths=tuple(lengths))
            assert not is_sound(longer, misfit(longer))
            lengths[at] -= inches * 0.8
            nearer = replace(room, lengths=tuple(lengths))
            assert is_sound(nearer, misfit(nearer))


@every("room", (ROOM, MEASURED, replace(ROOM, chords=()), replace(MEASURED, chords=())))
def test_few_sound_rooms_are_called_out(room):
    """A hundred readings of each, all errors drawn anywhere within their bounds alike."""
    random = np.random.default_rng(7)
    fit = misfit(room)
    effects, bounds = np.array(fit.effects), np.array(fit.doubts) * 3**0.5
    called = 0
    for _ in range(100):
        errors = random.uniform(-bounds, bounds)
        errors[4:8] -= errors[4:8].mean()
        missed = errors @ effects
        total = float(missed @ np.array(fit.weight) @ missed)
        called += not is_sound(room, replace(fit, missed=tuple(missed), total=total))
    assert called <= 2


def test_of_more_conditions_than_the_table_has_the_last_level_holds():
    """Eight diagonals along one line, read by turns too long and too short."""

    for off, sound in ((0.11, True), (0.13, False)):
        chords = tuple(Chord(0, 2, 200 + off * sign, "N-E") for sign in (1, -1) * 4)
        walk = replace(ROOM, chords=chords)
        assert is_sound(walk, misfit(walk)) is sound
