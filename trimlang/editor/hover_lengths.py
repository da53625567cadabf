"""Why a piece is as long as it is: its wall or opening, and what each end adds or takes off.

Every sum comes to the length before rounding; what no rule here names is told as what else
stands there, so that nothing is hidden in a figure.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import Final

from trimlang.joinery.bending import bent_run
from trimlang.joinery.cased_opening import CasedOpening
from trimlang.joinery.casings import foot_below
from trimlang.joinery.cuts import scarf_lap
from trimlang.joinery.meeting import Meeting, Meets
from trimlang.joinery.piece import Cut, Piece, PieceKind
from trimlang.joinery.pieces import grows_at
from trimlang.joinery.sloped_ceilings import along_ceiling
from trimlang.joinery.trim_walk import Wall, walls
from trimlang.joint_row import Edge, Fit
from trimlang.language.facts import Side
from trimlang.lengths.tape import NOTHING, Unit, is_tape_fraction
from trimlang.record import record
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.job import Gap, Job, Room, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.openings import opening_names

_PLACES: Final = 3
"""Decimals of a figure that lies on no mark: the cut is rounded from it, as the next line says."""


_SEEN: Final = Fraction(1, 1000)
"""Inches: less is what cosines leave in exact fractions, and is told of nowhere."""


@record
class _Term:
    """What is added to a length, or taken off, and why (inches)."""

    amount: Fraction
    why: str


class LaidWalls:
    """The walls of a job's rooms as its trims run along them; each room's are laid out once.

    A result keeps pieces and not how they came about.
    """

    def __init__(self, job: Job) -> None:
        self.job = job
        self._of_room: dict[str, list[tuple[Wall, Trim]]] = {}

    def wall(self, piece: Piece, room: Room) -> tuple[Wall, Trim] | None:
        """Return the wall that a piece is on, None where it is on none."""
        if room.tag not in self._of_room:
            self._of_room[room.tag] = list(walls(self.job, room, Findings()))
        for wall, trim in self._of_room[room.tag]:
            if wall.run.label == piece.run and trim.name == piece.trim:
                return wall, trim
        return None


def why_so_long(piece: Piece, laid: LaidWalls, pen: Pen) -> Iterator[str]:
    """Yield lines that say how a piece's length before rounding follows from what was measured."""
    job = laid.job
    room = next((one for one in job.rooms if piece.id.startswith(f"{one.tag}-")), None)
    if room is None:
        return
    if piece.kind is PieceKind.RUN:
        yield from _of_run(piece, laid, room, pen)
    elif piece.kind.of_casing:
        yield from _of_casing(piece, job, room, pen)
    elif piece.kind is PieceKind.FRAME:
        yield f"as long as the box is there, along the frame's outer edge: {pen.length(piece.wall)}"
    elif piece.kind is PieceKind.RETURN:
        yield f"closes an end: as long as that stands out from the wall, {pen.length(piece.wall)}"
    elif piece.kind is PieceKind.CORNER:
        yield f"a small piece where two ends meet, {_amount(piece.rounding.exact, pen)}"
    elif piece.kind is PieceKind.LOOSE:
        yield f"as long as it was measured: {pen.length(piece.wall)}"


