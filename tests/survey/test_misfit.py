"""How badly a walk fits itself, against the printed distributions and plain matrices."""

from dataclasses import replace
from fractions import Fraction

import mpmath
import numpy as np
import pytest

from tests.every import every
from trimlang.survey.chi_squared import SURE
from trimlang.survey.misfit import Chord, Walk, misfit
from trimlang.survey.outline import Turn

TURNS = (Turn(Fraction(120), measured=False, known=True),) * 3
TRIANGLE = Walk(
    lengths=(100.0, 100.0, 100.0),
    turns=TURNS,
    own_doubts=(None,) * 3,
    chords=(),
    wall_doubt=0.125,
    corner_doubt=0.5,
    measured_doubt=0.25,
)
"""A room of three corners of 60°."""
ACROSS = Chord(0, 1, 100.0, "A-A")


@pytest.mark.parametrize(("conditions", "level"), list(enumerate(SURE, start=2)))
def test_one_sound_room_in_a_hundred_is_beyond_the_level(conditions, level):
    beyond = mpmath.gammainc(conditions / 2, level / 2, mpmath.inf, regularized=True)
    assert float(beyond) == pytest.approx(0.01, abs=1e-4)


@every("chords", range(12))
def test_each_diagonal_is_one_condition_more(chords):
    fit = misfit(replace(TRIANGLE, chords=(ACROSS,) * chords))
    beyond = mpmath.gammainc(1 + chords / 2, fit.allowed / 2, mpmath.inf, regularized=True)
    assert float(beyond) == pytest.approx(0.01, rel=0.03)


@pytest.mark.parametrize("degrees", [0, 30, 45, 100, 160])
def test_what_may_be_missed_in_a_direction_is_the_ellipse_of_the_doubts(degrees):
    walk = replace(TRIANGLE, lengths=(150.0, 90.0, 100.0))
    fit = misfit(walk)
    way = np.array([np.cos(np.radians(degrees)), np.sin(np.radians(degrees))])
    spread = np.array(fit.spread)
    assert abs(spread[0, 1]) > 0.01, "an ellipse that stands askew"
    expected = np.sqrt(SURE[0] / (way @ np.linalg.inv(spread) @ way))
    assert fit.tolerance(complex(*way)) == pytest.approx(expected)
    assert fit.tells >= fit.tolerance(complex(*way))
    assert fit.tells == pytest.approx(np.sqrt(SURE[0] * np.linalg.eigvalsh(spread)[-1]))


def test_a_miss_is_weighed_by_the_spread_that_the_errors_make():
    walk = replace(TRIANGLE, lengths=(100.5, 100.0, 100.0))
    fit = misfit(walk)
    effects, doubts = np.array(fit.effects), np.array(fit.doubts)
    spread = effects.T @ np.diag(doubts**2) @ effects
    assert np.array(fit.spread) == pytest.approx(spread)
    missed = np.array([0.5, 0.0])
    assert np.array(fit.missed) == pytest.approx(missed, abs=1e-9)
    assert fit.total == pytest.approx(missed @ np.linalg.inv(spread) @ missed)
    off, gained = fit.pull(fit.effects[0])
    # the first wall alone explains it all: half an inch too long
    assert off == pytest.approx(-0.5)
    assert gained == pytest.approx(fit.total)


def test_what_the_corners_lack_of_a_whole_turn_is_told_apart():
    turns = tuple(replace(turn, degrees=Fraction(241, 2)) for turn in TURNS)
    fit = misfit(replace(TRIANGLE, turns=turns))
    # 1.5° too much, of three corners each 1/2° either way: 1.5² ÷ (3 × 0.5² ÷ 3)
    assert fit.turned == pytest.approx(9)
