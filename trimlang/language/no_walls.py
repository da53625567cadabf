"""What stands in a list of walls and is none: a tub, a gap, a misspelt word."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from trimlang.diagnostics import Diagnostic, say
from trimlang.diagnostics.named_codes import MISPLACED
from trimlang.diagnostics.suggestion import Suggestion
from trimlang.language import facts, tree
from trimlang.language.vocabulary import JOTTED, NO_WALLS, not_a_label, topic_of
from trimlang.lengths.tape import mixed_number
from trimlang.lengths.units import LengthUnit

_WITH_A_LENGTH: Final = re.compile(r"(?P<wall>[^\W\d_]+)(?P<dash>-?)(?P<whole>\d+)")
_A_FOOT: Final = 12
_SCRIBED: Final = frozenset({"scribe", "scribed"})
_STEPS: Final = frozenset(
    "tape step steps precision accuracy rounding round resolution tolerance marks ruler".split()
)
"""What is written for the marks of a tape, where no wall can be so short."""
_LONGEST_STEP_MM: Final = 5
_LONGEST_SETTING: Final = 3
"""Inches, or millimetres: no kerf, reveal or lap is as wide, and no wall is as short."""
_STEPS_THROUGH: Final = 12
"""Inches, or millimetres: a gap that somebody passes is wider, one under a base is narrower."""


def no_wall(wall: tree.RunLine) -> tuple[tree.GapLine, Diagnostic] | None:
    """Return what a stretch is whose name says that it is no wall, and the finding that tells so.

    None for a wall.  Nothing else is then missed of it, neither its joints nor its trims.
    """
    label = wall.label
    takes = f"A wall of that name takes a colon: {label.text}:"
    name = label.text.casefold()
    better = f"{NO_WALLS[name]} {label.text}" if name in NO_WALLS else JOTTED.get(name)
    if better is not None:
        word = better.split()[0]
        is_bare = word in ("bare", "newel", "cabinets", "radiator")
        kind = tree.GapKind.BARE if is_bare else tree.GapKind.OPENING
        called: tuple[facts.WallFact, ...] = (facts.Called(label, label.span),)
        if word == "beam":
            called = (facts.BeamAcross(label.span), *called)
        gap = tree.GapLine(kind, wall.length, called, wall.span)
        told = Suggestion(f"Write {better}. {takes}", better)
        return gap, say("T124", label.span, word=label.text, remedy=told)
    other = step_of_the_tape(wall) or _named_with_its_length(wall)
    if other is not None:
        return other
    # A run is scribed by the largest gap under it.
    meant = "gap" if label.text.casefold() in _SCRIBED else not_a_label(label.text)
    if meant is None:
        return None
    lost = (facts.Unread(label.span),)
    gap = tree.GapLine(tree.GapKind.OPENING, wall.length, lost, wall.span)
    if meant == "gap":
        # Below a base the floor falls away; through a wider one somebody walks.
        better = "floor gap" if _is_small(wall.length) else "opening"
        told = Suggestion(f"Did you mean “{better}”? {takes}", better)
        return gap, say(MISPLACED, label.span, word=label.text, wanted="a wall", remedy=told)
    remedy = _remedy(label.text, meant, takes)
    return gap, say("T100", label.span, word=label.text, remedy=remedy)


def _named_with_its_length(wall: tree.RunLine) -> tuple[tree.GapLine, Diagnostic] | None:
    """Return what “N-120 1/4” is, a length of which a part stands in the name; else None."""
    named = _WITH_A_LENGTH.fullmatch(wall.label.text)
    ((number, unit), *more) = wall.length.parts
    # A wall may be called N2, and be of a few inches; no wall is a fraction, or N-10 and 2 1/4.
    feet = bool(named and named["dash"]) and not unit and 1 <= number < _A_FOOT
    if named is None or more or not (feet or 0 < number < 1):
        return None
    better = f"{named['wall']} {named['whole']}" + (" ft" if feet else "")
    takes = f"A wall of that name takes a colon: {wall.label.text}:"
    told = Suggestion(f"If its length was meant, write {better}. {takes}", better)
    lost = (facts.Unread(wall.span),)
    gap = tree.GapLine(tree.GapKind.OPENING, wall.length, lost, wall.span)
    wanted = "a wall's name alone"
    return gap, say(MISPLACED, wall.label.span, word=wall.label.text, wanted=wanted, remedy=told)


def step_of_the_tape(wall: tree.RunLine) -> tuple[tree.GapLine, Diagnostic] | None:
    """Return what “tape: 1/32 in” is, and the finding that tells it; None for a wall."""
    ((number, unit), *more) = wall.length.parts
    small = number < 1 if unit != LengthUnit.MM else number <= _LONGEST_STEP_MM
    if more or not small or wall.label.text.casefold() not in _STEPS:
        return None
    better = f"round to {mixed_number(number)}" + (f" {unit}" if unit else "")
    told = Suggestion(f"Write {better}, above the rooms.", better)
    lost = (facts.Unread(wall.span),)
    gap = tree.GapLine(tree.GapKind.OPENING, wall.length, lost, wall.span)
    wanted = "the step that lengths are rounded to"
    return gap, say(MISPLACED, wall.span, word=wall.label.text, wanted=wanted, remedy=told)


def setting_with_a_colon(wall: tree.RunLine) -> tuple[tree.GapLine, Diagnostic] | None:
    """Return what “kerf: 1/8 in” is, a setting without its topic, and the finding; or None."""
    word = wall.label.text.casefold()
    # Walls are called A or long, and are longer than what a setting of one word measures.
    if wall.facts or len(word) < len("kerf") or not _is_small(wall.length, _LONGEST_SETTING):
        return None
    topic = topic_of(word)
    if topic is None:
        return None
    span = replace(wall.label.span, end=wall.length.span.column)
    better = f"{topic}: {wall.label.text}"
    told = Suggestion(f"Did you mean “{better}”?", f"{better} ")
    gap = tree.GapLine(tree.GapKind.OPENING, wall.length, (facts.Unread(wall.span),), wall.span)
    return gap, say("T100", span, word=wall.label.text, remedy=told)


def _remedy(word: str, meant: str, takes: str) -> str:
    topic = topic_of(meant)
    if topic is None and meant == word.casefold():
        return f"It is a word of other lines. {takes}"
    meant = meant if topic is None else f"{topic}: {meant}"
    return Suggestion(f"Did you mean “{meant}”? {takes}", meant)


def _is_small(gap: tree.Measure, limit: int = _STEPS_THROUGH) -> bool:
    ((number, unit), *more) = gap.parts
    return not more and unit not in ("ft", "m", "yd") and number < limit
