"""Slips in stock as it is: defects, batches, bundles, lengths to pick from, least orders."""

from __future__ import annotations

import re
from typing import Final

from trimlang.language.slips.slip_row import END_OF_PART, Found, slip
from trimlang.language.slips.slip_row import WRITTEN_LENGTH as LONG

_DEFECT: Final = r"(?:knot|split|check|wane|dent|stain|defect)"
_STICKS: Final = r"^\s*(?:on-hand|stock)\b[^#]*?"
_ELSEWHERE: Final = {
    "crack": "split", "cracks": "split", "shake": "split", "splits": "split", "ding": "dent",
    "dings": "dent", "knots": "knot", "bark": "wane", "mark": "stain",
}  # fmt: skip


def _defect(found: Found) -> str:
    return _ELSEWHERE.get(found["slip"].casefold(), "defect")


def _at_an_end(found: Found) -> tuple[str, str]:
    what, long = found["what"] or found["how"], (found["long"] or found["far"]).strip()
    known = what if re.fullmatch(_DEFECT, what, re.IGNORECASE) else "defect"
    left, right = f"{known} 0 in to {long}", f"{known} 0 in to {long} from the right end"
    return (right, left) if found["right"] or found["other"] else (left, right)


STICK_SLIPS: Final = (
    slip(
        (
            "stock base: random lengths 3 of 7 ft, 2 of 11 ft at 120.00",
            "stock base: bundle of 3 of 7 ft, 2 of 11 ft at 120.00",
        ),
        written=r"[:,]\s*(?P<slip>(?:random|mixed) +lengths?\s*:?\s+)(?=\d+ +of\b)",
        wanted="“bundle of” before what is in it",
        remedy="Write {}.",
        instead=lambda _: "bundle of ",
    ),
    slip(
        ("stock base: 12 ft at 17.40 dye lot B", 'stock base: 12 ft at 17.40 batch "B"'),
        written=rf"{_STICKS}\d[^,#]*?(?P<slip>(?:dye +)?lot +(?P<name>\w+))(?=\s*(?:,|#|$))",
        wanted="“batch” and its name in quotes",
        remedy="Write {}.",
        instead=lambda found: f'batch "{found["name"]}"',
    ),
    slip(
        ("on-hand base: 12 ft, crack 3 in to 5 in", "on-hand base: 12 ft, split 3 in to 5 in"),
        ("on-hand base: 12 ft, worm hole 3 in to 5 in", "on-hand base: 12 ft, defect 3 in to 5 in"),
        written=r"^\s*(?:on-hand|stock)\b[^#]*?,\s*(?P<slip>cracks?|shake|splits|dings?|knots"
        r"|bark|mark|hole"
        r"|nail hole|worm hole|gouge|scratch|twist|warp|pitch|sap|damage|bad)(?=\s+\d)",
        wanted="a knot, a split, a check, wane, a dent, a stain or any other defect",
        remedy="Write {}.",
        instead=_defect,
    ),
    slip(
        ("on-hand base: 12 ft, bad end 5 in", "on-hand base: 12 ft, defect 0 in to 5 in"),
        (
            "on-hand base: 12 ft, split right end 5 in",
            "on-hand base: 12 ft, split 0 in to 5 in from the right end",
        ),
        (
            "on-hand base: 12 ft, 5 in bad at the left end",
            "on-hand base: 12 ft, defect 0 in to 5 in",
        ),
        written=rf"{_STICKS},\s*(?P<slip>(?:(?P<what>{_DEFECT}|bad|damaged|poor|rough)"
        r" +(?:at +)?(?:the +)?(?:(?:(?P<right>right)|left) +)?end(?: +of)? +"
        rf"(?P<long>{LONG})|(?P<far>{LONG})\s*(?:of )?(?P<how>bad|damaged|rough|split)"
        rf"\s*(?:at|on|from) +(?:the +)?(?:(?P<other>right)|left) +end)){END_OF_PART}",
        wanted="the defect, where it begins and where it ends",
        remedy="Write {}; or {}, as the stick lies.",
        instead=_at_an_end,
    ),
    slip(
        ("on-hand base: 12 ft, 38 in to 40 in knot", "on-hand base: 12 ft, knot 38 in to 40 in"),
        written=rf"{_STICKS},\s*(?P<slip>(?P<reach>{LONG}\s*to\s+{LONG})\s*"
        rf"(?P<word>{_DEFECT})){END_OF_PART}",
        wanted="the defect before its place",
        remedy="Write {}.",
        instead=lambda found: f"{found['word']} {found['reach'].strip()}",
    ),
    slip(
        ("on-hand base: 12 ft, knot 38-40 in", "on-hand base: 12 ft, knot 38 to 40 in"),
        (
            "on-hand base: 12 ft, knot from 38 in to 40 in",
            "on-hand base: 12 ft, knot 38 in to 40 in",
        ),
        written=rf"\b{_DEFECT}\s+(?P<slip>from +(?P<reach>{LONG}\s*to\s+{LONG})|"
        rf"(?P<one>\d+) *[-–] *"
        rf"(?P<two>\d+(?: ?in\b)?))",
        wanted="where it begins, “to”, and where it ends",
        remedy="Write {}.",
        instead=lambda found: (found["reach"] or f"{found['one']} to {found['two']}").strip(),
    ),
    slip(
        ("on-hand base: 12 ft, knot 38 in", None),
        ("on-hand base: 12 ft, knot at 38 in", None),
        ("on-hand base: 12 ft, 38 in knot", None),
        ("on-hand base: 12 ft knot at 38 in", None),
        ("on-hand base: 12 ft, split 5 in from the right end", None),
        ("on-hand base: 12 ft, knot", None),
        written=rf"{_STICKS}(?P<slip>{_DEFECT}\b[^,#]*|{LONG}\s*{_DEFECT}){END_OF_PART}",
        wanted="where the defect begins and where it ends",
        remedy="Behind a comma, say both, from the stick's left end: knot 38 in to 40 in; or split"
        " 0 in to 5 in from the right end.",
        # what of the stick is sound only the hand that holds it knows
        instead=None,
    ),
    slip(
        ("on-hand base: 12 ft batch A", 'on-hand base: 12 ft batch "A"'),
        ("stock base: 12 ft at 17.40, batch A", 'stock base: 12 ft at 17.40 batch "A"'),
        ('stock base: 12 ft at 17.40, batch "A"', 'stock base: 12 ft at 17.40 batch "A"'),
        written=rf"{_STICKS}\d[^,#]*?(?P<slip>\s*,?\s*batch\s+(?!by\b)(?:\"(?P<quoted>[^\"]*)\"|"
        rf"(?P<bare>[\w\-]+)))"
        rf"{END_OF_PART}",
        wanted="the batch's name in quotes, right behind the stick",
        remedy="Write {}.",
        instead=lambda found: f' batch "{found["quoted"] or found["bare"]}"',
    ),
    slip(
        ('on-hand base: 12 ft lot "A"', 'on-hand base: 12 ft batch "A"'),
        ('stock base: 12 ft at 17.40 dye lot "A"', 'stock base: 12 ft at 17.40 batch "A"'),
        written=rf"{_STICKS}\d[^,#]*?(?P<slip>(?:dye +)?lot|colou?r(?: +batch)?|run no\.?)"
        rf"(?=\s+\")",
        wanted="“batch”",
        remedy="Write {}.",
        instead=lambda _: "batch",
    ),
    slip(
        ("stock base: one batch", "stock base: batch by room"),
        ("stock base: same batch in a room", "stock base: batch by room"),
        ("stock base: batches by wall", "stock base: batch by wall"),
        written=r"^\s*stock\b[^#]*?[:,]\s*(?P<slip>(?:one|same|single) +batch(?: (?:a|per|in a"
        r"|by) room)?"
        r"|(?!batch by)batch(?:es)? (?:per|by|in a) (?:(?P<wall>wall)|room))\b",
        wanted="“batch by room” or “batch by wall”",
        remedy="Write {}.",
        instead=lambda found: f"batch by {'wall' if found['wall'] else 'room'}",
    ),
    slip(
        ("stock base: bundle 3 of 7 ft at 40.00", "stock base: bundle of 3 of 7 ft at 40.00"),
        ("stock base: bundle: 3 of 7 ft at 40.00", "stock base: bundle of 3 of 7 ft at 40.00"),
        written=r"\b(?P<slip>bundle\s*:?\s+)(?=\d)",
        wanted="“of” behind it",
        remedy="Write {}.",
        instead=lambda _: "bundle of ",
    ),
    slip(
        ("stock base: bundle of 3 of 7 ft", None),
        ("stock base: bundle of 3 of 7 ft, 4 of 9 ft", None),
        written=rf"\b(?P<slip>bundle of +\d+ of +{LONG}(?:,\s*\d+ of +{LONG})*)(?=\s*(?:#|$))",
        wanted="what the bundle costs",
        remedy="Say it behind the last length: bundle of 3 of 7 ft at 40.00.",
        instead=None,
    ),
    slip(
        (
            "stock base: pick 6 of 6 ft at 1.45 a foot",
            "stock base: pick from 6 of 6 ft at 1.45 a foot",
        ),
        written=r"\b(?P<slip>pick(?:ed)?|choose|choice)(?=\s+\d)",
        wanted="“pick from”",
        remedy="Write {}.",
        instead=lambda _: "pick from",
    ),
    slip(
        (
            "stock base: random lengths 6 ft to 16 ft at 1.45 a foot",
            "stock base: any length from 6 ft to 16 ft at 1.45 a foot",
        ),
        written=rf"[:,]\s*(?P<slip>(?:random|mixed|all|various) +lengths?(?: +from)?"
        rf"(?= +{LONG}\s*to\b))",
        wanted="“any length” where the yard cuts to length",
        remedy="Write {}; sticks counted at the yard are a bundle of, or pick from.",
        instead=lambda _: "any length from",
    ),
    slip(
        ("stock base: random lengths at 1.45 a foot", None),
        ("stock base: any length at 1.45 a foot", None),
        written=r"[:,]\s*(?P<slip>(?:random|mixed|any|various) +lengths?)(?=\s*(?:at\b|,|#|$))",
        wanted="how long the longest is",
        remedy="Where the yard cuts to length, write any length to 16 ft; sticks that were counted"
        " there are pick from 6 of 6 ft, 3 of 13 ft.",
        instead=None,
    ),
    slip(
        (
            "stock base: at least 10 pieces, 12 ft at 17.40",
            "stock base: at least 10 sticks, 12 ft at 17.40",
        ),
        written=r"\bat least +\d+ +(?P<slip>pieces?|pcs?\.?|lengths?|boards?|pack|off)\b",
        wanted="“sticks”, or a price",
        remedy="Write {}.",
        instead=lambda _: "sticks",
    ),
    slip(
        ("stock base: minimum 10 sticks", "stock base: at least 10 sticks"),
        ("stock base: min order 150.00", "stock base: at least 150.00"),
        (
            "stock base: 12 ft at 17.40, minimum order 10 sticks",
            "stock base: 12 ft at 17.40, at least 10 sticks",
        ),
        written=r"[:,]\s*(?P<slip>min(?:imum)?\.?(?: +(?:order|qty|quantity|buy))?(?: +of)?"
        r"|no less than|moq)"
        r"(?=\s+[$€£¥]?\d)",
        wanted="“at least”",
        remedy="Write {}.",
        instead=lambda _: "at least",
    ),
    slip(
        ("grain: one way", None),
        ("pattern: one way", None),
        written=r"^\s*(?P<slip>(?:grain|pattern|direction)\s*:)",
        wanted="a line of a job file",
        remedy="A grain or pattern with a direction is said in its trim's line: trim skirt: 3/4 in"
        " thick, 11 1/4 in tall, oak, one way.",
        instead=None,
    ),
)
"""What is often written of sticks, and how the language says it."""
