"""T488, T489, T722 to T728: a word or a number that can be read, and can hardly be meant there."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import JOB_TO_ROOM, RUN, STOCK, TRIM
from trimlang.diagnostics.severity import Severity

_CASE: Final = "trim case: 11/16 in thick, 2 1/4 in wide\nstock case: 16 ft at 12.10\n"

ODD_WORD_PAGES: Final = (
    Page(
        code="T488",
        title="another measure in the place of the width",
        message="this {kind} says its {measure}, and not how wide it is",
        remedy="Say the width first: {kind} 36 in, {measure} 30 in. One that is called so takes"
        " quotes.",
        why="What stands behind an opening's name is its width, as it takes up the wall.",
        example=JOB_TO_ROOM + RUN + "  window sill 30 in\n",
    ),
    Page(
        code="T489",
        title="said of a window, and this is a door",
        message="sill, stool and casing on four sides are said of windows, and this is a door",
        remedy="Leave it out, or write window.",
        why="A door goes down to the floor: its casing has no fourth side, and base stops at it.",
        example=_CASE + JOB_TO_ROOM + RUN + "  door 32 in, casing case, height 80 in, sill 30 in\n",
        severity=Severity.WARNING,
    ),
    Page(
        code="T722",
        title="crown on the top of another trim",
        message="{trim} leans as crown does, and cannot lie on {other}",
        remedy="Write in front of {other} where its foot is on the face of that; leave it out where"
        " its foot is on the wall above.",
        why="A crown leans between ceiling and wall. Its foot stands on what is behind it, whose"
        " upper edge is out of sight.",
        example="trim frieze: 3/4 in thick, 3 1/2 in tall\nstock frieze: 16 ft at 18.90\n"
        "trim crown: 11/16 in thick, 3 5/8 in wide, spring 38 deg, on frieze\n"
        "stock crown: 16 ft at 31.00\n"
        'room "Study", trim frieze, crown, open walk\n' + RUN,
    ),
    Page(
        code="T723",
        title="a corner too round for a bullnose",
        message="behind the small piece of this corner the wall stands {hollow} off",
        remedy="Measure the radius again. A corner as round as that is a run that curves out:"
        " curves out radius 12 in.",
        why="The small piece is straight. How far the round stands off it grows with the radius:"
        " radius × (1 ÷ cos of a quarter of the turn - 1). More than 1/4 in is seen from above"
        " (common practice, no source).",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=out-corner(bullnose 12 in)\n"
        + "  E: 40 in, right=butt\n",
        severity=Severity.WARNING,
    ),
    Page(
        code="T724",
        title="spliced, and not spliced",
        message="this run is to be spliced, and is not to be",
        remedy="Keep the one that is meant.",
        why="“splice” makes two pieces of a run, “no splice” keeps it in one.",
        example=JOB_TO_ROOM + "  N: 90 in, left=butt, right=butt, splice, no splice\n",
    ),
    Page(
        code="T725",
        title="a step that is higher than it is deep",
        message="this climbs by more than it goes along, steeper than any stair",
        remedy="The rise stands first: 7 3/4 in rise, 10 in run. Where it is so steep, write the"
        " angle.",
        why="A stair's step is deeper than it is high, and the two are easily swapped (common"
        " practice, no source; local codes limit both).",
        example="saw: reaches 60 deg\n"
        + JOB_TO_ROOM
        + "  N: 90 in, left=plumb, right=plumb, rising right 10 in rise, 7 3/4 in run\n",
        severity=Severity.WARNING,
    ),
    Page(
        code="T726",
        title="a word for a trim, taken for its material",
        message="“{words}” is read as what the trim is made of",
        remedy="{remedy}",
        why="Words that the language does not know are the material, and are ordered with the trim;"
        " they change no cut.",
        example=TRIM
        + STOCK
        + "trim bend: 1/2 in thick, 3/4 in tall, flex\nstock bend: 12 ft at 21.00\n"
        + 'room "Study", trim base, bend, open walk\n'
        + RUN,
        severity=Severity.WARNING,
    ),
    Page(
        code="T727",
        title="a girth shorter than the trim is tall",
        message="a tape laid over the profile reads at least the trim's height",
        remedy="Lay the tape over the face from edge to edge, into every hollow, and read again.",
        why="Between two edges nothing is shorter than the straight line. The girth is what paint"
        " has to cover.",
        example="trim cap: 9/16 in thick, 5 1/4 in tall, girth 4 in\nstock cap: 12 ft at 17.40\n"
        'room "Study", trim cap, open walk\n' + RUN,
        severity=Severity.WARNING,
    ),
    Page(
        code="T728",
        title="no saw reads that",
        message="a saw that reads {degrees}° closes no corner",
        remedy="If that is the corner's own angle, leave the word mitre out.",
        why="A mitre is half of how far the walls turn, at most 75° for the sharpest corner that is"
        " believed; a corner's own angle is mostly near 90°.",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=out-corner(mitre 91 deg)\n"
        + "  E: 40 in, right=butt\n",
    ),
)
