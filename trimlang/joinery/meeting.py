"""What one end of a trim meets at a corner, and how much that adds to its wall's length.

Two pieces of trim meet, not two walls.  A trim's back stands ``off`` from its own wall.  The
next wall turns away at the angle θ, and the line at which the trim ends runs along that wall at
the distance ``beyond``.  At a distance ``y`` from its own wall the trim reaches that line

    (beyond + y × cos θ) ÷ sin θ

from the walls' corner: that much short of it in an inside corner, that much past it round an
outside one (geometry: the distance along a line to a parallel of another line).
"""

from __future__ import annotations

from dataclasses import replace
from enum import Enum, auto
from fractions import Fraction
from functools import lru_cache
from typing import Final

from trimlang.joinery.remarks import Remark, SaidLength
from trimlang.joint_row import Fit
from trimlang.joints_by_role import STOPPED
from trimlang.language.facts import Side
from trimlang.lengths.angles import RIGHT, cosine, sine, tangent
from trimlang.lengths.tape import NOTHING
from trimlang.marking import N_
from trimlang.record import record
from trimlang.survey.job import End, Gap, Job, Room, Run, Trim
from trimlang.survey.outline import depth_of

NEARLY_SQUARE: Final = 5
"""Degrees off square up to which a butt against a wall is cut square and closed with caulk."""


_HIGHER: Final = N_("stands {step} higher than the {trim} on {run}")
_LOWER: Final = N_("stands {step} lower than the {trim} on {run}")


class Meets(Enum):
    """What a trim meets at its end."""

    ITSELF = auto()
    """Nothing else: the end is as its joint says."""
    MATE = auto()
    """The same trim on the next wall."""
    UNLIKE = auto()
    """Another trim in its place, with which it is mitred: the mitre follows from both."""
    PLANE = auto()
    """A wall, or the face of what stands on it: the end butts, since no mitre would close."""


@record
class LevelPiece:
    """A level piece between a corner and crown that climbs: its wall edge, the corner's end."""

    long: Fraction
    corner: End


@record
class Meeting:
    """How one end of a trim meets what is there.

    ``corner`` is the angle between the walls in degrees, through the room inside and through the
    wall outside; None where there is no corner.  ``thick`` is the thickness of an unlike mate.
    ``short`` is how far before the walls' corner the joint is, where that is rounded, or before a
    run's own end; less than 0 past it.
    ``brings_corner`` says that the piece between is this end's to bring.
    ``scraps`` is how far past the wall's end the tape already reached over scraps of trim.
    ``outside`` says which kind of corner it is, which the joint no longer does once it is a
    butt.  ``roll`` is by how many degrees less than its spring a crown leans to its wall there,
    None where nothing says it.  ``step`` is by how much its top stands above an unlike mate's
    and is returned.  ``level`` is the piece between a climbing crown and its corner, ``across`` how
    a ceiling slopes across the wall of a crown that hangs as below a level one (degrees, more than
    0 where it rises from the wall).  Lengths in inches.
    """

    end: End
    meets: Meets
    off: Fraction = NOTHING
    beyond: Fraction = NOTHING
    corner: Fraction | None = None
    outside: bool = False
    thick: Fraction = NOTHING
    scraps: Fraction = NOTHING
    short: Fraction = NOTHING
    brings_corner: bool = False
    remark: Remark | None = None
    roll: Fraction | None = None
    step: Fraction = NOTHING
    level: LevelPiece | None = None
    across: Fraction = NOTHING

    def past(self, out: Fraction, line: Fraction | None = None) -> Fraction:
        """Return how far past the walls' corner the trim reaches at ``out`` from its own wall.

        ``line`` is how far from the next wall the line runs at which it ends; None means
        ``beyond``.  Negative where it ends short of the corner.  Inches.
        """
        line = self.beyond if line is None else line
        # At the walls' own corner, as most trims' backs are, whatever angle that has.
        if not (out or line):
            return NOTHING
        # Only a plane may have no corner of its own; a wall stands square unless it was measured.
        corner = RIGHT if self.corner is None else self.corner
        # Nearly all corners are square, where the last line comes to no more than this.
        if corner == RIGHT:
            reach = line
        elif line == out:
            reach = out * _along_half(corner)
        else:
            reach = (line + out * cosine(corner)) / sine(corner)
        return reach if self.outside else -reach

    @property
    def is_crooked(self) -> bool:
        """Whether it butts against something too far from square to be closed with caulk."""
        return (
            self.meets is Meets.PLANE
            and self.corner is not None
            and abs(self.corner - RIGHT) > NEARLY_SQUARE
        )

    def grows(self, trim: Trim) -> Fraction:
        """Return what the end adds to its wall's length, up to the trim's long point (inches).

        For crown, up to the end of its wall edge, along which its number is measured.
        """
        if self.meets is Meets.ITSELF:
            return -self._less
        back, face = self.edges(trim)
        if self.meets is Meets.PLANE and not self.is_crooked:
            reach = min(back, face)  # cut square, so whichever edge touches first stops it
        elif self.end.fit is Fit.SQUARE:
            # A square end in a corner runs until its back or its face touches the next wall: in an
            # acute corner that is the face.
            reach = min(back, self.past(self.off + depth_of(trim)))
        # A crown's number runs along its wall edge, whatever its ceiling edge does.
        elif trim.spring is not None:
            reach = back
        else:
            reach = max(back, face)
        return reach - self._less if self._less else reach

    @property
    def _less(self) -> Fraction:
        """How much of the wall's length the trim does not have at this end (inches)."""
        return self.scraps + self.short if self.scraps else self.short

    def edges(self, trim: Trim) -> tuple[Fraction, Fraction]:
        """Return how far past the walls' corner the trim's back and its face reach (inches).

        At a mate, the face ends at the mate's face; at a wall or a face, both end there.
        """
        deep = depth_of(trim)
        # Where two trims meet, the face ends at the mate's face, which stands out by its own
        # thickness.
        if self.meets is Meets.MATE:
            mate = deep
        else:
            mate = self.thick if self.meets is Meets.UNLIKE else NOTHING
        return self.past(self.off), self.past(self.off + deep, self.beyond + mate)

    def long_point(self, trim: Trim) -> Fraction:
        """Return how far past the walls' corner the trim's furthest point reaches (inches)."""
        return NOTHING if self.meets is Meets.ITSELF else max(self.edges(trim))


