"""``plan.json`` as typed values: written, read and described (the JSON Schema) from one place.

The fields have the file's names and order.  Lengths are exact
inches (``Fraction``), money is ``Decimal``, angles are degrees.
"""

from __future__ import annotations

import re
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from typing import Annotated, Any, Final, Literal

import msgspec
from msgspec import UNSET, Meta, Struct, UnsetType

from trimlang.diagnostics.severity import Severity
from trimlang.joinery.piece import Lean, MeasuredOn, PieceKind
from trimlang.joint_row import Edge, Fit
from trimlang.joints import Joint
from trimlang.lengths.tape import Direction
from trimlang.site_log.progress_of_job import State
from trimlang.stock.problem import Status
from trimlang.survey.verdict import Verdict

SCHEMA_VERSION: Final = 2
_LENGTH: Final = r"^-?[0-9]+(/[1-9][0-9]*)?$"
_MONEY: Final = r"^[0-9]+\.[0-9]{2,}$"


# msgspec reads and writes a plain Decimal by itself, in any spelling; a type of our own goes
# through the hooks below.
class Money(Decimal):
    """An amount in the job's currency, with two decimal places or more."""


_Count = Annotated[int, Meta(ge=0)]
_Number = Annotated[int, Meta(ge=1)]
_Degrees = Annotated[float, Meta(description="degrees from square, as the saw can read it")]


# A field that nobody knows is refused: a misspelt name would otherwise pass unseen.
class _Part(Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, omit_defaults=True):
    """A part of the file; a field that has its default value is left out of the file."""


class PlanCut(_Part, frozen=True, kw_only=True):
    """One end of a piece."""

    joint: Joint
    fit: Fit
    saw_deg: _Degrees
    exact_deg: Annotated[float, Meta(description="degrees from square, as the joint wants it")]
    bevel_deg: Annotated[
        float,
        Meta(
            description="the blade's tilt as the saw can read it; crown lying flat has one",
        ),
    ]
    lean: Annotated[
        Lean,
        Meta(description="the way the cut runs from the fence towards you, as on the ticket"),
    ]
    long_edge: Edge


class PlanPiece(_Part, frozen=True, kw_only=True):
    """A piece; ``length_in`` is what its ticket says, ``stick`` the stick that it lies on."""

    id: str
    kind: PieceKind
    room: str
    run: str
    trim: str
    length_in: Annotated[
        Fraction,
        Meta(description="what the ticket says, along the edge that measured_on names"),
    ]
    length_text: str
    measured_on: MeasuredOn
    stick_length_in: Annotated[
        Fraction, Meta(description="what the stick must give, long point to long point")
    ]
    exact_text: str
    wall_in: Annotated[Fraction, Meta(description="the wall as surveyed")]
    rounded: Direction
    part: _Number
    parts: _Number
    left: PlanCut
    right: PlanCut
    mates: tuple[str, ...]
    stick: str | None
    note: str | None
    state: Annotated[State, Meta(description="by the site log; a spoiled piece is to be cut again")]
    changed: Annotated[bool, Meta(description="whether the last new plan changed its ticket")]


class PlanStick(_Part, frozen=True, kw_only=True):
    """A stick and its pieces from the left end, cut or to be cut."""

    id: str
    trim: str
    length_in: Fraction
    source: str
    pieces: Annotated[tuple[str, ...], Meta(min_length=1)]
    offcut_in: Fraction


class PlanInHand(_Part, frozen=True, kw_only=True):
    """Sticks in hand that no piece lies on; ``stick`` names one that was begun."""

    trim: str
    length_in: Annotated[Fraction, Meta(description="what each of them can still give")]
    count: _Number
    stick: Annotated[str | None, Meta(description="the name of a stick that was begun")]


class PlanOrderLine(_Part, frozen=True, kw_only=True):
    """Something still to buy; only sticks have a length and a number of sticks."""

    what: str
    detail: str
    count: _Count
    each: Annotated[Money | None, Meta(description="null where the file gives no price")]
    price: Money | None
    length_in: Fraction | None = None
    sticks: _Count | None = None
    supplier: Annotated[str | None, Meta(description="where the file says it is bought")] = None
    profile: Annotated[str | None, Meta(description="its code there")] = None


class PlanFinding(_Part, frozen=True, kw_only=True):
    """A diagnostic."""

    code: Annotated[str, Meta(pattern="^T[0-9]{3}$")]
    severity: Severity
    file: str
    line: _Number
    column: _Number
    end_column: _Number
    message: str
    remedy: str


class PlanResidual(_Part, frozen=True, kw_only=True):
    """By how much one measurement of a room disagrees with the others: inches, degrees."""

    of: str
    is_corner: Annotated[bool, Meta(description="a corner's numbers are degrees, others inches")]
    correction: Annotated[float, Meta(description="what is added to it for all to agree")]
    alone: Annotated[float, Meta(description="the same if all other measurements were right")]


