"""Checks how each wall meets the next, going round the room to the right.

The right end of one run and the left end of the next are the two sides of one joint.  They must
agree, and a measured angle or a cope that is stated at one side holds for both.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from trimlang.diagnostics import Span
from trimlang.diagnostics.place import place
from trimlang.joint_row import Fit
from trimlang.language.end_facts import Side
from trimlang.language.tree import GapKind
from trimlang.survey.job import End, Gap, Room, Run, Stretch
from trimlang.survey.measures import Findings
from trimlang.survey.wall_blocks import one_block


def meet(room: Room, findings: Findings) -> Room:
    """Return the room with both sides of each joint in agreement; report those that are not."""
    walk = list(room.walk)
    last = len(walk) - 1
    for index in range(len(walk)):
        # In a room that closes, the last wall meets the first.
        following = index + 1 if index < last else 0
        if following == index:
            continue
        closing = index == last
        if closing and room.open_walk:
            continue
        walk[index], walk[following] = _meet(
            walk[index], walk[following], findings, closing=closing
        )
    return replace(room, walk=tuple(walk))


def _say_unmet(run: Run, end: End, neighbour: Stretch, side: Side, findings: Findings) -> None:
    """Report a run's corner without a mate; ``side`` is where the neighbour should have it."""
    kind = neighbour.kind if isinstance(neighbour, Gap) else GapKind.BARE
    gap = "the opening" if kind is GapKind.OPENING else "the bare wall"
    findings.say(
        "T304",
        end.span,
        run=run.label,
        joint=end.joint,
        gap=gap,
        kind=kind,
        side=side,
        there=neighbour.span,
    )


def _meet(
    one: Stretch, other: Stretch, findings: Findings, *, closing: bool
) -> tuple[Stretch, Stretch]:
    right, left = one.right, other.left
    if _lost(one) or _lost(other):
        return one, other
    if right is None or left is None:
        if isinstance(one, Run) and right is not None and right.joint.is_corner:
            _say_unmet(one, right, other, Side.LEFT, findings)
        if isinstance(other, Run) and left is not None and left.joint.is_corner:
            _say_unmet(other, left, one, Side.RIGHT, findings)
        return one, other
    if right.joint is not left.joint:
        if (right.joint.stops or left.joint.stops) and (
            isinstance(one, Gap) or isinstance(other, Gap)
        ):
            return one, other  # the corner is the opening's, the run stops square before it
        _disagree(one, right, other, left, findings, closing=closing)
        return one, other
    if not right.joint.is_corner:
        return one, other
    # From here on both sides are the same corner, and each must know all that either of them says:
    # a piece is cut by its own end alone.
    corner, block = _corner(one, right, other, left, findings), one_block(right, left, findings)
    # An angle or a rounded corner that one side states holds for both sides of the joint.
    error = right.corner_error if right.corner is not None else left.corner_error
    said = right if right.corner is not None else left
    right, left = (
        replace(
            end,
            corner=corner,
            corner_error=error,
            bullnose=right.bullnose or left.bullnose,
            two_pieces=right.two_pieces or left.two_pieces,
            wider_below=said.wider_below,
            block=block,
            over_scraps=end.over_scraps and block is None,
            mitred=right.mitred or left.mitred,
        )
        for end in (right, left)
    )
    if right.joint.is_inside and isinstance(one, Run) and isinstance(other, Run):
        right, left = _fit(right, left, findings)
    return replace(one, right=right), replace(other, left=left)


def _disagree(
    one: Stretch, right: End, other: Stretch, left: End, findings: Findings, *, closing: bool
) -> None:
    facts = {
        "one": _name(one),
        "right": right.joint,
        "other": _name(other),
        "left": left.joint,
        "line": place(right.span, left.span),
        "here": _written(other, left),
        "there": _written(one, right),
    }
    joints = (right.joint, left.joint)
    if all(joint.is_corner for joint in joints) or any(joint.goes_on for joint in joints):
        findings.say("T301", left.span, **facts)
    elif not closing and (
        (right.joint.is_corner and isinstance(one, Run))
        or (left.joint.is_corner and isinstance(other, Run))
    ):
        # Where an opening or bare wall turns the corner, a run may well butt against it.
        findings.say("T302", left.span, **facts)


def _written(stretch: Stretch, end: End) -> Span | None:
    """Return where an end is written; one that only its room gives is marked at the wall's name."""
    return None if end.span == stretch.span else end.span


def _corner(
    one: Stretch, right: End, other: Stretch, left: End, findings: Findings
) -> Fraction | None:
    if right.corner is None or left.corner is None:
        return right.corner if left.corner is None else left.corner
    if right.corner != left.corner:
        findings.say(
            "T303",
            left.span,
            one=_name(one),
            other=_name(other),
            right=float(right.corner),
            left=float(left.corner),
            there=right.span,
            joint=right.joint.word if right.fit is Fit.MITRED and right.block is None else "",
        )
    return right.corner


def _fit(right: End, left: End, findings: Findings) -> tuple[End, End]:
    """Return a coped corner's ends with one side coped; its mate runs square into the corner."""
    fits = (right.fit, left.fit)
    if right.mitred and Fit.COPED in fits:
        coped, mitred = (left, right) if left.fit is Fit.COPED else (right, left)
        findings.say("T491", coped.span, there=mitred.span)
        return replace(right, mitred=False), replace(left, mitred=False)
    if right.fit is Fit.COPED and left.fit is Fit.COPED:
        # Two copes leave a hole in the corner: one of the two profiles must be there to be met.
        findings.say("T305", left.span, there=right.span)
        return right, replace(left, fit=Fit.SQUARE)
    if right.fit is Fit.COPED:
        return right, replace(left, fit=Fit.SQUARE)
    if left.fit is Fit.COPED:
        return replace(right, fit=Fit.SQUARE), left
    return right, left


def _lost(stretch: Stretch) -> bool:
    return isinstance(stretch, Gap) and stretch.is_lost


def _name(stretch: Stretch) -> str:
    if isinstance(stretch, Gap):
        # As it stands in the file, since a carpenter looks for the word there.
        return stretch.called or f"the {stretch.kind}"
    return f"run {stretch.label}"
