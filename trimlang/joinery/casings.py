"""Casing: two legs and a head round an opening, and what a window has below and within.

The casing stands back from the jamb's edge by the reveal.  Mitred, its members
meet at 45° across the face and are measured along their outer edge, from
long point to long point; their inner edges frame the opening and its reveal.
With a butt head the legs are square, and the head lies across both, as far past
them as the file says.  On four sides the casing goes on below the window.  A stool is the
board that the legs stand on, with horns past the casing; an apron below it is as long as the
casing is wide, and its ends turn back to the wall.  Jamb strips stand round the clear opening,
the head across the sides.  Plinths below the legs and blocks in the place of the mitres make them
shorter; a corner block's middle is where the middles of leg and head would cross.  (Common
practice, no source.)
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.joinery.backbands import band_pieces
from trimlang.joinery.cased_opening import CasedOpening, CasingPart
from trimlang.joinery.casings_in_corners import check_corners, ripped, sawn_off
from trimlang.joinery.cuts import end_cut, square_cut
from trimlang.joinery.faces import casing_mitre
from trimlang.joinery.heads import head_parts
from trimlang.joinery.limits import check_reach_of_part
from trimlang.joinery.piece import Piece
from trimlang.joinery.remarks import Remark, SaidLength
from trimlang.joinery.returns import return_piece
from trimlang.joints_by_role import RETURNED
from trimlang.language.facts import Side
from trimlang.lengths.tape import NOTHING, feet_text
from trimlang.marking import N_
from trimlang.survey.block_fits import casing_with_band
from trimlang.survey.job import End, Gap, Job, Room, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.openings import opening_names
from trimlang.survey.sticks import next_stick

_ON_A_PLINTH: Final = N_("stands on a block, “{block}”")
_TO_A_BLOCK: Final = N_("ends square at a corner block, “{block}”")
_BETWEEN: Final = N_("lies between two corner blocks, “{block}”")
_NOTCH: Final = N_("notch each end round the wall, {long} along it; scribe how deep")


def casing_pieces(job: Job, room: Room, findings: Findings) -> Iterator[Piece]:
    """Yield what surrounds a room's openings, along the walk.

    A part that no stick is long enough for is reported: casing is never spliced.
    """
    check_corners(job, room, findings)
    for place, door in opening_names(room).items():
        stretch = room.walk[place]
        assert isinstance(stretch, Gap)  # noqa: S101  opening_names says so
        # Without a height there are no legs to cut; that it is missing was reported.
        if stretch.clear_height is None:
            continue
        opening = CasedOpening(
            job=job, room=room, gap=stretch, door=door, tall=stretch.clear_height
        )
        for piece in _surround(opening):
            longest = job.trim(piece.trim).longest_stick(job.settings)
            # Reported piece by piece: legs may fit where the head does not.
            if longest is not None and piece.length > longest:
                findings.say(
                    "T410",
                    stretch.span,
                    part=piece.all_notes,
                    need=feet_text(piece.length, piece.unit),
                    trim=piece.trim,
                    longest=feet_text(longest, piece.unit),
                    stick=next_stick(job.trim(piece.trim).offers, piece.length, piece.unit),
                )
            if piece.vanishes:
                part = f"the {piece.all_notes}"
                findings.say("T122", stretch.span, part=part, trim=piece.trim)
            check_reach_of_part(piece, piece.all_notes, stretch.span, room.settings, findings)
            yield piece


def _surround(opening: CasedOpening) -> Iterator[Piece]:
    gap, job = opening.gap, opening.job
    wide = NOTHING  # how wide the casing stands out past the opening
    if gap.casing is not None:
        legs, settings = job.trim(gap.casing), opening.room.settings
        by_name = {trim.name: trim for trim in job.trims}
        wide = settings.reveal + casing_with_band(legs, gap.trimmings, by_name, settings)
        yield from _casing(opening, legs)
        if gap.trimmings.both_faces:
            yield from _casing(replace(opening, far=True), legs)
    # What is below a window follows its casing's outer width, also where no casing is cut at all.
    yield from _below(opening, wide)
    if gap.trimmings.jambs is not None:
        yield from _jambs(opening, job.trim(gap.trimmings.jambs))


def _casing(opening: CasedOpening, legs: Trim) -> Iterator[Piece]:
    """Yield the legs and the head, on four sides what lies below, and the backband."""
    gap, settings = opening.gap, opening.room.settings
    head = opening.job.trim(gap.head) if gap.head else legs
    block, wide = gap.trimmings.corner_block, legs.height or NOTHING
    mitred = _is_mitred(opening)
    across = clear_of_walls = gap.width + 2 * (settings.reveal + wide)
    # The inner edge of a leg runs from its foot to the reveal above the opening; the head's inner
    # edge spans the opening and both reveals.
    beyond = _past_the_inner_edge(opening, wide)
    foot = foot_below(opening, wide)
    leg_long = opening.tall + settings.reveal + beyond + foot
    if block is not None:
        # From block to block: half a casing's width and half a block's come off at each end.
        across -= wide + block.wide
    elif not mitred and not gap.trimmings.head:
        across += 2 * settings.head_overhang
    square = square_cut()
    left, right = (casing_mitre(side, wide, settings) if mitred else square for side in Side)
    # Of the left leg the top is its right end as it lies on the saw, face up, outer edge away; of
    # the right leg the left end.
    low_left, low_right = (left, right) if gap.trimmings.four_sides else (square, square)
    blocks = tuple(_met_by_a_leg(opening))
    # Round a casing it is the backband that reaches into a corner, and gives way there.
    gives_way = ripped(opening) if gap.trimmings.backband is None else ()
    yield opening.piece(
        CasingPart.LEFT_LEG, legs, leg_long, opening.tall, (low_left, right), *blocks, *gives_way
    )
    yield opening.piece(
        CasingPart.RIGHT_LEG, legs, leg_long, opening.tall, (left, low_right), *blocks
    )
    between = [] if block is None else [Remark(_BETWEEN, (("block", block.name),))]
    between += sawn_off(opening, (across - clear_of_walls) / 2)
    if gap.trimmings.head:
        yield from head_parts(opening, gap.trimmings.head, across)
    else:
        yield opening.piece(CasingPart.HEAD, head, across, gap.width, (left, right), *between)
    if gap.trimmings.four_sides:
        yield opening.piece(CasingPart.BOTTOM, legs, across, gap.width, (left, right), *between)
    if gap.trimmings.backband is not None:
        # The band goes round the outside: over a square head it must climb past that too.
        top = NOTHING if mitred else head.height or NOTHING
        yield from band_pieces(opening, gap.trimmings.backband, (leg_long + top, across))


def _is_mitred(opening: CasedOpening) -> bool:
    # A mitre needs two like members: another head, a square one, blocks or a head of several parts
    # rule it out.
    gap = opening.gap
    butt = opening.room.settings.head_butt
    return not (gap.head or butt or gap.trimmings.head or gap.trimmings.corner_block)


def _past_the_inner_edge(opening: CasedOpening, wide: Fraction) -> Fraction:
    """Return how much further than its inner corner a leg reaches into the head (inches)."""
    # At 45° the outer edge is longer by the casing's width; between blocks the casing ends where a
    # block, whose middle is on its own, begins.
    if _is_mitred(opening):
        return wide
    block = opening.gap.trimmings.corner_block
    return NOTHING if block is None else (wide - block.tall) / 2


def foot_below(opening: CasedOpening, wide: Fraction) -> Fraction:
    """Return how far a leg ``wide`` inches wide reaches below its opening's clear height (inches).

    It stands off the floor, on a plinth or a stool, or on the bottom of its frame, into which it
    goes as far beyond the inner corner as into the head.
    """
    settings, below = opening.room.settings, opening.gap.trimmings
    if below.stool is not None:
        # The stool's top is where the clear opening begins, and legs stand on it.
        return NOTHING
    if below.four_sides:
        return settings.reveal + _past_the_inner_edge(opening, wide)
    # Off the floor by as much as the file says, for the flooring that comes later.
    plinth = below.plinth.tall if below.plinth is not None else NOTHING
    return -settings.casing_floor - plinth


def _met_by_a_leg(opening: CasedOpening) -> Iterator[Remark]:
    """Yield what to know of the blocks that a leg stands on and ends at."""
    plinth, corner = opening.gap.trimmings.plinth, opening.gap.trimmings.corner_block
    if plinth is not None:
        yield Remark(_ON_A_PLINTH, (("block", plinth.name),))
    if corner is not None:
        yield Remark(_TO_A_BLOCK, (("block", corner.name),))


def _below(opening: CasedOpening, wide: Fraction) -> Iterator[Piece]:
    """Yield a window's stool, with horns past the casing, and its apron, returned at both ends."""
    gap, settings = opening.gap, opening.room.settings
    below = gap.trimmings
    if below.stool is not None:
        stool, square = opening.job.trim(below.stool), square_cut()
        # Horns are counted from the casing's outer edge, which the stool must carry.
        horn = wide + settings.stool_horn
        notch = Remark(_NOTCH, (("long", SaidLength(horn, settings.unit)),))
        yield opening.piece(
            CasingPart.STOOL,
            stool,
            gap.width + 2 * horn,
            gap.width,
            (square, square),
            notch,
            *sawn_off(opening, settings.stool_horn),
        )
    if below.apron is not None:
        apron = opening.job.trim(below.apron)
        # Both ends of an apron are in sight, from below even their end grain.
        end = End(joint=RETURNED, span=gap.span)
        left, right = (end_cut(end, side, apron, settings, Side.LEFT) for side in Side)
        across = opening.piece(
            CasingPart.APRON, apron, gap.width + 2 * wide, gap.width, (left, right)
        )
        returns = [return_piece(across, across, side, apron, settings) for side in Side]
        yield replace(across, mates=tuple(one.id for one in returns))
        yield from returns


def _jambs(opening: CasedOpening, strip: Trim) -> Iterator[Piece]:
    """Yield the strips that bring a jamb out to the wall's face: sides, and head across them."""
    gap, square = opening.gap, square_cut()
    # The head lies across both sides, so it is longer by their thickness.
    across = gap.width + 2 * (strip.thickness or NOTHING)
    yield opening.piece(CasingPart.LEFT_JAMB, strip, opening.tall, opening.tall, (square, square))
    yield opening.piece(CasingPart.RIGHT_JAMB, strip, opening.tall, opening.tall, (square, square))
    yield opening.piece(CasingPart.HEAD_JAMB, strip, across, gap.width, (square, square))
    if gap.trimmings.four_sides:
        yield opening.piece(CasingPart.BOTTOM_JAMB, strip, across, gap.width, (square, square))
