"""Reads the ends of a stretch: how each is cut, and the corner that it meets."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.language import tree
from trimlang.lengths.angles import arc_cosine, degrees_text
from trimlang.survey.job import End, Fit, Joint
from trimlang.survey.measures import Findings, length
from trimlang.survey.settings import Settings

LEAST_CORNER: Final = 30
MOST_CORNER: Final = 330
_STRAIGHT: Final = 180
_SIXTEENTH: Final = Fraction(1, 16)
_VAGUE: Final = Fraction(1, 2)
"""A corner measured less closely than half a degree is worth measuring again."""

_CORNERS: Final = (Joint.IN_CORNER, Joint.OUT_CORNER)


def read_sides(
    facts: tuple[tree.Fact, ...], taken: str, settings: Settings, findings: Findings
) -> dict[str, End]:
    """Return the ends that a line states, by ``left`` and ``right``."""
    ends: dict[str, End] = {}
    for fact in facts:
        if fact.kind != "side":
            continue
        side, end = fact.values
        assert isinstance(side, tree.Word) and isinstance(end, tree.End)  # noqa: S101, PT018
        if side.text in ends:
            findings.say("T226", side.span, side=side.text)
            continue
        ends[side.text] = _end(end, taken, settings, findings)
    return ends


def _end(end: tree.End, taken: str, settings: Settings, findings: Findings) -> End:
    joint = Joint(end.joint.text)
    corner: Fraction | None = None
    error: Fraction | None = None
    coped = False
    for fact in end.facts:
        value = fact.values[0] if fact.values else None
        if fact.kind == "measured" and isinstance(value, tree.Angle):
            corner = _corner(joint, value.degrees, fact, findings)
        elif fact.kind == "by_diagonal":
            measured = _by_diagonal(fact, settings, findings)
            if measured is not None:
                corner = _corner(joint, measured[0], fact, findings)
                error = measured[1] if corner is not None else None
        elif fact.kind == "cope_here":
            coped = joint is Joint.IN_CORNER
            if not coped:
                findings.say("T229", fact.span, joint=joint)
        elif isinstance(value, tree.Word):
            taken = value.text
    fit = Fit.COPED if coped else Fit.MITRED
    return End(joint, corner, fit, taken == "point", end.span, error)


def _corner(
    joint: Joint, degrees: Fraction, fact: tree.Fact, findings: Findings
) -> Fraction | None:
    """Return the angle of a corner: through the room at an inside one, else through the wall.

    More than half a turn at an outside corner was measured through the room,
    and is what the wall lacks of a whole turn.
    """
    if joint not in _CORNERS:
        findings.say("T227", fact.span, joint=joint)
        return None
    if not LEAST_CORNER <= degrees <= MOST_CORNER or degrees == _STRAIGHT:
        findings.say(
            "T228",
            fact.span,
            degrees=degrees_text(degrees).rstrip("°"),
            least=LEAST_CORNER,
            most=MOST_CORNER,
        )
        return None
    if degrees < _STRAIGHT:
        return degrees
    if joint is Joint.IN_CORNER:
        findings.say(
            "T236", fact.span, degrees=degrees_text(degrees), wall=degrees_text(360 - degrees)
        )
        return None
    return 360 - degrees


def corner_by_diagonal(one: Fraction, other: Fraction, diagonal: Fraction) -> Fraction | None:
    """Return the corner, in degrees, whose legs and diagonal are these (inches).

    The law of cosines: cos θ = (a² + b² - d²) / 2ab.  None where the three
    lengths make no triangle.
    """
    ratio = (one**2 + other**2 - diagonal**2) / (2 * one * other)
    return arc_cosine(ratio) if -1 < ratio < 1 else None


def diagonal_error(one: Fraction, other: Fraction, diagonal: Fraction) -> Fraction:
    """Return how many degrees a sixteenth of an inch in the diagonal makes, at most."""
    corner = corner_by_diagonal(one, other, diagonal)
    changed = (
        corner_by_diagonal(one, other, diagonal + step) for step in (-_SIXTEENTH, _SIXTEENTH)
    )
    return max(
        (abs(near - corner) for near in changed if near is not None and corner is not None),
        default=Fraction(_STRAIGHT),
    )


def _by_diagonal(
    fact: tree.Fact, settings: Settings, findings: Findings
) -> tuple[Fraction, Fraction] | None:
    names = ("a leg of the corner", "a leg of the corner", "the diagonal")
    sizes: list[Fraction] = []
    for value, what in zip(fact.values, names, strict=True):
        assert isinstance(value, tree.Measure)  # noqa: S101  the grammar says so
        size = length(value, settings.unit, findings, what=what)
        if size is not None:
            sizes.append(size)
    if len(sizes) < len(names):
        return None
    one, other, diagonal = sizes
    corner = corner_by_diagonal(one, other, diagonal)
    if corner is None:
        findings.say("T237", fact.span)
        return None
    error = diagonal_error(one, other, diagonal)
    if error > max(settings.saw_step, _VAGUE):
        findings.say("T238", fact.span, corner=degrees_text(corner), error=degrees_text(error))
    return corner, error
