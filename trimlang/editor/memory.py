"""Remembers what did not change from one key to the next: lines read, rooms joined.

A line that only moved is moved, not read again; so is a room.  What was not
asked for in one whole turn is forgotten.
"""

from __future__ import annotations

from collections.abc import Hashable
from dataclasses import fields, is_dataclass
from fractions import Fraction
from itertools import count
from typing import Any, Final, Generic, TypeVar

from trimlang.diagnostics import Diagnostic, Span
from trimlang.joinery.pieces import Joined, Places, join_room
from trimlang.survey.job import Job, Room
from trimlang.survey.settings import Settings
from trimlang.syntax.parse import read_line
from trimlang.syntax.tree import Statement

_Kept = TypeVar("_Kept")
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


class _Shelf(Generic[_Kept]):
    """What was made in this turn and in the last."""

    def __init__(self) -> None:
        self._now: dict[Hashable, _Kept] = {}
        self._before: dict[Hashable, _Kept] = {}

    def find(self, key: Hashable) -> _Kept | None:
        found = self._now.get(key)
        if found is None:
            found = self._before.get(key)
            if found is not None:
                self._now[key] = found
        return found

    def keep(self, key: Hashable, made: _Kept) -> None:
        self._now[key] = made

    def turn(self) -> None:
        self._before, self._now = self._now, {}


class Memory:
    """The compiler's ``line`` and ``room`` for one job, remembering."""

    def __init__(self) -> None:
        self._lines: _Shelf[tuple[Statement | None, tuple[Diagnostic, ...]]] = _Shelf()
        self._rooms: _Shelf[tuple[Hashable, Joined]] = _Shelf()
        self._job: Job | None = None
        self._common: Hashable = None
        self._settings: dict[int, tuple[Settings, int]] = {}
        self._numbers: _Shelf[int] = _Shelf()
        self._next = count(1)

    def line(
        self, text: str, file: str, number: int
    ) -> tuple[Statement | None, tuple[Diagnostic, ...]]:
        """Return what a line states; see ``trimlang.syntax.parse.read_line``."""
        here, anywhere = (file, number, text), (file, text)
        found = self._lines.find(here)
        first = self._lines.find(anywhere)
        if found is None and first is not None:
            found = moved(first, number - 1)
        if found is None:
            found = read_line(text, file, number)
        if first is None:
            self._lines.keep(anywhere, moved(found, 1 - number))
        self._lines.keep(here, found)
        return found

    def room(self, job: Job, room: Room, places: Places) -> Joined:
        """Return a room's pieces; see ``trimlang.joinery.pieces.join_room``."""
        if places:
            return join_room(job, room, places)
        if job is not self._job:
            self._job, self._settings = job, {}
            self._common = self._number((placeless(job.trims), job.settings))
        common = (self._common, self._settings_number(room.settings))
        walk = (room.name, room.tag, room.open_walk, room.note, room.walk)
        here = (common, walk)
        kept = self._rooms.find(here)
        if kept is None:
            anywhere: Hashable = (common, moved(walk, 1 - room.span.line))
            kept = self._rooms.find(anywhere) or (anywhere, join_room(job, room, places))
            self._rooms.keep(here, kept)
        anywhere, joined = kept
        if not joined[1] and not joined[2]:
            # nothing in it tells where it was found
            self._rooms.keep(anywhere, kept)
        return joined

    def _settings_number(self, settings: Settings) -> int:
        """Return a number that stands for settings: most rooms share one object."""
        known = self._settings.get(id(settings))
        if known is None:
            known = self._settings[id(settings)] = (settings, self._number(settings))
        return known[1]

    def _number(self, value: Hashable) -> int:
        number = self._numbers.find(value) or next(self._next)
        self._numbers.keep(value, number)
        return number

    def turn(self) -> None:
        """Begin anew: what this turn does not ask for is forgotten by the next."""
        self._lines.turn()
        self._rooms.turn()
        self._numbers.turn()
