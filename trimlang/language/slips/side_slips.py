"""Slips in how walls end and go on: sides, corners and signs as one jots them on a pad."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from trimlang.language.slips.slip_row import (
    BEHIND_A_LENGTH,
    END_OF_PART,
    GAP,
    JOINT_WORD,
    WALL_NAME,
    Found,
    parted_from,
    slip,
)

_MEANT: Final = {
    "cope": "in-corner cope",
    "coped": "in-corner cope",
    "returned": "return",
    "returns": "return",
    "free": "open",
    "square": "butt",
    "squared": "butt",
    "butted": "butt",
    "butts": "butt",
}
"""What is jotted of an end, and the joint that is meant."""
_ENDS: Final = rf"(?:{'|'.join(_MEANT)}|{JOINT_WORD})"
_JOTTED: Final = rf"(?P<joint>{_ENDS})(?:[ -]end)?"
_SIDE: Final = r"(?P<side>left|right)"


_GOES_ON: Final = (
    rf"{BEHIND_A_LENGTH}(?P<slip>\s*(?:/|&|\+|\||->|→|[-–—]|then|and)\s+)"
    rf"(?={WALL_NAME}\s+\d|{GAP}\s)"
)
_NEXT: Final = re.compile(_GOES_ON, re.IGNORECASE)
_FIGURE_WITH_UNIT: Final = r"\d+ ?(?:ft|feet|'|in\b|mm\b|m\b)"
_TIGHT: Final = re.compile(rf"\b(?P<wall>[NESW])[-–]?(?={_FIGURE_WITH_UNIT})")


def _side_said(found: Found) -> str | None:
    joint = found["joint"].casefold()
    if joint == "level":
        # “level left” is a level return that lacks its length, and no end.
        return None
    return f"{parted_from(found)}{found['side']}={_MEANT.get(joint, found['joint'])}"


def _both(jotted: str) -> str:
    joint = _MEANT.get(jotted.casefold(), jotted)
    return f"left={joint}, right={joint}"


def _in_a_list(found: Found) -> str:
    before = found.string[: found.start("slip")].rstrip()
    comma = "" if before.endswith((",", ":")) else ", "
    return f"{comma}left={found['left']}, right={found['right']}"


_END_ROWS: Final = (
    slip(
        ("N: 10 ft 2 1/4, in/out", "N: 10 ft 2 1/4, left=in, right=out"),
        ("N: 40 in ic, oc", "N: 40 in, left=ic, right=oc"),
        ("N: 40 in in / butt", "N: 40 in, left=in, right=butt"),
        written=rf"(?:,\s*|{BEHIND_A_LENGTH}\s+)(?P<slip>(?P<left>{JOINT_WORD}|ic|oc)\s*(?:/|,|\|)"
        rf"\s*(?P<right>{JOINT_WORD}|ic|oc))"
        rf"{END_OF_PART}",
        wanted="each end by its side",
        remedy="Write {}.",
        instead=_in_a_list,
    ),
    slip(
        ("N: 40 in, in-corner both ends", "N: 40 in, left=in-corner, right=in-corner"),
        ("N: 40 in, butt both", "N: 40 in, left=butt, right=butt"),
        ("N: 40 in, ends square", "N: 40 in, left=butt, right=butt"),
        ("N: 40 in, both ends butt", "N: 40 in, left=butt, right=butt"),
        written=rf",\s*(?P<slip>(?P<one>{_ENDS})\s+(?:at |on )?both(?:\s+(?:ends|sides))?"
        rf"|(?:both |all )?ends\s+(?P<two>{_ENDS})){END_OF_PART}",
        wanted="each end by its side",
        remedy="Write {}.",
        instead=lambda found: _both(found["one"] or found["two"]),
    ),
    slip(
        ("N 40, coped right", "N 40, right=in-corner cope"),
        ("N: 40 in, left=in, returned right", "N: 40 in, left=in, right=return"),
        ("N 40, free end right, E 30", "N 40, right=open, E 30"),
        ("N: 40 in square left, right=in", "N: 40 in, left=butt, right=in"),
        written=rf"(?:(?<=,)|{BEHIND_A_LENGTH})\s*(?P<slip>{_JOTTED}\s+(?:(?:on|at)\s+)?(?:the\s+"
        rf")?{_SIDE}(?: end| side)?)"
        r"(?=\s*(?:,|#|$)|\s+(?:left|right)\b)",
        wanted="the side first",
        remedy="Write {}.",
        instead=_side_said,
    ),
    slip(
        ("N 40, right cope", "N 40, right=in-corner cope"),
        ("N 40, right returns", "N 40, right=return"),
        ("N: 40 in left square, right=in", "N: 40 in, left=butt, right=in"),
        ("N: 40 in, left - in, right=out", "N: 40 in, left=in, right=out"),
        ("N: 40 in, left is in, right=out", "N: 40 in, left=in, right=out"),
        written=rf"(?:(?<=[,:])|{BEHIND_A_LENGTH})\s*(?P<slip>{_SIDE}(?: end| side)?\s*(?:-|–|>|is|"
        rf":|\s)\s*{_JOTTED})"
        r"(?=\s*(?:,|#|$)|\s+(?:left|right)\b)",
        wanted="“=” behind the side",
        remedy="Write {}.",
        instead=_side_said,
    ),
    slip(
        ("N 40, open end", None),
        ("N 40, square end, E 30", None),
        written=rf",\s*(?P<slip>{_ENDS}[ -]end){END_OF_PART}",
        wanted="which end it is",
        remedy="An end says its side: left=open or right=open.",
        instead=None,
    ),
    slip(
        ("N: 40 in, inside corners", "N: 40 in, left=inside, right=inside"),
        written=rf",\s*(?P<slip>(?P<joint>inside|outside|in|out) corners){END_OF_PART}",
        wanted="each end by its side",
        remedy="Write {}.",
        instead=lambda found: _both(found["joint"]),
    ),
    slip(
        ("N10 ft, E8 ft", "N 10 ft, E 8 ft"),
        ("N10' 2\", E8'", "N 10' 2\", E 8'"),
        ("N-10 ft, E-8 ft", "N 10 ft, E 8 ft"),
        # With a unit behind it the figure is a length: N2 by itself is a wall's name.
        written=rf"^\s*(?P<slip>[NESW][-–]?(?={_FIGURE_WITH_UNIT}))(?P<rest>[^#]*)",
        wanted="a blank between a wall's name and its length",
        remedy="Put a blank there.",
        instead=lambda found: _TIGHT.sub(r"\g<wall> ", found["slip"] + found["rest"]),
    ),
    slip(
        ("1. 10 ft 2", "1: 10 ft 2"),
        ("2. 8 ft, left=in, right=in", "2: 8 ft, left=in, right=in"),
        written=r"^\s*\d{1,2}(?P<slip>\.\s+)(?=\d)",
        wanted="a colon behind the wall's number",
        remedy="Write a colon there.",
        instead=lambda _: ": ",
    ),
    slip(
        ("wall 1: 10 ft 2", "1: 10 ft 2"),
        ("wall 1 10 ft 2", "1: 10 ft 2"),
        ("wall 12 = 8 ft", "12: 8 ft"),
        written=r"^\s*(?P<slip>wall\s+(?P<number>\d{1,2})\s*[:=]?\s*)(?=\d)",
        wanted="the wall's number and a colon",
        remedy="Write {}",
        instead=lambda found: f"{found['number']}: ",
    ),
    slip(
        ("N 10 ft then door 32", "N 10 ft, door 32"),
        ("N 10 ft / E 8 ft / S 10 ft", "N 10 ft, E 8 ft, S 10 ft"),
        ("N 10 ft & E 8 ft", "N 10 ft, E 8 ft"),
        ("N 10 ft -> E 8 ft", "N 10 ft, E 8 ft"),
        written=rf"{_GOES_ON}(?P<rest>[^#]*)",
        wanted="a comma before the next wall",
        remedy="Put a comma there.",
        instead=lambda found: f", {_NEXT.sub(', ', found['rest'])}",
    ),
    slip(
        ("N 10 ft to casing, E 8 ft", "N 10 ft, E 8 ft"),
        ("N: 40 in to the door", "N: 40 in"),
        written=rf"(?:^|,)\s*(?!{GAP}\b){WALL_NAME}\s*:?\s*\d[^,#]*?(?P<slip>\s+(?:to|up to|"
        rf"till)\s+(?:the\s+)?[^\W\d_]+(?: [^\W\d_]+)?){END_OF_PART}",
        wanted="the length alone",
        remedy="What stands there is a line or part of its own, such as door 32: leave that out.",
        instead=lambda _: "",
    ),
    slip(
        ('N: 122 1/4" (10\' 2 1/4")', 'N: 122 1/4"'),
        ("N 122 1/4 (= 10 ft 2 1/4), E 30", "N 122 1/4, E 30"),
        written=rf"{BEHIND_A_LENGTH}(?P<slip>\s*\(\s*=?\s*\d[^()]*\))(?=\s*(?:,|#|$))",
        wanted="one length",
        remedy="Leave out what is in brackets.",
        instead=lambda _: "",
    ),
    slip(
        ("N 40 ?, E 30", "N 40, E 30"),
        ("N: 40 in??, left=in, right=in", "N: 40 in, left=in, right=in"),
        written=rf"{BEHIND_A_LENGTH}(?P<slip>\s*[?!~≈]+)(?=\s*(?:,|#|$))",
        wanted="a length that is sure",
        remedy="Measure it again, and leave that out.",
        instead=lambda _: "",
    ),
    slip(
        ('N 40 "check again", E 30', 'N 40, note "check again", E 30'),
        ('N: 40 in note: check', 'N: 40 in, note "check"'),
        written=rf"^\s*{WALL_NAME}\s*:?\s*\d[^,#]*?(?P<slip>\s+(?:note\s*:?\s*(?"
        rf"P<word>[^\s\",#][^\",#]*?)|\"(?P<text>[^\"#]*[^\W\d_][^\"#]*)\"))"
        rf"{END_OF_PART}",
        wanted="a comma and the word note before a remark",
        remedy="Write {}.",
        instead=lambda found: f', note "{found["word"] or found["text"]}"',
    ),
    slip(
        ("N: 40 in, trim base only", "N: 40 in, trim base"),
        ("N: 40 in, base only", "N: 40 in, trim base"),
        ("N: 40 in, only base", "N: 40 in, trim base"),
        written=rf",\s*(?P<slip>(?:trim\s+)?(?P<one>[^\W\d_][\w\-]*)\s+only|only\s+(?:trim\s+)?"
        rf"(?P<two>[^\W\d_][\w\-]*)){END_OF_PART}",
        wanted="the trims that this wall gets",
        remedy="Write {}: a wall that names trims gets no others.",
        instead=lambda found: f"trim {found['one'] or found['two']}",
    ),
    slip(
        ("N: 40 in, leave out shoe", "N: 40 in, no shoe"),
        ("N: 40 in, drop the shoe", "N: 40 in, no shoe"),
        written=r",\s*(?P<slip>(?:leave (?:out|off)|drop|not)(?:\s+the)?)(?= +[^\W\d_])",
        wanted="“no” before a trim that is left out",
        remedy="Write {}.",
        instead=lambda _: "no",
    ),
    slip(
        ("N: 40 in, splice ok", "N: 40 in, splice"),
        ("N: 40 in, splice allowed", "N: 40 in, splice"),
        written=rf",\s*splice(?P<slip>\s+(?:ok|okay|allowed|fine|yes|here)){END_OF_PART}",
        wanted="“splice” alone",
        remedy="Leave that out.",
        instead=lambda _: "",
    ),
)  # fmt: skip

SIDE_SLIPS: Final = tuple(replace(row, of_walls=True) for row in _END_ROWS)
"""What people jot of ends and corners, and of what goes on behind a wall."""
