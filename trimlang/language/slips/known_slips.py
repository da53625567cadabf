"""Slips that people often make, each with examples and what the line should be.

A line that cannot be read is first looked for here: a slip is recognised by how the line is written
at the place where reading stopped.  The examples beside each slip are its test: the first text
brings up the slip, and applying its remedy gives the second text.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.diagnostics import Diagnostic
from trimlang.language.slips.block_slips import BLOCK_SLIPS
from trimlang.language.slips.box_slips import BOX_SLIPS
from trimlang.language.slips.buying_slips import BUYING_SLIPS
from trimlang.language.slips.casing_slips import CASING_SLIPS
from trimlang.language.slips.curve_slips import CURVE_SLIPS
from trimlang.language.slips.door_slips import DOOR_SLIPS
from trimlang.language.slips.ending_slips import ENDING_SLIPS
from trimlang.language.slips.heading_slips import HEADING_SLIPS
from trimlang.language.slips.hurried_slips import HURRIED_SLIPS, SAID_TWICE
from trimlang.language.slips.jotted_corners import JOTTED_CORNERS
from trimlang.language.slips.log_slips import LOG_SLIPS
from trimlang.language.slips.order_slips import ORDER_SLIPS
from trimlang.language.slips.pad_slips import PAD_SLIPS
from trimlang.language.slips.piece_slips import PIECE_SLIPS
from trimlang.language.slips.regional_slips import ANY_TRIM, REGIONAL_SLIPS
from trimlang.language.slips.setting_slips import SETTING_SLIPS
from trimlang.language.slips.shape_slips import SHAPE_SLIPS
from trimlang.language.slips.side_slips import SIDE_SLIPS
from trimlang.language.slips.slip_row import FRACTION, WHOLE_LENGTH, WRITTEN_LENGTH, Found, slip
from trimlang.language.slips.slope_slips import SLOPE_SLIPS
from trimlang.language.slips.stack_slips import STACK_SLIPS
from trimlang.language.slips.stick_slips import STICK_SLIPS
from trimlang.language.slips.supply_slips import SUPPLY_SLIPS
from trimlang.language.slips.table_slips import TABLE_SLIPS
from trimlang.language.slips.turned_slips import TURNED_SLIPS
from trimlang.language.slips.walk_slips import WALK_SLIPS
from trimlang.language.slips.wall_slips import WALL_SLIPS
from trimlang.language.slips.yard_slips import YARD_SLIPS
from trimlang.lengths.units import in_inches

_ANY_WALL: Final = 1200
"""Inches; a longer wall does not exist, so a comma before three figures is then no thousands'."""

_INCHES: Final = r"""(?:in\b\.?|inch\b|"|″|”|'')"""
_NAME: Final = r"(?P<name>(?!(?:in|inch|inches|ft|feet|foot|yd|mm|cm|m)\b)[^\W\d_][\w.\-]*)"
_WALL: Final = r"^\s*\w[\w.\-]*(?: *:)?\s"


def _with_a_point(comma: Found) -> str:
    """Return a number without its comma: thousands if a wall can be so long, else a decimal."""
    whole, rest, unit = comma["whole"], comma["rest"], comma["unit"] or "mm"
    # Without a unit the number is taken as millimetres, in which thousands are usual.
    unit = "in" if unit in '"″”' else unit.casefold()
    # 1,200 mm is a wall of 1200 mm, but 1,200 ft is none: the unit decides between the two
    # readings.
    if comma["cents"]:
        # With a point behind it the comma can only part thousands.
        return f"{whole}{rest}{comma['cents']}"
    as_thousands = len(rest) == 3 and in_inches(Fraction(whole + rest), unit) <= _ANY_WALL
    return f"{whole}{rest}" if as_thousands else f"{whole}.{rest}"


def _figures(found: Found) -> str | None:
    written = found[0]
    # A small l and a capital I pass for 1 in many fonts, a capital O for 0.
    figures = written.translate(str.maketrans("lIO", "110"))
    # All letters is a word, such as "OI", and not a number with letters in it.
    a_number = any(map(str.isdigit, written))
    return figures if figures != written and a_number else None


