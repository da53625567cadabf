"""The stock order: what to ask for at the counter, and what it comes to."""

from __future__ import annotations

from fractions import Fraction

from trimlang.compiler import Result
from trimlang.lengths.tape import decimal_text
from trimlang.planning.ask import ask
from trimlang.planning.layout import Bought, TrimPlan
from trimlang.planning.placing import least_anywhere
from trimlang.record import record
from trimlang.sheets.wording import material_words as supply_words
from trimlang.sheets.wording.quantities import Pen
from trimlang.stock.fewest import MOST_PIECES, fewest_sticks
from trimlang.stock.problem import Status


@record
class OrderedLine:
    """A line to read out: how many, of what, at how much."""

    count: str
    what: str
    each: str
    cost: str


@record
class TrimOrder:
    """One trim's part of the order."""

    trim: str
    section: str
    lines: tuple[OrderedLine, ...]
    shop: tuple[OrderedLine, ...]
    bought: str
    needed: str
    spare: str
    whole: str
    sticks: str
    cost: str
    bound: str
    status: str
    waste: str
    saves: str
    fewest: str
    in_hand: str


@record
class Order:
    """The whole order."""

    trims: tuple[TrimOrder, ...]
    supplies: tuple[OrderedLine, ...]
    needs: tuple[tuple[str, str], ...]
    trim_cost: str
    supply_cost: str
    total: str
    unpriced: bool
    bound: str
    status: str
    spent: str
    to_buy: str


def order(result: Result, pen: Pen) -> Order:
    """Return the order in words and money."""
    supply_cost = sum((supply.cost for supply in result.supplies), Fraction(0))
    elsewhere = {plan.trim: _elsewhere(result, plan) for plan in result.plans}
    bound = result.bound - sum((saves or Fraction(0) for saves in elsewhere.values()), Fraction(0))
    return Order(
        trims=tuple(_trim(result, plan, elsewhere[plan.trim], pen) for plan in result.plans),
        supplies=tuple(
            OrderedLine(
                str(supply.count),
                f"{supply_words.name(supply, pen)}, {supply_words.package(supply, pen)}",
                pen.money(supply.price) if supply.price else pen.words("no price given"),
                pen.money(supply.cost) if supply.price else "",
            )
            for supply in result.supplies
        ),
        needs=tuple(
            (supply_words.name(supply, pen), supply_words.need(supply, pen))
            for supply in result.supplies
        ),
        trim_cost=pen.money(result.cost),
        supply_cost=pen.money(supply_cost),
        total=pen.money(result.cost + supply_cost),
        unpriced=any(not supply.price for supply in result.supplies),
        bound=pen.money(bound),
        status=_all_plans(result, elsewhere, bound, pen),
        spent="" if result.progress is None else pen.money(result.progress.spent),
        to_buy="" if result.progress is None else pen.money(result.progress.to_buy),
    )


def _elsewhere(result: Result, plan: TrimPlan) -> Fraction | None:
    """What joints elsewhere could save on a proven plan at most; None where none is free."""
    free = tuple(one for one in result.splices if one.free and one.trim.name == plan.trim)
    if not free or result.progress is not None or plan.status is not Status.PROVEN:
        return None
    pieces = [piece for piece in result.pieces if piece.trim == plan.trim]
    question = ask(result.job, result.job.trim(plan.trim), pieces)
    least = least_anywhere(question, free, int(plan.cost * question.per_coin))
    return max(plan.cost - Fraction(least, question.per_coin), Fraction(0))


def _all_plans(
    result: Result, elsewhere: dict[str, Fraction | None], bound: Fraction, pen: Pen
) -> str:
    """Say of all trims together what holds for each of them."""
    if any(plan.status is not Status.PROVEN for plan in result.plans):
        return _gap(result.cost, bound, pen)
    free = [saves for saves in elsewhere.values() if saves is not None]
    return _proven(sum(free, Fraction(0)) if free else None, pen)


