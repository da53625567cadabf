"""Slips in what is jotted on a pad: marks, signs and short hand that a job file does not read."""

from __future__ import annotations

from typing import Final

from trimlang.language.slips.slip_row import (
    END_OF_PART,
    GAP,
    JOINT_WORD,
    WALL_NAME,
    WHOLE_LENGTH,
    Found,
    slip,
)
from trimlang.language.vocabulary import GAP_WORDS

# As few signs as will do: a greedy width would take the name behind it for a unit.
_WIDTH: Final = r"\d[\d./ ]*?(?: ?(?:in|ft|mm|cm|m)\b\.?| ?['\"″′])?"
# Words that go on with the opening's own line: “door 32 high” is no door called “high”.
_SAID: Final = (
    r"(?:no|height|sill|high|wide|tall|hinged|swings?|swinging|casing|stool|apron|note|stops|jambs|plinths"
    r"|both|four|entrance|left|right|in|out|x|by)"
)
_FEET: Final = r"\d{1,2}-\d{1,2}"
_PARTS: Final = {"half": "1/2", "quarter": "1/4", "eighth": "1/8", "sixteenth": "1/16"}


def _feet(written: str) -> str:
    feet, inches = written.split("-")
    # An even 3-0 in a door list is said as 3 ft, as a tape is read out.
    return f"{feet} ft {inches}" if int(inches) else f"{feet} ft"


def _bare(found: Found) -> str:
    name = found["name"].strip()
    # “Cabinets” already means bare wall, so “bare” before it would say it twice.
    kind = "" if name.split()[0].casefold() in GAP_WORDS else f"{found['kind']} "
    return f"{kind}{name} {found['width'].strip()}"


def _side(found: Found) -> str:
    # links, gauche, izquierda
    return "left" if found["slip"][0].casefold() in "lgi" else "right"


