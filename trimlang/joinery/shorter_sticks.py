"""Walls pieced together as if the yard had only what it never runs out of."""

from __future__ import annotations

from collections.abc import Container
from dataclasses import replace

from trimlang.joinery.pieces import joinery
from trimlang.survey.job import Job


def only_steady(job: Job, trims: Container[str]) -> Job:
    """Return the job with these trims only in lengths of unlimited supply, if there are any."""
    return replace(
        job,
        trims=tuple(
            replace(
                trim,
                offers=tuple(one for one in trim.offers if one.at_most is None) or trim.offers,
            )
            if trim.name in trims
            else trim
            for trim in job.trims
        ),
    )


def pieces_of_shorter_sticks(job: Job) -> set[str]:
    """Return the ids of the pieces that there are if every length that may run out has."""
    limited = {trim.name for trim in job.trims if any(one.at_most for one in trim.offers)}
    if not limited:
        return set()
    pieces, _, _ = joinery(only_steady(job, limited))
    return {piece.id for piece in pieces}
