"""Pages of what one trim of a wall does otherwise than the others."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import JOB_TO_ROOM, OPEN_ROOM, STOCK, TRIM

OWN_END_PAGES: Final = (
    Page(
        code="T255",
        title="an end of a trim that is not there",
        message="run {run} gets no {trim}, so it has no end",
        remedy="Leave this part out, or give the run or its room the trim.",
        why="An end that is said of one trim changes that trim's piece on this run, and there is"
        " none.",
        example=TRIM
        + "trim shoe: 1/2 in thick, 3/4 in tall, in front of base\nstock shoe: 8 ft at 5.20\n"
        + STOCK
        + OPEN_ROOM
        + "  N: 40 in, left=butt, right=butt, shoe return\n"
        + "  E: 30 in, left=butt, right=butt, trim base, shoe",
    ),
    Page(
        code="T490",
        title="every room, below a room",
        message="what every room gets stands below room “{room}”",
        remedy="Put this line above the first room.",
        why="It holds for all rooms, those above it too, so it stands before them, where it is"
        " read first.",
        example=JOB_TO_ROOM + "  N: 40 in, left=butt, right=butt\nevery room: trim base",
    ),
    Page(
        code="T256",
        title="an end of a trim without a side",
        message="at which end of the run is the {trim} a {joint}?",
        remedy="Write {trim} left={joint} or {trim} right={joint}, or put it behind the end that"
        " it changes: right=butt, {trim} {joint}.",
        why="Without its side it belongs to the end that stands before it in the line, and none"
        " does.",
        example=JOB_TO_ROOM + "  N: 40 in, base return, left=butt, right=butt",
    ),
    Page(
        code="T257",
        title="no end for one trim alone",
        message="the {trim} alone cannot be {joint} here: {why}",
        remedy="{remedy}",
        why="Where walls meet, or a wall climbs, they do so for all its trims. One of them alone"
        " can only end before the others do; in an inside corner it may be coped, mitred, or run"
        " square into it.",
        example=JOB_TO_ROOM + "  N: 40 in, left=butt, right=butt, base in-corner",
    ),
)
