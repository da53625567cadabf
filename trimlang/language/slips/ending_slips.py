"""Slips in how corners and ends are cut: bullnoses, two angles, returns, scarfs."""

from __future__ import annotations

from typing import Final

from trimlang.diagnostics.near_words import nearest
from trimlang.language.regional_names import NAME
from trimlang.language.slips.slip_row import (
    AT_A_SIDE,
    END_OF_PART,
    JOINT_WORD,
    WRITTEN_LENGTH,
    Found,
    slip,
)
from trimlang.language.vocabulary import words_after

_DEGREES: Final = r"\d[\d./ ]*?"
_DEG: Final = r"(?: ?(?:deg(?:rees?)?\b|°))"
_FOOT: Final = "floor|bottom|base|foot"
_TOP: Final = "top|ceiling|head|plumb|above|up"


def _two_angles(found: Found) -> str | None:
    low = found["one"].casefold() in _FOOT.split("|")
    high = found["two"].casefold() in _TOP.split("|")
    floor, top = (found["a"], found["b"]) if low else (found["b"], found["a"])
    # twice at the floor, or twice at the top, is one angle too few
    return f"{floor.strip()} deg at floor, {top.strip()} deg at top" if low == high else None


def _block(found: Found) -> str | None:
    # “in-corner(copee)” is a misspelt word of the language and no block
    known = words_after("N: 40 in, left=in-corner(")
    return None if nearest(found["slip"], known) else f"block {found['slip']}"


