"""A site log that does not say all is written out by a quick fix."""

from __future__ import annotations

from pathlib import Path

from tests.editor.client import Editor, edited
from tests.jobs import HALL, TWELVE_FEET
from trimlang.compiler import check_job, compile_job

LOG = "cut HA-N-base\nspoiled HA-S-base  # split\n"


def test_the_log_is_written_out_in_full_by_a_quick_fix(tmp_path: Path) -> None:
    text = f"{HALL}{TWELVE_FEET}\n{LOG}"
    before = compile_job(text)
    line = text.split("\n").index("cut HA-N-base")
    editor = Editor(tmp_path)
    try:
        editor.open("hall.trim", text)
        (fix,) = [one for one in editor.actions("hall.trim", line, 5) if "full" in one.title]
        assert fix.kind == "quickfix"
        (edits,) = fix.edit.changes.values()
    finally:
        editor.close()
    after = edited(text, edits)
    assert "T712" not in {one.code for one in check_job(after).diagnostics}
    assert "in from base-1 of 12 ft  # split" in after
    assert [one.sticks for one in compile_job(after).plans] == [one.sticks for one in before.plans]
