"""The lines that a message shows are lines of the language."""

from __future__ import annotations

from trimlang.language.line_examples import LINE_EXAMPLES, line_example
from trimlang.language.parse import read_line


def test_each_example_is_read_and_begins_with_its_word() -> None:
    for word, line in LINE_EXAMPLES.items():
        statement, findings = read_line(line, "x", 1)
        assert statement is not None
        assert not findings, line
        assert line.startswith(word)


def test_a_line_without_a_word_of_its_own_is_a_wall() -> None:
    for text in ("N: 40 in, at", "N 40, joint at 24"):
        statement, findings = read_line(line_example(text), "x", 1)
        assert statement is not None
        assert not findings


def test_a_remedy_does_not_say_again_what_the_message_lists() -> None:
    _, (found,) = read_line("caulk: yes", "x", 1)
    assert found.message.endswith("expected “bead”, “tube” or “waste”")
    assert found.remedy == f"Such a line is written so: {LINE_EXAMPLES['caulk']}"
    _, (found,) = read_line("surveyed today", "x", 1)
    assert found.remedy == "Write a date such as 2026-04-18 here."
