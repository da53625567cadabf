"""The written threat model names tests that exist, and the lock holds what is installed."""

from __future__ import annotations

import ast
import re
import tomllib
from functools import cache
from pathlib import Path

import pytest

from tests.conftest import ROOT

PAGE = (ROOT / "docs" / "trust.md").read_text(encoding="utf-8")
TEXT = PAGE[PAGE.index("## What could go wrong") :]
NAMED = sorted(set(re.findall(r"`(tests/[\w/]+\.py)::(\w+)`", TEXT)))
ROWS = [line for line in TEXT.splitlines() if line.startswith("| ")]


@cache
def defined_in(path: Path) -> set[str]:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    return {node.name for node in ast.walk(tree) if isinstance(node, ast.FunctionDef)}


def test_the_tests_exist() -> None:
    assert [(file, test) for file, test in NAMED if test not in defined_in(ROOT / file)] == []


def test_every_threat_names_a_test() -> None:
    threats = [row for row in ROWS if not row.startswith(("| threat", "| ---"))]
    assert len(threats) > 25
    for row in threats:
        assert "::test_" in row.split("|")[3], row


@cache
def body_of(file: str, test: str) -> str:
    """Return a test's source, with what decorates it."""
    text = (ROOT / file).read_text(encoding="utf-8")
    nodes = (node for node in ast.walk(ast.parse(text)) if isinstance(node, ast.FunctionDef))
    (found,) = (node for node in nodes if node.name == test)
    first = min((one.lineno for one in found.decorator_list), default=found.lineno)
    return "\n".join(text.splitlines()[first - 1 : found.end_lineno])


@pytest.mark.parametrize(
    ("threat", "does"),
    [(r"\ba link\b", r"symlink_to"), (r"\ba pipe\b", r"mkfifo"), (r"\bgit\b", r"\bgit\(")],
)
def test_a_test_holds_what_the_threat_is_made_of(threat: str, does: str) -> None:
    rows = [row for row in ROWS if re.search(threat, row.split("|")[1])]
    assert rows
    for row in rows:
        named = re.findall(r"`(tests/[\w/]+\.py)::(\w+)`", row)
        assert any(re.search(does, body_of(*one)) for one in named), row


def locked(name: str) -> dict[str, int]:
    """Return the packages of a lock, each with how many hashes are given for it."""
    lock = (ROOT / ".ci" / name).read_text(encoding="utf-8").replace("\\\n", " ")
    found: dict[str, int] = {}
    for line in lock.splitlines():
        if not line.startswith("#"):
            said = re.fullmatch(
                r"([a-z0-9.-]+)==[\w.+!-]+(?: ; [^#]+?)?((?: +--hash=sha256:[0-9a-f]{64})+)", line
            )
            assert said, line
            found[said[1]] = said[2].count("--hash=")
    return found


def test_every_dependency_is_locked() -> None:
    whole = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    project = whole["project"]
    needed = [*project["dependencies"], *whole["build-system"]["requires"]]
    tested = [*needed, *project["optional-dependencies"]["dev"]]
    for name, asked in (("requirements.txt", needed), ("requirements-dev.txt", tested)):
        wanted = {re.split(r"[^A-Za-z0-9._-]", one)[0].lower().replace("_", "-") for one in asked}
        assert wanted <= set(locked(name)), f"run .ci/lock: {sorted(wanted - set(locked(name)))}"
