"""What it costs that every mark of a plan is on the tape: python -m benchmarks.tape_marks

Invented jobs of one trim, 40 runs each, planned in sixteenths as a hand marks them and in
sixty-fourths as no hand does.  Both plans are proven; the costs are compared.
"""

from __future__ import annotations

from fractions import Fraction
from random import Random
from unittest.mock import PropertyMock, patch

from trimlang.compiler import Result, compile_job
from trimlang.settings.table import Settings
from trimlang.stock.planner import Effort

JOBS = 20
FINE = Fraction(1, 64)


def job(seed: int, kerf: str, joints: tuple[str, ...]) -> str:
    """Return a job file of 40 runs in an open walk."""
    random = Random(seed)
    runs = []
    for number in range(40):
        sixteenths = random.choice([random.randint(160, 1500)] * 3 + [random.randint(1500, 2900)])
        left, right = random.choice(joints), random.choice(joints)
        runs.append(f"  R{number}: {sixteenths}/16 in, left={left}, right={right}\n  bare 3 in\n")
    return (
        f"trim base: 9/16 in thick, 5 1/4 in tall\nsaw: kerf {kerf} in, squares off 1/4 in\n"
        "spare 0 %\nstock base: 8 ft at 11.60, 12 ft at 17.40, 16 ft at 24.10,"
        " pack of 10 12 ft at 158.00\non-hand base: 2 of 61 1/2 in\n"
        f'room "Den", trim base, open walk\n{"".join(runs)}'
    )


def planned(text: str) -> Result:
    """Compile with five seconds for a proof."""
    return compile_job(text, effort=Effort(seconds=5.0))


def main() -> None:
    """Print a line for each kerf and kind of ends."""
    kinds = {"square": ("butt",), "mitred": ("in-corner", "in-corner", "out-corner", "butt")}
    for kerf in ("1/8", "3/32"):
        for name, joints in kinds.items():
            fine: list[Fraction] = []
            marked: list[Fraction] = []
            proven = 0
            for seed in range(JOBS):
                text = job(seed, kerf, joints)
                with patch.object(Settings, "tape_step", PropertyMock(return_value=FINE)):
                    fine.append(planned(text).cost)
                on_tape = planned(text)
                marked.append(on_tape.cost)
                proven += on_tape.cost == on_tape.bound
            dearer = [
                (one - other) / other
                for one, other in zip(marked, fine, strict=True)
                if one > other
            ]
            more = float(sum(marked) / sum(fine) - 1)
            print(
                f"kerf {kerf:>4}, {name}: {more:.3%} dearer in all, {len(dearer)} of {JOBS} jobs,"
                f" {float(max(dearer, default=Fraction(0))):.2%} at worst; {proven} proven"
            )


if __name__ == "__main__":
    main()