def _proven(elsewhere: Fraction | None, pen: Pen) -> str:
    """Say of a proven plan whether joints elsewhere could make it cheaper."""
    if elsewhere is None:
        return pen.words("proven least cost")
    if not elsewhere:
        return pen.words("proven least cost, wherever the long walls are pieced together")
    return pen.words(
        "proven least cost with the long walls pieced together as shown; whether other places save"
        " anything is not known, {gap} at most",
        gap=pen.money(elsewhere),
    )


def _gap(cost: Fraction, bound: Fraction, pen: Pen) -> str:
    if cost == bound:
        return pen.words("proven least cost")
    return pen.words(
        "not proven least: no plan can cost less than {bound}, this one is {gap} above it",
        bound=pen.money(bound),
        gap=pen.money(cost - bound),
    )


def _trim(result: Result, plan: TrimPlan, elsewhere: Fraction | None, pen: Pen) -> TrimOrder:
    trim = result.job.trim(plan.trim)
    sizes = [
        *supply_words.section(trim, result.job, pen),
        *(supply_words.material(word, pen) for word in trim.material),
    ]
    pieces = sum((piece.length for piece in result.pieces if piece.trim == plan.trim), Fraction(0))
    bought = sum(
        (line.length * line.sticks for line in plan.bought if not line.on_hand), Fraction(0)
    )
    return TrimOrder(
        trim=plan.trim,
        section=", ".join(part for part in sizes if part),
        lines=tuple(_line(line, pen) for line in plan.bought if not line.on_hand),
        shop=tuple(_line(line, pen) for line in plan.bought if line.on_hand),
        bought=pen.run_of(bought),
        needed=pen.run_of(pieces),
        spare=_spare(result, plan, pen),
        whole=_whole(plan.whole_sticks, pen),
        sticks=_sticks(plan, pen),
        cost=pen.money(plan.cost),
        bound=pen.money(plan.bound),
        status=_proven(elsewhere, pen)
        if plan.status is Status.PROVEN
        else _gap(plan.cost, plan.bound, pen),
        waste=_waste(plan, pen),
        # a job under way is not planned from nothing any more
        saves=_saves(plan, pen) if result.progress is None else "",
        fewest=_fewest(result, plan, pen) if result.progress is None else "",
        in_hand=_in_hand(result, plan, pen),
    )


def _sticks(plan: TrimPlan, pen: Pen) -> str:
    """Say how many sticks are cut, and what is proven of that number."""
    words, count = pen.words, len(plan.sticks)
    facts = {"n": count, "least": plan.stick_bound}
    if plan.stick_bound >= count:
        return words("{n}; proven: at this cost fewer cannot do", **facts)
    if plan.stick_bound > 0:
        return words("{n}; not proven fewest: at this cost fewer than {least} cannot do", **facts)
    return words("{n}; not proven fewest", **facts)


def _in_hand(result: Result, plan: TrimPlan, pen: Pen) -> str:
    """Say what is in hand that no piece is planned on."""
    if result.progress is None:
        return ""
    held = [
        pen.words("{n} of {length}", n=one.count, length=pen.stick(one.length))
        if one.stick is None
        else pen.words("rest of {stick}, {length}", stick=one.stick, length=pen.length(one.length))
        for one in result.progress.in_hand
        if one.trim == plan.trim
    ]
    return ", ".join(held) or pen.words("none")


def _waste(plan: TrimPlan, pen: Pen) -> str:
    """Say where the wood of the cut sticks goes that no piece keeps, kind by kind."""
    words, lost = pen.words, plan.lost
    kinds = (
        (words("sawdust {length}", length=_run(lost.kerf, pen)), lost.kerf),
        (words("squared off {length}", length=_run(lost.ends, pen)), lost.ends),
        (words("scrap {length}", length=_run(lost.scrap, pen)), lost.scrap),
        (words("offcuts worth keeping {length}", length=_run(lost.offcut, pen)), lost.offcut),
    )
    return ", ".join(text for text, length in kinds if length) or words("none")


def _run(length: Fraction, pen: Pen) -> str:
    """Write a total; where it is less than it can show, in small units."""
    return pen.run_of(length) if length >= Fraction(2) else pen.length(length)


