"""Finds what a file says twice, so that no number silently wins over another."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Iterator
from typing import Final

from trimlang.diagnostics.place import place
from trimlang.language import facts, tree
from trimlang.survey.measures import Findings

_MANY: Final = (
    facts.NamedTrim,
    facts.Material,
    facts.RandomLengths,
    facts.Without,
    facts.AtEnd,
    facts.TrimEnd,
    facts.Entrance,
    facts.Unread,
)
"""Facts that a line may state more than once (ends have a check of their own)."""

_SAYING: Final = (
    tree.SettingLine,
    tree.TrimLine,
    tree.StockLine,
    tree.EveryRoomLine,
    tree.RoomLine,
    tree.RunLine,
    tree.GapLine,
    tree.LoosePieceLine,
    tree.BoxesLine,
    tree.BlockLine,
)
"""Lines that state facts."""


def find_repeats(statements: Iterable[tree.Statement], findings: Findings) -> None:
    """Report facts stated twice in a line, and settings stated twice for a room or the file."""
    stated: dict[Hashable, facts.Stated] = {}
    for line in statements:
        # Below a room's heading its own settings begin: they may repeat the job's.
        if isinstance(line, tree.RoomLine):
            stated = {}
        for said in _groups(line):
            # What stands twice in one line is a slip of the pen; a setting that stands in two lines
            # is most likely a change where the old line was forgotten. Each has its own words.
            here: set[Hashable] = set()
            for fact in said:
                if isinstance(fact, _MANY):
                    continue
                key = _subject(fact)
                if key in here and _says_the_contrary(fact, said):
                    findings.say("T724", fact.span)
                elif key in here:
                    findings.say("T209", fact.span)
                elif isinstance(fact, facts.Stated) and key in stated:
                    before = place(stated[key].span, fact.span)
                    word = "this setting"
                    findings.say("T207", fact.span, word=word, line=before, is_part=True)
                here.add(key)
                if isinstance(fact, facts.Stated):
                    stated[key] = fact


def _says_the_contrary(fact: facts.Fact, said: tuple[facts.Fact, ...]) -> bool:
    """Tell whether a line says both “splice” and “no splice”."""
    wanted = {one.wanted for one in said if isinstance(one, facts.Spliced)}
    return isinstance(fact, facts.Spliced) and len(wanted) > 1


def _groups(line: tree.Statement) -> Iterator[tuple[facts.Fact, ...]]:
    """Yield the facts that belong together: those of the line, and those of each of its ends."""
    if isinstance(line, _SAYING):
        yield line.facts
        for fact in line.facts:
            if isinstance(fact, facts.AtEnd):
                yield fact.end.facts


def _subject(fact: facts.Fact) -> Hashable:
    """Return what a fact is about: its kind, its side, or a setting's row and the end it names."""
    if isinstance(fact, facts.LevelReturn | facts.Notch | facts.TransitionAt):
        return type(fact).__name__, fact.side
    if isinstance(fact, facts.Uncased):
        return facts.Cased.__name__  # an opening that has both says two things of one
    if not isinstance(fact, facts.Stated):
        return type(fact).__name__
    first = fact.values[0] if fact.values else None
    by_end = fact.rows[0].by_end and isinstance(first, tree.Word)
    return (fact.rows[0].name, first.text if by_end and isinstance(first, tree.Word) else "")
