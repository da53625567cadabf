"""What the sheets are printed on: a paper by name, or label stock of a stated size."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Final

from trimlang.lengths.tape import MM, decimal_text
from trimlang.lengths.units import INCHES_PER

PAPERS: Final = {"letter": "letter", "a4": "A4"}
"""The papers by the names that the command line takes."""

_SIZE: Final = re.compile(
    r"\s*(\d+(?:\.\d+)?)\s*(mm|cm|in)?\s*[x×]\s*(\d+(?:\.\d+)?)\s*(mm|cm|in)\s*", re.IGNORECASE
)
_LEAST: Final = (Fraction(40), Fraction(15))
_MOST: Final = Fraction(600)
_EDGE: Final = Fraction(2)
"""Label printers leave about so much blank at each edge (mm; common practice, no source)."""


class UnknownPaperError(ValueError):
    """No paper of that name, or no label of that size."""


@dataclass(frozen=True, slots=True)
class Label:
    """A label, in millimetres."""

    across: Fraction
    down: Fraction

    @property
    def inside(self) -> tuple[Fraction, Fraction]:
        """What a ticket may fill of it: across and down."""
        return self.across - 2 * _EDGE, self.down - 2 * _EDGE

    @property
    def size(self) -> str:
        """The size as one writes it: ``100mm x 50mm``."""
        return " x ".join(f"{decimal_text(side, 1)}mm" for side in (self.across, self.down))

    @property
    def rule(self) -> str:
        """The page rule for this label: no margin boxes."""
        size = " ".join(f"{decimal_text(side, 2)}mm" for side in (self.across, self.down))
        boxes = ("top-left", "top-right", "bottom-left", "bottom-right")
        return f"@page {{ size: {size}; margin: {_EDGE}mm; " + (
            " ".join(f"@{box} {{ content: none; }}" for box in boxes) + " }"
        )


def page_rule(paper: str) -> str:
    """Return the page rule for a paper by name.

    Raises:
        UnknownPaperError: there is no such paper.
    """
    if paper.lower() not in PAPERS:
        raise UnknownPaperError(f"no paper {paper!r}; there are: {', '.join(PAPERS)}")
    return f"@page {{ size: {PAPERS[paper.lower()]}; }}"


def label(size: str) -> Label:
    """Read a label's size: ``100mm x 50mm``, ``4in x 2in``, ``100x50 mm``.

    Raises:
        UnknownPaperError: it is no size, or one that no ticket fits on.
    """
    match = _SIZE.fullmatch(size)
    if match is None:
        raise UnknownPaperError(f"{size!r} is no label size; write it like 100mm x 50mm")
    across, own, down, last = match.groups()
    sides = [
        Fraction(number) * INCHES_PER[unit.lower()] / MM
        for number, unit in ((across, own or last), (down, last))
    ]
    if sides[0] < _LEAST[0] or sides[1] < _LEAST[1] or max(sides) > _MOST:
        raise UnknownPaperError(
            f"a label of {size} does not hold a ticket;"
            f" from {_LEAST[0]}mm x {_LEAST[1]}mm to {_MOST}mm a side"
        )
    return Label(*sides)
