"""``plan.json`` as typed values: what a program that reads it back works with.

The fields are named as in the file and stand in its order.  Lengths are exact
inches (``Fraction``), money is ``Decimal``, angles are degrees.
"""

from __future__ import annotations

from dataclasses import field
from decimal import Decimal
from fractions import Fraction
from typing import Final

from trimlang.diagnostics.severity import Severity
from trimlang.joinery.piece import Kind, Lean, MeasuredOn
from trimlang.joints import Edge, Fit, Joint
from trimlang.lengths.tape import Direction
from trimlang.record import record
from trimlang.site_log.progress_of_job import State
from trimlang.stock.problem import Status

OMITTED: Final = {"omitted": True}
"""Marks a field that is left out of the file where it is None."""


@record
class PlanCut:
    """One end of a piece."""

    joint: Joint
    fit: Fit
    saw_deg: float
    exact_deg: float
    bevel_deg: float
    lean: Lean
    long_edge: Edge


@record
class PlanPiece:
    """A piece; ``length_in`` is what its ticket says, ``stick`` the stick that it lies on."""

    id: str
    kind: Kind
    room: str
    run: str
    trim: str
    length_in: Fraction
    length_text: str
    measured_on: MeasuredOn
    stick_length_in: Fraction
    exact_text: str
    wall_in: Fraction
    rounded: Direction
    part: int
    parts: int
    left: PlanCut
    right: PlanCut
    mates: tuple[str, ...]
    stick: str | None
    note: str | None
    state: State
    changed: bool


@record
class PlanStick:
    """A stick and its pieces from the left end, cut or to be cut."""

    id: str
    trim: str
    length_in: Fraction
    source: str
    pieces: tuple[str, ...]
    offcut_in: Fraction


@record
class PlanOrderLine:
    """Something still to buy; only sticks have a length and a number of sticks."""

    what: str
    detail: str
    count: int
    each: Decimal | None
    price: Decimal | None
    length_in: Fraction | None = field(default=None, metadata=OMITTED)
    sticks: int | None = field(default=None, metadata=OMITTED)


@record
class PlanInHand:
    """Sticks in hand that no piece lies on; ``stick`` names one that was begun."""

    trim: str
    length_in: Fraction
    count: int
    stick: str | None


@record
class PlanFinding:
    """A diagnostic."""

    code: str
    severity: Severity
    file: str
    line: int
    column: int
    end_column: int
    message: str
    remedy: str


@record
class PlanSummary:
    """The job in figures; ``cost`` is ``spent`` and ``to_buy`` together."""

    cost: Decimal
    lower_bound: Decimal
    spent: Decimal
    to_buy: Decimal
    status: Status
    sticks: int
    pieces: int
    survives_loss: bool


@record
class PlanFile:
    """All that stands in ``plan.json``."""

    schema: int
    trimlang: str
    job: str
    surveyed: str | None
    currency: str
    pieces: tuple[PlanPiece, ...]
    sticks: tuple[PlanStick, ...]
    in_hand: tuple[PlanInHand, ...]
    order: tuple[PlanOrderLine, ...]
    diagnostics: tuple[PlanFinding, ...]
    summary: PlanSummary
