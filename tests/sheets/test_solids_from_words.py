"""Saw the piece that a sheet's words tell of, and see whether it is the one that the room needs.

The words are read off the finished pages: how the piece lies, to which side table and blade
go, and on which side of the blade the piece is.  A prism of the trim's section is laid so on
a saw, cut by the plane of its blade, and taken back to the wall.  What the room needs comes
from the corner alone: the plane between two walls, two pitches or two members of a casing.
Nothing of trimlang's geometry is used; the words' meaning is that of their legend: a table's
handle swings left or right, a blade's top leans left or right (common saw terms, no source).
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

import numpy as np
import pytest

from tests.jobs import CROWN
from trimlang.compiler import compile_job
from trimlang.sheets.render.pages import render_sheets

SPRING, WIDE, THICK = 38.0, 3.625, 0.6875
PITCH = 36.0
SECTION = [(u, v) for u in (0.0, WIDE) for v in (0.0, THICK)]
"""The corners of the section: up the face, out from the back (inches)."""
CLOSE = 0.02
"""Inches by which a corner may be off: the saw reads to an eighth of a degree."""


@dataclass(frozen=True)
class Told:
    """What a sheet says of one end."""

    lies: str
    piece: str
    mitre: float
    swing: str
    bevel: float
    tilt: str


# ---- from words to the wood ---------------------------------------------------------


def angle(text: str) -> float:
    whole, _, part = text.partition(" ")
    top, _, under = part.partition("/")
    return float(whole) + (float(top) / float(under) if part else 0.0)


ANGLE = r"(\d+ \d/\d|[\d.]+)°"


def told(setting: str, lies: str, piece: str) -> Told:
    """Read a setting as printed: 44.5° right; mitre 31 1/8° left, bevel 33.5° left."""
    mitre = re.search(rf"(?<!bevel ){ANGLE}(?: (left|right))?", setting)
    bevel = re.search(rf"bevel {ANGLE} (left|right)", setting)
    assert mitre, setting
    return Told(
        lies=lies,
        piece=piece,
        mitre=angle(mitre[1]),
        swing=mitre[2] or "",
        bevel=angle(bevel[1]) if bevel else 0.0,
        tilt=bevel[2] if bevel else "",
    )


def on_the_wall(spring: float) -> np.ndarray:
    """Turn (along, up the face, out from the back) to (right, into the wall, up)."""
    s = np.radians(spring)
    up, out = (0, -np.sin(s), np.cos(s)), (0, -np.cos(s), -np.sin(s))
    return np.array([(1, 0, 0), up, out]).T


def laid(lies: str, spring: float) -> np.ndarray:
    """Turn (along, up the face, out from the back) to the saw's (right, away, up)."""
    if lies == "nested upside down, wall edge to the fence, ceiling edge on the table":
        # the fence is the wall, the table the ceiling
        return np.diag([-1.0, 1.0, -1.0]) @ on_the_wall(spring)
    if lies == "standing, face to you, back to the fence":
        up, out = (0, 0, 1), (0, -1, 0)
    else:
        found = re.fullmatch(r"flat, face up, (\w+) edge to the fence", lies)
        assert found, lies
        away = {"top": 1, "outer": 1, "ceiling": 1, "bottom": -1, "wall": -1}[found[1]]
        up, out = (0, away, 0), (0, 0, 1)
    along = np.cross(up, out)
    return np.array([along, up, out]).T


def blade(said: Told) -> np.ndarray:
    """The way out of the piece, square to the blade."""
    m, b = np.radians(said.mitre), np.radians(said.bevel)
    side = {"left": -1, "right": 1, "": 0}
    towards_you = np.array([side[said.swing] * np.sin(m), -np.cos(m), 0.0])
    level = np.cross((0, 0, 1), towards_you)  # square to the cut, to the right
    upwards = np.cos(b) * np.array([0, 0, 1]) + side[said.tilt] * np.sin(b) * level
    normal = np.cross(towards_you, upwards)
    normal = normal if normal[0] > 0 else -normal
    return normal if said.piece == "left" else -normal


def sawn(said: Told, side: str, spring: float) -> list[float] | None:
    """How far each corner of the section reaches past the end's shortest; None for waste."""
    return reaches(laid(said.lies, spring).T @ blade(said), side)


def reaches(normal: np.ndarray, side: str) -> list[float] | None:
    along, up, out = normal
    if (along > 0) != (side == "right"):
        return None  # the end that is kept is the other one
    ends = [-(up * u + out * v) / along * (1 if side == "right" else -1) for u, v in SECTION]
    return [one - min(ends) for one in ends]


# ---- what the room needs -------------------------------------------------------------


