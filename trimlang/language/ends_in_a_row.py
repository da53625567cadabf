"""Two ends of a wall that stand one behind the other without their sides: “in-corner, butt”."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TypeGuard

from trimlang.diagnostics import Diagnostic, say
from trimlang.diagnostics.named_codes import MISPLACED
from trimlang.diagnostics.suggestion import Suggestion
from trimlang.joints import Joint
from trimlang.language import facts, tree
from trimlang.language.vocabulary import whole_joint


def ends_in_a_row(
    said: tuple[facts.WallFact, ...],
) -> tuple[tuple[facts.WallFact, ...], list[Diagnostic]]:
    """Return a wall's facts with such ends at their sides, and the finding that tells it.

    Each alone would be read as the name of a trim.
    """
    if any(isinstance(fact, facts.AtEnd) for fact in said):
        return said, []
    for at, (one, two) in enumerate(pairwise(said)):
        if not (_is_a_joint(one) and _is_a_joint(two)):
            continue
        span = replace(one.span, end=two.span.end)
        words = [one.trim, two.trim]
        better = ", ".join(
            f"{side}={word.text}" for side, word in zip(facts.Side, words, strict=True)
        )
        remedy = Suggestion(f"Write {better}.", better)
        both = ", ".join(word.text for word in words)
        ends = (_at(side, word) for side, word in zip(facts.Side, words, strict=True))
        told = say(MISPLACED, span, word=both, wanted="each end by its side", remedy=remedy)
        return (*said[:at], *ends, *said[at + 2 :]), [told]
    return said, []


def _is_a_joint(fact: facts.WallFact) -> TypeGuard[facts.NamedTrim]:
    return (
        isinstance(fact, facts.NamedTrim)
        and not fact.begins
        and whole_joint(fact.trim.text.casefold()) in set(Joint)
    )


def _at(side: facts.Side, word: tree.Word) -> facts.AtEnd:
    joint = tree.Word(whole_joint(word.text.casefold()), word.span)
    return facts.AtEnd(side, tree.WrittenEnd(joint, (), word.span), word.span, word.span)
