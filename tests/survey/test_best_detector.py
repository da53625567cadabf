"""What the closing is held against: the density of a miss, and whether a sound room explains it."""

import numpy as np
import pytest

from benchmarks.closing_sampled import Errors, Likelihood, smallest_bounds

THREE = Errors(effects=np.ones((3, 1)), bounds=np.ones(3), steps=np.zeros(3))
"""Three errors that lie anywhere within one inch alike, and a miss that is their sum."""


def test_the_sampled_density_of_three_even_errors_is_the_known_one():
    """(3 - x²) ÷ 8 within an inch and (3 - x)² ÷ 16 beyond (Irwin and Hall; from memory)."""
    density = Likelihood(THREE, seed=1)
    at = {miss: np.exp(density.log_of(np.array([miss]))) for miss in (0.0, 0.5, 2.0)}
    assert at[0.5] / at[0.0] == pytest.approx((3 - 0.25) / 3, rel=0.05)
    assert at[2.0] / at[0.0] == pytest.approx((1 / 16) / (3 / 8), rel=0.1)
    assert density.log_of(np.array([3.5])) < np.log(at[0.0]) - 20


def test_bounds_are_stretched_as_far_as_a_miss_needs():
    assert smallest_bounds(THREE, np.array([1.5])) == pytest.approx(0.5)
    assert smallest_bounds(THREE, np.array([3.6])) == pytest.approx(1.2)
