"""Stairs: how steeply a run rises, how long it is along its slope, whether its ends suit that."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from functools import partial
from typing import Final

from trimlang.language import facts
from trimlang.language.facts import LengthTaken, Side
from trimlang.lengths.angles import arc_length, arc_tangent, cosine, sine
from trimlang.settings.table import Settings
from trimlang.survey.job import End, Gap, Room, Run, Trim
from trimlang.survey.measures import Findings, length
from trimlang.survey.stair_work import NewelNotch, StairSteps, StairWork
from trimlang.survey.wall_curve import read_curve

# Degrees; no stair is steeper.
STEEPEST: Final = 60


def climbing(run: Run, said: tuple[facts.Fact, ...], settings: Settings, findings: Findings) -> Run:
    """Return a run with its slope, its length along it, and its steps and notches.

    Reports what is said of a stair on a run that does not climb.
    """
    slope, steps = _pitch(said, settings, findings)
    ceiling = _ceiling(said, settings, findings)
    turns_level = _level_turns(run, ceiling, said, findings)
    climbs = partial(replace, run, ceiling=ceiling, turns_level=turns_level)
    work = StairWork(notches=_notches(said, settings, findings), steps=steps)
    for fact in said:
        # On level trim the tape can only run along the wall, and there are no steps to saw.
        is_of_stair = isinstance(fact, facts.TakenAlong | facts.OpenSide)
        if is_of_stair and not slope:
            # A pitch that was refused is reported; what hangs on it is not told of again.
            if not any(isinstance(one, facts.Rising) for one in said):
                findings.say("T295", fact.span, run=run.label)
            return climbs(stair=work)
        match fact:
            case facts.TakenAlong(way=way):
                work = replace(work, taken=way)
            case facts.OpenSide(is_open=True) if steps is None:
                findings.say("T296", fact.span, run=run.label)
            case facts.OpenSide(is_open=True):
                work = replace(work, open_side=True)
    run = climbs(slope=slope, stair=work)
    if work.taken is LengthTaken.ALONG:
        return _curving(run, said, settings, findings)
    # Along the slope a level length is longer by 1 ÷ cos, an upright one by 1 ÷ sin of the pitch.
    across = cosine(slope) if work.taken is LengthTaken.LEVEL else sine(abs(slope))
    work = replace(work, measured=run.length)
    return _curving(replace(run, length=run.length / across, stair=work), said, settings, findings)


def _curving(run: Run, said: tuple[facts.Fact, ...], settings: Settings, findings: Findings) -> Run:
    """Return a run with the curve of its wall, and its length along that."""
    curves = next((fact for fact in said if isinstance(fact, facts.Curves)), None)
    # A wall that curves while the trim climbs is a helix: every cut would twist along the piece.
    if curves is not None and run.slope:
        findings.say("T448", curves.span, run=run.label)
        return run
    curve = read_curve(said, run.length, run.label, settings, findings)
    if curve is None:
        return run
    return replace(run, curve=curve, length=arc_length(curve.radius, curve.turn))


def _ceiling(said: tuple[facts.Fact, ...], settings: Settings, findings: Findings) -> Fraction:
    """Return how the ceiling slopes along a run in degrees, positive where it rises right."""
    fact = next((one for one in said if isinstance(one, facts.CeilingRising)), None)
    if fact is None:
        return Fraction(0)
    match fact.pitch:
        case facts.PerCent(number=number):
            pitch: Fraction | None = arc_tangent(number.value / 100)
        case facts.RiseOver(rise=rise, run=over):
            what = "a ceiling's rise or run"
            up = length(rise, settings.unit, findings, what=what)
            along = length(over, settings.unit, findings, what=what)
            pitch = None if up is None or along is None else arc_tangent(up / along)
        case angle:
            pitch = angle.degrees
    if pitch is None:
        return Fraction(0)
    if not 0 < pitch <= STEEPEST:
        findings.say("T233", fact.span, what="a ceiling's slope", least=1, most=STEEPEST)
        return Fraction(0)
    return pitch if fact.side is Side.RIGHT else -pitch


def _level_turns(
    run: Run, ceiling: Fraction, said: tuple[facts.Fact, ...], findings: Findings
) -> tuple[Side, ...]:
    """Return the sides at which crown that climbs with the ceiling turns its corner level."""
    found: list[Side] = []
    for fact in said:
        if not isinstance(fact, facts.TransitionAt):
            continue
        if not ceiling or not run.side(fact.side).joint.is_inside:
            findings.say("T479", fact.span, run=run.label, side=fact.side)
        else:
            found.append(fact.side)
    return tuple(found)


def _pitch(
    said: tuple[facts.Fact, ...], settings: Settings, findings: Findings
) -> tuple[Fraction, StairSteps | None]:
    """Return a run's slope in degrees, positive where it rises to the right, and its steps.

    0 where it is level; no steps where the pitch is not told by them.
    """
    for fact in said:
        if not isinstance(fact, facts.Rising):
            continue
        pitch: Fraction | None = None
        steps: StairSteps | None = None
        if isinstance(fact.pitch, facts.RiseOver):
            what = "a stair's rise or run"
            rise = length(fact.pitch.rise, settings.unit, findings, what=what)
            run = length(fact.pitch.run, settings.unit, findings, what=what)
            if rise is not None and run is not None:
                if rise > run:
                    findings.say("T725", fact.span)
                # rise / run is the tangent of the pitch.
                pitch, steps = arc_tangent(rise / run), StairSteps(rise, run)
        else:
            pitch = fact.pitch.degrees
        if pitch is None:
            continue
        if not 0 < pitch <= STEEPEST:
            findings.say("T233", fact.span, what="a stair's pitch", least=1, most=STEEPEST)
            continue
        return (pitch if fact.side is Side.RIGHT else -pitch), steps
    return Fraction(0), None


def _notches(
    said: tuple[facts.Fact, ...], settings: Settings, findings: Findings
) -> tuple[NewelNotch, ...]:
    found: list[NewelNotch] = []
    for fact in said:
        if not isinstance(fact, facts.Notch):
            continue
        level = length(fact.level, settings.unit, findings, what="a notch")
        up = length(fact.up, settings.unit, findings, what="a notch")
        if level is not None and up is not None:
            found.append(NewelNotch(fact.side, level, up))
    return tuple(found)


def bend_rakes(room: Room, trims: Mapping[str, Trim], findings: Findings) -> Room:
    """Return the room with how far the trim bends filled in at each rake end.

    Crown bends with the ceiling: at a rake where only that does, all other trim goes straight on.
    Reports rake ends where nothing bends, and ends that do not suit the slope of their run.
    """
    walk = list(room.walk)
    for index, stretch in enumerate(walk):
        if not isinstance(stretch, Run):
            continue
        for side in Side:
            end = stretch.side(side)
            _check_end(stretch, end, side, findings)
            if not end.joint.row.bends:
                continue
            mate = _mate(room, index, side)
            bend = Fraction(0)
            if mate is not None:
                # Always the slope after the joint less the slope before it, as one walks to the
                # right.
                stair = bool(stretch.slope or mate.slope)
                here, there = (_pitch_of(one, trims, stair=stair) for one in (stretch, mate))
                bend = there - here if side is Side.RIGHT else here - there
                # Two runs that meet in a rake must have a trim in common, or nothing bends from one
                # to the other. Said once, at the right end of the first.
                alike = set(stretch.trims) & set(mate.trims) or not (stretch.trims and mate.trims)
                if not alike and side is Side.RIGHT:
                    findings.say("T457", end.span, run=stretch.label, other=mate.label)
            if not bend and not _lost_beside(room, index, side):
                mated = None if mate is None else mate.side(side.other).span
                findings.say("T244", end.span, side=side, run=stretch.label, there=mated)
            now = walk[index]
            walk[index] = replace(now, **{side: replace(getattr(now, side), bend=bend)})
    return replace(room, walk=tuple(walk))


def _pitch_of(run: Run, trims: Mapping[str, Trim], *, stair: bool) -> Fraction:
    """Return how steeply a run's trim climbs; without a stair only its crown does."""
    crown = any(trims[name].spring is not None for name in run.trims)
    return run.ceiling if crown and not stair else run.slope


def _mate(room: Room, index: int, side: Side) -> Run | None:
    """Return the run that goes on past a rake end, None where there is none."""
    at = index + side.step
    if room.open_walk and not 0 <= at < len(room.walk):
        return None
    mate = room.walk[at % len(room.walk)]
    if not isinstance(mate, Run) or mate is room.walk[index]:
        return None
    return mate if mate.side(side.other).joint.row.bends else None


def _lost_beside(room: Room, index: int, side: Side) -> bool:
    at = (index + side.step) % len(room.walk)
    neighbour = room.walk[at]
    return isinstance(neighbour, Gap) and neighbour.is_lost


def _check_end(run: Run, end: End, side: Side, findings: Findings) -> None:
    if not run.slope and end.joint.row.on_slope:
        findings.say("T243", end.span, side=side, run=run.label, joint=end.joint)
    # In a corner sloping trim ends plumb; a return has to stand square to it, which only level
    # trim does.
    if run.slope and end.joint.row.on_level:
        findings.say("T245", end.span, side=side, run=run.label, joint=end.joint)
