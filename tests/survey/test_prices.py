"""Prices as a yard gives them: a stick, a pack, a foot or a metre."""

from __future__ import annotations

import csv
import json
from fractions import Fraction
from io import StringIO

import pytest

from tests.jobs import BASE, TWELVE_FOR_TEN
from trimlang.compiler import check_job, compile_job
from trimlang.diagnostics.mending import mends
from trimlang.sheets.export.order_csv import order_csv
from trimlang.sheets.export.plan_json import least_words, plan_json
from trimlang.sheets.render.pages import render_sheets

HEAD = f"{BASE}\n"
ROOM = 'room "R", trim base, ends in, open walk\nN 40 in, left=butt, right=butt\n'


def sold(stock: str) -> list[tuple[Fraction, Fraction, int]]:
    result = check_job(f"{HEAD}stock base: {stock}\n{ROOM}")
    # “per” is read, and said to be read
    assert {one.code for one in result.diagnostics} <= {"T136"}
    return [(one.length / 12, one.price, one.pack) for one in result.job.trims[0].offers]


@pytest.mark.parametrize(
    ("short", "long"),
    [
        ("8 ft, 12 ft at 1.45 a foot", "8 ft at 11.60, 12 ft at 17.40"),
        ("8 ft, 12 ft at 1.45 per ft", "8 ft at 11.60, 12 ft at 17.40"),
        ("pack of 10 12 ft at 1.20 a foot", "pack of 10 12 ft at 144"),
        ("3 m at 4.05 a metre", "3 m at 12.15"),
        ("90 in at 1.45 a foot", "90 in at 10.88"),
        ("8 ft at 9.00, 12 ft, 16 ft at 1.45 a foot", "8 ft at 9, 12 ft at 17.40, 16 ft at 23.20"),
        ("8 ft at most 4, 12 ft at 1 a foot", "8 ft at 8 at most 4, 12 ft at 12"),
    ],
)
def test_a_price_a_foot_or_a_metre(short: str, long: str) -> None:
    assert sold(short) == sold(long)


@pytest.mark.parametrize("stock", ["8 ft, 12 ft at 17.40", "12 ft at 1.45 a foot, 8 ft"])
def test_a_price_for_one_length_says_nothing_of_another(stock: str) -> None:
    found = check_job(f"{HEAD}stock base: {stock}\n{ROOM}").diagnostics
    assert [one.code for one in found] == ["T254"]


def test_a_yard_that_cuts_to_length_sells_whole_feet() -> None:
    assert sold("any length to 7 ft at 1.45 a foot") == [
        (Fraction(feet), Fraction(145, 100) * feet, 1) for feet in (4, 5, 6, 7)
    ]
    assert sold("any length from 6 ft to 7 ft by 6 in at 2 a foot") == [
        (Fraction(6), Fraction(12), 1),
        (Fraction(13, 2), Fraction(13), 1),
        (Fraction(7), Fraction(14), 1),
    ]
    # the longest is sold where it is no whole number of steps, and a listed one keeps its price
    listed = sold("6 ft at 7.00, any length from 5 ft to 7 ft 6 in at 1 a foot")
    assert listed == [(6, 7, 1), (5, 5, 1), (7, 7, 1), (Fraction(15, 2), Fraction(15, 2), 1)]


def test_a_metric_yard_cuts_to_tenths_of_a_metre() -> None:
    result = check_job(
        f"unit mm\n{HEAD}stock base: any length from 2 m to 2400 at 4 a metre\n{ROOM}"
    )
    offers = result.job.trims[0].offers
    assert [one.price for one in offers] == [
        8,
        Fraction("8.4"),
        Fraction("8.8"),
        Fraction("9.2"),
        Fraction("9.6"),
    ]


def test_what_is_cut_to_length_is_bought_as_long_as_it_is_needed() -> None:
    """40 in is a stick of 4 ft, and the spare, a tenth of it, another: no stick is longer."""
    result = compile_job(f"{HEAD}stock base: any length to 16 ft at 1.45 a foot\n{ROOM}")
    bought = [(line.length, line.packs) for line in result.plans[0].bought]
    assert bought == [(48, 2)]
    assert result.cost == Fraction("11.60")


def test_the_step_of_a_yard_is_no_hair() -> None:
    found = check_job(f"{HEAD}stock base: any length to 16 ft by 1 in at 1.45 a foot\n{ROOM}")
    assert [one.code for one in found.diagnostics] == ["T235"]


def test_any_length_has_a_price_a_foot_and_its_remedy_says_so() -> None:
    line = "stock base: any length to 16 ft at 1.45"
    (found,) = check_job(f"{HEAD}{line}\n{ROOM}").diagnostics
    assert found.code == "T258"
    for mend in mends(found, line):
        (edit,) = mend.edits
        mended = line[: edit.span.column - 1] + edit.text
        assert not check_job(f"{HEAD}{mended}\n{ROOM}").diagnostics


def test_a_file_without_any_price_buys_the_least_length_and_says_so() -> None:
    stock = "stock base: 8 ft, 12 ft, 16 ft, pack of 2 6 ft\n"
    result = compile_job(f"{HEAD}{stock}spare 0 %\n{ROOM}")
    assert result.job.by_length
    assert [(line.length, line.packs) for line in result.plans[0].bought] == [(96, 1)]
    assert result.job.cost_text(result.cost) == "8 ft"
    assert (
        least_words(result)
        == "proven least length; no plan does with less than 8 ft; no stick has a price"
    )
    made = json.loads(plan_json(result))
    assert made["currency"] == "in"
    assert made["summary"]["length_in"] == "96"
    assert {line["each"] for line in made["order"]} == {None}


@pytest.mark.parametrize(
    "stock",
    [
        "stock base: 8 ft, 12 ft at 17.40\n",
        "stock base: 8 ft\non-hand base: 40 in at 2.00\n",
        "stock base: 8 ft\nbought 1 base 8 ft at 9.00\n",
    ],
)
def test_where_anything_is_priced_all_sticks_are(stock: str) -> None:
    found = check_job(f"{HEAD}{stock}{ROOM}").diagnostics
    assert [one.code for one in found if one.code != "T702"] == ["T254"]


def test_the_order_prints_supplier_profile_and_tax() -> None:
    stock = 'stock base: from "Hill Lumber", code "B-514", 12 ft at 10\ntax 8.25 %\nspare 0 %\n'
    result = compile_job(f"{HEAD}{stock}{ROOM}")
    page = render_sheets(result)["stock-order"]
    for said in ("Hill Lumber", "B-514", "tax 8.25 %", "0.83"):
        assert said in page
    (line,) = (one for one in json.loads(plan_json(result))["order"] if one["what"] == "base")
    (row,) = (one for one in csv.DictReader(StringIO(order_csv(result))) if one["what"] == "base")
    for made in (line, row):
        assert (made["supplier"], made["profile"]) == ("Hill Lumber", "B-514")
    plain = render_sheets(compile_job(f"{HEAD}{TWELVE_FOR_TEN}\n{ROOM}"))["stock-order"]
    assert "%" not in plain[plain.index("<body") :]


def test_what_the_yard_is_called_is_said_once() -> None:
    found = check_job(f'{HEAD}stock base: code "A", code "B", 12 ft at 10\n{ROOM}').diagnostics
    assert [one.code for one in found] == ["T209"]
