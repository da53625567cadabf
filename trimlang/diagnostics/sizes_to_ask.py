"""Mends that write a size into a trim's or a block's own line, with a remark that it is a guess.

What is written is the size that the rest of the file asks for, or one in which such trim is usually
sold.  Only the yard or a rule on the profile tells the true one, so the remark says to ask.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction
from typing import Final

from trimlang.diagnostics.diagnostic import Diagnostic, Span
from trimlang.diagnostics.leaving_out import end_of_words
from trimlang.diagnostics.mend import Edit, Mend
from trimlang.diagnostics.setting_aside import TO_ASK, remark
from trimlang.record import record

_Way = Callable[[Diagnostic, Sequence[str]], Iterator[Mend]]

PRICED_STICK: Final = re.compile(
    r"\b(?P<long>\d+(?:\.\d+)?)\s*(?P<unit>ft|m)\s+at\s+\D?(?P<price>\d+(?:\.\d+)?)", re.IGNORECASE
)
"""A stick with its price, in a stock line."""

_TOO_LONG: Final = re.compile(r"\d{3,} ft|[3-9]\d(?:\.\d+)? m|\d{3,}(?:\.\d+)? m")
"""A stick of a hundred feet or thirty metres: then it is the wall that was misread."""

_METRIC: Final = re.compile(r"\s*unit\s+(?:mm|cm|m)\b", re.IGNORECASE)


def is_metric(lines: Sequence[str]) -> bool:
    """Tell whether a file's bare numbers are millimetres, centimetres or metres."""
    return any(_METRIC.match(line) for line in lines)


@record
class Usual:
    """A size that a line may lack, and in which trim or blocks are usually sold."""

    word: str
    inches: tuple[str, ...]
    metric: tuple[str, ...]

    def sizes(self, lines: Sequence[str]) -> tuple[str, ...]:
        """Return the sizes in the unit of a file."""
        return self.metric if is_metric(lines) else self.inches


# Common sizes of mouldings as yards list them (common practice, no source).
THICK: Final = Usual("thick", ("9/16 in", "11/16 in"), ("14 mm", "18 mm"))
TALL: Final = Usual("tall", ("3 1/4 in", "5 1/4 in"), ("60 mm", "80 mm"))
CROWN_WIDE: Final = Usual("wide", ("3 5/8 in", "4 5/8 in"), ("70 mm", "90 mm"))
CASING_WIDE: Final = Usual("wide", ("2 1/4 in", "3 1/2 in"), ("60 mm", "70 mm"))
BLOCK_WIDE: Final = Usual("wide", ("3 in",), ("75 mm",))
BLOCK_TALL: Final = Usual("tall", ("7 in",), ("180 mm",))
BLOCK_THICK: Final = Usual("thick", ("1 1/8 in",), ("28 mm",))


def _own_line(kind: str, name: str, lines: Sequence[str]) -> tuple[int, str] | None:
    own = re.compile(rf"\s*{kind}\s+{re.escape(name)}\s*:", re.IGNORECASE)
    return next(((at + 1, line) for at, line in enumerate(lines) if own.match(line)), None)


def _added(file: str, number: int, line: str, words: str) -> Edit:
    """Return what adds words to a line, and asks for them behind it."""
    # In one edit: of two at the same place an editor may write the remark first.
    end = end_of_words(line)
    asks = remark(file, number, line, f"{TO_ASK}: {words}?")
    behind = line[end - 1 : asks.span.column - 1]
    return Edit(Span(file, number, end, asks.span.end), f", {words}{behind}{asks.text}")


def with_usual(kind: str, *lacking: Usual) -> _Way:
    """Return what adds the sizes that a trim's or block's line lacks, as they are usually sold."""

    def offer(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
        file, name = finding.span.file, str(dict(finding.facts)[kind])
        own = _own_line(kind, name, lines)
        # The line may stand in another file, which is not to be changed from here.
        if own is None:
            return
        number, line = own
        unsaid = [one for one in lacking if not re.search(rf"\b{one.word}\b", line, re.IGNORECASE)]
        for sizes in zip(*(one.sizes(lines) for one in unsaid), strict=False):
            words = [f"{size} {one.word}" for size, one in zip(sizes, unsaid, strict=True)]
            edit = _added(file, number, line, ", ".join(words))
            yield Mend(f"Add {' and '.join(words)} to {name}, to be asked", (edit,))

    return offer


def resized(kind: str, to: str, *words: str) -> _Way:
    """Return what writes the size ``to`` (a fact) in place of those of a trim or block.

    ``words`` are the size's word, such as “tall”, or the fact that holds it in braces.
    """

    def offer(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
        facts = dict(finding.facts)
        file, name, size = finding.span.file, str(facts[kind]), str(facts[to])
        own = _own_line(kind, name, lines)
        if own is None:
            return
        number, line = own
        asked = "|".join(one.format(**facts) for one in words)
        places = list(re.finditer(rf"(?P<long>\d[^,#:]*?)\s+(?P<word>{asked})\b", line))
        small = [one for one in places if "own" not in facts or one["long"] == facts["own"]]
        if not small:
            return
        said = [f"{size} {one['word']}" for one in small]
        edits = [remark(file, number, line, f"{TO_ASK}: {', '.join(said)}?")]
        for one, text in zip(reversed(small), reversed(said), strict=True):
            edits.append(Edit(Span(file, number, one.start() + 1, one.end() + 1), text))
        yield Mend(f"Take {name} {' and '.join(said)}, to be asked", tuple(edits))

    return offer


def longer_stick(finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """List a longer stick of a trim, in the next length that yards usually have."""
    facts = dict(finding.facts)
    file, trim, stick = finding.span.file, str(facts["trim"]), str(facts["stick"])
    own = _own_line("stock", trim, lines)
    if own is not None and not _TOO_LONG.match(stick):
        yield Mend(f"List {trim} of {stick}, to be asked", (_added(file, *own, stick),))


def price_of(stick: str, near: re.Match[str] | None) -> str:
    """Return what a stick may cost: as much for its length as another that has a price."""
    long = re.match(r"(?P<long>\d+(?:\.\d+)?)\s*(?P<unit>ft|m)\b", stick, re.IGNORECASE)
    if near is None or long is None or near["unit"].lower() != long["unit"].lower():
        return "1.00"
    cents = round(100 * Fraction(near["price"]) / Fraction(near["long"]) * Fraction(long["long"]))
    return f"{cents // 100}.{cents % 100:02d}"
