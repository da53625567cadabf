"""Break the code on purpose and see whether the tests notice: ``python -m benchmarks.mutation``.

    python -m benchmarks.mutation --work /tmp/mutants            lengths, joinery, the
                                                                 verifier, the closing
    python -m benchmarks.mutation lengths --work /tmp/mutants    one part
    python -m benchmarks.mutation site-log --sample 150 --seed 2 --work /tmp/mutants
    python -m benchmarks.mutation --work /tmp/mutants --again    unexplained survivors once more
    python -m benchmarks.mutation --work /tmp/mutants --tell     what was found before

One small change after another is made, and the tests that reach it run until one fails.
What no test notices must stand in ``survivors.toml`` with the reason why it does no harm.
A run that was cut short goes on where it was; ``--work`` keeps what was found.
"""

from __future__ import annotations

import argparse
import json
import sys
import tomllib
from collections import Counter, defaultdict
from pathlib import Path
from random import Random

import pytest

from benchmarks.mutation.mutants import Mutant, all_mutants
from benchmarks.mutation.trial import CAUGHT, Died, Trial

ROOT = Path(__file__).resolve().parent.parent.parent
EXPLAINED = Path(__file__).with_name("survivors.toml")
TARGETS = {
    "lengths": ("trimlang/lengths/*.py",),
    "joinery": ("trimlang/joinery/*.py",),
    "verifier": ("trimlang/stock/checking/verify.py",),
    "survey": tuple(
        f"trimlang/survey/{name}.py"
        for name in ("closing", "misfit", "settling", "slips", "corner_slips", "opening_slips",
                     "misreadings", "adjusting", "verdict", "soundness", "even_errors", "crooked",
                     "chi_squared", "skipped_walls", "unsaid_corners", "shared_openings",
                     "diagonals")
    ),
    "site-log": tuple(
        f"trimlang/site_log/{name}.py"
        for name in ("replay", "rack", "cut_lengths", "which_stick", "left_plan", "what_is_left",
                     "whole_units", "replan", "under_way", "progress_of_job", "trim_progress")
    ),
    "numbers": tuple(
        f"trimlang/sheets/content/{name}.py"
        for name in ("ticket", "ticket_ends", "ticket_text", "stick_layouts", "saw_sheet", "mates",
                     "left_to_cut")
    ),
    "order": tuple(
        f"trimlang/sheets/content/{name}.py"
        for name in ("stock_order", "order_reasons", "proofs")
    ),
}  # fmt: skip
JOB_TO_PIECES = (
    "tests/joinery",
    "tests/published",
    "tests/proof/test_oracle_rooms.py",
    "tests/compatibility",
    "tests/diagnostics/test_pages.py",
)
# the quick ones: no PDF, no browser
SHEETS = (
    "tests/sheets/test_all_on_a_ticket.py",
    "tests/sheets/test_cut_order.py",
    "tests/sheets/test_drawings.py",
    "tests/sheets/test_pages.py",
    "tests/sheets/test_plan_csv.py",
    "tests/sheets/test_saw_pictures.py",
    "tests/sheets/test_solids_from_words.py",
    "tests/sheets/test_stick_cuts.py",
    "tests/sheets/test_stick_numbers.py",
    "tests/sheets/test_sticks_in_words.py",
    "tests/sheets/test_tickets.py",
)
TESTS = {
    "trimlang.lengths": JOB_TO_PIECES,
    "trimlang.joinery": JOB_TO_PIECES,
    "trimlang.joinery.splice_choices": (*JOB_TO_PIECES, "tests/planning/test_placing.py"),
    "trimlang.stock.checking.verify": ("tests/stock/test_verify.py",),
    "trimlang.survey": (
        "tests/survey",
        "tests/diagnostics/test_mending.py",
        "tests/diagnostics/test_pages.py",
    ),
    "trimlang.site_log": (
        "tests/site_log",
        "tests/laws/test_site_log.py",
        "tests/diagnostics/test_pages.py",
        "tests/planning/test_minimum_order.py",
        "tests/planning/test_more_joints.py",
        "tests/planning/test_one_batch.py",
        "tests/planning/test_sold_together.py",
        "tests/planning/test_supplier_order.py",
        "tests/story",
    ),
    "trimlang.sheets.content": SHEETS,
    **dict.fromkeys(
        (f"trimlang.sheets.content.{name}" for name in ("stock_order", "order_reasons", "proofs")),
        (*SHEETS, "tests/sheets/test_order_claims.py", "tests/sheets/test_order_words.py"),
    ),
}
# slow ones: they try the judge with whole jobs, print a PDF, or go through every drawing
LEFT_OUT = "not (the_oracle_sees or in_the_pdf or in_every_drawing or way_to_lie)"


