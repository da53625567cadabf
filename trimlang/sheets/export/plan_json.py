"""The finished job as data: ``plan.json``."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from msgspec import UNSET, UnsetType

from trimlang.compiler import Result
from trimlang.diagnostics import Diagnostic
from trimlang.joinery.piece import Cut, Lean, Piece
from trimlang.lengths.tape import Unit, feet_text, length_text
from trimlang.money import money_text
from trimlang.planning.layout import Bought, CutStick
from trimlang.sheets.export.plan_file import (
    SCHEMA_VERSION,
    Money,
    PlanClosing,
    PlanCut,
    PlanFile,
    PlanFinding,
    PlanInHand,
    PlanOrderLine,
    PlanPiece,
    PlanResidual,
    PlanStatus,
    PlanStick,
    PlanSummary,
    write_plan,
)
from trimlang.sheets.wording.phrases import runs_to
from trimlang.site_log.progress_of_job import InHand, State
from trimlang.stock.problem import Status
from trimlang.survey.verdict import Closing
from trimlang.version import __version__


def source_text(stick: CutStick, unit: Unit) -> str:
    """Say where a stick comes from: ``12 ft, bought`` or ``61 1/2 in, on hand``."""
    batch = f", batch {stick.batch}" if stick.batch else ""
    if stick.on_hand:
        return f"{length_text(stick.length, unit)}, on hand{batch}"
    return f"{feet_text(stick.length, unit)}, bought{batch}"


def plan_status(result: Result) -> PlanStatus:
    """Return the status of the whole plan: the weakest of its trims'."""
    # From the weakest on: a plan is only proven where the plan of every trim is.
    # What is claimed of the whole must hold of every trim.
    for status in (Status.UNPROVEN, Status.GAP):
        if any(plan.status is status for plan in result.plans):
            return PlanStatus(status.value)
    return PlanStatus.PROVEN_LENGTH if result.job.by_length else PlanStatus.PROVEN


def least_words(result: Result) -> str:
    """Say what no plan costs less than; where joints are free, only of these pieces."""
    pieces = " of these pieces" if any(splice.could_differ for splice in result.splices) else ""
    # Without prices nothing costs anything: the sticks are as few and short as they can be.
    less, why = (
        ("does with less", "; no stick has a price") if result.job.by_length else ("costs less", "")
    )
    bound = result.job.cost_text(result.bound)
    return f"{plan_status(result)}; no plan{pieces} {less} than {bound}{why}"


def plan_values(result: Result) -> PlanFile:
    """Return the result as the values of ``plan.json``."""
    unit = result.job.settings.unit
    stick_of = {
        place.piece: stick.id
        for plan in result.plans
        for stick in plan.sticks
        for place in stick.places
    }
    in_hand = () if result.progress is None else result.progress.in_hand
    return PlanFile(
        schema=SCHEMA_VERSION,
        trimlang=__version__,
        job=result.job.name,
        surveyed=result.job.surveyed,
        # Without prices the planner buys the least length.
        currency=Unit.INCH if result.job.by_length else result.job.currency,
        pieces=tuple(_piece(piece, stick_of.get(piece.id), result) for piece in result.pieces),
        sticks=tuple(_stick(stick, unit) for plan in result.plans for stick in plan.sticks),
        in_hand=tuple(_in_hand(one) for one in in_hand),
        order=tuple(_order(result)),
        diagnostics=tuple(_finding(finding) for finding in result.diagnostics),
        summary=PlanSummary(
            cost=_cost(result, result.cost),
            lower_bound=_cost(result, result.bound),
            spent=_cost(result, result.spent),
            to_buy=_cost(result, result.cost - result.spent),
            length_in=_length(result, result.cost),
            least_length_in=_length(result, result.bound),
            bought_in=_length(result, result.spent),
            to_buy_in=_length(result, result.cost - result.spent),
            status=plan_status(result),
            sticks=sum(len(plan.sticks) for plan in result.plans),
            pieces=len(result.pieces),
            survives_loss=bool(result.plans) and all(plan.survives_loss for plan in result.plans),
        ),
        closings=tuple(map(_closing, result.closings)),
    )


def plan_json(result: Result) -> str:
    """Return ``plan.json``'s text: the same result gives the same text."""
    return write_plan(plan_values(result))


