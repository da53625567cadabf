"""The joinery pass: every run becomes the pieces that cover it."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from trimlang.diagnostics import Diagnostic
from trimlang.joinery.cuts import RETURN_MITRE, end_cut, growth, square_cut
from trimlang.joinery.piece import Cut, Kind, Lean, Piece
from trimlang.joinery.rounding import deciding_row, round_length
from trimlang.joinery.splices import split
from trimlang.lengths.tape import feet_text
from trimlang.survey.job import End, Fit, Job, Joint, Room, Run, Trim
from trimlang.survey.measures import Findings


def joinery(job: Job) -> tuple[tuple[Piece, ...], tuple[Diagnostic, ...]]:
    """Return every piece of the job, room by room along the walk, and what cannot be cut."""
    findings = Findings()
    pieces: list[Piece] = []
    for room in job.rooms:
        for run in room.runs:
            for name in run.trims:
                pieces.extend(_run_pieces(job, room, run, job.trim(name), findings))
    return tuple(pieces), tuple(findings.found)


def longest_stick(trim: Trim, squares_off: Fraction) -> Fraction | None:
    """Return the longest piece that bought stock (else what is on hand) can give."""
    lengths = [offer.length for offer in trim.offers] or [rest.length for rest in trim.rests]
    return max(lengths) - 2 * squares_off if lengths else None


def _run_pieces(job: Job, room: Room, run: Run, trim: Trim, findings: Findings) -> list[Piece]:
    settings = room.settings
    behind = job.trim(trim.in_front_of) if trim.in_front_of else None
    exact = (
        run.length
        + growth(run.left, "left", trim, behind, settings)
        + growth(run.right, "right", trim, behind, settings)
    )
    row = deciding_row(run.left, run.right, settings)
    length, rounding = round_length(exact, row, settings)
    name = f"{room.tag}-{run.label}-{trim.name}"
    whole = Piece(
        name,
        Kind.RUN,
        room.name,
        run.label,
        trim.name,
        length,
        run.length,
        end_cut(run.left, "left", trim, settings),
        end_cut(run.right, "right", trim, settings),
        rounding,
        over_scraps=run.left.over_scraps or run.right.over_scraps,
        note=run.note,
        unit=settings.unit,
    )
    if length <= 0 or whole.back < 0 or whole.face < 0:
        findings.say("T402", run.span, run=run.label, trim=trim.name)
        return []
    pieces = [whole]
    longest = longest_stick(trim, job.settings.squares_off)
    if longest is not None and (length > longest or run.must_splice):
        pieces = _spliced(whole, run, trim, room, longest, findings)
    for side, end in (("left", run.left), ("right", run.right)):
        if end.joint is Joint.RETURN:
            pieces.append(_return_piece(whole, side, trim, room))
    return pieces


def _spliced(
    whole: Piece, run: Run, trim: Trim, room: Room, longest: Fraction, findings: Findings
) -> list[Piece]:
    settings = room.settings
    if not run.may_splice:
        findings.say(
            "T401",
            run.span,
            run=run.label,
            need=feet_text(whole.length, settings.unit),
            trim=trim.name,
            longest=feet_text(longest, settings.unit),
        )
        return [whole]
    if trim.thickness is None:
        findings.say("T211", run.span, joint="splice", run=f"run {run.label}", trim=trim.name)
        return [whole]
    scarf = End(Joint.SPLICE, None, Fit.MITRED, over_scraps=False, span=run.span)
    lap_over = end_cut(scarf, "right", trim, settings)
    lap_under = end_cut(scarf, "left", trim, settings)
    cut = split(whole.rounding.exact, longest, lap_over.inset, settings, force=run.must_splice)
    if cut is None:
        findings.say("T403", run.span, run=run.label, trim=trim.name)
        return [whole]
    count = len(cut)
    pieces: list[Piece] = []
    for number, exact in enumerate(cut, start=1):
        length, rounding = exact, replace(whole.rounding, row="splice", exact=exact, by=Fraction(0))
        if number == count:
            length, rounding = round_length(exact, whole.rounding.row, settings)
        pieces.append(
            replace(
                whole,
                id=f"{whole.id}-{chr(ord('a') + number - 1)}"
                if count <= 26
                else f"{whole.id}-{number}",
                length=length,
                left=whole.left if number == 1 else lap_under,
                right=whole.right if number == count else lap_over,
                rounding=rounding,
                part=number,
                parts=count,
            )
        )
    return pieces


def _return_piece(whole: Piece, side: str, trim: Trim, room: Room) -> Piece:
    """Return the small piece that turns the profile back to the wall.

    Its long point is the trim's thickness: mitred where it meets the run,
    square where it meets the wall.
    """
    thickness = trim.thickness or Fraction(0)
    length, rounding = round_length(thickness, "return", room.settings)
    mitred: Cut = replace(
        whole.left if side == "left" else whole.right,
        exact=RETURN_MITRE,
        inset=length,
        long_edge="face",
        lean=Lean.RIGHT if side == "left" else Lean.LEFT,
    )
    square = square_cut()
    return replace(
        whole,
        id=f"{whole.id}-{side}-return",
        kind=Kind.RETURN,
        length=length,
        wall=thickness,
        left=square if side == "left" else mitred,
        right=mitred if side == "left" else square,
        rounding=rounding,
        part=1,
        parts=1,
        note=f"closes the {side} end of {whole.id}; glue, do not nail",
    )
