"""Paint goes by a profile's girth where it is given, else by face and top edge."""

from fractions import Fraction
from math import cos, radians, sin

import pytest
from shapely.geometry import LineString

from tests import jobs
from trimlang.compiler import check_job, compile_job
from trimlang.takeoff.supplies import supplies

WALL = 'room "Hall", trim base, open walk\n  N: 100 in, left=butt, right=butt\n'


def area(trim: str) -> Fraction:
    result = compile_job(f"{trim}\n{jobs.TWELVE_FEET}\n{WALL}")
    assert not result.diagnostics
    (paint,) = (one for one in supplies(result.job, result.pieces) if one.what == "paint")
    return dict(paint.facts)["area"]


def test_without_a_girth_it_is_the_face_and_the_top_edge():
    assert area(jobs.BASE) == 100 * (Fraction(21, 4) + Fraction(9, 16))


def test_a_girth_takes_their_place():
    assert area(f"{jobs.BASE}, girth 6 1/4 in") == 625


def test_a_girth_is_what_the_brush_goes_over():
    """A quarter round of 3/4 in, its face as shapely measures it; the tape reads a sixteenth."""
    steps = [radians(90 * n / 500) for n in range(501)]
    face = LineString([(0.75 * cos(a), 0.75 * sin(a)) for a in steps]).length
    painted = area("trim base: 3/4 in thick, 3/4 in tall, girth 1 3/16 in")
    assert float(painted) == pytest.approx(100 * face, abs=100 / 32)


def test_a_girth_of_nothing_is_refused():
    found = check_job(f"{jobs.BASE}, girth 0 in\n{jobs.TWELVE_FEET}\n{WALL}").diagnostics
    assert [one.code for one in found] == ["T202"]
