"""Reads ``plan.json`` back, and writes it again with the same bytes."""

from __future__ import annotations

import json
import re
from collections import Counter
from collections.abc import Iterator
from dataclasses import MISSING, fields, is_dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from types import UnionType
from typing import Any, Final, get_args, get_origin, get_type_hints

from trimlang.diagnostics import Diagnostic, Span, say
from trimlang.sheets.export.plan_file import PlanFile
from trimlang.sheets.export.plan_json import SCHEMA_VERSION

_LENGTH: Final = re.compile(r"-?[0-9]+(/[1-9][0-9]*)?")
_MONEY: Final = re.compile(r"[0-9]+\.[0-9]{2,}")
_CALLED: Final = {str: "a text", int: "a whole number", bool: "true or false", float: "a number"}


class PlanFileError(ValueError):
    """A text is no ``plan.json`` that this trimlang reads; ``diagnostic`` says why."""

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
        data = json.loads(text)
    except (ValueError, RecursionError) as error:
        raise PlanFileError("T631", reason=str(error)) from None
    if not isinstance(data, dict):
        raise PlanFileError("T633", where="plan.json", wrong="is no object")
    if data.get("schema") != SCHEMA_VERSION or isinstance(data.get("schema"), bool):
        raise PlanFileError("T632", found=repr(data.get("schema")), known=SCHEMA_VERSION)
    plan: PlanFile = _value(PlanFile, data, "plan.json")
    for where, wrong in _contradictions(plan):
        raise PlanFileError("T634", where=where, wrong=wrong)
    return plan


def write_plan(plan: PlanFile) -> str:
    """Return the text of ``plan.json``: the very text that the values were read from."""
    return json.dumps(_data(plan), ensure_ascii=False, indent=1) + "\n"


def _value(kind: Any, data: Any, where: str) -> Any:
    """Return ``data`` as a value of ``kind``."""
    if is_dataclass(kind):
        return _object(kind, data, where)
    origin = get_origin(kind)
    if origin is UnionType:
        return None if data is None else _value(get_args(kind)[0], data, where)
    if origin is tuple:
        if not isinstance(data, list):
            raise PlanFileError("T633", where=where, wrong="is no list")
        inner = get_args(kind)[0]
        return tuple(_value(inner, one, f"{where}[{place}]") for place, one in enumerate(data))
    if kind in (Fraction, Decimal) or issubclass(kind, StrEnum):
        return _text(kind, data, where)
    if type(data) is not kind:
        raise PlanFileError("T633", where=where, wrong=f"is not {_CALLED[kind]}")
    return data


def _text(kind: Any, data: Any, where: str) -> Any:
    if not isinstance(data, str):
        raise PlanFileError("T633", where=where, wrong="is not a text")
    if issubclass(kind, StrEnum):
        known = [one.value for one in kind]
        if data not in known:
            raise PlanFileError("T633", where=where, wrong=f"“{data}” is none of {known}")
        return kind(data)
    shape = _LENGTH if kind is Fraction else _MONEY
    what = "length" if kind is Fraction else "amount of money"
    if not shape.fullmatch(data) or (kind is Fraction and str(Fraction(data)) != data):
        raise PlanFileError("T633", where=where, wrong=f"“{data}” is not written as a {what}")
    return kind(data)


def _object(kind: Any, data: Any, where: str) -> Any:
    if not isinstance(data, dict):
        raise PlanFileError("T633", where=where, wrong="is no object")
    hints = get_type_hints(kind)
    known = {one.name: one for one in fields(kind)}
    for name in data:
        if name not in known:
            raise PlanFileError("T633", where=where, wrong=f"has a field “{name}” too many")
    values: dict[str, Any] = {}
    for name, one in known.items():
        if name in data:
            values[name] = _value(hints[name], data[name], f"{where}.{name}")
        elif one.default is MISSING:
            raise PlanFileError("T633", where=where, wrong=f"has no field “{name}”")
    return kind(**values)


def _data(value: Any) -> Any:
    if is_dataclass(value):
        return {
            one.name: _data(getattr(value, one.name))
            for one in fields(value)
            if not (one.metadata.get("omitted") and getattr(value, one.name) is None)
        }
    if isinstance(value, tuple):
        return [_data(one) for one in value]
    if isinstance(value, StrEnum):
        return value.value
    return str(value) if isinstance(value, Fraction | Decimal) else value


def _contradictions(plan: PlanFile) -> Iterator[tuple[str, str]]:
    """Yield where the parts of the file do not agree."""
    pieces = Counter(piece.id for piece in plan.pieces)
    sticks = {stick.id: stick for stick in plan.sticks}
    for name, times in pieces.items():
        if times > 1:
            yield "plan.json.pieces", f"“{name}” stands {times} times"
    if len(sticks) < len(plan.sticks):
        yield "plan.json.sticks", "two sticks have one name"
    lies = {name: stick.id for stick in plan.sticks for name in stick.pieces}
    if sum(len(stick.pieces) for stick in plan.sticks) > len(lies):
        yield "plan.json.sticks", "a piece lies on two sticks"
    for piece in plan.pieces:
        if lies.get(piece.id) != piece.stick:
            yield f"plan.json.pieces “{piece.id}”", f"does not lie on “{piece.stick}”"
    for name in lies:
        if name not in pieces:
            yield "plan.json.sticks", f"holds “{name}”, which is no piece"
    if (plan.summary.pieces, plan.summary.sticks) != (len(plan.pieces), len(plan.sticks)):
        yield "plan.json.summary", "counts other pieces or sticks"


__all__ = ["PlanFile", "PlanFileError", "read_plan", "write_plan"]
