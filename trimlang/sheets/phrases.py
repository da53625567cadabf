"""What the trade calls each joint, edge and reason, ready for a sheet."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.joinery.piece import Cut, Lean, Piece
from trimlang.sheets.pen import Pen
from trimlang.sheets.words import N_, Words
from trimlang.survey.job import Fit, Joint
from trimlang.survey.settings import Direction

JOINTS: Final = {
    Joint.IN_CORNER: N_("inside corner"),
    Joint.OUT_CORNER: N_("outside corner"),
    Joint.BUTT: N_("butt"),
    Joint.RETURN: N_("return"),
    Joint.SPLICE: N_("scarf"),
    Joint.OPEN: N_("open end"),
}

ROWS: Final = {
    "out-corner": N_("an outside corner: a long piece can be shaved, a short one cannot be mended"),
    "open": N_("a free end"),
    "return": N_("a return"),
    "cope": N_("a coped end"),
    "splice": N_("a scarf"),
    "in-corner": N_("between walls: must slip in"),
    "butt": N_("between stops: must slip in"),
}

DIRECTIONS: Final = {
    Direction.UP: N_("up"),
    Direction.DOWN: N_("down"),
    Direction.NEAREST: N_("to the nearest mark"),
}


SUPPLIES: Final = {"nails": N_("nails"), "caulk": N_("caulk"), "paint": N_("paint")}
"""What else there is to buy, by the names that the takeoff gives it."""


def joint_name(cut: Cut, words: Words) -> str:
    """Name an end: ``inside corner, coped``."""
    name = words(JOINTS[cut.joint])
    if cut.joint is Joint.IN_CORNER and cut.fit is Fit.COPED:
        return words("{joint}, coped", joint=name)
    if cut.joint is Joint.IN_CORNER and cut.fit is Fit.SQUARE:
        return words("{joint}, square in", joint=name)
    return name


def setting(cut: Cut, pen: Pen) -> str:
    """Say how the saw is set: ``44.5° right`` or ``square``."""
    if cut.lean is Lean.UPRIGHT:
        return pen.words("square")
    side = pen.words("right") if cut.lean is Lean.RIGHT else pen.words("left")
    return f"{pen.angle(cut.setting)} {side}"


def long_point(cut: Cut, words: Words) -> str:
    """Say on which edge the end's long point lies."""
    if cut.long_edge == "back":
        return words("long point at the back")
    if cut.long_edge == "face":
        return words("long point at the face")
    return words("both edges the same")


def exact_angle(cut: Cut, pen: Pen) -> str:
    """Say the exact angle where the saw cannot read it, and the gap that this leaves."""
    if cut.exact == cut.setting:
        return ""
    return pen.words(
        "exact {angle}; so set, opens {gap} at the face",
        angle=pen.angle(cut.exact),
        gap=pen.small(cut.gap),
    )


def measured(piece: Piece, words: Words) -> str:
    """Say from where to where the number is measured."""
    left, right = piece.left.long_edge, piece.right.long_edge
    if left == right == "both":
        return words("end to end, both ends square")
    if "both" not in (left, right):
        if left == right == "back":
            return words("long point to long point, on the back edge")
        if left == right:
            return words("long point to long point, on the face edge")
        if left == "back":
            return words("overall: long point at the back left to long point at the face right")
        return words("overall: long point at the face left to long point at the back right")
    if "back" in (left, right):
        return words("square end to long point, on the back edge")
    return words("square end to long point, on the face edge")


def edges(piece: Piece, pen: Pen) -> str:
    """Give both edges' lengths, to check the piece by."""
    if piece.back == piece.face == piece.length:
        return ""
    return pen.words(
        "back {back}, face {face}", back=pen.length(piece.back), face=pen.length(piece.face)
    )


def rounding(piece: Piece, pen: Pen) -> str:
    """Say how the length was rounded, by how much and why."""
    by = piece.rounding.by
    why = pen.words(ROWS[piece.rounding.row])
    if not by:
        return pen.words("not rounded: exactly on a mark")
    return pen.words(
        "rounded {direction} by {by}: {why}",
        direction=pen.words("up") if by > 0 else pen.words("down"),
        by=pen.small(Fraction(by)),
        why=why,
    )
