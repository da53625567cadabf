"""The planner's tables, one part after the other: ``python -m benchmarks``, or some by name.

    python -m benchmarks --instances FOLDER             all of them; hours on one core
    python -m benchmarks guards flats                   these two

Each part is a command of its own, with arguments of its own; this one runs them as the figures in
docs/stock.md and docs/many-jobs.md were measured.  Without a folder of published instances the
parts that need it are left out.
"""

from __future__ import annotations

import argparse
import subprocess
import sys
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Final

INSTANCES: Final = "INSTANCES"
FOLDER: Final = "FOLDER"

PARTS: Final[dict[str, tuple[tuple[str, ...], ...]]] = {
    "long-walls": (("long_walls",),),
    "guards": (("guards",),),
    "houses": (("stock",),),
    "published": (("stock", "--instances", INSTANCES, "--limit", "30", "--houses", "0"),),
    "hard": tuple(
        ("stock", "--instances", INSTANCES, "--rivals", "0", "--houses", "0", "--only", only)
        for only in ("Hard28", "AI", "ANI", "GI")
    ),
    "techniques": (("techniques", "--instances", INSTANCES),),
    "tape-marks": (("tape_marks",),),
    "flats": (
        ("flats", FOLDER, "--flats", "200"),
        ("flats", FOLDER, "--flats", "200", "--cluster"),
    ),
}
"""The commands of each part; in them two words stand for folders."""


def main() -> int:
    """Run the parts; the exit code is 1 if some command failed."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("parts", nargs="*", metavar="part", help=f"of {', '.join(PARTS)}")
    parser.add_argument("--instances", type=Path, help="folder of published instances")
    choices = parser.parse_args()
    unknown = [part for part in choices.parts if part not in PARTS]
    if unknown:
        parser.error(f"no part {unknown[0]}; there are {', '.join(PARTS)}")
    failed = 0
    with TemporaryDirectory() as folder:
        for part in choices.parts or PARTS:
            for command in PARTS[part]:
                if INSTANCES in command and choices.instances is None:
                    print(f"== {part}: left out without --instances", flush=True)
                    break
                words = {INSTANCES: str(choices.instances), FOLDER: f"{folder}/{part}"}
                asked = [words.get(word, word) for word in command]
                print(f"== {part}: python -m benchmarks.{' '.join(asked)}", flush=True)
                failed += (
                    subprocess.run(
                        [sys.executable, "-m", f"benchmarks.{asked[0]}", *asked[1:]]
                    ).returncode
                    != 0
                )
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
