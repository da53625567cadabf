"""Running trim on its walls: where each piece of a run is, and the steps that it is sawn to."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from fractions import Fraction

from trimlang.joinery.cuts import scarf_lap
from trimlang.joinery.on_the_wall import foot_of, is_on_floor
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.joinery.piece_in_place import PieceInPlace, Upon, placed, seen_height
from trimlang.joinery.pieces import grows_at
from trimlang.joinery.trim_walk import Wall, walls
from trimlang.joint_row import Edge
from trimlang.language.facts import Side
from trimlang.lengths.angles import cosine, sine, tangent
from trimlang.lengths.tape import NOTHING
from trimlang.survey.job import Job, Room, Run, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.straight_walls import Spot, StraightWall


def run_pieces_in_place(
    job: Job, room: Room, faces: tuple[StraightWall, ...], pieces: Mapping[str, Piece]
) -> Iterator[tuple[StraightWall, PieceInPlace]]:
    """Yield every piece of the runs on walls of a room; ``pieces`` are the job's, by id.

    What hangs below the ceiling has its height counted from that.
    """
    of_run: dict[tuple[str, str], list[Piece]] = {}
    for piece in pieces.values():
        if piece.room == room.name and piece.kind is PieceKind.RUN:
            of_run.setdefault((piece.run, piece.trim), []).append(piece)
    on = {place: face for face in faces for place in face.places}
    # What cannot be cut was reported when the pieces were made.
    for wall, trim in walls(job, room, Findings(), sorted(on)):
        # Spliced parts are laid from the left, in the order of their numbers.
        parts = sorted(of_run.get((wall.run.label, trim.name), ()), key=lambda one: one.part)
        face = on[wall.index]
        for one in _along(job, wall, trim, face, parts):
            yield face, one


def ceiling_above(room: Room, face: StraightWall, place: int | None) -> Fraction:
    """Return how much higher the ceiling is where a stretch begins than at its wall's left end.

    None stands for the wall's right end.
    """
    risen = NOTHING
    for index, at in enumerate(face.places):
        # Only what lies to the left of a stretch has raised the ceiling where it begins.
        if at == place:
            break
        stretch = room.walk[at]
        slope = stretch.ceiling if isinstance(stretch, Run) else _over_gap(room, face, index)
        if slope:
            risen += (face.begins[index + 1].x - face.begins[index].x) * tangent(slope)
    return risen


def _over_gap(room: Room, face: StraightWall, index: int) -> Fraction:
    """Return how the ceiling goes on over a gap: as along the nearest run, before it or after."""
    # The run at the left first: an opening is seen under the ceiling that led up to it.
    for at in (*reversed(face.places[:index]), *face.places[index + 1 :]):
        stretch = room.walk[at]
        if isinstance(stretch, Run):
            return stretch.ceiling
    return NOTHING


def _along(
    job: Job, wall: Wall, trim: Trim, face: StraightWall, parts: list[Piece]
) -> Iterator[PieceInPlace]:
    run, room = wall.run, wall.room
    # Crown follows the ceiling, all other trim the floor or the stair.
    turn = run.ceiling if trim.spring is not None else run.slope
    begin = face.begin_of(wall.index)
    y = begin.y
    upon = Upon.FLOOR
    if trim.hangs:
        upon = Upon.CEILING
        # Where the ceiling slopes, trim is taller upright than across its face.
        y = ceiling_above(room, face, wall.index) - seen_height(trim) / cosine(turn)
    elif is_on_floor(job, run, trim):
        y += foot_of(job, run, trim) / cosine(turn)
    else:
        # A rail: no file says how high it is, so it is drawn where rails usually are.
        upon = Upon.NOTHING_MEASURED
    # Scraps that the tape ran over are no wall: the strip begins at the corner behind them.
    past = grows_at(wall, trim, Side.LEFT) + wall.left.scraps
    u = -past
    # A run in one piece has no scarf, whatever is said of laps.
    lap = scarf_lap(trim, room.settings) if len(parts) > 1 else NOTHING
    for number, piece in enumerate(parts):
        # Lengths count from the bottom edge; a top that reaches further moves the start.
        if not number and trim.spring is None and piece.left.long_edge is Edge.TOP:
            u -= piece.left.inset - piece.left.through
        start = u - wall.before
        at = Spot(x=begin.x + start * cosine(turn), y=y + start * sine(turn))
        made = placed(piece, trim, at, turn=turn, upon=upon)
        # A stair's skirt is its first trim, and it alone is sawn to the steps.
        yield _sawn(made, run, trim) if run.trims[0] == trim.name else made
        u += piece.to_mark - lap


def _sawn(made: PieceInPlace, run: Run, trim: Trim) -> PieceInPlace:
    """Return a piece of a stair with its steps sawn and its notches cut, as its ticket says."""
    work, outline = run.stair, list(made.outline)
    if work.open_side and work.steps is not None and trim.height:
        low_left, low_right, high_right, high_left = outline
        outline = [low_left, low_right, *_steps(high_right, high_left, run)]
    for notch in work.notches:
        is_end = made.piece.part == (1 if notch.side is Side.LEFT else made.piece.parts)
        # A notch is at the run's end, so only the outermost part of a spliced skirt has it.
        if is_end:
            outline = _notched(outline, notch.side, notch.level, notch.up, run.slope)
    return replace(made, outline=tuple(outline))


def _steps(right: Spot, left: Spot, run: Run) -> list[Spot]:
    """Return the upper edge from right to left, sawn to steps from its lower end upwards."""
    steps = run.stair.steps
    assert steps is not None  # noqa: S101  whoever calls it has looked
    low, high = (left, right) if run.slope > 0 else (right, left)
    way = 1 if high.x > low.x else -1
    made = [low]
    # Whole steps only: what is left at the upper end is no tread.
    while abs(made[-1].x - low.x) + steps.run <= abs(high.x - low.x):
        tip = made[-1]
        inner = Spot(x=tip.x + way * steps.run, y=tip.y)
        made += [inner, Spot(x=inner.x, y=inner.y + steps.rise)]
    made.append(high)
    # The outline goes on from right to left, whichever end is the lower.
    return made[::-1] if run.slope > 0 else made


def _notched(
    outline: list[Spot], side: Side, level: Fraction, up: Fraction, slope: Fraction
) -> list[Spot]:
    """Return an outline with the foot of one of its ends cut out, so far level and so far up."""
    left, right = outline[0], outline[1]
    rise = tangent(slope)
    if side is Side.LEFT:
        along = Spot(x=left.x + level, y=left.y + level * rise)
        return [Spot(x=left.x, y=left.y + up), Spot(x=along.x, y=left.y + up), along, *outline[1:]]
    along = Spot(x=right.x - level, y=right.y - level * rise)
    top = Spot(x=right.x, y=right.y + up)
    return [left, along, Spot(x=along.x, y=top.y), top, *outline[2:]]
