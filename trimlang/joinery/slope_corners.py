"""Corners that climbing trim turns: what meets what there, upright in every case.

In an inside corner the trim that is taller there, measured upright, runs through to the wall and
the other dies into its face, both cut plumb: the lower edges meet in the corner, so the lower top
ends on the face of the other piece.  Round an outside corner both are mitred in the upright plane
that halves it, which joins them only where one is the other's mirror image: what rises to the
corner on one wall falls from it on the next at the same pitch.  Otherwise the tops part: at a
distance ``y`` from the walls each is tan p × y × tan m further up or down (geometry).
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joinery.meeting import Meeting, Meets, runs_through, section_of
from trimlang.joinery.remarks import Remark, SaidLength, Value
from trimlang.joint_row import Fit
from trimlang.joints_by_role import STOPPED, UPRIGHT
from trimlang.language.facts import Side
from trimlang.lengths.angles import RIGHT, tangent
from trimlang.lengths.tape import NOTHING, SIXTEENTH, Unit, length_text, steps_nearest
from trimlang.marking import N_
from trimlang.record import record
from trimlang.survey.job import Run, Trim
from trimlang.survey.measures import Findings

_DIES: Final = N_("ends upright at the face of the {trim} on {run}, which is {by} taller there")
_THROUGH: Final = N_(
    "runs through upright; the {trim} on {run} ends at its face, {by} below its top"
)
_EVEN: Final = N_("ends upright at the face of the {trim} on {run}")
_EVEN_THROUGH: Final = N_("runs through upright; the {trim} on {run} ends at its face")


@record
class AroundCorner:
    """What stands on the next wall: its run, the trim that is met there, how far that stands off.

    ``trim`` is None where nothing of the kind stands there; ``off`` is then of what is behind.
    ``unit`` is what lengths are told in.
    """

    run: Run | None = None
    trim: Trim | None = None
    off: Fraction = NOTHING
    unit: Unit = Unit.INCH

    @property
    def slope(self) -> Fraction:
        """The pitch of the next wall's trim, 0 where nothing stands there."""
        return NOTHING if self.run is None or self.trim is None else self.run.slope


def turned(
    met: Meeting,
    run: Run,
    trim: Trim,
    there: AroundCorner,
    side: Side,
    findings: Findings,
) -> Meeting:
    """Return how a trim ends at a corner where it or its mate climbs; any other as it was."""
    if not run.slope and not there.slope:
        return met
    end = replace(met.end, joint=UPRIGHT if run.slope else STOPPED, fit=Fit.MITRED)
    wall = replace(
        met, end=end, meets=Meets.PLANE, corner=met.end.corner, beyond=there.off, remark=None
    )
    if there.run is None or there.trim is None:
        # Round an outside corner it ends flush with the next wall, inside it ends at that wall.
        return wall if not met.outside else replace(wall, beyond=NOTHING)
    if met.outside:
        return _round_it(met, wall, run, trim, there, findings)
    return _into_it(met, wall, run, trim, there, side)


def _round_it(
    met: Meeting, wall: Meeting, run: Run, trim: Trim, there: AroundCorner, findings: Findings
) -> Meeting:
    other = there.trim
    alike = other == trim
    mirrored = alike and there.slope == -run.slope and met.end.bullnose is None
    if mirrored:
        return met
    # Only where this run climbs, or meets another trim: a level run of the same trim has a mate
    # that climbs, and that one says it.
    if run.slope or not alike:
        apart = _apart(met, run, trim, there)
        findings.say(
            "T445",
            met.end.span,
            run=run.label,
            other=there.run.label if there.run else "",
            trim=trim.name,
            apart=length_text(steps_nearest(apart, SIXTEENTH), there.unit),
        )
    return wall


def _apart(met: Meeting, run: Run, trim: Trim, there: AroundCorner) -> Fraction:
    """Return by how much the two top edges part at the corner, at the back or the face."""
    mitre = RIGHT - (met.corner or RIGHT) / 2
    at_back = abs(section_of(trim, run.slope)[0] - section_of(there.trim or trim, there.slope)[0])
    climb = abs(tangent(run.slope) + tangent(there.slope))
    return max(at_back, climb * (trim.thickness or NOTHING) * tangent(mitre))


def _into_it(
    met: Meeting,
    wall: Meeting,
    run: Run,
    trim: Trim,
    there: AroundCorner,
    side: Side,
) -> Meeting:
    other = there.trim or trim
    sections = section_of(trim, run.slope), section_of(other, there.slope)
    through = runs_through(*sections, met.end.fit, side)
    (own, _), (its, _) = sections
    by = steps_nearest(abs(own - its), SIXTEENTH)
    texts = (_EVEN_THROUGH, _THROUGH) if through else (_EVEN, _DIES)
    values: list[tuple[str, Value]] = [
        ("trim", other.name),
        ("run", there.run.label if there.run else ""),
    ]
    # The lower one ends at a face; where it is the one that runs through, as the file copes it,
    # nothing is said of the tops.
    shown = bool(by) and through == (own > its)
    if shown:
        values.append(("by", SaidLength(by, there.unit)))
    beyond = there.off if through else there.off + (other.thickness or NOTHING)
    return replace(wall, beyond=beyond, remark=Remark(texts[shown], tuple(values)))
