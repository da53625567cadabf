"""Pages of stairs and curves: what does not suit a run that climbs, or a wall that curves."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import JOB_TO_ROOM
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.whole import Whole

STAIR_PAGES: Final = (
    Page(
        code="T295",
        title="said of a stair, and the run is level",
        message="run {run} does not climb, so this says nothing of it",
        remedy="Say how it rises: rising right 7 3/4 in rise, 10 in run; or leave this part out.",
        why="Only a length along a slope differs from one taken level or upright, and only a stair"
        " has an open side.",
        example=JOB_TO_ROOM + "  N: 40 in, left=butt, right=butt, taken level",
    ),
    Page(
        code="T296",
        title="steps that are not known",
        message="the open side of run {run} is sawn to its steps, and only the pitch is told",
        remedy="Write the pitch as one step: rising right 7 3/4 in rise, 10 in run.",
        why="A pitch in degrees belongs to small steps as well as to large ones.",
        example=JOB_TO_ROOM + "  N: 40 in, left=plumb, right=plumb, rising right 36 deg, open side",
    ),
    Page(
        code="T445",
        title="climbing trim round an outside corner",
        message="{trim} on run {run} cannot be mitred round the corner to {other}: their tops would"
        " part by {apart}",
        remedy="End what climbs in a level return before the corner, and turn it level: level"
        " right 6 in.",
        why="The upright plane that halves a corner shows one shape on both pieces only where one"
        " is the other's mirror image: what climbs to the corner falls from it, at one pitch."
        " Where both go on climbing, each top runs up or down across its own thickness the other"
        " way; where only one climbs, it is taller upright.",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=plumb, right=out-corner, rising right 36 deg\n"
        + "  E: 40 in, left=out-corner, right=plumb, rising right 36 deg",
    ),
    Page(
        code="T446",
        title="a board too low for its steps",
        message="{trim} on run {run} is sawn to the steps and would have nothing left below them",
        remedy="Use a taller board: {needs} at least.",
        why="Each notch takes the rise times the cosine of the pitch off the board; with less than"
        " half an inch below them it breaks (common practice, no source).",
        example=JOB_TO_ROOM
        + "  N: 90 in, left=plumb, right=plumb, rising right 7 3/4 in rise, 10 in run, open side",
    ),
    Page(
        code="T447",
        title="a notch larger than the board",
        message="the notch at the {side} end of run {run} leaves nothing of {trim}",
        remedy="Measure it again: first how far it goes in level, then how far up.",
        why="A newel's notch is cut out of the lower corner of an end. One that is as tall as the"
        " trim or as long as the piece is a shorter run.",
        example=JOB_TO_ROOM + "  N: 40 in, left=butt, right=butt, notch left 3 1/2 in by 6 in",
    ),
    Page(
        code="T457",
        title="a rake between unlike trims",
        message="runs {run} and {other} meet in a rake, and no trim goes on from one to the other",
        remedy="Give both the same trim, or end the one that climbs plumb and the level one in a"
        " butt.",
        why="A rake halves a bend, so that one profile goes on round it. Another trim is not as"
        " tall, and its edges do not meet those of the first.",
        example="trim skirt: 3/4 in thick, 11 1/4 in tall\nstock skirt: 12 ft at 41.00\n"
        + JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=rake\n"
        + "  N2: 90 in, left=rake, right=plumb, rising right 36 deg, trim skirt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T297",
        title="half of a radius and an angle",
        message="run {run} gives only one of a radius and an angle",
        remedy="Write both, 4 ft radius, curves in 90 deg; or the chord as the length and the rise"
        " or the radius behind it: curves in 9 in, curves in radius 4 ft.",
        why="An arc follows from its radius and its angle, from its chord and its rise, or from its"
        " chord and its radius.",
        example=JOB_TO_ROOM + "  N: 40 in, left=butt, right=butt, curves in 90 deg",
        needs=(Whole.LINE,),
    ),
    Page(
        code="T298",
        title="more than half a circle",
        message="no wall curves so: its rise is half of its chord at most, and its angle 180°",
        remedy="Measure it again, or write such a wall as two runs.",
        why="A chord is twice as long as the radius at most. Past half a circle it grows shorter"
        " again, so that one chord has two arcs.",
        example=JOB_TO_ROOM + "  N: 40 in, left=butt, right=butt, curves in 30 in",
    ),
    Page(
        code="T448",
        title="a curve that climbs",
        message="run {run} curves and climbs, which bends trim in two ways",
        remedy="Make a template on the stair itself; leave this run bare for the survey.",
        why="Trim round a curved stair is a screw, and is glued up of thin strips on the stair or a"
        " form. No length and no kerf that trimlang knows makes it.",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=plumb, right=plumb, rising right 36 deg, curves in 4 in",
    ),
    Page(
        code="T449",
        title="crown on a wall that curves",
        message="run {run} curves, and trim “{trim}” is crown",
        remedy="Order it made for the radius, and leave it off here: no {trim}",
        why="Crown leans, so that a bend would twist it: neither kerfs nor a flexible copy of a"
        " straight one lie against both wall and ceiling.",
        example="trim crown: 11/16 in thick, 3 5/8 in wide, spring 38 deg\nstock crown: 12 ft at"
        " 28.80\n"
        'room "Study", trim crown, open walk\n'
        "  N: 40 in, left=butt, right=butt, curves in 4 in",
    ),
    Page(
        code="T450",
        title="a bend too tight for kerfs",
        message="{trim} cannot be kerfed to bend round run {run}, with {left} left at its face",
        remedy="Use flexible trim (trim {trim}: …, flexible) or a thinner one{other}; or leave it"
        " off there: no {trim}.",
        why="Between two kerfs there must be as much wood as a kerf takes, and some thickness must"
        " be left to kerf.",
        example=JOB_TO_ROOM + "  N: 2 in, left=butt, right=butt, curves in 1 in",
    ),
)
