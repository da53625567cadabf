"""Putty, glue, primer for backs, and saw blades: counted only where the file asks for them.

Rules (common practice, no source): putty for a hole 1/8 in across and deep at each nail; glue in a
film 1/128 in thick (a gallon covers about 200 sq ft) over the cut of each outside corner, scarf,
return and small piece of a rounded corner; both twice, since as much again is wiped off.  Primer
in one coat on the back and the bottom edge, as far as paint goes.  Two cuts a piece dull a blade.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil
from typing import Final

from trimlang.joinery.piece import Piece
from trimlang.lengths.angles import cosine
from trimlang.lengths.tape import decimal_text
from trimlang.survey.job import Job
from trimlang.takeoff.supply import HOLE, Consumable, Supply, by_fluid_ounce, by_the_can

GLUE_FILM: Final = Fraction(1, 128)
"""Inches."""
CUTS_A_PIECE: Final = 2


def asked_for(job: Job, pieces: tuple[Piece, ...], holes: int) -> tuple[Supply, ...]:
    """Return what the job asks for besides; ``holes`` are those of all nails."""
    return (*_putty(job, holes), *_glue(job, pieces), *_primer(job, pieces), *_blades(job, pieces))


def _putty(job: Job, holes: int) -> tuple[Supply, ...]:
    tub = job.settings.putty_tub
    if not tub.holds or not holes:
        return ()
    return (
        by_fluid_ounce(
            Consumable.PUTTY,
            holes * HOLE,
            tub,
            detail=f"{holes} nail holes",
            package="tub",
            facts=(("holes", Fraction(holes)),),
        ),
    )


def glued_joints(job: Job, pieces: tuple[Piece, ...]) -> tuple[int, Fraction]:
    """Return how many joints are glued, and the area of their cuts together (square inches)."""
    count, area = 0, Fraction(0)
    for piece in pieces:
        trim = job.trim(piece.trim)
        section = (trim.height or 0) * (trim.thickness or 0)
        # A joint is at two pieces; it is counted at the small piece that is glued on, and of two
        # long ones at that on its left.
        if piece.kind.is_glued:
            cut = max(piece.left.exact, piece.right.exact)
        elif piece.right.joint.row.filled:
            cut = piece.right.exact
        else:
            continue
        count += 1
        # A slanting cut is longer than the trim is thick.
        area += section / cosine(cut)
    return count, area


def _glue(job: Job, pieces: tuple[Piece, ...]) -> tuple[Supply, ...]:
    bottle = job.settings.glue_bottle
    joints, area = glued_joints(job, pieces)
    if not bottle.holds or not joints:
        return ()
    return (
        by_fluid_ounce(
            Consumable.GLUE,
            area * GLUE_FILM,
            bottle,
            detail=f"{joints} outside corners, scarfs and returns",
            package="bottle",
            facts=(("joints", Fraction(joints)),),
        ),
    )


def _primer(job: Job, pieces: tuple[Piece, ...]) -> tuple[Supply, ...]:
    can, settings = job.settings.primer_can, job.settings
    area = Fraction(0)
    for piece in pieces:
        if not piece.kind.is_glued:
            trim = job.trim(piece.trim)
            area += piece.length * ((trim.height or 0) + (trim.thickness or 0))
    if not can.holds or not area:
        return ()
    return (
        by_the_can(
            Consumable.PRIMER,
            area,
            can,
            settings,
            coats=Fraction(1),
            said="one coat",
            of="backs and bottom edges",
        ),
    )


def _blades(job: Job, pieces: tuple[Piece, ...]) -> tuple[Supply, ...]:
    blade = job.settings.saw_blade
    cuts = CUTS_A_PIECE * len(pieces)
    if not blade.holds or not cuts:
        return ()
    return (
        Supply(
            what=Consumable.BLADE,
            detail=f"{cuts} cuts, two a piece; a blade makes {decimal_text(blade.holds, 0)}",
            need=Fraction(cuts),
            need_unit="cuts",
            # A blade that is begun must be bought whole.
            count=ceil(cuts / blade.holds),
            package="each",
            price=blade.price,
            size=blade.holds,
            size_unit="cuts",
            facts=(("cuts", Fraction(cuts)), ("each", blade.holds)),
        ),
    )