def _saves(plan: TrimPlan, pen: Pen) -> str:
    """Say what planning saves against cutting longest first, in money or else in sticks."""
    words = pen.words
    if plan.plain_cost is None or plan.plain_sticks is None:
        return words("cutting longest first runs out of sticks")
    if plan.plain_cost > plan.cost:
        return words(
            "{money}: that way costs {cost}",
            money=pen.money(plan.plain_cost - plan.cost),
            cost=pen.money(plan.plain_cost),
        )
    if plan.plain_sticks > len(plan.sticks):
        return words(
            "no money, but cuts {n} sticks instead of {all}",
            n=len(plan.sticks),
            all=plan.plain_sticks,
        )
    return words("nothing")


def _fewest(result: Result, plan: TrimPlan, pen: Pen) -> str:
    """Say what buying as few sticks as can be would take, beside the plan's choice."""
    words = pen.words
    pieces = [piece for piece in result.pieces if piece.trim == plan.trim]
    if len(pieces) > MOST_PIECES:
        return words("not looked for: more than {n} pieces", n=MOST_PIECES)
    found = fewest_sticks(ask(result.job, result.job.trim(plan.trim), pieces))
    if found is None:
        return words("not looked for: the supply is too short for a quick plan")
    sticks = sum(line.sticks for line in plan.bought if not line.on_hand)
    if sticks <= found.least:
        return words("this plan: {n} to buy, fewer cannot do", n=sticks)
    if sticks <= found.sticks:
        return words(
            "this plan: {n} to buy; a quick search found no fewer, not proven: fewer than {least}"
            " cannot do",
            n=sticks,
            least=found.least,
        )
    lengths = ", ".join(
        words("{n} of {length}", n=line.pack * line.packs, length=pen.stick(line.length))
        for line in sorted(found.lines, key=lambda line: (line.length, line.pack))
    )
    facts = {
        "n": found.sticks,
        "all": sticks,
        "lengths": lengths,
        "cost": pen.money(found.cost),
        "more": pen.money(found.cost - plan.cost),
    }
    if found.sticks <= found.least:
        return words(
            "{n} instead of {all} ({lengths}) for {cost}, {more} more; fewer cannot do, but that"
            " so few cost so much is not proven",
            **facts,
        )
    return words(
        "{n} instead of {all} ({lengths}) for {cost}, {more} more; found by a quick search, not"
        " proven: fewer than {least} cannot do",
        **facts,
        least=found.least,
    )


def _spare(result: Result, plan: TrimPlan, pen: Pen) -> str:
    said: list[str] = []
    if plan.spare_asked:
        said.append(
            pen.words(
                "{percent} % asks for {length} in whole sticks",
                percent=decimal_text(result.job.settings.spare_percent, 1),
                length=pen.run_of(plan.spare_asked),
            )
        )
    if plan.survives_loss:
        said.append(
            pen.words("any one piece may be spoiled: what is left over is enough to cut it again")
        )
    return "; ".join(said) or pen.words("none asked for")


def _whole(sticks: tuple[Fraction, ...], pen: Pen) -> str:
    """Say which sticks stay whole: ``2 of 12 ft, 1 of 16 ft``."""
    if not sticks:
        return pen.words("none")
    return ", ".join(
        pen.words("{n} of {length}", n=sticks.count(length), length=pen.stick(length))
        for length in sorted(set(sticks))
    )


def _line(line: Bought, pen: Pen) -> OrderedLine:
    words = pen.words
    if line.on_hand:
        return OrderedLine(
            str(line.packs),
            words("offcut in the shop, {length}", length=pen.length(line.length)),
            pen.money(line.price) if line.price else "",
            pen.money(line.cost) if line.price else "",
        )
    what = words("stick of {length}", length=pen.stick(line.length))
    if line.pack > 1:
        what = words("pack of {n}, {length} each", n=line.pack, length=pen.stick(line.length))
    return OrderedLine(str(line.packs), what, pen.money(line.price), pen.money(line.cost))
