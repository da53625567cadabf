"""The one log of a site whose flats were bought together: what it says of all, and of each."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from typing import TypeVar

from trimlang.diagnostics import Diagnostic
from trimlang.diagnostics.source import Source
from trimlang.joinery.piece import Piece
from trimlang.planning.planned_job import Planned
from trimlang.reading import read_site_log
from trimlang.shared_order.flat import Flat
from trimlang.site_log.ledger import check_log
from trimlang.site_log.progress_of_job import JobProgress
from trimlang.survey.job import Job
from trimlang.survey.log_reading import read_log, with_logged
from trimlang.survey.measures import Findings

Told = TypeVar("Told")


def with_log(shared: Job, log: Source, pool: Sequence[Flat]) -> tuple[Job, tuple[Diagnostic, ...]]:
    """Return all flats as one job with its log, and what is wrong with the log by itself.

    Its lines name pieces as the sheets of the pool do, with the flat's tag.
    """
    gathered = read_site_log(log)
    findings = Findings()
    trims = {trim.name: trim for trim in shared.trims}
    entries = read_log(gathered.statements, trims, shared.settings.unit, findings)
    job = replace(shared, log=entries, trims=tuple(with_logged(trims, entries).values()))
    pieces = [piece for flat in pool for piece in flat.pieces]
    wrong = check_log(job, pieces, [one for flat in pool for one in flat.splices])
    return job, (*gathered.findings, *findings.found, *wrong)


def places_of(
    planned: Planned, own: Sequence[Planned], apart: set[str]
) -> dict[str, tuple[Fraction, ...]]:
    """Return where each long wall is joined: as pooled, or as its flat plans a trim ``apart``."""
    trims = {one.whole.id: one.trim.name for one in planned.splices}
    places = {wall: cut for wall, cut in planned.places.items() if trims.get(wall, "") not in apart}
    for flat in own:
        for one in flat.splices:
            if one.trim.name in apart:
                places[one.whole.id] = tuple(flat.places.get(one.whole.id, one.cut))
    return places


def of_flat(progress: JobProgress, pieces: Sequence[Piece]) -> JobProgress:
    """Return what a flat's own sheets say of the log; what was bought is told by the site's."""
    ids = {piece.id for piece in pieces}

    def own(known: Mapping[str, Told]) -> dict[str, Told]:
        return {name: one for name, one in known.items() if name in ids}

    return replace(
        progress,
        states=own(progress.states),
        changed=tuple(name for name in progress.changed if name in ids),
        in_hand=(),
        full_entries=(),
        asked=own(progress.asked),
    )
