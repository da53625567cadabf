"""T70x and T71x: the site log."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.named_codes import NO_PRICE, NOBODY_BOUGHT, NOT_IN_FULL
from trimlang.diagnostics.severity import Severity

_JOB: Final = """\
trim base: 9/16 in thick, 5 1/4 in tall, mdf
stock base: 8 ft at 11.60, 12 ft at 17.40
room "Porch" as PO, trim base, open walk
  N: 29 1/8 in, left=butt, right=out-corner
  E: 6 ft 4 in, left=out-corner, right=in-corner
  S: 8 ft 1/2 in, left=in-corner, right=butt
"""

LOG_PAGES: Final = (
    Page(
        code="T701",
        title="not a line of the log",
        message="a log file holds only what was done: cut, spoiled, shortened, fitted, bought,"
        " rack",
        remedy="Move this line into the job file.",
        why="The log file beside a job (house.site beside house.trim) is read after it; what the"
        " job is stands in the job file.",
        example="",
    ),
    Page(
        code="T702",
        title="no such piece",
        message="the job has no piece “{piece}”",
        remedy="{remedy}",
        why="A piece has the name that stands on its ticket. If its wall is gone from the survey"
        " since it was cut, write the whole of the line: its length, its stick and how long the"
        " stick was.",
        example=_JOB + "cut PO-M-base\n",
    ),
    Page(
        code="T703",
        title="cut for a wall that is gone",
        message="“{piece}” was cut, and no wall asks for it any more",
        remedy="Put it back on the rack: “spoiled {piece} into …” with the length that can still"
        " be used. {remedy}",
        why="Its length is gone from the stick that it was cut from, as the line says.",
        example=_JOB + "cut PO-W-base 40 in from base-1 of 12 ft\n",
        severity=Severity.WARNING,
    ),
    Page(
        code="T704",
        title="cut twice",
        message="“{piece}” is cut already, says {line}",
        remedy="Take one of the lines out, or say in between that it was spoiled.",
        why="A piece is cut once; each line takes wood from a stick.",
        example=_JOB + "cut PO-N-base, PO-N-base\n",
    ),
    Page(
        code="T705",
        title="not cut yet",
        message="“{piece}” is {what} here, but {why}",
        remedy="Write “cut {piece}” above.",
        why="The log is read from the top: what was cut decides what is left of the sticks.",
        example=_JOB + "fitted PO-N-base\n",
    ),
    Page(
        code="T706",
        title="fitted twice",
        message="“{piece}” is on the wall already, says {line}",
        remedy="Take one of the lines out.",
        why="A line that says what was said may be a slip for another piece.",
        example=_JOB
        + "cut PO-N-base 29 3/4 in from base-1 of 12 ft\nfitted PO-N-base\nfitted PO-N-base\n",
    ),
    Page(
        code="T707",
        title="too little left",
        message="what is in hand and what the stock lines offer is not enough for what is left of"
        " “{trim}”: no stick for {pieces}",
        remedy="Offer more on the stock line, or count what is there: “rack {trim}: 3 of 12 ft, 41"
        " in”.",
        why="After each spoiled piece the rest is planned from the sticks that are left.",
        example=_JOB.replace("8 ft at 11.60, 12 ft at 17.40", "12 ft at 17.40 at most 2")
        + "spoiled PO-S-base 8 ft 1/2 in from base-1 of 12 ft\n",
    ),
    Page(
        code="T708",
        title="spoiled into more than there was",
        message="“{piece}” is spoiled into {rests}, and was {had} long",
        remedy="Measure what can still be used, or say that it was not cut from that stick.",
        why="What is left of a piece is no longer than the piece.",
        example=_JOB
        + "cut PO-N-base 29 3/4 in from base-1 of 12 ft\nspoiled PO-N-base into 22 in and 9 in\n",
    ),
    Page(
        code=NO_PRICE,
        title="bought at no price",
        message="no stock line of “{trim}” lists this length, so it counts as free",
        remedy="Write what one stick cost: “at 17.40”.",
        why="Money spent is taken from the line, or from the stock line of that length.",
        example=_JOB + "bought 2 base 10 ft\n",
        severity=Severity.WARNING,
    ),
    Page(
        code="T710",
        title="cut too long",
        message="“{piece}” was cut {cut} long and the survey now says {now}: {by} too long",
        remedy="Saw it and write “shortened {piece} to {now}”; or set it aside: “spoiled {piece}"
        " into {cut}”.",
        why="A cut piece keeps its length on the sheets, whatever the survey says afterwards.",
        example=_JOB + "cut PO-N-base 30 in from base-1 of 12 ft\n",
        severity=Severity.WARNING,
    ),
    Page(
        code="T711",
        title="cut too short",
        message="“{piece}” was cut {cut} long and the survey now says {now}: {by} too short",
        remedy="Cut another: write “spoiled {piece} into {cut}”, or the length of it that can"
        " still be used, and build again.",
        why="A cut piece keeps its length on the sheets, whatever the survey says afterwards.",
        example=_JOB + "cut PO-N-base 29 1/2 in from base-1 of 12 ft\n",
        severity=Severity.WARNING,
    ),
    Page(
        code=NOT_IN_FULL,
        title="not written out",
        message="lines of the log that do not say all, from here on: {count}",
        remedy="Write the length and the stick too: “cut PO-N-base 29 3/4 in from base-1 of 12"
        " ft”. “trimlang mark JOB --pin” does it.",
        why="“cut PO-N-base” means the length and the stick that the ticket shows. A survey that"
        " changes later could change what it showed.",
        example=_JOB + "cut PO-N-base\n",
        severity=Severity.WARNING,
    ),
    Page(
        code="T713",
        title="too long for its stick",
        message="“{piece}” needs {need}, and {stick}",
        remedy="Say which stick it was cut from, or count what is there: “rack base: 3 of 12 ft,"
        " 41 in”.",
        why="What was cut from a stick decides what is left of it.",
        example=_JOB
        + "cut PO-E-base 6 ft 4 in from base-1 of 8 ft\n"
        + "cut PO-N-base 29 3/4 in from base-1 of 8 ft\n",
    ),
    Page(
        code=NOBODY_BOUGHT,
        title="stick that nobody bought",
        message="the log knows of no stick of {length} in hand here; one more counts as bought at"
        " {price}",
        remedy="Write the “bought” line above this one, or name the stick that it was cut from.",
        why="Where the log tells what was bought, a stick that is cut must be among it.",
        example=_JOB + "bought 1 base 12 ft\ncut PO-N-base 29 3/4 in from base-7 of 8 ft\n",
        severity=Severity.WARNING,
    ),
    Page(
        code="T715",
        title="no such stick",
        message="no ticket shows a stick “{stick}” here",
        remedy="Write how long it was too: “from {stick} of 12 ft”.",
        why="A stick has the name that its tickets show; a stick that no ticket shows needs its"
        " length.",
        example=_JOB + "cut PO-N-base 29 3/4 in from base-9\n",
    ),
    Page(
        code="T716",
        title="shortened to more",
        message="“{piece}” is not longer than that",
        remedy="Give the length that it has now.",
        why="A saw only takes away.",
        example=_JOB
        + "cut PO-N-base 29 3/4 in from base-1 of 12 ft\nshortened PO-N-base to 29 7/8 in\n",
    ),
    Page(
        code="T717",
        title="stick of another length",
        message="“{stick}” is a stick of {length}, as said above",
        remedy="Correct the length, or name another stick.",
        why="A stick keeps its name until it is used up.",
        example=_JOB
        + "cut PO-N-base 29 3/4 in from base-1 of 12 ft\n"
        + "cut PO-E-base 6 ft 4 in from base-1 of 8 ft\n",
    ),
    Page(
        code="T719",
        title="stick of another trim",
        message="“{stick}” is no stick of {trim}",
        remedy="Name the stick that the ticket shows.",
        why="A stick's name begins with its trim's.",
        example=_JOB + "trim shoe: 1/2 in thick, 3/4 in tall\nstock shoe: 8 ft at 5\n"
        "cut PO-N-base 29 3/4 in from shoe-1 of 8 ft\n",
    ),
    Page(
        code="T720",
        title="under way already",
        message="this job has a site log of its own: jobs bought together have one for all",
        remedy="Move its lines into the site's log, the flat's tag before each piece, and name that"
        " with “--log”; or build this job by itself.",
        why="A stick of a pool serves several flats, and the lines of a log mean what they mean in"
        " their order: what was bought, what was left when the rack was counted, which base-1 was"
        " cut. Logs of single flats have no order among them, and each has a base-1 of its own. One"
        " purchase has one rack and one log.",
        example="",
    ),
)
