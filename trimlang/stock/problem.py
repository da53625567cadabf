"""What the stock planner is asked, and what it answers.

One problem is one trim: sticks of different trims never mix.  Every length
here is a whole number of the problem's own unit (the smallest that holds the
job's lengths exactly), and every price a whole number of the smallest coin
that the job file used, so no float decides whether a piece fits or what is
cheaper.

How a stick is cut
------------------
``kerf`` is what one cut takes along the stick, at the steepest mitre that the
trim has.  A stick of length ``L`` loses ``end_waste`` at each end.  In what is left,
pieces lie side by side, each as long as its ``Part.length`` (overall, long
point to long point), with one ``kerf`` between neighbours.  The last piece
needs a kerf behind it only if something is left behind it.

Neighbouring ends that lean the same way share a cut.  ``Part.left_lean`` and
``Part.right_lean`` say how far the face edge of that end lies to the right of
its back edge (negative: to the left; zero: a square end).  Two neighbours
overlap, long point past long point, by ``min(|right_lean|, |left_lean|)``
when both lean the same way, and by nothing otherwise.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from enum import StrEnum
from typing import TypeAlias

from trimlang.record import record
from trimlang.stock.certificate import Certificate

Watch: TypeAlias = Callable[[int | None, int], None]
"""Called with the least cost so far (None: no plan yet) and the bound as the search goes on."""


@record
class Part:
    """One piece to be cut: its id, overall length and the lean of its ends.

    Parts of one ``group`` are cut from blanks of one batch; the empty one is no group.
    """

    id: str
    length: int
    left_lean: int = 0
    right_lean: int = 0
    group: str = ""


@record
class Blank:
    """A kind of stick that can be bought, or is in hand.

    ``price`` buys ``pack`` sticks at once.  ``limit`` is the most *sticks* (not packs) that
    there are (None: no limit).  ``on_hand`` marks rests already in the shop;
    they are taken one by one.  Blanks of one ``bundle`` are bought together: as many packs of each.
    ``batch`` is what parts of one group may not mix.
    """

    key: str
    length: int
    price: int
    pack: int = 1
    limit: int | None = None
    on_hand: bool = False
    bundle: str = ""
    batch: str = ""


@record
class Problem:
    """Cut all ``parts`` of one trim from ``blanks`` for the least money.

    ``spare`` asks for whole uncut sticks beyond those that are cut, at least this long together;
    rests from the rack do not count.  Pieces shorter than ``short`` are
    cut first, while the stick is still long enough to hold.  An offcut of
    ``usable`` or more is worth keeping; a shorter one is scrap.  With
    ``survive_loss`` any one piece may be spoiled: some rest or whole stick is
    long enough to cut it again, so nothing is bought a second time.  ``lost`` is how long a piece
    may be that is planned elsewhere and could be cut again here.

    Where anything is bought at all, it is ``least_sticks`` sticks or more (sticks of a pack count
    one by one), and they cost ``least_spent`` or more together.
    """

    trim: str
    parts: tuple[Part, ...]
    blanks: tuple[Blank, ...]
    kerf: int = 0
    end_waste: int = 0
    spare: int = 0
    short: int = 0
    usable: int = 0
    survive_loss: bool = False
    lost: int = 0
    least_sticks: int = 0
    least_spent: int = 0

    @property
    def has_minimum(self) -> bool:
        """Whether the yard sells no less than so much."""
        return self.least_sticks > 0 or self.least_spent > 0

    @property
    def longest_lost(self) -> int:
        """The longest piece that could be spoiled: what holds it holds any other."""
        return max(self.lost, *(part.length for part in self.parts), 0)

    @property
    def has_bundles(self) -> bool:
        """Whether some blanks are bought only together."""
        return any(blank.bundle for blank in self.blanks)

    @property
    def has_batches(self) -> bool:
        """Whether parts that belong together could come from unlike batches."""
        # With one batch, or without groups, nothing can be mixed.
        batches = {blank.batch for blank in self.blanks}
        return len(batches) > 1 and any(part.group for part in self.parts)

    @property
    def is_restricted(self) -> bool:
        """Whether more is asked than which pieces are cut from which sticks at what price."""
        return self.has_minimum or self.has_bundles or self.has_batches


class Status(StrEnum):
    """What is known of a plan's cost."""

    PROVEN = "proven least cost"
    GAP = "within a stated gap"
    UNPROVEN = "not proven"


