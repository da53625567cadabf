"""What the trade calls each joint, edge and reason, ready for a sheet.

Left and right of a cut are one thing on every sheet: the way it runs from the
fence towards the operator.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.joinery.piece import Cut, Lean, MeasuredOn, Piece, PieceKind
from trimlang.joinery.remarks import SaidAngle, SaidLength, Value
from trimlang.joint_row import WHY_ROUNDED, Edge, Fit
from trimlang.joints import Joint
from trimlang.language.facts import Side
from trimlang.marking import N_
from trimlang.sheets.wording.catalogue import Words, unbroken
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.on_walls import WallName

LONG_POINTS: Final = {
    Edge.BACK: N_("long point at the back"),
    Edge.FACE: N_("long point at the face"),
    Edge.TOP: N_("long point at the top"),
    Edge.BOTTOM: N_("long point at the bottom"),
    Edge.OUTER: N_("long point at the outer edge"),
    Edge.BOTH: N_("both edges the same"),
}

CROWN_POINTS: Final = {
    Edge.BACK: N_("long point at the wall edge"),
    Edge.FACE: N_("long point at the ceiling edge"),
    Edge.BOTH: N_("both edges the same"),
}

BOTH_ENDS: Final = {
    MeasuredOn.BACK: N_("long point to long point, on the back edge"),
    MeasuredOn.FACE: N_("long point to long point, on the face edge"),
    MeasuredOn.TOP: N_("long point to long point, on the top edge"),
    MeasuredOn.BOTTOM: N_("long point to long point, on the bottom edge"),
    MeasuredOn.OUTER: N_("long point to long point, on the outer edge"),
}

ONE_END: Final = {
    MeasuredOn.BACK: N_("square end to long point, on the back edge"),
    MeasuredOn.FACE: N_("square end to long point, on the face edge"),
    MeasuredOn.TOP: N_("square end to long point, on the top edge"),
    MeasuredOn.BOTTOM: N_("square end to long point, on the bottom edge"),
    MeasuredOn.OUTER: N_("square end to long point, on the outer edge"),
}

EDGES: Final = {
    Edge.BACK: N_("back"),
    Edge.FACE: N_("face"),
    Edge.TOP: N_("top"),
    Edge.BOTTOM: N_("bottom"),
    Edge.OUTER: N_("outer edge"),
}


def all_notes(piece: Piece, pen: Pen) -> str:
    """Say all that is to be said of a piece besides its measures; empty for nothing."""
    remarks = [
        pen.words(one.text, **{name: _filled(value, pen) for name, value in one.values})
        for one in piece.remarks
    ]
    return "; ".join([*([piece.note] if piece.note else []), *remarks])


def wall_name(name: WallName, words: Words) -> str:
    """Return what people call a wall."""
    return words(name.text, **dict(name.words))


def _filled(value: Value, pen: Pen) -> str:
    match value:
        case SaidLength():
            return pen.noted(value.inches)
        case SaidAngle():
            return pen.worked_out_angle(value.degrees)
        case WallName():
            return wall_name(value, pen.words)
    return unbroken(value)


def joint_name(cut: Cut, words: Words) -> str:
    """Name a piece's end: ``inside corner, coped``."""
    return joint_words(cut.joint, cut.fit, words)


def end_name(piece: Piece, side: Side, words: Words) -> str:
    """Name a piece's end as ``joint_name`` does; a leg's are what it stands on and its top."""
    cut = side.of(piece.left, piece.right)
    if piece.kind is not PieceKind.LEG or not cut.joint.stops:
        return joint_name(cut, words)
    # A leg lies with its outer edge away from you, so that the left one has its foot at the left.
    return words(piece.foot if side is piece.at else N_("top"))


def joint_words(joint: Joint, fit: Fit, words: Words) -> str:
    """Name a joint and how its inside corner is fitted."""
    name = words(joint.row.name)
    if joint.is_inside and fit is Fit.COPED:
        return words("{joint}, coped", joint=name)
    if joint.is_inside and fit is Fit.SQUARE:
        return words("{joint}, square in", joint=name)
    return name


def runs_to(cut: Cut) -> str:
    """Tell to which side the cut runs from the fence towards you; empty for a square one."""
    return "" if cut.lean is Lean.UPRIGHT else cut.lean.value


