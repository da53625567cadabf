"""Slips at openings: one that was forgotten, and a corner beside one that nobody wrote."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import Final

from trimlang.joint_row import Corner
from trimlang.joints import Joint
from trimlang.language.facts import Side
from trimlang.survey.job import End, Gap, Run, Stretch
from trimlang.survey.length_slips import length_slips, roughly
from trimlang.survey.measured_walk import Course, replaced, with_end
from trimlang.survey.misfit import Misfit, misfit
from trimlang.survey.possible_slip import UNUSUAL, Slip, likely

# Inches that a forgotten opening may be wide.
_NARROWEST_OPENING, _WIDEST_OPENING = 18, 120
# Added to the score of a corner that nobody wrote, in chi-squared: walls that stop beside a door
# mostly go straight on, and outside corners beside one are rarer than inside ones.
_RARE: Final = {Corner.INSIDE: 2.0, Corner.OUTSIDE: 4.0}
_PAIR: Final = 3.0
"""Added for a second slip in the same room (common practice, no source)."""
_MOST_LENGTHS: Final = 4
_ONE_OF_SEVERAL: Final = 2.0
"""Added where only one of several openings was measured so (common practice, no source)."""


def forgotten_openings(course: Course, fit: Misfit) -> Iterator[Slip]:
    """Yield openings that may have been forgotten between two runs that both end in a butt."""
    for at, one in enumerate(course.stretches):
        other = course.after(at)
        if not (isinstance(one, Run) and isinstance(other, Run)):
            continue
        if not (one.right.joint.stops and other.left.joint.stops):
            continue
        wide, gained = fit.pull(fit.effects[at])
        if _NARROWEST_OPENING <= wide <= _WIDEST_OPENING:
            about = roughly(wide, course.room.settings.unit)
            words = f"an opening forgotten after {course.names[at]}, about {about} wide"
            # A butt against a butt is just what a forgotten opening looks like, so it is favoured.
            yield Slip(words, (at, -1), fit.total - gained - UNUSUAL)


def casing_counted_twice(course: Course) -> Iterator[Slip]:
    """Yield cased openings whose casing stands in the lengths beside it, or in its own width.

    The width of a cased opening is its clear width, to which the casing is added: who measured the
    opening over its casing, or the walls beside it up to the clear opening, has it in twice.
    """
    cased = tuple(at for at, one in enumerate(course.stretches) if _over_casing(one))
    # One who measures so does it at each opening: all of them are tried first, then one alone.
    singles = ((at,) for at in cased) if len(cased) > 1 else ()
    for about in (cased, *singles):
        stretches = course.stretches
        for at in about:
            gap = stretches[at]
            stretches = replaced(stretches, at, replace(gap, taken_up=gap.width))
        walk = replace(course, stretches=stretches).walk()
        if about and walk.goes_round:
            names = " and ".join(course.names[at] for at in about)
            words = (
                f"the casing of {names} counted twice: the width of a cased opening is the clear"
                " width, and the walls beside it end at the casing"
            )
            rare = _ONE_OF_SEVERAL if len(about) < len(cased) else 0.0
            yield Slip(words, about, misfit(walk).total + rare)


def _over_casing(stretch: Stretch) -> bool:
    return isinstance(stretch, Gap) and stretch.along > stretch.width


def with_a_length(course: Course, corners: Iterable[Slip]) -> Iterator[Slip]:
    """Yield pairs of slips: one at a corner of the walk, or one that nobody wrote, and a length.

    The lengths that explain a corner's walk equally well are named together.
    """
    for slip in corners:
        if not slip.mended:
            continue
        mended = replace(course, stretches=slip.mended)
        walk = mended.walk()
        fit = misfit(walk)
        lengths = likely(list(length_slips(mended, walk, fit)), fit.allowed)
        if lengths:
            besides = ", or ".join(other.words for other in lengths[:_MOST_LENGTHS])
            about = sorted({*slip.about, *(at for other in lengths for at in other.about)})
            yield Slip(
                f"{slip.words}; and besides {besides}",
                tuple(about),
                lengths[0].score + slip.rare + _PAIR,
                spared=lengths[0].spared,
            )


def unwritten_corners(course: Course) -> Iterator[Slip]:
    """Yield corners beside openings that nobody wrote, where the walk goes round with one more.

    A stretch that says nothing of an end goes straight on there, which is easily forgotten where a
    door stands in the corner of a room.
    """
    for at, one in enumerate(course.stretches):
        other, after = course.after(at), (at + 1) % len(course.stretches)
        if course.turns[at].at_corner or not (
            _silent(one, Side.RIGHT) or _silent(other, Side.LEFT)
        ):
            continue
        # The corner is said by the opening, since the run beside it stops square either way.
        place, side = (at, Side.RIGHT) if _silent(one, Side.RIGHT) else (after, Side.LEFT)
        gap = course.stretches[place]
        for way, rare in _RARE.items():
            joint = Joint.at(way)
            end = End(joint=joint, span=gap.span)
            said = replaced(course.stretches, place, with_end(gap, side, end))
            tried = replace(course, stretches=said)
            walk = tried.walk()
            if walk.goes_round:
                words = (
                    f"the corner of {course.names[at]} and {course.names[after]} is not written:"
                    f" {side}={joint} on {course.names[place]}"
                )
                score = misfit(walk).total + rare
                meant = ((gap.span, f"{side}={joint}"),)
                yield Slip(words, (at, after), score, meant=meant, mended=said, rare=rare)


def _silent(stretch: Run | Gap, side: Side) -> bool:
    """Tell whether a stretch is an opening or bare wall that says nothing of this end."""
    if not isinstance(stretch, Gap) or stretch.is_lost:
        return False
    return side.of(stretch.left, stretch.right) is None
