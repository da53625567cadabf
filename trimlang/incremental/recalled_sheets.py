"""The press of ``build --watch``: it prints the same job again and again."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

from trimlang.incremental.recall import Shelf
from trimlang.sheets.render.template_filling import Press


class WarmPress(Press):
    """A press that keeps drawings from one set of sheets to the next.

    ``look_up`` is called before each sheet; what it raises ends the printing.
    """

    def __init__(self, own: Path | None, look_up: Callable[[], None]) -> None:
        super().__init__(own)
        self.kept = Shelf()
        self._look_up = look_up

    def sheet(self, name: str, context: Mapping[str, object]) -> str:
        """Fill the template ``name``, unless the sheets are out of date by now."""
        self._look_up()
        return super().sheet(name, context)
