"""T1xx: the line could not be read, or a number in it is odd."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import JOB_TO_ROOM, OPEN_ROOM, RUN, TRIM
from trimlang.diagnostics.named_codes import MISPLACED, ODD_FEET
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.whole import Whole

SYNTAX_PAGES: Final = (
    Page(
        code="T100",
        title="no line begins like that",
        message="no line begins with “{word}”",
        remedy="{remedy}",
        why="Each line of a job file begins with a word that says what the line is, or with the"
        " name of a run and a colon. This one begins with neither.",
        example=JOB_TO_ROOM + 'rom "Hall", trim base',
        loses=Whole.LINE,
    ),
    Page(
        code=MISPLACED,
        title="a word that does not belong",
        message="“{word}” cannot stand here; expected {wanted}",
        remedy="{remedy}",
        why="The line was understood up to the marked place. What stands there is no word that the"
        " line can go on with.",
        example=JOB_TO_ROOM + "  N: 40 in, left=incorner, right=butt",
        loses=Whole.LINE,
    ),
    Page(
        code="T103",
        title="the line stops short",
        message="the line stops before it is finished; expected {wanted}",
        remedy="{remedy}",
        why="A statement never goes over two lines, so something is missing at the end of this"
        " one.",
        example=JOB_TO_ROOM + "  N: 40 in, left=",
        loses=Whole.LINE,
    ),
    Page(
        code="T104",
        title="quotes not closed",
        message="this text in quotes does not end on its line",
        remedy="Close it with a second quotation mark.",
        why="Names and notes stand between two quotation marks on one line.",
        example=JOB_TO_ROOM + '  N: 40 in, left=butt, right=butt, note "behind',
        loses=Whole.LINE,
    ),
    Page(
        code="T105",
        title="line too long",
        message="this line is longer than {most} characters",
        remedy="Break it into lines of one statement each.",
        why="No statement needs so much room; the file was probably joined or damaged.",
        example="# " + "x" * 2000,
        loses=Whole.LINE,
    ),
    Page(
        code="T106",
        title="too many mistakes",
        message="more than {most} mistakes: the rest of the file was not read",
        remedy="Mend those above first. Is this a job file?",
        why="After so many mistakes further ones would tell nothing.",
        example="?\n" * 202,
        loses=Whole.LINE,
    ),
    Page(
        code="T110",
        title="a number with too many digits",
        message="this number has more digits than any measure needs",
        remedy="Write the number as it stands on the tape.",
        why="A number of more than nine digits is a slip of the keyboard or a damaged file.",
        example=JOB_TO_ROOM + "  N: 12345678901 in, left=butt, right=butt",
        loses=Whole.LINE,
    ),
    Page(
        code="T111",
        title="a fraction over nothing",
        message="“{written}” divides by nothing",
        remedy="Write the fraction as the tape shows it, such as 1/8.",
        why="A fraction needs a number below its stroke.",
        example=JOB_TO_ROOM + "  N: 40 1/0 in, left=butt, right=butt",
        loses=Whole.LINE,
    ),
    Page(
        code="T112",
        title="a fraction that a tape does not have",
        message="a tape has no mark for “{written}”",
        remedy="{guess}The nearest sixteenth is {nearest}. Look at the tape once more.",
        why="Tapes are marked in halves, quarters, eighths, sixteenths, sometimes 32nds and 64ths,"
        " each less than one inch. Another fraction is usually two figures that changed places. It"
        " is taken as written.",
        example=JOB_TO_ROOM + "  N: 40 5/12 in, left=butt, right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code=ODD_FEET,
        title="feet and inches that do not go together",
        message="{odd}: was a mark or a figure misread?",
        remedy="{guess}Write whole feet and less than twelve inches, such as 9 ft 3 in.",
        why="“9 ft 14 in” and “9.5 ft 3 in” can be added up, but nobody reads them off a tape:"
        " usually two figures ran together or an inch mark became a foot mark. It is taken as"
        " written.",
        example=JOB_TO_ROOM + "  N: 9 ft 14 in, left=butt, right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T114",
        title="a comma inside a number",
        message="a number is written with a point, not a comma",
        remedy="Write {better}; a comma separates the parts of a line.",
        why="A comma ends one part of a line and begins the next, so it cannot stand in a number,"
        " neither before decimals nor between thousands.",
        example=JOB_TO_ROOM + "  N: 40,5 in, left=butt, right=butt",
        loses=Whole.LINE,
    ),
    Page(
        code="T115",
        title="hidden marks that turn the text round",
        message="this text has hidden marks that turn the direction of writing; they are left out",
        remedy="Delete and retype the text.",
        why="Such marks, usually pasted along with a text, can show a note's figures backwards on"
        " paper.",
        example=JOB_TO_ROOM + '  N: 40 in, left=butt, right=butt, note "a\u202eb"',
        severity=Severity.WARNING,
    ),
    Page(
        code="T130",
        title="a word on its way out",
        message="“{old}” is now written “{new}”, since version {since}; version {gone} no longer"
        " reads it",
        remedy="Write “{new}” instead of “{old}”.",
        why="A word of the language that gets a better one goes on being read for a while, and"
        " means what it meant. No word is on its way out in this version, so nothing brings this up"
        " yet.",
        example="",
        severity=Severity.WARNING,
    ),
    Page(
        code="T136",
        title="per, before a foot or a metre",
        message="this is read as “{better}”: a stick costs as much as it is long",
        remedy="Write “{better}”.",
        why="Yards write such a price in many ways. It is taken as said; one that was meant for a"
        " whole stick would be multiplied by its length.",
        example=TRIM + "stock base: 12 ft at 1.45 per ft\n" + OPEN_ROOM + RUN,
        severity=Severity.WARNING,
    ),
    Page(
        code="T116",
        title="a stick too short to be sold",
        message="a stick of {long} is too short to be bought",
        remedy="{remedy}",
        why="Nobody sells trim in sticks shorter than half a foot: usually a unit is missing, or a"
        " point stands in the wrong place. A number under 24 without a unit is taken for feet that"
        " lost theirs. Offcuts in the shop (on-hand) may be as short as they are.",
        example="trim base: 9/16 in thick, 5 1/4 in tall\nstock base: 12 at 17.40\n"
        'room "Study", trim base, open walk\n  N: 5 in, left=butt, right=butt\n',
        loses=Whole.LINE,
    ),
    Page(
        code="T117",
        title="too many lines",
        message="the job has more than {most} lines; this file is not read",
        remedy="Is this a job file? Give each house a file of its own.",
        why="A house has a few hundred lines, a large site some ten thousand. More would take"
        " longer than anybody waits.",
        example="",
        loses=Whole.LINE,
    ),
    Page(
        code="T118",
        title="a name that looks like another",
        message="“{name}” has a letter of another alphabet: “{sign}” is {what}",
        remedy="Type the name again on your own keyboard.",
        why="The Cyrillic or Greek а, е, о and others look like Latin letters and are others: two"
        " names can look alike on paper and be two pieces, or one trim and none. Usually such a"
        " letter comes along with pasted text.",
        example="trim b\u0430se: 9/16 in thick, 5 1/4 in tall\nstock b\u0430se: 12 ft at 17.40\n"
        'room "Study", trim b\u0430se, open walk\n  N: 40 in, left=butt, right=butt\n',
        severity=Severity.WARNING,
    ),
    Page(
        code="T119",
        title="hidden signs",
        message="this text has signs that cannot be seen ({which}); they are left out",
        remedy="Delete and retype the text.",
        why="Such signs, usually pasted along with a text, make two texts that look the same"
        " differ, and steer terminals and printers.",
        example=JOB_TO_ROOM + '  N: 40 in, left=butt, right=butt, note "a\u200bb"',
        severity=Severity.WARNING,
    ),
    Page(
        code="T120",
        title="a fraction too fine",
        message="“{written}” is finer than anybody measures",
        remedy="Write the fraction as the tape shows it, such as 1/8, or a decimal.",
        why="Tapes are marked down to 64ths. A larger number below the stroke is a slip of the"
        " keyboard, such as a blank left out.",
        example=JOB_TO_ROOM + "  N: 40 1/1625 in, left=butt, right=butt",
        loses=Whole.LINE,
    ),
    Page(
        code="T121",
        title="two names that look alike",
        message="“{name}” looks like “{other}” and is another name",
        remedy="If they are one, write “{other}” in both places; else give one of them another"
        " name.",
        why="The two are written with letters of different alphabets: on paper nobody can tell"
        " them apart.",
        example="trim oca: 9/16 in thick, 5 1/4 in tall\nstock oca: 12 ft at 17.40\n"
        "trim \u043e\u0441\u0430: 9/16 in thick, 5 1/4 in tall\n"
        "stock \u043e\u0441\u0430: 12 ft at 17.40\n"
        'room "Study", trim oca, \u043e\u0441\u0430, open walk\n'
        "  N: 40 in, left=butt, right=butt\n",
        severity=Severity.WARNING,
    ),
    Page(
        code="T123",
        title="said of another wall",
        message="this is not said of {of} but of {other}, and is left out",
        remedy="Put it behind the wall that it is about.",
        why="Where several walls stand in one line, what follows a wall is said of that one.",
        example=JOB_TO_ROOM + "  N 40 in, entrance, door 32 in, E 30 in, right=butt",
        loses=Whole.LINE,
    ),
    Page(
        code="T124",
        title="no wall, by its name",
        message="“{word}” would be a wall that gets trim",
        remedy="{remedy}",
        why="A name and a length in a list of walls are a wall with trim on it, and a closet's door"
        " or a tub is wall without.",
        example=JOB_TO_ROOM + "  N 40 in, left=butt, tub 60 in, E 30 in, right=butt",
    ),
    Page(
        code="T125",
        title="an opening with a colon",
        message="“{word}:” is a wall that gets trim",
        remedy="{remedy}",
        why="A name with a colon is a wall's, whatever the word, and trim would be cut across the"
        " door. It is taken as a wall.",
        example=JOB_TO_ROOM + "  N: 40 in, left=butt, right=butt\n  door: 32 in"
        "\n  E: 30 in, left=butt, right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T122",
        title="a piece of no length",
        message="{trim} leaves nothing of {part}: it is too thin or too wide for it",
        remedy="Measure the opening or the trim again; was a unit left out?",
        why="A leg shorter than its mitre, or a return of trim with next to no thickness, cannot"
        " be cut.",
        example="casings: off floor 1/2 in\ntrim case: 11/16 in thick, 2 1/4 in wide\n"
        "stock case: 7 ft at 6.10\n"
        + JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=butt\n  opening 32 in, casing case, height 1/8 in\n",
        loses=Whole.LINE,
    ),
)
