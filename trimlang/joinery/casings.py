"""Casing: two legs and a head round an opening, and what a window has below and within.

The casing stands back from the jamb's edge by the reveal.  Mitred, its members
meet at 45° across the face and are measured along their outer edge, from
long point to long point; their inner edges frame the opening and its reveal.
With a butt head the legs are square, and the head lies across both, as far past
them as the file says.  On four sides the casing goes on below the window.  A stool is the
board that the legs stand on, with horns past the casing; an apron below it is as long as the
casing is wide, and its ends turn back to the wall.  Jamb strips stand round the clear opening,
the head across the sides.  (Common practice, no source.)
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from enum import Enum
from fractions import Fraction
from typing import Final

from trimlang.joinery.cuts import end_cut, square_cut
from trimlang.joinery.faces import HEAD_MITRE, face_cut
from trimlang.joinery.piece import Cut, Piece, PieceKind, Remark
from trimlang.joinery.returns import return_piece
from trimlang.joinery.rounding import round_length
from trimlang.joint_row import Fit
from trimlang.joints import Joint
from trimlang.language.facts import Side
from trimlang.lengths.tape import NOTHING, feet_text, length_text
from trimlang.marking import N_
from trimlang.record import record
from trimlang.survey.job import End, Gap, Job, Room, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.openings import opening_names

_FAR: Final = N_("on the other side of the wall")
_NOTCH: Final = N_("notch each end round the wall, {long} along it; scribe how deep")


class _CasingPart(Enum):
    """A part of what surrounds an opening: its kind, and what it is called with and without it."""

    LEFT_LEG = (
        PieceKind.LEG,
        N_("left leg of “{opening}”, as you face it"),
        N_("left leg, as you face it"),
        Side.LEFT,
    )
    RIGHT_LEG = (
        PieceKind.LEG,
        N_("right leg of “{opening}”, as you face it"),
        N_("right leg, as you face it"),
        Side.RIGHT,
    )
    HEAD = (PieceKind.HEAD, N_("head of “{opening}”"), N_("head"))
    BOTTOM = (PieceKind.HEAD, N_("bottom of “{opening}”"), N_("bottom of the frame"))
    STOOL = (PieceKind.STOOL, N_("stool of “{opening}”"), N_("stool"))
    APRON = (PieceKind.APRON, N_("apron of “{opening}”"), N_("apron"))
    LEFT_JAMB = (
        PieceKind.JAMB,
        N_("left jamb strip of “{opening}”"),
        N_("left jamb strip"),
        Side.LEFT,
    )
    RIGHT_JAMB = (
        PieceKind.JAMB,
        N_("right jamb strip of “{opening}”"),
        N_("right jamb strip"),
        Side.RIGHT,
    )
    HEAD_JAMB = (PieceKind.JAMB, N_("head jamb strip of “{opening}”"), N_("head jamb strip"))
    BOTTOM_JAMB = (
        PieceKind.JAMB,
        N_("bottom jamb strip of “{opening}”"),
        N_("bottom jamb strip"),
    )

    def __init__(
        self, kind: PieceKind, of_named: str, nameless: str, side: Side | None = None
    ) -> None:
        self.side = side
        self.kind = kind
        self.of_named = of_named
        self.nameless = nameless

    @property
    def in_an_id(self) -> str:
        """What it is called in a piece's id."""
        return self.name.lower().replace("_", "-")


OPENING_PARTS: Final = tuple(part.in_an_id for part in _CasingPart)
"""What the parts round an opening are called in the ids of their pieces."""


@record
class _CasedOpening:
    """An opening with its room and with what its pieces go by; ``tall`` is its clear height."""

    job: Job
    room: Room
    gap: Gap
    door: str
    tall: Fraction

    def piece(
        self,
        part: _CasingPart,
        trim: Trim,
        exact: Fraction,
        clear: Fraction,
        cuts: tuple[Cut, Cut],
        *more: Remark,
    ) -> Piece:
        length, rounding = round_length(exact, "head", self.room.settings)
        called = self.gap.called
        remark = Remark(part.of_named, (("opening", called),)) if called else Remark(part.nameless)
        return Piece(
            id=f"{self.room.tag}-{self.door}-{trim.name}-{part.in_an_id}",
            kind=part.kind,
            at=part.side,
            room=self.room.name,
            run=self.door,
            trim=trim.name,
            length=length,
            wall=clear,
            left=cuts[0],
            right=cuts[1],
            rounding=rounding,
            unit=self.room.settings.unit,
            remarks=(remark, *more),
        )


def casing_pieces(job: Job, room: Room, findings: Findings) -> Iterator[Piece]:
    """Yield what surrounds a room's openings, along the walk.

    A part that no stick is long enough for is reported: casing is never spliced.
    """
    for place, door in opening_names(room).items():
        stretch = room.walk[place]
        assert isinstance(stretch, Gap)  # noqa: S101  opening_names says so
        if stretch.clear_height is None:
            continue
        opening = _CasedOpening(
            job=job, room=room, gap=stretch, door=door, tall=stretch.clear_height
        )
        for piece in _surround(opening):
            longest = job.trim(piece.trim).longest_stick(job.settings)
            if longest is not None and piece.length > longest:
                findings.say(
                    "T410",
                    stretch.span,
                    part=piece.told,
                    need=feet_text(piece.length, piece.unit),
                    trim=piece.trim,
                    longest=feet_text(longest, piece.unit),
                )
            if piece.vanishes:
                part = f"the {piece.told}"
                findings.say("T122", stretch.span, part=part, trim=piece.trim)
            yield piece


