"""The surveyed job: what the file means, with every default filled in.

Lengths are exact inches (``Fraction``), angles exact degrees, money exact.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, TypeAlias

from trimlang.diagnostics import Span
from trimlang.language.facts import Side
from trimlang.language.stick_facts import BatchScope
from trimlang.language.tree import GapKind
from trimlang.lengths.tape import feet_text, steps_down
from trimlang.money import money_text
from trimlang.record import record
from trimlang.settings.table import Settings
from trimlang.survey.on_walls import DoorSwing, RoomDiagonal, Trimmings, WallBoxes
from trimlang.survey.stair_work import StairWork
from trimlang.survey.sticks import MinimumOrder
from trimlang.survey.sticks import Offer as Offer
from trimlang.survey.sticks import Rest as Rest
from trimlang.survey.wall_curve import WallCurve
from trimlang.survey.wall_end import End as End

if TYPE_CHECKING:
    from trimlang.survey.log_entries import Entry


@record
class Trim:
    """A moulding: its section, what it is made of, and how it is sold.

    ``height`` is its size across the face, which is a crown's or a casing's width (inches).
    ``spring`` is the angle between a crown's back and the wall (degrees), None for a trim that
    lies flat on the wall.  ``girth`` is how far a tape goes over its profile.
    ``logged`` are lengths that were bought and that the stock lines no
    longer list.  ``supplier`` is where it is bought, ``profile`` what its profile is called there,
    ``minimum`` the least that is sold of it, ``minimum_in_all`` of all trims of that supplier
    together.  ``flexible`` trim bends without kerfs;
    the pattern of ``one_way`` trim has a direction, so that no piece is turned end for end.
    ``upon`` is the trim on whose top it lies, as a cap does on base.  What ``hangs`` is below the
    ceiling; ``before_crown`` is the crown along whose ceiling edge it runs, None for trim that
    stands in front of none.
    """

    name: str
    thickness: Fraction | None
    height: Fraction | None
    material: tuple[str, ...]
    in_front_of: str | None
    offers: tuple[Offer, ...]
    rests: tuple[Rest, ...]
    span: Span
    spring: Fraction | None = None
    girth: Fraction | None = None
    logged: tuple[Offer, ...] = ()
    supplier: str | None = None
    profile: str | None = None
    minimum: MinimumOrder = MinimumOrder()
    minimum_in_all: MinimumOrder = MinimumOrder()
    batch_by: BatchScope = BatchScope.ROOM
    flexible: bool = False
    one_way: bool = False
    hangs: bool = False
    before_crown: str | None = None
    upon: str | None = None

    @property
    def has_batches(self) -> bool:
        """Whether its sticks are of more batches than one."""
        batches = {one.batch for one in self.offers} | {one.batch for one in self.rests}
        return len(batches) > 1

    def batch_of(self, length: Fraction, *, on_hand: bool) -> str:
        """Return the batch of all sticks of a length; empty where they are of more than one."""
        sticks = self.rests if on_hand else self.offers
        # Two batches of one length cannot be told apart by a stick's length, so none is claimed.
        batches = {one.batch for one in sticks if one.length == length}
        return batches.pop() if len(batches) == 1 else ""

    def longest_stick(self, settings: Settings) -> Fraction | None:
        """Return the longest piece (inches) that bought sticks give, or offcuts if none are sold.

        As a plan lays it out: from the first mark of the tape that is not squared off to the last
        one.  None where there is no stock at all.
        """
        # Offcuts in the shop count only where nothing can be bought: a wall must not be taken to
        # fit because of one long stick that another piece may use up.
        lengths = [offer.length for offer in (*self.offers, *self.logged)] or [
            rest.length for rest in self.rests
        ]
        if not lengths:
            return None
        # The stick down and what is squared off up: either way on the safe side, as a plan does it.
        return steps_down(max(lengths), settings.tape_step) - settings.squared_off


@record
class OwnEnd:
    """How one trim of a run ends at a side where the others end as the run says."""

    trim: str
    side: Side
    end: End


@record
class Run:
    """A stretch of wall that gets trim; left and right as one faces it.

    ``first_stud`` is how far from the wall's left end the middle of a stud is known to be
    (inches).  ``slope`` is the pitch of a stair's run in degrees, positive where it rises to the
    right; ``length`` is then along the lower edge, and along a wall that curves its arc.
    ``floor_gap`` is the largest gap under a straight edge on the floor (inches), ``ceiling`` the
    slope of the ceiling along it in degrees, positive where that rises to the right.  At the sides
    in ``turns_level`` crown that climbs with it goes on level into the corner.
    """

    label: str
    length: Fraction
    left: End
    right: End
    trims: tuple[str, ...]
    must_splice: bool
    may_splice: bool
    note: str | None
    span: Span
    first_stud: Fraction | None = None
    slope: Fraction = Fraction(0)
    stair: StairWork = StairWork()
    curve: WallCurve | None = None
    ceiling: Fraction = Fraction(0)
    turns_level: tuple[Side, ...] = ()
    floor_gap: Fraction = Fraction(0)
    own_ends: tuple[OwnEnd, ...] = ()

    @property
    def written(self) -> Fraction:
        """The number that the file gives: a chord, or a length taken level, may be another."""
        number = self.stair.measured if self.curve is None else self.curve.given
        return self.length if number is None else number

    def side(self, side: Side) -> End:
        """Return how the run ends there."""
        return side.of(self.left, self.right)

    def own_end(self, trim: str, side: Side) -> End | None:
        """Return how one trim ends there, where that is said of it alone."""
        # One trim of a wall may end differently from those above or below it, such as base that
        # returns where crown goes on.
        ends = (one.end for one in self.own_ends if one.trim == trim and one.side is side)
        return next(ends, None)

    def end_of(self, trim: str, side: Side) -> End:
        """Return how one of its trims ends there."""
        return self.own_end(trim, side) or self.side(side)


@record
class Gap:
    """Wall without running trim: an opening, or bare wall such as behind a cabinet.

    ``width`` is as written: from trim to trim, or the clear width where the opening gets a
    casing.  ``casing`` and ``head`` name the casing's trims (``head`` is None where one trim goes
    all round); ``clear_height`` goes with them.  ``taken_up`` is the wall that opening and
    casing take up together, ``sill`` how high a window begins above the floor.
    ``turns`` names those that go on along its side, in a corner there.
    ``stops`` names the trims that end at it, while all others go on past
    it; None where the file does not say, so that it stops what it usually does.  ``swing`` is how
    its door opens, None where that is not said.  Lengths in inches.  The kind ``lost`` holds the
    place of a wall that could not be read.
    """

    kind: GapKind
    width: Fraction
    called: str | None
    entrance: bool
    left: End | None
    right: End | None
    note: str | None
    span: Span
    casing: str | None = None
    head: str | None = None
    clear_height: Fraction | None = None
    taken_up: Fraction | None = None
    stops: tuple[str, ...] | None = None
    sill: Fraction | None = None
    trimmings: Trimmings = Trimmings()
    turns: tuple[str, ...] = ()
    swing: DoorSwing | None = None

    @property
    def is_lost(self) -> bool:
        """Whether it holds the place of a wall that could not be read."""
        return self.kind is GapKind.LOST

    def lets_past(self, trim: Trim) -> bool:
        """Whether a trim goes on past it: as the file says, else what hangs, over an opening."""
        if self.stops is not None:
            return trim.name not in self.stops and not self.is_lost
        # A door or window ends below the ceiling, so crown runs on above it with its frieze;
        # behind a cabinet that reaches the ceiling it would not, so bare wall stops all trim.
        return self.kind is GapKind.OPENING and trim.hangs

    @property
    def trims(self) -> tuple[str, ...]:
        """The trims that its casing and all else round it are cut from."""
        cased = (name for name in (self.casing, self.head) if name is not None)
        return (*cased, *self.trimmings.trims)

    @property
    def along(self) -> Fraction:
        """How much of the wall it takes up, from trim to trim (inches)."""
        return self.width if self.taken_up is None else self.taken_up


Stretch: TypeAlias = Run | Gap


@record
class LoosePiece:
    """Loose pieces of one kind, which stand on no wall of the walk: cleats, door stops, jambs.

    There are ``count`` of them, each ``length`` inches from long point to long point (crown:
    along its wall edge).  ``label`` stands for them in the pieces' ids.
    """

    called: str
    label: str
    count: int
    length: Fraction
    trim: str
    left: End
    right: End
    note: str | None
    span: Span


@record
class Room:
    """A room: its walls in order, turning right (``walk``), and the settings that hold there."""

    name: str
    tag: str
    walk: tuple[Stretch, ...]
    open_walk: bool
    settings: Settings
    note: str | None
    span: Span
    diagonals: tuple[RoomDiagonal, ...] = ()
    loose: tuple[LoosePiece, ...] = ()
    boxes: tuple[WallBoxes, ...] = ()

    @property
    def runs(self) -> tuple[Run, ...]:
        """The stretches that get trim, in the order of the walk."""
        return tuple(stretch for stretch in self.walk if isinstance(stretch, Run))

    @property
    def trims_besides(self) -> tuple[str, ...]:
        """The trims of its loose pieces and its boxes."""
        return (*(one.trim for one in self.loose), *(one.trim for one in self.boxes))


@record
class Job:
    """Everything that a job file says.

    ``by_length`` tells that no stick has a price.  Each then costs as many inches as it is long,
    and what a plan costs is the length that is bought.
    """

    name: str
    surveyed: str | None
    currency: str
    settings: Settings
    trims: tuple[Trim, ...]
    rooms: tuple[Room, ...]
    log: tuple[Entry, ...] = ()
    by_length: bool = False

    def trim(self, name: str) -> Trim:
        """Return the trim with this name, which must exist."""
        return next(trim for trim in self.trims if trim.name == name)

    def cost_text(self, cost: Fraction) -> str:
        """Write what a plan costs: money, or a length where no stick has a price."""
        if self.by_length:
            return feet_text(cost, self.settings.unit)
        return f"{self.currency}{money_text(cost)}"
