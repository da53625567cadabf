"""How an end that is being typed should go on: as its neighbour says it on the other side."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from trimlang.joints_by_role import STOPPED
from trimlang.language import tree
from trimlang.language.facts import AtEnd, Side
from trimlang.language.parse import read_line
from trimlang.language.vocabulary import whole_joint
from trimlang.record import record

_TYPED: Final = re.compile(r"\b(?P<side>left|right)\s*=\s*[\w\-]*$", re.IGNORECASE)


@record
class Expected:
    """The end that fits the neighbour, and what says so."""

    joint: str
    because: str


def expected_end(lines: Sequence[str], line: int, before: str) -> Expected | None:
    """Return how the end typed at the end of ``before`` should be cut, None where nobody says.

    ``lines`` are the document's and ``line`` the place among them (from 0); ``before`` is the
    text of that line before the cursor.
    """
    typed = _TYPED.search(before)
    if typed is None:
        return None
    side = Side(typed["side"].lower())
    # the part that is being typed may not be readable yet
    here = _walls(before[: typed.start()].rstrip().rstrip(","))
    if not here:
        return None
    above, below, is_open = _around(lines, line)
    room = [*above, *here, *below]
    at = len(above) + len(here) - 1 + side.step
    if not 0 <= at < len(room):
        if is_open or len(room) < 2:
            return None
        at %= len(room)
    return _said(room[at], side.other)


def _said(wall: tree.RunLine | tree.GapLine, side: Side) -> Expected | None:
    said = next(
        (fact for fact in wall.facts if isinstance(fact, AtEnd) and fact.side is side), None
    )
    if isinstance(wall, tree.GapLine):
        # An opening that says nothing stops trim square, as the survey fills it in.
        joint = said.end.joint.text if said is not None else STOPPED.word
        return Expected(joint, f"beside the {wall.kind.value}")
    if said is None:
        return None
    return Expected(whole_joint(said.end.joint.text), f"as {wall.label.text} says")


def _around(
    lines: Sequence[str], line: int
) -> tuple[list[tree.RunLine | tree.GapLine], list[tree.RunLine | tree.GapLine], bool]:
    """Return the room's walls above and below a line, and whether its walk is open."""
    above: list[tree.RunLine | tree.GapLine] = []
    is_open = True
    for text in reversed(lines[:line]):
        if text.lstrip().casefold().startswith("room "):
            is_open = "open walk" in " ".join(text.casefold().split())
            break
        above[:0] = _walls(text)
    below: list[tree.RunLine | tree.GapLine] = []
    for text in lines[line + 1 :]:
        if text.lstrip().casefold().startswith("room "):
            break
        below += _walls(text)
    return above, below, is_open


def _walls(text: str) -> list[tree.RunLine | tree.GapLine]:
    statement, _ = read_line(text, "", 1)
    if isinstance(statement, tree.WallsLine):
        return list(statement.stretches)
    return [statement] if isinstance(statement, tree.RunLine | tree.GapLine) else []
