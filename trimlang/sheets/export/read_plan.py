"""Reads ``plan.json`` back, and writes it again with the same bytes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

import msgspec

from trimlang.diagnostics import Diagnostic, Span, say
from trimlang.sheets.export.plan_file import SCHEMA_VERSION, PlanFile, values_of, write_plan


class _Version(msgspec.Struct):
    """What is read first, since other versions have other fields."""

    schema: object = None


class PlanFileError(ValueError):
    """The text is not a ``plan.json`` that this version reads; ``diagnostic`` says why."""

    def __init__(self, code: str, **facts: object) -> None:
        self.diagnostic: Diagnostic = say(code, Span("plan.json", 1, 1, 2), **facts)
        super().__init__(f"{code}: {self.diagnostic.message}")


def read_plan(text: str) -> PlanFile:
    """Return the values of ``plan.json``.

    Raises:
        PlanFileError: it is no JSON (T631), of another version (T632), holds
            something else (T633) or contradicts itself (T634).
    """
    try:
        # Before all else: a file of another version should be told so, not its first unknown field.
        version = msgspec.json.decode(text, type=_Version).schema
        if version != SCHEMA_VERSION:
            raise PlanFileError("T632", found=repr(version), known=SCHEMA_VERSION)
        plan = values_of(text)
    except msgspec.ValidationError as error:
        where, wrong = _elsewhere(str(error))
        raise PlanFileError("T633", where=where, wrong=wrong) from None
    except (msgspec.DecodeError, UnicodeError, RecursionError) as error:
        raise PlanFileError("T631", reason=str(error)) from None
    for where, wrong in _contradictions(plan):
        raise PlanFileError("T634", where=where, wrong=wrong)
    return plan


def _elsewhere(text: str) -> tuple[str, str]:
    """Split msgspec's message into the place (``plan.json.pieces[3].part``) and what is wrong."""
    wrong, _, where = text.partition(" - at `$")
    return f"plan.json{where.removesuffix('`')}", wrong


def _contradictions(plan: PlanFile) -> Iterator[tuple[str, str]]:
    """Yield each place where the file contradicts itself, and how."""
    pieces = Counter(piece.id for piece in plan.pieces)
    sticks = {stick.id: stick for stick in plan.sticks}
    for name, times in pieces.items():
        if times > 1:
            yield "plan.json.pieces", f"“{name}” stands {times} times"
    if len(sticks) < len(plan.sticks):
        yield "plan.json.sticks", "two sticks have one name"
    # A name that two sticks hold keeps one of them here, and so the sums differ.
    stick_of = {name: stick.id for stick in plan.sticks for name in stick.pieces}
    if sum(len(stick.pieces) for stick in plan.sticks) > len(stick_of):
        yield "plan.json.sticks", "a piece lies on two sticks"
    for piece in plan.pieces:
        if stick_of.get(piece.id) != piece.stick:
            yield f"plan.json.pieces “{piece.id}”", f"does not lie on “{piece.stick}”"
    for name in stick_of:
        if name not in pieces:
            yield "plan.json.sticks", f"holds “{name}”, which is no piece"
    if (plan.summary.pieces, plan.summary.sticks) != (len(plan.pieces), len(plan.sticks)):
        yield "plan.json.summary", "counts other pieces or sticks"


__all__ = ["PlanFile", "PlanFileError", "read_plan", "write_plan"]
