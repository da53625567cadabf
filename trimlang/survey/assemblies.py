"""Names for several trims that go up together: each is read as if its trims were written.

An assembly's name may stand wherever a line says something of trims on a wall: which go up, which
are left out, how they end, what stops them.  Where one trim alone can be meant, as the trim that is
bought or that a casing is made of, it may not.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from typing import TypeAlias

from trimlang.diagnostics.near_words import listed
from trimlang.diagnostics.place import place
from trimlang.language import facts, tree
from trimlang.survey.measures import Findings
from trimlang.survey.near_names import names_elsewhere, unknown_trim
from trimlang.survey.trims import lost_names

Members: TypeAlias = Mapping[str, tuple[tree.Word, ...]]
"""The trims of each assembly, by its name."""

Stands: TypeAlias = facts.InFrontOf | facts.StandsOn
"""How a trim goes with another: on its face, or on its top."""


def spelled_out(
    statements: Iterable[tree.Statement], findings: Findings
) -> tuple[tree.Statement, ...]:
    """Return the statements with the trims of an assembly wherever its name stands.

    What an assembly says its members stand in front of is said in their own lines.
    """
    statements = tuple(statements)
    lost = _lost_assemblies(statements)
    # Most jobs have no assembly, and their lines stay as they were read.
    if not lost and not any(isinstance(line, tree.AssemblyLine) for line in statements):
        return statements
    assemblies = _assemblies(statements, findings)
    statements = _in_front_there(statements, assemblies.values(), findings)
    trims = {line.name.text for line in statements if isinstance(line, tree.TrimLine)}
    # A line that could not be read may still have named the trim, so it is not unknown.
    trims |= lost_names(statements, "trim")
    members: dict[str, tuple[tree.Word, ...]] = dict.fromkeys(lost, ())
    for name, line in assemblies.items():
        for one in line.trims:
            # An assembly within an assembly is told of below, and is no unknown trim.
            if one.text not in trims and one.text not in assemblies:
                unknown_trim(one, trims, findings)
        members[name] = tuple(one for one in line.trims if one.text in trims)
    for line in assemblies.values():
        _say_where_one_is_meant(line.trims, members, findings)
    speller = _Speller(members, findings)
    spelled = (speller.spelled(line) for line in statements)
    return tuple(line for line in spelled if line is not None)


def _lost_assemblies(statements: Iterable[tree.Statement]) -> set[str]:
    """Return the names of assemblies whose lines could not be read, whatever they call one."""
    unread = [line for line in statements if isinstance(line, tree.Unreadable)]
    if not unread:
        return set()
    called = ("assembly", *names_elsewhere("assembly"))
    return {name for word in called for name in lost_names(unread, word)}


def _assemblies(
    statements: Iterable[tree.Statement], findings: Findings
) -> dict[str, tree.AssemblyLine]:
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
                _say_what_is_named_twice(line, findings)
            else:
                where = place(before.span, line.name.span)
                findings.say("T291", line.name.span, name=line.name.text, line=where)
    return assemblies


def _say_what_is_named_twice(line: tree.AssemblyLine, findings: Findings) -> None:
    named: set[str] = set()
    for one in line.members:
        if one.trim.text in named:
            findings.say("T209", one.trim.span)
        named.add(one.trim.text)


def _in_front_there(
    statements: tuple[tree.Statement, ...],
    assemblies: Iterable[tree.AssemblyLine],
    findings: Findings,
) -> tuple[tree.Statement, ...]:
    """Return the statements with “in front of” in the lines of the trims that assemblies say it of.

    Reports a trim that is said to stand in front of two.
    """
    fronts = _fronts(statements)
    added: dict[str, Stands] = {}
    for line in assemblies:
        for one in line.members:
            if one.stands is None:
                continue
            before = fronts.get(one.trim.text) or added.get(one.trim.text)
            if before is None:
                added[one.trim.text] = one.stands
            elif (type(before), before.trim.text) != (type(one.stands), one.stands.trim.text):
                # Said twice alike it does no harm; what differs, only the writer can settle.
                findings.say(
                    "T483",
                    one.stands.span,
                    trim=one.trim.text,
                    here=_words(one.stands),
                    there=_words(before),
                    line=place(before.span, one.stands.span),
                )
    return tuple(
        replace(line, facts=(*line.facts, added[line.name.text]))
        if isinstance(line, tree.TrimLine) and line.name.text in added
        else line
        for line in statements
    )


def _words(stands: Stands) -> str:
    on = "on" if isinstance(stands, facts.StandsOn) else "in front of"
    return f"{on} “{stands.trim.text}”"


def _fronts(statements: Iterable[tree.Statement]) -> dict[str, Stands]:
    return {
        line.name.text: fact
        for line in statements
        if isinstance(line, tree.TrimLine)
        for fact in line.facts
        if isinstance(fact, Stands)
    }


def _say_where_one_is_meant(
    words: Iterable[tree.Word], members: Members, findings: Findings
) -> bool:
    """Report assemblies where one trim is meant; tell whether there is any."""
    wrong = [word for word in words if word.text in members]
    for word in wrong:
        names = [one.text for one in members[word.text]]
        # Without its members, why is told at its own line.
        if names:
            findings.say("T484", word.span, name=word.text, members=listed(names))
    return bool(wrong)


class _Speller:
    """Writes the trims of assemblies in their place; it goes through the lines in their order."""

    def __init__(self, members: Members, findings: Findings) -> None:
        self._members = members
        self._findings = findings
        self._room: tuple[str, ...] = ()

    def spelled(self, line: tree.Statement) -> tree.Statement | None:
        """Return a line with the trims of each assembly in its place.

        None where nothing of it can be read on, because it is about one trim and names none.
        """
        match line:
            case tree.RoomLine():
                said = self._facts(line.facts, listing=True)
                # The runs below a room's line get what it lists, unless they list trims themselves.
                self._room = _listed(said)
                return replace(line, facts=said)
            case tree.RunLine():
                return replace(line, facts=self._run(line.facts))
            case tree.GapLine():
                return replace(line, facts=self._facts(line.facts, listing=False))
            case tree.TrimLine():
                kept = (fact for fact in line.facts if not self._one(facts.named_trims(fact)))
                return replace(line, facts=tuple(kept))
            case tree.HeadLine():
                parts = (one for one in line.members if not self._one((one.trim,)))
                return replace(line, members=tuple(parts))
            case tree.LoosePieceLine() | tree.BoxesLine():
                words = [word for fact in line.facts for word in facts.named_trims(fact)]
                return None if self._one(words) else line
            case tree.BoughtLine():
                return None if self._one(one.trim for one in line.purchases) else line
            case tree.StockLine() | tree.OnHandLine() | tree.RackLine():
                return None if self._one((line.name,)) else line
        return line

    def _one(self, words: Iterable[tree.Word]) -> bool:
        return _say_where_one_is_meant(words, self._members, self._findings)

    def _run(self, said: tuple[facts.WallFact, ...]) -> tuple[facts.WallFact, ...]:
        """Return a run's facts; an end of an assembly is one of its trims that the run gets."""
        spelled = self._facts(said, listing=True)
        left_out = {fact.trim.text for fact in spelled if isinstance(fact, facts.Without)}
        # A run that lists trims gets those alone, any other the room's.
        gets = set(_listed(spelled) or self._room) - left_out
        found: list[facts.WallFact] = []
        for fact in spelled:
            if isinstance(fact, facts.TrimEnd) and fact.trim.text in self._members:
                members = self._members[fact.trim.text]
                # Where the run gets none of them, the first one says so.
                there = [one for one in members if one.text in gets] or members[:1]
                found += [replace(fact, trim=one) for one in there]
            else:
                found.append(fact)
        return tuple(found)

    def _facts(
        self, said: tuple[facts.WallFact, ...], *, listing: bool
    ) -> tuple[facts.WallFact, ...]:
        """Return facts with members in place of assemblies, but for ends; ``listing`` of trims."""
        found: list[facts.WallFact] = []
        for fact in said:
            match fact:
                case facts.NamedTrim(trim=word) if not self._members.get(word.text, (word,)):
                    # No trim of it could be read, and it may be all that the wall gets.
                    found.append(facts.Unread(word.span))
                case facts.NamedTrim(trim=word) | facts.Without(trim=word) if (
                    listing and word.text in self._members
                ):
                    found += [replace(fact, trim=one) for one in self._members[word.text]]
                case facts.Turns(trim=word) if word.text in self._members:
                    found += [replace(fact, trim=one) for one in self._members[word.text]]
                case facts.Stops():
                    found.append(replace(fact, trims=self._words(fact.trims)))
                case facts.AtEnd() | facts.TrimEnd():
                    found.append(replace(fact, end=self._end(fact.end)))
                case _:
                    # A line is read on without what names no one trim.
                    if not self._one(facts.named_trims(fact)):
                        found.append(fact)
        return tuple(found)

    def _end(self, end: facts.WrittenEnd) -> facts.WrittenEnd:
        """Return an end whose block stops the members of the assemblies that it names."""
        said: list[facts.EndFact] = []
        for fact in end.facts:
            if isinstance(fact, facts.BlockHere):
                said.append(replace(fact, trims=self._words(fact.trims)))
            elif not self._one(facts.named_trims(fact)):
                said.append(fact)
        return replace(end, facts=tuple(said))

    def _words(self, words: Iterable[tree.Word]) -> tuple[tree.Word, ...]:
        return tuple(self._each(words))

    def _each(self, words: Iterable[tree.Word]) -> Iterator[tree.Word]:
        for word in words:
            yield from self._members.get(word.text, (word,))


def _listed(said: Iterable[facts.WallFact]) -> tuple[str, ...]:
    return tuple(fact.trim.text for fact in said if isinstance(fact, facts.NamedTrim))
