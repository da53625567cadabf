"""Slips in the lines of doors and windows: hands, sizes and sills as one jots them on a pad."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from trimlang.language.regional_names import NAME
from trimlang.language.slips.slip_row import ANY_NAME, END_OF_PART, GAP, WHOLE_LENGTH, Found, slip


def _hand(found: Found) -> str:
    if found["side"]:
        return found["side"].casefold()
    return "left" if found["hand"].casefold().startswith("l") else "right"


def _door(found: Found) -> str:
    return f"{found['kind']} {found['name']} {found['long'].strip()}"


_DOOR_ROWS: Final = (
    slip(
        (
            "window 36 in, casing case, height 54 in, sill 24 in, base runs under",
            "window 36 in, casing case, height 54 in, sill 24 in",
        ),
        written=r"(?P<slip>\s*,\s*(?:base|shoe) +(?:runs|goes|passes) +(?:on +)?"
        rf"(?:under|below|past)(?: +it)?){END_OF_PART}",
        wanted="the height of its sill alone",
        remedy="What is lower than its sill goes on below a window anyway: leave it out.",
        instead=lambda _: "",
    ),
    slip(
        (
            "door 32 in, casing case with backband band, height 80 in",
            "door 32 in, casing case, backband band, height 80 in",
        ),
        (
            "door 32 in, casing case, height 80 in, corner blocks rosette and plinths foot",
            "door 32 in, casing case, height 80 in, corner blocks rosette, plinths foot",
        ),
        written=rf"\b(?:casing|corner blocks|plinths|jambs|backband) +{NAME}"
        r"(?P<slip> +(?:with|and|\+) +)(?=(?:casing|backband|jambs|plinths|corner blocks|stool)\b)",
        wanted="a comma between two parts",
        remedy="Put a comma between them.",
        instead=lambda _: ", ",
    ),
    slip(
        (
            "window 36 in, casing case, height 54 in, stool shelf apron case with returns",
            "window 36 in, casing case, height 54 in, stool shelf apron case",
        ),
        written=rf"\bapron +{NAME}(?P<slip> +(?:with +)?return(?:s|ed)(?: +ends?)?){END_OF_PART}",
        wanted="the apron alone",
        remedy="An apron's ends are returned anyway: leave it out.",
        instead=lambda _: "",
    ),
    slip(
        (
            "cased opening 36 in, casing case, height 80 in",
            "opening 36 in, casing case, height 80 in",
        ),
        written=r"(?:^|,)\s*(?P<slip>cased +opening)\b",
        wanted="“opening”",
        remedy="Write {}: the word casing says with what it is cased.",
        instead=lambda _: "opening",
    ),
    slip(
        (
            "window 36 in, casing case on four sides, height 54 in",
            "window 36 in, casing case, four sides, height 54 in",
        ),
        (
            "opening 36 in, casing case both sides, height 80 in",
            "opening 36 in, casing case, both faces, height 80 in",
        ),
        written=rf"\bcasing +{NAME}(?P<slip> +(?:on +)?(?:(?P<four>(?:all +)?(?:4|four) +sides"
        rf"|all +(?:sides|round))|both +(?:sides|faces))){END_OF_PART}",
        wanted="how far it goes round as a part of its own",
        remedy="Put a comma there and write {}.",
        instead=lambda found: ", four sides" if found["four"] else ", both faces",
    ),
    slip(
        ("door 32 hinge left", "door 32, hinged left"),
        ("door 32, hinges on the right", "door 32, hinged right"),
        ("door 32, lh", "door 32, hinged left"),
        ("door 32 right hand", "door 32, hinged right"),
        written=rf"\bdoor\b[^,#]*?\d[^,#]*?(?P<slip>\s*,?\s*(?:hinges?\s+(?:on\s+)?(?:the\s+)?(?"
        rf"P<side>left|right)"
        rf"|(?P<hand>lh|rh|left[ -]?hand(?:ed)?|right[ -]?hand(?:ed)?))){END_OF_PART}",
        wanted="“hinged” and the side",
        remedy="As one faces the door from inside the room: write {}.",
        instead=lambda found: f", hinged {_hand(found)}",
    ),
    slip(
        ("window 36w x 48h, casing case", "window 36, height 48, casing case"),
        ("door 2'8\" x 6'8\"", "door 2'8\", height 6'8\""),
        ("window 36 wide 48 high", "window 36, height 48"),
        ("window 36 wide x 48 high, sill 30", "window 36, height 48, sill 30"),
        written=rf"\b(?:door|window|opening)\b[^,#\d]*(?:{WHOLE_LENGTH})(?P<slip>\s*(?:w|wide)?"
        rf"\s*(?:x|×|by)\s*"
        rf"(?P<one>{WHOLE_LENGTH})\s*(?:h|high|tall)?|\s*(?:w|wide)\s*,?\s*(?"
        rf"P<two>{WHOLE_LENGTH})\s*(?:h|high|tall))"
        rf"{END_OF_PART}",
        wanted="the height behind the word height",
        remedy="Write a comma, then {}.",
        instead=lambda found: f", height {(found['one'] or found['two']).strip()}",
    ),
    slip(
        ("door closet 30 in wide", "door closet 30 in"),
        ("N 10 ft, opening 48 in clear, E 8 ft", "N 10 ft, opening 48 in, E 8 ft"),
        written=rf"(?:^|,)\s*{GAP}\b[^#,\d]*{WHOLE_LENGTH}"
        rf"(?P<slip>\s*(?:wide|(?:in )?width|clear|across)){END_OF_PART}",
        wanted="its width alone",
        remedy="What stands there is how wide it is anyway: leave the word out.",
        instead=lambda _: "",
    ),
    slip(
        ("window 36 sill height 30", "window 36, sill 30"),
        ("window 36, 30 off floor", "window 36, sill 30"),
        written=rf"\b(?P<of>window|opening)\b[^#]*?\d(?P<slip>\s*,?\s*(?:sill\s+(?:at|height|is|"
        rf":)\s*(?P<one>{WHOLE_LENGTH})"
        rf"|(?P<two>{WHOLE_LENGTH})\s*(?:off|above|from)\s+(?:the\s+)?floor)){END_OF_PART}",
        wanted="“sill” and its height",
        remedy="Write {}.",
        instead=lambda found: f", sill {(found['one'] or found['two']).strip()}",
    ),
    slip(
        ("double door 60, N 10 ft", "door double 60, N 10 ft"),
        ("closet opening 48", "opening closet 48"),
        ("N 10 ft, pocket door 32", "N 10 ft, door pocket 32"),
        written=rf"(?:^|,)\s*(?P<slip>(?P<name>(?!{GAP}\b)[^\W\d_][\w\-]*)\s+(?P<kind>door|"
        rf"window|opening|cabinets)\s+(?P<long>{WHOLE_LENGTH}))"
        rf"{END_OF_PART}",
        wanted="what it is first, and then its name",
        remedy="Write {}.",
        instead=_door,
    ),
    slip(
        ("window 36, stops base & rail", "window 36, stops base and rail"),
        ("cabinets 60, stops base, rail", "cabinets 60, stops base and rail"),
        ("window 36, stops base + rail, N 3 ft", "window 36, stops base and rail, N 3 ft"),
        written=rf"\bstops\s+{ANY_NAME}(?:\s+and\s+{ANY_NAME})*(?P<slip>\s*(?:,(?:\s*and)?|&|\+)\s*)"
        rf"(?={ANY_NAME}{END_OF_PART})",
        wanted="“and” between two trims",
        remedy="Write “{}” there.",
        instead=lambda _: " and ",
    ),
    slip(
        ("opening 36, full height", "opening 36, stops all"),
        ("N 4 ft, door 36, floor to ceiling, N 3 ft", "N 4 ft, door 36, stops all, N 3 ft"),
        ("opening closet 60, to the ceiling", "opening closet 60, stops all"),
        written=rf"\b{GAP}\b[^#]*?\d[^#]*?,\s*(?P<slip>(?:full|ceiling|room)[ -](?:height|high)"
        rf"|(?:floor |up )?to (?:the )?ceiling){END_OF_PART}",
        wanted="what the opening stops",
        remedy="An opening up to the ceiling stops crown too: write {}.",
        instead=lambda _: "stops all",
    ),
    slip(
        ("door (32), N 10 ft", "door 32, N 10 ft"),
        ("door = 32", "door 32"),
        written=rf"(?:^|,)\s*{GAP}(?P<slip>\s*(?:\(\s*(?P<one>{WHOLE_LENGTH})\s*\)|=\s*(?"
        rf"P<two>{WHOLE_LENGTH}))){END_OF_PART}",
        wanted="its width right behind it",
        remedy="Write {}.",
        instead=lambda found: f" {(found['one'] or found['two']).strip()}",
    ),
)  # fmt: skip

DOOR_SLIPS: Final = tuple(replace(row, of_walls=True) for row in _DOOR_ROWS)
"""What people jot of a door or a window, and how it stands in a job file."""
