"""Reads the lines of the site log, with their names, units and prices."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from fractions import Fraction

from trimlang.diagnostics.named_codes import NO_PRICE
from trimlang.language import tree
from trimlang.lengths.tape import Unit
from trimlang.survey.job import Offer, Trim
from trimlang.survey.log_entries import (
    BoughtSticks,
    Counted,
    CutPiece,
    Entry,
    Fitted,
    From,
    Shortened,
    Spoiled,
)
from trimlang.survey.measures import Findings, length, money
from trimlang.survey.near_names import unknown_trim
from trimlang.survey.offers import read_count, stick_sold
from trimlang.survey.sticks import likely_price


def read_log(
    statements: Iterable[tree.Statement],
    trims: Mapping[str, Trim],
    unit: Unit,
    findings: Findings,
) -> tuple[Entry, ...]:
    """Return the entries of the log in their order, without what could not be understood."""
    entries: list[Entry] = []
    for line in statements:
        # In the order of the lines: what a cut means depends on what was cut and bought before it.
        if isinstance(line, tree.LogLine):
            for item in line.pieces:
                entry = _piece(line.kind, item, unit, findings)
                if entry is not None:
                    entries.append(entry)
        elif isinstance(line, tree.BoughtLine):
            for purchase in line.purchases:
                bought = _bought(purchase, trims, unit, findings)
                if bought is not None:
                    entries.append(bought)
        elif isinstance(line, tree.RackLine):
            counted = _counted(line, trims, unit, findings)
            if counted is not None:
                entries.append(counted)
    return tuple(entries)


def with_logged(trims: Mapping[str, Trim], entries: Iterable[Entry]) -> dict[str, Trim]:
    """Return the trims with the lengths of sticks that only the log knows.

    A length that the yard no longer sells can still give a long piece.
    """
    entries = tuple(entries)
    return {name: replace(trim, logged=_logged(trim, entries)) for name, trim in trims.items()}


def _logged(trim: Trim, entries: tuple[Entry, ...]) -> tuple[Offer, ...]:
    """Return an offer for each bought length that the stock lines do not list, at its own price."""
    listed = {offer.length for offer in trim.offers}
    counts: dict[Fraction, int] = {}
    prices: dict[Fraction, Fraction] = {}
    spans = {}
    for entry in entries:
        if (
            # A length that the stock lines still list is planned at their price; here only what
            # they have dropped is kept, so that pieces already planned from it still fit.
            isinstance(entry, BoughtSticks)
            and entry.trim == trim.name
            and entry.length not in listed
        ):
            counts[entry.length] = counts.get(entry.length, 0) + entry.count
            # Where a length was bought at two prices, the last one is kept.
            prices[entry.length] = entry.price / entry.count
            spans[entry.length] = entry.span
    return tuple(
        Offer(length=long, price=prices[long], pack=1, at_most=counts[long], span=spans[long])
        for long in sorted(counts)
    )


def _piece(kind: tree.Deed, item: tree.Sawn, unit: Unit, findings: Findings) -> Entry | None:
    piece = item.piece.text
    # What is on the wall has no length left to say.
    if kind is tree.Deed.FITTED:
        return Fitted(piece, item.span)
    long = None
    if item.length is not None:
        # A length that cannot be is reported, and the entry left out: a wrong length would shift
        # every rest.
        long = length(item.length, unit, findings, what="a piece")
        if long is None:
            return None
    # “shortened” without a length says nothing that could be planned with.
    if kind is tree.Deed.SHORTENED:
        return None if long is None else Shortened(piece, long, item.span)
    source = None
    if item.source is not None:
        whole = None
        if item.source.length is not None:
            whole = length(item.source.length, unit, findings, what="a stick")
            if whole is None:
                return None
        stick = item.source.stick
        source = From(None if stick is None else stick.text, whole, item.source.span)
    if kind is tree.Deed.CUT:
        return CutPiece(piece, long, source, item.span)
    rests = [length(rest, unit, findings, what="an offcut") for rest in item.rests]
    return Spoiled(
        piece=piece,
        rests=tuple(rest for rest in rests if rest is not None),
        length=long,
        source=source,
        span=item.span,
    )


def _bought(
    line: tree.WrittenPurchase, trims: Mapping[str, Trim], unit: Unit, findings: Findings
) -> BoughtSticks | None:
    trim = trims.get(line.trim.text)
    if trim is None:
        unknown_trim(line.trim, trims, findings)
        return None
    long = stick_sold(line.length, unit, findings)
    count, pack = read_count(line.count, findings), read_count(line.pack, findings)
    price = money(line.price, findings)
    if long is None or count is None or pack is None or price is None:
        return None
    # The log counts sticks; packs matter only to what they cost.
    sticks = count * pack
    if line.price is not None:
        return BoughtSticks(
            trim=trim.name,
            count=sticks,
            length=long,
            price=price * count,
            priced=True,
            span=line.span,
        )
    # No price in the line: as the stock lines have it, so that the log need not repeat them.
    listed = list_price(trim, long, sticks)
    if listed is None:
        findings.say(
            NO_PRICE, line.span, trim=trim.name, likely=likely_price(trim.offers, long, pack)
        )
    return BoughtSticks(
        trim=trim.name,
        count=sticks,
        length=long,
        price=listed or Fraction(0),
        priced=False,
        span=line.span,
    )


def list_price(trim: Trim, length: Fraction, count: int) -> Fraction | None:
    """Return what ``count`` sticks cost by the stock lines: packs first, then single sticks.

    Sticks that only come in packs cost their share of a pack.  None where the lines do not list
    the length.
    """
    offers = [offer for offer in trim.offers if offer.length == length]
    if not offers:
        return None
    total = Fraction(0)
    # As one buys: the offer with the cheapest sticks first, as many whole packs as are needed.
    for offer in sorted(offers, key=lambda offer: offer.price / offer.pack):
        packs, count = divmod(count, offer.pack)
        total += packs * offer.price
    # What is left over is bought in the smallest pack, at its share: the log does not say how it
    # was sold, and a whole pack more would be a guess.
    cheapest = min(offers, key=lambda offer: offer.pack)
    return total + count * cheapest.price / cheapest.pack


def _counted(
    line: tree.RackLine, trims: Mapping[str, Trim], unit: Unit, findings: Findings
) -> Counted | None:
    if line.name.text not in trims:
        unknown_trim(line.name, trims, findings)
        return None
    sticks: list[tuple[Fraction, int]] = []
    for rest in line.rests:
        long = length(rest.length, unit, findings, what="an offcut")
        count = read_count(rest.count, findings)
        # A count that is known in part would take the sticks that could not be read for lost.
        if long is None or count is None:
            return None
        sticks.append((long, count))
    return Counted(line.name.text, tuple(sticks), line.span)
