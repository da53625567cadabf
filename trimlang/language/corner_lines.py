"""Builds what is said of a corner: how it was measured, and that it is rounded."""

from __future__ import annotations

from lark.tree import Meta

from trimlang.joints_by_role import USUAL
from trimlang.language import facts, tree
from trimlang.language.log_lines import Children
from trimlang.language.stock_lines import StockLines
from trimlang.language.vocabulary import whole_joint


class CornerLines(StockLines):
    """The rules of corners; ``StairPhrases`` adds those of stairs."""

    def by_mitre(self, meta: Meta, children: Children) -> facts.WrittenCorner:
        return facts.WrittenCorner(facts.MitreThere(*children), self._span(meta))

    def by_diagonal(self, meta: Meta, children: Children) -> facts.WrittenCorner:
        return facts.WrittenCorner(facts.Diagonal(*children), self._span(meta))

    def out_of_plumb(self, meta: Meta, children: Children) -> facts.WrittenCorner:
        # Between the two angles stands nothing but words.
        floor, top = (one for one in children if isinstance(one, tree.Angle))
        return facts.WrittenCorner(facts.OutOfPlumb(floor, top), self._span(meta))

    def block_here(self, meta: Meta, children: Children) -> facts.BlockHere:
        block, *trims = children
        return facts.BlockHere(block, tuple(trims), self._span(meta))

    def bullnose(self, meta: Meta, children: Children) -> facts.Bullnose:
        radius = children[-1]
        return facts.Bullnose(radius, len(children) > 1, self._span(meta))

    def own_cope(self, meta: Meta, _children: Children) -> tree.WrittenEnd:
        span = self._span(meta)
        return tree.WrittenEnd(tree.Word(USUAL.word, span), (facts.CopedHere(span),), span)

    def own_mitre(self, meta: Meta, _children: Children) -> tree.WrittenEnd:
        span = self._span(meta)
        return tree.WrittenEnd(tree.Word(USUAL.word, span), (facts.MitredHere(span),), span)

    def between(self, meta: Meta, children: Children) -> facts.AtEnd:
        word, *said = children
        joint = tree.Word(whole_joint(word.text), word.span)
        span = self._span(meta)
        end = tree.WrittenEnd(joint, tuple(said), span)
        return facts.AtEnd(side=facts.Side.RIGHT, end=end, word=word.span, span=span)
