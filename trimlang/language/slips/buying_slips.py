"""Slips in what sticks cost and how many were bought."""

from __future__ import annotations

import re
from typing import Final

from trimlang.language.slips.slip_row import WALL_NAME, WHOLE_LENGTH, Found, slip

_STICK: Final = r"\d[\d./ ]*?\s*(?:ft|feet|in|mm|m|')"
_PURCHASE: Final = re.compile(rf"(?P<count>\d+)\s*(?:of|x|×|\*)\s*(?P<long>{WHOLE_LENGTH})", re.I)
_PER: Final = r"(?:lin(?:ear)?\.? ?)?(?:(?P<foot>ft|foot|feet|lf|lft)|m|lm|lfm|met(?:re|er)s?)\b\.?"


def _purchases(found: Found) -> str:
    return ", ".join(
        f"{one['count']} {found['name']} {one['long'].strip()}"
        for one in _PURCHASE.finditer(found["list"])
    )


def _a_foot(found: Found) -> str:
    return " a foot" if found["foot"] else " a metre"


def _one_stick(found: Found) -> str:
    return f"{found['one'] or found['two']} {(found['long'] or found['size']).strip()}"


BUYING_SLIPS: Final = (
    slip(
        ("stock base: 12 ft at 1.45/ft", "stock base: 12 ft at 1.45 a foot"),
        ("stock base: 8 ft, 12 ft at $1.45 / foot", "stock base: 8 ft, 12 ft at $1.45 a foot"),
        ("stock base: 3.6 m at 4.75/m", "stock base: 3.6 m at 4.75 a metre"),
        ("stock base: 3.6 m at 4.75 pro lfm", "stock base: 3.6 m at 4.75 a metre"),
        (
            "stock base: any length to 16 ft at 1.45 lf",
            "stock base: any length to 16 ft at 1.45 a foot",
        ),
        written=rf"\bat\s+[$€£¥]?\d+(?:\.\d+)?(?P<slip>\s*(?:/|per\b|pro\b)?\s*{_PER})",
        wanted="a price by the foot or the metre in words",
        remedy="Write {}.",
        instead=_a_foot,
    ),
    slip(
        ("stock base: 12 ft 1.45/ft", "stock base: 12 ft at 1.45 a foot"),
        (
            "stock base: any length to 16 ft, $1.45/lf",
            "stock base: any length to 16 ft at $1.45 a foot",
        ),
        written=rf"^\s*stock\b[^#]*?(?:ft|feet|in|mm|m|')(?P<slip>\s*(?:,|=|:)?\s+"
        rf"(?P<price>[$€£¥]?\d+(?:\.\d+)?)\s*(?:/|per\b)\s*{_PER})",
        wanted="“at” before the price",
        remedy="Write {}.",
        instead=lambda found: f" at {found['price']}{_a_foot(found)}",
    ),
    slip(
        ("stock base: 12 ft at 17.40 each", "stock base: 12 ft at 17.40"),
        ("bought 4 base 16 ft at 24.10 ea", "bought 4 base 16 ft at 24.10"),
        ("stock base: 12 ft at 17.40/stick", "stock base: 12 ft at 17.40"),
        written=r"\bat\s+[$€£¥]?\d+(?:\.\d+)?(?P<slip>\s*(?:each\b|ea\b\.?|apiece\b"
        r"|(?:/|per\b|a\b)\s*(?:piece|stick|pc|length)\b))",
        wanted="the price alone",
        remedy="A price is that of one stick: leave the word out.",
        instead=lambda _: "",
    ),
    slip(
        ("stock base: 12-footers at 17.40", "stock base: 12 ft at 17.40"),
        ("bought 4 base 16-foot", "bought 4 base 16 ft"),
        written=r"(?P<slip>(?P<feet>\d+)(?:\s*-\s*(?:foot(?:er)?s?|ft)|\s*footers?))\b",
        wanted="feet with their unit alone",
        remedy="Write {}.",
        instead=lambda found: f"{found['feet']} ft",
    ),
    slip(
        ("price base 1.45/ft", None),
        ("prices: base 17.40", None),
        written=r"^\s*(?P<slip>prices?|costs?)\b[^#]*",
        wanted="the line of what is sold",
        remedy="A price stands behind the sticks that have it: stock base: 12 ft at 17.40, or"
        " 8 ft, 12 ft at 1.45 a foot.",
        instead=None,
    ),
    slip(
        ("bought base 4 of 16 ft", "bought 4 base 16 ft"),
        (
            "bought base: 4 x 16 ft, 2 x 12 ft at 17.40",
            "bought 4 base 16 ft, 2 base 12 ft at 17.40",
        ),
        written=rf"^\s*bought\s+(?P<slip>(?P<name>{WALL_NAME})\s*:?\s*"
        rf"(?P<list>\d+\s*(?:of|x|×|\*)\s*{WHOLE_LENGTH}(?:,\s*\d+\s*(?:of|x|×|\*)"
        rf"\s*{WHOLE_LENGTH})*))",
        wanted="how many, then which trim, then how long",
        remedy="Write bought {}.",
        instead=_purchases,
    ),
    slip(
        ("bought 4 of base 16 ft", "bought 4 base 16 ft"),
        ("bought 2 base of 12 ft at 17.40", "bought 2 base 12 ft at 17.40"),
        ("bought 4 x 16 ft base", "bought 4 base 16 ft"),
        ("bought 4 sticks 16 ft base", "bought 4 base 16 ft"),
        ("bought 4 16 ft base", "bought 4 base 16 ft"),
        ("bought 2 base 12 ft, 4 of 16 ft base", "bought 2 base 12 ft, 4 base 16 ft"),
        written=rf"^\s*bought\b(?:[^#]*,)?\s*(?P<slip>(?P<count>\d+)(?!\d)\s*(?:sticks?\b)?\s*(?"
        rf":of\b|x\b|×|\*)?\s*"
        rf"(?:(?P<one>{WALL_NAME})\s+(?:of\s+)?(?P<long>{WHOLE_LENGTH})|(?P<size>{_STICK})\s+(?"
        rf":of\s+)?"
        rf"(?P<two>{WALL_NAME})))(?=\s*(?:,|#|at\b|$))",
        wanted="how many, then which trim, then how long",
        remedy="Write {}.",
        instead=lambda found: f"{found['count']} {_one_stick(found)}",
    ),
    slip(
        ("bought base", None),
        ("bought 2 base", None),
        ("bought some base 12 ft", None),
        ("bought 2 12 ft", None),
        written=rf"^\s*bought\s+(?P<slip>(?:\d+\s+)?{WALL_NAME}(?=\s*(?:,|at\b|#|$))"
        rf"|(?:some|more|a few|the)\s+{WALL_NAME}(?:\s+{WHOLE_LENGTH})?|\d+\s+\d+\s*(?:ft|in|mm|"
        rf"m|'))",
        wanted="how many, then which trim, then how long",
        remedy="Write all three: bought 2 base 12 ft.",
        instead=None,
    ),
    slip(
        ("bought base 16 ft", "bought 1 base 16 ft"),
        ("bought 16 ft base at 24.10", "bought 1 base 16 ft at 24.10"),
        written=rf"^\s*bought\s+(?P<slip>(?P<one>{WALL_NAME})\s*:?\s*(?P<long>{WHOLE_LENGTH})"
        rf"|(?P<size>{_STICK})\s+(?P<two>{WALL_NAME}))(?=\s*(?:at\b|#|$))",
        wanted="how many sticks",
        remedy="Say how many there were; if it was one, write {}.",
        instead=lambda found: f"1 {_one_stick(found)}",
    ),
)
"""What people write of prices and purchases, and how it stands in a job file or a site log."""
