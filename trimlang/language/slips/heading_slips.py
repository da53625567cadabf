"""Slips above the rooms and in their headings: words of one's own for what the file asks."""

from __future__ import annotations

import datetime
from typing import Final

from trimlang.language.slips.slip_row import ANY_NAME, END_OF_PART, WHOLE_LENGTH, Found, slip

_CORNERS: Final = r"(?P<joint>in|out|inside|outside|in-corner|out-corner)"
_MONTHS: Final = (
    "jan feb mar apr may jun jul aug sep oct nov dec".split()
)  # in the order of the year
_MONTH: Final = rf"(?P<month>{'|'.join(_MONTHS)})[a-z]*\.?"
_ROOM: Final = r"^\s*(?:room|every\s+room)\b"


def _named_month(found: Found) -> str | None:
    month = _MONTHS.index(found["month"].casefold()) + 1
    try:
        return datetime.date(int(found["year"]), month, int(found["day"])).isoformat()
    except ValueError:
        return None


HEADING_SLIPS: Final = (
    slip(
        ("job: Quince Row", 'job "Quince Row"'),
        ("job = Quince Row", 'job "Quince Row"'),
        ("include: prices.trim", 'include "prices.trim"'),
        written=r"^\s*(?:job|include|currency)(?P<slip>\s*[:=]\s*(?P<text>[^\s\"“#:=][^\"“#]*?))"
        r"(?=\s*(?:#|$))",
        wanted="a text in quotes, without a colon",
        remedy="Write {}.",
        instead=lambda found: f' "{found["text"]}"',
    ),
    slip(
        ("Room: Den", 'Room "Den"'),
        ("room = Guest bath, trim base", 'room "Guest bath", trim base'),
        written=r"^\s*room(?P<slip>\s*[:=]\s*(?P<text>[^\s\"“,#:=][^\"“,#:=]*?))(?=\s*(?:[,#]|$))",
        wanted="the room's name in quotes, without a colon",
        remedy="Write {}.",
        instead=lambda found: f' "{found["text"]}"',
    ),
    slip(
        ("surveyed 18 April 2026", "surveyed 2026-04-18"),
        ("surveyed 3rd of may 2026", "surveyed 2026-05-03"),
        written=rf"^\s*surveyed\s+(?:on\s+)?(?P<slip>(?P<day>\d\d?)(?:st|nd|rd|th|\.)?\s+(?"
        rf":of\s+)?{_MONTH},?\s+(?P<year>\d{{4}}))",
        wanted="a date such as 2026-04-18",
        remedy="Write {}.",
        instead=_named_month,
    ),
    slip(
        ("surveyed April 18, 2026", "surveyed 2026-04-18"),
        written=rf"^\s*surveyed\s+(?:on\s+)?(?P<slip>{_MONTH}\s+(?P<day>\d\d?)(?:st|nd|rd|th)?,?"
        rf"\s+(?P<year>\d{{4}}))",
        wanted="a date such as 2026-04-18",
        remedy="Write {}.",
        instead=_named_month,
    ),
    slip(
        ("spare 10 percent", "spare 10 %"),
        ("tax 8.25 per cent", "tax 8.25 %"),
        written=r"\d(?P<slip>\s*(?:percent|per cent|pct\.?))(?![\w])",
        wanted="“%”",
        remedy="Write {}.",
        instead=lambda _: " %",
    ),
    slip(
        ("waste factor 10%", "spare 10%"),
        ("allow 10 %", "spare 10 %"),
        ("waste: 10 %", "spare 10 %"),
        written=r"^\s*(?P<slip>(?:waste|spare) (?:factor|allowance)|allow|add"
        r"|(?:waste|allowance|extra)\s*[:=])\s*\d+\s*%",
        wanted="the word for what is bought besides",
        remedy="Write {}.",
        instead=lambda _: "spare",
    ),
    slip(
        ("round to the nearest 1/16", "round to 1/16"),
        ("round to next 1/16 in", "round to 1/16 in"),
        written=r"^\s*round\s+to(?P<slip>\s+(?:the\s+)?(?:nearest|next|closest))(?=\s+\d)",
        wanted="the step",
        remedy="Leave that out: which way a length is rounded, its ends say.",
        instead=lambda _: "",
    ),
    slip(
        ("round: 1/32 in", "round to 1/32 in"),
        ("round 1/32", "round to 1/32"),
        ("tape reads to 1/32 in", "round to 1/32 in"),
        ("measure to the nearest 1 mm", "round to 1 mm"),
        written=r"^\s*(?P<slip>(?:round(?:ing)?(?:\s*:)?|(?:tape|measured?|reads?|accurate|precise)\b[^\d#]*?"
        r"\b(?:to|in)\b)(?:\s+the)?(?:\s+nearest)?)(?=\s*\d[^,#]*(?:#|$))",
        wanted="the step of the tape",
        remedy="Write “{}” and the step.",
        instead=lambda _: "round to",
    ),
    slip(
        ("tape: mm", "unit mm"),
        ("units: in", "unit in"),
        written=r"^\s*(?P<slip>(?:tape|units|measured?)\s*(?::|=|\bin\b)?)(?=\s*(?:mm|cm|m|in|ft)\s*(?:#|$))",
        wanted="the unit of bare numbers",
        remedy="Write “{}”.",
        instead=lambda _: "unit",
    ),
    slip(
        ("no splices", "splices: never"),
        ("never splice", "splices: never"),
        written=r"^\s*(?P<slip>no (?:splices?|joints?)|never splice)(?=\s*(?:#|$))",
        wanted="the line of splices",
        remedy="Write {}.",
        instead=lambda _: "splices: never",
    ),
    slip(
        ("cope inside corners", "corners: in-corner cope"),
        ("mitre all inside corners", "corners: in-corner mitre"),
        ("cope corners", "corners: in-corner cope"),
        written=r"^\s*(?P<slip>(?P<fit>cope|mitre|miter)(?: all)?(?: inside| in)? corners?)(?"
        r"=\s*(?:#|$))",
        wanted="the corners' line",
        remedy="Write {}.",
        instead=lambda found: (
            f"corners: in-corner {'cope' if found['fit'].casefold() == 'cope' else 'mitre'}"
        ),
    ),
    slip(
        ("all ends in-corner", "ends in-corner"),
        ("all corners inside", "ends inside"),
        ("inside corners", "ends inside"),
        written=rf"^\s*(?P<slip>(?:all (?:ends|corners)(?: are)? {_CORNERS}|(?P<kind>in|inside|"
        rf"out|outside) corners))"
        r"(?=\s*(?:#|$))",
        wanted="“ends”",
        remedy="Write {}.",
        instead=lambda found: f"ends {found['joint'] or found['kind']}",
    ),
    slip(
        ("nails: 16 in o.c.", "nails: every 16 in"),
        ("nails: 16 in apart", "nails: every 16 in"),
        ("splices: studs 16 in oc", "splices: studs every 16 in"),
        written=rf"^\s*(?:nails|splices)\s*:[^#]*?(?P<slip>(?P<long>{WHOLE_LENGTH})\s*(?:o\.?"
        rf"c\.?|on cent(?:er|re)s?|apart))",
        wanted="“every” before how far apart",
        remedy="Write {}.",
        instead=lambda found: f"every {found['long'].strip()}",
    ),
    slip(
        ("corners: 91 deg", None),
        written=r"^\s*corners?\s*:\s*(?P<slip>\d[\d./]*(?: ?(?:deg|°))?)(?=\s*(?:#|$))",
        wanted="what holds for the job's corners",
        remedy="A corner's angle stands at its wall: right=in-corner(91 deg).",
        instead=None,
    ),
    slip(
        ('rm "Den", trim base', 'room "Den", trim base'),
        ('Rooms "Den", trim base', 'room "Den", trim base'),
        written=r"^\s*(?P<slip>rm\.?|rooms)(?=\s*\")",
        wanted="“room”",
        remedy="Write {}.",
        instead=lambda _: "room",
    ),
    slip(
        ("Den:", 'room "Den"'),
        ('"Den"', 'room "Den"'),
        ('"Den", trim base', 'room "Den", trim base'),
        written=r"^\s*(?P<slip>(?P<one>(?!(?:north|south|east|west|back|front)\b)"
        r"[^\W\d_][\w\- ]{2,}?)\s*:(?=\s*(?:#|$))"
        r"|\"(?P<two>[^\"]*)\"(?=\s*(?:,\s*(?:trim|ends|casing|open)\b.*)?(?:#|$)))",
        wanted="“room” before a room's name",
        remedy="Write {}.",
        instead=lambda found: f'room "{found["one"] or found["two"]}"',
    ),
    slip(
        ("living room, trim base", 'room "living room", trim base'),
        ("Den, trim base, ends in", 'room "Den", trim base, ends in'),
        written=r"^\s*(?P<slip>(?!room\b|every\b|ends\b|trim\b)[^\W\d_][\w\-]*(?"
        r": [^\W\d_][\w\-]*)*)(?=\s*,\s*trim\s+[^\W\d_])",
        wanted="“room” before a room's name",
        remedy="Write {}.",
        instead=lambda found: f'room "{found["slip"]}"',
    ),
    slip(
        ('room "Den" - trim base', 'room "Den", trim base'),
        ('room "Den"; trim base', 'room "Den", trim base'),
        written=r"^\s*room\s+[\"“][^\"”]*[\"”](?:\s+as\s+\S+?)?(?P<slip>\s*[\-–;/|]\s*)",
        wanted="a comma before what is said of the room",
        remedy="Write a comma there.",
        instead=lambda _: ", ",
    ),
    slip(
        ('room "Den", base and shoe', 'room "Den", trim base, shoe'),
        ('room "Den", base + shoe, ends in', 'room "Den", trim base, shoe, ends in'),
        written=rf"{_ROOM}[^#]*?,\s*(?P<slip>(?!trim\b)(?P<one>{ANY_NAME})\s*(?:and|&|\+)\s*(?"
        rf"P<two>{ANY_NAME})){END_OF_PART}",
        wanted="“trim”, and a comma between two trims",
        remedy="Write {}.",
        instead=lambda found: f"trim {found['one']}, {found['two']}",
    ),
    slip(
        ('room "Den", with base', 'room "Den", trim base'),
        ('room "Den", gets base', 'room "Den", trim base'),
        written=rf"{_ROOM}[^#]*?,\s*(?P<slip>(?:with|gets?|needs)\s+)(?={ANY_NAME}{END_OF_PART})",
        wanted="“trim” before the trim's name",
        remedy="Write {}.",
        instead=lambda _: "trim ",
    ),
    slip(
        ('room "Den", trim base, no shoe', 'room "Den", trim base'),
        ('room "Den", no crown, trim base', 'room "Den", trim base'),
        written=rf"{_ROOM}[^#]*?(?P<slip>,\s*(?:no|without)\s+{ANY_NAME}){END_OF_PART}",
        wanted="the trims that the room gets",
        remedy="A room gets what its line names: leave that out.",
        instead=lambda _: "",
    ),
    slip(
        ('room "Den", trim base, 9 ft ceiling', 'room "Den", trim base, note "9 ft ceiling"'),
        ('room "Den", height 96, trim base', 'room "Den", note "height 96", trim base'),
        written=rf"{_ROOM}[^#]*?,\s*(?P<slip>{WHOLE_LENGTH}\s*(?:ceilings?|high|tall)|(?"
        rf":ceilings?|height|high)\s+[^,#]*?){END_OF_PART}",
        wanted="what is said of a room",
        remedy="How high a room is, nothing asks; it may stand in a note: write {}.",
        instead=lambda found: f'note "{found["slip"]}"',
    ),
    slip(
        ('room "Den", inside corners', 'room "Den", ends inside'),
        ('room "Den", trim base, all corners inside', 'room "Den", trim base, ends inside'),
        ('room "Den", all in', 'room "Den", ends in'),
        written=rf"{_ROOM}[^#]*?,\s*(?P<slip>(?:all\s+)?(?P<kind>in|inside|out|outside)\s+corners"
        rf"|(?:all(?:\s+(?:ends|corners))?|corners)(?:\s+are)?\s+{_CORNERS}){END_OF_PART}",
        wanted="“ends”",
        remedy="Write {}.",
        instead=lambda found: f"ends {found['joint'] or found['kind']}",
    ),
)
"""What people write above the rooms and in their headings, and how it stands in a job file."""
