"""A cut ticket: everything that is read at the saw about one piece, as ready texts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Final

from trimlang.compiler import Result
from trimlang.joinery.at_the_saw import both_ends, saw_for
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.language.end_facts import Side
from trimlang.planning.layout import CutStick, StickPlace
from trimlang.record import record
from trimlang.sheets.content.heading import heading
from trimlang.sheets.content.mates import Mates, mates
from trimlang.sheets.content.ticket_ends import EndText, end_print, end_text, lying
from trimlang.sheets.content.ticket_label import on_label
from trimlang.sheets.content.ticket_shape import Shape, frame_of, on_paper
from trimlang.sheets.content.ticket_text import Print, TicketFact, shorter
from trimlang.sheets.drawing.end_views import EndsDrawing, draw_ends
from trimlang.sheets.render.paper import LETTER, Area, LabelSize, UnknownPaperError
from trimlang.sheets.wording import material_words, phrases, saw_words
from trimlang.sheets.wording.catalogue import NO_BREAK
from trimlang.sheets.wording.quantities import Pen, Reading
from trimlang.site_log.progress_of_job import State
from trimlang.survey.copes import HARD_TO_HOLD

SHORT: Final = HARD_TO_HOLD
"""Shorter than this (inches), a piece brings the hand near the blade."""


@record
class Ticket:
    """One piece's ticket.  ``order`` is its place among the cuts of its stick."""

    id: str
    room: str
    run: str
    trim: str
    part: str
    length: Reading
    left: EndText
    right: EndText
    measured: str
    edges: str
    rounding: str
    stick: str
    order: str
    mates: str
    fit: str
    note: str
    caution: str
    drawing: EndsDrawing
    payload: str
    is_return: bool
    shape: Shape
    changed: bool


def tickets(
    result: Result,
    pen: Pen,
    *,
    paper: Area | LabelSize = LETTER,
    code: bool = True,
    only_changed: bool = False,
    dated: bool = True,
) -> tuple[Ticket, ...]:
    """Return one ticket for every piece still to cut: trim by trim, room by room along the walk.

    ``paper`` is what a page has for them, or the label that each is to fit.  ``code`` leaves
    room for a QR code; ``only_changed`` keeps those that the last new plan of a job under way
    changed; ``dated`` ones say the job and its revision.

    Raises:
        UnknownPaperError: the label is too small for one of them.
    """
    where = dict(_places(result))
    head = heading(result)
    printing = f"{head.job} · {head.revision}" if dated else ""
    # Worked out once for the whole job, since each ticket names its neighbours.
    met = mates(result)
    order = {trim.name: number for number, trim in enumerate(result.job.trims)}
    return tuple(
        _ticket(
            piece,
            result,
            pen.of(piece.unit),
            met=met,
            where=where[piece.id],
            paper=paper,
            printing=printing,
            code=code,
        )
        # By trim, as one saws: all sticks of one trim before the next is carried in.
        for piece in sorted(result.pieces, key=lambda piece: order[piece.trim])
        if result.progress is None
        or (not result.progress.is_cut(piece.id) and (not only_changed or _changed(piece, result)))
    )


def _changed(piece: Piece, result: Result) -> bool:
    return result.progress is not None and piece.id in result.progress.changed


def _places(result: Result) -> Iterator[tuple[str, tuple[CutStick, int, StickPlace]]]:
    for plan in result.plans:
        for stick in plan.sticks:
            for number, place in enumerate(stick.places, start=1):
                yield place.piece, (stick, number, place)


