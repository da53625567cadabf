"""Five slips and more of each kind of trim: each is told in the trade's words, and mended."""

from __future__ import annotations

import re

import pytest
from syrupy.assertion import SnapshotAssertion

from trimlang.compiler import check_job
from trimlang.diagnostics import Diagnostic
from trimlang.diagnostics.mend import Mend
from trimlang.diagnostics.mending import mends

TRIMS = {
    "base": "9/16 in thick, 5 1/4 in tall",
    "shoe": "1/2 in thick, 3/4 in tall, in front of base",
    "rail": "3/4 in thick, 2 1/2 in tall",
    "case": "11/16 in thick, 2 1/4 in wide",
    "shelf": "3/4 in thick, 5 1/2 in wide",
    "strip": "3/4 in thick, 1 1/4 in tall",
    "panel": "5/8 in thick, 1 1/4 in wide",
    "frieze": "3/4 in thick, 3 1/2 in tall",
    "crown": "11/16 in thick, 3 5/8 in wide, spring 38 deg",
    "skirt": "3/4 in thick, 11 1/4 in tall",
    "band": "1 1/16 in thick, 1 1/4 in wide",
}
ABOVE = "".join(
    f"trim {name}: {size}\nstock {name}: 16 ft at 9.00\n" for name, size in TRIMS.items()
)
ABOVE += (
    "block foot: 3 in wide, 7 in tall, 1 1/8 in thick, pine, at 6.50\n"
    "block rosette: 2 1/2 in wide, 2 1/2 in tall, 1 in thick, at 4.20\n"
)
LEVEL = 'room "R", trim {}, open walk\n'
WALL = LEVEL.format("base, shoe, rail") + "N: 60 in, left=butt, right=butt\n"
SECOND = "N2: 40 in, left=butt, right=butt\n"

