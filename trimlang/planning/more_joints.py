"""Joints that no wall needs but that save more than their price (`splices: a joint costs`).

Every wall that may have one joint more is divided at once, as the long walls are
(``stock/long_walls/dividing.py``): in as many parts as it needs, or in one more, where the rack
costs so much less that the joints are paid for.  Where the studs are known, quick plans with a
joint on each of them are compared, wall by wall.  What is found is a proposal; it is planned and
verified like any other plan, and taken only where sticks and joints together cost less.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joinery.piece import Piece
from trimlang.joinery.pieces import Places
from trimlang.joinery.splice_lengths import least_piece
from trimlang.joinery.spliced_pieces import Splice
from trimlang.lengths.tape import steps_down, steps_nearest
from trimlang.planning.ask import Asking, Question
from trimlang.planning.placing import quick_cost, with_places
from trimlang.planning.wall_in_units import cut_in, long_wall
from trimlang.record import record
from trimlang.stock.certificate import FreeRun
from trimlang.stock.long_walls.dividing import Dividing
from trimlang.stock.long_walls.joint_bound import JointBound
from trimlang.stock.long_walls.wall_rooms import floor_by_length
from trimlang.stock.long_walls.wall_ways import LongWall
from trimlang.stock.problem import Problem

WALLS: Final = 30
"""So many walls may get a joint more, the longest of them: each is one more column to price."""

QUICK_PLANS: Final = 60
"""Quick plans made to compare joints on studs, at most, each with one."""

PAYING: Final = 20
"""Joints on studs that pay alone and are tried beside others, at most."""


@record
class _Joinable:
    """Walls that may have one part more, and the problem of everything else.

    ``kerf`` is what a cut takes where there is such a joint.
    """

    splices: tuple[Splice, ...]
    walls: tuple[LongWall, ...]
    runs: tuple[FreeRun, ...]
    fixed: Problem
    kerf: int


class MoreJoints:
    """Proposals for one trim; ``splices`` are its runs that have joints or could have one.

    ``price`` is that of a joint more than is needed, in the question's coins.
    """

    def __init__(
        self,
        asking: Asking,
        question: Question,
        splices: Sequence[Splice],
        price: int,
        seconds: Callable[[], float],
    ) -> None:
        self._step, self._seconds = question.step, seconds
        self._price = price
        every = _joinable(asking, question, splices)
        # What any plan costs at the least, by length alone, however many joints it has.
        self.least = floor_by_length(every.fixed, every.runs)
        self._on_studs = [one for one in every.splices if one.studs is not None]
        anywhere = [one for one in every.splices if one.studs is None]
        self._joinable = _joinable(asking, question, anywhere) if self._on_studs else every
        fixed, runs = self._joinable.fixed, self._joinable.runs
        # A scarf is steeper than what else is cut, and the blade takes more along the stick there.
        search = JointBound(replace(fixed, kerf=self._joinable.kerf), runs, seconds)
        self._dividing = Dividing(search, self._joinable.walls, seconds, price)

    def places(self, cost: int) -> Places:
        """Return places with which sticks and joints may cost less than that; empty: none found."""
        if not self._joinable.walls:
            return {}
        parts = self._dividing.cheaper(cost, self.least)
        return {} if parts is None else dict(self._cuts(parts))

    def refuse(self) -> None:
        """Propose other places than the last: with those it costs no less."""
        self._dividing.refuse()

    def on_studs(self, asking: Asking, pieces: Sequence[Piece]) -> Places:
        """Return joints on studs, at most one a wall, that pay by the quick plan; empty: none do.

        ``pieces`` are the trim's, these walls in one piece.
        """
        places: dict[str, tuple[Fraction, ...]] = {}
        if not self._on_studs or (least := quick_cost(asking, pieces)) is None:
            return places
        every = [(one, cut) for one in self._on_studs for cut in cuts_on_studs(one)]
        alone: list[tuple[int, int]] = []
        for number, (splice, cut) in enumerate(every[:QUICK_PLANS]):
            cost = self._quickly(asking, with_places(pieces, (splice,), {splice.whole.id: cut}))
            if cost is not None and cost + self._price < least:
                alone.append((cost, number))
        # What saves most by itself comes first; the others have to pay beside it.
        for _, number in sorted(alone)[:PAYING]:
            splice, cut = every[number]
            if splice.whole.id in places:
                continue
            found = {**places, splice.whole.id: cut}
            cost = self._quickly(asking, with_places(pieces, self._on_studs, found))
            if cost is not None and cost + self._price < least:
                places, least = found, cost
        return places

    def _quickly(self, asking: Asking, pieces: Sequence[Piece]) -> int | None:
        return quick_cost(asking, pieces) if self._seconds() > 0 else None

    def _cuts(self, parts: Sequence[Sequence[int]]) -> Iterator[tuple[str, tuple[Fraction, ...]]]:
        for splice, lengths in zip(self._joinable.splices, parts, strict=True):
            cut = cut_in(splice, [length * self._step for length in lengths])
            # A cut that comes out as it was saves nothing and is no proposal.
            if cut is not None and cut != splice.cut:
                yield splice.whole.id, cut


def joints_added(splices: Sequence[Splice], places: Places) -> int:
    """Return how many joints more than needed runs at these places have."""
    cuts = {splice.whole.id: len(splice.cut) for splice in splices}
    return sum(max(len(cut) - cuts.get(name, len(cut)), 0) for name, cut in places.items())


def cuts_on_studs(splice: Splice) -> Iterator[tuple[Fraction, Fraction]]:
    """Yield the ways to join a run of one piece on a stud, within the rules, from the right."""
    if splice.studs is None:
        return
    settings, lap = splice.wall.room.settings, splice.lap
    step, least = settings.rounding_step, least_piece(lap, settings)
    total = sum(splice.cut, lap)
    stud = splice.studs.at_or_before(total)
    while (first := steps_down(stud + lap / 2, step)) >= least:
        last = total - first
        if least <= last <= splice.longest - step and first <= steps_down(splice.longest, step):
            yield first, last
        stud -= splice.studs.spacing


def _joinable(asking: Asking, question: Question, splices: Sequence[Splice]) -> _Joinable:
    """Return the walls that one more joint is possible in, measured with it and without."""
    problem = question.problem
    parts, kerf = {part.id: part for part in problem.parts}, problem.kerf
    taken: list[Splice] = []
    walls: list[LongWall] = []
    runs: list[FreeRun] = []
    # The longest gain most by a joint; at one length the id decides, on every machine.
    longest_first = sorted(splices, key=lambda one: (-one.whole.length, one.whole.id))
    for splice in longest_first:
        if len(taken) == WALLS:
            break
        more = _alike(splice)
        own = [parts[name] for name in splice.names()]
        wall = long_wall(splice, own, question)
        # A joint has to fall on a mark of the tape, and no part may be too short.
        if more is None or wall is None:
            continue
        joined = asking.about(splice.pieces(more)).problem
        kerf = max(kerf, joined.kerf)
        # What one part more adds is its lap and the leans of its ends.
        lap = sum(part.length for part in joined.parts) - wall.total
        walls.append(replace(wall, lap=lap))
        # For the bound by length alone, which no joint more makes less: it adds its lap, and no
        # more is shared at it than its ends lean.
        lean = max(abs(n) for part in joined.parts for n in (part.left_lean, part.right_lean))
        runs.append(
            FreeRun(
                pieces=len(own),
                total=wall.total - max(lean - lap, 0),
                least=1,
                lean=lean,
                left=own[0].left_lean,
                right=own[-1].right_lean,
            )
        )
        taken.append(splice)
    gone = {name for splice in taken for name in splice.names()}
    others = tuple(part for part in problem.parts if part.id not in gone)
    # Walls in unlike steps cannot be divided by one table, so none gets a joint more.
    if len({wall.step for wall in walls}) > 1:
        taken, walls, runs, others = [], [], [], problem.parts
    # Room for the longest piece would bound too much: a joint more makes that one shorter.
    fixed = replace(problem, parts=others, survive_loss=False)
    return _Joinable(
        splices=tuple(taken), walls=tuple(walls), runs=tuple(runs), fixed=fixed, kerf=kerf
    )


def _alike(splice: Splice) -> tuple[Fraction, ...] | None:
    """Return the run in one part more, all alike; None: they would be too short."""
    settings = splice.wall.room.settings
    count = len(splice.cut) + 1
    total = sum(splice.cut, Fraction(0)) + splice.lap
    # Alike, since only whether there is room for one more is asked; places come later.
    each = steps_nearest(total / count, settings.rounding_step)
    cut = (*[each] * (count - 1), total - each * (count - 1))
    return cut if min(cut) >= least_piece(splice.lap, settings) else None


__all__ = ["MoreJoints", "cuts_on_studs", "joints_added"]
