"""Lays a plan's pieces out on their sticks, in inches from the left end."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from trimlang.planning.ask import Question
from trimlang.record import record
from trimlang.stock.problem import Part, Plan, Status, Waste
from trimlang.survey.job import Offer, Rest
from trimlang.survey.sticks import SoundPart


@record
class StickPlace:
    """Where a piece is cut from its stick: inches from the stick's left end.

    ``start`` and ``end`` are marks of the job's tape.  ``shared`` says that one pass of the saw
    makes its left end and the right end of the piece before it.
    """

    piece: str
    start: Fraction
    end: Fraction
    shared: bool


@record
class CutStick:
    """A stick that is cut: its label, where it comes from, and what is cut from it.

    ``squared`` is what is squared off its left end, ``squared_right`` off its right one.  Of a
    stick that was begun, ``gone`` inches with ``before`` pieces are already cut off its left end,
    and only its right one is still to be squared off: ``right`` says by how much.  ``part`` says
    which part of a stick with defects it is, ``batch`` its colour batch.
    """

    id: str
    trim: str
    length: Fraction
    on_hand: bool
    price: Fraction
    places: tuple[StickPlace, ...]
    offcut: Fraction
    squared: Fraction = Fraction(0)
    gone: Fraction = Fraction(0)
    before: int = 0
    right: Fraction | None = None
    part: SoundPart | None = None
    batch: str = ""

    @property
    def squared_right(self) -> Fraction:
        """What is squared off its right end."""
        return self.squared if self.right is None else self.right


@record
class Bought:
    """A line of the order: ``packs`` packs of ``pack`` sticks at ``price`` a pack.

    Lines of one ``bundle`` are bought together; their prices are shares of its price.
    """

    length: Fraction
    pack: int
    packs: int
    price: Fraction
    on_hand: bool
    bundle: int | None = None
    batch: str = ""

    @property
    def sticks(self) -> int:
        """How many sticks the line is for."""
        return self.packs * self.pack

    @property
    def cost(self) -> Fraction:
        """What the line costs."""
        return self.packs * self.price


@record
class Lost:
    """What of the cut sticks ends up in no piece (inches).

    ``kerf`` is sawdust, ``ends`` what is squared off, ``offcut`` the rests that are worth
    keeping, ``scrap`` those that are not.
    """

    kerf: Fraction = Fraction(0)
    ends: Fraction = Fraction(0)
    offcut: Fraction = Fraction(0)
    scrap: Fraction = Fraction(0)


@record
class Added:
    """How many joints there are more than are needed, and the money that they save in sticks."""

    joints: int = 0
    saved: Fraction = Fraction(0)


@record
class TrimPlan:
    """The whole plan of one trim, in inches and money.

    ``spare_asked`` is the length that the spare allowance asks for; ``whole_sticks`` are the
    lengths of sticks that stay uncut.  ``survives_loss`` says that there is room to cut any one
    piece again.  No plan of this cost cuts fewer sticks than ``stick_bound``.  ``plain_cost`` and
    ``plain_sticks`` are what simply cutting the longest piece first would take, None where it
    runs out of sticks.  ``restricted`` tells of a plan that not every choice of sticks is open to,
    so that it is not set beside those of other ways.  ``added`` tells of joints that no wall needs.
    ``filled_up`` are the lengths of sticks that only the supplier's least order asks for.
    """

    trim: str
    sticks: tuple[CutStick, ...]
    bought: tuple[Bought, ...]
    whole_sticks: tuple[Fraction, ...]
    spare_asked: Fraction
    cost: Fraction
    bound: Fraction
    status: Status
    survives_loss: bool = False
    lost: Lost = Lost()
    stick_bound: int = 0
    plain_cost: Fraction | None = None
    plain_sticks: int | None = None
    anywhere: Fraction | None = None
    restricted: bool = False
    added: Added = Added()
    filled_up: tuple[Fraction, ...] = ()


def lay_out(question: Question, plan: Plan) -> TrimPlan:
    """Return the plan in inches and money, its sticks numbered in the plan's order."""
    problem = question.problem
    parts = {part.id: part for part in problem.parts}
    lengths = {blank.key: blank.length for blank in problem.blanks}
    sticks: list[CutStick] = []
    used: dict[str, int] = {}
    # Numbered in the planner's order, longest pieces first: that is also the order of cutting.
    for number, stick in enumerate(plan.sticks, start=1):
        # Counted by blank, to know below how many of a purchase stay whole.
        used[stick.blank] = used.get(stick.blank, 0) + 1
        # From here on in inches: where a mark is, no longer which multiple of the unit.
        places, offcut = _places(
            [parts[name] for name in stick.parts],
            lengths[stick.blank],
            question,
        )
        source = question.sources[stick.blank]
        sticks.append(
            CutStick(
                id=f"{problem.trim}-{number}",
                trim=problem.trim,
                length=source.length,
                on_hand=isinstance(source, Rest),
                price=_each(source),
                places=places,
                offcut=offcut,
                squared=question.inches(problem.end_waste),
                part=source.part if isinstance(source, Rest) else None,
                batch=source.batch,
            )
        )
    bought: list[Bought] = []
    whole: list[Fraction] = []
    for purchase in plan.purchases:
        source = question.sources[purchase.blank]
        # A rest is taken as it lies, one by one.
        pack = source.pack if isinstance(source, Offer) else 1
        line = Bought(
            length=source.length,
            pack=pack,
            packs=purchase.packs,
            price=source.price,
            on_hand=isinstance(source, Rest),
            bundle=source.bundle if isinstance(source, Offer) else None,
            batch=source.batch,
        )
        bought.append(line)
        # Sticks of this line that no piece is cut from: spare, or left in a pack.
        whole += [source.length] * (line.sticks - used.get(purchase.blank, 0))
    return TrimPlan(
        trim=problem.trim,
        sticks=tuple(sticks),
        bought=tuple(bought),
        whole_sticks=tuple(whole),
        spare_asked=question.inches(problem.spare),
        cost=Fraction(plan.cost, question.per_coin),
        bound=Fraction(plan.bound, question.per_coin),
        status=plan.status,
        survives_loss=problem.survive_loss,
        lost=_lost(plan.waste, sticks, question),
        stick_bound=plan.stick_bound,
        plain_cost=Fraction(plan.plain.cost, question.per_coin) if plan.plain else None,
        plain_sticks=plan.plain.sticks if plan.plain else None,
        restricted=problem.is_restricted,
    )


