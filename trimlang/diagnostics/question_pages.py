"""T26x: what could be so and hardly is; each is a question."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import JOB_TO_ROOM, OPEN_ROOM, RUN, STOCK, TRIM
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.whole import Whole

QUESTION_PAGES: Final = (
    Page(
        code="T260",
        title="tenths of a foot",
        message="{feet} is no mark on a tape; was {instead} meant?",
        remedy="Write {instead}, or the length in inches.",
        why="A foot has twelve inches, so 4.2 ft is 4 ft 2 3/8 in, and is nearly always written for"
        " 4 ft 2 in.",
        example=JOB_TO_ROOM + "  N: 4.2 ft, left=butt, right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T261",
        title="a stick of a few inches",
        message="a stick of {long} is hardly sold; was {instead} meant?",
        remedy="Write {instead}; if the sticks are as short as that, leave it.",
        why="Trim is sold by the foot, and no wall can be cut from such a stick.",
        example=TRIM + "stock base: 12 in at 17.40, 12 ft at 17.40\n" + OPEN_ROOM + RUN,
        severity=Severity.WARNING,
    ),
    Page(
        code="T262",
        title="crown without a spring angle",
        message="“{trim}” is cut as if it lay flat on the wall: its line says no spring angle",
        # 38° and 45° are the springs of most crown (common practice, no source).
        remedy="Add the angle between its back and the wall, for most crown one of these two:"
        " spring 38 deg, spring 45 deg.",
        why="Crown stands away from the wall, and its saw settings come from its spring angle."
        " Without it every mitre would be wrong.",
        example="trim crown: 11/16 in thick, 3 5/8 in wide\nstock crown: 12 ft at 28.80\n"
        'room "Study", trim crown, open walk\n' + RUN,
        severity=Severity.WARNING,
        needs=(Whole.LINE,),
    ),
    Page(
        code="T263",
        title="thicker than it is tall",
        message="trim “{trim}” is thicker than it is tall; were the two swapped?",
        remedy="Write what it stands out from the wall as thick, its height on the wall as tall.",
        why="An outside corner grows by the thickness, so a base 5 1/4 in thick would be cut"
        " inches too long.",
        example="trim base: 5 1/4 in thick, 9/16 in tall\n" + STOCK + OPEN_ROOM + RUN,
        severity=Severity.WARNING,
    ),
    Page(
        code="T264",
        title="a stick for nothing",
        message="no run of {trim} can be cut from a stick of {long}: the shortest is {run}",
        remedy="Check the stick's length; if it is right, leave it out.",
        why="A stick that is shorter than every run, where none may be pieced, can never be"
        " used; its length is probably a slip.",
        example=TRIM
        + "stock base: 3 ft at 4.10, 12 ft at 17.40\n"
        + OPEN_ROOM
        + "  N: 40 in, left=butt, right=butt, no splice",
        severity=Severity.WARNING,
    ),
    Page(
        code="T265",
        title="a height for no casing",
        message="this opening states its height and gets no casing",
        remedy="Add its casing (casing case), or leave the height out.",
        why="Only the legs of a casing are as long as an opening is high.",
        example=JOB_TO_ROOM + RUN + "  opening 32 in, height 80 in",
        severity=Severity.WARNING,
    ),
    Page(
        code="T266",
        title="two entrances",
        message="room “{room}” has an entrance already",
        remedy="Mark the opening from which the room is seen first.",
        why="Copes and splices are turned away from the one place where people come in.",
        example=JOB_TO_ROOM
        + RUN
        + "  opening 32 in, entrance\n  N2: 40 in, left=butt, right=butt\n"
        + "  opening 30 in, entrance",
        severity=Severity.WARNING,
    ),
)