class PlanClosing(_Part, frozen=True, kw_only=True):
    """How near a room's walls come back to where they began."""

    room: str
    verdict: Verdict
    text: str
    residuals: Annotated[
        tuple[PlanResidual, ...],
        Meta(description="where diagonals were measured, or the room does not close"),
    ]


class PlanStatus(StrEnum):
    """What is known of the plan: of its cost, or of its length where no stick has a price."""

    PROVEN = Status.PROVEN.value
    PROVEN_LENGTH = "proven least length"
    GAP = Status.GAP.value
    UNPROVEN = Status.UNPROVEN.value


class PlanSummary(_Part, frozen=True, kw_only=True):
    """The job in figures; ``cost`` is ``spent`` and ``to_buy`` together.

    Where no stick has a price there is no cost, and the lengths stand in its place.
    """

    cost: Annotated[
        Money | UnsetType, Meta(description="what all trim costs: spent and to_buy")
    ] = UNSET
    lower_bound: Annotated[
        Money | UnsetType, Meta(description="no plan of these pieces costs less")
    ] = UNSET
    spent: Annotated[
        Money | UnsetType, Meta(description="what the site log says was spent on trim")
    ] = UNSET
    to_buy: Annotated[Money | UnsetType, Meta(description="what the trim on the order costs")] = (
        UNSET
    )
    length_in: Annotated[
        Fraction | UnsetType, Meta(description="how long all sticks are, where none has a price")
    ] = UNSET
    least_length_in: Annotated[
        Fraction | UnsetType, Meta(description="no plan of these pieces does with less")
    ] = UNSET
    bought_in: Annotated[
        Fraction | UnsetType, Meta(description="what the site log says was bought of it")
    ] = UNSET
    to_buy_in: Annotated[
        Fraction | UnsetType, Meta(description="how long the sticks on the order are")
    ] = UNSET
    status: PlanStatus
    sticks: _Count
    pieces: _Count
    survives_loss: Annotated[
        bool,
        Meta(description="any one piece may be spoiled and cut again without buying more"),
    ]


class PlanFile(_Part, frozen=True, kw_only=True):
    """The whole of ``plan.json``."""

    schema: Literal[2]
    trimlang: str
    job: str
    surveyed: Annotated[str | None, Meta(description="the survey's date, ISO 8601")]
    currency: str
    pieces: tuple[PlanPiece, ...]
    sticks: tuple[PlanStick, ...]
    in_hand: Annotated[
        tuple[PlanInHand, ...], Meta(description="sticks in hand that no piece lies on")
    ]
    order: tuple[PlanOrderLine, ...]
    diagnostics: tuple[PlanFinding, ...]
    summary: PlanSummary
    closings: tuple[PlanClosing, ...]


def write_plan(plan: PlanFile) -> str:
    """Return the text of ``plan.json``; values that were read give back the text they came from."""
    # The hook is asked for lengths and money only: ``str`` gives the one spelling that is read
    # back.
    data = msgspec.json.encode(plan, enc_hook=str)
    return msgspec.json.format(data, indent=1).decode() + "\n"


def values_of(text: str) -> PlanFile:
    """Return the values in the text of a ``plan.json``.

    Raises:
        msgspec.DecodeError: it is no JSON.
        msgspec.ValidationError: it is no ``plan.json``.
    """
    return msgspec.json.decode(text, type=PlanFile, dec_hook=_exact)


def schema() -> dict[str, Any]:
    """Return the JSON Schema of ``plan.json``."""
    made = msgspec.json.schema(PlanFile, schema_hook=_written)
    parts = made["$defs"]
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": f"urn:trimlang:plan:{SCHEMA_VERSION}",
        # msgspec puts the whole file among its parts and refers to it; here it stands at the top.
        **parts.pop("PlanFile"),
        "title": "A compiled trim job",
        "$defs": parts,
    }


def _exact(kind: type[Any], written: object) -> Fraction | Money:
    """Return a length or an amount of money from its text.

    Raises:
        ValueError: it is written in another way.
    """
    shape, what = (_LENGTH, "length") if kind is Fraction else (_MONEY, "amount of money")
    if not isinstance(written, str) or not re.match(shape, written):
        raise ValueError(f"is not written as {what}")
    value: Fraction | Money = kind(written)
    # Only one spelling of a value is allowed, so that writing gives back the same bytes.
    if str(value) != written:
        raise ValueError(f"is not written as {what}")
    return value


def _written(kind: type[Any]) -> dict[str, Any]:
    """Return the schema of lengths and money, which JSON's numbers cannot hold exactly.

    Raises:
        NotImplementedError: nothing of that kind stands in the file.
    """
    if kind is Fraction:
        return {
            "type": "string",
            "pattern": _LENGTH,
            "description": "inches, an exact fraction",
        }
    if kind is Money:
        return {"type": "string", "pattern": _MONEY}
    # msgspec asks for every type that it does not know: a new one in the file needs a row above.
    raise NotImplementedError(kind)
