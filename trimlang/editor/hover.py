"""Hover: the text that an editor shows where the pointer rests on a place, as Markdown.

On a run: each piece that it becomes, with its true length, both cuts and the saw's settings,
how it was rounded and why, and the stick that it is cut from.  On a trim: its section, stock
and prices.  On a word: what it means.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Final

from lark import Token

from trimlang.diagnostics import Span
from trimlang.editor.hover_lengths import why_so_long
from trimlang.editor.hover_plans import Where
from trimlang.editor.mention import Mention, NameSort
from trimlang.editor.open_job import JobReading
from trimlang.editor.tokens import token_at
from trimlang.editor.word_meanings import meaning, setting_meaning
from trimlang.joinery.at_the_saw import MitreSaw, at_saw, saw_for
from trimlang.joinery.piece import Cut, Piece, PieceKind
from trimlang.joinery.strips import strips
from trimlang.language import tree
from trimlang.language.facts import AtEnd, Side
from trimlang.lengths.tape import Unit, feet_text
from trimlang.record import record
from trimlang.sheets.wording import phrases, saw_words
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.job import Job, Offer, Room, Run, Stretch, Trim
from trimlang.survey.openings import opening_names

# What Markdown would take for formatting; names in a job file may hold any of it.
_SIGNS: Final = str.maketrans({sign: f"\\{sign}" for sign in "\\`*_[]<>|"})
Sticks = Mapping[str, Where]


@record
class HoverText:
    """The text to show, and the place that it is about."""

    text: str
    span: Span


def pieces_at(reading: JobReading, file: str, line: int, column: int) -> tuple[Piece, ...]:
    """Return the pieces that hover tells about at a place; none where that is no wall."""
    if not _is_about_wall(reading, file, line, column):
        return ()
    found = reading.stretch(file, line, column)
    return () if found is None else _pieces(reading, *found)


def hover(
    reading: JobReading, file: str, line: int, column: int, sticks: Sticks | None
) -> HoverText | None:
    """Return what there is to tell at a place, None where there is nothing.

    ``sticks`` says where each piece is cut from; it is None while the plan is still being made.
    """
    job = reading.result.job
    pen = Pen(
        words_in("en"),
        job.currency,
        job.settings.unit,
        scale=job.settings.saw_step,
        by_length=job.by_length,
    )
    mention = reading.names.at(file, line, column)
    # The most particular answer first: a name, then a wall, then a setting, then the bare word.
    if mention is not None and mention.name.sort is NameSort.TRIM:
        return _trim(reading, mention, pen)
    if mention is not None and mention.name.sort in (NameSort.ROOM, NameSort.TAG):
        return _room(reading, mention)
    if _is_about_wall(reading, file, line, column):
        found = reading.stretch(file, line, column)
        pieces = () if found is None else _pieces(reading, *found)
        if pieces:
            texts = [
                _piece(piece, reading.result.job, pen.of(piece.unit), sticks) for piece in pieces
            ]
            return HoverText("\n\n".join(texts), _wall_span(reading, file, line, column))
    text = reading.text(Span(file, line, 1, 1))
    token = token_at(text, column)
    stated = None if token is None else _setting(reading, file, line, token)
    if stated is not None:
        return stated
    meant = None if token is None else meaning(token.type, str(token))
    if token is None or meant is None:
        return None
    start = token.column or 1
    end = _end(reading, file, line, column)
    if end is not None:
        meant += end
    return HoverText(f"**{token}**: {meant}", Span(file, line, start, start + len(token)))


def _setting(reading: JobReading, file: str, line: int, token: Token) -> HoverText | None:
    """Return what the setting means that the pointer rests on, None where it is on none."""
    column = token.column or 1
    statement = reading.statement(file, line, column)
    for fact in statement.facts if isinstance(statement, tree.SettingLine) else ():
        row = fact.row()
        if row is None or not fact.span.column <= column < fact.span.end:
            continue
        if str(token).lower() in row.words.replace(":", "").split():
            return HoverText(f"**{row.words}**: {setting_meaning(row)}", fact.span)
    return None


def _is_about_wall(reading: JobReading, file: str, line: int, column: int) -> bool:
    """Tell whether a place is on a run's name or length, or on an opening's first words."""
    span = _wall_span(reading, file, line, column)
    return span.column <= column <= span.end and span.line == line


def _wall_span(reading: JobReading, file: str, line: int, column: int) -> Span:
    statement = reading.statement(file, line, column)
    if isinstance(statement, tree.RunLine):
        return Span(file, line, statement.label.span.column, statement.length.span.end)
    if isinstance(statement, tree.GapLine):
        return Span(file, line, statement.span.column, statement.width.span.end)
    # On no line, so that no place is on it.
    return Span(file, 0, 0, 0)


def _pieces(reading: JobReading, room: Room, stretch: Stretch) -> tuple[Piece, ...]:
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


def _piece(piece: Piece, job: Job, pen: Pen, sticks: Sticks | None) -> str:
    saw = _saw(piece, job)
    length = pen.length(piece.to_mark)
    feet = feet_text(piece.to_mark, pen.unit)
    also = f" ({feet})" if feet != length and pen.unit is Unit.INCH else ""
    lines = [
        f"**{_plain(piece.id)}**: **{length}**{also}, {phrases.measured(piece, pen.words)}",
        f"- left: {_cut(piece.left, Side.LEFT, saw, pen)}",
        f"- right: {_cut(piece.right, Side.RIGHT, saw, pen)}",
        *(f"- {text}" for text in why_so_long(piece, job, pen)),
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
            f"- stick {_plain(where.stick.id)} of {pen.stick(where.stick.length)}"
            f"{' on hand' if where.stick.on_hand else ''}, from {pen.length(where.place.start)}"
            f" to {pen.length(where.place.end)} (quick plan)"
        )
    if piece.all_notes:
        lines.append(f"- {_plain(piece.all_notes)}")
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


def _end(reading: JobReading, file: str, line: int, column: int) -> str | None:
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
    pieces = [piece for piece in _pieces(reading, *found) if piece.kind is PieceKind.RUN]
    lines = []
    for piece in pieces:
        # A spliced run is several pieces; the first has the wall's left end, the last its right
        # end.
        if piece.part == (1 if side is Side.LEFT else piece.parts):
            pen = Pen(words_in("en"), "", piece.unit, scale=reading.result.job.settings.saw_step)
            saw = _saw(piece, reading.result.job)
            lines.append(
                f"- {_plain(piece.id)}: {_cut(side.of(piece.left, piece.right), side, saw, pen)}"
            )
    return "\n\n" + "\n".join(lines) if lines else None


def _trim(reading: JobReading, mention: Mention, pen: Pen) -> HoverText | None:
    name = mention.name.text
    trim = next((one for one in reading.result.job.trims if one.name == name), None)
    if trim is None:
        return None
    lines = [f"trim **{_plain(name)}**: {_section(trim, pen)}"]
    lines += [f"- {_offer(offer, pen)}" for offer in trim.offers]
    for rest in trim.rests:
        price = f" at {pen.money(rest.price)}" if rest.price else ""
        lines.append(f"- on hand: {rest.count} of {pen.length(rest.length)}{price}")
    if not trim.offers and not trim.rests:
        lines.append("- no stock")
    pieces = [piece for piece in reading.result.pieces if piece.trim == name]
    if pieces:
        total = sum((piece.length for piece in pieces), Fraction(0))
        count = "1 piece" if len(pieces) == 1 else f"{len(pieces)} pieces"
        lines.append(f"- {count}, {pen.run_of(total)} in all")
    return HoverText("\n".join(lines), mention.span)


def _section(trim: Trim, pen: Pen) -> str:
    parts: list[str] = []
    if trim.thickness is not None:
        parts.append(f"{pen.length(trim.thickness)} thick")
    if trim.height is not None:
        flat = "tall" if trim.spring is None else "wide"
        parts.append(f"{pen.length(trim.height)} {flat}")
    if trim.spring is not None:
        parts.append(f"spring {pen.angle(trim.spring)}")
    parts += [_plain(word) for word in trim.material]
    if trim.in_front_of is not None:
        parts.append(f"in front of {_plain(trim.in_front_of)}")
    if trim.upon is not None:
        parts.append(f"on {_plain(trim.upon)}")
    return ", ".join(parts) or "no section given"


def _offer(offer: Offer, pen: Pen) -> str:
    what = pen.stick(offer.length)
    if offer.pack > 1:
        what = f"pack of {offer.pack}, {what}"
    most = f", at most {offer.at_most}" if offer.at_most is not None else ""
    price = "" if pen.by_length else f" at {pen.money(offer.price)}"
    return f"{what}{price}{most}"


def _room(reading: JobReading, mention: Mention) -> HoverText | None:
    room = reading.names.rooms[mention.name.room or 0]
    name = room.heading.name.text
    pieces = sum(piece.room == name for piece in reading.result.pieces)
    runs = "1 run" if len(room.runs) == 1 else f"{len(room.runs)} runs"
    made = f", {pieces} pieces" if pieces else ""
    text = f"room **{_plain(name)}**, tag {_plain(room.tag)}: {runs}{made}"
    return HoverText(text, mention.span)


def _plain(text: str) -> str:
    """Return text with Markdown's own signs escaped, so that it shows as it is written."""
    return text.translate(_SIGNS)
