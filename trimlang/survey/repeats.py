"""Finds what a file says twice, so that no figure silently wins over another."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final

from trimlang.diagnostics.place import place
from trimlang.language import tree
from trimlang.survey.measures import Findings

_MANY: Final = frozenset(
    {"trims", "also_trim", "material", "without", "side", "entrance", "unread"}
)
"""Facts that a line may well state more than once (sides have a check of their own)."""

_SAME: Final = {
    "no_splice": "splice",
    "may_splice": "splice",
    "splices_never": "splices",
    "splices_allowed": "splices",
    "measured": "corner",
    "by_diagonal": "corner",
    "coped_corners": "fit",
    "mitred_corners": "fit",
    "rising_over": "rising",
    "paint_spread_metric": "paint_spread",
}


def find_repeats(statements: Iterable[tree.Statement], findings: Findings) -> None:
    """Report facts stated twice in one line, and settings stated twice for one room or file."""
    stated: dict[tuple[str, ...], tree.Fact] = {}
    for line in statements:
        if isinstance(line, tree.RoomLine):
            stated = {}
        for facts in _groups(line):
            here: set[tuple[str, ...]] = set()
            for fact in facts:
                key = _key(fact)
                if fact.kind in _MANY:
                    continue
                if key in here:
                    findings.say("T209", fact.span)
                elif isinstance(line, tree.SettingLine) and key in stated:
                    before = place(stated[key].span, fact.span)
                    findings.say("T207", fact.span, word="this setting", line=before)
                here.add(key)
                if isinstance(line, tree.SettingLine):
                    stated[key] = fact


def _groups(line: tree.Statement) -> Iterator[tuple[tree.Fact, ...]]:
    """Yield the facts that stand side by side: those of the line, and those of each end."""
    if isinstance(
        line, tree.SettingLine | tree.TrimLine | tree.RoomLine | tree.RunLine | tree.GapLine
    ):
        yield line.facts
        for fact in line.facts:
            for value in fact.values:
                if isinstance(value, tree.End):
                    yield value.facts


def _key(fact: tree.Fact) -> tuple[str, ...]:
    """Return what the fact is about: its kind, and the joint where it names one."""
    kind = _SAME.get(fact.kind, fact.kind)
    first = fact.values[0] if fact.values else None
    named = kind in ("round_joint", "assumed_mitre", "gap_limit", "fit")
    return (kind, first.text) if named and isinstance(first, tree.Word) else (kind,)
