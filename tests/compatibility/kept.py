"""What a kept job file means: enough to notice any change of the language.

Each release keeps the job files of its day in a folder of its own, with what
they meant then, the figures that their ``plan.json`` gave, and the digest of the whole file.
``python -m tests.compatibility.freeze`` adds the folder.  The figures and digests of 0.1.0 were
written by the build before joints could be said once, so that they hold what that change promised.
"""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import Any, Final

from trimlang.compiler import Result, check_job, compile_job
from trimlang.stock.planner import QUICK, Effort

HERE = Path(__file__).resolve().parent
VERSIONS = sorted(path.parent for path in HERE.glob("*/meaning.json"))
PARTS = "parts"
"""Where a version keeps files that others include; they are no jobs of their own."""


STEEPER: Final = "0.1.0 set outside corners to the nearest mark; the steeper one closes at the face"
MENDED: Final = {
    "0.1.0/bay": {
        piece: [(f" {nearest}/0 face", f" {steeper}/0 face", STEEPER)]
        for piece, nearest, steeper in (
            ("DR-N1-base", "45/2", "91/4"),
            ("DR-N2-base", "45/2", "91/4"),
            ("DR-N4-base", "45/2", "91/4"),
            ("DR-N5-base", "45/2", "91/4"),
        )
    },
}
"""What a kept job means otherwise since, by piece: what was, what is, and why it was a fault."""


TOLD_SINCE: Final = {
    "0.1.0/reference-06": [
        ("T323 line 7", "shoe was mitred round a corner where nothing meets it, without a word"),
    ],
}
"""What a kept job is told since, and why."""

MARKS: Final = "a length on a mark is written as the tape shows it, not as a decimal number"
ONE_NAIL: Final = "a piece of less than 2 in takes a nail in its middle, not at both ends"
FIGURES_MENDED: Final = {
    "0.1.0/reference-02": [("106 nail holes", "104 nail holes", ONE_NAIL)],
    "0.1.0/bay": [
        ("out-corner mitred 22.5 (22.5402)", "out-corner mitred 22.75 (22.5402)", STEEPER)
    ],
    "0.1.0/stair": [
        ("exact 28.3125 in", "exact 28 5/16 in", MARKS),
        ("exact 43.125 in", "exact 43 1/8 in", MARKS),
        ("exact 89.9375 in", "exact 89 15/16 in", MARKS),
    ],
}
"""What a kept plan.json gives otherwise since: what was, what is, and why."""

ADDED: Final = {"0.1.0": ("closings",)}
"""What a version's plan.json did not have yet, by its names at the top."""

PLAN_MENDED: Final = {
    "0.1.0/reference-02": [("106 nail holes", "104 nail holes", ONE_NAIL)],
    "0.1.0/bay": [('"saw_deg": 22.5,', '"saw_deg": 22.75,', STEEPER)],
    "0.1.0/stair": [
        ('"exact_text": "28.3125 in"', '"exact_text": "28 5/16 in"', MARKS),
        ('"exact_text": "43.125 in"', '"exact_text": "43 1/8 in"', MARKS),
        ('"exact_text": "89.9375 in"', '"exact_text": "89 15/16 in"', MARKS),
    ],
}
"""What a kept plan.json says otherwise since, in the text of the file: what was, what is, why."""

CHEAPER: Final = {
    "0.1.0/house": "where walls are parted is chosen with the sticks: 587.50, not 589.40"
}
"""Kept jobs that are laid out for less since, so that their sticks are other ones."""


def figures_mended(path: Path, kept: str) -> str:
    """Return the figures of a kept job with what has been put right since."""
    for was, now, _ in FIGURES_MENDED.get(f"{path.parent.name}/{path.stem}", []):
        assert was in kept, was
        kept = kept.replace(was, now)
    return kept


