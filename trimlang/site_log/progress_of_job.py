"""A job under way: the state of its pieces, what is in hand, what it cost and will cost."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from fractions import Fraction
from typing import TYPE_CHECKING

from trimlang.record import record

if TYPE_CHECKING:
    from trimlang.joinery.piece import Piece
    from trimlang.site_log.trim_progress import FullEntry


class State(StrEnum):
    """The state of a piece; a spoiled one must be cut again."""

    TO_CUT = "to cut"
    CUT = "cut"
    FITTED = "fitted"
    SPOILED = "spoiled"


@record
class InHand:
    """Sticks in hand that no piece is planned on: begun ones by name, whole ones by count.

    ``length`` is what can still be cut from each (inches); ``count`` is 1 for a begun stick.
    """

    trim: str
    length: Fraction
    count: int
    stick: str | None


@record
class JobProgress:
    """The job after the last line of its log.

    ``changed`` are the pieces still to cut whose tickets the last new plan changed;
    ``replanned`` says whether there was one.  ``spent`` is what the sticks have cost so far,
    ``to_buy`` what the rest of the order costs.  ``full_entries`` are the log's lines with
    everything filled in.  ``asked`` holds, for each piece that was cut to another length than
    the survey asks for now, the piece as it asks.
    """

    states: Mapping[str, State]
    changed: tuple[str, ...]
    replanned: bool
    spent: Fraction
    to_buy: Fraction
    in_hand: tuple[InHand, ...]
    full_entries: tuple[FullEntry, ...]
    asked: Mapping[str, Piece]

    def state(self, piece: str) -> State:
        """Return the state of a piece, by its id."""
        return self.states.get(piece, State.TO_CUT)

    def is_cut(self, piece: str) -> bool:
        """Tell whether a piece is cut and good, so that it needs no ticket any more."""
        return self.state(piece) in (State.CUT, State.FITTED)

    def count(self, *states: State) -> int:
        """Return how many pieces are in one of these states."""
        return sum(state in states for state in self.states.values())
