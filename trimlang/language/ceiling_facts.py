"""What is said of a ceiling that slopes, and of a beam below it."""

from __future__ import annotations

from typing import TypeAlias

from trimlang.diagnostics import Span
from trimlang.language.end_facts import Side
from trimlang.language.stair_facts import RiseOver
from trimlang.language.written import Angle, Measure, Number, Word
from trimlang.record import record


@record
class PerCent:
    """``2 %``: a slope as its rise in a hundred."""

    number: Number


@record
class CeilingRising:
    """``ceiling rising right 20 deg``: along a run, in degrees, as rise over run or in per cent."""

    side: Side
    pitch: Angle | RiseOver | PerCent
    span: Span


@record
class BeamAcross:
    """A line that begins with ``beam``: it stops crown, and all other trim goes on below it."""

    span: Span


@record
class BeamDeep:
    """``8 in deep``: how far a beam hangs down from the ceiling."""

    deep: Measure
    span: Span


@record
class Turns:
    """``turns crown``: it goes on along the beam's side, round the corner that this makes."""

    trim: Word
    span: Span


@record
class TransitionAt:
    """``transition left``: a level piece between crown that climbs and the corner at that side."""

    side: Side
    span: Span


OfCeiling: TypeAlias = CeilingRising | TransitionAt | BeamAcross | BeamDeep | Turns
