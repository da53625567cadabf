"""Casing: two legs and a head round an opening.

The casing stands back from the jamb's edge by the reveal.  With a mitred head, legs and head
meet at 45° across the face and are measured along their outer edge, from long point to long
point; their inner edges frame the opening and its reveal.  With a butt head the legs are square,
and the head lies across both and past them as far as the file says (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from trimlang.joinery.cuts import square_cut
from trimlang.joinery.faces import HEAD_MITRE, face_cut
from trimlang.joinery.piece import Cut, Piece, PieceKind, Remark
from trimlang.joinery.rounding import round_length
from trimlang.joints import Joint
from trimlang.lengths.tape import NOTHING, feet_text
from trimlang.marking import N_
from trimlang.survey.job import Gap, Job, Room, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.openings import opening_names

_OF_NAMED: Final = {
    "left": N_("left leg of “{opening}”, as you face it"),
    "right": N_("right leg of “{opening}”, as you face it"),
    "head": N_("head of “{opening}”"),
}
_NAMELESS: Final = {
    "left": N_("left leg, as you face it"),
    "right": N_("right leg, as you face it"),
    "head": N_("head"),
}


def casing_pieces(job: Job, room: Room, findings: Findings) -> Iterator[Piece]:
    """Yield the legs and heads of a room's cased openings, in the order of the walls.

    A part that is longer than any stick is reported, since casing is never spliced.
    """
    for place, door in opening_names(room).items():
        stretch = room.walk[place]
        assert isinstance(stretch, Gap)  # noqa: S101  opening_names says so
        if stretch.casing is not None and stretch.clear_height is not None:
            legs = job.trim(stretch.casing)
            for piece in _casing(job, room, stretch, legs, stretch.clear_height, door):
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


def _casing(
    job: Job, room: Room, gap: Gap, legs: Trim, tall: Fraction, door: str
) -> Iterator[Piece]:
    settings = room.settings
    head = job.trim(gap.head) if gap.head else legs
    mitred = gap.head is None and not settings.head_butt
    wide = legs.height or NOTHING
    # The inner edge of a leg runs from the floor's clearance to the reveal above the opening; the
    # head's inner edge spans the opening and both reveals. What the casing's width adds depends on
    # the head.
    leg_long = tall + settings.reveal - settings.casing_floor
    head_long = gap.width + 2 * (settings.reveal + wide)
    if mitred:
        # At 45° the outer edge of a leg is longer than the inner one by the casing's width. (The
        # head's two widths are in its length either way: as mitres, or lying on the legs.)
        leg_long += wide
    else:
        head_long += 2 * settings.head_overhang
    square = square_cut()
    ends = {side: _mitre(side, wide, room) if mitred else square for side in ("left", "right")}
    foot = square
    # Of the left leg the top is its right end as it lies on the saw, face up, outer edge away; of
    # the right leg the left end.
    for side, left, right in (("left", foot, ends["right"]), ("right", ends["left"], foot)):
        yield _piece(
            room, legs, door, f"{side}-leg", PieceKind.LEG, leg_long, tall, (left, right),
            _remark(side, gap),
        )  # fmt: skip
    yield _piece(
        room, head, door, "head", PieceKind.HEAD, head_long, gap.width,
        (ends["left"], ends["right"]), _remark("head", gap),
    )  # fmt: skip


def _remark(part: str, gap: Gap) -> Remark:
    """Return what a ticket says of a leg or head; left and right as one faces the opening."""
    if gap.called:
        return Remark(_OF_NAMED[part], (("opening", gap.called),))
    return Remark(_NAMELESS[part])


def _mitre(side: str, wide: Fraction, room: Room) -> Cut:
    return face_cut(Joint.HEAD, side, HEAD_MITRE, wide, Joint.HEAD.long_point, room.settings)


def _piece(
    room: Room,
    trim: Trim,
    door: str,
    part: str,
    kind: PieceKind,
    exact: Fraction,
    clear: Fraction,
    cuts: tuple[Cut, Cut],
    remark: Remark,
) -> Piece:
    length, rounding = round_length(exact, "head", room.settings)
    return Piece(
        id=f"{room.tag}-{door}-{trim.name}-{part}",
        kind=kind,
        room=room.name,
        run=door,
        trim=trim.name,
        length=length,
        wall=clear,
        left=cuts[0],
        right=cuts[1],
        rounding=rounding,
        unit=room.settings.unit,
        remarks=(remark,),
    )
