"""The recipe of DEVELOPERS.md for a sheet, done as it says: a list of the rooms."""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

from tests.conftest import EXAMPLES, ROOT

CONTENT = '''
"""Which rooms the job has, and how many pieces each gets."""

from __future__ import annotations

from trimlang.compiler import Result
from trimlang.record import record
from trimlang.sheets.wording.quantities import Pen


@record
class RoomCount:
    """A room and what it gets."""

    name: str
    pieces: str


def room_counts(result: Result, pen: Pen) -> tuple[RoomCount, ...]:
    """Return every room, in the order of the file."""
    return tuple(
        RoomCount(
            room.name,
            pen.words("{n} pieces", n=sum(one.room == room.name for one in result.pieces)),
        )
        for room in result.job.rooms
    )
'''
TEMPLATE = """\
{% extends "parts/page.html" %}
{% block kind %}piece-counts{% endblock %}
{% block body %}
<ul>{% for room in rooms %}<li>{{ room.name }}: {{ room.pieces }}</li>{% endfor %}</ul>
{% endblock %}
"""
ROW = """\
    Sheet(
        name="piece-counts",
        title=N_("Rooms and pieces"),
        whose=Whose.EACH_JOB,
        context=lambda it: {"rooms": room_counts(it.result, it.pen)},
    ),
)

PHONE"""
IMPORT = "from trimlang.sheets.content.saw_sheet import"


def test_a_sheet_is_added_as_the_developers_page_says(tmp_path: Path) -> None:
    # with what Python has compiled of them, which goes by the files' times
    for folder in ("trimlang", "grammar", "templates"):
        being_written = shutil.ignore_patterns("*.pyc.*")
        shutil.copytree(ROOT / folder, tmp_path / folder, ignore=being_written)
    sheets = tmp_path / "trimlang" / "sheets"
    (sheets / "content" / "piece_counts.py").write_text(CONTENT, encoding="utf-8")
    (tmp_path / "templates" / "piece-counts.html").write_text(TEMPLATE, encoding="utf-8")
    table = (sheets / "sheet_table.py").read_text(encoding="utf-8")
    assert table.count(")\n\nPHONE") == table.count(IMPORT) == 1
    table = table.replace(
        IMPORT, f"from trimlang.sheets.content.piece_counts import room_counts\n{IMPORT}"
    )
    (sheets / "sheet_table.py").write_text(table.replace(")\n\nPHONE", ROW), encoding="utf-8")
    built = subprocess.run(
        [sys.executable, "-m", "trimlang", "build", str(EXAMPLES / "one-room.trim"),
         "--plan", "quick", "--format", "html", "--out", str(tmp_path / "sheets")],
        cwd=tmp_path, env={"PYTHONPATH": str(tmp_path)}, capture_output=True, text=True,
        check=False,
    )  # fmt: skip
    assert built.returncode == 0, built.stderr
    page = (tmp_path / "sheets" / "piece-counts.html").read_text(encoding="utf-8")
    assert "<title>Rooms and pieces" in page
    assert "<li>Guest room: 0 pieces" not in page
    assert "<li>Guest room: " in page
    index = (tmp_path / "sheets" / "index.html").read_text(encoding="utf-8")
    assert 'href="piece-counts.html"' in index
    assert "Rooms and pieces" in index
