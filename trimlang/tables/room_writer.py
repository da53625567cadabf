"""Writes one room's walls: a line each with both ends, or a joint once and walls side by side."""

from __future__ import annotations

from collections.abc import Iterator
from enum import StrEnum
from typing import Final, TypeAlias

from trimlang.joints import Joint
from trimlang.joints_by_role import USUAL
from trimlang.language import facts, tree
from trimlang.language.facts import Side
from trimlang.language.vocabulary import not_a_label
from trimlang.lengths.tape import Unit
from trimlang.record import record
from trimlang.settings.setting_kinds import TakenAt
from trimlang.survey.job import Room, Run
from trimlang.survey.level_returns import with_level_returns
from trimlang.survey.unsaid_ends import stopped
from trimlang.tables.short_words import short_gap, without_unit

WallLine: TypeAlias = tree.RunLine | tree.GapLine

_WIDEST: Final = 96
"""Columns that walls in one line may take."""
_OFTEN: Final = 2
"""So many plain inside corners in a room, and “ends in” is shorter."""
_SHORT: Final = {"in-corner": "in", "out-corner": "out"}


class WallForm(StrEnum):
    """How walls are written."""

    LONG = "long"
    SHORT = "short"


@record
class _EndAsWritten:
    """An end as it may be written: its joint, and what stands in brackets or behind it."""

    joint: Joint
    rest: str


