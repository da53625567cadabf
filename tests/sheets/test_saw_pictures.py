"""What the saw sheet draws is what it says: table, blade, wood and edge, read off the drawings."""

from __future__ import annotations

import re
from math import atan2, degrees

import pytest

from tests.sheets.test_solids_from_words import SAWS, Told, plain, printed, texts, told

Point = tuple[float, float]
CLOSE = 0.15
"""Degrees: coordinates on paper have two decimals."""


def paths(svg: str) -> dict[str, list[list[Point]]]:
    """The strokes of each path of a drawing, by its class; curves stop at where they begin."""
    found = {}
    for name, d in re.findall(r'<path class="([\w-]+)" d="([^"]*)"', svg):
        strokes = [one.split("a")[0] for one in d.split("M")[1:]]
        found[name] = [
            [(float(x), float(y)) for x, y in re.findall(r"(-?[\d.]+) (-?[\d.]+)", stroke)]
            for stroke in strokes
        ]
    return found


def off_straight(line: list[Point]) -> float:
    """Degrees from straight up and down to the right of a line's second point."""
    (x, y), (far_x, far_y) = line
    return degrees(atan2(far_x - x, abs(far_y - y)))


def side_of(wood: list[list[Point]], line: list[Point]) -> str:
    """On which side of a blade the wood lies."""
    (polygon,) = wood
    middle = sum(x for x, _ in polygon) / len(polygon)
    return "left" if middle < line[0][0] else "right"


def hand(turned: float) -> str:
    return "" if abs(turned) < CLOSE else "right" if turned > 0 else "left"


def lain(svg: str) -> str:
    """Say how the wood lies from its section, the fence at the left and the table below."""
    drawn = paths(svg)
    (fence,), (section,), (face,) = drawn["thick"], drawn["section"], drawn["face-line"]
    (edge,) = re.findall(r"<text[^>]*>(.*?)</text>", svg)
    wide = max(x for x, _ in section) - min(x for x, _ in section)
    tall = max(y for _, y in section) - min(y for _, y in section)
    assert min(x for x, _ in section) - fence[0][0] < 1
    assert fence[1][1] - max(y for _, y in section) < 1
    if tall > wide:
        assert max(x for x, _ in face) == max(x for x, _ in section)
        return f"standing, face to you, {edge} to the fence"
    assert min(y for _, y in face) == min(y for _, y in section)
    if edge in ("top edge", "bottom edge", "outer edge"):
        # A moulding is thinner at its top edge, a casing thicker at its outer one.
        at_fence, away = (
            max(y for x, y in section if x == end) - min(y for x, y in section if x == end)
            for end in (min(x for x, _ in section), max(x for x, _ in section))
        )
        assert (at_fence < away) is (edge == "top edge")
    return f"flat, face up, {edge} to the fence"


def pictured(group: str) -> list[Told]:
    """What a setting's pictures show, one for each side of the blade."""
    *cuts, lies = re.findall(r"<svg.*?</svg>", group, re.S)
    captions = re.findall(r"<figcaption>piece (\w+) of the blade</figcaption>", group)
    shown = []
    for svg, caption in zip(cuts, captions, strict=True):
        drawn = paths(svg)
        # the arm runs from the fence towards you, then comes its knob; a leaning blade runs up
        arm, _, *leaning = drawn["blade"]
        swing = off_straight(arm)
        tilt = off_straight(leaning[0]) if leaning else 0.0
        for wood, line in zip(drawn["piece"], [arm, *leaning], strict=True):
            assert side_of([wood], line) == caption
            # the wood ends where the blade goes through it
            cut = wood[1:3] if line is arm else wood[2:0:-1]
            assert off_straight(cut) == pytest.approx(off_straight(line), abs=CLOSE)
        shown.append(
            Told(
                lies=lain(lies),
                piece=caption,
                mitre=abs(swing),
                swing=hand(swing),
                bevel=abs(tilt),
                tilt=hand(tilt),
            )
        )
    return shown


@pytest.mark.parametrize("saw", SAWS)
def test_each_setting_is_drawn_as_it_is_said(saw: str) -> None:
    seen: set[str] = set()
    for group in printed(saw)["saw-sheet"].split('<section class="group">')[1:]:
        lay, setting = texts(group, "p.lay"), texts(group, "h2.set")
        if not lay:
            continue
        # said once above the cuts where all pieces lie on one side, else of each
        lies, _, once = lay[0].partition(", piece ")
        each = re.findall(r"end of \S+, piece (\w+) of the blade", plain(group))
        assert bool(once) is not bool(each)
        sides = sorted({*each, *once.split()[:1]})
        shown = pictured(group)
        assert [one.piece for one in shown] == sides
        for one in shown:
            said = told(setting[0], lies, one.piece)
            assert (one.lies, one.swing, one.tilt) == (said.lies, said.swing, said.tilt)
            assert one.mitre == pytest.approx(said.mitre, abs=CLOSE)
            assert one.bevel == pytest.approx(said.bevel, abs=CLOSE)
            seen |= {one.swing, one.tilt, one.piece, *one.lies.split(", ")}
    assert seen >= {"left", "right", "face up", "ceiling edge to the fence"}
