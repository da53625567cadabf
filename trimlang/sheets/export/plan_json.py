"""The finished job as data: ``plan.json``, whose schema lies beside this module."""

from __future__ import annotations

import json
from collections.abc import Iterator
from fractions import Fraction
from typing import Any, Final

from trimlang.compiler import Result
from trimlang.diagnostics.show import as_data
from trimlang.joinery.piece import Cut, Piece
from trimlang.lengths.tape import feet_text, length_text
from trimlang.money import money_text
from trimlang.planning.layout import Bought, CutStick, TrimPlan
from trimlang.sheets.wording.phrases import runs_to
from trimlang.site_log.progress_of_job import InHand, State
from trimlang.stock.problem import Status
from trimlang.version import __version__

SCHEMA_VERSION: Final = 2


def source_text(stick: CutStick, unit: str) -> str:
    """Tell where a stick comes from: ``12 ft, bought`` or ``61 1/2 in, on hand``."""
    if stick.on_hand:
        return f"{length_text(stick.length, unit)}, on hand"
    return f"{feet_text(stick.length, unit)}, bought"


def plan_status(plans: tuple[TrimPlan, ...]) -> Status:
    """Return what can be said of the whole plan: the least that holds for each trim."""
    for status in (Status.UNPROVEN, Status.GAP):
        if any(plan.status is status for plan in plans):
            return status
    return Status.PROVEN


def least_words(result: Result) -> str:
    """Say below what no plan goes; other joints of long walls would make other pieces."""
    pieces = " of these pieces" if any(splice.free for splice in result.splices) else ""
    return (
        f"{plan_status(result.plans)}; no plan{pieces} costs less than"
        f" {result.job.currency}{money_text(result.bound)}"
    )


def plan_data(result: Result) -> dict[str, Any]:
    """Return the result as the plain data of ``plan.json``.

    Lengths are exact fractions of an inch as text (``"233/8"``), angles degrees
    as numbers, money decimal text.
    """
    unit = result.job.settings.unit
    stick_of = {
        place.piece: stick.id
        for plan in result.plans
        for stick in plan.sticks
        for place in stick.places
    }
    return {
        "schema": SCHEMA_VERSION,
        "trimlang": __version__,
        "job": result.job.name,
        "surveyed": result.job.surveyed,
        "currency": result.job.currency,
        "pieces": [_piece(piece, stick_of.get(piece.id), result) for piece in result.pieces],
        "sticks": [_stick(stick, unit) for plan in result.plans for stick in plan.sticks],
        "in_hand": [] if result.site is None else [_in_hand(one) for one in result.site.in_hand],
        "order": list(_order(result)),
        "diagnostics": [as_data(finding) for finding in result.diagnostics],
        "summary": {
            "cost": money_text(result.cost),
            "lower_bound": money_text(result.bound),
            "spent": money_text(result.spent),
            "to_buy": money_text(result.cost - result.spent),
            "status": plan_status(result.plans).value,
            "sticks": sum(len(plan.sticks) for plan in result.plans),
            "pieces": len(result.pieces),
            "survives_loss": bool(result.plans)
            and all(plan.survives_loss for plan in result.plans),
        },
    }


def plan_json(result: Result) -> str:
    """Return ``plan.json``'s text: the same result gives the same text."""
    return json.dumps(plan_data(result), ensure_ascii=False, indent=1) + "\n"


def _piece(piece: Piece, stick: str | None, result: Result) -> dict[str, Any]:
    site = result.site
    return {
        "id": piece.id,
        "kind": piece.kind.value,
        "room": piece.room,
        "run": piece.run,
        "trim": piece.trim,
        "length_in": str(piece.to_mark),
        "length_text": length_text(piece.to_mark, piece.unit),
        "measured_on": piece.measured_on.value,
        "stick_length_in": str(piece.length),
        "exact_text": length_text(piece.rounding.exact, piece.unit),
        "wall_in": str(piece.wall),
        "rounded": piece.rounding.direction.value,
        "part": piece.part,
        "parts": piece.parts,
        "left": _cut(piece.left),
        "right": _cut(piece.right),
        "mates": list(piece.mates),
        "stick": stick,
        "note": piece.told or None,
        "state": (State.TO_CUT if site is None else site.state(piece.id)).value,
        "changed": site is not None and piece.id in site.changed,
    }


def _in_hand(held: InHand) -> dict[str, Any]:
    return {
        "trim": held.trim,
        "length_in": str(held.length),
        "count": held.count,
        "stick": held.stick,
    }


def _cut(cut: Cut) -> dict[str, Any]:
    return {
        "joint": cut.joint.value,
        "fit": cut.fit.value,
        "saw_deg": _degrees(cut.setting),
        "exact_deg": _degrees(cut.exact),
        "bevel_deg": _degrees(cut.bevel_setting),
        "lean": runs_to(cut) or "square",
        "long_edge": cut.long_edge,
    }


def _degrees(angle: Fraction) -> float:
    return round(float(angle), 4)


def _stick(stick: CutStick, unit: str) -> dict[str, Any]:
    return {
        "id": stick.id,
        "trim": stick.trim,
        "length_in": str(stick.length),
        "source": source_text(stick, unit),
        "pieces": [place.piece for place in stick.places],
        "offcut_in": str(stick.offcut),
    }


def bought_text(line: Bought, unit: str) -> str:
    """Name a line of the order as one asks for it: ``pack of 10, 12 ft``."""
    long = feet_text(line.length, unit)
    return f"pack of {line.pack}, {long}" if line.pack > 1 else long


def _order(result: Result) -> Iterator[dict[str, Any]]:
    unit = result.job.settings.unit
    for plan in result.plans:
        for line in plan.bought:
            if line.on_hand:
                continue
            yield {
                "what": plan.trim,
                "detail": bought_text(line, unit),
                "count": line.packs,
                "each": money_text(line.price),
                "price": money_text(line.cost),
                "length_in": str(line.length),
                "sticks": line.sticks,
            }
    for supply in result.supplies:
        yield {
            "what": supply.what,
            "detail": f"{supply.package}; {supply.detail}",
            "count": supply.count,
            "each": money_text(supply.price) if supply.price else None,
            "price": money_text(supply.cost) if supply.price else None,
        }
