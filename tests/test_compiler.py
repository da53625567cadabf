"""The passes together."""

from tests.conftest import walls
from trimlang.compiler import compile_job

LIMITED = (
    "trim base: 9/16 in thick, 5 1/4 in tall\n"
    "stock base: 12 ft at 17.40, 16 ft at 24.10 at most 1\n"
    'room "Study", trim base, open walk\n'
)
TWO_LONG_WALLS = (
    "  N: 15 ft, left=butt, right=butt\n  bare 2 ft\n  E: 15 ft, left=butt, right=butt\n"
)


def test_walls_are_spliced_where_the_long_sticks_run_out() -> None:
    result = compile_job(LIMITED + TWO_LONG_WALLS)
    assert result.ok
    assert all(piece.length <= 144 for piece in result.pieces)
    placed = [
        place.piece for plan in result.plans for stick in plan.sticks for place in stick.places
    ]
    assert sorted(placed) == sorted(piece.id for piece in result.pieces)


def test_one_long_stick_covers_one_long_wall() -> None:
    result = compile_job(LIMITED + "  N: 15 ft, left=butt, right=butt\n")
    assert [piece.id for piece in result.pieces] == ["ST-N-base"]


def test_a_supply_that_runs_out_is_said() -> None:
    only = LIMITED.replace("12 ft at 17.40, ", "")
    result = compile_job(only + TWO_LONG_WALLS)
    assert [finding.code for finding in result.diagnostics] == ["T501"]
    assert not result.plans


def test_a_job_without_includes_needs_no_file() -> None:
    assert compile_job(walls("N: 40 in, left=butt, right=butt")).ok
