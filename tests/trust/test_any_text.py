"""Any text at all gives a result or diagnostics.

The long run is ``python -m benchmarks.any_text``; here are the inputs that once
broke something or reached new code, and a short run of new ones.
"""

from __future__ import annotations

from pathlib import Path
from random import Random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from hypothesis.extra.lark import from_lark

from tests.conftest import ROOT, examples
from tests.every import every
from tests.jobs import TRIM
from tests.trust.feeding import Tally, feed
from tests.trust.growing import any_file, grammar_line, slipped
from tests.trust.in_turn import Feeder
from tests.trust.near_limits import any_near_limits
from trimlang.language.grammar import grammar_text, read_grammar

CORPUS = sorted((ROOT / "tests" / "corpus").glob("*.trim"))
ROOM = 'room "Study", trim base, open walk\nN: 40 in, left=butt, right=butt\n'


@every("path", CORPUS)
def test_the_kept_corpus(path: Path) -> None:
    feed(path.read_bytes(), Tally())


def test_new_inputs() -> None:
    random, tally = Random(20260418), Tally()
    for _ in range(90):
        feed(slipped(any_file(random), random).encode("utf-8", "replace"), tally, print_each=12)
        feed(grammar_line(random).encode(), tally)
    assert tally.planned > 3
    assert tally.printed > 0


def test_numbers_near_their_limits() -> None:
    random = Random(20261128)
    feeder = Feeder(random)
    for _ in range(100):
        feeder.feed(*any_near_limits(random))
    assert feeder.tally.planned > 25
    assert feeder.tally.done["tables"] > 10
    assert feeder.tally.done["tidied"] > 1


def _lines() -> st.SearchStrategy[str]:
    alphabet = st.characters(codec="utf-8")
    return from_lark(read_grammar(grammar_text()), start="line", alphabet=alphabet)


# the grammar's look-aheads hide whole words from hypothesis, so a line may still be no line;
# the grammar is made ready only where the law runs, not wherever tests are collected
@pytest.mark.nightly  # by day such lines are among those of test_new_inputs
@given(st.deferred(_lines))
@settings(max_examples=examples(25), suppress_health_check=list(HealthCheck))
def test_lines_of_the_grammar(line: str) -> None:
    feed((TRIM + ROOM + line).encode(), Tally(), print_each=10)


@given(st.binary(max_size=300))
def test_any_bytes(data: bytes) -> None:
    feed(data, Tally())
