"""A cut ticket: everything that is read at the saw about one piece, as ready texts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from trimlang.compiler import Result
from trimlang.joinery.piece import Cut, Kind, Piece
from trimlang.sheets import phrases
from trimlang.sheets.ends import EndsDrawing, draw_ends
from trimlang.sheets.mates import Mates, mates
from trimlang.sheets.pen import Pen, Reading
from trimlang.site.site import State
from trimlang.stock.layout import CutStick, Place
from trimlang.survey.job import Fit, Joint

SHORT: Final = Fraction(8)
"""Shorter than this (inches), a piece brings the hand near the blade."""


@dataclass(frozen=True, slots=True)
class EndText:
    """One end: joint, saw setting, how the piece lies where it does not stand, long point, mate."""

    side: str
    joint: str
    setting: str
    exact: str
    lies: str
    long_point: str
    then: str
    mate: str


@dataclass(frozen=True, slots=True)
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
    changed: bool


def tickets(result: Result, pen: Pen, *, only_changed: bool = False) -> tuple[Ticket, ...]:
    """Return one ticket for every piece still to cut, room by room along the walk.

    ``only_changed`` keeps those that the last new plan of a job under way changed.
    """
    where = dict(_places(result))
    met = mates(result)
    return tuple(
        _ticket(piece, result, pen.of(piece.unit), met, where.get(piece.id))
        for piece in result.pieces
        if result.site is None
        or (not result.site.is_cut(piece.id) and (not only_changed or _changed(piece, result)))
    )


def _changed(piece: Piece, result: Result) -> bool:
    return result.site is not None and piece.id in result.site.changed


def _places(result: Result) -> Iterator[tuple[str, tuple[CutStick, int, Place]]]:
    for plan in result.plans:
        for stick in plan.sticks:
            for number, place in enumerate(stick.places, start=1):
                yield place.piece, (stick, number, place)


def _ticket(
    piece: Piece, result: Result, pen: Pen, met: Mates, where: tuple[CutStick, int, Place] | None
) -> Ticket:
    words = pen.words
    left = _end(piece, piece.left, "left", pen, met)
    right = _end(piece, piece.right, "right", pen, met)
    length = pen.reading(piece.to_mark)
    stick, order = ("", "") if where is None else _stick(where, pen)
    part = ""
    if piece.parts > 1:
        part = words("part {n} of {all}", n=piece.part, all=piece.parts)
    payload = "\n".join(
        [
            piece.id,
            str(length),
            f"L {left.joint}: {left.setting}",
            f"R {right.joint}: {right.setting}",
        ]
    )
    pairs = ((words("left"), left.mate), (words("right"), right.mate))
    return Ticket(
        id=piece.id,
        room=piece.room,
        run=piece.run,
        trim=piece.trim,
        part=part,
        length=length,
        left=left,
        right=right,
        measured=phrases.measured(piece, words),
        edges=phrases.edges(piece, pen),
        rounding=phrases.rounding(piece, pen),
        stick=stick,
        order=order,
        mates=", ".join(f"{side} {mate}" for side, mate in pairs if mate) or ", ".join(piece.mates),
        fit="; ".join(phrases.fit_lines(piece, pen)),
        note=_note(piece, result, pen),
        caution=_caution(piece, pen),
        drawing=draw_ends(piece, result.job.trim(piece.trim)),
        payload=payload,
        is_return=piece.kind is Kind.RETURN,
        changed=_changed(piece, result),
    )


def _end(piece: Piece, cut: Cut, side: str, pen: Pen, met: Mates) -> EndText:
    words = pen.words
    then = ""
    if cut.joint is Joint.IN_CORNER and cut.fit is Fit.COPED:
        then = words("then saw along the face line (cope), undercut a little")
    elif cut.joint is Joint.IN_CORNER and cut.fit is Fit.SQUARE:
        then = words("runs square into the corner; its mate is coped")
    elif cut.joint is Joint.SPLICE:
        over = cut.long_edge == "face"
        then = words("laps over its mate") if over else words("lies under its mate")
    elif cut.assumed:
        then = words("usual angle: try it on scrap")
    return EndText(
        side=words(side),
        joint=phrases.joint_name(cut, words),
        setting=phrases.setting(cut, pen),
        exact=phrases.exact_angle(cut, pen),
        lies=phrases.lies(cut, pen),
        long_point=phrases.long_point(cut, words),
        then=then,
        mate=met.get((piece.id, side), ""),
    )


def _stick(where: tuple[CutStick, int, Place], pen: Pen) -> tuple[str, str]:
    stick, number, place = where
    words = pen.words
    source = words("shop offcut") if stick.on_hand else words("stick")
    text = f"{stick.id} ({pen.stick(stick.length)} {source})"
    order = words("cut {n} of {all}", n=number, all=len(stick.places))
    if place.shared:
        order = words("{order}, shares its left cut", order=order)
    return text, order


def _note(piece: Piece, result: Result, pen: Pen) -> str:
    if result.site is not None and result.site.state(piece.id) is State.SPOILED:
        again = pen.words("cut again: the first was spoiled")
        return f"{again}; {piece.note}" if piece.note else again
    if piece.kind is Kind.RETURN:
        return pen.words("closes the profile; glue it, do not nail it")
    return piece.note or ""


def _caution(piece: Piece, pen: Pen) -> str:
    if piece.length >= SHORT:
        return ""
    return pen.words(
        "Short piece: never hold it by hand at the blade; cut it off a long length"
        " as the saw maker's manual says."
    )
