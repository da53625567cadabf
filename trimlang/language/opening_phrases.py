"""The grammar's phrases of openings and bare walls: their names, their casing, what they stop."""

from __future__ import annotations

from dataclasses import replace
from typing import Final

from lark.tree import Meta

from trimlang.diagnostics import Diagnostic, say
from trimlang.diagnostics.suggestion import Suggestion
from trimlang.language import facts, tree
from trimlang.language.log_lines import Children
from trimlang.language.stair_phrases import StairPhrases
from trimlang.language.stock_lines import fact_of
from trimlang.language.vocabulary import GAP_WORDS


class OpeningPhrases(StairPhrases):
    """The grammar's rules for openings; ``WallLines`` adds those of runs and of whole lines."""

    called, entrance = fact_of(facts.Called), fact_of(facts.Entrance)
    clear_height, uncased = fact_of(facts.ClearHeight), fact_of(facts.Uncased)
    sill_height, jambed = fact_of(facts.SillHeight), fact_of(facts.Jambed)
    four_sides, both_faces = fact_of(facts.FourSides), fact_of(facts.BothFaces)
    hinged, swings = fact_of(facts.Hinged), fact_of(facts.Swings)
    plinthed, backbanded = fact_of(facts.Plinthed), fact_of(facts.Backbanded)
    beam_deep, turns = fact_of(facts.BeamDeep), fact_of(facts.Turns)
    gap_string = called

    def gap_words(self, _meta: Meta, children: Children) -> tree.Word:
        word: tree.Word = children[0]
        return word

    def corner_blocked(self, meta: Meta, children: Children) -> facts.CornerBlocked:
        return facts.CornerBlocked(children[-1], self._span(meta))

    def cased(self, meta: Meta, children: Children) -> facts.Cased:
        casing, head = children if len(children) > 1 else (*children, None)
        return facts.Cased(casing, head, self._span(meta))

    def stooled(self, meta: Meta, children: Children) -> facts.Stooled:
        stool, apron = children if len(children) > 1 else (*children, None)
        return facts.Stooled(stool, apron, self._span(meta))

    def stops(self, meta: Meta, children: Children) -> facts.Stops:
        return facts.Stops(tuple(children), everything=False, span=self._span(meta))

    stops_nothing = stops

    def stops_all(self, meta: Meta, _children: Children) -> facts.Stops:
        return facts.Stops((), everything=True, span=self._span(meta))


def named_as_an_opening(run: tree.RunLine) -> list[Diagnostic]:
    """Warn of a wall with a colon that is called as openings are, and says neither of its ends.

    “door: 32 in” would get trim across the door.
    """
    word = run.label.text.casefold()
    kinds = GAP_WORDS | {tree.GapKind.OPENING, tree.GapKind.BARE}
    if word not in kinds or any(isinstance(fact, facts.AtEnd) for fact in run.facts):
        return []
    span = replace(run.label.span, end=run.length.span.column)
    told = f"An opening or bare wall has no colon: write {word} and its width. A wall of that name"
    remedy = Suggestion(f"{told} says an end, such as left=butt.", f"{word} ")
    return [say("T125", span, word=run.label.text, remedy=remedy)]


_MEASURES: Final = frozenset({"sill", "height", "deep", "head", "horn", "reveal"})
"""Words that say which measure of an opening follows: none of them is the name of one."""

_OF_WINDOWS: Final = (facts.SillHeight, facts.Stooled, facts.FourSides)


def odd_of_an_opening(
    word: tree.Word, named: tree.Word | facts.Called | None, said: list[facts.WallFact]
) -> list[Diagnostic]:
    """Warn of an opening that gives another measure for its width, and of a door with a sill.

    “window sill 30 in” would be a window of 30 in that is called sill.
    """
    if isinstance(named, tree.Word) and named.text.casefold() in _MEASURES:
        span = replace(word.span, end=named.span.end)
        return [say("T488", span, kind=word.text, measure=named.text)]
    if word.text != "door":
        return []
    return [say("T489", fact.span) for fact in said if isinstance(fact, _OF_WINDOWS)]


def named_before(word: tree.Word, name: tree.Word) -> facts.Called:
    """Return the name that stands before an opening's width: “door to hall”, “closet”."""
    if word.text not in GAP_WORDS:
        return facts.Called(name, name.span)
    span = replace(word.span, end=name.span.end)
    return facts.Called(tree.Word(f"{word.text} {name.text}", span), span)
