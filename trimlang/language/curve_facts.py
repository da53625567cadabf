"""What is said of a wall that curves, and of trim that bends round it by itself."""

from __future__ import annotations

from enum import StrEnum
from typing import TypeAlias

from trimlang.diagnostics import Span
from trimlang.language.written import Angle, Measure, Word
from trimlang.record import record


class Bend(StrEnum):
    """Which way a wall curves, seen from the room: away from it, or into it."""

    IN = "in"
    OUT = "out"


@record
class WrittenRadius:
    """``radius 4 ft``: the wall's radius, where its length is its chord."""

    radius: Measure


@record
class Curves:
    """``curves in 9 in``, ``curves out radius 4 ft``, ``curves in 90 deg``."""

    way: Bend
    by: Measure | WrittenRadius | Angle
    span: Span


@record
class RadiusGiven:
    """``radius`` behind a run's length: that is the radius of its wall."""

    span: Span


@record
class Flexible:
    """``flexible`` of a trim, and what it is made of where that stands behind it."""

    words: Word | None
    span: Span


OfCurve: TypeAlias = Curves | RadiusGiven
