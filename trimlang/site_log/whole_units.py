"""One trim's measures in the planner's whole numbers, and what lies on its sticks."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction

from trimlang.joinery.piece import Piece
from trimlang.planning.ask import Question, ask
from trimlang.planning.marks import Parting
from trimlang.record import record
from trimlang.site_log.rack import SPOILED
from trimlang.stock.problem import Part, Status
from trimlang.survey.job import Job, Offer, Rest, Trim
from trimlang.survey.log_entries import BoughtSticks, Counted, CutPiece, Entry, Shortened, Spoiled


@record
class PlannedStick:
    """A stick of the plan in force and the pieces still to be cut from it, in their order.

    ``origin`` is ``hand`` (bought), ``shop`` (an offcut) or ``order`` (to be bought);
    ``price`` is what one such stick costs.
    """

    name: str
    length: Fraction
    origin: str
    price: Fraction
    todo: tuple[str, ...]

    def without(self, piece: str) -> PlannedStick:
        """Return the stick without a piece."""
        return replace(self, todo=tuple(name for name in self.todo if name != piece))


@record
class PlanInForce:
    """The plan in force of one trim: its sticks, and what is still to be bought for it.

    ``cost`` and ``bound`` of the rest of the order are in the smallest coin, ``spare``
    (whole sticks besides) in steps of the tape.  ``unplaced`` are pieces for which
    there is no stick.
    """

    sticks: tuple[PlannedStick, ...]
    order: tuple[tuple[Offer, int], ...] = ()
    cost: int = 0
    bound: int = 0
    status: Status = Status.UNPROVEN
    spare: int = 0
    survives_loss: bool = False
    unplaced: tuple[str, ...] = ()


@record
class ScaledTrim:
    """What measures a trim's sticks, in steps of the job's tape."""

    trim: Trim
    question: Question
    parts: dict[str, Part]
    unit: str = "in"

    @property
    def kerf(self) -> int:
        """What a cut takes along the stick."""
        return self.question.problem.kerf

    def units(self, inches: Fraction) -> int:
        """Return what a stick of a length offers."""
        return self.question.room_in(inches)

    def inches(self, units: int) -> Fraction:
        """Return a length in inches."""
        return self.question.inches(units)

    def between(self, length: Fraction) -> int:
        """Return what a stick gives between its squared-off ends."""
        return self.units(length) - 2 * self.question.problem.end_waste

    def reach(self, parts: Sequence[Part]) -> int:
        """Return from the first part's left end to the last one's right end."""
        return self.starts(parts)[-1] + parts[-1].length if parts else 0

    def parting(self, before: Part, after: Part) -> Parting:
        """Return what lies between two parts; one that was spoiled was cut all the same."""
        one, other = (part.id.removeprefix(SPOILED) for part in (before, after))
        return self.question.parting(one, other)

    def starts(self, parts: Sequence[Part]) -> list[int]:
        """Return where each part begins, from the first one's left end."""
        starts: list[int] = []
        at, before = 0, None
        for part in parts:
            if before is not None:
                at += before.length + self.parting(before, part).apart
            starts.append(at)
            before = part
        return starts

    def rest(self, length: Fraction, parts: Sequence[Part]) -> int:
        """Return what is left to cut from behind ``parts``, no mitre shared."""
        used = self.reach(parts)
        return max(self.between(length) - used - (self.kerf if used else 0), 0)


def scaled_trim(job: Job, trim: Trim, pieces: Iterable[Piece], log: Iterable[Entry]) -> ScaledTrim:
    """Return the measure of one trim's pieces and of its part of the log."""
    lengths = [one for entry in log for one in _lengths(entry)]
    pieces = tuple(pieces)
    # rests that are on no rack: they only make the unit fine enough
    measured = replace(
        trim,
        offers=(*trim.offers, *trim.logged),
        rests=(*trim.rests, *(Rest(one, 1, Fraction(0), trim.span) for one in lengths)),
    )
    question = ask(job, measured, pieces)
    return ScaledTrim(
        trim, question, {part.id: part for part in question.problem.parts}, job.settings.unit
    )


def _lengths(entry: Entry) -> list[Fraction]:
    if isinstance(entry, BoughtSticks):
        return [entry.length]
    if isinstance(entry, Counted):
        return [length for length, _ in entry.sticks]
    if isinstance(entry, Shortened):
        return [entry.length]
    if isinstance(entry, CutPiece | Spoiled):
        told = [entry.length, entry.source.length if entry.source else None]
        rests = entry.rests if isinstance(entry, Spoiled) else ()
        return [*rests, *(one for one in told if one is not None)]
    return []