def _piece(piece: Piece, stick: str | None, result: Result) -> PlanPiece:
    progress = result.progress
    return PlanPiece(
        id=piece.id,
        kind=piece.kind,
        room=piece.room,
        run=piece.run,
        trim=piece.trim,
        length_in=piece.to_mark,
        length_text=length_text(piece.to_mark, piece.unit),
        measured_on=piece.measured_on,
        stick_length_in=piece.length,
        exact_text=length_text(piece.rounding.exact, piece.unit),
        wall_in=piece.wall,
        rounded=piece.rounding.direction,
        part=piece.part,
        parts=piece.parts,
        left=_cut(piece.left),
        right=_cut(piece.right),
        mates=piece.mates,
        stick=stick,
        note=piece.all_notes or None,
        state=State.TO_CUT if progress is None else progress.state(piece.id),
        changed=progress is not None and piece.id in progress.changed,
    )


def _closing(closing: Closing) -> PlanClosing:
    return PlanClosing(
        room=closing.room,
        verdict=closing.verdict,
        text=closing.text,
        residuals=tuple(
            PlanResidual(
                of=one.of,
                is_corner=one.is_corner,
                correction=round(float(one.off), 3),
                alone=round(float(one.alone), 3),
            )
            for one in closing.residuals
        ),
    )


def _in_hand(held: InHand) -> PlanInHand:
    return PlanInHand(trim=held.trim, length_in=held.length, count=held.count, stick=held.stick)


def _cut(cut: Cut) -> PlanCut:
    return PlanCut(
        joint=cut.joint,
        fit=cut.fit,
        saw_deg=_degrees(cut.setting),
        exact_deg=_degrees(cut.exact),
        bevel_deg=_degrees(cut.bevel_setting),
        lean=Lean(runs_to(cut) or Lean.UPRIGHT),
        long_edge=cut.long_edge,
    )


def _degrees(angle: Fraction) -> float:
    # Four places are finer than any saw, and the same on every machine.
    return round(float(angle), 4)


def _cost(result: Result, amount: Fraction) -> Money | UnsetType:
    return UNSET if result.job.by_length else _money(amount)


def _length(result: Result, inches: Fraction) -> Fraction | UnsetType:
    return inches if result.job.by_length else UNSET


def _money(amount: Fraction) -> Money:
    return Money(money_text(amount))


def _stick(stick: CutStick, unit: Unit) -> PlanStick:
    return PlanStick(
        id=stick.id,
        trim=stick.trim,
        length_in=stick.length,
        # In words, for people who read the file; what programs need stands beside it in figures.
        source=source_text(stick, unit),
        pieces=tuple(place.piece for place in stick.places),
        offcut_in=stick.offcut,
    )


def _finding(finding: Diagnostic) -> PlanFinding:
    return PlanFinding(
        code=finding.code,
        severity=finding.severity,
        file=finding.span.file,
        line=finding.span.line,
        column=finding.span.column,
        end_column=finding.span.end,
        message=finding.message,
        remedy=finding.remedy,
    )


def bought_text(line: Bought, unit: Unit) -> str:
    """Name a line of the order as one asks for it at the yard: ``pack of 10, 12 ft``."""
    long = feet_text(line.length, unit)
    # A bundle is asked for by its number: its lengths stand on lines of their own.
    if line.bundle is not None:
        return f"bundle {line.bundle}: {line.pack} of {long}"
    if line.batch:
        long += f", batch {line.batch}"
    return f"pack of {line.pack}, {long}" if line.pack > 1 else long


def _order(result: Result) -> Iterator[PlanOrderLine]:
    unit = result.job.settings.unit
    for plan in result.plans:
        trim = result.job.trim(plan.trim)
        for line in plan.bought:
            # What the shop has is used but not ordered.
            if line.on_hand:
                continue
            yield PlanOrderLine(
                what=plan.trim,
                detail=bought_text(line, unit),
                count=line.packs,
                each=None if result.job.by_length else _money(line.price),
                price=None if result.job.by_length else _money(line.cost),
                length_in=line.length,
                sticks=line.sticks,
                supplier=trim.supplier,
                profile=trim.profile,
            )
    # Supplies without a price are ordered all the same; what they cost is left to the counter.
    for supply in result.supplies:
        yield PlanOrderLine(
            what=supply.named,
            detail=f"{supply.package}; {supply.detail}",
            count=supply.count,
            each=_money(supply.price) if supply.price else None,
            price=_money(supply.cost) if supply.price else None,
        )
