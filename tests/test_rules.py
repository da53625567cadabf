"""The rules of DEVELOPERS.md that a machine can hold."""

from __future__ import annotations

import ast
import re
from collections import defaultdict
from functools import cache
from graphlib import TopologicalSorter
from pathlib import Path

from importlinter.cli import EXIT_STATUS_SUCCESS, lint_imports

from tests import jobs
from tests.conftest import ROOT

PACKAGE = ROOT / "trimlang"
MOST_LINES = 300
MOST_VALUES = 4
MOST_IN_A_ROW = 6
CODE = re.compile(r"T[1-7]\d\d")

SAYING = ("say", "UnreadableError", "PlanFileError")
"""A code stands where its diagnostic is made: in a call of one of these."""

OF_ROWS = {"too_much", "wrong_end", "code"}
"""Rows of settings and of known slips say with which code they answer."""


WRITTEN_TWICE = {"trimlang/stock/checking/rack_check.py"}
"""What checks the planner has figures of its own, also where they are alike."""

AT_A_DOOR = {
    "trimlang/__init__.py": "importing trimlang loads nothing that is not asked for",
    "trimlang/cli/__init__.py": "a stop while the command loads is answered too",
    "trimlang/cli/compare.py": "jinja2, where a page is wanted",
    "trimlang/cli/mark.py": "most logs are of one job",
    "trimlang/cli/watching.py": "watchfiles, which may not be installed",
    "trimlang/compiler.py": "check does not plan, and most jobs have no log",
    "trimlang/diagnostics/diagnostic.py": "most files have nothing that a page is needed for",
    "trimlang/language/parse.py": "most files have no line that cannot be read",
    "trimlang/output/job_files.py": "jinja2, where pages are wanted",
    "trimlang/planning/moved_joints.py": "highspy and numpy, which a quick plan does without",
    "trimlang/sheets/render/pdf.py": "xml, where a PDF is wanted",
    "trimlang/survey/survey.py": "most jobs have no log",
    "trimlang/survey/closing.py": "most rooms close",
    "trimlang/survey/near_names.py": "most jobs name no trim that they do not have",
    "trimlang/stock/planner.py": "highspy and numpy, where lengths alone prove nothing",
}
"""Modules that import some of our own inside functions, and why.

So may a command's own door, which is ``run`` in a module that describes the command.
"""

LATE = {
    **dict.fromkeys(
        ("cssselect2", "ezdxf", "highspy", "numpy", "pint", "rich", "segno", "shtab", "weasyprint"),
        "slow to load",
    ),
    "pygls": "may not be installed",
    "importlib": "its parts for archives and versions take a tenth of a check to load",
    **dict.fromkeys(("difflib", "json"), "half a hundredth of a check, which most need not"),
    "multiprocessing": "half a hundredth of a build, which only a PDF needs",
    **dict.fromkeys(("fcntl", "msvcrt", "resource"), "not on every system"),
}
"""Other libraries that are imported inside functions, and why."""

OTHERS_PRIVATE_NAMES = {"_actions", "_SubParsersAction", "_page_box"}
"""What argparse and WeasyPrint do not tell in another way."""


@cache
def modules() -> dict[str, ast.Module]:
    """Return the syntax tree of each module, by its path from the project's folder."""
    return {
        path.relative_to(ROOT).as_posix(): ast.parse(path.read_text(encoding="utf-8"))
        for path in sorted(PACKAGE.rglob("*.py"))
        if "made" not in path.relative_to(PACKAGE).parts
    }


@cache
def nodes(path: str) -> tuple[ast.AST, ...]:
    """Return all that stands in a module's tree."""
    return tuple(ast.walk(modules()[path]))


@cache
def calls(path: str) -> tuple[tuple[str, ast.Call], ...]:
    """Return the last name of what is called, and the call, of all calls in a module."""
    return tuple(
        (node.func.attr if isinstance(node.func, ast.Attribute) else ast.unparse(node.func), node)
        for node in nodes(path)
        if isinstance(node, ast.Call)
    )


def is_record(node: ast.ClassDef) -> bool:
    names = {ast.unparse(one).partition("(")[0] for one in node.decorator_list}
    return bool(names & {"record", "dataclass"})


