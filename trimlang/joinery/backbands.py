"""Backbands: a trim round a casing's outer edge, mitred at its corners.

A backband lies over the casing's face by its lap and goes past the casing's outer edge by the
rest of its width.  Its members are measured along their own outer edge, so each is as long as the
casing is there and as much longer as the band goes past it: a head at both ends, a leg at its top,
and at its foot too where the frame has a fourth side (geometry: a frame round a rectangle).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from trimlang.joinery.cased_opening import CasedOpening, CasingPart
from trimlang.joinery.cuts import square_cut
from trimlang.joinery.faces import casing_mitre
from trimlang.joinery.piece import Piece
from trimlang.language.facts import Side
from trimlang.lengths.tape import NOTHING


def band_pieces(
    opening: CasedOpening, name: str, casing: tuple[Fraction, Fraction]
) -> Iterator[Piece]:
    """Yield an opening's backband; ``casing`` is its casing's size, tall and across (inches)."""
    band, settings, gap = opening.job.trim(name), opening.room.settings, opening.gap
    wide = band.height or NOTHING
    past = wide - settings.backband_lap
    # A leg's foot stands on the floor like the casing's, so the band is longer at its top only.
    tall, across = casing[0] + past, casing[1] + 2 * past
    left, right = (casing_mitre(side, wide, settings) for side in Side)
    foot_left = foot_right = square_cut()
    if gap.trimmings.four_sides:
        tall, foot_left, foot_right = tall + past, left, right
    yield opening.piece(CasingPart.LEFT_BAND, band, tall, opening.tall, (foot_left, right))
    yield opening.piece(CasingPart.RIGHT_BAND, band, tall, opening.tall, (left, foot_right))
    yield opening.piece(CasingPart.HEAD_BAND, band, across, gap.width, (left, right))
    if gap.trimmings.four_sides:
        yield opening.piece(CasingPart.BOTTOM_BAND, band, across, gap.width, (left, right))