def corner(degrees: float, side: str, inside: bool, spring: float = 0.0) -> np.ndarray:
    """The plane between two walls, as the piece at its end ``side`` sees it."""
    out = 1.0 if side == "right" else -1.0
    turn, towards = np.radians(180 - degrees), -1.0 if inside else 1.0
    normal = np.array([out * (1 + np.cos(turn)), towards * np.sin(turn), 0.0])
    return on_the_wall(spring).T @ normal


def bend(here: float, there: float, side: str) -> np.ndarray:
    """The plane between two pitches (degrees), as the piece of the first sees it at its end."""
    both = [np.array([np.cos(np.radians(one)), np.sin(np.radians(one))]) for one in (here, there)]
    return elevation(sum(both), here, side)


def elevation(normal: np.ndarray, pitch: float, side: str) -> np.ndarray:
    """Turn a way (right, up) on the wall to one (along, up the face, out) of a piece at a pitch."""
    p = np.radians(pitch)
    along, up = np.array([np.cos(p), np.sin(p)]), np.array([-np.sin(p), np.cos(p)])
    turned = np.array([normal @ along, normal @ up, 0.0])
    return turned if (turned[0] > 0) == (side == "right") else -turned


def climbing(normal: np.ndarray, pitch: float) -> np.ndarray:
    """Turn an upright plane's way (right, up, out) to that of a piece at a pitch."""
    p = np.radians(pitch)
    return np.array([normal[0] * np.cos(p), -normal[0] * np.sin(p), normal[2]])


def lap(side: str, over: bool) -> np.ndarray:
    """A scarf of 45°: the piece that laps over is the longer at its face."""
    return np.array([1.0 if side == "right" else -1.0, 0.0, -1.0 if over else 1.0])


TRIMS = """
saw: kerf 1/8 in, reads to 1/8 deg{saw}
trim base: 11/16 in thick, 3 5/8 in tall
{crown}
trim case: 11/16 in thick, 3 5/8 in wide
stock base: 10 ft at 10
stock crown: 10 ft at 10
stock case: 10 ft at 10
"""
WALLS = """
room "R" as R, trim base, crown, open walk
  A: 60 in, left=butt, right=in-corner(90 deg)
  B: 50 in, left=in-corner, right=out-corner(90 deg)
  C: 40 in, left=out-corner, right=in-corner(120 deg)
  D: 45 in, left=in-corner, right=out-corner(135 deg)
  E: 70 in, left=out-corner, right=butt
room "S" as S, trim base, crown, open walk
  A: 16 ft, left=butt, right=butt, splice
room "T" as T, trim base, open walk
  A: 30 in, left=butt, right=rake
  B: 60 in, left=rake, right=rake, rising right 36 deg
  C: 30 in, left=rake, right=butt
room "U" as U, trim base, open walk
  A: 50 in, left=plumb, right=level, rising right 36 deg
  B: 55 in, left=level, right=plumb, rising left 36 deg
room "W" as W, trim base, open walk
  A: 50 in, left=plumb, right=out-corner(90 deg), rising right 36 deg
  B: 55 in, left=out-corner, right=in-corner(60 deg), rising left 36 deg
  C: 30 in, left=in-corner, right=butt
room "X" as X, trim crown, open walk
  A: 50 in, left=butt, right=in-corner(90 deg), ceiling rising right 36 deg
  B: 55 in, left=in-corner, right=butt
room "V" as V, trim base, open walk
  A: 40 in, left=butt, right=butt
  opening 32 in, "door", casing case, height 60 in
  B: 40 in, left=butt, right=butt
"""

