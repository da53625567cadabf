"""T404 and on: a joint that the saw, the stock or the wall does not make easy."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import JOB_TO_ROOM, STOCK, TRIM
from trimlang.diagnostics.severity import Severity

CUTTING_PAGES: Final = (
    Page(
        code="T404",
        title="beyond the saw",
        message="the {side} end of run {run} wants a mitre of {mitre}; the saw swings to {reach}",
        remedy="{instead} the piece to a wedge, or cut it by hand{further}",
        why="A sharp corner's mitre is further from square than a common mitre saw turns (about"
        " 50°, from memory; the saw's manual decides).",
        example=JOB_TO_ROOM + "  N: 40 in, left=in-corner(60 deg), right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T482",
        title="a frame beyond the saw",
        message="the {part} wants a mitre of {mitre}; the saw swings to {reach}",
        remedy="Clamp the piece to a wedge, or cut it by hand{further}",
        why="Boxes on a stair are parallelograms: two of their mitres are sharper than 45° by half"
        " the slope.",
        example=JOB_TO_ROOM + "  N: 120 in, left=butt, right=butt, rising right 36 deg\n"
        "  boxes N: 2, 24 in tall, margin 3 1/2 in, trim base",
        severity=Severity.WARNING,
    ),
    Page(
        code="T405",
        title="a joint that stays open",
        message="the {side} end of run {run} ({trim}) wants {exact}; the saw reads {setting},"
        " which may leave {gap} open at the face",
        remedy="Set the saw between its marks and try on scraps, or allow a wider gap: corners:"
        " {joint} gap {wider}",
        why="A saw that reads in coarse steps cannot cut every angle; the joint's faces then stand"
        " apart at one edge. At an outside corner the steeper mark is told, which hides that at"
        " the back.",
        example="saw: reads to 5 deg\n"
        + JOB_TO_ROOM
        + "  N: 40 in, left=in-corner(95 deg), right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T406",
        title="no stud where a splice can be",
        message="no splice of run {run} ({trim}) can be laid on a stud; it is laid by the sticks'"
        " lengths",
        remedy="Check the first stud and their spacing (splices: studs every 16 in){shorter}.",
        why="A splice holds best where both pieces are nailed to a stud. Here every stud lies too"
        " near a corner, or further along than a stick reaches.",
        example="splices: studs every 160 in\n"
        + JOB_TO_ROOM
        + "  N: 16 ft, left=butt, right=butt, first stud 3 in",
        severity=Severity.WARNING,
    ),
    Page(
        code="T407",
        title="tops that do not line up",
        message="runs {one} and {other} lose unlike amounts to the floor: their tops would differ"
        " by {differ}",
        remedy="Scribe both by the larger gap, or set both to one level line.",
        why="An eighth of an inch at a joint's top edge is seen from across the room.",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=in-corner, floor gap 5/16 in\n"
        + "  E: 50 in, left=in-corner, right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T408",
        title="nails too short",
        message="a {nail} nail through {trim} and wallboard misses the plate by {short}",
        remedy="Take longer nails: nails: {longer} long",
        why="A nail that ends in the wallboard holds nothing.",
        example="nails: 1 in long\n" + JOB_TO_ROOM + "  N: 40 in, left=butt, right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T409",
        title="the floor hides the plate",
        message="the finished floor is as thick as the plate: no nail through {trim} can meet it",
        remedy="Check “nails: plate, floor”; else nail into the studs.",
        why="The plate shows above the finished floor by its thickness less the floor's.",
        example="nails: plate 1 1/2 in, floor 1 1/2 in\n"
        + JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T410",
        title="casing longer than any stick",
        message="casing: the {part} needs {need} of {trim}, and the longest stick gives {longest}",
        remedy="Look at the opening's height and width again, or list longer stock.",
        why="Casing is seen from near by and is not spliced.",
        example="trim case: 11/16 in thick, 2 1/4 in wide\nstock case: 7 ft at 6.10\n"
        + JOB_TO_ROOM
        + "  N: 40 in, left=butt, right=butt\n"
        + "  opening 32 in, casing case, height 96 in\n",
        severity=Severity.ERROR,
    ),
    Page(
        code="T411",
        title="two unlike crowns in one corner",
        message="{trim} of run {run} and {other} of run {there} meet in one corner,"
        " and are not one crown",
        remedy="Give both walls the same crown, or end each by itself: {trim} right=butt, and"
        " {other} left=butt on run {there} (return round an outside corner).",
        why="Neither a mitre nor a cope closes between crowns that stand out unlike.",
        example="trim crown: 11/16 in thick, 3 5/8 in wide, spring 38 deg\n"
        "stock crown: 12 ft at 28.80\n"
        "trim cove: 9/16 in thick, 2 1/4 in wide, spring 45 deg\nstock cove: 12 ft at 12.10\n"
        'room "Study", trim crown, open walk\n'
        "  N: 40 in, left=butt, right=in-corner\n"
        "  E: 50 in, trim cove, left=in-corner, right=butt",
        severity=Severity.ERROR,
    ),
    Page(
        code="T412",
        title="over scraps of which trim?",
        message="run {run} was taken over scraps, and gets {trim} and {other},"
        " which reach unlike far",
        remedy="Say of which: taken point of {trim}",
        why="The number reaches the long point of one of them, and the others are worked out from"
        " that. The run's first trim is taken where nothing is said.",
        example="trim rail: 3/4 in thick, 2 1/2 in tall\nstock rail: 12 ft at 14.00\n"
        + TRIM
        + STOCK
        + 'room "Study", trim base, rail, open walk\n'
        + "  N: 40 in, taken point, left=butt, right=out-corner",
        severity=Severity.WARNING,
    ),
    Page(
        code="T413",
        title="two unlike trims round an outside corner",
        message="{trim} of run {run} meets {other} of run {there} round an outside corner",
        remedy="Give both walls the same trim, end both in returns, or put a block between them:"
        " out-corner(block post). Where it is meant, say so: out-corner(mitre)",
        why="The mitre follows the two thicknesses, so that backs and faces meet; the taller one's"
        " top is sawn back and returned, and where profiles differ their edges do not meet.",
        example="trim tall: 3/4 in thick, 7 1/4 in tall\nstock tall: 12 ft at 21.00\n"
        + TRIM
        + STOCK
        + 'room "Study", trim base, open walk\n'
        + "  N: 40 in, left=butt, right=out-corner\n"
        + "  E: 50 in, trim tall, left=out-corner, right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T486",
        title="two trims of unlike height mitred in an inside corner",
        message="{trim} of run {run} and {other} of run {there} are not of one height, and are to"
        " be mitred in an inside corner",
        remedy="Leave “mitre” out: the taller one then runs through, and the other dies into it.",
        why="What the taller one has above the other would meet nothing: its cut face stays open"
        " towards the wall, in sight.",
        example="trim tall: 3/4 in thick, 7 1/4 in tall\nstock tall: 12 ft at 21.00\n"
        + TRIM
        + STOCK
        + 'room "Study", trim base, open walk\n'
        + "  N: 40 in, left=butt, right=in-corner(mitre)\n"
        + "  E: 50 in, trim tall, left=in-corner, right=butt",
    ),
    Page(
        code="T325",
        title="a taller trim that ends at a lower one's face",
        message="{trim} of run {run} is to end at the face of {other} of run {there}, and is"
        " taller: above that it stops short of the wall",
        remedy="Leave “cope” out: the taller one then runs through, and the other dies into it.",
        why="The lower one's thickness stays open above it, down to the wall.",
        example="trim tall: 3/4 in thick, 7 1/4 in tall\nstock tall: 12 ft at 21.00\n"
        + TRIM
        + STOCK
        + 'room "Study", trim base, open walk\n'
        + "  N: 40 in, trim tall, left=butt, right=in-corner(90 deg) cope\n"
        + "  E: 50 in, left=in-corner, right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T487",
        title="do two unlike trims meet in this corner?",
        message="{trim} of run {run} and {other} of run {there} come to one inside corner: do they"
        " stand at one height?",
        remedy="Where they do, say which one ends at the other's face: {trim} right=cope; or, if"
        " they are as tall, {trim} right=mitre. Where they do not, say {trim} right=butt.",
        why="Only the wall tells. At one height both cut up to the wall would overlap by the"
        " thickness of one of them. A wall's first trim is taken to be the one on the floor.",
        example="trim rail: 3/4 in thick, 2 1/2 in tall\nstock rail: 12 ft at 14.00\n"
        "trim old: 1/2 in thick, 2 1/4 in tall\nstock old: 12 ft at 14.00\n"
        + TRIM
        + STOCK
        + 'room "Study", trim base, open walk\n'
        + "  N: 40 in, trim base, rail, left=butt, right=in-corner(90 deg)\n"
        + "  E: 50 in, trim base, old, left=in-corner, right=butt",
    ),
    Page(
        code="T322",
        title="do two unlike trims meet round this outside corner?",
        message="{trim} of run {run} and {other} of run {there} come to one outside corner: do they"
        " stand at one height?",
        remedy="Where they do, say {trim} right=mitre: the mitre then follows both thicknesses."
        " Where they do not, say how each ends: {trim} right=return, and {other} left=return on run"
        " {there}.",
        why="Mitred as if each met itself, two unlike trims gape or overlap; at unlike heights"
        " nothing meets either mitre. A wall's first trim is taken to be the one on the floor.",
        example="trim rail: 3/4 in thick, 2 1/2 in tall\nstock rail: 12 ft at 14.00\n"
        "trim old: 1/2 in thick, 2 1/4 in tall\nstock old: 12 ft at 14.00\n"
        + TRIM
        + STOCK
        + 'room "Study", trim base, open walk\n'
        + "  N: 40 in, trim base, rail, left=butt, right=out-corner(90 deg)\n"
        + "  E: 50 in, trim base, old, left=out-corner, right=butt",
    ),
    Page(
        code="T321",
        title="two trims of unlike height that hang, round an outside corner",
        message="{trim} of run {run} and {other} of run {there} are not of one height, and are to"
        " be mitred round an outside corner above the floor",
        remedy="End each in a return ({trim} right=return; {other} left=return on run {there}), put"
        " a block between them, or give both walls the same trim.",
        why="On the floor the taller one's top is sawn back and returned. Above it nobody can tell"
        " whether their tops or their feet are in one line, so what stands over cannot be cut.",
        example="trim rail: 3/4 in thick, 2 1/2 in tall\nstock rail: 12 ft at 14.00\n"
        "trim old: 1/2 in thick, 2 1/4 in tall\nstock old: 12 ft at 14.00\n"
        + TRIM
        + STOCK
        + 'room "Study", trim base, open walk\n'
        + "  N: 40 in, trim base, rail, left=butt, right=out-corner(90 deg), rail right=mitre\n"
        + "  E: 50 in, trim base, old, left=out-corner, right=butt",
    ),
    Page(
        code="T323",
        title="a mitre that nothing meets",
        message="{trim} of run {run} is mitred round an outside corner, and nothing on run {there}"
        " meets it",
        remedy="{trim} {side}=return ends it in a return there, {trim} {side}=butt square at the"
        " corner; or give run {there} {trim} too.",
        why="A mitre without its mate shows its end, and reaches past the corner by its thickness.",
        example="trim shoe: 1/2 in thick, 3/4 in tall, in front of base\n"
        "stock shoe: 8 ft at 5.20\n"
        + TRIM
        + STOCK
        + 'room "Study", trim base, open walk\n'
        + "  N: 40 in, trim base, shoe, left=butt, right=out-corner(90 deg)\n"
        + "  E: 50 in, trim base, left=out-corner, right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T414",
        title="wider than the saw",
        message="{trim} cannot stand at the saw, and lying flat its longest cut is {long}; the saw"
        " crosscuts {most}",
        remedy="Cut it by hand or with a circular saw along a clamped fence, or say how far"
        " yours goes: saw: crosscuts {long}",
        why="What is too tall to stand at the fence lies flat, and a mitre across a face is longer"
        " than the face is wide. The saw would leave the last of it uncut.",
        example="saw: stands 5 1/2 in, crosscuts 8 in\n"
        "trim skirt: 3/4 in thick, 9 1/4 in tall\n"
        "stock skirt: 12 ft at 31.00\n"
        'room "Hall" as HA, trim skirt, open walk\n'
        "  N: 60 in, left=in-corner, right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T420",
        title="loose piece longer than any stick",
        message="“{piece}” needs {need} of {trim}, and the longest stick gives {longest}",
        remedy="List longer stock, or measure it as two pieces.",
        why="Nobody says where a loose piece could be joined.",
        example=JOB_TO_ROOM + "  N: 40 in, left=butt, right=butt\n" + '  piece "toe kick", 13 ft\n',
        severity=Severity.ERROR,
    ),
    Page(
        code="T421",
        title="a bullnose that this trim does not go round",
        message="{trim} of run {run} does not go round a rounded corner with a small piece",
        remedy="Leave the bullnose out: a plain mitre is cut then, with a hollow behind it.",
        why="A small piece between two mitres goes round where the same flat trim is on both walls."
        " A crown or an unlike neighbour would not meet it.",
        example="trim crown: 11/16 in thick, 3 5/8 in wide, spring 38 deg\n"
        "stock crown: 12 ft at 28.80\n"
        'room "Study", trim crown, open walk\n'
        "  N: 40 in, left=butt, right=out-corner(bullnose 3/4 in)\n"
        "  E: 50 in, left=out-corner, right=butt",
        severity=Severity.ERROR,
    ),
)
