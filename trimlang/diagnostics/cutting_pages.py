"""T404 and on: a joint that the saw, the stock or the wall does not make easy."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.severity import Severity

_TRIM = "trim base: 9/16 in thick, 5 1/4 in tall\n"
_STOCK = "stock base: 12 ft at 17.40\n"
_ALL = _TRIM + _STOCK + 'room "Study", trim base, open walk\n'

CUTTING_PAGES: Final = (
    Page(
        "T404",
        "beyond the saw",
        "the {side} end of run {run} wants a mitre of {mitre}; the saw swings to {reach}",
        "Clamp the piece to a wedge, cut it by hand, or say how far yours goes: saw: reaches 60"
        " deg",
        "A sharp corner's mitre is further from square than a common mitre saw turns (about 50°,"
        " from memory; the saw's manual decides).",
        _ALL + "  N: 40 in, left=in-corner(60 deg), right=butt",
        Severity.WARNING,
    ),
    Page(
        "T405",
        "a joint that stays open",
        "the {side} end of run {run} ({trim}) wants {exact}; the saw reads {setting}, which may"
        " leave {gap} open at the face",
        "Set the saw between its marks and try on scraps, or allow a wider gap: corners:"
        " {joint} gap {wider}",
        "A saw that reads in coarse steps cannot cut every angle; the joint's faces then stand"
        " apart at one edge. An outside corner shows it most.",
        "saw: reads to 5 deg\n" + _ALL + "  N: 40 in, left=out-corner(94 deg), right=butt",
        Severity.WARNING,
    ),
    Page(
        "T406",
        "no stud where a splice can be",
        "no splice of run {run} ({trim}) can be laid on a stud; it is laid by the sticks' lengths",
        "Check the first stud and their spacing (splices: studs every 16 in), or allow shorter"
        " pieces (splices: least 12 in).",
        "A splice holds best where both pieces are nailed to a stud. Here every stud lies too near"
        " a corner, or further along than a stick reaches.",
        "splices: studs every 160 in\n"
        + _ALL
        + "  N: 16 ft, left=butt, right=butt, first stud 3 in",
        Severity.WARNING,
    ),
    Page(
        "T407",
        "tops that do not line up",
        "runs {one} and {other} lose unlike amounts to the floor: their tops would differ by"
        " {differ}",
        "Scribe both by the larger gap, or set both to one level line.",
        "An eighth of an inch at a joint's top edge is seen from across the room.",
        _ALL
        + "  N: 40 in, left=butt, right=in-corner, floor gap 5/16 in\n"
        + "  E: 50 in, left=in-corner, right=butt",
        Severity.WARNING,
    ),
    Page(
        "T408",
        "nails too short",
        "a {nail} nail through {trim} and wallboard misses the plate by {short}",
        "Take longer nails: nails: 2 1/2 in long",
        "A nail that ends in the wallboard holds nothing.",
        "nails: 1 in long\n" + _ALL + "  N: 40 in, left=butt, right=butt",
        Severity.WARNING,
    ),
    Page(
        "T409",
        "the floor hides the plate",
        "the finished floor is as thick as the plate: no nail through {trim} can meet it",
        "Check “nails: plate, floor”; else nail into the studs.",
        "The plate shows above the finished floor by its thickness less the floor's.",
        "nails: plate 1 1/2 in, floor 1 1/2 in\n" + _ALL + "  N: 40 in, left=butt, right=butt",
        Severity.WARNING,
    ),
    Page(
        "T410",
        "casing longer than any stick",
        "casing: the {part} needs {need} of {trim}, and the longest stick gives {longest}",
        "List longer stock.",
        "Casing is seen from near by and is not spliced.",
        "trim case: 11/16 in thick, 2 1/4 in wide\nstock case: 7 ft at 6.10\n"
        + _ALL
        + "  N: 40 in, left=butt, right=butt\n"
        + "  opening 32 in, casing case, height 96 in\n",
        Severity.ERROR,
    ),
)
