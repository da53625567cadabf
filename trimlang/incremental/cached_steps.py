"""The compiler's steps with a cache behind them: only changed lines and rooms are worked on.

A line that only moved up or down is shifted, not read again; and so is a room.
"""

from __future__ import annotations

from collections.abc import Hashable
from itertools import count
from typing import TypeAlias

from trimlang.diagnostics import Diagnostic
from trimlang.incremental.cache import Cache, moved, placeless
from trimlang.joinery.pieces import Joined, Places, join_room
from trimlang.language.parse import read_line
from trimlang.language.tree import Statement
from trimlang.settings.table import Settings
from trimlang.survey.job import Job, Room

_Read: TypeAlias = tuple[Statement | None, tuple[Diagnostic, ...]]


class CachedSteps:
    """The steps ``line`` and ``room`` for one job; call ``next_turn`` before each compilation."""

    def __init__(self) -> None:
        self._lines: Cache[_Read] = Cache()
        # Where a line with this text was first read; the same line elsewhere is shifted from there.
        self._first: Cache[tuple[_Read, int]] = Cache()
        self._rooms: Cache[tuple[Hashable, Joined]] = Cache()
        self._job: Job | None = None
        # What all rooms of a job share (trims and settings) is large. It is hashed once and then
        # stands in each room's key as a small number.
        self._common: Hashable = None
        self._settings: dict[int, tuple[Settings, int]] = {}
        self._numbers: Cache[int] = Cache()
        self._next = count(1)

    def line(self, text: str, file: str, number: int) -> _Read:
        """Return a line's statement and findings; see ``trimlang.language.parse.read_line``."""
        here, anywhere = (file, number, text), (file, text)
        found = self._lines.find(here)
        first = self._first.find(anywhere)
        if found is None and first is not None:
            found = moved(first[0], number - first[1])
        if found is None:
            found = read_line(text, file, number)
        if first is None:
            self._first.keep(anywhere, (found, number))
        self._lines.keep(here, found)
        return found

    def room(self, job: Job, room: Room, places: Places) -> Joined:
        """Return a room's pieces and findings; see ``trimlang.joinery.pieces.join_room``."""
        # The places of splices come from the planner and are different for each plan, so nothing is
        # kept.
        if places:
            return join_room(job, room, places)
        if job is not self._job:
            self._job, self._settings = job, {}
            self._common = self._number((placeless(job.trims), job.settings))
        common = (self._common, self._settings_number(room.settings))
        walk = (room.name, room.tag, room.open_walk, room.note, room.walk, room.loose, room.boxes)
        here = (common, walk)
        found = self._rooms.find(here)
        if found is None:
            # Shifted so that the room begins at line 1: the key does not change when lines are
            # added above.
            anywhere: Hashable = (common, moved(walk, 1 - room.span.line))
            found = self._rooms.find(anywhere) or (anywhere, join_room(job, room, places))
            self._rooms.keep(here, found)
        anywhere, joined = found
        if not joined[1] and not joined[2]:
            # Pieces carry no place, but splices and findings do: only a room without them serves
            # anywhere.
            self._rooms.keep(anywhere, found)
        return joined

    def _settings_number(self, settings: Settings) -> int:
        """Return a number that stands for these settings; most rooms share one object."""
        # By id, as hashing the settings of each room would cost more than it saves. The object is
        # kept in the entry, so that its id cannot be given to another one meanwhile.
        known = self._settings.get(id(settings))
        if known is None:
            known = self._settings[id(settings)] = (settings, self._number(settings))
        return known[1]

    def _number(self, value: Hashable) -> int:
        number = self._numbers.find(value) or next(self._next)
        self._numbers.keep(value, number)
        return number

    def next_turn(self) -> None:
        """Begin anew: what this turn does not ask for is forgotten by the next."""
        self._lines.next_turn()
        self._first.next_turn()
        self._rooms.next_turn()
        self._numbers.next_turn()
