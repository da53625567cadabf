"""T1xx: the line could not be read, or a number in it is odd."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.severity import Severity

_WALL = """\
trim base: 9/16 in thick, 5 1/4 in tall
stock base: 12 ft at 17.40
room "Study", trim base, open walk
"""

SYNTAX_PAGES: Final = (
    Page(
        "T100",
        "no line begins like that",
        "no line begins with “{word}”",
        "{remedy}",
        "Each line of a job file begins with a word that says what the line is, or with the"
        " name of a run and a colon. This one begins with neither.",
        _WALL + 'rom "Hall", trim base',
    ),
    Page(
        "T101",
        "a word that does not belong",
        "“{word}” cannot stand here; expected {wanted}",
        "{remedy}",
        "The line was understood up to the marked place. What stands there is no word that the"
        " line can go on with.",
        _WALL + "  N: 40 in, left=incorner, right=butt",
    ),
    Page(
        "T103",
        "the line stops short",
        "the line stops before it is finished; expected {wanted}",
        "Finish the line: each statement stands on one line.",
        "A statement never goes over two lines, so something is missing at the end of this one.",
        _WALL + "  N: 40 in, left=",
    ),
    Page(
        "T104",
        "quotes not closed",
        "this text in quotes does not end on its line",
        "Close it with a second quotation mark.",
        "Names and notes stand between two quotation marks on one line.",
        _WALL + '  N: 40 in, left=butt, right=butt, note "behind',
    ),
    Page(
        "T105",
        "line too long",
        "this line is longer than {most} characters",
        "Break it into lines of one statement each.",
        "No statement needs so much room; the file was probably joined or damaged.",
        "# " + "x" * 2000,
    ),
    Page(
        "T106",
        "too many mistakes",
        "more than {most} mistakes: the rest of the file was not read",
        "Mend those above first. Is this a job file?",
        "After so many mistakes further ones would tell nothing.",
        "?\n" * 202,
    ),
    Page(
        "T110",
        "a number with too many digits",
        "this number has more digits than any measure needs",
        "Write the number as it stands on the tape.",
        "A number of more than nine digits is a slip of the keyboard or a damaged file.",
        _WALL + "  N: 12345678901 in, left=butt, right=butt",
    ),
    Page(
        "T111",
        "a fraction over nothing",
        "“{written}” divides by nothing",
        "Write the fraction as the tape shows it, such as 1/8.",
        "A fraction needs a number below its stroke.",
        _WALL + "  N: 40 1/0 in, left=butt, right=butt",
    ),
    Page(
        "T112",
        "a fraction that a tape does not have",
        "a tape has no mark for “{written}”",
        "The nearest sixteenth is {nearest}. Look at the tape once more.",
        "Tapes are marked in halves, quarters, eighths, sixteenths, sometimes 32nds and 64ths,"
        " each less than one inch. Another fraction is usually two figures that changed places."
        " It is taken as written.",
        _WALL + "  N: 40 5/12 in, left=butt, right=butt",
        Severity.WARNING,
    ),
    Page(
        "T113",
        "feet and inches that do not go together",
        "{odd}: was a mark or a figure misread?",
        "Write whole feet and less than twelve inches, such as 9 ft 3 in.",
        "“9 ft 14 in” and “9.5 ft 3 in” can be added up, but nobody reads them off a tape: usually"
        " two figures ran together or an inch mark became a foot mark. It is taken as written.",
        _WALL + "  N: 9 ft 14 in, left=butt, right=butt",
        Severity.WARNING,
    ),
    Page(
        "T114",
        "a comma inside a number",
        "a number is written with a point, not a comma",
        "Write {better}; a comma separates the parts of a line.",
        "A comma ends one part of a line and begins the next, so it cannot stand in a number,"
        " neither before decimals nor between thousands.",
        _WALL + "  N: 40,5 in, left=butt, right=butt",
    ),
    Page(
        "T115",
        "hidden marks that turn the text round",
        "this text has hidden marks that turn the direction of writing; they are left out",
        "Delete and retype the text.",
        "Such marks, usually pasted along with a text, can show a note's figures backwards on"
        " paper.",
        _WALL + '  N: 40 in, left=butt, right=butt, note "a\u202eb"',
        Severity.WARNING,
    ),
    Page(
        "T130",
        "a word on its way out",
        "“{old}” is now written “{new}”, since version {since}; version {gone} no longer reads it",
        "Write “{new}” instead of “{old}”.",
        "A word of the language that gets a better one goes on being read for a while, and means"
        " what it meant. No word is on its way out in this version, so nothing brings this up yet.",
        "",
        Severity.WARNING,
    ),
    Page(
        "T116",
        "a stick too short to be sold",
        "a stick of {long} is too short to be bought",
        "{remedy}",
        "Nobody sells trim in sticks shorter than half a foot: usually a unit is missing, or a"
        " point stands in the wrong place. A number under 24 without a unit is taken for feet"
        " that lost theirs. Offcuts in the shop (on-hand) may be as short as they are.",
        "trim base: 9/16 in thick, 5 1/4 in tall\nstock base: 12 at 17.40\n"
        'room "Study", trim base, open walk\n  N: 5 in, left=butt, right=butt\n',
    ),
    Page(
        "T117",
        "too many lines",
        "the job has more than {most} lines; this file is not read",
        "Is this a job file? Give each house a file of its own.",
        "A house has a few hundred lines, a large site some ten thousand. More would take longer"
        " than anybody waits.",
        "",
    ),
    Page(
        "T118",
        "a name that looks like another",
        "“{name}” has a letter of another alphabet: “{sign}” is {what}",
        "Type the name again on your own keyboard.",
        "The Cyrillic or Greek а, е, о and others look like Latin letters and are others: two"
        " names can look alike on paper and be two pieces, or one trim and none. Usually such a"
        " letter comes along with pasted text.",
        "trim b\u0430se: 9/16 in thick, 5 1/4 in tall\nstock b\u0430se: 12 ft at 17.40\n"
        'room "Study", trim b\u0430se, open walk\n  N: 40 in, left=butt, right=butt\n',
        Severity.WARNING,
    ),
    Page(
        "T119",
        "hidden signs",
        "this text has signs that cannot be seen ({which}); they are left out",
        "Delete and retype the text.",
        "Such signs, usually pasted along with a text, make two texts that look the same differ,"
        " and steer terminals and printers.",
        _WALL + '  N: 40 in, left=butt, right=butt, note "a\u200bb"',
        Severity.WARNING,
    ),
    Page(
        "T120",
        "a fraction too fine",
        "“{written}” is finer than anybody measures",
        "Write the fraction as the tape shows it, such as 1/8, or a decimal.",
        "Tapes are marked down to 64ths. A larger number below the stroke is a slip of the"
        " keyboard, such as a blank left out.",
        _WALL + "  N: 40 1/1625 in, left=butt, right=butt",
    ),
    Page(
        "T121",
        "two names that look alike",
        "“{name}” looks like “{other}” and is another name",
        "Type both again on one keyboard, or give one of them another name.",
        "The two are written with letters of different alphabets: on paper nobody can tell them"
        " apart.",
        "trim oca: 9/16 in thick, 5 1/4 in tall\nstock oca: 12 ft at 17.40\n"
        "trim \u043e\u0441\u0430: 9/16 in thick, 5 1/4 in tall\n"
        "stock \u043e\u0441\u0430: 12 ft at 17.40\n"
        'room "Study", trim oca, \u043e\u0441\u0430, open walk\n'
        "  N: 40 in, left=butt, right=butt\n",
        Severity.WARNING,
    ),
    Page(
        "T122",
        "a piece of no length",
        "{trim} leaves nothing of {part}: it is too thin or too wide for it",
        "Measure the opening or the trim again; was a unit left out?",
        "A leg shorter than its mitre, or a return of trim with next to no thickness, cannot be"
        " cut.",
        "casings: off floor 1/2 in\ntrim case: 11/16 in thick, 2 1/4 in wide\n"
        "stock case: 7 ft at 6.10\n"
        + _WALL
        + "  N: 40 in, left=butt, right=butt\n  opening 32 in, casing case, height 1/8 in\n",
    ),
)
