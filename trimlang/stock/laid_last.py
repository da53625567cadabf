"""Small pieces with square ends: they share no mitre wherever they lie, so they are laid last."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from trimlang.record import record
from trimlang.stock.pricing import Pricing
from trimlang.stock.timber import Pattern

if TYPE_CHECKING:
    from trimlang.stock.timber import Size


@record
class Behind:
    """The pieces laid behind the others, the room that they take and what they are worth."""

    pieces: Pattern = ()
    taken: int = 0
    worth: int = 0


class LaidLast:
    """The small square pieces among sizes, as many of each as there are.

    Args:
        sizes: what can be laid.
        values: of one piece of each size.
        counts: how many pieces of each size there are; None: none are kept for the end.
        below: pieces that take less room than this are small.
    """

    def __init__(
        self,
        sizes: Sequence[Size],
        values: Sequence[int],
        counts: Sequence[int] | None,
        below: int,
    ) -> None:
        self.sizes = [
            place
            for place, size in enumerate(sizes)
            if counts is not None
            and values[place] > 0
            and (size.left, size.right) == (0, 0)
            and 0 < size.weight < below
        ]
        self._weights = [sizes[place].weight for place in self.sizes]
        self._values = [values[place] for place in self.sizes]
        self._copies = [counts[place] for place in self.sizes] if counts is not None else []

    def behind(self, others: Any) -> Behind:
        """Return what is best laid last; the others are worth ``others[x]`` in a room of x."""
        room = len(others) - 1
        if not self.sizes or room <= 0:
            return Behind()
        small = Pricing(self._weights, [room], self._values, self._copies).by_room
        # Every way to divide the room between the small pieces and the others, in one sum of
        # arrays.
        taken = int((small[: room + 1] + others[::-1]).argmax())
        if not small[taken]:
            return Behind()
        found = Pricing(self._weights, [taken], self._values, self._copies).patterns(0, 0, 1)[0]
        return Behind(tuple(self.sizes[place] for place in found), taken, int(small[taken]))


__all__ = ["Behind", "LaidLast"]
