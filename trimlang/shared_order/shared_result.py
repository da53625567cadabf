"""What one purchase for several jobs comes to: for the site, and for each flat."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction

from trimlang.compiler import Result
from trimlang.diagnostics import Diagnostic, has_errors
from trimlang.diagnostics.source import Source
from trimlang.joinery.piece import Piece
from trimlang.planning.layout import TrimPlan
from trimlang.record import record
from trimlang.shared_order.flat import Flat
from trimlang.shared_order.log_of_site import of_flat
from trimlang.site_log.progress_of_job import JobProgress
from trimlang.survey.job import Job
from trimlang.takeoff.supplies import Supply, blocks, supplies


@record
class FlatPlan:
    """A flat as the shared order leaves it.

    ``result`` holds its own pieces and those shared sticks that any of them is cut from.
    ``alone`` is what its trim would cost bought by itself, None where the stock would not
    be enough.
    """

    flat: Flat
    result: Result
    alone: Fraction | None


@record
class SharedOrder:
    """One purchase for several jobs: ``result`` is all jobs as one, ``flats`` each by itself.

    ``apart`` names the trims that are planned job by job, because nothing better was found;
    ``scarce`` those whose separate plans together take more than the stock lines allow.
    """

    result: Result
    flats: tuple[FlatPlan, ...]
    apart: tuple[str, ...] = ()
    scarce: tuple[str, ...] = ()

    @property
    def alone(self) -> Fraction | None:
        """What the trim costs where each job buys its own; None where one of them cannot."""
        costs = [one.alone for one in self.flats]
        return None if None in costs else sum((cost for cost in costs if cost), Fraction(0))


def tagged(pool: Sequence[Flat], cut: Sequence[Sequence[Piece]]) -> tuple[Piece, ...]:
    """Return all flats' pieces in one, their rooms named with the flat's tag."""
    return tuple(
        replace(piece, room=f"{flat.tag} {piece.room}")
        for flat, pieces in zip(pool, cut, strict=True)
        for piece in pieces
    )


def untagged(pool: Sequence[Flat], pieces: Iterable[Piece]) -> list[tuple[Piece, ...]]:
    """Return each flat's pieces, their rooms named as in its own job."""
    rooms = {
        f"{flat.tag} {room.name}": (number, room.name)
        for number, flat in enumerate(pool)
        for room in flat.job.rooms
    }
    cut: list[list[Piece]] = [[] for _ in pool]
    for piece in pieces:
        number, room = rooms[piece.room]
        cut[number].append(replace(piece, room=room))
    return [tuple(of_one) for of_one in cut]


def shared_order(
    pool: Sequence[Flat],
    shared: Job,
    cut: Sequence[tuple[Piece, ...]],
    plans: tuple[TrimPlan, ...],
    findings: tuple[Diagnostic, ...],
    *,
    alone: Sequence[Fraction | None] | None = None,
    apart: tuple[str, ...] = (),
    scarce: tuple[str, ...] = (),
    log: Source | None = None,
    progress: JobProgress | None = None,
) -> SharedOrder:
    """Return the order of all flats: ``shared`` is their one job, ``cut`` the pieces of each."""
    wrong = has_errors(findings)
    made: list[FlatPlan] = []
    for flat, pieces, cost in zip(pool, cut, alone or [None] * len(pool), strict=True):
        ids = {piece.id for piece in pieces}
        on = tuple(
            replace(
                plan,
                sticks=tuple(
                    stick for stick in plan.sticks if any(p.piece in ids for p in stick.places)
                ),
            )
            for plan in plans
        )
        # A stick that several flats share stands in the result of each, so that each flat's sheets
        # show the whole stick.
        result = replace(
            flat.result,
            job=flat.job,
            pieces=pieces,
            plans=tuple(plan for plan in on if plan.sticks),
            supplies=(*supplies(flat.job, pieces), *blocks([flat.job])),
            progress=None if progress is None else of_flat(progress, pieces),
        )
        made.append(FlatPlan(flat, result, cost))
    # by tag, not by path: where the jobs lie is no part of the revision
    sources = {
        f"{flat.tag}: {name}": Source(name, source.text)
        for flat in pool
        for name, source in flat.result.sources.items()
    }
    if log is not None:
        sources[log.name] = log
    result = Result(
        job=shared,
        pieces=tagged(pool, cut),
        plans=() if wrong else plans,
        supplies=() if wrong else _supplies(shared, pool, cut),
        diagnostics=findings,
        sources=sources,
        progress=None if wrong else progress,
    )
    return SharedOrder(result, tuple(made), apart, scarce)


def _supplies(
    shared: Job, pool: Sequence[Flat], cut: Sequence[tuple[Piece, ...]]
) -> tuple[Supply, ...]:
    """Return nails, caulk, paint and blocks: bought together for all flats that want the same."""
    # Rounding up to whole boxes and tubes once for all flats is what buying together saves.
    alike: dict[tuple[object, ...], list[Piece]] = {}
    jobs: dict[tuple[object, ...], Job] = {}
    for flat, pieces in zip(pool, cut, strict=True):
        said = flat.job.settings
        kinds = (
            said.unit,
            said.nail_every,
            said.nail_long,
            said.nail_box,
            said.caulk_bead,
            said.caulk_tube,
            said.caulk_waste,
            said.paint_coats,
            said.paint_spread,
            said.paint_can,
        )
        alike.setdefault(kinds, []).extend(pieces)
        jobs.setdefault(kinds, replace(shared, settings=said))
    pooled = (line for kinds in jobs for line in supplies(jobs[kinds], alike[kinds]))
    return (*pooled, *blocks(flat.job for flat in pool))
