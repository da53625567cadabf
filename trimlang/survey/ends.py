"""Reads the ends of a stretch: how each one is cut, and the corner that it is at."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.diagnostics import Span
from trimlang.joint_row import Fit
from trimlang.joints import Joint
from trimlang.language import facts, tree
from trimlang.language.facts import Side
from trimlang.lengths.angles import STRAIGHT, arc_cosine, degrees_text
from trimlang.lengths.tape import SIXTEENTH
from trimlang.record import record
from trimlang.settings.setting_kinds import TakenAt
from trimlang.settings.table import Settings
from trimlang.survey.job import End
from trimlang.survey.measures import Findings, length
from trimlang.survey.on_walls import BlockInCorner
from trimlang.survey.said_blocks import ByName
from trimlang.survey.wall_blocks import read_corner_block

# Degrees between which a corner is believed.
LEAST_CORNER: Final = 30
MOST_CORNER: Final = 330
MOST_TWIST: Final = 5
"""Degrees: no wall twists further within a trim's height."""
LEAST_TAPER: Final = 10
MOST_TAPER: Final = 60
"""Degrees from square between which the end of a trim is sloped."""
MOST_READING: Final = (STRAIGHT - LEAST_CORNER) / 2
"""Degrees from square: the mitre of the sharpest corner that is believed."""
_VAGUE: Final = Fraction(1, 2)
"""Degrees; a corner that is measured less closely than that is worth measuring again."""


@record
class Taken:
    """Where the tape ran, and over scraps ``of`` which trim, where the file says so."""

    at: TakenAt
    of: str | None = None


def read_sides(
    said: tuple[facts.Fact, ...],
    taken: Taken,
    settings: Settings,
    findings: Findings,
    blocks: ByName | None = None,
) -> dict[Side, End]:
    """Return the ends that a line states, by their sides; ``blocks`` are those of its corners."""
    ends: dict[Side, End] = {}
    for fact in said:
        if not isinstance(fact, facts.AtEnd):
            continue
        if fact.side in ends:
            findings.say("T226", fact.word, side=fact.side)
        else:
            # The first of two is kept: the second is what was typed too much.
            ends[fact.side] = read_end(fact.end, taken, settings, findings, blocks)
    return ends


def read_end(
    end: tree.WrittenEnd,
    taken: Taken,
    settings: Settings,
    findings: Findings,
    blocks: ByName | None = None,
) -> End:
    """Return an end as written: its joint, and what stands in its brackets."""
    joint = Joint.of(end.joint.text)
    corner: Fraction | None = None
    error: Fraction | None = None
    bullnose: Fraction | None = None
    wider, two_pieces = Fraction(0), False
    coped = implied = mitred = False
    block: BlockInCorner | None = None
    for fact in end.facts:
        match fact:
            # A taper is at no corner: the same brackets say there how steeply the end is sloped.
            case facts.WrittenCorner(size=tree.Angle(degrees=degrees)) if joint.row.tapers:
                corner = _taper(degrees, fact, findings)
            case facts.WrittenCorner(size=tree.Angle(degrees=degrees)):
                corner = _corner(joint, degrees, fact, findings)
            case facts.WrittenCorner(size=facts.MitreThere(angle=angle)) if _no_reading(angle):
                own = degrees_text(angle.degrees).rstrip("°")
                findings.say("T728", fact.span, degrees=own, instead=f"{own} deg")
            case facts.WrittenCorner(size=facts.MitreThere(angle=angle)):
                # A mitre bisects the corner, so a mitre m belongs to a corner of 180° - 2m.
                corner = _corner(joint, STRAIGHT - 2 * angle.degrees, fact, findings)
            case facts.WrittenCorner(size=facts.OutOfPlumb(floor=floor, top=top)):
                corner, wider = _out_of_plumb(joint, floor, top, fact, findings)
            case facts.Bullnose(radius=radius, two_pieces=in_two):
                two_pieces = in_two
                bullnose = length(radius, settings.unit, findings, what="a bullnose's radius")
                # A rounded bead is put on the edge of an outside corner; an inside corner has no
                # such edge.
                if not joint.is_outside:
                    findings.say("T290", fact.span, joint=joint)
                    bullnose = None
            case facts.WrittenCorner(size=facts.Diagonal() as size):
                measured = _by_diagonal(size, fact.span, settings, findings)
                if measured is not None:
                    corner = _corner(joint, measured[0], fact, findings)
                    error = measured[1] if corner is not None else None
            case facts.BlockHere():
                block = read_corner_block(fact, joint, blocks, findings)
            case facts.Implied():
                # Only what the walls do can follow from the other corners; how a free end is cut
                # cannot.
                implied = joint.is_corner
                if not implied:
                    findings.say("T227", fact.span, joint=joint)
            case facts.CopedHere():
                coped = joint.is_inside
                if not coped:
                    findings.say("T229", fact.span, joint=joint)
            case facts.MitredHere():
                mitred = joint.is_corner
                if not mitred:
                    findings.say("T492", fact.span, joint=joint)
            case facts.WrittenTaken():
                taken = Taken(at=fact.at, of=fact.of.text if fact.of else None)
    # Every other corner is mitred until the room's settings or the neighbour say otherwise.
    fit = Fit.COPED if coped else Fit.MITRED
    return End(
        joint=joint,
        corner=corner,
        fit=fit,
        # no trim lies in a corner that a block fills, so no scraps lay there either
        over_scraps=taken.at is TakenAt.POINT and block is None,
        span=end.span,
        corner_error=error,
        # A measured angle is kept, whatever else the brackets say.
        implied=implied and corner is None,
        bullnose=bullnose,
        scraps_of=taken.of,
        two_pieces=two_pieces,
        wider_below=wider,
        block=block,
        mitred=mitred,
    )


