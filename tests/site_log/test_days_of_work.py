"""Whole jobs with their logs: all that is told after each line, in one table a job.

Worked by hand are the days of `test_worked_by_hand.py`; here nothing may change unseen.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields
from fractions import Fraction

import pytest
from syrupy.assertion import SnapshotAssertion

from tests.jobs import BASE, CROWN, HALL, TWELVE_FEET
from trimlang.compiler import Result, compile_job
from trimlang.stock.planner import QUICK
from trimlang.survey.log_entries import CutPiece, Spoiled

MITRES = f"""\
{BASE}
{CROWN}
stock base: pack of 3 12 ft at 30.00, 8 ft at 11.60, 16 ft at 25.00 at most 1
on-hand base: 2 of 41 in at 2.00, 1 of 41 in at 1.00, 20 1/2 in
stock crown: 12 ft at 28.80, 16 ft at 38.50
saw: kerf 1/8 in, squares off 1/4 in
spare 10 %
room "Porch" as PO, trim base, crown, open walk
  N: 29 1/8 in, left=return, right=out-corner
  E: 6 ft 4 in, left=out-corner, right=in-corner
  S: 8 ft 1/2 in, left=in-corner, right=butt
  bare 30 in
  X: 15 in, left=butt, right=butt, no crown
  bare 30 in
  Y: 15 in, left=butt, right=butt, no crown
  bare 30 in
  W: 17 ft, left=butt, right=out-corner
"""
METRIC = """\
unit mm
trim base: 14 thick, 133 tall, pine
stock base: 2400 at 11.60, 3600 at 17.40
on-hand base: 2 of 2000 at 1.00, 900
saw: kerf 3, squares off 10
spare covers any one piece spoiled
room "Flur" as FL, trim base, open walk
  N: 1500, left=butt, right=out-corner(91.5 deg)
  E: 1900, left=out-corner, right=in-corner
  S: 800, left=in-corner, right=butt
  bare 300
  W: 3900, left=butt, right=butt, splice
"""
BATCHES = """\
trim base: 3/4 in thick, 5 1/4 in tall, oak, stained
trim shoe: 1/2 in thick, 3/4 in tall, oak, in front of base
stock base: 12 ft at 41.40 batch "B", 16 ft at 57.60 batch "B", batch by room
stock shoe: bundle of 3 of 7 ft, 2 of 11 ft at 52.00
stock shoe: 8 ft at 6.00, at least 3 sticks
on-hand base: 12 ft batch "A", 12 ft batch "A"
spare 0 %
room "Den" as DE, trim base, shoe, ends in
  N: 11 ft
  E: 7 ft
  S: 11 ft
  W1: 2 ft, right=butt
  door 32 in
  W2: 2 ft 4 in, left=butt
