"""What each technique of the planner carries: python -m benchmarks.techniques --instances FOLDER

Each is switched off from outside, alone and with others, on jobs of fixed seeds: invented trims,
square and mitred, with few rests and with many; published instances; invented houses with long
walls.  A line tells, for each set, the proofs (each checked), and how much dearer the plans
are and how many sticks more they cut than with everything on; then seconds of one core.

``--keep`` writes the first line's outcomes to a file; ``--beside`` compares with such a file,
so that two versions of the planner can be held beside each other.
"""

from __future__ import annotations

import argparse
import json
import pkgutil
import sys
from collections.abc import Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from importlib import import_module
from multiprocessing import get_context
from pathlib import Path
from random import Random
from time import process_time
from typing import Any, Final, TypeAlias

import trimlang.stock
from benchmarks import long_walls
from benchmarks.generated import FOOT, house, leaning
from benchmarks.published import instance_sets
from benchmarks.stock import timed
from trimlang.compiler import compile_job
from trimlang.record import record
from trimlang.stock.checking.proof_check import checked_plan
from trimlang.stock.planner import Effort
from trimlang.stock.problem import Blank, Problem, Status

LIMIT: Final = 10.0
"""Seconds for each trim."""

PIECES: Final = (20, 60, 150, 300)
"""Pieces of an invented trim."""

PUBLISHED: Final = {"Hard28": 3, "AI": 0, "ANI": 0}
"""The first of each set, two where nothing is said.  Most of AI and ANI end at the limit."""

Off: TypeAlias = Mapping[str, Any]
"""What stands in the place of each function, method or number of the planner."""

TECHNIQUES: Final[Mapping[str, Off]] = {
    "first patterns": {"Relaxation.begin": lambda *_: []},
    "racks around the program's": {"RackWorths.around": lambda *_: []},
    "central worths": {"PatternProgram.central_duals": lambda self: self.solve()[2]},
    "cheaper kinds for quick plans": {"_shrunk": lambda _, sticks, *__: list(sticks)},
    "favoured kinds": {"FAVOURITES": 0},
    "sifting": {"sifted": lambda *_: None},
    "dives": {"Diver.dive": lambda *_: None},
    "nesting": {"can_nest": lambda *_: False},
}

TOGETHER: Final[Mapping[str, Sequence[str]]] = {
    "sifting and dives": ("sifting", "dives"),
}
"""Techniques that are switched off at once."""


@record
class Outcome:
    """What became of one job."""

    proven: bool
    cost: float
    sticks: int
    seconds: float


Outcomes: TypeAlias = dict[str, dict[str, Outcome]]
"""By set and by job."""


def _modules() -> Iterator[Any]:
    for found in pkgutil.walk_packages(trimlang.stock.__path__, "trimlang.stock."):
        yield import_module(found.name)


def switched_off(off: Off) -> None:
    """Put others in the place of the planner's own functions, in this process."""
    for name, other in off.items():
        owner, _, method = name.rpartition(".")
        users = [one for one in _modules() if (owner or name) in vars(one)]
        assert users, f"the planner has no {name}"
        # Each module has its own name for what it took from another.
        for user in users:
            setattr(vars(user)[owner] if owner else user, method, other)


