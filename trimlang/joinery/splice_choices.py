"""Other places where a long wall may be spliced, all within the rules.

The rules are those of ``splice_lengths.py``: no piece shorter than the file allows, which also
keeps joints that far from the corners; none longer than the sticks; all but the last a whole
number of steps of the tape.  The number of pieces stays the same: one more joint is more work
than an offcut is worth.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from trimlang.joinery.splice_lengths import Studs, least_piece, split
from trimlang.joinery.spliced_pieces import Splice
from trimlang.lengths.tape import steps_down, steps_nearest, steps_up


def other_cuts(splice: Splice, wanted: Iterable[Fraction]) -> tuple[tuple[Fraction, ...], ...]:
    """Return other ways to cut a run into pieces: their lengths (inches), without repeats.

    First those whose first piece has a ``wanted`` length (such as an offcut's), in that order;
    then the remainder in front of the full sticks; then all pieces alike.  Joints on studs stay on
    studs: first those that leave least of a wanted length.
    """
    settings = splice.wall.room.settings
    step, least = settings.rounding_step, least_piece(splice.lap, settings)
    count = len(splice.cut)
    if count < 2:
        return ()
    if splice.studs is not None:
        return tuple(_on_studs(splice, splice.studs, wanted))
    # Together the pieces measure the wall and all laps.
    total = sum(splice.cut, Fraction(0))
    # The last piece may be rounded up by nearly a step, so it must be a step shorter than the
    # stick.
    full, last = steps_down(splice.longest, step), splice.longest - step
    shortest = steps_up(least, step)

    def after(first: Fraction) -> tuple[Fraction, ...]:
        """Return full sticks behind a first piece, shortened so that those after keep the least."""
        cut = [first]
        for place in range(1, count - 1):
            left = total - sum(cut) - (count - 1 - place) * shortest
            cut.append(min(full, steps_down(left, step)))
        return (*cut, total - sum(cut))

    # A stick of that length gives so much less along a crown's wall edge.
    # Offcuts first, since one that is used up saves a stick; the others only move the joint.
    tried = [after(steps_down(length - splice.past, step)) for length in wanted]
    tried.append(after(max(steps_up(total - (count - 2) * full - last, step), shortest)))
    alike = steps_nearest(total / count, step)
    tried.append((*([alike] * (count - 1)), total - alike * (count - 1)))
    return tuple(
        cut
        for cut in dict.fromkeys(tried)
        # The last piece may round up and the first may not be longer than a stick gives; whatever
        # breaks a rule is left out, so that no plan can choose it.
        if cut != splice.cut and least <= min(cut) and cut[0] <= full and cut[-1] <= last
    )


def _on_studs(
    splice: Splice, studs: Studs, wanted: Iterable[Fraction]
) -> list[tuple[Fraction, ...]]:
    """Return the cuts whose first joint is on another stud and the others as far on as can be."""
    settings, lap = splice.wall.room.settings, splice.lap
    step, least = settings.rounding_step, least_piece(lap, settings)
    exact = sum(splice.cut, Fraction(0)) - (len(splice.cut) - 1) * lap
    found: list[tuple[Fraction, ...]] = []
    stud = studs.at_or_before(min(splice.longest, exact))
    while (first := steps_down(stud + lap / 2, step)) >= least:
        behind = first - lap
        rest = Studs(studs.first - behind, studs.spacing)
        others = split(exact - behind, splice.longest, lap, settings, force=False, studs=rest)
        cut = None if others is None else (first, *others)
        if (
            cut is not None
            and cut != splice.cut
            and len(cut) == len(splice.cut)
            and min(cut) >= least
            and first <= steps_down(splice.longest, step)
        ):
            found.append(cut)
        stud -= studs.spacing
    lengths = tuple(wanted)

    def left_over(cut: tuple[Fraction, ...]) -> Fraction:
        over = [long - part for long in lengths for part in cut if long >= part]
        return min(over, default=splice.longest)

    return sorted(found, key=left_over)
