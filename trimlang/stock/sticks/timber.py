"""The problem in the planner's own form: sizes to cut and kinds of stick.

Parts that cut alike are one ``Size``; blanks of one length are one ``Kind``,
however they are sold, but those that cost nothing are a kind of their own.  A
kerf is added to the length of every piece, and one to that of every stick, which turns "one kerf
between neighbours" into a plain sum: pieces fit when their weights together
are no more than the stick's ``room``.
"""

from __future__ import annotations

from collections import defaultdict
from fractions import Fraction

from trimlang.record import record
from trimlang.stock.problem import Blank, Part, Problem
from trimlang.stock.sticks.mitres import least_weights

Pattern = tuple[int, ...]
"""The sizes on one stick, by their place in ``Timber.sizes``, in rising order."""


@record
class Size:
    """Parts that cut alike.

    ``weight`` is the length plus a kerf.  ``least`` is no more than the room
    that the part takes up on any stick, mitres shared or not (see
    ``mitres.least_weights``); without leans the two are equal.
    """

    length: int
    left: int
    right: int
    ids: tuple[str, ...]
    weight: int
    least: int

    @property
    def count(self) -> int:
        """How many parts are of this size."""
        return len(self.ids)


@record
class Kind:
    """Sticks of one length, from the shop's rack or from the merchant.

    ``room`` is the length between the trimmed ends plus one kerf; ``supply``
    the most sticks that can be bought or are in hand (None: no limit); ``rate`` the least price
    of one stick, in the cheapest pack: 0 only where every
    stick of the kind is free.
    """

    length: int
    room: int
    on_hand: bool
    offers: tuple[Blank, ...]
    supply: int | None
    rate: Fraction

    def to_be_used_up(self, spare: int) -> bool:
        """Whether all of these may as well be cut: they cost nothing and are no spare."""
        return not self.rate and (self.on_hand or not spare)


@record
class Timber:
    """Sizes, longest first, and kinds, longest first."""

    problem: Problem
    sizes: tuple[Size, ...]
    kinds: tuple[Kind, ...]
    leaning: bool

    @property
    def demand(self) -> tuple[int, ...]:
        """How many parts of each size."""
        return tuple(size.count for size in self.sizes)

    @property
    def shorter(self) -> tuple[int | None, ...]:
        """For each size the next shorter one whose ends lean alike; None: there is none."""
        last: dict[tuple[int, int], int] = {}
        found: list[int | None] = [None] * len(self.sizes)
        for size in range(len(self.sizes) - 1, -1, -1):
            leans = self.sizes[size].left, self.sizes[size].right
            found[size] = last.get(leans)
            last[leans] = size
        return tuple(found)

    @property
    def most(self) -> tuple[int, ...]:
        """The most sticks of each kind that a plan could use and the supply allows."""
        # No plan cuts more sticks than there are parts: each stick that is cut holds one at least.
        parts = sum(self.demand)
        return tuple(
            parts if kind.supply is None else min(kind.supply, parts) for kind in self.kinds
        )


def timber_of(problem: Problem) -> Timber:
    """Group the parts into sizes and the blanks into kinds.

    Kinds too short for any part are kept only where they may serve as spare.
    Nothing here depends on the order in which parts or blanks are listed.
    """
    # Where no two ends can share a cut, leans make no difference, and ignoring them leaves fewer
    # sizes.
    leaning = _may_share(problem.parts)
    grouped: defaultdict[tuple[int, int, int], list[str]] = defaultdict(list)
    for part in problem.parts:
        leans = (part.left_lean, part.right_lean) if leaning else (0, 0)
        grouped[(part.length, *leans)].append(part.id)
    # A fixed order, whatever the order of the parts: the same job gives the same plan.
    shapes = sorted(grouped, key=lambda shape: (-shape[0], shape[1], shape[2]))
    counts = [len(grouped[shape]) for shape in shapes]
    least = least_weights(shapes, counts, problem.kerf)
    sizes = tuple(
        Size(*shape, tuple(sorted(grouped[shape])), shape[0] + problem.kerf, weight)
        for shape, weight in zip(shapes, least, strict=True)
    )
    return Timber(problem, sizes, _kinds(problem, sizes), leaning)


def _may_share(parts: tuple[Part, ...]) -> bool:
    """Whether any end could share a cut with another part's."""
    rights = {part.right_lean > 0 for part in parts if part.right_lean}
    lefts = {part.left_lean > 0 for part in parts if part.left_lean}
    return bool(rights & lefts)


def _kinds(problem: Problem, sizes: tuple[Size, ...]) -> tuple[Kind, ...]:
    grouped: defaultdict[tuple[int, bool, bool], list[Blank]] = defaultdict(list)
    for blank in problem.blanks:
        # A few free sticks beside dear ones of their length must not make those look free.
        grouped[(blank.length, blank.on_hand, blank.price > 0)].append(blank)
    # A stick too short for the smallest piece can only ever be spare.
    smallest = min((size.weight for size in sizes), default=0)
    kinds: list[Kind] = []
    # Each stick cut holds a piece, and a longer free rest does all that a shorter one does.
    rests = sum(size.count for size in sizes)
    for length, on_hand, priced in sorted(grouped, key=lambda key: (-key[0], *key[1:])):
        room = length - 2 * problem.end_waste + problem.kerf
        holds_something = room >= smallest and bool(sizes)
        # A rest in hand is never spare: it is whatever it was before.
        if not holds_something and (on_hand or not problem.spare):
            continue
        offers = tuple(
            sorted(grouped[length, on_hand, priced], key=lambda b: (b.pack, b.price, b.key))
        )
        # `None in limits`: one offer without a limit is enough for the whole kind to have none.
        limits = [_obtainable(offer) for offer in offers]
        supply = None if None in limits else sum(limit for limit in limits if limit is not None)
        if on_hand and not priced:
            supply = rests if supply is None else min(supply, rests)
            rests -= supply
        if supply != 0:
            rate = min(Fraction(offer.price, offer.pack) for offer in offers)
            kinds.append(
                Kind(
                    length=length,
                    room=room,
                    on_hand=on_hand,
                    offers=offers,
                    supply=supply,
                    rate=rate,
                )
            )
    return tuple(kinds)


def _obtainable(offer: Blank) -> int | None:
    """Return the most sticks that whole packs of this offer give; None: no limit."""
    return None if offer.limit is None else offer.limit // offer.pack * offer.pack
