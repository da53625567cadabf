"""T2xx: what a line says cannot be so, or something is missing."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import JOB_TO_ROOM, OPEN_ROOM, RUN, STOCK, TRIM
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.whole import Whole

SURVEY_PAGES: Final = (
    Page(
        code="T201",
        title="unknown unit",
        message="“{unit}” is no unit of length",
        remedy="{guess}Use in, ft, yd, mm, cm or m.",
        why="Lengths are written in inches, feet and inches, or metric units.",
        example=JOB_TO_ROOM + "  N: 40 furlgs, left=butt, right=butt",
    ),
    Page(
        code="T202",
        title="a length of nothing",
        message="{what} cannot be zero or less",
        remedy="{remedy}",
        why="Even the smallest return has a length.",
        example=JOB_TO_ROOM + "  N: 0 in, left=butt, right=butt",
    ),
    Page(
        code="T203",
        title="a length beyond belief",
        message="{what} would be {long} long",
        remedy="{guess}Nothing over 100 ft is taken.",
        why="A wall of more than a hundred feet is nearly always inches that were typed as feet.",
        example=JOB_TO_ROOM + "  N: 129 ft, left=butt, right=butt",
    ),
    Page(
        code="T204",
        title="less than nothing",
        message="{what} cannot be less than nothing",
        remedy="Leave the minus sign out.",
        why="A saw's kerf and other thicknesses are nothing or more.",
        example="saw: kerf -1/8 in\n" + JOB_TO_ROOM + RUN,
    ),
    Page(
        code="T205",
        title="a price below nothing",
        message="a price cannot be less than nothing",
        remedy="Leave the minus sign out; stock that costs nothing is priced 0.",
        why="The stock plan looks for the least cost, and a negative price would have it buy for"
        " ever.",
        example=TRIM + "stock base: 12 ft at -17.40\n" + OPEN_ROOM + RUN,
    ),
    Page(
        code="T206",
        title="no rooms",
        message="the job has no room",
        remedy='Add a line such as: room "Study", trim base',
        why="There is nothing to cut in a job without rooms.",
        example=TRIM + STOCK,
        needs=(Whole.FILES, Whole.WALLS),
    ),
    Page(
        code="T207",
        title="said twice",
        message="{word} was already given in {line}",
        remedy="Keep one of the two.",
        why="The job has one name, one survey date and one currency.",
        example='job "A"\njob "B"\n' + JOB_TO_ROOM + RUN,
        severity=Severity.WARNING,
    ),
    Page(
        code="T208",
        title="no such day",
        message="{date} is no day of the calendar",
        remedy="Write year, month and day, such as 2026-04-18.",
        why="The survey's date is printed on each sheet.",
        example="surveyed 2026-02-30\n" + JOB_TO_ROOM + RUN,
    ),
    Page(
        code="T209",
        title="said twice in one line",
        message="this line says that already",
        remedy="Keep one of the two.",
        why="Where a line states one thing twice, one of the two is a slip, and nothing tells"
        " which.",
        example="trim base: 9/16 in thick, 1/2 in thick\n" + STOCK + OPEN_ROOM + RUN,
    ),
    Page(
        code="T210",
        title="unknown trim",
        message="the job has no trim called “{name}”",
        remedy="{remedy}",
        why="Every trim that a room, a run or a stock line names must have a trim line of its own.",
        example=TRIM + STOCK + 'room "Study", trim bse\n' + RUN,
        needs=(Whole.FILES, Whole.TRIMS),
        loses=Whole.USES,
    ),
    Page(
        code="T211",
        title="thickness missing",
        message="the {joint} of {run} needs the thickness of trim “{trim}”, and the file gives"
        " none",
        remedy="Measure what {trim} stands out from the wall, and add it to its line: … in thick.",
        why="At an outside corner, a return or a splice the piece grows by its own thickness times"
        " the tangent of the mitre. Without it the piece would come up short.",
        example="trim base: 5 1/4 in tall\n"
        + STOCK
        + OPEN_ROOM
        + "  N: 40 in, left=out-corner, right=butt",
        needs=(Whole.TRIMS,),
    ),
    Page(
        code="T212",
        title="trim without stock",
        message="no stock is given for trim “{trim}”",
        remedy="Add a line such as: stock {trim}: 12 ft at 17.40. Without a price the least"
        " length is bought.",
        why="Without stick lengths no cut can be planned and nothing can be ordered.",
        example=TRIM + OPEN_ROOM + RUN,
        needs=(Whole.FILES, Whole.TRIMS),
    ),
    Page(
        code="T213",
        title="trim named twice",
        message="trim “{trim}” already stands in {line}",
        remedy="Give it another name, or keep one of the two lines.",
        why="A trim has one section; two lines for one name cannot both be right.",
        example=TRIM + TRIM + STOCK + OPEN_ROOM + RUN,
    ),
    Page(
        code="T214",
        title="trim not used",
        message="no run gets trim “{trim}”",
        remedy="Name it in a room's line, or leave it out.",
        why="Perhaps a room's line forgot it.",
        example=TRIM + "trim shoe: 1/2 in thick\n" + STOCK + OPEN_ROOM + RUN,
        severity=Severity.WARNING,
        needs=(Whole.FILES, Whole.TRIMS, Whole.WALLS, Whole.USES),
    ),
    Page(
        code="T215",
        title="stands in front of itself",
        message="trim “{trim}” cannot stand {where} “{behind}”",
        remedy="Name what is behind it on the wall, or below it: a trim that does not stand before"
        " this one, and no crown to lie on.",
        why="Shoe lies in front of base, a cap on it, base on the wall; no trim is behind itself.",
        example="trim base: 9/16 in thick, in front of base\n" + STOCK + OPEN_ROOM + RUN,
    ),
    Page(
        code="T216",
        title="a trim without the word",
        message="“{trim}” stands alone; is it a trim of this line?",
        remedy="Write “trim {trim}”.",
        why="A list of trims begins with the word trim: trim base, shoe.",
        example=TRIM + STOCK + 'room "Study", base, open walk\n' + RUN,
        loses=Whole.USES,
    ),
    Page(
        code="T217",
        title="no trim for this run",
        message="no trim for {runs}: neither a wall's line nor room “{room}” names one",
        remedy='Name it in the room\'s line: room "{room}", trim {trim}',
        in_a_table="Name it in the column “trims”, of the wall's row or of one of the kind “room”.",
        why="A run without trim would be left off every ticket.",
        example=TRIM + STOCK + 'room "Study", open walk\n' + RUN,
    ),
    Page(
        code="T225",
        title="an end is missing",
        message="run {run} does not say how its {side} end is cut",
        remedy="Add {side}=in-corner, out-corner, butt, return or open.",
        in_a_table="Write it in the column “{side}”: in-corner, out-corner, butt, return or open.",
        why="Both ends decide the length and the saw's setting.",
        example=JOB_TO_ROOM + "  N: 40 in, left=butt",
        needs=(Whole.LINE,),
    ),
    Page(
        code="T252",
        title="a joint that nobody says",
        message="how run {run} meets run {other} is not said",
        remedy="Add right=in-corner, or what it is, at {run}, or left=… at {other}; “ends"
        " in-corner” in the room's line says it of all such joints.",
        in_a_table="Write it in the column “right” of {run}, or “left” of {other}.",
        why="Both runs end there; the corner decides their lengths and the saw's setting.",
        example=JOB_TO_ROOM + "  N: 40 in, left=butt\n  E: 30 in, right=butt",
        needs=(Whole.LINE,),
    ),
    Page(
        code="T253",
        title="no end for all",
        message="{what} cannot be {joint}",
        remedy="{remedy}",
        why="Only a corner is shared by two runs, so that one word can hold for both; and only what"
        " ends beside a casing can stand out past it.",
        example="ends return\n" + JOB_TO_ROOM + RUN,
    ),
    Page(
        code="T254",
        title="a stick without a price",
        message="this stick of “{trim}” has no price",
        remedy="Write “at” and the price behind it, or leave the stick out; lengths without a price"
        " take one a foot or a metre that stands behind them: 8 ft, 12 ft at 1.45 a foot.",
        why="The plan buys at the least cost, and a price for one length says nothing of another.",
        example=TRIM + "stock base: 8 ft, 12 ft at 17.40\n" + OPEN_ROOM + RUN,
    ),
    Page(
        code="T258",
        title="a price for any length",
        message="a price for any length is for a foot or a metre",
        remedy="Write “a foot” or “a metre” behind it: any length to 16 ft at 1.45 a foot.",
        why="What a yard cuts to length it sells by its length; one price cannot buy 2 ft and"
        " 16 ft alike.",
        example=TRIM + "stock base: any length to 16 ft at 17.40\n" + OPEN_ROOM + RUN,
    ),
    Page(
        code="T226",
        title="an end said twice",
        message="the {side} end is given twice",
        remedy="Is one of them the other end?",
        why="Left and right are as you face the wall; they are swapped more often than anything"
        " else.",
        example=JOB_TO_ROOM + "  N: 40 in, left=butt, left=in-corner, right=butt",
    ),
    Page(
        code="T227",
        title="an angle at no corner",
        message="an end of kind {joint} takes no corner angle",
        remedy="Leave the angle out, or make it in-corner or out-corner.",
        why="Only where two walls meet is there an angle to measure.",
        example=JOB_TO_ROOM + "  N: 40 in, left=butt(91 deg), right=butt",
    ),
    Page(
        code="T228",
        title="no such corner",
        message="a corner of {degrees}° cannot be mitred",
        remedy="Measure between the two wall faces: from {least}° to {most}°, and not 180°, which"
        " is a straight wall. How the saw was set is written so: mitre 44 1/2 deg.",
        why="An inside corner is measured through the room, an outside corner through the wall; an"
        " outside corner may be measured through the room too, and is then more than 180°.",
        example=JOB_TO_ROOM + "  N: 40 in, left=in-corner(20 deg), right=butt",
    ),
    Page(
        code="T229",
        title="nothing to cope",
        message="an end of kind {joint} is never coped",
        remedy="Only an inside corner is coped.",
        why="A coped end is sawn to the profile of the piece that it meets in an inside corner.",
        example=JOB_TO_ROOM + "  N: 40 in, left=out-corner(cope), right=butt",
    ),
    Page(
        code="T230",
        title="a setting for the whole job",
        message="this setting holds for the whole job and cannot be changed for room “{room}”",
        remedy="Move the line above the first room.",
        why="The saw, the spare allowance, nails, caulk, filler and paint are one for the job.",
        example=JOB_TO_ROOM + "  saw: kerf 1/8 in\n" + RUN,
    ),
    Page(
        code="T231",
        title="bare numbers mean in or mm",
        message="a bare number cannot mean “{unit}”",
        remedy="Write “unit in” or “unit mm”.",
        why="Job files are kept in inches or in millimetres; other units stand beside their"
        " number.",
        example="unit ft\n" + JOB_TO_ROOM + RUN,
    ),
    Page(
        code="T232",
        title="no mitre to assume",
        message="an end of kind {joint} has no usual mitre",
        remedy="A mitre and a gap can be set for in-corner and out-corner; a rake goes by"
        " in-corner.",
        why="Only corners are mitred to an angle that has to be assumed or measured.",
        example="corners: butt mitre 45 deg\n" + JOB_TO_ROOM + RUN,
    ),
    Page(
        code="T233",
        title="an angle out of range",
        message="{what} is between {least}° and {most}°",
        remedy="Write an angle in that range.",
        why="The saw could not cut it, or the joint would not hold.",
        example="splices: angle 60 deg\n" + JOB_TO_ROOM + RUN,
        loses=Whole.LINE,
    ),
    Page(
        code="T234",
        title="only inside corners are coped",
        message="{joint} ends are not coped",
        remedy="Write “corners: in-corner cope”.",
        why="Coping fits one moulding over the face of another in an inside corner.",
        example="corners: out-corner cope\n" + JOB_TO_ROOM + RUN,
    ),
    Page(
        code="T235",
        title="a number out of range",
        message="{what} is between {least} and {most}",
        remedy="Write a number in that range.",
        why="Outside it the figure is nearly always a slip.",
        example="spare 1000 %\n" + JOB_TO_ROOM + RUN,
    ),
)
