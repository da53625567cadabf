"""Chooses where long walls are pieced together, with the plan in view.

Wall by wall other cuts are weighed by the quick plan of the whole trim, and the
best is kept.  Work is counted in quick plans, so the choice is the same on
every machine.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction
from math import ceil
from typing import Final, TypeAlias

from trimlang.joinery.piece import Piece
from trimlang.joinery.pieces import Places
from trimlang.joinery.splice_choices import other_cuts
from trimlang.joinery.splice_lengths import least_piece
from trimlang.joinery.spliced_pieces import Splice
from trimlang.planning.ask import Asking, Question
from trimlang.settings.table import Settings
from trimlang.stock.anywhere import FreeRun, floor_anywhere
from trimlang.stock.planner import Effort, plan_stock, quick_plan
from trimlang.stock.problem import NoPlan
from trimlang.survey.job import Job, Trim

#: Quick plans made for one trim.
PLANS: Final = 30
#: Quick plans for one wall, however many there are.
LEAST_PLANS: Final = 4
#: Where longest first runs out of supply nothing more is searched.
_QUICK: Final = Effort(prove=False, seconds=0.0)

Rank: TypeAlias = tuple[int, int]


def with_places(pieces: Iterable[Piece], free: Sequence[Splice], places: Places) -> list[Piece]:
    """Return a trim's pieces with the spliced runs cut to other lengths."""
    cut = {
        piece.id: piece
        for splice in free
        if splice.whole.id in places
        for piece in splice.pieces(places[splice.whole.id])
    }
    return [cut.get(piece.id, piece) for piece in pieces]


def place_splices(asking: Asking, pieces: Sequence[Piece], free: Sequence[Splice]) -> Places:
    """Return where runs are better pieced together, none where the usual places will do.

    ``free`` are the trim's runs whose joints nothing fixes, cut in ``pieces`` in
    the usual way.  Where the supply runs out with the usual places, others with
    which it suffices are sought.
    """
    places: dict[str, tuple[Fraction, ...]] = {}
    best = _rank(asking, pieces)
    left = PLANS - 1
    each = max(left // max(len(free), 1), LEAST_PLANS)
    for splice in free:
        if left < 2:
            break
        own = {piece.id for piece in splice.pieces()}
        now = with_places(pieces, free, places)
        rest = asking.about(piece for piece in now if piece.id not in own)
        tries = other_cuts(splice, _wanted(asking.job, asking.trim, rest))[: min(each, left) - 1]
        left -= 1 + len(tries)
        for cut in tries:
            moved = with_places(now, (splice,), {splice.whole.id: cut})
            rank = _rank(asking, moved)
            if rank is not None and (best is None or rank < best):
                best, places = rank, {**places, splice.whole.id: cut}
    return places


def least_anywhere(question: Question, free: Sequence[Splice], cost: int) -> int:
    """Return what the trim costs at the least, wherever its free runs are pieced together.

    No more than ``cost``, in the smallest coin.  ``question`` has the runs cut in any one
    way: what the pieces of a run measure together, and how their ends lean, is the same
    in all, but for the rounding of each.
    """
    problem = question.problem
    parts = {part.id: part for part in problem.parts}
    runs: list[FreeRun] = []
    for splice in free:
        settings = splice.wall.room.settings
        step = _rounded_by(settings, question)
        own = [parts.pop(piece.id) for piece in splice.pieces()]
        ends = [abs(lean) for part in own for lean in (part.left_lean, part.right_lean)]
        runs.append(
            FreeRun(
                pieces=len(own),
                total=sum(part.length for part in own) - len(own) * step,
                least=question.room_in(least_piece(splice.lap, settings)) - step,
                lean=max(ends),
                leans=sum(ends),
            )
        )
    # what is spare goes by the length of the pieces, and so by their rounding
    spare = problem.spare - sum(
        run.pieces * _rounded_by(splice.wall.room.settings, question)
        for run, splice in zip(runs, free, strict=True)
    )
    fixed = replace(problem, parts=tuple(parts.values()), spare=max(spare, 0))
    return floor_anywhere(fixed, runs, cost)


def _rounded_by(settings: Settings, question: Question) -> int:
    """Return how many units a piece's length may change by, from one place of a joint to another.

    It is rounded to the room's step, and to the tape's where that is another.
    """
    steps = settings.rounding_step / question.step
    return ceil(steps) + (steps.denominator != 1)


def _rank(asking: Asking, pieces: Sequence[Piece]) -> Rank | None:
    """Return what the quick plan costs, and its sticks; None where the supply runs out."""
    packing = quick_plan(asking.about(pieces).problem)
    return None if packing is None else packing.rank


def _wanted(job: Job, trim: Trim, rest: Question) -> list[Fraction]:
    """Return lengths that would leave no waste: offcuts, rests in the shop, sticks and halves.

    ``rest`` asks for all that is not this wall.
    """
    settings = job.settings
    squared = 2 * settings.squares_off
    wanted: list[Fraction] = []
    plan = plan_stock(rest.problem, effort=_QUICK)
    if not isinstance(plan, NoPlan):
        offcuts = sorted(plan.offcuts, reverse=True)
        wanted += [rest.inches(length) for length in offcuts]
    shop = sorted((one.length - squared for one in trim.rests), reverse=True)
    sticks = sorted((offer.length - squared for offer in trim.offers), reverse=True)
    halves = [(length - settings.kerf) / 2 for length in sticks]
    return list(dict.fromkeys([*shop, *wanted[:8], *sticks, *halves]))
