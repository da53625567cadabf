"""What is said of a run that climbs: its pitch, how it was measured, its level ends, its steps."""

from __future__ import annotations

from enum import StrEnum
from typing import TypeAlias

from trimlang.diagnostics import Span
from trimlang.language.end_facts import Side
from trimlang.language.written import Angle, Measure
from trimlang.record import record


@record
class RiseOver:
    """``7 1/2 in over 10 in``, ``7 1/2 in rise, 10 in run``."""

    rise: Measure
    run: Measure


@record
class Rising:
    """``rising right 36 deg``, or as rise over run."""

    side: Side
    pitch: Angle | RiseOver
    span: Span


class LengthTaken(StrEnum):
    """Which way the tape ran along a run that climbs."""

    ALONG = "along"
    LEVEL = "level"
    UPRIGHT = "upright"


@record
class TakenAlong:
    """``taken level``, ``taken upright``: which way the run's length was measured."""

    way: LengthTaken
    span: Span


@record
class LevelReturn:
    """``level left 8 in``: at that end the trim goes on level for so long."""

    side: Side
    length: Measure
    span: Span


@record
class Notch:
    """``notch left 3 1/2 in by 6 in``: cut out of that end's foot for a newel, level and up."""

    side: Side
    level: Measure
    up: Measure
    span: Span


@record
class OpenSide:
    """``open side``: the top edge is sawn to the steps; ``wall side`` leaves it straight."""

    is_open: bool
    span: Span


OfStair: TypeAlias = Rising | TakenAlong | LevelReturn | Notch | OpenSide
