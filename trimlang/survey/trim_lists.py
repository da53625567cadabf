"""Begins the list of trims of a line that names some without the word “trim” before them."""

from __future__ import annotations

from collections.abc import Container
from dataclasses import replace
from typing import Final

from trimlang.language import facts, tree
from trimlang.survey.measures import Findings
from trimlang.survey.trims import lost_names

_LISTING: Final = tree.EveryRoomLine | tree.RoomLine | tree.RunLine


def with_lists_begun(
    statements: tuple[tree.Statement, ...], findings: Findings
) -> tuple[tree.Statement, ...]:
    """Return the statements with each list of trims begun; report the lists that were not.

    What comes after reads every list alike, whoever wrote its first word.
    """
    names = {
        line.name.text for line in statements if isinstance(line, tree.TrimLine | tree.AssemblyLine)
    }
    # A line that could not be read may still have named the trim.
    names |= lost_names(statements, "trim")
    return tuple(
        replace(line, facts=_begun(line.facts, names, findings))
        if isinstance(line, _LISTING) and not _is_begun(line.facts)
        else line
        for line in statements
    )


def _is_begun(said: tuple[facts.WallFact, ...]) -> bool:
    """Tell whether the first trim that is named begins the list, or none is named."""
    return next((fact.begins for fact in said if isinstance(fact, facts.NamedTrim)), True)


def _begun(
    said: tuple[facts.WallFact, ...], names: Container[str], findings: Findings
) -> tuple[facts.WallFact, ...]:
    found = list(said)
    for at, fact in enumerate(found):
        if not isinstance(fact, facts.NamedTrim):
            continue
        if fact.begins:
            break
        # A name that nothing has may be no trim at all; that is told of when it is looked for.
        if fact.trim.text in names:
            findings.say("T216", fact.trim.span, trim=fact.trim.text)
            found[at] = replace(fact, begins=True)
            break
    return tuple(found)
