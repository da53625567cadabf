"""The joinery pass: every run becomes the pieces that cover it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from types import MappingProxyType
from typing import TypeAlias

from trimlang.diagnostics import Diagnostic
from trimlang.joinery.bending import bend_remarks, bent_run, kerfed
from trimlang.joinery.boxes import box_pieces
from trimlang.joinery.bullnose import corner_piece
from trimlang.joinery.casings import casing_pieces
from trimlang.joinery.cuts import meeting_cut, scarf_lap
from trimlang.joinery.faces import plumb_corner, stair_end
from trimlang.joinery.fixings import check_fixings
from trimlang.joinery.limits import check_gaps, check_reach, check_widths
from trimlang.joinery.loose_pieces import loose_pieces
from trimlang.joinery.meeting import Meets
from trimlang.joinery.odd_corners import corner_remarks
from trimlang.joinery.one_way import check_one_way
from trimlang.joinery.piece import Cut, Piece, PieceKind
from trimlang.joinery.returns import return_piece
from trimlang.joinery.rounding import deciding_row, round_length
from trimlang.joinery.scribes import check_scribes, scribe
from trimlang.joinery.sloped_beads import past_ceiling_edge, past_upright
from trimlang.joinery.sloped_ceilings import along_ceiling, stops_upright, upright_end
from trimlang.joinery.spliced_pieces import (
    Splice,
    could_be_spliced,
    on_wall_edge,
    spliced,
    with_mates,
)
from trimlang.joinery.stair_marks import notched, stair_remarks, stepped
from trimlang.joinery.top_returns import sawn_tops, top_return
from trimlang.joinery.transition_pieces import level_piece
from trimlang.joinery.trim_walk import Wall, walls
from trimlang.joint_row import Edge
from trimlang.language.facts import Side
from trimlang.lengths.angles import cosine
from trimlang.lengths.tape import HAIR, NOTHING
from trimlang.survey.job import Job, Room, Run, Trim
from trimlang.survey.measures import LONGEST_WALL, Findings, metres_meant

Places: TypeAlias = Mapping[str, tuple[Fraction, ...]]
"""The lengths (inches) that spliced runs are cut to, from the left, by the whole piece's id."""


Joined: TypeAlias = tuple[tuple[Piece, ...], tuple[Splice, ...], tuple[Diagnostic, ...]]
"""Pieces, the runs that are spliced, and findings."""

JoinRoom: TypeAlias = Callable[[Job, Room, Places], Joined]


def join_room(job: Job, room: Room, places: Places) -> Joined:
    """Return one room's pieces; of the job only trims and settings are used."""
    findings = Findings()
    joints: list[Splice] = []
    pieces: list[Piece] = []
    # In the order of the walls, which is the order in which one goes round the room with the
    # tickets.
    for wall, trim in walls(job, room, findings):
        pieces.extend(_run_pieces(wall, trim, findings, joints, places))
    # Casings are added afterwards: their pieces have no mates along a wall.
    pieces = with_mates(job, room, pieces)
    pieces.extend(casing_pieces(job, room, findings))
    pieces.extend(loose_pieces(job, room, findings))
    pieces.extend(box_pieces(job, room, findings))
    check_scribes(job, room, findings)
    return tuple(pieces), tuple(joints), tuple(findings.found)


def joinery(job: Job, places: Places = MappingProxyType({}), join: JoinRoom = join_room) -> Joined:
    """Return every piece of the job, the runs that are spliced, and what cannot be cut.

    Pieces come room by room, in the order of the walls.  ``places`` says where some spliced runs
    are cut; the others are cut as ``split`` does.  ``join`` is called for each room.
    """
    findings = Findings()
    joints: list[Splice] = []
    pieces: list[Piece] = []
    for room in job.rooms:
        of_room, spliced_there, found = join(job, room, places)
        pieces.extend(of_room)
        joints.extend(spliced_there)
        findings.found.extend(found)
    check_fixings(job, findings)
    check_widths(job, pieces, findings)
    check_one_way(job, pieces, findings)
    return tuple(pieces), tuple(joints), tuple(findings.found)


def at_places(
    job: Job, pieces: Sequence[Piece], spliced_runs: Iterable[Splice], places: Places
) -> tuple[Piece, ...]:
    """Return a job's pieces with runs spliced at ``places``; only their rooms are joined again."""
    anew = {one.whole.room for one in spliced_runs if one.whole.id in places}
    of_room: dict[str, list[Piece]] = {room.name: [] for room in job.rooms}
    for piece in pieces:
        of_room[piece.room].append(piece)
    return tuple(
        piece
        for room in job.rooms
        for piece in (join_room(job, room, places)[0] if room.name in anew else of_room[room.name])
    )


