"""The shape of plan.json has a number, and another shape has another number."""

from __future__ import annotations

import json
from hashlib import sha256
from typing import Any

import pytest

from trimlang.cli import main
from trimlang.sheets.export.plan_file import SCHEMA_VERSION, schema

SHAPES = {1: "00bca4e5b4d12b43", 2: "28de06c5abc9c7b6"}
"""What each version's schema comes to.  A new shape gets a new version and a new line here;
a line that a release has gone out with is never changed."""


def shape(node: Any, parts: dict[str, Any]) -> Any:
    """A schema without its words for people, the version itself and the names of its parts."""
    if isinstance(node, dict):
        if "$ref" in node:
            return shape(parts[node["$ref"].removeprefix("#/$defs/")], parts)
        return {
            key: shape(value, parts)
            for key, value in node.items()
            if not (key in ("title", "description", "$id") and not isinstance(value, dict))
            and key != "$defs"
            and value != {"enum": [SCHEMA_VERSION]}
        }
    return [shape(one, parts) for one in node] if isinstance(node, list) else node


def whole(told: dict[str, Any]) -> Any:
    return shape(told, told["$defs"])


def digest() -> str:
    return sha256(json.dumps(whole(schema()), sort_keys=True).encode()).hexdigest()[:16]


def test_the_version_is_told_in_the_schema_and_by_its_name() -> None:
    assert schema()["$id"] == f"urn:trimlang:plan:{SCHEMA_VERSION}"
    assert schema()["properties"]["schema"] == {"enum": [SCHEMA_VERSION]}
    assert "schema" in schema()["required"]


def test_another_shape_has_another_version() -> None:
    assert digest() == SHAPES[SCHEMA_VERSION], (
        "plan.json has another shape: count SCHEMA_VERSION up in plan_file.py, and add"
        f" {SCHEMA_VERSION + 1}: {digest()!r} to SHAPES"
    )
    assert len(set(SHAPES.values())) == len(SHAPES)


def test_a_change_of_shape_is_seen_and_a_change_of_words_is_not() -> None:
    told = schema()
    told["description"] = told["properties"]["job"]["description"] = "other words"
    assert whole(told) == whole(schema())
    told["properties"]["job"]["type"] = "integer"
    assert whole(told) != whole(schema())
    told = schema()
    told["$defs"]["PlanCut"]["required"].remove("lean")
    assert whole(told) != whole(schema())


def test_the_command_prints_it(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schema"]) == 0
    assert json.loads(capsys.readouterr().out) == schema()
