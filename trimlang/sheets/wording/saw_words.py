"""Says how a piece lies at the saw and how the saw is set, from the table in ``at_the_saw``."""

from __future__ import annotations

from collections.abc import Collection
from typing import Final

from trimlang.joinery.at_the_saw import LAYS, Against, AtSaw, Facing, Hand, Pose, lie_alike, nested
from trimlang.joinery.piece import Piece
from trimlang.language.facts import Side
from trimlang.marking import N_
from trimlang.sheets.wording.catalogue import Words
from trimlang.sheets.wording.quantities import Pen

LAYS_IN_WORDS: Final = {
    Pose(Facing.YOU, Against.BACK): N_("standing, face to you, back to the fence"),
    Pose(Facing.UP, Against.TOP): N_("flat, face up, top edge to the fence"),
    Pose(Facing.UP, Against.BOTTOM, turned=True): N_("flat, face up, bottom edge to the fence"),
    Pose(Facing.UP, Against.OUTER): N_("flat, face up, outer edge to the fence"),
    Pose(Facing.UP, Against.CEILING): N_("flat, face up, ceiling edge to the fence"),
    Pose(Facing.UP, Against.WALL, turned=True): N_("flat, face up, wall edge to the fence"),
    Pose(Facing.YOU, Against.WALL, turned=True): N_(
        "nested upside down, wall edge to the fence, ceiling edge on the table"
    ),
}

PIECE: Final = {
    Hand.LEFT: N_("piece left of the blade"),
    Hand.RIGHT: N_("piece right of the blade"),
}

AT_FENCE: Final = {
    Against.BACK: N_("back"),
    Against.TOP: N_("top edge"),
    Against.BOTTOM: N_("bottom edge"),
    Against.OUTER: N_("outer edge"),
    Against.CEILING: N_("ceiling edge"),
    Against.WALL: N_("wall edge"),
}

HANDS: Final = {
    False: N_("left end at left"),
    True: N_("left end at right"),
}


def lay(at: AtSaw, words: Words) -> str:
    """Say how a piece lies for a cut: ``flat, face up, wall edge to the fence``."""
    return words(LAYS_IN_WORDS[at.pose])


def hand(at: AtSaw, words: Words) -> str:
    """Say on which side of you the piece's left end is."""
    return words(HANDS[at.pose.turned])


def lay_and_side(at: AtSaw, words: Words) -> str:
    """Say how a piece lies, and on which side of the blade; empty for a square cut."""
    return "" if at.is_square else f"{lay(at, words)}, {side(at, words)}"


def side(at: AtSaw, words: Words) -> str:
    """Say on which side of the blade the piece lies."""
    return words(PIECE[at.piece])


def setting(at: AtSaw, pen: Pen) -> str:
    """Say how the saw is set: ``44.5° right``, ``mitre 31.5° left, bevel 34° left``."""
    return ", ".join(setting_lines(at, pen))


def setting_lines(at: AtSaw, pen: Pen) -> tuple[str, ...]:
    """Say how the saw is set: a line for the table, and one for the blade if it is tilted."""
    words = pen.words
    if at.is_square:
        return (words("square"),)
    # A table that stands at 0 has no side to be swung to.
    swing = f"{pen.angle(at.mitre)} {words(at.swing)}" if at.swing else pen.angle(at.mitre)
    if at.tilt is None:
        return (swing,)
    tilt = f"{pen.angle(at.bevel)} {words(at.tilt)}"
    return (words("mitre {angle}", angle=swing), words("bevel {angle}", angle=tilt))


def at_fence(at: AtSaw, words: Words) -> str:
    """Name what of a piece lies at the fence; empty for a square cut."""
    return "" if at.is_square else words(AT_FENCE[at.pose.fence])


def lay_for_all(ends: Collection[AtSaw], words: Words) -> str:
    """Say how pieces lie for all their cuts; empty where they do not lie alike for all."""
    # Half a truth over a table would set the saw wrongly for the other half.
    if not lie_alike(ends):
        return ""
    mitred = next((one for one in ends if not one.is_square), None)
    return "" if mitred is None else f"{lay(mitred, words)}, {hand(mitred, words)}"


def drawn_above(ends: Collection[AtSaw], words: Words) -> str:
    """Name the edge at the top of sticks' bars, the far one from you; empty where they differ."""
    found = {LAYS[one.way].poses[0].fence for one in ends if not one.is_square}
    return words(AT_FENCE[found.pop()]) if len(found) == 1 else ""


def nested_ends(piece: Piece, pen: Pen) -> str:
    """Say how a crown is cut nested, both ends; empty where no end is mitred."""
    words = pen.words
    mitred = [
        (words(name), one)
        for name, one in (
            (N_("left end"), nested(piece.left, Side.LEFT)),
            (N_("right end"), nested(piece.right, Side.RIGHT)),
        )
        if one is not None
    ]
    if not mitred:
        return ""
    # Nested, crown stands against the fence as it hangs, upside down, for both ends alike.
    at = mitred[0][1]
    return words(
        "{lies}, {hand}, no bevel: {settings}",
        lies=lay(at, words),
        hand=hand(at, words),
        settings=", ".join(f"{name} {setting(one, pen)}" for name, one in mitred),
    )
