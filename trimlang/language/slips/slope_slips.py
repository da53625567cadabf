"""Slips in what climbs: ceilings that slope, beams below them, stairs."""

from __future__ import annotations

from typing import Final

from trimlang.language.regional_names import NAME
from trimlang.language.slips.slip_row import END_OF_PART, Found, slip
from trimlang.language.slips.slip_row import WRITTEN_LENGTH as LONG

_DEGREES: Final = r"\d[\d./ ]*? ?(?:deg(?:rees?)?\b|°|%)"
_RISING: Final = r"\brising +(?:left|right) +"
_SLOPE: Final = r"(?:slop(?:es|ing|ed)|pitch(?:es|ed)|climb(?:s|ing)|ris(?:es|e)|goes up|going up)"
_FALL: Final = r"(?:fall(?:s|ing)|descend(?:s|ing)|drop(?:s|ping)|goes down|going down)"


def _other(side: str) -> str:
    return "right" if side.casefold() == "left" else "left"


def _other_way_up(found: Found) -> str:
    return f"rising {_other(found['side'])}"


def _step(found: Found) -> str:
    up, along = (found[one] or found[other] for one, other in (("up", "riser"), ("along", "tread")))
    return f"{up.strip()} rise, {along.strip()} run"


SLOPE_SLIPS: Final = (
    slip(
        (
            "N: 60 in, ceiling rising right 3 in over 12 in, transition piece right",
            "N: 60 in, ceiling rising right 3 in over 12 in, transition right",
        ),
        (
            "N: 60 in, rising right 36 deg, notched left 3 1/2 in by 6 in",
            "N: 60 in, rising right 36 deg, notch left 3 1/2 in by 6 in",
        ),
        written=r",\s*(?P<slip>(?P<turn>transition) +piece|notched|notch +out)"
        r" +(?:left|right)\b(?: +\d)?",
        wanted="“transition” or “notch”, and the side",
        remedy="Write {}.",
        instead=lambda found: found["turn"] or "notch",
    ),
    slip(
        ("N: 60 in, up right 36 deg", "N: 60 in, rising right 36 deg"),
        written=r",\s*(?P<slip>up(?:wards?)?(?: +to)?(?: +the)?) +(?:left|right) +\d",
        wanted="“rising”",
        remedy="Write {}.",
        instead=lambda _: "rising",
    ),
    slip(
        ("N: 60 in, ceiling out of level 1/2 in", None),
        ("N: 60 in, ceiling is out of level", None),
        written=rf"\b(?P<slip>ceiling +(?:is +)?out +of +level(?: +(?:by +)?{LONG})?){END_OF_PART}",
        wanted="the side to which it rises, left or right",
        remedy="Measure over the whole wall, and say to which side it rises: ceiling rising right"
        " 1/2 in over 12 ft.",
        instead=None,
    ),
    slip(
        (
            "N: 60 in, rising right unit rise 7 3/4 in, unit run 10 in",
            "N: 60 in, rising right 7 3/4 in rise, 10 in run",
        ),
        (
            "N: 60 in, rising right 7 3/4 in riser, 10 in tread",
            "N: 60 in, rising right 7 3/4 in rise, 10 in run",
        ),
        written=rf"{_RISING}(?P<slip>(?:unit +)?rise +(?P<up>(?>{LONG})),?\s*(?:unit +)?run +"
        rf"(?P<along>(?>{LONG}))|(?P<riser>(?>{LONG})) *risers?,?\s*(?P<tread>(?>{LONG})) *"
        rf"(?:treads?|goings?)){END_OF_PART}",
        wanted="“rise” and “run” behind the step's two sizes",
        remedy="Write {}.",
        instead=_step,
    ),
    slip(
        (
            "N: 60 in, rising right 36 deg, level return left 8 in",
            "N: 60 in, rising right 36 deg, level left 8 in",
        ),
        written=r"\b(?P<slip>level +returns?)(?= +(?:left|right))",
        wanted="“level” and the side",
        remedy="Write {}: a level return is named by that word alone.",
        instead=lambda _: "level",
    ),
    slip(
        ("N: 60 in level, rising right 36 deg", "N: 60 in, taken level, rising right 36 deg"),
        ("N: 60 in upright, rising right 36 deg", "N: 60 in, taken upright, rising right 36 deg"),
        written=rf"^\s*\w[\w.\-]*\s*:?\s*{LONG}(?P<slip>\s+(?P<how>level|upright)){END_OF_PART}",
        wanted="how the length was taken, as a part of its own",
        remedy="Put a comma there and write {}.",
        instead=lambda found: f", taken {found['how']}",
    ),
    slip(
        ("beam 6 in wide, 8 in deep", "beam 6 in, 8 in deep"),
        written=r"^\s*beam\b[^,#]*?\d[^,#]*?(?P<slip>\s+(?:wide|width|broad)\b)",
        wanted="the width alone",
        remedy="A beam's first measure is its width along the wall: leave the word out.",
        instead=lambda _: "",
    ),
    slip(
        (
            "N: 60 in, ceiling slopes right 18 deg",
            "N: 60 in, ceiling rising right 18 deg",
        ),
        ("N: 60 in, climbs left 36 deg", "N: 60 in, rising left 36 deg"),
        written=rf"(?P<slip>\b{_SLOPE}(?: +(?:to +)?(?:the +)?))(?:left|right)\b",
        wanted="“rising”",
        remedy="Write {}.",
        instead=lambda _: "rising ",
    ),
    slip(
        ("N: 60 in, ceiling falling right 18 deg", "N: 60 in, ceiling rising left 18 deg"),
        ("N: 60 in, falling left 36 deg", "N: 60 in, rising right 36 deg"),
        written=rf"(?P<slip>\b{_FALL}(?: +(?:to +)?(?:the +)?)(?P<side>left|right))\b",
        wanted="the side to which it rises",
        remedy="What falls to one side rises to the other: write {}.",
        instead=_other_way_up,
    ),
    slip(
        ("N: 60 in, ceiling 4 in over 12 in", None),
        ("N: 60 in, ceiling rising 4 in over 12 in", None),
        ("N: 60 in, rising up 36 deg", None),
        ("N: 60 in, sloped ceiling 18 deg", None),
        written=rf"(?P<slip>\b(?:ceiling(?: +(?:rising|{_SLOPE}))?|rising|sloped +ceiling|rise +to)"
        rf"(?: +(?:up(?:wards?)?|down|by|at))?)(?= +\d)",
        wanted="the side to which it rises, left or right",
        remedy="Face the wall and say to which side it rises: rising right 36 deg, ceiling rising"
        " right 4 in over 12 in.",
        # only who stands there knows which side is the higher one
        instead=None,
    ),
    slip(
        (
            "N: 60 in, rising right 18 deg ceiling",
            "N: 60 in, ceiling rising right 18 deg",
        ),
        written=rf"(?P<slip>(?P<slope>rising +(?:left|right) +[^,#]*?)\s+ceiling){END_OF_PART}",
        wanted="“ceiling” first",
        remedy="Write {}.",
        instead=lambda found: f"ceiling {found['slope']}",
    ),
    slip(
        ("N: 60 in, ceiling rising right 4/12", "N: 60 in, ceiling rising right 4 over 12"),
        ("N: 60 in, ceiling rising right 4:12", "N: 60 in, ceiling rising right 4 over 12"),
        ("N: 60 in, ceiling rising right 4 in 12", "N: 60 in, ceiling rising right 4 over 12"),
        (
            "N: 60 in, rising right 7 3/4 in / 10 in",
            "N: 60 in, rising right 7 3/4 in over 10 in",
        ),
        written=rf"{_RISING}(?P<slip>(?P<up>\d+(?= *[/:] *12\b)|\d+(?= +in +12\b)|(?>{LONG})) *"
        # taken whole, or 7 3/4 would be parted at its stroke
        rf"(?:[/:x×]|in|to) *(?P<along>(?>{LONG}))){END_OF_PART}",
        wanted="“over” between rise and run",
        remedy="Write {}.",
        instead=lambda found: f"{found['up'].strip()} over {found['along'].strip()}",
    ),
    slip(
        (
            "N: 60 in, rising right 7 3/4 in, 10 in",
            "N: 60 in, rising right 7 3/4 in rise, 10 in run",
        ),
        written=rf"{_RISING}(?P<slip>(?P<up>{LONG}),\s*(?P<along>{LONG})){END_OF_PART}",
        wanted="“rise” and “run” behind the step's two sizes",
        remedy="Write {}.",
        instead=lambda found: f"{found['up'].strip()} rise, {found['along'].strip()} run",
    ),
    slip(
        (
            "N: 60 in, rising right 7 3/4 rise 10 run",
            "N: 60 in, rising right 7 3/4 rise, 10 run",
        ),
        written=rf"{_RISING}{LONG} *rise(?P<slip>\s+(?:and +|by +|x +)?)(?=\d[^,#]*\brun\b)",
        wanted="a comma between rise and run",
        remedy="Put a comma there.",
        instead=lambda _: ", ",
    ),
    slip(
        (
            "N: 60 in, rising right 10 in run, 7 3/4 in rise",
            "N: 60 in, rising right 7 3/4 in rise, 10 in run",
        ),
        written=rf"{_RISING}(?P<slip>(?P<along>{LONG}) *run,?\s*(?P<up>{LONG}) *rise)\b",
        wanted="the rise first",
        remedy="Write {}.",
        instead=lambda found: f"{found['up'].strip()} rise, {found['along'].strip()} run",
    ),
    slip(
        ("N: 60 in, rise 7 3/4 in, run 10 in", None),
        ("N: 60 in, 7 3/4 in rise, 10 in run", None),
        written=rf",\s*(?P<slip>(?:rise +{LONG}|{LONG} *rise),\s*(?:run +{LONG}|{LONG} *run))",
        wanted="the side to which it rises, and then the step",
        remedy="Face the wall and say to which side it climbs: rising right 7 3/4 in rise, 10 in"
        " run.",
        instead=None,
    ),
    slip(
        ("N: 60 in, rising right 36", "N: 60 in, rising right 36 deg"),
        ("N: 60 in, ceiling rising left 18 1/2", "N: 60 in, ceiling rising left 18 1/2 deg"),
        written=rf"{_RISING}(?P<slip>\d[\d./ ]*?){END_OF_PART}",
        wanted="“deg” behind an angle",
        remedy="If that is its angle, write {}; as rise over run it is 4 in over 12 in.",
        instead=lambda found: f"{found['slip'].strip()} deg",
    ),
    slip(
        ("N: 60 in, ceiling rising right 1/2 in", None),
        ("N: 60 in, rising right 7 3/4 in rise", None),
        written=rf"{_RISING}(?P<slip>{LONG}(?: *rise)?){END_OF_PART}",
        wanted="over how far it rises so much",
        remedy="Say both: 1/2 in over 12 ft for a ceiling, 7 3/4 in rise, 10 in run for a stair.",
        instead=None,
    ),
    slip(
        (
            "N: 60 in, rising right 36 deg, 14 steps",
            "N: 60 in, rising right 36 deg",
        ),
        written=r"(?P<slip>\s*,\s*\d+ +(?:steps?|risers?|treads?|goings?)\b)(?!\s*[,]?\s*\d)",
        wanted="nothing of how many steps there are",
        remedy="They follow from the length and the step's rise and run: leave it out.",
        instead=lambda _: "",
    ),
    slip(
        ("N: 60 in, rising right 36 deg, level 8 in", None),
        ("N: 60 in, rising right 36 deg, notch 3 1/2 in by 4 in", None),
        written=rf",\s*(?P<slip>(?:level|notch) +{LONG}(?: *by +{LONG})?){END_OF_PART}",
        wanted="the side, left or right",
        remedy="Face the wall and say at which end: level left 8 in, notch left 3 1/2 in by 4 in.",
        instead=None,
    ),
    slip(
        ("N: 60 in, rising right 36 deg, notch left 3 1/2 in", None),
        written=rf"\b(?P<slip>notch +(?:left|right) +{LONG}){END_OF_PART}",
        wanted="how far along and how far up",
        remedy="Say both: notch left 3 1/2 in by 6 in, level first and then upright.",
        instead=None,
    ),
    # ---- beams
    slip(
        ("beam 6 in, 8 in tall", "beam 6 in, 8 in deep"),
        ("beam 6 in, 8 in below the ceiling", "beam 6 in, 8 in deep"),
        written=rf"\bbeam\b[^#]*?,\s*{LONG}\s*(?P<slip>tall|high|thick|drop|down|below"
        rf"(?: the)? ceiling)\b",
        wanted="“deep”: how far the beam hangs down",
        remedy="Write {}.",
        instead=lambda _: "deep",
    ),
    slip(
        ("beam 6 in by 8 in", "beam 6 in, 8 in deep"),
        ("beam 6 x 8", "beam 6, 8 deep"),
        written=rf"\bbeam\b[^,#]*?\d(?: ?(?:in|mm)\b)?(?P<slip>\s*(?:by|x|×)\s*"
        rf"(?P<long>{LONG}))(?: *deep)?"
        rf"{END_OF_PART}",
        wanted="how deep it is as a part of its own",
        remedy="If the first is its width along the wall, write a comma and {}.",
        instead=lambda found: f", {found['long'].strip()} deep",
    ),
    slip(
        ("beam 6 in deep", None),
        written=rf"^\s*(?P<slip>beam +{LONG}\s*deep){END_OF_PART}",
        wanted="its width along the wall, and then how deep it is",
        remedy="Write beam 6 in, 8 in deep.",
        instead=None,
    ),
    slip(
        ("beam 6 in, crown turns", "beam 6 in, turns crown"),
        written=rf"\bbeam\b[^#]*?,\s*(?P<slip>(?P<name>{NAME})\s+turns){END_OF_PART}",
        wanted="“turns” before the crown's name",
        remedy="Write {}.",
        instead=lambda found: f"turns {found['name']}",
    ),
    slip(
        ("beam 6 in, turns", None),
        written=rf"\bbeam\b[^#]*?,\s*(?P<slip>turns){END_OF_PART}",
        wanted="the crown that turns there",
        remedy="Name it: turns crown.",
        instead=None,
    ),
)
"""What is often written of slopes, beams and stairs, and how the language says it."""
