"""What is left after lines of the log, worked by hand: places, rests, money and what is lost.

The kerf is 1/8 in and 1/4 in is squared off each end, so that the second piece of a stick begins
1/4 + 60 + 1/8 in from its end, and a rest is the stick less its squared ends, its pieces and a
kerf for each.  Arithmetic from these settings; there is no outside source for a log.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from tests.every import every
from tests.jobs import HALL
from trimlang.compiler import Result, compile_job

JOB = "stock base: 12 ft at 17.40, 8 ft at 11.60\n{more}\n" + HALL
NO_SPARE = "spare 0 %"
N, S, W = "HA-N-base", "HA-S-base", "HA-W-base"
TWELVE, EIGHT = Fraction("17.40"), Fraction("11.60")


def after(log: str, more: str = NO_SPARE) -> Result:
    result = compile_job(JOB.format(more=more) + log)
    assert result.ok, result.diagnostics
    return result


def places(result: Result) -> dict[str, dict[str, str]]:
    """Return where each piece begins on each stick."""
    (plan,) = result.plans
    return {
        stick.id: {place.piece: str(place.start) for place in stick.places} for stick in plan.sticks
    }


def told(result: Result) -> dict[str, Any]:
    (plan,) = result.plans
    assert result.progress is not None
    lost = plan.lost
    return {
        "rests": [str(stick.offcut) for stick in plan.sticks],
        "lost": [str(one) for one in (lost.kerf, lost.ends, lost.offcut, lost.scrap)],
        "to buy": [(int(one.length), one.packs) for one in plan.bought],
        "spent": result.progress.spent,
        "still": plan.cost,
        "changed": set(result.progress.changed),
    }


ALL_ON_ONE = {N: "1/4", S: "483/8", W: "201/2"}
ON_ONE = {
    # 144 - 1/2 - 60 - 40 - 30 - 3 x 1/8
    "rests": ["105/8"],
    "lost": ["1/4", "1/2", "105/8", "0"],
    "to buy": [],
    "spent": TWELVE,
    "still": 0,
    "changed": set(),
}
N_AGAIN = {
    # the wood of N stays off the first stick, and N comes from 8 ft: 96 - 1/2 - 60 - 1/8
    "rests": ["105/8", "283/8"],
    "lost": ["1/4", "1", "97/2", "60"],
    "to buy": [(96, 1)],
    "spent": TWELVE,
    "still": EIGHT,
    "changed": {N},
}


@pytest.mark.parametrize(
    "cut", ["", f"cut {N}\n", f"cut {N}, {S}\n", f"cut {N} from base-1\ncut {S}\n"]
)
def test_cutting_by_the_tickets_changes_nothing(cut: str) -> None:
    result = after("bought 1 base 12 ft\n" + cut)
    assert places(result) == {"base-1": ALL_ON_ONE}
    assert told(result) == ON_ONE


@pytest.mark.parametrize(
    "spoiled",
    [
        f"cut {N}\nspoiled {N} into 30 in and 25 in\n",
        f"cut {N}\nspoiled {N}\n",
        f"cut {N}\nshortened {N} to 59 in\nspoiled {N} into 59 in\n",
        # not cut before: 30, a kerf and 29 come out of the 60 that it took
        f"spoiled {N} into 60 in\n",
        f"spoiled {N} into 30 in and 29 in\n",
        f"spoiled {N} into 30 in and 29 7/8 in\n",
        f"spoiled {N}\n",
    ],
)
def test_a_spoiled_piece_is_cut_again_and_its_wood_is_gone(spoiled: str) -> None:
    result = after("bought 1 base 12 ft\n" + spoiled)
    assert places(result) == {"base-1": {S: "483/8", W: "201/2"}, "base-2": {N: "1/4"}}
    assert told(result) == N_AGAIN


def test_rests_that_are_longer_than_the_piece_take_more_of_the_stick() -> None:
    # 30, a kerf of 1/8 and 29 31/32 are 60 3/32: so much further on lies the next piece, on the
    # next sixteenth of the tape
    result = after(
        f"bought 1 base 12 ft\nspoiled {N} 60 in into 30 in and 29 31/32 in from base-1 of 12 ft\n"
    )
    first = Fraction(places(result)["base-1"][S])
    assert first - Fraction("1/4") - Fraction("1/8") >= Fraction(60) + Fraction(3, 32)
    assert first - Fraction("1/4") - Fraction("1/8") < Fraction(60) + Fraction(3, 32) + Fraction(
        1, 16
    )


def test_a_piece_spoiled_behind_a_cut_off_the_plan_came_from_that_day_s_stick() -> None:
    """The plan has all three on one of 12 ft; with N on one of 8 ft, S has room only on another."""
    result = after(f"cut {N} 60 in from base-1 of 8 ft\nspoiled {S}\n")
    assert places(result)["base-1"] == {N: "1/4", W: "483/8"}
    assert set(places(result)) > {"base-1"}


def test_rests_of_a_spoiled_piece_can_be_cut_from() -> None:
    # 41 in less 1/2 in are 40 1/2: S fits it, and nothing need be bought for it
    result = after(f"bought 1 base 12 ft\ncut {N} 60 in from base-1 of 12 ft\n"
                   f"spoiled {N} into 41 in\n")  # fmt: skip
    shop = [one for one in result.plans[0].bought if one.on_hand]
    assert [(one.length, one.price, one.pack, one.packs) for one in shop] in ([], [(41, 0, 1, 1)])


def test_a_piece_that_was_cut_longer_pushes_what_follows_on() -> None:
    result = after(f"bought 1 base 12 ft\ncut {N} 60 1/2 in from base-1 of 12 ft\n")
    assert places(result) == {"base-1": {N: "1/4", S: "487/8", W: "101"}}
    assert told(result)["rests"] == ["101/8"]
    assert told(result)["changed"] == set()


def test_a_piece_cut_to_one_mark_takes_one_mark() -> None:
    result = after(f"bought 1 base 12 ft\ncut {N} 1/16 in from base-1 of 12 ft\n")
    assert places(result)["base-1"][S] == "7/16"


def test_a_stick_that_was_cut_and_never_bought_costs_what_the_stock_line_says() -> None:
    result = after(f"bought 1 base 8 ft\ncut {N} 60 in from base-2 of 12 ft\n")
    assert "T714" in {one.code for one in result.diagnostics}
    assert places(result) == {"base-1": {W: "1/4"}, "base-2": {N: "1/4", S: "483/8"}}
    assert told(result) == {
        "rests": ["523/8", "173/4"],
        "lost": ["1/8", "1", "869/8", "0"],
        "to buy": [],
        "spent": TWELVE + EIGHT,
        "still": 0,
        "changed": {S, W},
    }


def test_a_stick_of_a_length_that_nobody_sells_costs_nothing_and_is_told() -> None:
    result = after(f"cut {N} 60 in from base-1 of 10 ft\n")
    assert "T714" in {one.code for one in result.diagnostics}
    assert told(result)["spent"] == 0
    assert told(result)["still"] == EIGHT


def test_an_offcut_is_paid_for_when_it_is_first_cut() -> None:
    more = f"{NO_SPARE}\non-hand base: 1 of 10 ft at 3.00"
    result = after(f"cut {N} 60 in from base-1 of 10 ft\n", more)
    assert "T714" not in {one.code for one in result.diagnostics}
    (first, *_) = result.plans[0].sticks
    assert (first.on_hand, first.price) == (True, 3)
    assert told(result)["spent"] == 3


def test_the_cheaper_of_two_offcuts_of_one_length_is_begun() -> None:
    more = f"{NO_SPARE}\non-hand base: 1 of 10 ft at 5.00, 1 of 10 ft at 3.00"
    assert told(after(f"cut {N} 60 in from base-1 of 10 ft\n", more))["spent"] == 3


def test_a_bought_stick_is_begun_before_an_offcut_of_its_length() -> None:
    more = f"{NO_SPARE}\non-hand base: 1 of 12 ft at 3.00"
    result = after(f"bought 1 base 12 ft\ncut {N} 60 in from base-7 of 12 ft\n", more)
    assert told(result)["spent"] == TWELVE


def test_all_that_one_line_buys_comes_off_what_the_rest_must_cost() -> None:
    # 60 and 40 in come from 12 ft, 90 in from 8 ft, for 29.00 in all; or from two of 12 ft
    result = compile_job(JOB.format(more=NO_SPARE).replace("W: 30 in", "W: 90 in")
                         + "bought 1 base 12 ft, 1 base 12 ft\n")  # fmt: skip
    (plan,) = result.plans
    assert (plan.cost, plan.bound, result.spent) == (0, 0, 2 * TWELVE)


def test_of_several_purchases_the_smallest_explains_a_stick() -> None:
    job = JOB.replace("12 ft at 17.40,", "12 ft at 17.40, pack of 3 12 ft at 30,")
    result = compile_job(job.format(more=NO_SPARE) + f"cut {N} 60 in from base-1 of 12 ft\n")
    assert result.progress is not None
    assert result.progress.spent == TWELVE


def test_what_was_counted_is_all_that_there_is() -> None:
    result = after("bought 3 base 12 ft\nrack base: 1 of 12 ft, 61 in\n")
    assert places(result) == {"base-1": ALL_ON_ONE}
    assert told(result)["spent"] == 3 * TWELVE
    assert told(result)["to buy"] == []
    # counted sticks of a sold length are bought ones, others are offcuts; both are paid for
    assert result.plans[0].sticks[0].price == 0
    assert not result.plans[0].sticks[0].on_hand


def test_a_rest_that_can_be_used_is_an_offcut_and_a_shorter_one_is_scrap() -> None:
    more = "spare 20 %\non-hand base: 2 of 31 in at 3.00, 1 of 41 in"
    result = after(f"cut {W}\n", more)
    assert places(result) == {"base-1": {W: "1/4", N: "243/8"}, "base-2": {S: "1/4"}}
    assert told(result)["rests"] == ["21/4", "3/8"]
    # 96 - 1/2 - 30 - 60 - 1/4, and 41 - 1/2 - 40 - 1/8
    assert told(result)["lost"] == ["1/8", "1", "0", "45/8"]
    plan = result.plans[0]
    assert [(int(one.length), one.on_hand, one.pack, one.packs) for one in plan.bought] == [
        (96, False, 1, 1),
        (41, True, 1, 1),
    ]
    # 20 % of 60 and 40 are 20 in: the one whole stick covers that
    assert plan.whole_sticks == (96,)
    assert plan.stick_bound == 0, "how few would do was not looked for"


def test_a_rest_that_is_just_long_enough_to_keep_is_no_scrap() -> None:
    # 144 - 1/2 - 60 - 40 - 31 1/8 - 3 x 1/8
    job = JOB.format(more=NO_SPARE).replace("W: 30 in", "W: 31 1/8 in")
    assert told(compile_job(f"{job}bought 1 base 12 ft\n"))["lost"] == ["1/4", "1/2", "12", "0"]


def test_a_limit_counts_what_was_bought() -> None:
    job = JOB.replace("12 ft at 17.40, 8 ft at 11.60", "12 ft at 10.00 at most 1, 8 ft at 11.60")
    text = job.format(more=NO_SPARE) + f"bought 1 base 12 ft\ncut {N}\nspoiled {N}\n"
    result = compile_job(text)
    assert result.ok
    # a second one of 12 ft would be cheaper, and is not to be had
    assert told(result)["to buy"] == [(96, 1)]


def test_sticks_that_were_counted_away_and_are_sold_out_hold_no_piece() -> None:
    job = JOB.replace("12 ft at 17.40, 8 ft at 11.60", "12 ft at 17.40 at most 1")
    result = compile_job(job.format(more=NO_SPARE) + "bought 1 base 12 ft\nrack base: nothing\n")
    (found,) = (one for one in result.diagnostics if one.code == "T707")
    assert found.message.endswith(f"no stick for {N}, {S}, {W}")


def test_a_pack_is_bought_whole_and_its_other_sticks_are_left() -> None:
    job = JOB.replace("12 ft at 17.40, 8 ft at 11.60", "pack of 3 12 ft at 30.00")
    result = compile_job(job.format(more=NO_SPARE) + "bought 1 pack of 3 base 12 ft\n")
    assert result.ok
    assert told(result)["spent"] == 30
    assert result.plans[0].whole_sticks == (144, 144)
    assert result.plans[0].sticks[0].price == 10


@pytest.mark.parametrize(
    ("log", "to_buy", "whole", "still"),
    [
        ("", [(96, 1), (62, 2)], [62], EIGHT + 6),
        (f"cut {N}\n", [(96, 1), (62, 1)], [62], EIGHT + 3),
        (f"cut {N}\ncut {S}\ncut {W}\n", [], [], 0),
    ],
)
def test_an_offcut_that_is_the_spare_is_paid_for_with_the_order(
    log: str, to_buy: list[tuple[int, int]], whole: list[int], still: Fraction
) -> None:
    """N takes one of 62 in, and the other is there in case that it is spoiled."""
    more = "spare covers any one piece spoiled\non-hand base: 2 of 62 in at 3.00"
    (plan,) = after(log, more).plans
    assert [(int(one.length), one.packs) for one in plan.bought] == to_buy
    assert [int(one) for one in plan.whole_sticks] == whole
    assert plan.cost == still


def test_what_is_left_costs_nothing_where_the_least_order_has_been_bought() -> None:
    """60 and 30 in come from one of the three sticks of 8 ft, 40 in from another."""
    job = JOB.replace("8 ft at 11.60", "8 ft at 11.60, at least 60.00").format(more=NO_SPARE)
    result = compile_job(f"{job}bought 3 base 8 ft\n")
    assert told(result)["still"] == 0
    assert result.plans[0].whole_sticks == (96,)


@every("rack, packs", [("31 in", 3), ("1 of 8 ft", 1)])
def test_only_sticks_of_the_yard_in_hand_meet_its_least_order(rack: str, packs: int) -> None:
    """60 and 30 in and 40 in take two sticks of 8 ft, or 60 and 40 in do with 31 in for 30."""
    job = JOB.replace("12 ft at 17.40, 8 ft at 11.60", "8 ft at 11.60, at least 3 sticks")
    (plan,) = compile_job(f"{job.format(more=NO_SPARE)}rack base: {rack}\n").plans
    assert [line.packs for line in plan.bought if not line.on_hand] == [packs]


def test_offcuts_alike_that_the_plan_uses_stay_in_use() -> None:
    """A second stick of 12 ft holds both walls of 40 in, and nothing is gained by it."""
    job = JOB.replace(", 8 ft at 11.60", "").replace("N: 60 in", "N: 40 in")
    job = job.replace("W: 30 in", "W: 120 in")
    more = f"{NO_SPARE}\non-hand base: 2 of 41 in"
    result = compile_job(f"{job.format(more=more)}bought 2 base 12 ft\n")
    assert sorted(stick.length for stick in result.plans[0].sticks) == [41, 41, 144]
    assert told(result)["changed"] == set()


def test_offcuts_of_one_length_keep_the_places_that_their_prices_had() -> None:
    job = JOB.replace("S: 40", "S: 58").replace("W: 30", "W: 140").replace(", 8 ft at 11.60", "")
    offcuts = job.format(more=f"on-hand base: 61 in at 1.00, 61 in at 5.00\n{NO_SPARE}")
    before, since = (compile_job(offcuts + log) for log in ("", "bought 1 base 12 ft at 17.40\n"))
    (first,), (left,) = before.plans, since.plans
    laid = {stick.id: stick.price for stick in first.sticks}
    assert sorted(laid.values()) == [1, 5, TWELVE]
    assert {stick.id: stick.price for stick in left.sticks} == laid


def test_where_no_stick_more_covers_a_loss_the_spare_is_used_up() -> None:
    job = JOB.replace("12 ft at 17.40, 8 ft at 11.60", "10 ft at 12.00 at most 2")
    job = job.partition("  opening")[0]
    more = "spare covers any one piece spoiled\non-hand base: 1 of 62 in at 3.00"
    log = f"spoiled {N} into 41 in\ncut {N}\nspoiled {N}\n"
    result = compile_job(job.format(more=more) + log)
    assert result.ok, result.diagnostics
    assert not result.plans[0].survives_loss
    assert told(result)["to buy"] == [(120, 1)]


def test_a_piece_that_no_plan_has_comes_off_what_is_in_hand() -> None:
    """The others have no stick, which is told; of N's nobody asks when it was bought."""
    job = JOB.replace("12 ft at 17.40, 8 ft at 11.60", "8 ft at 11.60 at most 2")
    log = f"bought 2 base 8 ft\nrack base: 70 in\ncut {N}\n"
    codes = {one.code for one in compile_job(job.format(more=NO_SPARE) + log).diagnostics}
    assert "T707" in codes
    assert "T714" not in codes


