"""Builds the lines that say how trim is sold, and what is on hand."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any, Final

from lark.tree import Meta

from trimlang.diagnostics import Diagnostic, say
from trimlang.diagnostics.named_codes import MISPLACED, ODD_FEET
from trimlang.diagnostics.suggestion import Suggestion
from trimlang.language import facts, tree
from trimlang.language.log_lines import Children, LogLines, PackOf, first
from trimlang.language.stick_facts import (
    BatchScope,
    CountedSticks,
    DefectKind,
    WrittenBatch,
    WrittenDefect,
)
from trimlang.lengths.units import LengthUnit
from trimlang.record import record

_FOOT: Final = 12
"""Inches: what is more behind feet is none of them."""


@record
class _AtMost:
    """``at most 6``: on its way into an offer."""

    number: tree.Number


@record
class _Step:
    """``by 6 in``: how finely a yard cuts, on its way into an offer."""

    size: tree.Measure


@record
class _Shortest:
    """``from 6 ft``: the shortest that a yard cuts, on its way into an offer."""

    size: tree.Measure


def fact_of(kind: Callable[..., facts.Fact]) -> Any:
    """Return the method for a rule whose children are the fields of a fact, in their order."""

    def build(self: StockLines, meta: Meta, children: Children) -> facts.Fact:
        return kind(*children, self._span(meta))

    return build


class StockLines(LogLines):
    """The rules of stock and offcuts; ``WallLines`` adds those of rooms."""

    def __init__(self, file: str, line: int) -> None:
        super().__init__(file, line)
        # What a line says wrongly although it can be read, told once the line is built.
        self.problems: list[Diagnostic] = []
        # Of what stands where a wall would; the line's text may tell more of it.
        self.no_walls: list[Diagnostic] = []

    supplier, profile = fact_of(facts.Supplier), fact_of(facts.ProfileCode)

    def least_order(self, meta: Meta, children: Children) -> facts.LeastOrder:
        least, *together = children
        return facts.LeastOrder(least=least, in_all=bool(together), span=self._span(meta))

    def in_all(self, _meta: Meta, _children: Children) -> bool:
        return True

    def per(self, meta: Meta, children: Children) -> tree.Per:
        # “foot” says nothing, as the unit of a length does not
        return tree.Per(LengthUnit.METRE if children else LengthUnit.FOOT, self._span(meta))

    def per_said(self, meta: Meta, children: Children) -> tree.Per:
        better = "a metre" if children else "a foot"
        self.problems.append(say("T136", self._span(meta), better=better))
        return self.per(meta, children)

    def at_most(self, _meta: Meta, children: Children) -> _AtMost:
        return _AtMost(children[0])

    def offer(self, meta: Meta, children: Children) -> tree.WrittenOffer:
        return self.offer_of(meta, children)

    def offer_of(self, meta: Meta, children: Children) -> tree.WrittenOffer:
        """Return a way to buy sticks from what stands in it."""
        pack, most = first(children, PackOf), first(children, _AtMost)
        length, price = first(children, tree.Measure), first(children, tree.Price)
        if price is None:
            length, price = self._without_at(length)
        return tree.WrittenOffer(
            length=length,
            price=price,
            pack=None if pack is None else pack.number,
            at_most=None if most is None else most.number,
            per=first(children, tree.Per),
            batch=first(children, WrittenBatch),
            span=self._span(meta),
        )

    def _without_at(self, length: tree.Measure) -> tuple[tree.Measure, tree.Price | None]:
        """Tell of ``16' 24.10``, which reads as feet and more inches than a foot has."""
        feet, *more = length.parts
        if not more or more[0][0] < _FOOT or more[0][0].denominator == 1:
            return length, None
        span, amount = length.span, more[0][0]
        # One slip is one finding: that a tape has no such feet and inches follows from it.
        self.problems = [one for one in self.problems if (one.code, one.span) != (ODD_FEET, span)]
        whole, cents = divmod(amount, 1)
        long, price = f"{feet[0]} ft", f"{whole}.{int(cents * 100):02}"
        remedy = Suggestion(f"If that is its price, write {long} at {price}.", f"{long} at {price}")
        said = {"word": price, "wanted": "“at” before the price", "remedy": remedy}
        self.problems.append(say(MISPLACED, span, **said))
        return replace(length, parts=(feet,)), tree.Price(amount, None, span)

    def from_length(self, _meta: Meta, children: Children) -> _Shortest:
        return _Shortest(children[0])

    def by_step(self, _meta: Meta, children: Children) -> _Step:
        return _Step(children[0])

    def any_length(self, meta: Meta, children: Children) -> tree.WrittenOffer:
        step, shortest = first(children, _Step), first(children, _Shortest)
        return replace(
            self.offer_of(meta, children),
            any_length=True,
            step=None if step is None else step.size,
            shortest=None if shortest is None else shortest.size,
        )

    def rest(self, meta: Meta, children: Children) -> tree.WrittenRest:
        return tree.WrittenRest(
            first(children, tree.Number),
            first(children, tree.Measure),
            first(children, tree.Price),
            self._span(meta),
            batch=first(children, WrittenBatch),
        )

    def batch(self, meta: Meta, children: Children) -> WrittenBatch:
        return WrittenBatch(children[0], self._span(meta))

    def batch_by(self, meta: Meta, children: Children) -> facts.BatchBy:
        return facts.BatchBy(BatchScope(children[0].text), self._span(meta))

    def stock(self, meta: Meta, children: Children) -> tree.StockLine:
        name, *parts = children
        offers: list[tree.WrittenOffer] = []
        for offer in parts:
            if not isinstance(offer, tree.WrittenOffer):
                continue
            # “17,40” is written where a comma parts the decimals; here it parts two sticks.
            before = offers[-1].price if offers else None
            if before is None or not self._is_decimals(before, offer):
                offers.append(offer)
        # What is left is said of the trim's whole supply, and not of one offer.
        said = tuple(one for one in parts if not isinstance(one, tree.WrittenOffer))
        return tree.StockLine(name, tuple(offers), self._span(meta), facts=said)

    def _is_decimals(self, price: tree.Price, offer: tree.WrittenOffer) -> bool:
        """Tell of ``17,40``, which reads as a price and a further stick of 40 without one."""
        (amount, unit), *more = offer.length.parts
        at, end = price.span.end + 1, offer.length.span.end
        # Only a bare whole number right behind the price's comma can be its decimals.
        places = offer.length.places
        whole, part = divmod(amount, 1)
        if offer.price or unit or more or offer.length.span.column != at or (part and not places):
            return False
        span = replace(price.span, end=end)
        # 17,05 was read as 17 and 5: the nought that the number lost is put back.  With a point
        # behind it the comma parts thousands: 1,450.00 is 1450.
        better = f"{price.amount}.{str(whole).zfill(end - at)}"
        if places:
            better = f"{price.amount}{whole:03}.{str(int(part * 10**places)).zfill(places)}"
        self.problems.append(say("T114", span, better=better))
        return True

    def counted(self, meta: Meta, children: Children) -> CountedSticks:
        count, length = children
        return CountedSticks(count, length, self._span(meta))

    def bundle(self, meta: Meta, children: Children) -> facts.RandomLengths:
        return self._random(meta, children, whole=True)

    def picked(self, meta: Meta, children: Children) -> facts.RandomLengths:
        return self._random(meta, children, whole=False)

    def _random(self, meta: Meta, children: Children, *, whole: bool) -> facts.RandomLengths:
        per, most = first(children, tree.Per), first(children, _AtMost)
        return facts.RandomLengths(
            sticks=tuple(one for one in children if isinstance(one, CountedSticks)),
            price=first(children, tree.Price),
            by_unit=None if per is None else per.unit,
            at_most=None if most is None else most.number,
            whole=whole,
            span=self._span(meta),
        )

    def defect(self, meta: Meta, children: Children) -> WrittenDefect:
        kind, start, end, *side = children
        return WrittenDefect(
            kind=DefectKind(kind.text),
            start=start,
            end=end,
            # Without a side it was measured from the left, the end from which sticks are laid out.
            side=facts.Side(side[0].text) if side else facts.Side.LEFT,
            span=self._span(meta),
        )

    def on_hand(self, meta: Meta, children: Children) -> tree.OnHandLine:
        name, *parts = children
        rests: list[tree.WrittenRest] = []
        for part in parts:
            # A defect is of the stick that stands before it; the grammar begins with a stick.
            if isinstance(part, WrittenDefect):
                rests[-1] = replace(rests[-1], defects=(*rests[-1].defects, part))
            else:
                rests.append(part)
        return tree.OnHandLine(name, tuple(rests), self._span(meta))
