"""The end that is being typed: of which wall, at which side, and what its neighbour says of it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final, TypeAlias

from trimlang.joints import Joint
from trimlang.joints_by_role import STOPPED
from trimlang.language import tree
from trimlang.language.facts import AtEnd, OpenWalk, Side, Stated
from trimlang.language.parse import read_line
from trimlang.language.vocabulary import whole_joint
from trimlang.record import record
from trimlang.settings.table import Settings

_NAME: Final = r"(?P<trim>[^\W\d_][\w.\-]*)"
_TYPED: Final = (
    # right=…, or of one trim alone: shoe right=…
    re.compile(rf"(?:,\s*{_NAME}\s+)?\b(?P<side>left|right)\s*=\s*[\w\-]*$", re.IGNORECASE),
    # right=butt, shoe …
    re.compile(rf"(?<=,)\s*(?P<side>left|right)\s*=[^,]*,\s*{_NAME}\s+[\w\-]*$", re.IGNORECASE),
    # a corner between two walls: N 10 ft, …
    re.compile(r",\s*[a-z\-]*$", re.IGNORECASE),
)

Wall: TypeAlias = tree.RunLine | tree.GapLine


@record
class TypedEnd:
    """An end that is being typed; ``trim`` is named where it is that of one trim alone.

    ``neighbour`` is the wall past it, None where the walk ends there; ``usual`` is what the room
    says of ends that nobody says.
    """

    wall: Wall
    side: Side
    trim: str | None
    neighbour: Wall | None
    usual: Joint | None

    @property
    def own(self) -> Joint | None:
        """The wall's own end there, where its line says it already."""
        return _said(self.wall, self.side)

    @property
    def there(self) -> Joint | None:
        """What the neighbour says of the joint; an opening that says nothing stops the trim."""
        if self.neighbour is None:
            return None
        said = _said(self.neighbour, self.side.other)
        return STOPPED if said is None and isinstance(self.neighbour, tree.GapLine) else said

    @property
    def because(self) -> str:
        """What says so."""
        match self.neighbour:
            case tree.RunLine(label=label):
                return f"as {label.text} says"
            case tree.GapLine(kind=kind):
                return f"beside the {kind.value}"
        return ""


def behind_cursor(lines: Sequence[str], line: int, before: str) -> str:
    """Return the parts of a line behind the one that is being typed, from a comma on."""
    behind = re.search(r",.*", lines[line][len(before) :]) if line < len(lines) else None
    return behind[0] if behind is not None else ""


def typed_end(
    lines: Sequence[str], line: int, before: str, usual: Joint | None = None
) -> TypedEnd | None:
    """Return the end that is typed at the end of ``before``, None where no end is.

    ``lines`` are the document's and ``line`` the place among them (from 0); ``before`` is the text
    of that line before the cursor.  ``usual`` is what the job says of all ends.
    """
    typed = next(filter(None, (way.search(before) for way in _TYPED)), None)
    if typed is None:
        return None
    named = typed.groupdict()
    # a corner said between two walls is the first one's right end
    side = Side((named.get("side") or Side.RIGHT).lower())
    # The part that is being typed may not be readable yet; those behind the cursor belong to it.
    # (of the end that a trim's own stands behind, the trim is what is typed)
    begins = typed.start("trim") if named.get("trim") else typed.start()
    said = before[:begins].rstrip().rstrip(",")
    count = len(_walls(said))
    here = _walls(said + behind_cursor(lines, line, before))
    here = here if len(here) >= count else _walls(said)
    if not count:
        return None
    heading, above, below = _around(lines, line)
    room = [*above, *here, *below]
    own, at = len(above) + count - 1, len(above) + count - 1 + side.step
    beyond = not 0 <= at < len(room)
    is_open = heading is not None and any(isinstance(fact, OpenWalk) for fact in heading.facts)
    neighbour = None if beyond and (is_open or len(room) < 2) else room[at % len(room)]
    return TypedEnd(
        wall=room[own],
        side=side,
        trim=named.get("trim"),
        neighbour=neighbour,
        usual=_usual(heading) or usual,
    )


def _said(wall: Wall, side: Side) -> Joint | None:
    for fact in wall.facts:
        if isinstance(fact, AtEnd) and fact.side is side:
            return Joint.of(whole_joint(fact.end.joint.text))
    return None


def _usual(heading: tree.RoomLine | None) -> Joint | None:
    for fact in () if heading is None else heading.facts:
        if isinstance(fact, Stated) and fact.rows[0] is Settings.ends:
            (said,) = fact.values
            return Joint.of(whole_joint(said.text)) if isinstance(said, tree.Word) else None
    return None


def _around(lines: Sequence[str], line: int) -> tuple[tree.RoomLine | None, list[Wall], list[Wall]]:
    """Return the heading of a line's room, and the room's walls above and below the line."""
    above: list[Wall] = []
    heading: tree.Statement | None = None
    for text in reversed(lines[:line]):
        if text.lstrip().casefold().startswith("room "):
            heading, _ = read_line(text, "", 1)
            break
        above[:0] = _walls(text)
    below: list[Wall] = []
    for text in lines[line + 1 :]:
        if text.lstrip().casefold().startswith("room "):
            break
        below += _walls(text)
    return heading if isinstance(heading, tree.RoomLine) else None, above, below


def _walls(text: str) -> list[Wall]:
    statement, _ = read_line(text, "", 1)
    if isinstance(statement, tree.WallsLine):
        return list(statement.stretches)
    return [statement] if isinstance(statement, tree.RunLine | tree.GapLine) else []
