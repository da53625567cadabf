"""T310 to T328: a room's walls do not come round, or contradict a diagonal or another room."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import JOB_TO_CLOSED_ROOM, JOB_TO_ROOM
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.whole import Whole

_JOB_TO_ROOM_BEHIND: Final = (
    JOB_TO_CLOSED_ROOM
    + "  N: 12 ft, left=in-corner, right=in-corner\n"
    + "  E: 10 ft, left=in-corner, right=in-corner\n"
    + "  S1: 1 ft, left=in-corner, right=butt\n"
    + '  opening 3 ft "D1"\n'
    + "  S2: 3 ft, left=butt, right=butt\n"
    + '  opening 3 ft "D2"\n'
    + "  S3: 2 ft, left=butt, right=in-corner\n"
    + "  W: 10 ft, left=in-corner, right=in-corner\n"
    + 'room "Behind", trim base\n'
)
"""A room with two doors of a schedule, and the heading of the room behind these."""

_JOB_TO_AROUND: Final = (
    JOB_TO_CLOSED_ROOM
    + "  N: 12 ft, left=in-corner, right=in-corner\n"
    + "  E: 8 ft, left=in-corner, right=in-corner\n"
    + "  S1: 2 ft, left=in-corner, right=butt\n"
    + '  opening 3 ft "D1"\n'
    + "  S2: 3 ft, left=butt, right=out-corner\n"
    + "  P1: 3 ft, left=out-corner, right=butt\n"
    + '  opening 3 ft "D2"\n'
    + "  P2: 2 ft, left=butt, right=in-corner\n"
    + "  Q: 4 ft, left=in-corner, right=in-corner\n"
    + "  W: 16 ft, left=in-corner, right=in-corner\n"
    + 'room "Behind", trim base\n'
)
"""A room round the corner of the one whose heading ends it, with a door to it in each wall."""

_WALL_WITH_A_DOOR: Final = (
    "  N1: 2 ft, left=in-corner, right=butt\n"
    '  opening 3 ft "D1"\n'
    "  N2: 7 ft, left=butt, right=in-corner\n"
    "  E: 10 ft, left=in-corner, right=in-corner\n"
    "  S: 12 ft, left=in-corner, right=in-corner\n"
    "  W: 10 ft, left=in-corner, right=in-corner\n"
)
"""A room with a door 2 ft from the left corner of a wall."""

CLOSING_PAGES: Final = (
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
        + "  E: 10 ft, left=in-corner, right=out-corner\n"
        + "  S: 12 ft, left=out-corner, right=in-corner\n"
        + "  W: 10 ft, left=in-corner, right=in-corner",
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
        " across the room: diagonal N-E of walls N, E, S, W. Or leave it out: a room closes"
        " without.",
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
        code="T324",
        title="corners that the diagonals say are not square",
        message="walls and diagonals of room “{room}” agree only if {crooked}",
        remedy="Write in-corner(implied) at one of them to have all cut so, or measure them; where"
        " they are square, more than one length is wrong.",
        why="A room whose opposite walls are alike may still lean: then one diagonal is longer than"
        " the other. A corner that nobody measured is cut as if it were square.",
        example=JOB_TO_CLOSED_ROOM
        + "  N: 12 ft, left=in-corner, right=in-corner\n"
        + "  E: 10 ft, left=in-corner, right=in-corner\n"
        + "  S: 12 ft, left=in-corner, right=in-corner\n"
        + "  W: 10 ft, left=in-corner, right=in-corner\n"
        + "  diagonal N-E 15 ft 9 1/4 in\n"
        + "  diagonal E-S 15 ft 5 7/8 in",
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
        code="T318",
        title="two openings in the same order from both sides",
        message="“{one}” is to the {side} of “{other}” in room “{room}” and in “{next_room}”:"
        " seen from the other side they change places",
        remedy="One of the two rooms was listed turning left: list its walls turning right as you"
        " face them. If these are not the same openings, give them marks of their own.",
        why="Openings of one mark in two rooms, as on a door schedule, are one opening, seen from"
        " both sides. Listed the"
        " wrong way round a room closes just as well, and every left and every right in it is"
        " wrong.",
        example=_JOB_TO_ROOM_BEHIND
        + "  a: 1 ft, left=in-corner, right=butt\n"
        + '  opening 3 ft "D1"\n'
        + "  b: 3 ft, left=butt, right=butt\n"
        + '  opening 3 ft "D2"\n'
        + "  c: 2 ft, left=butt, right=in-corner\n"
        + "  d: 8 ft, left=in-corner, right=in-corner\n"
        + "  e: 12 ft, left=in-corner, right=in-corner\n"
        + "  f: 8 ft, left=in-corner, right=in-corner",
        severity=Severity.WARNING,
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T319",
        title="two openings that are not as far apart from the other side",
        message="“{one}” and “{other}” are {far} apart, middle to middle, in room “{room}” and"
        " {again} in “{next_room}”",
        remedy="Measure between them in both rooms. If these are not the same openings, give them"
        " marks of their own.",
        why="Openings of one mark in two rooms, as on a door schedule, are one opening, seen from"
        " both sides, so their"
        " middles are as far apart in one room as in the other.",
        example=_JOB_TO_ROOM_BEHIND
        + "  a: 2 ft, left=in-corner, right=butt\n"
        + '  opening 3 ft "D2"\n'
        + "  b: 4 ft, left=butt, right=butt\n"
        + '  opening 3 ft "D1"\n'
        + "  d: 8 ft, left=in-corner, right=in-corner\n"
        + "  e: 12 ft, left=in-corner, right=in-corner\n"
        + "  f: 8 ft, left=in-corner, right=in-corner",
        severity=Severity.WARNING,
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T327",
        title="walls that turn the other way from the other side",
        message="from “{one}” to “{other}” room “{room}” turns {side}, and “{next_room}” turns"
        " {again}: both sides of two walls turn alike",
        remedy="One of the two rooms was listed turning left: list its walls turning right as you"
        " face them. If these are not the same openings, give them marks of their own.",
        why="Openings of one mark in two rooms, as on a door schedule, are one opening, seen from"
        " both sides. Where their walls stand at an angle, they do so in both rooms, and turn the"
        " same way. Listed the wrong way round, a room closes just as well.",
        example=_JOB_TO_AROUND
        + "  a: 8 ft, left=in-corner, right=butt\n"
        + '  opening 3 ft "D1"\n'
        + "  b: 1 ft, left=butt, right=in-corner\n"
        + "  c: 1 ft, left=in-corner, right=butt\n"
        + '  opening 3 ft "D2"\n'
        + "  d: 8 ft, left=butt, right=in-corner\n"
        + "  e: 12 ft, left=in-corner, right=in-corner\n"
        + "  f: 12 ft, left=in-corner, right=in-corner",
        severity=Severity.WARNING,
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T328",
        title="an opening as far from the left corner on both sides",
        message="“{one}” is {far} from the left corner of its wall in room “{room}” and {again} in"
        " “{next_room}”: seen from the other side its left is the right",
        remedy="If both rooms have this wall from corner to corner, one of them was listed turning"
        " left: list its walls turning right as you face them. If these are not the same openings,"
        " give them marks of their own.",
        why="A wall that is as long in one room as in the other is most likely one wall, seen from"
        " both sides. Its opening is then as far from the left corner on one side as it is from the"
        " right corner on the other.",
        example=JOB_TO_CLOSED_ROOM
        + _WALL_WITH_A_DOOR
        + 'room "Behind", trim base\n'
        + _WALL_WITH_A_DOOR,
        severity=Severity.WARNING,
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T320",
        title="a room that is not checked",
        message="room “{room}” is not checked: the corners that are written turn {turned} in all,"
        " and nothing says whether there is one between {places}",
        remedy="{likely}Write the corner at the ends that meet in"
        " it (right=in-corner, left=in-corner), the opening or bare wall that was left out between"
        " them, or “open walk” in the room's line.",
        why="Once round a room is 360°. A run that ends “butt” stops square against something, and"
        " bare wall may hide a corner, so where these meet the program cannot tell which way the"
        " walls go on. Nothing of such a room is held against anything: an inch misread in it is"
        " not noticed. Both runs are cut to the full wall there.",
        example=JOB_TO_CLOSED_ROOM
        + "  N: 12 ft, left=in-corner, right=in-corner\n"
        + "  E: 10 ft, left=in-corner, right=in-corner\n"
        + "  S: 12 ft, left=in-corner, right=butt\n"
        + "  W: 10 ft, left=butt, right=in-corner",
        severity=Severity.WARNING,
        needs=(Whole.WALLS,),
    ),
)
