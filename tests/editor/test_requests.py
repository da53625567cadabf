"""What an editor asks about a job of several files: an included one, and the log beside it."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import ExitStack
from pathlib import Path
from threading import Timer

import pytest
from lsprotocol import types as lsp

from tests.editor.client import Editor, edited
from trimlang.output.lock import alone_in

YARD = """\
trim base: 9/16 in thick, 5 1/4 in tall, mdf, primed
stock base: 12 ft at 17.40, 16 ft at 24.10
"""
JOB = """\
job "Elm Court 2"
include "yard.trim"
room "Hall", trim base, open walk
  N: 9 ft 3 5/8 in, left=butt, right=in-corner
  É2: 3 ft 11 in, left=in-corner, right=butt, note "😀", trim base
"""
LOG = """\
bought 1 base 12 ft at 17.40
cut HA-N-base 111 5/8 in from base-1 of 12 ft
"""


@pytest.fixture(scope="module")
def editor(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Editor]:
    editor = Editor(tmp_path_factory.mktemp("court"))
    editor.write("yard.trim", YARD)
    editor.write("court.site", LOG)
    editor.write("court.trim", JOB)
    editor.write("beside.trim", 'job "Another"\n')
    editor.write("below/deep.trim", 'include "../yard.trim"\nroom "A", trim base\n')
    assert editor.open("court.trim", JOB) == []
    yield editor
    editor.close()


def places(editor: Editor, found: list[lsp.Location] | None) -> list[tuple[str, int, int]]:
    return sorted(
        (one.uri.rpartition("/")[2], one.range.start.line, one.range.start.character)
        for one in found or ()
    )


def test_uses_are_listed_with_or_without_where_the_name_is_given(editor: Editor) -> None:
    uses = [
        ("court.site", 0, 9),
        ("court.site", 1, 9),
        ("court.site", 1, 30),
        ("court.trim", 2, 18),
        ("court.trim", 4, 62),
        ("yard.trim", 1, 6),
    ]
    assert places(editor, editor.references("court.trim", 2, 20, given=False)) == uses
    given = ("yard.trim", 0, 5)
    assert places(editor, editor.references("court.trim", 2, 20)) == sorted([*uses, given])


def test_a_name_is_lit_up_in_its_own_document(editor: Editor) -> None:
    write, read = lsp.DocumentHighlightKind.Write, lsp.DocumentHighlightKind.Read
    lit = editor.highlight("court.trim", 3, 2)
    assert [(one.range.start.line, one.kind) for one in lit or ()] == [(3, write)]
    lit = editor.highlight("court.trim", 2, 20)
    assert [(one.range.start.line, one.kind) for one in lit or ()] == [(2, read), (4, read)]


@pytest.mark.parametrize(
    ("line", "start", "end", "text"),
    [(2, 6, 10, "Hall"), (3, 2, 3, "N"), (4, 2, 4, "É2"), (4, 62, 66, "base")],
)
def test_what_would_be_renamed_is_shown(
    editor: Editor, line: int, start: int, end: int, text: str
) -> None:
    shown = editor.before_rename("court.trim", line, end)
    assert shown is not None
    assert shown.placeholder == text
    assert shown.range == lsp.Range(lsp.Position(line, start), lsp.Position(line, end))


@pytest.mark.parametrize(("line", "character"), [(3, 6), (0, 1), (99, 0), (3, 500)])
def test_where_no_name_stands_there_is_no_answer(editor: Editor, line: int, character: int) -> None:
    at = ("court.trim", line, character)
    assert editor.references(*at) is None
    assert editor.highlight(*at) is None
    assert editor.before_rename(*at) is None
    assert editor.definition(*at) is None
    assert editor.rename(*at, "other") == {}
    assert editor.hover("court.trim", 99, 0) == ""


@pytest.mark.parametrize(
    ("wanted", "leads"),
    [
        ("yard.trim", "yard.trim"),
        ("./yard.trim", "yard.trim"),
        ("none.trim", None),
        ("../elsewhere.trim", None),
        ("\\0.trim", None),
        ("a" * 400 + ".trim", None),
    ],
)
def test_an_include_leads_to_a_file_of_the_job_that_is_there(
    editor: Editor, wanted: str, leads: str | None
) -> None:
    (editor.folder.parent / "elsewhere.trim").write_text(YARD, encoding="utf-8")
    editor.type("court.trim", JOB.replace("yard.trim", wanted))
    found = editor.definition("court.trim", 1, 12)
    assert places(editor, found) == ([] if leads is None else [(leads, 0, 0)])
    assert editor.type("court.trim", JOB) == []


def test_a_tag_that_only_the_rooms_name_gave_leads_there(editor: Editor) -> None:
    assert places(editor, editor.definition("court.site", 1, 5)) == [("court.trim", 2, 6)]


def test_the_log_is_read_with_its_job(editor: Editor) -> None:
    slip = LOG.replace("HA-N-base", "HA-W-base").replace(" from base-1 of 12 ft", "")
    assert [one.code for one in editor.open("court.site", slip)] == ["T702"]
    assert editor.type("court.site", LOG) == []
    labels = [one.label for one in editor.complete("court.site", 1, 7)]
    assert labels == ["HA-N-base", "HA-É2-base"]
    assert "111 5/8 in" in editor.hover("court.trim", 3, 3)
    changes = editor.rename("court.site", 1, 10, "skirt")
    assert "cut HA-N-skirt 111 5/8 in from skirt-1" in edited(
        LOG, changes[editor.uri("court.site")]
    )
    assert "trim skirt:" in edited(YARD, changes[editor.uri("yard.trim")])
    editor.shut("court.site")


def test_a_rename_waits_for_a_command_that_is_writing(editor: Editor) -> None:
    marked = LOG + "bought 2 base 16 ft at 24.10\n"

    def mark() -> None:
        editor.write("court.site", marked)
        held.close()

    held = ExitStack()
    held.enter_context(alone_in(editor.folder))
    late = Timer(0.7, mark)
    late.start()
    try:
        changes = editor.rename("court.trim", 2, 20, "skirt")
    finally:
        late.join()
        editor.write("court.site", LOG)
    assert "bought 2 skirt 16 ft" in edited(marked, changes[editor.uri("court.site")])


def test_a_rename_names_the_versions_that_it_is_for(tmp_path: Path) -> None:
    edit = lsp.WorkspaceEditClientCapabilities(document_changes=True)
    editor = Editor(tmp_path, workspace=lsp.WorkspaceClientCapabilities(workspace_edit=edit))
    try:
        editor.write("yard.trim", YARD)
        editor.open("court.trim", JOB)
        editor.type("court.trim", f"{JOB}\n")
        changes = editor.versioned_rename("court.trim", 2, 20, "skirt")
    finally:
        editor.close()
    assert changes == {editor.uri("court.trim"): 2, editor.uri("yard.trim"): None}


def test_a_log_that_was_never_saved_counts(editor: Editor) -> None:
    assert [one.code for one in editor.open("new.trim", YARD + JOB.split("\n", 2)[2])] == []
    assert [one.code for one in editor.open("new.site", "cut HA-X-base\n")] == ["T702"]
    editor.shut("new.site")
    editor.shut("new.trim")


def test_a_file_that_a_job_may_not_include_is_answered_by_itself(editor: Editor) -> None:
    deep = 'include "../yard.trim"\nroom "A", trim base\n'
    assert "T602" in {one.code for one in editor.open("below/deep.trim", deep)}
    editor.open("yard.trim", YARD)
    editor.shut("court.trim")
    (editor.folder / "court.trim").rename(editor.folder / "court.kept")
    try:
        editor.type("yard.trim", YARD + "\n")
        assert "12 ft at 17.40" in editor.hover("yard.trim", 0, 6)
        assert [one.name for one in editor.symbols("yard.trim")] == ["base", "stock base"]
        assert [one.label for one in editor.complete("yard.trim", 1, 6)] == ["base"]
    finally:
        (editor.folder / "court.kept").rename(editor.folder / "court.trim")
        editor.shut("below/deep.trim")
        editor.shut("yard.trim")
        assert editor.open("court.trim", JOB) == []


def test_files_beside_are_proposed_for_an_include(editor: Editor) -> None:
    editor.type("court.trim", JOB + 'include "')
    labels = [one.label for one in editor.complete("court.trim", JOB.count("\n"), 9)]
    assert labels == ["beside.trim", "yard.trim"]
    assert editor.complete("court.trim", 400, 0)
    editor.type("court.trim", JOB)
    # a document without a file has none beside it
    editor.open("untitled:Untitled-1", 'include "')
    assert editor.complete("untitled:Untitled-1", 0, 9) == []
    assert editor.definition("untitled:Untitled-1", 0, 9) is None
    editor.shut("untitled:Untitled-1")


def test_fixes_are_offered_at_their_own_place_and_file_only(editor: Editor) -> None:
    (finding,) = editor.type("court.trim", JOB.replace(", trim base\n", ", trim bsae\n"))
    assert editor.fixes("court.trim", finding)
    before = lsp.Range(lsp.Position(4, 0), lsp.Position(4, 3))
    behind = lsp.Range(lsp.Position(5, 0), lsp.Position(5, 0))
    assert not editor.fixes("court.trim", finding, before)
    assert not editor.fixes("court.trim", finding, behind)
    # the same place in another file of the job
    assert not editor.fixes("yard.trim", finding)
    editor.type("court.trim", JOB)


@pytest.mark.parametrize(
    "text",
    [
        "job  \"A\"\n\n\n\nroom 'A'",
        "trim base :1/2 in thick\n\n\n\n",
        "trim base :1/2 in thick",
        "trim base: 1/2 in thick\r\nstock  base: 8 ft\r\n",
        "\n\n",
        "",
    ],
)
def test_laying_out_changes_nothing_the_second_time(editor: Editor, text: str) -> None:
    editor.open("messy.trim", text)
    neat = edited(text.replace("\r\n", "\n"), editor.format("messy.trim") or ())
    editor.type("messy.trim", neat)
    assert not editor.format("messy.trim")
    editor.shut("messy.trim")


def test_what_is_not_open_is_not_laid_out(editor: Editor) -> None:
    assert editor.format("yard.trim") is None
