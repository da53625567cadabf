"""The verifier accepts sound plans and rejects every kind of broken one."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from trimlang.stock.planner import plan_stock
from trimlang.stock.problem import Blank, Part, Plan, Problem, Purchase, Status, Stick
from trimlang.stock.verify import faults


@pytest.fixture
def sound() -> Plan:
    parts = tuple(Part(f"p{i}", length) for i, length in enumerate((60, 50, 40, 30, 20)))
    blanks = (
        Blank("stick", 100, 10),
        Blank("rest", 45, 0, limit=1, on_hand=True),
    )
    plan = plan_stock(Problem("base", parts, blanks, kerf=2, end_waste=1, spare=90))
    assert isinstance(plan, Plan)
    return plan


def _without_last_part(plan: Plan) -> Plan:
    sticks = [s for s in plan.sticks if len(s.parts) > 1]
    thinner = replace(sticks[0], parts=sticks[0].parts[:-1])
    return replace(plan, sticks=tuple(thinner if s is sticks[0] else s for s in plan.sticks))


def _with_stick(plan: Plan, stick: Stick) -> Plan:
    return replace(plan, sticks=(stick, *plan.sticks[1:]))


BREAKS: dict[str, Callable[[Plan], Plan]] = {
    "is not cut": _without_last_part,
    "is cut 2 times": lambda p: replace(p, sticks=(*p.sticks, p.sticks[0])),
    "was not asked for": lambda p: _with_stick(
        p, replace(p.sticks[0], parts=(*p.sticks[0].parts, "nobody"))
    ),
    "has no pieces": lambda p: replace(p, sticks=(*p.sticks, Stick("stick", ()))),
    "of an unknown blank": lambda p: _with_stick(p, replace(p.sticks[0], blank="plank")),
    "is overfilled": lambda p: replace(
        p,
        sticks=(Stick("stick", tuple(part.id for part in p.problem.parts)),),
    ),
    "unknown blank plank is bought": lambda p: replace(
        p, purchases=(*p.purchases, Purchase("plank", 1))
    ),
    "-1 of stick are bought": lambda p: replace(p, purchases=(*p.purchases, Purchase("stick", -1))),
    "are had, of 1": lambda p: replace(p, purchases=(*p.purchases, Purchase("rest", 5))),
    "are cut than are had": lambda p: replace(p, purchases=p.purchases[:1], cost=0),
    "whole sticks for spare": lambda p: replace(p, problem=replace(p.problem, spare=10_000)),
    "the purchases cost": lambda p: replace(p, cost=p.cost + 1, bound=p.bound + 1),
    "is above the cost": lambda p: replace(p, bound=p.cost + 1),
    "'proven least cost' with": lambda p: replace(p, bound=p.cost - 1, status=Status.PROVEN),
    "'within a stated gap' with": lambda p: replace(p, status=Status.GAP),
    "fewer than": lambda p: replace(p, stick_bound=99),
    "not what the sticks leave": lambda p: replace(p, offcuts=(7,) * len(p.sticks)),
    "could not be cut again": lambda p: replace(
        p,
        problem=replace(p.problem, survive_loss=True, spare=0),
        purchases=tuple(replace(b, packs=1) if b.blank == "stick" else b for b in p.purchases),
    ),
    "longer than its bound": lambda p: replace(p, offcut_bound=0),
}


def test_a_sound_plan_has_no_faults(sound: Plan) -> None:
    assert sound.status is Status.PROVEN
    assert faults(sound) == ()


@pytest.mark.parametrize("words", BREAKS)
def test_a_broken_plan_is_rejected(sound: Plan, words: str) -> None:
    found = faults(BREAKS[words](sound))
    assert any(words in fault for fault in found), found


def test_a_shared_mitre_makes_room_only_where_both_ends_lean_alike() -> None:
    parts = (Part("a", 50, 0, 5), Part("b", 52, 5, 0))
    problem = Problem("base", parts, (Blank("stick", 100, 1),), kerf=1)
    plan = plan_stock(problem)
    assert isinstance(plan, Plan)
    assert faults(plan) == ()
    turned = replace(problem, parts=(parts[0], replace(parts[1], left_lean=-5)))
    assert any("overfilled by 3" in fault for fault in faults(replace(plan, problem=turned)))


def test_a_kerf_behind_the_last_piece_needs_no_room() -> None:
    problem = Problem("base", (Part("a", 49), Part("b", 49)), (Blank("stick", 100, 1),), kerf=2)
    plan = plan_stock(problem)
    assert isinstance(plan, Plan)
    assert len(plan.sticks) == 1
    assert faults(plan) == ()


def test_what_is_wrong_elsewhere_does_not_hide_a_reserve_that_is_missing(sound: Plan) -> None:
    asked = replace(sound.problem, survive_loss=True, spare=0)
    bare = tuple(
        replace(bought, packs=sum(stick.blank == bought.blank for stick in sound.sticks))
        for bought in sound.purchases
    )
    broken = replace(sound, problem=asked, purchases=(*bare, Purchase("plank", 9)))
    found = faults(broken)
    assert any("unknown blank plank" in fault for fault in found)
    assert any("could not be cut again" in fault for fault in found)
