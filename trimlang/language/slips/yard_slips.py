"""Slips in the lines of trims and of what the yard sells, as one jots them off a price list."""

from __future__ import annotations

import re
from typing import Final

from trimlang.language.slips.slip_row import ANY_NAME, END_OF_PART, WHOLE_LENGTH, Found, slip

_ROUND: Final = r"\d{1,2}(?:\.\d\d?)?"
_PRICE: Final = r"[$€£¥]?\d+(?:\.\d\d?)?"
_LONG_UNIT: Final = r"(?:ft|feet|m|mm|in|')"
_SIZE: Final = r"(?:\d[\d./⁄∕ \-]*)?[¼½¾⅐-⅞]?(?: ?(?:in|mm)\b| ?[\"″])?"
_WHICH: Final = {"thickness": "thick", "height": "tall", "width": "wide", "depth": "thick"}
_RIGHT_ANGLE: Final = 90


def _each_length(found: Found) -> str:
    lengths = re.findall(r"[\d.]+", found["all"])
    return ", ".join(f"{one} {found['unit']}" for one in lengths)


def _any_length(found: Found) -> str:
    unit = found["unit"].strip()
    return f"any length from {found['least']} {unit} to {found['most']} {unit}"


def _counted_rest(found: Found) -> str:
    return f"{found['name']}: {found['count']} of {found['long'].strip()}"


def _larger_spring(found: Found) -> str | None:
    wall, ceiling = int(found["one"]), int(found["two"])
    # The first is the angle to the wall, and both together are a right angle.
    return f"spring {wall} deg" if wall + ceiling == _RIGHT_ANGLE else None


