"""Slips in the order of a line's words: a side before its wall, a size before what it is of."""

from __future__ import annotations

import re
from typing import Final

from trimlang.language.slips.slip_row import END_OF_PART, WALL_NAME, WHOLE_LENGTH, Found, slip

_ENDS: Final = r"(?:(?:left|right)\s*=[^,#]*|in|out|butt)"
_LENGTH_FIRST: Final = re.compile(
    rf"(?P<gap>^|,\s*)(?P<long>{WHOLE_LENGTH})\s+(?P<name>{WALL_NAME})$", re.I
)
_BEGINS_A_ROOMS_PART: Final = re.compile(
    r"\s+(?=(?:trim|ends|taken|casing|note)\s+\S|open\s+walk\b|as\s+\S+)", re.IGNORECASE
)
_SIZES: Final = (
    r"kerf|stands|crosscuts|squares off|reaches|reads to|reveal|height|overhang|horn|lap|least"
    r"|angle|every|floor|plate|wallboard|bead|leave"
)


def _walls_named_first(found: Found) -> str:
    parts = found["slip"].split(",")
    # A part without a length, such as a corner, stays as it stands.
    named = [_LENGTH_FIRST.sub(r"\g<name> \g<long>", part.strip()) for part in parts]
    return ", ".join(named)


def _length_first(found: Found) -> str:
    return f"{found['long'].strip()}, {found['ends'].strip().rstrip(',')}"


def _wall_first(found: Found) -> str:
    return f"{found['wall'].strip()}, {found['ends'].strip().rstrip(',')}"


def _room_first(found: Found) -> str:
    return f"{found['room']}, {found['parts'].strip()}"


def _room_in_quotes(found: Found) -> str:
    name, *parts = _BEGINS_A_ROOMS_PART.split(found["slip"])
    name = name.strip("'‘’")
    # “as” belongs to the name, and stands without a comma
    said = [f" {part}" if part.casefold().startswith("as ") else f", {part}" for part in parts]
    return f'"{name}"' + "".join(said)


def _another_wall(found: Found) -> str | None:
    """Return the forgotten name: that of the wall before the opening, with the next free number."""
    before = re.findall(rf"(?:^|,)\s*({WALL_NAME})\s*:?\s*\d", found["before"], re.IGNORECASE)
    if not before:
        return None
    taken = {name.casefold() for name in re.findall(r"[^\W\d_][\w\-]*", found.string)}
    # Behind N2 comes N3, not N22.
    plain = before[-1].rstrip("0123456789")
    # The plain name stands for the first stretch, so the next one is 2.
    number = 2
    while f"{plain}{number}".casefold() in taken:
        number += 1
    return f"{plain}{number} {found['slip']}"


def _joint_alone(found: Found) -> str:
    # on a wall that does not climb a rake's gap is that of an inside corner
    level = found["joint"].casefold() == "rake" and "rising" not in found.string
    return "in-corner" if level else found["joint"]


