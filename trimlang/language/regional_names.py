"""Parts by the names that they have elsewhere: one row a name, answered with the usual one.

The words of the language are those that most finish carpenters use; who learnt the trade elsewhere
says architrave for casing and lining for jamb.  A name is answered where it stands as a word of the
language, never where it is what the user calls a trim.  Common practice, no source.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from typing import Final

from trimlang.language.slips.slip_row import WRITTEN_LENGTH
from trimlang.record import record

NAME: Final = r"[^\W\d_][\w.\-]*"
_WITH_A_NAME: Final = rf" +{NAME}"
_AT_A_SIDE: Final = r"(?:\b(?:left|right)\s*=\s*)"
_A_PART: Final = r",\s*"
_BEGINS: Final = r"^\s*"
_A_SECTION: Final = rf" *: *{WRITTEN_LENGTH} *(?:thick|tall|wide)\b"


@record
class PartElsewhere:
    """A part's usual word, its names elsewhere, and a line in which they stand for it.

    ``before`` and ``behind`` are the patterns of what stands round the name.
    """

    usual: str
    elsewhere: tuple[str, ...]
    line: str
    before: str
    behind: str = ""

    def written(self) -> Iterator[tuple[str, str]]:
        """Yield the line with each name from elsewhere, and as it should be."""
        for name in self.elsewhere:
            yield self.line.format(name), self.line.format(self.usual)

    @property
    def pattern(self) -> str:
        """The pattern of the line, the name in the group that is replaced."""
        # The longest first, so that “plinth blocks” is not taken for “plinth”.
        names = "|".join(map(re.escape, sorted(self.elsewhere, key=len, reverse=True)))
        names = names.replace(r"\ ", "[ -]")
        return f"{self.before}(?P<slip>{names})\\b{self.behind}"


def _row(usual: str, elsewhere: str, line: str, before: str, behind: str = "") -> PartElsewhere:
    names = tuple(name.strip() for name in elsewhere.split(","))
    return PartElsewhere(usual=usual, elsewhere=names, line=line, before=before, behind=behind)


PARTS_ELSEWHERE: Final = (
    # ---- round an opening
    _row("plinths", "plinth, plinth block, plinth blocks, foot blocks, architrave blocks",
         "door 32 in, casing case, height 80 in, {} foot", _A_PART, _WITH_A_NAME),
    _row("casing", "architrave, architraves, surround, door trim, window trim",
         "door 32 in, {} case, height 80 in", _A_PART, _WITH_A_NAME),
    _row("head", "header, overdoor, lintel, entablature",
         "door 32 in, casing case {} cap, height 80 in", rf"\bcasing +{NAME} +", _WITH_A_NAME),
    _row("jambs", "jamb, lining, linings, door lining, door linings, jamb extension,"
         " jamb extensions, extension jambs, jamb liners",
         "door 32 in, casing case, height 80 in, {} strip", _A_PART, _WITH_A_NAME),
    _row("sill", "cill, sill height, cill height",
         "window 32 in, {} 30 in", _A_PART, r" +\d"),
    _row("stool", "window board, sill board, window sill, sill, cill, window stool",
         "window 32 in, casing case, height 40 in, {} shelf", _A_PART, _WITH_A_NAME),
    _row("apron", "skirt, under-sill, undersill",
         "window 32 in, casing case, height 40 in, stool shelf {} case",
         rf"\bstool +{NAME} +", _WITH_A_NAME),
    _row("backband", "back band, back mould, band mould, outer band",
         "door 32 in, casing case, height 80 in, {} band", _A_PART, _WITH_A_NAME),
    _row("corner blocks", "rosette, rosettes, bullseyes, corner rosettes, corner block",
         "door 32 in, casing case, height 80 in, {} rose", _A_PART, _WITH_A_NAME),
    _row("hinged", "hung, handed, hand, hinges, hinge",
         "door 32 in, {} left", _A_PART, r" +(?:left|right)\b"),
    _row("swings", "opens, opening",
         "door 32 in, hinged left, {} out", _A_PART, r" +(?:in|out)\b"),
    _row("casings", "architraves, architrave, surrounds",
         "{}: reveal 3/16 in", _BEGINS,
         r" *: *(?:reveal|height|off|head|overhang|horn|lap)\b"),
    _row("reveal", "margin, setback, quirk, show",
         "casings: {} 3/16 in", r"^\s*casings *:(?:[^#]*,)?\s*", r" +\d"),
    _row("horn", "ear, ears, lug, lugs, return",
         "casings: {} 3/4 in", r"^\s*casings *:(?:[^#]*,)?\s*", r" +\d"),
    # ---- where walls meet, and how trim ends
    _row("in-corner", "internal corner, internal, internal angle, re-entrant",
         "N: 40 in, left={}, right=butt", _AT_A_SIDE),
    _row("out-corner", "external corner, external, external angle, salient",
         "N: 40 in, left={}, right=butt", _AT_A_SIDE),
    _row("cope", "scribe, scribed, scribed joint, coped joint",
         "N: 40 in, left=in-corner {}, right=butt",
         r"\b(?:in-corner|inside corner|inside|in|ic)(?:\([^)]*\))? +"),
    _row("taper", "splay, splayed, splayed end", "N: 40 in, left={}, right=butt", _AT_A_SIDE),
    _row("return", "mitred return, mitered return, returned, returned end, stopped end",
         "N: 40 in, left={}, right=butt", _AT_A_SIDE),
    _row("splice", "scarf, scarf joint, scarfed, heading joint",
         "N: 40 in, left={}, right=butt", _AT_A_SIDE),
    _row("butt", "square, square cut, butted, butt joint",
         "N: 40 in, left={}, right=in-corner", _AT_A_SIDE),
    _row("splices", "scarfs, scarf joints, heading joints",
         "{}: least 24 in", _BEGINS, r" *: *(?:never|allowed|angle|least|studs)\b"),
    _row("studs", "joists, uprights, framing",
         "splices: {} every 16 in", r"^\s*splices *:(?:[^#]*,)?\s*", r" +every\b"),
    _row("bullnose", "bull nose, rounded, radius, round corner",
         "N: 40 in, left=out-corner({} 3/4 in), right=butt", r"\(\s*(?:two-piece +)?", r" +\d"),
    # ---- stairs
    _row("rise", "riser, rises",
         "N: 40 in, left=butt, right=butt, rising right 7 3/4 in {}, 10 in run",
         r"\d\"? *(?:in\b)? *"),
    _row("run", "tread, going, goings",
         "N: 40 in, left=butt, right=butt, rising right 7 3/4 in rise, 10 in {}",
         r"\brise *, *\d[\d ./]*(?:in|mm|cm|\")? *"),
    _row("open side", "cut string, open string, cut stringer, open stringer, outer string",
         "N: 40 in, left=butt, right=butt, rising right 7 in over 10 in, {}", _A_PART),
    _row("wall side", "closed string, wall string, wall stringer, closed stringer, inner string",
         "N: 40 in, left=butt, right=butt, rising right 7 in over 10 in, {}", _A_PART),
    # ---- on a wall and below a ceiling
    _row("boxes", "frames, frame, panels, panel, panelling, paneling, wainscot, picture frames",
         "{} N: 2, 24 in tall, margin 4 in, trim panel", _BEGINS,
         rf" +{NAME}(?: +to +{NAME})?(?: *\"[^\"]*\")? *: *\d"),
    _row("margin", "gap, space, stile, border",
         "boxes N: 2, 24 in tall, {} 4 in, trim panel", r"^\s*boxes\b[^#]*,\s*", r" +\d"),
    # ---- what it is made and fixed with
    _row("trim", "moulding, molding, mould, mold, skirting, skirting board, baseboard, architrave,"
         " coving, cornice, crown, dado rail, chair rail, picture rail, quadrant, quarter round,"
         " scotia, beading, lining, stringer, string, nosing, batten, lath",
         "{} other: 9/16 in thick, 5 1/4 in tall", _BEGINS, rf" +{NAME}{_A_SECTION}"),
    _row("block", "plinth block, plinth, corner block, rosette, bullseye, foot block",
         "{} other: 3 in wide, 7 in tall, 1 1/8 in thick", _BEGINS,
         rf" +{NAME} *: *{WRITTEN_LENGTH} *wide\b"),
    _row("assembly", "build-up, buildup, stack, built-up",
         "{} foot: base, shoe", _BEGINS, rf" +{NAME} *: *{NAME} *(?:,|in front)"),
    _row("spring", "spring angle, sprung",
         "trim crown: 11/16 in thick, 3 5/8 in wide, {} 38 deg", _A_PART, r" +\d"),
    _row("caulk", "mastic, sealant, caulking, acrylic",
         "{}: bead 3/16 in", _BEGINS, r" *: *(?:bead|tube|waste)\b"),
    _row("nails", "brads, pins, panel pins, lost heads",
         "{}: every 16 in", _BEGINS, r" *: *(?:every|plate|floor|wallboard|box|\d[^#]*\blong)\b"),
    _row("filler", "stopping, wood filler, spackle",
         "{}: tub 8 fl oz at 6.00", _BEGINS, r" *: *tub\b"),
    _row("primer", "undercoat, sealer",
         "{}: backs, can 1 quart at 19.00", _BEGINS, r" *: *backs\b"),
)  # fmt: skip
"""The names from elsewhere that may stand for a word of the language, the more particular first."""

_TRIM_NAMES: Final = tuple(
    frozenset(row.split())
    for row in (
        "base skirting skirting-board baseboard mopboard washboard",
        "shoe quadrant quarter-round base-shoe shoe-moulding beading shoe-mould",
        "crown coving cornice cove crown-moulding ceiling-moulding",
        "case casing architrave surround door-casing",
        "rail dado dado-rail chair-rail chairrail",
        "picture picture-rail picrail plate-rail",
        "skirt stringer string wall-string skirtboard",
        "stop door-stop doorstop",
        "jamb lining door-lining",
        "stool shelf window-board windowboard sill cill",
        "panel panel-mould panel-moulding base-cap bolection",
        "scotia cove-mould bed bed-mould",
        "handrail banister balustrade cap",
    )
)
"""What one trim is called here and there: a name that no trim has may mean one of its row."""

_JOINTS_ELSEWHERE: Final = {
    name: row.usual
    for row in PARTS_ELSEWHERE
    if row.before == _AT_A_SIDE or row.usual == "cope"
    for name in row.elsewhere
}


def trim_elsewhere(name: str, trims: tuple[str, ...]) -> str | None:
    """Return the job's trim that goes by another name elsewhere, None where none or two may."""
    family = next((row for row in _TRIM_NAMES if name.casefold() in row), frozenset())
    # Most unknown names have no row; a long list of trims is looked through for the others once.
    found = _of_family(family, trims) if family else ()
    return found[0] if len(found) == 1 else None


@lru_cache(maxsize=len(_TRIM_NAMES))
def _of_family(family: frozenset[str], trims: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(trim for trim in trims if trim.casefold() in family)


def joint_elsewhere(name: str) -> str | None:
    """Return the language's word for an end that stands where a trim's name would."""
    return _JOINTS_ELSEWHERE.get(name.casefold())