# what stands above the line, the lines, and what stands below
SLIPS: dict[str, tuple[str, str, str]] = {
    "1 windows": (
        ABOVE + WALL,
        """
window sill 30 in
window, casing case
window 36 in, casing case, stool, height 54 in
window 36 in, casing case, height 54 in, apron case
window 36 in, casing case, height 54 in, stool shelf, apron case
window 36 in, casing case, height 54 in, sill at 30 in
window 36 in, casing case, height 54 in, 3 sides
window 36 in, casing case, height 54 in, picture frame
window 36 in, casing case, height 54 in, four sides, stool shelf
window 36 in, casing case, height 54 in, stool shelf horn 1 in
window 36 in, casing case, height 54 in, stool shelf, horns 1 in
door 32 in, casing case, height 80 in, jambs of strip
window 36 in, trim case, height 54 in
window 36 in, casing case, 54 in high
window 36 in, case casing, height 54 in
window 36 in, casing case, height 54 ft
window 36 in, architrave case, height 54 in
window 36 in, casing case, height 54 in, cill 30 in
door 32 in, casing case, height 80 in, both sides
door 32 in, casing case, height 80 in, sill 30 in
door 32 in, casing case, height 80 in, lining strip
""",
        SECOND,
    ),
    "2 boxes": (
        ABOVE + WALL,
        """
boxes: 3, 24 in tall, margin 3 in, trim panel
3 boxes N, 24 in tall, margin 3 in, trim panel
boxes N: 24 in tall, margin 3 in, trim panel
boxes N: three, 24 in tall, margin 3 in, trim panel
boxes N: 3, 24 in high, margin 3 in, trim panel
boxes N: 3, 24 in tall, 3 in margin, trim panel
boxes N: 3, margin 3 in, trim panel
boxes N: 3, 24 in tall, margin 3 in
boxes N: 3, 24 in tall, margin 20 in, trim panel
boxes M: 3, 24 in tall, margin 3 in, trim panel
boxes on N: 3, 24 in tall, margin 3 in, trim panel
boxes N: 3, 24 x 14 in, trim panel
boxes N: equal, 3
boxes N: 3, 24 in tall, margin 3 in, panel
boxes N: 3 of 24 in by 14 in, trim panel
boxes under window: 2, 24 in tall, margin 3 in, trim panel
frames N: 3, 24 in tall, margin 3 in, trim panel
""",
        "",
    ),
    "3 blocks and heads": (
        ABOVE + WALL,
        """
door 32 in, casing case, height 80 in, plinth foot
door 32 in, casing case, height 80 in, plinths
door 32 in, casing case, height 80 in, rosettes
door 32 in, casing case, height 80 in, plinths case
door 32 in, plinths foot
door 32 in, casing case, height 80 in, head strip
door 32 in, casing case, height 80 in, back band band
transition
transition foot 3 in
transition block foot
transition block between
block foot
transition post
""",
        SECOND,
    ),
    "3 blocks and heads, above the rooms": (
        ABOVE,
        """
block post: 3 in, 7 in, 1 1/8 in
block post: 2 1/2 by 2 1/2 by 1
head cross: frieze strip
block post: 3 in wide, 7 in high
block post: 3 in wide, 7 in tall, 6.50
post: 3 in wide, 7 in tall
block: 3 in wide, 7 in tall
head cross: strip 3/8 in overhang, frieze
head cross: frieze over strip
""",
        WALL,
    ),
    "4 built-up trims": (
        ABOVE,
        """
assembly cornice: frieze and crown
assembly: frieze, crown
assembly cornice = frieze, crown
cornice: frieze, crown in front of frieze
assembly cornice: frieze, crown before frieze
assembly cornice: frieze, crown on frieze
assembly cornice: frieze, crown, rail behind crown
assembly cornice: frieze, crown in front of frieze, rail behind crown
trim cap: 1/2 in thick, 2 in tall, behind crown
trim cap: 1/2 in thick, 2 in tall, before base
assembly foot: base, rail in front
assembly foot: base, base
assembly base: base, shoe
assembly foot: base, rail on top of base
build-up foot: base, shoe
""",
        WALL,
    ),
    "5 corners": (
        ABOVE + LEVEL.format("base"),
        """
N: 60 in, left=butt, right=bullnose 3/4 in
N: 60 in, left=butt, right=out-corner(bullnose)
N: 60 in, left=butt, right=out-corner(3/4 in bullnose)
N: 60 in, left=butt, right=in-corner(bullnose 3/4 in)
N: 60 in, left=butt, right=out-corner(bullnose 12 in)
N: 60 in, left=butt, right=out-corner(three-piece bullnose 3/4 in)
N: 60 in, left=butt, right=out-corner(91 deg floor, 90 deg top)
N: 60 in, left=butt, right=out-corner(90 deg plumb, 91 deg floor)
N: 60 in, left=butt, right=out-corner(91 deg at floor)
N: 60 in, left=butt, right=out-corner(44 1/2 deg mitre)
N: 60 in, left=butt, right=out-corner(mitre 91 deg)
N: 60 in, left=butt, right=out-corner(44.5 deg)
N: 60 in, left=butt, right=butt, splice 30 deg
N: 60 in, left=butt, right=butt, splice, no splice
N: 60 in, left=butt, right=out-corner(foot)
N: 60 in, left=butt, right=external corner
""",
        "",
    ),
    "6 returns": (
        ABOVE + LEVEL.format("base"),
        """
N: 60 in, left=return 1 in, right=butt
N: 60 in, left=butt, return right
N: 60 in, left=butt, right=self return
N: 60 in, left=butt, right=taper 30 deg
N: 60 in, left=butt, right=taper(80 deg)
N: 60 in, left=butt, right=dies into casing
N: 60 in, left=butt, right=butt, shoe return
N: 60 in, left=butt, right=return(90 deg)
N: 60 in, left=butt, right=splay(30 deg)
""",
        "",
    ),
    "7 ceilings": (
        ABOVE + LEVEL.format("crown") + "N: 60 in, left=butt, right=butt\n",
        """
E: 60 in, left=butt, right=butt, ceiling 4 in over 12 in
E: 60 in, left=butt, right=butt, ceiling rising right 4/12
E: 60 in, left=butt, right=butt, ceiling falling right 18 deg
E: 60 in, left=butt, right=butt, ceiling rising right 18
E: 60 in, left=butt, right=butt, ceiling rising right 1/2 in
E: 60 in, left=butt, right=butt, ceiling rising right 85 deg
E: 60 in, left=butt, right=butt, transition right
beam 6 in deep
beam 6 in by 8 in
beam 6 in, 8 in tall
beam 6 in, crown turns
beam 6 in, turns base
joist 6 in
""",
        SECOND,
    ),
    "8 stairs": (
        ABOVE + LEVEL.format("skirt"),
        """
N: 90 in, left=plumb, right=plumb, rising up 36 deg
N: 90 in, left=plumb, right=plumb, rising right 36
N: 90 in, left=plumb, right=plumb, rising right 7 3/4 in, 10 in
N: 90 in, left=plumb, right=plumb, rising right 10 in run, 7 3/4 in rise
N: 90 in, left=plumb, right=plumb, rising right 10 in rise, 7 3/4 in run
N: 90 in, left=plumb, right=plumb, falling right 36 deg
N: 90 in, left=plumb, right=plumb
N: 90 in, left=plumb, right=plumb, rising right 85 deg
N: 90 in, left=plumb, right=plumb, rising right 36 deg, 14 steps
N: 90 in, left=plumb, right=plumb, rising right 36 deg, notch 3 1/2 in by 4 in
N: 90 in, left=plumb, right=plumb, rising right 36 deg, level 8 in
N: 90 in, left=plumb, right=plumb, rising right 36 deg, cut string
N: 90 in, left=plumb, right=plumb, rising right 7 3/4 in rise, 10 in run, open-side
post 3 1/2 in
""",
        SECOND,
    ),
    "9 loose pieces": (
        ABOVE + WALL,
        """
piece "cleat", 4 x 22 1/2 in, trim rail
piece cleat, 4 of 22 1/2 in, trim rail
piece "cleat", 22 1/2 in x 4, trim rail
4 pieces "cleat", 22 1/2 in, trim rail
piece "cleat", trim rail, 4 of 22 1/2 in
piece "cleat", 4 of, trim rail
piece "cleat", 4 of 22 1/2 in, rail
piece "cleat": 4 of 22 1/2 in, trim rail
loose "cleat", 4 of 22 1/2 in, trim rail
piece "cleat", 4 of 30 ft, trim rail
piece "cleat", 4 of 22 1/2 in, trim rail, left=return
""",
        "",
    ),
    "10 curves": (
        ABOVE + LEVEL.format("base"),
        """
N: 60 in, left=butt, right=butt, curves 9 in
N: 60 in, left=butt, right=butt, bows out 9 in
N: 60 in, left=butt, right=butt, curves in r 5 ft
N: 60 in, left=butt, right=butt, radius 5 ft
N: 60 in, left=butt, right=butt, curves in
N: 60 in, left=butt, right=butt, curves in 40 in
N: 60 in arc, left=butt, right=butt, curves in 9 in
N: 60 in radius, left=butt, right=butt
N: 60 in, left=butt, right=butt, curves in rise 9 in
N: 60 in, left=butt, right=butt, curves convex 9 in
N: 60 in, left=butt, right=butt, curves in 9 in, kerfed
""",
        "",
    ),
    "11 stock": (
        ABOVE,
        """
on-hand base: 12 ft, knot 38 in
on-hand base: 12 ft, 38 in to 40 in knot
on-hand base: 12 ft, crack 3 in to 5 in
on-hand base: 12 ft, bad end 5 in
on-hand base: 12 ft, knot 13 ft to 14 ft
on-hand base: 12 ft batch A
stock base: 12 ft at 17.40, batch "A"
stock base: one batch
stock base: bundle 3 of 7 ft at 40.00
stock base: bundle of 3 of 7 ft
stock base: random lengths 6 ft to 14 ft at 1.45 a foot
stock base: minimum order 10 sticks
stock base: pick 6 of 6 ft at 1.45 a foot
grain: one way
trim oak: 1/2 in thick, 2 in tall, directional
kerfs: every 1/2 in
trim bend: 1/2 in thick, 2 in tall, kerfed
trim bend: 1/2 in thick, 2 in tall, flex
""",
        WALL,
    ),
    "12 faces to paint": (
        ABOVE,
        """
trim cap: 1/2 in thick, 2 in tall, girth
trim cap: 1/2 in thick, 2 in tall, 3 in girth
trim cap: 1/2 in thick, 2 in tall, girth 1 in
paint: 2 coats, girth 6 in
paint: two coats
paint: both faces
paint: backs
paint: can 1 gallon 40.00
putty: 4 fl oz at 3.50
glue: bottle 8 oz at 5.90
primer: backs
saw: blade at 39.00
blade: 1500 cuts at 39.00
saw: blade lasts 1500 cuts
blade lasts 1500 cuts
mastic: bead 3/16 in
""",
        WALL,
    ),
}

