"""Makes the pieces of a spliced wall, and finds each piece's mates."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from string import ascii_lowercase
from typing import Final

from trimlang.joinery.cuts import end_cut, scarf_lap
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.joinery.rounding import round_length
from trimlang.joinery.splice_lengths import Studs, laps_too_far, least_piece, split
from trimlang.joinery.strips import end_of, neighbours, run_of, strips
from trimlang.joinery.trim_walk import Wall
from trimlang.joint_row import Edge, RoundedAs
from trimlang.joints_by_role import SCARF
from trimlang.language.facts import Side
from trimlang.lengths.angles import cosine
from trimlang.lengths.tape import NOTHING, feet_text, length_text, steps_up
from trimlang.record import record
from trimlang.settings.table import Settings
from trimlang.survey.job import End, Job, Room, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.sticks import next_stick

_SHORTER: Final = (Fraction(18), Fraction(12))
"""Shortest pieces offered where no splice finds a stud (inches): common practice, no source."""


@record
class Splice:
    """A run that is spliced: its trim as one piece, and where that is cut.

    ``cut`` are the exact lengths of the pieces from the left; two neighbours share a ``lap``, and
    none is longer than ``longest``.  ``past`` is how much more of a stick a piece of crown may
    need than its length.  ``free`` says that neither studs nor the job file decide where the
    joints are, so that the planner may; ``studs`` are those that it may choose among, if it may.
    ``cut`` is one length where the run needs no joint and the planner may make one; ``kept`` says
    that it needs none and has one, since the log has parts of it.  Lengths in inches.
    """

    whole: Piece
    wall: Wall
    trim: Trim
    lap: Fraction
    longest: Fraction
    past: Fraction
    cut: tuple[Fraction, ...]
    free: bool
    studs: Studs | None = None
    kept: bool = False

    @property
    def is_joined(self) -> bool:
        """Whether the run has a joint whatever the plan."""
        return len(self.cut) > 1

    @property
    def could_differ(self) -> bool:
        """Whether the plan could join the run elsewhere, or where it needs no joint."""
        return self.free or self.studs is not None or not self.is_joined

    def names(self, count: int = 0) -> list[str]:
        """Return the ids of its pieces from the left, as it is cut or cut into so many."""
        count = count or len(self.cut)
        if count == 1:
            return [self.whole.id]
        parts = ascii_lowercase[:count] if count <= len(ascii_lowercase) else range(1, count + 1)
        return [f"{self.whole.id}-{part}" for part in parts]

    def pieces(self, cut: Sequence[Fraction] | None = None) -> list[Piece]:
        """Return the pieces from the left, cut to ``cut`` or to other lengths (inches)."""
        lengths = self.cut if cut is None else cut
        return [self.whole] if len(lengths) == 1 else _pieces(self, lengths)


def spliced(
    whole: Piece, wall: Wall, trim: Trim, longest: Fraction, findings: Findings
) -> Splice | None:
    """Return how ``whole`` is spliced; None, with a finding, where that cannot be done."""
    run, settings = wall.run, wall.room.settings
    stick = next_stick(trim.offers, whole.length, settings.unit)
    known = {"run": run.label, "trim": trim.name, "stick": stick}
    if not run.may_splice:
        need, reach = (feet_text(one, settings.unit) for one in (whole.length, longest))
        findings.say("T401", run.span, need=need, longest=reach, **known)
        return None
    if trim.thickness is None:
        findings.say("T211", run.span, joint="splice", run=f"run {run.label}", trim=trim.name)
        return None
    lap = scarf_lap(trim, settings)
    past = Fraction(0)
    if whole.wall_edge is not None:
        # A crown's number is along its wall edge; at outside corners its ceiling edge takes more of
        # the stick, so less of the stick is left for the number.
        past = steps_up(_past_wall_edge(whole), settings.rounding_step)
        longest -= past
    studs = _studs(whole, wall)
    exact, force = whole.rounding.exact, run.must_splice
    cut = split(exact, longest, lap, settings, force=force, studs=studs)
    if cut is None and studs is not None:
        # A joint between studs has nothing to be nailed to, but a wall that is longer than its
        # sticks has to be joined somewhere.
        cut = split(exact, longest, lap, settings, force=force, studs=None)
        if cut is not None:
            least = _least_that_helps(wall, exact, longest, lap, studs)
            shorter = f", or {least}" if least else ""
            findings.say("T406", run.span, run=run.label, trim=whole.trim, shorter=shorter)
        studs = None
    if cut is None:
        findings.say("T403", run.span, **known, **_too_short(whole, wall, longest, lap))
        return None
    # One stick would do: the file wants a joint in the middle, and the planner must not move it.
    halved = force and exact <= longest - settings.rounding_step
    # Where an end's mitre and the lap together are as long as the shortest piece, moving the joint
    # could cut into the mitre.
    steep = max(whole.left.inset, whole.right.inset) + lap >= settings.splice_least
    free = run.first_stud is None and not halved and not steep
    return Splice(
        whole=whole,
        wall=wall,
        trim=trim,
        lap=lap,
        longest=longest,
        past=past,
        cut=cut,
        free=free,
        studs=None if halved or steep else studs,
    )


def could_be_spliced(whole: Piece, wall: Wall, trim: Trim, longest: Fraction) -> Splice | None:
    """Return a run that one stick reaches as one that may be spliced; None: it may not."""
    run, settings = wall.run, wall.room.settings
    if not run.may_splice or trim.thickness is None:
        return None
    lap = scarf_lap(trim, settings)
    steep = max(whole.left.inset, whole.right.inset) + lap >= settings.splice_least
    least = least_piece(lap, settings) + settings.rounding_step
    if steep or whole.wall_edge is not None or whole.rounding.exact + lap < 2 * least:
        return None
    return Splice(
        whole=whole,
        wall=wall,
        trim=trim,
        lap=lap,
        longest=longest,
        past=NOTHING,
        cut=(whole.rounding.exact,),
        free=False,
        studs=_studs(whole, wall),
    )


def _too_short(whole: Piece, wall: Wall, longest: Fraction, lap: Fraction) -> dict[str, str]:
    """Say whether the wall or the stock is too short for a splice, and what would help."""
    settings, trim = wall.room.settings, whole.trim
    if laps_too_far(lap, longest):
        why = f"its laps would be longer than half a stick of {trim}"
        return {"why": why, "remedy": "Look at how thick it is, or list longer stock."}
    least = length_text(settings.splice_least, settings.unit)
    shorter = _least_that_helps(wall, whole.rounding.exact, longest, lap, None)
    two = f"too short for two pieces of {least} and their lap"
    # Only “splice” asked for it, so the wall needs none.
    if whole.length <= longest:
        remedy = f"Take splice off the run, as one stick of {trim} reaches"
        remedy += f", or {shorter}." if shorter else "."
        return {"why": f"the wall is {two}", "remedy": remedy}
    remedy = f"List longer stock, or {shorter}." if shorter else "List longer stock."
    if whole.rounding.exact + lap < 2 * settings.splice_least:
        return {"why": f"the wall is longer than a stick of {trim}, and {two}", "remedy": remedy}
    why = f"the sticks of {trim} are too short for pieces of {least} and more"
    return {"why": why, "remedy": remedy}


def _least_that_helps(
    wall: Wall, exact: Fraction, longest: Fraction, lap: Fraction, studs: Studs | None
) -> str:
    """Return the setting with which the wall can be spliced, "" where none can be offered."""
    settings, force = wall.room.settings, wall.run.must_splice
    for least in _SHORTER:
        shorter = settings.having(Settings.splice_least, least)
        if least < settings.splice_least and split(
            exact, longest, lap, shorter, force=force, studs=studs
        ):
            return f"allow shorter pieces (splices: least {length_text(least, settings.unit)})"
    return ""


def _pieces(splice: Splice, cut: Sequence[Fraction]) -> list[Piece]:
    whole, wall, trim, lap = splice.whole, splice.wall, splice.trim, splice.lap
    settings, count = wall.room.settings, len(cut)
    scarf = End(joint=SCARF, span=wall.run.span)
    pieces: list[Piece] = []
    place, laps = Fraction(0), Side.LEFT
    for number, (name, exact) in enumerate(zip(splice.names(count), cut, strict=True), start=1):
        left = whole.left if number == 1 else end_cut(scarf, Side.LEFT, trim, settings, laps)
        place += exact - lap
        # The two ends of one joint must be cut parallel, so which piece laps over is asked once for
        # each joint and holds for the right end here and the next piece's left end.
        laps = wall.laps(place + lap / 2)
        right = whole.right if number == count else end_cut(scarf, Side.RIGHT, trim, settings, laps)
        rounding = replace(whole.rounding, row=RoundedAs.SPLICE, exact=exact, by=Fraction(0))
        length = exact
        # What is said of an end of the wall is said on the piece that has it.
        ends = ((Side.LEFT, number == 1), (Side.RIGHT, number == count))
        here = {None, *(side for side, is_there in ends if is_there)}
        # Only the last piece is rounded: the others are whole steps already.
        if number == count:
            length, rounding = round_length(exact, whole.rounding.row, settings)
        pieces.append(
            replace(
                whole,
                id=name,
                length=length,
                left=left,
                right=right,
                rounding=rounding,
                part=number,
                parts=count,
                remarks=tuple(one for one in whole.remarks if one.at in here),
            )
        )
    if whole.wall_edge is None:
        return pieces
    return [on_wall_edge(piece, piece.length, settings) for piece in pieces]


def on_wall_edge(piece: Piece, length: Fraction, settings: Settings) -> Piece:
    """Return a crown piece with ``length`` along its wall edge; it may take more of the stick.

    At an outside corner the ceiling edge reaches further than the wall edge.
    """
    over = _past_wall_edge(piece)
    return replace(piece, wall_edge=length, length=steps_up(length + over, settings.rounding_step))


def _past_wall_edge(piece: Piece) -> Fraction:
    return sum(
        (
            (cut.inset if cut.long_edge is Edge.FACE else NOTHING)
            + (cut.through if cut.through_edge is Edge.FACE else NOTHING)
            for cut in (piece.left, piece.right)
            if cut.crown
        ),
        Fraction(0),
    )


def _studs(whole: Piece, wall: Wall) -> Studs | None:
    """Return where the studs are along a piece; None where the file does not say."""
    run, settings = wall.run, wall.room.settings
    if run.first_stud is None:
        return None
    # Along a stair the studs are further apart, by 1 ÷ cos(slope).
    spacing = settings.stud_spacing / cosine(run.slope)
    # The piece begins at its long point, which lies past the wall's end at an outside corner.
    past = whole.wall_edge is None and whole.left.long_edge in (Edge.FACE, Edge.TOP)
    grown = whole.left.inset if past else Fraction(0)
    return Studs(run.first_stud + wall.before + grown, spacing)


def with_mates(job: Job, room: Room, pieces: Sequence[Piece]) -> list[Piece]:
    """Return a room's pieces with the ids of the pieces that they are joined to on a wall."""
    new: defaultdict[str, list[str]] = defaultdict(list)
    along: dict[tuple[str, str], list[Piece]] = {}
    for piece in pieces:
        if piece.kind is PieceKind.RUN:
            along.setdefault((piece.run, piece.trim), []).append(piece)
        elif piece.kind.is_glued:
            for mate in piece.mates:
                new[mate].append(piece.id)
    pairs = [pair for parts in along.values() for pair in pairwise(parts)]
    for one, other, trim in _surveyed(job, room):
        before, after = along.get((one, trim)), along.get((other, trim))
        # The last piece of one run and the first of the next share the joint that was asked for.
        if before and after:
            pairs.append((before[-1], after[0]))
    for before_piece, after_piece in pairs:
        new[before_piece.id].append(after_piece.id)
        new[after_piece.id].append(before_piece.id)
    return [
        replace(one, mates=(*one.mates, *new[one.id])) if one.id in new else one for one in pieces
    ]


def _surveyed(job: Job, room: Room) -> Iterator[tuple[str, str, str]]:
    """Yield the labels of neighbouring walls that the job file itself splices, and the trim."""
    # Hardly any file says so, and then there is no strip to look for.
    asked = any(run.right.joint.laps for run in room.runs)
    for name in dict.fromkeys(name for run in room.runs for name in run.trims if asked):
        for one, other in neighbours(room, strips(room, job.trim(name))):
            ends = end_of(room, one, Side.RIGHT), end_of(room, other, Side.LEFT)
            if all(end is not None and end.joint.laps for end in ends):
                before, after = run_of(room, one, Side.LEFT), run_of(room, other, Side.LEFT)
                yield before.label, after.label, name
