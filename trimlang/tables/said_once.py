"""Finds what the short form says once: a room's casing and heights, the trims of most rooms."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence

from trimlang.diagnostics import Span
from trimlang.language import facts, tree
from trimlang.record import record

Slice = Callable[[Span], str]
"""Returns what stands at a place of the file."""

_NO_CASING = ", no casing"


@record
class SaidOnce:
    """What a room says of all its openings, as written: ``casing case``, ``height 80``."""

    casing: str | None = None
    height: str | None = None


def of_openings(walls: Iterable[tree.RunLine | tree.GapLine], text: Slice) -> SaidOnce:
    """Return what is shorter said once for a room's openings, None where that is not shorter."""
    openings = [
        one.facts
        for one in walls
        if isinstance(one, tree.GapLine)
        and one.kind is tree.GapKind.OPENING
        and not any(isinstance(fact, facts.BeamAcross) for fact in one.facts)
    ]
    casings = [_written(one, facts.Cased, text) for one in openings]
    bare = sum(
        casing is None and not any(isinstance(fact, facts.Uncased) for fact in one)
        for casing, one in zip(casings, openings, strict=True)
    )
    casing, times = _most(casings)
    # Said for the room it is written once instead of each time, and every opening without a casing
    # must then say so.
    if casing is not None and (times - 1) * len(f", {casing}") <= bare * len(_NO_CASING):
        casing = None
    height, times = _most(_written(one, facts.ClearHeight, text) for one in openings)
    if height is not None and times * len(f", {height}") <= len(f"casings: {height}\n"):
        height = None
    # Every opening with a casing must have a height of its own, which this line then is not for.
    if any(
        _written(one, facts.Cased, text) and not _written(one, facts.ClearHeight, text)
        for one in openings
    ):
        height = None
    return SaidOnce(casing, height)


def of_rooms(headings: Sequence[tree.RoomLine], text: Slice) -> str | None:
    """Return the trims that most rooms name, as written, where saying them once is shorter."""
    named = [trims_named(one, text) for one in headings]
    # A line for every room also reaches rooms that name no trim.
    if not all(named):
        return None  # a room that names none would get them
    trims, times = _most(named)
    said = len(f"every room: {trims}\n")
    return trims if trims is not None and times * len(f", {trims}") > said else None


def trims_named(heading: tree.RoomLine, text: Slice) -> str | None:
    """Return the trims that a room's heading names, as written: ``trim base, shoe``."""
    words = [text(fact.trim.span) for fact in heading.facts if isinstance(fact, facts.NamedTrim)]
    return f"trim {', '.join(words)}" if words else None


def _written(
    said: Iterable[facts.Fact], kind: type[facts.Cased | facts.ClearHeight], text: Slice
) -> str | None:
    return next((text(fact.span) for fact in said if isinstance(fact, kind)), None)


def _most(texts: Iterable[str | None]) -> tuple[str | None, int]:
    counted = Counter(one for one in texts if one is not None)
    return counted.most_common(1)[0] if counted else (None, 0)
