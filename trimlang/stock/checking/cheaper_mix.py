"""Whether some mix of sticks costs less than a bound: part of the check of a proof.

Written separately from ``problem.py``; nothing here comes from the planner.  Counts of sticks are
tried kind after kind.  A count is skipped only where an inequality in use shows that the
whole mix would cost too much.  A mix that none in use rules out is looked up among the
others, and the one that does is in use from then on: most are never needed.
"""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, floor, inf
from typing import Final

from trimlang.record import record
from trimlang.stock.checking.stock_prices import FORGIVEN, StockPrices
from trimlang.stock.problem import Problem

KINDS: Final = 400
"""With more sorts of sticks nothing is tried."""

STEPS: Final = 60_000
STEPS_A_PIECE: Final = 10
"""Counts tried before the search gives up, and how many more for each piece of the job."""

LEVEL: Final = 1e-9
"""Coins a stick below which the count of a kind makes no difference to the cost."""


@record
class Claim:
    """The sticks of a mix, worth ``of_length`` each, must be worth ``needed`` together."""

    of_length: tuple[int, ...]
    needed: int


class GivenUpError(Exception):
    """The check would take too long."""


class CheaperMix:
    """Looks for a mix under a cost that the claims allow.

    Args:
        problem: what is bought, and the spare.
        lengths: the lengths of stick, in the order of the claims' numbers.
        claims: inequalities, in any order.
        racks: sticks of each length that do not hold everything.

    Raises:
        ValueError: where the claims leave out a length that can be bought or is in hand.

    ``used`` and ``racks_used`` are the places of those that ruled out some mix.
    """

    def __init__(
        self,
        problem: Problem,
        lengths: Sequence[int],
        claims: Sequence[Claim],
        racks: Sequence[Sequence[int]],
    ) -> None:
        self._claims, self._racks = claims, racks
        self._stock = StockPrices(problem)
        # The lengths that can be bought or are in hand.
        self.obtainable = {kind.length for kind in self._stock.kinds}
        if self.obtainable - set(lengths):
            raise ValueError("nothing is claimed of some length")
        self._places = [lengths.index(kind.length) for kind in self._stock.kinds]
        self._lengths = len(lengths)
        self._tops = [[claim.of_length[at] for at in self._places] for claim in claims]
        # More than any plan costs: shown where all sticks together are not enough.
        self._never = 1 << 62
        self.used: list[int] = []
        self.racks_used: set[int] = set()
        self._steps, self._most_steps = 0, STEPS + STEPS_A_PIECE * len(problem.parts)

    def below(self, cost: int) -> list[int] | None:
        """Return a mix that costs less and that no claim rules out; None: there is none.

        Raises:
            GivenUpError: the search would take too long.
        """
        # The claim that shows most alone is used from the start; most often it is enough.
        first = max(range(len(self._claims)), key=self.alone, default=None)
        if first is not None:
            self._order(first, cost)
        kinds = self._stock.kinds
        self._cost = cost
        self._counts = [0] * len(kinds)
        # For each claim in use: what is still needed before each kind, and the least price of a
        # unit of it.
        self._needs: list[list[int]] = []
        self._rates: list[list[float]] = []
        self.used = []
        if first is not None:
            self._use(first, 0)
            if self.alone(first) >= cost:
                return None
        if len(kinds) > KINDS:
            raise GivenUpError
        found = self._dive(0, self._stock.spare_rate)
        return list(self._counts) if found else None

    def _order(self, claim: int, cost: int) -> None:
        """Put the kinds first of which a claim allows only few counts: that leaves least to try.

        How many of the last kind are needed follows from the others.
        """
        kinds, tops = self._stock.kinds, self._tops[claim]
        free = sum(top * kind.most for top, kind in zip(tops, kinds, strict=True) if not kind.rate)
        needed, left = self._claims[claim].needed - free, cost - 1 - self._stock.spare_rate
        # The least price of a unit of worth, and of one from any other kind.
        each = sorted(
            (kind.rate / top, at)
            for at, (kind, top) in enumerate(zip(kinds, tops, strict=True))
            if kind.rate and top
        )

        def width(at: int) -> float:
            kind = kinds[at]
            if not kind.rate or not each:
                return -1.0
            others = [rate for rate, other in each[:2] if other != at]
            if not others:
                return 0.0
            slope, room = kind.rate - tops[at] * others[0], left - needed * others[0]
            most = min(float(kind.most), left / kind.rate)
            if abs(slope) > LEVEL:
                most = min(most, room / slope) if slope > 0 else most - max(room / slope, 0.0)
            return most

        order = sorted(range(len(kinds)), key=width)
        self._stock.put_in(order)
        self._places = [self._places[at] for at in order]
        self._tops = [[tops[at] for at in order] for tops in self._tops]

    def alone(self, claim: int) -> int:
        """Return the cost that a claim alone shows, with fractions of its best sticks."""
        needed, paid = self._claims[claim].needed, 0.0
        tops = self._tops[claim]
        kinds = self._stock.kinds
        for kind in sorted(
            (k for k, top in enumerate(tops) if top > 0), key=lambda k: kinds[k].rate / tops[k]
        ):
            most, top, rate = kinds[kind].most, tops[kind], kinds[kind].rate
            if most * top >= needed:
                return ceil(paid + needed / top * rate + self._stock.spare_rate - FORGIVEN)
            paid += most * rate
            needed -= most * top
        return self._never if needed > 0 else ceil(self._stock.spare_rate - FORGIVEN)

    def _use(self, claim: int, place: int) -> None:
        """Use a claim from now on, with what the counts before a place leave needed."""
        kinds, tops = self._stock.kinds, self._tops[claim]
        self.used.append(claim)
        needs = [self._claims[claim].needed] * (len(kinds) + 1)
        for kind in range(place):
            needs[kind + 1] = needs[kind] - self._counts[kind] * tops[kind]
        rates = [inf] * (len(kinds) + 1)
        for kind in range(len(kinds) - 1, -1, -1):
            each = kinds[kind].rate / tops[kind] if tops[kind] > 0 else inf
            rates[kind] = min(rates[kind + 1], each)
        self._needs.append(needs)
        self._rates.append(rates)

    def _dive(self, place: int, paid: float) -> bool:
        """Try the counts of a kind and all after it; return whether a mix was found."""
        kind, last = self._stock.kinds[place], place == len(self._stock.kinds) - 1
        least, most = self._limits(place, paid)
        # Free sticks that may as well all be cut: a mix with fewer of them costs the same.
        if kind.all_taken:
            least = kind.most
        count = least
        while count <= most:
            self._steps += 1
            if self._steps > self._most_steps:
                raise GivenUpError
            self._counts[place] = count
            if last:
                more = self._looked_up(place)
                if more is None:
                    return True
                # More of the last kind only costs more.
                if more < 0:
                    break
                count += more
                continue
            for needs, claim in zip(self._needs, self.used, strict=True):
                needs[place + 1] = needs[place] - count * self._tops[claim][place]
            if self._dive(place + 1, paid + count * kind.rate):
                return True
            count += 1
        self._counts[place] = 0
        return False

    def _limits(self, place: int, paid: float) -> tuple[int, int]:
        """Return the least and the greatest count of a kind that may lead to a cheaper mix."""
        kind = self._stock.kinds[place]
        left = self._cost - 1 + FORGIVEN - paid
        least, most = 0.0, float(kind.most)
        if kind.rate:
            most = min(most, left / kind.rate)
        for needs, rates, claim in zip(self._needs, self._rates, self.used, strict=True):
            need, top, rate = needs[place], self._tops[claim][place], rates[place + 1]
            if need <= 0:
                continue
            if rate == inf:
                if top <= 0:
                    return 0, -1
                least = max(least, need / top)
                continue
            # What this kind leaves needed costs at least `rate` a unit with the later kinds:
            # rate_of_kind * count + (need - top * count) * rate <= left, solved for the count.
            slope, room = kind.rate - top * rate, left - need * rate
            if abs(slope) <= LEVEL:
                if room < -FORGIVEN:
                    return 0, -1
            elif slope > 0:
                most = min(most, room / slope)
            else:
                least = max(least, room / slope)
        return ceil(least - FORGIVEN), floor(most + FORGIVEN)

    def _looked_up(self, place: int) -> int | None:
        """Return how many more of the last kind the counts need.

        None: nothing rules it out; -1: it costs too much already.
        """
        if self._stock.at_least(self._counts) >= self._cost:
            return -1
        worst, missing = None, 0.0
        for number, claim in enumerate(self._claims):
            tops = self._tops[number]
            short = claim.needed - sum(map(int.__mul__, self._counts, tops))
            if short > 0 and short / claim.needed > missing:
                worst, missing = number, short / claim.needed
        if worst is not None:
            if worst not in self.used:
                self._use(worst, place)
            top = self._tops[worst][place]
            short = self._needs[self.used.index(worst)][place] - self._counts[place] * top
            return -(-short // top) if top > 0 else -1
        # Dearest test last: the exact price, with packs and the spare.
        if self._stock.price(self._counts, self._cost) is None:
            return -1
        taken = [0] * self._lengths
        for at, count in zip(self._places, self._counts, strict=True):
            taken[at] += count
        for number, rack in enumerate(self._racks):
            if all(n <= most for n, most in zip(taken, rack, strict=True)):
                self.racks_used.add(number)
                return 1
        return None
