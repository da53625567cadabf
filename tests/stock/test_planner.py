"""What the stock planner promises, seen from its front door."""

import time
from dataclasses import replace
from itertools import pairwise, permutations
from random import Random

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from tests.conftest import at_night, examples
from tests.stock.assignment import least_cost
from tests.stock.jobs import house, plain, small_priced, triplets
from trimlang.stock import planner
from trimlang.stock.checking.proof_check import doubts
from trimlang.stock.checking.verify import faults
from trimlang.stock.mixes.buying import Buying
from trimlang.stock.packings.longest_first import quick_packing
from trimlang.stock.packings.packing import Packing
from trimlang.stock.packings.rests import tidied
from trimlang.stock.planner import QUICK, Effort, plan_stock
from trimlang.stock.problem import Blank, NoPlan, Part, Plan, Problem, Purchase, Status
from trimlang.stock.sticks.timber import timber_of


def planned(problem: Problem, effort: Effort | None = None) -> Plan:
    plan = plan_stock(problem) if effort is None else plan_stock(problem, effort=effort)
    assert isinstance(plan, Plan)
    assert faults(plan) == ()
    return plan


def test_nothing_to_cut_costs_nothing() -> None:
    plan = planned(plain([], 100))
    assert (plan.cost, plan.sticks, plan.status) == (0, (), Status.PROVEN)


def test_a_piece_that_no_stick_holds_is_named() -> None:
    answer = plan_stock(plain([30, 101, 200], 100))
    assert isinstance(answer, NoPlan)
    assert answer.too_long == ("p1", "p2")


def test_a_supply_that_runs_out_is_said() -> None:
    problem = replace(plain([60, 60, 60], 100), blanks=(Blank("stick", 100, 1, limit=2),))
    answer = plan_stock(problem)
    assert isinstance(answer, NoPlan)
    assert answer.short_of_supply


def test_a_supply_that_is_too_short_only_for_longest_first_is_planned_even_quickly() -> None:
    # Longest first puts 45 beside 50 and then has no room for both 30s.
    parts = tuple(Part(f"p{i}", n) for i, n in enumerate((50, 45, 30, 30, 25, 20)))
    problem = Problem("base", parts, (Blank("a", 100, 7, limit=2),))
    plan = planned(problem, QUICK)
    assert plan.cost == 14


def test_the_search_can_be_watched() -> None:
    seen: list[tuple[int | None, int]] = []
    plan = plan_stock(triplets(25, seed=25), watch=lambda cost, bound: seen.append((cost, bound)))
    assert isinstance(plan, Plan)
    assert seen
    assert all(bound <= plan.cost for _, bound in seen)


def test_a_supply_that_just_suffices_is_found() -> None:
    # Longest first would leave the 60 out: 100 = 60 + 40, 90 = 45 + 45.
    parts = tuple(Part(f"p{i}", n) for i, n in enumerate((60, 45, 45, 40)))
    blanks = (Blank("a", 100, 7, limit=1), Blank("b", 90, 6, limit=1))
    assert planned(Problem("base", parts, blanks)).cost == 13


def test_a_pack_and_singles_are_mixed() -> None:
    blanks = (Blank("single", 100, 10), Blank("pack", 100, 25, pack=3))
    plan = planned(replace(plain([90] * 4, 100), blanks=blanks))
    assert plan.cost == 35
    assert set(plan.purchases) == {Purchase("single", 1), Purchase("pack", 1)}


def test_very_many_sticks_from_several_packs_cost_the_least() -> None:
    for seed in range(20):
        random = Random(seed)
        packs = random.sample(range(1, 12), 3)
        blanks = [Blank(f"{pack}", 100, random.randint(5 * pack, 9 * pack), pack) for pack in packs]
        few = replace(blanks[0], key="few", price=4 * packs[0], limit=30 * packs[0])
        least = [0]
        for count in range(1, 3001):
            least.append(min(least[max(count - b.pack, 0)] + b.price for b in blanks))
        problem = Problem("base", (Part("p", 60),), (*blanks, few))
        buying = Buying(timber_of(problem))
        for count in range(0, 3001, 97):
            cost = min(least[max(count - n * few.pack, 0)] + n * few.price for n in range(31))
            bought = {blank.key: blank for blank in problem.blanks}
            purchases = buying.purchases((count,))
            assert buying.least(0, count) == cost
            assert sum(p.packs * bought[p.blank].price for p in purchases) == cost
            assert sum(p.packs * bought[p.blank].pack for p in purchases) >= count


def test_a_stick_left_in_a_pack_counts_as_spare() -> None:
    blanks = (Blank("single", 100, 10), Blank("pack", 100, 25, pack=3))
    plan = planned(replace(plain([90] * 2, 100), blanks=blanks, spare=100))
    assert plan.cost == 25


