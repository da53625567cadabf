"""The saw sheet: every cut of the job by setting, so that the saw is set as seldom as can be.

Once the tape marks are on the sticks, cuts can be made in nearly any order; a setting is made
again only where a piece would otherwise be too short to hold for its next cut.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from trimlang.compiler import Result
from trimlang.joinery.at_the_saw import AtSaw, Lay, both_ends, saw_for
from trimlang.joint_row import Fit
from trimlang.language.end_facts import Side
from trimlang.lengths.tape import NOTHING
from trimlang.marking import N_
from trimlang.planning.layout import CutStick
from trimlang.record import record
from trimlang.sheets.content.cut_order import Pass, Setting, visits
from trimlang.sheets.content.stick_cuts import MadeEnd, StickCut, cuts_of
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
END: Final = {Side.LEFT: N_("left end of {piece}"), Side.RIGHT: N_("right end of {piece}")}


@record
class Stroke:
    """One pass of the saw: on which stick, at which mark, and which ends it makes."""

    stick: str
    mark: str
    ends: str


@record
class ShownCut:
    """A picture of a setting, and which of its pieces it shows (``piece left of the blade``)."""

    drawn: CutPicture
    piece: str


@record
class SettingGroup:
    """All passes at one setting, with its pictures: one for each side on which pieces lie.

    Where all lie on one side, ``lay`` says so, else each pass does.
    """

    setting: str
    settings: tuple[str, ...]
    swing: str
    tilt: str
    lay: str
    cuts: tuple[ShownCut, ...]
    picture: LayPicture | None
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
    strokes: list[tuple[StickCut, CutStick]] = []
    passes: list[Pass] = []
    for plan in result.plans:
        for stick in plan.sticks:
            # By trim, for a tall one has to lie flat where a low one stands.
            saw = saw_for(result.job.trim(plan.trim), result.job.settings)
            ends = {place.piece: both_ends(pieces[place.piece], saw) for place in stick.places}
            for cut in cuts_of(stick, ends):
                strokes.append((cut, stick))
                passes.append(Pass(_key(cut.at), stick.id, cut.place, stick.length))
    # Square cuts first (their key is -1), then by how the piece lies, swing and angle.
    order = visits(passes, HARD_TO_HOLD)
    # A cope is sawn by hand along the face line, after all cuts at the saw.
    copes = [
        pen.words("{side} end of {piece}", side=pen.words(side), piece=piece.id)
        for piece in result.pieces
        for side in Side
        if side.of(piece.left, piece.right).fit is Fit.COPED
    ]
    return SawSheet(
        tuple(_group([strokes[number] for number in made], pen) for made in order),
        # The first setting is no change from another.
        str(max(len(order) - 1, 0)),
        str(len(strokes)),
        tuple(copes),
    )


def _group(made: Sequence[tuple[StickCut, CutStick]], pen: Pen) -> SettingGroup:
    at = made[0][0].at
    sides = sides_of([end.at.piece for cut, _ in made for end in cut.ends])
    # Where all pieces lie on one side it is said once, and not at every pass.
    once = len(sides) == 1
    return SettingGroup(
        setting=saw_words.setting(at, pen),
        settings=saw_words.setting_lines(at, pen),
        swing=at.swing or "",
        tilt=at.tilt or "",
        lay=saw_words.lay_and_side(at, pen.words) if once else _lay(at, pen.words),
        # A square cut is the same on either side of the blade, however the piece lies.
        cuts=(ShownCut(cut_picture(at, None), ""),)
        if at.is_square
        else tuple(
            ShownCut(cut_picture(at, side), pen.words(saw_words.PIECE[side])) for side in sides
        ),
        picture=None if at.is_square else lay_picture(at, saw_words.at_fence(at, pen.words)),
        strokes=tuple(_stroke(cut, stick, pen, side=not once) for cut, stick in made),
    )


def _lay(at: AtSaw, words: Words) -> str:
    return "" if at.is_square else saw_words.lay(at, words)


def _key(at: AtSaw) -> Setting:
    """Return setting and lay as a sort key; all square cuts are one, however the piece lies."""
    if at.is_square:
        return (-1, "", NOTHING, "", NOTHING, "")
    way = LAYS_IN_ORDER.index(at.way)
    return (way, at.swing or "", at.mitre, at.tilt or "", at.bevel, at.pose.fence)


def _stroke(cut: StickCut, stick: CutStick, pen: Pen, *, side: bool) -> Stroke:
    words = pen.words
    made = [_made(end, words, side=side) for end in cut.ends]
    both = "{one}, and {other}"
    return Stroke(
        stick=stick.id,
        # A cut at nought is that of the stick's own end, for which no mark is made.
        mark=str(pen.mark(cut.place)) if cut.place else words("stick's end"),
        ends=made[0] if len(made) == 1 else words(both, one=made[0], other=made[1]),
    )


def _made(made: MadeEnd, words: Words, *, side: bool) -> str:
    end = words(END[made.side], piece=made.piece)
    return end if made.at.is_square or not side else f"{end}, {saw_words.side(made.at, words)}"
