"""Finds the words of a job that name blocks: where one is given, and where it stands."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from trimlang.editor.mention import Mention, Name, NameSort
from trimlang.language import facts, tree


def blocks_in(statements: Iterable[tree.Statement]) -> Iterator[Mention]:
    """Yield each mention of a block, in the order of the file."""
    for line in statements:
        if isinstance(line, tree.BlockLine):
            yield Mention(Name(NameSort.BLOCK, line.name.text), line.name.span, gives=True)
        if isinstance(line, tree.GapLine) and isinstance(line.width, tree.Word):
            yield _stands(line.width)
        # Only some lines state facts; the others have no block to name.
        for fact in getattr(line, "facts", ()):
            match fact:
                case facts.Plinthed(block=word) | facts.CornerBlocked(block=word):
                    yield _stands(word)
                case facts.AtEnd(end=end):
                    for said in end.facts:
                        if isinstance(said, facts.BlockHere):
                            yield _stands(said.block)


def _stands(word: tree.Word) -> Mention:
    return Mention(Name(NameSort.BLOCK, word.text), word.span)
