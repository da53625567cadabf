"""Stairs: how steeply a run rises, and whether its ends suit that."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.language import facts
from trimlang.language.facts import Side
from trimlang.lengths.angles import arc_tangent
from trimlang.settings.table import Settings
from trimlang.survey.job import End, Gap, Room, Run
from trimlang.survey.measures import Findings, length

# Degrees; no stair is steeper.
STEEPEST: Final = 60


def read_slope(said: tuple[facts.Fact, ...], settings: Settings, findings: Findings) -> Fraction:
    """Return a run's slope in degrees: positive where it rises to the right, 0 where level."""
    for fact in said:
        if not isinstance(fact, facts.Rising):
            continue
        pitch: Fraction | None = None
        if isinstance(fact.pitch, facts.RiseOver):
            what = "a stair's rise or run"
            rise = length(fact.pitch.rise, settings.unit, findings, what=what)
            run = length(fact.pitch.run, settings.unit, findings, what=what)
            if rise is not None and run is not None:
                # rise / run is the tangent of the pitch.
                pitch = arc_tangent(rise / run)
        else:
            pitch = fact.pitch.degrees
        if pitch is None:
            continue
        if not 0 < pitch <= STEEPEST:
            findings.say("T233", fact.span, what="a stair's pitch", least=1, most=STEEPEST)
            continue
        return pitch if fact.side is Side.RIGHT else -pitch
    return Fraction(0)


def bend_rakes(room: Room, findings: Findings) -> Room:
    """Return the room with how far the trim bends filled in at each rake end.

    Reports rake ends where nothing bends, and ends that do not suit the slope of their run.
    """
    walk = list(room.walk)
    for index, stretch in enumerate(walk):
        if not isinstance(stretch, Run):
            continue
        for side in Side:
            end = stretch.side(side)
            _check_end(stretch, end, side, findings)
            if not end.joint.bends:
                continue
            mate = _mate(room, index, side)
            bend = Fraction(0)
            if mate is not None:
                # Always the slope after the joint less the slope before it, as one walks to the
                # right.
                bend = (
                    mate.slope - stretch.slope if side is Side.RIGHT else stretch.slope - mate.slope
                )
            if not bend and not _lost_beside(room, index, side):
                findings.say("T244", end.span, side=side, run=stretch.label)
            now = walk[index]
            walk[index] = replace(now, **{side: replace(getattr(now, side), bend=bend)})
    return replace(room, walk=tuple(walk))


def _mate(room: Room, index: int, side: Side) -> Run | None:
    """Return the run that goes on past a rake end, None where there is none."""
    at = index + side.step
    if room.open_walk and not 0 <= at < len(room.walk):
        return None
    mate = room.walk[at % len(room.walk)]
    if not isinstance(mate, Run) or mate is room.walk[index]:
        return None
    return mate if mate.side(side.other).joint.bends else None


def _lost_beside(room: Room, index: int, side: Side) -> bool:
    at = (index + side.step) % len(room.walk)
    beside = room.walk[at]
    return isinstance(beside, Gap) and beside.is_lost


def _check_end(run: Run, end: End, side: Side, findings: Findings) -> None:
    if not run.slope and end.joint.row.on_slope:
        findings.say("T243", end.span, side=side, run=run.label, joint=end.joint)
    if run.slope and end.joint.row.on_level:
        findings.say("T245", end.span, side=side, run=run.label, joint=end.joint)
