"""T220 to T224, T280 to T291, T641: rooms, walls, loose pieces, windows, boxes, names."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import JOB_TO_ROOM, OPEN_ROOM, RUN, STOCK, TRIM
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.whole import Whole

BOXES: Final = (
    "trim panel: 5/8 in thick, 1 1/4 in wide\nstock panel: 8 ft at 6.40\n"
    + JOB_TO_ROOM
    + "  N: 10 ft, left=butt, right=butt\n"
    + "  boxes {run}: 3, 24 in tall, margin 3 1/2 in, trim panel\n"
)
"""A wall with boxes, whose name is to be filled in."""

ROOM_PAGES: Final = (
    Page(
        code="T220",
        title="a wall outside any room",
        message="this wall stands above the first room",
        remedy="Put a room's line above it.",
        why="Walls belong to the room whose line stands above them.",
        example=TRIM + STOCK + RUN + OPEN_ROOM + RUN,
        needs=(Whole.LINE,),
    ),
    Page(
        code="T221",
        title="room named twice",
        message="room “{room}” already stands in {line}",
        remedy="Give each room a name of its own.",
        why="Pieces are labelled by room; two rooms of one name would mix their piles.",
        example=JOB_TO_ROOM + RUN + OPEN_ROOM + RUN,
    ),
    Page(
        code="T222",
        title="room tag used twice",
        message="tag {tag} is room “{room}” already",
        remedy="Choose another tag after “as”.",
        why="The tag begins every piece's label.",
        example=TRIM
        + STOCK
        + 'room "Study" as X, trim base, open walk\n'
        + RUN
        + 'room "Hall" as X, trim base, open walk\n'
        + RUN,
    ),
    Page(
        code="T223",
        title="run named twice",
        message="room “{room}” has a run {run} already, in {line}",
        remedy="Give each run of a room a name of its own.",
        why="Two pieces with one label cannot be told apart on the floor.",
        example=JOB_TO_ROOM + RUN + RUN,
        needs=(Whole.LINE,),
    ),
    Page(
        code="T224",
        title="room without walls",
        message="room “{room}” has no runs",
        remedy="Add its walls, such as: N: 29 1/8 in, left=in-corner, right=butt; or take its"
        " heading out until they are measured.",
        why="A room that was opened and never measured is easily forgotten.",
        example=JOB_TO_ROOM,
        severity=Severity.WARNING,
        needs=(Whole.WALLS,),
    ),
    Page(
        code="T280",
        title="a loose piece of which trim?",
        message="“{piece}” does not say which trim it is cut from",
        remedy="Name one behind its length: trim base",
        why="A loose piece is of one trim. Where its room has only one, it need not be named.",
        example=TRIM
        + "trim shoe: 1/2 in thick, 3/4 in tall\nstock shoe: 8 ft at 5.20\n"
        + STOCK
        + 'room "Study", trim base, shoe, open walk\n'
        + RUN
        + '  piece "shelf cleat", 2 of 22 1/2 in\n',
        needs=(Whole.LINE,),
        loses=Whole.USES,
    ),
    Page(
        code="T281",
        title="a loose piece that ends as only a wall's can",
        message="a loose piece has no end of kind {joint}",
        remedy="End it in butt, open, in-corner or out-corner, or say “square” for both ends.",
        why="A return closes a profile at a wall, a scarf joins two pieces of one wall, and a slope"
        " is a run's; a loose piece stands on no wall of the walk.",
        example=JOB_TO_ROOM + RUN + '  piece "shelf cleat", 22 1/2 in, left=plumb\n',
        loses=Whole.USES,
    ),
    Page(
        code="T282",
        title="loose piece named twice",
        message="this room has a piece “{piece}” already, in {line}",
        remedy="Give it another name, or write how many there are: 4 of 22 1/2 in",
        why="Two pieces with one name cannot be told apart on the floor.",
        example=JOB_TO_ROOM
        + RUN
        + '  piece "shelf cleat", 22 1/2 in\n  piece "shelf cleat", 14 in\n',
    ),
    Page(
        code="T283",
        title="no casing to go with it",
        message="stool, apron, blocks, backband, “four sides” and “both faces” go with a casing,"
        " and none is named",
        remedy="Name it, with the clear height: casing case, height 54 in",
        why="How long a stool, an apron and a backband are follows from the casing, and blocks are"
        " parts of one.",
        example=JOB_TO_ROOM + RUN + "  window 36 in, four sides\n",
        needs=(Whole.LINE,),
    ),
    Page(
        code="T284",
        title="a stool in a frame of four sides",
        message="a window has a stool below, or casing on its fourth side",
        remedy="Leave out “four sides” or the stool.",
        why="Both would take the same place on the wall.",
        example="trim case: 11/16 in thick, 2 1/4 in wide\nstock case: 16 ft at 12.10\n"
        + JOB_TO_ROOM
        + RUN
        + "  window 36 in, casing case, height 54 in, stool base, four sides\n",
    ),
    Page(
        code="T285",
        title="jamb strips of what height?",
        message="jamb strips go round the clear opening, and its height is not given",
        remedy="Measure it and write height 80 in, for example; or leave the strips out.",
        why="The strips at the sides are as long as the opening is clear.",
        example="trim strip: 3/4 in thick, 1 in tall\nstock strip: 8 ft at 3.10\n"
        + JOB_TO_ROOM
        + RUN
        + "  door 32 in, jambs strip\n",
        needs=(Whole.LINE,),
    ),
    Page(
        code="T286",
        title="boxes on no run of the room",
        message="this room has no run or opening “{run}” for boxes to be on",
        remedy="{remedy}",
        why="Boxes are laid out on the length of a run of their own room, or below or above one of"
        " its openings.",
        example=BOXES.format(run="E"),
        loses=Whole.USES,
    ),
    Page(
        code="T287",
        title="boxes of what size?",
        message="boxes on {run} need a height, and either a margin or a width",
        remedy="Write for example: 24 in tall, margin 3 1/2 in",
        why="From the margin the width follows, from the width the margins; both at once need not"
        " fill the wall.",
        example=BOXES.format(run="N").replace(", margin 3 1/2 in", ""),
        loses=Whole.USES,
    ),
    Page(
        code="T288",
        title="boxes that the wall has no room for",
        message="{count} boxes do not fit on {run}, which is {long} long, or are no wider than two"
        " sides of {trim} at {across}",
        remedy="Take fewer, a smaller margin or another width.",
        why="A box's sides must leave something between them, and wall must be left on both sides.",
        example=BOXES.format(run="N").replace("3 1/2", "30"),
        loses=Whole.USES,
    ),
    Page(
        code="T289",
        title="two sets of boxes with one name",
        message="run {run} has boxes of that name already",
        remedy='Give each set a name: boxes {run} "upper": …',
        why="Two pieces with one name cannot be told apart on the floor.",
        example=BOXES.format(run="N") + "  boxes N: 2, 9 in tall, margin 4 in, trim panel\n",
        loses=Whole.USES,
    ),
    Page(
        code="T290",
        title="a rounded corner that is no outside corner",
        message="an end of kind {joint} has no bullnose",
        remedy="Make it out-corner(bullnose 3/4 in), or leave the bullnose out.",
        why="Only the outside corner of two walls is rounded.",
        example=JOB_TO_ROOM + "  N: 40 in, left=butt, right=in-corner(bullnose 3/4 in)",
    ),
    Page(
        code="T291",
        title="an assembly whose name is taken",
        message="“{name}” is the name of another assembly or trim, in {line}",
        remedy="Give it a name of its own.",
        why="A name in a room's line means one thing.",
        example=TRIM + STOCK + "assembly base: base\n" + OPEN_ROOM + RUN,
    ),
    Page(
        code="T483",
        title="in front of one trim, or on it, and of another",
        message="{trim} cannot stand {here} here and {there} in {line}",
        remedy="Say one of the two, or give the other one a name of its own.",
        why="How far a trim stands off the wall, and so how long it is, comes from the one that it"
        " stands in front of or on.",
        example=TRIM
        + STOCK
        + "trim cap: 3/8 in thick, 1 in tall\nstock cap: 8 ft at 3.10\n"
        + "trim shoe: 1/2 in thick, 3/4 in tall, in front of base\nstock shoe: 8 ft at 5.20\n"
        + "assembly foot: base, cap in front of base, shoe in front of cap\n"
        + 'room "Study", trim foot, open walk\n'
        + RUN,
    ),
    Page(
        code="T484",
        title="an assembly where one trim is meant",
        message="“{name}” is an assembly, and one trim is meant here",
        remedy="Name one of its trims, each in a line of its own where all are meant: {members}.",
        why="An assembly's name stands for its trims on a wall. What is bought, what a loose piece"
        " is cut from and what goes round an opening is one trim.",
        example=TRIM + "assembly foot: base\nstock foot: 8 ft at 9.10\n" + STOCK + OPEN_ROOM + RUN,
    ),
    Page(
        code="T135",
        title="hinged on which side?",
        message="it is said which way this door swings, and not on which side it is hinged",
        remedy="Write the side of its hinges as you face it from inside: hinged left",
        why="The floor plan draws the door's leaf; both are needed for that.",
        example=JOB_TO_ROOM + RUN + "  door 32 in, swings out\n",
        needs=(Whole.LINE,),
    ),
    Page(
        code="T641",
        title="a tag that hangs on the order of the rooms",
        message="“{room}” is tagged {tag} only because “{other}” above it has {plain}",
        remedy="Write “as” and a tag of its own behind its name: room “{room}” as {tag}.",
        why="A piece's name begins with its room's tag and is written on the wood. Two rooms with"
        " the same initials get their tags by which stands first, so a room added above them would"
        " change the names of pieces that may be cut already. A tag that is written out stays.",
        example="""\
trim base: 9/16 in thick, 5 1/4 in tall
stock base: 12 ft at 17.40
room "Living room", trim base, open walk
  N: 40 in, left=butt, right=butt
room "Laundry room", trim base, open walk
  N: 50 in, left=butt, right=butt
""",
        severity=Severity.WARNING,
    ),
)
