"""Reads openings and bare walls, with an opening's casing."""

from __future__ import annotations

from collections.abc import Container, Mapping
from dataclasses import replace
from fractions import Fraction

from trimlang.diagnostics import Span
from trimlang.language import facts, tree
from trimlang.language.facts import Side
from trimlang.language.tree import GapKind
from trimlang.lengths.angles import cosine
from trimlang.lengths.tape import SIXTEENTH, length_text, steps_nearest, steps_up
from trimlang.settings.table import Settings
from trimlang.survey.block_fits import beside_opening, check_blocks
from trimlang.survey.in_front import height_below
from trimlang.survey.job import End, Gap, Trim
from trimlang.survey.measures import Findings, length
from trimlang.survey.near_names import unknown_trim
from trimlang.survey.on_walls import CasingBlock, DoorSwing, HeadMember
from trimlang.survey.said_blocks import ByName, find_block
from trimlang.survey.trimmings import read_trimmings


def read_gap(
    line: tree.GapLine,
    ends: dict[Side, End],
    *,
    settings: Settings,
    trims: dict[str, Trim],
    by_name: ByName,
    findings: Findings,
    on_floor: Container[str] = (),
) -> Gap | None:
    """Return a stretch of wall without running trim, None where its width cannot be read.

    ``by_name`` are the blocks and heads that it may name.  ``on_floor`` are the trims that stand
    on the room's floor: they go on below a window.
    """
    called: str | None = None
    block: CasingBlock | None = None
    if isinstance(line.width, tree.Word):
        block = find_block(line.width, by_name, findings)
        wide, called = (block.wide, block.name) if block is not None else (None, None)
    else:
        opening = line.kind is tree.GapKind.OPENING
        what = f"this {line.kind}"
        wide = length(line.width, settings.unit, findings, what=what, opening=opening)
    note: str | None = None
    tall: Fraction | None = None
    cased: tuple[str, ...] = ()
    head: tuple[HeadMember, ...] = ()
    sill: Fraction | None = None
    entrance = beam = False
    deep: Fraction | None = None
    turns: tuple[str, ...] = ()
    stops: tuple[str, ...] | None = None
    kind = line.kind
    for fact in line.facts:
        match fact:
            case facts.Called():
                called = fact.text.text
            case facts.Note():
                note = fact.text.text
            case facts.ClearHeight():
                tall = length(fact.height, settings.unit, findings, what="an opening's height")
            case facts.Cased():
                # The word for the head may name a head of several parts, which is no trim.
                cased = _casing(fact, trims, by_name, findings)
                head = by_name.heads.get(fact.head.text, ()) if fact.head is not None else ()
            case facts.Stops():
                # “Stops nothing” is an empty tuple, which is not the same as a line that says
                # nothing (None).
                stops = (*(stops or ()), *_stopped(fact, trims, findings))
            case facts.SillHeight():
                sill = length(fact.height, settings.unit, findings, what="a sill's height")
            case facts.Entrance():
                entrance = True
            case facts.Turns():
                turns = tuple(dict.fromkeys((*turns, *_turned(fact, trims, findings))))
            case facts.BeamAcross():
                beam = True
            case facts.BeamDeep():
                deep = length(fact.deep, settings.unit, findings, what="a beam's depth")
            case facts.Unread():
                # The part that could not be read may be the corner that its neighbours need.
                kind = GapKind.LOST
    # A height for all openings that do not say their own is taken only where it was said.
    if cased and tall is None and settings.says(Settings.casing_height):
        tall = settings.casing_height
    if cased and tall is None:
        findings.say("T240", line.span, trim=cased[0])
    # A sill's height decides what a window stops only where its line does not say so itself.
    if sill is not None and stops is None:
        stops = tuple(
            name for name, trim in trims.items() if not _passes(trim, sill, on_floor, trims)
        )
    if block is not None and stops is None:
        stops = tuple(name for name in trims if name in on_floor)
    # A depth, or a crown that turns, makes sense at a beam alone.
    odd = next((one for one in line.facts if isinstance(one, facts.BeamDeep | facts.Turns)), None)
    if odd is not None and not beam:
        findings.say("T456", odd.span)
    if beam and stops is None:
        stops = _stopped_by_beam(line, deep, trims, settings, findings)
    # Last, since what may go round an opening depends on its casing, its height and its head.
    trimmings = read_trimmings(
        line, bool(cased), trims, by_name, findings, high=tall is not None, head=head
    )
    taken_up: Fraction | None = None
    if cased:
        check_blocks(
            line,
            cased,
            trimmings,
            trims=trims,
            settings=settings,
            findings=findings,
            on_floor=on_floor,
        )
    # All that can be said of the line has been said; without a width there is no wall to walk.
    if wide is None:
        return None
    if cased:
        # The clear width, and on each side the reveal and the leg of the casing, or its plinth.
        taken_up = wide + 2 * beside_opening(trims[cased[0]], trimmings, trims, settings)
    return Gap(
        kind=kind,
        width=wide,
        called=called,
        entrance=entrance,
        left=ends.get(Side.LEFT),
        right=ends.get(Side.RIGHT),
        note=note,
        span=line.span,
        casing=cased[0] if cased else None,
        head=cased[1] if len(cased) > 1 else None,
        clear_height=tall,
        taken_up=taken_up,
        stops=stops,
        sill=sill,
        trimmings=replace(trimmings, transition=block),
        turns=turns,
        swing=_swing(line, findings),
    )