def with_kept_joints(
    job: Job, pieces: Sequence[Piece], spliced_runs: Iterable[Splice], kept: Places
) -> tuple[tuple[Piece, ...], tuple[Splice, ...]]:
    """Return a job's pieces and runs with joints that no wall needs and that are there to stay."""
    runs = tuple(
        replace(one, cut=kept[one.whole.id], studs=None, kept=True)
        if one.whole.id in kept and not one.is_joined
        else one
        for one in spliced_runs
    )
    return at_places(job, pieces, runs, {one.whole.id: one.cut for one in runs if one.kept}), runs


def _run_pieces(
    wall: Wall, trim: Trim, findings: Findings, joints: list[Splice], places: Places
) -> list[Piece]:
    job, room, run, settings = wall.job, wall.room, wall.run, wall.room.settings
    # The curve first, then the ceiling: each makes the run as long as its trim is, and every cut
    # and remark below counts on that length.
    run, bend = bent_run(run, trim, wall.off, settings, findings)
    ends = (wall.left, wall.right)
    run, roll, hung = along_ceiling(run, trim, ends, settings, findings)
    left, right = _ends(wall, trim, roll)
    # What a corner adds is in `grows_at`.
    added = (
        grows_at(wall, trim, Side.LEFT),
        grows_at(wall, trim, Side.RIGHT),
        _past_the_tape(wall, trim, roll, Side.LEFT, left),
        _past_the_tape(wall, trim, roll, Side.RIGHT, right),
    )
    # Most ends add nothing, and adding that takes as long as adding anything.
    exact = sum(filter(None, added), run.length)
    # One rounding for the whole wall, however many pieces it is cut into.
    row = deciding_row(run.left, run.right, settings)
    length, rounding = round_length(exact, row, settings)
    name = f"{room.tag}-{run.label}-{trim.name}"
    whole = Piece(
        id=name,
        kind=PieceKind.RUN,
        room=room.name,
        run=run.label,
        trim=trim.name,
        length=length,
        wall=wall.run.length,
        left=left,
        right=right,
        rounding=rounding,
        over_scraps=run.left.over_scraps or run.right.over_scraps,
        note=run.note,
        remarks=(
            *wall.remarks,
            *sawn_tops(wall.left, wall.right, trim, settings),
            *stair_remarks(run, settings),
            *bend_remarks(run, bend, settings),
            *hung,
            *corner_remarks(job, room, run, trim, (left, right), findings),
        ),
        unit=settings.unit,
        scribe=scribe(job, run, trim),
    )
    if trim.spring is not None:
        whole = on_wall_edge(whole, length, settings)
    if _come_to_nothing([whole], run, findings):
        return []
    check_reach(whole, run, settings, findings)
    check_gaps(whole, run, settings, findings)
    pieces = [whole]
    longest = trim.longest_stick(job.settings)
    # The planner may move these joints later; here they only have to be possible.
    splice = None
    if longest is not None and (whole.length > longest or run.must_splice):
        splice = spliced(whole, wall, trim, longest, findings)
    elif longest is not None and job.settings.joint_price is not None and bend is None:
        splice = could_be_spliced(whole, wall, trim, longest)
    if splice is not None:
        pieces = splice.pieces(places.get(whole.id))
        if _come_to_nothing(pieces, run, findings):
            return []
        joints.append(splice)
    # After splicing, because steps, notches and kerfs are counted along each piece and not along
    # the wall.
    pieces = stepped(pieces, run, trim, settings, findings)
    pieces = kerfed(notched(pieces, run, trim, settings, findings), bend, settings)
    first, last = pieces[0], pieces[-1]
    for side in Side:
        end = run.side(side)
        if end.joint.returns:
            # Of a spliced run, the return closes the piece that reaches the end, not the whole.
            closed = first if side is Side.LEFT else last
            behind = side.of(wall.left, wall.right).off
            pieces.append(return_piece(whole, closed, side, trim, room.settings, behind))
    turned: list[Piece] = []
    for at, met, nearest in ((Side.LEFT, wall.left, first), (Side.RIGHT, wall.right, last)):
        if met.step:
            pieces.append(top_return(whole, nearest, at, met.step, trim, settings))
        level = level_piece(
            whole, met, run=run, trim=trim, glued_to=nearest, side=at, settings=settings
        )
        turned += [] if level is None else [level]
        pieces += [] if level is None else [level]
        if met.brings_corner:
            pieces.append(corner_piece(whole, nearest, at, met, trim, settings))
    # The ceiling edge of a level piece is to be a point, and may come out a hair less than none.
    _check_glued([one for one in pieces if one not in turned], run, findings)
    return pieces


