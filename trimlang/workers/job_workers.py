"""Several processes that work through a list of jobs and end together.

Each is a Python of its own that gets one job after another through a pipe.  Nothing else is
shared, so a job that brings its process down takes no other job with it, and a worker whose
parent is gone finds its pipe closed and ends too.
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
from typing import Any, Final

from trimlang.record import record
from trimlang.workers.worker import Do, JobAnswer, work

GRACE: Final = 0.4
"""Seconds that a process gets to clean up before it is killed."""


@record
class _Worker:
    process: SpawnProcess
    pipe: Connection


class WorkerPool:
    """Processes that do jobs: ``with WorkerPool(4, do, 3) as pool: pool.do(jobs)``.

    ``do`` does one job.  ``our_fault`` is the exit code for a job that ``do`` failed at in a way
    that it does not know itself.
    """

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

    def do(self, jobs: Sequence[Any]) -> Iterator[tuple[int, JobAnswer | None]]:
        """Yield each job's place in the list and its answer, in the order in which they finish.

        The answer is None where the process died while doing the job.
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
                # The pipe closed without an answer, so the process is dead or dying. A new one is
                # started when the next job needs it.
                if answer is None:
                    worker.process.kill()
                    worker.process.join()
                else:
                    self._idle.append(worker)
                yield place, answer

    def end(self) -> None:
        """End every process; kill those that have not ended by themselves after ``GRACE``."""
        workers = [*self._idle, *(worker for worker, _ in self._busy.values())]
        for worker in workers:
            worker.pipe.close()
            worker.process.terminate()
        # The time is shared: with many processes the end still takes no longer than GRACE in all.
        until = monotonic() + GRACE
        for worker in workers:
            worker.process.join(max(until - monotonic(), 0.0))
            worker.process.kill()
            worker.process.join()
        self._idle, self._busy = [], {}

    def at_work(self) -> dict[int, int]:
        """Return which job each process is doing, as its place in the list, by process id."""
        return {worker.process.pid or 0: place for worker, place in self._busy.values()}

    def _hand_out(self, place: int, job: Any) -> None:
        worker = self._idle.pop() if self._idle else _started(self._do, self._our_fault)
        self._busy[worker.pipe] = (worker, place)
        # A process that has died meanwhile is noticed when its answer is waited for.
        with suppress(OSError):
            worker.pipe.send(job)


def _started(do: Do, our_fault: int) -> _Worker:
    # Spawned, not forked: a fork would copy this process's locks as they are held right now.
    context = get_context("spawn")
    ours, theirs = context.Pipe()
    process = context.Process(target=work, args=(theirs, do, our_fault), daemon=True)
    with _ctrl_c_held():
        process.start()
    theirs.close()
    return _Worker(process, ours)


@contextmanager
def _ctrl_c_held() -> Iterator[None]:
    """Hold Ctrl-C back while a process starts, which inherits that: only the parent answers it."""
    if not hasattr(signal, "pthread_sigmask"):
        yield
        return
    before = signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
    try:
        yield
    finally:
        signal.pthread_sigmask(signal.SIG_SETMASK, before)
