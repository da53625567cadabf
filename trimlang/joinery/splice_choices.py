"""Other places where a long wall may be pieced together, all within the rules.

The rules are those of ``splice_lengths.py``: no piece shorter than the file allows,
which also keeps joints that far from the corners; none longer than the sticks;
all but the last whole steps of the tape.  There are as many pieces as ever:
another joint is more work than an offcut is worth.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from trimlang.joinery.splice_lengths import least_piece
from trimlang.joinery.spliced_pieces import Splice
from trimlang.lengths.tape import steps_down, steps_nearest, steps_up


def other_cuts(splice: Splice, wanted: Iterable[Fraction]) -> tuple[tuple[Fraction, ...], ...]:
    """Return other lengths for the pieces of a run, each of a different cut.

    First those with a piece of a length that is ``wanted`` (what an offcut gives,
    say), in that order; then the remainder before the full sticks, and then all
    pieces alike.
    """
    settings = splice.wall.room.settings
    step, least = settings.rounding_step, least_piece(splice.lap, settings)
    count = len(splice.cut)
    if count < 2:
        return ()
    # the pieces together measure the wall and all laps
    total = sum(splice.cut, Fraction(0))
    full, last = steps_down(splice.longest, step), splice.longest - step
    shortest = steps_up(least, step)

    def after(first: Fraction) -> tuple[Fraction, ...]:
        """Full sticks behind a first piece, the one before the last giving way."""
        cut = [first]
        for place in range(1, count - 1):
            left = total - sum(cut) - (count - 1 - place) * shortest
            cut.append(min(full, steps_down(left, step)))
        return (*cut, total - sum(cut))

    tried = [after(steps_down(length - splice.past, step)) for length in wanted]
    tried.append(after(max(steps_up(total - (count - 2) * full - last, step), shortest)))
    alike = steps_nearest(total / count, step)
    tried.append((*([alike] * (count - 1)), total - alike * (count - 1)))
    return tuple(
        cut
        for cut in dict.fromkeys(tried)
        if cut != splice.cut and least <= min(cut) and cut[0] <= full and cut[-1] <= last
    )