def _of_run(piece: Piece, laid: LaidWalls, room: Room, pen: Pen) -> Iterator[str]:
    found = laid.wall(piece, room)
    if found is None:
        return
    wall, trim = found
    # What is wrong here has been reported with the job; asked again, it would be said twice.
    settings, unheard = room.settings, Findings()
    bent, _ = bent_run(wall.run, trim, wall.off, settings, unheard)
    run, _, _ = along_ceiling(bent, trim, (wall.left, wall.right), settings, unheard)
    # A run that goes on past an opening is measured as one wall with it.
    alone = next((one.length for one in room.runs if one.label == piece.run), wall.run.length)
    over = ", with the openings that it goes on past" if alone != wall.run.length else ""
    yield f"the wall is {_amount(wall.run.length, pen)}{over}"
    if run.length != wall.run.length:
        along = "its curve" if bent.length != wall.run.length else "the sloping ceiling"
        yield f"along {along} that is {_amount(run.length, pen)}"
    total = run.length
    for side in Side:
        met = side.of(wall.left, wall.right)
        # A part of a spliced run has one of the wall's ends at most.
        reaches = piece.part == (1 if side is Side.LEFT else piece.parts)
        cut = side.of(piece.left, piece.right) if reaches else None
        terms = list(_at_end(wall, trim, side, met, cut))
        total += sum((one.amount for one in terms), NOTHING)
        yield f"{side} end {_told(terms, pen)}"
    # Where the joint falls is the planner's choice, so the parts are told as shares of the whole.
    if piece.parts > 1:
        lap = scarf_lap(trim, settings)
        yield (
            f"part {piece.part} of {piece.parts} of {_amount(total, pen)}: one stick is too short,"
            f" and the joints lap by {_amount(lap, pen)}"
        )
    else:
        yield from _rest(piece.rounding.exact - total, piece.rounding.exact, pen)


def _rest(rest: Fraction, exact: Fraction, pen: Pen) -> Iterator[str]:
    # What no rule above has a name for is still told, or the sum would not come out.
    if abs(rest) >= _SEEN:
        yield f"what else meets there {_signed(rest, pen)}"
    yield f"together {_amount(exact, pen)}"


def _at_end(wall: Wall, trim: Trim, side: Side, met: Meeting, cut: Cut | None) -> Iterator[_Term]:
    """Yield what one end adds to the wall's length, or takes off it."""
    grown = grows_at(wall, trim, side)
    joint = met.end.joint
    # The parts that are known by name first; what they leave is the corner's own.
    # The lap belongs to one of the two pieces, or it would be counted twice.
    if joint.laps and side is Side.RIGHT and not met.end.over_scraps:
        lap = scarf_lap(trim, wall.room.settings)
        grown -= lap
        yield _Term(lap, "the lap of the scarf, which this side has")
    if met.scraps:
        grown += met.scraps
        yield _Term(-met.scraps, "the tape ran over scraps that reached past the corner")
    if met.short:
        grown += met.short
        before = "a rounded corner, a block or a level piece takes that much of the wall"
        yield _Term(-met.short, before if met.short > 0 else "it goes on past the wall's end")
    # Square across the trim the top would end where the bottom does; plumb on a slope it does not.
    if cut is not None and cut.long_edge is Edge.TOP and cut.inset != cut.through:
        yield _Term(cut.inset - cut.through, "cut plumb on the slope, its top reaches further")
    yield _Term(grown, _corner(met, trim, grown))


def _corner(met: Meeting, trim: Trim, grown: Fraction) -> str:
    joint = met.end.joint
    if met.meets is Meets.ITSELF:
        if joint.returns:
            return "it stops at the wall's end, and a return closes it"
        return "it stops at the wall's end" if joint.stops else f"its {joint.word} ends there"
    # What it stands in front of holds it off the wall, and so moves where it meets the next one.
    off = f", standing {trim.in_front_of} off the wall" if met.off and trim.in_front_of else ""
    if met.meets is Meets.PLANE:
        if not grown:
            return "it butts against the next wall"
        return f"it butts against what stands on the next wall{off}"
    if met.outside:
        return f"round the outside corner its face is longer than the wall{off}"
    if met.end.fit is Fit.COPED:
        return f"coped over its neighbour, its pattern reaches into the corner{off}"
    if met.end.fit is Fit.SQUARE:
        return f"it runs square into the corner{off}"
    if grown:
        return f"the mitre of the inside corner is closed there{off}"
    return "its back reaches into the inside corner"


