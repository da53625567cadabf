"""Turns a job's pieces of one trim into the planner's question, in whole numbers."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor, lcm
from typing import Final

from trimlang.joinery.piece import Cut, Kind, Lean, Piece
from trimlang.lengths.angles import cosine
from trimlang.stock.problem import Blank, Part, Problem
from trimlang.survey.job import Job, Offer, Rest, Trim

SAFE_TO_HOLD: Final = Fraction(6)
"""Pieces shorter than this are cut first, off a stick that is still long (inches; common
practice, no source: the saw's manual decides)."""

FINE_ENOUGH: Final = 64
"""Units to an inch at the least, so that rounding a kerf up costs little."""

WORTH_KEEPING: Final = Fraction(12)
"""A shorter offcut is scrap (inches; common practice, no source)."""


@dataclass(frozen=True, slots=True)
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
    pieces = tuple(pieces)
    settings = job.settings
    lengths = [piece.length for piece in pieces]
    lengths += [offer.length for offer in trim.offers] + [rest.length for rest in trim.rests]
    lengths += [settings.squares_off]
    per_inch = lcm(*(length.denominator for length in lengths))
    if per_inch < FINE_ENOUGH:
        per_inch = lcm(per_inch, FINE_ENOUGH)
    prices = [offer.price for offer in trim.offers] + [rest.price for rest in trim.rests]
    per_coin = lcm(100, *(price.denominator for price in prices))
    sources: dict[str, Offer | Rest] = {}
    blanks: list[Blank] = []
    for number, rest in enumerate(trim.rests, start=1):
        key = f"on-hand-{number}"
        sources[key] = rest
        blanks.append(
            Blank(
                key,
                int(rest.length * per_inch),
                int(rest.price * per_coin),
                limit=rest.count,
                on_hand=True,
            )
        )
    for number, offer in enumerate(trim.offers, start=1):
        key = f"offer-{number}"
        sources[key] = offer
        blanks.append(
            Blank(
                key,
                int(offer.length * per_inch),
                int(offer.price * per_coin),
                offer.pack,
                offer.at_most,
            )
        )
    needed = sum((piece.length for piece in pieces if piece.kind is not Kind.RETURN), Fraction(0))
    problem = Problem(
        trim.name,
        tuple(_part(piece, per_inch) for piece in pieces),
        tuple(blanks),
        ceil(kerf_along(pieces, settings.kerf) * per_inch),
        int(settings.squares_off * per_inch),
        ceil(needed * settings.spare_percent / 100 * per_inch),
        int(SAFE_TO_HOLD * per_inch),
        int(WORTH_KEEPING * per_inch),
        survive_loss=settings.spare_covers,
    )
    return Question(problem, per_inch, per_coin, sources)


def kerf_along(pieces: Iterable[Piece], kerf: Fraction) -> Fraction:
    """Return what the steepest cut of the pieces takes along the stick (inches).

    A blade of thickness ``k`` swung by ``m`` and tilted by ``b`` takes
    ``k ÷ (cos m × cos b)`` along the stick.
    """
    angles = {
        (max(cut.exact, cut.setting), max(cut.bevel, cut.bevel_setting))
        for piece in pieces
        for cut in (piece.left, piece.right)
    }
    return kerf / min(
        (cosine(mitre) * cosine(bevel) for mitre, bevel in angles), default=Fraction(1)
    )


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
