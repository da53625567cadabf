"""What stands at the head and foot of every sheet."""

from __future__ import annotations

import re
from hashlib import sha256
from pathlib import PurePath

from trimlang.compiler import Result
from trimlang.record import record


@record
class SheetHeading:
    """The job, and the revision that every sheet of one printing shares.

    ``key`` is the same in all revisions: a phone keeps its ticks by it.  ``stem`` is the job
    file's name without its ending.
    """

    job: str
    surveyed: str
    revision: str
    key: str
    stem: str


def heading(result: Result) -> SheetHeading:
    """Return the job's heading; the revision is made from the job file and its includes."""
    digest = sha256()
    for name, source in result.sources.items():
        for text in (name, source.text):
            data = text.encode("utf-8", "surrogatepass")
            # With the length before each text, moving text from one file to the next changes the
            # digest.
            digest.update(len(data).to_bytes(8, "big"))
            digest.update(data)
    file = next(iter(result.sources), "")
    return SheetHeading(
        job=result.job.name,
        surveyed=result.job.surveyed or "",
        revision=digest.hexdigest()[:8],
        # Not from the file's text, which changes from revision to revision.
        key=sha256(f"{file}\n{result.job.name}".encode("utf-8", "surrogatepass")).hexdigest()[:12],
        stem=file_stem(result),
    )


def file_stem(result: Result) -> str:
    """Return the job file's name without its ending; ``job`` where it was no file."""
    name = next(iter(result.sources), "")
    stem = PurePath(name).stem
    return stem if re.fullmatch(r"\w[\w.\- ]*", stem) else "job"
