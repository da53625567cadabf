"""What is listed as a change to the code that does no harm is still a change to that code."""

from __future__ import annotations

import ast
import tomllib
from functools import cache
from pathlib import Path

import pytest

from tests.conftest import ROOT

LIST = ROOT / "benchmarks" / "mutation" / "survivors.toml"


@cache
def functions(module: Path) -> dict[str, str]:
    """Each function's text in one line, by its name behind its class's."""
    text = module.read_text(encoding="utf-8")
    found: dict[str, str] = {}

    def look(body: list[ast.stmt], before: str) -> None:
        for node in body:
            if isinstance(node, ast.ClassDef):
                look(node.body, f"{before}{node.name}.")
            elif isinstance(node, ast.FunctionDef):
                lines = (ast.get_source_segment(text, node) or "").splitlines()
                found[before + node.name] = " ".join(line.strip() for line in lines)

    look(ast.parse(text).body, "")
    return found


@pytest.mark.nightly
def test_each_change_that_is_explained_names_code_that_is_there() -> None:
    groups = tomllib.loads(LIST.read_text(encoding="utf-8"))["harmless"]
    gone = []
    for change in (change for group in groups for change in group["mutants"]):
        place, _, what = change.partition(": ")
        folder, module, function = place.split(".", 2)
        path = ROOT / "trimlang" / folder / f"{module}.py"
        if not path.is_file():  # a module of a folder within the folder
            module, _, function = function.partition(".")
            path = ROOT / "trimlang" / folder / place.split(".")[1] / f"{module}.py"
        text = functions(path).get(function, "") if path.is_file() else ""
        if not text or what.partition(" → ")[0] not in text:
            gone.append(change)
    assert not gone
