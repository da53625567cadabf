"""A ``plan.json`` is read back as it was written, and anything else is refused with its place."""

from __future__ import annotations

import json
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest

import trimlang
from tests.every import every
from tests.jobs import walls
from trimlang.joinery.piece import PieceKind

WRITTEN = trimlang.plan_json(
    trimlang.compile(walls("N: 40 1/2 in, left=butt, right=butt"))
).decode()


def changed(*way: str | int, to: Any) -> str:
    """The text with the value at the end of ``way`` in it replaced."""
    data = json.loads(WRITTEN)
    inner = data
    for step in way[:-1]:
        inner = inner[step]
    inner[way[-1]] = to
    return json.dumps(data)


def test_the_values_are_typed() -> None:
    plan = trimlang.read_plan(WRITTEN)
    assert trimlang.write_plan(plan) == WRITTEN
    (piece,) = plan.pieces
    assert (piece.kind, piece.length_in) == (PieceKind.RUN, Fraction(81, 2))
    assert (plan.order[0].each, plan.summary.cost) == (Decimal("17.40"), Decimal("34.80"))
    assert (plan.order[0].length_in, plan.order[-1].length_in) == (144, None)


@every(
    "text, code, said",
    [
        ("{", "T631", "no JSON"),
        ("[" * 100_000, "T633", "plan.json: "),
        ("[]", "T633", "plan.json: "),
        ("9" * 5000, "T633", "plan.json: "),
        (changed("schema", to=None).replace("null", "9" * 5000, 1), "T633", "plan.json.schema: "),
        (changed("pieces", 0, "length_in", to="9" * 5000), "T633", "plan.json.pieces[0].length_in"),
        (changed("pieces", 0, "length_in", to="1/" + "9" * 5000), "T633", "pieces[0].length_in: "),
        ("{}", "T632", "has schema None"),
        (changed("schema", to=1), "T632", "has schema 1"),
        (changed("schema", to=True), "T632", "has schema True"),
        (changed("pieces", 0, "part", to="1"), "T633", "plan.json.pieces[0].part: "),
        (changed("pieces", 0, "part", to=0), "T633", "plan.json.pieces[0].part: "),
        (changed("pieces", 0, "kind", to="door"), "T633", "plan.json.pieces[0].kind: "),
        (changed("pieces", 0, "length_in", to="2/4"), "T633", "pieces[0].length_in: "),
        (changed("pieces", 0, "length_in", to=40.5), "T633", "pieces[0].length_in: "),
        (changed("pieces", 0, "left", "colour", to="red"), "T633", "pieces[0].left: "),
        (changed("summary", "cost", to="17.4"), "T633", "plan.json.summary.cost: "),
        (changed("summary", "cost", to=17.40), "T633", "plan.json.summary.cost: "),
        (changed("summary", "pieces", to=2), "T634", "plan.json.summary: "),
        (changed("pieces", 0, "stick", to="base-9"), "T634", "does not lie on"),
    ],
)
def test_anything_else_is_refused(text: str, code: str, said: str) -> None:
    with pytest.raises(trimlang.PlanFileError) as error:  # type: ignore[attr-defined]
        trimlang.read_plan(text)
    assert error.value.diagnostic.code == code
    assert said in error.value.diagnostic.message
