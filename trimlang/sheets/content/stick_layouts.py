"""Stick layouts: each stick to scale with its pieces in cutting order and its tape marks."""

from __future__ import annotations

from typing import Final

from trimlang.compiler import Result
from trimlang.joinery.piece import Cut, Piece
from trimlang.joint_row import Edge
from trimlang.planning.layout import CutStick, StickPlace
from trimlang.record import record
from trimlang.sheets.wording import phrases
from trimlang.sheets.wording.quantities import Pen

WIDE: Final = 186.0
TALL: Final = 8.0
SLANT: Final = 1.6
"""How far a mitre's line leans, on paper: to be seen, not to scale."""
LETTER: Final = 1.75
"""About how wide a letter of an id is, on paper."""


@record
class Block:
    """A piece on the bar: its shape, its number in cutting order, its id where it fits."""

    points: str
    middle: str
    label: str


@record
class LayoutRow:
    """A piece in the list under the bar.  ``start`` and ``end`` are tape marks."""

    number: str
    id: str
    length: str
    left: tuple[str, ...]
    right: tuple[str, ...]
    start: str
    end: str
    shared: bool


@record
class StickLayout:
    """A stick: bar, list, offcut.  Coordinates are millimetres on paper."""

    id: str
    source: str
    blocks: tuple[Block, ...]
    rows: tuple[LayoutRow, ...]
    wide: str
    offcut_from: str
    offcut_wide: str
    offcut: str
    square_off: str


@record
class TrimSticks:
    """One trim's sticks, and the longest of them, which sets the scale."""

    trim: str
    scale: str
    sticks: tuple[StickLayout, ...]


def stick_layouts(result: Result, pen: Pen) -> tuple[TrimSticks, ...]:
    """Return every stick that is cut, trim by trim."""
    pieces = {piece.id: piece for piece in result.pieces}
    drawn: list[TrimSticks] = []
    for plan in result.plans:
        if not plan.sticks:
            continue
        longest = max(stick.length for stick in plan.sticks)
        scale = WIDE / float(longest)
        drawn.append(
            TrimSticks(
                plan.trim,
                pen.stick(longest),
                tuple(_stick(stick, pieces, scale, pen) for stick in plan.sticks),
            )
        )
    return tuple(drawn)


def _stick(stick: CutStick, pieces: dict[str, Piece], scale: float, pen: Pen) -> StickLayout:
    words = pen.words
    ends = stick.squared
    offcut_from = stick.length - ends - stick.offcut
    source = words("shop offcut") if stick.on_hand else words("stick")
    if stick.gone:
        source = words("rest, cut from before")
    return StickLayout(
        id=stick.id,
        source=f"{pen.stick(stick.length)} {source}",
        blocks=tuple(
            _block(number, place, pieces[place.piece], scale)
            for number, place in enumerate(stick.places, start=stick.before + 1)
        ),
        rows=tuple(
            _row(number, place, pieces[place.piece], pen)
            for number, place in enumerate(stick.places, start=stick.before + 1)
        ),
        wide=_fixed(float(stick.length) * scale),
        offcut_from=_fixed(float(offcut_from) * scale),
        offcut_wide=_fixed(float(stick.offcut) * scale),
        offcut=str(pen.mark(stick.offcut)) if stick.offcut else "",
        square_off=str(pen.mark(ends)) if ends else "",
    )


def _block(number: int, place: StickPlace, piece: Piece, scale: float) -> Block:
    start, end = float(place.start) * scale, float(place.end) * scale
    slant = min(SLANT, (end - start) / 3)
    left = _slope(start, slant, piece.left, opens=1)
    right = _slope(end, slant, piece.right, opens=-1)
    label = f"{number}  {piece.id}"
    if len(label) * LETTER > end - start - 2 * slant:
        label = str(number) if end - start > 2 * LETTER else ""
    points = [(left[0], 0.0), (right[0], 0.0), (right[1], TALL), (left[1], TALL)]
    return Block(
        " ".join(f"{_fixed(x)},{_fixed(y)}" for x, y in points),
        _fixed((start + end) / 2),
        label,
    )


def _slope(at: float, slant: float, cut: Cut, *, opens: int) -> tuple[float, float]:
    """Return the x of an end at the far (top) and at the near edge of the bar.

    ``at`` is the long point; the short edge lies inside the piece (``opens``).
    """
    if cut.long_edge is Edge.BOTH:
        return at, at
    inside = at + opens * slant
    return (at, inside) if cut.long_edge.is_far else (inside, at)


def _row(number: int, place: StickPlace, piece: Piece, pen: Pen) -> LayoutRow:
    own = pen.of(piece.unit)
    return LayoutRow(
        number=str(number),
        id=piece.id,
        length=str(own.mark(piece.to_mark)),
        left=phrases.setting_lines(piece.left, pen),
        right=phrases.setting_lines(piece.right, pen),
        start=str(pen.mark(place.start)) if place.start else pen.words("stick's end"),
        end=str(pen.mark(place.end)),
        shared=place.shared,
    )


def _fixed(value: float) -> str:
    return f"{value + 0.0:.2f}"
