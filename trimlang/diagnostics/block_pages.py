"""T292 to T294, T430 to T443: blocks, backbands, heads of parts, boxes and rails at openings."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import JOB_TO_ROOM, OPEN_ROOM, RUN, STOCK, TRIM
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.whole import Whole

_CASE: Final = (
    "trim case: 11/16 in thick, 2 1/4 in wide\nstock case: 16 ft at 12.10\n"
    "trim cap: 3/4 in thick, 1 1/4 in wide\nstock cap: 8 ft at 6.10\n"
)
_DOOR: Final = _CASE + "{more}" + JOB_TO_ROOM + RUN + "  door 32 in, casing {said}, height 80 in\n"
"""A cased door: lines above it, and what stands behind its casing, are to be filled in."""

_PLINTH: Final = "block plinth: 3 in wide, 7 in tall, 1 1/8 in thick, at 6.50\n"
_ROSETTE: Final = "block rosette: 2 1/2 in wide, 2 1/2 in tall, at 4.20\n"


_WINDOW: Final = (
    _CASE
    + JOB_TO_ROOM
    + '  N: 40 in, left=butt, right=butt\n  window 36 in, "yard"{sill}, stops nothing\n'
    + "  N2: 30 in, left=butt, right=butt\n  boxes {boxes}, trim cap\n"
)
"""A wall with a window and boxes."""


_RAIL: Final = (
    "trim case: 11/16 in thick, 2 1/4 in wide\nstock case: 16 ft at 12.10\n"
    "trim rail: 1 in thick, 2 1/2 in tall\nstock rail: 16 ft at 9.10\n"
    'room "Study", trim rail, open walk\n'
    "  N: 40 in, left=butt, {end}\n  door 32 in, casing case, height 80 in\n"
)
"""A wall with a rail that ends at a door's casing."""


def _door(more: str, said: str) -> str:
    return _DOOR.format(more=more, said=said)