def lost_wall(span: Span) -> Gap:
    """Return what holds the place of a wall that could not be read."""
    return Gap(
        kind=GapKind.LOST,
        width=Fraction(0),
        called=None,
        entrance=False,
        left=None,
        right=None,
        note=None,
        span=span,
    )


def _swing(line: tree.GapLine, findings: Findings) -> DoorSwing | None:
    """Return how a door opens: into the room, where only the side of its hinges is said."""
    said = {type(fact): fact for fact in line.facts}
    hinged, swings = said.get(facts.Hinged), said.get(facts.Swings)
    outwards = isinstance(swings, facts.Swings) and swings.way.text.endswith("out")
    if isinstance(hinged, facts.Hinged):
        return DoorSwing(Side(hinged.side.text), outwards)
    # The way a door swings is drawn from its hinges; without them there is nothing to draw.
    if swings is not None and facts.Unread not in said:
        findings.say("T135", swings.span)
    return None


def _casing(
    fact: facts.Cased, trims: dict[str, Trim], by_name: ByName, findings: Findings
) -> tuple[str, ...]:
    """Return a casing's trims, legs first; empty where one is unknown or has no width."""
    names: list[str] = []
    of_parts = fact.head is not None and fact.head.text in by_name.heads
    named = (fact.casing,) if of_parts else facts.named_trims(fact)
    for word in named:
        if word.text not in trims:
            unknown_trim(word, trims, findings)
        elif trims[word.text].height is None:
            findings.say("T241", word.span, trim=word.text)
        else:
            names.append(word.text)
    # Half a casing would give wrong lengths for the half that is known, so nothing of it is made.
    return tuple(names) if len(names) == len(named) else ()


def _turned(fact: facts.Turns, trims: dict[str, Trim], findings: Findings) -> tuple[str, ...]:
    """Return the crown, or what goes with it, that a beam turns; reports what does not hang."""
    word = fact.trim
    if word.text not in trims:
        unknown_trim(word, trims, findings)
        return ()
    if not trims[word.text].hangs:
        findings.say("T454", word.span, trim=word.text)
        return ()
    # A bead lies along the crown's ceiling edge, wherever that goes.
    beads = (name for name, trim in trims.items() if trim.before_crown == word.text)
    return (word.text, *beads)


def _stopped_by_beam(
    line: tree.GapLine,
    deep: Fraction | None,
    trims: dict[str, Trim],
    settings: Settings,
    findings: Findings,
) -> tuple[str, ...]:
    """Return what a beam stops: crown, and all of its cornice that is no lower than the beam.

    Reports crowns that hang lower than it is deep.
    """
    crowns = tuple(name for name, trim in trims.items() if trim.spring is not None)
    for name in crowns:
        trim = trims[name]
        # A crown leans out by its spring, and so hangs down by less than its width.
        hangs = (trim.height or Fraction(0)) * cosine(trim.spring or Fraction(0))
        if deep is not None and hangs > deep:
            lower = length_text(steps_nearest(hangs - deep, SIXTEENTH), settings.unit)
            deeper = length_text(steps_up(hangs, settings.rounding_step), settings.unit)
            findings.say("T453", line.span, trim=name, lower=lower, deeper=deeper)
    return tuple(
        name
        for name, trim in trims.items()
        # A frieze that hangs lower than the beam goes on below it, as a taller base does past a
        # low sill.
        if trim.spring is not None
        or (trim.hangs and (deep is None or (trim.height or Fraction(0)) <= deep))
    )


def _passes(
    trim: Trim, sill: Fraction, on_floor: Container[str], trims: Mapping[str, Trim]
) -> bool:
    """Tell whether a trim goes on past a window: what hangs, and what ends below its sill."""
    if trim.hangs:
        return True
    # What stands on the floor and ends below the sill is not touched by the window.
    if trim.name not in on_floor or trim.height is None:
        return False
    return height_below(trim, trims, on_floor) + trim.height <= sill


def _stopped(fact: facts.Stops, trims: dict[str, Trim], findings: Findings) -> tuple[str, ...]:
    """Return the trims that an opening stops."""
    for word in fact.trims:
        if word.text not in trims:
            unknown_trim(word, trims, findings, ("all", "nothing"))
    return tuple(trims) if fact.everything else tuple(word.text for word in fact.trims)
