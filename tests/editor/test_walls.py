"""What an editor is told and offered about the walls of a room."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from tests.editor.client import Editor, edited
from tests.jobs import TRIM
from trimlang.compiler import check_job

LEFT_ROUND = """\
room "Den", trim base
  N: 12 ft, left=in-corner(91 deg), right=in-corner, note "left of the door"  # first
  W: 4 ft, left=in-corner, right=butt
  door 3 ft, "to hall"
  W2: 3 ft, left=butt, right=in-corner, base right=butt
  S 12 ft, left=in-corner, right=in-corner, E 10 ft, left=in-corner, right=in-corner
"""
TURNED = """\
room "Den", trim base
  N: 12 ft, right=in-corner(91 deg), left=in-corner, note "left of the door"  # first
  E 10 ft, right=in-corner, left=in-corner, S 12 ft, right=in-corner, left=in-corner
  W2: 3 ft, right=butt, left=in-corner, base left=butt
  door 3 ft, "to hall"
  W: 4 ft, right=in-corner, left=butt
"""


@pytest.fixture(scope="module")
def editor(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Editor]:
    editor = Editor(tmp_path_factory.mktemp("walls"))
    yield editor
    editor.close()


def test_a_rooms_closing_stands_behind_its_heading(editor: Editor) -> None:
    text = TRIM + 'room "A", trim base, ends in\n  N 12 ft, E 10 ft, S 12 ft, W 10 ft\n'
    editor.open("closing.trim", text)
    (hint,) = editor.hints("closing.trim", 0, 9)
    assert (hint.position.line, hint.position.character) == (2, 28)
    assert str(hint.label).startswith("Closes; ")
    assert not editor.hints("closing.trim", 3, 9)
    editor.type("closing.trim", text.replace("S 12 ft", "S 11 ft"))
    (hint,) = editor.hints("closing.trim", 0, 9)
    assert "ends 12 in from its start" in str(hint.label)
    editor.type("closing.trim", text.replace("ends in", "ends in, open walk"))
    assert not editor.hints("closing.trim", 0, 9)


def test_the_fitting_end_comes_first_in_an_editor(editor: Editor) -> None:
    text = TRIM + 'room "A", trim base\n  N: 9 ft, left=in, right=out\n  E: 4 ft, left='
    editor.open("ends.trim", text)
    found = editor.complete("ends.trim", 4, 16)
    first = min(found, key=lambda one: one.sort_text or one.label)
    assert (first.label, first.detail, first.preselect) == ("out-corner", "as N says", True)
    assert sum(one.preselect is True for one in found) == 1


def test_walls_are_listed_in_the_other_direction(editor: Editor) -> None:
    text = TRIM + LEFT_ROUND
    editor.open("turned.trim", text)
    (action,) = [one for one in editor.actions("turned.trim", 2) if "direction" in one.title]
    (edits,) = action.edit.changes.values()
    turned = edited(text, edits)
    assert turned == TRIM + TURNED
    before, after = (check_job(one).job.rooms[0] for one in (text, turned))
    assert [one.length for one in after.runs] == [before.runs[at].length for at in (0, 4, 3, 2, 1)]
    assert [one.left.joint for one in after.runs] == [
        before.runs[at].right.joint for at in (0, 4, 3, 2, 1)
    ]
    assert "left of the door" in turned


def test_a_room_that_was_listed_turning_left_is_turned_round_by_a_quick_fix(editor: Editor) -> None:
    text = TRIM + 'room "A", trim base, ends in\n  N 12 ft, W 10 ft, S 12 ft, E 10 ft\n'
    editor.open("left.trim", text)
    found = [one for one in editor.actions("left.trim", 2, 6) if one.kind == "quickfix"]
    assert [one.title for one in found] == [
        "List the walls in the other direction",
        "Swap the names of east and west",
    ]
    for fix in found:
        (edits,) = fix.edit.changes.values()
        assert not check_job(edited(text, edits)).diagnostics
    assert "N 12 ft, E 10 ft, S 12 ft, W 10 ft" in edited(text, edits)


@pytest.mark.parametrize("line", ["  F: 1 ft, first stud 3 in\n", "  ?\n"])
def test_no_direction_is_offered_where_something_hangs_on_it(editor: Editor, line: str) -> None:
    text = TRIM + 'room "A", trim base, ends in\n  N 12 ft, E 10 ft, S 12 ft, W 10 ft\n' + line
    editor.open("held.trim", text)
    assert not [one for one in editor.actions("held.trim", 2) if "direction" in one.title]
    assert not [one for one in editor.actions("held.trim", 0) if "direction" in one.title]
