"""Slips in the lines of a site log: other words for what was done, signs too many."""

from __future__ import annotations

from typing import Final

from trimlang.language.slip_row import WHOLE_LENGTH, Found, slip

_COUNTS: Final = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "ten": 10}


def _piece_first(found: Found) -> str:
    to = " to" if found["done"].casefold() == "shortened" else ""
    return f"{found['piece']}{to} {found['long'].strip()}"


LOG_SLIPS: Final = (
    slip(
        ("spoilt ST-N-base", "spoiled ST-N-base"),
        ("ruined ST-N-base into 22 in", "spoiled ST-N-base into 22 in"),
        written=r"^\s*(?P<slip>spoilt|ruined|wasted|scrapped|botched)(?=\s)",
        wanted="“spoiled”",
        remedy="Write {}.",
        instead=lambda _: "spoiled",
    ),
    slip(
        ("installed ST-N-base", "fitted ST-N-base"),
        ("hung ST-N-base, ST-E-base", "fitted ST-N-base, ST-E-base"),
        written=r"^\s*(?P<slip>installed|hung|mounted|nailed)(?=\s)",
        wanted="“fitted”",
        remedy="Write {}.",
        instead=lambda _: "fitted",
    ),
    slip(
        ("cut: ST-N-base", "cut ST-N-base"),
        ("bought: 2 base 12 ft", "bought 2 base 12 ft"),
        written=r"^\s*(?:cut|spoiled|shortened|fitted|bought)(?P<slip>\s*:\s*)",
        wanted="what was done, without a colon",
        remedy="Leave the colon out.",
        instead=lambda _: " ",
    ),
    slip(
        ("cut 30 in ST-N-base", "cut ST-N-base 30 in"),
        ("cut ST-E-base, 29 1/8 of ST-N-base", "cut ST-E-base, ST-N-base 29 1/8"),
        ("shortened 28 7/8 in ST-N-base", "shortened ST-N-base to 28 7/8 in"),
        written=r"^\s*(?P<done>cut|spoiled|shortened)\b(?:[^#]*,)?\s*"
        rf"(?P<slip>(?P<long>{WHOLE_LENGTH})\s*(?:of|off|for)?\s*(?P<piece>[^\W\d_][\w]*-[\w\-]+))",
        wanted="the piece before its length",
        remedy="Write {}.",
        instead=_piece_first,
    ),
    slip(
        ("cut ST-N-base at 30 in", "cut ST-N-base 30 in"),
        ("cut ST-N-base, 30 in from base-1", "cut ST-N-base 30 in from base-1"),
        ("cut ST-N-base = 30 in", "cut ST-N-base 30 in"),
        written=r"^\s*cut\s+[\w\-]*-[\w\-]+(?P<slip>\s*(?:,|=|:|\bat\b|\bto\b)\s*)"
        rf"{WHOLE_LENGTH}",
        wanted="the length right behind the piece",
        remedy="Leave that out.",
        instead=lambda _: " ",
    ),
    slip(
        ("cut ST-N-base 30 in out of base-1", "cut ST-N-base 30 in from base-1"),
        ("cut ST-N-base off base-1", "cut ST-N-base from base-1"),
        written=r"^\s*(?:cut|spoiled)\b[^,#]*?\s(?P<slip>out of|off|of)(?=\s+[^\W\d_])",
        wanted="“from” before the stick",
        remedy="Write {}.",
        instead=lambda _: "from",
    ),
    slip(
        ("fitted ST-N-base and ST-E-base", "fitted ST-N-base, ST-E-base"),
        ("cut ST-N-base & ST-E-base", "cut ST-N-base, ST-E-base"),
        written=r"^\s*(?:cut|spoiled|fitted)\b[^#]*?[\w\-]-[\w\-]+(?P<slip>\s+(?:and|&|\+)\s+)",
        wanted="a comma between two pieces",
        remedy="Put a comma between them.",
        instead=lambda _: ", ",
    ),
    slip(
        ("bought two base 12 ft", "bought 2 base 12 ft"),
        written=rf"^\s*bought\s+(?P<slip>{'|'.join(_COUNTS)})\b",
        wanted="how many in figures",
        remedy="Write {}.",
        instead=lambda found: str(_COUNTS[found["slip"].casefold()]),
    ),
    slip(
        ("bought 2 sticks base 12 ft", "bought 2 base 12 ft"),
        ("bought 2 sticks of base 12 ft at 17.40", "bought 2 base 12 ft at 17.40"),
        written=r"^\s*bought\s+\d+(?P<slip>\s+(?:sticks?|pieces?|lengths?|pcs?)(?:\s+of)?)(?=\s)",
        wanted="the trim's name behind how many",
        remedy="Leave that out.",
        instead=lambda _: "",
    ),
    slip(
        ("bought 2 base 12 ft, 17.40", "bought 2 base 12 ft at 17.40"),
        ("bought 2 base 12 ft for 17.40", "bought 2 base 12 ft at 17.40"),
        written=rf"^\s*bought\s+\d+\s+[^\W\d_][\w\-]*\s+{WHOLE_LENGTH}"
        r"(?P<slip>\s*(?:,|=|\bfor\b)\s*)[$€£¥]?\d+\.\d\d\b",
        wanted="“at” before the price of one stick",
        remedy="Write {} there, and what one stick cost.",
        instead=lambda _: " at ",
    ),
    slip(
        ("rack base: none", "rack base: nothing"),
        ("rack base: empty", "rack base: nothing"),
        written=r"^\s*rack\b[^:]*:\s*(?P<slip>none|empty|0|no|nil)(?=\s*(?:#|$))",
        wanted="“nothing”",
        remedy="Write {}.",
        instead=lambda _: "nothing",
    ),
)
"""What is written on the site of what was done, and how the log says it."""
