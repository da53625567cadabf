"""The stock order as CSV, for a spreadsheet or a yard's own form."""

from __future__ import annotations

import csv
from io import StringIO
from typing import Final

from trimlang.compiler import Result
from trimlang.formulas import guarded
from trimlang.lengths.tape import decimal_text
from trimlang.money import money_text

COLUMNS: Final = (
    "kind",
    "what",
    "count",
    "unit",
    "length_in",
    "sticks",
    "price",
    "cost",
    "supplier",
    "profile",
)


def order_csv(result: Result) -> str:
    """Return CSV with a line for each thing to buy or to take from the shop.

    Lengths are inches, money is the job's own, both as decimals.
    """
    text = StringIO()
    lines = csv.writer(text)
    lines.writerow(COLUMNS)
    for plan in result.plans:
        trim = result.job.trim(plan.trim)
        # An offcut of the shop is ordered from nobody.
        for line in plan.bought:
            unit = "shop offcut" if line.on_hand else "pack" if line.pack > 1 else "stick"
            lines.writerow(
                (
                    "trim",
                    guarded(plan.trim),
                    line.packs,
                    unit,
                    decimal_text(line.length, 4),
                    line.sticks,
                    # Where no stick has a price the plan counts lengths as if they were money; a
                    # file for the yard must not show those.
                    "" if result.job.by_length else money_text(line.price),
                    "" if result.job.by_length else money_text(line.cost),
                    "" if line.on_hand else guarded(trim.supplier or ""),
                    "" if line.on_hand else guarded(trim.profile or ""),
                )
            )
    for supply in result.supplies:
        lines.writerow(
            (
                "supply",
                guarded(supply.named),
                supply.count,
                guarded(supply.package),
                "",
                "",
                money_text(supply.price) if supply.price else "",
                money_text(supply.cost) if supply.price else "",
                "",
                "",
            )
        )
    return text.getvalue()
