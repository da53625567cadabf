"""What a hurried hand and a phone's keyboard make of a line: bullets, marks, words said twice."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Final

from trimlang.language.slips.slip_row import (
    ANY_NAME,
    BEHIND_A_LENGTH,
    END_OF_PART,
    FRACTION,
    GAP,
    JOINT_WORD,
    WALL_NAME,
    Found,
    slip,
)
from trimlang.language.vocabulary import GAP_WORDS, JOTTED, not_a_label

_A_LINE: Final = rf"(?:{WALL_NAME}\s*:?\s*\d|{GAP}\s|(?:room|trim|stock)\b)"
_ONE_END: Final = rf"(?:left|right)\s*[=: ]\s*{JOINT_WORD}\b(?:\([^()]*\)|\s+cope\b)?"
_EACH_END: Final = re.compile(
    rf"(?P<side>left|right)\s*[=: ]\s*(?P<end>{JOINT_WORD}\b(?:\([^()]*\)|\s+cope\b)?)", re.I
)
_DOORS: Final = r"(?P<door>tür|tuer|porte|puerta|porta|deur)"
_WINDOWS: Final = r"(?:fenster|fenêtre|fenetre|ventana|finestra|raam|janela)"


def _ends(found: Found) -> str:
    ends = (f"{one['side']}={one['end']}" for one in _EACH_END.finditer(found["slip"]))
    return ", " + ", ".join(ends)


def _opening(found: Found) -> str | None:
    """Return the word of an opening that is shortened or misspelt, before its name and width."""
    word = found["slip"].casefold()
    meant = not_a_label(word)
    return JOTTED.get(word) or (meant if meant in GAP_WORDS and meant != word else None)


def _swings(found: Found) -> str:
    hinged = f", hinged {found['side']}" if found["side"] else ""
    return f", swings {found['way']}{hinged}"


HURRIED_SLIPS: Final = (
    slip(
        ("• N 10 ft 2 1/4", "N 10 ft 2 1/4"),
        ("– N 10 ft, E 8 ft", "N 10 ft, E 8 ft"),
        ("1. N 10 ft 2", "N 10 ft 2"),
        ("a) door 32", "door 32"),
        written=rf"^\s*(?P<slip>(?:[•·*▪◦‣–—‐-]|\d{{1,2}}[.)]|[a-z]\))\s*)(?={_A_LINE})",
        wanted="the line without a list's mark",
        remedy="Leave the mark out.",
        instead=lambda _: "",
    ),
    slip(
        ("room «Den», trim base", 'room "Den", trim base'),
        ("door ‘to hall’ 32", 'door "to hall" 32'),
        ("room „Bad“, trim base", 'room "Bad", trim base'),
        written=r"(?<=\s)(?P<slip>[«‹„‚‘`´](?P<text>[^\"«»‹›„“”‘’`´#]*)[»›“”‘’`´])",
        wanted="quotation marks of the usual kind",
        remedy="Write {}.",
        instead=lambda found: f'"{found["text"]}"',
    ),
    slip(
        ('room "Den, trim base', 'room "Den", trim base'),
        ('room Den", trim base', 'room "Den", trim base'),
        written=r"^\s*room\s+(?P<slip>[\"“](?P<one>[^\"“”,#]*[^\"“”,#\s])(?=\s*,[^\"“”]*$)"
        r"|(?P<two>[^\"“”,#]+)[\"”](?=[^\"“”]*$))",
        wanted="the room's name between two quotation marks",
        remedy="Write {}.",
        instead=lambda found: f'"{found["one"] or found["two"]}"',
    ),
    slip(
        ("N 10` 2 1/4, E 8 ft", "N 10' 2 1/4, E 8 ft"),
        ("N: 10´ 2 1/4", "N: 10' 2 1/4"),
        written=r"(?<=\d)(?P<slip>\s?[`´])(?![`´])",
        wanted="the mark of feet",
        remedy="Write {} behind the feet.",
        instead=lambda _: "'",
    ),
    slip(
        ("N 120 1\\4, E 96", "N 120 1/4, E 96"),
        ("N: 120 1:4", "N: 120 1/4"),
        written=r"(?<![\w.])(?P<slip>(?P<whole>\d+ )(?P<above>\d{1,2}) ?[\\:] ?"
        r"(?P<below>2|4|8|16|32|64))\b",
        wanted="a fraction with its bar",
        remedy="Write {}.",
        instead=lambda found: f"{found['whole']}{found['above']}/{found['below']}",
    ),
    slip(
        ("N 10 ft 2 & 1/4", "N 10 ft 2 1/4"),
        ("N: 10 foot 2 and 1/4", "N: 10 foot 2 1/4"),
        written=rf"(?P<slip>(?P<whole>\d+)\s*(?:and|&)\s*(?P<part>{FRACTION}))",
        wanted="a whole number and its fraction with a blank between them",
        remedy="Write {}.",
        instead=lambda found: f"{found['whole']} {found['part']}",
    ),
    slip(
        ("N 20 ft & 6, E 8 ft", "N 20 ft 6, E 8 ft"),
        ("N: 20 ft and 6 in", "N: 20 ft 6 in"),
        written=r"(?<=ft)(?P<slip>\s*(?:&|and)\s*)(?=\d)",
        wanted="the inches right behind the feet",
        remedy="Leave the sign out.",
        instead=lambda _: " ",
    ),
    slip(
        ("N 10 10 ft, E 8 ft", ("N 10 ft, E 8 ft", "N 10 ft 10 in, E 8 ft")),
        written=r"(?<=\s)(?P<slip>(?P<one>\d{1,2}) (?P=one) ?(?:ft|feet))(?=\s*(?:,|#|$))",
        wanted="one number before the unit",
        remedy="Write {}.",
        instead=lambda found: (f"{found['one']} ft", f"{found['one']} ft {found['one']} in"),
    ),
    *(
        replace(row, of_walls=True)
        for row in (
            slip(
                ("N 10 ft, E ???, S 10 ft", None),
                ("N 10 ft, S tbd", None),
                written=rf"(?:^|,)\s*{WALL_NAME}\s*:?\s+(?P<slip>\?+|tb[dac]|xx+|__+|\.\.+){END_OF_PART}",
                wanted="the wall's length",
                remedy="Measure it, and write it there: no wall can be cut without it.",
                instead=None,
            ),
            slip(
                ("NE corner 91", None),
                ("corner N-E 91 deg", None),
                ("N/E corner is 91", None),
                written=r"^\s*(?P<slip>(?:corner\s+[nesw]\s*[-/]?\s*[nesw]|[nesw]\s*[-/]?\s*[nesw]\s+corner)"
                r"\b[^#]*?)(?=\s*(?:#|$))",
                wanted="a wall",
                remedy="A corner's angle stands at one of its walls: N 10 ft, right=in(91).",
                instead=None,
            ),
            slip(
                ("N: 10 ft left=in right=in", "N: 10 ft, left=in, right=in"),
                ("N 10 ft left in right out(91)", "N 10 ft, left=in, right=out(91)"),
                written=rf"{BEHIND_A_LENGTH}(?P<slip>\s+{_ONE_END}(?:\s+{_ONE_END})+){END_OF_PART}",
                wanted="a comma before each end",
                remedy="Write {}.",
                instead=_ends,
            ),
            slip(
                ("door 32 in swing in left", "door 32 in, swings in, hinged left"),
                ("door 32 swinging out, hinged left", "door 32, swings out, hinged left"),
                written=rf"\bdoor\b[^#,]*?\d[^#,]*?(?P<slip>\s*,?\s*swing(?:s|ing)?\s+(?P<way>in|out)"
                r"(?:wards?)?(?:\s*,?\s*(?:hinged\s+)?(?:on the\s+)?(?P<side>left|right))?)"
                rf"{END_OF_PART}",
                wanted="a comma, and which way the door swings",
                remedy="Write {}.",
                instead=_swings,
            ),
            slip(
                ("N 12 ft, dor closet 30 in, N2 6 ft", "N 12 ft, door closet 30 in, N2 6 ft"),
                ("N 12 ft, wdw to garden 48, N2 6 ft", "N 12 ft, window to garden 48, N2 6 ft"),
                written=rf",\s*(?P<slip>{ANY_NAME})(?=\s+{ANY_NAME}(?: {ANY_NAME})*\s+\d)",
                wanted="an opening",
                remedy="Write {}.",
                instead=_opening,
            ),
            slip(
                ("N 3.25 m, Tür Flur 80 cm", "N 3.25 m, door Flur 80 cm"),
                ("Fenster Süd 1.2 m", "window Süd 1.2 m"),
                written=rf"(?:^|,)\s*(?P<slip>{_DOORS}|{_WINDOWS})(?=\s+{ANY_NAME}\s+\d)",
                wanted="“door” or “window”",
                remedy="Write {}.",
                instead=lambda found: "door" if found["door"] else "window",
            ),
        )
    ),
    slip(
        ('Zimmer "Bad", trim base', 'room "Bad", trim base'),
        ('habitación "Sala", ends in', 'room "Sala", ends in'),
        written=r"^\s*(?P<slip>zimmer|raum|habitación|habitacion|cuarto|sala|pièce|piece|chambre|stanza"
        r"|kamer|rm|rooms)(?=\s+[\"“])",
        wanted="“room”",
        remedy="Write {}.",
        instead=lambda _: "room",
    ),
    slip(
        ('room "Den", end in', 'room "Den", ends in'),
        written=rf"^\s*(?:room\b[^#]*,\s*)?(?P<slip>end)(?=\s+{JOINT_WORD}{END_OF_PART})",
        wanted="“ends”",
        remedy="Write {}.",
        instead=lambda _: "ends",
    ),
)
"""Marks and words of another tongue, and how the line stands in a job file."""

SAID_TWICE: Final = slip(
    ("N N 10 ft, E 8 ft", "N 10 ft, E 8 ft"),
    ("N 10 ft ft, E 8 ft", "N 10 ft, E 8 ft"),
    ('room "Den", ends in ends in', 'room "Den", ends in'),
    # “40 in in” may be an inside corner behind its unit.
    written=r"(?P<slip>\b(?P<one>(?!in\b)[^\W\d_][\w\-]*(?: [^\W\d_][\w\-]*)?)\s+(?P=one)\b)",
    wanted="that once",
    remedy="It stands there twice: write {}.",
    instead=lambda found: found["one"],
)
"""A word or two that stand there twice, whatever they are."""
