"""What is said of sticks: a knot and its place, and how little a yard sells."""

from __future__ import annotations

from enum import StrEnum

from trimlang.diagnostics import Span
from trimlang.language.end_facts import Side
from trimlang.language.written import Measure, Number, Price, Word
from trimlang.lengths.units import LengthUnit
from trimlang.marking import N_
from trimlang.record import record


class DefectKind(StrEnum):
    """What is wrong with a stretch of a stick, in the word that the file has for it."""

    KNOT = N_("knot")
    SPLIT = N_("split")
    CHECK = N_("check")
    WANE = N_("wane")
    DENT = N_("dent")
    STAIN = N_("stain")
    DEFECT = N_("defect")


@record
class WrittenDefect:
    """``knot 3 ft 2 in to 3 ft 4 in``, from the stick's end on this ``side``."""

    kind: DefectKind
    start: Measure
    end: Measure
    side: Side
    span: Span


class BatchScope(StrEnum):
    """What may not mix batches: the pieces of a room, or those of one wall."""

    ROOM = "room"
    WALL = "wall"


@record
class WrittenBatch:
    """``batch "A"``: sticks of one colour, as they came from one delivery."""

    name: Word
    span: Span


@record
class BatchBy:
    """``batch by wall``: what may not mix batches."""

    scope: BatchScope
    span: Span


@record
class OneWay:
    """``one way`` of a trim: its grain or pattern has a direction."""

    span: Span


@record
class CountedSticks:
    """``3 of 7 ft``: so many of one length among sticks of random length."""

    count: Number
    length: Measure
    span: Span


@record
class RandomLengths:
    """``bundle of 3 of 7 ft, 2 of 11 ft at 140.00``, or ``pick from`` them at a price each.

    ``by_unit`` tells that the price is for a foot or a metre, ``whole`` that all are bought.
    """

    sticks: tuple[CountedSticks, ...]
    price: Price
    by_unit: LengthUnit | None
    at_most: Number | None
    whole: bool
    span: Span


@record
class LeastOrder:
    """``at least 10 sticks``, or ``at least 150.00``: the yard sells so much or nothing.

    ``in_all``: not of the trim by itself, but of all trims from its supplier.
    """

    least: Number | Price
    in_all: bool
    span: Span
