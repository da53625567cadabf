"""Several jobs bought together: never dearer than apart, nothing lost, limits kept."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from tests.conftest import examples
from tests.jobs import CASE
from tests.shared_order.jobs import TRIM, flat, pool, search_ends_early
from trimlang.compiler import compile_job
from trimlang.shared_order.shared_check import faults
from trimlang.shared_order.shared_plan import joined_job, plan_together
from trimlang.shared_order.shared_result import SharedOrder
from trimlang.shared_order.side_by_side import can_be_had
from trimlang.stock.planner import QUICK
from trimlang.stock.problem import Status

ENDS = st.sampled_from(["in-corner", "out-corner", "butt", "return", "open", "out-corner(60 deg)"])


@st.composite
def flat_texts(draw: st.DrawFn) -> list[str]:
    spare = draw(st.sampled_from(["0 %", "12 %", "covers any one piece spoiled"]))
    saw = f"saw: kerf {draw(st.sampled_from(['0', '1/8', '3/16']))} in, squares off 1/4 in\n"
    trim = draw(st.sampled_from([TRIM, TRIM.replace(" at most 3", "")]))
    texts = []
    for _ in range(draw(st.integers(2, 4))):
        rests = ""
        if draw(st.booleans()):
            count, long = draw(st.integers(1, 2)), draw(st.integers(20, 140))
            price = draw(st.sampled_from(["0", "2.50"]))
            rests = f"on-hand base: {count} of {long} in at {price}\n"
        unit = f"unit {draw(st.sampled_from(['in', 'mm']))}\n"
        lines = []
        for run in range(draw(st.integers(1, 5))):
            length = Fraction(draw(st.integers(64, 4800)), 16)
            whole, rest = divmod(length, 1)
            ends = f"left={draw(ENDS)}, right={draw(ENDS)}"
            lines.append(f"  {run}: {whole} {rest or '0/8'} in, {ends}\n  bare 3 in")
        texts.append(
            flat("\n".join(lines), trim=trim, settings=f"spare {spare}\n{saw}{rests}{unit}")
        )
    return texts


def sound(site: SharedOrder) -> None:
    """Every flat's pieces lie on one stick each, and the plans break no rule."""
    result = site.result
    assert result.ok, result.diagnostics
    placed = Counter(
        p.piece for plan in result.plans for stick in plan.sticks for p in stick.places
    )
    assert placed == Counter(piece.id for piece in result.pieces)
    assert placed == Counter(piece.id for one in site.flats for piece in one.result.pieces)
    for plan in result.plans:
        pieces = [piece for piece in result.pieces if piece.trim == plan.trim]
        assert faults(result.job.trim(plan.trim), pieces, plan, Fraction(1, 16)) == ()
        assert plan.bound <= plan.cost
        assert (plan.status is Status.PROVEN) <= (plan.bound == plan.cost)


@given(flat_texts())
@settings(max_examples=examples(8), suppress_health_check=[HealthCheck.too_slow])
def test_together_is_never_dearer_than_apart(texts: list[str]) -> None:
    site = plan_together(pool(*texts), QUICK)
    apart = [compile_job(text, effort=QUICK) for text in texts]
    assume(site.result.ok and all(one.ok for one in apart))
    sound(site)
    # what is bought apart can be had together unless it takes more than the supplier has
    if can_be_had(site.result.job.trim("base"), [one.plans[0] for one in apart]):
        assert site.result.cost <= sum(one.cost for one in apart)
        assert site.scarce == ()
    assert site.alone == sum(one.cost for one in apart)


@given(flat_texts())
@settings(max_examples=examples(5), suppress_health_check=[HealthCheck.too_slow])
def test_the_same_flats_give_the_same_site(texts: list[str]) -> None:
    assert plan_together(pool(*texts), QUICK) == plan_together(pool(*texts), QUICK)


def test_two_halves_share_a_stick() -> None:
    """A wall of 70 in each: two 12 ft sticks apart (or dearer packs), one together."""
    wall = "  N: 70 in, left=butt, right=butt"
    site = plan_together(pool(flat(wall), flat(wall)))
    sound(site)
    assert [one.alone for one in site.flats] == [Fraction("17.40")] * 2
    assert site.result.cost == Fraction("17.40")
    (stick,) = site.result.plans[0].sticks
    assert [place.piece for place in stick.places] == ["F1-ST-N-base", "F2-ST-N-base"]


def test_tags_come_from_the_files_and_never_clash() -> None:
    wall = "  N: 70 in, left=butt, right=return"
    ids = [piece.id for one in pool(flat(wall), flat(wall)) for piece in one.pieces]
    assert ids == [f"F{n}-ST-N-base{end}" for n in (1, 2) for end in ("", "-right-return")]