def long_point(cut: Cut, words: Words) -> str:
    """Say on which edge the end's long point lies."""
    # Crown touches the wall with one edge and the ceiling with the other: “back” and “face” would
    # say nothing to whoever holds it.
    points = CROWN_POINTS if cut.crown is not None else LONG_POINTS
    point = words(points[cut.long_edge])
    if cut.through_edge is Edge.BOTH:
        return point
    return words("{point}, at the {edge}", point=point, edge=words(EDGES[cut.through_edge]))


def exact_angle(cut: Cut, pen: Pen) -> str:
    """Say the exact angle where the saw cannot read it, and the gap that this leaves."""
    if (cut.exact, cut.bevel) == (cut.setting, cut.bevel_setting):
        return ""
    angle = pen.turn(cut.exact - cut.setting)
    if cut.bevel:
        tilt = pen.turn(cut.bevel - cut.bevel_setting)
        turns = ((N_("mitre {angle}"), angle), (N_("bevel {angle}"), tilt))
        angle = ", ".join(pen.words(what, angle=turn) for what, turn in turns if turn)
    if not cut.gap:
        return pen.words("exact: {angle}", angle=angle)
    if cut.opens_at is Edge.BACK:
        return pen.words(
            "exact: {angle}; so set, closes at the face and opens {gap} at the back",
            angle=angle,
            gap=pen.small(cut.gap),
        )
    return pen.words(
        "exact: {angle}; so set, opens {gap} at the face", angle=angle, gap=pen.small(cut.gap)
    )


def measured(piece: Piece, words: Words) -> str:
    """Say from where to where the number is measured."""
    on = piece.measured_on
    if on is MeasuredOn.EITHER:
        return words("end to end, both ends square")
    if on is MeasuredOn.WALL:
        return words("along the wall edge, from end to end")
    if on is MeasuredOn.POINTS:
        return words(
            "overall: long point at the {left} left to long point at the {right} right",
            left=words(EDGES[piece.left.long_edge]),
            right=words(EDGES[piece.right.long_edge]),
        )
    # A square end has no long point; its whole edge is as long.
    one_sided = Edge.BOTH in (piece.left.long_edge, piece.right.long_edge)
    return words(ONE_END[on] if one_sided else BOTH_ENDS[on])


def edges(piece: Piece, pen: Pen) -> str:
    """Give the piece's other lengths, to check it by; not the one that the ticket shows large."""
    words = pen.words
    if piece.wall_edge is not None:
        return words(
            "ceiling edge {face}, takes {length} of the stick",
            face=pen.mark(piece.face),
            length=pen.mark(piece.length),
        )
    if any(cut.long_edge.is_across for cut in (piece.left, piece.right)):
        return words("short points {length}", length=pen.mark(piece.short_points))
    if piece.back == piece.face == piece.length:
        return ""
    if piece.back == piece.length:
        return words("face {face}", face=pen.mark(piece.face))
    if piece.face == piece.length:
        return words("back {back}", back=pen.mark(piece.back))
    return words("back {back}, face {face}", back=pen.mark(piece.back), face=pen.mark(piece.face))


def rounding(piece: Piece, pen: Pen, *, brief: bool = False) -> str:
    """Say which way the length was rounded and why; empty where it lies on a mark.

    It was rounded by less than a step of the tape; plan.json has by how much.  ``brief``
    leaves the why behind the colon out.
    """
    by = piece.rounding.by
    why = pen.words(WHY_ROUNDED[piece.rounding.row])
    if brief:
        why = why.partition(":")[0]
    if abs(by) < Fraction(1, 1000):  # less than is printed, and than any saw keeps
        return ""
    direction = pen.words("up") if by > 0 else pen.words("down")
    return pen.words("rounded {direction}: {why}", direction=direction, why=why)


def fit_lines(piece: Piece, pen: Pen) -> tuple[str, ...]:
    """Say what is to be done to the piece at the wall: scribing, packing out, tight corners."""
    words = pen.words
    lines: list[str] = []
    if piece.scribe:
        lines.append(words("scribe up to {depth} off the foot", depth=pen.mark(piece.scribe)))
    shim = pen.thickness(piece.shim) if piece.kind is PieceKind.RUN else ""
    if shim:
        lines.append(words("if the corner gaps, pack it out at the bottom by {shim}", shim=shim))
    # An angle worked out from a diagonal is only as good as the diagonal: the carpenter should know
    # how much a sixteenth there is worth.
    errors = [cut.corner_error for cut in (piece.left, piece.right) if cut.corner_error]
    if errors:
        lines.append(
            words(
                "corner taken by its diagonal: a sixteenth there is {angle}",
                angle=pen.worked_out_angle(max(errors)),
            )
        )
    return tuple(lines)
