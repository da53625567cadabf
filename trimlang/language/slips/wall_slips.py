"""Slips in lists of walls and openings, as one writes them off a pad."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from trimlang.language.slips.slip_row import (
    END_OF_PART,
    GAP,
    JOINT_WORD,
    WRITTEN_LENGTH,
    Found,
    slip,
)
from trimlang.language.vocabulary import BESIDE_A_MARK

_BESIDE: Final = "|".join(sorted(BESIDE_A_MARK))
_NAME: Final = (
    r"(?!(?:and|by|x|for|off|of|to|at|in|inch|inches|ft|feet|foot|mm|cm|m|deg)\b)[^\W\d_][\w.\-]*"
)
_WORDS: Final = r"[^\W\d_][\w\-]*(?: [^\W\d_][\w\-]*)*?"
_COLON: Final = re.compile(r"(?P<name>(?:^\s*|,\s*)[^\W\d_][\w.\-]*)\s*:\s*(?=\d)")
_BEHIND_A_LENGTH: Final = (
    r"(?:(?<=[\d⅛¼⅜½⅝¾⅞'\"])|(?<=\dft)|(?<=\d ft)|(?<=\din)|(?<=\d in)|(?<=\dmm)|(?<=\d mm))"
)
_NEXT_WALL: Final = re.compile(rf"{_BEHIND_A_LENGTH}\s+(?P<name>{_NAME})(?=\s+\d)")
_UNIT: Final = r"(?:in|inch|ft|feet|mm|cm|m)"


def _parted(found: Found) -> str:
    # Who leaves one comma out leaves out those behind it as well.
    more = _NEXT_WALL.sub(r", \g<name>", found["rest"])
    return f", {found['slip']}{more}"


def _no_colons(found: Found) -> str:
    return _COLON.sub(lambda one: f"{one['name']} ", found["slip"])


WALL_SLIPS: Final = (
    slip(
        ("stock base: 8 ft 12 ft, 16 ft at 24.10", "stock base: 8 ft, 12 ft, 16 ft at 24.10"),
        # Both lengths have a unit: “8 ft 6 in” is one length, but no stick is “8 ft 12 ft”.
        written=rf"^\s*(?:stock|on-hand)\b[^#]*?\d ?{_UNIT}\s+(?P<slip>\d+)(?= ?{_UNIT}\b)",
        wanted="a comma between two lengths",
        remedy="Put a comma before the second length.",
        instead=lambda found: f", {found['slip']}",
    ),
    slip(
        ("N: 10 ft, E: 8 ft, S 10 ft", "N 10 ft, E 8 ft, S 10 ft"),
        ("N 10 ft, E: 8 ft", "N 10 ft, E 8 ft"),
        ("N: 10 ft, E 8 ft", "N 10 ft, E 8 ft"),
        # A wall in a line of its own has a colon and its ends behind it; of several in one line
        # each is a name and a length.
        written=r"^\s*(?P<slip>[^\W\d_][\w.\-]* ?(?:: ?\d[^,:#]*,(?: ?\w+ \d[^,:#]*,)*"
        r"|\d[^,:#]*,(?=[^#]*:)) ?[^\W\d_][\w.\-]*(?: ?:)? ?\d[^#]*(?<! ))",
        wanted="walls without colons, where several stand in a line",
        remedy="Leave the colons out: write {}.",
        instead=_no_colons,
    ),
    slip(
        ("N 10 ft, door to hall, 32, E 8 ft", "N 10 ft, door to hall 32, E 8 ft"),
        ("opening closet, 41 1/4", "opening closet 41 1/4"),
        # Only a number up to the next comma: a word behind it would make it another wall.
        written=rf"\b(?P<slip>(?P<name>{GAP} {_WORDS}),\s*(?P<width>\d[^,#]*?))(?=\s*(?:,|#|$))",
        wanted="the width right behind the name",
        remedy="Take the comma out: write {}.",
        instead=lambda found: f"{found['name']} {found['width']}",
    ),
    slip(
        ("N 10 ft, door 32 in to hall, E 8 ft", "N 10 ft, door to hall 32 in, E 8 ft"),
        ("door 32 to hall", "door to hall 32"),
        written=rf"\b(?P<slip>(?P<kind>{GAP}) (?P<width>\d[\d./ ]*?(?: ?(?:in|ft|mm|cm|m))?)"
        rf" (?P<name>(?:to|from|into|by|at|of)\b {_WORDS}))(?=\s*(?:,|#|$))",
        wanted="the name before the width",
        remedy="Write {}.",
        instead=lambda found: f"{found['kind']} {found['name']} {found['width']}",
    ),
    slip(
        ("N 10 ft, 32 in door to hall, E 8 ft", "N 10 ft, door to hall 32 in, E 8 ft"),
        ("N 10 ft, 32 door, E 8 ft", "N 10 ft, door 32, E 8 ft"),
        written=rf"(?<=,)\s*(?P<slip>(?P<width>{WRITTEN_LENGTH})\s*(?P<name>{GAP}(?: {_WORDS})?))"
        r"(?=\s*(?:,|#|$))",
        wanted="what it is before its width",
        remedy="Write {}.",
        instead=lambda found: f"{found['name']} {found['width'].strip()}",
    ),
    slip(
        (
            "N 10 ft, door 32in x 80in, casing case, E 8 ft",
            "N 10 ft, door 32in, height 80in, casing case, E 8 ft",
        ),
        (
            "window 36 x 48, casing case",
            "window 36, height 48, casing case",
        ),
        # The width comes first, as doors and windows are sold.
        written=rf"\b(?:door|window|opening)\b[^,]*?\d ?{_UNIT}?(?P<slip>\s*(?:x|by|×)\s*)(?=\d)",
        wanted="the height behind the word height",
        remedy="Write the height as a part of its own.",
        instead=lambda _: ", height ",
    ),
    slip(
        ("N 10 ft, door, E 8 ft", None),
        ("opening to hall", None),
        ("window garden, N 10 ft", None),
        written=rf"(?:^|,)\s*(?P<slip>{GAP}(?: {_WORDS})?)(?=\s*(?:,|#|$))",
        wanted="its width",
        remedy="Measure how wide it is, and write that behind it: door 32 in.",
        # Only the tape can tell.
        instead=None,
    ),
    slip(
        ("N: 10 ft - 7.25", "N: 10 ft 7.25"),
        written=r"(?:ft|feet|')(?P<slip>\s+[‐-–-]\s+)(?=\d+\.\d\d)",
        wanted="the inches right behind the feet",
        remedy="Leave the dash out.",
        instead=lambda _: " ",
    ),
    slip(
        ("door 2-8, N 10 ft", "door 2 ft 8, N 10 ft"),
        ("N 10-2-1/4, E 8 ft", "N 10 ft 2 1/4, E 8 ft"),
        # Two digits at most on either side: a date or a part's number has more, and stays as it is.
        written=r"(?<![\w./\-])(?P<slip>(?P<feet>\d{1,2})-(?P<inches>\d{1,2})"
        r"(?:[- ](?P<part>\d+/\d+))?)"
        r"(?![\w./\-])",
        wanted="feet and inches with ft between them",
        remedy="If feet and inches were meant, write {}.",
        instead=lambda found: (
            f"{found['feet']} ft {found['inches']}" + (f" {found['part']}" if found["part"] else "")
        ),
    ),
    slip(
        ("N 10 ft, window 36 sill 30, E 8 ft", "N 10 ft, window 36, sill 30, E 8 ft"),
        ("door 32 in hinged left", "door 32 in, hinged left"),
        written=r"(?<=[\w⅛¼⅜½⅝¾⅞])\s+"
        r"(?P<slip>sill|height|hinged|swings|casing|stool|note)(?=\s)",
        wanted="a comma before the next part",
        remedy="Put a comma there.",
        instead=lambda found: f", {found['slip']}",
    ),
    slip(
        ("N 10 ft, right return", "N 10 ft, right=return"),
        ("N: 10 ft, left outside, right=butt", "N: 10 ft, left=outside, right=butt"),
        ("N: 10 ft, left: butt, right=butt", "N: 10 ft, left=butt, right=butt"),
        written=rf"\b(?P<slip>(?P<side>left|right)\s*[ :]\s*(?P<joint>{JOINT_WORD}))\b",
        wanted="“=” behind the side",
        remedy="Write {}.",
        instead=lambda found: f"{found['side']}={found['joint']}",
    ),
    slip(
        ("N 40, return right", "N 40, right=return"),
        ("N: 40 in, left=in, out right, no shoe", "N: 40 in, left=in, right=out, no shoe"),
        written=rf",\s*(?P<slip>(?P<joint>{JOINT_WORD})\s+(?:on (?:the )?|at (?:the )?)?"
        rf"(?P<side>left|right)){END_OF_PART}",
        wanted="the side first",
        remedy="Write {}.",
        # “level left” is a level return that lacks its length, and no end.
        instead=lambda found: (
            None if found["joint"].casefold() == "level" else f"{found['side']}={found['joint']}"
        ),
    ),
    slip(
        ("N 10 ft, out 91, E 8 ft", "N 10 ft, out(91), E 8 ft"),
        ("N: 10 ft, left=butt, right=in corner 89.5", "N: 10 ft, left=butt, right=in corner(89.5)"),
        written=rf"\b(?P<slip>(?P<joint>{JOINT_WORD})\s+(?P<angle>\d[\d.]*(?: \d/\d)?))"
        r"(?=\s*(?:,|#|$))",
        wanted="brackets round the angle",
        remedy="An angle stands in brackets: write {}.",
        instead=lambda found: f"{found['joint']}({found['angle']})",
    ),
    slip(
        ("N 10 ft, E 8 ft 7 9/16 strong", "N 10 ft, E 8 ft 7 9/16"),
        ("N 29 1/8+, E 8 ft", "N 29 1/8, E 8 ft"),
        ("N: 29 1/8 in shy, left=butt, right=butt", "N: 29 1/8 in, left=butt, right=butt"),
        # The word is left out and the length kept: how far beside the mark it lies only the tape
        # can tell.
        written=rf"(?<=[\dn⅛¼⅜½⅝¾⅞\"])(?P<slip>\s*(?:{_BESIDE}|[+\-]))(?=\s*(?:,|#|$))",
        wanted="a length that stands on a mark",
        remedy="Read the tape to a finer mark, such as 29 5/32, or leave the word out.",
        instead=lambda _: "",
    ),
    slip(
        ("wall N 10 ft, E 8 ft", "N 10 ft, E 8 ft"),
        ("Wand N 3.25 m", "N 3.25 m"),
        ("run N: 10 ft, left=butt, right=butt", "N: 10 ft, left=butt, right=butt"),
        # A name and a figure must follow: “wall 10 ft” is a wall that is called so.
        written=r"^\s*(?P<slip>(?:wall|run|wand|pared|mur|muro|parete)\s+)(?=[^\W\d_][\w.\-]*\s*:?\s*\d)",
        wanted="the wall's name first",
        remedy="A wall begins with its name.",
        instead=lambda _: "",
    ),
    slip(
        ("N = 10 ft, left=butt, right=butt", "N: 10 ft, left=butt, right=butt"),
        written=r"^\s*[^\W\d_][\w.\-]*(?P<slip>\s*=\s*)(?=\d)",
        wanted="a colon behind the wall's name",
        remedy="Write a colon in the place of “=”.",
        instead=lambda _: ": ",
    ),
    slip(
        ("N 10 ft, window 30, stops the rail", "N 10 ft, window 30, stops rail"),
        ("N: 10 ft, left=butt, no the shoe", "N: 10 ft, left=butt, no shoe"),
        written=r"\b(?:stops|no|trim|and|in front of)(?P<slip> the) ",
        wanted="the trim's name",
        remedy="Leave “the” out.",
        instead=lambda _: "",
    ),
    slip(
        ("N 10 ft (closet), E 8 ft", 'N 10 ft, note "closet", E 8 ft'),
        written=r"(?<=[\w⅛¼⅜½⅝¾⅞\"])(?P<slip>\s*\((?P<text>[^()\"]*[a-z][^()\"]*)\))(?=\s*(?:,|#|$))",
        wanted="a note in quotes",
        remedy="Say it in a note.",
        instead=lambda found: f', note "{found["text"]}"' if " " in found[0][:2] else None,
    ),
    replace(
        slip(
            ("N 10 ft E 8 ft, S 10 ft", "N 10 ft, E 8 ft, S 10 ft"),
            ("N 10 ft, E 8 ft door 32", "N 10 ft, E 8 ft, door 32"),
            ("N 10' 2 1/4\" E 8' 7\" S 10' 2 1/4\"", "N 10' 2 1/4\", E 8' 7\", S 10' 2 1/4\""),
            written=rf"{_BEHIND_A_LENGTH}\s+(?P<slip>{_NAME})(?=\s+\d)(?P<rest>[^,#]*)",
            wanted="a comma before the next wall",
            remedy="Put a comma before the wall.",
            instead=_parted,
        ),
        of_walls=True,
    ),
)
