"""What a kept job file means: enough to notice any change of the language.

Each release keeps the job files of its day in a folder of its own, with what
they meant then.  ``python -m tests.compatibility.freeze`` adds the folder.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any, Final

from trimlang.compiler import check_job, compile_job
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


def cost(path: Path, effort: Effort = QUICK) -> tuple[str, str]:
    """Return what the job costs and what it cannot cost less than."""
    result = compile_job(path.read_text(encoding="utf-8"), path=path, effort=effort)
    return str(result.cost), str(result.bound)
