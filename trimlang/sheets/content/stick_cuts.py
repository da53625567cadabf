"""The cuts of a stick: what each one makes, in which order it can be held, and the offcut's use."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from typing import TypeAlias

from trimlang.joinery.at_the_saw import AtSaw
from trimlang.joinery.piece import Piece
from trimlang.language.end_facts import Side
from trimlang.lengths.tape import NOTHING
from trimlang.planning.ask import WORTH_KEEPING
from trimlang.planning.layout import CutStick
from trimlang.record import record
from trimlang.sheets.content.cut_order import Pass, Setting, visits
from trimlang.survey.copes import HARD_TO_HOLD

AtBothEnds: TypeAlias = Mapping[str, tuple[AtSaw, AtSaw]]
"""How each piece's left and right end lie at the saw, by the piece's id."""
ANY_SETTING: Setting = (0, "", NOTHING, "", NOTHING, "")


@record
class MadeEnd:
    """An end that a cut makes, and how it lies for it."""

    piece: str
    side: Side
    at: AtSaw


@record
class StickCut:
    """One pass of the saw: inches from the stick's left end, and the one or two ends it makes."""

    place: Fraction
    ends: tuple[MadeEnd, ...]

    @property
    def at(self) -> AtSaw:
        """The saw's setting; where two ends are made it is the same for both."""
        return self.ends[0].at


def cuts_of(stick: CutStick, at_saw: AtBothEnds) -> tuple[StickCut, ...]:
    """Return a stick's cuts from its left end on."""
    cuts: list[StickCut] = []
    for place in stick.places:
        left, right = (
            MadeEnd(place.piece, side, at)
            for side, at in zip((Side.LEFT, Side.RIGHT), at_saw[place.piece], strict=True)
        )
        if place.shared and cuts:
            # One pass separates the two neighbours; its mark is where the first one ends.
            before = cuts.pop()
            cuts.append(StickCut(before.place, (*before.ends, left)))
        elif place.start or not left.at.is_square:
            cuts.append(StickCut(place.start, (left,)))
        # A square end at mark 0 is the stick's own end, with nothing to square off: no cut.
        cuts.append(StickCut(place.end, (right,)))
    return tuple(cuts)


def by_hold(cuts: Sequence[StickCut], stick: CutStick) -> tuple[StickCut, ...]:
    """Return the cuts from the left on, but a piece that would be hard to hold from its far end.

    The saw is set as each cut needs it: this is the order for whoever cuts stick by stick.
    """
    passes = [
        Pass(setting=ANY_SETTING, stick=stick.id, at=one.place, long=stick.length) for one in cuts
    ]
    return tuple(cuts[number] for visit in visits(passes, HARD_TO_HOLD) for number in visit)


def is_kept(stick: CutStick) -> bool:
    """Whether what is left of a stick is worth keeping."""
    return stick.offcut >= WORTH_KEEPING


def spare_for(stick: CutStick, pieces: Iterable[Piece], kerf: Fraction) -> Piece | None:
    """Return the longest piece that what is left of a stick gives once more, if it is kept."""
    # Two cuts: the offcut's own end may be a mitre that is of no use.
    fits = [piece for piece in pieces if piece.length + 2 * kerf <= stick.offcut]
    return max(fits, key=lambda piece: piece.length, default=None) if is_kept(stick) else None
