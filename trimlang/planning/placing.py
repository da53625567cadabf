"""Chooses where long walls are spliced, with the stock plan in view.

Wall by wall, other places are judged by the quick plan of the whole trim, and the best is kept.
Work is counted in quick plans and what they lay, not in seconds, so the choice is the same on
every machine.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final, TypeAlias

from trimlang.joinery.piece import Piece
from trimlang.joinery.pieces import Places
from trimlang.joinery.splice_choices import other_cuts
from trimlang.joinery.spliced_pieces import Splice
from trimlang.planning.ask import Asking, Question
from trimlang.stock.planner import Effort, quick_offcuts, quick_plan
from trimlang.survey.job import Job, Trim

PLANS: Final = 30
"""Quick plans made for one trim, at most."""
LAID: Final = 150_000
"""Pieces times lengths of stick that these plans lay, at most; a job of many of both gets fewer."""
LEAST_PLANS: Final = 4
"""Quick plans made for one wall, at least, however many walls there are."""
AT_ONCE: Final = Effort(prove=False, seconds=0.0)
"""No proof and no time: where longest first runs out of stock, nothing more is tried."""

Rank: TypeAlias = tuple[int, int]


def with_places(pieces: Iterable[Piece], free: Sequence[Splice], places: Places) -> list[Piece]:
    """Return a trim's pieces with the spliced runs at ``places`` cut to those lengths."""
    cut: dict[str, list[Piece]] = {}
    for splice in free:
        if splice.whole.id in places:
            # At its first piece all of a run are put, as there may be more of them than were.
            first, *others = splice.names()
            cut |= {name: [] for name in others}
            cut[first] = splice.pieces(places[splice.whole.id])
    return [one for piece in pieces for one in cut.get(piece.id, (piece,))]


def place_splices(
    asking: Asking,
    pieces: Sequence[Piece],
    free: Sequence[Splice],
    seconds: Callable[[], float],
) -> Places:
    """Return better places to splice runs at; empty where the usual places are as good.

    ``free`` are the trim's spliced runs whose joints may be moved; ``pieces`` has them cut in
    the usual places.  Where the stock runs out with those, places with which it is enough are
    looked for.  ``seconds`` returns what is left of the time, an outer limit.
    """
    places: dict[str, tuple[Fraction, ...]] = {}
    # The usual places are what everything else has to beat.
    best = _rank(asking, pieces)
    laid = max(len(pieces) * len(asking.trim.offers), 1)
    left = min(PLANS, max(LAID // laid, LEAST_PLANS)) - 1
    # Shared among the walls, so that the first ones do not use up all tries.
    each = max(left // max(len(free), 1), LEAST_PLANS)
    for splice in free:
        # One quick plan for the rest, and at least one to try another place.
        if left < 2 or seconds() <= 0:
            break
        own = set(splice.names())
        now = with_places(pieces, free, places)
        # What the other pieces leave over is what this wall's pieces should use up.
        rest = asking.about(piece for piece in now if piece.id not in own)
        tries = other_cuts(splice, _wanted(asking.job, asking.trim, rest))[: min(each, left) - 1]
        left -= 1 + len(tries)
        for cut in tries:
            if seconds() <= 0:
                break
            moved = with_places(now, (splice,), {splice.whole.id: cut})
            rank = _rank(asking, moved)
            # Where the stock runs out in the usual places, the first places that are enough are
            # better than none.
            if rank is not None and (best is None or rank < best):
                best, places = rank, {**places, splice.whole.id: cut}
    return places


def _rank(asking: Asking, pieces: Sequence[Piece]) -> Rank | None:
    """Return the quick plan's cost and number of sticks, None where the stock runs out."""
    packing = quick_plan(asking.about(pieces).problem)
    return None if packing is None else packing.rank


def quick_cost(asking: Asking, pieces: Sequence[Piece]) -> int | None:
    """Return what the quick plan costs in its smallest coin, None where the stock runs out."""
    rank = _rank(asking, pieces)
    return None if rank is None else rank[0]


def _wanted(job: Job, trim: Trim, rest: Question) -> list[Fraction]:
    """Return lengths that would leave no waste: shop offcuts, plan offcuts, sticks, half sticks.

    ``rest`` is the problem of all pieces but this wall's.  Lengths in inches.
    """
    settings = job.settings
    squared = 2 * settings.squares_off
    wanted: list[Fraction] = []
    # What spare is bought beside does not change how the pieces lie.
    wanted += [rest.inches(left) for left in quick_offcuts(replace(rest.problem, spare=0))]
    shop = sorted((one.length - squared for one in trim.rests), reverse=True)
    sticks = sorted((offer.length - squared for offer in trim.offers), reverse=True)
    # Two pieces of half a stick each leave nothing of it.
    halves = [(length - settings.kerf) / 2 for length in sticks]
    return list(dict.fromkeys([*shop, *wanted[:8], *sticks, *halves]))
