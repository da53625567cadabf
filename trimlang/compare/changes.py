"""What has changed from one version of a job to the next: pieces, tickets, order and money."""

from __future__ import annotations

from collections.abc import Collection, Iterator
from dataclasses import fields
from fractions import Fraction
from typing import Final

from trimlang.compare.matching import Renamed, match_pieces
from trimlang.compiler import Result
from trimlang.joinery.piece import Cut, Piece
from trimlang.lengths.tape import length_text
from trimlang.record import record
from trimlang.sheets import phrases
from trimlang.sheets.data import bought_text
from trimlang.sheets.pen import Pen
from trimlang.sheets.ticket import Ticket, tickets
from trimlang.sheets.words import words_in
from trimlang.survey.job import Job

ON_STICKS: Final = ("stick", "place on the stick")
"""Facts of a ticket that only say where on the sticks a piece lies."""


@record
class Fact:
    """One thing that was so and is so now, as words; empty where there is nothing to say."""

    what: str
    before: str
    after: str


@record
class Change:
    """A piece of both versions: what is cut otherwise, and what else its ticket says otherwise.

    Its ticket is to be printed again.  ``sticks`` are the labels of the sticks that
    it came off and comes off.
    """

    old: Piece
    new: Piece
    cut: tuple[Fact, ...]
    told: tuple[Fact, ...]
    sticks: tuple[str, str]

    @property
    def only_moved(self) -> bool:
        """Whether it only lies elsewhere on the sticks."""
        return not self.cut and {fact.what for fact in self.told} <= set(ON_STICKS)


@record
class Wrong:
    """A piece that is cut already and is not wanted as it was cut: why, and what to do."""

    id: str
    why: str
    remedy: str


@record
class OrderLine:
    """A line of the order that has changed: how many, and what they cost."""

    what: str
    detail: str
    old_count: int
    new_count: int
    old_cost: Fraction
    new_cost: Fraction


@record
class Money:
    """What the trim and all else costs, in a version's own currency."""

    currency: str
    trim: Fraction
    supplies: Fraction

    @property
    def total(self) -> Fraction:
        """All together."""
        return self.trim + self.supplies


@record
class Comparison:
    """All that differs in meaning.  Where nothing does, ``same`` is true.

    ``reprint`` are the ids of the tickets to print, in the order of the new job:
    of new pieces, and those that say something else.  A piece that is cut and only
    lies elsewhere on the sticks now needs none.
    """

    renamed: tuple[Renamed, ...]
    added: tuple[Piece, ...]
    gone: tuple[Piece, ...]
    changed: tuple[Change, ...]
    wrong: tuple[Wrong, ...]
    reprint: tuple[str, ...]
    order: tuple[OrderLine, ...]
    old_money: Money
    new_money: Money

    @property
    def same(self) -> bool:
        """Whether both versions mean the same."""
        lists = (self.renamed, self.added, self.gone, self.changed, self.order)
        return not any(lists) and self.old_money == self.new_money

    @property
    def recut(self) -> tuple[Change, ...]:
        """The pieces that are cut otherwise."""
        return tuple(change for change in self.changed if change.cut)

    @property
    def told_otherwise(self) -> tuple[Change, ...]:
        """The pieces that are cut as before, whose tickets say more than another place."""
        return tuple(one for one in self.changed if not one.cut and not one.only_moved)

    @property
    def moved(self) -> tuple[Change, ...]:
        """The pieces that only lie elsewhere on the sticks."""
        return tuple(change for change in self.changed if change.only_moved)


_TOLD: Final = {
    "room": "room", "run": "run", "part": "part", "stick": "stick", "order": "place on the stick",
    "mates": "mates", "note": "note", "fit": "fit", "edges": "edges", "rounding": "rounding",
    "caution": "caution",
}  # fmt: skip


def compare(old: Result, new: Result, cut: Collection[str] = ()) -> Comparison:
    """Compare two compiled jobs without errors; ``cut`` are the ids of pieces cut from the old."""
    matched = match_pieces(old.job, old.pieces, new.job, new.pieces)
    pens = [_pen(result) for result in (old, new)]
    printed = [
        {ticket.id: ticket for ticket in tickets(result, pen)}
        for result, pen in zip((old, new), pens, strict=True)
    ]
    labels = [_sticks(result) for result in (old, new)]
    changed: list[Change] = []
    for before, after in matched.pairs:
        facts = tuple(_cut_facts(before, after, old.job, new.job, pens[0], pens[1]))
        told = tuple(_told_facts(printed[0][before.id], printed[1][after.id]))
        if facts and told and told[0].what == "how the ends are cut or drawn":
            told = ()  # said already
        if facts or told:
            sticks = (labels[0].get(before.id, ""), labels[1].get(after.id, ""))
            changed.append(Change(before, after, facts, told, sticks))
    # a piece that is cut and right needs no ticket to say where it would come from
    done = {change.new.id for change in changed if change.only_moved and change.old.id in cut}
    again = {change.new.id for change in changed} | {piece.id for piece in matched.added}
    again -= done
    return Comparison(
        tuple(sorted(matched.renamed, key=lambda one: one.what)),
        matched.added,
        matched.gone,
        tuple(changed),
        tuple(_wrong(matched.gone, changed, cut)),
        tuple(piece.id for piece in new.pieces if piece.id in again),
        tuple(_order(old, new)),
        _money(old),
        _money(new),
    )


def _sticks(result: Result) -> dict[str, str]:
    """Return the label of each piece's stick."""
    return {
        place.piece: stick.id
        for plan in result.plans
        for stick in plan.sticks
        for place in stick.places
    }


