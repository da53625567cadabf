"""A ticket on label stock: the shape with the largest length that fits."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.sheets.content.ticket_room import EM, Format, TicketRoom
from trimlang.sheets.content.ticket_shape import Shape, laid_out
from trimlang.sheets.content.ticket_text import Print

LEAST_SCALE: Final = 0.5
"""The smallest scale of a label's type: lengths of 11 (strip: 9) pt; small print stays as it is."""


def on_label(
    text: Print, across: Fraction, down: Fraction, *, code: bool, bare: bool = False
) -> Shape | None:
    """Return the shape with the largest type that fits a label; None where none does.

    Small print that may be left off goes to ``flap`` where the label cannot hold it; ``bare``: so
    does what stands below each joint.
    """
    best: Shape | None = None
    tall = float(down) - 0.3  # a page is not to overflow by a rounding
    # From the largest type down; once one fits, only scales near it can still give a longer length.
    for step in range(41):
        scale = round(2.5 - step * 0.05, 2)
        if scale < LEAST_SCALE or (best is not None and scale < best.type / EM * 0.8):
            break
        for kind in Format:
            room = TicketRoom(
                kind=kind, across=float(across), down=tall, limit=tall, scale=scale, code=code
            )
            # Narrower than this (mm) a line of small print holds three words, and the label gets
            # taller and taller.
            shape = laid_out(text, room, label=True, bare=bare) if room.facts() >= 25 else None
            if shape is None or not all(fact.extra for line in shape.flap for fact in line):
                continue
            if best is None or _rank(shape) > _rank(best):
                best = shape
    return best


def _rank(shape: Shape) -> tuple[bool, float]:
    """Rank shapes: all small print on the face first, then the largest length."""
    return (not shape.flap, shape.length_size * shape.type)
