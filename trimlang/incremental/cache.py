"""Keeps results, to use them again while nothing that they were made from has changed.

Each key stroke in an editor, and each save under ``build --watch``, begins a turn.  What was
not asked for during a whole turn is forgotten, so a cache never holds more than two turns.
Often a result does not depend on where its source stands in the file: ``placeless`` takes the
places out of a key, and ``moved`` shifts a kept result to where it stands now.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable
from dataclasses import fields, is_dataclass
from fractions import Fraction
from typing import Any, Final, Generic, TypeVar

from trimlang.diagnostics import Span
from trimlang.settings.setting_kinds import Setting
from trimlang.settings.table import Settings

_Made = TypeVar("_Made")
_NOWHERE: Final = Span("", 0, 0, 0)
# Looking up the fields of a dataclass is slow, and `moved` runs over every node of a file.
_names: dict[type, tuple[str, ...]] = {}
_plain: set[type] = {str, int, bool, Fraction, type(None), Settings}
"""Types whose values hold no place (``Span``); ``_parts`` adds those that it meets."""


def moved(value: Any, lines: int) -> Any:
    """Return a copy of a frozen value with each place in it ``lines`` further down."""
    kind = type(value)
    if kind in _plain:
        return value
    if kind is Span:
        return Span(value.file, value.line + lines, value.column, value.end)
    if kind is tuple:
        return tuple([moved(part, lines) for part in value])
    names = _parts(value)
    return kind(*[moved(getattr(value, name), lines) for name in names]) if names else value


def placeless(value: Any) -> Any:
    """Return a copy of a frozen value with each place in it replaced by the same nowhere."""
    kind = type(value)
    if kind is Span:
        return _NOWHERE
    if kind is tuple:
        return tuple([placeless(part) for part in value])
    names = _parts(value)
    return kind(*[placeless(getattr(value, name)) for name in names]) if names else value


def _parts(value: Any) -> tuple[str, ...]:
    """Return the names of a dataclass's fields; none for any other value."""
    kind = type(value)
    names = _names.get(kind)
    if names is None:
        # a row of the settings' table is itself wherever it is named
        is_node = is_dataclass(value) and not isinstance(value, Setting)
        names = tuple(field.name for field in fields(value)) if is_node else ()
        _names[kind] = names
        if not names:
            _plain.add(kind)
    return names


class Cache(Generic[_Made]):
    """The results of this turn and the last one, by the key that they were made from."""

    def __init__(self) -> None:
        self._now: dict[Hashable, _Made] = {}
        self._before: dict[Hashable, _Made] = {}

    def find(self, key: Hashable) -> _Made | None:
        """Return what is kept under a key, or None; what is found lives on for another turn."""
        found = self._now.get(key)
        if found is None:
            found = self._before.get(key)
            if found is not None:
                self._now[key] = found
        return found

    def keep(self, key: Hashable, made: _Made) -> None:
        """Keep a result until the end of the next turn."""
        self._now[key] = made

    def get(self, key: Hashable, make: Callable[[], _Made]) -> _Made:
        """Return what is kept under a key; call ``make`` where there is nothing."""
        found = self.find(key)
        if found is None:
            found = make()
            self.keep(key, found)
        return found

    def next_turn(self) -> None:
        """Begin a turn: what is not asked for in it is forgotten when the next one begins."""
        self._before, self._now = self._now, {}