def _pen(result: Result) -> Pen:
    return Pen(words_in("en"), result.job.currency, result.job.settings.unit)


def _cut_facts(
    old: Piece, new: Piece, old_job: Job, new_job: Job, old_pen: Pen, new_pen: Pen
) -> Iterator[Fact]:
    was, now = old_pen.of(old.unit), new_pen.of(new.unit)
    sections = (_section(old, old_job, was), _section(new, new_job, now))
    if sections[0] != sections[1]:
        yield Fact("trim", *sections)
    if old.to_mark != new.to_mark:
        yield _length("length", old.to_mark, new.to_mark, was, now)
    elif old.length != new.length:
        yield _length("taken of the stick", old.length, new.length, was, now)
    if old.measured_on is not new.measured_on:
        yield Fact("measured", phrases.measured(old, was.words), phrases.measured(new, now.words))
    for side, one, other in (("left", old.left, new.left), ("right", old.right, new.right)):
        if _as_sawn(one) != _as_sawn(other):
            yield Fact(f"{side} end", _end(one, was), _end(other, now))


def _length(what: str, old: Fraction, new: Fraction, was: Pen, now: Pen) -> Fact:
    fact = Fact(what, was.length(old), now.length(new))
    if fact.before != fact.after:
        return fact
    return Fact(what, length_text(old, was.unit), length_text(new, now.unit))


def _section(piece: Piece, job: Job, pen: Pen) -> str:
    trim = job.trim(piece.trim)
    sizes = [
        f"{pen.length(size)} {word}"
        for size, word in ((trim.thickness, "thick"), (trim.height, "tall"))
        if size is not None
    ]
    spring = [] if trim.spring is None else [f"spring {pen.angle(trim.spring)}"]
    return ", ".join([*sizes, *spring, *trim.material])


def _as_sawn(cut: Cut) -> tuple[object, ...]:
    return (
        cut.joint, cut.fit, cut.setting, cut.bevel_setting, cut.lean, cut.long_edge, cut.inset
    )  # fmt: skip


def _end(cut: Cut, pen: Pen) -> str:
    joint = phrases.joint_name(cut, pen.words)
    return f"{joint}, {phrases.setting(cut, pen)}, {phrases.long_point(cut, pen.words)}"


def _told_facts(old: Ticket, new: Ticket) -> Iterator[Fact]:
    """Yield what a ticket says otherwise, with its name first."""
    if old == new:
        return
    if old.id != new.id:
        yield Fact("name", old.id, new.id)
    said = False
    for field in fields(Ticket):
        before, after = getattr(old, field.name), getattr(new, field.name)
        if before != after and field.name in _TOLD:
            said = True
            yield Fact(_TOLD[field.name], before, after)
    if not said and old.id == new.id:
        yield Fact("how the ends are cut or drawn", "", "")


def _wrong(gone: tuple[Piece, ...], changed: list[Change], cut: Collection[str]) -> Iterator[Wrong]:
    for piece in gone:
        if piece.id in cut:
            yield Wrong(piece.id, "no longer in the job", "Keep the wood as an offcut.")
    for change in changed:
        old, new = change.old, change.new
        if old.id not in cut:
            continue
        if change.cut:
            why = "; ".join(f"{one.what}: {one.before} → {one.after}" for one in change.cut)
            yield Wrong(old.id, why, _remedy(change))
        elif old.id != new.id:
            yield Wrong(old.id, f"now called {new.id}", "Write the new name on it.")


def _remedy(change: Change) -> str:
    """Say what to do with a piece that was cut as it was: never more than its length allows."""
    old, new = change.old, change.new
    if any(fact.what == "trim" for fact in change.cut):
        return "Cut it again from the trim as it is now."
    by = new.length - old.length
    if {fact.what for fact in change.cut} <= {"length", "taken of the stick"}:
        long = length_text(abs(by), new.unit)
        if by < 0:
            return f"It is {long} too long: cut it down."
        return f"It is {long} too short: cut it again."
    if by > 0:
        return f"It is {length_text(by, new.unit)} too short: cut it again."
    return "It is long enough: try whether its ends can be cut again, or cut a new one."


def _money(result: Result) -> Money:
    supplies = sum((supply.cost for supply in result.supplies), Fraction(0))
    return Money(result.job.currency, result.cost, supplies)


def _order(old: Result, new: Result) -> Iterator[OrderLine]:
    before, after = _lines(old), _lines(new)
    for what, detail in dict.fromkeys([*before, *after]):
        old_count, old_cost = before.get((what, detail), (0, Fraction(0)))
        new_count, new_cost = after.get((what, detail), (0, Fraction(0)))
        if (old_count, old_cost) != (new_count, new_cost):
            yield OrderLine(what, detail, old_count, new_count, old_cost, new_cost)


def _lines(result: Result) -> dict[tuple[str, str], tuple[int, Fraction]]:
    """Return the order: what and in which form, to how many and what they cost."""
    unit = result.job.settings.unit
    found: dict[tuple[str, str], tuple[int, Fraction]] = {}
    lines = [
        (
            plan.trim,
            f"offcut in the shop, {length_text(line.length, unit)}"
            if line.on_hand
            else bought_text(line, unit),
            line.packs,
            line.cost,
        )
        for plan in result.plans
        for line in plan.bought
    ] + [(supply.what, supply.package, supply.count, supply.cost) for supply in result.supplies]
    for what, detail, count, cost in lines:
        more, dearer = found.get((what, detail), (0, Fraction(0)))
        found[what, detail] = (count + more, cost + dearer)
    return found