def plan_as_then(path: Path, now: dict[str, Any]) -> str:
    """Return the text of a job's plan.json as the earlier build wrote it.

    That is today's without what was added since, and with what was put right since undone.
    """
    added = ADDED.get(path.parent.name, ())
    plan = {name: value for name, value in now.items() if name not in added}
    told = {said.partition(" ")[0] for said, _ in TOLD_SINCE.get(_name(path), [])}
    plan["diagnostics"] = [one for one in plan["diagnostics"] if one["code"] not in told]
    text = json.dumps(plan, ensure_ascii=False, indent=1) + "\n"
    for was, now_said, _ in PLAN_MENDED.get(_name(path), []):
        assert now_said in text, now_said
        text = text.replace(now_said, was)
    return text


def _name(path: Path) -> str:
    return f"{path.parent.name}/{path.stem}"


def of_whole_walls(figures: str) -> list[str]:
    """Return the lines of the pieces that no plan parts, without the stick that they come from."""
    return [line.rpartition(" ; ")[0] for line in figures.splitlines() if " 1/1 ; " in line]


def mended(path: Path, pieces: dict[str, list[str]]) -> dict[str, list[str]]:
    """Return what a kept job's pieces meant, with what has been put right since."""
    right = dict(pieces)
    for piece, changes in MENDED.get(f"{path.parent.name}/{path.stem}", {}).items():
        for was, now, _ in changes:
            assert any(was in told for told in right[piece]), f"{piece}: {was} is not there"
            right[piece] = [told.replace(was, now) for told in right[piece]]
    return right


def job_files(folder: Path) -> list[Path]:
    """Return the kept jobs of a version."""
    return sorted(folder.glob("*.trim"))


def meaning(path: Path) -> dict[str, Any]:
    """Return the pieces as joined, before any plan chooses where long walls are parted."""
    result = check_job(path.read_text(encoding="utf-8"), path=path)
    return {
        "diagnostics": [f"{one.code} line {one.span.line}" for one in result.diagnostics],
        "pieces": {
            piece.id: [
                str(piece.to_mark),
                *(
                    f"{cut.joint} {cut.fit} {cut.setting}/{cut.bevel_setting} {cut.long_edge}"
                    for cut in (piece.left, piece.right)
                ),
            ]
            for piece in result.pieces
        },
    }


@cache
def compiled(path: Path, effort: Effort = QUICK) -> Result:
    """Return a kept job compiled; two tests look at it."""
    return compile_job(path.read_text(encoding="utf-8"), path=path, effort=effort)


def effort_for(path: Path) -> Effort:
    """Return as much effort as a build takes, where the layout of the sticks is to be the same."""
    return QUICK if f"{path.parent.name}/{path.stem}" in CHEAPER else Effort()


def cost(path: Path, effort: Effort | None = None) -> tuple[str, str]:
    """Return what the job costs and what it cannot cost less than."""
    result = compiled(path, effort or effort_for(path))
    return str(result.cost), str(result.bound)


def figures(plan: dict[str, Any]) -> str:
    """Return every figure of a plan.json that wood is cut and bought by, a line for each thing."""
    pieces = [
        " ".join(
            (
                piece["id"],
                f"{piece['length_in']} ({piece['length_text']}) {piece['measured_on']}",
                f"of stick {piece['stick_length_in']} of wall {piece['wall_in']}",
                f"exact {piece['exact_text']} {piece['rounded']} {piece['part']}/{piece['parts']}",
                *(
                    "; {joint} {fit} {saw_deg} ({exact_deg}) bevel {bevel_deg} {lean}"
                    " {long_edge}".format(**piece[side])
                    for side in ("left", "right")
                ),
                f"; {piece['stick']}",
            )
        )
        for piece in plan["pieces"]
    ]
    sticks = [
        f"{one['id']} {one['length_in']} ({one['source']}): {' '.join(one['pieces'])},"
        f" left {one['offcut_in']}"
        for one in plan["sticks"]
    ]
    order = [
        f"{one['what']} | {one['detail']} | {one['count']} | {one['each']} | {one['price']}"
        for one in plan["order"]
    ]
    return "\n".join([*pieces, *sticks, *order, f"cost {plan['summary']['cost']}"]) + "\n"
