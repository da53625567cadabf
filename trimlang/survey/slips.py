"""Which single slip of the tape or the pencil would make a room close.

Each hypothesis is tried on the walk: a length misread in one of the usual
ways, the two ends of a run swapped, an inside corner written for an outside
one, a wall or an opening left out.  The figures here are only compared with
one another and never become a length, so floats will do.
"""

from __future__ import annotations

import cmath
from collections.abc import Iterator
from fractions import Fraction
from math import radians
from typing import Final

from trimlang.lengths.tape import MM, feet_text, steps_nearest
from trimlang.record import record

FOOT: Final = Fraction(12)
NARROWEST_OPENING, WIDEST_OPENING = 18, 120
AS_GOOD: Final = 0.5
"""Slips that leave less than half an inch more than the best explain as well as it does."""


MOST_STRETCHES: Final = 200
"""No room has more; trying every slip on a longer list would take too long."""


@record
class Walk:
    """A walk as slips are tried on it: each stretch's name, length and turn after it.

    ``loose`` tells for each stretch whether it ends in a butt against the butt
    of another run, where an opening may have been forgotten.
    """

    names: tuple[str, ...]
    lengths: tuple[Fraction, ...]
    turns: tuple[float, ...]
    loose: tuple[bool, ...]
    unit: str


@record
class Slip:
    """A slip, in words, and how far from closed the room would still be (inches)."""

    words: str
    left_over: float


def miss(lengths: tuple[float, ...], turns: tuple[float, ...]) -> complex:
    """Return where a walk ends, seen from its start."""
    place, heading = 0j, 0.0
    for length, turn in zip(lengths, turns, strict=True):
        place += length * cmath.exp(-1j * radians(heading))
        heading += turn
    return place


def likely_slips(walk: Walk, *, within: float) -> tuple[Slip, ...]:
    """Return the slips that explain the misclosure best, all those that do so equally well.

    Nothing where no single slip brings the walk back to within ``within``
    inches of its start.
    """
    if len(walk.names) > MOST_STRETCHES:
        return ()
    good = [slip for slip in _all_slips(walk) if slip.left_over <= within]
    if not good:
        return ()
    best = min(slip.left_over for slip in good)
    kept = [slip for slip in good if slip.left_over <= best + AS_GOOD]
    return tuple(sorted(kept, key=lambda slip: round(slip.left_over / AS_GOOD)))


def _all_slips(walk: Walk) -> Iterator[Slip]:
    lengths = tuple(float(length) for length in walk.lengths)
    turned = sum(walk.turns)
    if abs(turned - 360) < 20:
        yield from _misread(walk, lengths)
        yield from _forgotten_openings(walk, lengths)
        yield from _swapped_ends(walk, lengths)
    else:
        yield from _wrong_corners(walk, lengths)
        yield from _skipped_walls(walk, lengths, 360 - turned)


def _headings(turns: tuple[float, ...]) -> list[float]:
    headings, heading = [], 0.0
    for turn in turns:
        headings.append(heading)
        heading += turn
    return headings


def _misread(walk: Walk, lengths: tuple[float, ...]) -> Iterator[Slip]:
    here = miss(lengths, walk.turns)
    for name, length, heading in zip(walk.names, walk.lengths, _headings(walk.turns), strict=True):
        along = cmath.exp(-1j * radians(heading))
        for right, words in misreadings(length, walk.unit):
            left_over = abs(here + float(right - length) * along)
            text = feet_text(right, walk.unit)
            yield Slip(f"{name} {words}: {text} instead", left_over)


def misreadings(length: Fraction, unit: str) -> Iterator[tuple[Fraction, str]]:
    """Return what a length may have been before a usual slip, with the slip's name."""
    seen = {length}
    for right, words in _metric(length) if unit == "mm" else _feet_and_inches(length):
        if right > 0 and right not in seen:
            seen.add(right)
            yield right, words


def _metric(length: Fraction) -> Iterator[tuple[Fraction, str]]:
    for size, name in ((1000, "a metre"), (100, "100 mm"), (10, "10 mm")):
        yield length + size * MM, f"read {name} too short"
        yield length - size * MM, f"read {name} too long"
    for right in _digits_swapped(int(length / MM)):
        yield right * MM, "with two figures swapped"