PAD_SLIPS: Final = (
    slip(
        ("N 3 4 1/2, E 8 ft", "N 3 ft 4 1/2, E 8 ft"),
        ("N: 10 2 1/4 in, left=butt, right=butt", "N: 10 ft 2 1/4 in, left=butt, right=butt"),
        written=r"(?<=\S )(?P<slip>(?P<feet>\d{1,2}) (?P<inches>(?:\d|1[01]) \d+/\d+))",
        wanted="one number, or feet with their mark",
        remedy="If these are feet and inches, write {}.",
        instead=lambda found: f"{found['feet']} ft {found['inches']}",
    ),
    slip(
        ("// measured twice", "# measured twice"),
        ("-- measured twice", "# measured twice"),
        ("; measured twice", "# measured twice"),
        # Only before a word: a sign before a figure is a slip in the length itself.
        written=r"^\s*(?P<slip>//+|--+|;+|%+|')(?=\s*[^\W\d_])",
        wanted="a line of a job file, or # before a remark",
        remedy="A remark begins with {}.",
        instead=lambda _: "#",
    ),
    slip(
        ("N) 40 in, left=butt, right=butt", "N: 40 in, left=butt, right=butt"),
        ("1) 40 in, left=butt, right=butt", "1: 40 in, left=butt, right=butt"),
        ("N / 40 in, left=butt, right=butt", "N: 40 in, left=butt, right=butt"),
        # Behind a number only a bracket counts, for “1 / 40” may be a fraction.
        written=r"^\s*(?:[^\W\d_][\w\-]*(?=\s*[)\]/|>])|\d{1,2}(?=\s*[)\]]))(?P<slip>\s*[)\]/|>]\s*)(?=\d)",
        wanted="a colon behind the wall's name",
        remedy="Write a colon there.",
        instead=lambda _: ": ",
    ),
    slip(
        ("North wall 40 in, East 30 in", "North 40 in, East 30 in"),
        ("north wall: 40 in, left=butt, right=butt", "north: 40 in, left=butt, right=butt"),
        written=rf"(?:^|,)\s*{WALL_NAME}(?P<slip>\s+wall)(?=\s*:?\s*\d)",
        wanted="a wall's name of one word",
        remedy="Leave “wall” out.",
        instead=lambda _: "",
    ),
    slip(
        ("N: 3'250 mm, left=butt, right=butt", "N: 3250 mm, left=butt, right=butt"),
        ("N 3’250 mm, E 2100 mm", "N 3250 mm, E 2100 mm"),
        written=r"(?<!\d)(?P<slip>(?P<above>\d{1,2})['’](?P<below>\d{3}))(?=\s*mm\b)",
        wanted="a number in one",
        remedy="Write {}.",
        instead=lambda found: f"{found['above']}{found['below']}",
    ),
    slip(
        ("N: 40 in, L=in, right=butt", "N: 40 in, left=in, right=butt"),
        ("N: 40 in, left=in, rh=butt", "N: 40 in, left=in, right=butt"),
        ("N: 40 in, left=in, rechts=butt", "N: 40 in, left=in, right=butt"),
        written=r",\s*(?P<slip>[lr][ht]?|lhs|rhs|links|rechts|gauche|droite|izquierda|derecha)"
        r"(?=\s*=)",
        wanted="“left” or “right”",
        remedy="Write {}.",
        instead=_side,
    ),
    slip(
        ("N: 40 in, both=in", "N: 40 in, left=in, right=in"),
        ('N: 40 in, ends=butt, note "x"', 'N: 40 in, left=butt, right=butt, note "x"'),
        written=r",\s*(?P<slip>(?:both(?: ends)?|ends?)\s*=\s*"
        rf"(?P<joint>{JOINT_WORD})){END_OF_PART}",
        wanted="each end by its side",
        remedy="Write {}.",
        instead=lambda found: f"left={found['joint']}, right={found['joint']}",
    ),
    slip(
        ("N: 40 in (in, butt)", "N: 40 in, left=in, right=butt"),
        ("N: 40 in [in / out]", "N: 40 in, left=in, right=out"),
        written=rf"(?P<slip>\s*[(\[]\s*(?P<left>{JOINT_WORD})\s*[,/]\s*(?P<right>{JOINT_WORD})\s*[)\]])"
        rf"{END_OF_PART}",
        wanted="each end by its side",
        remedy="Write {}.",
        instead=lambda found: f", left={found['left']}, right={found['right']}",
    ),
    slip(
        ("N 40, corner, E 30", None),
        ("N 40, corner(91), E 30", None),
        written=r",\s*(?P<slip>corner)(?=\s*[,(#]|\s*$)",
        wanted="which corner",
        remedy="Write in or out, as the wall turns there.",
        # Which way the wall turns nobody can tell from here, so no mend is offered.
        instead=None,
    ),
    slip(
        ("N: 10 feet 2 inches and a quarter", "N: 10 feet 2 1/4 in"),
        ("N: 29 in and a half, left=butt, right=butt", "N: 29 1/2 in, left=butt, right=butt"),
        written=r"(?P<slip>(?P<whole>\d+) ?(?:inch(?:es)?|in\b\.?|\"|″)? and (?:a|an|one)[ -]"
        r"(?P<part>half|quarter|eighth|sixteenth))",
        wanted="a fraction in figures",
        remedy="Write {}.",
        instead=lambda found: f"{found['whole']} {_PARTS[found['part'].casefold()]} in",
    ),
    slip(
        ("N: 40 in +1/16, left=butt, right=butt", "N: 40 1/16 in, left=butt, right=butt"),
        ("N 40 + 1/8, E 30", "N 40 1/8 in, E 30"),
        written=r"(?P<slip>(?P<whole>\d+) ?(?:in\b\.?|\"|″)? *\+ *(?P<part>\d+/\d+)(?: ?in\b)?)",
        wanted="one length",
        # It may also be a jotted tolerance, so the remedy says “if”.
        remedy="If it is that much more, write {}.",
        instead=lambda found: f"{found['whole']} {found['part']} in",
    ),
    slip(
        ("N: 40 in ±1/8, left=butt, right=butt", "N: 40 in, left=butt, right=butt"),
        ("N: approx 40 in, left=butt, right=butt", "N: 40 in, left=butt, right=butt"),
        ("N: ~40 in, left=butt, right=butt", "N: 40 in, left=butt, right=butt"),
        written=r"(?P<slip>\s*(?:±|\+/?-) ?\d[\d/]*(?: ?in\b)?(?=\s*[,#]|\s*$)"
        r"|(?<=[:\s])(?:(?:approx(?:imately|\.)?|about|circa|ca?\.?|around) |[~≈] ?)(?=\d))",
        wanted="a length as the tape shows it",
        # The saw is set to one mark; how sure the hand was of it changes nothing.
        remedy="Measure it to a mark, or leave that out.",
        instead=lambda _: "",
    ),
    slip(
        ("N: 3m25, left=butt, right=butt", "N: 3.25 m, left=butt, right=butt"),
        ("N: 3 m 5, left=butt, right=butt", "N: 3.05 m, left=butt, right=butt"),
        written=rf"(?P<slip>(?P<m>\d{{1,2}}) ?m ?(?P<cm>\d{{1,2}})(?: ?cm\b)?){END_OF_PART}",
        wanted="metres with a point",
        remedy="Write {}.",
        # 3m5 is 3 m and 5 cm, so a single figure needs a nought before it.
        instead=lambda found: f"{found['m']}.{found['cm']:0>2} m",
    ),
    slip(
        ("door 2-6 x 6-8, casing case", "door 2 ft 6, height 6 ft 8, casing case"),
        ("window 3-0x5-0, casing case", "window 3 ft, height 5 ft, casing case"),
        written=rf"\b(?:door|window|opening)\b[^,#]*?(?P<slip>(?P<wide>{_FEET})\s*[x×]\s*(?P<tall>{_FEET}))",
        wanted="feet and inches with ft, and the height behind its word",
        remedy="Write {}.",
        instead=lambda found: f"{_feet(found['wide'])}, height {_feet(found['tall'])}",
    ),
    slip(
        ("door to the hall: 32", "door to the hall 32"),
        ("N 40, window to garden: 36, E 30", "N 40, window to garden 36, E 30"),
        # Only words before the colon, or one in a note behind the width would be taken.
        written=rf"\b{GAP} [^\W\d_][^,:#\d\"]*?(?P<slip>\s*:\s*)(?=\d)",
        wanted="the width right behind the name",
        remedy="Leave the colon out.",
        instead=lambda _: " ",
    ),
    slip(
        ('32" door, hinged left', 'door 32", hinged left'),
        ("30 in door to hall", "door to hall 30 in"),
        written=rf"^\s*(?P<slip>(?P<width>{WHOLE_LENGTH})\s*(?P<name>{GAP}(?: [^\W\d_][\w\- ]*?)?))"
        rf"{END_OF_PART}",
        wanted="what it is before its width",
        remedy="Write {}.",
        instead=lambda found: f"{found['name'].strip()} {found['width'].strip()}",
    ),
    slip(
        ("bare 6ft cabinets", "cabinets 6ft"),
        ("opening 30 in to hall", "opening to hall 30 in"),
        ("bare 5 ft tub", "bare tub 5 ft"),
        ('door 32" to hall', 'door to hall 32"'),
        written=rf"(?:^|,)\s*(?P<slip>(?P<kind>{GAP}) (?P<width>{_WIDTH}) (?P<name>(?!{_SAID}\b)"
        rf"[^\W\d_][\w\-]*(?: [^\W\d_][\w\-]*)*)){END_OF_PART}",
        wanted="the name before the width",
        remedy="Write {}.",
        instead=_bare,
    ),
    slip(
        ("opening 30 no trim", "opening 30"),
        ("door 32 in, no trim", "door 32 in"),
        # Only of an opening: of a wall “no” asks which trim is left out.
        written=rf"\b{GAP}\b[^,#]*\d[^,#]*?(?P<slip>,?\s+no trim){END_OF_PART}",
        wanted="nothing of trim",
        remedy="Nothing gets trim there anyway: leave it out.",
        instead=lambda _: "",
    ),
    slip(
        ("N: 40 in, skip shoe", "N: 40 in, no shoe"),
        ("N: 40 in, left=butt, without shoe", "N: 40 in, left=butt, no shoe"),
        written=r",\s*(?P<slip>skip|without|minus|omit|less|sans)(?= +[^\W\d_])",
        wanted="“no” before a trim that is left out",
        remedy="Write {}.",
        instead=lambda _: "no",
    ),
    slip(
        ("N: 40 in, note behind the radiator", 'N: 40 in, note "behind the radiator"'),
        ("N 40, note: check again, E 30", 'N 40, note "check again", E 30'),
        # The text ends at a comma, for what stands behind may be said of the wall.
        written=r",\s*note\b(?P<slip>\s*:?\s*(?P<text>[^\s,#\"“:][^,#\"“]*?))(?=\s*(?:,|#|$))",
        wanted="a text in quotes",
        remedy="Write note {}.",
        instead=lambda found: f' "{found["text"]}"',
    ),
)
"""What is jotted down beside a length, and how a job file says it."""
