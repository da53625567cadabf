"""The kinds of settings: what a value of each is, and what is said of one out of range.

A setting is a row of the table in ``trimlang.settings.table``.  A row is also a descriptor:
``settings.kerf`` is the value that holds, and ``Settings.kerf`` is the row with everything about
it.
"""

from __future__ import annotations

from dataclasses import KW_ONLY, field
from enum import StrEnum
from fractions import Fraction
from typing import Any, Generic, Protocol, TypeAlias, TypeVar, overload

from trimlang.joint_row import RoundedAs
from trimlang.lengths.tape import Direction, Unit
from trimlang.lengths.units import VolumeUnit
from trimlang.record import record

_Value = TypeVar("_Value")


class Scope(StrEnum):
    """Where a setting may be said; a run's value wins over its room's, and that over the job's."""

    JOB = "job"
    ROOM = "room"
    RUN = "run"


class TakenAt(StrEnum):
    """Where the tape ran: along the wall, or over scraps of trim to their long point."""

    WALL = "wall"
    POINT = "point"


class Bevels(StrEnum):
    """To which sides a saw's blade leans."""

    LEFT = "left"
    RIGHT = "right"
    BOTH = "both"


@record
class Packed:
    """How a material is sold: what one box, tube or can holds (in ``unit``), and its price."""

    holds: Fraction
    price: Fraction = Fraction(0)
    unit: VolumeUnit | None = None


RoundingRows: TypeAlias = tuple[tuple[RoundedAs, tuple[Direction, Fraction]], ...]
"""The rounding rule's rows in the order that decides: which way, and by how much raised."""


class Values(Protocol):
    """What knows the value that holds for each row: ``trimlang.settings.table.Settings``."""

    def value(self, row: Setting[_Value]) -> _Value:
        """Return the value that holds for a row."""


@record
class Setting(Generic[_Value]):
    """One setting: a row of the table.

    ``words`` is how it is written and ``page`` what it means.  ``unsaid`` is its default in the
    words of the reference, and ``why`` where that comes from.  ``metric`` is the default in a
    metric file, where that is another.  ``rules`` are the grammar's rules that state it (the
    row's own name where none is given).  ``end`` is the one kind of end that it is for, and
    ``wrong_end`` the diagnostic where another is named.  ``table`` and ``name``: where it stands.
    """

    _: KW_ONLY
    words: str
    page: str
    default: _Value
    unsaid: str
    why: str = "common practice, no source"
    metric: _Value | None = None
    scope: Scope = Scope.JOB
    rules: tuple[str, ...] = ()
    end: str | None = None
    wrong_end: str = "T232"
    name: str = ""
    table: type | None = field(default=None, compare=False, repr=False)

    # Python calls this with the name that the row has in its table.
    def __set_name__(self, owner: type, name: str) -> None:
        # Rows are frozen; this is the one moment at which their name becomes known.
        object.__setattr__(self, "name", name)
        # With its table it can be found again by name in another process.
        object.__setattr__(self, "table", owner)
        # Most rows are stated by one rule of the grammar, which has their name.
        if not self.rules:
            object.__setattr__(self, "rules", (name,))

    @overload
    def __get__(self, said: None, owner: type) -> Setting[_Value]: ...

    @overload
    def __get__(self, said: Values, owner: type) -> _Value: ...

    def __get__(self, said: Values | None, owner: type) -> Setting[_Value] | _Value:
        # Asked of the class, Python gives no settings: then the row itself is wanted.
        if said is None:
            return self
        # Put where Python looks before it asks the row again, as a cached property is.
        value = said.__dict__[self.name] = said.value(self)
        return value

    def __reduce__(self) -> tuple[Any, ...]:
        # Sent to another process, a row is found there by its name, so that it is still the same
        # row.
        return getattr, (self.table, self.name)

    @property
    def by_end(self) -> bool:
        """Whether its phrase in the file names the kind of end that it is for."""
        return self.end is not None or isinstance(self, RoundingSetting)

    @property
    def for_room(self) -> bool:
        """Whether a room may say it for itself."""
        return self.scope is not Scope.JOB


@record
class LengthSetting(Setting[Fraction]):
    """A length in inches, called ``what``; 0 is allowed only with ``from_nothing``.

    A value above ``at_most`` brings up the diagnostic ``too_much``, whose fact ``fact`` it is.
    """

    _: KW_ONLY
    what: str
    from_nothing: bool = False
    at_most: Fraction | None = None
    too_much: str = ""
    fact: str = ""


@record
class AngleSetting(Setting[Fraction]):
    """An angle in degrees, from ``least`` to ``most`` (or below ``most``), never 0; see T233."""

    _: KW_ONLY
    what: str
    least: int
    most: int
    below_most: bool = False


@record
class NumberSetting(Setting[Fraction]):
    """A plain number from ``least`` to ``most``; see T235."""

    _: KW_ONLY
    what: str
    least: int
    most: int


@record
class PriceSetting(Setting[Fraction | None]):
    """A price, None where there is none."""


@record
class Switch(Setting[bool]):
    """Yes or no: the grammar's rule ``on`` says yes, its other rules say no."""

    _: KW_ONLY
    on: str


@record
class UnitSetting(Setting[Unit]):
    """The unit of numbers without one; see T231."""


@record
class TakenSetting(Setting[TakenAt]):
    """Where the tape lay."""


@record
class BevelsSetting(Setting[Bevels]):
    """To which sides the blade leans."""


@record
class EndSetting(Setting[str]):
    """A kind of end, one of ``kinds``, or empty for none, of ``what``; see T253."""

    _: KW_ONLY
    what: str
    kinds: tuple[str, ...]


@record
class PackedSetting(Setting[Packed]):
    """A box, tube, tub or can, called ``what``; see T235."""

    _: KW_ONLY
    what: str


@record
class SpreadSetting(Setting[Fraction]):
    """How far paint goes, in square inches a cubic inch; at most ``most``; see T235."""

    _: KW_ONLY
    what: str
    most: int


@record
class RoundingSetting(Setting[RoundingRows]):
    """Which way lengths are rounded, by their ends.

    ``named`` pairs a rule of the grammar with the row that it is for.
    """

    _: KW_ONLY
    what: str
    named: tuple[tuple[str, str], ...]


AnySetting: TypeAlias = (
    LengthSetting
    | AngleSetting
    | NumberSetting
    | PriceSetting
    | Switch
    | UnitSetting
    | TakenSetting
    | BevelsSetting
    | EndSetting
    | PackedSetting
    | SpreadSetting
    | RoundingSetting
)
"""Every kind of row; code that reads a setting has a case for each."""
