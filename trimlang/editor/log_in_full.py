"""The mend of a log whose lines do not say all: each gets its length and its stick."""

from __future__ import annotations

import asyncio

from trimlang.diagnostics import Diagnostic
from trimlang.diagnostics.mend import Edit, Mend
from trimlang.diagnostics.named_codes import NOT_IN_FULL
from trimlang.editor.open_job import JobReading


async def written_in_full(reading: JobReading, finding: Diagnostic) -> tuple[Mend, ...]:
    """Return what writes a log out in full, as ``trimlang mark --pin`` does; else nothing."""
    if finding.code != NOT_IN_FULL:
        return ()
    loop = asyncio.get_running_loop()
    full = await loop.run_in_executor(None, lambda: reading.log_in_full)
    # The later place first, so that the earlier one is still right when it is changed.
    edits = tuple(Edit(span, full[span]) for span in sorted(full, reverse=True))
    return (Mend("Write the log's lines out in full", edits, sure=True),) if edits else ()