def _ticket(
    piece: Piece,
    result: Result,
    pen: Pen,
    *,
    met: Mates,
    where: tuple[CutStick, int, StickPlace],
    paper: Area | LabelSize,
    printing: str,
    code: bool,
) -> Ticket:
    words = pen.words
    trim = result.job.trim(piece.trim)
    ends = both_ends(piece, saw_for(trim, result.job.settings))
    left = end_text(piece, Side.LEFT, ends[0], pen, met)
    right = end_text(piece, Side.RIGHT, ends[1], pen, met)
    length = pen.mark(piece.to_mark)
    stick, order = _stick(where, pen)
    part = ""
    if piece.parts > 1:
        part = words("part {n} of {all}", n=piece.part, all=piece.parts)
    # What the code holds is plain text, with L and R in every language: a phone shows it as it is.
    coded = (
        piece.id,
        str(length),
        *(f"{at} {end.joint}: {end.setting}" for at, end in (("L", left), ("R", right))),
    )
    payload = "\n".join(coded).replace(NO_BREAK, " ")
    pairs = ((words("left"), left.mate), (words("right"), right.mate))
    met_text = ", ".join(f"{side} {mate}" for side, mate in pairs if mate)
    # Glued pieces and scarfs have mates that stand at neither end of a wall.
    meets = met_text or ", ".join(piece.mates)
    measured, edges = phrases.measured(piece, words), phrases.edges(piece, pen)
    rounding, fit = phrases.rounding(piece, pen), "; ".join(phrases.fit_lines(piece, pen))
    note, caution = _note(piece, result, pen), _caution(piece, pen)
    facts = (
        *lying(piece, ends, (left, right), pen),
        TicketFact(words("measured"), f"{measured}: {edges}" if edges else measured, extra=True),
        TicketFact(words("stick"), ", ".join(text for text in (stick, order) if text), extra=True),
        TicketFact(words("meets"), meets, extra=True),
        TicketFact(words("note"), note, strong=True),
        TicketFact(
            words("care"),
            caution,
            strong=True,
            least=words("Short piece: never hold it by hand at the blade."),
        ),
        TicketFact(words("job"), printing, extra=True),
        TicketFact(words("fit"), fit, extra=True),
        TicketFact(
            words("length"), rounding, brief=phrases.rounding(piece, pen, brief=True), extra=True
        ),
    )
    # Who finds two tickets of one piece must see which of them holds.
    again = words("changed") if _changed(piece, result) else ""
    text = Print(
        id=piece.id,
        id_word=words("id"),
        room_word=words("room"),
        room_and_part=" · ".join(text for text in (piece.room, part, again) if text),
        about=" · ".join(part for part in (piece.room, piece.trim, part, again) if part),
        length=(length.whole, length.fraction, length.unit),
        left=end_print(left),
        right=end_print(right),
        facts=tuple(fact for fact in facts if fact.text),
    )
    shape = (
        on_paper(text, trim.height, paper, code=code)
        if isinstance(paper, Area)
        else _on_label(text, paper, words("note"), code=code)
    )
    return Ticket(
        id=piece.id,
        room=piece.room,
        run=piece.run,
        trim=piece.trim,
        part=part,
        length=length,
        left=left,
        right=right,
        measured=measured,
        edges=edges,
        rounding=rounding,
        stick=stick,
        order=order,
        mates=meets,
        fit=fit,
        note=note,
        caution=caution,
        drawing=draw_ends(
            piece,
            ends,
            trim,
            (saw_words.at_fence(ends[0], words), saw_words.at_fence(ends[1], words)),
            frame_of(shape),
        ),
        payload=payload,
        is_return=piece.kind is PieceKind.RETURN,
        shape=shape,
        changed=_changed(piece, result),
    )


def _on_label(text: Print, label: LabelSize, note_word: str, *, code: bool) -> Shape:
    """Fit a ticket to a label; a note too long for it is cut short and says so.

    A label without room for a code besides is printed without.
    """
    # Where it is one or the other, what a hand reads goes before what a phone reads.
    for coded in (True, False) if code else (False,):
        shape = _on(text, label, note_word, code=coded)
        if shape is not None:
            return shape
    # A label that is too small is refused with the sizes that would do, one way and the other.
    larger = (
        (replace(label, down=label.down + more) for more in range(5, 200, 5)),
        (replace(label, across=label.across + more) for more in range(5, 200, 5)),
    )
    would = [
        next((one.size for one in ways if _on(text, one, note_word, code=False) is not None), "")
        for ways in larger
    ]
    advice = " or ".join(size for size in would if size)
    raise UnknownPaperError(
        f"a label of {label.size} is too small for ticket {text.id[:60]} to be legible;"
        f" it fits {advice}"
    )


def _on(text: Print, label: LabelSize, note_word: str, *, code: bool) -> Shape | None:
    across, down = label.inside
    # Everything but the note must be on the ticket, so that the note gives way, and in the end
    # what stands below the joints too.
    for bare in (False, True):
        for less in shorter(text, note_word):
            shape = on_label(less, across, down, code=code, bare=bare)
            if shape is not None:
                return shape
    return None


def _stick(where: tuple[CutStick, int, StickPlace], pen: Pen) -> tuple[str, str]:
    stick, number, place = where
    words = pen.words
    text = f"{stick.id} ({material_words.stick(stick, pen)})"
    order = words("cut {n} of {all}", n=number, all=len(stick.places))
    if place.shared:
        order = words("{order}, shares its left cut", order=order)
    return text, order


def _note(piece: Piece, result: Result, pen: Pen) -> str:
    if result.progress is not None and result.progress.state(piece.id) is State.SPOILED:
        again = pen.words("cut again: the first was spoiled")
        said = phrases.all_notes(piece, pen)
        return f"{again}; {said}" if said else again
    if piece.kind is PieceKind.RETURN:
        return pen.words("closes the profile; glue it, do not nail it")
    return phrases.all_notes(piece, pen)


def _caution(piece: Piece, pen: Pen) -> str:
    if piece.length >= SHORT:
        return ""
    return pen.words(
        "Short piece: never hold it by hand at the blade; cut it off a long length"
        " as the saw maker's manual says."
    )
