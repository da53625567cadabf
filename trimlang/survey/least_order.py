"""Reads what a yard sells of a trim at least."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.diagnostics.place import place
from trimlang.language import facts, tree
from trimlang.money import money_text
from trimlang.survey.job import Trim
from trimlang.survey.measures import Findings, money
from trimlang.survey.sticks import MinimumOrder

MOST_STICKS: Final = 1000
"""A larger minimum is a lorry of trim: rather a length that lost its place."""
MOST_WORTH: Final = 10 * MOST_STICKS
"""In sticks of the lowest price: a million times a hundredth of a cent would fill the memory."""


def read_minimum(
    line: tree.StockLine,
    before: MinimumOrder,
    findings: Findings,
    *,
    by_length: bool,
    in_all: bool = False,
) -> MinimumOrder:
    """Return what a stock line says a yard sells at least, with what was said before.

    Of that trim alone, or ``in_all``: of all trims from its supplier.
    """
    said = before
    for fact in _least_orders(line, in_all=in_all):
        match fact:
            case facts.LeastOrder(least=tree.Number() as count):
                # A minimum of nothing is no minimum, and would hide a slip of the pen.
                if 1 <= count.value <= MOST_STICKS:
                    said = replace(said, sticks=int(count.value))
                else:
                    findings.say(
                        "T235", count.span, what="a least order", least=1, most=MOST_STICKS
                    )
            case facts.LeastOrder(least=tree.Price() as price):
                said = replace(said, spent=_amount(price, findings, by_length=by_length))
    return said


def _least_orders(line: tree.StockLine, *, in_all: bool) -> list[facts.LeastOrder]:
    return [
        fact for fact in line.facts if isinstance(fact, facts.LeastOrder) and fact.in_all == in_all
    ]


def _amount(price: tree.Price, findings: Findings, *, by_length: bool) -> Fraction:
    number = str(price.amount)
    if by_length:
        findings.say("T469", price.span)
    # As wide as its digits: it was written without a sign and without cents, so that it may be
    # meant for sticks.
    elif price.sign is None and price.span.end - price.span.column == len(number):
        findings.say("T468", price.span, number=number)
    else:
        return money(price, findings) or Fraction(0)
    return Fraction(0)


def check_supply(trim: Trim, line: tree.StockLine, findings: Findings) -> None:
    """Report a yard that has less than it sells at least, or must sell a lorry to reach it."""
    said = _least_orders(line, in_all=False)
    if said:
        _check_worth(trim, trim.minimum, said[-1], findings)
    limits = [one.at_most for one in trim.offers]
    # Where one length is sold without a limit, any order can be filled up with it.
    if not said or not limits or None in limits:
        return
    packs = [(one, (one.at_most or 0) // one.pack) for one in trim.offers]
    # Only whole packs can be had, so the loose sticks above the last pack do not count.
    sticks = sum(count * one.pack for one, count in packs)
    worth = sum((count * one.price for one, count in packs), Fraction(0))
    if sticks < trim.minimum.sticks or worth < trim.minimum.spent:
        findings.say(
            "T470",
            said[-1].span,
            trim=trim.name,
            sticks=sticks,
            worth=money_text(worth),
        )


def _check_worth(
    trim: Trim, minimum: MinimumOrder, fact: facts.LeastOrder, findings: Findings
) -> None:
    prices = [one.price / one.pack for one in trim.offers if one.price]
    if prices and minimum.spent > MOST_WORTH * min(prices):
        what = "a least order, in sticks of the lowest price,"
        findings.say("T235", fact.span, what=what, least=1, most=MOST_WORTH)


def check_suppliers(
    lines: Iterable[tree.Statement], trims: Mapping[str, Trim], findings: Findings
) -> None:
    """Report a least order of a supplier who has no name, and two unlike ones of one supplier."""
    said: dict[str, tuple[MinimumOrder, facts.LeastOrder]] = {}
    for line in lines:
        if not isinstance(line, tree.StockLine) or line.name.text not in trims:
            continue
        trim = trims[line.name.text]
        for fact in _least_orders(line, in_all=True):
            if trim.supplier is None:
                findings.say("T493", fact.span, trim=trim.name)
                continue
            _check_worth(trim, trim.minimum_in_all, fact, findings)
            before = said.setdefault(trim.supplier, (trim.minimum_in_all, fact))
            if before[0] != trim.minimum_in_all:
                where = place(before[1].span, fact.span)
                findings.say("T494", fact.span, supplier=trim.supplier, line=where)
