"""Colour batches that the pieces of a room, or of a wall, may not mix."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import product
from random import Random

from tests.conftest import examples
from tests.jobs import BASE
from tests.planning.beside_trying import held
from tests.stock.every_plan import least_of_every_plan
from tests.stock.jobs import small_of_every_shape
from trimlang.compiler import check_job, compile_job
from trimlang.planning.sound_plan import sound_plan
from trimlang.sheets.render.pages import render_sheets
from trimlang.stock.checking.verify import faults
from trimlang.stock.problem import Blank, Part, Plan, Problem, Status


def in_batches(seed: int) -> Problem:
    """A small problem whose pieces are of two rooms or none; one batch is sold, one is on hand."""
    random = Random(seed)
    problem = small_of_every_shape(seed)
    own = Blank("own", random.randint(60, 120), random.choice((0, 0, 30)), 1, 2, True, batch="A")
    return replace(
        problem,
        parts=tuple(replace(one, group=random.choice(("x", "y", ""))) for one in problem.parts),
        blanks=(*problem.blanks, own),
        survive_loss=not problem.spare and random.random() < 0.4,
    )


def least_by_trying(problem: Problem) -> int | None:
    """Give each group each batch and plan each batch by trying every plan; spare from the yard.

    Room for a spoiled piece, without spare, is that of one more piece, in any batch.
    """
    parts = problem.parts
    if problem.survive_loss:
        parts = (*parts, Part("again", max(part.length for part in parts)))
    parts = tuple(replace(one, group=one.group or one.id) for one in parts)
    groups = sorted({one.group for one in parts})
    costs = []
    for given in product(("", "A"), repeat=len(groups)):
        batch_of = dict(zip(groups, given, strict=True))
        shares = [
            least_of_every_plan(
                replace(
                    problem,
                    parts=tuple(one for one in parts if batch_of[one.group] == batch),
                    survive_loss=False,
                    blanks=tuple(one for one in problem.blanks if one.batch == batch),
                    spare=0 if batch else problem.spare,
                )
            )
            for batch in ("", "A")
        ]
        if None not in shares:
            costs.append(sum(share[0] for share in shares if share))
    return min(costs, default=None)


def test_beside_trying_every_choice_of_batches() -> None:
    count = examples(60)
    found = held(map(in_batches, range(count)), least_by_trying)
    assert found.proven >= 0.9 * found.met > 0.8 * count
    assert not found.dearer


def job(stock: str, *, scope: str = "") -> str:
    return (
        f"{BASE}\n{stock}\n{scope}\nspare 0 %\n"
        'room "R", trim base, open walk\n'
        "  N: 90 in, left=butt, right=butt\n  E: 40 in, left=butt, right=butt\n"
        'room "S", trim base, open walk\n  N: 50 in, left=butt, right=butt\n'
    )


STOCK = 'stock base: 8 ft at 11.60\non-hand base: 8 ft batch "A"'


def planned(text: str) -> tuple[Fraction, Status]:
    result = compile_job(text)
    assert not result.diagnostics
    (plan,) = result.plans
    return plan.cost, plan.status


def test_a_room_is_cut_from_one_batch() -> None:
    # Mixed, 90 in would come from the shop and 40 and 50 in from one bought stick.
    assert planned(job(STOCK)) == (Fraction("23.20"), Status.PROVEN)
    by_wall = job(STOCK, scope="stock base: batch by wall")
    assert planned(by_wall) == (Fraction("11.60"), Status.PROVEN)
    two = STOCK.replace("8 ft batch", "2 of 8 ft batch")
    assert planned(job(two)) == (0, Status.PROVEN)


def test_the_verifier_finds_mixed_batches() -> None:
    parts = (Part("a", 50, group="x"), Part("b", 50, group="x"))
    blanks = (Blank("yard", 60, 10), Blank("shop", 60, 0, 1, 1, True, batch="A"))
    problem = Problem("base", parts, blanks)
    mixed = sound_plan(replace(problem, parts=tuple(replace(p, group="") for p in parts)))
    assert isinstance(mixed, Plan)
    assert faults(replace(mixed, problem=problem)) == ("the pieces of x are of 2 batches",)


def test_where_no_batch_has_enough_it_is_told() -> None:
    stock = 'on-hand base: 8 ft batch "A", 8 ft batch "B", 8 ft batch "B"'
    assert not compile_job(job(stock)).diagnostics
    short = 'on-hand base: 8 ft batch "A", 8 ft batch "B"'
    assert [one.code for one in compile_job(job(short)).diagnostics] == ["T502"]
    none = 'on-hand base: 8 ft batch "A", 12 in batch "B"'
    assert [one.code for one in compile_job(job(none)).diagnostics] == ["T501"]


def test_the_sheets_name_the_batch() -> None:
    text = job('stock base: 90 in at 11.60 batch "L7"\non-hand base: 8 ft batch "A"')
    assert not check_job(text).diagnostics
    pages = render_sheets(compile_job(text))
    assert "shop offcut, batch A" in pages["stick-layouts"].replace("\u00a0", " ")
    assert "7 ft 6 in, batch L7" in pages["stock-order"].replace("\u00a0", " ")
