"""Hover: the text that an editor shows where the pointer rests on a place, as Markdown.

On a run: each piece that it becomes, with its true length, both cuts and the saw's settings,
how it was rounded and why, and the stick that it is cut from.  On a trim: its section, stock
and prices.  On a word: what it means; on any other number: how much it is, and what of.
"""

from __future__ import annotations

from lark import Token

from trimlang.diagnostics import Span
from trimlang.editor.hover_lengths import LaidWalls
from trimlang.editor.hover_numbers import number_text
from trimlang.editor.hover_pieces import (
    Sticks,
    end_text,
    loose_pieces,
    piece_text,
    pieces_on,
    plain,
)
from trimlang.editor.hover_trims import room_text, trim_text
from trimlang.editor.mention import NameSort
from trimlang.editor.open_job import JobReading
from trimlang.editor.tokens import token_at
from trimlang.editor.word_meanings import meaning, setting_meaning
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.language import tree
from trimlang.language.number_rules import NUMBER_TOKENS
from trimlang.record import record
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen


@record
class HoverText:
    """The text to show, and the place that it is about."""

    text: str
    span: Span


def pieces_at(reading: JobReading, file: str, line: int, column: int) -> tuple[Piece, ...]:
    """Return the pieces that hover tells about at a place; none where that is no wall."""
    if not _is_about_wall(reading, file, line, column):
        return ()
    loose = loose_pieces(reading, file, line)
    found = reading.stretch(file, line, column)
    return loose if loose or found is None else pieces_on(reading, *found)


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
        told = trim_text(reading, mention, pen)
        return None if told is None else HoverText(told, mention.span)
    if mention is not None and mention.name.sort in (NameSort.ROOM, NameSort.TAG):
        return HoverText(room_text(reading, mention), mention.span)
    pieces = pieces_at(reading, file, line, column)
    if pieces:
        # Loose pieces of one line are cut alike, so the first stands for all of them.
        alike = pieces[1:] if pieces[0].kind is PieceKind.LOOSE else ()
        laid = LaidWalls(job)
        texts = [
            piece_text(piece, laid, pen.of(piece.unit), sticks)
            for piece in pieces
            if piece not in alike
        ]
        if alike:
            texts.append(f"likewise: {', '.join(plain(piece.id) for piece in alike)}")
        return HoverText("\n\n".join(texts), _wall_span(reading, file, line, column))
    text = reading.text(Span(file, line, 1, 1))
    token = token_at(text, column)
    if token is None:
        return None
    if token.type in NUMBER_TOKENS:
        return _number(reading, file, line, column, pen)
    stated = _setting(reading, file, line, token)
    if stated is not None:
        return stated
    meant = meaning(token.type, str(token))
    if meant is None:
        return None
    start = token.column or 1
    meant += end_text(reading, file, line, column) or ""
    return HoverText(f"**{token}**: {meant}", Span(file, line, start, start + len(token)))


def _number(reading: JobReading, file: str, line: int, column: int, pen: Pen) -> HoverText | None:
    """Return what there is to say of a number, and how an end is cut that it is said of."""
    statement = reading.statement(file, line, column)
    text = reading.text(Span(file, line, 1, 1))
    told = None if statement is None else number_text(statement, text, column, pen)
    if told is None:
        return None
    said, place = told
    return HoverText(said + (end_text(reading, file, line, column) or ""), place)


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
    """Tell whether a place is on a wall's or a piece's name or length, or on an opening's."""
    span = _wall_span(reading, file, line, column)
    return span.column <= column <= span.end and span.line == line


def _wall_span(reading: JobReading, file: str, line: int, column: int) -> Span:
    statement = reading.statement(file, line, column)
    if isinstance(statement, tree.RunLine):
        return Span(file, line, statement.label.span.column, statement.length.span.end)
    if isinstance(statement, tree.LoosePieceLine):
        return Span(file, line, statement.span.column, statement.length.span.end)
    if isinstance(statement, tree.GapLine):
        return Span(file, line, statement.span.column, statement.width.span.end)
    # On no line, so that no place is on it.
    return Span(file, 0, 0, 0)
