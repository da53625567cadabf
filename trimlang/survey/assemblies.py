"""Names for several trims that go up together: each is read as if its trims were written."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from trimlang.diagnostics.place import place
from trimlang.language import facts, tree
from trimlang.survey.measures import Findings


def spelled_out(
    statements: Iterable[tree.Statement], findings: Findings
) -> tuple[tree.Statement, ...]:
    """Return the statements with the trims of an assembly wherever its name stands."""
    statements = tuple(statements)
    trims = {line.name.text: line.name for line in statements if isinstance(line, tree.TrimLine)}
    assemblies: dict[str, tree.AssemblyLine] = {}
    for line in statements:
        if isinstance(line, tree.AssemblyLine):
            # A wall's line only says a name, so a trim and an assembly of one name could not be
            # told apart.
            known = assemblies.get(line.name.text)
            before = known.name if known is not None else trims.get(line.name.text)
            if before is None:
                assemblies[line.name.text] = line
            else:
                where = place(before.span, line.name.span)
                findings.say("T291", line.name.span, name=line.name.text, line=where)
    if not assemblies:
        return statements
    return tuple(_with_members(line, assemblies) for line in statements)


def _with_members(line: tree.Statement, assemblies: dict[str, tree.AssemblyLine]) -> tree.Statement:
    # Only rooms and runs say which trims go up. Other lines that name a trim, such as a stock line,
    # mean one that is sold, and an assembly is not.
    if not isinstance(line, tree.RoomLine | tree.RunLine):
        return line
    said: list[facts.WallFact] = []
    for fact in line.facts:
        found = None
        if isinstance(fact, facts.NamedTrim | facts.Without):
            found = assemblies.get(fact.trim.text)
            if found is not None:
                # what is wrong with a member is told where it stands: in the assembly's line
                said += [replace(fact, trim=member) for member in found.trims]
        if found is None:
            said.append(fact)
    return replace(line, facts=tuple(said))
