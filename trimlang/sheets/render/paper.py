"""What the sheets are printed on: paper by name, or label stock of a given size."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import Final

from trimlang.lengths.tape import MM, Unit, decimal_text
from trimlang.lengths.units import in_inches
from trimlang.record import record
from trimlang.sheets.drawing.typeface import shortened
from trimlang.sheets.wording.catalogue import Words

PAPERS: Final = {"letter": "letter", "a4": "A4"}
"""The papers by the names that the command line takes."""


def usual_paper(unit: Unit) -> str:
    """Return the paper that is at hand where people measure in a unit."""
    return "a4" if unit is Unit.MM else "letter"


MARGINS: Final = (14.0, 11.0, 12.0)
"""What a page leaves free above, at each side and below (mm), as ``sheets.css`` has it."""
ROUNDED: Final = 0.3
"""What rows may come out taller together than they are (mm) and still stand on the page."""
GAP: Final = 2.0
"""What is left between two tickets (mm): room for the scissors."""

_SIZE: Final = re.compile(
    r"\s*(\d+(?:\.\d+)?)\s*(mm|cm|in)?\s*[x×]\s*(\d+(?:\.\d+)?)\s*(mm|cm|in)\s*", re.IGNORECASE
)
_LEAST: Final = (Fraction(40), Fraction(15))
_MOST: Final = Fraction(600)
JOB_WIDE: Final = 130.0
"""How long a job's name may be in the head of a page (mm)."""
_EDGE: Final = Fraction(2)
"""Label printers leave about this much blank at each edge (mm; common practice, no source)."""


@record
class Area:
    """What the tickets of a page may fill, in millimetres."""

    across: float
    down: float

    @property
    def column(self) -> float:
        """The width of one of two tickets side by side."""
        return (self.across - GAP) / 2


def _area(across: float, down: float) -> Area:
    above, aside, below = MARGINS
    return Area(across - 2 * aside, down - above - below - ROUNDED)


LETTER: Final = _area(215.9, 279.4)
AREAS: Final = {"letter": LETTER, "a4": _area(210.0, 297.0)}
"""What the tickets of a page may fill, by the names of ``PAPERS``."""


class UnknownPaperError(ValueError):
    """No paper of that name, or no label of that size."""


@record
class LabelSize:
    """A label, in millimetres."""

    across: Fraction
    down: Fraction

    @property
    def inside(self) -> tuple[Fraction, Fraction]:
        """What a ticket may fill: across and down (mm)."""
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


def page_rule(paper: str, *, on_its_side: bool = False) -> str:
    """Return the page rule for a paper by name, upright or ``on_its_side``.

    Raises:
        UnknownPaperError: there is no such paper.
    """
    if paper.lower() not in PAPERS:
        raise UnknownPaperError(f"no paper {paper!r}; there are: {', '.join(PAPERS)}")
    lies = " landscape" if on_its_side else ""
    return f"@page {{ size: {PAPERS[paper.lower()]}{lies}; }}"


def running(job: str, sheet: str, revision: str, words: Words) -> str:
    """Return the CSS rule for the head and foot of every page."""
    # The numbers are known only when the page is laid out: two characters that no text has mark
    # where CSS puts its counters.
    page = words("page {n} of {all}", n="\0", all="\1")
    parts = [
        {"\0": "counter(page)", "\1": "counter(pages)"}.get(part) or _quoted(part)
        for part in re.split("([\0\1])", page)
        if part
    ]
    boxes = {
        # below the job: what the page before left off at, where a sheet sets that
        "top-left": _quoted(shortened(job, JOB_WIDE, 8 * 25.4 / 72)) + " string(goes-on, start)",
        "top-right": _quoted(sheet),
        "bottom-left": _quoted(words("revision {revision}", revision=revision)),
        "bottom-right": " ".join(parts),
    }
    rules = " ".join(f"@{box} {{ content: {content}; }}" for box, content in boxes.items())
    return f"@page {{ {rules} }}"


def _quoted(text: str) -> str:
    """Return a text as a CSS string that cannot end the string or the style element around it."""
    return '"' + "".join(c if c.isalnum() or c == " " else f"\\{ord(c):x} " for c in text) + '"'


def label(size: str) -> LabelSize:
    """Read a label's size: ``100mm x 50mm``, ``4in x 2in``, ``100x50 mm``.

    Raises:
        UnknownPaperError: it is no size, or one that no ticket fits on.
    """
    match = _SIZE.fullmatch(size)
    if match is None:
        raise UnknownPaperError(f"{size!r} is no label size; write it like 100mm x 50mm")
    # “100x50 mm”: the first number takes the second one's unit.
    across, own, down, last = match.groups()
    sides = [
        in_inches(Fraction(number), unit.lower()) / MM
        for number, unit in ((across, own or last), (down, last))
    ]
    if sides[0] < _LEAST[0] or sides[1] < _LEAST[1] or max(sides) > _MOST:
        raise UnknownPaperError(
            f"a label of {size} does not hold a ticket;"
            f" from {_LEAST[0]}mm x {_LEAST[1]}mm to {_MOST}mm a side"
        )
    return LabelSize(*sides)
