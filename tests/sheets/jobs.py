"""Invented jobs that the sheets are tested with."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from trimlang.compiler import Result, compile_job

HOUSE = Path(__file__).resolve().parents[2] / "examples" / "house.trim"

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


def compiled(text: str) -> Result:
    """Compile a job that must be sound."""
    result = compile_job(text, name="small.trim")
    assert result.ok, result.diagnostics
    return result


@cache
def small() -> Result:
    """A room with every kind of end."""
    return compiled(SMALL)


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