def test_layers_are_kept(monkeypatch) -> None:
    monkeypatch.chdir(ROOT)
    assert lint_imports(no_cache=True) == EXIT_STATUS_SUCCESS


def test_no_modules_name_each_other() -> None:
    """Not even late, or for their types alone: of two such modules neither is read first."""
    names = {path.removesuffix(".py").replace("/", "."): path for path in modules()}
    graph: dict[str, set[str]] = {}
    for name, path in names.items():
        found = {
            f"{node.module}.{one.name}" if f"{node.module}.{one.name}" in names else node.module
            for node in nodes(path)
            if isinstance(node, ast.ImportFrom)
            for one in node.names
        }
        graph[name] = {one for one in found if one in names and one != name}
    assert sum(map(len, graph.values())) > len(graph)
    TopologicalSorter(graph).prepare()  # raises an error that has the circle


def test_each_file_has_a_name_of_its_own() -> None:
    seen = defaultdict(list)
    for path in modules():
        if Path(path).stem not in ("__init__", "__main__"):
            seen[Path(path).stem].append(path)
    assert [paths for paths in seen.values() if len(paths) > 1] == []


def test_each_class_has_a_name_of_its_own() -> None:
    seen = defaultdict(list)
    for path in modules():
        for node in nodes(path):
            if isinstance(node, ast.ClassDef):
                seen[node.name].append(path)
    assert {name: paths for name, paths in seen.items() if len(paths) > 1} == {}


def test_no_constant_stands_twice() -> None:
    seen = defaultdict(list)
    for path, tree in modules().items():
        for node in tree.body:
            if not isinstance(node, ast.AnnAssign | ast.Assign) or node.value is None:
                continue
            target = node.target if isinstance(node, ast.AnnAssign) else node.targets[0]
            name = ast.unparse(target).lstrip("_")
            if name.isupper() and path not in WRITTEN_TWICE:
                value = ast.unparse(node.value)
                # two numbers may be alike and mean two things; no two patterns, tables or texts
                number = re.fullmatch(r"(Fraction)?[\de\s.,()<*/+-]+", value)
                seen[name if number else "", value].append(path)
    assert {key: paths for key, paths in seen.items() if len(paths) > 1} == {}


def test_codes_stand_where_diagnostics_are_made() -> None:
    wrong = []
    for path in modules():
        if path.startswith("trimlang/diagnostics/"):
            continue
        made = {
            id(inner)
            for name, call in calls(path)
            if name.lstrip("_").startswith(SAYING)
            for inner in ast.walk(call)
        }
        made |= {
            id(node.value)
            for node in nodes(path)
            if (isinstance(node, ast.keyword) and node.arg in OF_ROWS)
            or (isinstance(node, ast.AnnAssign) and ast.unparse(node.target) in OF_ROWS)
        }
        wrong += [
            (path, node.lineno, node.value)
            for node in nodes(path)
            if isinstance(node, ast.Constant)
            and isinstance(node.value, str)
            and CODE.fullmatch(node.value)
            and id(node) not in made
        ]
    assert wrong == []


def test_joints_are_named_in_their_table_only() -> None:
    found = {
        f"{path}:{node.lineno} {ast.unparse(node)}"
        for path in modules()
        if path not in {"trimlang/joints.py", "trimlang/joints_by_role.py"}
        for node in nodes(path)
        if isinstance(node, ast.Attribute) and node.attr.isupper()
        if isinstance(node.value, ast.Name) and node.value.id == "Joint"
    }
    assert not found, "ask the joint's row, or name what happens there in joints_by_role"


def test_records_are_made_with_keywords() -> None:
    records = {
        node.name
        for path in modules()
        for node in nodes(path)
        if isinstance(node, ast.ClassDef) and is_record(node)
    }
    wrong = [
        (path, call.lineno, name)
        for path in modules()
        for name, call in calls(path)
        if name in records and len(call.args) > MOST_VALUES
    ]
    assert wrong == []


def test_modules_stay_small() -> None:
    long = [
        path
        for path in modules()
        if len((ROOT / path).read_text(encoding="utf-8").splitlines()) > MOST_LINES
    ]
    assert not long