def _check_glued(pieces: Sequence[Piece], run: Run, findings: Findings) -> None:
    """Report each small piece at an end that its cuts leave nothing of."""
    for piece in pieces:
        if not piece.kind.is_glued or piece.at is None:
            continue
        # A transition is made to run out to a point, and its number may be rounded past that.
        less = piece.rounding.by - HAIR
        edge = None if piece.wall_edge is None else piece.wall_edge - less
        exact = replace(piece, length=piece.length - less, wall_edge=edge)
        if piece.length <= 0 or (piece.vanishes and exact.vanishes):
            name = "return" if piece.kind is PieceKind.RETURN else "small piece"
            part = f"the {name} at the {piece.at} end of run {run.label}"
            findings.say("T122", run.side(piece.at).span, part=part, trim=piece.trim)


def _come_to_nothing(pieces: Sequence[Piece], run: Run, findings: Findings) -> bool:
    """Tell whether the cuts leave nothing of a piece, and report the run where they do.

    So does a length that rounds to none on the ticket, such as a crown's along the wall.  A cut
    that runs further along the piece than any wall is long counts too: a level cut on a slope of
    almost nothing would take millions of sticks.
    """
    nothing = any(
        piece.vanishes or piece.to_mark <= 0 or piece.length > 2 * LONGEST_WALL for piece in pieces
    )
    if nothing:
        metres = metres_meant(run.written, pieces[0].unit)
        guess = f"If metres were meant, write {metres}. " if metres else ""
        slips = ((f"run {run.label} is in metres", ((run.span, metres),)),) if metres else ()
        said = {"run": run.label, "trim": pieces[0].trim, "guess": guess, "slips": slips}
        findings.say("T402", run.span, **said)
    return nothing


def _ends(wall: Wall, trim: Trim, roll: Fraction) -> tuple[Cut, Cut]:
    """Return the cuts at the two ends of a run's trim, before it is spliced."""
    run, settings = wall.run, wall.room.settings
    cuts: list[Cut] = []
    for side, met, at in ((Side.LEFT, wall.left, NOTHING), (Side.RIGHT, wall.right, run.length)):
        end = met.end
        # In this order: what hangs on a sloping ceiling, what climbs to a corner, what is cut
        # across the face, and all that only turns a corner.
        follows = trim.spring is not None or trim.before_crown is not None
        if follows and (run.ceiling or roll) and stops_upright(met):
            cuts.append(upright_end(met, side, run, roll, trim, settings))
        elif run.slope and met.meets is not Meets.ITSELF:
            cuts.append(plumb_corner(met, side, run.slope, trim, settings))
        elif end.joint.row.across:
            cuts.append(stair_end(end, side, run.slope, trim, settings))
        else:
            laps = wall.laps(at) if end.joint.laps else Side.LEFT
            cuts.append(meeting_cut(met, side, trim, settings, laps))
    return cuts[0], cuts[1]


def _past_the_tape(wall: Wall, trim: Trim, roll: Fraction, side: Side, cut: Cut) -> Fraction:
    """Return how far an end reaches past the edge that its number runs along (inches)."""
    if trim.before_crown is not None:
        past = NOTHING
        if roll and stops_upright(side.of(wall.left, wall.right)):
            past = past_upright(wall.run, roll, wall.off, wall.crown)
        return past_ceiling_edge(cut) + (past if side is Side.RIGHT else -past)
    # The tape ran along the bottom edge, but on a stair an end may be longer at the top.
    return cut.inset - cut.through if cut.long_edge is Edge.TOP else NOTHING


def grows_at(wall: Wall, trim: Trim, side: Side) -> Fraction:
    """Return what an end adds to the wall's length (inches)."""
    meeting = side.of(wall.left, wall.right)
    # What a meeting adds is level; along a slope that is more.
    slope = wall.run.slope if trim.spring is None else wall.run.ceiling
    grown = meeting.grows(trim) / cosine(slope) if slope else meeting.grows(trim)
    end = meeting.end
    # Two runs that the file splices share one lap; it is counted in the left one of them, so at its
    # right end.
    if end.joint.laps and side is Side.RIGHT and not end.over_scraps:
        grown += scarf_lap(trim, wall.room.settings)
    return grown
