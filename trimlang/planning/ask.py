"""Turns a job's pieces of one trim into the planner's problem, in whole numbers."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction
from math import ceil, floor, lcm
from typing import Final

from trimlang.joinery.piece import Cut, Piece
from trimlang.language.stick_facts import BatchScope
from trimlang.planning.marks import Parting, nested_depth, parting, squareness
from trimlang.record import record
from trimlang.stock.problem import Blank, Part, Problem
from trimlang.survey.job import Job, Offer, Rest, Trim
from trimlang.survey.sticks import SAFE_TO_HOLD

WORTH_KEEPING: Final = Fraction(12)
"""Inches; a shorter offcut is scrap (common practice, no source)."""


@record
class Question:
    """A planner's problem, and what its whole numbers stand for.

    A unit of length is ``step`` inches, the distance between two marks on the job's tape;
    ``per_coin`` price units are one unit of money.  ``sources`` says which offer or offcut each
    blank's key stands for, ``ends`` how each part's two ends are cut.  ``kerf`` is the blade's
    own thickness (inches).
    """

    problem: Problem
    step: Fraction
    per_coin: int
    sources: dict[str, Offer | Rest]
    ends: dict[str, tuple[Cut, Cut]]
    kerf: Fraction

    def parting(self, before: str, after: str) -> Parting:
        """Return what lies between two neighbouring parts; an unknown part has square ends."""
        one, other = self.ends.get(before), self.ends.get(after)
        right = None if one is None else one[1]
        left = None if other is None else other[0]
        return parting(right, left, self.kerf, self.step)

    def inches(self, units: int) -> Fraction:
        """Return units as inches."""
        return units * self.step

    def room_for(self, inches: Fraction) -> int:
        """Return the units that a length takes up: up to the next mark of the tape."""
        return ceil(inches / self.step)

    def room_in(self, inches: Fraction) -> int:
        """Return the units that a length offers: down to the last mark of the tape on it."""
        return floor(inches / self.step)


def ask(job: Job, trim: Trim, pieces: Iterable[Piece]) -> Question:
    """Return the planner's problem for one trim.

    The unit is a step of the job's tape, so that every mark that a plan asks for is on the tape.
    What is not a whole step goes into the waste: pieces, kerf and squared-off ends are rounded
    up to the next mark, sticks down to their last one, and a shared cut never counts on more
    room than there is.  A blade at an angle takes more along the stick than its own thickness,
    so the kerf is that of the trim's steepest cut.
    """
    return Asking(job, trim).about(pieces)


class Asking:
    """Makes problems for one trim again and again, with some pieces changed; see ``ask``.

    Each piece is measured only once.
    """

    def __init__(self, job: Job, trim: Trim) -> None:
        self.job = job
        self.trim = trim
        # What can be cut from: bought or at hand.
        sold: tuple[Offer | Rest, ...] = (*trim.offers, *trim.rests)
        self._step = step = job.settings.tape_step
        # Prices become whole numbers exactly, even where one has fractions of a cent.
        prices = [one.price for one in sold] + [job.settings.joint_price or Fraction(0)]
        self._per_coin = lcm(100, *(price.denominator for price in prices))
        self._sources, self._blanks = _stock(trim, step, self._per_coin)
        # By id(), because comparing pieces is slow. The piece is kept in the entry, so that its
        # id is not given to another one meanwhile.
        self._measured: dict[int, tuple[Piece, Fraction]] = {}
        # The same by what the kerf was rounded up by, which hardly ever changes.
        self._parts: dict[Fraction, dict[int, Part]] = {}
        # Asked once: it goes through all sticks of the trim, and the planner asks again and again.
        self._has_batches = trim.has_batches

    def about(self, pieces: Iterable[Piece]) -> Question:
        """Return the problem of cutting these pieces of the trim."""
        settings, step = self.job.settings, self._step
        pieces = tuple(pieces)
        needed = sum(
            # Small glued pieces (returns, rounded corners) add nothing to the spare.
            (piece.length for piece in pieces if not piece.kind.is_glued),
            Fraction(0),
        )
        # The kerf that the planner counts between any two parts is that of the steepest cut;
        # `slack` is what rounding it up to a step has added.
        flattest = min(map(self._flattest, pieces), default=Fraction(1))
        # The smallest cosine of all cuts belongs to the steepest one (see `marks.squareness`).
        # One kerf for all cuts of a trim keeps the planner's problem small; what it counts too much
        # becomes offcut when the plan is laid out.
        wide = settings.kerf / flattest / step
        slack = ceil(wide) - wide
        problem = Problem(
            trim=self.trim.name,
            parts=self._parts_of(pieces, slack),
            blanks=self._blanks,
            kerf=ceil(wide),
            end_waste=ceil(settings.squares_off / step),
            # Up, as everywhere where less would be a promise that is not kept.
            spare=ceil(needed * settings.spare_percent / 100 / step),
            short=ceil(SAFE_TO_HOLD / step),
            usable=ceil(WORTH_KEEPING / step),
            survive_loss=settings.spare_covers,
            least_sticks=self.trim.minimum.sticks,
            least_spent=ceil(self.trim.minimum.spent * self._per_coin),
        )
        return Question(
            problem=problem,
            step=step,
            per_coin=self._per_coin,
            sources=self._sources,
            ends={piece.id: (piece.left, piece.right) for piece in pieces},
            kerf=settings.kerf,
        )

    def _parts_of(self, pieces: Sequence[Piece], slack: Fraction) -> tuple[Part, ...]:
        """Return the parts that stand for pieces in the planner's problem."""
        known = self._parts.setdefault(slack, {})
        for piece in pieces:
            if id(piece) not in known:
                known[id(piece)] = self._grouped(piece, _part(piece, self._step, slack))
        return tuple(known[id(piece)] for piece in pieces)

    def _grouped(self, piece: Piece, part: Part) -> Part:
        """Return the part with what may not mix batches; where there is one batch, as it is."""
        if not self._has_batches:
            return part
        # The wider group by default: colour is seen across a whole room at once.
        wall = f" {piece.run}" if self.trim.batch_by is BatchScope.WALL else ""
        return replace(part, group=f"{piece.room}{wall}")

    def _flattest(self, piece: Piece) -> Fraction:
        known = self._measured.get(id(piece))
        if known is None:
            known = self._measured[id(piece)] = piece, _flattest(piece)
        return known[1]


