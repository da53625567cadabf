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
from trimlang.lengths.tape import Unit, decimal_text
from trimlang.lengths.units import far_unit, in_cubic_inches, in_inches
from trimlang.survey.job import Job
from trimlang.takeoff.supply import FILLER_LOST, HOLE, Consumable, Supply

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
    need = holes * HOLE * FILLER_LOST / in_cubic_inches(Fraction(1), "fl_oz")
    return (
        Supply(
            what=Consumable.PUTTY,
            detail=f"{holes} nail holes",
            need=need,
            need_unit="fl oz",
            count=ceil(need / tub.holds),
            package=f"{decimal_text(tub.holds, 1)} fl oz tub",
            price=tub.price,
            size=tub.holds,
            size_unit="fl oz",
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
    need = area * GLUE_FILM * FILLER_LOST / in_cubic_inches(Fraction(1), "fl_oz")
    return (
        Supply(
            what=Consumable.GLUE,
            detail=f"{joints} outside corners, scarfs and returns",
            need=need,
            need_unit="fl oz",
            count=ceil(need / bottle.holds),
            package=f"{decimal_text(bottle.holds, 1)} fl oz bottle",
            price=bottle.price,
            size=bottle.holds,
            size_unit="fl oz",
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
    volume = area / settings.paint_spread
    metric = settings.unit is Unit.MM
    measure = "litre" if metric else "gallon"
    square = in_inches(Fraction(1), far_unit(settings.unit)) ** 2
    return (
        Supply(
            what=Consumable.PRIMER,
            detail=f"one coat on {decimal_text(area / square, 1)} {'m²' if metric else 'sq ft'} of"
            " backs and bottom edges",
            need=volume / in_cubic_inches(Fraction(1), measure),
            need_unit=f"{measure}s",
            count=ceil(volume / in_cubic_inches(can.holds, can.unit)),
            package=f"{decimal_text(can.holds, 2)} {can.unit} can",
            price=can.price,
            size=can.holds,
            size_unit=can.unit,
            facts=(("area", area), ("volume", volume)),
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
            count=ceil(cuts / blade.holds),
            package="each",
            price=blade.price,
            size=blade.holds,
            size_unit="cuts",
            facts=(("cuts", Fraction(cuts)), ("each", blade.holds)),
        ),
    )