class RoomWriter:
    """Writes the walls of one room, in the long form or the short one.

    ``usual`` is how ends go that nobody says, by a line above all rooms; empty where none says
    it.  ``says_ends`` tells that the room is shorter with such a line, or with its own.
    """

    def __init__(
        self, room: Room, walls: list[WallLine], lines: list[str], form: WallForm, *, usual: str
    ) -> None:
        self._room = room
        self._walls = walls
        self._lines = lines
        self._form = form
        self._unit = room.settings.unit
        self._usual = room.settings.ends or usual
        self.says_ends = False
        self._stretches = [len(list(with_level_returns(wall))) for wall in walls]
        self._ends = [self._written_ends(wall, at) for at, wall in enumerate(walls)]
        self._line = ""
        if form is WallForm.SHORT:
            # Counted by ends, as each joint has two: so many plain corners that saying it once is
            # shorter.
            plain = sum(
                end is not None and end.joint is USUAL and not end.rest
                for ends in self._ends
                for end in ends.values()
            )
            if not room.settings.ends and plain > 2 * _OFTEN:
                self._usual, self.says_ends = USUAL.word, True
            self._drop()

    def heading(self, raw: str, line: tree.RoomLine, *, said: bool) -> str:
        """Return the room's heading, with what it now says of the ends of all walls.

        ``said`` tells that a line above the rooms says it of all.
        """
        if self.says_ends and not said:
            at = line.span.end - 1
            return f"{raw[:at]}, ends in{raw[at:]}"
        return raw

    def flush(self) -> Iterator[str]:
        """Yield what was begun."""
        if self._line:
            yield f"  {self._line}"
        self._line = ""

    def walls(self, walls: list[WallLine], remark: str) -> Iterator[str]:
        """Yield the walls of a line; ``remark`` stands behind the last of them."""
        for wall in walls:
            # By identity, since two walls may be written alike.
            at = next(place for place, one in enumerate(self._walls) if one is wall)
            behind = f"  {remark}" if remark and wall is walls[-1] else ""
            text, alone = self._wall(wall, at)
            fits = len(self._line) + len(text) + len(behind) < _WIDEST
            if self._form is WallForm.LONG or alone or not self._line or not fits:
                yield from self.flush()
                self._line = text
            else:
                self._line += f", {text}"
            if behind or alone:
                self._line += behind
                yield from self.flush()

    def _slice(self, wall: WallLine, column: int, end: int) -> str:
        return self._lines[wall.span.line - 1][column - 1 : end - 1]

    def _written_ends(self, wall: WallLine, at: int) -> dict[Side, _EndAsWritten | None]:
        ends: dict[Side, _EndAsWritten | None] = {}
        for fact in wall.facts:
            if isinstance(fact, facts.AtEnd):
                end = fact.end
                rest = self._slice(wall, end.joint.span.end, end.span.end)
                ends[fact.side] = _EndAsWritten(Joint.of(end.joint.text), rest)
        # A wall with level returns is more than one stretch of the walk.
        begins = sum(self._stretches[:at])
        last = begins + self._stretches[at] - 1
        for side in Side:
            stretch = self._room.walk[side.of(begins, last)]
            if side not in ends:
                ends[side] = (
                    _EndAsWritten(stretch.side(side).joint, "")
                    if isinstance(stretch, Run)
                    else None
                )
        return ends

    def _drop(self) -> None:
        """Leave out each end that what is beside it says, or the room."""
        count = len(self._walls)
        for at, wall in enumerate(self._walls):
            after = at + 1
            if after == count and (self._room.open_walk or count == 1):
                continue
            after %= count
            other = self._walls[after]
            one, two = self._ends[at][Side.RIGHT], self._ends[after][Side.LEFT]
            for end, place, side, run, neighbour in (
                (one, at, Side.RIGHT, wall, other),
                (two, after, Side.LEFT, other, wall),
            ):
                plain = not self._over_scraps(run)
                stops = end is not None and end.joint is stopped(run) and not end.rest and plain
                of_run = isinstance(run, tree.RunLine) and isinstance(neighbour, tree.GapLine)
                if stops and of_run:
                    self._ends[place][side] = None
            both = isinstance(wall, tree.RunLine) and isinstance(other, tree.RunLine)
            if not both or one is None or two is None or one.joint is not two.joint:
                continue
            # A return or an open end says nothing of the next wall, so each must stand.
            if not (one.joint.has_mate or one.joint.stops):
                continue
            # what is measured or coped stands where it was written, and so does how it was taken
            may_go = [
                not end.rest and not self._over_scraps(run)
                for end, run in ((one, wall), (two, other))
            ]
            if may_go[1]:
                self._ends[after][Side.LEFT] = None
            if may_go[0] and (not may_go[1] or one.joint.word == self._usual):
                self._ends[at][Side.RIGHT] = None

    def _over_scraps(self, wall: WallLine) -> bool:
        """Tell whether a wall's own ends say how they were taken."""
        said = any(isinstance(fact, facts.WrittenTaken) for fact in wall.facts)
        return said or self._room.settings.taken is TakenAt.POINT

    def _wall(self, wall: WallLine, at: int) -> tuple[str, bool]:
        """Return a wall's text, and whether it must stand in a line of its own."""
        said, short = wall.facts, self._form is WallForm.SHORT
        if isinstance(wall, tree.GapLine):
            head = self._slice(wall, wall.span.column, wall.width.span.end)
            alone = False
            if short:
                called = next((fact for fact in said if isinstance(fact, facts.Called)), None)
                said = tuple(fact for fact in said if fact is not called)
                name = (
                    "" if called is None else self._slice(wall, called.span.column, called.span.end)
                )
                head = short_gap(wall.kind, without_unit(head, self._unit), name)
        else:
            long = self._slice(wall, wall.length.span.column, wall.length.span.end)
            bare = self._unit is Unit.INCH and long[-1:].isdigit()
            name = wall.label.text
            is_radius = any(isinstance(fact, facts.RadiusGiven) for fact in wall.facts)
            # A name that could be read as a word of the language needs its colon, and with it a
            # line of its own.
            alone = is_radius or not name[:1].isalpha() or not_a_label(name) is not None
            if not short:
                head = f"{name}: {long}{' in' if bare else ''}"
            else:
                head = f"{name}{':' if alone else ''} {without_unit(long, self._unit)}"
            head += " radius" if is_radius else ""
        parts = [head]
        for side in Side:
            end = self._ends[at][side]
            if end is not None:
                word = end.joint.word
                word = _SHORT.get(word, word) if short else word
                parts.append(f"{side}={word}{end.rest}")
        for fact in said:
            text = self._slice(wall, fact.span.column, fact.span.end)
            if isinstance(fact, facts.TrimEnd):
                end_text = self._slice(wall, fact.end.span.column, fact.end.span.end)
                parts.append(f"{fact.trim.text} {fact.side}={end_text}")
            elif isinstance(fact, facts.Called) and text[:1] not in '"“':
                continue  # it is called so by its first word
            elif isinstance(fact, facts.ClearHeight) and short:
                parts.append(without_unit(text, self._unit))
            elif not isinstance(fact, facts.AtEnd | facts.RadiusGiven | facts.BeamAcross):
                parts.append(text)
        return ", ".join(parts), alone
