"""The stock order: what a yard reads, fills and prices, and what the job costs."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.compiler import Result
from trimlang.marking import N_
from trimlang.planning.layout import Bought, TrimPlan
from trimlang.record import record
from trimlang.sheets.wording import material_words
from trimlang.sheets.wording.quantities import Pen

TO_WRITE: Final = (
    N_("supplier"),
    N_("quote or account"),
    N_("ordered by, telephone"),
    N_("wanted by"),
    N_("deliver to"),
)
"""What a yard also wants to know and the job file does not say: lines to write on."""

SMALL_PRINT: Final = (
    "A stick shorter than stated will not do. Prices are the job file's own, without tax,"
    " delivery and sawing at the yard."
)


@record
class OrderedLine:
    """A line of the order: how many, of what, at what price."""

    count: str
    what: str
    each: str
    cost: str


@record
class TrimOrder:
    """What is bought of one trim, described as a yard sells it; unknown texts are empty.

    ``bends_to`` is the radius of the tightest wall that flexible trim bends round.
    """

    trim: str
    section: str
    species: str
    finish: str
    lines: tuple[OrderedLine, ...]
    supplier: str = ""
    profile: str = ""
    minimum: str = ""
    bends_to: str = ""


@record
class Order:
    """The order: ``goods`` is the sum of its lines, empty where none of them has a price.

    The other sums are of the whole job, with what was bought before and what the shop has.
    ``sticks`` are how many and ``length`` how long together where no stick has a price.
    ``to_write`` are the names of the lines left blank; ``tax`` is the tax on the goods
    with its ``tax_rate``, both empty where the file gives none.  ``small`` is the small print.
    """

    trims: tuple[TrimOrder, ...]
    supplies: tuple[OrderedLine, ...]
    goods: str
    unpriced: bool
    to_write: tuple[str, ...]
    trim_cost: str
    supply_cost: str
    total: str
    small: str
    tax: str = ""
    tax_rate: str = ""
    sticks: str = ""
    length: str = ""
    by_length: bool = False


def order(result: Result, pen: Pen) -> Order:
    """Return the order in words and money."""
    supply_cost = sum((supply.cost for supply in result.supplies), Fraction(0))
    by_length = result.job.by_length
    # The yard's lines only: what is on hand is not bought.
    lines = [line for plan in result.plans for line in plan.bought if not line.on_hand]
    goods = supply_cost
    if not by_length:
        goods += sum((line.cost for line in lines), Fraction(0))
    rate = result.job.settings.tax
    bought, total = pen.cost(result.cost), pen.money(result.cost + supply_cost)
    if by_length:
        total = bought
        # A length and a sum of money cannot be added: both are printed.
        if supply_cost:
            total += f", {pen.money(supply_cost)}"
        bought = (
            f"{bought} ({pen.sticks([line.length for line in lines for _ in range(line.sticks)])})"
            if lines
            else bought
        )
    return Order(
        trims=tuple(
            _trim(result, plan, pen)
            for plan in result.plans
            if any(not line.on_hand for line in plan.bought)
        ),
        supplies=tuple(
            OrderedLine(
                str(supply.count),
                f"{material_words.name(supply, pen)}, {material_words.package(supply, pen)}",
                pen.money(supply.price) if supply.price else "",
                pen.money(supply.cost) if supply.price else "",
            )
            for supply in result.supplies
        ),
        goods=pen.money(goods) if goods or not by_length else "",
        # The sum is then marked as incomplete: a blank price is not a price of nothing.
        unpriced=by_length or any(not supply.price for supply in result.supplies),
        to_write=tuple(pen.words(term) for term in TO_WRITE),
        trim_cost=bought,
        supply_cost=pen.money(supply_cost) if supply_cost or not by_length else "",
        total=total,
        tax=pen.money(goods * rate / 100) if rate and goods else "",
        tax_rate=f"{pen.decimal(rate, 3)} %" if rate else "",
        small=pen.of_cost(SMALL_PRINT),
        sticks=str(sum(line.sticks for line in lines)) if by_length else "",
        length=pen.stick(sum((line.sticks * line.length for line in lines), Fraction(0)))
        if by_length
        else "",
        by_length=by_length,
    )


def _trim(result: Result, plan: TrimPlan, pen: Pen) -> TrimOrder:
    trim = result.job.trim(plan.trim)
    species, finish = material_words.species_and_finish(trim, pen)
    return TrimOrder(
        trim=plan.trim,
        section=", ".join(material_words.section(trim, result.job, pen)),
        species=species,
        finish=finish,
        supplier=trim.supplier or "",
        profile=trim.profile or "",
        minimum=material_words.least_order(trim, pen),
        bends_to=material_words.bends_to(trim, result.job, pen),
        lines=tuple(_line(line, pen) for line in plan.bought if not line.on_hand),
    )


def _line(line: Bought, pen: Pen) -> OrderedLine:
    what = pen.stick(line.length)
    if line.bundle is not None:
        facts = {"n": line.pack, "length": what, "bundle": line.bundle}
        what = pen.words("{n} of {length}, of bundle {bundle}, sold whole", **facts)
    elif line.pack > 1:
        what = pen.words("pack of {n}, {length} each", n=line.pack, length=what)
    what += material_words.of_batch(line.batch, pen)
    if pen.by_length:
        return OrderedLine(str(line.packs), what, "", "")
    return OrderedLine(str(line.packs), what, pen.money(line.price), pen.money(line.cost))
