"""What the order claims, sentence by sentence, for plans whose figures are set by hand.

A plan's figures are replaced, so that each claim can be read beside the numbers that it rests on.
"""

from __future__ import annotations

import json
import re
from dataclasses import replace
from fractions import Fraction
from functools import cache
from typing import Any

import pytest

from tests.jobs import BASE, TWELVE_FEET
from trimlang.compiler import Result, compile_job
from trimlang.planning.fewest import Fewest, Offered
from trimlang.planning.layout import Bought, Lost
from trimlang.sheets.content import order_reasons as reasons
from trimlang.sheets.content.order_reasons import WoodShare, order_reasons
from trimlang.sheets.content.proofs import cost_proofs
from trimlang.sheets.content.stock_order import Order, OrderedLine, order
from trimlang.sheets.export.plan_json import least_words, plan_json
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.length_for_cost import LENGTH_FOR_COST
from trimlang.sheets.wording.quantities import Pen
from trimlang.stock.problem import Status

PEN = Pen(words_in("en"), "$")
ROOM = """
room "Hall" as HA, trim base, open walk
  N: 60 in, left=butt, right=butt
  opening 30 in
  S: 40 in, left=butt, right=butt
"""
LONG = '\nroom "Hall" as HA, trim base, open walk\n  N: 200 in, left=butt, right=butt\n'
PROVEN = "Proven: no other choice of sticks costs less."


@cache
def built(lines: str, more: str = ROOM) -> Result:
    result = compile_job(f"{BASE}\n{lines}{more}")
    assert result.ok, result.diagnostics
    return result


def plain(**figures: Any) -> Result:
    """Return a job of one stick at 17.40 with some of its plan's figures replaced."""
    result = built(f"{TWELVE_FEET}\nspare 0 %")
    return replace(result, plans=(replace(result.plans[0], **figures),))


def terms(result: Result) -> dict[str, str]:
    (trim,) = order_reasons(result, PEN).trims
    return dict(trim.terms)


def test_where_the_wood_goes_adds_up_to_all_of_it() -> None:
    """60 and 40 in of 200 in: 50 %; 48, 25.73, 20.27, 4 and 2 in are the rest."""
    lost = Lost(kerf=Fraction(2), ends=Fraction(4), offcut=Fraction("25.73"),
                scrap=Fraction("20.27"))  # fmt: skip
    (trim,) = order_reasons(plain(lost=lost, whole_sticks=(Fraction(48),)), PEN).trims
    assert trim.shares == (
        WoodShare("in the pieces", "8.3 ft", "50 %"),
        WoodShare("sticks left whole", "4 ft", "24 %"),
        WoodShare("offcuts worth keeping", "2.1 ft", "12.9 %"),
        WoodShare("scrap", "1.7 ft", "10.1 %"),
        WoodShare("ends squared off", "0.3 ft", "2 %"),
        WoodShare("sawdust", "0.2 ft", "1 %"),
    )
    (trim,) = order_reasons(plain(lost=Lost(kerf=Fraction(1, 4))), PEN).trims
    assert [one.what for one in trim.shares] == ["in the pieces", "sawdust"]
    assert trim.shares[1].length == "1/4 in"


@pytest.mark.parametrize(
    ("least", "text"),
    [
        (1, "1. For this money fewer cannot do: that is proven."),
        (0, "1. Whether fewer would do for this money is not known."),
    ],
)
def test_how_many_sticks_are_cut(least: int, text: str) -> None:
    assert terms(plain(stick_bound=least))["sticks cut"] == text


def test_a_bound_below_the_number_of_sticks_is_told() -> None:
    (stick,) = plain().plans[0].sticks
    three = plain(sticks=(stick, stick, stick), stick_bound=2)
    text = "3. Whether fewer would do for this money is not known; fewer than 2 cannot."
    assert terms(three)["sticks cut"] == text


@pytest.mark.parametrize(
    ("cost", "sticks", "text"),
    [
        (None, None, "Cutting the longest piece first runs out of sticks."),
        (Fraction(20), None, "Cutting the longest piece first runs out of sticks."),
        (Fraction(20), 1,
         "Cutting the longest piece first costs $20.00: $2.60 more than this order."),
        (Fraction("17.40"), 2,
         "Cutting the longest piece first costs as much, but cuts 2 sticks, not 1."),
        (Fraction("17.40"), 1, "Cutting the longest piece first costs as much."),
    ],
)  # fmt: skip
def test_what_planning_saves(cost: Fraction | None, sticks: int | None, text: str) -> None:
    assert terms(plain(plain_cost=cost, plain_sticks=sticks))["the usual way instead"] == text


