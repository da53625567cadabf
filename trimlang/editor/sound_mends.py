"""Which mends are offered: those after which each line that they touch reads better, or as well.

A mend is made for a kind of mistake.  Where a line has several, as one that is being typed has, it
may not fit: what would only make another mistake of the line is not offered.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from trimlang.diagnostics import Diagnostic
from trimlang.diagnostics.mend import Edit, Mend
from trimlang.language import tree
from trimlang.language.facts import AtEnd
from trimlang.language.parse import read_line


def sound(found: Iterable[Mend], finding: Diagnostic, lines: Sequence[str]) -> Iterator[Mend]:
    """Yield the mends of a finding that do what they say; ``lines`` are those of its file."""
    for mend in found:
        touched = sorted({edit.span.line for edit in mend.edits})
        before = _wrong(lines[number - 1] for number in touched if number <= len(lines))
        after = _wrong(line for number in touched for line in _edited(number, mend, lines))
        # What is wrong with the text alone is told at its line: there it has to be gone.
        persists = before[finding.code] and after[finding.code] >= before[finding.code]
        if not persists and not after.keys() - before.keys():
            yield mend


def _edited(number: int, mend: Mend, lines: Sequence[str]) -> list[str]:
    """Return what a line becomes: several where the mend breaks it or writes one beside it."""
    line = lines[number - 1] if number <= len(lines) else ""
    own = [edit for edit in mend.edits if edit.span.line == number]
    for edit in sorted(own, key=_place, reverse=True):
        line = line[: edit.span.column - 1] + edit.text + line[edit.span.end - 1 :]
    return line.split("\n")


def _place(edit: Edit) -> int:
    return edit.span.column


def _wrong(lines: Iterable[str]) -> Counter[str]:
    """Count what is wrong with the text of lines by its code; an end that is said twice too."""
    found: Counter[str] = Counter()
    for line in lines:
        statement, problems = read_line(line, "", 1)
        found.update(one.code for one in problems)
        walls = statement.stretches if isinstance(statement, tree.WallsLine) else (statement,)
        for wall in walls:
            if isinstance(wall, tree.RunLine | tree.GapLine | tree.LoosePieceLine):
                sides = Counter(one.side for one in wall.facts if isinstance(one, AtEnd))
                found.update(f"{side} twice" for side, times in sides.items() if times > 1)
    return found
