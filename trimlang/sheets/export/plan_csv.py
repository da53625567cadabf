"""The plan as CSV: every piece with its cuts, and every stick with what is cut from it."""

from __future__ import annotations

import csv
from collections.abc import Iterable
from fractions import Fraction
from io import StringIO
from typing import Final

from trimlang.compiler import Result
from trimlang.formulas import guarded
from trimlang.joinery.piece import Cut, Piece
from trimlang.lengths.tape import Unit, decimal_text, length_text
from trimlang.sheets.wording.phrases import runs_to

PIECE_COLUMNS: Final = (
    "piece",
    "room",
    "run",
    "trim",
    "kind",
    "part",
    "parts",
    "length",
    "length_in",
    "length_exact",
    "measured_on",
    "left_joint",
    "left_fit",
    "left_saw_deg",
    "left_bevel_deg",
    "left_lean",
    "right_joint",
    "right_fit",
    "right_saw_deg",
    "right_bevel_deg",
    "right_lean",
    "stick",
    "cut",
    "note",
)
STICK_COLUMNS: Final = (
    "stick",
    "trim",
    "stick_length",
    "source",
    "cut",
    "piece",
    "from_mark",
    "to_mark",
    "from_in",
    "to_in",
    "shared_cut",
    "offcut",
)


def cut_list_csv(result: Result) -> str:
    """Return CSV with a line for each piece, room by room along the walk.

    ``length`` is the ticket's number as the tape shows it, ``length_in`` the same in
    inches to four places, ``length_exact`` as an exact fraction of an inch.  ``left_lean``
    and ``right_lean`` are the ticket's left and right: the way the cut runs from the fence.
    """
    where = {
        place.piece: (stick.id, number)
        for plan in result.plans
        for stick in plan.sticks
        for number, place in enumerate(stick.places, start=1)
    }
    return _table(
        PIECE_COLUMNS,
        (
            (
                piece.id,
                # The user's free text, which a spreadsheet could take for a formula; so is the
                # note.
                guarded(piece.room),
                piece.run,
                piece.trim,
                piece.kind.value,
                piece.part,
                piece.parts,
                length_text(piece.to_mark, piece.unit),
                decimal_text(piece.to_mark, 4),
                exact(piece.to_mark),
                piece.measured_on.value,
                *_cut(piece.left),
                *_cut(piece.right),
                *where.get(piece.id, ("", "")),
                guarded(piece.all_notes),
            )
            for piece in result.pieces
        ),
    )


def sticks_csv(result: Result) -> str:
    """Return CSV with a line for each piece on each stick, in cutting order from its left end."""
    pieces = {piece.id: piece for piece in result.pieces}
    own = result.job.settings.unit
    rows: list[tuple[object, ...]] = []
    for plan in result.plans:
        for stick in plan.sticks:
            offcut = length_text(stick.offcut, own) if stick.offcut else ""
            for number, place in enumerate(stick.places, start=1):
                unit = _unit(pieces.get(place.piece), own)
                rows.append(
                    (
                        stick.id,
                        plan.trim,
                        length_text(stick.length, own),
                        "shop offcut" if stick.on_hand else "bought",
                        number,
                        place.piece,
                        length_text(place.start, unit),
                        length_text(place.end, unit),
                        decimal_text(place.start, 4),
                        decimal_text(place.end, 4),
                        # One pass of the saw makes this piece's left end and the right end before
                        # it.
                        "yes" if place.shared else "",
                        # Once a stick, in its last line, so that a column's sum counts each offcut
                        # once.
                        offcut if number == len(stick.places) else "",
                    )
                )
    return _table(STICK_COLUMNS, rows)


def exact(inches: Fraction) -> str:
    """Write an exact length so that no spreadsheet takes it for a date: ``233/8 in``."""
    return f"{inches} in"


def _unit(piece: Piece | None, own: Unit) -> Unit:
    return own if piece is None else piece.unit


def _cut(cut: Cut) -> tuple[str, ...]:
    return (
        cut.joint.value,
        cut.fit.value if cut.joint.is_inside else "",
        decimal_text(cut.setting, 4),
        decimal_text(cut.bevel_setting, 4) if cut.bevel else "",
        runs_to(cut) or "square",
    )


def _table(columns: Iterable[str], rows: Iterable[Iterable[object]]) -> str:
    text = StringIO()
    lines = csv.writer(text)
    lines.writerow(columns)
    lines.writerows(rows)
    return text.getvalue()
