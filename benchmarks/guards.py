"""Questions that once took far longer than their limit: python -m benchmarks.guards --limit 10

Many rests, many offers, many lengths with spare sticks, a spare far longer than the job.
"""

from __future__ import annotations

import argparse
from collections.abc import Callable
from dataclasses import replace
from random import Random
from time import process_time

from benchmarks.generated import FOOT, block, house
from trimlang.stock.checking.proof_check import doubts
from trimlang.stock.checking.verify import faults
from trimlang.stock.planner import Effort, plan_stock
from trimlang.stock.problem import Blank, Part, Plan, Problem


def rests(count: int, pieces: int, *, priced: bool = False) -> Problem:
    """Return a job cut from rests alone, each of another length, free or at a price."""
    random = Random(5)
    blanks = tuple(
        Blank(f"r{i}", length, length // 20 + 7 if priced else 0, 1, 1, True)
        for i, length in enumerate(random.sample(range(400, 3500), count))
    )
    parts = tuple(Part(f"p{i}", random.randint(160, 2600)) for i in range(pieces))
    return Problem("rests", parts, blanks, kerf=2)


def offers(count: int, pieces: int) -> Problem:
    """Return a job with so many lengths of stick at a price, and a tenth of it again to spare."""
    random = Random(6)
    job = house(pieces, 6)
    blanks = tuple(
        Blank(f"b{i}", length, length * random.randint(34, 42) // 100)
        for i, length in enumerate(random.sample(range(6 * FOOT, 20 * FOOT, 2), count))
    )
    return with_spare(replace(job, blanks=blanks))


def with_spare(problem: Problem, percent: int = 10) -> Problem:
    """Return the problem with so much of its pieces' length to spare."""
    return replace(problem, spare=sum(part.length for part in problem.parts) * percent // 100)


CASES: dict[str, tuple[Callable[[], Problem], bool]] = {
    "300 free rests, 150 pieces": (lambda: rests(300, 150), True),
    "3,000 free rests, 400 pieces": (lambda: rests(3000, 400), True),
    "300 rests at a price, 150 pieces": (lambda: rests(300, 150, priced=True), True),
    "40 offers, 300 pieces, quick": (lambda: offers(40, 300), False),
    "40 offers, 300 pieces": (lambda: offers(40, 300), True),
    "20,000 pieces of 60 lengths, a tenth to spare": (
        lambda: with_spare(block(20_000, 60, 7)),
        True,
    ),
    "20,000 pieces of 2,700 lengths, a tenth to spare": (
        lambda: with_spare(block(20_000, 2700, 7)),
        True,
    ),
    "20,000 pieces of a house's lengths, a tenth to spare": (
        lambda: with_spare(house(20_000, 7)),
        True,
    ),
    "a spare of a hundred times the job": (lambda: with_spare(house(60, 7), 10_000), True),
    "a spare of ten thousand times the job": (lambda: with_spare(house(60, 7), 1_000_000), True),
}
"""Each with whether a proof is asked for."""


def main() -> None:
    """Print a line for each question."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--limit", type=float, default=10.0)
    parser.add_argument("--only", default="", help="only cases with this in their name")
    choices = parser.parse_args()
    for name, (made, prove) in CASES.items():
        if choices.only not in name:
            continue
        problem = made()
        start = process_time()
        plan = plan_stock(problem, effort=Effort(prove, choices.limit))
        planned = process_time() - start
        assert isinstance(plan, Plan)
        start = process_time()
        wrong = [*faults(plan), *doubts(plan)]
        print(
            f"{name}: {planned:.2f} s and {process_time() - start:.2f} s for the checks,"
            f" {plan.status}, gap {plan.gap / max(plan.cost, 1):.3%}, {len(plan.sticks)} sticks"
            f" (at least {plan.stick_bound}){'; ' + wrong[0] if wrong else ''}",
            flush=True,
        )


if __name__ == "__main__":
    main()
