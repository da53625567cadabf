"""Reads openings and bare walls, with an opening's casing."""

from __future__ import annotations

from collections.abc import Container
from fractions import Fraction

from trimlang.language import facts, tree
from trimlang.language.facts import Side
from trimlang.language.tree import GapKind
from trimlang.settings.table import Settings
from trimlang.survey.job import End, Gap, Trim
from trimlang.survey.measures import Findings, length
from trimlang.survey.near_names import unknown_trim
from trimlang.survey.trimmings import read_trimmings


def read_gap(
    line: tree.GapLine,
    ends: dict[Side, End],
    settings: Settings,
    trims: dict[str, Trim],
    findings: Findings,
    *,
    on_floor: Container[str] = (),
) -> Gap | None:
    """Return a stretch of wall without running trim, None where its width cannot be read.

    ``on_floor`` are the trims that stand on the room's floor: they go on below a window.
    """
    wide = length(line.width, settings.unit, findings, what=f"this {line.kind}")
    called: str | None = None
    note: str | None = None
    tall: Fraction | None = None
    cased: tuple[str, ...] = ()
    sill: Fraction | None = None
    entrance = False
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
                cased = _casing(fact, trims, findings)
            case facts.Stops():
                stops = (*(stops or ()), *_stopped(fact, trims, findings))
            case facts.SillHeight():
                sill = length(fact.height, settings.unit, findings, what="a sill's height")
            case facts.Entrance():
                entrance = True
            case facts.Unread():
                # The part that could not be read may be the corner that its neighbours need.
                kind = GapKind.LOST
    if cased and tall is None and settings.says(Settings.casing_height):
        tall = settings.casing_height
    if cased and tall is None:
        findings.say("T240", line.span, trim=cased[0])
    # A sill's height decides what a window stops only where its line does not say so itself.
    if sill is not None and stops is None:
        stops = tuple(name for name, trim in trims.items() if not _passes(trim, sill, on_floor))
    trimmings = read_trimmings(line, bool(cased), trims, findings, high=tall is not None)
    if wide is None:
        return None
    taken_up: Fraction | None = None
    if cased:
        # The clear width, and on each side the reveal and the leg of the casing.
        taken_up = wide + 2 * (settings.reveal + (trims[cased[0]].height or 0))
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
        trimmings=trimmings,
    )


def _casing(fact: facts.Cased, trims: dict[str, Trim], findings: Findings) -> tuple[str, ...]:
    """Return a casing's trims, legs first; empty where one is unknown or has no width."""
    names: list[str] = []
    named = facts.named_trims(fact)
    for word in named:
        if word.text not in trims:
            unknown_trim(word, trims, findings)
        elif trims[word.text].height is None:
            findings.say("T241", word.span, trim=word.text)
        else:
            names.append(word.text)
    return tuple(names) if len(names) == len(named) else ()


def _passes(trim: Trim, sill: Fraction, on_floor: Container[str]) -> bool:
    """Tell whether a trim goes on past a window: crown above it, and what ends below its sill."""
    if trim.spring is not None:
        return True
    return trim.name in on_floor and trim.height is not None and trim.height <= sill


def _stopped(fact: facts.Stops, trims: dict[str, Trim], findings: Findings) -> tuple[str, ...]:
    """Return the trims that an opening stops."""
    for word in fact.trims:
        if word.text not in trims:
            unknown_trim(word, trims, findings, ("all", "nothing"))
    return tuple(trims) if fact.everything else tuple(word.text for word in fact.trims)