ORDER_SLIPS: Final = (
    slip(
        ("10 ft N, 8 ft E, 10 ft S", "N 10 ft, E 8 ft, S 10 ft"),
        ("10 ft 2 1/4 N, in, 8 ft 3 E, door 32", "N 10 ft 2 1/4, in, E 8 ft 3, door 32"),
        written=rf"^\s*(?P<slip>{WHOLE_LENGTH}\s+{WALL_NAME}\s*,[^#\":=]*(?<!\s))(?=\s*(?:#|$))",
        wanted="the wall's name first",
        remedy="A wall begins with its name: write {}.",
        instead=_walls_named_first,
    ),
    slip(
        ("N: left=in, 10 ft", "N: 10 ft, left=in"),
        ("N left=out(91), right=in, 10 ft 2 1/4", "N 10 ft 2 1/4, left=out(91), right=in"),
        written=rf"^\s*{WALL_NAME}(?:\s*:\s*|\s+)(?P<slip>(?P<ends>(?:{_ENDS},\s*)+)(?P<long>{WHOLE_LENGTH}))"
        rf"{END_OF_PART}",
        wanted="the wall's length first",
        remedy="The length stands behind the wall's name: write {}.",
        instead=_length_first,
    ),
    slip(
        ("left=in, N 10 ft", "N 10 ft, left=in"),
        ("left=in, right=out, N: 10 ft 2, no splice", "N: 10 ft 2, left=in, right=out, no splice"),
        written=rf"^\s*(?P<slip>(?P<ends>(?:(?:left|right)\s*=[^,#]*,\s*)+)"
        rf"(?P<wall>{WALL_NAME}\s*:?\s*{WHOLE_LENGTH})){END_OF_PART}",
        wanted="the wall first",
        remedy="The wall stands before its ends: write {}.",
        instead=_wall_first,
    ),
    slip(
        ("N 10 ft, door 32, 8 ft 2", "N 10 ft, door 32, N2 8 ft 2"),
        (
            "N 40, N2 30, door to hall 32, 21 9/16, E 8 ft",
            "N 40, N2 30, door to hall 32, N3 21 9/16, E 8 ft",
        ),
        ("N 10 ft, 8 ft 7, S 10 ft", "N 10 ft, N2 8 ft 7, S 10 ft"),
        # Lines of the log begin with a word and a number too, and are no walls.
        written=rf"^\s*(?!(?:bought|cut|spoiled|fitted)\b)(?P<before>{WALL_NAME} ?"
        r"(?:\d[^#:=\"]*, *)?[^,#:=\"]*\d[^,#:=\"]*,) *"
        rf"(?P<slip>{WHOLE_LENGTH}){END_OF_PART}",
        wanted="the wall's name",
        remedy="Each wall has a name before its length, behind a door too: write {}.",
        instead=_another_wall,
    ),
    slip(
        ("door 32, 21 9/16, E 8 ft", None),
        ("window 36, sill 30, 8 ft 2", None),
        written=rf"^\s*(?:door|window|opening|stair|bare|cabinets|radiator|newel)\b[^#:=]*?\d[^#:=]*?,"
        rf"\s*(?P<slip>{WHOLE_LENGTH}){END_OF_PART}",
        wanted="the wall's name before its length",
        remedy="Write the wall's name there, such as N2, and then its length.",
        # No wall stands before the opening in this line, so its name cannot be worked out.
        instead=None,
    ),
    slip(
        ('trim base, room "Den"', 'room "Den", trim base'),
        ('trim base room "Den"', 'room "Den", trim base'),
        ('ends in, trim base, room "Den", open walk', 'room "Den", ends in, trim base, open walk'),
        written=r"^\s*(?P<slip>(?P<parts>[^#\"“]*[^#\"“,\s])\s*,?\s*\b(?P<room>room\s+[\"“][^\"”]*[\"”]))",
        wanted="the room first",
        remedy="Write {}.",
        instead=_room_first,
    ),
    slip(
        ("room Den, trim base", 'room "Den", trim base'),
        ("room Guest bath", 'room "Guest bath"'),
        ("room 'Den', trim base", 'room "Den", trim base'),
        ("room Living Room trim base", 'room "Living Room", trim base'),
        (
            "room Den as D trim base ends in, open walk",
            'room "Den" as D, trim base, ends in, open walk',
        ),
        written=r"^\s*room\s+(?P<slip>[^\s\"“,#:][^\"“,#:=]*?)(?=\s*(?:[,#]|$))",
        wanted="the room's name in quotes",
        remedy="Write room {}.",
        instead=_room_in_quotes,
    ),
    slip(
        ("saw: 1/8 in kerf", "saw: kerf 1/8 in"),
        ("saw: kerf 1/8 in, 50 deg reaches", "saw: kerf 1/8 in, reaches 50 deg"),
        ("casings: 3/16 in reveal, head butt", "casings: reveal 3/16 in, head butt"),
        ("nails: 16 in every", "nails: every 16 in"),
        written=rf"^\s*(?:saw|casings|splices|nails|caulk|kerfs)\s*:(?:[^#]*,)?\s*"
        rf"(?P<slip>(?P<long>{WHOLE_LENGTH}(?: ?(?:deg(?:rees?)?\b|°))?)\s*\b(?P<word>{_SIZES}))"
        rf"{END_OF_PART}",
        wanted="what it is before its size",
        remedy="Write {}.",
        instead=lambda found: f"{found['word']} {found['long'].strip()}",
    ),
    slip(
        ("1/8 in kerf", "saw: kerf 1/8 in"),
        ("kerf = 1/8 in", "saw: kerf 1/8 in"),
        written=rf"^\s*(?P<slip>kerf\s*=\s*(?P<one>{WHOLE_LENGTH})|(?P<two>{WHOLE_LENGTH})\s+kerf)(?=\s*(?:#|$))",
        wanted="the saw's line",
        remedy="Write {}.",
        instead=lambda found: f"saw: kerf {(found['one'] or found['two']).strip()}",
    ),
    slip(
        ("saw: kerf: 1/8 in", "saw: kerf 1/8 in"),
        ("casings: reveal = 3/16 in", "casings: reveal 3/16 in"),
        written=rf"^\s*(?:saw|casings|splices|nails|caulk|kerfs)\s*:[^#]*?(?:{_SIZES})"
        r"(?P<slip>\s*[:=]\s*)(?=\d)",
        wanted="the size right behind the word",
        remedy="Leave the sign out.",
        instead=lambda _: " ",
    ),
    slip(
        ("in-corner gap 1/16 in", "corners: in-corner gap 1/16 in"),
        ("rake gap 1/16 in", "corners: in-corner gap 1/16 in"),
        ("outside gap 1/32", "corners: out-corner gap 1/32"),
        written=r"^\s*(?P<slip>(?:(?:in|rake)\S*|(?P<out>out\S*))(?: corner)?\s+gap"
        rf"\s+(?P<long>{WHOLE_LENGTH}))"
        r"(?=\s*(?:#|$))",
        wanted="the corners' line",
        remedy="Write {}.",
        instead=lambda found: (
            f"corners: {'out' if found['out'] else 'in'}-corner gap {found['long'].strip()}"
        ),
    ),
    slip(
        ("N: 40 in, right=rake gap 1/16 in", "N: 40 in, right=in-corner"),
        (
            "N: 40 in, left=in gap 1/16 in, right=butt",
            "N: 40 in, left=in, right=butt",
        ),
        (
            "N: 90 in, left=butt, right=rake gap, rising right 36 deg",
            "N: 90 in, left=butt, right=rake, rising right 36 deg",
        ),
        written=r"(?:left|right)\s*=\s*(?P<slip>(?P<joint>rake|in\S*(?: corner)?)\s+gap\b"
        rf"(?:\s*{WHOLE_LENGTH})?)",
        wanted="the joint alone",
        remedy="Write {} here. How far corners may gape is said once, above the rooms:"
        " corners: in-corner gap 1/16 in.",
        instead=_joint_alone,
    ),
    slip(
        ("N: 40 in, right=out-corner gap 1/32 in", "N: 40 in, right=out-corner"),
        written=r"(?:left|right)\s*=\s*(?P<slip>(?P<joint>out\S*(?: corner)?)\s+gap\b"
        rf"(?:\s*{WHOLE_LENGTH})?)",
        wanted="the joint alone",
        remedy="Write {} here. How far corners may gape is said once, above the rooms:"
        " corners: out-corner gap 1/32 in.",
        instead=_joint_alone,
    ),
    slip(
        ("N 40 in, rake gap 1/16 in", "N 40 in"),
        ("N: 40 in, left=in, in gap 1/16, right=butt", "N: 40 in, left=in, right=butt"),
        written=rf"(?P<slip>,\s*(?:rake|in\S*)\s+gap\b(?:\s*{WHOLE_LENGTH})?){END_OF_PART}",
        wanted="what is said of the wall",
        remedy="Leave it out here. How far corners may gape is said once, above the rooms:"
        " corners: in-corner gap 1/16 in.",
        instead=lambda _: "",
    ),
)
"""What people write in another order than the language, and how it stands in a job file."""
