"""Gives commands in a folder as somebody at a terminal would, and says what must hold of each."""

from __future__ import annotations

import io
import json
import os
import pickle
import re
import sys
from collections import Counter
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path
from time import process_time
from typing import TYPE_CHECKING, Final

from tests.trust.bad_disk import snapshot
from tests.trust.sessions import RENAME, Command, Session
from trimlang.cli import main
from trimlang.cli.compare import DIFFERENT
from trimlang.output.made_by import MARK, is_ours, listed_in

if TYPE_CHECKING:
    from trimlang.editor.open_job import JobReading

MOST_SECONDS: Final = {"check": 2.0, "html": 6.0, "pdf": 20.0}
"""Of CPU, by a word of the command; 2 s where none of these stands in it."""

_ONLY_LOOK: Final = ("check", "explain", "schema", "completion")


@dataclass(frozen=True)
class Done:
    """How a command went."""

    code: int
    out: str
    err: str
    seconds: float


@dataclass(slots=True)
class Tally:
    """How many commands were given, by name and by how they ended."""

    sessions: int = 0
    commands: Counter[str] = field(default_factory=Counter)
    codes: Counter[int] = field(default_factory=Counter)
    slowest: float = 0.0

    def __str__(self) -> str:
        ended = ", ".join(f"{count:,} with {code}" for code, count in sorted(self.codes.items()))
        names = ", ".join(f"{count:,} {name}" for name, count in sorted(self.commands.items()))
        return (
            f"{self.sessions:,} sessions, {self.commands.total():,} commands ({names});"
            f" ended {ended}; slowest {self.slowest:.2f} s of CPU"
        )

    def add(self, other: Tally) -> None:
        """Take in what another counted."""
        self.sessions += other.sessions
        self.commands += other.commands
        self.codes += other.codes
        self.slowest = max(self.slowest, other.slowest)


def hold(session: Session, folder: Path, tally: Tally) -> None:
    """Give a session's commands in an empty folder and hold each against the promises.

    Raises:
        AssertionError: a promise is broken.
    """
    tally.sessions += 1
    for name, text in session.files.items():
        (folder / name).write_bytes(text.encode("utf-8", "surrogateescape"))
    with _standing_in(folder):
        for step in session.steps:
            before = snapshot(folder)
            every = [given(step[0])] if len(step) == 1 else at_once(step)
            for command, done in zip(step, every, strict=True):
                tally.commands[command[0]] += 1
                tally.codes[done.code] += 1
                tally.slowest = max(tally.slowest, done.seconds)
                _ended_well(command, done)
            after = snapshot(folder)
            _nothing_half(folder, after)
            if len(step) == 1:
                _as_promised(step[0], every[0], before, after)
            else:
                _all_there(step, every, before, after)


@contextmanager
def _standing_in(folder: Path) -> Iterator[None]:
    before = Path.cwd()
    os.chdir(folder)
    try:
        yield
    finally:
        os.chdir(before)


def given(command: Command) -> Done:
    """Give one command in this process."""
    streams = [io.TextIOWrapper(io.BytesIO(), "utf-8", write_through=True) for _ in "oe"]
    before = sys.stdout, sys.stderr
    began = process_time()
    sys.stdout, sys.stderr = streams
    try:
        code = _renamed(command) if command[0] == RENAME else main(command)
    except SystemExit as error:  # argparse has said what is wrong with the words
        code = int(error.code or 0)
    finally:
        sys.stdout, sys.stderr = before
    out, err = (stream.buffer.getvalue().decode("utf-8") for stream in streams)  # type: ignore[attr-defined]
    return Done(code, out, err, process_time() - began)


def at_once(commands: tuple[Command, ...]) -> list[Done]:
    """Give several commands, each in a process of its own."""
    pipes = []
    for command in commands:
        reader, writer = os.pipe()
        child = os.fork()
        if child == 0:
            try:
                done = given(command)
            except BaseException as error:  # noqa: BLE001 - told to the parent, whatever it is
                done = Done(3, "", f"defect: {error!r}", 0.0)
            with os.fdopen(writer, "wb") as stream:
                pickle.dump(done, stream)
            os._exit(0)
        os.close(writer)
        pipes.append((child, reader))
    every = []
    for child, reader in pipes:
        with os.fdopen(reader, "rb") as stream:
            every.append(pickle.load(stream))  # noqa: S301 - from our own process
        os.waitpid(child, 0)
    return every


def _renamed(command: Command) -> int:
    """Rename one of a job's names as the editor does, and hold what it would write."""
    from trimlang.editor.open_job import read_job
    from trimlang.incremental.cached_steps import CachedSteps

    _, which, new = command
    reading = read_job(Path.cwd() / "job.trim", "job.trim", {}, CachedSteps())
    refused = renamed(reading, int(which), new)
    if refused:
        sys.stderr.write(f"{refused}\n")
    return int(refused is not None)


