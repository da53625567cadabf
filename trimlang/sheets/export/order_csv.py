"""The stock order as CSV, for a spreadsheet or a yard's own form."""

from __future__ import annotations

import csv
from fractions import Fraction
from io import StringIO
from typing import Final

from trimlang.compiler import Result
from trimlang.lengths.tape import decimal_text

COLUMNS: Final = ("kind", "what", "count", "unit", "length_in", "sticks", "price", "cost")
_FORMULA: Final = ("=", "+", "-", "@", "\t", "\r")


def order_csv(result: Result) -> str:
    """Return one line for each thing to buy or to take from the shop.

    Lengths are inches, money is the job's own, both as decimals.
    """
    text = StringIO()
    lines = csv.writer(text)
    lines.writerow(COLUMNS)
    for plan in result.plans:
        for line in plan.bought:
            unit = "shop offcut" if line.on_hand else "pack" if line.pack > 1 else "stick"
            lines.writerow(
                (
                    "trim",
                    plain(plan.trim),
                    line.packs,
                    unit,
                    decimal_text(line.length, 4),
                    line.sticks,
                    _money(line.price),
                    _money(line.cost),
                )
            )
    for supply in result.supplies:
        lines.writerow(
            (
                "supply",
                plain(supply.what),
                supply.count,
                plain(supply.package),
                "",
                "",
                _money(supply.price) if supply.price else "",
                _money(supply.cost) if supply.price else "",
            )
        )
    return text.getvalue()


def plain(text: str) -> str:
    """Keep a spreadsheet from taking a name for a formula."""
    return f"'{text}" if text.startswith(_FORMULA) else text


def _money(amount: Fraction) -> str:
    return f"{float(round(amount, 2)):.2f}"
