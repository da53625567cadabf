"""Statements that the grammar may gain are laid out with no new code."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from trimlang.diagnostics.source import Source
from trimlang.language import tidy_file as layout
from trimlang.language import tidy_line as line
from trimlang.language.grammar import grammar_text, read_grammar

GAINED = """
sawn: SAWN NAME ("," NAME)*
ruined: RUINED NAME INTO length
fetched: FETCHED COUNT NAME length [AT price]
resin: RESIN ":" resin_fact ("," resin_fact)*
?resin_fact: LUMP length -> lump
SAWN.2: /sawn\\b/i
RUINED.2: /ruined\\b/i
FETCHED.2: /fetched\\b/i
RESIN.2: /resin\\b/i
LUMP.2: /lump\\b/i
"""


@pytest.fixture
def richer(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    grammar = grammar_text().replace(
        "| room | opening", "| sawn | ruined | fetched | resin | room | opening"
    )
    parser = read_grammar(grammar + GAINED)
    monkeypatch.setattr(line, "parser", lambda: parser)
    monkeypatch.setattr(layout, "parse", lambda source: ((), ()))
    line.any_case.cache_clear()
    yield
    line.any_case.cache_clear()


@pytest.mark.usefixtures("richer")
def test_a_new_statement_is_laid_out_like_the_others() -> None:
    ugly = """\
resin :LUMP 1/ 4",lump ⅛ inch
ROOM "Den", trim base
 N: 40", left=butt,right=butt
   SAWN  DE-N-base ,DE-2-base#done
RUINED DE-N-base   Into 12'-3½"
fetched 2 base 12' AT $ 17.40  # yard
"""
    tidy = """\
resin: lump 1/4 in, lump 1/8 in

room "Den", trim base
  N: 40 in, left=butt, right=butt
  sawn DE-N-base, DE-2-base  #done
ruined DE-N-base into 12 ft 3 1/2 in
fetched 2 base 12 ft at $17.40  # yard
"""
    once = layout.tidy(Source("x", ugly)).text
    assert once == tidy
    assert layout.tidy(Source("x", once)).text == tidy
