"""What a ticket says of a piece's two ends: how each is cut, and how the piece lies for it."""

from __future__ import annotations

from collections.abc import Iterator

from trimlang.joinery.at_the_saw import AtSaw
from trimlang.joinery.piece import Piece
from trimlang.joint_row import Edge, Fit
from trimlang.language.end_facts import Side
from trimlang.record import record
from trimlang.sheets.content.mates import Mates
from trimlang.sheets.content.ticket_text import EndPrint, TicketFact
from trimlang.sheets.wording import phrases, saw_words
from trimlang.sheets.wording.quantities import Pen


@record
class EndText:
    """One end: joint, saw setting, how the piece lies for it, long point, mate.

    ``setting`` is ``settings`` in one line: what the table is turned by, and where it leans the
    blade. ``swing`` and ``tilt`` are their sides, ``left``, ``right`` or empty.
    """

    side: str
    joint: str
    setting: str
    settings: tuple[str, ...]
    swing: str
    tilt: str
    exact: str
    lay: str
    long_point: str
    then: str
    mate: str


def lying(
    piece: Piece, ends: tuple[AtSaw, AtSaw], texts: tuple[EndText, EndText], pen: Pen
) -> Iterator[TicketFact]:
    """Yield how the piece lies at the saw: once where it can be, else end by end."""
    words = pen.words
    once = saw_words.lay_for_all(ends, words)
    if once:
        yield TicketFact(words("lies"), once)
    else:
        first, second = texts
        yield TicketFact(first.side, first.lay)
        # What both lie like a label says once.
        alike = ends[0].pose == ends[1].pose and bool(first.lay)
        least = saw_words.side(ends[1], words) if alike else ""
        yield TicketFact(second.side, second.lay, least=least)
    yield TicketFact(words("or"), saw_words.nested_ends(piece, pen), extra=True)


def end_text(piece: Piece, side: Side, at: AtSaw, pen: Pen, met: Mates) -> EndText:
    """Return how one end of a piece is cut, and what it meets, as ready texts."""
    words = pen.words
    cut = side.of(piece.left, piece.right)
    then = ""
    if cut.joint.is_inside and cut.fit is Fit.COPED:
        then = words("then saw along the face line (cope), undercut a little")
    elif cut.joint.is_inside and cut.fit is Fit.SQUARE:
        then = words("runs square into the corner; its mate is coped")
    elif cut.joint.laps:
        # The piece that laps over is the longer one at its face.
        over = cut.long_edge is Edge.FACE
        then = words("laps over its mate") if over else words("lies under its mate")
    elif cut.assumed:
        then = words("usual angle: try it on scrap")
    return EndText(
        side=words(side),
        joint=phrases.end_name(piece, side, words),
        setting=saw_words.setting(at, pen),
        settings=saw_words.setting_lines(at, pen),
        swing=at.swing or "",
        tilt=at.tilt or "",
        exact=phrases.exact_angle(cut, pen),
        lay=saw_words.lay_and_side(at, words),
        long_point=phrases.long_point(cut, words),
        then=then,
        mate=met.get((piece.id, side), ""),
    )


def end_print(end: EndText) -> EndPrint:
    """Return the end's texts as they are measured before printing."""
    small = tuple(text for text in (end.long_point, end.exact, end.then) if text)
    return EndPrint(end.side, end.settings, end.joint, small)
