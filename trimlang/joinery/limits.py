"""Warns of cuts that the saw cannot make, or cannot make closely enough."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from math import ceil
from typing import Final

from trimlang.diagnostics import Span
from trimlang.joinery.at_the_saw import Facing, both_ends, nested, saw_for
from trimlang.joinery.crown import drop, projection
from trimlang.joinery.piece import Cut, Piece
from trimlang.joint_row import Corner, Edge, Fit
from trimlang.joints import Joint
from trimlang.language.facts import Side
from trimlang.lengths.angles import MITRE_OF_SQUARE, cosine, degrees_text, scale_text
from trimlang.lengths.tape import (
    MM,
    NOTHING,
    SIXTEENTH,
    Unit,
    decimal_text,
    length_text,
    sixty_fourths,
)
from trimlang.settings.job_rows import MOST_REACH
from trimlang.settings.table import Settings
from trimlang.survey.job import End, Job, LoosePiece, Run, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.outline import depth_of

_USUAL_REACH: Final = 60
"""Degrees; how far saws swing that swing further than most (from memory)."""
_REACH_STEP: Final = 5


def check_reach(
    piece: Piece, run: Run | LoosePiece, settings: Settings, findings: Findings
) -> None:
    """Report the ends of a piece whose mitre is further from square than the saw can turn."""
    for side in Side:
        cut, end = side.of(piece.left, piece.right), side.of(run.left, run.right)
        if too_far := _out_of_reach(cut, settings):
            said = {"run": run.label, "instead": _instead(end, settings), **too_far}
            findings.say("T404", end.span, side=side, **said)


def check_reach_of_part(
    piece: Piece, part: str, span: Span, settings: Settings, findings: Findings
) -> None:
    """Report a part of a casing or a box whose mitre is further from square than the saw turns."""
    # One finding a part: its ends belong to one opening, and the steeper one tells enough.
    steep = max((piece.left, piece.right), key=lambda cut: cut.setting)
    if too_far := _out_of_reach(steep, settings):
        findings.say("T482", span, part=part, **too_far)


def _out_of_reach(cut: Cut, settings: Settings) -> dict[str, str]:
    """Return the angles that a finding names, nothing where the saw swings as far as the cut."""
    # The setting, not the exact angle: the saw is turned to the setting.
    if cut.setting <= settings.saw_reach:
        return {}
    wants = max(_USUAL_REACH, ceil(cut.setting / _REACH_STEP) * _REACH_STEP)
    # No setting says that a saw goes further than any does.
    reaches = f", or say how far yours goes: saw: reaches {wants} deg"
    return {
        "mitre": degrees_text(cut.exact),
        "reach": degrees_text(settings.saw_reach),
        "further": reaches if wants <= MOST_REACH else "",
    }


def _instead(end: End, settings: Settings) -> str:
    """Return what can be done first: by an angle that the saw cuts, or that may have been meant."""
    if end.joint.row.tapers:
        least = decimal_text(min(settings.saw_reach, MITRE_OF_SQUARE), 2)
        return f"Let it slope less: {end.joint}({least} deg). Else clamp"
    # Within the saw's reach, an angle so far from square is more likely a mitre than a corner.
    if end.joint.is_corner and end.corner is not None and end.corner <= settings.saw_reach:
        angle = decimal_text(end.corner, 2)
        return f"If the saw read that, write {end.joint}(mitre {angle} deg) there. Else clamp"
    return "Clamp"


def check_gaps(piece: Piece, run: Run | LoosePiece, settings: Settings, findings: Findings) -> None:
    """Report mitred corners that the saw's step leaves open further than the file allows.

    The doubt that measuring the corner leaves counts too.  A coped or square end has no mitre, so
    nothing opens there.
    """
    for side in Side:
        cut, end = side.of(piece.left, piece.right), side.of(run.left, run.right)
        shows = cut.joint.row.gap_shows
        if shows is None or cut.fit is not Fit.MITRED:
            continue
        # A joint that opens at the back is hidden; only the face is seen.
        gap = cut.doubt + (cut.gap if cut.opens_at is Edge.FACE else 0)
        if gap > (settings.gap_out if shows is Corner.OUTSIDE else settings.gap_in):
            step = MM if piece.unit is Unit.MM else SIXTEENTH
            findings.say(
                "T405",
                end.span,
                side=side,
                run=run.label,
                trim=piece.trim,
                gap=sixty_fourths(gap),
                joint=Joint.at(shows),
                wider=length_text(ceil(gap / step) * step, piece.unit),
                exact=degrees_text(cut.exact),
                setting=scale_text(cut.setting, settings.saw_step, piece.unit),
            )


def check_widths(job: Job, pieces: Iterable[Piece], findings: Findings) -> None:
    """Report each trim that is too tall to stand at the saw, and too wide to lie flat there.

    A mitre of m runs width ÷ cos m across a face.  Crown may be nested instead, where it is as
    tall as it hangs down the wall, and as wide as it stands out from it.
    """
    most = job.settings.saw_crosscuts
    # The file does not say how wide the saw cuts, so nothing can be too wide for it.
    if not most:
        return
    worst: dict[str, Fraction] = {}
    for piece in pieces:
        trim = job.trim(piece.trim)
        along = _across(piece, trim, job)
        # Crown too wide to lie flat may still be cut standing at the fence as it hangs.
        if along > most and (trim.spring is None or not _fits_nested(piece, trim, job)):
            worst[trim.name] = max(along, worst.get(trim.name, NOTHING))
    unit = job.settings.unit
    for trim in job.trims:
        if trim.name in worst:
            # Rounded up to a sixteenth, so that a saw which does this much does it surely.
            wide = ceil(worst[trim.name] / SIXTEENTH) * SIXTEENTH
            texts = {"long": wide, "most": most}
            said = {name: length_text(size, unit) for name, size in texts.items()}
            findings.say("T414", trim.span, trim=trim.name, **said)


def _across(piece: Piece, trim: Trim, job: Job) -> Fraction:
    """Return how far the longest cut of a piece runs from the fence towards you (inches)."""
    saw, wide = saw_for(trim, job.settings), trim.height or NOTHING
    flat = [
        wide / cosine(at.mitre)
        for at in both_ends(piece, saw)
        # Standing, a piece is cut through its thickness, which every saw reaches.
        if at.pose.facing is Facing.UP or not saw.stands
    ]
    return max(flat, default=NOTHING)


def _fits_nested(piece: Piece, trim: Trim, job: Job) -> bool:
    wide, spring = trim.height or NOTHING, trim.spring or NOTHING
    ends = (nested(piece.left, Side.LEFT), nested(piece.right, Side.RIGHT))
    # Nested it leans as it hangs, so the cut runs through its depth and not through its width.
    out = projection(wide, spring) / min((cosine(at.mitre) for at in ends if at), default=1)
    tall = job.settings.saw_stands
    return out <= job.settings.saw_crosscuts and (not tall or drop(wide, spring) <= tall)


def ask_of_scraps(job: Job, run: Run, trim: Trim, findings: Findings) -> None:
    """Ask which trim's scraps the tape ran over, where several on the wall differ in depth."""
    on_wall = [one for one in map(job.trim, run.trims) if one.in_front_of is None]
    # Asked once a run, and only where the answer changes a length.
    if trim.name != run.trims[0] or len({depth_of(one) for one in on_wall}) < 2:
        return
    for end in (run.left, run.right):
        if end.over_scraps and end.joint.is_outside and end.scraps_of is None:
            findings.say("T412", end.span, run=run.label, trim=trim.name, other=on_wall[-1].name)
            return