KNOWN_SLIPS: Final = (
    # These begin with words of their own, so they are told before slips that fit any line.
    *LOG_SLIPS,
    *BOX_SLIPS,
    *PIECE_SLIPS,
    *CASING_SLIPS,
    *BLOCK_SLIPS,
    *STACK_SLIPS,
    *ENDING_SLIPS,
    *SLOPE_SLIPS,
    *CURVE_SLIPS,
    *STICK_SLIPS,
    *SUPPLY_SLIPS,
    *HURRIED_SLIPS,
    *HEADING_SLIPS,
    *WALK_SLIPS,
    *TURNED_SLIPS,
    *YARD_SLIPS,
    *JOTTED_CORNERS,
    *SIDE_SLIPS,
    *DOOR_SLIPS,
    *REGIONAL_SLIPS,
    *TABLE_SLIPS,
    slip(
        ("N: 40,5 in, left=butt, right=butt", "N: 40.5 in, left=butt, right=butt"),
        ("N: 1,200 mm, left=butt, right=butt", "N: 1200 mm, left=butt, right=butt"),
        ("stock base: 12 ft at 17,40", "stock base: 12 ft at 17.40"),
        ("stock base: 12 ft at 1,450.00", "stock base: 12 ft at 1450.00"),
        written=r"(?<![\w.])(?P<slip>(?P<whole>\d+),(?P<rest>\d+)(?P<cents>\.\d+)?)(?![\w/])"
        r"(?: *(?P<unit>mm\b|cm\b|m\b|in\b|ft\b|yd\b|[\"″”]))?",
        wanted="",
        remedy="{}",
        instead=_with_a_point,
        code="T114",
    ),
    slip(
        ("N: 40 in,, left=butt, right=butt", "N: 40 in, left=butt, right=butt"),
        ("N: 40 in, left=butt, , right=butt", "N: 40 in, left=butt, right=butt"),
        written=r",\s*,",
        wanted="something between the two commas",
        remedy="Write one comma.",
        instead=lambda _: ",",
    ),
    slip(
        ("N: 40 in, left=butt, right=butt,", "N: 40 in, left=butt, right=butt"),
        ('room "Den", trim base,  # north', 'room "Den", trim base  # north'),
        written=r",(?=\s*(?:#.*)?$)",
        wanted="another part of the line behind it",
        remedy="Take the last comma out.",
        instead=lambda _: "",
    ),
    slip(
        ("N: l2 ft, left=butt, right=butt", "N: 12 ft, left=butt, right=butt"),
        ("N: 4O in, left=butt, right=butt", "N: 40 in, left=butt, right=butt"),
        ("N: 2 l/4, left=butt, right=butt", "N: 2 1/4, left=butt, right=butt"),
        # Two signs or more: a lone l or O is more often the name of a wall.
        written=r"(?<![\w.=-])(?-i:(?:[lIO\d]+ )?[lIO\d]+ ?/ ?[lIO\d]+|[lIO\d]{2,})(?![\w/])",
        wanted="figures alone",
        remedy="Write {}: a letter looks like a figure there.",
        instead=_figures,
    ),
    slip(
        ("N: 16.1/2 in, left=butt, right=butt", "N: 16 1/2 in, left=butt, right=butt"),
        written=rf"\b(\d+)\.({FRACTION})",
        wanted="a blank between the inches and the fraction",
        remedy="Write {}.",
        instead=lambda found: f"{found[1]} {found[2]}",
    ),
    slip(
        ("N: 10.2 1/4, left=butt, right=butt", "N: 10 ft 2 1/4, left=butt, right=butt"),
        written=rf"(?<![\w./])(?P<slip>(?P<feet>\d{{1,2}})\.(?P<inches>\d|1[01])"
        rf" (?P<part>{FRACTION}))",
        wanted="a fraction, or a number with a point",
        remedy="If feet and inches were meant, write {}.",
        instead=lambda found: f"{found['feet']} ft {found['inches']} {found['part']}",
    ),
    slip(
        ('N: 3"1/8, left=butt, right=butt', "N: 3 1/8 in, left=butt, right=butt"),
        ("N: 40 in 1/8, left=butt, right=butt", "N: 40 1/8 in, left=butt, right=butt"),
        written=rf"(\d+) *{_INCHES} *({FRACTION})(?: *{_INCHES})?",
        wanted="the inch mark behind the fraction",
        remedy="The inch mark stands behind the fraction: write {}.",
        instead=lambda found: f"{found[1]} {found[2]} in",
    ),
    slip(
        ("N: 12 in 4 1/8 in, left=butt, right=butt", "N: 12 ft 4 1/8 in, left=butt, right=butt"),
        written=rf"(\d+) *{_INCHES} *(\d+(?: {FRACTION})?) *{_INCHES}",
        wanted="feet before the inches",
        remedy="Inches stand there twice: if the first are feet, write {}.",
        instead=lambda found: f"{found[1]} ft {found[2]} in",
    ),
    slip(
        ("N: 2 740, left=butt, right=butt", "N: 2740, left=butt, right=butt"),
        # Three figures after the gap are thousands; fewer may be inches after feet (the next slip).
        written=rf"{_WALL}\s*(?P<slip>(?P<a>\d+) (?P<b>\d{{3}}))\b(?! ?[/⁄∕])",
        wanted="a number in one",
        remedy="A number has no gap in it: write {}.",
        # With three figures or more before the gap they are two lengths.
        instead=lambda found: f"{found['a']}{found['b']}" if len(found["a"]) < 3 else None,
    ),
    slip(
        ("N: 9 7 in, left=butt, right=butt", "N: 9 ft 7 in, left=butt, right=butt"),
        written=rf"{_WALL}\s*(?P<slip>(?P<a>\d+) (?P<b>\d+)(?! ?[/⁄∕\d\\:])(?! *(?:ft|feet))"
        rf"(?: *{_INCHES})?)",
        wanted="feet and inches with their units",
        remedy="Feet and inches are told apart by their units: write {}.",
        # Twelve inches are a foot, so a larger second number is not the inches.
        instead=lambda found: f"{found['a']} ft {found['b']} in" if int(found["b"]) < 12 else None,
    ),
    slip(
        ('"Den" room, trim base', 'room "Den", trim base'),
        written=r"^\s*(?P<slip>([\"“][^\"“”]*[\"”])\s+room\b)",
        wanted="the word room first",
        remedy="Write {}.",
        instead=lambda found: f"room {found[2]}",
    ),
    slip(
        ("base stock: 12 ft at 17.40", "stock base: 12 ft at 17.40"),
        ("base trim: 9/16 in thick", "trim base: 9/16 in thick"),
        ("base on-hand: 40 in", "on-hand base: 40 in"),
        written=r"^\s*(?P<slip>(?P<name>[^\W\d_][\w.\-]*)\s+(?P<word>stock|trim|on-hand))\s*:",
        wanted="the word first and then the trim's name",
        remedy="Write {}:",
        instead=lambda found: f"{found['word']} {found['name']}",
    ),
    *SETTING_SLIPS,
    *PAD_SLIPS,
    *ORDER_SLIPS,
    *BUYING_SLIPS,
    # Behind the other slips of order, for it takes any name behind a length.
    slip(
        ("40 in N, left=butt, right=butt", "N: 40 in, left=butt, right=butt"),
        ("10 ft 2 1/4 N", "N: 10 ft 2 1/4"),
        ("29 1/8 in E2, left=butt, right=butt", "E2: 29 1/8 in, left=butt, right=butt"),
        written=rf"^\s*(?P<slip>(?P<long>{WHOLE_LENGTH})\s+{_NAME})(?=\s*(?:,|$))",
        wanted="the wall's name first",
        remedy="A wall begins with its name: write {}.",
        instead=lambda found: f"{found['name']}: {found['long'].strip()}",
    ),
    slip(
        ("1 4 ft, left=butt, right=butt", "1: 4 ft, left=butt, right=butt"),
        ("2 23 1/2, left=out(89 deg)", "2: 23 1/2, left=out(89 deg)"),
        # With a fraction behind it, it is a mixed number such as 1 1/2 and no name.
        written=rf"^\s*(?P<slip>\d+)(?! +{FRACTION})(?= +{WRITTEN_LENGTH}\s*(?:,|$))",
        wanted="a colon behind a wall's number",
        remedy="A wall called by a number has a colon: write {}.",
        instead=lambda found: f"{found['slip']}:",
    ),
    slip(
        ("trim base: thick 9/16 in, mdf", "trim base: 9/16 in thick, mdf"),
        written=rf"(?P<slip>\b(?P<word>thick|tall|wide)\s+(?P<long>{WRITTEN_LENGTH}))",
        wanted="the size first",
        remedy="Write {}.",
        instead=lambda found: f"{found['long'].strip()} {found['word']}",
    ),
    slip(
        ("stock base: 12 ft = 17.40", "stock base: 12 ft at 17.40"),
        ("stock base: 12 ft $17.40", "stock base: 12 ft at $17.40"),
        ("stock base: 12 ft - 17.40", "stock base: 12 ft at 17.40"),
        written=r"^\s*stock\b.*?(?:ft|feet|in|mm|m|')"
        r"(?P<slip>\s+(?:[=‐-–-]\s*)?(?P<price>[$€£¥]?\d+(?:\.\d\d)?)\b)"
        # With a unit or a fraction behind it, it is the rest of a length and no price.
        r"(?! ?[/⁄∕])(?!\s*(?:in|ft)\b)",
        wanted="“at” before the price",
        remedy="Write “{}”.",
        instead=lambda found: f" at {found['price']}",
    ),
    slip(
        ('door 32 "to hall"', 'door 32, "to hall"'),
        ('W 905, door 760 "to hall", W2 740', 'W 905, door 760, "to hall", W2 740'),
        written=r"(?:^|,)\s*(?:opening|door|window|stair|bare|cabinets|radiator)\b[^,\"]*?\d"
        r"(?P<slip> +)\"[^\"]*[^\W\d_][^\"]*\"",
        wanted="a comma before the name",
        remedy="Put a comma before the name.",
        instead=lambda _: ", ",
    ),
    *SHAPE_SLIPS,
    *WALL_SLIPS,
    ANY_TRIM,
    SAID_TWICE,
    slip(
        ("N 10 ft 2 1/4.", "N 10 ft 2 1/4"),
        ("N: 40 in, left=butt, right=butt;", "N: 40 in, left=butt, right=butt"),
        ("stock base: 12 ft at 17.40.  # primed", "stock base: 12 ft at 17.40  # primed"),
        written=r"(?<=[^\s.,:;])(?P<slip>\s*[.;]+)(?=\s*(?:#|$))",
        wanted="the end of the line",
        remedy="A line ends without a sign: leave it out.",
        instead=lambda _: "",
    ),
)
"""Every known slip; the first that fits is told, so the more particular ones come first."""


def known_slip(text: str, at: int, file: str, line: int) -> Diagnostic | None:
    """Return the finding for the first known slip where reading stopped at ``at`` (from 0)."""
    return next(
        (finding for one in KNOWN_SLIPS if (finding := one.finding(text, at, file, line))), None
    )
