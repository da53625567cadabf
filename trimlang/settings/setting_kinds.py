"""The kinds of settings: what a value of each is, and what one out of range is told.

A setting is a row of the table in ``trimlang.settings.table``.  A row is also a
descriptor, so that ``settings.kerf`` is the kerf that holds, and ``Settings.kerf``
the row that tells all about it.
"""

from __future__ import annotations

from dataclasses import KW_ONLY, field
from enum import StrEnum
from fractions import Fraction
from typing import TYPE_CHECKING, Any, Generic, TypeAlias, TypeVar, overload

from trimlang.lengths.tape import Direction
from trimlang.record import record

if TYPE_CHECKING:
    from trimlang.settings.table import Settings

_Value = TypeVar("_Value")


class Scope(StrEnum):
    """Where a setting may be said; what is said nearer wins."""

    JOB = "job"
    ROOM = "room"
    RUN = "run"


class Unit(StrEnum):
    """What a number without a unit means."""

    INCH = "in"
    MM = "mm"


class TakenAt(StrEnum):
    """Where the tape lay: on the wall, or over scraps of trim, to their long point."""

    WALL = "wall"
    POINT = "point"


@record
class Packed:
    """How a material is sold: what one box, tube or can holds (in ``unit``), and its price."""

    holds: Fraction
    price: Fraction = Fraction(0)
    unit: str = ""


RoundingRows: TypeAlias = tuple[tuple[str, tuple[Direction, Fraction]], ...]
"""For each row of the rounding rule, the deciding one first: which way, and raised by how much."""


@record
class Setting(Generic[_Value]):
    """One setting.

    ``words`` are how it is written and ``page`` what it means; ``unsaid`` is what the
    reference gives as its default, and ``why`` where that comes from.  ``metric`` is the
    default in a metric file, where it is another.  ``rules`` are the grammar's rules that
    state it (the row's own name where none is given).  ``end`` is the one kind of end it
    is for, ``wrong_end`` the diagnostic where another is named.
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
    name: str = field(default="", init=False)

    def __set_name__(self, owner: type, name: str) -> None:
        object.__setattr__(self, "name", name)
        if not self.rules:
            object.__setattr__(self, "rules", (name,))

    @overload
    def __get__(self, said: None, owner: type) -> Setting[_Value]: ...

    @overload
    def __get__(self, said: Settings, owner: type) -> _Value: ...

    def __get__(self, said: Settings | None, owner: type) -> Setting[_Value] | _Value:
        return self if said is None else said.value(self)

    def __reduce__(self) -> tuple[Any, ...]:
        # a row is itself in another process too
        return _row_named, (self.name,)

    @property
    def by_end(self) -> bool:
        """Whether its phrase names the kind of end that it is for."""
        return self.end is not None or isinstance(self, RoundingSetting)

    @property
    def for_room(self) -> bool:
        """Whether a room may say it for itself."""
        return self.scope is not Scope.JOB


def _row_named(name: str) -> Setting[Any]:
    from trimlang.settings.table import Settings

    return next(row for row in Settings.rows() if row.name == name)


@record
class LengthSetting(Setting[Fraction]):
    """A length in inches, called ``what``: more than nothing, or ``from_nothing`` on.

    More than ``at_most`` is answered with the diagnostic ``too_much``, which calls it ``fact``.
    """

    _: KW_ONLY
    what: str
    from_nothing: bool = False
    at_most: Fraction | None = None
    too_much: str = ""
    fact: str = ""


@record
class AngleSetting(Setting[Fraction]):
    """An angle in degrees from ``least`` to ``most`` or below it, and never 0; see T233."""

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
class Switch(Setting[bool]):
    """Yes or no: the rule ``on`` says yes, any other of its rules no."""

    _: KW_ONLY
    on: str


@record
class UnitSetting(Setting[Unit]):
    """What bare numbers mean; see T231."""


@record
class TakenSetting(Setting[TakenAt]):
    """Where the tape lay."""


@record
class EndSetting(Setting[str]):
    """A kind of end, one of ``kinds``; empty where there is none.  See T253."""

    _: KW_ONLY
    kinds: tuple[str, ...]


@record
class PackedSetting(Setting[Packed]):
    """A box, tube, tub or can, called ``what``; see T235."""

    _: KW_ONLY
    what: str


@record
class SpreadSetting(Setting[Fraction]):
    """How far paint goes, in inches of face a cubic inch (in²/in³); at most ``most``; see T235."""

    _: KW_ONLY
    what: str
    most: int


@record
class RoundingSetting(Setting[RoundingRows]):
    """Which way lengths go by their ends; ``named`` are the rows that a rule of their own names."""

    _: KW_ONLY
    what: str
    named: tuple[tuple[str, str], ...]


AnySetting: TypeAlias = (
    LengthSetting
    | AngleSetting
    | NumberSetting
    | Switch
    | UnitSetting
    | TakenSetting
    | EndSetting
    | PackedSetting
    | SpreadSetting
    | RoundingSetting
)
"""Every kind of row: what reads a setting goes through them."""
