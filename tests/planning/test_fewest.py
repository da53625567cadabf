"""The choice of fewest sticks against trying every choice."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import product
from random import Random

from tests.conftest import EXAMPLES
from trimlang.compiler import check_job
from trimlang.diagnostics import Span
from trimlang.planning.ask import Question, ask
from trimlang.planning.fewest import MOST_PIECES, fewest_sticks
from trimlang.stock.planner import plan_stock
from trimlang.stock.problem import Blank, NoPlan, Part, Problem
from trimlang.survey.job import Offer


def _question(problem: Problem) -> Question:
    offers = {
        blank.key: Offer(
            length=Fraction(blank.length),
            price=Fraction(blank.price),
            pack=blank.pack,
            at_most=blank.limit,
            span=Span("", 1, 1, 1),
        )
        for blank in problem.blanks
    }
    return Question(
        problem=problem,
        step=Fraction(1),
        per_coin=1,
        sources=dict(offers),
        ends={},
        kerf=Fraction(problem.kerf),
    )


def test_one_long_stick_instead_of_two_short_ones() -> None:
    blanks = (Blank("short", 10, 5), Blank("long", 20, 17))
    problem = Problem("t", (Part("a", 9), Part("b", 9)), blanks)
    found = fewest_sticks(_question(problem))
    assert found is not None
    assert (found.sticks, found.cost, found.least) == (1, 17, 1)
    assert [(line.length, line.packs) for line in found.lines] == [(20, 1)]


def test_rests_are_not_counted_and_packs_count_whole() -> None:
    blanks = (
        Blank("rest", 10, 0, limit=1, on_hand=True),
        Blank("single", 10, 6),
        Blank("pack", 10, 7, pack=3),
    )
    problem = Problem("t", (Part("a", 9), Part("b", 9)), blanks)
    found = fewest_sticks(_question(problem))
    assert found is not None
    assert (found.sticks, found.cost) == (1, 6)


def test_the_bound_is_true() -> None:
    for seed in range(40):
        random = Random(seed)
        parts = tuple(Part(f"p{n}", random.randint(2, 12)) for n in range(random.randint(1, 5)))
        blanks = (Blank("a", 12, random.randint(3, 9)), Blank("b", 20, random.randint(6, 30)))
        problem = Problem("t", parts, blanks, kerf=random.choice((0, 1)))
        if any(part.length + problem.kerf > 20 for part in parts):
            continue
        found = fewest_sticks(_question(problem))
        assert found is not None
        # fewest by force: sticks limited to each choice of numbers, smallest first
        limits = sorted(product(range(len(parts) + 1), repeat=2), key=sum)
        true = next(
            sum(limit)
            for limit in limits
            if any(limit)
            and not isinstance(
                plan_stock(
                    replace(
                        problem,
                        blanks=tuple(
                            replace(blank, limit=most)
                            for blank, most in zip(blanks, limit, strict=True)
                            if most
                        ),
                    )
                ),
                NoPlan,
            )
        )
        assert found.least <= true <= found.sticks


def test_the_lines_are_what_it_costs() -> None:
    house = EXAMPLES / "house.trim"
    result = check_job(house.read_text(encoding="utf-8"), path=house)
    for trim in result.job.trims:
        question = ask(result.job, trim, [one for one in result.pieces if one.trim == trim.name])
        found = fewest_sticks(question)
        assert found is not None
        assert sum(line.pack * line.packs for line in found.lines) == found.sticks
        prices = {
            (offer.length, offer.pack): offer.price
            for offer in question.sources.values()
            if isinstance(offer, Offer)
        }
        # the shop's rests cost nothing in this job
        assert found.cost == sum(
            prices[line.length, line.pack] * line.packs for line in found.lines
        )


def test_a_large_job_is_not_looked_at() -> None:
    parts = tuple(Part(f"p{n}", 1) for n in range(MOST_PIECES + 1))
    assert fewest_sticks(_question(Problem("t", parts, (Blank("a", 9, 1),)))) is None