def tests_of(mutant: Mutant) -> tuple[str, ...]:
    """Return the tests that are there for the mutant's part."""
    own = max((part for part in TESTS if mutant.module.startswith(part)), key=len)
    return TESTS[own]


def found_before(results: Path) -> dict[str, dict[str, str]]:
    """Return what earlier runs wrote down, by the mutant's key."""
    if not results.exists():
        return {}
    rows = [json.loads(line) for line in results.read_text(encoding="utf-8").splitlines()]
    return {row["key"]: row for row in rows}


def explanations() -> dict[str, str]:
    """Return why each mutant that stands in the list does no harm, by its name."""
    groups = tomllib.loads(EXPLAINED.read_text(encoding="utf-8"))["harmless"]
    return {name: group["why"] for group in groups for name in group["mutants"]}


def tell(mutants: list[Mutant], found: dict[str, dict[str, str]], everything: set[str]) -> None:
    """Print the figures of each module, and every survivor that nothing explains.

    ``everything`` are the names of all mutants there are, of which these may be a sample.
    """
    why = explanations()
    figures: defaultdict[str, Counter[str]] = defaultdict(Counter)
    alive: list[str] = []
    noticed: set[str] = set()
    for mutant in mutants:
        status = found.get(mutant.key, {}).get("status", "not tried")
        if status in CAUGHT:
            noticed.add(mutant.name)
            status = "killed"
        elif mutant.name in why and status != "not tried":
            status = "explained"
        elif status != "not tried":
            alive.append(f"{mutant.name}   ({status})")
            status = "unexplained"
        figures[mutant.module][status] += 1
    columns = ("killed", "explained", "unexplained", "not tried")
    print(f"{'module':32}" + "".join(f"{name:>12}" for name in ("mutants", *columns)))
    for module, counts in sorted(figures.items()):
        row = (sum(counts.values()), *(counts[name] for name in columns))
        print(f"{module:32}" + "".join(f"{count:12}" for count in row))
    total = sum(figures.values(), Counter())
    tried = sum(total.values()) - total["not tried"]
    print(
        f"\nkilled {total['killed']} of {tried} ({100 * total['killed'] / max(tried, 1):.1f} %),"
        f" explained {total['explained']}, unexplained {total['unexplained']}"
        f"{', not tried ' + str(total['not tried']) if total['not tried'] else ''}"
    )
    modules = {mutant.module.removeprefix("trimlang.") for mutant in mutants}
    for name in why:
        if name not in everything and name.partition(": ")[0].rsplit(".", 1)[0] in modules:
            print(f"explained and no longer there: {name}")
        elif name in noticed:
            print(f"explained and killed: {name}")
    print("", *alive, sep="\n")


def main() -> int:
    """Try what is not yet tried, and tell."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("targets", nargs="*", choices=[[], *TARGETS], default=[])
    parser.add_argument("--work", type=Path, required=True, help="a folder for what is found")
    parser.add_argument("--again", action="store_true", help="try unexplained survivors again")
    parser.add_argument("--tell", action="store_true", help="only print what was found before")
    parser.add_argument("--sample", type=int, metavar="N", help="no more of each part, by chance")
    parser.add_argument("--seed", type=int, default=0, help="another one draws another sample")
    options = parser.parse_args()
    options.work.mkdir(parents=True, exist_ok=True)
    results = options.work / "results.jsonl"
    mutants: list[Mutant] = []
    everything: set[str] = set()
    for name in options.targets or TARGETS:
        part = all_mutants(ROOT, TARGETS[name])
        everything |= {mutant.name for mutant in part}
        if options.sample is not None and options.sample < len(part):
            part = Random(f"{name} {options.seed}").sample(part, options.sample)
        mutants += part
    found = found_before(results)
    left = [
        mutant
        for mutant in mutants
        if mutant.key not in found or (options.again and found[mutant.key]["status"] not in CAUGHT)
    ]
    if left and not options.tell:
        chosen = {test for mutant in left for test in tests_of(mutant)}
        arguments = ["-q", "--rootdir", str(ROOT), "-k", LEFT_OUT]
        for plugin in ("cacheprovider", "xdist", "cov", "asyncio"):
            arguments += ["-p", f"no:{plugin}"]
        try:
            pytest.main(
                [*arguments, *sorted(str(ROOT / test) for test in chosen)],
                plugins=[Trial(ROOT, left, tests_of, results)],
            )
        except Died:
            return 1
        found = found_before(results)
    tell(mutants, found, everything)
    return 0


if __name__ == "__main__":
    sys.exit(main())
