"""What is said of boxes on a wall: their size, and the wall between them."""

from __future__ import annotations

from enum import Enum, auto

from trimlang.diagnostics import Span
from trimlang.language.written import Measure, Word
from trimlang.record import record


class BoxPlace(Enum):
    """Where boxes are: on a run, along a wall of several, or below or above an opening."""

    ON = auto()
    ALONG = auto()
    UNDER = auto()
    OVER = auto()


@record
class BoxWall:
    """``N``, ``N to N2``, ``under "garden"``: the wall that boxes are laid out on.

    ``name`` is the run's or the opening's, ``last`` the run that the wall ends with.
    """

    place: BoxPlace
    name: Word
    last: Word | None = None


@record
class BoxesTall:
    """``24 in tall``: how tall each box of a wall is."""

    length: Measure
    span: Span


@record
class BoxesWide:
    """``14 in wide``: how wide each box of a wall is."""

    length: Measure
    span: Span


@record
class BoxesMargin:
    """``margin 3 1/2 in``: the wall before, between and behind the boxes."""

    length: Measure
    span: Span
