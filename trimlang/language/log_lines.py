"""Builds the statements of the site log: what was cut, spoiled, bought and counted."""

from __future__ import annotations

from typing import Any, TypeAlias

from lark import Token, Transformer, Tree
from lark.tree import Meta
from lark.visitors import Discard

from trimlang.diagnostics import Span
from trimlang.language import tree
from trimlang.record import record

Children: TypeAlias = list[Any]


@record
class PackOf:
    """``pack of 10``, until it is put into a purchase or an offer."""

    number: tree.Number


class LogLines(Transformer[Token, Any]):
    """The grammar's rules for the log; ``LineBuilder`` adds all others.

    Each rule has a method of its name, which is given the place of what the rule has read and what
    its parts became.
    """

    def __init__(self, file: str, line: int) -> None:
        super().__init__()
        self._file = file
        self._line = line

    def _transform_tree(self, tree: Tree[Any]) -> Any:
        # Lark looks for a method of each word too; and its ``v_args(meta=True)``, which gives the
        # place, wraps the method anew for each call.
        children = []
        for part in tree.children:
            is_rule = isinstance(part, Tree)
            made = self._transform_tree(part) if is_rule else self.__default_token__(part)  # type: ignore[no-untyped-call]
            if made is not Discard:
                children.append(made)
        method = getattr(self, tree.data, None)
        if method is None:
            return self.__default__(tree.data, children, tree.meta)  # type: ignore[no-untyped-call]
        return method(tree.meta, children)

    def _span(self, meta: Meta) -> Span:
        if meta.empty:
            return Span(self._file, self._line, 1, 2)
        return Span(self._file, self._line, meta.column, meta.end_column)

    def from_stick(self, meta: Meta, children: Children) -> tree.FromStick:
        return tree.FromStick(
            first(children, tree.Word), first(children, tree.Measure), self._span(meta)
        )

    def into(self, _meta: Meta, children: Children) -> tuple[tree.Measure, ...]:
        return tuple(children)

    def cut_piece(self, meta: Meta, children: Children) -> tree.Sawn:
        return tree.Sawn(
            piece=children[0],
            length=first(children, tree.Measure),
            rests=first(children, tuple) or (),
            source=first(children, tree.FromStick),
            span=self._span(meta),
        )

    # The grammar has three rules because different parts may follow; what is built is the same.
    wasted = shorter = cut_piece

    def cut(self, meta: Meta, children: Children) -> tree.LogLine:
        return tree.LogLine(tree.Deed.CUT, tuple(children), self._span(meta))

    def spoiled(self, meta: Meta, children: Children) -> tree.LogLine:
        return tree.LogLine(tree.Deed.SPOILED, tuple(children), self._span(meta))

    def shortened(self, meta: Meta, children: Children) -> tree.LogLine:
        return tree.LogLine(tree.Deed.SHORTENED, tuple(children), self._span(meta))

    def fitted(self, meta: Meta, children: Children) -> tree.LogLine:
        pieces = tuple(
            # What is fitted was cut before, so a line says nothing but which piece it is.
            tree.Sawn(piece=word, length=None, rests=(), source=None, span=word.span)
            for word in children
        )
        return tree.LogLine(tree.Deed.FITTED, pieces, self._span(meta))

    def purchase(self, meta: Meta, children: Children) -> tree.WrittenPurchase:
        pack = first(children, PackOf)
        return tree.WrittenPurchase(
            count=first(children, tree.Number),
            pack=None if pack is None else pack.number,
            trim=first(children, tree.Word),
            length=first(children, tree.Measure),
            price=first(children, tree.Price),
            span=self._span(meta),
        )

    def pack(self, _meta: Meta, children: Children) -> PackOf:
        return PackOf(children[0])

    def bought(self, meta: Meta, children: Children) -> tree.BoughtLine:
        return tree.BoughtLine(tuple(children), self._span(meta))

    def rack(self, meta: Meta, children: Children) -> tree.RackLine:
        return tree.RackLine(children[0], tuple(children[1:]), self._span(meta))


def first(children: Children, kind: type[Any]) -> Any:
    """Return the first child of a type, None where there is none."""
    return next((child for child in children if isinstance(child, kind)), None)
