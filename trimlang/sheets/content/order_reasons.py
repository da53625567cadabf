"""The order explained, for whoever pays for it."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from trimlang.compiler import Result
from trimlang.planning.ask import ask
from trimlang.planning.fewest import MOST_PIECES, fewest_sticks
from trimlang.planning.layout import TrimPlan
from trimlang.record import record
from trimlang.sheets.content.proofs import cost_proofs
from trimlang.sheets.wording import material_words
from trimlang.sheets.wording.quantities import Pen
from trimlang.site_log.progress_of_job import JobProgress


@record
class WoodShare:
    """One use of a trim's wood: its length, and its share of the whole."""

    what: str
    length: str
    percent: str


@record
class TrimReasons:
    """One trim: its cost, where its wood goes, and what else there is to say (term, text)."""

    trim: str
    cost: str
    shares: tuple[WoodShare, ...]
    terms: tuple[tuple[str, str], ...]


@record
class OrderReasons:
    """The whole order explained.

    ``supplies`` are what else is bought, each with what it is made of; ``spent`` and
    ``to_buy`` are empty where there is no site log.  ``by_length`` tells that no stick has a
    price, so that what costs least is the least length.
    """

    trims: tuple[TrimReasons, ...]
    supplies: tuple[tuple[str, str], ...]
    together: str
    bound: str
    spent: str
    to_buy: str
    by_length: bool = False


def order_reasons(result: Result, pen: Pen) -> OrderReasons:
    """Return the reasons behind the order."""
    proofs = cost_proofs(result, pen)
    progress = result.progress
    return OrderReasons(
        trims=tuple(
            TrimReasons(
                trim=plan.trim,
                cost=pen.cost(plan.cost),
                shares=tuple(_shares(plan, pen)),
                terms=tuple(
                    (term, text) for term, text in _terms(result, plan, proof, pen) if text
                ),
            )
            for plan, proof in zip(result.plans, proofs.trims, strict=True)
        ),
        supplies=tuple(
            (material_words.name(supply, pen), material_words.need(supply, pen))
            for supply in result.supplies
        ),
        together=proofs.together,
        bound=proofs.bound,
        by_length=result.job.by_length,
        spent="" if progress is None else pen.cost(progress.spent),
        to_buy="" if progress is None else pen.cost(progress.to_buy),
    )


def _shares(plan: TrimPlan, pen: Pen) -> Iterator[WoodShare]:
    """Yield where the wood goes, every use of it, so that the shares add up to all of it."""
    words, lost = pen.words, plan.lost
    places = [place for stick in plan.sticks for place in stick.places]
    kinds = (
        # Every inch that is paid for is in one of these, so nothing is left unexplained.
        (words("in the pieces"), sum((place.end - place.start for place in places), Fraction(0))),
        (words("sticks left whole"), sum(plan.whole_sticks, Fraction(0))),
        (words("offcuts worth keeping"), lost.offcut),
        (words("scrap"), lost.scrap),
        (words("ends squared off"), lost.ends),
        (words("sawdust"), lost.kerf),
    )
    # Pieces that share a slanting cut overlap in length, so the sum can exceed what was bought; the
    # shares are of the sum.
    whole = sum((length for _, length in kinds), Fraction(0))
    for what, length in kinds:
        if length > 0:
            percent = pen.decimal(100 * length / whole, 1)
            yield WoodShare(what, _run(length, pen), f"{percent} %")


def _terms(result: Result, plan: TrimPlan, proof: str, pen: Pen) -> Iterator[tuple[str, str]]:
    words = pen.words
    yield pen.of_cost("price"), proof
    yield words("for mistakes"), _spare(result, plan, pen)
    yield words("sticks left whole"), pen.sticks(plan.whole_sticks)
    yield words("sticks cut"), _sticks(plan, pen)
    yield words("joints more than needed"), _added(result, plan, pen)
    yield words("from the shop"), _shop(plan, pen)
    yield words("least order"), material_words.least_order(result.job.trim(plan.trim), pen)
    yield words("bought for the least order"), pen.sticks(plan.filled_up)
    # A minimum or a bundle binds this order; other ways would have to be bound by it too to be
    # compared.
    if plan.restricted:
        return
    if result.progress is None:
        # What planning saves is known only for a plan of the whole job, before the saw starts.
        yield words("the usual way instead"), _saves(plan, pen)
        yield words("as few sticks as can be"), _fewest(result, plan, pen)
    else:
        yield words("in hand besides"), _in_hand(result.progress, plan, pen)


def _added(result: Result, plan: TrimPlan, pen: Pen) -> str:
    """Say what joints that no wall needs cost and save; nothing where there are none."""
    price, added = result.job.settings.joint_price, plan.added
    if price is None or not added.joints:
        return ""
    return pen.words(
        "{n} at {price} each, {paid} of work, which saves {saved} of sticks",
        n=added.joints,
        price=pen.cost(price),
        paid=pen.cost(added.joints * price),
        saved=pen.cost(added.saved),
    )