def test_no_call_gives_many_values_in_a_row() -> None:
    """Who reads a call with seven values one after the other cannot tell which is which."""
    wrong = []
    for path in modules():
        for node in nodes(path):
            if isinstance(node, ast.FunctionDef):
                names = [one.arg for one in (*node.args.posonlyargs, *node.args.args)]
                in_a_row = len(names) - (names[:1] in (["self"], ["cls"]))
                if in_a_row > MOST_IN_A_ROW:
                    wrong.append((path, node.name, in_a_row))
    assert wrong == []


def test_what_a_constant_is_stands_below_it() -> None:
    """A comment above says why it is so; there is no third way."""
    assert [
        path for path in modules() if re.search(r"^\s*#:", (ROOT / path).read_text(), re.M)
    ] == []


def imported_late(path: str) -> list[tuple[ast.FunctionDef | ast.AsyncFunctionDef, str]]:
    """Return what functions of a module import: each function, and the module that it names."""
    return [
        (function, name)
        for function in nodes(path)
        if isinstance(function, ast.FunctionDef | ast.AsyncFunctionDef)
        for node in ast.walk(function)
        if isinstance(node, ast.Import | ast.ImportFrom)
        for name in (
            [node.module or ""]
            if isinstance(node, ast.ImportFrom)
            else [one.name for one in node.names]
        )
    ]


def is_a_door(path: str, function: ast.FunctionDef | ast.AsyncFunctionDef) -> bool:
    """Tell whether a command begins in a function."""
    described = any(
        isinstance(node, ast.FunctionDef) and node.name == "describe"
        for node in modules()[path].body
    )
    return path.startswith("trimlang/cli/") and described and function.name == "run"


def test_modules_are_imported_at_the_top() -> None:
    late = [(path, *one) for path in modules() for one in imported_late(path)]
    ours = {
        path
        for path, function, name in late
        if name.startswith("trimlang") and not is_a_door(path, function)
    }
    assert ours == set(AT_A_DOOR)
    others = {name.partition(".")[0] for _, _, name in late} - {"trimlang"}
    assert others == set(LATE)


def test_tests_use_public_names() -> None:
    private = [
        f"{path.relative_to(ROOT)}:{node.lineno} {name}"
        for path in sorted((ROOT / "tests").rglob("*.py"))
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        for name in private_names(node)
    ]
    assert not private


def private_names(node: ast.AST) -> list[str]:
    """Return names with an underscore in front that a node takes from elsewhere."""
    names: list[str] = []
    if isinstance(node, ast.ImportFrom) and (node.module or "").startswith("trimlang"):
        names = [one.name for one in node.names]
    elif isinstance(node, ast.Attribute):
        if node.attr.startswith("_") and ast.unparse(node.value) not in {"self", "os"}:
            names = [node.attr]
    elif isinstance(node, ast.Call) and ast.unparse(node.func).endswith("setattr"):
        texts = [one.value for one in node.args[:2] if isinstance(one, ast.Constant)]
        names = [text.rpartition(".")[2] for text in texts if isinstance(text, str)]
    return [
        name for name in names if re.match(r"_[A-Za-z]", name) and name not in OTHERS_PRIVATE_NAMES
    ]


def test_lines_that_jobs_share_stand_once() -> None:
    shared = [
        line
        for name, line in vars(jobs).items()
        if name.isupper() and isinstance(line, str) and "\n" not in line
    ]
    assert shared
    again = [
        f"{path.relative_to(ROOT)}: {line}"
        for path in sorted((ROOT / "tests").rglob("*.py"))
        if path != Path(jobs.__file__)
        for line in shared
        if re.search(rf"{re.escape(line)}(\\n|$)", path.read_text(encoding="utf-8"), re.MULTILINE)
    ]
    assert not again, "tests/jobs.py has these lines"


ACROSS = {"compatibility", "corpus", "laws", "proof", "published", "story", "trust"}
"""Folders of tests that ask the whole, as a user or a stranger would."""


def test_folders_of_tests_mirror_the_package() -> None:
    folders = {path.parent.name for path in (ROOT / "tests").glob("*/__init__.py")} - ACROSS
    assert folders <= {path.parent.name for path in PACKAGE.glob("*/__init__.py")}