YARD_SLIPS: Final = (
    slip(
        ("stock base: order at least 200.00, 12 ft at 17.40",
         "stock base: at least 200.00, 12 ft at 17.40"),
        written=r"^\s*stock\b[^#]*?[:,]\s*(?P<slip>(?:order|buy|minimum)(?: +of)? +at +least)\b",
        wanted="“at least”",
        remedy="Write {}.",
        instead=lambda _: "at least",
    ),
    slip(
        ("trim cap: 11/16 in thick, 3 in tall, profile girth 4 in",
         "trim cap: 11/16 in thick, 3 in tall, girth 4 in"),
        written=r"^\s*trim\b[^#]*?,\s*(?P<slip>(?:profile|face|paint(?:ed)?) +girth)(?=\s+\d)",
        wanted="“girth”",
        remedy="Write {}.",
        instead=lambda _: "girth",
    ),
    slip(
        ("saw: kerf 1/8 in, blade 39.00 per 1500 cuts",
         "saw: kerf 1/8 in, blade 1500 cuts at 39.00"),
        written=r"^\s*saw\s*:[^#]*?\b(?P<slip>blade\s+(?:at\s+)?(?P<price>\d+(?:\.\d+)?)\s+"
        r"(?:per|a|for|every)\s+(?P<cuts>\d+)\s+cuts)",
        wanted="how many cuts a blade makes, and then its price",
        remedy="Write {}.",
        instead=lambda found: f"blade {found['cuts']} cuts at {found['price']}",
    ),
    slip(
        ("trim base = 9/16 in thick, mdf", "trim base: 9/16 in thick, mdf"),
        ("trim base, 9/16 in thick", "trim base: 9/16 in thick"),
        ("stock base - 12 ft at 17.40", "stock base: 12 ft at 17.40"),
        written=rf"^\s*(?:trim|stock|on-hand)\s+{ANY_NAME}(?P<slip>\s*[=,\-–]\s*)(?=[\d$€£¥])",
        wanted="a colon behind the trim's name",
        remedy="Write a colon there.",
        instead=lambda _: ": ",
    ),
    slip(
        ("trim Base Board: 9/16 in thick", "trim Base-Board: 9/16 in thick"),
        ("stock door stop: 8 ft at 3.10", "stock door-stop: 8 ft at 3.10"),
        written=rf"^\s*(?:trim|stock|on-hand)\s+(?P<slip>(?P<one>{ANY_NAME})\s+(?"
        rf"P<two>{ANY_NAME}))(?"
        rf"=\s*:)",
        wanted="a name of one word",
        remedy="A trim's name is one word, the same wherever it stands: write {}.",
        instead=lambda found: f"{found['one']}-{found['two']}",
    ),
    slip(
        ("trim base: thickness 9/16, mdf", "trim base: 9/16 thick, mdf"),
        ("trim base: 9/16 thick, height 5 1/4 in", "trim base: 9/16 thick, 5 1/4 in tall"),
        written=rf"^\s*trim\b[^#]*?(?P<slip>\b(?P<word>thickness|height|width|depth)\s*(?"
        rf"P<long>{WHOLE_LENGTH}))"
        rf"{END_OF_PART}",
        wanted="the size first",
        remedy="Write {}.",
        instead=lambda found: f"{found['long'].strip()} {_WHICH[found['word'].casefold()]}",
    ),
    slip(
        ("trim crown: 11/16 in thick, 3 5/8 in wide, spring 38/52",
         "trim crown: 11/16 in thick, 3 5/8 in wide, spring 38 deg"),
        written=r"(?P<slip>\bspring\s+(?P<one>\d\d)\s*[/⁄]\s*(?P<two>\d\d)(?: ?(?:deg|°))?)",
        wanted="the angle to the wall alone",
        remedy="The first of the two is that to the wall: write {}.",
        instead=_larger_spring,
    ),
    slip(
        (
            "trim crown: 11/16 in thick, 3 5/8 in wide, 38 deg spring",
            "trim crown: 11/16 in thick, 3 5/8 in wide, spring 38 deg",
        ),
        written=r"(?P<slip>(?P<angle>\d[\d ./]*?) ?(?:deg(?:rees?)?\b|°) *spring\b)",
        wanted="spring before its angle",
        remedy="Write {}.",
        instead=lambda found: f"spring {found['angle']} deg",
    ),
    slip(
        ("trim base: 9/16 in thick, 5 1/4", "trim base: 9/16 in thick, 5 1/4 tall"),
        ("trim base: 5 1/4 in tall, 9/16 in", "trim base: 5 1/4 in tall, 9/16 in thick"),
        written=rf"^\s*trim\b[^#]*?\d[^,#]*?\b(?P<said>thick|tall|wide)\s*,\s*(?"
        rf"P<slip>{WHOLE_LENGTH})"
        rf"{END_OF_PART}",
        wanted="which size it is",
        remedy="Write {}.",
        instead=lambda found: (
            f"{found['slip'].strip()} {'tall' if found['said'].casefold() == 'thick' else 'thick'}"
        ),
    ),
    slip(
        ("trim shoe: 1/2 in thick, in front base", "trim shoe: 1/2 in thick, in front of base"),
        written=r"\b(?P<slip>in front)(?=\s+(?!of\b)[^\W\d_])",
        wanted="“in front of”",
        remedy="Write {}.",
        instead=lambda _: "in front of",
    ),
    slip(
        ("trim cap: 1 in tall, on top of base", "trim cap: 1 in tall, on base"),
        written=r"^\s*trim\b.*?,\s*(?P<slip>on top of)(?=\s+[^\W\d_])",
        wanted="“on”",
        remedy="Write {}.",
        instead=lambda _: "on",
    ),
    slip(
        ("stock base: 8/12/16 ft at 1.45 a foot", "stock base: 8 ft, 12 ft, 16 ft at 1.45 a foot"),
        written=rf"^\s*stock\b[^#]*?(?P<slip>(?P<all>{_ROUND}(?:\s*/\s*{_ROUND})+)\s*(?"
        rf"P<unit>{_LONG_UNIT}))",
        wanted="each length by itself",
        remedy="Write {}.",
        instead=_each_length,
    ),
    slip(
        ("stock base: 8-16 ft at 1.45 a foot",
         "stock base: any length from 8 ft to 16 ft at 1.45 a foot"),
        ("stock base: 8 to 16 ft at 1.45 a foot",
         "stock base: any length from 8 ft to 16 ft at 1.45 a foot"),
        written=rf"^\s*stock\b[^#]*?(?P<slip>(?P<least>\d+)(?: ?{_LONG_UNIT})?\s*(?:-|–|to)\s*(?"
        rf"P<most>\d+)"
        rf"\s*(?P<unit>{_LONG_UNIT}))",
        wanted="“any length”, where the yard cuts to length",
        remedy="If the yard cuts any length, write {}; else write each length by itself.",
        instead=_any_length,
    ),
    slip(
        ("stock base: 12 ft (17.40), 16 ft at 24.10", "stock base: 12 ft at 17.40, 16 ft at 24.10"),
        written=rf"^\s*stock\b[^#]*?\d ?{_LONG_UNIT}(?P<slip>\s*\(\s*(?P<price>{_PRICE})\s*\))",
        wanted="“at” before the price",
        remedy="Write {} there.",
        instead=lambda found: f" at {found['price']}",
    ),
    slip(
        ("stock base: 12 ft, at 17.40", "stock base: 12 ft at 17.40"),
        written=rf"^\s*stock\b[^#]*?(?P<slip>\s*,\s*at)(?=\s+{_PRICE})",
        wanted="the price right behind its length",
        remedy="Take the comma out.",
        instead=lambda _: " at",
    ),
    slip(
        ("stock base: 12 ft at 17.40 max 6", "stock base: 12 ft at 17.40 at most 6"),
        ("stock base: 12 ft at 17.40, limit 6", "stock base: 12 ft at 17.40 at most 6"),
        ("stock base: 12 ft at 17.40 (only 6)", "stock base: 12 ft at 17.40 at most 6"),
        written=rf"^\s*stock\b[^#]*?{_PRICE}(?P<slip>\s*[,(]?\s*(?:max(?:imum|\.)?|limit(?: of)?"
        rf"|only|up to|no more than)"
        r"\s*(?P<count>\d+)\s*\)?)",
        wanted="“at most” before how many there are",
        remedy="Write {}.",
        instead=lambda found: f" at most {found['count']}",
    ),
    slip(
        ("stock base: 17.40 for 12 ft", "stock base: 12 ft at 17.40"),
        ("stock base: $17.40 per 12 ft", "stock base: 12 ft at $17.40"),
        written=rf"^\s*stock\b[^:]*:[^#]*?(?P<slip>(?P<price>{_PRICE})\s*(?:for|per|/|a)\s*(?"
        rf"P<long>\d+ ?{_LONG_UNIT}))"
        rf"{END_OF_PART}",
        wanted="the length before its price",
        remedy="Write {}.",
        instead=lambda found: f"{found['long']} at {found['price']}",
    ),
    slip(
        ("stock: 12 ft at 17.40", None),
        ("on-hand: 40 in", None),
        written=r"^\s*(?:stock|on-hand)(?P<slip>\s*:)(?=\s*[\d$€£¥])(?!\s*\d+\s+(?:of\s+)?"
        r"[^\W\d_][\w\-]*\s+\d)",
        wanted="the trim's name before the colon",
        remedy="Say which trim it is: stock base: 12 ft at 17.40.",
        instead=None,
    ),
    slip(
        ("on-hand: 2 base 40 in", "on-hand base: 2 of 40 in"),
        ("on-hand 2 base 40 in", "on-hand base: 2 of 40 in"),
        written=rf"^\s*on-hand\b(?P<slip>\s*:?\s*(?P<count>\d+)\s+(?:of\s+)?(?P<name>(?"
        rf"!of\b){ANY_NAME})\s+(?P<long>{WHOLE_LENGTH}))",
        wanted="the trim's name, and how many behind it",
        remedy="Write on-hand {}.",
        instead=lambda found: f" {_counted_rest(found)}",
    ),
    slip(
        ("on-hand base: 40 in x 2", "on-hand base: 2 of 40 in"),
        written=rf"^\s*on-hand\b[^:]*:\s*(?P<slip>(?P<long>{WHOLE_LENGTH})\s*(?:x|×|\*)\s*(?"
        rf"P<count>\d+)){END_OF_PART}",
        wanted="how many before how long",
        remedy="Write {}.",
        instead=lambda found: f"{found['count']} of {found['long'].strip()}",
    ),
    slip(
        ("offcuts base: 40 in", "on-hand base: 40 in"),
        ("have base: 2 of 40 in", "on-hand base: 2 of 40 in"),
        ("leftover base: 40 in", "on-hand base: 40 in"),
        written=rf"^\s*(?P<slip>off-?cuts?|have|left-?overs?|in hand|remnants?)(?=\s+{ANY_NAME}"
        rf"\s*:)",
        wanted="“on-hand”",
        remedy="Write {}.",
        instead=lambda _: "on-hand",
    ),
    slip(
        ("stock base: 12 ft at 17.40 from Hill Lumber",
         'stock base: 12 ft at 17.40, from "Hill Lumber"'),
        ("stock base: from Hill Lumber, 12 ft at 17.40",
         'stock base: from "Hill Lumber", 12 ft at 17.40'),
        written=rf"^\s*stock\b[^#]*?(?P<slip>(?P<comma>(?<=[:,]) ?|\s+)from\s+(?P<yard>{ANY_NAME}(?"
        rf": {ANY_NAME})*)){END_OF_PART}",
        wanted="the yard's name in quotes, in a part of its own",
        remedy="Write {}.",
        instead=lambda found: (
            f"{'' if found.string[found.start('slip') - 1] in ':,' else ','}"
            f" from \"{found['yard']}\""
        ),
    ),
    slip(
        ("stock base: Hill Lumber, 12 ft at 17.40",
         'stock base: from "Hill Lumber", 12 ft at 17.40'),
        written=rf"^\s*stock\b[^:]*:\s*(?P<slip>(?!from|any|pack|bundle|pick|code|batch|at)(?"
        rf"P<yard>{ANY_NAME}(?: {ANY_NAME})*))"
        r"(?=\s*,)",
        wanted="“from” before the yard's name, and quotes round it",
        remedy="Write {}.",
        instead=lambda found: f'from "{found["yard"]}"',
    ),
)  # fmt: skip
"""What people write of trims, sticks and the yard, and how it stands in a job file."""