BLOCK_PAGES: Final = (
    Page(
        code="T292",
        title="a block or head whose name is taken",
        message="“{name}” is the name of something else already, in {line}",
        remedy="Give it a name of its own.",
        why="A name in an opening's line means one thing.",
        example=TRIM + STOCK + "block base: 3 in wide, 7 in tall\n" + OPEN_ROOM + RUN,
        loses=Whole.USES,
    ),
    Page(
        code="T293",
        title="a block of what size?",
        message="block “{block}” needs a width and a height",
        remedy="Write for example: block {block}: 3 in wide, 7 in tall, at 6.50",
        why="A plinth takes up wall and shortens the legs above it; a corner block shortens legs"
        " and head.",
        example=TRIM + STOCK + "block plinth: 3 in wide\n" + OPEN_ROOM + RUN,
        loses=Whole.USES,
        needs=(Whole.LINE,),
    ),
    Page(
        code="T294",
        title="unknown block",
        message="there is no block “{name}”",
        remedy="{remedy}",
        why="A block is named in a line of its own, with its size and price.",
        example=_door(_PLINTH, "case, plinths plint"),
        needs=(Whole.USES,),
        loses=Whole.USES,
    ),
    Page(
        code="T430",
        title="a block narrower than what ends at it",
        message="block “{block}” is {own} wide or tall, and the casing at it {its} wide",
        remedy="Take a block as wide as the casing or wider.",
        why="A leg that is wider than the block below it, or a head that is wider than the block"
        " beside it, shows its end grain.",
        example=_door(_PLINTH.replace("3 in", "2 in"), "case, plinths plinth"),
    ),
    Page(
        code="T431",
        title="plinths that stand on no floor",
        message="plinths stand on the floor, and these legs do not reach it",
        remedy="Leave out the plinths, or the stool or “four sides”.",
        why="The legs of a window with a stool stand on that, and a frame's on its bottom.",
        example=_door(_PLINTH, "case, four sides, plinths plinth"),
    ),
    Page(
        code="T432",
        title="corner blocks with another head",
        message="corner blocks take the place of mitres between legs and head of one trim",
        remedy="Leave out the corner blocks, or the other head or the backband.",
        why="A head of another trim lies over the legs, and a backband goes round an unbroken"
        " edge: neither has a corner for a block.",
        example=_door(_ROSETTE, "case head cap, corner blocks rosette"),
    ),
    Page(
        code="T433",
        title="a corner block over the edge of the opening",
        message="block “{block}” stands {over} past the casing, and the reveal is {reveal}",
        remedy="Take a smaller block, or a wider reveal: casings: reveal {over}",
        why="A corner block's middle is on the casing's, so it stands past the casing at both"
        " edges; further than the reveal it hangs into the opening, in the way of the door.",
        example=_door(_ROSETTE.replace("2 1/2", "3"), "case, corner blocks rosette"),
        severity=Severity.WARNING,
    ),
    Page(
        code="T434",
        title="a plinth that something stands out from",
        message="plinth “{block}” is {own} {word}, and {trim} at it {its}",
        remedy="Take a larger block, or check both sizes.",
        why="A plinth is there for base and casing to end at: what is taller or thicker than it"
        " shows its end.",
        example=_door(_PLINTH.replace("7 in", "5 in"), "case, plinths plinth"),
        severity=Severity.WARNING,
    ),
    Page(
        code="T435",
        title="a backband round no plain edge",
        message="a backband goes round a casing with straight outer edges, and this head overhangs",
        remedy="Leave out the backband, the overhang, or the head of several parts.",
        why="A backband is mitred where a leg's outer edge meets the head's; where the head goes"
        " past the legs they do not meet.",
        example=_door("head crosshead: cap overhang 1/2 in\n", "case head crosshead, backband cap"),
    ),
    Page(
        code="T436",
        title="an overhang that follows already",
        message="{trim} stands in front of {behind} and goes as far as that; its overhang follows",
        remedy="Leave the overhang out.",
        why="Its back lies on the face of the part behind, and where it is returned it goes round"
        " that part's ends: it then stands past them by its own thickness.",
        example=_CASE
        + "trim bead: 3/8 in thick, 1/2 in tall, in front of cap\nstock bead: 8 ft at 2.10\n"
        + "head crosshead: cap, bead overhang 1 in returned\n"
        + JOB_TO_ROOM
        + RUN
        + "  door 32 in, casing case head crosshead, height 80 in\n",
    ),
    Page(
        code="T437",
        title="a backband no wider than its lap",
        message="backband {trim} is no wider than it lies on the casing: {lap}",
        remedy="Take a wider one, or less lap: casings: lap 1/4 in",
        why="What is left of its width goes past the casing's edge and makes it longer.",
        example=_door("casings: lap 2 in\n", "case, backband cap"),
    ),
    Page(
        code="T438",
        title="block named, nowhere used",
        message="block “{block}” stands nowhere",
        remedy="Name it at an opening (plinths {block}, corner blocks {block}), in a corner"
        " (in-corner(block {block})) or in a wall (transition {block}), or take the line out.",
        why="It would not be bought.",
        example=TRIM + STOCK + _PLINTH + OPEN_ROOM + RUN,
        severity=Severity.WARNING,
        needs=(Whole.USES, Whole.WALLS),
    ),
    Page(
        code="T439",
        title="boxes where an opening reaches the floor",
        message="boxes {run} would lie on “{opening}”, whose sill is not given",
        remedy="Write how high it is, sill 30 in, or lay boxes out on the runs beside it.",
        why="Boxes go on below a window; a door leaves them no wall.",
        example=_WINDOW.format(sill="", boxes="N to N2: 5, 16 in tall, margin 3 in"),
    ),
    Page(
        code="T440",
        title="boxes taller than the wall below a window",
        message="these boxes are {tall} tall, and below “{opening}” there are {room} of wall",
        remedy="Make them lower, or lay them out on the runs beside the window.",
        why="Below a sill there is also a stool with its apron, or the bottom of a casing.",
        example=_WINDOW.format(
            sill=", sill 18 in", boxes='under "yard": 2, 20 in tall, margin 3 in'
        ),
    ),
    Page(
        code="T441",
        title="boxes on walls that are not one",
        message="{run} and {other} are not parts of one wall, one after the other to the right",
        remedy="Name its first and its last run as you face it: boxes N to N2: …",
        why="Boxes are laid out on one straight wall; past a corner or a change of slope they begin"
        " anew.",
        example=_WINDOW.format(sill=", sill 30 in", boxes="N2 to N: 5, 16 in tall, margin 3 in"),
        loses=Whole.USES,
    ),
    Page(
        code="T496",
        title="boxes on a wall that curves",
        message="run {run} curves, and boxes are flat frames",
        remedy="Set boxes on straight walls only, and leave this line out.",
        why="Four straight pieces do not follow a curve: their middle would stand off the wall, and"
        " a frame bent with kerfs has to be made on the wall itself.",
        example=_WINDOW.format(sill=", sill 30 in", boxes="N: 2, 16 in tall, margin 3 in").replace(
            "N: 40 in, left=butt, right=butt", "N: 40 in, left=butt, right=butt, curves in 4 in"
        ),
        loses=Whole.USES,
    ),
    Page(
        code="T442",
        title="trim that stands out past the casing",
        message="the {trim} on run {run} stands {proud} further out than what it butts against at"
        " its {side} end",
        remedy="Write {trim} {side}=taper (or {trim} {side}=return), or check the thicknesses."
        " For all such ends: casings: proud ends taper",
        why="What stands out past the casing by more than a sixteenth shows its end grain. A taper"
        " bevels that much off its front corner; a return closes the profile before the casing.",
        example=_RAIL.format(end="right=butt"),
        severity=Severity.WARNING,
    ),
    Page(
        code="T443",
        title="a taper with nothing to take off",
        message="the {trim} on run {run} does not stand out past the casing",
        remedy="Write butt.",
        why="A taper at a casing takes off what stands out past its face.",
        example=_RAIL.replace("rail: 1 in", "rail: 1/2 in").format(end="right=taper"),
        severity=Severity.WARNING,
    ),
)
