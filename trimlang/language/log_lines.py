"""Builds the lines of the site log: what was cut, spoiled, bought and counted."""

from __future__ import annotations

from typing import Any, TypeAlias

from lark import Token, Transformer, v_args
from lark.tree import Meta

from trimlang.diagnostics import Span
from trimlang.language import tree

Children: TypeAlias = list[Any]


class LogLines(Transformer[Token, Any]):
    """The rules of the log; ``LineBuilder`` adds all others."""

    def __init__(self, file: str, line: int) -> None:
        super().__init__()
        self._file = file
        self._line = line

    def _span(self, meta: Meta) -> Span:
        if meta.empty:
            return Span(self._file, self._line, 1, 2)
        return Span(self._file, self._line, meta.column, meta.end_column)

    @v_args(meta=True)
    def from_stick(self, meta: Meta, children: Children) -> tree.FromStick:
        return tree.FromStick(
            first(children, tree.Word), first(children, tree.Measure), self._span(meta)
        )

    @v_args(meta=True)
    def cut_piece(self, meta: Meta, children: Children) -> tree.Sawn:
        rests = next((child.values for child in children if isinstance(child, tree.Fact)), ())
        return tree.Sawn(
            children[0],
            first(children, tree.Measure),
            tuple(rest for rest in rests if isinstance(rest, tree.Measure)),
            first(children, tree.FromStick),
            self._span(meta),
        )

    wasted = shorter = cut_piece

    @v_args(meta=True)
    def cut(self, meta: Meta, children: Children) -> tree.LogLine:
        return tree.LogLine("cut", tuple(children), self._span(meta))

    @v_args(meta=True)
    def spoiled(self, meta: Meta, children: Children) -> tree.LogLine:
        return tree.LogLine("spoiled", tuple(children), self._span(meta))

    @v_args(meta=True)
    def shortened(self, meta: Meta, children: Children) -> tree.LogLine:
        return tree.LogLine("shortened", tuple(children), self._span(meta))

    @v_args(meta=True)
    def fitted(self, meta: Meta, children: Children) -> tree.LogLine:
        pieces = tuple(tree.Sawn(word, None, (), None, word.span) for word in children)
        return tree.LogLine("fitted", pieces, self._span(meta))

    @v_args(meta=True)
    def purchase(self, meta: Meta, children: Children) -> tree.Purchase:
        pack = next((child.values[0] for child in children if isinstance(child, tree.Fact)), None)
        return tree.Purchase(
            first(children, tree.Number),
            pack if isinstance(pack, tree.Number) else None,
            first(children, tree.Word),
            first(children, tree.Measure),
            first(children, tree.Price),
            self._span(meta),
        )

    @v_args(meta=True)
    def bought(self, meta: Meta, children: Children) -> tree.BoughtLine:
        return tree.BoughtLine(tuple(children), self._span(meta))

    @v_args(meta=True)
    def rack(self, meta: Meta, children: Children) -> tree.RackLine:
        return tree.RackLine(children[0], tuple(children[1:]), self._span(meta))


def first(children: Children, kind: type[Any]) -> Any:
    """Return the first child of a kind, None where there is none."""
    return next((child for child in children if isinstance(child, kind)), None)
