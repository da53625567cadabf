"""What stands at the head and foot of every sheet."""

from __future__ import annotations

from hashlib import sha256

from trimlang.compiler import Result
from trimlang.record import record


@record
class SheetHeading:
    """The job, and the revision that every sheet of one printing shares."""

    job: str
    surveyed: str
    revision: str


def heading(result: Result) -> SheetHeading:
    """Return the job's heading; the revision is made from the job file and its includes."""
    digest = sha256()
    for name, source in result.sources.items():
        for text in (name, source.text):
            data = text.encode("utf-8", "surrogatepass")
            digest.update(len(data).to_bytes(8, "big"))
            digest.update(data)
    return SheetHeading(result.job.name, result.job.surveyed or "", digest.hexdigest()[:8])
