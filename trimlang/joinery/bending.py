"""Trim that bends round a wall that curves: how long it is, and how its back is kerfed.

What bends and does not stretch decides the length.  Of kerfed trim that is the skin that the kerfs
leave at the face: on a wall of radius R that curves into the room it lies at R + t less half the
skin, on one that curves away at R - t and half the skin, t being the thickness.  Trim that is
flexible bends about its middle.  Where it stands in front of other trim, R is of that one's face.

A kerf k wide and d deep closes at the back after a turn of 2 asin(k ÷ 2 d).  That, and how far the
flats between the kerfs may stand off the round, say how many there are: a flat a long stands off by
a² ÷ 8 R in its middle (geometry of the circle; the kerfed bend as joiners' handbooks give it, by
trial on scrap, from memory).
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from math import ceil, isqrt
from typing import Final

from trimlang.joinery.piece import Piece
from trimlang.joinery.remarks import Remark, SaidAngle, SaidLength
from trimlang.language.facts import Bend
from trimlang.lengths.angles import TENTH, arc_length, arc_sine
from trimlang.lengths.tape import (
    NOTHING,
    length_text,
    steps_down,
    steps_nearest,
    steps_up,
)
from trimlang.marking import N_
from trimlang.record import record
from trimlang.settings.table import Settings
from trimlang.survey.job import Run, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.wall_curve import WallCurve

STANDS_OFF: Final = Fraction(1, 64)
"""Inches that a flat between two kerfs may stand off the round (common practice, no source)."""

_SKINS: Final = tuple(Fraction(part, 32) for part in range(2, 9))
"""What may be left at the face of kerfed trim (inches): common practice, no source."""

_MOST_KERFS: Final = 2000
"""More are no bend but a mistake in the radius (a sanity limit, no source)."""

_ROUND: Final = {
    Bend.IN: N_("bends round a wall that curves away: radius {radius}, {angle}, arc {arc} on chord"
                " {chord}"),
    Bend.OUT: N_("bends round a wall that curves into the room: radius {radius}, {angle}, arc {arc}"
                 " on chord {chord}"),
}  # fmt: skip
_CLEAR: Final = N_("no kerf within {lap} of its scarf: move it clear of that")
_KERFS: Final = N_(
    "kerf its back {n} times, {deep} deep, {apart} apart, the first and the last {first} from its"
    " ends; {left} stays"
)
_FLEXIBLE: Final = N_("flexible: bend it, no kerfs")


@record
class BentTrim:
    """A trim on a wall that curves: ``length`` is what its straight stick has along the curve.

    ``kerfs`` in its back are ``deep`` and ``apart``, and leave a ``skin``; there are none where it
    bends by itself.  Lengths in inches.
    """

    length: Fraction
    kerfs: int = 0
    deep: Fraction = NOTHING
    apart: Fraction = NOTHING
    skin: Fraction = NOTHING


def bent(curve: WallCurve, trim: Trim, off: Fraction, settings: Settings) -> BentTrim | None:
    """Return how a trim whose back stands ``off`` the wall bends round it; None where it cannot.

    Its thickness must be known, and that of kerfed trim be more than the skin.
    """
    out = 1 if curve.way is Bend.OUT else -1
    thick = trim.thickness or NOTHING
    back = curve.radius + out * off
    face = back + out * thick
    # A wall that curves away more tightly than the trim stands out: its face would have no length.
    if min(back, face) <= 0:
        return None
    if trim.flexible:
        return BentTrim(arc_length((back + face) / 2, curve.turn))
    skin, kerf = settings.kerf_leaves, settings.kerf
    deep = thick - skin
    if deep <= 0 or not kerf:
        return None
    long = arc_length(face - out * skin / 2, curve.turn)
    # One that is wider than twice its depth never closes; then only the flats count.
    closes = 2 * arc_sine(kerf / (2 * deep)) if kerf < 2 * deep else curve.turn
    flat_squared = 8 * face * STANDS_OFF
    # Flats that are short enough: the least whole number whose square is (long ÷ flat)² or more.
    flats = _root_upwards(long**2 / flat_squared)
    count = max(ceil(curve.turn / closes), flats)
    # Evenly over the whole curve: a wider flat anywhere would show as a kink.
    apart = long / count
    # Wood thinner than a kerf between two kerfs breaks out when it is bent.
    if apart < 2 * kerf or count > _MOST_KERFS:
        return None
    return BentTrim(length=long, kerfs=count, deep=deep, apart=apart, skin=skin)


def _root_upwards(square: Fraction) -> int:
    """Return the least whole number whose square is at least this much."""
    root = isqrt(ceil(square))
    return root if root**2 >= square else root + 1


def bent_run(
    run: Run, trim: Trim, off: Fraction, settings: Settings, findings: Findings
) -> tuple[Run, BentTrim | None]:
    """Return a run whose length is what its trim takes along a curve, and how that bends.

    A straight run is returned as it is, and so is one that its trim cannot follow, which is
    reported.
    """
    if run.curve is None:
        return run, None
    # A crown touches wall and ceiling; bent along the one, it would twist off the other.
    if trim.spring is not None:
        findings.say("T449", run.span, run=run.label, trim=trim.name)
        return run, None
    if trim.thickness is None:
        findings.say("T211", run.span, joint="bend", run=f"run {run.label}", trim=trim.name)
        return run, None
    bend = bent(run.curve, trim, off, settings)
    if bend is None:
        least = length_text(settings.kerf_leaves, settings.unit)
        other = _other_skin(run.curve, trim, off, settings)
        findings.say("T450", run.span, run=run.label, trim=trim.name, left=least, other=other)
        return run, None
    return replace(run, length=bend.length), bend


def _other_skin(curve: WallCurve, trim: Trim, off: Fraction, settings: Settings) -> str:
    """Return how a remedy says what to leave at the face for the trim to follow, "" if nothing."""
    # Deeper kerfs close sooner and want to stand closer; a thin trim may have none left. The least
    # change that helps is offered.
    for skin in sorted(_SKINS, key=lambda one: abs(one - settings.kerf_leaves)):
        if bent(curve, trim, off, settings.having(Settings.kerf_leaves, skin)) is not None:
            return (
                f", another thickness at the face (kerfs: leave {length_text(skin, settings.unit)})"
            )
    return ""


def bend_remarks(run: Run, bend: BentTrim | None, settings: Settings) -> Iterator[Remark]:
    """Yield what the ticket of a bent piece says of its curve."""
    curve = run.curve
    if curve is None or bend is None:
        return
    step, unit = settings.rounding_step, settings.unit
    arc = arc_length(curve.radius, curve.turn)
    yield Remark(
        _ROUND[curve.way],
        (
            ("radius", SaidLength(steps_nearest(curve.radius, step), unit)),
            ("angle", SaidAngle(steps_nearest(curve.turn, TENTH))),
            ("arc", SaidLength(steps_nearest(arc, step), unit, in_feet=True)),
            ("chord", SaidLength(steps_nearest(curve.chord, step), unit, in_feet=True)),
        ),
    )
    if not bend.kerfs:
        yield Remark(_FLEXIBLE)


def kerfed(pieces: Sequence[Piece], bend: BentTrim | None, settings: Settings) -> list[Piece]:
    """Return a run's pieces, each with how its back is kerfed."""
    if bend is None or not bend.kerfs:
        return list(pieces)
    step, unit = settings.rounding_step, settings.unit
    # Down to a mark: a kerf that is less deep closes sooner, and kerfs that are closer leave flats
    # that are shorter.  Depth and what stays are the thickness together.
    deep, apart = (steps_down(size, step) or size for size in (bend.deep, bend.apart))
    sizes = {
        "deep": deep,
        "apart": apart,
        "left": bend.deep + bend.skin - deep,
    }
    texts = [(name, SaidLength(size, unit)) for name, size in sizes.items()]
    made: list[Piece] = []
    for piece in pieces:
        # As many spaces as there is room for, rounded down as they are, or a long flat would be
        # left; both ends share what is over, a quarter to three quarters of a space each.
        count = max(ceil(piece.back / apart - Fraction(1, 2)), 1)
        first = steps_nearest((piece.back - (count - 1) * apart) / 2, step)
        said = ("first", SaidLength(first, unit))
        remark = Remark(_KERFS, (("n", str(count)), *texts, said))
        kerfed_piece = piece.with_remark(remark)
        # A kerf within a scarf would cut its lap in two.
        laps = [cut.inset for cut in (piece.left, piece.right) if cut.joint.laps]
        if laps:
            lap = SaidLength(steps_up(max(laps), step), unit)
            kerfed_piece = kerfed_piece.with_remark(Remark(_CLEAR, (("lap", lap),)))
        made.append(kerfed_piece)
    return made
