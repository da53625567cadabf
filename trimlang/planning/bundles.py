"""What a yard sells as one thing: a blank by itself, or a bundle that is sold whole."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from trimlang.record import record
from trimlang.stock.problem import Blank


@record
class SoldAsOne:
    """Blanks that are bought together, in as many packs of each."""

    blanks: tuple[Blank, ...]

    @property
    def price(self) -> int:
        """What one of it costs: a blank's price in a bundle is its share of the bundle's."""
        return sum(blank.price for blank in self.blanks)

    @property
    def length(self) -> int:
        """How long all sticks of one of it are together."""
        return sum(blank.length * blank.pack for blank in self.blanks)

    def most(self, bought: Mapping[str, int]) -> int | None:
        """Return how often it can be had besides the packs ``bought`` by blank; None: no limit.

        The blank that runs out first decides, since the others are not sold without it.
        """
        left = [
            blank.limit // blank.pack - bought.get(blank.key, 0)
            for blank in self.blanks
            if blank.limit is not None
        ]
        return min(left, default=None)


def sold_as_one(blanks: Iterable[Blank]) -> list[SoldAsOne]:
    """Return what is sold of these blanks, in the order in which each is first named."""
    # The order is that of the blanks, so that every build tries the same choices in the same order.
    found: dict[tuple[str, str], list[Blank]] = {}
    for blank in blanks:
        # A blank without a bundle is one by itself, whatever bundles are called.
        found.setdefault((blank.bundle, "" if blank.bundle else blank.key), []).append(blank)
    return [SoldAsOne(tuple(together)) for together in found.values()]
