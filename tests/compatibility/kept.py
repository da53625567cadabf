"""What a kept job file means: enough to notice any change of the language.

Each release keeps the job files of its day in a folder of its own, with what
they meant then.  ``python -m tests.compatibility.freeze`` adds the folder.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

from trimlang.compiler import check_job, compile_job
from trimlang.stock.planner import QUICK, Effort

HERE = Path(__file__).resolve().parent
VERSIONS = sorted(path.parent for path in HERE.glob("*/meaning.json"))
PARTS = "parts"
"""Where a version keeps files that others include; they are no jobs of their own."""


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


def cost(path: Path, effort: Effort = QUICK) -> tuple[str, str]:
    """Return what the job costs and what it cannot cost less than."""
    result = compile_job(path.read_text(encoding="utf-8"), path=path, effort=effort)
    return str(result.cost), str(result.bound)
