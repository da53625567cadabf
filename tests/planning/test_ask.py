"""What the planner is asked: blades at an angle take more along the stick."""

from fractions import Fraction

import pytest

from tests.jobs import BASE
from trimlang.compiler import check_job, compile_job
from trimlang.planning.ask import ask

TEN = "".join(
    f"  {n}: 12 in, left=in-corner(90 deg), right=out-corner(90 deg), taken point\n  bare 3 in\n"
    for n in range(10)
)


def job(stock: str) -> str:
    return (
        f"{BASE}\nsaw: kerf 1/8 in\nspare 0 %\n"
        f'stock base: {stock} at 10\nroom "Study", trim base, open walk\n{TEN}'
    )


def test_a_blade_at_45_takes_its_thickness_times_root_two() -> None:
    """Ten pieces with nine shared mitres: 120 - 9 × 9/16 + 9 × 1/8 × √2 = 116.528 in."""
    two = compile_job(job("116 1/2 in")).plans[0]
    assert len(two.sticks) == 2
    one = compile_job(job("116 3/4 in")).plans[0]
    assert len(one.sticks) == 1
    places = one.sticks[0].places
    assert all(place.shared for place in places[1:])
    step = float(places[1].start - places[0].start)
    assert step == pytest.approx(12 - 0.5625 + 0.125 * 2**0.5, abs=1 / 64)


def test_square_ends_take_the_kerf_itself() -> None:
    text = job("130 in").replace("in-corner(90 deg)", "butt").replace("out-corner(90 deg)", "butt")
    places = compile_job(text).plans[0].sticks[0].places
    assert places[1].start - places[0].end == Fraction(1, 8)


def test_ends_of_unlike_mitres_share_no_cut() -> None:
    text = (
        f"{BASE}\nspare 0 %\nstock base: 80 in at 10\n"
        'room "Study", trim base, open walk\n'
        "  A: 40 in, left=butt, right=in-corner(91 deg)\n  bare 3 in\n"
        "  B: 38 in, left=out-corner(135 deg), right=butt, taken point\n"
    )
    (stick,) = compile_job(text).plans[0].sticks
    assert not any(place.shared for place in stick.places)


def test_ends_never_cross_where_what_a_kerf_was_rounded_up_by_is_given_back() -> None:
    """A face of a twentieth of an inch: both mitres with a share of the kerf are longer."""
    result = check_job(
        "trim base: 0.50625 in thick, 5 in tall\nstock base: 13 ft at 10\nsaw: kerf 0.0465 in\n"
        'room "Study", trim base, open walk\n'
        "  N: 20 in, left=butt, right=in-corner(90 deg)\n"
        "  E: 1 1/16 in, left=in-corner(90 deg), right=in-corner(90 deg)\n"
        "  S: 20 in, left=in-corner(90 deg), right=butt\n"
    )
    assert result.ok, result.diagnostics
    parts = ask(result.job, result.job.trim("base"), result.pieces).problem.parts
    (part,) = (one for one in parts if one.left_lean and one.right_lean)
    assert abs(part.left_lean) + abs(part.right_lean) == part.length
