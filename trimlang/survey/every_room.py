"""What is said once for every room, or for all openings of a room: as if each had said it.

A room that names trims, or a casing, of its own takes nothing of the kind from the line for every
room; an opening with a casing of its own, or with ``no casing``, takes none from its room.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from trimlang.diagnostics import Span
from trimlang.diagnostics.place import place
from trimlang.language import facts, tree
from trimlang.survey.measures import Findings


def said_for_each(
    statements: Iterable[tree.Statement], findings: Findings
) -> tuple[tree.Statement, ...]:
    """Return the statements with what is said for every room, or every opening, at each of them."""
    every: tree.EveryRoomLine | None = None
    below: tree.RoomLine | None = None
    first: Span | None = None
    read: list[tree.Statement] = []
    for line in statements:
        match line:
            case tree.EveryRoomLine() if below is not None:
                findings.say("T490", line.span, room=below.name.text, first=first)
            case tree.EveryRoomLine() if every is not None:
                before = place(every.span, line.span)
                findings.say("T207", line.span, word="“every room”", line=before)
            case tree.EveryRoomLine():
                every = line
            case tree.RoomLine():
                first = first or line.span
                below = _with_usual(line, every.facts if every is not None else ())
                line = below
            case tree.GapLine() if below is not None:
                line = _with_casing(line, below)
        read.append(line)
    return tuple(read)


def _with_usual(room: tree.RoomLine, usual: tuple[facts.WallFact, ...]) -> tree.RoomLine:
    own = {type(fact) for fact in room.facts}
    # what could not be read may be what the room says of its own
    added = () if facts.Unread in own else (one for one in usual if type(one) not in own)
    return replace(room, facts=(*room.facts, *added))


def _with_casing(gap: tree.GapLine, room: tree.RoomLine) -> tree.GapLine:
    casing = [fact for fact in room.facts if isinstance(fact, facts.Cased)]
    own = (facts.Cased, facts.Uncased, facts.BeamAcross, facts.Unread)
    opens = gap.kind is tree.GapKind.OPENING
    if not opens or any(isinstance(fact, own) for fact in gap.facts):
        return gap
    return replace(gap, facts=(*gap.facts, *casing))
