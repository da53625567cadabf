"""The written threat model names tests that exist, and the lock holds what is installed."""

from __future__ import annotations

import ast
import re
import tomllib
from functools import cache
from pathlib import Path

import pytest

from tests.conftest import ROOT

TEXT = (ROOT / "docs" / "threat-model.md").read_text(encoding="utf-8")
NAMED = sorted(set(re.findall(r"`(tests/[\w/]+\.py)::(\w+)`", TEXT)))
ROWS = [line for line in TEXT.splitlines() if line.startswith("| ")]


@cache
def defined_in(path: Path) -> set[str]:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    return {node.name for node in ast.walk(tree) if isinstance(node, ast.FunctionDef)}


@pytest.mark.parametrize(("file", "test"), NAMED)
def test_the_test_exists(file: str, test: str) -> None:
    assert test in defined_in(ROOT / file)


def test_every_threat_names_a_test() -> None:
    threats = [row for row in ROWS if not row.startswith(("| threat", "| ---"))]
    assert len(threats) > 25
    for row in threats:
        assert "::test_" in row.split("|")[3], row


def test_every_dependency_is_locked() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    lock = (ROOT / ".ci" / "constraints.txt").read_text(encoding="utf-8")
    lines = [line for line in lock.splitlines() if not line.startswith("#")]
    assert all(re.fullmatch(r"[A-Za-z0-9._-]+==[\w.+!-]+", line) for line in lines)
    locked = {line.partition("==")[0].lower().replace("_", "-") for line in lines}
    wanted = {
        re.split(r"[^A-Za-z0-9._-]", one)[0].lower()
        for one in (*project["dependencies"], *project["optional-dependencies"]["dev"])
    }
    assert wanted <= locked, f"run .ci/lock: {sorted(wanted - locked)}"
