"""The shape of plan.json has a number, and another shape has another number."""

from __future__ import annotations

import json
from hashlib import sha256
from importlib.resources import files
from typing import Any

import pytest

from trimlang.cli import main
from trimlang.sheets.export.plan_json import SCHEMA_VERSION

SHAPES = {1: "00bca4e5b4d12b43", 2: "353b5498ba0ed85e"}
"""What each version's schema comes to.  A new shape gets a new version and a new line here;
a line that a release has gone out with is never changed."""


def shape(node: Any) -> Any:
    """A schema without its words for people and without the version itself."""
    if isinstance(node, dict):
        return {
            key: shape(value)
            for key, value in node.items()
            if not (key in ("title", "description", "$id", "const") and not isinstance(value, dict))
        }
    return [shape(one) for one in node] if isinstance(node, list) else node


def schema() -> dict[str, Any]:
    read: dict[str, Any] = json.loads(
        (files("trimlang") / "sheets" / "export" / "plan.schema.json").read_text(encoding="utf-8")
    )
    return read


def digest() -> str:
    return sha256(json.dumps(shape(schema()), sort_keys=True).encode()).hexdigest()[:16]


def test_the_version_is_told_in_the_schema_and_by_its_name() -> None:
    assert schema()["$id"] == f"urn:trimlang:plan:{SCHEMA_VERSION}"
    assert schema()["properties"]["schema"] == {"const": SCHEMA_VERSION}
    assert "schema" in schema()["required"]


def test_another_shape_has_another_version() -> None:
    assert digest() == SHAPES[SCHEMA_VERSION], (
        "plan.json has another shape: count SCHEMA_VERSION up, with $id and const in"
        f" plan.schema.json, and add {SCHEMA_VERSION + 1}: {digest()!r} to SHAPES"
    )
    assert len(set(SHAPES.values())) == len(SHAPES)


def test_a_change_of_shape_is_seen_and_a_change_of_words_is_not() -> None:
    told = schema()
    told["description"] = told["properties"]["job"]["description"] = "other words"
    assert shape(told) == shape(schema())
    told["properties"]["job"]["type"] = "integer"
    assert shape(told) != shape(schema())


def test_the_command_prints_it(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schema"]) == 0
    assert json.loads(capsys.readouterr().out) == schema()
