"""Slips in what is said of a wall's shape: stairs, curves, notches."""

from __future__ import annotations

from typing import Final

from trimlang.language.slips.slip_row import WRITTEN_LENGTH, slip

SHAPE_SLIPS: Final = (
    slip(
        (
            "N: 90 in, rising right 36 deg, level 8 in left",
            "N: 90 in, rising right 36 deg, level left 8 in",
        ),
        (
            "N: 90 in, left=butt, notch 3 1/2 in by 6 in right",
            "N: 90 in, left=butt, notch right 3 1/2 in by 6 in",
        ),
        written=rf"\b(?P<slip>(?P<word>level|notch)\s+(?P<long>{WRITTEN_LENGTH}(?:\s*by\s+{WRITTEN_LENGTH})?)"
        r"\s+(?P<side>left|right))\b",
        wanted="the side first",
        remedy="Write {}.",
        instead=lambda found: f"{found['word']} {found['side']} {found['long'].strip()}",
    ),
    slip(
        (
            "N: 90 in, taken plumb, rising right 36 deg",
            "N: 90 in, taken upright, rising right 36 deg",
        ),
        (
            "N: 90 in, rising right 36 deg, taken horizontally",
            "N: 90 in, rising right 36 deg, taken level",
        ),
        written=r"\btaken\s+(?P<slip>plumb|vertical(?:ly)?|up|horizontal(?:ly)?|flat)\b",
        wanted="“level” or “upright”",
        remedy="Write taken {}.",
        instead=lambda found: "level" if found["slip"][0] in "hHfF" else "upright",
    ),
    slip(
        (
            "N: 90 in, left=butt, right=butt, curved in 9 in",
            "N: 90 in, left=butt, right=butt, curves in 9 in",
        ),
        written=r"\b(?P<slip>curved?)\s+(?:in|out)\s+(?:radius\s+)?\d",
        wanted="“curves”",
        remedy="Write {}.",
        instead=lambda _: "curves",
    ),
    slip(
        (
            "N: radius 4 ft, left=butt, right=butt, curves in 90 deg",
            "N: 4 ft radius, left=butt, right=butt, curves in 90 deg",
        ),
        written=rf"^\s*\w[\w.\-]*\s*:\s*(?P<slip>radius\s+(?P<long>{WRITTEN_LENGTH}))(?=\s*,)",
        wanted="the size first",
        remedy="Write {}.",
        instead=lambda found: f"{found['long'].strip()} radius",
    ),
    slip(
        (
            "N: 40 in, left=butt, right=butt, notch left 3 1/2 in x 6 in",
            "N: 40 in, left=butt, right=butt, notch left 3 1/2 in by 6 in",
        ),
        written=r"\bnotch\b[^,]*?\d[^,]*?(?P<slip>(?<=\s)[x×])(?=\s*\d)",
        wanted="“by” between the two sizes",
        remedy="Write {}.",
        instead=lambda _: "by",
    ),
)
"""What is often written of a stair or a curve, and how the language says it."""