EIGHT = (Offered(Fraction(96), 1, 1), Offered(Fraction(48), 5, 2))


@pytest.mark.parametrize(
    ("bought", "found", "text"),
    [
        (1, None, "Not looked for: there are too few sticks for a quick plan."),
        (1, Fewest(1, Fraction(20), EIGHT, 1), "This order: 1 to buy. Fewer cannot do."),
        (2, Fewest(2, Fraction(20), EIGHT, 0),
         "This order: 2 to buy. A quick search found no fewer."),
        (3, Fewest(3, Fraction(20), EIGHT, 2),
         "This order: 3 to buy. A quick search found no fewer; fewer than 2 cannot do."),
        (3, Fewest(2, Fraction(20), EIGHT, 2),
         "2 instead of 3 (10 of 4 ft, 1 of 8 ft) cost $20.00, $2.60 more. Fewer cannot do; whether"
         " so few can be had for less is not known."),
        (3, Fewest(2, Fraction(20), EIGHT, 0),
         "2 instead of 3 (10 of 4 ft, 1 of 8 ft) cost $20.00, $2.60 more, as a quick search found."
         ),
        (4, Fewest(2, Fraction(20), EIGHT, 1),
         "2 instead of 4 (10 of 4 ft, 1 of 8 ft) cost $20.00, $2.60 more, as a quick search found."
         " Fewer than 1 cannot do."),
    ],
)  # fmt: skip
def test_what_the_fewest_sticks_would_cost(
    monkeypatch: pytest.MonkeyPatch, bought: int, found: Fewest | None, text: str
) -> None:
    """Sticks in packs count one by one, and what the shop has is not carried home."""
    monkeypatch.setattr(reasons, "fewest_sticks", lambda _: found)
    price = Fraction("17.40") / bought
    lines = (
        Bought(length=Fraction(144), pack=bought, packs=1, price=price, on_hand=False),
        Bought(length=Fraction(60), pack=1, packs=2, price=Fraction(0), on_hand=True),
    )
    assert terms(plain(bought=lines))["as few sticks as can be"] == text


