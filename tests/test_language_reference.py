"""Every example of the language reference compiles clean."""

import re

from tests.conftest import EXAMPLES, ROOT
from tests.every import every
from tests.jobs import TRIM, walls
from trimlang.compiler import compile_job

TEXT = (ROOT / "docs" / "language.md").read_text(encoding="utf-8")
BLOCKS = re.findall(r"^```trim *(\w*)\n(.*?)^```", TEXT, re.MULTILINE | re.DOTALL)


def whole(kind: str, block: str) -> str:
    if kind == "walls":
        return walls(block)
    if kind == "settings":
        trims = "" if "trim base:" in block or "include" in block else TRIM
        job = trims + block + '\nroom "Study", trim base, open walk\n'
        return job + "  N: 29 1/8 in, left=in-corner, right=butt\n"
    return block


@every("kind, block", BLOCKS)
def test_example(kind: str, block: str) -> None:
    result = compile_job(whole(kind, block), path=EXAMPLES / "reference.trim")
    unused = {"T214"} if kind == "settings" else set()
    assert {one.code for one in result.diagnostics} <= unused
    assert result.pieces
    assert result.plans


def test_the_reference_has_examples() -> None:
    assert len(BLOCKS) > 12


def test_every_word_of_the_grammar_stands_in_the_reference() -> None:
    grammar = (ROOT / "grammar" / "trim.lark").read_text(encoding="utf-8")
    words = set(re.findall(r"^[A-Z_]+\.\d: /\(?([a-z|-]+)\)?\\b/i$", grammar, re.MULTILINE))
    missing = {
        word for group in words for word in group.split("|")[:1] if word not in TEXT.casefold()
    }
    assert not missing


def test_what_each_kind_is_held_to_names_tests_that_there_are() -> None:
    page = (ROOT / "docs" / "survey-and-joinery.md").read_text(encoding="utf-8")
    table = page.partition("## What each kind is held to")[2]
    rows = [line for line in table.splitlines() if line.startswith("| ")][2:]
    assert len(rows) > 15
    for row in rows:
        named = re.findall(r"`(tests/[\w/]+\.py)`", row)
        assert named, row
        assert all((ROOT / one).is_file() for one in named), row
