"""What walls get besides running trim: what surrounds their openings, and boxes."""

from __future__ import annotations

from fractions import Fraction

from trimlang.diagnostics import Span
from trimlang.record import record


@record
class Trimmings:
    """What an opening gets besides the legs and the head of its casing, by the trims' names.

    ``stool`` is the board under a window and ``apron`` what covers the wall below it; ``jambs``
    are strips that bring the jamb out to the wall's face.  ``four_sides`` tells that the
    casing goes on below, ``both_faces`` that the wall's other side is cased alike.
    """

    stool: str | None = None
    apron: str | None = None
    jambs: str | None = None
    four_sides: bool = False
    both_faces: bool = False

    @property
    def trims(self) -> tuple[str, ...]:
        """The trims that are named."""
        return tuple(name for name in (self.stool, self.apron, self.jambs) if name is not None)


@record
class WallBoxes:
    """Frames on a wall: ``count`` boxes of one width and height with wall between them.

    ``margins`` are the wall before, between and behind them, one more than there are boxes;
    together with the widths they are as long as the run.  Along a run that climbs, widths and
    margins are along its slope (degrees, more than 0 rising to the right) and the sides stand
    plumb.  ``label`` is what the set is called on a piece's id, empty for a run's only one.
    Lengths in inches.
    """

    run: str
    label: str
    count: int
    wide: Fraction
    tall: Fraction
    margins: tuple[Fraction, ...]
    trim: str
    slope: Fraction
    note: str | None
    span: Span
