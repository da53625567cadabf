"""What trimlang's own code never does."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

from tests.conftest import ROOT

MODULES = sorted((ROOT / "trimlang").rglob("*.py"))
RUNS_TEXT = {"eval", "exec", "compile", "__import__"}
NEVER = {"pickle", "marshal", "shelve", "dill", "code", "codeop", "urllib", "http", "requests"}


def _calls(tree: ast.AST) -> set[str]:
    return {
        node.func.id
        for node in ast.walk(tree)
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
    }


def _imports(tree: ast.AST) -> set[str]:
    found: set[str] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            found |= {name.name.partition(".")[0] for name in node.names}
        elif isinstance(node, ast.ImportFrom) and node.module:
            found.add(node.module.partition(".")[0])
    return found


def test_the_scan_sees_what_it_looks_for() -> None:
    tree = ast.parse("import pickle\nfrom urllib import request\neval('1')")
    assert _imports(tree) == {"pickle", "urllib"}
    assert _calls(tree) == {"eval"}


@pytest.mark.parametrize("path", MODULES, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_no_text_is_run_and_nothing_is_fetched(path: Path) -> None:
    tree = ast.parse(path.read_text(encoding="utf-8"))
    # a record's __init__ is written out from the names of its fields, as dataclasses does
    written_out = {"exec"} if path.name == "record.py" else set()
    assert not _calls(tree) & (RUNS_TEXT - written_out)
    # what --watch shows is served on this machine alone: tests/cli/test_watch.py
    served = {"http"} if path.name == "preview_server.py" else set()
    assert not _imports(tree) & (NEVER - served)
