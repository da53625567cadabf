"""The table of settings: what is read, told and written of them goes by its rows."""

from __future__ import annotations

import pickle
import re
import textwrap
from collections.abc import Callable, Iterator
from fractions import Fraction
from pathlib import Path

import pytest

from tests.conftest import ROOT
from tests.every import every
from tests.jobs import walls
from trimlang.compiler import check_job
from trimlang.editor.word_meanings import meaning, setting_meaning
from trimlang.language import parse as reading
from trimlang.language.grammar import grammar_text, read_grammar
from trimlang.lengths.tape import MM, Unit
from trimlang.settings import table
from trimlang.settings.job_rows import JobRows
from trimlang.settings.setting_kinds import AngleSetting, LengthSetting, NumberSetting
from trimlang.settings.settings_reference import settings_table, with_settings
from trimlang.settings.table import Settings, rows_of

REFERENCE = ROOT / "docs" / "language.md"
RUN = "N: 40 in, left=butt, right=butt"
ROWS = {row.name: row for row in Settings.rows()}


def test_the_reference_has_the_table(same_in_git: Callable[[Path, str], None]) -> None:
    same_in_git(REFERENCE, with_settings(REFERENCE.read_text(encoding="utf-8")))


@every("name", ROWS)
def test_a_row_is_whole(name: str) -> None:
    row = ROWS[name]
    grammar = grammar_text()
    for rule in row.rules:
        assert re.search(rf"^\??{rule}:|-> {rule}\b", grammar, re.MULTILINE), "no such rule"
        assert row in rows_of(rule)
    assert row.unsaid in setting_meaning(row)
    assert pickle.loads(pickle.dumps(row)) == row  # noqa: S301 - our own bytes
    if isinstance(row, AngleSetting | NumberSetting):
        assert row.least <= row.default <= row.most
    if isinstance(row, LengthSetting):
        for default in (row.default, row.metric or row.default):
            assert (default >= 0) if row.from_nothing else (default > 0)
            assert row.at_most is None or default <= row.at_most


def test_what_is_said_holds_and_the_rest_by_its_unit() -> None:
    metric = Settings().having(Settings.unit, Unit.MM)
    assert (metric.nail_long, metric.kerf) == (50 * MM, Fraction(1, 8))
    said = metric.having(Settings.nail_long, Fraction(2))
    assert said.nail_long == 2
    assert said.says(Settings.nail_long)
    assert not metric.says(Settings.nail_long)
    again = pickle.loads(pickle.dumps(said))  # noqa: S301 - our own bytes
    assert again == said != metric
    assert hash(again) == hash(said)


# ---- the recipe of DEVELOPERS.md, done as it says ----------------------------------------

RECIPE = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8").partition("## Adding a setting")[2]
ROW, PHRASE, WORD = re.findall(r"```\w*\n(.*?)```", RECIPE, re.DOTALL)[:3]


@pytest.fixture
def gained(monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    scope = {"LengthSetting": LengthSetting, "Fraction": Fraction}
    exec(textwrap.dedent(ROW), scope)  # noqa: S102 - the example of our own docs
    row = scope["nail_set"]
    assert isinstance(row, LengthSetting)
    row.__set_name__(JobRows, "nail_set")
    monkeypatch.setattr(JobRows, "nail_set", row, raising=False)
    phrase = PHRASE.strip().removeprefix("|")
    grammar = grammar_text().replace("?nail_fact: ", f"?nail_fact: {phrase}\n | ")
    parser = read_grammar(grammar + WORD)
    monkeypatch.setattr(reading, "parser", lambda: parser)
    rows_of.cache_clear()
    yield
    rows_of.cache_clear()


@pytest.mark.usefixtures("gained")
def test_a_setting_is_added_as_the_developers_page_says() -> None:
    result = check_job(walls(RUN, settings="nails: set 3/32 in"))
    assert not result.diagnostics
    assert result.job.settings.nail_set == Fraction(3, 32)  # type: ignore[attr-defined]
    assert check_job(walls(RUN)).job.settings.nail_set == Fraction(1, 16)  # type: ignore[attr-defined]
    assert "| `nails: set` |" in settings_table()
    (wrong,) = check_job(walls(RUN, settings="nails: set -1 in")).diagnostics
    assert wrong.code == "T204"
    room = walls(f"nails: set 1/8 in\n{RUN}")
    assert [one.code for one in check_job(room).diagnostics] == ["T230"]
    assert table.Settings.rows()[-1].name == "nail_set"


def test_a_word_of_several_settings_is_told_by_its_line() -> None:
    assert meaning("EVERY", "every", "nails") == "How far apart nails are at most."
    assert meaning("FLOOR", "floor", "nails") == "The finished floor's thickness."
