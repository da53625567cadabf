"""The saw sheet: every cut of the job, grouped so that the saw is set as seldom as can be.

Once the tape marks are on the sticks, cuts can be made in any order; so each
setting needs to be made once, and fewer changes there cannot be.
"""

from __future__ import annotations

from collections import defaultdict
from fractions import Fraction
from typing import Final

from trimlang.compiler import Result
from trimlang.joinery.piece import Cut, Piece
from trimlang.joint_row import Fit
from trimlang.planning.layout import CutStick
from trimlang.record import record
from trimlang.sheets.wording import phrases
from trimlang.sheets.wording.quantities import Pen

Key = tuple[str, str, Fraction, Fraction]


LAYS_IN_ORDER: Final = ("", "standing", "flat", "crown")


@record
class Stroke:
    """One pass of the saw: where, and which ends it makes."""

    stick: str
    mark: str
    ends: str


@record
class SettingGroup:
    """All passes at one setting."""

    setting: str
    lay: str
    strokes: tuple[Stroke, ...]


@record
class SawSheet:
    """The groups in their order, the number of changes, and the ends to cope after."""

    groups: tuple[SettingGroup, ...]
    changes: str
    cuts: str
    copes: tuple[str, ...]


def saw_sheet(result: Result, pen: Pen) -> SawSheet:
    """Return the job's cuts by setting: square first, then left and right by angle."""
    pieces = {piece.id: piece for piece in result.pieces}
    groups: defaultdict[Key, list[Stroke]] = defaultdict(list)
    texts: dict[Key, str] = {}
    for plan in result.plans:
        for stick in plan.sticks:
            for cut, stroke in _strokes(stick, pieces, pen):
                key = _key(cut)
                groups[key].append(stroke)
                texts[key] = phrases.setting(cut, pen)
    order = sorted(groups, key=lambda key: (LAYS_IN_ORDER.index(key[0]), *key[1:]))
    copes = [
        pen.words("{side} end of {piece}", side=pen.words(side), piece=piece.id)
        for piece in result.pieces
        for side, cut in (("left", piece.left), ("right", piece.right))
        if cut.fit is Fit.COPED
    ]
    return SawSheet(
        tuple(
            SettingGroup(
                texts[key],
                pen.words(phrases.LAYS[key[0]]) if key[0] else "",
                tuple(groups[key]),
            )
            for key in order
        ),
        str(max(len(order) - 1, 0)),
        str(sum(len(strokes) for strokes in groups.values())),
        tuple(copes),
    )


def _key(cut: Cut) -> Key:
    """What the saw is set to; a square cut is one however the piece lies."""
    side = phrases.runs_to(cut)
    return (phrases.lay(cut) if side else "", side, cut.setting, cut.bevel_setting)


def _strokes(stick: CutStick, pieces: dict[str, Piece], pen: Pen) -> list[tuple[Cut, Stroke]]:
    words = pen.words
    strokes: list[tuple[Cut, Stroke]] = []
    for place in stick.places:
        piece = pieces[place.piece]
        left = words("left end of {piece}", piece=piece.id)
        if place.shared and strokes:
            # one pass parts the two neighbours; its mark is where the first one ends
            cut, made = strokes.pop()
            ends = words("{one}, and {other}", one=made.ends, other=left)
            strokes.append((cut, Stroke(made.stick, made.mark, ends)))
        elif place.start or phrases.runs_to(piece.left):
            mark = str(pen.mark(place.start)) if place.start else words("stick's end")
            strokes.append((piece.left, Stroke(stick.id, mark, left)))
        # a square end at the stick's own end is no cut: nothing was to be squared off
        right = words("right end of {piece}", piece=piece.id)
        strokes.append((piece.right, Stroke(stick.id, str(pen.mark(place.end)), right)))
    return strokes