def _feet_and_inches(length: Fraction) -> Iterator[tuple[Fraction, str]]:
    for feet_off, name in ((1, "a foot"), (2, "two feet")):
        yield length + feet_off * FOOT, f"read {name} too short"
        yield length - feet_off * FOOT, f"read {name} too long"
    yield length + 1, "read an inch too short"
    yield length - 1, "read an inch too long"
    whole, part = divmod(length, 1)
    feet, inches = divmod(whole, int(FOOT))
    if 0 < feet < FOOT:
        yield inches * FOOT + feet + part, "with feet and inches swapped"
    for right in _digits_swapped(int(whole)):
        yield right + part, "with two figures swapped"
    for right in _digits_swapped(int(feet)):
        yield right * FOOT + inches + part, "with two figures of the feet swapped"
    if part:
        yield whole + 1 - part, "with the fraction counted from the wrong mark"
        yield whole + part / 2, "with the fraction's lower figure misread"
        yield whole + part * 2, "with the fraction's lower figure misread"


def _digits_swapped(whole: int) -> Iterator[int]:
    digits = str(whole)
    for at in range(len(digits) - 1):
        swapped = digits[:at] + digits[at + 1] + digits[at] + digits[at + 2 :]
        if swapped[0] != "0":
            yield int(swapped)


def _forgotten_openings(walk: Walk, lengths: tuple[float, ...]) -> Iterator[Slip]:
    here = miss(lengths, walk.turns)
    for name, loose, heading in zip(walk.names, walk.loose, _headings(walk.turns), strict=True):
        if not loose:
            continue
        along = cmath.exp(-1j * radians(heading))
        wide = -(here * along.conjugate()).real
        if NARROWEST_OPENING <= wide <= WIDEST_OPENING:
            about = _roughly(wide, walk.unit)
            words = f"an opening forgotten after {name}, about {about} wide"
            yield Slip(words, abs(here + wide * along))


def _roughly(inches: float, unit: str) -> str:
    """Write a length that was only worked out, to the inch or to ten millimetres."""
    step = 10 * MM if unit == "mm" else Fraction(1)
    return feet_text(steps_nearest(Fraction(inches), step), unit)


def _swapped_ends(walk: Walk, lengths: tuple[float, ...]) -> Iterator[Slip]:
    for index, name in enumerate(walk.names):
        left, right = walk.turns[index - 1], walk.turns[index]
        if left * right < 0:
            turns = list(walk.turns)
            turns[index - 1], turns[index] = right, left
            yield Slip(f"left and right of {name} swapped", abs(miss(lengths, tuple(turns))))


def _wrong_corners(walk: Walk, lengths: tuple[float, ...]) -> Iterator[Slip]:
    for index, turn in enumerate(walk.turns):
        turns = (*walk.turns[:index], -turn, *walk.turns[index + 1 :])
        if turn and abs(sum(turns) - 360) < 20:
            wrong, right = ("in", "out") if turn > 0 else ("out", "in")
            after = walk.names[(index + 1) % len(walk.names)]
            words = (
                f"the corner of {walk.names[index]} and {after} written {wrong}-corner"
                f" for {right}-corner"
            )
            yield Slip(words, abs(miss(lengths, turns)))


def _skipped_walls(walk: Walk, lengths: tuple[float, ...], lacking: float) -> Iterator[Slip]:
    headings = _headings(walk.turns)
    here = miss(lengths, walk.turns)
    for index, turn in enumerate(walk.turns):
        for first in (90.0, -90.0):
            second = turn + lacking - first
            if abs(abs(second) - 90) > 20:
                continue
            # what follows the skipped wall is turned by what was lacking
            place = miss(lengths[: index + 1], walk.turns[: index + 1])
            rest = (here - place) * cmath.exp(-1j * radians(lacking))
            along = cmath.exp(-1j * radians(headings[index] + first))
            long = -((place + rest) * along.conjugate()).real
            if long > 1:
                left_over = abs(place + rest + long * along)
                after = walk.names[(index + 1) % len(walk.names)]
                about = _roughly(long, walk.unit)
                words = (
                    f"a wall skipped between {walk.names[index]} and {after}, about {about} long"
                )
                yield Slip(words, left_over)
