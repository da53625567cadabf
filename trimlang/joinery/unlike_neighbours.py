"""Where a trim comes to a corner and the next wall has another in its place, or none.

Inside, one of the two runs through and the other dies into its face, unless the file has them
mitred; round an outside corner they are mitred.  Such a mitre follows both thicknesses.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from trimlang.joinery.meeting import (
    FreeEnd,
    Meeting,
    at_plane,
    meets_unlike,
    runs_through,
    section_of,
)
from trimlang.joinery.on_the_wall import in_its_place, may_meet, stands_off
from trimlang.joinery.remarks import Remark
from trimlang.joint_row import Fit
from trimlang.language.facts import Side
from trimlang.marking import N_
from trimlang.record import record
from trimlang.survey.job import End, Job, Room, Run, Trim
from trimlang.survey.measures import Findings

_DIES: Final = N_("dies into the {trim} on {run}")
_THROUGH: Final = N_("runs through; the {trim} on {run} dies into it")


@record
class UnlikeCorner:
    """A trim at one end of its run, where the ``other`` run has none of its kind."""

    job: Job
    room: Room
    run: Run
    trim: Trim
    other: Run
    side: Side

    def its_end(self, there: Trim) -> End | None:
        """Return how the other run's trim ``there`` ends at this corner, if that is said of it."""
        return self.other.own_end(there.name, self.side.other)

    def say(self, code: str, end: End, there: Trim, findings: Findings) -> None:
        """Report what is wrong between the trim and the one ``there`` on the other run."""
        run, other = self.run.label, self.other.label
        findings.say(code, end.span, trim=self.trim.name, run=run, other=there.name, there=other)

    def say_alone(self, end: End, findings: Findings) -> None:
        """Report that nothing on the other run meets the trim's mitre."""
        run, other = self.run.label, self.other.label
        name = self.trim.name
        findings.say("T323", end.span, trim=name, run=run, there=other, side=self.side)


def ask_of_scarf(at: FreeEnd, end: End, findings: Findings) -> None:
    """Report a scarf to a run that has none of the trim: a lap is of one trim with itself."""
    other = None if at.after is None else at.room.walk[at.after]
    if end.joint.laps and isinstance(other, Run) and at.trim.name not in other.trims:
        texts = {"trim": at.trim.name, "run": at.run.label, "there": other.label}
        findings.say("T329", end.span, side=at.side, **texts)


def with_another(at: UnlikeCorner, plain: Meeting, findings: Findings) -> Meeting:
    """Return how a trim ends at a corner where the next wall has another trim, or none.

    Reports two that cannot meet as the file says.
    """
    job, room, trim, other = at.job, at.room, at.trim, at.other
    behind = stands_off(job, room, other, trim)
    there = in_its_place(job, at.run, trim, other)
    on_floor = there is not None
    if there is None:
        there = _said_to_meet(at, plain, findings)
    # With nothing of its kind there it is mitred outside as if there were; inside it ends at
    # the wall, or at the face of what stands behind its place there.
    if there is None and plain.outside:
        if _is_alone(at):
            at.say_alone(plain.end, findings)
        return replace(plain, beyond=behind)
    if there is None:
        return at_plane(plain, behind)
    if trim.spring is not None:
        at.say("T411", plain.end, there, findings)
        return replace(plain, beyond=behind)
    if there.thickness is None or trim.thickness is None:
        lacking = there if there.thickness is None else trim
        findings.say("T211", plain.end.span, joint="corner", trim=lacking.name, run=at.run.label)
        return replace(plain, beyond=behind)
    its = stands_off(job, room, other, there)
    # Both sides of the corner come here; one finding is enough.
    first = at.side is Side.RIGHT
    its_end = at.its_end(there)
    meant = plain.end.mitred or _is_mitred(its_end)
    if plain.outside:
        if first and not on_floor and trim.height != there.height:
            asks = plain.end if its_end is None or plain.end.mitred else its_end
            at.say("T321", asks, there, findings)
        elif first and not meant:
            at.say("T413", plain.end, there, findings)
        return meets_unlike(plain, trim, there, its, other.label)
    if meant and trim.height == there.height:
        return meets_unlike(plain, trim, there, its, other.label)
    if meant and first:
        at.say("T486", plain.end, there, findings)
    fit = _fit(at, there, plain.end, findings)
    if runs_through(section_of(trim), section_of(there), fit, at.side):
        met, text = at_plane(plain, behind), _THROUGH
    else:
        met, text = at_plane(plain, its + there.thickness), _DIES
        if trim.height is not None and there.height is not None and trim.height > there.height:
            at.say("T325", plain.end, there, findings)
    values = (("trim", there.name), ("run", other.label))
    return replace(met, remark=Remark(text=text, values=values))


def _fit(at: UnlikeCorner, there: Trim, end: End, findings: Findings) -> Fit:
    """Return how a trim is fitted to the one ``there``, of which the file may say it alone."""
    its = at.its_end(there)
    if its is not None and end.fit is its.fit is Fit.COPED and at.side is Side.RIGHT:
        findings.say("T305", its.span)
    if its is None or (end.fit is Fit.COPED and its.fit is Fit.COPED and at.side is Side.RIGHT):
        return end.fit
    if its.fit is Fit.COPED:
        return Fit.SQUARE
    # That one runs square into the corner, so this one ends at its face.
    alone = not any(may_meet(at.job, at.run, at.trim, at.other))
    return Fit.COPED if alone and not its.joint.is_corner else end.fit


def _said_to_meet(at: UnlikeCorner, plain: Meeting, findings: Findings) -> Trim | None:
    """Return the trim that this one meets because the file says so (``rail cope``, ``rail mitre``).

    Asks whether two trims stand at one height where the file does not say, once for both.
    """
    own = at.run.own_end(at.trim.name, at.side)
    for there in may_meet(at.job, at.run, at.trim, at.other):
        its = at.its_end(there)
        if _is_mitred(own) or _is_mitred(its) or (own is not None and own.fit is Fit.COPED):
            return there
        # A corner has two ends; asked at its right one alone, the question comes once.
        if own is not None or its is not None or at.side is Side.LEFT:
            continue
        if plain.outside:
            at.say("T322", plain.end, there, findings)
        else:
            at.say("T487", plain.end, there, findings)
    return None


def _is_alone(at: UnlikeCorner) -> bool:
    """Tell whether nothing on the other run comes to the corner at the trim's place."""
    ends = (at.its_end(there) for there in may_meet(at.job, at.run, at.trim, at.other))
    return all(end is not None and not end.joint.is_corner for end in ends)


def _is_mitred(end: End | None) -> bool:
    return end is not None and end.mitred
