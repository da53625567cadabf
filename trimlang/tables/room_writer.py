"""Writes one room's walls: a line each with both ends, or a joint once and walls side by side."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from enum import StrEnum
from typing import Final

from trimlang.diagnostics import Span
from trimlang.joints_by_role import USUAL
from trimlang.language import facts, tree
from trimlang.language.facts import Side
from trimlang.language.vocabulary import not_a_label, spellings
from trimlang.lengths.tape import Unit
from trimlang.survey.job import Room
from trimlang.tables.said_once import SaidOnce, of_openings, trims_named
from trimlang.tables.short_words import short_gap, without_degrees, without_unit
from trimlang.tables.written_ends import WallLine, ends_as_written, without_repeats

_WIDEST: Final = 96
"""Columns that walls in one line may take."""
_OFTEN: Final = 2
"""So many plain inside corners in a room, and “ends in” is shorter."""
_IN_THE_HEAD: Final = (facts.AtEnd, facts.RadiusGiven, facts.BeamAcross, facts.Called)
"""What is written with a wall's name and length, or as one of its ends."""


class WallForm(StrEnum):
    """How walls are written."""

    LONG = "long"
    SHORT = "short"


class RoomWriter:
    """Writes the walls of one room, in the long form or the short one.

    ``usual`` is how ends go that nobody says, by a line above all rooms; empty where none says
    it.  ``trims`` are those that each room gets which names none, as written.  ``plain_tag`` is
    the tag that the room would have without one of its own.  ``says_ends`` tells that the room is
    shorter with a line that says its ends, or with its own.
    """

    def __init__(
        self,
        room: Room,
        walls: list[WallLine],
        lines: list[str],
        form: WallForm,
        *,
        usual: str,
        trims: str | None = None,
        plain_tag: str = "",
    ) -> None:
        self._room = room
        self._walls = walls
        self._lines = lines
        self._form = form
        self._unit = room.settings.unit
        self._usual = room.settings.ends or usual
        self._trims, self._plain_tag = trims, plain_tag
        self._once = SaidOnce()
        self.says_ends = False
        self._ends = ends_as_written(room, walls, self._at)
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
            self._once = of_openings(walls, self._at)
            may_stand = [not _stands_alone(wall) for wall in walls]
            self._ends = without_repeats(room, walls, self._ends, self._usual, may_stand)

    def heading(self, raw: str, line: tree.RoomLine, *, said: bool) -> Iterator[str]:
        """Yield the room's heading, with what it now says of all its walls and openings.

        ``said`` tells that a line above the rooms says the ends of all.
        """
        if self._form is WallForm.LONG:
            yield raw
            return
        head = raw[: line.name.span.end - 1]
        # A tag that the room would get by itself need not be written.
        if line.tag is not None and line.tag.text != self._plain_tag:
            head += f" as {line.tag.text}"
        parts = [head]
        trims = trims_named(line, self._at)
        if trims is not None and trims != self._trims:
            parts.append(trims)
        parts += [
            self._at(fact.span) for fact in line.facts if not isinstance(fact, facts.NamedTrim)
        ]
        if self.says_ends and not said:
            parts.append("ends in")
        # A heading that names a casing keeps its own.
        cased_already = any(isinstance(fact, facts.Cased) for fact in line.facts)
        if self._once.casing is not None and not cased_already:
            parts.append(self._once.casing)
        yield ", ".join(parts) + raw[line.span.end - 1 :]
        if self._once.height is not None:
            yield f"  casings: {without_unit(self._once.height, self._unit)}"

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
            # A line that runs over the edge of a screen is harder to check against the pad than two
            # short ones.
            fits = len(self._line) + len(text) + len(behind) < _WIDEST
            if self._form is WallForm.LONG or alone or not self._line or not fits:
                yield from self.flush()
                self._line = text
            else:
                self._line += f", {text}"
            if behind or alone:
                self._line += behind
                yield from self.flush()

    def _at(self, span: Span) -> str:
        return self._lines[span.line - 1][span.column - 1 : span.end - 1]

    def _wall(self, wall: WallLine, at: int) -> tuple[str, bool]:
        """Return a wall's text, and whether it must stand in a line of its own."""
        short = self._form is WallForm.SHORT
        head = self._gap(wall) if isinstance(wall, tree.GapLine) else self._run(wall)
        alone = _stands_alone(wall)
        parts, last = [head], ""
        for side in Side:
            end = self._ends[at][side]
            if end is None:
                continue
            word = (*end.joint.row.shorts, end.joint.word)[0] if short else end.joint.word
            rest = without_degrees(end.rest) if short else end.rest
            # Where the next wall follows in its line, a corner stands between the two.
            between = side is Side.RIGHT and end.joint.word in spellings()["BETWEEN"]
            if short and between and not alone:
                last = f"{word}{rest}"
            else:
                parts.append(f"{side}={word}{rest}")
        for fact in wall.facts:
            text = self._at(fact.span)
            if isinstance(fact, facts.TrimEnd):
                parts.append(f"{fact.trim.text} {fact.side}={self._at(fact.end.span)}")
            elif isinstance(fact, facts.ClearHeight) and short:
                if text != self._once.height:
                    parts.append(without_unit(text, self._unit))
            elif isinstance(fact, facts.Cased) and text == self._once.casing:
                continue
            elif not isinstance(fact, _IN_THE_HEAD):
                parts.append(text)
        if self._once.casing is not None and _lacks_casing(wall):
            parts.append("no casing")
        return ", ".join([*parts, last] if last else parts), alone

    def _gap(self, wall: tree.GapLine) -> str:
        """Return how an opening or bare wall begins: its word, its width and its name."""
        begun = self._at(replace(wall.span, end=wall.width.span.end))
        called = next((fact for fact in wall.facts if isinstance(fact, facts.Called)), None)
        word, _, rest = begun.partition(" ")
        # a transition is as wide as its block, whose name stands there
        if self._form is WallForm.LONG or isinstance(wall.width, tree.Word):
            behind = called is not None and called.span.column > wall.width.span.end
            return f"{begun}, {self._at(called.span)}" if called and behind else begun
        # “door” alone is called so by its word.
        if called is None or called.text.text == word.casefold():
            return f"{word} {without_unit(rest, self._unit)}"
        width = without_unit(self._at(wall.width.span), self._unit)
        return short_gap(wall.kind, word, width, called.text.text)

    def _run(self, wall: tree.RunLine) -> str:
        """Return how a run begins: its name and its length."""
        long = self._at(wall.length.span)
        bare = self._unit is Unit.INCH and long[-1:].isdigit()
        name = wall.label.text
        if self._form is WallForm.LONG:
            head = f"{name}: {long}{' in' if bare else ''}"
        else:
            colon = ":" if _stands_alone(wall) else ""
            head = f"{name}{colon} {without_unit(long, self._unit)}"
        return f"{head} radius" if _is_radius(wall) else head


def _is_radius(wall: WallLine) -> bool:
    return any(isinstance(fact, facts.RadiusGiven) for fact in wall.facts)


def _stands_alone(wall: WallLine) -> bool:
    """Tell whether a wall needs a line of its own: its name, with a colon, could be a word."""
    if isinstance(wall, tree.GapLine):
        return False
    name = wall.label.text
    return _is_radius(wall) or not name[:1].isalpha() or not_a_label(name) is not None


def _lacks_casing(wall: WallLine) -> bool:
    """Tell whether a wall is an opening that says nothing of a casing."""
    own = (facts.Cased, facts.Uncased, facts.BeamAcross)
    opens = isinstance(wall, tree.GapLine) and wall.kind is tree.GapKind.OPENING
    return opens and not any(isinstance(fact, own) for fact in wall.facts)
