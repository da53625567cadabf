"""Reads openings and bare walls, with the casing that an opening gets."""

from __future__ import annotations

from fractions import Fraction

from trimlang.language import tree
from trimlang.survey.ends import read_sides
from trimlang.survey.job import Gap, Trim
from trimlang.survey.measures import Findings, length
from trimlang.survey.near_names import unknown_trim
from trimlang.survey.settings import Settings


def read_gap(
    line: tree.GapLine, settings: Settings, trims: dict[str, Trim], findings: Findings
) -> Gap | None:
    """Return what a line says of wall without running trim; None where it has no width."""
    wide = length(line.width, settings.unit, findings, what=f"this {line.kind}")
    ends = read_sides(line.facts, settings.taken, settings, findings)
    called: str | None = None
    note: str | None = None
    tall: Fraction | None = None
    cased: tuple[str, ...] = ()
    for fact in line.facts:
        value = fact.values[0] if fact.values else None
        if fact.kind == "called" and isinstance(value, tree.Word):
            called = value.text
        elif fact.kind == "note" and isinstance(value, tree.Word):
            note = value.text
        elif fact.kind == "clear_height" and isinstance(value, tree.Measure):
            tall = length(value, settings.unit, findings, what="an opening's height")
        elif fact.kind == "cased":
            cased = _casing(fact, trims, findings)
    if cased and tall is None:
        findings.say("T240", line.span, trim=cased[0])
    if wide is None:
        return None
    taken_up: Fraction | None = None
    if cased:
        taken_up = wide + 2 * (settings.reveal + (trims[cased[0]].height or 0))
    # what could not be read of it may be the corner that its neighbours need
    unread = any(fact.kind == "unread" for fact in line.facts)
    return Gap(
        "lost" if unread else line.kind,
        wide,
        called,
        any(fact.kind == "entrance" for fact in line.facts),
        ends.get("left"),
        ends.get("right"),
        note,
        line.span,
        cased[0] if cased else None,
        cased[1] if len(cased) > 1 else None,
        tall,
        taken_up,
    )


def _casing(fact: tree.Fact, trims: dict[str, Trim], findings: Findings) -> tuple[str, ...]:
    """Return the trims of a casing, legs first; nothing where one is unknown or has no width."""
    names: list[str] = []
    for word in fact.values:
        assert isinstance(word, tree.Word)  # noqa: S101  the grammar says so
        if word.text not in trims:
            unknown_trim(word, trims, findings)
        elif trims[word.text].height is None:
            findings.say("T241", word.span, trim=word.text)
        else:
            names.append(word.text)
    return tuple(names) if len(names) == len(fact.values) else ()
