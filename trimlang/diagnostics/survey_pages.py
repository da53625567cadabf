"""T2xx: what a line says cannot be so, or something is missing."""

from typing import Final

from trimlang.diagnostics.page import Page
from trimlang.diagnostics.severity import Severity

_TRIM = "trim base: 9/16 in thick, 5 1/4 in tall\n"
_STOCK = "stock base: 12 ft at 17.40\n"
_ROOM = 'room "Study", trim base, open walk\n'
_RUN = "  N: 40 in, left=butt, right=butt\n"
_ALL = _TRIM + _STOCK + _ROOM

SURVEY_PAGES: Final = (
    Page(
        "T201",
        "unknown unit",
        "“{unit}” is no unit of length",
        "Use in, ft, mm, cm or m.",
        "Lengths are written in inches, feet and inches, or metric units.",
        _ALL + "  N: 40 furlgs, left=butt, right=butt",
    ),
    Page(
        "T202",
        "a length of nothing",
        "{what} cannot be zero or less",
        "Measure it again.",
        "Even the smallest return has a length.",
        _ALL + "  N: 0 in, left=butt, right=butt",
    ),
    Page(
        "T203",
        "a length beyond belief",
        "{what} would be {long} long",
        "{guess}Nothing over 100 ft is taken.",
        "A wall of more than a hundred feet is nearly always inches that were typed as feet.",
        _ALL + "  N: 129 ft, left=butt, right=butt",
    ),
    Page(
        "T204",
        "less than nothing",
        "{what} cannot be less than nothing",
        "Leave the minus sign out.",
        "A saw's kerf and other thicknesses are nothing or more.",
        "saw: kerf -1/8 in\n" + _ALL + _RUN,
    ),
    Page(
        "T205",
        "a price below nothing",
        "a price cannot be less than nothing",
        "Leave the minus sign out; stock that costs nothing is priced 0.",
        "The stock plan looks for the least cost, and a negative price would have it buy for ever.",
        _TRIM + "stock base: 12 ft at -17.40\n" + _ROOM + _RUN,
    ),
    Page(
        "T206",
        "no rooms",
        "the job has no room",
        'Add a line such as: room "Study", trim base',
        "There is nothing to cut in a job without rooms.",
        _TRIM + _STOCK,
    ),
    Page(
        "T207",
        "said twice",
        "“{word}” was already given in line {line}",
        "Keep one of the two.",
        "The job has one name, one survey date and one currency.",
        'job "A"\njob "B"\n' + _ALL + _RUN,
        Severity.WARNING,
    ),
    Page(
        "T208",
        "no such day",
        "{date} is no day of the calendar",
        "Write year, month and day, such as 2026-04-18.",
        "The survey's date is printed on each sheet.",
        "surveyed 2026-02-30\n" + _ALL + _RUN,
    ),
    Page(
        "T210",
        "unknown trim",
        "the job has no trim called “{name}”",
        "{remedy}",
        "Every trim that a room, a run or a stock line names must have a trim line of its own.",
        _TRIM + _STOCK + 'room "Study", trim bse\n' + _RUN,
    ),
    Page(
        "T211",
        "thickness missing",
        "the {joint} of {run} needs the thickness of trim “{trim}”, and the file gives none",
        "Add it to the trim's line: trim {trim}: 9/16 in thick",
        "At an outside corner, a return or a splice the piece grows by its own thickness times the"
        " tangent of the mitre. Without it the piece would come up short.",
        "trim base: 5 1/4 in tall\n" + _STOCK + _ROOM + "  N: 40 in, left=out-corner, right=butt",
    ),
    Page(
        "T212",
        "trim without stock",
        "no stock is given for trim “{trim}”",
        "Add a line such as: stock {trim}: 12 ft at 17.40",
        "Without stick lengths no cut can be planned and nothing can be ordered.",
        _TRIM + _ROOM + _RUN,
    ),
    Page(
        "T213",
        "trim named twice",
        "trim “{trim}” already stands in line {line}",
        "Give it another name, or keep one of the two lines.",
        "A trim has one section; two lines for one name cannot both be right.",
        _TRIM + _TRIM + _STOCK + _ROOM + _RUN,
    ),
    Page(
        "T214",
        "trim not used",
        "no run gets trim “{trim}”",
        "Name it in a room's line, or leave it out.",
        "Perhaps a room's line forgot it.",
        _TRIM + "trim shoe: 1/2 in thick\n" + _STOCK + _ROOM + _RUN,
        Severity.WARNING,
    ),
    Page(
        "T215",
        "stands in front of too much",
        "trim “{trim}” cannot stand in front of “{behind}”",
        "A trim stands in front of one that stands on the wall itself.",
        "Shoe lies in front of base, and base on the wall: one layer before another, no more.",
        "trim base: 9/16 in thick, in front of base\n" + _STOCK + _ROOM + _RUN,
    ),
    Page(
        "T216",
        "a trim without the word",
        "“{trim}” stands alone; is it a trim of this line?",
        "Write “trim {trim}”.",
        "A list of trims begins with the word trim: trim base, shoe.",
        _TRIM + _STOCK + 'room "Study", base, open walk\n' + _RUN,
    ),
    Page(
        "T217",
        "no trim for this run",
        "run {run} gets no trim: neither it nor room “{room}” names one",
        'Name it in the room\'s line: room "{room}", trim base',
        "A run without trim would be left off every ticket.",
        _TRIM + _STOCK + 'room "Study", open walk\n' + _RUN,
    ),
    Page(
        "T220",
        "a wall outside any room",
        "this wall stands above the first room",
        "Put a room's line above it.",
        "Walls belong to the room whose line stands above them.",
        _TRIM + _STOCK + _RUN + _ROOM + _RUN,
    ),
    Page(
        "T221",
        "room named twice",
        "room “{room}” already stands in line {line}",
        "Give each room a name of its own.",
        "Pieces are labelled by room; two rooms of one name would mix their piles.",
        _ALL + _RUN + _ROOM + _RUN,
    ),
    Page(
        "T222",
        "room tag used twice",
        "tag {tag} is room “{room}” already",
        "Choose another tag after “as”.",
        "The tag begins every piece's label.",
        _TRIM
        + _STOCK
        + 'room "Study" as X, trim base, open walk\n'
        + _RUN
        + 'room "Hall" as X, trim base, open walk\n'
        + _RUN,
    ),
    Page(
        "T223",
        "run named twice",
        "room “{room}” has a run {run} already, in line {line}",
        "Give each run of a room a name of its own.",
        "Two pieces with one label cannot be told apart on the floor.",
        _ALL + _RUN + _RUN,
    ),
    Page(
        "T224",
        "room without walls",
        "room “{room}” has no runs",
        "Add its walls, such as: N: 29 1/8 in, left=in-corner, right=butt",
        "A room that was opened and never measured is easily forgotten.",
        _ALL,
        Severity.WARNING,
    ),
    Page(
        "T225",
        "an end is missing",
        "run {run} does not say how its {side} end is cut",
        "Add {side}=in-corner, out-corner, butt, return, splice or open.",
        "Both ends decide the length and the saw's setting.",
        _ALL + "  N: 40 in, left=butt",
    ),
    Page(
        "T226",
        "an end said twice",
        "the {side} end is given twice",
        "Is one of them the other end?",
        "Left and right are as you face the wall; they are swapped more often than anything else.",
        _ALL + "  N: 40 in, left=butt, left=in-corner, right=butt",
    ),
    Page(
        "T227",
        "an angle at no corner",
        "an end of kind {joint} takes no corner angle",
        "Leave the angle out, or make it in-corner or out-corner.",
        "Only where two walls meet is there an angle to measure.",
        _ALL + "  N: 40 in, left=butt(91 deg), right=butt",
    ),
    Page(
        "T228",
        "no such corner",
        "a corner of {degrees}° cannot be mitred",
        "Measure between the two wall faces: from {least}° to {most}°, and not 180°, which is"
        " a straight wall.",
        "An inside corner is measured through the room, an outside corner through the wall; an"
        " outside corner may be measured through the room too, and is then more than 180°.",
        _ALL + "  N: 40 in, left=in-corner(20 deg), right=butt",
    ),
    Page(
        "T229",
        "nothing to cope",
        "an end of kind {joint} is never coped",
        "Only an inside corner is coped.",
        "A coped end is sawn to the profile of the piece that it meets in an inside corner.",
        _ALL + "  N: 40 in, left=out-corner(cope), right=butt",
    ),
    Page(
        "T230",
        "a setting for the whole job",
        "this setting holds for the whole job and cannot be changed for room “{room}”",
        "Move the line above the first room.",
        "The saw, the spare allowance, nails, caulk and paint are one for the job.",
        _ALL + "  saw: kerf 1/8 in\n" + _RUN,
    ),
    Page(
        "T231",
        "bare numbers mean in or mm",
        "a bare number cannot mean “{unit}”",
        "Write “unit in” or “unit mm”.",
        "Job files are kept in inches or in millimetres; other units stand beside their number.",
        "unit ft\n" + _ALL + _RUN,
    ),
    Page(
        "T232",
        "no mitre to assume",
        "an end of kind {joint} has no usual mitre",
        "A mitre and a gap can be set for in-corner and out-corner.",
        "Only corners are mitred to an angle that has to be assumed or measured.",
        "corners: butt mitre 45 deg\n" + _ALL + _RUN,
    ),
    Page(
        "T233",
        "an angle out of range",
        "{what} is between {least}° and {most}°",
        "Write an angle in that range.",
        "The saw could not cut it, or the joint would not hold.",
        "splices: angle 60 deg\n" + _ALL + _RUN,
    ),
    Page(
        "T234",
        "only inside corners are coped",
        "{joint} ends are not coped",
        "Write “corners: in-corner cope”.",
        "Coping fits one moulding over the face of another in an inside corner.",
        "corners: out-corner cope\n" + _ALL + _RUN,
    ),
    Page(
        "T235",
        "a number out of range",
        "{what} is between {least} and {most}",
        "Write a number in that range.",
        "Outside it the figure is nearly always a slip.",
        "spare 1000 %\n" + _ALL + _RUN,
    ),
    Page(
        "T236",
        "an inside corner that points outwards",
        "{degrees} through the room is an outside corner",
        "Write out-corner({wall}), or measure again.",
        "An inside corner is less than 180° through the room. Where the room takes up more than"
        " that, the wall stands out into it.",
        _ALL + "  N: 40 in, left=in-corner(225 deg), right=butt",
    ),
    Page(
        "T237",
        "no triangle",
        "these two legs and this diagonal make no triangle",
        "Measure all three again, from the corner to each mark and from mark to mark.",
        "The diagonal is shorter than both legs together and longer than their difference.",
        _ALL + "  N: 40 in, left=in-corner(corner by 36 in, 36 in, diagonal 81 in), right=butt",
    ),
    Page(
        "T238",
        "a corner measured too roughly",
        "a sixteenth in this diagonal changes the corner ({corner}) by {error}",
        "Mark the walls further from the corner.",
        "The shorter the legs, the more a slip of the tape counts. Legs of three feet give the"
        " corner to about a tenth of a degree.",
        _ALL + "  N: 40 in, left=in-corner(corner by 6 in, 6 in, diagonal 8 1/2 in), right=butt",
        Severity.WARNING,
    ),
    Page(
        "T239",
        "crown without a width",
        "trim “{trim}” has a spring angle but no width",
        "Add it to the trim's line: trim {trim}: 3 5/8 in wide, spring 38 deg",
        "How far crown stands out from the wall, and so how long a stick an outside corner takes,"
        " comes from its width and its spring angle.",
        "trim crown: 11/16 in thick, spring 38 deg\nstock crown: 12 ft at 21.00\n"
        'room "Study", trim crown, open walk\n' + _RUN,
    ),
)
