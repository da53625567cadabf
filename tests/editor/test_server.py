"""The language server, driven over standard input and output as an editor does."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from lsprotocol import types as lsp

from tests.editor.client import Editor, edited
from tests.every import every
from tests.jobs import SHOE_STOCK
from trimlang.diagnostics.code_pages import PAGES
from trimlang.diagnostics.source import Source
from trimlang.extras import EDITOR
from trimlang.language.tidy_file import tidy

YARD = f"""\
trim base: 9/16 in thick, 5 1/4 in tall, mdf, primed
trim shoe: 1/2 in thick, 3/4 in tall, pine, in front of base
stock base: 12 ft at 17.40, 16 ft at 24.10
{SHOE_STOCK}
"""
JOB = """\
job "Birch Lane 4"
include "yard.trim"
saw: kerf 3/32 in, reads to 1/2 deg
room "Front room" as FR, trim base, shoe, open walk
  N: 9 ft 3 5/8 in, left=in-corner, right=in-corner
  E: 3 ft 11 in, left=in-corner, right=out-corner(91 deg), shoe right=return   # steps back
  F: 14 1/8 in, left=out-corner, right=butt, note "😀 behind it", trim base
  opening 32 in, "door", entrance
"""


@pytest.fixture(scope="module")
def editor(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Editor]:
    editor = Editor(tmp_path_factory.mktemp("job"))
    editor.write("yard.trim", YARD)
    assert editor.open("job.trim", JOB) == []
    yield editor
    editor.close()


def _told(findings: list[lsp.Diagnostic]) -> list[tuple[str, int, int, int]]:
    return [
        (str(one.code), one.range.start.line, one.range.start.character, one.range.end.character)
        for one in findings
    ]


def _after(editor: Editor, name: str, text: str, title: str) -> str:
    """Return the text after the first quick fix whose title begins so."""
    for finding in editor.type(name, text):
        for fix in editor.fixes(name, finding):
            if fix.title.startswith(title):
                return edited(text, fix.edit.changes[editor.uri(name)])
    raise AssertionError(f"no fix {title}")


def test_mistakes_are_marked_in_utf_16_columns_and_mended(editor: Editor) -> None:
    text = JOB.replace('😀 behind it", trim base', '😀 behind it", trim bsae')
    (finding,) = editor.type("job.trim", text)
    assert _told([finding]) == [("T210", 6, 71, 75)]
    assert finding.severity is lsp.DiagnosticSeverity.Error
    assert finding.code_description is not None
    assert finding.code_description.href.endswith("diagnostics.md#t210-unknown-trim")
    (fix,) = editor.fixes("job.trim", finding)
    assert fix.is_preferred
    assert edited(text, fix.edit.changes[editor.uri("job.trim")]) == JOB
    assert editor.type("job.trim", JOB) == []


@every(
    "before, after, title",
    [
        ("left=in-corner, right=in-corner\n", "left=incorner, right=in-corner\n", "Write “in-"),
        ("9 ft 3 5/8 in", "9 ft 3,5 in", "Write “3.5”"),
        ("right=in-corner\n", "right=in-croner\n", "Write “in-corner”"),
        ("left=in-corner, right=in-corner\n", "right=in-corner\n", "Add left=in-corner"),
        ('behind it"', "behind it", "Close the quotes"),
        ("room", "rom", "Write “room”"),
        ("14 1/8 in, left", "14 1/8 in left", "Put a comma"),
        ("14 1/8 in", "14 1/8 inc", "Write “inch”"),
    ],
)
def test_a_slip_has_a_quick_fix(editor: Editor, before: str, after: str, title: str) -> None:
    mended = _after(editor, "job.trim", JOB.replace(before, after, 1), title)
    assert "error" not in {one.severity for one in editor.type("job.trim", mended)}
    assert editor.type("job.trim", JOB) == []


def test_the_pointer_on_a_run_tells_each_piece(editor: Editor) -> None:
    told = editor.hover("job.trim", 5, 6)
    # the sticks are planned beside; who asks again a moment later is told them
    while "stick: still being planned" in told:
        told = editor.hover("job.trim", 5, 6)
    assert "**FR-E-base**: **47 9/16 in** (3 ft 11 9/16 in)" in told
    assert "left: inside corner, saw at **44 1/2° right**" in told
    assert "right: outside corner, saw at **44 1/2° right**" in told
    assert "rounded up: " in told
    assert "a short one cannot be mended" in told
    assert "stick base-" in told
    assert "FR-E-shoe" in told


def test_the_pointer_on_a_trim_an_end_and_a_word(editor: Editor) -> None:
    trim = editor.hover("job.trim", 3, 30)
    assert "9/16 in thick, 5 1/4 in tall, mdf, primed" in trim
    assert "12 ft at 17.40" in trim
    end = editor.hover("job.trim", 5, 42)
    assert end.startswith("**out-corner**: The outside corner")
    assert "FR-E-base: outside corner" in end
    assert editor.hover("job.trim", 2, 6) == (
        "**saw: kerf**: what each cut turns to dust. Where nothing is said: 1/8 in"
        " (a full-kerf 12 in blade; common practice, no source)."
    )
    assert editor.hover("job.trim", 6, 56) == ""


@every(
    "line, offered, not_offered",
    [
        ("", "room", "left="),
        ("  Q: 4 in, left=", "butt", "room"),
        ("  Q: 4 in, left=o", "open", "out-corner"),
        ("  Q: 4 in, left=butt, ", "right=", "base"),
        ("  Q: 4 in, trim ", "shoe", "note"),
        ("  Q: 4 in, trim base, ", "shoe", "butt"),
        ("  Q: 4 in, left=butt, no ", "shoe", "note"),
        ("saw: kerf 1/8 in, ", "reaches", "base"),
        ("round out-corner ", "nearest", "kerf"),
        ("stock ", "base", "room"),
        ('room "Hall", trim ', "base", "shoe,"),
        ('include "', "yard.trim", "job.trim"),
        ("  Q: 4 in # l", None, "left="),
        ('  Q: 4 in, note "', None, "left="),
    ],
)
def test_what_can_follow_is_proposed(
    editor: Editor, line: str, offered: str | None, not_offered: str
) -> None:
    editor.type("job.trim", JOB + line)
    labels = [item.label for item in editor.complete("job.trim", JOB.count("\n"), len(line))]
    assert (offered in labels) if offered else not labels
    assert not_offered not in labels
    editor.type("job.trim", JOB)


def test_names_lead_to_where_they_are_given(editor: Editor) -> None:
    yard = editor.uri("yard.trim")
    (trim,) = editor.definition("job.trim", 3, 31)
    assert (trim.uri, trim.range.start) == (yard, lsp.Position(0, 5))
    (file,) = editor.definition("job.trim", 1, 12)
    assert (file.uri, file.range.start) == (yard, lsp.Position(0, 0))
    places = [
        (one.uri == yard, one.range.start.line) for one in editor.references("job.trim", 3, 31)
    ]
    assert sorted(places) == [(False, 3), (False, 6), (True, 0), (True, 1), (True, 2)]


def test_a_rename_goes_through_all_files(editor: Editor) -> None:
    changes = editor.rename("job.trim", 3, 31, "skirting")
    job = edited(JOB, changes[editor.uri("job.trim")])
    yard = edited(YARD, changes[editor.uri("yard.trim")])
    assert 'note "😀 behind it", trim skirting' in job
    assert "in front of skirting" in yard
    editor.open("yard.trim", yard)
    assert editor.type("job.trim", job) == []
    # what is not saved counts, until it is closed
    editor.shut("yard.trim")
    editor.wait_for("job.trim", ["T210", "T210"])
    assert editor.type("job.trim", JOB) == []


@pytest.mark.parametrize(
    ("line", "character", "new", "why"),
    [(3, 31, "shoe", "already stands"), (4, 2, "E", "has a run E"), (3, 31, "a b", "no name for")],
)
def test_a_rename_that_would_do_harm_is_refused(
    editor: Editor, line: int, character: int, new: str, why: str
) -> None:
    with pytest.raises(Exception, match=why):
        editor.rename("job.trim", line, character, new)


def test_rooms_tags_and_runs_are_renamed(editor: Editor) -> None:
    here = editor.uri("job.trim")
    for line, character, new, wanted in (
        (3, 8, "Parlor", 'room "Parlor" as FR'),
        (3, 22, "PA", 'room "Front room" as PA'),
        (4, 2, "North", "  North: 9 ft"),
    ):
        assert wanted in edited(JOB, editor.rename("job.trim", line, character, new)[here])


def test_the_outline_has_rooms_and_their_walls(editor: Editor) -> None:
    outline = [
        (one.name, one.detail, [below.name for below in one.children or ()])
        for one in editor.symbols("job.trim")
    ]
    assert outline == [
        ("Birch Lane 4", "job", []),
        ("saw", "kerf 3/32 in, reads to 1/2 deg", []),
        ("Front room", "FR", ["N", "E", "F", "door"]),
    ]


@pytest.mark.parametrize("end", ["\n", ""])
def test_a_document_is_laid_out_as_tidy_does(editor: Editor, end: str) -> None:
    messy = JOB.rstrip().replace("  N:", "N :").replace(", left=", " ,left = ") + end
    editor.type("job.trim", messy)
    edits = editor.format("job.trim")
    assert edits
    neat = edited(messy, edits)
    assert neat.rstrip("\n") == tidy(Source("job.trim", messy)).text.rstrip("\n")
    assert neat.endswith("\n") is bool(end)
    assert editor.type("job.trim", neat) == []
    assert not editor.format("job.trim")
    editor.type("job.trim", JOB)


def test_a_mistake_in_an_include_is_told_there(editor: Editor) -> None:
    wrong = YARD.replace("at 17.40", "at -17.40")
    assert _told(editor.open("yard.trim", wrong)) == [("T205", 2, 21, 27)]
    editor.wait_for("job.trim", [])
    # the buffer is mended, the disk never was wrong
    assert editor.type("yard.trim", YARD) == []
    editor.shut("yard.trim")


def test_broken_text_never_stops_it(editor: Editor) -> None:
    for text in ("\x00\ufeff((((", '"' * 500, "N:" * 900, "\u2028\x0c\r\r\n=,", "room\n" * 300, ""):
        assert editor.type("job.trim", text)
        editor.hover("job.trim", 0, 1)
        editor.complete("job.trim", 0, 0)
        editor.symbols("job.trim")
    assert editor.type("job.trim", JOB) == []


def test_a_document_without_a_file_is_read_too(editor: Editor) -> None:
    found = editor.open("untitled:Untitled-1", 'trim base: 1/2 in thick\nroom "A", trim base\n')
    assert {str(one.code) for one in found} == {"T214", "T224"}
    assert "trim **base**" in editor.hover("untitled:Untitled-1", 1, 16)
    editor.shut("untitled:Untitled-1")


@pytest.mark.parametrize(
    ("encodings", "start"),
    [
        (["utf-8"], 73),
        # an editor that names none counts in UTF-16, as the tests above do
        pytest.param(["utf-32", "utf-16"], 70, marks=pytest.mark.nightly),
        pytest.param(None, 71, marks=pytest.mark.nightly),
    ],
)
def test_columns_are_counted_as_agreed(
    tmp_path: Path, encodings: list[str] | None, start: int
) -> None:
    editor = Editor(tmp_path, encodings)
    try:
        text = YARD + JOB.replace('include "yard.trim"\n', "").replace(
            '😀 behind it", trim base', '😀 behind it", trim bsae'
        )
        (finding,) = editor.open("job.trim", text)
        assert finding.range.start.character == start
        assert finding.range.end.character == start + 4
        assert "“bsae”" in finding.message
        assert editor.server.capabilities.position_encoding == (encodings or ["utf-16"])[0]
    finally:
        editor.close()


def test_without_pygls_there_is_one_plain_line(tmp_path: Path) -> None:
    (tmp_path / "pygls.py").write_text("raise ModuleNotFoundError(name='pygls')\n")
    program = "import sys; sys.path.insert(0, sys.argv.pop(1)); from trimlang.cli import main; "
    done = subprocess.run(
        [
            sys.executable,
            "-c",
            program + "sys.exit(main(sys.argv[1:]))",
            tmp_path,
            "language-server",
        ],
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 2
    assert done.stderr == f"trimlang: {EDITOR.remedy()}\n"


def test_every_code_can_be_told(editor: Editor) -> None:
    for code in ("T104", "T203", "T301", "T310", "T401"):
        assert code in {str(one.code) for one in editor.type("job.trim", PAGES[code].example)}
    assert editor.type("job.trim", JOB) == []
