"""The saw sheet: every cut of the job by setting, so that the saw is set as seldom as can be.

Once the tape marks are on the sticks, cuts can be made in nearly any order; a setting is made
again only where a piece would else be left too short to hold for its next cut.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.compiler import Result
from trimlang.joinery.at_the_saw import AtSaw, Hand, Lay, MitreSaw, both_ends, saw_for
from trimlang.joinery.piece import Piece
from trimlang.joint_row import Fit
from trimlang.language.end_facts import Side
from trimlang.lengths.tape import NOTHING
from trimlang.planning.layout import CutStick
from trimlang.record import record
from trimlang.sheets.content.cut_order import Pass, Setting, visits
from trimlang.sheets.drawing.setting_picture import (
    CutPicture,
    LayPicture,
    cut_picture,
    lay_picture,
    sides_of,
)
from trimlang.sheets.wording import saw_words
from trimlang.sheets.wording.catalogue import Words
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.copes import HARD_TO_HOLD

LAYS_IN_ORDER: Final = tuple(Lay)


@record
class Stroke:
    """One pass of the saw: on which stick, at which mark, and which ends it makes.

    ``pieces`` are the sides of the blade on which the pieces lie whose ends these are.
    """

    stick: str
    mark: str
    ends: str
    pieces: tuple[Hand, ...]


@record
class ShownCut:
    """A picture of a setting, and which of its pieces it shows (``piece left of the blade``)."""

    drawn: CutPicture
    piece: str


@record
class SettingGroup:
    """All passes at one setting, with its pictures: one for each side on which pieces lie."""

    setting: str
    settings: tuple[str, ...]
    swing: str
    tilt: str
    lay: str
    cuts: tuple[ShownCut, ...]
    lies: LayPicture | None
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
    strokes: list[tuple[AtSaw, Stroke]] = []
    passes: list[Pass] = []
    for plan in result.plans:
        for stick in plan.sticks:
            saw = saw_for(result.job.trim(plan.trim), result.job.settings)
            for at, place, stroke in _strokes(stick, pieces, saw, pen):
                strokes.append((at, stroke))
                passes.append(Pass(_key(at), stick.id, place, stick.length))
    # Square cuts first (their key is -1), then by how the piece lies, swing and angle.
    order = visits(passes, HARD_TO_HOLD)
    copes = [
        pen.words("{side} end of {piece}", side=pen.words(side), piece=piece.id)
        for piece in result.pieces
        for side in Side
        if side.of(piece.left, piece.right).fit is Fit.COPED
    ]
    return SawSheet(
        tuple(
            _group(strokes[made[0]][0], tuple(strokes[number][1] for number in made), pen)
            for made in order
        ),
        str(max(len(order) - 1, 0)),
        str(len(strokes)),
        tuple(copes),
    )


def _group(at: AtSaw, strokes: tuple[Stroke, ...], pen: Pen) -> SettingGroup:
    sides = sides_of([side for stroke in strokes for side in stroke.pieces])
    return SettingGroup(
        setting=saw_words.setting(at, pen),
        settings=saw_words.setting_lines(at, pen),
        swing=at.swing or "",
        tilt=at.tilt or "",
        lay="" if at.is_square else saw_words.lies(at, pen.words),
        # A square cut is the same on either side of the blade, however the piece lies.
        cuts=(ShownCut(cut_picture(at, None), ""),)
        if at.is_square
        else tuple(
            ShownCut(cut_picture(at, side), pen.words(saw_words.PIECE[side])) for side in sides
        ),
        lies=None if at.is_square else lay_picture(at, saw_words.at_fence(at, pen.words)),
        strokes=strokes,
    )


def _key(at: AtSaw) -> Setting:
    """Return setting and lay as a sort key; all square cuts are one, however the piece lies."""
    if at.is_square:
        return (-1, "", NOTHING, "", NOTHING, "")
    way = LAYS_IN_ORDER.index(at.way)
    return (way, at.swing or "", at.mitre, at.tilt or "", at.bevel, at.pose.fence)


def _strokes(
    stick: CutStick, pieces: dict[str, Piece], saw: MitreSaw, pen: Pen
) -> list[tuple[AtSaw, Fraction, Stroke]]:
    words = pen.words
    strokes: list[tuple[AtSaw, Fraction, Stroke]] = []
    for place in stick.places:
        piece = pieces[place.piece]
        ends = both_ends(piece, saw)
        left = _made(words("left end of {piece}", piece=piece.id), ends[0], words)
        if place.shared and strokes:
            # One pass separates the two neighbours; its mark is where the first one ends.
            at, where, made = strokes.pop()
            both = words("{one}, and {other}", one=made.ends, other=left)
            sides = (*made.pieces, ends[0].piece)
            strokes.append((at, where, Stroke(made.stick, made.mark, both, sides)))
        elif place.start or not ends[0].is_square:
            mark = str(pen.mark(place.start)) if place.start else words("stick's end")
            strokes.append((ends[0], place.start, Stroke(stick.id, mark, left, (ends[0].piece,))))
        # A square end at mark 0 is the stick's own end, with nothing to square off: no cut.
        right = _made(words("right end of {piece}", piece=piece.id), ends[1], words)
        mark = str(pen.mark(place.end))
        strokes.append((ends[1], place.end, Stroke(stick.id, mark, right, (ends[1].piece,))))
    return strokes


def _made(end: str, at: AtSaw, words: Words) -> str:
    return end if at.is_square else f"{end}, {saw_words.side(at, words)}"