def with_bound_anywhere(plan: TrimPlan, anywhere: Fraction) -> TrimPlan:
    """Return the plan with a bound that holds wherever long walls are joined, and so here too."""
    # A plan for one set of places costs no less than what holds for all places.
    bound = max(plan.bound, anywhere)
    # A bound that meets the cost proves the plan, wherever it came from.
    status = Status.PROVEN if bound == plan.cost else plan.status
    return replace(plan, anywhere=anywhere, bound=bound, status=status)


def _lost(waste: Waste, sticks: Iterable[CutStick], question: Question) -> Lost:
    """Return what is lost; what the planner allowed for kerfs and did not need is offcut."""
    usable = question.inches(question.problem.usable)
    rests = [stick.offcut for stick in sticks]
    offcut = sum((rest for rest in rests if rest >= usable), Fraction(0))
    # All rests but those worth keeping, so that the two add up to what was left.
    scrap = sum(rests, Fraction(0)) - offcut
    return Lost(
        # What is neither offcut nor scrap of the real layout was taken by the blade.
        kerf=question.inches(waste.kerf + waste.offcut + waste.scrap) - offcut - scrap,
        ends=question.inches(waste.ends),
        offcut=offcut,
        scrap=scrap,
    )


def _each(source: Offer | Rest) -> Fraction:
    # A pack has one price for all of its sticks.
    return source.price / source.pack if isinstance(source, Offer) else source.price


def _places(
    parts: list[Part], length: int, question: Question
) -> tuple[tuple[StickPlace, ...], Fraction]:
    """Return where the parts are cut, and the offcut behind them (inches).

    What lies between two parts is worked out for their own two ends, so it is never more than
    the plan allows for, and the offcut is never less.
    """
    inches, problem = question.inches, question.problem
    places: list[StickPlace] = []
    at, before = problem.end_waste, ""
    for part in parts:
        one_pass = False
        # The first piece begins behind the squared-off end; before each other one lies a cut.
        if before:
            between = question.parting(before, part.id)
            at += between.apart
            one_pass = between.one_pass
        places.append(StickPlace(part.id, inches(at), inches(at + part.length), one_pass))
        at, before = at + part.length, part.id
    # One more cut frees the last piece; behind it begins what is left, up to the end that would be
    # squared off.
    # A rest shorter than the cut is sawn to dust, and is nothing, not less.
    return tuple(places), inches(max(length - problem.end_waste - at - problem.kerf, 0))
