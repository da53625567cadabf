"""Slips in the lines above the rooms: signs too many or too few, dates, sections, other words."""

from __future__ import annotations

import datetime
from fractions import Fraction
from typing import Final
from unicodedata import normalize

from trimlang.language.slips.slip_row import END_OF_PART, WHOLE_LENGTH, Found, slip

_TOPICS: Final = (
    r"(?:saw|nails|casings|corners|splices|caulk|filler|putty|glue|primer|paint|every\s+room)"
)
_OWN_NAME: Final = r"(?:[^\W\d_][\w.\-]*)"
_SIZE: Final = r"(?:\d[\d./ ]*(?:-\d[\d/]*)?[¼½¾⅐-⅞]?|[¼½¾⅐-⅞])(?: ?(?:in|mm)\b\.?| ?[\"″])?"
_DATE: Final = r"(?P<one>\d{1,2})(?P<sign>[./])(?P<two>\d{1,2})(?P=sign)(?P<year>\d{4})"
_MONTHS_IN_A_YEAR: Final = 12


def _date(found: Found) -> str | None:
    one, two, year = int(found["one"]), int(found["two"]), int(found["year"])
    # With points a day comes first; with slashes a month, unless it can be none.
    day_first = found["sign"] == "." or one > _MONTHS_IN_A_YEAR
    day, month = (one, two) if day_first else (two, one)
    # What is no day of the calendar is told by the next row.
    try:
        return datetime.date(year, month, day).isoformat()
    except ValueError:
        return None


def _section(found: Found) -> str | None:
    one, two = found["one"].strip(), found["two"].strip()
    # A trim is taller than it is thick, whichever of the two was written first.
    sizes = _size(one), _size(two)
    if sizes[0] is None or sizes[1] is None:
        return None
    thick, tall = (one, two) if sizes[0] <= sizes[1] else (two, one)
    material = "".join(f", {word}" for word in (found["first"], found["last"]) if word)
    return f"{thick} thick, {tall} tall{material}"


def _size(written: str) -> Fraction | None:
    # “¾” is read as “3/4”, with a blank before it so that 5¾ stays 5 and 3/4.
    apart = "".join(sign if sign.isascii() else f" {normalize('NFKC', sign)}" for sign in written)
    # Units and marks become blanks, so that “5 1/4 in” is summed from 5 and 1/4.
    figures = "".join(one if one in "0123456789./ " else " " for one in apart.replace("⁄", "/"))
    try:
        return sum((Fraction(part.strip(".")) for part in figures.split()), Fraction(0))
    # 1/0 and 5..2 are no sizes; the line is told as one that cannot be read.
    except (ValueError, ZeroDivisionError):
        return None


