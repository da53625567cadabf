"""Writes a comparison in words, and as data for other programs."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from fractions import Fraction
from typing import Any, Final

from trimlang.compare.changes import Change, Comparison, Stood
from trimlang.compare.order_changes import CostParts, OrderLine
from trimlang.compare.piece_facts import ON_STICKS, PieceFact
from trimlang.joinery.piece import Piece
from trimlang.lengths.tape import feet_text, length_text
from trimlang.money import money_text
from trimlang.record import record
from trimlang.site_log.progress_of_job import State

# Changes when what stands in the JSON changes.
SCHEMA_VERSION: Final = 1


@record
class Versions:
    """What the two versions are called: a file's name, or a file's name and its revision."""

    old: str
    new: str


def comparison_text(found: Comparison, versions: Versions) -> str:
    """Return the comparison as plain text: one heading for each kind of change, then its lines."""
    return "".join(f"{line}\n" for line in _lines(found, versions))


def _lines(found: Comparison, versions: Versions) -> Iterator[str]:
    yield f"{versions.old} → {versions.new}"
    if found.same:
        yield "Nothing has changed: pieces, tickets, order and cost are the same."
        return
    # What costs wood comes first: a reader who stops after the first lines has seen it.
    yield from _part(
        "Already cut and wrong now", [f"{one.id}  {one.why}. {one.remedy}" for one in found.wrong]
    )
    yield from _part("On site since", stood_texts(found))
    yield from _part("Renamed", renamed_texts(found))
    yield from _part("New pieces", [_piece(piece) for piece in found.added])
    yield from _part("Pieces gone", [_piece(piece) for piece in found.gone])
    yield from _part(
        "Cut otherwise", [line for change in found.recut for line in _change(change, change.cut)]
    )
    yield from _part(
        "Same cuts, but the ticket says something else",
        [f"{change.new.id}  {ticket_changes(change)}" for change in found.only_on_paper],
    )
    yield from _part(
        "Same cuts, elsewhere on the sticks",
        _wrapped(tuple(f"{change.new.id} {moved_text(change)}" for change in found.moved)),
    )
    yield from _part("Tickets to print", _wrapped(found.reprint))
    yield from _part("Order", [order_text(line, found) for line in found.order])
    yield ""
    yield f"Cost: {cost_text(found)}"


def _part(heading: str, lines: list[str]) -> Iterator[str]:
    if lines:
        yield ""
        yield heading
        yield from (f"  {line}" for line in lines)


def _wrapped(names: tuple[str, ...], wide: int = 96) -> list[str]:
    lines: list[str] = []
    for name in names:
        # Names are short and many: in a column of their own they would fill pages.
        if lines and len(lines[-1]) + len(name) + 2 <= wide:
            lines[-1] += f"  {name}"
        else:
            lines.append(name)
    return lines


def _piece(piece: Piece) -> str:
    return f"{piece.id}  {length_text(piece.to_mark, piece.unit)}"


def _change(change: Change, facts: tuple[PieceFact, ...]) -> Iterator[str]:
    name = change.new.id
    if change.old.id != name:
        name = f"{name} (was {change.old.id})"
    yield name
    yield from (f"  {fact_text(fact)}" for fact in facts)


def fact_text(fact: PieceFact) -> str:
    """Say one fact: ``length: 8 in → 9 in``."""
    # A fact without values is a sentence already.
    if not fact.before and not fact.after:
        return fact.what
    return f"{fact.what}: {fact.before or 'nothing'} → {fact.after or 'nothing'}"


def ticket_changes(change: Change) -> str:
    """Say what else differs on a ticket, on one line."""
    facts = [fact_text(fact) for fact in change.on_ticket if fact.what not in ON_STICKS]
    # The stick is printed on the ticket, so a piece that is cut alike may need a new one.
    if change.sticks[0] != change.sticks[1]:
        facts.append(moved_text(change))
    return "; ".join(facts)


def moved_text(change: Change) -> str:
    """Say which stick a piece was and is cut from: ``base-4 → base-25``."""
    old, new = change.sticks
    return f"in its place on {new}" if old == new else f"{old} → {new}"


def renamed_texts(found: Comparison) -> list[str]:
    """Say what was renamed, one line each."""
    return [
        f"{one.what} “{one.old}” is now “{one.new}”" + (f", in “{one.room}”" if one.room else "")
        for one in found.renamed
    ]


def stood_texts(found: Comparison) -> list[str]:
    """Say what was done on site meanwhile: ``cut → fitted: ST-N-base, ST-E-base``."""
    ways: dict[tuple[str, str], list[str]] = {}
    for one in found.stood:
        ways.setdefault((one.before.value, _state(one)), []).append(one.id)
    return [f"{before} → {now}: {', '.join(ids)}" for (before, now), ids in ways.items()]


def _state(one: Stood) -> str:
    return "spoiled, to cut again" if one.now is State.SPOILED else one.now.value


def order_text(line: OrderLine, found: Comparison) -> str:
    """Say how a line of the order changed: ``base, 12 ft: 3 → 4 (52.20 → 69.60)``."""
    before = line_cost(found.old_money, line, line.old_cost)
    after = line_cost(found.new_money, line, line.new_cost)
    return f"{line.what}, {line.detail}: {line.old_count} → {line.new_count} ({before} → {after})"


def line_cost(money: CostParts, line: OrderLine, amount: Fraction) -> str:
    """Write what a line of the order costs in one version."""
    return trim_cost(money, amount) if line.is_trim else sum_text(money, amount)


def trim_cost(money: CostParts, amount: Fraction) -> str:
    """Write what sticks cost: an amount, or ``64 ft`` where no stick has a price."""
    # Without prices the planner buys the least length, and that is what a line costs.
    if not money.by_length:
        return sum_text(money, amount)
    return f"{'-' if amount < 0 else ''}{feet_text(abs(amount), money.unit)}"


def sum_text(money: CostParts, amount: Fraction) -> str:
    """Write an amount in a version's currency, its sign in front of the currency."""
    sign = "-" if amount < 0 else ""
    return f"{sign}{money.currency}{money_text(abs(amount))}"


