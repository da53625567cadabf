"""One trim's lengths in the planner's whole numbers, and how parts lie on its sticks."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction

from trimlang.joinery.piece import Piece
from trimlang.lengths.tape import Unit
from trimlang.planning.ask import Question, ask
from trimlang.planning.marks import Parting
from trimlang.record import record
from trimlang.site_log.rack import SPOILED, Origin, WholeStick
from trimlang.stock.problem import Part, Status
from trimlang.survey.job import Job, Offer, Trim


@record
class PlannedStick:
    """A stick of the plan in force and the pieces still to be cut from it, in cutting order.

    ``price`` is what one such stick costs, ``length`` is in inches.
    """

    name: str
    length: Fraction
    origin: Origin
    price: Fraction
    todo: tuple[str, ...]

    def without(self, piece: str) -> PlannedStick:
        """Return the stick with this piece no longer to cut."""
        return replace(self, todo=tuple(name for name in self.todo if name != piece))


@record
class PlanInForce:
    """The plan in force of one trim: its sticks, and what is still to be bought for it.

    ``cost`` and ``bound`` of the rest of the order are in the smallest coin.  ``spare`` (whole
    sticks to have besides) is in steps of the tape.  ``aside`` are offcuts of the shop, and how
    many of each, that stay whole as that spare.  ``unplaced`` are pieces that there is no stick
    for.
    """

    sticks: tuple[PlannedStick, ...]
    order: tuple[tuple[Offer, int], ...] = ()
    aside: tuple[tuple[WholeStick, int], ...] = ()
    cost: int = 0
    bound: int = 0
    status: Status = Status.UNPROVEN
    spare: int = 0
    survives_loss: bool = False
    unplaced: tuple[str, ...] = ()


@record
class ScaledTrim:
    """A trim's measures in the planner's unit: steps of the job's tape."""

    trim: Trim
    question: Question
    parts: dict[str, Part]
    unit: Unit = Unit.INCH

    @property
    def kerf(self) -> int:
        """What a cut takes from the stick (units)."""
        return self.question.problem.kerf

    def units(self, inches: Fraction) -> int:
        """Return how many whole units a stick of a length gives."""
        return self.question.room_in(inches)

    def inches(self, units: int) -> Fraction:
        """Return units as inches."""
        return self.question.inches(units)

    def between(self, length: Fraction) -> int:
        """Return what a stick gives between its squared-off ends (units)."""
        return self.units(length) - 2 * self.question.problem.end_waste

    def reach(self, parts: Sequence[Part]) -> int:
        """Return the units from the first part's left end to the last part's right end."""
        return self.starts(parts)[-1] + parts[-1].length if parts else 0

    def parting(self, before: Part, after: Part) -> Parting:
        """Return what lies between two neighbours; a spoiled part was cut like any other."""
        one, other = (part.id.removeprefix(SPOILED) for part in (before, after))
        return self.question.parting(one, other)

    def steepest_more(self, before: Part, after: Part) -> int:
        """Return by how much the kerf of a plan, its steepest, takes more between neighbours."""
        leans = before.right_lean, after.left_lean
        nested = min(map(abs, leans)) if leans[0] * leans[1] > 0 else 0
        return max(self.kerf - nested - self.parting(before, after).apart, 0)

    def starts(self, parts: Sequence[Part]) -> list[int]:
        """Return where each part begins, in units from the first one's left end."""
        starts: list[int] = []
        at, before = 0, None
        for part in parts:
            if before is not None:
                at += before.length + self.parting(before, part).apart
            starts.append(at)
            before = part
        return starts

    def rest(self, length: Fraction, parts: Sequence[Part]) -> int:
        """Return the units left behind ``parts``, as if the next part shared no mitre."""
        # The cut that frees the last part takes its kerf, unless nothing was cut yet.
        used = self.reach(parts)
        return max(self.between(length) - used - (self.kerf if used else 0), 0)


def scaled_trim(job: Job, trim: Trim, pieces: Iterable[Piece]) -> ScaledTrim:
    """Return the unit and parts that measure one trim's pieces and what its log tells."""
    # What the log bought at a price of its own is counted in the same coins.
    measured = replace(trim, offers=(*trim.offers, *trim.logged))
    question = ask(job, measured, tuple(pieces))
    return ScaledTrim(
        trim, question, {part.id: part for part in question.problem.parts}, job.settings.unit
    )
