"""Says in a yard's words what is lacking where the stock runs out."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from trimlang.joinery.piece import Piece
from trimlang.lengths.tape import feet_text
from trimlang.planning.ask import ask
from trimlang.record import record
from trimlang.survey.job import Job, Trim
from trimlang.survey.sticks import SAFE_TO_HOLD


@record
class Shortage:
    """The sticks there are, and the pieces that find no place on them, longest first (inches)."""

    sticks: tuple[tuple[int, Fraction], ...]
    need: Fraction
    left_over: tuple[Fraction, ...]

    @property
    def have(self) -> Fraction:
        """The length of all sticks together (inches)."""
        return sum((count * length for count, length in self.sticks), Fraction(0))


def shortage(job: Job, trim: Trim, pieces: Iterable[Piece]) -> Shortage:
    """Lay the pieces, longest first, on all the sticks there are, each with a kerf.

    In the planner's own whole numbers, so that what it could not place finds no place here.
    """
    question = ask(job, trim, pieces)
    problem, inches = question.problem, question.inches
    kerf, ends = problem.kerf, 2 * problem.end_waste
    wanted = sorted((part.length for part in problem.parts), reverse=True)
    # Only limited stock can run out, so every offer has a limit here.
    counted = [(one.at_most or 0, one.length) for one in trim.offers]
    # What is too short to hold is cut no more than it would be in a plan.
    held = [rest for rest in trim.rests if rest.length >= SAFE_TO_HOLD]
    counted += [(rest.count, rest.length) for rest in held]
    # The last piece of a stick needs no kerf behind it, so one kerf is added to the stick.
    room = sorted(
        question.room_in(length) - ends + kerf for count, length in counted for _ in range(count)
    )
    left_over: list[int] = []
    for length in wanted:
        at = next((at for at, free in enumerate(room) if free >= length + kerf), None)
        if at is None:
            left_over.append(length)
        else:
            room[at] -= length + kerf
            # Best fit: the stick with the least room that is enough is found first.
            room.sort()
    need = sum(wanted) + kerf * len(wanted)
    return Shortage(tuple(counted), inches(need), tuple(map(inches, left_over)))


def in_words(job: Job, trim: Trim, pieces: Iterable[Piece]) -> dict[str, str]:
    """Return the facts for T501: what is wanted, what there is, and what is lacking."""
    pieces = tuple(pieces)
    unit = job.settings.unit
    short = shortage(job, trim, pieces)
    listed = ", ".join(f"{count} of {feet_text(size, unit)}" for count, size in short.sticks)
    # Nothing left over, and still too little: then it is the spare that is lacking.
    lacking = "the pieces would fit, but the spare would not"
    if short.left_over:
        total = feet_text(sum(short.left_over, Fraction(0)), unit)
        longest = feet_text(max(short.left_over), unit)
        lacking = f"{_counted(len(short.left_over))} of {total}"
        lacking += f" together, the longest {longest}," if len(short.left_over) > 1 else ""
        lacking += " found no stick" if len(short.left_over) > 1 else " finds no stick"
    return {
        "pieces": _counted(len(pieces)),
        "take": "takes" if len(pieces) == 1 else "take",
        "trim": trim.name,
        "need": feet_text(short.need, unit),
        "have": feet_text(short.have, unit),
        "sticks": listed or "nothing that can be held",
        "lacking": lacking,
    }


def _counted(count: int) -> str:
    return "1 piece" if count == 1 else f"{count} pieces"