def cost_text(found: Comparison) -> str:
    """Say what the job cost and costs, and the difference where both are told alike.

    Where no stick has a price, that is the length of trim to buy, and what supplies cost besides.
    """
    # A price list may have come or gone between the versions, and then there is nothing to
    # subtract.
    old, new = found.old_money, found.new_money
    # Money on both sides: one sum says it.
    if old.total is not None and new.total is not None:
        alike = old.currency == new.currency
        return _before_and_after(sum_text, (old, old.total), (new, new.total), alike=alike)
    # A length and money have no sum, so each is told by itself.
    trim = _before_and_after(
        trim_cost, (old, old.trim), (new, new.trim), alike=old.by_length is new.by_length
    )
    if not old.supplies and not new.supplies:
        return f"{trim} of trim"
    alike = old.currency == new.currency
    return (
        f"{trim} of trim, supplies "
        f"{_before_and_after(sum_text, (old, old.supplies), (new, new.supplies), alike=alike)}"
    )


def _before_and_after(
    text: Callable[[CostParts, Fraction], str],
    before: tuple[CostParts, Fraction],
    after: tuple[CostParts, Fraction],
    *,
    alike: bool,
) -> str:
    by = after[1] - before[1]
    if not alike:
        return f"{text(*before)} → {text(*after)}"
    if not by:
        return f"{text(*after)} as before"
    plus = "+" if by > 0 else ""
    return f"{text(*before)} → {text(*after)} ({plus}{text(after[0], by)})"


def comparison_json(found: Comparison, versions: Versions) -> str:
    """Return the comparison as JSON: lengths are fractions of an inch as text, money decimals."""
    return json.dumps(comparison_data(found, versions), ensure_ascii=False, indent=1) + "\n"


def comparison_data(found: Comparison, versions: Versions) -> dict[str, Any]:
    """Return the comparison as plain data."""
    return {
        # First, so that a reader knows what follows before it reads it.
        "schema": SCHEMA_VERSION,
        "old": versions.old,
        "new": versions.new,
        "same": found.same,
        "renamed": [
            {"what": one.what, "old": one.old, "new": one.new, "room": one.room or None}
            for one in found.renamed
        ],
        "added": [_piece_data(piece) for piece in found.added],
        "gone": [_piece_data(piece) for piece in found.gone],
        "changed": [
            {
                "id": change.new.id,
                "was": change.old.id,
                "old_length_in": str(change.old.to_mark),
                "new_length_in": str(change.new.to_mark),
                "cut": _facts(change.cut),
                "ticket": _facts(change.on_ticket),
            }
            for change in found.changed
        ],
        "on_site": [
            {"id": one.id, "was": one.before.value, "now": one.now.value} for one in found.stood
        ],
        "already_cut_and_wrong": [
            {"id": one.id, "why": one.why, "remedy": one.remedy} for one in found.wrong
        ],
        "reprint": list(found.reprint),
        "order": [
            {
                "what": line.what,
                "detail": line.detail,
                "old_count": line.old_count,
                "new_count": line.new_count,
                "old_cost": _line_data(found.old_money, line, line.old_cost),
                "new_cost": _line_data(found.new_money, line, line.new_cost),
            }
            for line in found.order
        ],
        "old_cost": _money_data(found.old_money),
        "new_cost": _money_data(found.new_money),
    }


def _piece_data(piece: Piece) -> dict[str, str]:
    return {
        "id": piece.id,
        "room": piece.room,
        "run": piece.run,
        "trim": piece.trim,
        "length_in": str(piece.to_mark),
        "length_text": length_text(piece.to_mark, piece.unit),
    }


def _facts(facts: tuple[PieceFact, ...]) -> list[dict[str, str]]:
    return [{"what": fact.what, "old": fact.before, "new": fact.after} for fact in facts]


def _line_data(money: CostParts, line: OrderLine, amount: Fraction) -> str | None:
    return None if money.by_length and line.is_trim else money_text(amount)


def _money_data(money: CostParts) -> dict[str, str | None]:
    return {
        "currency": money.currency,
        "trim": None if money.by_length else money_text(money.trim),
        "trim_length_in": str(money.trim) if money.by_length else None,
        "supplies": money_text(money.supplies),
        "total": None if money.total is None else money_text(money.total),
    }
