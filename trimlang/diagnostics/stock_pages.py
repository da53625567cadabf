"""T465 and on: sticks as they are in the shop and at the yard."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.example_lines import OPEN_ROOM, RUN, STOCK, TRIM

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
        remedy="Give the sticks their prices, or say how many sticks: at least 10 sticks",
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
)
