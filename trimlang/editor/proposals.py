"""Completion: what may be written next at a place in a line.

The grammar's parser says which kinds of words can follow; the job says which names there are.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from enum import StrEnum
from typing import Final

from lark import Token

from trimlang.editor.mention import NameSort
from trimlang.editor.open_job import JobReading
from trimlang.editor.tokens import expected, tokens
from trimlang.editor.word_meanings import meaning
from trimlang.editor.words_in_place import METRIC, UNITS, has_place
from trimlang.language import tree
from trimlang.language.vocabulary import SHORT_JOINTS, spellings
from trimlang.lengths.tape import Unit
from trimlang.record import record

_UNFINISHED: Final = re.compile(r"[^\W\d_][\w.\-]*$|[\w.\-]+$")
_PATH: Final = re.compile(r'^\s*include\s+["“](?P<start>[^"”]*)$', re.IGNORECASE)
# Words that the lexer takes as one: offered whole.
_ALWAYS_TWO: Final = {
    "OPEN_WALK": "open walk",
    "FL_OZ": "fl oz",
    "ONE_WAY": "one way",
    "COATS": "coats",
}
_SPELLED_IN_WAYS: Final = frozenset(
    {"JOINT", "BETWEEN", "SIDE", "TILT", "DIRECTION", "TAKEN_AT", "METRIC", "SWINGS", "OPENING"}
    | {"BARE", "BEND", "DEFECT", "BATCH_OF", "STAIR_SIDE", "TAKEN_ALONG"}
)
_UNITS: Final = frozenset({*UNITS, METRIC, "DEG"})
# After these words a NAME is the name of a trim.
_TRIM_AFTER: Final = frozenset(
    {"STOCK", "ON_HAND", "OF", "ON", "CASING", "HEAD", "NO", "RACK", "BOUGHT"}
)


class ProposalKind(StrEnum):
    """What a proposal is; editors show a sign for each kind."""

    WORD = "word"
    JOINT = "joint"
    UNIT = "unit"
    TRIM = "trim"
    RUN = "run"
    PIECE = "piece"
    FILE = "file"


@record
class Proposal:
    """One way to go on: ``text`` replaces the last ``covers`` columns before the cursor.

    ``fits`` tells that it is the one that is expected there.
    """

    text: str
    kind: ProposalKind
    covers: int
    detail: str = ""
    fits: bool = False


def complete(
    reading: JobReading, before: str, behind: str = "", files: tuple[str, ...] = ()
) -> tuple[Proposal, ...]:
    """Return how a line may go on; ``before`` is the text before the cursor.

    ``behind`` is the line's text behind it, from a comma on; ``files`` are the names of the files
    that could be included.
    """
    path = _PATH.match(before)
    if path:
        covers = len(path["start"])
        return tuple(Proposal(name, ProposalKind.FILE, covers) for name in files)
    if _is_comment(before):
        return ()
    unfinished = _UNFINISHED.search(before)
    stem = unfinished[0] if unfinished else ""
    # A number is being typed: proposing words for it would only be in the way. A line may begin
    # with one, as a run's label.
    if stem[:1].isdigit() and before[: -len(stem)].strip():
        return ()
    words, kinds = expected(before[: len(before) - len(stem)])
    unit = None if stem else reading.result.job.settings.unit
    # what stands behind the cursor is read as it would be without the part that is being typed
    said = before[: max(before.rfind(","), 0)]
    after = tokens(said + behind)[len(tokens(said)) :] if behind else []
    found = dict.fromkeys((*_names(reading, words, kinds), *_words(words, after, kinds, unit)))
    return tuple(
        Proposal(text, kind, len(stem), detail)
        for text, kind, detail in found
        if text.casefold().startswith(stem.casefold())
    )


def _is_comment(before: str) -> bool:
    quoted = False
    for sign in before:
        quoted = quoted != (sign in '"“”')
        if sign == "#" and not quoted:
            return True
    return False


def _words(
    before: list[Token], behind: list[Token], kinds: set[str], unit: Unit | None
) -> Iterator[tuple[str, ProposalKind, str]]:
    line = str(before[0]) if before else ""
    # of “in” and “inch” the shorter is usual
    for kind in sorted(kinds - {"INCH"} if "IN" in kinds else kinds):
        ways = spellings().get(kind)
        if not ways:
            continue
        # Of several spellings of one word only the usual one is offered; in these kinds the
        # spellings are different words.
        choice = ways if kind in _SPELLED_IN_WAYS else ways[:1]
        for way in choice:
            if way in SHORT_JOINTS and kind in ("JOINT", "BETWEEN"):
                continue
            if not has_place(kind, way, before, behind, unit):
                continue
            way = _ALWAYS_TWO.get(kind, way)
            sort = (
                ProposalKind.JOINT
                if kind in ("JOINT", "BETWEEN")
                else ProposalKind.UNIT
                if kind in _UNITS
                else ProposalKind.WORD
            )
            detail = meaning(kind, way, line) or ""
            yield (f"{way}=" if kind == "SIDE" and "RISING" in kinds else way), sort, detail


def _names(
    reading: JobReading, words: list[Token], kinds: set[str]
) -> Iterator[tuple[str, ProposalKind, str]]:
    last = words[-1].type if words else ""
    if "PIECE_ID" in kinds:
        for piece in reading.result.pieces:
            yield piece.id, ProposalKind.PIECE, f"run {piece.run} of {piece.room}"
    if "NAME" not in kinds or not words:
        return
    if last == "TRIM" and words[0] is words[-1]:
        # A new trim line: offer the trims that have stock or that rooms name, and no line yet.
        yield from ((name, ProposalKind.TRIM, "has no line yet") for name in _without_line(reading))
    elif (
        last in _TRIM_AFTER
        or last == "TRIM"
        or (last == "COMMA" and any(word.type == "TRIM" for word in words))
    ):
        # No trim stands in front of itself.
        own = str(words[1]) if words[0].type == "TRIM" and len(words) > 1 else ""
        for trim in reading.result.job.trims:
            if trim.name != own:
                yield trim.name, ProposalKind.TRIM, ", ".join(trim.material)


def _without_line(reading: JobReading) -> tuple[str, ...]:
    # A casing's head has a line of its own, though it is named where a trim is.
    given = {trim.name for trim in reading.result.job.trims} | {
        line.name.text
        for line in reading.gathered.statements
        if isinstance(line, tree.HeadLine | tree.AssemblyLine)
    }
    wanted = (
        line.name.text
        for line in reading.gathered.statements
        if isinstance(line, tree.StockLine | tree.OnHandLine)
    )
    used = (one.name.text for one in reading.names.mentions if one.name.sort is NameSort.TRIM)
    return tuple(name for name in dict.fromkeys((*wanted, *used)) if name not in given)
