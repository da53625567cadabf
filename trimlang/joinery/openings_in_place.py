"""What surrounds an opening, where it is on the wall: casing, stool, apron, jamb strips, blocks."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joinery.cased_opening import CasedOpening, CasingPart
from trimlang.joinery.casings import foot_below
from trimlang.joinery.piece import Piece
from trimlang.joinery.piece_in_place import (
    LEVEL,
    UPRIGHT_LEFT,
    UPRIGHT_RIGHT,
    UPSIDE_DOWN,
    PieceInPlace,
    placed,
    seen_height,
)
from trimlang.lengths.tape import NOTHING
from trimlang.record import record
from trimlang.survey.job import Gap, Job, Room, Trim
from trimlang.survey.on_walls import CasingBlock
from trimlang.survey.openings import opening_names
from trimlang.survey.straight_walls import Spot, StraightWall

USUAL_HEAD: Final = Fraction(80)
"""Inches from the floor to the top of an opening (common practice, no source)."""
LEAST_SILL: Final = Fraction(24)
"""Inches; no lower is a window drawn whose sill nobody measured (common practice, no source)."""


@record
class OpeningInPlace:
    """An opening on its wall: what it takes up of it, and its clear opening (inches).

    ``low`` and ``high`` are its lower left and upper right corner; ``high`` is None where nobody
    wrote how high it is.  ``from_floor`` says whether its ``low`` is the floor or a measured sill.
    ``blocks`` are the plinths and corner blocks at it, or the block that it is, as rectangles.
    """

    place: int
    gap: Gap
    begins: Spot
    left: Fraction
    right: Fraction
    low: Fraction
    high: Fraction | None
    from_floor: bool
    pieces: tuple[PieceInPlace, ...] = ()
    blocks: tuple[tuple[Spot, Spot], ...] = ()

    @property
    def middle(self) -> Fraction:
        """Where its middle is along the wall."""
        return (self.left + self.right) / 2


def openings_in_place(
    job: Job, room: Room, face: StraightWall, pieces: Mapping[str, Piece]
) -> Iterator[OpeningInPlace]:
    """Yield what on a wall is no run, with the pieces round it; ``pieces`` are the job's, by id."""
    names = opening_names(room)
    for place, begins in zip(face.places, face.begins, strict=False):
        gap = room.walk[place]
        if not isinstance(gap, Gap):
            continue
        # A casing takes up wall beside the clear width.
        left = begins.x + (gap.along - gap.width) / 2
        low, from_floor = _sill(gap)
        high = None if gap.clear_height is None else begins.y + low + gap.clear_height
        opening = OpeningInPlace(
            place=place,
            gap=gap,
            begins=begins,
            left=left,
            right=left + gap.width,
            low=begins.y + low,
            high=high,
            from_floor=from_floor,
        )
        if gap.trimmings.transition is not None:
            yield _with_block(opening, gap.trimmings.transition, job)
            continue
        # Without a height nobody can say where a head goes, and what has no name has no pieces.
        if high is None or place not in names:
            yield opening
            continue
        cased = CasedOpening(
            job=job,
            room=room,
            gap=gap,
            door=names[place],
            tall=gap.clear_height or NOTHING,
        )
        yield _Surround(cased, opening, pieces).whole()


def _with_block(opening: OpeningInPlace, block: CasingBlock, job: Job) -> OpeningInPlace:
    """Return a block's place in the wall with the block in it; how high one hangs is not told."""
    if block.tall is None or any(job.trim(name).hangs for name in opening.gap.stops or ()):
        return opening
    low = Spot(x=opening.left, y=opening.begins.y)
    return replace(opening, blocks=((low, Spot(x=opening.right, y=low.y + block.tall)),))


def _sill(gap: Gap) -> tuple[Fraction, bool]:
    """Return how high above the floor an opening begins, and whether that is known."""
    if gap.sill is not None:
        return gap.sill, True
    trimmings = gap.trimmings
    if trimmings.stool is None and trimmings.apron is None and not trimmings.four_sides:
        return NOTHING, True
    # A window; its head is most likely in line with the doors'.
    return max(USUAL_HEAD - (gap.clear_height or NOTHING), LEAST_SILL), False


