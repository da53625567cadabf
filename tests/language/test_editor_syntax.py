"""The colours of Vim and Emacs know each word that the grammar knows."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from tests.conftest import ROOT
from trimlang.language import editor_syntax
from trimlang.language.vocabulary import spellings

WORDS = sorted({way for ways in spellings().values() for way in ways if way[:1].isalpha()})


def test_the_files_are_made_from_the_grammar(same_in_git: Callable[[Path, str], None]) -> None:
    same_in_git(ROOT / "grammar" / editor_syntax.VIM_FILE, editor_syntax.vim_syntax())
    same_in_git(ROOT / "grammar" / editor_syntax.EMACS_FILE, editor_syntax.emacs_mode())


@pytest.mark.parametrize("made", [editor_syntax.vim_syntax, editor_syntax.emacs_mode])
def test_each_word_of_the_grammar_is_coloured_once(made: Callable[[], str]) -> None:
    text = made()
    for word in WORDS:
        ways = {word, word.replace(" ", r"\s\+"), word.replace(" ", r"[ \t]+")}
        found = [way for way in ways if re.search(rf"(?<![\w-]){re.escape(way)}(?![\w-])", text)]
        assert found, word


def test_emacs_closes_each_bracket_outside_strings() -> None:
    plain = re.sub(r'"(\\.|[^"\\])*"|;[^\n]*|\?\\?.', "", editor_syntax.emacs_mode())
    depth = 0
    for sign in plain:
        depth += (sign == "(") - (sign == ")")
        assert depth >= 0
    assert depth == 0