def renamed(reading: JobReading, which: int, new: str) -> str | None:
    """Rename one of a job's names and hold its edits; return why it was refused, if it was.

    Raises:
        AssertionError: two edits overlap, or a line comes or goes.
    """
    from trimlang.editor.renaming import CannotRenameError, edited, rename

    mentions = reading.names.mentions
    if not mentions:
        return "it has no name"
    try:
        edits = rename(reading, mentions[which % len(mentions)], new)
    except CannotRenameError as error:
        return str(error)
    for name, source in reading.result.sources.items():
        of_file = sorted((one for one in edits if one.span.file == name), key=lambda one: one.span)
        for one, other in pairwise(of_file):
            apart = (one.span.line, one.span.end) <= (other.span.line, other.span.column)
            assert apart, (one, other)
        assert edited(source.text, of_file).count("\n") == source.text.count("\n")
    return None


def _ended_well(command: Command, done: Done) -> None:
    codes = (0, 1, 2, DIFFERENT) if command[0] == "compare" else (0, 1, 2)
    assert done.code in codes, (command, done)
    assert "Traceback" not in done.err + done.out, done.err
    assert "defect in trimlang" not in done.err, done.err
    assert done.err.replace("\n", "").isprintable(), done.err
    most = next((MOST_SECONDS[word] for word in command if word in MOST_SECONDS), 2.0)
    assert done.seconds < most, f"{done.seconds:.1f} s of CPU for {command}"


def _nothing_half(folder: Path, after: dict[str, bytes]) -> None:
    """No half-written file is left, and a folder of sheets is a whole set."""
    assert not [name for name in after if ".trimlang-" in name], sorted(after)
    for mark in folder.rglob(MARK):
        for name, said in listed_in(mark).items():
            assert is_ours(mark.parent / name, said), name
            if name.endswith(".json"):
                json.loads((mark.parent / name).read_bytes())


def _as_promised(
    command: Command, done: Done, before: dict[str, bytes], after: dict[str, bytes]
) -> None:
    name = command[0]
    if name == "tidy" and not {"--check", "--print", "--diff"} & set(command):
        if done.code == 0:
            assert given(("tidy", "--check", *command[1:])).code == 0
            _means_the_same(before["job.trim"], after["job.trim"])
        return
    if done.code not in (0, DIFFERENT) or name in _ONLY_LOOK:
        assert after == before, (command, done, sorted(set(after) ^ set(before)))
        return
    if name == "mark" and "--pin" not in command:
        more = -1 if "--undo" in command else sum(bool(line.strip()) for line in _lines(command))
        had, has = _said(before, "job.site"), _said(after, "job.site")
        assert "--undo" in command or len(has) >= len(had)
        comments = sum(line.lstrip().startswith("#") for line in _lines(command))
        assert len(has) - len(had) == more - comments, (had, has)
        if "--undo" not in command:
            assert given(("check", "job.trim")).code == 0, "what mark has let in is an error"
    elif name == "convert" and command[2:3] == ("job.csv",):
        _comes_back(before["job.trim"])
    elif name == "start":
        assert given(("check", next(iter(set(after) - set(before))))).code == 0
    elif name == "compare" and command[1] == command[2] and "--cut" not in command:
        assert given((*command, "--exit-code")).code == 0


def _comes_back(job: bytes) -> None:
    """A job that went into a table comes out of it with the same meaning."""
    from trimlang.compiler import check_job
    from trimlang.language.meaning import same_meaning

    if given(("check", "job.trim")).code == 0:
        was = check_job(job.decode("utf-8-sig"), name="job.trim")
        back = given(("convert", "job.csv"))
        assert back.code == 0, back
        assert same_meaning(was.job, check_job(back.out, name="job.trim").job)


def _lines(command: Command) -> list[str]:
    behind = command[command.index("job.trim") + 1 :]
    return [line for line in behind if not line.startswith("--")]


def _said(files: dict[str, bytes], name: str) -> list[str]:
    """The lines of a log that say something."""
    text = files.get(name, b"").decode("utf-8-sig")
    lines = re.split(r"\r\n|\r|\n", text)
    return [line for line in lines if line.partition("#")[0].strip()]


def _means_the_same(before: bytes, after: bytes) -> None:
    from trimlang.compiler import check_job
    from trimlang.language.meaning import same_meaning

    one, other = (check_job(data.decode("utf-8-sig"), name="job.trim") for data in (before, after))
    assert Counter(each.code for each in one.diagnostics) == Counter(
        each.code for each in other.diagnostics
    )
    if one.ok:
        assert same_meaning(one.job, other.job)


def _all_there(
    step: tuple[Command, ...], every: list[Done], before: dict[str, bytes], after: dict[str, bytes]
) -> None:
    """Of several commands at once none has undone another."""
    more = 0
    for command, done in zip(step, every, strict=True):
        if done.code == 0 and command[0] == "mark":
            said = [one for one in _lines(command) if one.partition("#")[0].strip()]
            more += -1 if "--undo" in command else len(said)
    assert len(_said(after, "job.site")) - len(_said(before, "job.site")) == more, (step, every)
    # tidy lays out the lines that it can read, also where it ends with 1
    if not any(command[0] == "tidy" for command in step):
        assert after["job.trim"] == before["job.trim"]
