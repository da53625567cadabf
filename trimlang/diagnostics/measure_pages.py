"""T236 and on: corners measured by hand, crown, casings and stairs."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.severity import Severity

_TRIM = "trim base: 9/16 in thick, 5 1/4 in tall\n"
_STOCK = "stock base: 12 ft at 17.40\n"
_ROOM = 'room "Study", trim base, open walk\n'
_RUN = "  N: 40 in, left=butt, right=butt\n"
_ALL = _TRIM + _STOCK + _ROOM

MEASURE_PAGES: Final = (
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
    Page(
        "T240",
        "an opening's height is missing",
        "a casing of {trim} needs the opening's height",
        "Add it: opening 32 in, casing {trim}, height 80 in",
        "The legs are as long as the opening is high, from the floor to the head jamb.",
        "trim case: 11/16 in thick, 2 1/4 in wide\nstock case: 7 ft at 6.10\n"
        + _ALL
        + _RUN
        + "  opening 32 in, casing case\n",
    ),
    Page(
        "T241",
        "casing without a width",
        "trim “{trim}” needs a width to be used as casing",
        "Add it to the trim's line: trim {trim}: 11/16 in thick, 2 1/4 in wide",
        "Legs and head reach past the opening by the width of the casing.",
        "trim case: 11/16 in thick\nstock case: 7 ft at 6.10\n"
        + _ALL
        + _RUN
        + "  opening 32 in, casing case, height 80 in\n",
    ),
    Page(
        "T242",
        "no such head",
        "a casing's head cannot end in {joint}",
        "Write “head mitre” or “head butt”.",
        "A head is mitred to the legs, or lies across them.",
        "casings: head open\n" + _ALL + _RUN,
    ),
    Page(
        "T243",
        "no stair here",
        "the {side} end of run {run} is {joint}, and the run does not rise",
        "Say how it rises: rising right 36 deg; or make the end a butt.",
        "Plumb and level cuts are made where sloping trim ends at a wall or on a floor.",
        _ALL + "  N: 40 in, left=plumb, right=butt",
    ),
    Page(
        "T244",
        "nothing bends here",
        "the {side} end of run {run} is a rake, but the trim goes straight on there",
        "A rake end stands at both runs that meet, and one of them rises: rising right 36 deg.",
        "Level and raking trim meet in a mitre of half the pitch; without a bend there is none.",
        _ALL + "  N: 40 in, left=butt, right=rake\n  N2: 40 in, left=rake, right=butt",
    ),
    Page(
        "T245",
        "a corner on a slope",
        "the {side} end of run {run} is {joint}, and the run rises",
        "End it plumb at the corner and let the level trim butt against it.",
        "Two mouldings that meet in a corner at unlike slopes do not match in section; no mitre"
        " joins them.",
        _ALL + "  N: 40 in, left=in-corner, right=plumb, rising right 36 deg",
    ),
    Page(
        "T246",
        "height missing",
        "the {joint} end of run {run} needs the height of trim “{trim}”",
        "Add it to the trim's line: trim {trim}: 5 1/4 in tall",
        "A cut across the face makes one edge longer than the other by the trim's height times the"
        " tangent of the cut.",
        "trim base: 9/16 in thick\n"
        + _STOCK
        + _ROOM
        + "  N: 40 in, left=plumb, right=plumb, rising right 36 deg",
    ),
    Page(
        "T247",
        "crown on a slope",
        "run {run} rises, and trim “{trim}” is crown",
        "Leave it off the run: no {trim}",
        "Crown along a sloping ceiling meets level crown in a cut that trimlang does not work out.",
        "trim crown: 11/16 in thick, 3 5/8 in wide, spring 38 deg\nstock crown: 12 ft at 28.80\n"
        'room "Study", trim crown, open walk\n'
        "  N: 40 in, left=butt, right=plumb, rising right 36 deg",
    ),
    Page(
        "T248",
        "two prices for one length",
        "{stick} of {trim} is priced {price} here and {other} in {line}",
        "Keep the one that holds; of two the cheaper is taken.",
        "One length has one price, unless the cheaper sticks are limited (at most 6). Usually a new"
        " price was added and the old one left standing.",
        _TRIM + "stock base: 12 ft at 17.40, 16 ft at 24.10, 12 ft at 18.60\n" + _ROOM + _RUN,
        Severity.WARNING,
    ),
    Page(
        "T249",
        "a rounding step too coarse",
        "lengths cannot be rounded to {step}: the coarsest step is {most}",
        "Write a mark of the tape, such as: round to 1/16 in",
        "A length is rounded by up to a whole step. More than half an inch is no rounding; a wall's"
        " length was probably meant, or the unit is wrong.",
        "round to 7 in\n" + _ALL + _RUN,
    ),
    Page(
        "T250",
        "a kerf too wide",
        "no blade cuts a kerf of {kerf}: the widest taken is {most}",
        "Measure a cut; a mitre saw's is about 1/8 in, such as: saw: kerf 1/8 in",
        "The kerf is what one cut turns to dust, and each cut takes it from the stick.",
        "saw: kerf 30 in\n" + _ALL + _RUN,
    ),
    Page(
        "T251",
        "a point between thousands",
        "with a decimal point this is {point}, which no tape shows; with one between thousands"
        " {thousands}",
        "Write {thousands}, or leave out the zeros behind the decimal point.",
        "In many countries a point stands between thousands. Read as a decimal point it makes a"
        " wall of 2740 mm one of less than 3 mm.",
        "unit mm\n" + _ALL + "  N: 2.740, left=butt, right=butt",
    ),
)
