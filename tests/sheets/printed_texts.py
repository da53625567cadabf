"""Every stretch of text of a PDF where it is printed, read from the file's own operators.

Drawings are forms within the page, so that their texts come with the rest; turned text keeps its
turn.  Written from the definitions of ISO 32000-1 (text and graphics state), from memory.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from functools import cached_property
from io import BytesIO
from itertools import combinations
from typing import Any

from pypdf import PdfReader
from pypdf.generic import ContentStream

Matrix = tuple[float, float, float, float, float, float]
WHOLE: Matrix = (1, 0, 0, 1, 0, 0)
INK = (0.04, 0.66)
"""From where to where above its base line a line of text has most of its ink, in its size."""
SLACK = 0.35
"""Points that two stretches may overlap: rounding in the layout, not ink."""


def times(one: Matrix, other: Matrix) -> Matrix:
    """The matrix that does first one and then the other."""
    a, b, c, d, e, f = one
    p, q, r, s, t, u = other
    return (
        a * p + b * r, a * q + b * s, c * p + d * r, c * q + d * s,
        e * p + f * r + t, e * q + f * s + u,
    )  # fmt: skip


@dataclass(frozen=True)
class Printed:
    """A stretch of text: where its line begins and goes, how far and how large (points)."""

    text: str
    at: Matrix
    long: float
    size: float

    @cached_property
    def corners(self) -> tuple[tuple[float, float], ...]:
        """The corners of its ink, in order."""
        low, high = (self.size * part for part in INK)
        a, b, c, d, e, f = self.at
        return tuple(
            (a * x + c * y + e, b * x + d * y + f)
            for x, y in ((0, low), (self.long, low), (self.long, high), (0, high))
        )

    @property
    def height(self) -> float:
        """How large it is printed (points)."""
        return self.size * (self.at[2] ** 2 + self.at[3] ** 2) ** 0.5

    def over(self, other: Printed) -> bool:
        """Whether their ink overlaps by more than the slack."""
        return all(
            _shared(self.corners, other.corners, side) > SLACK
            for corners in (self.corners, other.corners)
            for side in ((corners[0], corners[1]), (corners[1], corners[2]))
        )


def _shared(
    one: tuple[tuple[float, float], ...],
    other: tuple[tuple[float, float], ...],
    side: tuple[tuple[float, float], tuple[float, float]],
) -> float:
    """How far two convex shapes overlap across the direction of a side."""
    (ax, ay), (bx, by) = side
    across = (ay - by, bx - ax)
    size = (across[0] ** 2 + across[1] ** 2) ** 0.5 or 1.0
    ones, others = (
        [(x * across[0] + y * across[1]) / size for x, y in shape] for shape in (one, other)
    )
    return min(max(ones), max(others)) - max(min(ones), min(others))


@dataclass
class _Font:
    """A font of two bytes a letter: how wide its letters are, and what they stand for."""

    raw: Any
    widths: dict[int, float] = field(default_factory=dict)
    letters: dict[int, str] = field(default_factory=dict)

    def __post_init__(self) -> None:
        below = self.raw["/DescendantFonts"][0].get_object()
        items = list(below.get("/W", []))
        while items:
            first, then = int(items.pop(0)), items.pop(0)
            if isinstance(then, list):
                self.widths |= {first + place: float(one) for place, one in enumerate(then)}
            else:
                wide = float(items.pop(0))
                self.widths |= dict.fromkeys(range(first, int(then) + 1), wide)
        self.usual = float(below.get("/DW", 1000))
        table = self.raw["/ToUnicode"].get_object().get_data().decode("latin-1")
        for line in table.splitlines():
            parts = line.split()
            if len(parts) == 2 and all(part[0] == "<" and part[-1] == ">" for part in parts):
                code, text = (bytes.fromhex(part[1:-1]) for part in parts)
                self.letters[int.from_bytes(code)] = text.decode("utf-16-be", "replace")

    def read(self, raw: bytes) -> tuple[str, float]:
        """The text and how wide it is, in thousandths of its size."""
        codes = [int.from_bytes(raw[place : place + 2]) for place in range(0, len(raw), 2)]
        text = "".join(self.letters.get(code, "?") for code in codes)
        return text, sum(self.widths.get(code, self.usual) for code in codes)


class _Reading:
    """Goes through the operators of a page and of the forms that it shows."""

    def __init__(self, reader: PdfReader) -> None:
        self._reader = reader
        self._fonts: dict[int, _Font] = {}

    def texts(self, holder: Any, stream: Any, matrix: Matrix) -> Iterator[Printed]:
        resources = holder["/Resources"].get_object()
        kept: list[Matrix] = []
        font, size, line = None, 0.0, WHOLE
        for given, name in ContentStream(stream, self._reader).operations:
            match name:
                case b"q":
                    kept.append(matrix)
                case b"Q":
                    matrix = kept.pop()
                case b"cm":
                    matrix = times(tuple(map(float, given)), matrix)  # type: ignore[arg-type]
                case b"BT":
                    line = WHOLE
                case b"Tf":
                    raw = resources["/Font"].get_object()[given[0]].get_object()
                    font = self._fonts.setdefault(id(raw), _Font(raw))
                    size = float(given[1])
                case b"Tm":
                    line = tuple(map(float, given))  # type: ignore[assignment]
                case b"Td":
                    line = times((1, 0, 0, 1, float(given[0]), float(given[1])), line)
                case b"Tj" | b"TJ":
                    assert font is not None
                    parts = given[0] if name == b"TJ" else given
                    text, long = "", 0.0
                    for part in parts:
                        if isinstance(part, int | float):
                            long -= float(part)
                            continue
                        raw = part if isinstance(part, bytes) else part.original_bytes
                        said, wide = font.read(raw)
                        text, long = text + said, long + wide
                    long *= size / 1000
                    if text.strip():
                        yield Printed(text, times(line, matrix), long, size)
                    line = times((1, 0, 0, 1, long, 0), line)
                case b"Do":
                    form = resources["/XObject"].get_object()[given[0]].get_object()
                    if form["/Subtype"] == "/Form":
                        own = tuple(map(float, form.get("/Matrix", WHOLE)))
                        yield from self.texts(form, form, times(own, matrix))  # type: ignore[arg-type]


def printed_pages(pdf: bytes) -> list[list[Printed]]:
    """Every page's stretches of text."""
    reader = PdfReader(BytesIO(pdf))
    reading = _Reading(reader)
    return [list(reading.texts(page, page["/Contents"], WHOLE)) for page in reader.pages]


def overlaps(texts: list[Printed]) -> list[tuple[str, str]]:
    """The pairs of a page's texts that lie on one another."""
    return [(one.text, other.text) for one, other in combinations(texts, 2) if one.over(other)]


def off_the_page(texts: list[Printed], size: tuple[float, float]) -> list[str]:
    """The texts that reach over the edge of a page of that size (points)."""
    wide, tall = size
    return [
        one.text
        for one in texts
        if not all(-1 <= x <= wide + 1 and -1 <= y <= tall + 1 for x, y in one.corners)
    ]