_CORNERS = {
    ("A", "right"): (90, True),
    ("B", "left"): (90, True),
    ("B", "right"): (90, False),
    ("C", "left"): (90, False),
    ("C", "right"): (120, True),
    ("D", "left"): (120, True),
    ("D", "right"): (135, False),
    ("E", "left"): (135, False),
}
CLIMB, HANG = np.radians(PITCH), np.radians(SPRING)
UPRIGHT = {("X-A-crown", "left")}
"""Crown's ends that are not cut nested."""
_UP, _LEVEL = np.array([0.0, 1.0]), np.array([1.0, 0.0])
WANTED = {
    **{
        (f"R-{wall}-{trim}", side): corner(degrees, side, inside, spring)
        for (wall, side), (degrees, inside) in _CORNERS.items()
        for trim, spring in (("base", 0.0), ("crown", SPRING))
    },
    ("T-A-base", "right"): bend(0, PITCH, "right"),
    ("T-B-base", "left"): bend(PITCH, 0, "left"),
    ("T-B-base", "right"): bend(PITCH, 0, "right"),
    ("T-C-base", "left"): bend(0, PITCH, "left"),
    ("U-A-base", "left"): elevation(_LEVEL, PITCH, "left"),
    ("U-A-base", "right"): elevation(_UP, PITCH, "right"),
    ("U-B-base", "left"): elevation(_UP, -PITCH, "left"),
    ("U-B-base", "right"): elevation(_LEVEL, -PITCH, "right"),
    # round a corner on a slope the plane is upright, as it is round a level one
    ("W-A-base", "left"): elevation(_LEVEL, PITCH, "left"),
    ("W-A-base", "right"): climbing(corner(90, "right", False), PITCH),
    ("W-B-base", "left"): climbing(corner(90, "left", False), -PITCH),
    ("W-B-base", "right"): climbing(
        np.array([np.sin(np.radians(60)), 0.0, np.cos(np.radians(60))]), -PITCH
    ),
    ("W-C-base", "left"): np.array([-np.sin(np.radians(60)), 0.0, np.cos(np.radians(60))]),
    # below a ceiling that slopes a corner is cut as below a level one, and what stops upright
    ("X-A-crown", "left"): np.array(
        [-np.cos(CLIMB), np.cos(HANG) * np.sin(CLIMB), -np.sin(HANG) * np.sin(CLIMB)]
    ),
    ("X-A-crown", "right"): corner(90, "right", True, SPRING),
    ("X-B-crown", "left"): corner(90, "left", True, SPRING),
    # a leg lies along its own length, its outer edge up its face; 45° where it meets the head
    ("V-door-case-left-leg", "right"): np.array([1.0, -1.0, 0.0]),
    ("V-door-case-right-leg", "left"): np.array([-1.0, -1.0, 0.0]),
    ("V-door-case-head", "left"): np.array([-1.0, -1.0, 0.0]),
    ("V-door-case-head", "right"): np.array([1.0, -1.0, 0.0]),
}


# ---- from the page to the words -------------------------------------------------------


def texts(html: str, mark: str) -> list[str]:
    """What stands in each element of a class, its own elements' texts in a line."""
    tag, name = mark.split(".")
    found = re.findall(rf'<{tag} class="[^"]*\b{name}\b[^"]*"[^>]*>(.*?)</{tag}>', html, re.S)
    return [plain(one) for one in found]


def plain(html: str) -> str:
    return " ".join(re.sub(r"<svg.*?</svg>|<[^>]+>", " ", html, flags=re.S).split()).replace(
        " ,", ","
    )


def kept_at(side: str, hands: str) -> str:
    """On which side of the blade a piece lies: its left end at your left is cut right of it."""
    turned = {"left end at left": False, "left end at right": True}[hands]
    return "right" if (side == "left") != turned else "left"


_ONCE = re.compile(r"(.+), (left end at (?:left|right))")
_EACH = re.compile(r"(.+), piece (left|right) of the blade")

Ends = dict[tuple[str, str], Told]


def lain(text: str, side: str) -> tuple[str, str]:
    if found := _EACH.fullmatch(text):
        return found[1], found[2]
    found = _ONCE.fullmatch(text)
    assert found, text
    return found[1], kept_at(side, found[2])


def of_tickets(page: str) -> tuple[Ends, Ends, dict[tuple[str, str], str]]:
    """Every end that is not square, crown's nested cuts, and what is said of laps."""
    ends: Ends = {}
    nest: Ends = {}
    laps = {}
    for name, html in re.findall(r'<article [^>]*id="([^"]+)"[^>]*>(.*?)</article>', page, re.S):
        rows = re.findall(r"<p(?: class=.note.)?>(<b>.*?)</p>", html, re.S)
        # Facts that share a line stand a wide blank apart.
        said_in = [fact for row in rows for fact in row.split("<span>&#160;&#160; </span>")]
        facts = dict(re.findall(
            r"^<b>(.*?)</b> (.*)$", "\n".join(fact.replace("\n", " ") for fact in said_in), re.M
        ))  # fmt: skip
        for side in ("left", "right"):
            (block,) = re.findall(rf'<div class="cut {side}">(.*?)</div>', html, re.S)
            setting = ", ".join(texts(block, "p.setting"))
            if setting == "square":
                continue
            said = plain(facts.get("lies") or facts[side])
            lies, piece = lain(said, side)
            ends[name, side] = told(setting, lies, piece)
            laps[name, side] = plain(block)
            if "or" in facts:
                lay, settings = plain(facts["or"]).split(", no bevel: ")
                lies, hands = _ONCE.fullmatch(lay).groups()
                for own in re.findall(rf"{side} end ([^,]+)", settings):
                    nest[name, side] = told(own, lies, kept_at(side, hands))
    return ends, nest, laps


