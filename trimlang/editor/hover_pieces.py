"""What hover says of pieces: length, cuts, rounding, why it is so long, and its stick."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from trimlang.editor.hover_lengths import LaidWalls, why_so_long
from trimlang.editor.hover_plans import Where
from trimlang.editor.open_job import JobReading
from trimlang.joinery.at_the_saw import MitreSaw, at_saw, saw_for
from trimlang.joinery.piece import Cut, Piece, PieceKind
from trimlang.joinery.strips import strips
from trimlang.language import tree
from trimlang.language.facts import AtEnd, Side
from trimlang.lengths.tape import Unit, feet_text
from trimlang.sheets.wording import phrases, saw_words
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.job import Job, Room, Run, Stretch
from trimlang.survey.openings import opening_names

# What Markdown would take for formatting; names in a job file may hold any of it.
_SIGNS: Final = str.maketrans({sign: f"\\{sign}" for sign in "\\`*_[]<>|"})
Sticks = Mapping[str, Where]


def pieces_on(reading: JobReading, room: Room, stretch: Stretch) -> tuple[Piece, ...]:
    """Return the pieces that a wall gets, or that go round an opening."""
    place = room.walk.index(stretch)
    is_run = isinstance(stretch, Run)
    # Pieces of a casing carry the name of their opening in place of a run's.
    label = stretch.label if isinstance(stretch, Run) else opening_names(room).get(place, "")
    begun = _begun_elsewhere(reading, room, place)
    return tuple(
        piece
        for piece in reading.result.pieces
        if piece.room == room.name
        # Two rooms may have one name; their tags differ.
        and piece.id.startswith(f"{room.tag}-")
        and (
            (piece.run == label and piece.kind.of_casing is not is_run)
            or (piece.run == begun.get(piece.trim) and not piece.kind.of_casing)
        )
    )


def loose_pieces(reading: JobReading, file: str, line: int) -> tuple[Piece, ...]:
    """Return the loose pieces that a line is about, none where it is about no such piece."""
    for room in reading.result.job.rooms:
        for loose in room.loose:
            if (loose.span.line, loose.span.file) == (line, file):
                begins = f"{room.tag}-{loose.label}-"
                return tuple(
                    piece
                    for piece in reading.result.pieces
                    if piece.kind is PieceKind.LOOSE
                    and piece.run == loose.label
                    and piece.id.startswith(begins)
                )
    return ()


def _begun_elsewhere(reading: JobReading, room: Room, place: int) -> Mapping[str, str]:
    """Return the trims that a place gets from a run beside it, and that run's name.

    A chair rail that goes on below a window is one piece, and has its first run's name.
    """
    begun = {}
    for trim in reading.result.job.trims:
        for strip in strips(room, trim):
            first = room.walk[strip.begins]
            if place in strip.places and strip.begins != place and isinstance(first, Run):
                begun[trim.name] = first.label
    return begun


def piece_text(piece: Piece, laid: LaidWalls, pen: Pen, sticks: Sticks | None) -> str:
    """Say of a piece all that a hover tells; ``sticks`` is None while they are planned."""
    saw = _saw(piece, laid.job)
    length = pen.length(piece.to_mark)
    feet = feet_text(piece.to_mark, pen.unit)
    also = f" ({feet})" if feet != length and pen.unit is Unit.INCH else ""
    lines = [
        f"**{plain(piece.id)}**: **{length}**{also}, {phrases.measured(piece, pen.words)}",
        f"- left: {_cut(piece.left, Side.LEFT, saw, pen)}",
        f"- right: {_cut(piece.right, Side.RIGHT, saw, pen)}",
        *(f"- {text}" for text in why_so_long(piece, laid, pen)),
    ]
    rounded = phrases.rounding(piece, pen)
    lines += [f"- {rounded}"] if rounded else []
    other = phrases.edges(piece, pen)
    lines += [f"- {text}" for text in (other, *phrases.fit_lines(piece, pen)) if text]
    # Said rather than left out: who hovers again a moment later sees it.
    if sticks is None:
        lines.append("- stick: still being planned")
    elif piece.id in sticks:
        where = sticks[piece.id]
        lines.append(
            f"- stick {plain(where.stick.id)} of {pen.stick(where.stick.length)}"
            f"{' on hand' if where.stick.on_hand else ''}, from {pen.length(where.place.start)}"
            f" to {pen.length(where.place.end)} (quick plan)"
        )
    if piece.all_notes:
        lines.append(f"- {plain(piece.all_notes)}")
    return "\n".join(lines)


def _saw(piece: Piece, job: Job) -> MitreSaw:
    return saw_for(job.trim(piece.trim), job.settings)


def _cut(cut: Cut, side: Side, saw: MitreSaw, pen: Pen) -> str:
    at = at_saw(cut, side, saw)
    parts = [phrases.joint_name(cut, pen.words), f"saw at **{saw_words.setting(at, pen)}**"]
    if not at.is_square:
        parts.append(phrases.long_point(cut, pen.words))
    parts += [
        text
        for text in (phrases.exact_angle(cut, pen), saw_words.lay_and_side(at, pen.words))
        if text
    ]
    if cut.assumed:
        parts.append("corner not measured")
    return ", ".join(parts)


def end_text(reading: JobReading, file: str, line: int, column: int) -> str | None:
    """Return how the end under the pointer is cut for each trim of its run, None elsewhere."""
    statement = reading.statement(file, line, column)
    found = reading.stretch(file, line, column)
    if not isinstance(statement, tree.RunLine) or found is None:
        return None
    side = next(
        (
            fact.side
            for fact in statement.facts
            if isinstance(fact, AtEnd) and fact.span.column <= column < fact.span.end
        ),
        None,
    )
    if side is None:
        return None
    pieces = [piece for piece in pieces_on(reading, *found) if piece.kind is PieceKind.RUN]
    lines = []
    for piece in pieces:
        # A spliced run is several pieces; the first has the wall's left end, the last its right
        # end.
        if piece.part == (1 if side is Side.LEFT else piece.parts):
            pen = Pen(words_in("en"), "", piece.unit, scale=reading.result.job.settings.saw_step)
            saw = _saw(piece, reading.result.job)
            lines.append(
                f"- {plain(piece.id)}: {_cut(side.of(piece.left, piece.right), side, saw, pen)}"
            )
    return "\n\n" + "\n".join(lines) if lines else None


def plain(text: str) -> str:
    """Return text with Markdown's own signs escaped, so that it shows as it is written."""
    return text.translate(_SIGNS)
