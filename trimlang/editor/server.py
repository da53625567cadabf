"""What the language server knows: the open files, their readings and plans, and what was told.

Reading a job and planning its stock each have a thread of their own, so that typing never
waits.  A request is always answered, whatever a file holds: with nothing where there is nothing
to tell.
"""

from __future__ import annotations

import asyncio
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Final

from lsprotocol import types as lsp
from pygls.lsp.server import LanguageServer
from pygls.workspace import PositionCodec

from trimlang.editor import answers
from trimlang.editor.answers import Scale
from trimlang.editor.hover_plans import QuickPlans, Where
from trimlang.editor.open_files import OpenFiles
from trimlang.editor.open_job import JobReading, read_job
from trimlang.editor.protocol import AnsweringProtocol
from trimlang.output.lock import alone_in
from trimlang.record import record
from trimlang.version import __version__

PAUSE: Final = 0.03
"""Seconds between the last key stroke and reading the job for its diagnostics."""

PATIENCE: Final = 0.25
"""Seconds that an answer waits for a stock plan, and completion for a reading."""


@record
class Document:
    """A document of the editor, as part of one of the jobs that it belongs to."""

    reading: JobReading
    file: str
    scale: Scale


class EditorServer(LanguageServer):
    """The server: the open files, their last readings, and what was reported."""

    protocol: AnsweringProtocol

    def __init__(self) -> None:
        # The editor sends whole texts, not changes: patching texts here could go wrong unnoticed,
        # and a job file is small.
        super().__init__(
            "trimlang",
            __version__,
            text_document_sync_kind=lsp.TextDocumentSyncKind.Full,
            protocol_cls=AnsweringProtocol,
        )
        self.files = OpenFiles()
        self.plans = QuickPlans()
        self._reader = ThreadPoolExecutor(1, "reader")
        self._planner = ThreadPoolExecutor(1, "planner")
        self._last: dict[Path, JobReading] = {}
        self._tasks: dict[Path, tuple[tuple[object, ...], asyncio.Task[JobReading]]] = {}
        self._with_findings: set[str] = set()
        self._turn = 0
        self._due: asyncio.TimerHandle | None = None
        self._telling: asyncio.Task[None] | None = None

    @property
    def codec(self) -> PositionCodec:
        """The codec for this editor's way of counting columns."""
        return self.workspace.position_codec

    # ---- reading ------------------------------------------------------------------

    async def read(self, job: Path) -> JobReading:
        """Return a job as its files are now; requests for the same state share one reading."""
        stamp = self.files.stamp(job, self._last.get(job))
        known = self._tasks.get(job)
        if known is None or known[0] != stamp or (known[1].done() and known[1].exception()):
            task = asyncio.get_running_loop().create_task(self._read(job))
            known = self._tasks[job] = (stamp, task)
        # A request may be cancelled, but others may wait for the same reading.
        reading = await asyncio.shield(known[1])
        if self._tasks.get(job) is known:
            # Which files are included is known only now, and the stamp depends on them.
            self._tasks[job] = (self.files.stamp(job, reading), known[1])
        return reading

    async def _read(self, job: Path) -> JobReading:
        loop = asyncio.get_running_loop()
        reading = await loop.run_in_executor(self._reader, read_job, *self.files.reader(job))
        self._last[job] = reading
        return reading

    async def settled(self, uri: str) -> Document:
        """Return a document as its job's files are when no command is at work on them.

        A command that adds to a file, such as ``mark``, has the folder to itself until it has
        written.  What is to be changed in all files must hold what it wrote.
        """
        # To its end even where the request is cancelled: a lock that is waited for has to be
        # released too.
        return await asyncio.shield(asyncio.ensure_future(self._settled(uri)))

    async def _settled(self, uri: str) -> Document:
        jobs = self.files.jobs(self.files.path(uri))
        kept_out = alone_in(*(job.parent for job in jobs if job.is_absolute()))
        # Another thread waits for the lock, so that diagnostics do not wait with it.
        await asyncio.get_running_loop().run_in_executor(None, kept_out.__enter__)
        try:
            # Only now: a reading from before, even for another request, may lack what was written.
            self.files.look_again()
            return await self.document(uri)
        finally:
            kept_out.__exit__(None, None, None)

    async def document(self, uri: str) -> Document:
        """Return a document as part of the first of its jobs, or by itself if none reads it."""
        path = self.files.path(uri)
        for job in self.files.jobs(path):
            reading = await self.read(job)
            file = reading.named(path if path.is_absolute() else None)
            if file is not None:
                return Document(reading, file, Scale(reading, self.codec))
        reading = await self.read(path)
        return Document(reading, reading.file, Scale(reading, self.codec))

    async def soon(self, uri: str) -> Document:
        """Return a document as it is now or, where reading takes too long, as it was last read."""
        path = self.files.path(uri)
        last = next((self._last[job] for job in self.files.jobs(path) if job in self._last), None)
        wanted = asyncio.ensure_future(self.document(uri))
        done, _ = await asyncio.wait({wanted}, timeout=None if last is None else PATIENCE)
        file = None if last is None else last.named(path if path.is_absolute() else None)
        if done or last is None or file is None:
            return await wanted
        return Document(last, file, Scale(last, self.codec))

    async def sticks(self, reading: JobReading, trims: set[str]) -> dict[str, Where] | None:
        """Return where the pieces of some trims are cut from, None if planning takes too long."""
        loop = asyncio.get_running_loop()
        plans = [
            loop.run_in_executor(self._planner, self.plans.plan, reading.result, trim)
            for trim in sorted(trims)
        ]
        if not plans:
            return {}
        _, late = await asyncio.wait(plans, timeout=PATIENCE)
        for plan in late:
            # A plan that has not begun would only keep the next hover waiting.
            plan.cancel()
        if late:
            return None
        return {piece: where for plan in plans for piece, where in plan.result().items()}

    # ---- telling what is wrong ------------------------------------------------------

    def changed(self) -> None:
        """Have diagnostics reported again, a moment after the last key stroke."""
        self._turn += 1
        if self._due is not None:
            self._due.cancel()
        self._due = asyncio.get_running_loop().call_later(PAUSE, self._tell)

    def _tell(self) -> None:
        self._telling = asyncio.ensure_future(self._publish())

    async def _publish(self) -> None:
        turn = self._turn
        readings = [await self.read(job) for job in self.files.all_jobs()]
        if turn != self._turn:
            return  # another key stroke came meanwhile, and its own turn reports
        found: dict[str, list[lsp.Diagnostic]] = {}
        for path in self.files.texts:
            found[self.files.uri(path)] = []
        for reading in readings:
            scale = Scale(reading, self.codec)
            for file in reading.result.sources:
                found.setdefault(self.address(reading, file), [])
            for one in reading.result.diagnostics:
                of_file = found.setdefault(self.address(reading, one.span.file), [])
                shown = answers.diagnostic(one, scale)
                # A file that two jobs include may have the same finding in both.
                if shown not in of_file:
                    of_file.append(shown)
        # An empty list takes away what an editor still shows for a file that is no longer read.
        for uri in self._with_findings - found.keys():
            self.text_document_publish_diagnostics(lsp.PublishDiagnosticsParams(uri, ()))
        for uri, diagnostics in found.items():
            path = self.files.path(uri)
            # Files that are not open and have nothing wrong are not spoken of.
            if diagnostics or uri in self._with_findings or path in self.files.texts:
                self.text_document_publish_diagnostics(
                    lsp.PublishDiagnosticsParams(uri, diagnostics, self.files.versions.get(path))
                )
        self._with_findings = {uri for uri, diagnostics in found.items() if diagnostics}

    def address(self, reading: JobReading, file: str) -> str:
        """Return the address of one of a job's files."""
        path = reading.path(file)
        return self.files.uri(Path(file) if path is None else path)

    def close(self) -> None:
        """Give up what is still being read, planned or about to be told."""
        for pending in (self._due, self._telling):
            if pending is not None:
                pending.cancel()
        self._reader.shutdown(wait=False, cancel_futures=True)
        self._planner.shutdown(wait=False, cancel_futures=True)
