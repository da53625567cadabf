"""docs/commands.md: every command stands in it, and what it shows is so."""

from __future__ import annotations

import argparse
import re
import shlex
from pathlib import Path

import pytest

from tests.conftest import ROOT
from tests.every import every
from tests.jobs import BASE, TWELVE_FEET
from trimlang.cli import main
from trimlang.cli.command_line import arguments
from trimlang.diagnostics.source import Source
from trimlang.language.tidy_file import tidy

TEXT = (ROOT / "docs" / "commands.md").read_text(encoding="utf-8")
LINES = re.findall(r"^    (trimlang .*)$", TEXT, re.MULTILINE)


def block(kind: str) -> str:
    (found,) = re.findall(rf"^```trim {kind}\n(.*?)^```", TEXT, re.MULTILINE | re.DOTALL)
    return str(found)


def test_every_command_has_its_section() -> None:
    (commands,) = (
        action for action in arguments()._actions if isinstance(action, argparse._SubParsersAction)
    )
    for name in commands.choices:
        assert f"\n## {name}\n" in TEXT, f"docs/commands.md says nothing of {name}"


@every("line", LINES)
def test_a_line_can_be_typed(line: str) -> None:
    words = shlex.split(re.split(r" [<>]", line)[0])[1:]
    assert arguments().parse_args(words)


def test_tidy_as_shown() -> None:
    assert tidy(Source("x", block("ugly"))).text == block("tidy")
    assert tidy(Source("x", block("tidy"))).text == block("tidy")


def test_compare_as_shown(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    text = f"""\
{BASE}
{TWELVE_FEET}
room "Study", trim base, open walk
  N: 40 in, left=butt, right=out-corner
  E: 50 in, left=out-corner, right=butt
"""
    Path("job.trim").write_text(text, encoding="utf-8")
    Path("new.trim").write_text(text.replace("50 in", "50 1/4 in"), encoding="utf-8")
    assert main(["compare", "job.trim", "new.trim", "--cut", "ST-E-base"]) == 0
    shown = next(part for part in TEXT.split("```") if part.startswith("\njob.trim → new.trim"))
    assert capsys.readouterr().out.startswith(shown[1:])
