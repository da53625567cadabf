"""Builds the statements of rooms and their walls, one wall a line or several."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from typing import Any, Final

from lark.tree import Meta

from trimlang.diagnostics import Diagnostic, Span, say
from trimlang.diagnostics.named_codes import MISPLACED
from trimlang.diagnostics.suggestion import Suggestion
from trimlang.language import facts, tree
from trimlang.language.box_facts import BoxPlace, BoxWall
from trimlang.language.ends_in_a_row import ends_in_a_row
from trimlang.language.log_lines import Children
from trimlang.language.no_walls import no_wall, setting_with_a_colon, step_of_the_tape
from trimlang.language.opening_phrases import (
    OpeningPhrases,
    named_as_an_opening,
    named_before,
    odd_of_an_opening,
)
from trimlang.language.stock_lines import fact_of
from trimlang.language.vocabulary import GAP_WORDS, called_as_a_wall
from trimlang.settings.setting_kinds import TakenAt

_OF_BOTH: Final = (facts.AtEnd, facts.Note)
_OF_RUNS: Final = (
    facts.TrimEnd,
    facts.NamedTrim,
    facts.WrittenTaken,
    facts.Spliced,
    facts.Without,
    facts.FirstStud,
    facts.FloorGap,
    facts.Rising,
    facts.TakenAlong,
    facts.LevelReturn,
    facts.Notch,
    facts.OpenSide,
    facts.Curves,
    facts.CeilingRising,
    facts.TransitionAt,
)
_OF_GAPS: Final = (
    facts.Called,
    facts.Entrance,
    facts.Cased,
    facts.Uncased,
    facts.ClearHeight,
    facts.Stops,
    facts.SillHeight,
    facts.FourSides,
    facts.Stooled,
    facts.Jambed,
    facts.BothFaces,
    facts.BeamDeep,
    facts.Turns,
    facts.Plinthed,
    facts.CornerBlocked,
    facts.Backbanded,
    facts.Hinged,
    facts.Swings,
)
"""The facts that a run or an opening may have, where both stand in one line."""


def _with_sides(said: Iterable[Any]) -> tuple[Any, ...]:
    """Give an end of one trim (``shoe return``) the side of the end before it."""
    found: list[Any] = []
    side: facts.Side | None = None
    for fact in said:
        if isinstance(fact, facts.AtEnd):
            side = fact.side
        # An end of one trim stands behind the end of the run that it departs from.
        whole = isinstance(fact, facts.TrimEnd) and fact.side is None
        found.append(replace(fact, side=side) if whole else fact)
    return tuple(found)


class WallLines(OpeningPhrases):
    """The grammar's rules for rooms and walls; ``LineBuilder`` adds the others."""

    radius_given = fact_of(facts.RadiusGiven)
    note, open_walk = fact_of(facts.Note), fact_of(facts.OpenWalk)
    square_ends = fact_of(facts.SquareEnds)
    without, first_stud, floor_gap = (
        fact_of(facts.Without),
        fact_of(facts.FirstStud),
        fact_of(facts.FloorGap),
    )
    boxes_tall, boxes_wide = fact_of(facts.BoxesTall), fact_of(facts.BoxesWide)
    boxes_margin = fact_of(facts.BoxesMargin)
    cope_here, measured = fact_of(facts.CopedHere), fact_of(facts.WrittenCorner)
    implied, mitre_here = fact_of(facts.Implied), fact_of(facts.MitredHere)

    def assembly(self, meta: Meta, children: Children) -> tree.AssemblyLine:
        return tree.AssemblyLine(children[0], tuple(children[1:]), self._span(meta))

    def assembly_member(self, meta: Meta, children: Children) -> facts.AssemblyMember:
        stands = children[1] if len(children) > 1 else None
        return facts.AssemblyMember(children[0], stands, self._span(meta))

    def taken(self, meta: Meta, children: Children) -> facts.WrittenTaken:
        return facts.WrittenTaken(TakenAt(children[0].text), self._span(meta))

    def taken_of(self, meta: Meta, children: Children) -> facts.WrittenTaken:
        return facts.WrittenTaken(TakenAt(children[0].text), self._span(meta), of=children[1])

    def trims(self, meta: Meta, children: Children) -> facts.NamedTrim:
        return facts.NamedTrim(children[0], begins=True, span=self._span(meta))

    def also_trim(self, meta: Meta, children: Children) -> facts.NamedTrim:
        # “casing” is a word of the language, and may be the name of a trim as well.
        span = self._span(meta)
        name = children[0] if children else tree.Word("casing", span)
        return facts.NamedTrim(name, begins=False, span=span)

    def may_splice(self, meta: Meta, _children: Children) -> facts.Spliced:
        return facts.Spliced(wanted=True, span=self._span(meta))

    def no_splice(self, meta: Meta, _children: Children) -> facts.Spliced:
        return facts.Spliced(wanted=False, span=self._span(meta))

    def side(self, meta: Meta, children: Children) -> facts.AtEnd:
        word, end = children
        return facts.AtEnd(
            side=facts.Side(word.text), end=end, word=word.span, span=self._span(meta)
        )

    def trim_end(self, meta: Meta, children: Children) -> facts.TrimEnd:
        side = facts.Side(children[1].text) if len(children) > 2 else None
        return facts.TrimEnd(trim=children[0], side=side, end=children[-1], span=self._span(meta))

    def end(self, meta: Meta, children: Children) -> tree.WrittenEnd:
        return tree.WrittenEnd(children[0], tuple(children[1:]), self._span(meta))

    def every_room(self, meta: Meta, children: Children) -> tree.EveryRoomLine:
        return tree.EveryRoomLine(tuple(children), self._span(meta))

    def room(self, meta: Meta, children: Children) -> tree.RoomLine:
        words = [child for child in children if isinstance(child, tree.Word)]
        said = tuple(child for child in children if not isinstance(child, tree.Word))
        tag = words[1] if len(words) > 1 else None
        return tree.RoomLine(words[0], tag, said, self._span(meta))

    def run(self, meta: Meta, children: Children) -> tree.RunLine | tree.GapLine:
        run = tree.RunLine(children[0], children[1], _with_sides(children[2:]), self._span(meta))
        setting = step_of_the_tape(run) or setting_with_a_colon(run)
        if setting is not None:
            self.problems.append(setting[1])
            return setting[0]
        self.problems += named_as_an_opening(run)
        ends, told = ends_in_a_row(run.facts)
        self.problems += told
        return replace(run, facts=ends) if told else run

    def opening(self, meta: Meta, children: Children) -> tree.GapLine | tree.WallsLine:
        return self._gap(tree.GapKind.OPENING, self._span(meta), children)

    def bare(self, meta: Meta, children: Children) -> tree.GapLine | tree.WallsLine:
        return self._gap(tree.GapKind.BARE, self._span(meta), children)

    def diagonal(self, meta: Meta, children: Children) -> tree.DiagonalLine:
        return tree.DiagonalLine(children[0], children[1], self._span(meta))

    def loose_piece(self, meta: Meta, children: Children) -> tree.LoosePieceLine:
        name, *said = children
        return tree.LoosePieceLine(
            name=name,
            count=said.pop(0) if isinstance(said[0], tree.Number) else None,
            length=said[0],
            facts=tuple(said[1:]),
            span=self._span(meta),
        )

    def boxes_along(self, _meta: Meta, children: Children) -> BoxWall:
        return BoxWall(BoxPlace.ALONG, children[0], children[-1])

    def boxes_under(self, _meta: Meta, children: Children) -> BoxWall:
        return BoxWall(BoxPlace.UNDER, children[-1])

    def boxes_over(self, _meta: Meta, children: Children) -> BoxWall:
        return BoxWall(BoxPlace.OVER, children[-1])

    def boxes(self, meta: Meta, children: Children) -> tree.BoxesLine:
        where, *said = children
        wall = where if isinstance(where, BoxWall) else BoxWall(BoxPlace.ON, where)
        called = said.pop(0).text if isinstance(said[0], facts.Called) else None
        return tree.BoxesLine(
            wall=wall, name=called, count=said[0], facts=tuple(said[1:]), span=self._span(meta)
        )

    def beam(self, meta: Meta, children: Children) -> tree.GapLine | tree.WallsLine:
        across = facts.BeamAcross(children[0].span)
        return self._gap(tree.GapKind.OPENING, self._span(meta), children, across)

    def transition(self, meta: Meta, children: Children) -> tree.GapLine | tree.WallsLine:
        return self._gap(tree.GapKind.BARE, self._span(meta), [children[0], *children])

    wide_opening, wide_bare, wide_beam, wide_transition = opening, bare, beam, transition

    def _gap(
        self, kind: tree.GapKind, span: Span, children: Children, *also: facts.WallFact
    ) -> tree.GapLine | tree.WallsLine:
        """Return an opening or bare wall, with the walls that follow it in its line.

        ``door 32 in`` without a name is called door.  ``also`` is what the line's word says too.
        """
        stretch = tree.RunLine | tree.GapLine
        follow = next((at for at, one in enumerate(children) if isinstance(one, stretch)), None)
        if follow is not None:
            own = children[:follow]
            gap = self._gap(kind, replace(span, end=own[-1].span.end), own, *also)
            return tree.WallsLine(self._in_one_line([gap, *children[follow:]]), span)
        word, *said = children
        # The width of a transition is its block's name, and nothing stands before it.
        before = len(said) > 1 and isinstance(said[1], tree.Measure)
        named = said.pop(0) if before else None
        width = said.pop(0)
        self.problems += odd_of_an_opening(word, named, said)
        if isinstance(named, facts.Called):
            said.append(named)
        elif named is not None:
            said.append(named_before(word, named))
        # “door” is both what the line begins with and what the opening is called.
        elif word.text in GAP_WORDS and not any(isinstance(fact, facts.Called) for fact in said):
            said.append(facts.Called(word, word.span))
        return tree.GapLine(kind, width, (*also, *said), span)

    def wall(self, meta: Meta, children: Children) -> tree.RunLine | tree.GapLine:
        label, length = children
        run = tree.RunLine(label, length, (), self._span(meta))
        other = no_wall(run)
        if other is None:
            return run
        gap, finding = other
        self.no_walls.append(finding)
        return gap

    def walls(self, meta: Meta, children: Children) -> tree.WallsLine:
        return tree.WallsLine(self._in_one_line(children), self._span(meta))

    def _in_one_line(self, children: Children) -> tuple[tree.RunLine | tree.GapLine, ...]:
        """Return the walls of a line, each fact given to the wall before it."""
        walls: list[tree.RunLine | tree.GapLine] = []
        child: tree.RunLine | tree.GapLine | facts.WallFact
        for child in children:
            if isinstance(child, tree.RunLine | tree.GapLine):
                walls.append(child)
                continue
            last = walls[-1]
            is_run = isinstance(last, tree.RunLine)
            if is_run and isinstance(child, facts.Uncased):
                child = facts.Without(tree.Word("casing", child.span), child.span)
            # In a line of several walls the grammar allows any fact anywhere; which wall it is for,
            # and whether that wall may have it, is known only here.
            if not isinstance(child, _OF_BOTH + (_OF_RUNS if is_run else _OF_GAPS)):
                if (also := _stopped_too(last, child)) is not None:
                    self.problems.append(also)
                    continue
                if isinstance(child, facts.NamedTrim) and called_as_a_wall(child.trim.text):
                    self.problems.append(_without_its_length(child.trim))
                    continue
                of, other = ("a run", "an opening") if is_run else ("an opening", "a run")
                self.problems.append(say("T123", child.span, of=of, other=other))
                continue
            # A name of its own replaces the word that an opening is called by until then.
            others = tuple(fact for fact in last.facts if not _only_kind(fact, child))
            span = replace(last.span, end=child.span.end)
            walls[-1] = replace(last, facts=_with_sides((*others, child)), span=span)
        return tuple(walls)


def _stopped_too(last: tree.RunLine | tree.GapLine, child: facts.Fact) -> Diagnostic | None:
    """Return what to say of a trim behind “stops base,”, where “and” would name it too."""
    before = last.facts[-1] if last.facts else None
    if not isinstance(before, facts.Stops) or not isinstance(child, facts.NamedTrim):
        return None
    names = [word.text for word in (*before.trims, child.trim)]
    span = replace(before.span, end=child.span.end)
    said, better = f"stops {', '.join(names)}", f"stops {' and '.join(names)}"
    remedy = Suggestion(f"Write {better}.", better)
    return say(MISPLACED, span, word=said, wanted="“and” between two trims", remedy=remedy)


def _without_its_length(label: tree.Word) -> Diagnostic:
    told = f"A wall's length stands behind its name: {label.text} 10 ft 2 1/4."
    return say(MISPLACED, label.span, word=label.text, wanted="the wall's length", remedy=told)


def _only_kind(fact: facts.Fact, said: facts.Fact) -> bool:
    both = isinstance(fact, facts.Called) and isinstance(said, facts.Called)
    return both and isinstance(fact, facts.Called) and fact.text.text in GAP_WORDS