ENDING_SLIPS: Final = (
    slip(
        ("N: 40 in, left=butt, right=out-corner(out of plumb 1/2 in)", None),
        written=r"\(\s*(?P<slip>out +of +plumb[^)]*)\)",
        wanted="the corner's angle at the floor, and at the trim's height",
        remedy="Measure both: out-corner(91 deg at floor, 90 deg at top).",
        instead=None,
    ),
    slip(
        ("N: 40 in, left=butt, rail dies into casing", None),
        written=rf",\s*(?P<slip>{NAME} +dies(?: +(?:in|into|against|at)(?: +the)? +{NAME})?)"
        rf"{END_OF_PART}",
        wanted="how its end is cut",
        remedy="Beside a casing trim dies square: right=butt; or rail taper where it is thicker.",
        instead=None,
    ),
    slip(
        ("N: 40 in, left=butt, taper rail", "N: 40 in, left=butt, rail taper"),
        ("N: 40 in, left=butt, return shoe", "N: 40 in, left=butt, shoe return"),
        written=rf",\s*(?P<slip>(?P<joint>return|taper|butt) +(?:the +)?"
        rf"(?P<trim>(?!(?:left|right|both|end|ends|at|on)\b){NAME})){END_OF_PART}",
        wanted="the trim before its end",
        remedy="Write {}.",
        instead=lambda found: f"{found['trim']} {found['joint']}",
    ),
    slip(
        (
            "N: 40 in, left=butt, right=out-corner(bullnose radius 3/4 in)",
            "N: 40 in, left=butt, right=out-corner(bullnose 3/4 in)",
        ),
        written=r"\bbullnose(?P<slip>\s+(?:radius|rad|r)\b\.?(?: +of)?\s*)(?=\d)",
        wanted="the radius right behind it",
        remedy="Leave the word out.",
        instead=lambda _: " ",
    ),
    # ---- rounded corners
    slip(
        (
            "N: 40 in, left=out-corner(three-piece bullnose 3/4 in)",
            "N: 40 in, left=out-corner(bullnose 3/4 in)",
        ),
        written=r"\(\s*(?P<slip>(?:three|3)[ -]piece +)(?=bullnose)",
        wanted="the bullnose alone, which is made in three pieces",
        remedy="Leave that out: the small piece between two mitres is what a bullnose gets anyway.",
        instead=lambda _: "",
    ),
    slip(
        (
            "N: 40 in, left=out-corner(bullnose 3/4 in two-piece)",
            "N: 40 in, left=out-corner(two-piece bullnose 3/4 in)",
        ),
        written=rf"\(\s*(?P<slip>bullnose +(?P<long>{WRITTEN_LENGTH}),?\s*(?:two|2)[ -]pieces?)\b",
        wanted="“two-piece” before the bullnose",
        remedy="Write {}.",
        instead=lambda found: f"two-piece bullnose {found['long'].strip()}",
    ),
    slip(
        (
            "N: 40 in, left=out-corner(3/4 in bullnose)",
            "N: 40 in, left=out-corner(bullnose 3/4 in)",
        ),
        written=rf"\(\s*(?P<slip>(?P<long>{WRITTEN_LENGTH})\s*(?:bullnose|bull nose|radius"
        rf"|round))\b",
        wanted="“bullnose” before its radius",
        remedy="Write {}.",
        instead=lambda found: f"bullnose {found['long'].strip()}",
    ),
    slip(
        ("N: 40 in, left=out-corner(bullnose), right=butt", None),
        ("N: 40 in, left=bullnose, right=butt", None),
        written=rf"(?:\(\s*|{AT_A_SIDE})(?P<slip>(?:two-piece +)?bullnose)\s*(?=[,)#]|$)",
        wanted="a corner's joint, with the bullnose's radius in brackets",
        remedy="Measure the radius and write out-corner(bullnose 3/4 in).",
        instead=None,
    ),
    slip(
        ("N: 40 in, left=bullnose(3/4 in)", "N: 40 in, left=out-corner(bullnose 3/4 in)"),
        ("N: 40 in, left=bullnose 3/4 in", "N: 40 in, left=out-corner(bullnose 3/4 in)"),
        written=rf"{AT_A_SIDE}(?P<slip>bullnose\s*\(?\s*(?P<long>{WRITTEN_LENGTH})\s*\)?)",
        wanted="a corner's joint, with the bullnose in brackets",
        remedy="Write {}.",
        instead=lambda found: f"out-corner(bullnose {found['long'].strip()})",
    ),
    # ---- corners out of plumb, and corners told by the saw
    slip(
        (
            "N: 40 in, left=out-corner(91 deg floor, 90 deg top)",
            "N: 40 in, left=out-corner(91 deg at floor, 90 deg at top)",
        ),
        (
            "N: 40 in, left=in-corner(90 at top, 91 at floor)",
            "N: 40 in, left=in-corner(91 deg at floor, 90 deg at top)",
        ),
        (
            "N: 40 in, left=out-corner(90 deg plumb, 91 deg floor)",
            "N: 40 in, left=out-corner(91 deg at floor, 90 deg at top)",
        ),
        written=rf"\(\s*(?P<slip>(?P<a>{_DEGREES}){_DEG}? +(?:at +(?:the +)?)?(?P<one>{_FOOT}"
        rf"|{_TOP})\s*,?"
        rf"\s*(?:and +)?(?P<b>{_DEGREES}){_DEG}? +(?:at +(?:the +)?)?(?P<two>{_FOOT}|{_TOP}))"
        rf"(?=\s*[,)])",
        wanted="the angle at the floor and then the one at the top",
        remedy="Write {}.",
        instead=_two_angles,
    ),
    slip(
        ("N: 40 in, left=in-corner(91 deg at floor)", None),
        ("N: 40 in, left=in-corner(90 deg at top)", None),
        written=rf"\(\s*(?P<slip>{_DEGREES}{_DEG}? +at +(?:{_FOOT}|{_TOP}))\s*\)",
        wanted="two angles where one is out of plumb",
        remedy="Measure it at both heights: 91 deg at floor, 90 deg at top; or write the angle"
        " alone.",
        instead=None,
    ),
    slip(
        (
            "N: 40 in, left=out-corner(44 1/2 deg mitre)",
            "N: 40 in, left=out-corner(mitre 44 1/2 deg)",
        ),
        (
            "N: 40 in, left=out-corner(saw 44.5)",
            "N: 40 in, left=out-corner(mitre 44.5 deg)",
        ),
        written=rf"\(\s*(?P<slip>(?P<a>{_DEGREES}){_DEG}? *(?:mitre|miter)|saw(?: set(?: to"
        rf"| at)?| at| reads)?"
        rf" *(?P<b>{_DEGREES}){_DEG}?)(?=\s*[,)])",
        wanted="“mitre” before the saw's reading",
        remedy="Write {}.",
        instead=lambda found: f"mitre {(found['a'] or found['b']).strip()} deg",
    ),
    slip(
        ("splices: angle 22.5", "splices: angle 22.5 deg"),
        ("saw: reaches 60, reads to 1/2 deg", "saw: reaches 60 deg, reads to 1/2 deg"),
        ("N: 40 in, left=out-corner(mitre 44.5)", "N: 40 in, left=out-corner(mitre 44.5 deg)"),
        written=r"\b(?P<slip>(?:angle|reaches|reads to|doubt|mitre) +\d[\d./ ]*?)(?=\s*"
        r"(?:[,)#]|$))",
        wanted="“deg” behind an angle",
        remedy="Write {}.",
        instead=lambda found: f"{found['slip']} deg",
    ),
    slip(
        (
            "N: 40 in, left=butt, right=in-corner 91 deg",
            "N: 40 in, left=butt, right=in-corner(91 deg)",
        ),
        (
            "N: 40 in, left=butt, right=out-corner 91.5°",
            "N: 40 in, left=butt, right=out-corner(91.5 deg)",
        ),
        written=r"\b(?P<joint>(?:in|out)(?:-corner)?) (?P<angle>\d[\d ./]*?)"
        r" ?(?:deg(?:rees?)?\b|°)",
        wanted="brackets round the angle",
        remedy="An angle stands in brackets: write {}.",
        instead=lambda found: f"{found['joint']}({found['angle']} deg)",
    ),
    # ---- returns and what ends against something
    slip(
        ("N: 40 in, left=return 1 in, right=butt", "N: 40 in, left=return, right=butt"),
        written=rf"{AT_A_SIDE}return(?P<slip>\s*\(?\s*{WRITTEN_LENGTH}\)?){END_OF_PART}",
        wanted="the return alone",
        remedy="A return is as long as its trim stands off the wall: leave the size out.",
        instead=lambda _: "",
    ),
    slip(
        ("N: 40 in, left=self return", "N: 40 in, left=return"),
        ("N: 40 in, left=to the wall", "N: 40 in, left=return"),
        written=rf"{AT_A_SIDE}(?P<slip>self[ -]?return(?:ed)?|returns?(?: to| into)"
        rf"(?: the)? wall|to the wall)"
        rf"{END_OF_PART}",
        wanted="“return”",
        remedy="Write {}.",
        instead=lambda _: "return",
    ),
    slip(
        ("N: 40 in, left=butt, right=dead end", "N: 40 in, left=butt, right=butt"),
        ("N: 40 in, left=butt, right=dies into casing", "N: 40 in, left=butt, right=butt"),
        written=rf"{AT_A_SIDE}(?P<slip>(?:dies?|dead|dying|death)\b(?: +(?:end|against|into|in))?"
        rf"(?: +[^\W\d_]+)?){END_OF_PART}",
        wanted="“butt” where trim ends square against something",
        remedy="Write {}; or return, where it turns back to the wall.",
        instead=lambda _: "butt",
    ),
    slip(
        ("N: 40 in, left=butt, return=right", "N: 40 in, left=butt, right=return"),
        written=rf",\s*(?P<slip>(?P<joint>{JOINT_WORD})\s*=\s*(?P<side>left|right)){END_OF_PART}",
        wanted="the side before its end",
        remedy="Write {}.",
        instead=lambda found: f"{found['side']}={found['joint']}",
    ),
    slip(
        ("N: 40 in, left=butt, right=taper 30 deg", "N: 40 in, left=butt, right=taper(30 deg)"),
        written=rf"{AT_A_SIDE}(?P<slip>taper +(?P<angle>{_DEGREES}){_DEG}?){END_OF_PART}",
        wanted="brackets round the angle",
        remedy="Write {}.",
        instead=lambda found: f"taper({found['angle'].strip()} deg)",
    ),
    # ---- scarfs
    slip(
        (
            "N: 40 in, left=butt, right=butt, splice at 20 in",
            "N: 40 in, left=butt, right=butt, splice",
        ),
        (
            "N: 40 in, left=butt, right=butt, splice 30 deg",
            "N: 40 in, left=butt, right=butt, splice",
        ),
        written=rf",\s*splice(?P<slip>\s+(?:at +)?{WRITTEN_LENGTH}{_DEG}?){END_OF_PART}",
        wanted="the splice alone",
        remedy="Leave that out. Where it lies follows from the sticks, or from the studs (first"
        " stud"
        " 7 1/2 in); its angle is said once, above the rooms: splices: angle 30 deg.",
        instead=lambda _: "",
    ),
    slip(
        ("N: 10 ft, left=in, joint at 24", "N: 10 ft, left=in, splice"),
        ("N 10 ft, scarf at 24 in, E 8 ft", "N 10 ft, splice, E 8 ft"),
        written=rf",\s*(?P<slip>(?:joint|join(?:ed)?|seam|scarf(?:ed)?|spliced)\s+(?:at|@|in)\s+"
        rf"(?:the\s+)?(?:{WRITTEN_LENGTH}|middle|half)){END_OF_PART}",
        wanted="the splice alone",
        remedy="Write {}. Where it lies follows from the sticks, or from the studs (first stud"
        " 7 1/2 in).",
        instead=lambda _: "splice",
    ),
    slip(
        ("splice: angle 30 deg", "splices: angle 30 deg"),
        ("scarf: angle 30 deg", "splices: angle 30 deg"),
        ("casing: reveal 3/16 in", "casings: reveal 3/16 in"),
        ("corner: in-corner cope", "corners: in-corner cope"),
        ("kerf: leave 1/8 in", "kerfs: leave 1/8 in"),
        written=r"^\s*(?P<slip>(?P<joint>splice|scarf)|(?P<word>casing|corner|kerf|nail))\s*:\s*"
        r"(?=[^\W\d_])",
        wanted="the word that begins such a line",
        remedy="Write {}.",
        instead=lambda found: "splices" if found["joint"] else f"{found['word']}s",
    ),
    slip(
        ("splices: 30 deg", "splices: angle 30 deg"),
        written=rf"^\s*splices\s*:(?:[^#]*,)?\s*(?P<slip>{_DEGREES}{_DEG}){END_OF_PART}",
        wanted="“angle” before it",
        remedy="Write {}.",
        instead=lambda found: f"angle {found['slip']}",
    ),
    # ---- blocks in a corner
    slip(
        ("N: 40 in, left=out-corner(block), right=butt", None),
        written=r"\(\s*(?P<slip>block)\s*\)",
        wanted="which block stands in the corner",
        remedy="Name it: out-corner(block post).",
        instead=None,
    ),
    slip(
        (
            "N: 40 in, left=out-corner(post), right=butt",
            "N: 40 in, left=out-corner(block post), right=butt",
        ),
        written=rf"{AT_A_SIDE}(?:in|out)[\w-]*\(\s*(?P<slip>{NAME})\s*\)",
        wanted="“block” before a block's name",
        remedy="Write {}.",
        instead=_block,
    ),
)
"""What is often written of ends and corners, and how the language says it."""
