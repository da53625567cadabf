"""Laws of tidying, on files that are made up from the grammar itself."""

from __future__ import annotations

import re

from hypothesis import HealthCheck, given, settings

from tests.conftest import examples
from tests.language.tidy_lines import STATEMENTS, files, statements
from trimlang.compiler import check_job
from trimlang.diagnostics.source import Source
from trimlang.language.meaning import meaning
from trimlang.language.parse import parse
from trimlang.language.tidy_file import tidy
from trimlang.language.tidy_line import read_line

slow = settings(deadline=None, suppress_health_check=list(HealthCheck))


def said(text: str) -> object:
    return meaning(parse(Source("x", text))[0])


def comments(text: str) -> list[str]:
    """The comments of the lines that can be read; the others are kept as they are."""
    lines = [read_line(raw) for raw in Source("x", text).lines()]
    return [line.raw if line.left else line.comment for line in lines if line.comment or line.left]


def test_a_name_behind_a_transitions_block_takes_no_comma() -> None:
    assert read_line('transition foot"to hall"').words == 'transition foot "to hall"'
    assert read_line('door 32 in"to hall"').words == 'door 32 in, "to hall"'


def test_words_that_belong_together_may_have_any_blanks_between_them() -> None:
    assert said("door 32, swings\tin\n") == said("door 32, swings in\n")
    assert read_line("door 32, swings\tin").words == "door 32, swings in"


@given(files())
@settings(slow, max_examples=examples(30))
def test_meaning_and_comments_stay_and_tidying_again_changes_nothing(text: str) -> None:
    after = tidy(Source("x", text)).text
    assert tidy(Source("x", after)).text == after
    assert said(after) == said(text)
    assert comments(after) == comments(text)
    one, other = check_job(text), check_job(after)
    assert meaning(one.job) == meaning(other.job)
    assert meaning(one.pieces) == meaning(other.pieces)
    assert sorted(d.code for d in one.diagnostics) == sorted(d.code for d in other.diagnostics)


def test_every_statement_is_laid_out() -> None:
    """Nothing that can be read is left as it is, or keeps odd blanks."""
    laid: set[str] = set()

    @given(statements())
    @settings(slow, max_examples=300)
    def law(raw: str) -> None:
        line = read_line(raw)
        if line.left:
            assert any(one.code.startswith("T10") for one in parse(Source("x", raw))[1])
            return
        laid.add(str(line.rule))
        outside = "S".join(line.words.split('"')[::2])
        assert not re.search(r"  |\t| [,:)]|\( |,(?! )", outside)

    law()
    assert len(laid) > len(STATEMENTS) / 2