def _of_casing(piece: Piece, job: Job, room: Room, pen: Pen) -> Iterator[str]:
    place = next((at for at, name in opening_names(room).items() if name == piece.run), None)
    # A part of a casing has the name of its opening, which is how its opening is found.
    gap = None if place is None else room.walk[place]
    if not isinstance(gap, Gap) or gap.clear_height is None:
        return
    opening = CasedOpening(job=job, room=room, gap=gap, door=piece.run, tall=gap.clear_height)
    upright = piece.kind.stands_in_pairs and piece.at is not None
    yield f"the clear {'height' if upright else 'width'} is {_amount(piece.wall, pen)}"
    exact = piece.rounding.exact
    terms = [one for one in _round_an_opening(piece, opening, upright=upright) if one.amount]
    rest = exact - piece.wall - sum((one.amount for one in terms), NOTHING)
    # Blocks, overhangs and bands change a part by what no rule above counts.
    if rest:
        terms.append(_Term(rest, _past_the_casing(piece, gap, rest)))
    yield from (f"{_signed(one.amount, pen)}: {one.why}" for one in terms)
    yield f"together {_amount(exact, pen)}"


def _round_an_opening(piece: Piece, opening: CasedOpening, *, upright: bool) -> Iterator[_Term]:
    gap, settings, job = opening.gap, opening.room.settings, opening.job
    casing = None if gap.casing is None else job.trim(gap.casing)
    wide = NOTHING if casing is None else casing.height or NOTHING
    if piece.kind is PieceKind.JAMB:
        if not upright:
            thick = job.trim(piece.trim).thickness or NOTHING
            yield _Term(2 * thick, "the side strips on both sides, which it lies across")
        return
    if casing is None:
        return
    # A leg has the reveal at its top alone; a head lies past both.
    reveals = 1 if upright else 2
    yield _Term(reveals * settings.reveal, "the reveal" if upright else "the reveal on both sides")
    if upright:
        yield _Term(foot_below(opening, wide), _foot(opening))
        mitred = any(cut.long_edge is not Edge.BOTH for cut in (piece.left, piece.right))
        # At 45° the outer edge of a leg is longer than its inner edge by the casing's width.
        if piece.trim == gap.casing and mitred:
            yield _Term(wide, "the mitre at its top, as long as the casing is wide")
        return
    yield _Term(2 * wide, "the casing's width on both sides")
    if piece.kind is PieceKind.STOOL:
        yield _Term(2 * settings.stool_horn, "a horn at both ends")


def _past_the_casing(piece: Piece, gap: Gap, rest: Fraction) -> str:
    """Say what makes a part longer or shorter than the casing's own size."""
    if rest < 0:
        return (
            "a corner block stands there" if gap.trimmings.corner_block else "it ends before that"
        )
    if piece.trim == gap.trimmings.backband:
        return "the backband goes round the casing's outer edge"
    return "its overhang past the legs" if piece.kind is PieceKind.HEAD else "it goes on past that"


def _foot(opening: CasedOpening) -> str:
    if opening.gap.trimmings.four_sides:
        return "the frame goes on below the opening"
    if opening.gap.trimmings.plinth is not None:
        return "it stands on a plinth"
    return "it stands off the floor"


def _told(terms: list[_Term], pen: Pen) -> str:
    """Say what an end adds: each term that is not nothing, or that nothing is added."""
    said = [f"{_signed(one.amount, pen)}, {one.why}" for one in terms if one.amount]
    return "; ".join(said) if said else f"adds nothing: {terms[-1].why}"


def _signed(inches: Fraction, pen: Pen) -> str:
    return f"{'adds' if inches > 0 else 'takes off'} {_amount(abs(inches), pen)}"


def _amount(inches: Fraction, pen: Pen) -> str:
    """Write a length on a mark as a tape shows it, and any other as a decimal number."""
    if pen.unit is Unit.MM or is_tape_fraction(inches):
        return pen.length(inches)
    return f"{pen.decimal(inches, _PLACES)} in"
