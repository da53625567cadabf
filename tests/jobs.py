"""Lines that many invented jobs share, and a small job around the walls that a test is about."""

from __future__ import annotations

from typing import Final

BASE: Final = "trim base: 9/16 in thick, 5 1/4 in tall"
SHOE: Final = "trim shoe: 1/2 in thick, 3/4 in tall, in front of base"
CROWN: Final = "trim crown: 11/16 in thick, 3 5/8 in wide, spring 38 deg"
CASE: Final = "trim case: 11/16 in thick, 2 1/4 in wide"
WIDE_CASE: Final = "trim case: 11/16 in thick, 2 1/2 in wide"
TWELVE_FEET: Final = "stock base: 12 ft at 17.40"
SIXTEEN_FEET: Final = "stock base: 16 ft at 24.10"
TWELVE_FOR_TEN: Final = "stock base: 12 ft at 10"
SHOE_STOCK: Final = "stock shoe: 8 ft at 5.20"
CROWN_STOCK: Final = "stock crown: 12 ft at 28.80"
CASE_STOCK: Final = "stock case: 16 ft at 18.90"

TRIM: Final = f"{BASE}\n{TWELVE_FEET}, 16 ft at 24.10\n"
HALL: Final = f"""\
{BASE}
saw: kerf 1/8 in, squares off 1/4 in
room "Hall" as HA, trim base, open walk
  N: 60 in, left=butt, right=butt
  opening 30 in
  S: 40 in, left=butt, right=butt
  opening 30 in
  W: 30 in, left=butt, right=butt
"""
"""Three walls that no stick of 12 ft holds twice, for logs that are worked by hand."""


def walls(lines: str, *, settings: str = "") -> str:
    """Return a job file of one open room with the given walls."""
    return f'{TRIM}{settings}\nroom "Study", trim base, open walk\n{lines}\n'