NEITHER = ("T214", "T438", "T116")
"""Trims and blocks of this test's own lines that stand nowhere."""

VAGUE = re.compile(r"or …|^Write (?:a number|a name|nothing more|a comma|“)|Finish the line")
"""Remedies that only list what the grammar would take."""


def found_in(before: str, line: str, after: str) -> list[Diagnostic]:
    """Return what is said of one line among the others."""
    number = before.count("\n") + 1
    found = check_job(f"{before}{line}\n{after}").diagnostics
    return [one for one in found if one.span.line == number and one.code not in NEITHER]


def mended(line: str, mend: Mend) -> str:
    """Return the line with a mend's edits made, from its end to its beginning."""
    for edit in sorted(mend.edits, key=lambda one: -one.span.column):
        line = line[: edit.span.column - 1] + edit.text + line[edit.span.end - 1 :]
    return line


@pytest.mark.parametrize("kind", SLIPS)
def test_a_carpenter_s_slips_are_told_and_mended(kind: str, snapshot: SnapshotAssertion) -> None:
    before, text, after = SLIPS[kind]
    lines = text.split("\n")[1:-1]
    assert len(lines) >= 5
    told = {}
    for line in lines:
        found = found_in(before, line, after)
        assert found, line
        told[line] = [f"{one.code}: {one.message}. {one.remedy}" for one in found]
        for finding in found:
            assert not VAGUE.search(finding.remedy), (line, finding.remedy)
            for mend in mends(finding, line):
                better = mended(line, mend)
                left = [(one.code, one.message) for one in found_in(before, better, after)]
                assert (finding.code, finding.message) not in left
                assert not mend.sure or "T101" not in dict(left), better
    assert told == snapshot