def _surround(opening: _CasedOpening) -> Iterator[Piece]:
    gap, job = opening.gap, opening.job
    wide = NOTHING  # how wide the casing stands out past the reveal
    if gap.casing is not None:
        legs = job.trim(gap.casing)
        wide = opening.room.settings.reveal + (legs.height or NOTHING)
        cased = tuple(_casing(opening, legs))
        yield from cased
        if gap.trimmings.both_faces:
            yield from (_on_the_far_side(piece, opening) for piece in cased)
    yield from _below(opening, wide)
    if gap.trimmings.jambs is not None:
        yield from _jambs(opening, job.trim(gap.trimmings.jambs))


def _casing(opening: _CasedOpening, legs: Trim) -> Iterator[Piece]:
    """Yield the legs and the head, and on four sides what lies below."""
    gap, settings = opening.gap, opening.room.settings
    head = opening.job.trim(gap.head) if gap.head else legs
    mitred = gap.head is None and not settings.head_butt
    wide = legs.height or NOTHING
    across = gap.width + 2 * (settings.reveal + wide)
    # The inner edge of a leg runs from its foot to the reveal above the opening; the head's inner
    # edge spans the opening and both reveals. At 45° the outer edge is longer by the casing's
    # width. A leg stands off the floor, on a stool, or on the bottom of its frame.
    foot = -settings.casing_floor
    if gap.trimmings.stool is not None:
        foot = NOTHING
    elif gap.trimmings.four_sides:
        foot = settings.reveal + (wide if mitred else NOTHING)
    leg_long = opening.tall + settings.reveal + (wide if mitred else NOTHING) + foot
    if not mitred:
        across += 2 * settings.head_overhang
    square = square_cut()
    left, right = (_mitre(side, wide, opening.room) if mitred else square for side in Side)
    # Of the left leg the top is its right end as it lies on the saw, face up, outer edge away; of
    # the right leg the left end.
    low_left, low_right = (left, right) if gap.trimmings.four_sides else (square, square)
    yield opening.piece(_CasingPart.LEFT_LEG, legs, leg_long, opening.tall, (low_left, right))
    yield opening.piece(_CasingPart.RIGHT_LEG, legs, leg_long, opening.tall, (left, low_right))
    yield opening.piece(_CasingPart.HEAD, head, across, gap.width, (left, right))
    if gap.trimmings.four_sides:
        yield opening.piece(_CasingPart.BOTTOM, legs, across, gap.width, (left, right))


def _below(opening: _CasedOpening, wide: Fraction) -> Iterator[Piece]:
    """Yield a window's stool, with horns past the casing, and its apron, returned at both ends."""
    gap, settings = opening.gap, opening.room.settings
    below = gap.trimmings
    if below.stool is not None:
        stool, square = opening.job.trim(below.stool), square_cut()
        horn = wide + settings.stool_horn
        notch = Remark(_NOTCH, (("long", length_text(horn, settings.unit)),))
        yield opening.piece(
            _CasingPart.STOOL, stool, gap.width + 2 * horn, gap.width, (square, square), notch
        )
    if below.apron is not None:
        apron = opening.job.trim(below.apron)
        end = End(joint=Joint.RETURN, corner=None, fit=Fit.MITRED, over_scraps=False, span=gap.span)
        left, right = (end_cut(end, side, apron, settings, Side.LEFT) for side in Side)
        across = opening.piece(
            _CasingPart.APRON, apron, gap.width + 2 * wide, gap.width, (left, right)
        )
        returns = [return_piece(across, across, side, apron, settings) for side in Side]
        yield replace(across, mates=tuple(one.id for one in returns))
        yield from returns


def _jambs(opening: _CasedOpening, strip: Trim) -> Iterator[Piece]:
    """Yield the strips that bring a jamb out to the wall's face: sides, and head across them."""
    gap, square = opening.gap, square_cut()
    across = gap.width + 2 * (strip.thickness or NOTHING)
    yield opening.piece(_CasingPart.LEFT_JAMB, strip, opening.tall, opening.tall, (square, square))
    yield opening.piece(_CasingPart.RIGHT_JAMB, strip, opening.tall, opening.tall, (square, square))
    yield opening.piece(_CasingPart.HEAD_JAMB, strip, across, gap.width, (square, square))
    if gap.trimmings.four_sides:
        yield opening.piece(_CasingPart.BOTTOM_JAMB, strip, across, gap.width, (square, square))


def _on_the_far_side(piece: Piece, opening: _CasedOpening) -> Piece:
    """Return the same piece for the other side of the wall, where left is left again."""
    begin = f"{opening.room.tag}-{opening.door}"
    return replace(
        piece,
        id=f"{begin}-far{piece.id.removeprefix(begin)}",
        remarks=(*piece.remarks, Remark(_FAR)),
    )


def _mitre(side: Side, wide: Fraction, room: Room) -> Cut:
    return face_cut(Joint.HEAD, side, HEAD_MITRE, wide, Joint.HEAD.long_point, room.settings)
