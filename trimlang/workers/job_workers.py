"""Several processes that work through a list of jobs, and end together.

Each is a Python of its own that is handed one job after another through a pipe.  Nothing
else is shared, so a job that brings its process down takes no other with it, and a process
whose master is gone finds its pipe closed and goes too.
"""

from __future__ import annotations

import signal
from collections import deque
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from multiprocessing import get_context
from multiprocessing.connection import Connection, wait
from multiprocessing.context import SpawnProcess
from time import monotonic
from typing import Final

from trimlang.record import record
from trimlang.workers.worker import Do, HandedJob, JobAnswer, work

GRACE: Final = 0.4
"""Seconds that a process gets to put its things away before it is ended by force."""


@record
class _Worker:
    process: SpawnProcess
    pipe: Connection


class WorkerPool:
    """Processes that do jobs: ``with WorkerPool(4, do, 3) as pool: pool.do(jobs)``."""

    def __init__(self, processes: int, do: Do, our_fault: int) -> None:
        self._do = do
        self._our_fault = our_fault
        self._most = max(processes, 1)
        self._idle: list[_Worker] = []
        self._busy: dict[Connection, tuple[_Worker, int]] = {}

    def __enter__(self) -> WorkerPool:
        return self

    def __exit__(self, *_: object) -> None:
        self.end()

    def do(self, jobs: Sequence[HandedJob]) -> Iterator[tuple[int, JobAnswer | None]]:
        """Yield each job's place and its answer, as they come in.

        None stands for the answer where the process that did the job died of it.
        """
        left = deque(enumerate(jobs))
        while left or self._busy:
            while left and len(self._busy) < self._most:
                self._hand_out(*left.popleft())
            for ready in wait(list(self._busy)):
                worker, place = self._busy[ready]  # type: ignore[index]
                answer: JobAnswer | None = None
                with suppress(EOFError, OSError):
                    answer = worker.pipe.recv()
                del self._busy[worker.pipe]
                if answer is None:
                    worker.process.kill()
                    worker.process.join()
                else:
                    self._idle.append(worker)
                yield place, answer

    def end(self) -> None:
        """End every process, by force where it does not go of itself."""
        workers = [*self._idle, *(worker for worker, _ in self._busy.values())]
        for worker in workers:
            worker.pipe.close()
            worker.process.terminate()
        until = monotonic() + GRACE
        for worker in workers:
            worker.process.join(max(until - monotonic(), 0.0))
            worker.process.kill()
            worker.process.join()
        self._idle, self._busy = [], {}

    def at_work(self) -> dict[int, int]:
        """Return the place of the job that each process is at, by the process's id."""
        return {worker.process.pid or 0: place for worker, place in self._busy.values()}

    def _hand_out(self, place: int, job: HandedJob) -> None:
        worker = self._idle.pop() if self._idle else _started(self._do, self._our_fault)
        self._busy[worker.pipe] = (worker, place)
        # a process that died meanwhile is found out when its answer is waited for
        with suppress(OSError):
            worker.pipe.send(job)


def _started(do: Do, our_fault: int) -> _Worker:
    # spawned, not forked: nothing of this process's threads and locks comes along
    context = get_context("spawn")
    ours, theirs = context.Pipe()
    process = context.Process(target=work, args=(theirs, do, our_fault), daemon=True)
    with _ctrl_c_held():
        process.start()
    theirs.close()
    return _Worker(process, ours)


@contextmanager
def _ctrl_c_held() -> Iterator[None]:
    """Hold Ctrl-C back: a process started meanwhile never hears it, as it is ours to answer."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)
