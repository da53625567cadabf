"""Invented flats that are bought for together."""

from dataclasses import replace
from pathlib import Path

import pytest

from trimlang.compiler import check_job
from trimlang.planning.planned_job import Planned
from trimlang.shared_order import shared_plan
from trimlang.shared_order.flat import Flat, flats
from trimlang.survey.job import Job

TRIM = (
    "trim base: 9/16 in thick, 5 1/4 in tall, mdf\n"
    "stock base: 12 ft at 17.40, pack of 4 8 ft at 40, 16 ft at 24.10 at most 3\n"
)


def flat(walls: str, *, trim: str = TRIM, settings: str = "spare 0 %\n") -> str:
    return f'{trim}{settings}room "Study", trim base, open walk\n{walls}\n'


def pool(*texts: str, folder: Path = Path()) -> tuple[Flat, ...]:
    """Return sound jobs as the flats of a pool: flat-1.trim and so on."""
    checked = []
    for number, text in enumerate(texts, start=1):
        path = folder / f"flat-{number}.trim"
        result = check_job(text, path=path)
        assert result.ok, result.diagnostics
        checked.append((str(path), result))
    return flats(checked)


def search_ends_early(monkeypatch: pytest.MonkeyPatch) -> None:
    """Make the search for a pool end with a plan that costs more, so that each buys its own."""
    planned = shared_plan.first_plan

    def worse(job: Job, *rest: object) -> Planned:
        made = planned(job, *rest)  # type: ignore[arg-type]
        if len(job.rooms) == 1:
            return made
        return replace(made, plans=tuple(replace(one, cost=one.cost + 100) for one in made.plans))

    monkeypatch.setattr(shared_plan, "first_plan", worse)
