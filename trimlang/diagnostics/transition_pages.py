"""T474 to T478: blocks that trim ends at, in corners and between unlike trims."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import JOB_TO_ROOM, RUN
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.whole import Whole

_FOOT: Final = "block foot: 1 5/8 in wide, 7 in tall, 1 1/8 in thick, at 6.50\n"


def _corner(end: str, more: str = "", mate: str = "  E: 30 in, right=butt\n") -> str:
    """Return a job with one corner, whose left side is written ``end``."""
    return _FOOT + more + JOB_TO_ROOM + f"  N: 40 in, left=butt, right={end}\n" + mate


TRANSITION_PAGES: Final = (
    Page(
        code="T474",
        title="a block where no corner is",
        message="an end of kind {joint} has no block: only the corner of two walls has one",
        remedy="Between two runs of one wall the block has a line of its own: transition foot",
        why="In a corner a block covers a part of both walls; in a wall it takes up its own width.",
        example=_FOOT + JOB_TO_ROOM + "  N: 40 in, left=butt, right=butt(block foot)\n",
        loses=Whole.USES,
    ),
    Page(
        code="T475",
        title="a block that reaches round no outside corner",
        message="block “{block}” needs a thickness, less than its width, to go round an outside"
        " corner",
        remedy="Say how far it stands out from the wall: block {block}: 2 1/2 in wide, 7 in tall,"
        " 1 3/8 in thick",
        why="Round an outside corner both its faces are as wide as it, and the walls begin behind"
        " its thickness: the rest covers them.",
        example=_corner("out-corner(block foot)").replace(", 1 1/8 in thick", ""),
        loses=Whole.USES,
    ),
    Page(
        code="T476",
        title="two blocks for one corner",
        message="one wall has block “{one}” in this corner, the other “{other}”",
        remedy="Name the block at one of the two walls.",
        why="One block fills the corner, and both walls' trims end at it.",
        example=_corner(
            "in-corner(block foot)",
            "block post: 2 in wide, 7 in tall\n",
            "  E: 30 in, left=in-corner(block post), right=butt\n",
        ),
    ),
    Page(
        code="T477",
        title="a block in a corner that is not square",
        message="block “{block}” is square, and the corner is {corner}°",
        remedy="Shape a block for this corner, or let the trims meet without one.",
        why="A square block touches the walls of such a corner at one edge only, and nothing closes"
        " what stays open behind it.",
        example=_corner("in-corner(120 deg, block foot)"),
        severity=Severity.WARNING,
    ),
    Page(
        code="T478",
        title="a block that trim stands out from",
        message="block “{block}” is {own} {word}, and {trim} on {run} {its}",
        remedy="Take a larger block, or check both sizes.",
        why="Trim ends square at a block: what is taller, or stands out further, shows its end"
        " there. In an inside corner a block stands out by its width.",
        example=_FOOT.replace("7 in", "5 in")
        + JOB_TO_ROOM
        + RUN
        + "  transition foot\n"
        + RUN.replace("N", "N2"),
        severity=Severity.WARNING,
    ),
)