class _Surround:
    """Puts the parts round an opening into their places."""

    def __init__(
        self, cased: CasedOpening, opening: OpeningInPlace, pieces: Mapping[str, Piece]
    ) -> None:
        self._cased, self._at, self._pieces = cased, opening, pieces
        self._reveal = cased.room.settings.reveal
        assert opening.high is not None  # noqa: S101  without a height there are no parts
        self._top = opening.high

    def whole(self) -> OpeningInPlace:
        """Return the opening with its parts: strips first, then casing, then what lies over it."""
        gap, job = self._at.gap, self._cased.job
        parts: list[PieceInPlace] = []
        if gap.trimmings.jambs is not None:
            parts += self._jambs(job.trim(gap.trimmings.jambs))
        blocks: tuple[tuple[Spot, Spot], ...] = ()
        if gap.casing is not None:
            legs = job.trim(gap.casing)
            parts += self._casing(legs)
            blocks = tuple(self._blocks(legs.height or NOTHING))
        # The stool comes last: it is drawn over the feet of the legs that stand on it.
        parts += self._below()
        return replace(self._at, pieces=tuple(parts), blocks=blocks)

    def _part(self, part: CasingPart, trim: Trim, number: int | None = None) -> Piece | None:
        return self._pieces.get(self._cased.id_of(part, trim.name, number))

    def _level(
        self,
        part: CasingPart,
        trim: Trim,
        y: Fraction,
        *,
        number: int | None = None,
        across: Fraction | None = None,
    ) -> Iterator[PieceInPlace]:
        """Yield a level part over the middle of the opening, its lower edge at ``y``."""
        piece = self._part(part, trim, number)
        if piece is not None:
            at = Spot(x=self._at.middle - piece.to_mark / 2, y=y)
            yield placed(piece, trim, at, turn=LEVEL, across=across)

    def _hung(self, part: CasingPart, trim: Trim, y: Fraction) -> Iterator[PieceInPlace]:
        """Yield a part below the opening, upside down, its inner edge at ``y``."""
        piece = self._part(part, trim)
        if piece is not None:
            at = Spot(x=self._at.middle + piece.to_mark / 2, y=y)
            yield placed(piece, trim, at, turn=UPSIDE_DOWN)

    def _upright(
        self,
        parts: tuple[CasingPart, CasingPart],
        trim: Trim,
        inner: tuple[Fraction, Fraction],
        foot: Fraction,
        across: Fraction | None = None,
    ) -> Iterator[PieceInPlace]:
        """Yield a left and a right part with inner edges at ``inner`` that stand on ``foot``."""
        left, right = (self._part(part, trim) for part in parts)
        if left is not None:
            at = Spot(x=inner[0], y=foot)
            yield placed(left, trim, at, turn=UPRIGHT_LEFT, across=across)
        if right is not None:
            # Its left end, as it lies at the saw, is its top.
            at = Spot(x=inner[1], y=foot + right.to_mark)
            yield placed(right, trim, at, turn=UPRIGHT_RIGHT, across=across)

    def _jambs(self, strip: Trim) -> Iterator[PieceInPlace]:
        thick = strip.thickness or NOTHING
        sides = (CasingPart.LEFT_JAMB, CasingPart.RIGHT_JAMB)
        inner = (self._at.left, self._at.right)
        yield from self._upright(sides, strip, inner, self._at.low, across=thick)
        yield from self._level(CasingPart.HEAD_JAMB, strip, self._top, across=thick)
        under = self._at.low - thick
        yield from self._level(CasingPart.BOTTOM_JAMB, strip, under, across=thick)

    def _casing(self, legs: Trim) -> Iterator[PieceInPlace]:
        gap, job, wide = self._at.gap, self._cased.job, legs.height or NOTHING
        head = job.trim(gap.head) if gap.head else legs
        over = self._top + self._reveal
        inner = (self._at.left - self._reveal, self._at.right + self._reveal)
        # Legs end where the stool, the block or the floor below them begins.
        foot = self._at.low - foot_below(self._cased, wide)
        left = self._part(CasingPart.LEFT_LEG, legs)
        yield from self._upright((CasingPart.LEFT_LEG, CasingPart.RIGHT_LEG), legs, inner, foot)
        members = tuple(self._members(over))
        yield from members
        heads = tuple(self._level(CasingPart.HEAD, head, over)) if not members else ()
        yield from heads
        yield from self._hung(CasingPart.BOTTOM, legs, self._at.low - self._reveal)
        if gap.trimmings.backband is not None and left is not None:
            # A mitred head ends at the legs' own long points; any other lies on top of them and
            # carries the band higher.
            mitred = bool(heads) and heads[0].piece.left.long_edge.is_across
            top = foot + left.to_mark + (NOTHING if mitred else head.height or NOTHING)
            yield from self._band(job.trim(gap.trimmings.backband), foot, top)

    def _members(self, over: Fraction) -> Iterator[PieceInPlace]:
        """Yield the parts of a head of several, one above the other or before one another."""
        tops: dict[str, Fraction] = {}
        y = over
        for number, member in enumerate(self._at.gap.trimmings.head, start=1):
            trim = self._cased.job.trim(member.trim)
            tall = seen_height(trim)
            # What is nailed to another one's face is drawn in line with that one's top.
            low = y if member.behind is None else tops[member.behind] - tall
            tops[member.trim] = low + tall
            y = max(y, low + tall)
            yield from self._level(CasingPart.HEAD, trim, low, number=number)

    def _band(self, band: Trim, foot: Fraction, top: Fraction) -> Iterator[PieceInPlace]:
        """Yield a backband; ``foot`` and ``top`` are where the casing within it ends (inches)."""
        lap, wide = self._cased.room.settings.backband_lap, band.height or NOTHING
        head = self._part(CasingPart.HEAD_BAND, band)
        if head is None:
            return
        # The band is measured at its outer edge and stands with its inner edge at the casing.
        half = head.to_mark / 2 - wide
        inner = (self._at.middle - half, self._at.middle + half)
        if self._at.gap.trimmings.four_sides:
            foot -= wide - lap
        yield from self._upright((CasingPart.LEFT_BAND, CasingPart.RIGHT_BAND), band, inner, foot)
        yield from self._level(CasingPart.HEAD_BAND, band, top - lap)
        yield from self._hung(CasingPart.BOTTOM_BAND, band, foot + wide)

    def _below(self) -> Iterator[PieceInPlace]:
        below, job = self._at.gap.trimmings, self._cased.job
        y = self._at.low
        if below.stool is not None:
            stool = job.trim(below.stool)
            y -= stool.thickness or NOTHING
            yield from self._level(CasingPart.STOOL, stool, y, across=stool.thickness)
        if below.apron is not None:
            apron = job.trim(below.apron)
            yield from self._level(CasingPart.APRON, apron, y - seen_height(apron))

    def _blocks(self, wide: Fraction) -> Iterator[tuple[Spot, Spot]]:
        trimmings = self._at.gap.trimmings
        inner = (self._at.left - self._reveal, self._at.right + self._reveal)
        if trimmings.plinth is not None:
            # Plinth and casing have their inner edges in line.
            size = trimmings.plinth
            for x in (inner[0] - size.wide, inner[1]):
                foot = self._at.begins.y
                yield Spot(x=x, y=foot), Spot(x=x + size.wide, y=foot + size.tall)
        if trimmings.corner_block is None:
            return
        size = trimmings.corner_block
        # A corner block is as wide as it is bought, so it is centred on the crossing of leg and
        # head.
        heights = [self._top + self._reveal + wide / 2]
        if trimmings.four_sides:
            heights.append(self._at.low - self._reveal - wide / 2)
        for x in (inner[0] - wide / 2, inner[1] + wide / 2):
            for y in heights:
                low = Spot(x=x - size.wide / 2, y=y - size.tall / 2)
                yield low, Spot(x=low.x + size.wide, y=low.y + size.tall)