"""
DAYS = {
    "mitres": (
        MITRES,
        "bought 1 pack of 3 base 12 ft at 27.00, 1 base 8 ft",
        "cut PO-E-base",
        "cut PO-N-base 29 5/8 in from base-9 of 41 in",
        "cut PO-X-base 15 1/8 in",
        "spoiled PO-E-base into 20 in and 20 in and 15 1/2 in",
        "cut PO-Y-base",
        "cut PO-W-base-a 140 in from 12 ft",
        "shortened PO-X-base to 15 in",
        "shortened PO-N-base to 29 1/2 in",
        "cut PO-S-crown 97 in, PO-E-crown",
        "bought 2 crown 12 ft at 50.00, 1 crown 16 ft",
        "spoiled PO-S-crown into 50 in",
        "fitted PO-N-base, PO-E-crown",
        "rack base: 1 of 12 ft, 3 of 40 in, 16 in, 1 of 12 ft",
        "cut PO-E-base, PO-S-base",
        "spoiled PO-S-base",
        "rack crown: nothing",
        "cut PO-N-base-left-return from base-30 of 10 ft",
        "bought 1 base 16 ft at 20.00",
        "cut PO-Z-base 20 in from base-31 of 16 ft",
        "cut PO-W-base-b from base-31",
        "spoiled PO-W-base-b",
        "spoiled PO-Q-base 20 in into 8 in from base-31 of 16 ft",
        "rack base: nothing",
    ),
    "metric": (
        METRIC,
        "cut FL-N-base",
        "cut FL-W-base-a 2000.5 from 2400",
        "spoiled FL-N-base into 1000 and 400",
        "bought 1 base 3600, 2 base 2400 at 20.00",
        "cut FL-N-base 1520",
        "shortened FL-N-base to 1516",
        "cut FL-W-base-b",
        "spoiled FL-E-base",
        "cut FL-E-base, FL-S-base",
    ),
    "batches": (
        BATCHES,
        "bought 2 base 12 ft, 3 shoe 7 ft, 2 shoe 11 ft at 30.00",
        "cut DE-N-base, DE-N-shoe",
        "spoiled DE-N-base",
        "bought 1 base 16 ft at 50.00",
        "cut DE-N-base, DE-E-base, DE-S-shoe",
        "spoiled DE-S-shoe into 60 in",
        "rack shoe: 1 of 8 ft, 2 of 60 in",
    ),
    "half a spare": (
        f"stock base: 12 ft at 17.40, 8 ft at 11.60\nspare 50 %\n{HALL}",
        "cut HA-N-base",
        "bought 1 base 8 ft",
        "cut HA-S-base",
        "cut HA-W-base 30 1/64 in from base-1 of 12 ft",
    ),
    "pushed off": (
        f"{TWELVE_FEET}\nspare 0 %\n{HALL}",
        "bought 1 base 12 ft",
        "cut HA-N-base 75 in from base-1 of 12 ft",
        "cut HA-W-base 65 in from base-9 of 12 ft",
    ),
    "sold out": (
        f"stock base: 8 ft at 11.60 at most 2\nspare 0 %\n{HALL}",
        "bought 2 base 8 ft",
        "cut HA-N-base",
        "spoiled HA-N-base",
        "cut HA-S-base",
        "bought 1 base 12 ft at 9.00",
    ),
    # 60 in take a stick of 8 ft each
    "in two trips": (
        "stock base: 8 ft at 11.60\nspare 0 %\n" + HALL.replace("40 in", "60 in").replace(
            "  W: 30 in", "  X: 60 in, left=butt, right=butt\n  opening 30 in\n"
            "  Y: 60 in, left=butt, right=butt\n  opening 30 in\n  W: 60 in"),
        "bought 1 base 8 ft",
        "bought 1 base 8 ft",
        "cut HA-S-base from 96 1/64 in",
    ),
    "two alike": (
        f"stock base: 8 ft at 11.60\nspare 0 %\n{HALL}",
        "bought 1 base 8 ft at 5.00",
        "cut HA-W-base from base-10 of 8 ft",
    ),
    "too little": (
        f"stock base: 8 ft at 11.60 at most 2\nspare 0 %\n{HALL}",
        "bought 2 base 8 ft",
        "cut HA-N-base",
        "rack base: nothing",
        "cut HA-S-base",
        "cut HA-W-base",
    ),
    # 60, a kerf and 40 in are all that is between the squared ends of 100 5/8 in
    "just enough": (
        f"stock base: 100 5/8 in at 11.60 at most 2\nspare 0 %\n{HALL}",
        "bought 2 base 100 5/8 in",
        "rack base: nothing",
        "cut HA-N-base",
        "cut HA-S-base",
        "cut HA-W-base 120 in",
    ),
    "too long": (
        f"stock base: 50 in at 5.00 at most 1\nspare 0 %\n{HALL}",
        "cut HA-S-base",
        "cut HA-N-base",
    ),
    "at least three": (
        f"stock base: 12 ft at 17.40, 8 ft at 11.60, at least 3 sticks\nspare 0 %\n{HALL}",
        "bought 3 base 8 ft",
        "rack base: nothing",
    ),
    "at least 60": (
        f"stock base: 12 ft at 17.40, 8 ft at 11.60, at least 60.00\nspare 0 %\n{HALL}",
        "bought 3 base 8 ft",
        "rack base: nothing",
    ),
}  # fmt: skip


def told(result: Result) -> Iterator[str]:
    """Yield what the job under way comes to, a fact a line."""
    for found in result.diagnostics:
        yield f"{found.code} {found.span.column}: {found.message}"
    for plan in result.plans:
        yield (
            f"{plan.trim}: {float(plan.cost):.2f} to buy, bound {float(plan.bound):.2f}"
            f" {plan.status}, spare {mixed(plan.spare_asked)} {plan.survives_loss},"
            f" at least {plan.stick_bound} sticks"
        )
        yield f"  lost {facts(plan.lost)}"
        for line in plan.bought:
            yield f"  buy {facts(line)}"
        yield f"  whole {', '.join(map(mixed, plan.whole_sticks))}"
        for stick in plan.sticks:
            yield (
                f"  {stick.id} of {mixed(stick.length)} {'shop' if stick.on_hand else 'yard'}"
                f" at {mixed(stick.price)} {stick.batch} squared {mixed(stick.squared)},"
                f" rest {mixed(stick.offcut)}"
            )
            for place in stick.places:
                shared = " shared" if place.shared else ""
                yield f"    {place.piece} {mixed(place.start)} to {mixed(place.end)}{shared}"
    progress = result.progress
    if progress is None:
        return
    yield f"spent {float(progress.spent):.2f}, to buy {float(progress.to_buy):.2f}"
    yield f"new plan {progress.replanned}"
    yield f"changed {' '.join(progress.changed)}"
    for state in sorted(set(progress.states.values())):
        of_state = [name for name, one in progress.states.items() if one is state]
        yield f"{state}: {' '.join(of_state)}"
    for held in progress.in_hand:
        yield f"in hand {facts(held)}"
    for full in progress.full_entries:
        assert isinstance(full.entry, CutPiece | Spoiled)
        entry = f"{type(full.entry).__name__} {full.entry.piece} {mixed(full.length)}"
        yield f"{entry} {full.stick} {mixed(full.stick_length)}"
    for piece in result.pieces:
        if progress.is_cut(piece.id):
            asked = progress.asked.get(piece.id)
            yield (
                f"{piece.id} {mixed(piece.length)} {mixed(piece.wall_edge)}"
                f" {mixed(piece.rounding.by)} for {mixed(asked and asked.length)}"
            )


def mixed(amount: object) -> str:
    """Write a length as one says it, and anything else as it is."""
    if not isinstance(amount, Fraction) or amount.denominator > 10_000:
        return f"{float(amount):.6f}" if isinstance(amount, Fraction) else str(amount)
    whole, rest = divmod(abs(amount), 1)
    said = f"{whole} {rest}" if whole and rest else f"{rest or whole}"
    return f"-{said}" if amount < 0 else said


def facts(one: object) -> str:
    return ", ".join(mixed(getattr(one, field.name)) for field in fields(one))  # type: ignore[arg-type]


@pytest.mark.parametrize("name", DAYS)
def test_all_that_is_told_after_each_line(name: str, snapshot: SnapshotAssertion) -> None:
    job, *log = DAYS[name]
    before: list[str] = []
    shown: list[str] = []
    for end in range(len(log) + 1):
        now = list(told(compile_job("\n".join([job, *log[:end], ""]), effort=QUICK)))
        # only what this line changed: a day's table is read like a ledger
        shown += [f"## {log[end - 1]}" if end else "## surveyed"]
        shown += [f"- {line}" for line in before if line not in now]
        shown += [f"+ {line}" for line in now if line not in before]
        before = now
    shown += ["## in the end", *before]
    assert "\n".join(shown) == snapshot
