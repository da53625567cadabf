"""Has the libraries do ahead what they would do at every start: see ``trimlang/made_ahead.py``.

A wheel gets what they made inside it; an editable install gets it beside the source,
where git ignores it.  Nothing is fetched.
"""

from __future__ import annotations

import shutil
import sys
from pathlib import Path
from tempfile import mkdtemp
from typing import Any

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

_INSIDE = "trimlang/made"


class MakeAhead(BuildHookInterface[Any]):
    """Hatchling's hook for the wheel, plain or editable."""

    def initialize(self, version: str, build_data: dict[str, Any]) -> None:
        """Make everything, and say where it goes."""
        root = Path(self.root)
        self._work = Path(mkdtemp(prefix="trimlang-"))
        if version == "editable":
            make_in_place(root, self._work)
        else:
            made = self._work / "made"
            made.mkdir()
            make_ahead(root, made)
            build_data["force_include"][str(made)] = _INSIDE

    def finalize(self, *_: object) -> None:
        """Clear up."""
        shutil.rmtree(self._work, ignore_errors=True)


def make_in_place(root: Path, work: Path) -> None:
    """Make everything anew beside the source below ``root``; ``work`` is an empty folder for it."""
    made, kept = work / "made", root / _INSIDE
    made.mkdir()
    make_ahead(root, made)
    # in one step each: a trimlang that runs meanwhile finds the old or the new
    if kept.exists():
        kept.rename(work / "old")
    shutil.move(made, kept)


def make_ahead(root: Path, into: Path) -> None:
    """Write into a folder what the trimlang below ``root`` looks for in ``trimlang/made``."""
    sys.path.insert(0, str(root))
    try:
        from trimlang.language.grammar import make_parser
        from trimlang.lengths.units import make_factors
        from trimlang.sheets.render.template_filling import make_compiled
    finally:
        sys.path.remove(str(root))
    for make in (make_parser, make_factors, make_compiled):
        make(into)
