"""Places for the joints of long walls from a linear program in which their lengths are free."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from math import ceil, floor

from trimlang.joinery.pieces import Places
from trimlang.joinery.splice_lengths import least_piece
from trimlang.joinery.spliced_pieces import Splice
from trimlang.lengths.tape import steps_down
from trimlang.planning.ask import Question
from trimlang.record import record
from trimlang.stock.joint_model import FreeStick, LongWall, divided
from trimlang.stock.problem import Plan
from trimlang.stock.timber import Timber, timber_of


@record
class _Drawn:
    """A run that may be divided anew, and the wall that the program knows it as."""

    splice: Splice
    wall: LongWall
    ids: tuple[str, ...]


def drawn_joints(
    question: Question, free: Sequence[Splice], plan: Plan, seconds: Callable[[], float]
) -> Places:
    """Return places proposed for the joints of ``free``; empty: none.

    ``plan`` is one of ``question``, in which the runs are cut in any way.
    """
    drawn = list(_drawn(question, free))
    own = {part for one in drawn for part in one.ids}
    timber = _without(timber_of(replace(question.problem, survive_loss=False)), own)
    if not drawn or not timber.kinds:
        return {}
    walls = [one.wall for one in drawn]
    lengths = divided(timber, walls, _at_hand(timber, drawn, plan), seconds)
    places: dict[str, tuple[Fraction, ...]] = {}
    for one, parts in zip(drawn, lengths or [], strict=lengths is not None):
        cut = _cut(one.splice, [length * question.step for length in parts])
        if cut is not None:
            places[one.splice.whole.id] = cut
    return places


def _without(timber: Timber, own: set[str]) -> Timber:
    """The timber without these pieces, with all that can be bought for them."""
    sizes = (
        replace(size, ids=tuple(part for part in size.ids if part not in own))
        for size in timber.sizes
    )
    return replace(timber, sizes=tuple(size for size in sizes if size.ids))


def _drawn(question: Question, free: Sequence[Splice]) -> Iterator[_Drawn]:
    problem, step = question.problem, question.step
    known = {part.id for part in problem.parts}
    for splice in free:
        settings = splice.wall.room.settings
        marks = settings.rounding_step / step
        ids = tuple(piece.id for piece in splice.pieces())
        # a crown's number is along its wall edge and says less than the stick that it takes
        if (
            splice.whole.wall_edge is not None
            or marks.denominator != 1
            or not known.issuperset(ids)
        ):
            continue
        total = sum(splice.cut, Fraction(0))
        wall = LongWall(
            total=ceil(total / settings.rounding_step) * marks.numerator,
            pieces=len(splice.cut),
            least=ceil(least_piece(splice.lap, settings) / settings.rounding_step)
            * marks.numerator,
            most=floor(steps_down(splice.longest, settings.rounding_step) / step),
            step=marks.numerator,
        )
        yield _Drawn(splice, wall, ids)


def _at_hand(timber: Timber, drawn: Sequence[_Drawn], plan: Plan) -> list[FreeStick]:
    """The plan's sticks, and each with a wall's part drawn out over its offcut."""
    size_of = {part: number for number, size in enumerate(timber.sizes) for part in size.ids}
    wall_of = {part: number for number, one in enumerate(drawn) for part in one.ids}
    kind_of = {offer.key: k for k, kind in enumerate(timber.kinds) for offer in kind.offers}
    length_of = {part.id: part.length for part in plan.problem.parts}
    sticks: list[FreeStick] = []
    for stick in plan.sticks:
        if stick.blank not in kind_of:
            continue
        kind = kind_of[stick.blank]
        pattern = tuple(sorted(size_of[part] for part in stick.parts if part in size_of))
        parts = [(wall_of[part], length_of[part]) for part in stick.parts if part in wall_of]
        sticks.append(FreeStick(kind, pattern, tuple(sorted(parts))))
        left = timber.kinds[kind].room - sum(
            length_of[part] + timber.problem.kerf for part in stick.parts
        )
        for place, (number, length) in enumerate(parts):
            wall = drawn[number].wall
            longer = min(length + left, wall.most) // wall.step * wall.step
            if longer > length:
                others = (*parts[:place], *parts[place + 1 :])
                sticks.append(FreeStick(kind, pattern, tuple(sorted((*others, (number, longer))))))
    return sticks


def _cut(splice: Splice, lengths: Sequence[Fraction]) -> tuple[Fraction, ...] | None:
    """The lengths as a cut of the run, the last what the others leave; None: not within rules."""
    settings = splice.wall.room.settings
    step = settings.rounding_step
    total = sum(splice.cut, Fraction(0))
    if len(lengths) != len(splice.cut):
        return None
    *before, _ = sorted(lengths, reverse=True)
    cut = (*before, total - sum(before))
    sound = (
        min(cut) >= least_piece(splice.lap, settings)
        and max(before) <= steps_down(splice.longest, step)
        and cut[-1] <= splice.longest - step
        and all(steps_down(length, step) == length for length in before)
    )
    return cut if sound and cut != splice.cut else None


__all__ = ["drawn_joints"]
