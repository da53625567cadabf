"""Turns lark's parse of one line into a statement of ``trimlang.language.tree``.

The methods are named after the grammar's rules.  A rule without a method of its own
states a setting: the table's rows say which.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any, TypeAlias

from lark import v_args
from lark.tree import Meta

from trimlang.diagnostics import say
from trimlang.language import facts, tree
from trimlang.language.log_lines import PackOf, first
from trimlang.language.number_rules import NumberRules
from trimlang.language.wall_lines import fact_of
from trimlang.record import record
from trimlang.settings.setting_kinds import RoundingSetting, Switch
from trimlang.settings.table import Settings, rows_of

Children: TypeAlias = list[Any]


@record
class _AtMost:
    """``at most 6``: on its way into an offer."""

    number: tree.Number


class LineBuilder(NumberRules):
    """Builds the statement of one line, and collects what is odd about it."""

    # ---- parts of lines -------------------------------------------------------------

    thick, tall, spring = fact_of(facts.Thick), fact_of(facts.Tall), fact_of(facts.Spring)
    material = fact_of(facts.Material)

    @v_args(meta=True)
    def in_front_of(self, meta: Meta, children: Children) -> facts.InFrontOf:
        return facts.InFrontOf(children[-1], self._span(meta))

    @v_args(meta=True)
    def per(self, meta: Meta, children: Children) -> tree.Per:
        # “foot” says nothing, as the unit of a length does not
        return tree.Per("m" if children else "ft", self._span(meta))

    def at_most(self, children: Children) -> _AtMost:
        return _AtMost(children[0])

    @v_args(meta=True)
    def offer(self, meta: Meta, children: Children) -> tree.WrittenOffer:
        pack, most = first(children, PackOf), first(children, _AtMost)
        return tree.WrittenOffer(
            length=first(children, tree.Measure),
            price=first(children, tree.Price),
            pack=None if pack is None else pack.number,
            at_most=None if most is None else most.number,
            per=first(children, tree.Per),
            span=self._span(meta),
        )

    @v_args(meta=True)
    def rest(self, meta: Meta, children: Children) -> tree.WrittenRest:
        return tree.WrittenRest(
            first(children, tree.Number),
            first(children, tree.Measure),
            first(children, tree.Price),
            self._span(meta),
        )

    def __default__(self, data: Any, children: Children, meta: Meta) -> facts.Stated:
        rule, span = str(data), self._span(meta)
        rows = rows_of(rule)
        for row in rows:
            if isinstance(row, RoundingSetting) and rule in dict(row.named):
                children = [tree.Word(dict(row.named)[rule], span), *children]
        yes = any(isinstance(row, Switch) and row.on == rule for row in rows)
        return facts.Stated(rows=rows, values=tuple(children), yes=yes, span=span)

    # ---- lines ----------------------------------------------------------------------

    @v_args(meta=True)
    def job(self, meta: Meta, children: Children) -> tree.Heading:
        return tree.Heading(tree.Topic.JOB, children[0], self._span(meta))

    @v_args(meta=True)
    def surveyed(self, meta: Meta, children: Children) -> tree.Heading:
        return tree.Heading(tree.Topic.SURVEYED, children[0], self._span(meta))

    @v_args(meta=True)
    def currency(self, meta: Meta, children: Children) -> tree.Heading:
        return tree.Heading(tree.Topic.CURRENCY, children[0], self._span(meta))

    @v_args(meta=True)
    def include(self, meta: Meta, children: Children) -> tree.Include:
        return tree.Include(children[0], self._span(meta))

    @v_args(meta=True)
    def trim(self, meta: Meta, children: Children) -> tree.TrimLine:
        return tree.TrimLine(children[0], tuple(children[1:]), self._span(meta))

    @v_args(meta=True)
    def stock(self, meta: Meta, children: Children) -> tree.StockLine:
        name, *offers = children
        kept: list[tree.WrittenOffer] = []
        for offer in offers:
            before = kept[-1].price if kept else None
            if before is None or not self._is_decimals(before, offer):
                kept.append(offer)
        return tree.StockLine(name, tuple(kept), self._span(meta))

    def _is_decimals(self, price: tree.Price, offer: tree.WrittenOffer) -> bool:
        """Tell of ``17,40``, which reads as a price and a further stick of 40 without one."""
        (amount, unit), *more = offer.length.parts
        at, end = price.span.end + 1, offer.length.span.end
        if offer.price or unit or more or amount.denominator != 1 or offer.length.span.column != at:
            return False
        span = replace(price.span, end=end)
        better = f"{price.amount}.{str(amount).zfill(end - at)}"
        self.problems.append(say("T114", span, better=better))
        return True

    @v_args(meta=True)
    def on_hand(self, meta: Meta, children: Children) -> tree.OnHandLine:
        return tree.OnHandLine(children[0], tuple(children[1:]), self._span(meta))

    @v_args(meta=True)
    def _settings(self, meta: Meta, children: Children) -> tree.SettingLine:
        return tree.SettingLine(tuple(children), self._span(meta))

    saw = corners = splices = casings = nails = caulk = filler = paint = _settings

    def line(self, children: Children) -> tree.Statement | None:
        """A line of one bare setting (``spare 10 %``) becomes a setting line too."""
        if not children:
            return None
        child = children[0]
        if isinstance(child, facts.WrittenTaken):
            at = tree.Word(child.at.value, child.span)
            child = facts.Stated(rows=(Settings.taken,), values=(at,), yes=False, span=child.span)
        if isinstance(child, facts.Stated):
            return tree.SettingLine((child,), child.span)
        statement: tree.Statement = child
        return statement
