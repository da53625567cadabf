"""Laws of the whole compiler, on jobs that hypothesis makes up."""

from __future__ import annotations

import json
from collections import Counter
from fractions import Fraction

import jsonschema
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.conftest import examples
from tests.jobs import BASE, SHOE
from trimlang.compiler import Result, compile_job
from trimlang.joinery.piece import PieceKind
from trimlang.sheets.export.plan_file import schema as plan_schema
from trimlang.sheets.export.plan_json import plan_json
from trimlang.stock.planner import QUICK

SCHEMA = plan_schema()
ENDS = st.sampled_from(
    [
        "in-corner",
        "out-corner",
        "butt",
        "return",
        "open",
        "in-corner(93.5 deg)",
        "out-corner(60 deg)",
    ]
)


@st.composite
def jobs(draw: st.DrawFn) -> str:
    lines = [
        f"{BASE}",
        f"{SHOE}",
        "stock base: 12 ft at 17.40, pack of 4 8 ft at 40, 16 ft at 24.10 at most 3",
        "stock shoe: 2.44 m at 5.2, 12 ft at 7.10",
        f"on-hand base: {draw(st.integers(1, 3))} of {draw(st.integers(20, 90))} 3/8 in",
        f"saw: kerf {draw(st.sampled_from(['3/32', '1/8', '0']))} in, squares off 1/4 in",
        f"spare {draw(st.integers(0, 15))} %",
        f"unit {draw(st.sampled_from(['in', 'mm']))}",
    ]
    for room in range(draw(st.integers(1, 3))):
        lines.append(f'room "Room {room}", trim base, shoe, open walk')
        for run in range(draw(st.integers(1, 6))):
            length = Fraction(draw(st.integers(96, 6000)), 32)
            whole, rest = divmod(length, 1)
            left, right = draw(ENDS), draw(ENDS)
            lines.append(f"  {run}: {whole} {rest or '0/8'} in, left={left}, right={right}")
            # bare wall between keeps made-up corners from having to meet
            lines.append("  bare 3 in")
    return "\n".join(lines)


def run_pieces(result: Result) -> Counter[tuple[str, str, str]]:
    return Counter(
        (piece.room, piece.run, piece.trim)
        for piece in result.pieces
        if piece.kind is PieceKind.RUN and piece.part == 1
    )


@given(jobs())
@settings(max_examples=examples(15), deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_every_run_is_covered_and_every_piece_lies_on_one_stick(text: str) -> None:
    result = compile_job(text, effort=QUICK)
    assert result.ok, result.diagnostics
    wanted = Counter(
        (room.name, run.label, trim)
        for room in result.job.rooms
        for run in room.runs
        for trim in run.trims
    )
    assert run_pieces(result) == wanted
    assert max(Counter(piece.id for piece in result.pieces).values()) == 1
    placed = Counter(
        place.piece for plan in result.plans for stick in plan.sticks for place in stick.places
    )
    assert placed == Counter(piece.id for piece in result.pieces)
    for plan in result.plans:
        assert plan.bound <= plan.cost == sum(line.cost for line in plan.bought)
        for stick in plan.sticks:
            ends = [place.end for place in stick.places]
            assert ends[-1] + stick.offcut <= stick.length
            assert all(place.end > place.start >= 0 for place in stick.places)
    jsonschema.validate(json.loads(plan_json(result)), SCHEMA)


@given(jobs())
@settings(max_examples=examples(10), deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_comments_blanks_and_case_change_nothing(text: str) -> None:
    noisy = "\r\n".join(
        f"  {line.upper() if line.lstrip().startswith(('saw', 'spare')) else line}   # {n}"
        for n, line in enumerate(text.splitlines())
    )
    one, other = compile_job(text, effort=QUICK), compile_job(noisy, effort=QUICK)
    assert one.pieces == other.pieces
    assert one.plans == other.plans
    assert one.supplies == other.supplies


def test_a_wall_that_only_the_scarce_sticks_reach_is_not_left_out() -> None:
    """Spliced again for the sticks there are enough of, N would need pieces under 24 in."""
    text = """trim base: 14 1/2 in thick, 15 in tall
stock base: 36 in at 1.00, 8 ft at 9.90 at most 2
room "R" as R, trim base, open walk
  N: 50 in, left=butt, right=in-corner
  E: 33 ft, left=in-corner, right=butt
"""
    result = compile_job(text, effort=QUICK)
    assert not result.ok
    assert "T501" in {one.code for one in result.diagnostics}
