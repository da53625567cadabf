"""Finds different names that look alike, as two pieces would then have one name on paper."""

from __future__ import annotations

from collections.abc import Iterable

from trimlang.language import tree
from trimlang.letters import looks_like
from trimlang.survey.measures import Findings


def find_lookalikes(statements: Iterable[tree.Statement], findings: Findings) -> None:
    """Report trims, rooms, and runs of one room, whose names look like another's."""
    trims: dict[str, str] = {}
    rooms: dict[str, str] = {}
    runs: dict[str, str] = {}
    for line in statements:
        if isinstance(line, tree.TrimLine):
            _look(line.name, trims, findings)
        elif isinstance(line, tree.RoomLine):
            # Runs are told apart within their room only: every room may have an N.
            runs = {}
            _look(line.name, rooms, findings)
        elif isinstance(line, tree.RunLine):
            _look(line.label, runs, findings)


def _look(word: tree.Word, before: dict[str, str], findings: Findings) -> None:
    other = before.setdefault(looks_like(word.text), word.text)
    if other != word.text:
        findings.say("T121", word.span, name=word.text, other=other)