def test_a_rest_on_the_rack_is_used_but_is_no_spare() -> None:
    blanks = (Blank("new", 100, 10), Blank("rest", 50, 0, limit=3, on_hand=True))
    plan = planned(replace(plain([40, 40], 100), blanks=blanks, spare=80))
    assert plan.cost == 10
    assert {stick.blank for stick in plan.sticks} == {"rest"}


@pytest.mark.parametrize(("lengths", "cost"), [([60, 30], 2), ([30, 30], 1), ([33, 33, 33], 2)])
def test_any_one_piece_may_be_spoiled_where_the_job_says_so(lengths: list[int], cost: int) -> None:
    problem = replace(plain(lengths, 100), survive_loss=True)
    plan = planned(problem)
    assert (plan.cost, plan.status, len(plan.sticks)) == (cost, Status.PROVEN, 1)


@pytest.mark.parametrize("seed", [*range(10), *at_night(range(10, 20))])
def test_room_for_a_spoiled_piece_costs_as_much_as_one_more_piece(seed: int) -> None:
    problem = replace(small_priced(seed), spare=0)
    longest = max(part.length for part in problem.parts)
    answer = plan_stock(replace(problem, survive_loss=True))
    again = replace(problem, parts=(*problem.parts, Part("again", longest)))
    expected = least_cost(again)
    assert (answer.cost if isinstance(answer, Plan) else None) == expected
    assert isinstance(answer, NoPlan) or faults(answer) == ()


def test_a_spare_stick_is_room_enough_for_a_spoiled_piece() -> None:
    problem = Problem("base", (Part("a", 70), Part("b", 60)), (Blank("s", 72, 10),), spare=72)
    for asked in (problem, replace(problem, survive_loss=True)):
        plan = plan_stock(asked)
        assert isinstance(plan, Plan)
        assert faults(plan) == ()
        assert (plan.cost, plan.status) == (30, Status.PROVEN)


def test_a_spare_stick_that_is_too_short_for_a_spoiled_piece_is_not_enough() -> None:
    sticks = (Blank("s", 72, 10), Blank("t", 40, 5))
    parts = tuple(Part(f"p{i}", 70) for i in range(2))
    problem = Problem("base", parts, sticks, spare=40, survive_loss=True)
    plan = plan_stock(problem)
    assert isinstance(plan, Plan)
    assert faults(plan) == ()
    # a spare one of 72 holds a spoiled piece, and is spare enough
    assert (plan.cost, plan.status) == (30, Status.PROVEN)
    assert doubts(plan) == ()
    assert sum(purchase.packs for purchase in plan.purchases) == 3


@settings(max_examples=examples(40), deadline=None)
@example(lengths=[8], sticks={12: 2}, spare=1, ends=0, rest=21)
@given(
    lengths=st.lists(st.integers(8, 40), min_size=1, max_size=4),
    sticks=st.dictionaries(st.integers(12, 48), st.integers(2, 30), min_size=1, max_size=3),
    spare=st.integers(1, 40),
    ends=st.integers(0, 2),
    rest=st.none() | st.integers(10, 50),
)
def test_both_kinds_of_spare_cost_as_little_as_any_choice_of_sticks(
    lengths: list[int], sticks: dict[int, int], spare: int, ends: int, rest: int | None
) -> None:
    blanks = [Blank(f"s{length}", length, price) for length, price in sticks.items()]
    if rest is not None:
        blanks.append(Blank("rest", rest, 0, limit=1, on_hand=True))
    problem = Problem(
        trim="base",
        parts=tuple(Part(f"p{n}", length) for n, length in enumerate(lengths)),
        blanks=tuple(blanks),
        kerf=1,
        end_waste=ends,
        spare=spare,
        survive_loss=True,
    )
    plan = plan_stock(problem)
    longest = max(lengths)
    # every way: the piece again on some stick, or some stick that stays whole
    asked = [(longest, spare)]
    asked += [
        (blank.length - 2 * ends, spare if blank.on_hand else max(spare - blank.length, 0))
        for blank in blanks
        if blank.length - 2 * ends >= longest
    ]
    costs = []
    for length, left in asked:
        again = replace(
            problem,
            parts=(*problem.parts, Part("again", length)),
            spare=left,
            survive_loss=False,
        )
        way = plan_stock(again)
        costs += [way.cost] if isinstance(way, Plan) else []
    if not isinstance(plan, Plan):
        assert not costs
        return
    assert faults(plan) == ()
    assert doubts(plan) == ()
    # A way may put what stands for a whole stick beside other parts, and so cost less than any
    # plan; but what the spare alone costs is never saved.
    without_loss = plan_stock(replace(problem, survive_loss=False))
    assert isinstance(without_loss, Plan)
    assert plan.bound <= max(min(costs), without_loss.cost) <= plan.cost


