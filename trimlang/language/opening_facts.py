"""What is said of an opening: its name, its casing, its height, what it stops."""

from __future__ import annotations

from trimlang.diagnostics import Span
from trimlang.language.written import Measure, Word
from trimlang.record import record


@record
class Stops:
    """``stops base and shoe``: the trims that an opening stops; ``everything``: all of them."""

    trims: tuple[Word, ...]
    everything: bool
    span: Span


@record
class Called:
    """An opening's name in quotes."""

    text: Word
    span: Span


@record
class Entrance:
    """``entrance``."""

    span: Span


@record
class Cased:
    """``casing case head cap``."""

    casing: Word
    head: Word | None
    span: Span


@record
class Uncased:
    """``no casing``: not even where the openings of its room have one."""

    span: Span


@record
class ClearHeight:
    """``height 80 in``."""

    height: Measure
    span: Span


@record
class SillHeight:
    """``sill 30 in``: from the floor to where a window's clear opening begins."""

    height: Measure
    span: Span


@record
class FourSides:
    """``four sides``: the casing goes all round."""

    span: Span


@record
class Stooled:
    """``stool shelf apron case``: the board under a window, and the trim below that."""

    stool: Word
    apron: Word | None
    span: Span


@record
class Jambed:
    """``jambs strip``: strips that bring a jamb out to the face of the wall."""

    trim: Word
    span: Span


@record
class Hinged:
    """``hinged left``: the side of its hinges, as one faces a door from inside the room."""

    side: Word
    span: Span


@record
class Swings:
    """``swings out``: whether a door opens into the room or out of it."""

    way: Word
    span: Span


@record
class BothFaces:
    """``both faces``: the other side of the wall gets the same casing."""

    span: Span
