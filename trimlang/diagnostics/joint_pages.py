"""T3xx: two walls do not meet; T4xx: a piece cannot be cut or bought as asked."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import JOB_TO_CLOSED_ROOM, JOB_TO_ROOM, TRIM
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.whole import Whole

SIDES_DISAGREE: Final = "T301"

JOINT_PAGES: Final = (
    Page(
        code=SIDES_DISAGREE,
        title="two sides of one joint disagree",
        message="{other} begins with {left}, but {one} ({line}) ends there with {right}",
        remedy="It is one joint: make both ends the same. Were left and right swapped?",
        why="Walls are listed in order, turning to the right; the right end of one run and the"
        " left end of the next meet in the same place. An inside corner cannot meet an outside"
        " one.",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=in-corner\n  E: 50 in, left=out-corner, right=butt",
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T302",
        title="a corner with one side",
        message="{other} begins with {left}, but {one} ({line}) ends there with {right}",
        remedy="A corner is written at both runs that meet in it.",
        why="Where two runs meet in a corner both ends are cut for it. Where only one wall has"
        " trim, its end is a butt.",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=in-corner\n  E: 50 in, left=butt, right=butt",
        severity=Severity.WARNING,
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T303",
        title="one corner, two angles",
        message="{one} and {other} meet in one corner, measured as {right:g}° and as {left:g}°",
        remedy="Measure again and write the angle at one of the two ends.",
        why="Both sides of a corner are cut to half of one angle.",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=in-corner(91 deg)\n"
        + "  E: 50 in, left=in-corner(89 deg), right=butt",
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T304",
        title="a corner that nothing meets",
        message="run {run} has an {joint} where {gap} is: nothing meets it there",
        remedy="Make it a butt, and write the corner at {gap} ({kind} …, {side}={joint}).",
        why="A mitred end with no mate shows its end grain.",
        example=JOB_TO_ROOM + "  N: 40 in, left=butt, right=in-corner\n  opening 32 in\n"
        "  E: 50 in, left=butt, right=butt",
        severity=Severity.WARNING,
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T305",
        title="coped twice",
        message="both sides of this corner are coped",
        remedy="Cope one side; the other runs square into the corner.",
        why="A coped end needs an uncut face to lie against.",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=in-corner cope\n"
        + "  E: 50 in, left=in-corner cope, right=butt",
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T306",
        title="coped at both ends",
        message="run {run} is coped at both ends",
        remedy="Let one of its corners be coped at the other side, or leave the side to trimlang.",
        why="A piece that is coped at both ends must be right to the width of a pencil line at"
        " both; where one end runs square, only the other has to be fitted.",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=in-corner\n"
        + "  E: 50 in, left=in-corner cope, right=in-corner cope\n"
        + "  S: 40 in, left=in-corner, right=butt",
        severity=Severity.WARNING,
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T310",
        title="the room does not close",
        message="room “{room}” does not close: its walls end {gap} from where they began ({where})",
        remedy="{likely}",
        why="Walked one after the other, the walls of a room come back to their start. Where they"
        " miss it by more than the tape's errors, a length or a corner is wrong, and it is cheaper"
        " to find it now. Set what is allowed with “closes within 1 in”; a room that is not to be"
        " closed is marked “open walk”.",
        example=JOB_TO_CLOSED_ROOM
        + "  N: 12 ft, left=in-corner, right=in-corner\n"
        + "  E: 10 ft, left=in-corner, right=in-corner\n"
        + "  S: 11 ft, left=in-corner, right=in-corner\n"
        + "  W: 10 ft, left=in-corner, right=in-corner",
        severity=Severity.WARNING,
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T311",
        title="the corners do not go round",
        message="the corners of room “{room}” turn {turned} in all, and once round is 360°",
        remedy="{likely}",
        why="Going round a room to the right, each inside corner turns a quarter right and each"
        " outside corner a quarter left; together they make one whole turn. Otherwise an inside"
        " corner was written for an outside one, or a wall was left out.",
        example=JOB_TO_CLOSED_ROOM
        + "  N: 12 ft, left=in-corner, right=in-corner\n"
        + "  E: 10 ft, left=in-corner, right=in-corner\n"
        + "  S: 12 ft, left=in-corner, right=in-corner",
        severity=Severity.WARNING,
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T313",
        title="the corner that the others leave",
        message="the measured corners of room “{room}” leave {angle} for {which},"
        " and it would be cut for about {square}",
        remedy="Write {joint}(implied) there to have it cut for {angle}, or measure it.",
        why="The corners of a room make one whole turn. Where some were measured, the others are"
        " what is left, and a corner that nobody measured is cut as if it were square.",
        example=JOB_TO_CLOSED_ROOM
        + "  N: 12 ft, left=in-corner, right=in-corner(93 deg)\n"
        + "  E: 10 ft, left=in-corner, right=in-corner(93 deg)\n"
        + "  S: 12 ft, left=in-corner, right=in-corner(93 deg)\n"
        + "  W: 10 ft, left=in-corner, right=in-corner",
        severity=Severity.WARNING,
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T314",
        title="a diagonal between no two corners",
        message="diagonal {name} {why}",
        remedy="A diagonal runs from the left end of its first wall to the right end of its second,"
        " across the room: diagonal N-E of walls N, E, S, W.",
        why="Only a line from one corner of the room to another that no wall joins says anything"
        " about how square the room is.",
        example=JOB_TO_CLOSED_ROOM
        + "  N: 12 ft, left=in-corner, right=in-corner\n"
        + "  E: 10 ft, left=in-corner, right=in-corner\n"
        + "  S: 12 ft, left=in-corner, right=in-corner\n"
        + "  W: 10 ft, left=in-corner, right=in-corner\n"
        + "  diagonal N-N 12 ft",
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T315",
        title="walked the wrong way round",
        message="the walls of room “{room}” come in the order {order}: that is turning left",
        remedy="List them turning right as you face them, N, E, S, W; if only their names are"
        " so, change those.",
        why="Left and right are as you face a wall, and the next wall is the one at your right"
        " hand. Listed the other way round a room closes just as well, and every left and every"
        " right in it is wrong.",
        example=JOB_TO_CLOSED_ROOM
        + "  N: 12 ft, left=in-corner, right=in-corner\n"
        + "  W: 10 ft, left=in-corner, right=in-corner\n"
        + "  S: 12 ft, left=in-corner, right=in-corner\n"
        + "  E: 10 ft, left=in-corner, right=in-corner",
        severity=Severity.WARNING,
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T316",
        title="a diagonal that contradicts the walls",
        message="walls and diagonals of room “{room}” contradict each other; least fits {worst}",
        remedy="{likely}",
        why="With a diagonal there is more measured than the walls need, and all of it is adjusted"
        " together, as a land survey is: each number is changed as little as its doubt allows."
        " Where that is not enough, one of them is wrong.",
        example=JOB_TO_CLOSED_ROOM
        + "  N: 12 ft, left=in-corner, right=in-corner\n"
        + "  E: 10 ft, left=in-corner, right=in-corner\n"
        + "  S: 12 ft, left=in-corner, right=in-corner\n"
        + "  W: 10 ft, left=in-corner, right=in-corner\n"
        + "  diagonal N-E 16 ft 7 7/16 in\n"
        + "  diagonal E-S 15 ft 7 7/16 in",
        severity=Severity.WARNING,
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T317",
        title="no angle follows here",
        message="the other corners of room “{room}” do not say what this one is",
        remedy="Measure the corner, or leave “implied” out.",
        why="Only in a room that is walked all round, and whose other corners are in order, is a"
        " corner what they leave of a whole turn.",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=in-corner(implied)\n"
        + "  E: 50 in, left=in-corner, right=butt",
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T312",
        title="which side of the joint is wrong",
        message="{sides}; room “{room}” closes if {slip}",
        remedy="Look at that end first.",
        why="Two sides of one joint contradict each other (T301), and only one reading of them"
        " brings the walls back to where they began.",
        example=JOB_TO_CLOSED_ROOM
        + "  N: 12 ft, left=in-corner, right=in-corner\n"
        + "  E: 10 ft, left=out-corner, right=in-corner\n"
        + "  S: 12 ft, left=in-corner, right=in-corner\n"
        + "  W: 10 ft, left=in-corner, right=in-corner",
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T401",
        title="longer than any stick",
        message="run {run} needs {need} of {trim}, and the longest stick gives {longest}",
        remedy="Allow a splice there (leave out “no splice” or “splices: never”), or list longer"
        " stock.",
        why="The file forbids to join two pieces on this wall, and no stick is long enough for"
        " one.",
        example=JOB_TO_ROOM + "  N: 14 ft, left=butt, right=butt, no splice",
    ),
    Page(
        code="T402",
        title="nothing left of it",
        message="run {run} is too short for {trim} between its ends",
        remedy="Measure it again, or leave this trim off the run: no {trim}.",
        why="What the joints take away is more than the wall gives.",
        example="trim base: 9/16 in thick, 5 1/4 in tall\ntrim shoe: 1/2 in thick, in front of"
        " base\n"
        "stock base: 12 ft at 17.40\nstock shoe: 8 ft at 5.20\n"
        'room "Study", trim base, shoe, open walk\n'
        "  N: 1 in, left=in-corner, right=in-corner\n",
    ),
    Page(
        code="T403",
        title="too short to splice",
        message="run {run} cannot be spliced: {why}",
        remedy="{remedy}",
        why="Each piece of a spliced wall must be at least as long as the file allows.",
        example=TRIM + 'stock base: 20 in at 2.00\nroom "Study", trim base, open walk\n'
        "  N: 14 ft, left=butt, right=butt",
    ),
    Page(
        code="T501",
        title="not enough stock",
        message="{pieces} of {trim} {take} {need} of stick, and there is no more than {have}"
        " ({sticks}); {lacking}",
        remedy="List a length that can be bought in any number, or more of those that are limited.",
        why="Sticks on hand and sticks with “at most” run out. What is missing is what finds no"
        " stick when the longest pieces are cut first.",
        example=TRIM + 'stock base: 12 ft at 17.40 at most 1\nroom "Study", trim base, open walk\n'
        "  N: 11 ft, left=butt, right=butt\n  E: 11 ft, left=butt, right=butt",
    ),
)