def test_the_rest_is_gathered_on_one_stick() -> None:
    # Best fit leaves 30 and 35; together they make one of 65.
    plan = planned(plain([70, 35, 30], 100))
    assert max(plan.offcuts) == 65


def test_two_scraps_become_one_offcut_worth_keeping() -> None:
    # best fit leaves 30 on the second stick and 9 on each of the others; nothing else need be scrap
    problem = replace(plain([80, 75, 45, 41, 12, 8], 100), usable=12)
    assert sum(0 < rest < 12 for rest in planned(problem).offcuts) <= 1


@given(
    lengths=st.lists(st.integers(4, 60), min_size=2, max_size=14),
    stick=st.integers(60, 100),
    usable=st.integers(0, 40),
    kerf=st.integers(0, 2),
)
def test_tidying_changes_neither_cost_nor_sticks_nor_pieces(
    lengths: list[int], stick: int, usable: int, kerf: int
) -> None:
    timber = timber_of(replace(plain(lengths, stick), usable=usable, kerf=kerf))
    packing = quick_packing(timber, Buying(timber))
    assert packing is not None
    tidy = tidied(timber, packing)
    assert tidy.rank == packing.rank
    assert [kind for kind, _ in tidy.sticks] == [kind for kind, _ in packing.sticks]
    assert sorted(s for _, one in tidy.sticks for s in one) == sorted(
        size for _, one in packing.sticks for size in one
    )

    def rests(sticks: Packing) -> list[int]:
        return [
            timber.kinds[kind].room - sum(timber.sizes[size].weight for size in pattern)
            for kind, pattern in sticks.sticks
        ]

    before, after = rests(packing), rests(tidy)
    assert min(after) >= 0
    assert max(after) >= max(before)
    if max(after) == max(before):
        assert scraps(after, kerf, usable) <= scraps(before, kerf, usable)


def scraps(rests: list[int], kerf: int, usable: int) -> int:
    return sum(0 < rest - kerf < usable for rest in rests)


def test_pieces_lie_longest_first_but_very_short_ones_before_all() -> None:
    plan = planned(plain([40, 30, 5, 4], 100, short=10))
    assert plan.sticks[0].parts == ("p2", "p3", "p0", "p1")


def test_neighbours_share_a_mitre_where_it_saves_a_stick() -> None:
    parts = (Part("a", 40, 0, 4), Part("b", 35, -4, 0), Part("c", 30, 4, -4))
    problem = Problem("base", parts, (Blank("stick", 98, 10),))
    plan = planned(problem)
    assert (plan.cost, plan.status, plan.shared) == (10, Status.PROVEN, (0,))
    assert plan.sticks[0].parts == ("a", "c", "b")


@pytest.mark.parametrize("seed", range(6))
def test_shared_mitres_agree_with_every_order(seed: int) -> None:
    """One stick or two: tried against all orders and splits of five leaning parts."""
    random = Random(seed)
    parts = tuple(
        Part(str(i), random.randint(15, 30), random.choice((-6, 0, 6)), random.choice((-6, 0, 6)))
        for i in range(5)
    )

    def laid(order: tuple[Part, ...]) -> int:
        total = sum(p.length for p in order) + len(order) - 1
        for a, b in pairwise(order):
            if a.right_lean * b.left_lean > 0:
                total -= min(abs(a.right_lean), abs(b.left_lean))
        return total

    shortest = min(laid(order) for order in permutations(parts))
    for stick, cost in ((shortest, 1), (shortest - 1, 2)):
        problem = Problem("base", parts, (Blank("stick", stick, 1),), kerf=1)
        assert (planned(problem).cost, planned(problem).status) == (cost, Status.PROVEN)


@pytest.mark.parametrize("sticks", [4, 12, 25, 40])
def test_triplets_are_proven_at_their_known_optimum(sticks: int) -> None:
    plan = planned(triplets(sticks, seed=sticks))
    assert (plan.cost, plan.status) == (sticks, Status.PROVEN)


def test_a_house_is_proven() -> None:
    plan = planned(house(120, seed=3))
    assert plan.status is Status.PROVEN
    assert plan.plain is not None
    assert plan.cost <= plan.plain.cost


