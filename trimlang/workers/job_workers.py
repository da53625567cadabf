"""Several processes that work through a list of jobs, and end together.

Each is a Python of its own that is handed one job after another on its standard
input and answers on its standard output, both as JSON lines.  Nothing else is
shared, so a job that brings its process down takes no other with it, and a
process whose master is gone reads the end of its input and goes too.
"""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import suppress
from pathlib import Path
from queue import Empty, Queue
from threading import Lock, Thread
from time import monotonic
from typing import Any, Final

GRACE: Final = 0.4
"""Seconds that a process gets to put its things away before it is ended by force."""

_ROOT: Final = str(Path(__file__).resolve().parents[2])
# -P and the root: the same trimlang, whatever lies in the folder that we were called from
_BEGIN: Final = (
    f"import sys; sys.path.append({_ROOT!r}); from trimlang.workers.worker import work; work()"
)

Task = dict[str, Any]
Answer = dict[str, Any]


class Crew:
    """A crew that does tasks; used as ``with Crew(4) as crew: for n, answer in crew.do(tasks)``."""

    def __init__(self, hands: int) -> None:
        self._hands = max(hands, 1)
        self._running: dict[int, tuple[subprocess.Popen[str], int]] = {}
        self._ended = False
        self._starting = Lock()

    def __enter__(self) -> Crew:
        return self

    def __exit__(self, *_: object) -> None:
        self.end()

    def do(self, tasks: Sequence[Task]) -> Iterator[tuple[int, Answer | None]]:
        """Yield each task's place and its answer, as they come in.

        None stands for the answer where the process that did the task died of it.
        """
        left: Queue[int] = Queue()
        done: Queue[tuple[int, Answer | None]] = Queue()
        for place in range(len(tasks)):
            left.put(place)
        threads = [
            Thread(target=self._work, args=(hand, tasks, left, done.put), daemon=True)
            for hand in range(min(self._hands, len(tasks)))
        ]
        for thread in threads:
            thread.start()
        for _ in tasks:
            yield done.get()

    def end(self) -> None:
        """End every process, by force where it does not go of itself."""
        with self._starting:
            self._ended = True
            running = list(self._running.values())
        for process, _ in running:
            with suppress(OSError):
                process.terminate()
        until = monotonic() + GRACE
        for process, _ in running:
            try:
                process.wait(max(until - monotonic(), 0.0))
            except subprocess.TimeoutExpired:
                process.kill()
                process.wait()

    def pids(self) -> dict[int, int]:
        """Return the task that each process is at, by the process's id."""
        return {process.pid: place for process, place in self._running.values() if place >= 0}

    def _work(
        self,
        hand: int,
        tasks: Sequence[Task],
        left: Queue[int],
        done: Callable[[tuple[int, Answer | None]], None],
    ) -> None:
        process: subprocess.Popen[str] | None = None
        while True:
            try:
                place = left.get_nowait()
            except Empty:
                break
            with self._starting:
                if self._ended:
                    return
                if process is None:
                    process = _started()
                self._running[hand] = (process, place)
            answer = _asked(process, tasks[place])
            if self._ended:
                return
            self._running[hand] = (process, -1)
            if answer is None:
                process.kill()
                process.wait()
                process = None
            done((place, answer))
        if process is not None and process.stdin is not None:
            with suppress(OSError):
                process.stdin.close()
            process.wait()


def _started() -> subprocess.Popen[str]:
    return subprocess.Popen(  # noqa: S603 - this Python, with our own words
        [sys.executable, "-P", "-c", _BEGIN],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        encoding="utf-8",
        errors="surrogateescape",
    )


def _asked(process: subprocess.Popen[str], task: Task) -> Answer | None:
    assert process.stdin is not None  # noqa: S101 - it was made with pipes
    assert process.stdout is not None  # noqa: S101
    try:
        process.stdin.write(json.dumps(task) + "\n")
        process.stdin.flush()
        line = process.stdout.readline()
        answer: Answer = json.loads(line)
    except (OSError, ValueError):
        return None
    return answer
