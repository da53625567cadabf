"""The mend of a log whose lines do not say all: each gets its length and its stick."""

from __future__ import annotations

import asyncio
from collections.abc import Iterator

from trimlang.compiler import plan_checked
from trimlang.diagnostics import Diagnostic
from trimlang.diagnostics.mend import Edit, Mend
from trimlang.diagnostics.named_codes import NOT_IN_FULL
from trimlang.editor.open_job import JobReading
from trimlang.planning.wrong_plan import WrongPlanError
from trimlang.site_log.written_out import in_full


async def written_in_full(reading: JobReading, finding: Diagnostic) -> tuple[Mend, ...]:
    """Return what writes a log out in full, as ``trimlang mark --pin`` does; else nothing.

    The job is planned for it as a build plans it, since a quicker plan may cut a piece from another
    stick than the tickets say.
    """
    if finding.code != NOT_IN_FULL:
        return ()
    loop = asyncio.get_running_loop()
    edits = await loop.run_in_executor(None, lambda: tuple(_edits(reading)))
    return (Mend("Write the log's lines out in full", edits, sure=True),) if edits else ()


def _edits(reading: JobReading) -> Iterator[Edit]:
    try:
        result = plan_checked(reading.result)
    # The build will say that; here is only nothing to offer.
    except WrongPlanError:
        return
    if result.progress is not None:
        units = {piece.id: piece.unit for piece in result.pieces}
        full = in_full(result.job, result.progress.full_entries, units)
        # The later place first, so that the earlier one is still right when it is changed.
        yield from (Edit(span, full[span]) for span in sorted(full, reverse=True))
