"""Laws of the site log, on jobs and days of work that hypothesis makes up."""

from __future__ import annotations

from collections import Counter
from fractions import Fraction

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import trimlang
from tests.conftest import examples
from tests.jobs import BASE
from trimlang.compiler import Result, compile_job
from trimlang.sheets.export.plan_json import plan_json
from trimlang.stock.planner import QUICK

SLOW = settings(
    max_examples=examples(12), deadline=None, suppress_health_check=[HealthCheck.too_slow]
)
ENDS = st.sampled_from(["butt", "out-corner", "in-corner(93.5 deg)", "return"])


@st.composite
def jobs(draw: st.DrawFn) -> str:
    lines = [
        f"{BASE}",
        "stock base: 12 ft at 17.40, pack of 4 8 ft at 40, 16 ft at 24.10",
        f"on-hand base: 1 of {draw(st.integers(20, 90))} 3/8 in at 2.00",
        f"saw: kerf 1/8 in, squares off {draw(st.sampled_from(['1/4', '0']))} in",
        f"spare {draw(st.integers(0, 12))} %",
        'room "Den" as DE, trim base, open walk',
    ]
    for run in range(draw(st.integers(2, 7))):
        length = draw(st.integers(20, 200))
        lines += [
            f"  {run}: {length} 3/16 in, left={draw(ENDS)}, right={draw(ENDS)}",
            "  bare 3 in",
        ]
    return "\n".join(lines) + "\n"


def built(text: str) -> Result:
    """Compile; the verifier of a job under way has its say in there."""
    result = compile_job(text, effort=QUICK)
    assert result.ok, result.diagnostics
    return result


def lies(result: Result) -> dict[str, tuple[str, Fraction, Fraction]]:
    return {
        place.piece: (stick.id, place.start, place.end)
        for plan in result.plans
        for stick in plan.sticks
        for place in stick.places
    }


def in_order(result: Result) -> list[str]:
    """Return the pieces in the printed order: stick by stick, from the left."""
    return [place.piece for plan in result.plans for stick in plan.sticks for place in stick.places]


@given(jobs(), st.integers(0, 9))
@SLOW
def test_cutting_in_the_printed_order_changes_no_other_ticket(text: str, count: int) -> None:
    first = built(text)
    cut = in_order(first)[:count]
    result = built(text + "".join(f"cut {name}\n" for name in cut))
    assert lies(result) == lies(first)
    assert result.cost == first.cost or len(cut) == len(first.pieces)
    assert result.progress is None or result.progress.changed == ()


@given(jobs(), st.data())
@SLOW
def test_a_spoiled_piece_moves_nothing_that_is_cut_and_loses_no_piece(
    text: str, data: st.DataObject
) -> None:
    first = built(text)
    order = in_order(first)
    cut = order[: data.draw(st.integers(1, len(order)))]
    victim = data.draw(st.sampled_from(order))
    rest = data.draw(st.sampled_from(["", " into 9/16 in"]))
    bought = "bought 5 base 12 ft at 17.40\n" if data.draw(st.booleans()) else ""
    day = bought + "".join(f"cut {name}\n" for name in cut)
    before = built(text + day)
    result = built(text + day + f"spoiled {victim}{rest}\n")
    assert Counter(in_order(result)) == Counter(order)
    where, was = lies(result), lies(before)
    for name in set(cut) - {victim}:
        assert where[name] == was[name]
    assert result.progress is not None
    assert not result.progress.is_cut(victim)
    assert victim in result.progress.changed
    for plan in result.plans:
        for stick in plan.sticks:
            ends = [place.end for place in stick.places]
            assert ends == sorted(ends)
            assert ends[-1] <= stick.length
        assert plan.bound <= plan.cost == sum(line.cost for line in plan.bought)


@given(jobs(), st.integers(0, 9), st.booleans())
@SLOW
def test_plan_json_read_back_is_the_same_to_the_byte(text: str, count: int, spoil: bool) -> None:
    order = in_order(built(text))
    log = "".join(f"cut {name}\n" for name in order[:count])
    log += f"spoiled {order[0]} into 9/16 in\n" if spoil else ""
    written = plan_json(built(text + log))
    plan = trimlang.read_plan(written)
    assert trimlang.write_plan(plan) == written
    assert [piece.id for piece in plan.pieces if piece.state.value == "cut"] == [
        piece.id
        for piece in plan.pieces
        if piece.id in order[:count] and not (spoil and piece.id == order[0])
    ]
