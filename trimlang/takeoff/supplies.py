"""Nails, caulk, filler, paint and blocks for the whole job.

Rules (common practice, no source, unless noted): nails every 12 to 16 in along
a piece and at both its ends, two one over the other in a trim taller than
2 in; a bead of caulk along the top edge of a trim that stands on the wall and
up each corner, filling a triangle of the bead's size; filler for a hole 1/8 in
across and deep at each nail and a seam 1/16 in wide and deep over each scarf and
outside corner, and as much again that is wiped and sanded off; paint on face and
top edge, in coats.  Volumes after NIST Handbook 44 (1 US gallon = 231 in³).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction
from math import ceil
from typing import Final

from trimlang.diagnostics import Span
from trimlang.joinery.balustrades import caps, is_cap
from trimlang.joinery.fixings import nail_bite, nail_height
from trimlang.joinery.piece import Piece
from trimlang.lengths.tape import decimal_text, length_text
from trimlang.lengths.units import VolumeUnit, far_unit, in_cubic_inches, in_inches
from trimlang.survey.job import Job, Trim
from trimlang.survey.on_walls import CasingBlock
from trimlang.survey.wall_blocks import blocks_of
from trimlang.takeoff.asked_for import asked_for
from trimlang.takeoff.supply import HOLE, by_fluid_ounce, by_the_can
from trimlang.takeoff.supply import Consumable as Consumable
from trimlang.takeoff.supply import Supply as Supply

__all__ = ["Supply", "bead_inches", "blocks", "nail_bite", "nail_height", "nails_in", "supplies"]

TALL_ENOUGH_FOR_TWO: Final = Fraction(2)
HOLDS_TWO: Final = Fraction(2)
"""A piece shorter than this (inches) splits at nails in both ends and takes one in its middle
(common practice, no source)."""
SEAM: Final = Fraction(1, 16) ** 2
"""The section of the filler over a joint, in²."""


def supplies(job: Job, pieces: Iterable[Piece]) -> tuple[Supply, ...]:
    """Return what the job needs of nails, caulk, filler and paint, and of what else it asks for.

    ``blocks`` counts the rest.
    """
    pieces = tuple(pieces)
    # A return is glued, not nailed, and too small to count for caulk and paint.
    runs = tuple(piece for piece in pieces if not piece.kind.is_glued)
    every = job.settings.nail_every
    # A balustrade's cap is fixed from below, and has no wall to be caulked to.
    on_posts = caps(job)
    walled = tuple(piece for piece in runs if not is_cap(piece, on_posts))
    nails = sum(nails_in(piece, job.trim(piece.trim), every) for piece in walled)
    # Nails first: how many holes there are to fill follows from them.
    usual = _nails(job, nails) + _caulk(job, walled) + _filler(job, runs, nails) + _paint(job, runs)
    return usual + asked_for(job, pieces, nails)


def blocks(jobs: Iterable[Job]) -> tuple[Supply, ...]:
    """Return the blocks of some jobs, those alike in name, size and price together.

    Two plinths an opening, a corner block at each corner of its casing, all of them again where
    both faces of the wall are cased; one in each corner, and one in a wall, that has one.
    """
    counted: Counter[CasingBlock] = Counter()
    for job in jobs:
        for room in job.rooms:
            for there in blocks_of(room):
                # The place in the file plays no part in what is bought.
                counted[replace(there.block, span=Span("", 1, 1, 1))] += there.count
    return tuple(_block_supply(block, count) for block, count in counted.items())


def _block_supply(block: CasingBlock, count: int) -> Supply:
    sizes = {"wide": block.wide, "tall": block.tall, "thick": block.thickness}
    # A block's size may be unsaid; then the order does not say it either.
    known = {name: size for name, size in sizes.items() if size is not None}
    texts = [f"{length_text(size)} {name}" for name, size in known.items()]
    return Supply(
        what=Consumable.BLOCK,
        detail=", ".join((*texts, *block.material)),
        need=Fraction(count),
        need_unit="blocks",
        count=count,
        package="each",
        price=block.price,
        called=block.name,
        facts=tuple(known.items()),
    )


def nails_in(piece: Piece, trim: Trim, every: Fraction) -> int:
    """Return how many nails a piece takes: at both ends and no further apart than ``every``."""
    # Both ends and as many equal steps between as keep within the distance.
    stations = 1 if piece.length < HOLDS_TWO else ceil(piece.length / every) + 1
    return stations * (2 if trim.height is None or trim.height > TALL_ENOUGH_FOR_TWO else 1)


def _nails(job: Job, count: int) -> tuple[Supply, ...]:
    settings = job.settings
    if not count:
        return ()
    box = settings.nail_box
    return (
        Supply(
            what=Consumable.NAILS,
            detail=f"{length_text(settings.nail_long, settings.unit)} 18-gauge brads, every"
            f" {length_text(settings.nail_every, settings.unit)} at most",
            need=Fraction(count),
            need_unit="nails",
            count=ceil(count / box.holds),
            package=f"box of {box.holds}",
            price=box.price,
            size=box.holds,
            size_unit="",
            facts=(("long", settings.nail_long), ("every", settings.nail_every)),
        ),
    )


def bead_inches(job: Job, runs: Iterable[Piece]) -> Fraction:
    """Return the inches of bead: along each top edge, and up one side of each corner."""
    total = Fraction(0)
    for piece in runs:
        trim = job.trim(piece.trim)
        if trim.in_front_of or not piece.kind.is_caulked:
            continue  # caulked to what is behind it, or to no wall
        # Two pieces meet in a corner and share its bead, so each counts for half of it.
        corners = sum(cut.joint.is_corner for cut in (piece.left, piece.right))
        total += piece.length + Fraction(corners, 2) * (trim.height or 0)
    return total


def _caulk(job: Job, runs: tuple[Piece, ...]) -> tuple[Supply, ...]:
    settings = job.settings
    beads = bead_inches(job, runs) * (1 + settings.caulk_waste / 100)
    if not beads:
        return ()
    tube = settings.caulk_tube
    # A bead fills the corner between wall and trim: a triangle with two sides as long as the bead
    # is wide.
    section = settings.caulk_bead**2 / 2
    far = far_unit(settings.unit)
    inches_a_tube = in_cubic_inches(tube.holds, VolumeUnit.FLUID_OUNCE) / section
    return (
        Supply(
            what=Consumable.CAULK,
            detail=f"paintable, {length_text(settings.caulk_bead, settings.unit)} bead,"
            f" {decimal_text(inches_a_tube / in_inches(Fraction(1), far), 0)} {far} a tube",
            need=beads / in_inches(Fraction(1), far),
            need_unit=f"{far} of bead",
            count=ceil(beads / inches_a_tube),
            package=f"{decimal_text(tube.holds, 1)} fl oz tube",
            price=tube.price,
            size=tube.holds,
            size_unit="fl oz",
            facts=(("bead", settings.caulk_bead), ("reach", inches_a_tube), ("length", beads)),
        ),
    )


def _filler(job: Job, runs: tuple[Piece, ...], nails: int) -> tuple[Supply, ...]:
    # Where there is putty, the holes are filled with it, and only joints with filler.
    holes = 0 if job.settings.putty_tub.holds else nails
    seams, volume = 0, holes * HOLE
    for piece in runs:
        # A joint is at two pieces; it is counted once, at the piece on its left.
        if piece.right.joint.row.filled:
            trim = job.trim(piece.trim)
            seams += 1
            volume += ((trim.height or 0) + (trim.thickness or 0)) * SEAM
    if not volume:
        return ()
    return (
        by_fluid_ounce(
            Consumable.FILLER,
            volume,
            job.settings.filler_tub,
            detail=(f"{holes} nail holes, " if holes else "")
            + f"{seams} scarfs and outside corners",
            package="tub",
            facts=(("holes", Fraction(holes)), ("seams", Fraction(seams))),
        ),
    )


def _paint(job: Job, runs: tuple[Piece, ...]) -> tuple[Supply, ...]:
    settings = job.settings
    area = Fraction(0)
    for piece in runs:
        trim = job.trim(piece.trim)
        # The face and the top edge, as the module says: the back and the bottom edge are not seen.
        # Where the profile's girth is given, that is what the brush goes over.
        across = trim.girth or (trim.height or 0) + (trim.thickness or 0)
        area += piece.length * across
    if not area or not settings.paint_coats:
        return ()
    return (
        by_the_can(
            Consumable.PAINT,
            area,
            settings.paint_can,
            settings,
            coats=settings.paint_coats,
            said=f"{settings.paint_coats} coats",
            of="face and edge",
            facts=(("coats", settings.paint_coats),),
        ),
    )
