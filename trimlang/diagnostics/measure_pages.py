"""T236 and on: corners measured by hand, crown, casings and stairs."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import JOB_TO_ROOM, OPEN_ROOM, RUN, STOCK, TRIM
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.whole import Whole

MEASURE_PAGES: Final = (
    Page(
        code="T236",
        title="an inside corner that points outwards",
        message="{degrees} through the room is an outside corner",
        remedy="Write out-corner({wall}), or measure again.",
        why="An inside corner is less than 180° through the room. Where the room takes up more"
        " than that, the wall stands out into it.",
        example=JOB_TO_ROOM + "  N: 40 in, left=in-corner(225 deg), right=butt",
    ),
    Page(
        code="T237",
        title="no triangle",
        message="these two legs and this diagonal make no triangle",
        remedy="Measure all three again, from the corner to each mark and from mark to mark.",
        why="The diagonal is shorter than both legs together and longer than their difference.",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=in-corner(corner by 36 in, 36 in, diagonal 81 in), right=butt",
    ),
    Page(
        code="T238",
        title="a corner measured too roughly",
        message="a sixteenth in this diagonal changes the corner ({corner}) by {error}",
        remedy="Mark the walls further from the corner.",
        why="The shorter the legs, the more a slip of the tape counts. Legs of three feet give the"
        " corner to about a tenth of a degree.",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=in-corner(corner by 6 in, 6 in, diagonal 8 1/2 in), right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T239",
        title="crown without a width",
        message="trim “{trim}” has a spring angle but no width",
        remedy="Add it to the trim's line: trim {trim}: 3 5/8 in wide, spring 38 deg",
        why="How far crown stands out from the wall, and so how long a stick an outside corner"
        " takes, comes from its width and its spring angle.",
        example="trim crown: 11/16 in thick, spring 38 deg\nstock crown: 12 ft at 21.00\n"
        'room "Study", trim crown, open walk\n' + RUN,
    ),
    Page(
        code="T240",
        title="an opening's height is missing",
        message="a casing of {trim} needs the opening's height",
        remedy="Add it: opening 32 in, casing {trim}, height 80 in. Or leave its casing out.",
        why="The legs are as long as the opening is high, from the floor to the head jamb.",
        example="trim case: 11/16 in thick, 2 1/4 in wide\nstock case: 7 ft at 6.10\n"
        + JOB_TO_ROOM
        + RUN
        + "  opening 32 in, casing case\n",
        needs=(Whole.LINE,),
    ),
    Page(
        code="T241",
        title="casing without a width",
        message="trim “{trim}” needs a width to be used as casing",
        remedy="Add it to the trim's line: trim {trim}: 11/16 in thick, 2 1/4 in wide",
        why="Legs and head reach past the opening by the width of the casing.",
        example="trim case: 11/16 in thick\nstock case: 7 ft at 6.10\n"
        + JOB_TO_ROOM
        + RUN
        + "  opening 32 in, casing case, height 80 in\n",
    ),
    Page(
        code="T242",
        title="no such head",
        message="a casing's head cannot end in {joint}",
        remedy="Write “head mitre” or “head butt”.",
        why="A head is mitred to the legs, or lies across them.",
        example="casings: head open\n" + JOB_TO_ROOM + RUN,
    ),
    Page(
        code="T243",
        title="no stair here",
        message="the {side} end of run {run} is {joint}, and the run does not rise",
        remedy="Say how it rises: rising right 36 deg; or make the end a butt.",
        why="Plumb and level cuts are made where sloping trim ends at a wall or on a floor.",
        example=JOB_TO_ROOM + "  N: 40 in, left=plumb, right=butt",
        needs=(Whole.LINE,),
    ),
    Page(
        code="T244",
        title="nothing bends here",
        message="the {side} end of run {run} is a rake, but the trim goes straight on there",
        remedy="A rake end stands at both runs that meet, and one of them rises: rising right 36"
        " deg.",
        why="Level and raking trim meet in a mitre of half the pitch; without a bend there is"
        " none.",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=rake\n  N2: 40 in, left=rake, right=butt",
    ),
    Page(
        code="T245",
        title="a return on a slope",
        message="the {side} end of run {run} is {joint}, and the run rises",
        remedy="Let it go on level for a little and return there: level {side} 4 in.",
        why="A return stands square to its trim and turns it to the wall; from trim that climbs it"
        " would lean.",
        example=JOB_TO_ROOM + "  N: 40 in, left=return, right=plumb, rising right 36 deg",
    ),
    Page(
        code="T246",
        title="height missing",
        message="the {joint} end of run {run} needs the height of trim “{trim}”",
        remedy="Add it to the trim's line: trim {trim}: 5 1/4 in tall",
        why="A cut across the face makes one edge longer than the other by the trim's height times"
        " the tangent of the cut.",
        example="trim base: 9/16 in thick\n"
        + STOCK
        + OPEN_ROOM
        + "  N: 40 in, left=plumb, right=plumb, rising right 36 deg",
    ),
    Page(
        code="T247",
        title="crown on a slope",
        message="run {run} rises, and trim “{trim}” is crown",
        remedy="Leave it off the run (no {trim}), or say that the ceiling rises: ceiling rising"
        " right 20 deg",
        why="A run that rises is a stair's skirt. Crown climbs with the ceiling, over a level wall:"
        " ceiling rising right 20 deg.",
        example="trim crown: 11/16 in thick, 3 5/8 in wide, spring 38 deg\nstock crown: 12 ft at"
        " 28.80\n"
        'room "Study", trim crown, open walk\n'
        "  N: 40 in, left=butt, right=plumb, rising right 36 deg",
    ),
    Page(
        code="T248",
        title="two prices for one length",
        message="{stick} of {trim} is priced {price} here and {other} in {line}",
        remedy="Keep the one that holds; of two the cheaper is taken.",
        why="One length has one price, unless the cheaper sticks are limited (at most 6). Usually"
        " a new price was added and the old one left standing.",
        example=TRIM
        + "stock base: 12 ft at 17.40, 16 ft at 24.10, 12 ft at 18.60\n"
        + OPEN_ROOM
        + RUN,
        severity=Severity.WARNING,
    ),
    Page(
        code="T249",
        title="a rounding step too coarse",
        message="lengths cannot be rounded to {step}: the coarsest step is {most}",
        remedy="Write a mark of the tape, such as: round to 1/16 in",
        why="A length is rounded by up to a whole step. More than half an inch is no rounding; a"
        " wall's length was probably meant, or the unit is wrong.",
        example="round to 7 in\n" + JOB_TO_ROOM + RUN,
    ),
    Page(
        code="T250",
        title="a kerf too wide",
        message="no blade cuts a kerf of {kerf}: the widest taken is {most}",
        remedy="Measure a cut; a mitre saw's is about 1/8 in, such as: saw: kerf 1/8 in",
        why="The kerf is what one cut turns to dust, and each cut takes it from the stick.",
        example="saw: kerf 30 in\n" + JOB_TO_ROOM + RUN,
    ),
    Page(
        code="T251",
        title="a point between thousands",
        message="with a decimal point this is {point}, which no tape shows; with one between"
        " thousands {thousands}",
        remedy="Write {thousands}, or leave out the zeros behind the decimal point.",
        why="In many countries a point stands between thousands. Read as a decimal point it makes"
        " a wall of 2740 mm one of less than 3 mm.",
        example="unit mm\n" + JOB_TO_ROOM + "  N: 2.740, left=butt, right=butt",
    ),
)
