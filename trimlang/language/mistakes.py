"""Says in the trade's words where a line could not be read, and why."""

from __future__ import annotations

import re
from typing import Final

from lark import Token
from lark.exceptions import UnexpectedCharacters, UnexpectedInput, UnexpectedToken

from trimlang.diagnostics import Diagnostic, Span, say
from trimlang.diagnostics.near_words import nearest
from trimlang.diagnostics.suggestion import Suggestion, did_you_mean
from trimlang.language.end_facts import Side
from trimlang.language.slips.known_slips import known_slip
from trimlang.language.slips.slip_row import JOINT_WORD
from trimlang.language.vocabulary import (
    SHORT_NAME,
    called_as_a_wall,
    line_words,
    part_words,
)
from trimlang.language.what_could_stand import (
    LENGTH_TOKENS,
    WORD_AT,
    accepted,
    expected_phrase,
    expected_words,
    remedy_for,
)
from trimlang.record import record

_LAST_PART: Final = re.compile(r", *(?P<word>[^\W\d_][\w.\-]*)\s*$")
# What goes on after a whole number where that was the beginning of a length.
_REST_OF_LENGTH: Final = re.compile(
    r"""\.\d|\d+ ?[/⁄∕]|[¼½¾⅐-⅞]|['"′″’”]|[-–]? ?(?:in|inch|inches|ft|feet|foot|mm|cm|m|yd)\b""",
    re.I,
)
_JOINT_BEHIND: Final = re.compile(rf"=\s*(?P<joint>{JOINT_WORD}\b)", re.I)
_NAMELESS: Final = "A wall begins with its name and a colon: N: 29 1/8 in, left=…, right=…"


@record
class _Line:
    """A line that could not be read, and where it stands."""

    text: str
    file: str
    number: int

    @property
    def said(self) -> str:
        """The line without its comment."""
        return self.text.split("#")[0]

    def at(self, column: int, long: int) -> Span:
        """Return the place of so many characters from a column (from 1) on."""
        return Span(self.file, self.number, column, column + long)


@record
class _Stop:
    """Where reading stopped: the word there, the token before it, what could stand there."""

    line: _Line
    column: int
    word: str
    before: Token | None
    terminals: frozenset[str]

    @property
    def here(self) -> Span:
        """The place of the word."""
        return self.line.at(self.column, max(len(self.word), 1))

    @property
    def name(self) -> Token | None:
        """What stands before it, if that was read as a name."""
        return self.before if self.before is not None and self.before.type == "NAME" else None

    def of(self, before: Token) -> Span:
        """Return the place of the token before it."""
        return self.line.at(before.column or 1, len(before))

    def is_first(self, before: Token) -> bool:
        """Whether nothing stands in the line before that token."""
        return not self.line.text[: (before.column or 1) - 1].strip()


def as_known_slip(text: str, finding: Diagnostic) -> Diagnostic:
    """Return what a known slip says of a word that stands where a wall's name would."""
    span = finding.span
    # A line that can be read is no row of a table, whatever parts its words.
    return known_slip(text.replace("\t", " "), span.column - 1, span.file, span.line) or finding


def explain(error: UnexpectedInput, text: str, file: str, line: int) -> Diagnostic:
    """Return the diagnostic for a line that lark could not read; see ``known_slips`` first.

    ``text`` is the whole line; the diagnostic's columns are its.
    """
    stopped = getattr(error, "column", None) or 0
    known = known_slip(text, stopped - 1 if stopped > 0 else len(text.rstrip()), file, line)
    if known is not None:
        return known
    whole = _Line(text, file, line)
    at_end = isinstance(error, UnexpectedToken) and error.token.type == "$END"
    if at_end or not isinstance(error, UnexpectedToken | UnexpectedCharacters):
        return _cut_short(_terminals(error, text), whole)
    column = max(int(error.column), 1)
    found = WORD_AT.match(text, column - 1)
    stop = _Stop(
        line=whole,
        column=column,
        word=found.group() if found else text[column - 1 : column],
        before=_previous(error),
        terminals=frozenset(_terminals(error, text)),
    )
    # From the particular to the general: each looks for a slip that a later one would explain
    # less well.
    for look in (
        _unseen,
        _before_a_side,
        _no_wall_before,
        _in_quotes,
        _first_word,
        _begun_otherwise,
    ):
        finding = look(stop)
        if finding is not None:
            return finding
    return _unexpected(stop)


def _cut_short(lacking: set[str], line: _Line) -> Diagnostic:
    """Return the finding for a line that ends too soon."""
    name = _LAST_PART.search(line.said)
    if name is not None and lacking <= LENGTH_TOKENS:
        # “door 32 in, enterance” is no wall that lacks its length: a word is misspelt.
        words = expected_words(accepted(line.text[: name.start("word")]))
        if nearest(name["word"], words) or name["word"].casefold() in line_words():
            return _no_wall(name["word"], name.start("word"), line)
    end = line.at((len(line.said.rstrip()) or 1) + 1, 1)
    remedy = "Finish the line: each statement stands on one line."
    if lacking == {"DEG"}:
        # the one unit that an angle can have
        remedy = Suggestion("Write “deg” behind the number.", " deg")
    return say("T103", end, wanted=expected_phrase(lacking), remedy=remedy)


def _unseen(stop: _Stop) -> Diagnostic | None:
    """Find a sign that nobody sees, such as one that turns the direction of writing."""
    if stop.word.isprintable():
        return None
    # What cannot be seen is named by its number.
    sign = f"U+{ord(stop.word[0]):04X}"
    remedy = Suggestion("This sign cannot be seen: take it out.", "")
    wanted = expected_phrase(set(stop.terminals))
    return say("T101", stop.here, word=sign, wanted=wanted, remedy=remedy)


