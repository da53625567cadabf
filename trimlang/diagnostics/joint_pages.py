"""T3xx: two walls do not meet; T4xx: a piece cannot be cut or bought as asked."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.severity import Severity

_TRIM = "trim base: 9/16 in thick, 5 1/4 in tall\n"
_CLOSED = _TRIM + 'stock base: 12 ft at 17.40\nroom "Study", trim base\n'
_ALL = _TRIM + 'stock base: 12 ft at 17.40\nroom "Study", trim base, open walk\n'

JOINT_PAGES: Final = (
    Page(
        "T301",
        "two sides of one joint disagree",
        "{other} begins with {left}, but {one} ({line}) ends there with {right}",
        "It is one joint: make both ends the same. Were left and right swapped?",
        "Walls are listed in order, turning to the right; the right end of one run and the left"
        " end of the next meet in the same place. An inside corner cannot meet an outside one.",
        _ALL + "  N: 40 in, left=butt, right=in-corner\n  E: 50 in, left=out-corner, right=butt",
    ),
    Page(
        "T302",
        "a corner with one side",
        "{other} begins with {left}, but {one} ({line}) ends there with {right}",
        "A corner is written at both runs that meet in it.",
        "Where two runs meet in a corner both ends are cut for it. Where only one wall has trim,"
        " its end is a butt.",
        _ALL + "  N: 40 in, left=butt, right=in-corner\n  E: 50 in, left=butt, right=butt",
        Severity.WARNING,
    ),
    Page(
        "T303",
        "one corner, two angles",
        "{one} and {other} meet in one corner, measured as {right:g}° and as {left:g}°",
        "Measure again and write the angle at one of the two ends.",
        "Both sides of a corner are cut to half of one angle.",
        _ALL
        + "  N: 40 in, left=butt, right=in-corner(91 deg)\n"
        + "  E: 50 in, left=in-corner(89 deg), right=butt",
    ),
    Page(
        "T304",
        "a corner that nothing meets",
        "run {run} has an {joint} where {gap} is: nothing meets it there",
        "Make it a butt, and write the corner at {gap} ({kind} …, {side}={joint}).",
        "A mitred end with no mate shows its end grain.",
        _ALL + "  N: 40 in, left=butt, right=in-corner\n  opening 32 in\n"
        "  E: 50 in, left=butt, right=butt",
        Severity.WARNING,
    ),
    Page(
        "T305",
        "coped twice",
        "both sides of this corner are coped",
        "Cope one side; the other runs square into the corner.",
        "A coped end needs an uncut face to lie against.",
        _ALL
        + "  N: 40 in, left=butt, right=in-corner cope\n"
        + "  E: 50 in, left=in-corner cope, right=butt",
    ),
    Page(
        "T306",
        "coped at both ends",
        "run {run} is coped at both ends",
        "Let one of its corners be coped at the other side, or leave the side to trimlang.",
        "A piece that is coped at both ends must be right to the width of a pencil line at both;"
        " where one end runs square, only the other has to be fitted.",
        _ALL
        + "  N: 40 in, left=butt, right=in-corner\n"
        + "  E: 50 in, left=in-corner cope, right=in-corner cope\n"
        + "  S: 40 in, left=in-corner, right=butt",
        Severity.WARNING,
    ),
    Page(
        "T310",
        "the room does not close",
        "room “{room}” does not close: its walls end {gap} from where they began ({where})",
        "{likely}",
        "Walked one after the other, the walls of a room come back to their start. Where they miss"
        " it by more than the tape's errors, a length or a corner is wrong, and it is cheaper to"
        " find it now. Set what is allowed with “closes within 1 in”; a room that is not to be"
        " closed is marked “open walk”.",
        _CLOSED
        + "  N: 12 ft, left=in-corner, right=in-corner\n"
        + "  E: 10 ft, left=in-corner, right=in-corner\n"
        + "  S: 11 ft, left=in-corner, right=in-corner\n"
        + "  W: 10 ft, left=in-corner, right=in-corner",
        Severity.WARNING,
    ),
    Page(
        "T311",
        "the corners do not go round",
        "the corners of room “{room}” turn {turned} in all, and once round is 360°",
        "{likely}",
        "Going round a room to the right, each inside corner turns a quarter right and each"
        " outside corner a quarter left; together they make one whole turn. Otherwise an inside"
        " corner was written for an outside one, or a wall was left out.",
        _CLOSED
        + "  N: 12 ft, left=in-corner, right=in-corner\n"
        + "  E: 10 ft, left=in-corner, right=in-corner\n"
        + "  S: 12 ft, left=in-corner, right=in-corner",
        Severity.WARNING,
    ),
    Page(
        "T312",
        "which side of the joint is wrong",
        "{sides}; room “{room}” closes if {slip}",
        "Look at that end first.",
        "Two sides of one joint contradict each other (T301), and only one reading of them brings"
        " the walls back to where they began.",
        _CLOSED
        + "  N: 12 ft, left=in-corner, right=in-corner\n"
        + "  E: 10 ft, left=out-corner, right=in-corner\n"
        + "  S: 12 ft, left=in-corner, right=in-corner\n"
        + "  W: 10 ft, left=in-corner, right=in-corner",
    ),
    Page(
        "T401",
        "longer than any stick",
        "run {run} needs {need} of {trim}, and the longest stick gives {longest}",
        "Allow a splice there (leave out “no splice” or “splices: never”), or list longer stock.",
        "The file forbids to join two pieces on this wall, and no stick is long enough for one.",
        _ALL + "  N: 14 ft, left=butt, right=butt, no splice",
    ),
    Page(
        "T402",
        "nothing left of it",
        "run {run} is too short for {trim} between its ends",
        "Measure it again, or leave this trim off the run: no {trim}.",
        "What the joints take away is more than the wall gives.",
        "trim base: 9/16 in thick, 5 1/4 in tall\ntrim shoe: 1/2 in thick, in front of base\n"
        "stock base: 12 ft at 17.40\nstock shoe: 8 ft at 5.20\n"
        'room "Study", trim base, shoe, open walk\n'
        "  N: 1 in, left=in-corner, right=in-corner\n",
    ),
    Page(
        "T403",
        "too short to splice",
        "run {run} cannot be spliced: {why}",
        "{remedy}",
        "Each piece of a spliced wall must be at least as long as the file allows.",
        _TRIM + 'stock base: 20 in at 2.00\nroom "Study", trim base, open walk\n'
        "  N: 14 ft, left=butt, right=butt",
    ),
    Page(
        "T501",
        "not enough stock",
        "{pieces} of {trim} {take} {need} of stick, and there is no more than {have} ({sticks});"
        " {lacking}",
        "List a length that can be bought in any number, or more of those that are limited.",
        "Sticks on hand and sticks with “at most” run out. What is missing is what finds no stick"
        " when the longest pieces are cut first.",
        _TRIM + 'stock base: 12 ft at 17.40 at most 1\nroom "Study", trim base, open walk\n'
        "  N: 11 ft, left=butt, right=butt\n  E: 11 ft, left=butt, right=butt",
    ),
)
