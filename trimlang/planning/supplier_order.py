"""Fills up the order at a supplier who sells so much of all trims together, or nothing.

Each trim is planned by itself; what they come to together is known only then.  Where it is less
than the supplier's least order, sticks are bought besides: of whichever of its trims they cost
least, which serve as spare.

Why the bound holds: every plan that buys there at all spends no less than the least sum that is
enough, of sums that each trim's prices can make and that are no less than that trim's own bound
(``supplier_floor``).  Where some trim has to be bought, because the shop has none of it, every plan
buys there.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Container, Iterable, Sequence
from dataclasses import replace
from fractions import Fraction
from math import ceil, lcm

from trimlang.diagnostics import Diagnostic, say
from trimlang.planning.ask import Question, ask
from trimlang.planning.bundles import SoldAsOne, sold_as_one
from trimlang.planning.covering import Addition, least_cover
from trimlang.planning.layout import Bought, TrimPlan
from trimlang.planning.supplier_floor import Sold, TrimSpent, least_for_sticks, least_money
from trimlang.record import record
from trimlang.stock.problem import Status
from trimlang.survey.job import Job, Offer
from trimlang.survey.sticks import MinimumOrder


def fill_up_orders(
    job: Job, plans: Sequence[TrimPlan], bought: Container[str] = ()
) -> tuple[tuple[TrimPlan, ...], tuple[Diagnostic, ...]]:
    """Return the plans with what their suppliers' least orders ask for besides; and what is wrong.

    ``bought`` are trims of which the yard has brought sticks already: once one of a supplier's is
    among them, its least order is met.
    """
    found = {plan.trim: plan for plan in plans}
    problems: list[Diagnostic] = []
    for supplier, least in _least_orders(job).items():
        own = [plan for plan in plans if job.trim(plan.trim).supplier == supplier]
        # A supplier that has delivered has had his order; what is fetched later is a matter of the
        # counter.
        met = any(t.supplier == supplier and t.name in bought for t in job.trims)
        if met or not any(_bought(plan) for plan in own):
            continue
        filled = _SupplierOrder(job, own, least).filled_up()
        if filled is None:
            last = next(t for t in reversed(job.trims) if t.supplier == supplier)
            span = last.offers[0].span if last.offers else last.span
            problems.append(say("T495", span, supplier=supplier))
            continue
        found |= {plan.trim: plan for plan in filled}
    return tuple(found.values()), tuple(problems)


def _least_orders(job: Job) -> dict[str, MinimumOrder]:
    """Return what each supplier sells at least of all trims together, by its name."""
    none = MinimumOrder()
    return {
        trim.supplier: trim.minimum_in_all
        for trim in job.trims
        if trim.supplier is not None and trim.minimum_in_all != none
    }


def _bought(plan: TrimPlan) -> list[Bought]:
    return [line for line in plan.bought if not line.on_hand]


@record
class _Sold:
    """What a supplier sells as one, of one trim; ``price`` is in the smallest coin of all trims."""

    trim: str
    thing: SoldAsOne
    price: int

    @property
    def sticks(self) -> int:
        """How many sticks one of it is."""
        return sum(blank.pack for blank in self.thing.blanks)


class _SupplierOrder:
    """The order of one supplier's trims, as far as it is planned."""

    def __init__(self, job: Job, plans: Sequence[TrimPlan], least: MinimumOrder) -> None:
        self._job, self._plans, self._least = job, plans, least
        self._questions = {plan.trim: ask(job, job.trim(plan.trim), ()) for plan in plans}
        # Trims are planned in coins of their own; only in one coin for all can their prices be
        # added up.
        self._coin = lcm(*(one.per_coin for one in self._questions.values()))
        self._sold = [
            _Sold(trim=name, thing=thing, price=thing.price * (self._coin // question.per_coin))
            for name, question in self._questions.items()
            for thing in sold_as_one(one for one in question.problem.blanks if not one.on_hand)
        ]
        self._taken = {plan.trim: _packs(plan, self._questions[plan.trim]) for plan in plans}

    def filled_up(self) -> list[TrimPlan] | None:
        """Return the plans with sticks bought besides; None where the yard has too few."""
        lines = [line for plan in self._plans for line in _bought(plan)]
        sticks = sum(line.sticks for line in lines)
        spent = ceil(sum((line.cost for line in lines), Fraction(0)) * self._coin)
        # Rounded up: a cent too little is too little.
        wanted = ceil(self._least.spent * self._coin)
        # Sticks first, then money: sticks bought for their number may be money enough.
        by_number = self._cover(lambda one: one.sticks, self._least.sticks - sticks)
        if by_number is None:
            return None
        spent += sum(one.price * n for one, n in zip(self._sold, by_number, strict=True))
        self._take(by_number)
        by_price = self._cover(lambda one: one.price, wanted - spent)
        if by_price is None:
            return None
        self._take(by_price)
        counts = [a + b for a, b in zip(by_number, by_price, strict=True)]
        return self._with(counts) if any(counts) else list(self._plans)

    def _cover(self, gain: Callable[[_Sold], int], want: int) -> tuple[int, ...] | None:
        return least_cover(self._choices(gain, self._taken), want)

    def _choices(
        self, gain: Callable[[_Sold], int], taken: dict[str, Counter[str]]
    ) -> list[Addition]:
        return [
            Addition(gain=gain(one), cost=one.price, most=one.thing.most(taken[one.trim]))
            for one in self._sold
        ]

    def _take(self, counts: Iterable[int]) -> None:
        for one, count in zip(self._sold, counts, strict=True):
            for blank in one.thing.blanks:
                self._taken[one.trim][blank.key] += count

    def _with(self, counts: Sequence[int]) -> list[TrimPlan]:
        more: dict[str, list[Bought]] = {plan.trim: [] for plan in self._plans}
        for one, count in zip(self._sold, counts, strict=True):
            for blank in one.thing.blanks if count else ():
                offer = self._questions[one.trim].sources[blank.key]
                assert isinstance(offer, Offer)  # noqa: S101 - only what the yard sells
                more[one.trim].append(_line(offer, count))
        filled = [_with_more(plan, more[plan.trim]) for plan in self._plans]
        return _bounded(filled, self._floor())

    def _floor(self) -> Fraction:
        """Return what every plan spends at this supplier, as far as the least order tells."""
        # What lies in the shop, or in hand, may do without the yard.
        if self._job.log or all(self._job.trim(plan.trim).rests for plan in self._plans):
            return Fraction(0)
        trims = [self._spent_on(plan) for plan in self._plans]
        wanted = ceil(self._least.spent * self._coin)
        floors = (least_money(trims, wanted), least_for_sticks(trims, self._least.sticks))
        floor = max((one for one in floors if one is not None), default=0)
        return Fraction(floor, self._coin)

    def _spent_on(self, plan: TrimPlan) -> TrimSpent:
        """Return what the supplier sells of a plan's trim, and the least that is spent on it."""
        # Whatever is bought, the least order is filled with it from the first stick on.
        none = Counter[str]()
        sold = tuple(
            Sold(sticks=one.sticks, price=one.price, most=one.thing.most(none))
            for one in self._sold
            if one.trim == plan.trim
        )
        # What lies in the shop may do without the yard, for this trim.
        sure = Fraction(0) if self._job.trim(plan.trim).rests else plan.bound
        return TrimSpent(sold=sold, bound=ceil(sure * self._coin))


def _packs(plan: TrimPlan, question: Question) -> Counter[str]:
    """Return how many packs of each of the question's blanks a plan buys."""
    packs: Counter[str] = Counter()
    for line in _bought(plan):
        for key, offer in question.sources.items():
            if isinstance(offer, Offer) and _line(offer, line.packs) == line:
                packs[key] += line.packs
                break
    return packs


def _line(offer: Offer, packs: int) -> Bought:
    return Bought(
        length=offer.length,
        pack=offer.pack,
        packs=packs,
        price=offer.price,
        on_hand=False,
        bundle=offer.bundle,
        batch=offer.batch,
    )


def _with_more(plan: TrimPlan, more: Iterable[Bought]) -> TrimPlan:
    """Return a plan with more sticks bought, which stay whole."""
    more = tuple(more)
    if not more:
        return plan
    # A line that is there already grows; the yard would ask why the same stick stands on two.
    lines = list(plan.bought)
    for line in more:
        alike = next((at for at, one in enumerate(lines) if _alike(one, line)), None)
        if alike is None:
            lines.append(line)
        else:
            lines[alike] = replace(line, packs=lines[alike].packs + line.packs)
    # They stay whole: no piece asked for them, and the next job may.
    added = tuple(line.length for line in more for _ in range(line.sticks))
    return replace(
        plan,
        bought=tuple(lines),
        whole_sticks=(*plan.whole_sticks, *added),
        filled_up=added,
        cost=plan.cost + sum((line.cost for line in more), Fraction(0)),
        # For more money fewer sticks may do, and other ways would have to be filled up as well.
        stick_bound=0,
        restricted=True,
        status=Status.GAP if plan.status is Status.PROVEN else plan.status,
    )


def _alike(one: Bought, other: Bought) -> bool:
    return replace(one, packs=other.packs) == other


def _bounded(plans: Iterable[TrimPlan], floor: Fraction) -> list[TrimPlan]:
    """Return plans whose bounds together are no less than what all cost at least."""
    plans = list(plans)
    # What one trim cannot take of the raised bound the next one does: only the sum is proven.
    more = max(floor - sum((plan.bound for plan in plans), Fraction(0)), Fraction(0))
    bounded: list[TrimPlan] = []
    for plan in plans:
        raised = min(more, plan.cost - plan.bound)
        more -= raised
        bound = plan.bound + raised
        status = Status.PROVEN if bound == plan.cost else plan.status
        bounded.append(replace(plan, bound=bound, status=status))
    return bounded


__all__ = ["fill_up_orders"]
