"""Small changes to functions, one at a time, and how to put one in the place of its function.

The changes are mutmut's operators.  A mutant is not a changed file: its function's code
object takes the place of the original's, so that it is in force wherever the function was
imported, cached or made a property, and no module is loaded again.
"""

from __future__ import annotations
import __future__

import ast
import difflib
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from hashlib import sha256
from importlib import import_module
from pathlib import Path
from types import FunctionType
from typing import Any

import libcst as cst
from libcst.metadata import MetadataWrapper, PositionProvider
from mutmut.mutation.mutators import mutation_operators

# their results are never anything but a number or a yes
LEFT_ALONE = {"len", "isinstance"}


@dataclass(frozen=True)
class Mutant:
    """One change: the function, what it says then, and the lines that must run to show it."""

    module: str
    function: str
    was: str
    now: str
    text: str
    first: int
    last: int
    digest: str

    @property
    def name(self) -> str:
        """How the list of harmless ones and the report call it."""
        return f"{self.module.removeprefix('trimlang.')}.{self.function}: {self.was} → {self.now}"

    @property
    def key(self) -> str:
        """Its name in the file of results, which knows also how often a line has the change."""
        return f"{self.digest} {self.name}"

    def put_in_place(self) -> None:
        """Let the function do what the mutant says, wherever it is called from."""
        module = import_module(self.module)
        space = dict(vars(module))
        code = compile(
            self.text, f"<{self.name}>", "exec", __future__.annotations.compiler_flag, True
        )
        exec(code, space)  # noqa: S102  the tree's own code
        new, old = space[self.function.rpartition(".")[2]], _function(module, self.function)
        old.__code__ = new.__code__
        old.__defaults__ = new.__defaults__
        old.__kwdefaults__ = new.__kwdefaults__


def _function(module: object, path: str) -> FunctionType:
    found: Any = module
    for word in path.split("."):
        found = vars(found)[word]
    for around in ("fget", "__func__", "__wrapped__"):
        found = getattr(found, around, found)
    assert isinstance(found, FunctionType), path
    return found


def mutants_of(path: Path, module: str) -> list[Mutant]:
    """Return every mutant of a file, in the order of its lines."""
    return list(_Functions(path.read_text(encoding="utf-8"), module).mutants())


class _Functions(cst.CSTVisitor):
    """Finds the functions of a file (methods too; a function within one belongs to that)."""

    METADATA_DEPENDENCIES = (PositionProvider,)

    def __init__(self, text: str, module: str) -> None:
        super().__init__()
        self.module = module
        self.wrapped = MetadataWrapper(cst.parse_module(text))
        self.lines = _Lines(text)
        self.classes: list[str] = []
        self.found: list[tuple[str, cst.FunctionDef]] = []
        self.places = self.wrapped.resolve(PositionProvider)
        self.wrapped.module.visit(self)

    def visit_ClassDef(self, node: cst.ClassDef) -> None:  # noqa: N802  libcst's names
        self.classes.append(node.name.value)

    def leave_ClassDef(self, original_node: cst.ClassDef) -> None:  # noqa: N802, ARG002
        self.classes.pop()

    def visit_FunctionDef(self, node: cst.FunctionDef) -> bool:  # noqa: N802
        self.found.append((".".join([*self.classes, node.name.value]), node))
        return False

    def mutants(self) -> Iterator[Mutant]:
        for name, node in self.found:
            bare = node.with_changes(decorators=(), leading_lines=())
            text = _text_of(bare)
            digest = sha256(text.encode()).hexdigest()[:12]
            for count, (old, new) in enumerate(_changes(bare)):
                changed = _text_of(bare.visit(_Swap(old, new)))  # type: ignore[arg-type]
                was, now = _difference(text, changed)
                first, last = self.lines.around(self._line(old, node))
                yield Mutant(self.module, name, was, now, changed, first, last, f"{digest}-{count}")

    def _line(self, old: cst.CSTNode, function: cst.FunctionDef) -> int:
        place = self.places.get(old) or self.places[function.name]
        return int(place.start.line)


def _changes(function: cst.FunctionDef) -> Iterator[tuple[cst.CSTNode, cst.CSTNode]]:
    for node in _below(function):
        for kind, operator in mutation_operators:
            if isinstance(node, kind):
                for new in operator(node):
                    if not _without_guard(node, new):
                        yield node, new


def _is_strict(node: cst.CSTNode) -> bool:
    """Tell whether this is zip's guard against a mistake of ours, which else does nothing."""
    return isinstance(node, cst.Arg) and node.keyword is not None and node.keyword.value == "strict"


def _without_guard(old: cst.CSTNode, new: cst.CSTNode) -> bool:
    """Tell whether a call only lost its guard, or has another."""
    if not (isinstance(old, cst.Call) and isinstance(new, cst.Call)):
        return False
    was, now = ([_text_of(arg) for arg in call.args if _is_strict(arg)] for call in (old, new))
    return was != now


def _below(node: cst.CSTNode) -> Iterator[cst.CSTNode]:
    """Everything that may change: no annotations, no defaults that are worked out."""
    if _is_strict(node):
        return
    if isinstance(node, cst.Annotation | cst.Decorator) or (
        isinstance(node, cst.Call)
        and isinstance(node.func, cst.Name)
        and node.func.value in LEFT_ALONE
    ):
        return
    if isinstance(node, cst.Param) and not isinstance(
        node.default, cst.Name | cst.BaseNumber | cst.BaseString
    ):
        return
    yield node
    for child in node.children:
        yield from _below(child)


class _Swap(cst.CSTTransformer):
    def __init__(self, old: cst.CSTNode, new: cst.CSTNode) -> None:
        super().__init__()
        self.old, self.new = old, new

    def on_leave(self, original_node: Any, updated_node: Any) -> Any:
        return self.new if original_node is self.old else updated_node


class _Lines:
    """Which lines are one statement."""

    def __init__(self, text: str) -> None:
        self.spans = [
            (node.lineno, node.end_lineno or node.lineno)
            for node in ast.walk(ast.parse(text))
            if isinstance(node, ast.stmt)
        ]

    def around(self, line: int) -> tuple[int, int]:
        """Return the first and last line of the shortest statement with this line."""
        return min(
            (span for span in self.spans if span[0] <= line <= span[1]),
            key=lambda span: span[1] - span[0],
        )


def _text_of(node: cst.CSTNode) -> str:
    return cst.Module([]).code_for_node(node)


def _difference(before: str, after: str) -> tuple[str, str]:
    was: list[str] = []
    now: list[str] = []
    for line in difflib.ndiff(before.splitlines(), after.splitlines()):
        if line.startswith("- "):
            was.append(line[2:].strip())
        elif line.startswith("+ "):
            now.append(line[2:].strip())
    return " ".join(was), " ".join(now)


def all_mutants(root: Path, patterns: Iterable[str]) -> list[Mutant]:
    """Return the mutants of every file that matches."""
    found: list[Mutant] = []
    for pattern in patterns:
        for path in sorted(root.glob(pattern)):
            module = ".".join(path.relative_to(root).with_suffix("").parts)
            found += mutants_of(path, module)
    return found