def _shop(plan: TrimPlan, pen: Pen) -> str:
    """Say which offcuts from the shop are used."""
    return ", ".join(
        pen.words("{n} of {length}", n=line.packs, length=pen.offcut(line.length))
        + (f" ({pen.cost(line.cost)})" if line.price else "")
        for line in plan.bought
        if line.on_hand
    )


def _sticks(plan: TrimPlan, pen: Pen) -> str:
    """Say how many sticks are cut, and what is proven about that number."""
    say, count = pen.of_cost, len(plan.sticks)
    # The bound speaks of plans of this cost only: for more money fewer sticks may well do.
    if plan.stick_bound >= count:
        return say("{n}. For this money fewer cannot do: that is proven.", n=count)
    if plan.stick_bound > 0:
        return say(
            "{n}. Whether fewer would do for this money is not known; fewer than {least} cannot.",
            n=count,
            least=plan.stick_bound,
        )
    return say("{n}. Whether fewer would do for this money is not known.", n=count)


def _in_hand(progress: JobProgress, plan: TrimPlan, pen: Pen) -> str:
    """Say which sticks in hand no piece is planned on."""
    held = [
        pen.words("{n} of {length}", n=one.count, length=pen.stick(one.length))
        if one.stick is None
        else pen.words("rest of {stick}, {length}", stick=one.stick, length=pen.length(one.length))
        for one in progress.in_hand
        if one.trim == plan.trim
    ]
    return ", ".join(held) or pen.words("none")


def _run(length: Fraction, pen: Pen) -> str:
    """Write a total in feet or metres; under two inches as a plain length, which shows more."""
    return pen.run_of(length) if length >= Fraction(2) else str(pen.mark(length))


def _saves(plan: TrimPlan, pen: Pen) -> str:
    """Say what planning saves compared with cutting longest first, in money or else in sticks."""
    say = pen.of_cost
    # Longest first is what one would do without a plan; what planning saves is told against that.
    if plan.plain_cost is None or plan.plain_sticks is None:
        return pen.words("Cutting the longest piece first runs out of sticks.")
    if plan.plain_cost > plan.cost:
        return say(
            "Cutting the longest piece first costs {cost}: {money} more than this order.",
            money=pen.cost(plan.plain_cost - plan.cost),
            cost=pen.cost(plan.plain_cost),
        )
    if plan.plain_sticks > len(plan.sticks):
        return say(
            "Cutting the longest piece first costs as much, but cuts {all} sticks, not {n}.",
            n=len(plan.sticks),
            all=plan.plain_sticks,
        )
    return say("Cutting the longest piece first costs as much.")


def _fewest(result: Result, plan: TrimPlan, pen: Pen) -> str:
    """Say what buying the fewest sticks would cost, compared with the plan."""
    words = pen.words
    pieces = [piece for piece in result.pieces if piece.trim == plan.trim]
    if len(pieces) > MOST_PIECES:
        return words("Not looked for: there are more than {n} pieces.", n=MOST_PIECES)
    found = fewest_sticks(ask(result.job, result.job.trim(plan.trim), pieces))
    if found is None:
        return words("Not looked for: there are too few sticks for a quick plan.")
    # Sticks to carry home: what the shop has already does not count.
    sticks = sum(line.sticks for line in plan.bought if not line.on_hand)
    # Three answers, from the surest down: proven fewest, nothing fewer found, or fewer for more
    # money.
    if sticks <= found.least:
        return words("This order: {n} to buy. Fewer cannot do.", n=sticks)
    if sticks <= found.sticks and not found.least:
        return words("This order: {n} to buy. A quick search found no fewer.", n=sticks)
    if sticks <= found.sticks:
        return words(
            "This order: {n} to buy. A quick search found no fewer; fewer than {least} cannot do.",
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
        "cost": pen.cost(found.cost),
        "more": pen.cost(found.cost - plan.cost),
    }
    if found.sticks <= found.least:
        return pen.of_cost(
            "{n} instead of {all} ({lengths}) cost {cost}, {more} more. Fewer cannot do; whether"
            " so few can be had for less is not known.",
            **facts,
        )
    if not found.least:
        return pen.of_cost(
            "{n} instead of {all} ({lengths}) cost {cost}, {more} more, as a quick search found.",
            **facts,
        )
    return pen.of_cost(
        "{n} instead of {all} ({lengths}) cost {cost}, {more} more, as a quick search found."
        " Fewer than {least} cannot do.",
        **facts,
        least=found.least,
    )


def _spare(result: Result, plan: TrimPlan, pen: Pen) -> str:
    said: list[str] = []
    if plan.spare_asked:
        said.append(
            pen.words(
                "{percent} % more than the pieces need: {length}, kept in sticks that stay whole.",
                percent=pen.decimal(result.job.settings.spare_percent, 1),
                length=pen.run_of(plan.spare_asked),
            )
        )
    if plan.survives_loss:
        said.append(
            pen.words("Any one piece may be spoiled: what is left over is enough to cut it again.")
        )
    return " ".join(said) or pen.words("Nothing is bought for mistakes.")
