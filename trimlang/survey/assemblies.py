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
    return tuple(_with_members(line, assemblies, findings) for line in statements)


def _with_members(
    line: tree.Statement, assemblies: dict[str, tree.AssemblyLine], findings: Findings
) -> tree.Statement:
    # Only rooms and runs say which trims go up. Other lines that name a trim, such as a stock line,
    # mean one that is sold, and an assembly is not.
    if not isinstance(line, tree.RoomLine | tree.RunLine):
        return line
    said: list[facts.WallFact] = []
    listed = False
    for fact in line.facts:
        found = None
        listed = listed or (isinstance(fact, facts.NamedTrim) and fact.begins)
        if isinstance(fact, facts.NamedTrim | facts.Without):
            found = assemblies.get(fact.trim.text)
            if found is not None:
                # That the word “trim” is missing is wrong with this line; what is wrong with a
                # member is told where it stands: in the assembly's line.
                if isinstance(fact, facts.NamedTrim) and not listed:
                    findings.say("T216", fact.trim.span, trim=fact.trim.text)
                    fact, listed = replace(fact, begins=True), True
                said += [replace(fact, trim=member) for member in found.trims]
        if found is None:
            said.append(fact)
    return replace(line, facts=tuple(said))
