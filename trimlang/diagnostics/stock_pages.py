"""T465 and on: sticks as they are in the shop and at the yard."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import JOB_TO_ROOM, OPEN_ROOM, RUN, STOCK, TRIM
from trimlang.diagnostics.severity import Severity

_ROOM: Final = OPEN_ROOM + RUN

STOCK_PAGES: Final = (
    Page(
        code="T465",
        title="a defect that is not on its stick",
        message="a {kind} from {start} to {end} from the {side} end is no stretch of a stick of"
        " {long}",
        remedy="Hook the tape on one end and read where it begins, then where it ends: {kind} 3 ft"
        " 2 in to 3 ft 4 in, or the same from the right end.",
        why="The plan lays pieces beside it, so both its edges must lie on the stick, the nearer"
        " one first.",
        example=TRIM + STOCK + "on-hand base: 12 ft, knot 40 in to 38 in\n" + _ROOM,
    ),
    Page(
        code="T466",
        title="one defect on several sticks",
        message="{count} sticks of {long} cannot all have their defect at one place",
        remedy="Say each stick by itself: on-hand base: 12 ft, knot 38 in to 40 in, 12 ft, split 0"
        " in to 6 in",
        why="Each stick is cut by its own defects; one that is in the wrong place would end up in"
        " a piece.",
        example=TRIM + STOCK + "on-hand base: 2 of 12 ft, knot 38 in to 40 in\n" + _ROOM,
    ),
    Page(
        code="T467",
        title="a stick of which nothing is sound",
        message="its defects leave nothing of this stick of {long}",
        remedy="Leave the stick out, or measure its defects again.",
        why="A defect covers the stick from end to end.",
        example=TRIM + STOCK + "on-hand base: 40 in, split 0 in to 40 in\n" + _ROOM,
    ),
    Page(
        code="T721",
        title="an offcut too short to hold",
        message="an offcut of {long} is too short to hold at the saw: nothing is cut from it",
        remedy="Leave it out; what is at least {least} long may be listed.",
        why="The hand that holds the wood keeps clear of the blade (common practice, no source; see"
        " the saw's manual).",
        example=TRIM + STOCK + "on-hand base: 5 in\n" + _ROOM,
        severity=Severity.WARNING,
    ),
    Page(
        code="T471",
        title="a pattern that runs down one leg",
        message="{trim} goes one way: up one leg of a casing or side of a box it runs up, in the"
        " other down",
        remedy="Have half of the legs made with the pattern the other way, or leave “one way” out"
        " where that is not seen.",
        why="The two legs have their outer edges at unlike hands, so a stick that is right for one"
        " stands on its head in the other.",
        example="trim case: 11/16 in thick, 2 1/4 in wide, one way\n"
        "stock case: 7 ft at 8.80\n"
        + TRIM
        + STOCK
        + OPEN_ROOM
        + RUN
        + '\n  opening 30 in, "bath", casing case, height 80 in\n  E: 40 in, right=butt',
        severity=Severity.WARNING,
    ),
    Page(
        code="T472",
        title="a corner that twists too far",
        message="a corner of {floor} at the floor and {top} at the trim's top differs by more than"
        " {most}°",
        remedy="Measure both again, the second just above the trim; further up it does not matter.",
        why="Within the height of a trim no wall twists so far; one of the two is misread.",
        example=JOB_TO_ROOM
        + "  N: 40 in, left=in-corner(91 deg at floor, 80 deg at top), right=butt",
    ),
    Page(
        code="T473",
        title="a corner out of plumb that stays open",
        message="run {run} ({trim}) meets a corner out of plumb by {twist}: a mitre for mid height"
        " opens {gap} at the face, at the {where}",
        remedy="Cope it where it is an inside corner, plane its back towards that end, or allow a"
        " wider gap: corners: in-corner gap 1/8 in",
        why="A cut is flat and the walls twist, so no one mitre and no bevel closes the joint from"
        " the floor to its top.",
        example="corners: in-corner gap 1/128 in\n"
        + JOB_TO_ROOM
        + "  N: 40 in, left=in-corner(92 deg at floor, 89 deg at top), right=butt",
        severity=Severity.WARNING,
    ),
    Page(
        code="T468",
        title="at least how many of what",
        message="at least {number} of what?",
        remedy="Write {number} sticks, or {number}.00 where it is money.",
        why="A yard may sell no fewer sticks than so many, or for no less money; a bare number"
        " could be either.",
        example=TRIM + STOCK + "stock base: at least 10\n" + _ROOM,
    ),
    Page(
        code="T469",
        title="a least amount without prices",
        message="without prices nothing comes to so much money",
        remedy="Give the sticks their prices, say how many sticks (at least 10 sticks), or leave it"
        " out.",
        why="The plan fills an order up until it costs so much, which it can't reckon here.",
        example=TRIM + "stock base: 12 ft, at least 150.00\n" + _ROOM,
    ),
    Page(
        code="T470",
        title="less than the least order",
        message="the yard sells no less of “{trim}” than that, but has {sticks} sticks worth"
        " {worth} in all",
        remedy="Check “at least” and “at most”, or add the lengths that it has besides.",
        why="With every length limited, no order could be large enough.",
        example=TRIM + "stock base: 12 ft at 17.40 at most 6, at least 10 sticks\n" + _ROOM,
    ),
    Page(
        code="T493",
        title="a least order of nobody",
        message="the least order “in all” is a supplier's, and “{trim}” names none",
        remedy='Say who sells it: stock {trim}: from "Hill Lumber", ... Or leave “in all” out where'
        " it is of this trim alone.",
        why="In all means all trims that one supplier sells, so the file must say which those are.",
        example=TRIM + "stock base: 12 ft at 17.40, at least 150.00 in all\n" + _ROOM,
    ),
    Page(
        code="T494",
        title="two least orders",
        message="the least order of “{supplier}” in all is another one at {line}",
        remedy="Say it once: one line of one of its trims holds for them all.",
        why="An order is filled up to one sum, and which of the two is right only the yard knows.",
        example=TRIM
        + "trim shoe: 1/2 in thick, 3/4 in tall\n"
        + 'stock base: from "Hill Lumber", 12 ft at 17.40, at least 150.00 in all\n'
        + 'stock shoe: from "Hill Lumber", 8 ft at 5.20, at least 200.00 in all\n'
        + 'room "Study", trim base, shoe, open walk\n  N: 40 in, left=butt, right=butt\n',
    ),
    Page(
        code="T495",
        title="less than a supplier's least order",
        message="“{supplier}” sells no less in all, and has not so much of these trims",
        remedy="Check “at least” and “at most”, or add the lengths that it has besides.",
        why="The order is filled up with more sticks of the supplier's trims, and all are limited.",
        example=TRIM
        + 'stock base: from "Hill Lumber", 12 ft at 17.40 at most 6, at least 150.00 in all\n'
        + _ROOM,
    ),
)