def _before_a_side(stop: _Stop) -> Diagnostic | None:
    """Find a misspelled word at the beginning of a line, or before an equals sign."""
    before = stop.name
    if before is None:
        return None
    # A line that begins with an unknown word was read as a run's name without its colon.
    if stop.is_first(before) and "COLON" in stop.terminals and _is_a_wall(before):
        remedy = f"A wall's length stands behind its name, in figures: {before} 10 ft 2 1/4."
        return say("T101", stop.here, word=stop.word, wanted="the wall's length", remedy=remedy)
    if stop.is_first(before) and "COLON" in stop.terminals:
        remedy = did_you_mean(
            before, line_words(), "A run is written “N: 29 1/8 in, left=in-corner, right=butt”."
        )
        return say("T100", stop.of(before), word=str(before), remedy=remedy)
    # “lft=butt”: what stands before an equals sign is a side.
    if stop.word == "=":
        remedy = did_you_mean(before, tuple(Side), "An end is “left=…” or “right=…”.")
        wanted = "“left” or “right”"
        joint = _JOINT_BEHIND.match(stop.line.text, stop.column - 1)
        if joint is not None and not isinstance(remedy, Suggestion):
            # An end of one trim; which end it is only the writer knows.
            ways = tuple(f"{before} {side}={joint['joint']}" for side in Side)
            remedy = Suggestion(
                f"An end says its side: write {' or '.join(ways)}.",
                *ways,
                covers=joint.end() - (before.column or 1) + 1,
            )
        return say("T101", stop.of(before), word=str(before), wanted=wanted, remedy=remedy)
    return None


def _is_a_wall(name: str) -> bool:
    """Whether a word is what walls are called: a letter, one with a figure, a point of the sky."""
    return called_as_a_wall(name) and (
        len(name) > SHORT_NAME or nearest(name, line_words()) is None
    )


def _no_wall_before(stop: _Stop) -> Diagnostic | None:
    """Find a misspelled word that was read as the name of a wall.

    Behind an opening a wall may follow, so a wrong word there reads as the name of one, and
    reading stops at what comes next.
    """
    before = stop.name
    if before is None or stop.word == ":" or not stop.terminals <= LENGTH_TOKENS:
        return None
    return _no_wall(str(before), (before.column or 1) - 1, stop.line)


def _in_quotes(stop: _Stop) -> Diagnostic | None:
    """Find a text that is not closed, or whose word before it is misspelled."""
    if stop.word not in ('"', "“"):
        return None
    text, before = stop.line.text, stop.name
    if not any(mark in text[stop.column :] for mark in '"”'):
        return say("T104", stop.line.at(stop.column, len(text) + 1 - stop.column))
    if before is None:
        return None
    remedy = did_you_mean(before, ("note",), "A text in quotes follows the word note.")
    return say("T101", stop.of(before), word=str(before), wanted="“note”", remedy=remedy)


def _first_word(stop: _Stop) -> Diagnostic | None:
    """Find a first word that no line begins with."""
    if stop.line.text[: stop.column - 1].strip():
        return None
    remedy = did_you_mean(stop.word, line_words(), "See the list of lines in docs/language.md.")
    return say("T100", stop.here, word=stop.word, remedy=remedy)


def _begun_otherwise(stop: _Stop) -> Diagnostic | None:
    """Find “trm base”, and a length that stands where a wall's name should."""
    before, text = stop.before, stop.line.text
    if before is None:
        return None
    at_a_word = WORD_AT.match(text, stop.column - 1)
    if before.type == "NAME" and at_a_word and nearest(before, part_words()) == "trim":
        # A misspelled word reads as a name, and lark stops at the next one.
        remedy = did_you_mean(before, ("trim",), "")
        return say("T101", stop.of(before), word=str(before), wanted="“trim”", remedy=remedy)
    counted = stop.is_first(before) and before.type == "COUNT"
    if counted and _REST_OF_LENGTH.match(text, stop.column - 1):
        wanted = "the wall's name and a colon"
        return say("T101", stop.of(before), word=str(before), wanted=wanted, remedy=_NAMELESS)
    return None


def _unexpected(stop: _Stop) -> Diagnostic:
    """Return the finding that says what could stand there."""
    terminals, word = set(stop.terminals), stop.word
    remedy = remedy_for(word, stop.line.text, stop.column - 1, terminals)
    return say("T101", stop.here, word=word, wanted=expected_phrase(terminals), remedy=remedy)


def _no_wall(word: str, at: int, line: _Line) -> Diagnostic:
    """Return the finding for a word (from ``at``) that reads as a wall's name without a length."""
    terminals = accepted(line.text[:at]) - {"NAME", "OPENING", "BARE"}
    remedy = remedy_for(word, line.text, at, terminals)
    wanted = expected_phrase(terminals)
    return say("T101", line.at(at + 1, len(word)), word=word, wanted=wanted, remedy=remedy)


def _terminals(error: UnexpectedInput, text: str) -> set[str]:
    if isinstance(error, UnexpectedToken):
        return set(error.accepts or error.expected)
    if isinstance(error, UnexpectedCharacters):
        # The error lists every terminal that the lexer knows; ask the parser what the line could go
        # on with.
        return accepted(text[: int(error.column) - 1])
    return set()


def _previous(error: UnexpectedInput) -> Token | None:
    history = getattr(error, "token_history", None)
    return history[-1] if history else None
