"""Slips in what trim is painted, filled, glued and cut with: girth, coats, cans, tubs, blades."""

from __future__ import annotations

from typing import Final

from trimlang.language.slips.slip_row import END_OF_PART, slip
from trimlang.language.slips.slip_row import WRITTEN_LENGTH as LONG

_PRICE: Final = r"[$€£¥]?\d+\.\d\d"

SUPPLY_SLIPS: Final = (
    slip(
        ("paint: 2 coats, girth 6 in", "paint: 2 coats"),
        written=rf"^\s*paint\b[^#]*?(?P<slip>\s*,\s*girth +{LONG}){END_OF_PART}",
        wanted="nothing of a profile",
        remedy="A girth is said in its trim's line: trim crown: 11/16 in thick, 3 5/8 in wide,"
        " girth"
        " 4 1/4 in. Leave it out here.",
        instead=lambda _: "",
    ),
    slip(
        ("paint: backs", "primer: backs, can 1 quart"),
        ("paint: back side", "primer: backs, can 1 quart"),
        written=rf"^\s*(?P<slip>paint\s*:\s*(?:the +)?backs?(?: +sides?)?){END_OF_PART}",
        wanted="the primer's line, since backs get a coat of that",
        remedy="Write {}, and what one costs if the order is to say it: at 19.00.",
        instead=lambda _: "primer: backs, can 1 quart",
    ),
    slip(
        ("paint: both faces", None),
        ("paint: 2 coats, both sides", None),
        ("paint: 2 coats, backs", None),
        written=rf"^\s*paint\b[^#]*?(?P<slip>both (?:faces|sides)|(?:the +)?backs?(?: +sides?)?)"
        rf"{END_OF_PART}",
        wanted="what is said of paint",
        remedy="Backs and bottom edges get a coat of primer: primer: backs, can 1 quart at"
        " 19.00. The"
        " casing of an opening's other side is both faces in the opening's line.",
        instead=None,
    ),
    slip(
        ("trim crown: 11/16 in thick, 3 5/8 in wide, girth", None),
        written=rf"^\s*trim\b[^#]*?,\s*(?P<slip>girth){END_OF_PART}",
        wanted="its measure",
        remedy="Lay a tape over the profile from edge to edge: girth 4 1/4 in.",
        instead=None,
    ),
    slip(
        (
            "trim crown: 11/16 in thick, 3 5/8 in wide, 4 1/4 in girth",
            "trim crown: 11/16 in thick, 3 5/8 in wide, girth 4 1/4 in",
        ),
        written=rf"^\s*trim\b[^#]*?,\s*(?P<slip>(?P<long>{LONG})\s*(?:girth|profile|around"
        rf"|round))\b",
        wanted="“girth” before its measure",
        remedy="Write {}.",
        instead=lambda found: f"girth {found['long'].strip()}",
    ),
    slip(
        (
            "trim crown: 11/16 in thick, 3 5/8 in wide, profile 4 1/4 in",
            "trim crown: 11/16 in thick, 3 5/8 in wide, girth 4 1/4 in",
        ),
        written=r"^\s*trim\b[^#]*?,\s*(?P<slip>profile|perimeter|developed width|face length)"
        r"(?=\s+\d)",
        wanted="“girth”, a tape laid over the profile",
        remedy="Write {}.",
        instead=lambda _: "girth",
    ),
    slip(
        ("paint: coats 2", "paint: 2 coats"),
        written=r"^\s*paint\b[^#]*?(?P<slip>coats *[:=]? *(?P<count>\d+))\b",
        wanted="how many first",
        remedy="Write {}.",
        instead=lambda found: f"{found['count']} coats",
    ),
    slip(
        ("paint: can 1 gallon 40.00", "paint: can 1 gallon at 40.00"),
        ("glue: bottle 8 fl oz 5.90", "glue: bottle 8 fl oz at 5.90"),
        ("nails: box of 1000 11.90", "nails: box of 1000 at 11.90"),
        ("saw: blade 1500 cuts 39.00", "saw: blade 1500 cuts at 39.00"),
        written=r"^\s*(?:paint|primer|putty|glue|filler|caulk|nails|saw)\b[^#]*?\b(?:quart"
        r"|gallon|litre|oz|cuts"
        rf"|box of \d+)(?P<slip>\s*(?:for|=|:|,)?\s+(?P<price>{_PRICE})){END_OF_PART}",
        wanted="“at” before the price",
        remedy="Write {}.",
        instead=lambda found: f" at {found['price']}",
    ),
    slip(
        ("putty: tub 4 oz at 3.50", "putty: tub 4 fl oz at 3.50"),
        ("glue: bottle 8 ounces at 5.90", "glue: bottle 8 fl oz at 5.90"),
        written=r"^\s*(?:putty|glue|filler|caulk)\b[^#]*?\d\s*(?P<slip>oz\b\.?|ounces?|floz)",
        wanted="“fl oz”",
        remedy="Write {}.",
        instead=lambda _: "fl oz",
    ),
    slip(
        ("putty: 4 fl oz at 3.50", "putty: tub 4 fl oz at 3.50"),
        ("glue: 8 fl oz at 5.90", "glue: bottle 8 fl oz at 5.90"),
        ("glue: tub 8 fl oz", "glue: bottle 8 fl oz"),
        written=r"^\s*(?:(?P<glue>glue)|putty|filler)\s*:\s*(?P<slip>(?:tub |can |tube |bottle "
        r"|jar )?(?P<much>\d))",
        wanted="what holds it",
        remedy="Write {} there.",
        # the figure is written again, since what is marked must be seen
        instead=lambda found: f"{'bottle' if found['glue'] else 'tub'} {found['much']}",
    ),
    slip(
        ("primer: can 1 quart at 19.00", "primer: backs, can 1 quart at 19.00"),
        written=r"^\s*primer\s*:\s*(?P<slip>can)\b",
        wanted="“backs”, which is what gets it",
        remedy="Write {}.",
        instead=lambda _: "backs, can",
    ),
    slip(
        ("primer: backs", None),
        written=rf"^\s*primer\s*:\s*(?P<slip>backs){END_OF_PART}",
        wanted="what a can of it holds",
        remedy="Write primer: backs, can 1 quart at 19.00; the price may be left out.",
        instead=None,
    ),
    slip(
        ("saw: blade at 39.00", None),
        ("saw: blade 39.00", None),
        written=rf"^\s*saw\b[^#]*?(?P<slip>blade(?: at)? +{_PRICE}){END_OF_PART}",
        wanted="how many cuts a blade makes",
        remedy="Write blade 1500 cuts at 39.00.",
        instead=None,
    ),
    slip(
        ("blade: 1500 cuts at 39.00", "saw: blade 1500 cuts at 39.00"),
        ("blades 1500 cuts at 39.00", "saw: blade 1500 cuts at 39.00"),
        ("blade lasts 1500 cuts", "saw: blade 1500 cuts"),
        written=r"^\s*(?P<slip>blades?\s*:?\s*(?:lasts?|makes?|does|good for)?\s*)\d+ +cuts\b",
        wanted="the saw's line",
        remedy="Write {}.",
        instead=lambda _: "saw: blade ",
    ),
    slip(
        ("saw: blade lasts 1500 cuts at 39.00", "saw: blade 1500 cuts at 39.00"),
        ("saw: blade good for 1500 cuts", "saw: blade 1500 cuts"),
        ("saw: blade = 1500 cuts", "saw: blade 1500 cuts"),
        written=r"^\s*saw\b[^#]*?\bblade(?P<slip>s?\s*(?:lasts?|makes?|does|(?:is )?good for"
        r"|every|for|of|=|:)\s*)(?=\d)",
        wanted="how many cuts it makes, right behind",
        remedy="Leave that out.",
        instead=lambda _: " ",
    ),
)
"""What is often written of supplies, and how the language says it."""
