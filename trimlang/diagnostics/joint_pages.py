"""T3xx: two walls do not meet; T4xx: a piece cannot be cut or bought as asked."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import (
    JOB_TO_CLOSED_ROOM,
    JOB_TO_ROOM,
    OPEN_ROOM,
    STOCK,
    TRIM,
)
from trimlang.diagnostics.named_codes import SIDES_DISAGREE
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.whole import Whole

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
        code="T312",
        title="which side of the joint is wrong",
        message="{sides}; room “{room}” closes if {slip}",
        remedy="Look there first.",
        why="Two sides of one joint contradict each other (T301), and only one reading of them"
        " brings the walls back to where they began.",
        example=JOB_TO_CLOSED_ROOM
        + "  N: 12 ft, left=in-corner, right=in-corner\n"
        + "  E: 10 ft, left=out-corner, right=in-corner\n"
        + "  S: 12 ft, left=in-corner, right=in-corner\n"
        + "  W: 10 ft, left=in-corner, right=in-corner",
        needs=(Whole.WALLS,),
        settles=(SIDES_DISAGREE,),
    ),
    Page(
        code="T302",
        title="a corner with one side",
        message="{other} begins with {left}, but {one} ({line}) ends there with {right}",
        remedy="A corner is written at both runs that meet in it.",
        in_a_table="A corner stands in the column “right” of one run and “left” of the next.",
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
        code="T326",
        title="a run that stops at a casing in the corner",
        message="run {run} stops in the corner where the casing of {gap} stands {leg} out: its"
        " {trim} is cut that much shorter than the wall",
        remedy="Write {side}=in-corner if the run was measured to the wall; if it was measured to"
        " the casing's face, add {leg} to it and write {side}=in-corner too.",
        why="A run is as long as its wall, up to the corner. The leg of a casing that stands in"
        " that corner is in the way of what stands on the floor, so this is cut shorter; crown goes"
        " on above it. Only the hand that held the tape knows where it ended.",
        example=TRIM
        + STOCK
        + "trim case: 11/16 in thick, 2 1/4 in wide\nstock case: 16 ft at 12.10\n"
        + OPEN_ROOM
        + "  N: 40 in, left=butt, right=butt\n"
        "  door 32 in, right=in-corner, casing case, height 80 in\n"
        "  E: 50 in, left=butt, right=butt",
        severity=Severity.WARNING,
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T330",
        title="two casings in one corner",
        message="in the corner between them the casings of {other} and {gap} overlap by {by}",
        remedy="Rip that much off the left leg of {gap} and saw it off its head, as the tickets"
        " say; case one of the two alone; or, where wall is between a casing and the corner, list"
        " that wall, with the corner at it.",
        why="Both openings' lines say that they reach into the corner, and each casing stands out"
        " from its wall there: one of them has to be narrower by as much as the other is thick.",
        example="trim case: 11/16 in thick, 2 1/4 in wide\nstock case: 16 ft at 12.10\n"
        + JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=butt\n"
        '  door 32 in, "den", casing case, height 80 in, right=in-corner\n'
        '  door 30 in, "bath", casing case, height 80 in\n'
        "  E: 40 in, left=butt, right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T329",
        title="a scarf to a run without that trim",
        message="the {trim} of run {run} is to be spliced to run {there}, which has none",
        remedy="Give both runs {trim}, or write {trim} {side}=butt.",
        why="At a scarf two pieces of one trim lap over each other. Sawn so, and longer by the lap,"
        " the end would stand against nothing that fits it.",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=splice\n"
        + "  N2: 50 in, no base, left=splice, right=butt",
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
        code="T491",
        title="mitred and coped",
        message="this corner is mitred by one of its sides and coped by the other",
        remedy="Say one of the two: mitre, or cope on the side that is coped.",
        why="A corner is cut in one way, and a coped end needs an uncut face to lie against.",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=in-corner(mitre)\n"
        + "  E: 50 in, left=in-corner cope, right=butt",
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T492",
        title="nothing to mitre",
        message="an end of kind {joint} meets no other, so that nothing is mitred there",
        remedy="Leave “mitre” out, or make the end in-corner or out-corner.",
        why="Only where two walls meet do two pieces of trim meet in a mitre.",
        example=JOB_TO_ROOM + "  N: 40 in, left=butt(mitre), right=butt",
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
        remedy="{guess}Measure it again, or leave this trim off the run: no {trim}.",
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
    Page(
        code="T502",
        title="no batch has enough",
        message="the sticks of {trim} would do, but not without mixing batches in one {scope}",
        remedy="List more sticks of one batch, or let each wall have its own: stock {trim}: batch"
        " by wall",
        why="Sticks of unlike batches differ in colour where they meet; the pieces of a room are"
        " cut from one.",
        example=TRIM
        + 'on-hand base: 12 ft batch "A", 12 ft batch "B"\nspare 0 %\n'
        + 'room "Study", trim base, open walk\n'
        + "  N: 11 ft, left=butt, right=butt\n  E: 11 ft, left=butt, right=butt",
    ),
)