def test_the_fewest_sticks_are_not_looked_for_among_very_many_pieces(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(reasons, "MOST_PIECES", 1)
    text = "Not looked for: there are more than 1 pieces."
    assert terms(plain())["as few sticks as can be"] == text
    monkeypatch.setattr(reasons, "MOST_PIECES", 2)
    text = "This order: 1 to buy. A quick search found no fewer."
    assert terms(plain())["as few sticks as can be"] == text


def test_a_plan_that_a_minimum_binds_is_set_beside_no_other() -> None:
    named = set(terms(plain()))
    assert named == {"price", "for mistakes", "sticks cut", "the usual way instead",
                     "as few sticks as can be"}  # fmt: skip
    assert set(terms(plain(restricted=True))) == {"price", "for mistakes", "sticks cut"}


def test_what_is_there_for_mistakes() -> None:
    assert terms(plain())["for mistakes"] == "Nothing is bought for mistakes."
    allowance = built(f"{TWELVE_FEET}\nspare 7.26 %")
    asked = replace(allowance.plans[0], spare_asked=Fraction(90), survives_loss=True,
                    whole_sticks=(Fraction(144), Fraction(96), Fraction(144)))  # fmt: skip
    told = terms(replace(allowance, plans=(asked,)))
    assert told["for mistakes"] == (
        "7.3 % more than the pieces need: 7.5 ft, kept in sticks that stay whole."
        " Any one piece may be spoiled: what is left over is enough to cut it again."
    )
    assert told["sticks left whole"] == "1 of 8 ft, 2 of 12 ft"


def test_what_is_bought_for_the_least_order_is_told() -> None:
    told = terms(plain(filled_up=(Fraction(144), Fraction(96), Fraction(144))))
    assert told["bought for the least order"] == "1 of 8 ft, 2 of 12 ft"


def test_what_comes_from_the_shop() -> None:
    lines = tuple(
        Bought(length=Fraction(long), pack=1, packs=packs, price=Fraction(price), on_hand=hand)
        for long, packs, price, hand in ((40, 2, 0, True), (60, 1, 3, True), (144, 1, 10, False))
    )
    assert terms(plain(bought=lines))["from the shop"] == "2 of 40 in, 1 of 5 ft ($3.00)"


def test_a_log_tells_what_is_spent_what_is_to_buy_and_what_is_in_hand() -> None:
    """Of the two sticks one is whole; the begun one is 144 less 60, 40 and two kerfs."""
    log = "bought 1 base 12 ft\nrack base: 2 of 12 ft\ncut HA-N-base\n"
    result = built(f"{TWELVE_FEET}\nspare 0 %", ROOM + log)
    told = order_reasons(result, PEN)
    assert (told.spent, told.to_buy) == ("$17.40", "$0.00")
    assert terms(result)["in hand besides"] == "1 of 12 ft"
    assert "the usual way instead" not in terms(result)
    # nothing was looked for once the saw had started, so nothing is proven
    text = "1. Whether fewer would do for this money is not known."
    assert terms(result)["sticks cut"] == text
    assert (order_reasons(plain(), PEN).spent, order_reasons(plain(), PEN).to_buy) == ("", "")
    every = built(f"{TWELVE_FEET}\nspare 0 %", f"{ROOM}{log}cut HA-S-base\nrack base: nothing\n")
    assert terms(every)["in hand besides"] == "none"


@pytest.mark.parametrize(
    ("figures", "text"),
    [
        ({"status": Status.PROVEN}, PROVEN),
        ({"status": Status.GAP, "bound": Fraction("17.40")}, PROVEN),
        ({"status": Status.GAP, "bound": Fraction(12)},
         "Not proven: a cheaper choice of sticks may exist. None costs less than $12.00; this one"
         " costs $5.40 more than that."),
    ],
)  # fmt: skip
def test_what_is_proven_of_sticks(figures: dict[str, Any], text: str) -> None:
    proofs = cost_proofs(plain(**figures), PEN)
    assert proofs.trims == (text,)
    assert proofs.together == text
    assert proofs.bound == f"${float(plain(**figures).plans[0].bound):.2f}"


@pytest.mark.parametrize(
    ("figures", "text", "bound"),
    [
        ({"anywhere": Fraction(30)}, "Proven with the long walls pieced together as shown: no other"
         " choice of sticks costs less. Whether joints in other places would save anything is not"
         " known: $4.80 at most.", "$30.00"),
        ({"anywhere": None}, "Proven with the long walls pieced together as shown: no other choice"
         " of sticks costs less. Whether joints in other places would save anything is not known:"
         " $34.80 at most.", "$0.00"),
        ({"anywhere": Fraction("34.80")}, "Proven: no other choice of sticks costs less, wherever"
         " the long walls are pieced together.", "$34.80"),
        ({"anywhere": Fraction(40)}, "Proven: no other choice of sticks costs less, wherever"
         " the long walls are pieced together.", "$34.80"),
        ({"status": Status.GAP, "bound": Fraction(20), "anywhere": Fraction(1)},
         "Not proven: a cheaper choice of sticks may exist. None costs less than $20.00; this one"
         " costs $14.80 more than that.", "$20.00"),
    ],
)  # fmt: skip
def test_what_is_proven_of_joints(figures: dict[str, Any], text: str, bound: str) -> None:
    """A wall of 200 in takes two sticks of 12 ft, 34.80, and its joint may lie anywhere."""
    result = built(f"{TWELVE_FEET}\nspare 0 %", LONG)
    plan = replace(result.plans[0], status=Status.PROVEN, bound=Fraction("34.80"))
    proofs = cost_proofs(replace(result, plans=(replace(plan, **figures),)), PEN)
    assert proofs.trims == (text,)
    assert (proofs.together, proofs.bound) == (text, bound)


def test_one_trim_without_a_proof_leaves_the_sum_without_one() -> None:
    result = built(f"{TWELVE_FEET}\nspare 0 %")
    (plan,) = result.plans
    open_plan = replace(plan, status=Status.GAP, bound=Fraction(10))
    proofs = cost_proofs(replace(result, plans=(plan, open_plan)), PEN)
    assert proofs.trims[0] == PROVEN
    assert proofs.together.endswith("than $27.40; this one costs $7.40 more than that.")


def bought(lines: str, more: str = ROOM) -> Order:
    return order(built(lines, more), PEN)


def test_lines_of_the_order_and_their_sums() -> None:
    """A pack of 2 at 30, a box of nails at 11.90; 8.2546 % of both is 3.46."""
    made = bought("stock base: pack of 2 12 ft at 30\nspare 0 %\nnails: box of 1000 at 11.90\n"
                  "tax 8.2546 %")  # fmt: skip
    (trim,) = made.trims
    assert trim.lines == (OrderedLine("1", "pack of 2, 12 ft each", "$30.00", "$30.00"),)
    assert (trim.trim, trim.supplier, trim.profile, trim.minimum) == ("base", "", "", "")
    nails, caulk = made.supplies[:2]
    assert nails == OrderedLine("1", "nails, box of 1000", "$11.90", "$11.90")
    assert (caulk.each, caulk.cost) == ("", "")
    assert (made.goods, made.trim_cost, made.supply_cost, made.total) == (
        "$41.90", "$30.00", "$11.90", "$41.90")  # fmt: skip
    assert (made.tax, made.tax_rate) == ("$3.46", "8.255 %")
    assert made.unpriced
    assert not made.by_length
    assert (made.sticks, made.length) == ("", "")


def test_several_sticks_are_counted_and_what_is_on_hand_is_not_bought() -> None:
    made = bought("stock base: 5 ft at 8\non-hand base: 42 in\nspare 0 %")
    (trim,) = made.trims
    assert trim.lines == (OrderedLine("1", "5 ft", "$8.00", "$8.00"),)
    three = replace(built(f"{TWELVE_FEET}\nspare 0 %").plans[0].bought[0], packs=3)
    made = order(plain(bought=(three,)), PEN)
    assert made.trims[0].lines == (OrderedLine("3", "12 ft", "$17.40", "$52.20"),)
    assert (made.goods, made.supply_cost) == ("$52.20", "$0.00")
    assert (made.tax, made.tax_rate) == ("", "")
    # of caulk and paint nobody said the price
    assert made.unpriced
    assert made.small.endswith("without tax, delivery and sawing at the yard.")
    held = replace(three, on_hand=True)
    assert order(plain(bought=(held,)), PEN).trims == ()


def test_without_prices_the_order_counts_lengths() -> None:
    result = built("stock base: 12 ft\nspare 0 %\nnails: box of 1000 at 11.90")
    made = order(result, Pen(words_in("en"), "$", by_length=True))
    assert made.by_length
    assert made.unpriced
    assert made.trims[0].lines == (OrderedLine("1", "12 ft", "", ""),)
    assert (made.goods, made.total) == ("$11.90", "12 ft, $11.90")
    assert (made.sticks, made.length, made.trim_cost) == ("1", "12 ft", "12 ft (1 of 12 ft)")
    bare = order(built("stock base: 12 ft\nspare 0 %"), Pen(words_in("en"), "$", by_length=True))
    assert (bare.goods, bare.total, bare.supply_cost) == ("", "12 ft", "")


def test_a_job_without_prices_speaks_of_no_money_on_any_sheet() -> None:
    """Its sticks and their length are told, in every language and in ``plan.json``."""
    result = built("stock base: 8 ft, 12 ft\nspare 0 %", LONG)
    summary = json.loads(plan_json(result))["summary"]
    assert "cost" not in summary
    assert (summary["status"], summary["length_in"]) == ("proven least length", "240")
    assert least_words(result) == (
        "proven least length; no plan of these pieces does with less than 20 ft;"
        " no stick has a price"
    )
    for language in ("en", "es", "de"):
        words = words_in(language)
        told = {words(text) for text in LENGTH_FOR_COST} | {words("cost")}
        for sheet, page in render_sheets(result, language=language).items():
            texts = {one.strip(" ,:") for one in re.findall(r">([^<>]+)<", page)}
            assert not texts & told, (language, sheet)
            assert not any(re.search(r"\b0[.,]00\b", one) for one in texts), (language, sheet)
        made = order(result, Pen(words, "$", by_length=True))
        assert (made.sticks, made.length, made.goods) == ("2", "20 ft", "")
        assert made.trim_cost == f"20 ft ({words('{n} of {length}', n=1, length='8 ft')}, " + (
            f"{words('{n} of {length}', n=1, length='12 ft')})"
        )
