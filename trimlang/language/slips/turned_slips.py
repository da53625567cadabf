"""Slips in which a line is turned round: its price, its number or its name before its own word."""

from __future__ import annotations

import re
from difflib import get_close_matches
from typing import Final

from trimlang.language.slips.slip_row import (
    ANY_NAME,
    END_OF_PART,
    GAP,
    JOINT_WORD,
    WALL_NAME,
    WHOLE_LENGTH,
    Found,
    slip,
)
from trimlang.language.vocabulary import words_after

_STICK: Final = r"\d+(?: ?ft \d+(?: \d+/\d+)?)? ?(?:ft|feet|in|inches|mm|cm|m\b|['\"″′])"
_MONEY: Final = r"(?:[$€£¥] ?\d+(?:\.\d\d?)?|\d+\.\d\d)"
"""A price by its look alone: with a currency's sign, or with cents."""
_PRICE_FIRST: Final = rf"(?:at\s+{_MONEY}|at\s+\d+|{_MONEY})\s*[-–:=]?\s*{_STICK}"
_EACH: Final = re.compile(
    rf"(?:at\s+)?(?P<price>[$€£¥]? ?\d+(?:\.\d\d?)?)\s*[-–:=]?\s*(?P<long>{_STICK})", re.IGNORECASE
)
_QUOTED: Final = r"[\"“][^\"“”]*[\"”]"
_ALIKE: Final = 0.75


def _length_first(found: Found) -> str:
    return ", ".join(
        f"{one['long']} at {one['price'].strip()}" for one in _EACH.finditer(found["slip"])
    )


def _known(word: str) -> bool:
    """Tell whether a word may follow a room's name, or is spelled much like one that may."""
    known = [*words_after('room "x"'), *words_after('room "x",')]
    return bool(get_close_matches(word.casefold(), known, n=1, cutoff=_ALIKE))


def _trims(words: str) -> str:
    names = [one for one in re.split(r"[\s,&+]+", words) if one and one.casefold() != "and"]
    return f"trim {', '.join(names)}"


def _name_first(found: Found) -> str | None:
    said, name = found["parts"].strip(), found["name"]
    first = said.split()[0].casefold()
    if first == "as":
        return f"{name} {said}"
    if _known(first):
        return f"{name}, {said}"
    # A word in capitals is more likely a part of the room's name than a trim.
    return f"{name}, {_trims(said)}" if said.islower() else None


def _trims_behind(found: Found) -> str | None:
    words = found["names"].split()
    return None if _known(words[0]) else f", {_trims(found['names'])}"