SETTING_SLIPS: Final = (
    slip(
        ("trim base 9/16 in thick, mdf", "trim base: 9/16 in thick, mdf"),
        ("stock base 12 ft at 17.40", "stock base: 12 ft at 17.40"),
        ("saw kerf 1/8 in", "saw: kerf 1/8 in"),
        ("every room trim base", "every room: trim base"),
        # “Saw”, “nails” and the like name nothing: the colon belongs behind the word itself.
        # “trim base room "Den"” is a room's heading in another order.
        written=rf"^\s*(?![^#\"]*\broom\s+[\"“])"
        rf"(?:(?:trim|stock|on-hand|block|assembly|rack)\s+|(?={_TOPICS}\s))"
        rf"(?P<slip>{_TOPICS}|{_OWN_NAME})(?=\s+[\w$])",
        wanted="a colon behind it",
        remedy="Write {}",
        instead=lambda found: f"{found['slip']}:",
    ),
    slip(
        ("stock: base 12 ft at 17.40", "stock base: 12 ft at 17.40"),
        ("on-hand: base: 40 in", "on-hand base: 40 in"),
        ("trim: base, mdf", "trim base: mdf"),
        ("rack: base 2 of 12 ft", "rack base: 2 of 12 ft"),
        written=r"^\s*(?P<slip>(?P<word>stock|trim|on-hand|block|assembly|rack)\s*:\s*"
        rf"(?P<name>{_OWN_NAME})\s*[:,]?\s*)(?=[\w$])",
        wanted="the trim's name before the colon",
        remedy="Write {}.",
        instead=lambda found: f"{found['word']} {found['name']}: ",
    ),
    slip(
        ("trim base: 9/16 thick 5 1/4 tall", "trim base: 9/16 thick, 5 1/4 tall"),
        ("trim case: 2 1/4 in wide 11/16 in thick", "trim case: 2 1/4 in wide, 11/16 in thick"),
        written=r"\d[^,#]*?\b(?P<slip>thick|tall|wide)(?P<rest>\s+)(?=\d[^,#]*\b(?:thick|tall|wide)\b)",
        wanted="a comma behind a size",
        remedy="Write {},",
        instead=lambda found: f"{found['slip']}, ",
    ),
    slip(
        ("tax: 8.25 %", "tax 8.25 %"),
        ("ends: in", "ends in"),
        ('room: "Den", trim base', 'room "Den", trim base'),
        ("unit: mm", "unit mm"),
        written=r"^\s*(?:tax|currency|spare|ends|room|job|unit|include|surveyed)(?P<slip>\s*:\s*)",
        wanted="what it is, without a colon",
        remedy="Leave the colon out.",
        instead=lambda _: " ",
    ),
    slip(
        ("job Alder Row 12", 'job "Alder Row 12"'),
        ("currency $", 'currency "$"'),
        ("include prices.trim  # of May", 'include "prices.trim"  # of May'),
        written=r"^\s*(?:job|include|currency)\s+(?P<slip>[^\s\"“#:][^\"“#]*?)(?=\s*(?:#|$))",
        wanted="a text in quotes",
        remedy="Write {}.",
        instead=lambda found: f'"{found["slip"]}"',
    ),
    slip(
        ("tax 8.25", "tax 8.25 %"),
        ("spare 10 # for mistakes", "spare 10 % # for mistakes"),
        written=r"^\s*(?:tax|spare)\s+(?P<slip>\d[\d.]*)(?=\s*(?:#|$))",
        wanted="“%” behind it",
        remedy="Write {}.",
        instead=lambda found: f"{found['slip']} %",
    ),
    slip(
        ('room "Den": trim base', 'room "Den", trim base'),
        ('room "Den" as D: trim base, ends in', 'room "Den" as D, trim base, ends in'),
        written=r"^\s*room\s+[\"“][^\"”]*[\"”](?:\s+as\s+\S+?)?(?P<slip>\s*:\s*)",
        wanted="a comma before what is said of the room",
        remedy="Write a comma there.",
        instead=lambda _: ", ",
    ),
    slip(
        ('room "Den" (trim base, ends in)', 'room "Den", trim base, ends in'),
        written=r"^\s*room\b[^()]*?"
        r"(?P<slip>\s*\((?P<parts>(?:trim|ends|open walk|taken)\b[^()]*)\))",
        wanted="a comma before what is said of the room",
        remedy="Leave the brackets out: write {}.",
        instead=lambda found: f", {found['parts']}",
    ),
    slip(
        ('room "Den", trim: base', 'room "Den", trim base'),
        written=r"^\s*(?:room|every)\b.*?,\s*trim(?P<slip>\s*:\s*)",
        wanted="the trim's name",
        remedy="Leave the colon out.",
        instead=lambda _: " ",
    ),
    slip(
        ('room "Den", trim base and shoe', 'room "Den", trim base, shoe'),
        ("every room: trim base & shoe", "every room: trim base, shoe"),
        written=rf"^\s*(?:room|every)\b.*?\btrim\s+{_OWN_NAME}(?P<slip>\s+(?:and|&|\+|/)\s+)",
        wanted="a comma between two trims",
        remedy="Put a comma between them.",
        instead=lambda _: ", ",
    ),
    slip(
        ("ends in, trim base", "every room: ends in, trim base"),
        ("trim base, shoe, ends in", "every room: trim base, shoe, ends in"),
        # “Trim base:” begins a trim's own line, and a room in quotes is another slip.
        written=r"^\s*(?P<slip>(?:(?=[^#]*\btrim\s)ends|trim)\s+[\w\-]+,\s*[^:#\"“=]+?)(?=\s*(?:#|$))",
        wanted="“every room”, where more than one thing is said of them all",
        remedy="Write {}.",
        instead=lambda found: f"every room: {found['slip']}",
    ),
    slip(
        ("all rooms: trim base", "every room: trim base"),
        ("each room: trim base", "every room: trim base"),
        written=r"^\s*(?P<slip>(?:all|each)(?: the)? rooms?)\b",
        wanted="“every room”",
        remedy="Write {}.",
        instead=lambda _: "every room",
    ),
    slip(
        ("on hand base: 40 in", "on-hand base: 40 in"),
        written=r"^\s*(?P<slip>on hand)\b",
        wanted="“on-hand”",
        remedy="Write {}.",
        instead=lambda _: "on-hand",
    ),
    slip(
        ("waste 10 %", "spare 10 %"),
        ("extra 10%", "spare 10%"),
        # Only with a per cent, for a trim or a room may well be called “waste” or “extra”.
        written=r"^\s*(?P<slip>waste|extra|overage|allowance)\s*\d+\s*%",
        wanted="the word for what is bought besides",
        remedy="Write {}.",
        instead=lambda _: "spare",
    ),
    slip(
        ("sales tax 8.25 %", "tax 8.25 %"),
        ("VAT 20 %", "tax 20 %"),
        written=r"^\s*(?P<slip>sales tax|vat|gst)\s*\d[\d.]*\s*%?",
        wanted="“tax”",
        remedy="Write {}.",
        instead=lambda _: "tax",
    ),
    slip(
        ("surveyed 18.4.2026", "surveyed 2026-04-18"),
        ("surveyed 4/18/2026", "surveyed 2026-04-18"),
        written=rf"^\s*surveyed\s+(?P<slip>{_DATE})",
        wanted="a date such as 2026-04-18",
        remedy="Write {}.",
        instead=_date,
    ),
    slip(
        ("surveyed 31.2.2026", None),
        ("surveyed 4/31/2026", None),
        written=rf"^\s*surveyed\s+(?P<slip>{_DATE})",
        wanted="a day of the calendar such as 2026-04-18",
        remedy="There is no such day: look it up, and write year, month and day.",
        instead=None,
    ),
    slip(
        ("date 2026-04-18", "surveyed 2026-04-18"),
        written=r"^\s*(?P<slip>date|measured)\s+\d{4}-\d\d?-\d\d?",
        wanted="“surveyed”",
        remedy="Write {}.",
        instead=lambda _: "surveyed",
    ),
    slip(
        ("trim base: 9/16 x 5 1/4, mdf", "trim base: 9/16 thick, 5 1/4 tall, mdf"),
        ("trim base: 5 1/4 in, 9/16 in", "trim base: 9/16 in thick, 5 1/4 in tall"),
        ("trim base: 5½ x ¾", "trim base: ¾ thick, 5½ tall"),
        ("trim base: 9/16 x 5 1/4 mdf primed", "trim base: 9/16 thick, 5 1/4 tall, mdf primed"),
        ('trim base: mdf 9/16" by 5 1/4"', 'trim base: 9/16" thick, 5 1/4" tall, mdf'),
        ("trim base: 3/4 x 5-1/2", "trim base: 3/4 thick, 5-1/2 tall"),
        written=rf"^\s*trim\s+{_OWN_NAME}\s*:\s*(?P<slip>(?:(?P<first>[^\W\d_][\w ]*?)\s+)?"
        rf"(?P<one>{_SIZE})\s*(?:x|×|by|,)\s*(?P<two>{_SIZE})"
        r"(?:\s+(?P<last>(?!thick|tall|wide|high|deep)[^\W\d_][\w ]*?))?)"
        rf"{END_OF_PART}",
        wanted="which of the two is thick and which tall",
        remedy="Write {}.",
        instead=_section,
    ),
    slip(
        ("trim base: 9/16 in thick by 5 1/4 in tall", "trim base: 9/16 in thick, 5 1/4 in tall"),
        written=r"^\s*trim\b.*?\b(?:thick|tall|wide)(?P<slip>\s+(?:by|x|×|and)\s+)(?=\d)",
        wanted="a comma between the two sizes",
        remedy="Put a comma there.",
        instead=lambda _: ", ",
    ),
    slip(
        ("trim base: 9/16 in thick, 5 1/4 in high", "trim base: 9/16 in thick, 5 1/4 in tall"),
        ("trim base: 9/16 in deep", "trim base: 9/16 in thick"),
        written=r"^\s*trim\b.*?\d[^,]*?\b(?P<slip>(?P<high>height|high)|deep|depth)\b",
        wanted="“thick”, “tall” or “wide”",
        remedy="Write {}.",
        # How deep a trim is, is how far it stands off the wall, which is “thick”.
        instead=lambda found: "tall" if found["high"] else "thick",
    ),
    slip(
        ("stock base: 12 ft: 17.40", "stock base: 12 ft at 17.40"),
        # Only behind a unit: the line's first colon, behind the trim's name, is right.
        written=r"^\s*stock\b[^:]*:[^#]*?\d\s*(?:ft|feet|in|mm|m|')(?P<slip>\s*:\s*)(?=[$€£¥]?\d)",
        wanted="“at” before the price",
        remedy="Write {} there.",
        instead=lambda _: " at ",
    ),
    slip(
        ("stock base: 12 ft at 17.40 USD", "stock base: 12 ft at 17.40"),
        ("bought 2 base 12 ft at 17.40 €", "bought 2 base 12 ft at 17.40"),
        written=r"\bat\s+\d+(?:\.\d+)?(?P<slip>\s*(?:[$€£¥]|(?:usd|eur|gbp|cad|aud|dollars?|bucks)\b))",
        wanted="the price alone",
        remedy="The currency is said once, above: currency “$”. Leave it out here.",
        instead=lambda _: "",
    ),
    slip(
        ("stock base: 1.45 a foot", None),
        ("stock base: $1.45 a foot", None),
        written=r"^\s*stock\b[^:]*:\s*(?P<slip>[$€£¥]?\d+\.\d\d?\s+(?:a|per)\s+\w+)",
        wanted="the lengths before their price",
        remedy="Say what is sold: 8 ft, 12 ft at 1.45 a foot, or any length to 16 ft at 1.45 a"
        " foot.",
        # A price by the foot does not tell which lengths are sold, and nobody can guess them.
        instead=None,
    ),
    slip(
        ("on-hand base: 2 x 40 in", "on-hand base: 2 of 40 in"),
        written=r"^\s*(?:on-hand|rack)\b.*?\d(?P<slip>\s*(?:x|×|\*)\s*)(?=\d)",
        wanted="“of” between how many and how long",
        remedy="Write {} there.",
        instead=lambda _: " of ",
    ),
    slip(
        ("stock base: 10 x 12 ft at 17.40", None),
        ("stock base: 6 of 12 ft at 17.40", None),
        ("stock base: 12 ft x 6 at 17.40", None),
        written=rf"^\s*stock\b.*?(?P<slip>\d+\s*(?:x|×|\*|\bof\b)\s*{WHOLE_LENGTH}"
        rf"|{WHOLE_LENGTH}\s*(?:x|×|\*)\s*\d+)",
        wanted="a stick that is sold",
        remedy="Write pack of 10 12 ft where they are sold together, or 12 ft at 17.40 at most 10"
        " where there are no more.",
        # A pack of ten, or no more than ten to be had: only the price list knows.
        instead=None,
    ),
)
"""What people write above the rooms, and how it stands in a job file."""
