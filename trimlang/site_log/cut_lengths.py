"""Keeps cut pieces at the length that they were cut to, and joints where they were cut."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from trimlang.joinery.piece import Piece
from trimlang.joinery.pieces import Places, with_kept_joints
from trimlang.joinery.spliced_pieces import Splice
from trimlang.lengths.tape import steps_nearest
from trimlang.site_log.ledger import SAME, Standing, standing
from trimlang.survey.job import Job


def frozen(pieces: Iterable[Piece], live: Mapping[str, Standing]) -> tuple[Piece, ...]:
    """Return the pieces, with those that are cut at the length that the log gives (inches)."""
    return tuple(_frozen(piece, live.get(piece.id)) for piece in pieces)


def _frozen(piece: Piece, now: Standing | None) -> Piece:
    if now is None or now.length is None:
        return piece
    longer = now.length - piece.to_mark
    # A line tells a length to four decimal places, which is not the exact fraction. And a length
    # that would leave nothing of the piece is a slip, which the log's checks report.
    if abs(longer) < SAME or piece.length + longer <= 0:
        return piece
    return replace(
        piece,
        length=piece.length + longer,
        # A crown's ticket tells its wall edge, and what is added there is added to the stick's
        # length too.
        wall_edge=None if piece.wall_edge is None else piece.wall_edge + longer,
        rounding=replace(piece.rounding, by=piece.rounding.by + longer),
    )


def with_joints_of_log(
    job: Job, pieces: Sequence[Piece], spliced: Iterable[Splice]
) -> tuple[tuple[Piece, ...], tuple[Splice, ...]]:
    """Return pieces and runs with the joints that no wall needs as the log has them.

    A run that was cut in one piece gets no joint any more; one of which a part was cut keeps
    the joint that this part has, whatever a new plan would do.
    """
    live = standing(job.log)
    runs = tuple(one for one in spliced if one.is_joined or one.whole.id not in live)
    cuts = {one.whole.id: _cut_in_two(one, live) for one in runs if not one.is_joined}
    kept = {name: cut for name, cut in cuts.items() if cut is not None}
    return with_kept_joints(job, pieces, runs, kept) if kept else (tuple(pieces), runs)


def _cut_in_two(splice: Splice, live: Mapping[str, Standing]) -> tuple[Fraction, ...] | None:
    """Return a run of one piece as its cut parts divide it; None: no length of a part is known."""
    step, total = splice.wall.room.settings.rounding_step, sum(splice.cut, splice.lap)
    left, right = (None if name not in live else live[name].length for name in splice.names(2))
    if left is None and right is None:
        return None
    # The left part is a whole number of steps, and the right one takes up what rounding leaves.
    first = steps_nearest(total - (right or Fraction(0)) if left is None else left, step)
    cut = (first, total - first)
    return cut if splice.lap < min(cut) and max(cut) <= splice.longest else None


def splices_that_follow(
    splices: Iterable[Splice], places: Places, live: Mapping[str, Standing]
) -> Places:
    """Return where spliced walls are cut, where some of their pieces have been cut already.

    The last piece that is not cut yet takes up what the cut ones are too long or too short.
    """
    moved = dict(places)
    for splice in splices:
        cut = _followed(splice, tuple(places.get(splice.whole.id, splice.cut)), live)
        if cut is not None:
            moved[splice.whole.id] = cut
    return moved


def _followed(
    splice: Splice, cut: Sequence[Fraction], live: Mapping[str, Standing]
) -> tuple[Fraction, ...] | None:
    # Without the returns, which follow the pieces of the run.
    pieces = splice.pieces(cut)[: len(cut)]
    lengths = list(cut)
    free: list[int] = []
    for place, piece in enumerate(pieces):
        now = live.get(piece.id)
        if now is None:
            free.append(place)
        elif now.length is not None and abs(now.length - piece.to_mark) >= SAME:
            lengths[place] = now.length
    if not free or lengths == list(cut):
        return None
    lengths[free[-1]] += sum(cut, Fraction(0)) - sum(lengths, Fraction(0))
    # It must be more than its own lap and come off one stick; else the wall is left as it was, and
    # the check of the lengths reports the pieces.
    if not splice.lap < lengths[free[-1]] <= splice.longest:
        return None
    return tuple(lengths)
