"""The same problem on a coarser grid, where the tables of a fine one would be too large.

Inches and millimetres have only a very fine unit in common.  Rounded against
the plan (pieces up, sticks down) a coarse answer can be cut as it is; rounded in its favour (pieces
down, sticks up) a coarse bound is a bound of the fine problem too.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from trimlang.stock.problem import Blank, Part, Problem


def for_a_plan(problem: Problem, step: int) -> Problem:
    """Return the problem in whole steps of its unit, so that every plan of it can really be cut."""
    return _in_steps(problem, more=lambda n: -(-n // step), less=lambda n: n // step, room=min)


def for_a_bound(problem: Problem, step: int) -> Problem:
    """Return the problem in whole steps of its unit, so that its bound holds for every plan."""
    return _in_steps(problem, more=lambda n: n // step, less=lambda n: -(-n // step), room=max)


def _in_steps(
    problem: Problem,
    more: Callable[[int], int],
    less: Callable[[int], int],
    room: Callable[[int, int], int],
) -> Problem:
    """Return the problem with what a plan needs rounded by ``more`` and what it has by ``less``.

    Kerf and trimmed ends go into the pieces and the sticks.  A stick has one length for its
    room and for the spare: ``room`` takes the one of the two that errs to the same side.
    """
    kerf, ends = problem.kerf, 2 * problem.end_waste

    def part(fine: Part) -> Part:
        length = max(more(fine.length + kerf), 1)
        left, right = (_leaning(lean, less) for lean in (fine.left_lean, fine.right_lean))
        return Part(fine.id, length, left, right)

    def blank(fine: Blank) -> Blank:
        return replace(fine, length=max(less(room(fine.length, fine.length - ends + kerf)), 1))

    return replace(
        problem,
        parts=tuple(map(part, problem.parts)),
        blanks=tuple(map(blank, problem.blanks)),
        kerf=0,
        end_waste=0,
        spare=more(problem.spare),
        short=0,
        usable=0,
        # Room for a spoiled piece is asked for on the fine grid; here it would be rounded twice.
        survive_loss=False,
    )


def _leaning(lean: int, less: Callable[[int], int]) -> int:
    size = less(abs(lean))
    return size if lean > 0 else -size
