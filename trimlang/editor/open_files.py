"""The files that an editor has open, and the jobs that they belong to."""

from __future__ import annotations

from pathlib import Path

from pygls import uris

from trimlang.editor.open_job import JobReading, jobs_with
from trimlang.incremental.cached_steps import CachedSteps


class OpenFiles:
    """The open texts by their resolved paths; one that was never saved goes by its bare name."""

    def __init__(self) -> None:
        self.texts: dict[Path, str] = {}
        self.folders: list[Path] = []
        self.versions: dict[Path, int | None] = {}
        self._uris: dict[Path, str] = {}
        self._stamps: dict[Path, int] = {}
        self._steps: dict[Path, CachedSteps] = {}
        self._jobs: dict[Path, tuple[Path, ...]] = {}
        # Goes up whenever files on the disk may have changed; it is part of each job's stamp.
        self._elsewhere = 0

    def path(self, uri: str) -> Path:
        """Return the path under which a document is kept."""
        found = uris.to_fs_path(uri) if uri.startswith("file:") else None
        if found is None:
            return Path(uri.replace("/", ":").rpartition(":")[2] or "unsaved")
        try:
            return Path(found).resolve()
        except (OSError, ValueError, RuntimeError):
            return Path("unnamed")  # no disk has such a name

    def uri(self, path: Path) -> str:
        """Return a file's address: the editor's own where it has the file open."""
        return self._uris.get(path) or uris.from_fs_path(str(path)) or str(path)

    def put(self, uri: str, text: str, version: int | None) -> None:
        """Take in a document's text, new or changed, and the editor's version number of it."""
        path = self.path(uri)
        # Which jobs a file belongs to depends on the include lines alone, so other changes cost no
        # search of the disk.
        if _includes(text) != _includes(self.texts.get(path, "")) or path not in self.texts:
            self.look_again()
        self.texts[path] = text
        self.versions[path] = version
        self._uris[path] = uri
        self._stamps[path] = self._stamps.get(path, 0) + 1

    def drop(self, uri: str) -> None:
        """Forget a document that was closed: from now on the file on the disk counts."""
        path = self.path(uri)
        self.texts.pop(path, None)
        self.versions.pop(path, None)
        self._uris.pop(path, None)
        self.look_again()

    def look_again(self) -> None:
        """Trust nothing that was read from the disk: any file may have changed."""
        self._elsewhere += 1
        self._jobs.clear()

    def jobs(self, path: Path) -> tuple[Path, ...]:
        """Return the job files that a document belongs to."""
        # What was never saved is no part of another job: no include can name it.
        if not path.is_absolute():
            return (path,)
        found = self._jobs.get(path)
        if found is None:
            saved = {key: text for key, text in self.texts.items() if key.is_absolute()}
            found = self._jobs[path] = jobs_with(path, saved, self.folders)
        return found

    def all_jobs(self) -> tuple[Path, ...]:
        """Return the job files of all open documents, and drop what was kept for others."""
        found = dict.fromkeys(job for path in tuple(self.texts) for job in self.jobs(path))
        for job in self._steps.keys() - found.keys():
            del self._steps[job]
        return tuple(found)

    def stamp(self, job: Path, last: JobReading | None) -> tuple[object, ...]:
        """Return a value that differs when a job must be read again.

        ``last`` is its last reading, which tells the files that it includes.
        """
        files = [job]
        if last is not None:
            paths = (last.path(name) for name in last.result.sources)
            files += [path for path in paths if path is not None]
        return (self._elsewhere, *((path, self._stamps.get(path)) for path in files))

    def reader(self, job: Path) -> tuple[Path | None, str, dict[Path, str], CachedSteps]:
        """Return the arguments for ``read_job`` to read a job as it is now."""
        steps = self._steps.setdefault(job, CachedSteps())
        return (job if job.is_absolute() else None), job.name, dict(self.texts), steps


def _includes(text: str) -> list[str]:
    # Called at each key stroke: two quick searches first, in the two usual spellings.
    if "nclude" not in text and "NCLUDE" not in text:
        return []
    return [line for line in text.splitlines() if line.lstrip()[:7].lower() == "include"]
