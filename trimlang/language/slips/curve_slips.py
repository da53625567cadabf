"""Slips in walls that curve, and in trim that bends round them."""

from __future__ import annotations

from typing import Final

from trimlang.language.slips.slip_row import END_OF_PART, slip
from trimlang.language.slips.slip_row import WRITTEN_LENGTH as LONG

CURVE_SLIPS: Final = (
    slip(
        ("N: 60 in, left=butt, convex 9 in", "N: 60 in, left=butt, curves out 9 in"),
        ("N: 60 in, left=butt, concave radius 5 ft", "N: 60 in, left=butt, curves in radius 5 ft"),
        written=r",\s*(?P<slip>(?P<away>concave)|convex)(?= +(?:radius +)?\d)",
        wanted="“curves in”, away from the room, or “curves out”, into it",
        remedy="Write {}.",
        instead=lambda found: "curves in" if found["away"] else "curves out",
    ),
    slip(
        ("N: 60 in, left=butt, chord 60 in, rise 9 in", None),
        ("N: 60 in, left=butt, arc 66 in", None),
        written=rf",\s*(?P<slip>chord +{LONG}(?:,\s*rise +{LONG})?|arc +{LONG}){END_OF_PART}",
        wanted="which way it curves, and how far off its chord",
        remedy="Write the chord as the wall's length, and curves in 9 in for its rise where the"
        " wall goes away from the room, curves out 9 in where it comes into it.",
        instead=None,
    ),
    slip(
        ("N: 60 in, left=butt, curves in 9 in rise", "N: 60 in, left=butt, curves in 9 in"),
        ("N: 60 in, left=butt, curves out 9 in deep", "N: 60 in, left=butt, curves out 9 in"),
        written=rf"\bcurves\s+(?:in|out)\s+{LONG}(?P<slip>\s+(?:rise|sagitta|deep|off the chord))"
        rf"{END_OF_PART}",
        wanted="the rise alone",
        remedy="The rise is what such a length means anyway: leave the word out.",
        instead=lambda _: "",
    ),
    slip(
        ("kerfs: 3/32 in", "kerfs: leave 3/32 in"),
        written=rf"^\s*kerfs\s*:\s*(?P<slip>\d+/\d+ ?(?:in\b|\")?){END_OF_PART}",
        wanted="“leave” before what stays at the face",
        remedy="If that is what the kerfs leave of the thickness, write {}.",
        instead=lambda found: f"leave {found['slip'].strip()}",
    ),
    slip(
        ("N: 60 in, left=butt, bows out 9 in", "N: 60 in, left=butt, curves out 9 in"),
        ("N: 60 in, left=butt, bowed in 9 in", "N: 60 in, left=butt, curves in 9 in"),
        written=r",\s*(?P<slip>bow(?:s|ed)|bends?|bent|arcs?|arched|rounds?|rounded|bellies"
        r"|curving)\s+(?:in|out)\b",
        wanted="“curves”",
        remedy="Write {}.",
        instead=lambda _: "curves",
    ),
    slip(
        ("N: 60 in, left=butt, curves inside 9 in", "N: 60 in, left=butt, curves in 9 in"),
        ("N: 60 in, left=butt, curves convex 9 in", "N: 60 in, left=butt, curves out 9 in"),
        written=r"\bcurves\s+(?P<slip>(?P<away>inside|inwards?|concave|away)|outside|outwards?"
        r"|convex)\b",
        wanted="“in”, away from the room, or “out”, into it",
        remedy="Write {}.",
        instead=lambda found: "in" if found["away"] else "out",
    ),
    slip(
        ("N: 60 in, left=butt, curves 9 in", None),
        ("N: 60 in radius, left=butt, curves 90 deg", None),
        written=r"\b(?P<slip>curves)(?=\s+(?:radius\s+)?\d)",
        wanted="which way it curves",
        remedy="Write curves in where the wall goes away from the room, as in a bay, and curves out"
        " where it comes into it.",
        instead=None,
    ),
    slip(
        ("N: 60 in, left=butt, curves in r 5 ft", "N: 60 in, left=butt, curves in radius 5 ft"),
        (
            "N: 60 in, left=butt, curves in radius of 5 ft",
            "N: 60 in, left=butt, curves in radius 5 ft",
        ),
        written=r"\bcurves\s+(?:in|out)\s+(?P<slip>(?:r\b\.?|rad\b\.?|radius of"
        r"|radius\s*[=:])\s*)(?=\d)",
        wanted="“radius” before its length",
        remedy="Write {}.",
        instead=lambda _: "radius ",
    ),
    slip(
        ("N: 60 in, left=butt, curves in rise 9 in", "N: 60 in, left=butt, curves in 9 in"),
        ("N: 60 in, left=butt, curves out by 9 in", "N: 60 in, left=butt, curves out 9 in"),
        written=r"\bcurves\s+(?:in|out)(?P<slip>\s+(?:rise|by|sagitta|height|depth|bow)\s+)(?=\d)",
        wanted="the rise right behind it",
        remedy="Leave the word out.",
        instead=lambda _: " ",
    ),
    slip(
        ("N: 60 in, left=butt, curves in radius", None),
        written=rf"\b(?P<slip>curves\s+(?:in|out)(?:\s+radius)?){END_OF_PART}",
        wanted="how far it curves",
        remedy="Measure how far the wall lies off the chord in its middle, curves in 9 in; or give"
        " the radius, curves in radius 5 ft.",
        instead=None,
    ),
    slip(
        ("N: 60 in, left=butt, radius 5 ft", None),
        written=rf",\s*(?P<slip>radius\s+{LONG}){END_OF_PART}",
        wanted="which way it curves",
        remedy="Write curves in radius 5 ft where the wall goes away from the room, curves out"
        " radius"
        " 5 ft where it comes into it.",
        instead=None,
    ),
    slip(
        ("N: 60 in chord, left=butt, curves in 9 in", "N: 60 in, left=butt, curves in 9 in"),
        written=rf"^\s*\w[\w.\-]*\s*:?\s*{LONG}(?P<slip>\s+chord)\b",
        wanted="the chord's length alone",
        remedy="The length of a wall that curves is its chord anyway: leave the word out.",
        instead=lambda _: "",
    ),
    slip(
        ("N: 60 in arc, left=butt, curves in 9 in", None),
        written=rf"^\s*\w[\w.\-]*\s*:?\s*(?P<slip>{LONG}\s+(?:arc|along the (?:arc|curve|wall)"
        rf"|round))\b",
        wanted="the chord, or the radius",
        remedy="Measure straight from one end of the curve to the other, 60 in, curves in 9 in; or"
        " write the radius and the angle: 4 ft radius, curves in 90 deg.",
        # the length along the wall alone is that of many curves
        instead=None,
    ),
    slip(
        ("kerfs: every 1/2 in", None),
        ("kerfs: 1/2 in apart", None),
        ("kerfs: 12", None),
        written=rf"^\s*kerfs\s*:\s*(?P<slip>every +{LONG}|{LONG}\s*(?:apart|spacing|oc)|\d+"
        rf"(?: cuts| kerfs)?)"
        rf"{END_OF_PART}",
        wanted="what kerfs leave of the thickness",
        remedy="How many there are and how far apart follows from the curve; write kerfs: leave 1/8"
        " in.",
        instead=None,
    ),
)
"""What is often written of curves, and how the language says it."""
