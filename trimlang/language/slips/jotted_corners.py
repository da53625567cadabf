"""Slips in the corner between two walls: angles without a joint, joints without commas or sides."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.language.slips.slip_row import (
    AT_A_SIDE,
    BEHIND_A_LENGTH,
    END_OF_PART,
    GAP,
    JOINT_WORD,
    WALL_NAME,
    Found,
    parted_from,
    slip,
)

_CORNER: Final = r"(?:(?:in|out)(?:side)?(?:[ -]corner)?|ic|oc)"
_ANGLE: Final = r"(?P<angle>\d[\d.]*(?: [1-9]/[1-9]\d?)?)"
_DEG: Final = r"(?: ?(?:deg(?:rees?)?\b\.?|°))"
_MITRED: Final = r"(?:mit(?:re|er)(?:e?d)?|gehrung|inglete|onglet)"
_UNPARTED: Final = (
    r"(?:(?<=\d)(?=\s+(?!in\b))|(?<=[¼½¾⅐-⅞'\"″′])|(?<=ft)|(?<=feet)|(?<=\din)|(?<=\d in)|(?<=mm))"
    rf"\s+(?P<slip>(?P<joint>{_CORNER})\s+)(?={WALL_NAME}\s*\d|{GAP}\b)"
)
"""A corner between two walls without a comma; behind a bare number “in” is its unit."""
_NEXT: Final = re.compile(_UNPARTED, re.IGNORECASE)
_SAID: Final = re.compile(r"\b(left|right)\s*=", re.IGNORECASE)
_A_LINE_OF_ITS_OWN: Final = re.compile(r"\s*\w[\w.\-]*\s*:")
_SHARPEST: Final = 60
"""Degrees; a smaller number is more often how far the saw turns than a corner of walls."""


def _where_it_stands(found: Found, *ends: str) -> tuple[str, ...]:
    """Return how the line says such an end: between walls without a side, else of each side."""
    comma = parted_from(found)
    if not _A_LINE_OF_ITS_OWN.match(found.string):
        return tuple(f"{comma}{end}" for end in ends)
    said = {side.casefold() for side in _SAID.findall(found.string)}
    free = [side for side in ("left", "right") if side not in said]
    return tuple(f"{comma}{side}={end}" for side in free for end in ends)


def _either(found: Found) -> tuple[str, ...] | None:
    whole, _, part = found["angle"].rstrip(".").partition(" ")
    angle = f"{whole} {part}".strip()
    wide = Fraction(whole) + Fraction(part or 0) > _SHARPEST
    return (f"in({angle})", f"out({angle})") if wide else None


def _either_corner(found: Found) -> tuple[str, ...] | None:
    either = _either(found)
    return either and (_where_it_stands(found, *either) or None)


def _parted(found: Found) -> str:
    text = found.string[: found.end("rest")]
    return _NEXT.sub(r", \g<joint>, ", text)[found.start() :]


def _at_its_side(found: Found) -> str:
    joint = found["one"] or found["two"] or found["three"]
    side = found["of_one"] or found["of_two"] or found["of_three"]
    return f"{parted_from(found)}{side}={joint}"


_CORNER_ROWS: Final = (
    slip(
        ("N 40, 135 deg, E 30", ("N 40, in(135), E 30", "N 40, out(135), E 30")),
        (
            "N: 40 in, left=butt, 91.5 deg",
            ("N: 40 in, left=butt, right=in(91.5)", "N: 40 in, left=butt, right=out(91.5)"),
        ),
        ("N 40, 91 corner, E 30", ("N 40, in(91), E 30", "N 40, out(91), E 30")),
        ("N 40, corner 91, E 30", ("N 40, in(91), E 30", "N 40, out(91), E 30")),
        written=rf",\s*(?P<slip>(?P<of>corner:? +)?{_ANGLE}"
        rf"(?(of){_DEG}?|(?:{_DEG}|{_DEG}? corner))){END_OF_PART}",
        wanted="which corner has that angle",
        remedy="Write {}, as the wall turns there.",
        instead=_either_corner,
    ),
    slip(
        ("N 10 ft @ 91, E 8 ft", ("N 10 ft, in(91), E 8 ft", "N 10 ft, out(91), E 8 ft")),
        ("N 10 ft 2 at 91 deg", ("N 10 ft 2, in(91)", "N 10 ft 2, out(91)")),
        ("N 10 ft 91 deg, E 8 ft", ("N 10 ft, in(91), E 8 ft", "N 10 ft, out(91), E 8 ft")),
        (
            "N: 40 in @ 91, left=butt",
            ("N: 40 in, right=in(91), left=butt", "N: 40 in, right=out(91), left=butt"),
        ),
        # Without a sign before it only the word behind it tells an angle from inches.
        written=rf"(?:^|,)\s*{WALL_NAME}\s*:?\s*\d[^#,]*?{BEHIND_A_LENGTH}(?!\d)"
        rf"(?P<slip>\s*(?P<mark>@|\bat\b)?\s*{_ANGLE}(?(mark){_DEG}?|{_DEG})){END_OF_PART}",
        wanted="which corner has that angle",
        remedy="Write {}, as the wall turns there.",
        instead=_either_corner,
    ),
    slip(
        ("N 40, 45 corner, E 30", None),
        ("N 40 @ 45, E 30", None),
        written=r"(?:,\s*(?=[^,#]*(?:deg|°|corner))|(?:@|\bat)\s*)"
        rf"(?P<slip>\d[\d.]*{_DEG}?(?: corner)?){END_OF_PART}",
        wanted="which corner has that angle",
        remedy="The angle between the walls is asked, not the saw's: write in(135) or out(135), as"
        " the wall turns there.",
        instead=None,
    ),
    slip(
        ("N: 40 in, right=91", ("N: 40 in, right=in(91)", "N: 40 in, right=out(91)")),
        ("N: 40 in, left=91.5 deg", ("N: 40 in, left=in(91.5)", "N: 40 in, left=out(91.5)")),
        written=rf"{AT_A_SIDE}(?P<slip>{_ANGLE}{_DEG}?){END_OF_PART}",
        wanted="which corner has that angle",
        remedy="Write {}, as the wall turns there.",
        instead=_either,
    ),
    slip(
        ("N: 40 in, right=91 in-corner", "N: 40 in, right=in-corner(91)"),
        ("N: 40 in, left=135° out", "N: 40 in, left=out(135)"),
        ("N 40, 91 deg in, E 30", "N 40, in(91), E 30"),
        # Without its unit a number before “in” is a length.
        written=rf"(?:{AT_A_SIDE}|,\s*(?=[^,#]*(?:deg|°)))(?P<slip>{_ANGLE}{_DEG}?\s+(?P<joint>{_CORNER})"
        rf"|(?P<before>{_CORNER})\s+(?:deg(?:rees)?|°|angle)\s*(?P<behind>\d[\d.]*)"
        rf"){END_OF_PART}",
        wanted="the corner, and its angle in brackets",
        remedy="Write {}.",
        instead=lambda found: (
            f"{found['joint'] or found['before']}({found['angle'] or found['behind']})"
        ),
    ),
    slip(
        ("N: 40 in, right=mitered", ("N: 40 in, right=in-corner", "N: 40 in, right=out-corner")),
        (
            "N: 40 in, left=mitre(91), right=butt",
            (
                "N: 40 in, left=in-corner(91), right=butt",
                "N: 40 in, left=out-corner(91), right=butt",
            ),
        ),
        ("ends mitred", ("ends in-corner", "ends out-corner")),
        written=rf"(?:{AT_A_SIDE}|\bends\s+)(?P<slip>{_MITRED}(?: +(?:corner|joint|end))?)"
        r"(?=\s*(?:[,(#]|$))",
        wanted="which corner it is",
        # A mitre closes either of the two, and only the writer knows which way the wall turns.
        remedy="A mitre closes a corner: write {}, as the wall turns there.",
        instead=lambda _: ("in-corner", "out-corner"),
    ),
    slip(
        ("N 40, mitre left", ("N 40, left=in", "N 40, left=out")),
        ("N 40, left mitred", ("N 40, left=in", "N 40, left=out")),
        written=rf"(?P<slip>\b{_MITRED}\s+(?P<side>left|right)"
        rf"|\b(?P<first>left|right)\s+{_MITRED}){END_OF_PART}",
        wanted="which corner it is",
        remedy="A mitre closes a corner: write {}, as the wall turns there.",
        instead=lambda found: tuple(
            f"{found['side'] or found['first']}={end}" for end in ("in", "out")
        ),
    ),
    slip(
        ("N 10 ft IN E 8 ft, S 10 ft", "N 10 ft, IN, E 8 ft, S 10 ft"),
        ("N 10' out E 8' in door 32", "N 10', out, E 8', in, door 32"),
        ("N 40 1/2 inside corner E 8 ft", "N 40 1/2, inside corner, E 8 ft"),
        written=rf"{_UNPARTED}(?P<rest>[^#]*)",
        wanted="commas round the corner between two walls",
        remedy="Write “{}”.",
        instead=_parted,
    ),
    slip(
        ("E 8 ft, corner in right", "E 8 ft, right=in"),
        ("E: 8 ft, left=butt, right corner out", "E: 8 ft, left=butt, right=out"),
        ("E 8 ft, corner right inside, S 9 ft", "E 8 ft, right=inside, S 9 ft"),
        ("E 8 ft corner in on the right", "E 8 ft, right=in"),
        written=rf"(?:(?<=,)|{BEHIND_A_LENGTH})\s*(?P<slip>corner:?\s+(?P<one>{JOINT_WORD})\s+"
        r"(?:(?:on|at)\s+)?(?:the\s+)?(?P<of_one>left|right)"
        rf"|(?P<of_two>left|right)\s+corner\s*(?:is|:|=)?\s*(?P<two>{JOINT_WORD})"
        rf"|corner\s+(?P<of_three>left|right)\s*(?:is|:|=)?\s*(?P<three>{JOINT_WORD})){END_OF_PART}",
        wanted="the side, and then how that end is cut",
        remedy="Write {}.",
        instead=_at_its_side,
    ),
    slip(
        ("E 8 ft, corner out, S 10 ft", "E 8 ft, out, S 10 ft"),
        ("E 8 ft, corner: in, S 10 ft", "E 8 ft, in, S 10 ft"),
        written=rf",\s*(?P<slip>corner:?\s+(?P<joint>{_CORNER})){END_OF_PART}",
        wanted="the corner alone",
        remedy="Write {}.",
        instead=lambda found: _where_it_stands(found, found["joint"]) or None,
    ),
)

JOTTED_CORNERS: Final = tuple(replace(row, of_walls=True) for row in _CORNER_ROWS)
"""How corners are jotted between walls, and how a job file says them."""
