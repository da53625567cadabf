"""What the planner hands over so that its bound can be checked without it.

A worth gives each shape of piece a whole number.  If no pattern on a stick is worth more
than so much, the sticks cut must together be worth what all the pieces are.  Such
inequalities, and racks shown to hold too little, rule out every mix of sticks that costs
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

    Both go by their places in the ``Certificate``.  ``once``: places of shapes of which
    there is one piece, so that no stick holds two of them.
    """

    of_shape: tuple[int, ...]
    of_length: tuple[int, ...]
    once: tuple[int, ...] = ()


@record
class RackClaim:
    """These sticks do not hold all pieces, though each worth would let them.

    ``of_length`` says how many sticks of each length.  ``worth`` is one that the rack hardly
    surpasses: it leaves few patterns, and no choice among them cuts everything.
    """

    of_length: tuple[int, ...]
    worth: WorthClaim


@record
class Certificate:
    """Why no plan costs less than ``bound``.

    ``shapes`` and ``lengths`` are those that the claims go by.  With a ``step`` above 1
    all of them are true on a grid so many times as coarse: pieces rounded down, sticks up.
    """

    bound: int
    shapes: tuple[Shape, ...] = ()
    lengths: tuple[int, ...] = ()
    worths: tuple[WorthClaim, ...] = ()
    racks: tuple[RackClaim, ...] = ()
    step: int = 1
