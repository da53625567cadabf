"""Measure the stock planner: ``python -m benchmarks.stock --instances FOLDER``.

Published instances beside longest first and two plain solver models; invented
houses and housing blocks; and how time grows with the pieces, drawn as SVG.
"""

import argparse
import resource
from collections.abc import Callable
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from time import perf_counter, process_time

from benchmarks.generated import block, house, leaning
from benchmarks.growth_plot import svg
from benchmarks.published import Instance, instance_sets
from benchmarks.rivals import arc_flow, cp_sat, ended_within
from trimlang.stock.checking.verify import faults
from trimlang.stock.planner import Effort, plan_stock
from trimlang.stock.problem import Plan, Problem, Status


@dataclass(frozen=True, slots=True)
class Timed:
    plan: Plan
    seconds: float
    core_seconds: float


def timed(problem: Problem, limit: float) -> Timed:
    start, core_start = perf_counter(), process_time()
    plan = plan_stock(problem, effort=Effort(seconds=limit))
    seconds, core_seconds = perf_counter() - start, process_time() - core_start
    assert isinstance(plan, Plan)
    found = faults(plan)
    if found:
        raise SystemExit(f"{problem.trim}: unsound plan: {found}")
    return Timed(plan, seconds, core_seconds)


def spread(times: list[float]) -> str:
    """Median, 95th percentile and slowest, in seconds."""
    ranked = sorted(times)
    at95 = ranked[min(len(ranked) - 1, -(-95 * len(ranked) // 100) - 1)]
    return f"{ranked[len(ranked) // 2]:8.3f} {at95:8.3f} {ranked[-1]:8.3f}"


def published(folder: Path, limit: float, rivals: int, rival_limit: float, only: str) -> None:
    print(
        f"seconds of one core; limit {limit:g} s;"
        f" CP-SAT and arc-flow on the first {rivals} of each set, {rival_limit:g} s each"
    )
    print(
        f"{'set':18}{'proven':>9}   median      p95  slowest   longest first"
        "   CP-SAT proven, median   arc-flow proven, median   ours on those"
    )
    for name, instances in instance_sets(folder).items():
        if only not in name:
            continue
        results = [timed(instance.problem, limit) for instance in instances]
        proven = sum(r.plan.status is Status.PROVEN for r in results)
        plain = sum(r.plan.plain is not None and r.plan.plain.cost == r.plan.cost for r in results)
        row = f"{name:18}{proven:4}/{len(results):<4} {spread([r.core_seconds for r in results])}"
        row += f"   best in {plain:2}/{len(results):<2}   "
        few = list(zip(instances, results, strict=True))[:rivals]
        for rival in (_cp_sat, arc_flow):
            answers = [
                ended_within(rival_limit, partial(rival, instance, rival_limit))
                for instance, _ in few
            ]
            times = sorted(took for _, took in answers)
            median = times[len(times) // 2] if times else float("nan")
            row += f"{sum(ended for ended, _ in answers):7}/{len(few):<3} {median:9.2f}    "
        ours = sorted(r.core_seconds for _, r in few)
        row += f"{ours[len(ours) // 2]:10.3f}" if ours else ""
        print(row, flush=True)
        for instance, result in zip(instances, results, strict=True):
            if result.plan.status is not Status.PROVEN:
                print(f"    {instance.name}: {result.plan.cost} sticks, bound {result.plan.bound}")
            elif instance.published is not None and result.plan.cost != instance.published:
                print(f"    {instance.name}: {result.plan.cost}, published {instance.published}")


def _cp_sat(instance: Instance, limit: float) -> bool:
    # Given the plain plan's number of sticks, as a plain user of it would.
    plan = plan_stock(instance.problem, effort=Effort(prove=False))
    assert isinstance(plan, Plan)
    return cp_sat(instance, len(plan.sticks), limit)


WHOLE_HOUSE = (150, 150, 100)
"""Pieces of each trim of a house of 400."""


def houses(limit: float, count: int) -> None:
    shapes: tuple[tuple[str, Callable[[Problem, int], Problem]], ...] = (
        ("square ends", lambda problem, _: problem),
        ("mitred ends", leaning),
    )
    for name, shape in shapes:
        print(f"one trim, {name}: 4 priced lengths, pack, rests, kerf; {count} of each")
        for pieces in (20, 60, 150, 300, 400):
            tell_house(
                f"{pieces:6} pieces",
                [
                    [timed(shape(house(pieces, 1000 * seed + pieces), seed), limit)]
                    for seed in range(count)
                ],
            )
        tell_house(
            "   " + " + ".join(map(str, WHOLE_HOUSE)),
            [
                [
                    timed(shape(house(pieces, 10_000 * trim + 1000 * seed + pieces), seed), limit)
                    for trim, pieces in enumerate(WHOLE_HOUSE)
                ]
                for seed in range(count)
            ],
        )


def tell_house(name: str, jobs: list[list[Timed]]) -> None:
    """How many jobs were proven, and how soon; a job is all of its trims."""
    proven = [all(r.plan.status is Status.PROVEN for r in job) for job in jobs]
    core = [sum(r.core_seconds for r in job) for job in jobs]
    quick = sum(settled and took <= 1 for settled, took in zip(proven, core, strict=True))
    gap = max(sum(r.plan.gap for r in job) / sum(r.plan.cost for r in job) for job in jobs)
    print(
        f"{name}: {sum(proven)}/{len(jobs)} proven, {quick} within 1 s of one core;"
        f" core {spread(core)};"
        f" wall {spread([sum(r.seconds for r in job) for job in jobs])}; widest gap {gap:.3%}",
        flush=True,
    )


def blocks(limit: float, plot: Path | None) -> None:
    print("housing blocks, 60 sizes")
    points = []
    for pieces in (50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000):
        result = timed(block(pieces, 60, seed=7), limit)
        memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
        points.append((pieces, result.core_seconds))
        print(
            f"{pieces:6} pieces: {result.plan.status}, gap {result.plan.gap},"
            f" {result.core_seconds:.2f} s of one core, {result.seconds:.2f} s on the wall,"
            f" {memory:.0f} MiB at most so far",
            flush=True,
        )
    if plot is not None:
        plot.write_text(svg(points), encoding="utf-8")


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--instances", type=Path, help="folder of published instances")
    parser.add_argument("--limit", type=float, default=60.0, help="seconds for each instance")
    parser.add_argument("--rivals", type=int, default=20, help="instances a set for the rivals")
    parser.add_argument("--rival-limit", type=float, default=20.0, help="seconds for each rival")
    parser.add_argument("--only", default="", help="only sets with this in their name")
    parser.add_argument("--houses", type=int, default=40, help="house jobs of each size")
    parser.add_argument("--plot", type=Path, help="write the growth plot here")
    choices = parser.parse_args()
    if choices.instances is not None:
        published(
            choices.instances, choices.limit, choices.rivals, choices.rival_limit, choices.only
        )
    if choices.houses:
        houses(10.0, choices.houses)
        blocks(60.0, choices.plot)


if __name__ == "__main__":
    main()
