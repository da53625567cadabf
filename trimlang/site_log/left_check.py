"""Checks the plan of what is left against the log, from the definition of such a plan.

It shares no arithmetic with the planner or the replay, so that a mistake there cannot hide here:
every stick is laid out again from its left end, every piece is counted, and every stick that is
cut must be among those that were in hand or are on the order.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from fractions import Fraction
from itertools import pairwise
from math import ceil

from trimlang.site_log.rack import Origin
from trimlang.site_log.trim_progress import TrimProgress
from trimlang.stock.problem import Part
from trimlang.survey.job import Trim
from trimlang.survey.log_entries import BoughtSticks, Counted, Entry, Spoiled


def progress_faults(progress: TrimProgress, trim: Trim, log: Iterable[Entry]) -> tuple[str, ...]:
    """Return everything that is wrong with one trim's plan, in words; empty for a sound one."""
    return (
        *_faults_in_pieces(progress),
        *_faults_in_sticks(progress),
        *_faults_in_having(progress, trim, tuple(log)),
        *_faults_in_money(progress),
    )


def _faults_in_pieces(progress: TrimProgress) -> list[str]:
    """Every piece is cut already, or will be cut from exactly one stick; never both."""
    todo = Counter(name for laid in progress.layout.sticks for name in laid.todo)
    found = [f"{name} is to be cut {times} times" for name, times in todo.items() if times > 1]
    found += [
        f"{name} is {'cut and to be cut' if name in todo else 'lost'}"
        for name in progress.scaled.parts
        if (name in progress.cut) == (name in todo)
    ]
    found += [
        f"{name} is no piece of the job" for name in todo if name not in progress.scaled.parts
    ]
    return found


def _faults_in_sticks(progress: TrimProgress) -> list[str]:
    """What was and what will be cut from a stick has room on it side by side."""
    question = progress.scaled.question
    problem = question.problem
    # What is sawn lies as close as the marks of its day put it. The plan's kerf is that of the
    # steepest cut, and a nested mitre was rounded to the mark: each may be a step more than it
    # took.
    thinnest = ceil(question.kerf / question.step)
    # Laid out anew, from what is sawn and what is planned, each stick by its name.
    todo = {laid.name: laid.todo for laid in progress.layout.sticks}
    lengths = {laid.name: laid.length for laid in progress.layout.sticks}
    lengths |= {name: stick.length for name, stick in progress.rack.started.items()}
    found = []
    for name, length in lengths.items():
        stick = progress.rack.started.get(name)
        parts: list[Part] = list(stick.done) if stick is not None else []
        parts += [progress.scaled.parts[one] for one in todo.get(name, ())]
        need = 2 * problem.end_waste + sum(part.length for part in parts)
        sawn = 0 if stick is None else len(stick.done)
        for number, (one, other) in enumerate(pairwise(parts), start=1):
            need += problem.kerf if number >= sawn else thinnest
            # Two mitres that lean the same way lie one within the other and save the smaller of the
            # two; the leans are in the plan's units, with the way as their sign.
            if one.right_lean * other.left_lean > 0:
                need -= min(abs(one.right_lean), abs(other.left_lean)) + (number < sawn)
        if progress.scaled.inches(need) > length:
            found.append(f"{name} is overfilled")
    return found


def _faults_in_having(progress: TrimProgress, trim: Trim, log: tuple[Entry, ...]) -> list[str]:
    """As many sticks of each length are begun or whole as were in hand or are on the order."""
    supply: Counter[Fraction] = Counter()
    # All that there ever was: offcuts, purchases, and what spoiled pieces gave back.
    for rest in trim.rests:
        supply[rest.length] += rest.count
    if any(isinstance(entry, Counted) for entry in log):
        # After a count, the log no longer says where the sticks came from.
        return []
    for entry in log:
        if isinstance(entry, BoughtSticks):
            supply[entry.length] += entry.count
        elif isinstance(entry, Spoiled):
            supply.update(entry.rests)
    # The replay adds a stick where the log cuts one that no line bought; those are counted too.
    said = sum(
        (Counter({e.length: e.count}) for e in log if isinstance(e, BoughtSticks)), Counter()
    )
    for length, count in progress.rack.bought.items():
        supply[length] += count - said[length]
    in_hand: Counter[Fraction] = Counter(stick.length for stick in progress.rack.started.values())
    for kind, count in progress.rack.whole.items():
        in_hand[kind.length] += count
    found = [
        f"{in_hand[length]} sticks of {length} in are in hand, not {supply[length]}"
        for length in {*supply, *in_hand}
        if supply[length] != in_hand[length]
    ]
    for offer, packs in progress.layout.order:
        supply[offer.length] += packs * offer.pack
    cut: Counter[Fraction] = Counter(stick.length for stick in progress.rack.started.values())
    cut.update(
        laid.length for laid in progress.layout.sticks if laid.name not in progress.rack.started
    )
    for kind, count in progress.layout.aside:
        cut[kind.length] += count
    found += [
        f"{cut[length]} sticks of {length} in are cut or set aside, of {supply[length]}"
        for length in cut
        if cut[length] > supply[length]
    ]
    return found


def _faults_in_money(progress: TrimProgress) -> list[str]:
    """The rest of the order costs what its lines add up to, and no less than its bound."""
    cost = sum((offer.price * packs for offer, packs in progress.layout.order), Fraction(0))
    cost += sum(
        (
            laid.price
            for laid in progress.layout.sticks
            if laid.origin is Origin.SHOP and laid.name not in progress.rack.started
        ),
        Fraction(0),
    )
    cost += sum((kind.price * count for kind, count in progress.layout.aside), Fraction(0))
    # Exactly: both are sums of the same prices, and the plan counts whole coins.
    if cost * progress.scaled.question.per_coin != progress.layout.cost:
        return [f"the rest of the order costs {cost}, not what the plan says"]
    if progress.layout.bound > progress.layout.cost:
        return ["the bound is above the cost"]
    return []
