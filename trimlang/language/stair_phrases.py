"""The grammar's phrases of a run that climbs or curves, and of a ceiling that slopes."""

from __future__ import annotations

from lark.tree import Meta

from trimlang.language import facts
from trimlang.language.corner_lines import CornerLines
from trimlang.language.log_lines import Children


class StairPhrases(CornerLines):
    """The grammar's rules for stairs and curves; ``WallLines`` adds the others of a wall."""

    def rising(self, meta: Meta, children: Children) -> facts.Rising:
        side, pitch = children
        return facts.Rising(facts.Side(side.text), pitch, self._span(meta))

    def rising_over(self, meta: Meta, children: Children) -> facts.Rising:
        side, rise, run = children
        return facts.Rising(facts.Side(side.text), facts.RiseOver(rise, run), self._span(meta))

    def taken_along(self, meta: Meta, children: Children) -> facts.TakenAlong:
        return facts.TakenAlong(facts.LengthTaken(children[0].text), self._span(meta))

    def level_return(self, meta: Meta, children: Children) -> facts.LevelReturn:
        side, long = children
        return facts.LevelReturn(facts.Side(side.text), long, self._span(meta))

    def notch(self, meta: Meta, children: Children) -> facts.Notch:
        side, level, up = children
        return facts.Notch(side=facts.Side(side.text), level=level, up=up, span=self._span(meta))

    def stair_side(self, meta: Meta, children: Children) -> facts.OpenSide:
        return facts.OpenSide(children[0].text.split()[0] == "open", self._span(meta))

    def curves(self, meta: Meta, children: Children) -> facts.Curves:
        way, by = children
        return facts.Curves(facts.Bend(way.text), by, self._span(meta))

    def curves_by_radius(self, meta: Meta, children: Children) -> facts.Curves:
        way, radius = children
        by = facts.WrittenRadius(radius)
        return facts.Curves(facts.Bend(way.text), by, self._span(meta))

    def transition_at(self, meta: Meta, children: Children) -> facts.TransitionAt:
        return facts.TransitionAt(facts.Side(children[0].text), self._span(meta))

    def ceiling(self, meta: Meta, children: Children) -> facts.CeilingRising:
        side, pitch = children
        return facts.CeilingRising(facts.Side(side.text), pitch, self._span(meta))

    def rise_over(self, _meta: Meta, children: Children) -> facts.RiseOver:
        return facts.RiseOver(*children)

    def per_cent(self, _meta: Meta, children: Children) -> facts.PerCent:
        return facts.PerCent(children[0])