def test_a_length_finer_than_any_tape_takes_no_giant_tables() -> None:
    """A unit of a ten-millionth of an inch: the quick plan with its gap, and no solver."""
    inch = 10_000_000
    parts = tuple(Part(f"p{n}", n * inch + 1) for n in (29, 61, 67, 73, 74, 96))
    problem = Problem("base", parts, (Blank("12 ft", 144 * inch, 1740),), kerf=inch // 8)
    plan = plan_stock(problem)
    assert isinstance(plan, Plan)
    assert not faults(plan)
    assert plan.bound <= plan.cost
    assert len(problem.parts) * 144 * inch > planner.CELLS
    scarce = replace(problem, blanks=(Blank("12 ft", 144 * inch, 1740, limit=2),))
    answer = plan_stock(scarce)
    assert isinstance(answer, NoPlan)
    assert answer.short_of_supply
    assert not answer.sure  # nothing longer than the quick search looked for a way


def test_quick_claims_no_proof_that_it_does_not_have() -> None:
    plan = planned(house(60, seed=5), QUICK)
    assert plan.status in (Status.UNPROVEN, Status.PROVEN)
    assert plan.bound <= planned(house(60, seed=5)).cost <= plan.cost


def test_no_plan_looks_at_the_clock_on_the_wall(monkeypatch: pytest.MonkeyPatch) -> None:
    # what else the machine does meanwhile must not change where a search ends
    before = planned(house(120, seed=3))

    def looked() -> float:
        raise AssertionError("the clock on the wall was looked at")

    for clock in ("time", "monotonic", "perf_counter"):
        monkeypatch.setattr(time, clock, looked)
        monkeypatch.setattr(planner, clock, looked, raising=False)
    assert planned(house(120, seed=3)) == before


def test_waste_by_kind_adds_up_to_the_sticks() -> None:
    problem = house(40, seed=1)
    plan = planned(problem)
    lengths = {blank.key: blank.length for blank in problem.blanks}
    waste = plan.waste
    lost = waste.kerf + waste.ends + waste.offcut + waste.scrap
    assert lost + sum(p.length for p in problem.parts) == sum(
        lengths[stick.blank] for stick in plan.sticks
    )


@pytest.mark.parametrize("first", [0, *at_night(range(50, 300, 50))])
def test_fifty_small_priced_jobs_agree_with_an_outside_solver(first: int) -> None:
    for seed in range(first, first + 50):
        problem = small_priced(seed)
        answer = plan_stock(problem)
        expected = least_cost(problem)
        if expected is None:
            assert isinstance(answer, NoPlan), seed
            continue
        assert isinstance(answer, Plan), seed
        assert faults(answer) == (), seed
        assert (answer.cost, answer.status) == (expected, Status.PROVEN), seed


@st.composite
def problems(draw: st.DrawFn) -> Problem:
    lean = st.sampled_from((-3, 0, 0, 3))
    shapes = draw(st.lists(st.tuples(st.integers(6, 60), lean, lean), min_size=1, max_size=12))
    parts = tuple(Part(f"p{i}", *shape) for i, shape in enumerate(shapes))
    blanks = [Blank("a", draw(st.integers(64, 100)), draw(st.integers(1, 30)))]
    for key in draw(st.lists(st.sampled_from("bcd"), unique=True)):
        length, price = draw(st.integers(20, 120)), draw(st.integers(0, 40))
        pack, limit = draw(st.integers(1, 3)), draw(st.none() | st.integers(0, 6))
        blanks.append(Blank(key, length, price, pack, limit))
    kerf, ends = draw(st.integers(0, 2)), draw(st.integers(0, 1))
    return Problem("base", parts, tuple(blanks), kerf, ends, draw(st.sampled_from((0, 0, 90))))


@settings(deadline=None, max_examples=examples(30))
@given(problems(), st.randoms(use_true_random=False))
def test_laws(problem: Problem, random: Random) -> None:
    """No piece lost, no stick overfilled, order of no account, twice the same."""
    plan = planned(problem)
    assert plan_stock(problem) == plan
    shuffled = replace(
        problem,
        parts=tuple(random.sample(problem.parts, len(problem.parts))),
        blanks=tuple(random.sample(problem.blanks, len(problem.blanks))),
    )
    other = planned(shuffled)
    assert (other.sticks, other.purchases, other.cost) == (plan.sticks, plan.purchases, plan.cost)


@settings(deadline=None, max_examples=examples(20))
@given(problems(), st.integers(1, 20))
def test_a_cheaper_blank_never_makes_a_proven_plan_dearer(problem: Problem, price: int) -> None:
    plan = planned(problem)
    more = replace(problem, blanks=(*problem.blanks, Blank("new", 80, price)))
    other = planned(more)
    if other.status is Status.PROVEN:
        assert other.cost <= plan.cost
    assert other.bound <= plan.cost


@pytest.mark.parametrize(
    "broken",
    [
        replace(plain([10], 100), kerf=-1),
        plain([0], 100),
        plain([10], 0),
        replace(plain([10], 100), parts=(Part("p", 10), Part("p", 20))),
        replace(plain([], 100), parts=(Part("p", 15, 8, -8),)),
    ],
)
def test_a_problem_that_breaks_its_own_rules_is_refused(broken: Problem) -> None:
    with pytest.raises(ValueError, match=r"\w"):
        plan_stock(broken)