@record
class Stick:
    """One stick that is cut: the blank's key and the pieces from its left end."""

    blank: str
    parts: tuple[str, ...]


@record
class Purchase:
    """How many packs (or singles, or rests from the rack) of one blank are taken."""

    blank: str
    packs: int


@record
class Waste:
    """Where the length of the cut sticks goes that is in no piece.

    ``kerf`` is sawdust, ``ends`` the trimmed ends, ``offcut`` the rests worth
    keeping and ``scrap`` the rests that are not.  All are lengths in the
    problem's unit; the triangles sawn off beside a mitre count with their piece.
    """

    kerf: int = 0
    ends: int = 0
    offcut: int = 0
    scrap: int = 0


@record
class Plain:
    """What it takes to cut longest first, each piece from the first stick with room for it."""

    cost: int
    sticks: int


@record
class Plan:
    """An answer: sticks to cut, what to buy, and how good that is.

    Sticks bought beyond ``sticks`` stay whole (spare, or left in a pack).
    ``cost`` and ``bound`` are in the smallest coin; ``bound`` is proven: no plan
    costs less.

    The rest is shown to the user.  ``stick_bound``: no plan of this cost
    cuts fewer sticks.  ``offcuts``: what is left of each stick, in the order of
    ``sticks``.  ``shared``: the sticks, counted from 0, whose
    pieces fit only because neighbours share a mitre.  ``proof``: how the bound was found, in words.
    ``work``: patterns priced and branches tried, the same on every machine.
    ``certificate``: by what the bound can be checked; ``doubt``: why the check refused it.
    """

    problem: Problem
    sticks: tuple[Stick, ...]
    purchases: tuple[Purchase, ...]
    cost: int
    bound: int
    status: Status
    stick_bound: int = 0
    offcuts: tuple[int, ...] = ()
    shared: tuple[int, ...] = ()
    waste: Waste = Waste()
    plain: Plain | None = None
    proof: str = ""
    work: int = 0
    certificate: Certificate | None = None
    doubt: str = ""

    @property
    def gap(self) -> int:
        """How much dearer than ``bound`` this plan is, in the smallest coin."""
        return self.cost - self.bound

    @property
    def rank(self) -> tuple[int, int]:
        """What plans of one problem are compared by: the cost, then the number of sticks."""
        # At one cost the fewer sticks are the fewer to carry, to mark and to square off.
        return self.cost, len(self.sticks)

    @property
    def has_room_for_a_loss(self) -> bool:
        """Whether a rest, or a stick that stays whole, holds any one piece that is spoiled."""
        problem, used = self.problem, Counter(stick.blank for stick in self.sticks)
        packs: Counter[str] = Counter()
        for purchase in self.purchases:
            packs[purchase.blank] += purchase.packs
        # A stick that was bought and holds no piece stays whole; its ends are squared off when it
        # is cut.
        whole = [
            blank.length - 2 * problem.end_waste
            for blank in problem.blanks
            if packs[blank.key] * blank.pack > used[blank.key]
        ]
        return max((*self.offcuts, *whole), default=0) >= problem.longest_lost


@record
class NoPlan:
    """No plan exists: the parts that no stick holds, or the supply that ran out.

    ``sure`` is False where the search for a plan within the supply gave up.
    """

    problem: Problem
    too_long: tuple[str, ...] = ()
    short_of_supply: bool = False
    sure: bool = True
