"""Break the code on purpose and see whether the tests notice: ``python -m benchmarks.mutation``.

A copy of the tree is mutated with mutmut, one small change after another, and
the quick tests run against each.  What survives is a gap in the tests, or a
change that no test can see; ``docs/trust-proof.md`` explains each of the second kind.

mutmut leaves functions with decorators alone.  So that caches and properties are
mutated too, the copy has their decorators undone first: a cache goes, a property
is bound after its method.  Nothing else about the copy differs.
"""

from __future__ import annotations

import argparse
import ast
import json
import os
import shutil
import subprocess
import sys
from collections import Counter, defaultdict
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
TARGETS = {
    "lengths": ("trimlang/lengths/*.py",),
    "joinery": ("trimlang/joinery/*.py",),
    "verifier": ("trimlang/stock/verify.py",),
}
TESTS = (
    "tests/joinery",
    "tests/published",
    "tests/lengths",
    "tests/proof/test_oracle_rooms.py",
    "tests/stock/test_verify.py",
)
COPIED = ("grammar", "templates", "examples", "docs", "tests", "trimlang", "pyproject.toml")
PROFILE = """
from hypothesis import Phase
settings.register_profile(
    "mutation", deadline=None, derandomize=True, database=None,
    phases=(Phase.explicit, Phase.generate),
)
settings.load_profile("mutation")
"""
CAUGHT = {"killed": 1, "timeout": 1, "caught by type check": 1, "segfault": 1}


def bare(source: str) -> str:
    """Undo caches and properties, so that what they wrap is mutated as well."""
    lines = source.splitlines()
    tree = ast.parse(source)
    changes: list[tuple[int, str, str]] = []
    for node in ast.walk(tree):
        if not isinstance(node, ast.FunctionDef) or len(node.decorator_list) != 1:
            continue
        words = ast.unparse(node.decorator_list[0])
        if words.startswith(("lru_cache", "cache")):
            changes.append((node.decorator_list[0].lineno, "drop", ""))
        elif words == "property":
            changes.append((node.decorator_list[0].lineno, "drop", ""))
            changes.append((node.lineno, "rename", node.name))
            changes.append((node.end_lineno or node.lineno, "bind", node.name))
    for number, what, name in sorted(changes, reverse=True):
        if what == "drop":
            del lines[number - 1]
        elif what == "rename":
            lines[number - 1] = lines[number - 1].replace(f"def {name}(", f"def read_{name}(")
        else:
            lines.insert(number, f"    {name} = property(read_{name})")
    return "\n".join(lines) + "\n"


def lay_out(work: Path, targets: list[str]) -> None:
    """Copy the tree to ``work``, decorators undone, with mutmut's settings beside it."""
    for name in COPIED:
        source = ROOT / name
        if source.is_dir():
            ignored = shutil.ignore_patterns("__pycache__", "pictures")
            shutil.copytree(source, work / name, ignore=ignored, dirs_exist_ok=True)
        else:
            shutil.copy(source, work / name)
    patterns = [pattern for target in targets for pattern in TARGETS[target]]
    for pattern in patterns:
        for path in work.glob(pattern):
            path.write_text(bare(path.read_text(encoding="utf-8")), encoding="utf-8")
    conftest = work / "tests" / "conftest.py"
    conftest.write_text(conftest.read_text(encoding="utf-8") + PROFILE, encoding="utf-8")
    tests = [name for name in TESTS if (work / name).exists()]
    listed = {
        "source_paths": ["trimlang"],
        "only_mutate": patterns,
        "also_copy": ["grammar", "templates", "examples", "docs"],
        "pytest_add_cli_args_test_selection": tests,
        "pytest_add_cli_args": ["-p", "no:cacheprovider", "-p", "no:xdist", "-q"],
    }
    text = ["[mutmut]"]
    for key, values in listed.items():
        text += [f"{key}=", *(f"    {value}" for value in values)]
    text += ["use_git_change_detection=false", "track_dependencies=false"]
    (work / "setup.cfg").write_text("\n".join(text) + "\n", encoding="utf-8")


def tell(work: Path, own: dict[str, str]) -> None:
    """Print the figures of each module, and every mutant that no test noticed."""
    shown = subprocess.run(
        [sys.executable, "-m", "mutmut", "results", "--all", "true"],
        cwd=work, env=own, capture_output=True, text=True, check=True,
    ).stdout  # fmt: skip
    figures: defaultdict[str, Counter[str]] = defaultdict(Counter)
    alive: list[str] = []
    for line in shown.splitlines():
        name, _, status = line.strip().partition(": ")
        if not status:
            continue
        module = name.split(".x", 1)[0]
        figures[module][status] += 1
        if status not in CAUGHT:
            alive.append(name)
    (work / "figures.json").write_text(json.dumps(figures, indent=1), encoding="utf-8")
    print(f"{'module':40} {'mutants':>8} {'caught':>7} {'share':>6}")
    everything = caught = 0
    for module, counts in sorted(figures.items()):
        total, good = sum(counts.values()), sum(n for s, n in counts.items() if s in CAUGHT)
        everything, caught = everything + total, caught + good
        print(f"{module:40} {total:8} {good:7} {100 * good / total:5.1f}%")
    print(f"{'all':40} {everything:8} {caught:7} {100 * caught / max(everything, 1):5.1f}%\n")
    for name in alive:
        changed = subprocess.run(
            [sys.executable, "-m", "mutmut", "show", name],
            cwd=work, env=own, capture_output=True, text=True, check=False,
        ).stdout  # fmt: skip
        kept = [
            line
            for line in changed.splitlines()
            if line.startswith(("+", "-")) and not line.startswith(("+++", "---"))
        ]
        print(name, *kept, sep="\n", end="\n\n")


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("targets", nargs="*", choices=[[], *TARGETS], default=[])
    parser.add_argument("--work", type=Path, required=True, help="an empty folder to work in")
    parser.add_argument("--tell", action="store_true", help="only print what was found before")
    options = parser.parse_args()
    work = options.work.resolve()
    own = {name: value for name, value in os.environ.items() if name != "PYTHONPATH"}
    if not options.tell:
        work.mkdir(parents=True, exist_ok=True)
        lay_out(work, options.targets or list(TARGETS))
        subprocess.run(
            [sys.executable, "-m", "mutmut", "run", "--max-children", "1"],
            cwd=work, env=own, check=True,
        )  # fmt: skip
    tell(work, own)


if __name__ == "__main__":
    main()
