"""What better places for the joints of long walls save: python -m benchmarks.long_walls

Invented houses of fixed seeds: rooms with walls of 2 to 30 ft, base and shoe from three
lengths of stick with packs and rests, square and mitred ends.  For each trim: its cost, the
cost with the usual places alone, the bound wherever the joints are, and seconds of one core.
"""

from __future__ import annotations

import argparse
from fractions import Fraction
from random import Random
from statistics import median
from time import process_time

from trimlang.compiler import Result, compile_job
from trimlang.planning.ask import ask
from trimlang.record import record
from trimlang.stock.planner import Effort, plan_stock
from trimlang.stock.problem import Plan, Status

STOCK = (
    ("8 ft at {}, 12 ft at {}, 16 ft at {}, pack of 10 12 ft at {}", (960, 1440, 1960, 13200)),
    ("12 ft at {}, 14 ft at {}, 16 ft at {}, pack of 5 16 ft at {}", (1410, 1690, 1890, 9100)),
    ("8 ft at {}, 10 ft at {}, 16 ft at {}, pack of 6 8 ft at {}", (880, 1190, 2010, 5000)),
)


@record
class TrimOutcome:
    """A trim with free walls: its cost, and what it was with the usual places, in coins."""

    name: str
    pieces: int
    cost: Fraction
    usual: Fraction
    anywhere: Fraction
    proven: bool


def house(seed: int) -> str:
    """Return a job file of 4 to 24 rooms."""
    random = Random(seed)
    lines = ["saw: kerf 1/8 in, squares off 1/4 in", "spare 0 %"]
    for name, thick, tall in (("base", "9/16", "5 1/4"), ("shoe", "1/2", "3/4")):
        text, prices = random.choice(STOCK)
        share = 1 if name == "base" else Fraction(2, 5)
        paid = [f"{float(p * share * random.randint(96, 104)) / 10000:.2f}" for p in prices]
        lines.append(f"trim {name}: {thick} in thick, {tall} in tall")
        lines.append(f"stock {name}: {text.format(*paid)}")
        rests = random.randint(0, 4)
        lines += [
            f"on-hand {name}: {random.randint(1, 2)} of {random.randint(30, 110)} in"
            for _ in range(rests)
        ]
    joints = random.choice((("butt",), ("in-corner", "in-corner", "out-corner", "butt")))
    for room in range(random.randint(4, 24)):
        lines.append(f'room "R{room}", trim base, trim shoe, open walk')
        for wall in range(random.randint(4, 9)):
            long = random.random() < 0.22
            sixteenths = random.randint(3000, 5800) if long else random.randint(380, 2800)
            whole, rest = divmod(sixteenths, 16)
            ends = random.choice(joints), random.choice(joints)
            part = f" {Fraction(rest, 16)}" if rest else ""
            lines.append(f"  W{wall}: {whole}{part} in, left={ends[0]}, right={ends[1]}")
            lines.append("  bare 3 in")
    return "\n".join(lines) + "\n"


def outcomes(result: Result, effort: Effort) -> list[TrimOutcome]:
    """Return what became of each trim that has free walls."""
    found = []
    for plan in result.plans:
        free = tuple(s for s in result.splices if s.free and s.trim.name == plan.trim)
        if not free:
            continue
        pieces = [piece for piece in result.pieces if piece.trim == plan.trim]
        own = {piece.id: piece for one in free for piece in one.pieces()}
        usual = ask(
            result.job,
            result.job.trim(plan.trim),
            [own.get(piece.id, piece) for piece in pieces],
        )
        before = plan_stock(usual.problem, effort=effort)
        assert isinstance(before, Plan)
        found.append(
            TrimOutcome(
                name=plan.trim,
                pieces=len(pieces),
                cost=plan.cost,
                usual=Fraction(before.cost, usual.per_coin),
                anywhere=plan.anywhere or Fraction(0),
                proven=plan.status is Status.PROVEN,
            )
        )
    return found


def main() -> None:
    """Print a line for each trim, then the medians."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--houses", type=int, default=30)
    parser.add_argument("--seconds", type=float, default=10.0)
    choices = parser.parse_args()
    effort = Effort(seconds=choices.seconds)
    every: list[TrimOutcome] = []
    times: list[float] = []
    for seed in range(choices.houses):
        start = process_time()
        result = compile_job(house(seed), effort=effort)
        times.append(process_time() - start)
        assert result.ok, result.diagnostics[:3]
        for one in outcomes(result, effort):
            every.append(one)
            print(
                f"house {seed:2} {one.name:5} {one.pieces:4} pieces"
                f" {'proven' if one.proven else 'gap   '} {float(one.cost):9.2f}"
                f" usual places {float(one.usual):9.2f} anywhere {float(one.anywhere):9.2f}"
                f" saved {float(1 - one.cost / one.usual):7.3%}"
                f" open {float(1 - one.anywhere / one.cost):7.3%} {times[-1]:6.2f} s",
                flush=True,
            )
    saved = [float(1 - one.cost / one.usual) for one in every]
    left = [float(1 - one.anywhere / one.cost) for one in every]
    print(
        f"{len(every)} trims: cost {float(sum(one.cost for one in every)):.2f},"
        f" saved in the median {median(saved):.2%}, at most {max(saved):.2%};"
        f" open in the median {median(left):.2%}, at most {max(left):.2%},"
        f" proven wherever joined {sum(not x for x in left)}; where not, open in the median"
        f" {median([x for x in left if x] or [0.0]):.2%};"
        f" seconds a house {median(times):.2f}, {max(times):.2f}"
    )


if __name__ == "__main__":
    main()
