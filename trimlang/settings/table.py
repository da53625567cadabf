"""The settings that hold in a job or a room: the table's rows, and what the file says of them.

The rows are in ``room_rows`` and ``job_rows``.  Apart from them only the grammar (where a phrase
is new) and what uses a setting know of it: reading, ranges, completion, hover and the table in
the reference all come from the row.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from functools import cache, cached_property
from types import MappingProxyType
from typing import Any, TypeVar

from trimlang.joint_row import RoundedAs
from trimlang.lengths.tape import Direction, Unit, marks_of_tape, steps_up
from trimlang.settings.job_rows import JobRows
from trimlang.settings.room_rows import RoomRows
from trimlang.settings.setting_kinds import Setting

_Value = TypeVar("_Value")


class Settings(RoomRows, JobRows):
    """The settings that hold at one place: what was said there, and defaults for everything else.

    >>> Settings().kerf
    Fraction(1, 8)
    >>> Settings().having(Settings.unit, Unit.MM).nail_long * 127 / 5
    Fraction(50, 1)

    Lengths are in inches, angles in degrees.
    """

    __slots__ = ("__dict__", "_said")

    def __init__(self, said: Mapping[str, object] = MappingProxyType({})) -> None:
        self._said = said

    @classmethod
    def rows(cls) -> tuple[Setting[Any], ...]:
        """Return all rows of the table, in the order of the reference."""
        # The class itself too, so that a test or a plug-in may add rows in a class of its own.
        tables = (RoomRows, JobRows, cls)
        return tuple(
            row for one in tables for row in vars(one).values() if isinstance(row, Setting)
        )

    def value(self, row: Setting[_Value]) -> _Value:
        """Return the value that holds for a row: what was said, or the default in this unit."""
        # What was said wins even where it is the default: `says` must still tell the two apart.
        if row.name in self._said:
            return self._said[row.name]  # type: ignore[return-value]  # ``having`` put it there
        # A metric file gets a round number of millimetres, and not an inch turned into 25.4 of
        # them.
        if row.metric is not None and self.unit is Unit.MM:
            return row.metric
        return row.default

    def having(self, row: Setting[_Value], value: _Value) -> Settings:
        """Return these settings with another value of one row."""
        return Settings({**self._said, row.name: value})

    def says(self, row: Setting[Any]) -> bool:
        """Tell whether a row's value was said, rather than being the default."""
        return row.name in self._said

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Settings) and self._said == other._said

    def __hash__(self) -> int:
        return self._hash

    @cached_property
    def _hash(self) -> int:
        # Settings are part of many cache keys, so it is worked out once.
        return hash(frozenset(self._said.items()))

    def __reduce__(self) -> tuple[object, ...]:
        return Settings, (dict(self._said),)

    def __repr__(self) -> str:
        said = ", ".join(f"{name}={value!r}" for name, value in self._said.items())
        return f"Settings({said})"

    @cached_property
    def tape_step(self) -> Fraction:
        """The distance between two marks on the job's tape, in inches."""
        return marks_of_tape(self.unit, self.rounding_step)

    @cached_property
    def squared_off(self) -> Fraction:
        """What squaring both ends of a stick takes off it, up to the next mark (inches)."""
        return 2 * steps_up(self.squares_off, self.tape_step)

    @property
    def spare_percent(self) -> Fraction:
        """How much spare is bought, in percent of all pieces.

        Where the spare is room for any one piece, a percentage is added only if the file says so.
        """
        only = self.spare_covers and not self.says(Settings.spare)
        return Fraction(0) if only else self.spare

    @cached_property
    def rule(self) -> Mapping[RoundedAs, tuple[Direction, Fraction]]:
        """The rounding rule that holds here, its rows in the order that decides."""
        return dict(self.rounding)


@cache
def rows_of(rule: str) -> tuple[Setting[Any], ...]:
    """Return the rows that a rule of the grammar may state; the end that it names says which."""
    return tuple(row for row in Settings.rows() if rule in row.rules)