def test_a_line_gives_a_length_in_hand_to_four_places() -> None:
    """A third of an inch is written as 0.3333, and the offcut is meant all the same."""
    more = f"{NO_SPARE}\non-hand base: 1 of 100 1/3 in at 3.00"
    result = after(f"bought 1 base 12 ft\ncut {N} 60 in from base-7 of 100.3333 in\n", more)
    assert "T714" not in {one.code for one in result.diagnostics}
    assert told(result)["spent"] == TWELVE + 3


def test_a_piece_spoiled_on_another_stick_is_cut_again_where_it_was_planned() -> None:
    result = after(f"bought 1 base 12 ft\nspoiled {W} 30 in from base-7 of 40 in\n")
    assert places(result) == {"base-1": ALL_ON_ONE}
    assert told(result)["changed"] == {W}


@every("share", [0, 10, 50])
@every(
    "log",
    ["bought 1 base 12 ft\n", f"bought 2 base 8 ft\ncut {N}\n", f"cut {N}, {S}\nspoiled {S}\n"],
)
def test_no_wood_is_lost_or_made(log: str, share: int) -> None:
    """Each stick is its pieces, kerfs, squared ends and rest; what was spoiled is scrap."""
    result = after(log, f"spare {share} %")
    (plan,) = result.plans
    pieces = sum(
        (place.end - place.start for one in plan.sticks for place in one.places), Fraction(0)
    )
    last = sum(Fraction(1, 8) for stick in plan.sticks if stick.offcut)
    lost = plan.lost
    whole = pieces + lost.kerf + lost.ends + lost.offcut + lost.scrap + last
    assert whole == sum(stick.length for stick in plan.sticks)
    assert plan.bound <= plan.cost == sum(one.price * one.packs for one in plan.bought)
