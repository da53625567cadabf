"""Slips in the lines of a site log: other words for what was done, signs too many."""

from __future__ import annotations

import re
from typing import Final

from trimlang.language.slips.slip_row import ANY_NAME, WHOLE_LENGTH, Found, slip

_COUNT: Final = re.compile(r"\d")
_PIECE: Final = r"[^\W\d_]\w*-[\w\-]+"
_COUNTS: Final = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "ten": 10}


def _piece_first(found: Found) -> str | None:
    if _COUNT.fullmatch(found["long"].strip()):
        # “cut 2 ST-N-base”: a number of pieces, and no length.
        return None
    to = " to" if found["done"].casefold() == "shortened" else ""
    return f"{found['piece']}{to} {found['long'].strip()}"


LOG_SLIPS: Final = (
    slip(
        ("ST-N-base cut", "cut ST-N-base"),
        ("ST-N-base, ST-E-base fitted", "fitted ST-N-base, ST-E-base"),
        written=rf"^\s*(?P<slip>(?P<pieces>{_PIECE}(?:\s*,\s*{_PIECE})*)\s+(?P<done>cut|spoiled|"
        rf"fitted))"
        r"(?=\s*(?:#|$))",
        wanted="what was done first",
        remedy="Write {}.",
        instead=lambda found: f"{found['done']} {found['pieces']}",
    ),
    slip(
        ("ST-N-base done", None),
        ("ST-N-base ok", None),
        written=rf"^\s*(?P<slip>{_PIECE}\s+(?:done|ok|ready|up))(?=\s*(?:#|$))",
        wanted="what was done",
        remedy="Write cut or fitted before the piece: cut ST-N-base 29 1/8 in.",
        instead=None,
    ),
    slip(
        ("cut all of N", None),
        ("fitted all of the study", None),
        written=r"^\s*(?:cut|fitted|spoiled)\s+(?P<slip>(?:all|everything|the rest)\b[^,#]*)",
        wanted="each piece by its name",
        remedy="Name them as on their tickets: fitted ST-N-base, ST-E-base.",
        instead=None,
    ),
    slip(
        ("cut ST N base", "cut ST-N-base"),
        ("fitted ST N2 base, ST-E-base", "fitted ST-N2-base, ST-E-base"),
        written=r"^\s*(?:cut|fitted|spoiled|shortened)\s+(?P<slip>(?P<tag>[^\W\d_]\w*) (?"
        r"P<run>(?!from\b|into\b|to\b)[^\W_]\w*)"
        r" (?P<trim>[^\W\d_]\w*))(?=\s*(?:,|#|$)|\s+\d)",
        wanted="a piece's name in one",
        remedy="Write {}.",
        instead=lambda found: f"{found['tag']}-{found['run']}-{found['trim']}",
    ),
    slip(
        ("cut base A 30 in", "cut base-A 30 in"),
        ("fitted A base", "fitted A-base"),
        written=r"^\s*(?:cut|fitted|spoiled|shortened)\s+(?P<slip>(?P<one>(?!rack\b|stick\b)[^\W\d_]\w*)\s+"
        r"(?P<two>(?!from|into|to|left)[^\W\d_]\w*))(?=\s*(?:,|#|$)|\s+\d)",
        wanted="a piece's name in one",
        remedy="A piece is called as on its ticket, such as ST-N-base: write {}.",
        instead=lambda found: f"{found['one']}-{found['two']}",
    ),
    slip(
        ('cut "ST-N-base"', "cut ST-N-base"),
        written=rf"^\s*(?:cut|fitted|spoiled|shortened)\s+(?P<slip>[\"“](?P<piece>{_PIECE})[\"”])",
        wanted="a piece's name without quotes",
        remedy="Write {}.",
        instead=lambda found: found["piece"],
    ),
    slip(
        ("cut ST-N-base (30 in)", "cut ST-N-base 30 in"),
        written=rf"^\s*cut\s+{_PIECE}(?P<slip>\s*\(\s*(?P<long>{WHOLE_LENGTH})\s*\))",
        wanted="the length right behind the piece",
        remedy="Write {}.",
        instead=lambda found: f" {found['long'].strip()}",
    ),
    slip(
        ("cut ST-N-base today", "cut ST-N-base"),
        ("fitted ST-N-base, ST-E-base done", "fitted ST-N-base, ST-E-base"),
        written=rf"^\s*(?:cut|fitted|spoiled)\b[^#]*?{_PIECE}(?P<slip>\s+(?:today|done|ok|again|"
        rf"twice|now))(?=\s*(?:,|#|$))",
        wanted="the piece alone",
        remedy="Leave that out; what is to be remembered stands behind #.",
        instead=lambda _: "",
    ),
    slip(
        ("spoiled ST-N-base left 22 in", "spoiled ST-N-base into 22 in"),
        ("spoiled ST-N-base, 22 in left", "spoiled ST-N-base into 22 in"),
        written=rf"^\s*spoiled\s+{_PIECE}(?P<slip>\s*,?\s*(?:(?:left|leaves)\s+(?"
        rf"P<one>{WHOLE_LENGTH})"
        rf"|(?P<two>{WHOLE_LENGTH})\s*(?:left|good|usable)))(?=\s*(?:,|#|$))",
        wanted="“into” before what can still be used",
        remedy="Write {}.",
        instead=lambda found: f" into {(found['one'] or found['two']).strip()}",
    ),
    slip(
        ("spoiled ST-N-base 1/2 in short", None),
        ("spoiled ST-N-base too short", None),
        written=rf"^\s*spoiled\s+{_PIECE}(?P<slip>\s*,?\s*(?:cut\s+)?(?:{WHOLE_LENGTH}|too)\s*(?"
        rf":short|long))",
        wanted="what of it can still be used",
        remedy="Write how long that is, into 22 in, or nothing where none of it can.",
        instead=None,
    ),
    slip(
        ("shortened ST-N-base 28 7/8 in", "shortened ST-N-base to 28 7/8 in"),
        written=rf"^\s*shortened\s+{_PIECE}\s+(?P<slip>(?=\d+(?! ?[/⁄])){WHOLE_LENGTH})",
        wanted="“to” before how long it is now",
        remedy="Write {}.",
        instead=lambda found: f"to {found['slip'].strip()}",
    ),
    slip(
        ("shortened ST-N-base by 1/8 in", None),
        ("shortened ST-N-base 1/8 in", None),
        written=rf"^\s*shortened\s+{_PIECE}\s+(?P<slip>(?:by\s+)?{WHOLE_LENGTH})",
        wanted="how long it is now",
        remedy="Measure what is left, and write to 28 7/8 in.",
        instead=None,
    ),
    slip(
        ("cut ST-N-base from base 1", "cut ST-N-base from base-1"),
        written=rf"^\s*(?:cut|spoiled)\b[^#]*?\bfrom\s+(?P<slip>(?P<trim>(?!stick\b|"
        rf"the\b){ANY_NAME})\s+(?P<number>\d+))(?=\s*(?:,|#|$))",
        wanted="the stick's name as on its ticket",
        remedy="Write {}.",
        instead=lambda found: f"{found['trim']}-{found['number']}",
    ),
    slip(
        ("cut ST-N-base from the 12 ft", "cut ST-N-base from 12 ft"),
        written=r"^\s*(?:cut|spoiled)\b[^#]*?\bfrom(?P<slip>\s+(?:the|a|one))(?=\s)",
        wanted="the stick",
        remedy="Leave that out.",
        instead=lambda _: "",
    ),
    slip(
        ("cut ST-N-base 30 in from base-1 12 ft", "cut ST-N-base 30 in from base-1 of 12 ft"),
        written=rf"^\s*(?:cut|spoiled)\b[^#]*?\bfrom\s+{_PIECE}\s+(?P<slip>{WHOLE_LENGTH})",
        wanted="“of” before how long the stick was",
        remedy="Write {}.",
        instead=lambda found: f"of {found['slip'].strip()}",
    ),
    slip(
        ("spoilt ST-N-base", "spoiled ST-N-base"),
        ("ruined ST-N-base into 22 in", "spoiled ST-N-base into 22 in"),
        written=r"^\s*(?P<slip>spoilt|ruined|wasted|scrapped|botched|broke|broken|damaged|lost)"
        rf"(?=\s+{_PIECE})",
        wanted="“spoiled”",
        remedy="Write {}.",
        instead=lambda _: "spoiled",
    ),
    slip(
        ("installed ST-N-base", "fitted ST-N-base"),
        ("hung ST-N-base, ST-E-base", "fitted ST-N-base, ST-E-base"),
        written=r"^\s*(?P<slip>installed|hung|mounted|nailed)(?=\s)",
        wanted="“fitted”",
        remedy="Write {}.",
        instead=lambda _: "fitted",
    ),
    slip(
        ("cut: ST-N-base", "cut ST-N-base"),
        ("bought: 2 base 12 ft", "bought 2 base 12 ft"),
        written=r"^\s*(?:cut|spoiled|shortened|fitted|bought)(?P<slip>\s*:\s*)",
        wanted="what was done, without a colon",
        remedy="Leave the colon out.",
        instead=lambda _: " ",
    ),
    slip(
        ("cut 30 in ST-N-base", "cut ST-N-base 30 in"),
        ("cut ST-E-base, 29 1/8 of ST-N-base", "cut ST-E-base, ST-N-base 29 1/8"),
        ("shortened 28 7/8 in ST-N-base", "shortened ST-N-base to 28 7/8 in"),
        written=r"^\s*(?P<done>cut|spoiled|shortened)\b(?:[^#]*,)?\s*"
        rf"(?P<slip>(?P<long>{WHOLE_LENGTH})\s*(?:of|off|for)?\s*(?P<piece>[^\W\d_][\w]*-[\w\-]+))",
        wanted="the piece before its length",
        remedy="Write {}.",
        instead=_piece_first,
    ),
    slip(
        ("cut ST-N-base at 30 in", "cut ST-N-base 30 in"),
        ("cut ST-N-base, 30 in from base-1", "cut ST-N-base 30 in from base-1"),
        ("cut ST-N-base = 30 in", "cut ST-N-base 30 in"),
        ("cut ST-N-base @ 30 in", "cut ST-N-base 30 in"),
        written=r"^\s*cut\s+[\w\-]*-[\w\-]+(?P<slip>\s*(?:,|=|:|@|\bat\b|\bto\b)\s*)"
        rf"{WHOLE_LENGTH}",
        wanted="the length right behind the piece",
        remedy="Leave that out.",
        instead=lambda _: " ",
    ),
    slip(
        ("cut ST-N-base 30 in out of base-1", "cut ST-N-base 30 in from base-1"),
        ("cut ST-N-base off base-1", "cut ST-N-base from base-1"),
        written=r"^\s*(?:cut|spoiled)\b[^,#]*?\s(?P<slip>out of|off|of)(?=\s+[^\W\d_])",
        wanted="“from” before the stick",
        remedy="Write {}.",
        instead=lambda _: "from",
    ),
    slip(
        ("fitted ST-N-base and ST-E-base", "fitted ST-N-base, ST-E-base"),
        ("cut ST-N-base & ST-E-base", "cut ST-N-base, ST-E-base"),
        written=r"^\s*(?:cut|spoiled|fitted)\b[^#]*?[\w\-]-[\w\-]+(?P<slip>\s+(?:and|&|\+)\s+)",
        wanted="a comma between two pieces",
        remedy="Put a comma between them.",
        instead=lambda _: ", ",
    ),
    slip(
        ("bought two base 12 ft", "bought 2 base 12 ft"),
        written=rf"^\s*bought\s+(?P<slip>{'|'.join(_COUNTS)})\b",
        wanted="how many in figures",
        remedy="Write {}.",
        instead=lambda found: str(_COUNTS[found["slip"].casefold()]),
    ),
    slip(
        ("bought 2 sticks base 12 ft", "bought 2 base 12 ft"),
        ("bought 2 sticks of base 12 ft at 17.40", "bought 2 base 12 ft at 17.40"),
        written=r"^\s*bought\s+\d+(?P<slip>\s+(?:sticks?|pieces?|lengths?|pcs?)(?:\s+of)?)(?=\s)",
        wanted="the trim's name behind how many",
        remedy="Leave that out.",
        instead=lambda _: "",
    ),
    slip(
        ("bought 2 base 12 ft, 17.40", "bought 2 base 12 ft at 17.40"),
        ("bought 2 base 12 ft for 17.40", "bought 2 base 12 ft at 17.40"),
        written=rf"^\s*bought\s+\d+\s+[^\W\d_][\w\-]*\s+{WHOLE_LENGTH}"
        r"(?P<slip>\s*(?:,|=|\bfor\b)\s*)[$€£¥]?\d+\.\d\d\b",
        wanted="“at” before the price of one stick",
        remedy="Write {} there, and what one stick cost.",
        instead=lambda _: " at ",
    ),
    slip(
        ("rack base: none", "rack base: nothing"),
        ("rack base: empty", "rack base: nothing"),
        written=r"^\s*rack\b[^:]*:\s*(?P<slip>none|empty|0|no|nil)(?=\s*(?:#|$))",
        wanted="“nothing”",
        remedy="Write {}.",
        instead=lambda _: "nothing",
    ),
)
"""What is written on the site of what was done, and how the log says it."""