@record
class FreeEnd:
    """An end of a run's trim where the walls do not turn.

    ``after`` is the place in the walk of what comes after that end, None where nothing does.
    """

    job: Job
    room: Room
    run: Run
    trim: Trim
    side: Side
    after: int | None

    @property
    def gap(self) -> Gap | None:
        """The opening or the bare wall that comes after it, if one does."""
        stretch = None if self.after is None else self.room.walk[self.after]
        return stretch if isinstance(stretch, Gap) else None


@lru_cache(maxsize=4096)
def _along_half(corner: Fraction) -> Fraction:
    """Return how far along, for how far out, the line runs that halves a corner (degrees)."""
    # (1 + cos θ) ÷ sin θ = tan(90° - θ/2)
    return tangent(RIGHT - corner / 2)


def meets_unlike(plain: Meeting, trim: Trim, there: Trim, beyond: Fraction, run: str) -> Meeting:
    """Return how a trim is mitred with another one, whose back is at ``beyond``.

    The mitre follows both thicknesses.  Round an outside corner, where the tops differ, the taller
    one's end stands free above the other by ``step``, and its top is returned there.
    """
    step = (trim.height or NOTHING) - (there.height or NOTHING)
    remark = None
    if step and trim.height and there.height:
        values = (("step", SaidLength(abs(step))), ("trim", there.name), ("run", run))
        remark = Remark(text=_HIGHER if step > 0 else _LOWER, values=values)
    thick = there.thickness or NOTHING
    step = max(step, NOTHING) if remark is not None else NOTHING
    return replace(plain, meets=Meets.UNLIKE, beyond=beyond, thick=thick, remark=remark, step=step)


def at_plane(plain: Meeting, beyond: Fraction) -> Meeting:
    """Return a meeting that butts against a wall or a face ``beyond`` the walls' corner."""
    end = replace(plain.end, joint=STOPPED, fit=Fit.MITRED)
    return replace(plain, end=end, meets=Meets.PLANE, beyond=beyond, corner=plain.end.corner)


def section_of(trim: Trim, slope: Fraction = NOTHING) -> tuple[Fraction, Fraction]:
    """Return how tall a trim is, measured upright where it climbs, and how thick (inches)."""
    return (trim.height or NOTHING) / cosine(slope), trim.thickness or NOTHING


def runs_through(
    own: tuple[Fraction, Fraction], other: tuple[Fraction, Fraction], fit: Fit, side: Side
) -> bool:
    """Tell whether a trim runs into an inside corner; otherwise it dies into the other's face.

    ``own`` and ``other`` are the sections of both.  As the file copes; otherwise the taller one
    runs through, then the thicker, then the one whose right end is at the corner (common practice,
    no source).
    """
    if fit is not Fit.MITRED:
        return fit is Fit.SQUARE
    # Tuples compare the height first, and the thickness only where heights are equal.
    return own > other if own != other else side is Side.RIGHT
