"""T451 to T456, T479 to T481, T485: crown below ceilings that slope, and at beams."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.severity import Severity

_CROWN: Final = (
    "trim crown: 11/16 in thick, 3 5/8 in wide, spring 38 deg\nstock crown: 16 ft at 31.00\n"
    'room "Attic", trim crown, open walk\n'
)

CEILING_PAGES: Final = (
    Page(
        code="T451",
        title="a crown that would hang in two ways",
        message="{trim} on run {run} would hang {left} from the wall to turn its left corner and"
        " {right} to turn its right one",
        remedy="Say how the ceiling goes along both next walls, if one of them is taken to be"
        " level; or let the crown hang at its own spring and turn the corner of the wall that"
        " climbs level (transition left or transition right on that wall); or put a block in one"
        " of the corners:"
        " in-corner(block corbel stops {trim}).",
        why="Crown keeps its angle to the ceiling, so the corner tells how it leans to the wall:"
        " two ceilings along one wall ask for two leans. Planed for one corner, the profile does"
        " not meet its mate in the other, whatever the mitre.",
        example=_CROWN
        + "  N: 8 ft, left=butt, right=in-corner, ceiling rising right 20 deg\n"
        + "  E: 8 ft, left=in-corner, right=in-corner\n"
        + "  S: 8 ft, left=in-corner, right=butt, ceiling rising right 20 deg",
    ),
    Page(
        code="T452",
        title="a crown that no wall holds",
        message="{trim} on run {run} would lean past its wall: the ceiling slopes more across it"
        " than the crown springs",
        remedy="Leave it off that wall (no {trim}), or take one with a larger spring angle.",
        why="Along the wall below a slope crown leans to the wall by its spring less the slope;"
        " where that is nothing, its back lies flat on the wall and its ceiling edge in the air.",
        example=_CROWN
        + "  N: 8 ft, left=butt, right=in-corner, ceiling rising left 40 deg\n"
        + "  E: 8 ft, left=in-corner, right=butt",
    ),
    Page(
        code="T453",
        title="crown that hangs below its beam",
        message="{trim} hangs {lower} lower than the beam that it meets",
        remedy="Let the foot of its end return by hand, box the beam deeper, or take a smaller"
        " crown.",
        why="A beam covers the end of a crown only as far down as it hangs itself; below it the cut"
        " end would be seen.",
        example=_CROWN
        + "  N: 8 ft, left=butt, right=butt\n  beam 6 in, 2 in deep\n"
        + "  N2: 8 ft, left=butt, right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T454",
        title="no crown to turn",
        message="{trim} is no crown, and goes on below a beam",
        remedy="Leave it out, or name the crown: turns crown.",
        why="A beam is in the way of what touches the ceiling, and of nothing else.",
        example="trim base: 9/16 in thick, 5 1/4 in tall\nstock base: 12 ft at 17.40\n"
        'room "Attic", trim base, open walk\n'
        "  N: 8 ft, left=butt, right=butt\n  beam 6 in, turns base\n"
        "  N2: 8 ft, left=butt, right=butt",
    ),
    Page(
        code="T456",
        title="said of a beam, and there is none",
        message="only a beam hangs down from the ceiling, and only a beam turns crown",
        remedy="Begin the line with the word: beam 6 in, 8 in deep; or leave this part out.",
        why="Crown goes on over doors, and round a chimney breast by walls of its own.",
        example=_CROWN
        + "  N: 8 ft, left=butt, right=butt\n  door 32 in, 8 in deep\n"
        + "  N2: 8 ft, left=butt, right=butt",
    ),
    Page(
        code="T455",
        title="a return below a slope",
        message="{trim} on run {run} climbs with its ceiling, and cannot return to the wall there",
        remedy="End it square against a block or a beam: left=butt or right=butt.",
        why="A return stands square to its crown and turns it to the wall; from crown that climbs"
        " it would lean out of the wall's plane.",
        example=_CROWN + "  N: 8 ft, left=butt, right=return, ceiling rising right 20 deg",
    ),
    Page(
        code="T485",
        title="a bead where crown turns level",
        message="{trim} runs along the ceiling edge of {crown}, and cannot turn the corner at run"
        " {run}",
        remedy="Write “no {trim}” on that run, and end it there by hand.",
        why="A bead is square to the ceiling as its crown meets it. Where a level piece goes into a"
        " corner, the crown behind one bead follows the ceiling and that behind the other hangs"
        " level: the beads are turned one against the other, and no mitre closes. At a wall that is"
        " not square to its own the same is so of what it would stop at.",
        example="trim bead: 1/4 in thick, 1/2 in tall, in front of crown\n"
        "stock bead: 12 ft at 4.20\n"
        + _CROWN
        + "  N: 8 ft, left=butt, right=in-corner, trim crown, bead\n"
        + "  E: 8 ft, left=in-corner, right=butt, trim crown, bead, ceiling rising right 20 deg,"
        " transition left",
    ),
    Page(
        code="T479",
        title="a transition piece where nothing climbs to a corner",
        message="run {run} has no transition piece at its {side}: it takes a ceiling that rises"
        " along the run, and an inside corner there",
        remedy="Say how the ceiling rises along the run (ceiling rising right 4 in over 12 in), or"
        " leave the transition out.",
        why="A transition piece joins crown that climbs with its ceiling to crown that hangs level"
        " round an inside corner.",
        example=_CROWN + "  N: 8 ft, left=in-corner, right=butt, transition left",
    ),
    Page(
        code="T480",
        title="a transition piece that meets no level crown",
        message="the {side} end of {trim} on run {run} has a transition piece, and no level {trim}"
        " goes on behind it",
        remedy="Leave the transition out where the next wall's ceiling slopes along it too, or has"
        " no such crown.",
        why="The piece hangs level: it closes with crown that does so too.",
        example=_CROWN
        + "  N: 8 ft, left=butt, right=in-corner, ceiling rising right 20 deg, transition right\n"
        + "  E: 8 ft, left=in-corner, right=butt, ceiling rising right 10 deg",
    ),
    Page(
        code="T481",
        title="a transition piece that would have no wall edge",
        message="below the ceiling of run {run}, which falls so steeply from its {side} corner, no"
        " level piece of {trim} touches it",
        remedy="Leave the transition out, or put a block in the corner:"
        " in-corner(block corbel stops {trim}).",
        why="A ceiling that falls from the corner cuts the piece off below; with a steep one"
        " nothing is left of it.",
        example=_CROWN.replace("38 deg", "22 deg")
        + "  N: 8 ft, left=butt, right=in-corner, ceiling rising right 50 deg, transition right\n"
        + "  E: 8 ft, left=in-corner, right=butt",
    ),
)