def _out_of_plumb(
    joint: Joint,
    floor: tree.Angle,
    top: tree.Angle,
    fact: facts.WrittenCorner,
    findings: Findings,
) -> tuple[Fraction | None, Fraction]:
    """Return a corner's angle at mid height, and by how much it is wider at the floor (degrees)."""
    below = _corner(joint, floor.degrees, fact, findings)
    if below is None:
        return None, Fraction(0)
    above = _corner(joint, top.degrees, fact, findings)
    if above is None:
        return None, Fraction(0)
    # More would show as a twisted wall: most likely one of the two was read on another corner.
    if abs(below - above) > MOST_TWIST:
        said = {"floor": degrees_text(below), "top": degrees_text(above), "most": MOST_TWIST}
        findings.say("T472", fact.span, **said)
        return None, Fraction(0)
    # The saw is set for mid height, so that what is open at the top and at the bottom is the same.
    return (below + above) / 2, below - above


def _no_reading(angle: tree.Angle) -> bool:
    """Tell whether an angle is more than any saw is set to, and so the corner's own."""
    return angle.degrees > MOST_READING


def _taper(degrees: Fraction, fact: facts.WrittenCorner, findings: Findings) -> Fraction | None:
    """Return the angle of a taper from square, None where no saw cuts it."""
    if LEAST_TAPER <= degrees <= MOST_TAPER:
        return degrees
    findings.say("T233", fact.span, what="a taper", least=LEAST_TAPER, most=MOST_TAPER)
    return None


def _corner(
    joint: Joint, degrees: Fraction, fact: facts.WrittenCorner, findings: Findings
) -> Fraction | None:
    """Return a corner's angle (degrees): through the room if inside, through the wall if outside.

    More than half a turn at an outside corner was measured through the room; the angle through
    the wall is what is missing to a whole turn.
    """
    if not joint.is_corner:
        findings.say("T227", fact.span, joint=joint)
        return None
    # 180° is no corner: the wall goes straight on, which “splice” says.
    if not LEAST_CORNER <= degrees <= MOST_CORNER or degrees == STRAIGHT:
        findings.say(
            "T228",
            fact.span,
            degrees=degrees_text(degrees).rstrip("°"),
            least=LEAST_CORNER,
            most=MOST_CORNER,
        )
        return None
    if degrees < STRAIGHT:
        return degrees
    # At an inside corner an angle of more than half a turn means that the wall turns away from the
    # room: it is an outside corner, and guessing would swap the room's shape.
    if joint.is_inside:
        findings.say(
            "T236", fact.span, degrees=degrees_text(degrees), wall=degrees_text(360 - degrees)
        )
        return None
    # Measured through the room: through the wall it is the rest of a whole turn.
    return 360 - degrees


def corner_by_diagonal(one: Fraction, other: Fraction, diagonal: Fraction) -> Fraction | None:
    """Return the corner (degrees) with these two legs and this diagonal (inches).

    By the law of cosines: cos θ = (a² + b² - d²) / 2ab.  None where the three lengths make no
    triangle.
    """
    ratio = (one**2 + other**2 - diagonal**2) / (2 * one * other)
    return arc_cosine(ratio) if -1 < ratio < 1 else None


def diagonal_error(one: Fraction, other: Fraction, diagonal: Fraction) -> Fraction:
    """Return by how many degrees a sixteenth of an inch in the diagonal changes the corner."""
    corner = corner_by_diagonal(one, other, diagonal)
    # A sixteenth more and less: near a straight angle the two differ, and the worse one counts.
    changed = (corner_by_diagonal(one, other, diagonal + step) for step in (-SIXTEENTH, SIXTEENTH))
    return max(
        (abs(near - corner) for near in changed if near is not None and corner is not None),
        default=Fraction(STRAIGHT),
    )


def _by_diagonal(
    measured: facts.Diagonal, span: Span, settings: Settings, findings: Findings
) -> tuple[Fraction, Fraction] | None:
    leg = "a leg of the corner"
    one = length(measured.one, settings.unit, findings, what=leg)
    other = length(measured.other, settings.unit, findings, what=leg)
    diagonal = length(measured.across, settings.unit, findings, what="the diagonal")
    if one is None or other is None or diagonal is None:
        return None
    corner = corner_by_diagonal(one, other, diagonal)
    if corner is None:
        findings.say("T237", span)
        return None
    error = diagonal_error(one, other, diagonal)
    # Short legs make the angle vague: say so where the saw could be set more finely than that.
    if error > max(settings.saw_step, _VAGUE):
        findings.say("T238", span, corner=degrees_text(corner), error=degrees_text(error))
    return corner, error
