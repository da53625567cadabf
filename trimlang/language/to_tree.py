"""Turns lark's parse of one line into a statement of ``trimlang.language.tree``.

The methods are named after the grammar's rules.  A rule without a method of its own
states a setting: the table's rows say which.
"""

from __future__ import annotations

from typing import Any

from lark.tree import Meta

from trimlang.language import facts, tree
from trimlang.language.log_lines import Children
from trimlang.language.number_rules import NumberRules
from trimlang.language.stock_lines import fact_of
from trimlang.settings.setting_kinds import RoundingSetting, Switch
from trimlang.settings.table import Settings, rows_of


class LineBuilder(NumberRules):
    """Builds the statement of one line, and collects what is odd about it."""

    # ---- parts of lines -------------------------------------------------------------

    thick, tall, spring = fact_of(facts.Thick), fact_of(facts.Tall), fact_of(facts.Spring)
    girth, one_way = fact_of(facts.Girth), fact_of(facts.OneWay)
    block_wide, block_tall = fact_of(facts.BlockWide), fact_of(facts.BlockTall)
    block_price = fact_of(facts.BlockPrice)
    material = fact_of(facts.Material)

    def flexible(self, meta: Meta, children: Children) -> facts.Flexible:
        return facts.Flexible(children[0] if children else None, self._span(meta))

    def in_front_of(self, meta: Meta, children: Children) -> facts.InFrontOf:
        return facts.InFrontOf(children[-1], self._span(meta))

    def stands_on(self, meta: Meta, children: Children) -> facts.StandsOn:
        return facts.StandsOn(children[-1], self._span(meta))

    def __default__(self, data: Any, children: Children, meta: Meta) -> facts.Stated:
        rule, span = str(data), self._span(meta)
        rows = rows_of(rule)
        for row in rows:
            # “round cope” has a rule of its own, in which the end's name is no word that could be
            # read.
            if isinstance(row, RoundingSetting) and rule in dict(row.named):
                children = [tree.Word(dict(row.named)[rule], span), *children]
        yes = any(isinstance(row, Switch) and row.on == rule for row in rows)
        return facts.Stated(rows=rows, values=tuple(children), yes=yes, span=span)

    # ---- lines ----------------------------------------------------------------------

    def job(self, meta: Meta, children: Children) -> tree.Heading:
        return tree.Heading(tree.Topic.JOB, children[0], self._span(meta))

    def surveyed(self, meta: Meta, children: Children) -> tree.Heading:
        return tree.Heading(tree.Topic.SURVEYED, children[0], self._span(meta))

    def currency(self, meta: Meta, children: Children) -> tree.Heading:
        return tree.Heading(tree.Topic.CURRENCY, children[0], self._span(meta))

    def include(self, meta: Meta, children: Children) -> tree.Include:
        return tree.Include(children[0], self._span(meta))

    def trim(self, meta: Meta, children: Children) -> tree.TrimLine:
        return tree.TrimLine(children[0], tuple(children[1:]), self._span(meta))

    def block(self, meta: Meta, children: Children) -> tree.BlockLine:
        return tree.BlockLine(children[0], tuple(children[1:]), self._span(meta))

    def returned(self, _meta: Meta, _children: Children) -> bool:
        return True

    def head_member(self, meta: Meta, children: Children) -> facts.WrittenMember:
        return facts.WrittenMember(
            trim=children[0],
            overhang=next((one for one in children if isinstance(one, tree.Measure)), None),
            returned=True in children,
            span=self._span(meta),
        )

    def head_stack(self, meta: Meta, children: Children) -> tree.HeadLine:
        return tree.HeadLine(children[0], tuple(children[1:]), self._span(meta))

    def _settings(self, meta: Meta, children: Children) -> tree.SettingLine:
        return tree.SettingLine(tuple(children), self._span(meta))

    saw = corners = splices = kerfs = casings = nails = caulk = filler = paint = _settings
    putty = glue = primer = _settings

    def line(self, _meta: Meta, children: Children) -> tree.Statement | None:
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