def with_rests(seed: int) -> Problem:
    """Return an invented trim with 10 to 25 kinds of rest, some of them at a price."""
    random = Random(seed)
    job = house(random.choice((40, 80)), seed)
    lengths = random.sample(range(2 * FOOT, 8 * FOOT), random.randint(10, 25))
    rests = tuple(
        Blank(
            f"rest {length}",
            length,
            random.choice((0, 0, length // 10)),
            limit=random.randint(1, 3),
            on_hand=True,
        )
        for length in lengths
    )
    blanks = tuple(blank for blank in job.blanks if not blank.on_hand)
    changed = Problem(job.trim, job.parts, (*blanks, *rests), job.kerf, job.end_waste, job.spare)
    return leaning(changed, seed) if random.random() < 0.5 else changed


def problems(folder: Path | None, seeds: int) -> dict[str, dict[str, Problem]]:
    """Return the jobs of each set by name."""
    trims = {
        f"{pieces} pieces, {seed}": house(pieces, 77_000 + 1000 * seed + pieces)
        for pieces in PIECES
        for seed in range(seeds)
    }
    sets = {
        "square": trims,
        "mitred": {
            name: leaning(trim, number) for number, (name, trim) in enumerate(trims.items())
        },
        "rests": {str(seed): with_rests(seed) for seed in range(2 * seeds)},
    }
    if folder is not None:
        sets["published"] = {
            f"{name} {one.name}": one.problem
            for name, instances in instance_sets(folder).items()
            for one in instances[: PUBLISHED.get(name, 2)]
        }
    return sets


def planned(problem: Problem) -> Outcome:
    """Plan one trim, check the plan and its proof."""
    found = timed(problem, LIMIT)
    proven = checked_plan(found.plan).status is Status.PROVEN
    return Outcome(proven, float(found.plan.cost), len(found.plan.sticks), found.core_seconds)


def house_planned(seed: int) -> Iterator[tuple[str, Outcome]]:
    """Compile a house with long walls; proven means wherever these are joined."""
    start = process_time()
    result = compile_job(long_walls.house(seed), effort=Effort(seconds=LIMIT))
    seconds = process_time() - start
    for plan in result.plans:
        cost = plan.cost or 0
        met = plan.status is Status.PROVEN and plan.anywhere in (None, cost)
        # The house's time is told once.
        yield (
            f"{seed} {plan.trim}",
            Outcome(
                met, float(cost), len(plan.sticks), seconds if plan is result.plans[0] else 0.0
            ),
        )


def _measured(off: Off, folder: Path | None, seeds: int, houses: int, only: str) -> Outcomes:
    """Plan all jobs with some techniques off; run in a process of its own."""
    switched_off(off)
    found: Outcomes = {}
    for name, jobs in problems(folder, seeds).items():
        if only in name:
            found[name] = {job: planned(problem) for job, problem in jobs.items()}
    if houses and only in "long walls":
        found["long walls"] = {
            job: outcome for seed in range(houses) for job, outcome in house_planned(seed)
        }
    return found


def told(name: str, outcomes: Outcomes, beside: Outcomes) -> str:
    """Return the line of one measurement beside another."""
    cells = [f"{name:32}"]
    for jobs, many in outcomes.items():
        before = beside.get(jobs, many)
        lost = sum(before[job].proven and not one.proven for job, one in many.items())
        won = sum(one.proven and not before[job].proven for job, one in many.items())
        dearer = [one.cost / max(before[job].cost, 1) - 1 for job, one in many.items()]
        sticks = sum(
            one.sticks - before[job].sticks
            for job, one in many.items()
            if one.cost == before[job].cost
        )
        seconds = [one.seconds for one in many.values()]
        cells.append(
            f"{jobs}: {sum(one.proven for one in many.values())}/{len(many)}"
            f" (-{lost} +{won}) {max(dearer):+.3%} {min(*dearer, 0):+.3%} {sticks:+} sticks"
            f" {sum(seconds):.1f} s (worst {max(seconds):.1f})"
        )
    total = sum(one.seconds for many in outcomes.values() for one in many.values())
    usual = sum(one.seconds for many in beside.values() for one in many.values())
    return " | ".join([*cells, f"all {total:.1f} s, {total / usual:.2f} of it"])


def _techniques_of(name: str) -> Off:
    """Return what is put in place of what, for one technique or for several."""
    several = TOGETHER.get(name, (name,) if name else ())
    return {place: other for one in several for place, other in TECHNIQUES[one].items()}


def _in_a_process(name: str, *asked: Any) -> Outcomes:
    return _measured(_techniques_of(name), *asked)


def main() -> None:
    """Print a line for everything on, for each technique off alone, and for several off."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--instances", type=Path, help="folder of published instances")
    parser.add_argument("--seeds", type=int, default=6, help="invented trims of each size")
    parser.add_argument("--houses", type=int, default=0, help="houses with long walls")
    parser.add_argument("--only", default="", help="only sets with this in their name")
    parser.add_argument("--off", nargs="*", help="these alone; none: only with everything on")
    parser.add_argument("--keep", type=Path, help="write the outcomes with everything on here")
    parser.add_argument("--beside", type=Path, help="outcomes to compare with")
    choices = parser.parse_args()

    def measured(name: str) -> Outcomes:
        asked = (choices.instances, choices.seeds, choices.houses, choices.only)
        # What one measurement remembers must not help the next.
        with ProcessPoolExecutor(1, get_context("spawn")) as pool:
            return pool.submit(_in_a_process, name, *asked).result()

    everything = measured("")
    beside = everything
    if choices.beside is not None:
        kept = json.loads(choices.beside.read_text())
        beside = {
            jobs: {job: Outcome(*one) for job, one in many.items()} for jobs, many in kept.items()
        }
    if choices.keep is not None:
        rows = {
            jobs: {
                job: (one.proven, one.cost, one.sticks, one.seconds) for job, one in many.items()
            }
            for jobs, many in everything.items()
        }
        choices.keep.write_text(json.dumps(rows))
    print(told("everything on", everything, beside), flush=True)
    for name in (*TECHNIQUES, *TOGETHER) if choices.off is None else choices.off:
        print(told(name, measured(name), beside), flush=True)


if __name__ == "__main__":
    sys.exit(main())
