"""The verifier accepts sound plans and rejects every kind of broken one."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from tests.every import every
from trimlang.stock.checking.verify import faults
from trimlang.stock.planner import plan_stock
from trimlang.stock.problem import Blank, Part, Plan, Problem, Purchase, Status, Stick


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
    "are taken, of 1": lambda p: replace(p, purchases=(*p.purchases, Purchase("rest", 5))),
    "are cut than are taken": lambda p: replace(p, purchases=p.purchases[:1], cost=0),
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
}


def test_a_sound_plan_has_no_faults(sound: Plan) -> None:
    assert sound.status is Status.PROVEN
    assert faults(sound) == ()


@every("words", BREAKS)
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


# Plans laid out by hand, with what the definition in ``problem.py`` says of each.


def by_hand(problem: Problem, *sticks: Stick, **bought: int) -> tuple[str, ...]:
    """Faults of a plan that cuts those sticks and buys so many packs of each blank."""
    prices = {blank.key: blank.price for blank in problem.blanks}
    cost = sum(prices.get(key, 0) * packs for key, packs in bought.items())
    purchases = tuple(Purchase(key, packs) for key, packs in bought.items())
    return faults(Plan(problem, sticks, purchases, cost, cost, Status.PROVEN))


STICK = Blank("stick", 100, 10)


@every(
    "right, left, shared",
    [(3, 5, 3), (5, 3, 3), (-3, -5, 3), (-5, -3, 3), (1, 1, 1), (-1, -1, 1),
     (3, -5, 0), (-3, 5, 0), (0, 5, 0), (0, -5, 0), (5, 0, 0), (-5, 0, 0), (0, 0, 0)],
)  # fmt: skip
def test_neighbours_overlap_by_the_smaller_lean_where_they_lean_alike(
    right: int, left: int, shared: int
) -> None:
    parts = (Part("a", 40, 0, right), Part("b", 30, left, 0))
    # 40 and 30 with a kerf of 2 between them
    long = Blank("stick", 72 - shared, 10)
    cut = Stick("stick", ("a", "b"))
    assert by_hand(Problem("base", parts, (long,), kerf=2), cut, stick=1) == ()
    tight = replace(long, length=long.length - 1)
    found = by_hand(Problem("base", parts, (tight,), kerf=2), cut, stick=1)
    assert found == ("stick 0 is overfilled by 1",)


@pytest.mark.parametrize(("length", "found"), [(98, ()), (99, ("stick 0 is overfilled by 1",))])
def test_a_stick_loses_both_its_ends(length: int, found: tuple[str, ...]) -> None:
    problem = Problem("base", (Part("a", length),), (STICK,), end_waste=1)
    assert by_hand(problem, Stick("stick", ("a",)), stick=1) == found


def test_a_fault_in_one_stick_hides_none_in_the_next() -> None:
    parts = (Part("a", 40), Part("b", 130))
    over = Stick("stick", ("b",))
    problem = Problem("base", parts, (STICK,))
    assert by_hand(problem, Stick("plank", ("a",)), over, stick=1) == (
        "stick 0 is of an unknown blank plank",
        "stick 1 is overfilled by 30",
    )
    assert by_hand(problem, Stick("stick", ("nobody",)), over, stick=2) == (
        "part a is not cut",
        "part nobody was not asked for",
        "stick 1 is overfilled by 30",
    )


def test_what_is_had_is_all_that_is_bought_by_packs() -> None:
    parts = tuple(Part(f"p{at}", 60) for at in range(3))
    cut = [Stick("pack", (part.id,)) for part in parts]
    problem = Problem("base", parts, (Blank("pack", 100, 25, pack=3), STICK))
    assert by_hand(problem, *cut, pack=1, stick=0) == ()
    twice = Plan(
        problem, (cut[0], Stick("stick", ("p1",)), Stick("stick", ("p2",))),
        (Purchase("stick", 1), Purchase("pack", 1), Purchase("stick", 1)),
        45, 45, Status.PROVEN,
    )  # fmt: skip
    assert faults(twice) == ()
    sticks = [Stick("stick", (part.id,)) for part in parts]
    assert by_hand(problem, *sticks, stick=1) == ("2 more of stick are cut than are taken",)


def test_what_is_bought_of_an_unknown_blank_hides_nothing() -> None:
    problem = Problem("base", (Part("a", 40),), (STICK,))
    found = by_hand(problem, Stick("stick", ("a",)), plank=1, stick=1)
    assert found == ("unknown blank plank is bought",)


@pytest.mark.parametrize(("spare", "enough"), [(250, True), (251, False)])
def test_spare_is_the_length_of_all_whole_sticks_that_were_bought(spare: int, enough: bool) -> None:
    rest = Blank("rest", 90, 0, on_hand=True)
    problem = Problem("base", (Part("a", 40),), (STICK, rest, Blank("long", 150, 14)), spare=spare)
    # beside the stick that is cut: one of 100, one of 150, and a rest that does not count
    found = by_hand(problem, Stick("stick", ("a",)), stick=2, rest=1, long=1)
    missing = f"whole sticks for spare are 250 long together, of {spare}"
    assert found == (() if enough else (missing,))


def test_claims_of_offcuts_are_told_in_words(sound: Plan) -> None:
    assert "the offcuts are not what the sticks leave" in faults(
        replace(sound, offcuts=(7,) * len(sound.sticks))
    )


LOST = "a spoiled piece of {} could not be cut again"


@pytest.mark.parametrize(
    ("lengths", "blanks", "bought", "longest"),
    [
        # one long stick is cut, and a whole one is left: 100 less 2 at each end hold 96
        ((96,), (Blank("long", 102, 19), STICK), {"long": 1, "stick": 1}, None),
        ((97,), (Blank("long", 102, 19), STICK), {"long": 1, "stick": 1}, 97),
        # what is left of the long stick itself: 200 − 2 × 2 − 97 − a kerf of 1
        ((97,), (Blank("long", 200, 19),), {"long": 1}, None),
        ((98,), (Blank("long", 200, 19),), {"long": 1}, 98),
        # a rest of a stick and a shorter whole one: either will do
        ((97,), (Blank("long", 200, 19), Blank("stick", 50, 5)), {"long": 1, "stick": 1}, None),
        # two of a pack of three are left
        ((60,), (Blank("long", 70, 19, pack=3),), {"long": 1}, None),
        ((60,), (Blank("long", 70, 19),), {"long": 1}, 60),
    ],
)
def test_a_reserve_holds_the_longest_piece(
    lengths: tuple[int, ...],
    blanks: tuple[Blank, ...],
    bought: dict[str, int],
    longest: int | None,
) -> None:
    parts = tuple(Part(f"p{at}", length) for at, length in enumerate(lengths))
    problem = Problem("base", parts, blanks, kerf=1, end_waste=2, survive_loss=True)
    cut = Stick("long", tuple(part.id for part in parts))
    assert by_hand(problem, cut, **bought) == (() if longest is None else (LOST.format(longest),))


def test_a_reserve_is_of_all_that_was_bought_of_a_blank() -> None:
    problem = Problem("base", (Part("a", 60),), (Blank("stick", 70, 10),), survive_loss=True)
    cut = (Stick("stick", ("a",)),)
    halves = (Purchase("stick", 1), Purchase("stick", 1))
    assert faults(Plan(problem, cut, halves, 20, 20, Status.PROVEN)) == ()


def test_a_reserve_of_nothing_holds_nothing() -> None:
    problem = Problem("base", (Part("a", 1),), (STICK,), survive_loss=True)
    assert by_hand(problem) == ("part a is not cut", LOST.format(1))
    nothing = Problem("base", (), (STICK,), survive_loss=True)
    assert by_hand(nothing) == ()


def test_where_a_stick_is_unknown_its_reserve_is_not_judged() -> None:
    problem = Problem("base", (Part("a", 40),), (STICK,), survive_loss=True)
    assert by_hand(problem, Stick("plank", ("a",))) == ("stick 0 is of an unknown blank plank",)
