"""What the check of a room's survey comes to, and how it is said in one line."""

from __future__ import annotations

from enum import StrEnum
from fractions import Fraction

from trimlang.lengths.tape import Unit, feet_text, steps_nearest, steps_up
from trimlang.record import record
from trimlang.survey.adjusting import Residual
from trimlang.survey.job import Room
from trimlang.survey.possible_slip import Slip


class Verdict(StrEnum):
    """What the check says of a room's survey."""

    CLOSES = "closes"
    GAPES = "does not close"
    CLASHES = "the diagonals contradict the walls"
    CROOKED = "walls and diagonals agree only if the corners are not square"
    TURNS_WRONG = "the corners do not go round"
    NOT_CHECKED = "not checked"


class Unchecked(StrEnum):
    """Why a room was not checked."""

    OPEN_WALK = "an open walk"
    TOO_FEW = "fewer than three walls and openings enclose no room"
    NOT_READ = "a wall or an opening could not be read"
    DISPUTED = "two sides of a corner contradict each other"
    UNSAID = "the corners that are written do not go once round, and others may not be written"


@record
class Closing:
    """How far a room is from closing, and how small a mistake its survey could show.

    ``gap`` is how far the walk's end is from its start (inches), in the direction that ``where``
    says in words; None where the corners do not go once round.  ``tolerance`` is the least gap
    in that direction that the survey's doubts cannot explain, or what the file allows where
    ``allowed_by_file``.  ``slips`` are the mistakes that would explain a room that does not
    close, the likeliest first; ``settles`` names one measurement that would tell more.
    ``residuals`` say how much each measurement would have to change for all to agree, where
    diagonals were measured or the room does not close.  ``why`` is the reason where the room was
    not checked, None elsewhere.
    """

    room: str
    verdict: Verdict
    unit: Unit
    step: Fraction
    gap: Fraction | None = None
    where: str = ""
    tolerance: Fraction = Fraction(0)
    allowed_by_file: bool = False
    slips: tuple[Slip, ...] = ()
    settles: str = ""
    residuals: tuple[Residual, ...] = ()
    why: Unchecked | None = None

    @property
    def text(self) -> str:
        """The closing in one line, without the room's name."""
        if self.gap is None:
            return f"{self.verdict}: {self.why}" if self.why else str(self.verdict)
        far = feet_text(steps_nearest(self.gap, self.step), self.unit)
        allowed = feet_text(steps_up(self.tolerance, self.step), self.unit)
        knows = (
            f"the file allows {allowed}"
            if self.allowed_by_file
            else f"{allowed} is what this survey can tell"
        )
        said = f"closes within {far} ({self.where})"
        # Less than half a mark of the tape: nobody can measure it, so it is not told.
        if not steps_nearest(self.gap, self.step):
            said = "closes"
        elif self.verdict is Verdict.GAPES:
            said = f"ends {far} from its start ({self.where})"
        if self.verdict in (Verdict.CLASHES, Verdict.CROOKED):
            said = f"{self.verdict}; {said}"
        return f"{said}; {knows}{f'; {self.settles}' if self.settles else ''}"


def unchecked(room: Room, why: Unchecked, slips: tuple[Slip, ...] = ()) -> Closing:
    """Return the closing of a room that cannot be checked; ``slips`` may be the reason."""
    unit, step = room.settings.unit, room.settings.rounding_step
    return Closing(room.name, Verdict.NOT_CHECKED, unit, step, slips=slips, why=why)