def test_what_one_job_has_on_hand_serves_another() -> None:
    rest = "spare 0 %\non-hand base: 1 of 60 in\n"
    short = "  N: 50 in, left=butt, right=butt"
    long = "  N: 140 in, left=butt, right=butt"
    site = plan_together(pool(flat(short), flat(long, settings=rest)))
    sound(site)
    assert site.result.cost == Fraction("17.40")


def test_a_shelf_that_two_jobs_include_counts_once(tmp_path: Path) -> None:
    (tmp_path / "shop.trim").write_text(TRIM + "on-hand base: 1 of 60 in\n", encoding="utf-8")
    wall = "  N: 55 in, left=butt, right=butt"
    text = flat(wall, trim='include "shop.trim"\n')
    site = plan_together(pool(text, text, folder=tmp_path))
    sound(site)
    assert sum(rest.count for rest in site.result.job.trim("base").rests) == 1
    # each job by itself would take the one offcut for nothing
    assert site.alone == 0
    assert site.scarce == ("base",)
    assert site.result.cost == Fraction("17.40")


def test_a_suppliers_limit_holds_for_all_jobs() -> None:
    only = TRIM.splitlines()[0] + "\nstock base: 12 ft at 5 at most 2, 12 ft at 17.40\n"
    walls = "  N: 140 in, left=butt, right=butt\n  bare 3 in\n  E: 140 in, left=butt, right=butt"
    site = plan_together(pool(flat(walls, trim=only), flat(walls, trim=only)))
    sound(site)
    assert site.result.cost == 2 * 5 + 2 * Fraction("17.40")
    assert site.scarce == ("base",)


def test_a_supply_that_does_not_reach_all_jobs_is_said() -> None:
    only = TRIM.splitlines()[0] + "\nstock base: 12 ft at 5 at most 3\n"
    walls = "  N: 140 in, left=butt, right=butt\n  bare 3 in\n  E: 140 in, left=butt, right=butt"
    site = plan_together(pool(flat(walls, trim=only), flat(walls, trim=only)))
    assert [finding.code for finding in site.result.diagnostics] == ["T663"]
    assert site.result.plans == ()


def test_where_the_search_finds_worse_each_job_buys_its_own(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    walls = "  N: 140 in, left=butt, right=butt\n  bare 3 in\n  E: 19 ft, left=butt, right=butt"
    trim = TRIM.replace(" at most 3", "")
    jobs = pool(flat(walls, trim=trim), flat(walls, trim=trim))
    search_ends_early(monkeypatch)
    site = plan_together(jobs)
    sound(site)
    assert site.apart == ("base",)
    assert site.result.cost == site.alone
    ids = [stick.id for stick in site.result.plans[0].sticks]
    assert ids == [f"base-{n}" for n in range(1, len(ids) + 1)]
    assert site.result.plans[0].bound <= site.result.cost


def test_flats_of_unlike_trims_stand_beside_each_other() -> None:
    case = TRIM + f"{CASE}\nstock case: 7 ft at 9\n"
    wall = "  N: 40 in, left=butt, right=butt\n"
    door = wall + '  opening 30 in, "door", casing case, height 80 in\n'
    site = plan_together(pool(flat(wall), flat(door, trim=case)))
    sound(site)
    assert [plan.trim for plan in site.result.plans] == ["base", "case"]
    assert [len(one.result.plans) for one in site.flats] == [1, 2]
    assert [trim.name for trim in joined_job([one.flat for one in site.flats]).trims] == [
        "base",
        "case",
    ]


def test_a_tampered_plan_is_caught() -> None:
    wall = "  N: 70 in, left=butt, right=butt"
    site = plan_together(pool(flat(wall), flat(wall)))
    (plan,) = site.result.plans
    trim, pieces = site.result.job.trim("base"), site.result.pieces
    (stick,) = plan.sticks
    first, second = stick.places
    for wrong, said in (
        (replace(plan, cost=plan.cost - 1), "come to the cost"),
        (replace(plan, bound=plan.cost + 1), "above the cost"),
        (replace(plan, bought=()), "are cut, and 0 taken"),
        (replace(plan, sticks=()), "lies on no stick"),
        (replace(plan, sticks=(stick, stick)), "lies on 2 sticks"),
        (replace(plan, spare_asked=Fraction(1)), "for spare"),
        (replace(plan, sticks=(replace(stick, length=Fraction(100)),)), "overfilled"),
        (replace(plan, sticks=(replace(stick, places=(second, first)),)), "within another"),
        (
            replace(plan, bought=(replace(plan.bought[0], price=Fraction(1)),)),
            "not on offer",
        ),
    ):
        assert any(said in fault for fault in faults(trim, pieces, wrong, Fraction(1, 16))), said
