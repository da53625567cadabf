"""The server on the wire: an answer to each request, an orderly end, and no growth."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path
from time import sleep
from typing import Any

import pytest

from tests.every import every
from tests.jobs import walls

JOB = walls("  N: 40 in, left=butt, right=butt")


class Wire:
    """A server and what goes over its standard input and output, unread by any library."""

    def __init__(self, folder: Path) -> None:
        self.process = subprocess.Popen(
            [sys.executable, "-m", "trimlang", "language-server"],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
        )
        self.uri = (folder / "job.trim").as_uri()
        self._last = 0
        self.too_early = self.ask("textDocument/documentSymbol", self.about())
        self.ask("initialize", {"capabilities": {}, "rootUri": folder.as_uri(), "processId": None})
        self.tell("initialized", {})
        document = {"uri": self.uri, "languageId": "trim", "version": 1, "text": JOB}
        self.tell("textDocument/didOpen", {"textDocument": document})

    def send(self, **message: Any) -> None:
        data = json.dumps({"jsonrpc": "2.0", **message}).encode()
        assert self.process.stdin is not None
        self.process.stdin.write(b"Content-Length: %d\r\n\r\n%b" % (len(data), data))
        self.process.stdin.flush()

    def tell(self, method: str, params: Any = None) -> None:
        self.send(method=method, params=params)

    def ask(self, method: str, params: Any = None, **more: Any) -> dict[str, Any]:
        self._last += 1
        self.send(id=self._last, method=method, params=params, **more)
        while True:
            answer = self._read()
            if answer.get("id") == self._last:
                return answer

    def _read(self) -> dict[str, Any]:
        assert self.process.stdout is not None
        size = 0
        while line := self.process.stdout.readline().strip():
            if line.lower().startswith(b"content-length:"):
                size = int(line.split(b":")[1])
        assert size, "the server has gone"
        read: dict[str, Any] = json.loads(self.process.stdout.read(size))
        return read

    def type(self, text: str, version: int) -> None:
        document = {"uri": self.uri, "version": version}
        params = {"textDocument": document, "contentChanges": [{"text": text}]}
        self.tell("textDocument/didChange", params)

    def about(self, **more: Any) -> dict[str, Any]:
        return {"textDocument": {"uri": self.uri}, **more}

    def end(self) -> tuple[int, bytes]:
        assert self.process.stdin is not None
        assert self.process.stderr is not None
        told = self.process.stderr.read()
        return self.process.wait(20), told

    def kill(self) -> None:
        self.process.kill()
        for stream in (self.process.stdin, self.process.stdout, self.process.stderr):
            assert stream is not None
            with suppress(BrokenPipeError):
                stream.close()
        self.process.wait(20)


@pytest.fixture
def wire(tmp_path: Path) -> Iterator[Wire]:
    wire = Wire(tmp_path)
    yield wire
    wire.kill()


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Wire]:
    """Give a server that several questions are put to."""
    wire = Wire(tmp_path_factory.mktemp("shared"))
    yield wire
    wire.kill()


@pytest.mark.parametrize("moment", [0.2, pytest.param(0.0, marks=pytest.mark.nightly)])
def test_an_orderly_end_is_no_failure(wire: Wire, moment: float) -> None:
    # what is found is told a moment after the last key stroke, which may be after the farewell
    wire.type(JOB + "# more\n", 2)
    assert "error" not in wire.ask("shutdown")
    for method in ("textDocument/hover", "no/such", "initialize"):
        assert wire.ask(method, {})["error"]["code"] in (-32600, -32602)
    sleep(moment)
    wire.tell("exit")
    code, told = wire.end()
    assert (code, told) == (0, b"")


def test_a_request_before_the_first_is_answered(shared: Wire) -> None:
    assert shared.too_early["error"]["code"] == -32002


def test_an_exit_without_a_shutdown_is_one_as_the_protocol_says(wire: Wire) -> None:
    wire.tell("exit")
    assert wire.end()[0] == 1


def test_an_editor_that_is_gone_ends_the_server(wire: Wire) -> None:
    assert wire.process.stdin is not None
    wire.process.stdin.close()
    assert wire.end()[0] == 0


@every(
    "position",
    [None, {}, {"line": 4 * 10**11, "character": 1}, {"line": -1, "character": -3}, "here"],
)
@every("question", ["hover", "completion", "rename", "definition"])
def test_what_cannot_be_read_is_answered(shared: Wire, question: str, position: object) -> None:
    answer = shared.ask(f"textDocument/{question}", shared.about(position=position))
    assert answer["error"]["code"] == -32602
    assert "error" not in shared.ask("textDocument/documentSymbol", shared.about())


@pytest.mark.parametrize(
    "method",
    ["initialized", "exit", "textDocument/didOpen", "textDocument/didSave", "$/cancelRequest"],
)
def test_a_notification_sent_as_a_request_is_answered(shared: Wire, method: str) -> None:
    params = {"textDocument": {"uri": shared.uri, "languageId": "trim", "version": 9, "text": ""}}
    sent = {"$/cancelRequest": {"id": 1}, "initialized": {}, "exit": None}.get(method, params)
    assert shared.ask(method, sent)["error"]["code"] == -32600
    assert "error" not in shared.ask("textDocument/documentSymbol", shared.about())


@pytest.mark.parametrize("version", ["1.0", None])
def test_a_request_of_another_protocol_is_answered(shared: Wire, version: str | None) -> None:
    assert shared.ask("shutdown", jsonrpc=version)["error"]["code"] == -32600


@pytest.mark.parametrize("name", ["a%00b.trim", "%FF%FE.trim", "x" * 5000 + ".trim", ""])
def test_a_name_that_no_disk_has_is_answered(shared: Wire, name: str) -> None:
    uri = shared.uri.replace("job.trim", name)
    document = {"uri": uri, "languageId": "trim", "version": 1, "text": JOB}
    shared.tell("textDocument/didOpen", {"textDocument": document})
    about = {"textDocument": {"uri": uri}, "position": {"line": 0, "character": 0}}
    assert "error" not in shared.ask("textDocument/hover", about)


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="the system has no pipes with names")
def test_a_pipe_among_the_files_does_not_hang_the_editor(shared: Wire) -> None:
    folder = Path(shared.uri.removeprefix("file://")).parent
    for name in ("x.trim", "job.site", "beside.trim"):
        os.mkfifo(folder / name)
    shared.type(f'include "beside.trim"\n{JOB}', 2)
    assert "error" not in shared.ask("textDocument/documentSymbol", shared.about())


@pytest.mark.nightly
@pytest.mark.skipif(not Path("/proc/self/status").exists(), reason="memory is read from /proc")
def test_typing_does_not_fill_the_memory(wire: Wire) -> None:
    def kept() -> int:
        status = Path(f"/proc/{wire.process.pid}/status").read_text(encoding="ascii")
        return int(status.partition("VmRSS:")[2].split()[0])

    def edit(times: range) -> None:
        for number in times:
            wire.type(f"{JOB}# {number}\n", number)
            wire.ask("textDocument/documentSymbol", wire.about())

    edit(range(2, 1_000))
    before = kept()
    edit(range(1_000, 21_000))
    # what pygls keeps of each edit would be forty megabytes
    assert kept() - before < 2_000
