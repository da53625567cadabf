"""What trimlang's own code never does."""

from __future__ import annotations

import ast
import re

from tests.conftest import ROOT

MODULES = sorted((ROOT / "trimlang").rglob("*.py"))
RUNS_TEXT = {"eval", "exec", "compile", "__import__"}
NEVER = {"pickle", "marshal", "shelve", "dill", "code", "codeop", "urllib", "http", "requests"}

NAMED = re.compile(rf"\b({'|'.join(RUNS_TEXT | NEVER)})\b")


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


MAY = {
    # a record's __init__ is written out from the names of its fields, as dataclasses does
    "record.py": {"exec"},
    # what --watch shows is served on this machine alone: tests/cli/test_watch.py
    "preview_server.py": {"http"},
    # the parser that the build wrote beside the code, where lark's tables stood, which are a pickle
    "grammar.py": {"pickle"},
}


def test_no_text_is_run_and_nothing_is_fetched() -> None:
    texts = {path: path.read_text(encoding="utf-8") for path in MODULES}
    assert len(texts) > 100
    found = {}
    for path, text in texts.items():
        # what is nowhere written is neither called nor imported
        if NAMED.search(text):
            tree = ast.parse(text)
            found[path.name] = (_calls(tree) & RUNS_TEXT) | (_imports(tree) & NEVER)
    assert {name: each for name, each in found.items() if each} == MAY
