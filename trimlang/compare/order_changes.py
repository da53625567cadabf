"""What changed in the order, and what each version costs."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from trimlang.compiler import Result
from trimlang.lengths.tape import Unit, length_text
from trimlang.record import record
from trimlang.sheets.export.plan_json import bought_text


@record
class OrderLine:
    """A line of the order that changed: how many and what they cost, before and now.

    ``is_trim`` tells sticks from supplies, since in a job without prices only sticks cost lengths.
    """

    what: str
    detail: str
    old_count: int
    new_count: int
    old_cost: Fraction
    new_cost: Fraction
    is_trim: bool


@record
class CostParts:
    """What the trim and the supplies (nails, caulk, paint) cost, in a version's own currency.

    With ``by_length`` no stick has a price, and ``trim`` is how many inches are bought, to be
    shown in ``unit``.
    """

    currency: str
    trim: Fraction
    supplies: Fraction
    unit: Unit
    by_length: bool

    @property
    def total(self) -> Fraction | None:
        """The cost of trim and supplies together, None where trim has no price."""
        return None if self.by_length else self.trim + self.supplies


def money_of(result: Result) -> CostParts:
    """Return what a version costs."""
    supplies = sum((supply.cost for supply in result.supplies), Fraction(0))
    return CostParts(
        currency=result.job.currency,
        trim=result.cost,
        supplies=supplies,
        unit=result.job.settings.unit,
        by_length=result.job.by_length,
    )


def order_lines(old: Result, new: Result) -> Iterator[OrderLine]:
    """Yield the lines of the order that changed, the old version's first."""
    before, after = _lines(old), _lines(new)
    for is_trim, what, detail in dict.fromkeys([*before, *after]):
        old_count, old_cost = before.get((is_trim, what, detail), (0, Fraction(0)))
        new_count, new_cost = after.get((is_trim, what, detail), (0, Fraction(0)))
        if (old_count, old_cost) != (new_count, new_cost):
            yield OrderLine(
                what=what,
                detail=detail,
                old_count=old_count,
                new_count=new_count,
                old_cost=old_cost,
                new_cost=new_cost,
                is_trim=is_trim,
            )


def _lines(result: Result) -> dict[tuple[bool, str, str], tuple[int, Fraction]]:
    """Return the order: how many of each thing in each form, and what they cost together."""
    unit = result.job.settings.unit
    found: dict[tuple[bool, str, str], tuple[int, Fraction]] = {}
    lines = [
        (
            True,
            plan.trim,
            f"offcut in the shop, {length_text(line.length, unit)}"
            if line.on_hand
            else bought_text(line, unit),
            line.packs,
            line.cost,
        )
        for plan in result.plans
        for line in plan.bought
    ] + [
        (False, supply.named, supply.package, supply.count, supply.cost)
        for supply in result.supplies
    ]
    # Two offers may read the same, as one length at two prices does, so their lines are added up.
    for is_trim, what, detail, count, cost in lines:
        more, dearer = found.get((is_trim, what, detail), (0, Fraction(0)))
        found[is_trim, what, detail] = (count + more, cost + dearer)
    return found
