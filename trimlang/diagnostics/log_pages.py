"""T70x and T71x: the site log."""

from typing import Final

from trimlang.diagnostics.code_page import Page
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
        "T701",
        "not a line of the log",
        "a log file holds only what was done: cut, spoiled, shortened, fitted, bought, rack",
        "Move this line into the job file.",
        "The log file beside a job (house.site beside house.trim) is read after it; what the"
        " job is stands in the job file.",
        "",
    ),
    Page(
        "T702",
        "no such piece",
        "the job has no piece “{piece}”",
        "{remedy}",
        "A piece has the name that stands on its ticket. If its wall is gone from the survey"
        " since it was cut, write the whole of the line: its length, its stick and how long the"
        " stick was.",
        _JOB + "cut PO-M-base\n",
    ),
    Page(
        "T703",
        "cut for a wall that is gone",
        "“{piece}” was cut, and no wall asks for it any more",
        "Put it back on the rack: “spoiled {piece} into …” with the length that can still be"
        " used. {remedy}",
        "Its length is gone from the stick that it was cut from, as the line says.",
        _JOB + "cut PO-W-base 40 in from base-1 of 12 ft\n",
        Severity.WARNING,
    ),
    Page(
        "T704",
        "cut twice",
        "“{piece}” is cut already, says {line}",
        "Take one of the lines out, or say in between that it was spoiled.",
        "A piece is cut once; each line takes wood from a stick.",
        _JOB + "cut PO-N-base, PO-N-base\n",
    ),
    Page(
        "T705",
        "not cut yet",
        "“{piece}” is {what} here, but {why}",
        "Write “cut {piece}” above.",
        "The log is read from the top: what was cut decides what is left of the sticks.",
        _JOB + "fitted PO-N-base\n",
    ),
    Page(
        "T706",
        "fitted twice",
        "“{piece}” is on the wall already, says {line}",
        "Take one of the lines out.",
        "A line that says what was said may be a slip for another piece.",
        _JOB + "cut PO-N-base 29 3/4 in from base-1 of 12 ft\nfitted PO-N-base\nfitted PO-N-base\n",
    ),
    Page(
        "T707",
        "too little left",
        "what is in hand and what the stock lines offer is not enough for what is left of"
        " “{trim}”: no stick for {pieces}",
        "Offer more on the stock line, or count what is there: “rack {trim}: 3 of 12 ft, 41 in”.",
        "After each spoiled piece the rest is planned from the sticks that are left.",
        _JOB.replace("8 ft at 11.60, 12 ft at 17.40", "12 ft at 17.40 at most 2")
        + "spoiled PO-S-base 8 ft 1/2 in from base-1 of 12 ft\n",
    ),
    Page(
        "T708",
        "spoiled into more than there was",
        "“{piece}” is spoiled into {rests}, and was {had} long",
        "Measure what can still be used, or say that it was not cut from that stick.",
        "What is left of a piece is no longer than the piece.",
        _JOB
        + "cut PO-N-base 29 3/4 in from base-1 of 12 ft\nspoiled PO-N-base into 22 in and 9 in\n",
    ),
    Page(
        "T709",
        "bought at no price",
        "no stock line of “{trim}” lists this length, so it counts as free",
        "Write what one stick cost: “at 17.40”.",
        "Money spent is taken from the line, or from the stock line of that length.",
        _JOB + "bought 2 base 10 ft\n",
        Severity.WARNING,
    ),
    Page(
        "T710",
        "cut too long",
        "“{piece}” was cut {cut} long and the survey now says {now}: {by} too long",
        "Saw it and write “shortened {piece} to {now}”; or set it aside: “spoiled {piece} into"
        " {cut}”.",
        "A cut piece keeps its length on the sheets, whatever the survey says afterwards.",
        _JOB + "cut PO-N-base 30 in from base-1 of 12 ft\n",
        Severity.WARNING,
    ),
    Page(
        "T711",
        "cut too short",
        "“{piece}” was cut {cut} long and the survey now says {now}: {by} too short",
        "Cut another: write “spoiled {piece} into {cut}”, or the length of it that can still be"
        " used, and build again.",
        "A cut piece keeps its length on the sheets, whatever the survey says afterwards.",
        _JOB + "cut PO-N-base 29 1/2 in from base-1 of 12 ft\n",
        Severity.WARNING,
    ),
    Page(
        "T712",
        "not written out",
        "lines of the log that do not say all, from here on: {count}",
        "Write the length and the stick too: “cut PO-N-base 29 3/4 in from base-1 of 12 ft”."
        " “trimlang mark JOB --pin” does it.",
        "“cut PO-N-base” means the length and the stick that the ticket shows. A survey that"
        " changes later could change what it showed.",
        _JOB + "cut PO-N-base\n",
        Severity.WARNING,
    ),
    Page(
        "T713",
        "too long for its stick",
        "“{piece}” needs {need}, and {stick}",
        "Say which stick it was cut from, or count what is there: “rack base: 3 of 12 ft, 41 in”.",
        "What was cut from a stick decides what is left of it.",
        _JOB
        + "cut PO-E-base 6 ft 4 in from base-1 of 8 ft\n"
        + "cut PO-N-base 29 3/4 in from base-1 of 8 ft\n",
    ),
    Page(
        "T714",
        "stick that nobody bought",
        "the log knows of no stick of {length} in hand here; one more counts as bought at {price}",
        "Write the “bought” line above this one, or name the stick that it was cut from.",
        "Where the log tells what was bought, a stick that is cut must be among it.",
        _JOB + "bought 1 base 12 ft\ncut PO-N-base 29 3/4 in from base-7 of 8 ft\n",
        Severity.WARNING,
    ),
    Page(
        "T715",
        "no such stick",
        "no ticket shows a stick “{stick}” here",
        "Write how long it was too: “from {stick} of 12 ft”.",
        "A stick has the name that its tickets show; a stick that no ticket shows needs its"
        " length.",
        _JOB + "cut PO-N-base 29 3/4 in from base-9\n",
    ),
    Page(
        "T716",
        "shortened to more",
        "“{piece}” is not longer than that",
        "Give the length that it has now.",
        "A saw only takes away.",
        _JOB + "cut PO-N-base 29 3/4 in from base-1 of 12 ft\nshortened PO-N-base to 29 7/8 in\n",
    ),
    Page(
        "T717",
        "stick of another length",
        "“{stick}” is a stick of {length}, as said above",
        "Correct the length, or name another stick.",
        "A stick keeps its name until it is used up.",
        _JOB
        + "cut PO-N-base 29 3/4 in from base-1 of 12 ft\n"
        + "cut PO-E-base 6 ft 4 in from base-1 of 8 ft\n",
    ),
    Page(
        "T719",
        "stick of another trim",
        "“{stick}” is no stick of {trim}",
        "Name the stick that the ticket shows.",
        "A stick's name begins with its trim's.",
        _JOB + "trim shoe: 1/2 in thick, 3/4 in tall\nstock shoe: 8 ft at 5\n"
        "cut PO-N-base 29 3/4 in from shoe-1 of 8 ft\n",
    ),
    Page(
        "T720",
        "under way already",
        "this job has a site log: it cannot be bought together with others any more",
        "Work the flats as one job that includes the rooms of each, with one log (“Worked"
        " together” in docs/many-jobs.md); or build this one by itself and leave it out.",
        "A stick of a pool serves several flats, and the lines of a log mean what they mean in"
        " their order: what was bought, what was left when the rack was counted, which base-1 was"
        " cut."
        " Logs of single flats have no order among them, and each has a base-1 of its own. One job"
        " has one rack and one log.",
        "",
    ),
)
