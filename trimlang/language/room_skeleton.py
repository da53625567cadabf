"""A room to begin from, put into a job file that is there: its figures are to be replaced."""

from __future__ import annotations

from typing import Final

from trimlang.diagnostics.source import Source
from trimlang.language import facts, tree
from trimlang.language.parse import parse
from trimlang.lengths.tape import Unit
from trimlang.settings.table import Settings

_WALLS: Final = {
    Unit.INCH: ("N 10 ft, E 8 ft, S 10 ft", "W 4 ft, door 32 in, W2 16 in"),
    Unit.MM: ("N 3000, E 2400, S 3000", "W 1200, door 813, W2 387"),
}
"""A plain room that comes round, with a door in its last wall."""


class RoomThereError(ValueError):
    """The file has a room of that name already."""


def with_room(source: Source, name: str) -> str:
    """Return a job file's text with one more room, behind its last and above its site log.

    The room gets the trims of the last room, else the first trim that the file names.

    Raises:
        RoomThereError: there is a room of that name.
    """
    statements, _ = parse(source)
    rooms = [line for line in statements if isinstance(line, tree.RoomLine)]
    if any(room.name.text.casefold() == name.casefold() for room in rooms):
        raise RoomThereError(name)
    # With the line ends that the file has, or an editor would show every line as changed.
    end = "\r\n" if "\r\n" in source.text else "\n"
    lines = source.text.split(end)
    logged = (line.span.line for line in statements if isinstance(line, tree.LOG_LINES))
    # The site log stands at the end of a file, and a room below it would be read as part of it.
    at = min(logged, default=len(lines) + 1) - 1
    while at and not lines[at - 1].strip():
        at -= 1
    made = ["", *_skeleton(name, statements, rooms)]
    rest = lines[at:] if any(line.strip() for line in lines[at:]) else [""]
    return end.join([*lines[:at], *made, *rest])


def _skeleton(
    name: str, statements: tuple[tree.Statement, ...], rooms: list[tree.RoomLine]
) -> list[str]:
    first = next((index for index, one in enumerate(statements) if one in rooms), len(statements))
    said = [
        fact
        for line in statements[:first]
        if isinstance(line, tree.SettingLine)
        for fact in line.facts
    ]
    written = next(
        (value.text for one in said if one.row() is Settings.unit for value in one.values[:1]
         if isinstance(value, tree.Word)), Unit.INCH
    )  # fmt: skip
    unit = Unit.MM if written == Unit.MM else Unit.INCH
    named = [
        fact.trim.text
        for room in rooms[-1:]
        for fact in room.facts
        if isinstance(fact, facts.NamedTrim)
    ]
    every = any(isinstance(line, tree.EveryRoomLine) for line in statements)
    if not named and every:
        named = []  # the line for every room says them
    elif not named:
        # A first room has no room before it to take its trims from.
        named = [line.name.text for line in statements if isinstance(line, tree.TrimLine)][:1]
    trims = f", trim {', '.join(named)}" if named else ""
    # Where the job says how walls meet, the skeleton need not say it again.
    ends = "" if any(one.row() is Settings.ends for one in said) else ", ends in"
    one, other = _WALLS[unit]
    return [
        f'room "{name}"{trims}{ends}',
        f"  {one}  # your own walls in the place of these, turning right",
        f"  {other}",
    ]
