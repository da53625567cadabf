"""Reports a name that the job does not know, with the nearest one that it does."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from trimlang.diagnostics.near_words import listed, nearest
from trimlang.diagnostics.suggestion import Suggestion, did_you_mean
from trimlang.joints import Joint
from trimlang.language import tree
from trimlang.language.tree import Word
from trimlang.language.vocabulary import called_as_a_wall, line_words, spellings
from trimlang.survey.measures import Findings

_CORNERS: Final = (*(one.word for one in Joint if one.is_corner), "inside", "outside")
"""Corners that stand between two walls, where a trim's name could stand too."""
_A_NAME: Final = 3
"""Letters that a room's name has at least; what is shorter is a wall's."""
KERFED: Final = "kerfed"
KERFED_ANYWAY: Final = "Trim is kerfed wherever its wall curves, unless its line says flexible."
"""What need not be said, and why."""


def unknown_trim(
    word: Word, trims: Iterable[str], findings: Findings, also: tuple[str, ...] = ()
) -> None:
    """Report that no trim has this name; suggest a trim or one of the words ``also``."""
    # Imported here: most jobs name no trim that they do not have.
    from trimlang.language.regional_names import joint_elsewhere, trim_elsewhere

    trims = tuple(trims)
    known = (*trims, *also, *_CORNERS)
    there = listed(trims)
    otherwise = (
        f"The job's trims are {there}."
        if there
        else f"Add a line such as “trim {word.text}: 9/16 in thick, 5 1/4 in tall”."
    )
    # A joint without its side, as in “N: 40 in, butt”, is read as the name of a trim.
    if word.text.casefold() in spellings()["JOINT"]:
        otherwise = f"An end says its side: left={word.text} or right={word.text}."
    if word.text.casefold() == "corner":
        # “corner in” is read as an end of a trim that is called so.
        known, otherwise = (), "An end says its side, and then its joint: left=in or right=in."
    if called_as_a_wall(word.text):
        otherwise = f"If it is a wall, its length is missing: write {word.text} 10 ft 2 1/4."
        # “north” is spelled much like “note”, and means a wall all the same.
        known = trims
    if word.text.casefold() in spellings()["COPE"]:
        otherwise = "A cope stands behind its corner: right=in-corner cope."
    # Who learnt the trade elsewhere has other names, for trim and for ends; those are surer than a
    # name that is merely spelled like it.
    meant = joint_elsewhere(word.text) or trim_elsewhere(word.text, trims)
    usual = meant and Suggestion(f"Write “{meant}”, its usual name here.", meant)
    remedy = usual or did_you_mean(word.text, known, otherwise)
    facts: dict[str, object] = {"name": word.text, "remedy": remedy}
    if word.text.casefold() == KERFED:
        facts |= {"remedy": f"{KERFED_ANYWAY} Leave it out here.", "needless": True}
    if word.text.casefold() in spellings()["JOINT"]:
        facts["joint"] = word.text
    findings.say("T210", word.span, **facts)


def names_elsewhere(usual: str) -> tuple[str, ...]:
    """Return what else a word of the language is called; empty where it has no other name."""
    # Imported here: most jobs have no line that cannot be read.
    from trimlang.language.regional_names import PARTS_ELSEWHERE

    return tuple(name for row in PARTS_ELSEWHERE if row.usual == usual for name in row.elsewhere)


def may_be_heading(line: tree.Statement) -> bool:
    """Tell whether a line that cannot be read was most likely a room's heading."""
    if not isinstance(line, tree.Unreadable) or not line.words:
        return False
    first, *behind = line.words
    second = behind[0] if behind else ""
    known = nearest(first, line_words())
    if known is not None:
        return known == "room"
    # “"Den"”, “rm "Den"”, “living room, trim base”, “Den, trim base”, and “Den:” alone
    quoted = any(word.startswith(('"', "“")) for word in line.words)
    alone = not second and len(first) >= _A_NAME
    return quoted or alone or second.casefold() in ("room", "trim")