TURNED_SLIPS: Final = (
    slip(
        ("stock base: at 17.40 12 ft", "stock base: 12 ft at 17.40"),
        ("stock base: 17.40 12 ft", "stock base: 12 ft at 17.40"),
        (
            "stock base: $17.40 - 12 ft, $24.10 - 16 ft at most 6",
            "stock base: 12 ft at $17.40, 16 ft at $24.10 at most 6",
        ),
        ("stock base: at 17 12 ft", "stock base: 12 ft at 17"),
        written=rf"^\s*stock\b[^:]*:\s*(?P<slip>{_PRICE_FIRST}(?:\s*,\s*{_PRICE_FIRST})*)"
        r"(?=\s*(?:,|#|$|at most))",
        wanted="the length before its price",
        remedy="Write {}.",
        instead=_length_first,
    ),
    slip(
        ("stock base at 17.40: 12 ft", "stock base: 12 ft at 17.40"),
        ("at 17.40 stock base: 12 ft", "stock base: 12 ft at 17.40"),
        written=rf"^\s*(?P<slip>(?:stock\s+(?P<one>{ANY_NAME})\s*:?\s*at\s+(?P<price>[$€£¥]?\d[\d.]*)"
        rf"|at\s+(?P<first>[$€£¥]?\d[\d.]*)\s*,?\s*stock\s+(?P<two>{ANY_NAME}))\s*:?\s*"
        rf"(?P<long>{_STICK})){END_OF_PART}",
        wanted="the trim, its length, and then the price",
        remedy="Write {}.",
        instead=lambda found: (
            f"stock {found['one'] or found['two']}: {found['long']}"
            f" at {found['price'] or found['first']}"
        ),
    ),
    slip(
        ("stock 12 ft base at 17.40", "stock base: 12 ft at 17.40"),
        ("on-hand 40 1/2 in base", "on-hand base: 40 1/2 in"),
        ("on-hand 2 of 40 in base", "on-hand base: 2 of 40 in"),
        written=rf"^\s*(?:stock|on-hand)\s+(?P<slip>:?\s*(?P<long>(?:\d+ of )?{WHOLE_LENGTH})\s+"
        rf"(?:of\s+)?(?P<name>(?!at\b){ANY_NAME})(?:\s*:)?)(?=\s*(?:,|#|$|at\b))",
        wanted="the trim's name before the length",
        remedy="Write {}.",
        instead=lambda found: f"{found['name']}: {found['long'].strip()}",
    ),
    slip(
        ("base 12 ft at 17.40", "stock base: 12 ft at 17.40"),
        ("base: 12 ft at 17.40, 16 ft at 24.10", "stock base: 12 ft at 17.40, 16 ft at 24.10"),
        written=rf"^\s*(?P<slip>(?P<name>(?!stock\b|at\b){ANY_NAME})\s*:?\s*(?P<long>{_STICK}))"
        rf"(?=\s+at\s+{_MONEY})",
        wanted="the line of what is sold, which begins with stock",
        remedy="Write {}.",
        instead=lambda found: f"stock {found['name']}: {found['long']}",
    ),
    slip(
        ('room trim base, "Den"', 'room "Den", trim base'),
        ('room base "Den"', 'room "Den", trim base'),
        ('room as D "Den", trim base', 'room "Den" as D, trim base'),
        ('room ends in, trim base, "Den", open walk', 'room "Den", ends in, trim base, open walk'),
        written=rf"^\s*room\s+(?P<slip>(?P<parts>[^\"“#]*[^\"“#,\s])\s*,?\s*(?P<name>{_QUOTED}))",
        wanted="the room's name first",
        remedy="Write room {}.",
        instead=_name_first,
    ),
    slip(
        ('room "Den" base', 'room "Den", trim base'),
        ('room "Den" base shoe, ends in', 'room "Den", trim base, shoe, ends in'),
        ('room "Den" base and shoe', 'room "Den", trim base, shoe'),
        written=rf"^\s*room\s+{_QUOTED}(?P<slip>\s+(?P<names>{ANY_NAME}(?:(?:\s*[&+]\s*|\s+){ANY_NAME})*))"
        rf"{END_OF_PART}",
        wanted="a comma, and “trim” before the trim's name",
        remedy="Write {}.",
        instead=_trims_behind,
    ),
    slip(
        ('"Quince Row" job', 'job "Quince Row"'),
        ("2026-04-18 surveyed", "surveyed 2026-04-18"),
        ("mm unit", "unit mm"),
        ("10 % spare", "spare 10 %"),
        ("8.25 % tax", "tax 8.25 %"),
        written=rf"^\s*(?P<slip>(?P<said>{_QUOTED}|\d{{4}}-\d\d-\d\d|\d[\d.]* ?%|in|mm)\s*,?\s*"
        r"(?P<word>job|surveyed|units?|spare|tax))(?=\s*(?:#|$))",
        wanted="the word first",
        remedy="Write {}.",
        instead=lambda found: f"{found['word'].removesuffix('s')} {found['said']}",
    ),
    slip(
        ('"to hall" door 32', 'door "to hall" 32'),
        ('N 10 ft, "closet" opening 30 in, E 8 ft', 'N 10 ft, opening "closet" 30 in, E 8 ft'),
        ('32 in "to hall" door', 'door "to hall" 32 in'),
        written=rf"(?:^|,)\s*(?P<slip>(?P<name>{_QUOTED})\s*,?\s*(?P<kind>{GAP})\s+(?P<long>{WHOLE_LENGTH})"
        rf"|(?P<width>{WHOLE_LENGTH})\s*(?P<called>{_QUOTED})\s*(?P<what>{GAP})){END_OF_PART}",
        wanted="what it is first, and then its name",
        remedy="Write {}.",
        instead=lambda found: (
            f"{found['kind'] or found['what']} {found['name'] or found['called']}"
            f" {(found['long'] or found['width']).strip()}"
        ),
    ),
    slip(
        ("in left, N 10 ft", "N 10 ft, left=in"),
        ('note "bowed", N: 10 ft 2', 'N: 10 ft 2, note "bowed"'),
        written=rf"^\s*(?P<slip>(?:(?P<joint>{JOINT_WORD})\s+(?P<side>left|right)|(?P<note>note\s+{_QUOTED}))"
        rf"\s*,?\s*(?P<wall>{WALL_NAME}\s*:?\s*{WHOLE_LENGTH})){END_OF_PART}",
        wanted="the wall first",
        remedy="Write {}.",
        instead=lambda found: (
            f"{found['wall'].strip()}, " + (found["note"] or f"{found['side']}={found['joint']}")
        ),
    ),
)
"""Lines turned round, and how they stand in a job file."""