def of_sticks(page: str) -> Ends:
    ends: Ends = {}
    for group in re.split("<h2[^>]*>", page)[1:]:
        head, *sticks = group.split('<section class="stick">')
        rows = [
            (row, (texts(stick, "p.lay") or texts(head, "p.lay"))[0])
            for stick in sticks
            for row in re.findall(
                r"<tr[^>]*>(<td class=\"number\">.*?</tr>(?:\s*<tr class=\"lies\">.*?</tr>)?)",
                stick,
                re.S,
            )
        ]
        for row, once in rows:
            (name,) = re.findall(r'<th scope="row">(.*?)</th>', row)
            cells = re.findall(r'<td class="number"[^>]*>(.*?)</td>', row, re.S)
            own = dict(re.findall(r"<b>(left|right)</b> (.*?)(?:<br/>|</td>)", row, re.S))
            for side, cell in (("left", cells[2]), ("right", cells[3])):
                setting = plain(cell.replace("<br/>", ", ")).removesuffix(", one pass")
                if setting != "square":
                    lies, piece = lain(plain(own.get(side) or once), side)
                    ends[name, side] = told(setting, lies, piece)
    return ends


def of_saw_sheet(page: str) -> Ends:
    ends: Ends = {}
    for group in page.split('<section class="group">')[1:]:
        lay, setting = texts(group, "p.lay"), texts(group, "h2.set")
        if not lay:
            continue
        once = _EACH.fullmatch(lay[0])
        for cell in re.findall(r"<td>([^<]* end of .*?)</td>", group):
            for side, name, own in re.findall(
                r"(left|right) end of ([^\s,]+)(?:, piece (left|right) of the blade)?", plain(cell)
            ):
                lies, piece = once.groups() if once else (lay[0], own)
                ends[name, side] = told(setting[0], lies, piece)
    return ends


# ---- the tests ------------------------------------------------------------------------


def printed(saw: str = "") -> dict[str, str]:
    result = compile_job(TRIMS.format(saw=saw, crown=CROWN) + WALLS)
    assert result.ok, [one.message for one in result.diagnostics]
    return render_sheets(result, only=("tickets", "stick-layouts", "saw-sheet"))


def close(said: Told, name: str, side: str, normal: np.ndarray) -> bool:
    made = sawn(said, side, SPRING if "crown" in name else 0.0)
    wanted = reaches(normal, side)
    assert wanted is not None
    return made is not None and np.allclose(made, wanted, atol=CLOSE)


SAWS = ("", ", bevels right", ", bevels both", ", stands 3 1/2 in", ", stands 3 in, bevels right")


@pytest.mark.parametrize("saw", SAWS)
def test_what_each_sheet_tells_is_the_piece_that_the_room_needs(saw: str) -> None:
    pages = printed(saw)
    ends, nest, laps = of_tickets(pages["tickets"])
    wanted = dict(WANTED)
    scarfs = [end for end in ends if end[0].startswith("S-")]
    for end in scarfs:
        wanted[end] = lap(end[1], "laps over its mate" in laps[end])
    assert len(scarfs) == 4
    for sheet in (ends, of_sticks(pages["stick-layouts"]), of_saw_sheet(pages["saw-sheet"])):
        assert set(sheet) == set(wanted)
        assert [end for end, said in sheet.items() if not close(said, *end, wanted[end])] == []
    assert set(nest) == {end for end in WANTED if "crown" in end[0]} - UPRIGHT
    assert [end for end, said in nest.items() if not close(said, *end, wanted[end])] == []


def test_every_way_to_lie_is_seen() -> None:
    seen = set()
    for saw in SAWS:
        ends, nest, _ = of_tickets(printed(saw)["tickets"])
        seen |= {one.lies for one in (*ends.values(), *nest.values())}
    assert len(seen) == 7


OTHER = {"left": "right", "right": "left"}
EDGE = {"top": "bottom", "bottom": "top", "outer": "wall", "ceiling": "wall", "wall": "ceiling"}


def turned_words(said: Told) -> list[Told]:
    """What was said, with one word of it turned round."""
    wrong = [replace(said, piece=OTHER[said.piece])]
    if said.swing:
        wrong.append(replace(said, swing=OTHER[said.swing]))
    if said.tilt:
        wrong.append(replace(said, tilt=OTHER[said.tilt]))
    if said.lies.startswith("flat"):
        edge = said.lies.split()[3]
        wrong.append(replace(said, lies=said.lies.replace(edge, EDGE[edge])))
    return wrong


@pytest.mark.parametrize("saw", SAWS)
def test_one_word_turned_round_is_another_piece(saw: str) -> None:
    ends, nest, _ = of_tickets(printed(saw)["tickets"])
    for table in (ends, nest):
        for end, said in table.items():
            if end in WANTED:
                assert close(said, *end, WANTED[end])
                wrong = turned_words(said)
                assert not [one for one in wrong if close(one, *end, WANTED[end])], (end, said)
