"""Keeps what was made, to use it again when nothing that it was made from has changed.

An editor's key stroke and a save under ``build --watch`` each begin a turn.  What was not
asked for in one whole turn is forgotten, so a cache never grows past two turns.  Where a
thing stands in the file often does not matter to what is made of it: ``placeless`` takes
the places out of a key, ``moved`` puts a kept thing where it stands now.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable
from dataclasses import fields, is_dataclass
from fractions import Fraction
from typing import Any, Final, Generic, TypeVar

from trimlang.diagnostics import Span
from trimlang.settings.table import Settings

_Made = TypeVar("_Made")
_NOWHERE: Final = Span("", 0, 0, 0)
_names: dict[type, tuple[str, ...]] = {}
_plain: set[type] = {str, int, bool, Fraction, type(None), Settings}
"""Kinds of values with no place in them."""


def moved(value: Any, lines: int) -> Any:
    """Return a value with each place in it ``lines`` further down."""
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
    """Return a value with each place in it forgotten."""
    kind = type(value)
    if kind is Span:
        return _NOWHERE
    if kind is tuple:
        return tuple([placeless(part) for part in value])
    names = _parts(value)
    return kind(*[placeless(getattr(value, name)) for name in names]) if names else value


def _parts(value: Any) -> tuple[str, ...]:
    """Return the names of a node's fields; none for what is no node."""
    kind = type(value)
    names = _names.get(kind)
    if names is None:
        names = tuple(field.name for field in fields(value)) if is_dataclass(value) else ()
        _names[kind] = names
        if not names:
            _plain.add(kind)
    return names


class Cache(Generic[_Made]):
    """What was made in this turn and in the last, by what it was made from."""

    def __init__(self) -> None:
        self._now: dict[Hashable, _Made] = {}
        self._before: dict[Hashable, _Made] = {}

    def find(self, key: Hashable) -> _Made | None:
        """Return what was kept under a key, and keep it for the next turn too."""
        found = self._now.get(key)
        if found is None:
            found = self._before.get(key)
            if found is not None:
                self._now[key] = found
        return found

    def keep(self, key: Hashable, made: _Made) -> None:
        """Keep what was made until the end of the next turn."""
        self._now[key] = made

    def get(self, key: Hashable, make: Callable[[], _Made]) -> _Made:
        """Return what was kept under a key, made now where there is nothing."""
        found = self.find(key)
        if found is None:
            found = make()
            self.keep(key, found)
        return found

    def next_turn(self) -> None:
        """Begin anew: what this turn does not ask for is forgotten by the next."""
        self._before, self._now = self._now, {}
