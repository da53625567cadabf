"""Turns a job's pieces of one trim into the planner's question, in whole numbers."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import ceil, floor, lcm
from typing import Final

from trimlang.joinery.piece import Cut, Lean, Piece, PieceKind
from trimlang.lengths.angles import cosine
from trimlang.record import record
from trimlang.stock.problem import Blank, Part, Problem
from trimlang.survey.job import Job, Offer, Rest, Trim

SAFE_TO_HOLD: Final = Fraction(6)
"""Pieces shorter than this are cut first, off a stick that is still long (inches; common
practice, no source: the saw's manual decides)."""

FINE_ENOUGH: Final = 64
"""Units to an inch at the least, so that rounding a kerf up costs little."""

WORTH_KEEPING: Final = Fraction(12)
"""A shorter offcut is scrap (inches; common practice, no source)."""


@record
class Question:
    """A problem and what its whole numbers stand for.

    ``per_inch`` units make an inch, ``per_coin`` price units one unit of money.
    ``sources`` tells which offer or rest each blank's key means.
    """

    problem: Problem
    per_inch: int
    per_coin: int
    sources: dict[str, Offer | Rest]


def ask(job: Job, trim: Trim, pieces: Iterable[Piece]) -> Question:
    """Return the planner's problem for one trim.

    The unit is the largest that makes every ticket length, stick and squared-off
    end whole, and not coarser than a sixty-fourth of an inch.  Leans are rounded
    towards square: a shared cut never counts on more room than there is.  A blade
    that stands at an angle takes more along the stick than its own thickness, so
    the kerf is that of the trim's steepest cut, rounded up.
    """
    return Asking(job, trim).about(pieces)


class Asking:
    """Asks about one trim again and again, with some pieces changed; see ``ask``.

    Each piece, and the stock, is measured once.
    """

    def __init__(self, job: Job, trim: Trim) -> None:
        self.job = job
        self.trim = trim
        sold: tuple[Offer | Rest, ...] = (*trim.offers, *trim.rests)
        self._stock_units = lcm(
            FINE_ENOUGH,
            job.settings.squares_off.denominator,
            *(one.length.denominator for one in sold),
        )
        self._per_coin = lcm(100, *(one.price.denominator for one in sold))
        # by identity: a piece is dear to compare, and is kept here, so that its number stays its
        self._measured: dict[int, _Measured] = {}

    def about(self, pieces: Iterable[Piece]) -> Question:
        """Return the problem of cutting these pieces of the trim."""
        settings = self.job.settings
        measured = [self._measure(piece) for piece in pieces]
        per_inch = lcm(self._stock_units, *(one.piece.length.denominator for one in measured))
        sources, blanks = self._stock(per_inch)
        needed = sum(
            (one.piece.length for one in measured if one.piece.kind is not PieceKind.RETURN),
            Fraction(0),
        )
        flattest = min((one.flattest for one in measured), default=Fraction(1))
        problem = Problem(
            trim=self.trim.name,
            parts=tuple(one.part(per_inch) for one in measured),
            blanks=blanks,
            kerf=ceil(settings.kerf / flattest * per_inch),
            end_waste=int(settings.squares_off * per_inch),
            spare=ceil(needed * settings.spare_percent / 100 * per_inch),
            short=int(SAFE_TO_HOLD * per_inch),
            usable=int(WORTH_KEEPING * per_inch),
            survive_loss=settings.spare_covers,
        )
        return Question(problem, per_inch, self._per_coin, sources)

    def _measure(self, piece: Piece) -> _Measured:
        known = self._measured.get(id(piece))
        if known is None:
            known = self._measured[id(piece)] = _Measured(piece)
        return known

    def _stock(self, per_inch: int) -> tuple[dict[str, Offer | Rest], tuple[Blank, ...]]:
        """Return what may be cut, and which offer or rest each blank's key means."""
        sources: dict[str, Offer | Rest] = {}
        blanks: list[Blank] = []
        for number, rest in enumerate(self.trim.rests, start=1):
            key = f"on-hand-{number}"
            sources[key] = rest
            price = int(rest.price * self._per_coin)
            length = int(rest.length * per_inch)
            blanks.append(Blank(key, length, price, limit=rest.count, on_hand=True))
        for number, offer in enumerate(self.trim.offers, start=1):
            key = f"offer-{number}"
            sources[key] = offer
            price = int(offer.price * self._per_coin)
            length = int(offer.length * per_inch)
            blanks.append(
                Blank(key=key, length=length, price=price, pack=offer.pack, limit=offer.at_most)
            )
        return sources, tuple(blanks)


class _Measured:
    """A piece in the planner's terms."""

    def __init__(self, piece: Piece) -> None:
        self.piece = piece
        self.flattest = _flattest(piece)
        self._part: tuple[int, Part] | None = None

    def part(self, per_inch: int) -> Part:
        """Return what the planner is told of the piece in units of so many an inch."""
        if self._part is None or self._part[0] != per_inch:
            self._part = (per_inch, _part(self.piece, per_inch))
        return self._part[1]


def kerf_along(pieces: Iterable[Piece], kerf: Fraction) -> Fraction:
    """Return what the steepest cut of the pieces takes along the stick (inches).

    A blade of thickness ``k`` swung by ``m`` and tilted by ``b`` takes
    ``k ÷ (cos m × cos b)`` along the stick.
    """
    return kerf / min((_flattest(piece) for piece in pieces), default=Fraction(1))


def _flattest(piece: Piece) -> Fraction:
    """Return the least ``cos m × cos b`` of a piece's two cuts."""
    one, other = (
        cosine(max(cut.exact, cut.setting)) * cosine(max(cut.bevel, cut.bevel_setting))
        for cut in (piece.left, piece.right)
    )
    return min(one, other)


def _part(piece: Piece, per_inch: int) -> Part:
    return Part(
        piece.id,
        int(piece.length * per_inch),
        _lean(piece.left, per_inch),
        _lean(piece.right, per_inch),
    )


def _lean(cut: Cut, per_inch: int) -> int:
    if cut.lies_flat and not cut.crown:
        # cut flat on the table: it does not nest with the standing mitres of its neighbours
        return 0
    size = floor(cut.inset * per_inch)
    return {Lean.LEFT: -size, Lean.RIGHT: size, Lean.UPRIGHT: 0}[cut.lean]
