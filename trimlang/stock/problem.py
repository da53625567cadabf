"""What the stock planner is asked, and what it answers.

One problem is one trim: sticks of different trims never mix.  Every length
here is a whole number of the problem's own unit (the smallest that holds the
job's lengths exactly), and every price a whole number of the smallest coin
that the job file used, so no float decides whether a piece fits or what is
cheaper.

How a stick is cut
------------------
A stick of length ``L`` loses ``end_waste`` at each end.  In what is left,
pieces lie side by side, each as long as its ``Part.length`` (overall, long
point to long point), with one ``kerf`` between neighbours.  The last piece
needs a kerf behind it only if something is left behind it.

Neighbouring ends that lean the same way share a cut.  ``Part.left_lean`` and
``Part.right_lean`` say how far the face edge of that end lies to the right of
its back edge (negative: to the left; zero: a square end).  Two neighbours
overlap, long point past long point, by ``min(|right_lean|, |left_lean|)``
when both lean the same way, and by nothing otherwise.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


@dataclass(frozen=True, slots=True)
class Part:
    """One piece to be cut: its id, overall length and the lean of its ends."""

    id: str
    length: int
    left_lean: int = 0
    right_lean: int = 0


@dataclass(frozen=True, slots=True)
class Blank:
    """A kind of stick that can be had.

    ``price`` buys ``pack`` sticks at once.  ``limit`` is the most *sticks* that
    can be had (None: any number).  ``on_hand`` marks rests already in the shop;
    they are had one by one.
    """

    key: str
    length: int
    price: int
    pack: int = 1
    limit: int | None = None
    on_hand: bool = False


@dataclass(frozen=True, slots=True)
class Problem:
    """Cut all ``parts`` of one trim from ``blanks`` for the least money.

    ``spare`` asks for whole uncut sticks besides, at least this long together.
    """

    trim: str
    parts: tuple[Part, ...]
    blanks: tuple[Blank, ...]
    kerf: int = 0
    end_waste: int = 0
    spare: int = 0


class Status(StrEnum):
    """What a plan's makers can say of its cost."""

    PROVEN = "proven least cost"
    GAP = "within a stated gap"
    UNPROVEN = "not proven"


@dataclass(frozen=True, slots=True)
class Stick:
    """One stick that is cut: the blank's key and the pieces from its left end."""

    blank: str
    parts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Purchase:
    """So many packs (or singles, or rests from the rack) of one blank."""

    blank: str
    packs: int


@dataclass(frozen=True, slots=True)
class Plan:
    """An answer: sticks to cut, what to buy, and how good that is.

    Sticks bought beyond ``sticks`` stay whole (spare, or left in a pack).
    ``cost`` and ``bound`` are in the smallest coin; ``bound`` is true: no plan
    costs less.
    """

    problem: Problem
    sticks: tuple[Stick, ...]
    purchases: tuple[Purchase, ...]
    cost: int
    bound: int
    status: Status


@dataclass(frozen=True, slots=True)
class NoPlan:
    """No plan exists: the parts that no stick holds, or the supply that ran out."""

    problem: Problem
    too_long: tuple[str, ...] = ()
    short_of_supply: bool = False
