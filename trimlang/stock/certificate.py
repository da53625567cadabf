"""What the planner hands over so that its bound can be checked without it.

A worth gives each shape of piece a whole number.  If no pattern on a stick of some length is worth
more than that length's number, then the sticks cut must together be worth what all the pieces are.
Such inequalities, and racks shown to hold too little, rule out every mix of sticks that costs
less than the bound.  ``proof_check.py`` works all of it out again from the problem alone.
"""

from __future__ import annotations

from typing import TypeAlias

from trimlang.record import record

Shape: TypeAlias = tuple[int, int, int]
"""The length of a piece and how its left and right end lean, as in ``Part``."""


@record
class WorthClaim:
    """Values of the shapes, and what a stick of each length is worth at most.

    Both are listed in the order of the ``Certificate``.
    """

    of_shape: tuple[int, ...]
    of_length: tuple[int, ...]


@record
class RackClaim:
    """These sticks do not hold all pieces, although no worth shows it.

    ``of_length`` says how many sticks of each length there are.  The rack hardly exceeds ``worth``,
    which leaves few patterns, and no choice among them cuts everything.
    """

    of_length: tuple[int, ...]
    worth: WorthClaim


@record
class Certificate:
    """Why no plan costs less than ``bound``.

    ``shapes`` and ``lengths`` give the order of the claims' numbers.  With a ``step`` above 1
    the claims are true on a grid that many times as coarse: pieces rounded down, sticks up.
    ``cases``, if any, show the bound instead: one for each way to keep room for a spoiled piece
    beside spare sticks: on a rest, then on a whole stick of each length.
    """

    bound: int
    shapes: tuple[Shape, ...] = ()
    lengths: tuple[int, ...] = ()
    worths: tuple[WorthClaim, ...] = ()
    racks: tuple[RackClaim, ...] = ()
    step: int = 1
    cases: tuple[Certificate, ...] = ()


@record
class FreeRun:
    """A wall in so many pieces whose joints are free, in the problem's units.

    ``total`` is the least that the pieces measure together; ``least`` the shortest
    that one may be; ``lean`` the most that an end at a joint may lean, either way; ``left`` and
    ``right`` are how the wall's own ends lean, as in ``Part``.
    """

    pieces: int
    total: int
    least: int
    lean: int = 0
    left: int = 0
    right: int = 0

    @property
    def most_lean(self) -> int:
        """The most that any end leans."""
        return max(self.lean, abs(self.left), abs(self.right))
