"""Invented jobs that the sheets are tested with."""

from __future__ import annotations

from functools import cache

from tests.conftest import EXAMPLES
from tests.jobs import CASE, SHOE, TWELVE_FOR_TEN
from trimlang.compiler import Result, compile_job
from trimlang.sheets.sheet_table import SHEETS
from trimlang.stock.planner import FULL, QUICK, Effort

_NOT_ALWAYS = ("tickets-changed", "flats", "elevations")
TITLES = tuple(sheet.name for sheet in SHEETS if sheet.name not in _NOT_ALWAYS)
"""The sheets that every job has."""

WITH_WALLS = (*TITLES, "elevations")
"""The sheets of a job with crown, casing, boxes or a stair."""

HOUSE = EXAMPLES / "house.trim"
SHIPPED = sorted(path.stem for path in EXAMPLES.glob("*.trim") if path.stem != "prices")
"""The names of the shipped examples that are jobs."""

SMALL = """\
job "Plum Lane 3, box room"
surveyed 2026-03-02
trim base: 9/16 in thick, 5 1/4 in tall, mdf
stock base: 8 ft at 9.00
saw: kerf 1/8 in, reads to 1/2 deg
spare 5 %
room "Box room" as BR, trim base
  N: 9 ft, left=in-corner, right=out-corner(91.3 deg)
  N2: 10 5/32 in, left=out-corner, right=in-corner cope
  E: 29 1/8 in, left=in-corner, right=butt, note "mind the <b>heater</b> & 'pipe'"
  opening 30 in, "door", entrance
  S: 40 in, left=butt, right=return
"""


ODD = f"""\
job "Odd ends"
trim base: 9/16 in thick, 5 1/4 in tall, mdf
trim crown: 11/16 in thick, 3 5/8 in wide, spring 38 deg, poplar
{CASE}
{TWELVE_FOR_TEN}
stock crown: 16 ft at 31.00
stock case: 7 ft at 9, 14 ft at 15
room "Parlor" as PA, trim crown
  N: 10 ft, left=in-corner(90 deg), right=in-corner(90 deg)
  E: 8 ft, left=in-corner(90 deg), right=in-corner(90 deg)
  S: 10 ft, left=in-corner(90 deg), right=in-corner(90 deg)
  W: 8 ft, left=in-corner(90 deg), right=in-corner(90 deg)
room "Stair" as SA, trim base, open walk
  opening 30 in, "bedroom", casing case, height 80 in
  A: 40 in, left=butt, right=rake
  B: 9 ft 4 in, left=rake, right=plumb, rising right 7 1/2 in over 10 in
"""

SOME_OF_ALL = f"""\
spare 5 %
{ODD}
{SHOE}
stock shoe: 8 ft at 3.00
room "Box room" as BR, trim base, shoe, open walk
  N: 9 ft, left=in-corner, right=out-corner(91.3 deg)
  N2: 10 5/32 in, left=out-corner, right=in-corner cope
  E: 13 ft 1/8 in, left=in-corner, right=butt, note "mind the heater"
  opening 30 in, "door", entrance
  S: 40 in, left=butt, right=return
"""


_AGAIN = (
    "a note that goes on for a while and says the same again, because someone on site"
    " thought of something else that should be kept in mind when this piece is nailed"
)
LOW_TO_TALL = f"""\
job "Low to tall"
trim bead: 3/8 in thick, 1/2 in tall
trim shoe: 1/2 in thick, 3/4 in tall
trim rail: 3/4 in thick, 1 3/4 in tall
trim case: 11/16 in thick, 2 1/4 in tall
trim base: 9/16 in thick, 3 1/4 in tall
trim tall: 9/16 in thick, 5 1/4 in tall
stock bead: 8 ft at 3
stock shoe: 8 ft at 3
stock rail: 8 ft at 5
stock case: 8 ft at 5
stock base: 8 ft at 9
stock tall: 8 ft at 12
room "Room of all heights" as RH, trim bead, shoe, rail, case, base, tall
  N: 41 in, left=in-corner, right=out-corner(91.3 deg)
  E: 50 3/16 in, left=out-corner, right=butt
  S: 30 15/16 in, left=return, right=in-corner cope, note "{_AGAIN}"
  W: 7 in, left=in-corner, right=in-corner
"""

LONG_WORD = "Abcdefghijklmnopqrstuvwxyz" * 12
UNBROKEN = f"""\
job "{LONG_WORD}"
trim base: 9/16 in thick, 5 1/4 in tall, {LONG_WORD}
trim shoe: 1/2 in thick, 3/4 in tall
stock base: 12 ft at 9.00
stock shoe: 12 ft at 3.00
room "{LONG_WORD}" as RO, trim base, shoe, open walk
  {LONG_WORD}: 40 in, left=butt, right=in-corner, note "{LONG_WORD}"
  E: 40 in, left=in-corner, right=butt
  opening 30 in, "{LONG_WORD}"
"""


def compiled(text: str, *, effort: Effort = QUICK) -> Result:
    """Compile a job that must be sound; few sheets say more of a plan that is proven."""
    result = compile_job(text, name="small.trim", effort=effort)
    assert result.ok, result.diagnostics
    return result


@cache
def small() -> Result:
    """A room with every kind of end, and a plan that is proven."""
    return compiled(SMALL, effort=FULL)


@cache
def odd() -> Result:
    """Crown, a cased door and a stair."""
    return compiled(ODD)


@cache
def some_of_all() -> Result:
    """Crown, a cased door, a stair and a room with shoe, a note and every kind of end."""
    return compiled(SOME_OF_ALL)


@cache
def example(name: str) -> Result:
    """A shipped example."""
    path = EXAMPLES / f"{name}.trim"
    return compile_job(path.read_text(encoding="utf-8"), path=path)


@cache
def house() -> Result:
    """The shipped house."""
    return compile_job(HOUSE.read_text(encoding="utf-8"), path=HOUSE)


def many(pieces: int) -> Result:
    """A job of so many runs in rooms of four."""
    lines = [
        "job 'Long row'",
        "trim base: 1/2 in thick, 4 in tall",
        "stock base: 16 ft at 20.00",
    ]
    for room in range(pieces // 4):
        lines.append(f'room "Room {room}" as R{room}, trim base')
        lines += [
            f"  {wall}: {40 + (room * 7 + place) % 50} in, left=in-corner, right=in-corner"
            for place, wall in enumerate("NESW")
        ]
    return compiled("\n".join(lines).replace("'", '"'))