def _stock(
    trim: Trim, step: Fraction, per_coin: int
) -> tuple[dict[str, Offer | Rest], tuple[Blank, ...]]:
    """Return the blanks, and which offer or offcut each blank's key stands for."""
    sources: dict[str, Offer | Rest] = {}
    blanks: list[Blank] = []
    for number, rest in enumerate(trim.rests, start=1):
        # By their place in the file: two offcuts of one length may have unlike prices or
        # batches.
        key = f"on-hand-{number}"
        sources[key] = rest
        price = int(rest.price * per_coin)
        length = floor(rest.length / step)
        # Nothing is cut from what the hand beside the blade cannot hold.
        if rest.length >= SAFE_TO_HOLD:
            blanks.append(
                Blank(key, length, price, limit=rest.count, on_hand=True, batch=rest.batch)
            )
    for number, offer in enumerate(trim.offers, start=1):
        key = f"offer-{number}"
        sources[key] = offer
        price = int(offer.price * per_coin)
        # Down to the last mark on the stick: what lies behind that mark is no use to a tape.
        length = floor(offer.length / step)
        blanks.append(
            Blank(
                key=key,
                length=length,
                price=price,
                pack=offer.pack,
                limit=offer.at_most,
                bundle="" if offer.bundle is None else f"bundle-{offer.bundle}",
                batch=offer.batch,
            )
        )
    return sources, tuple(blanks)


def steepest_kerf(pieces: Iterable[Piece], kerf: Fraction) -> Fraction:
    """Return what the steepest cut of these pieces takes along the stick (inches)."""
    return kerf / min((_flattest(piece) for piece in pieces), default=Fraction(1))


def _flattest(piece: Piece) -> Fraction:
    return min(squareness(piece.left), squareness(piece.right))


def _part(piece: Piece, step: Fraction, slack: Fraction) -> Part:
    length = ceil(piece.length / step)
    left = _lean(piece.left, step, slack, length)
    right = _lean(piece.right, step, slack, length)
    # Of two ends that lean against each other none reaches past the other.
    if left * right < 0:
        room = length - abs(left)
        right = max(min(right, room), -room)
    return Part(piece.id, length, left, right)


def _lean(cut: Cut, step: Fraction, slack: Fraction, length: int) -> int:
    """Return how deep a neighbour may lie within an end, in steps; negative where it leans left.

    What the kerf was rounded up by (``slack``) need not be left between nested mitres again.
    """
    depth = nested_depth(cut)
    if not depth:
        return 0
    # Floored, and no longer than the piece: counting on too much room would spoil the neighbour.
    size = min(floor(abs(depth) / step + slack), length)
    return size if depth > 0 else -size
