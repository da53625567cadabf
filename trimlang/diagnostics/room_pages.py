"""T220 to T224 and T641: rooms, their walls, and names that stay with their pieces."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import JOB_TO_ROOM, OPEN_ROOM, RUN, STOCK, TRIM
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.whole import Whole

ROOM_PAGES: Final = (
    Page(
        code="T220",
        title="a wall outside any room",
        message="this wall stands above the first room",
        remedy="Put a room's line above it.",
        why="Walls belong to the room whose line stands above them.",
        example=TRIM + STOCK + RUN + OPEN_ROOM + RUN,
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
    ),
    Page(
        code="T224",
        title="room without walls",
        message="room “{room}” has no runs",
        remedy="Add its walls, such as: N: 29 1/8 in, left=in-corner, right=butt",
        why="A room that was opened and never measured is easily forgotten.",
        example=JOB_TO_ROOM,
        severity=Severity.WARNING,
        needs=(Whole.WALLS,),
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
