"""The sheets' drawings as PDF operators, the short way.

WeasyPrint reads SVG with everything that SVG can say, works out some thirty properties of every
stroke, and shapes every text once whole and again letter by letter: a seventh of the time of a
PDF.  The drawings of the sheets are strokes, areas and single lines of text, and their numbers
can stand in a PDF as they are.  A drawing that says more, from a template of the user's own, is
left to WeasyPrint.
"""

from __future__ import annotations

import atexit
import re
from collections.abc import Callable, Mapping
from functools import cache, lru_cache
from math import cos, inf, radians, sin
from typing import TYPE_CHECKING, Any, Final

from trimlang.record import record
from trimlang.sheets.render.page_tree import SVG

if TYPE_CHECKING:
    from xml.etree.ElementTree import Element

_NUMBER: Final = r"-?(?:\d+\.?\d*|\.\d+)"
_NUMBERS: Final = re.compile(_NUMBER)
_STEP: Final = re.compile(rf"([MLHVZz])|({_NUMBER})")
_PATH: Final = re.compile(r"[MLHVZz\d., \n-]*")
_TURN: Final = re.compile(rf"rotate\(({_NUMBER})[ ,]+({_NUMBER})[ ,]+({_NUMBER})\)")
_COLOUR: Final = re.compile(r"#(?:[0-9a-f]{3}|[0-9a-f]{6})")
_ROUND: Final = 0.5523
"""How far the handles of a quarter of a circle reach, in its radius, drawn as a Bézier curve."""

_FOR_READERS: Final = frozenset({"class", "role", "aria-label", "id", "style"})
"""What a drawing and its parts say to readers and to styles, which paints nothing by itself."""
_PAINTED: Final = frozenset({"fill", "stroke", "stroke-width", "stroke-dasharray"})
_OF_TEXT: Final = frozenset(
    {"x", "y", "transform", "text-anchor", "font-size", "font-weight", "font-family", "fill"}
)
_ANCHORS: Final = {"start": 0.0, "middle": 0.5, "end": 1.0}


class MoreThanLinesError(ValueError):
    """A drawing says something that is not read here."""


@record
class _Text:
    """One line of text: where its anchor stands, its turn to the right, and its looks."""

    text: str
    at: tuple[float, float]
    turn: float
    before: float
    family: str
    size: float
    weight: int
    ink: bytes


class LineDrawing:
    """A drawing as WeasyPrint takes an image: it has a shape, and draws itself on a page."""

    def __init__(self, svg: Element, context: Any) -> None:
        """Read a drawing.

        Raises:
            MoreThanLinesError: it says something that is not read here.
        """
        _only(svg.attrib, _FOR_READERS | {"viewBox", "aria-hidden"})
        box = [float(number) for number in _NUMBERS.findall(svg.get("viewBox", ""))]
        if len(box) != 4 or box[2] <= 0 or box[3] <= 0:
            raise MoreThanLinesError("a drawing of no size")
        self._left, self._top, self._wide, self._tall = box
        self._context = context
        # Flat ends, sharp corners and the limit that SVG has for them: a page before may have left
        # others.
        self._parts: list[bytes | _Text] = [b"0 J 0 j 4 M"]
        for element in getattr(svg, "drawn", svg):
            tag = element.tag.removeprefix(SVG)
            if tag == "title":
                continue
            if len(element):
                raise MoreThanLinesError("parts within parts")
            self._parts.append(_text(element) if tag == "text" else _shape(tag, element.attrib))

    def get_intrinsic_size(self, *_asked: object) -> tuple[None, None, float]:
        """Return no width, no height, and how wide it is for its height."""
        return None, None, self._wide / self._tall

    def draw(self, stream: Any, wide: float, tall: float, _style: object) -> None:
        """Draw it on a stream of WeasyPrint's, as large as fits and in the middle."""
        scale = min(wide / self._wide, tall / self._tall)
        stream.transform(
            a=scale,
            d=scale,
            e=(wide - self._wide * scale) / 2 - self._left * scale,
            f=(tall - self._tall * scale) / 2 - self._top * scale,
        )
        for part in self._parts:
            if isinstance(part, bytes):
                stream.stream.append(part)
            else:
                self._write(stream, part)

    def _write(self, stream: Any, part: _Text) -> None:
        from weasyprint.draw.text import draw_first_line
        from weasyprint.matrix import Matrix
        from weasyprint.svg.text import TextBox
        from weasyprint.text.line_break import split_first_line

        style = _looks(part.family, part.size, part.weight, self._context.font_config)
        layout, _, _, wide, _, baseline = split_first_line(part.text, style, self._context, inf, 0)
        (x, y), across = part.at, -part.before * wide
        down, right = sin(part.turn), cos(part.turn)
        box = TextBox(layout, style)
        box.baseline = baseline
        stream.stream.append(part.ink)
        stream.begin_text()
        layout.reactivate(style)
        turned = Matrix(right, down, down, -right, x + across * right, y + across * down)
        draw_first_line(stream, box, "none", "none", turned)
        layout.deactivate()
        stream.end_text()


def drawn_short(left_to: Callable[..., Any]) -> Callable[..., Any]:
    """Return a reader of ``<svg>`` for WeasyPrint that leaves what it cannot read to another."""
    from weasyprint.html import make_replaced_box

    def read(element: Any, box: Any, images: Any, base_url: Any) -> Any:
        try:
            drawing = LineDrawing(element, images.keywords["context"])
        # Another drawing, of a user's template perhaps, is drawn the slow way, not wrongly.
        except MoreThanLinesError:
            element.extend(getattr(element, "drawn", ()))
            return left_to(element, box, images, base_url)
        return [make_replaced_box(element, box, drawing)]

    return read


def _only(said: Mapping[str, str], known: frozenset[str]) -> None:
    if more := said.keys() - known:
        raise MoreThanLinesError(f"says {', '.join(sorted(more))}")


def _text(element: Element) -> _Text:
    said = element.attrib
    _only(said, _OF_TEXT | _FOR_READERS)
    x, y = _number(said, "x"), _number(said, "y")
    turn = 0.0
    if "transform" in said:
        match = _TURN.fullmatch(said["transform"])
        if match is None or (float(match[2]), float(match[3])) != (x, y):
            raise MoreThanLinesError("a text that is moved")
        turn = radians(float(match[1]))
    try:
        return _Text(
            text=" ".join((element.text or "").split()) or " ",
            at=(x, y),
            turn=turn,
            before=_ANCHORS[said.get("text-anchor", "start")],
            family=said["font-family"],
            size=_number(said, "font-size"),
            weight=int(said.get("font-weight", "400")),
            ink=b"%s rg" % _colour(said.get("fill", "#000")),
        )
    except (KeyError, ValueError) as error:
        raise MoreThanLinesError("a text of other looks") from error


def _shape(tag: str, said: Mapping[str, str]) -> bytes:
    """Return the operators that draw one part."""
    own, outline = _SHAPES.get(tag, (frozenset[str](), None))
    if outline is None:
        raise MoreThanLinesError(f"has {tag}")
    _only(said, own | _PAINTED | _FOR_READERS)
    fill, stroke = said.get("fill", "#000"), said.get("stroke", "none")
    parts = []
    if fill != "none":
        parts.append(b"%s rg" % _colour(fill))
    if stroke != "none":
        dashes = _NUMBERS.findall(said.get("stroke-dasharray", ""))
        width = _number(said, "stroke-width")
        looks = f"{width:g} w [{' '.join(dashes)}] 0 d".encode()
        parts.append(b"%s RG %s" % (_colour(stroke), looks))
    parts.append(outline(said))
    paints = {(True, True): b"B", (True, False): b"f", (False, True): b"S", (False, False): b"n"}
    return b"\n".join((*parts, paints[fill != "none", stroke != "none"]))


def _path(said: Mapping[str, str]) -> bytes:
    return _steps(said.get("d", ""))


# the fence and the hatched wall are the same on hundreds of tickets
@lru_cache(maxsize=256)
def _steps(path: str) -> bytes:
    if not _PATH.fullmatch(path):
        raise MoreThanLinesError("curves")
    parts: list[str] = []
    x = y = ""
    letter = ""
    waiting: list[str] = []
    for sign, number in _STEP.findall(path):
        if sign in {"Z", "z"} and sign:
            parts.append("h")
        elif sign:
            letter = sign
            waiting.clear()
        elif letter == "H":
            x = number
            parts.append(f"{x} {y} l")
        elif letter == "V":
            y = number
            parts.append(f"{x} {y} l")
        elif not waiting:
            waiting.append(number)
        else:
            x, y = waiting.pop(), number
            parts.append(f"{x} {y} {'m' if letter == 'M' else 'l'}")
            if letter == "M":  # what follows a start without a letter of its own are lines
                letter = "L"
    return "\n".join(parts).encode()


def _line(said: Mapping[str, str]) -> bytes:
    x1, y1, x2, y2 = (_number(said, name) for name in ("x1", "y1", "x2", "y2"))
    return f"{x1:g} {y1:g} m {x2:g} {y2:g} l".encode()


def _rectangle(said: Mapping[str, str]) -> bytes:
    sides = (_number(said, name) for name in ("x", "y", "width", "height"))
    return f"{' '.join(f'{side:g}' for side in sides)} re".encode()


def _polygon(said: Mapping[str, str]) -> bytes:
    numbers = _NUMBERS.findall(said.get("points", ""))
    corners = [" ".join(pair) for pair in zip(numbers[::2], numbers[1::2], strict=False)]
    return " ".join((f"{corners[0]} m", *(f"{one} l" for one in corners[1:]), "h")).encode()


def _circle(said: Mapping[str, str]) -> bytes:
    x, y, r = (_number(said, name) for name in ("cx", "cy", "r"))
    k = r * _ROUND
    quarters = (
        (x + r, y + k, x + k, y + r, x, y + r),
        (x - k, y + r, x - r, y + k, x - r, y),
        (x - r, y - k, x - k, y - r, x, y - r),
        (x + k, y - r, x + r, y - k, x + r, y),
    )
    curves = (" ".join(f"{value:.3f}" for value in one) for one in quarters)
    return f"{x + r:.3f} {y:.3f} m {' '.join(f'{one} c' for one in curves)} h".encode()


_Outline = Callable[[Mapping[str, str]], bytes]
_SHAPES: Final[Mapping[str, tuple[frozenset[str], _Outline]]] = {
    "path": (frozenset({"d"}), _path),
    "line": (frozenset({"x1", "y1", "x2", "y2"}), _line),
    "rect": (frozenset({"x", "y", "width", "height"}), _rectangle),
    "polygon": (frozenset({"points"}), _polygon),
    "circle": (frozenset({"cx", "cy", "r"}), _circle),
}
"""What each kind of part says of its outline, and how that is drawn."""


def _number(said: Mapping[str, str], name: str) -> float:
    try:
        return float(said[name])
    except (KeyError, ValueError) as error:
        raise MoreThanLinesError(f"no {name}") from error


@cache
def _colour(text: str) -> bytes:
    """Return three parts of one for red, green and blue."""
    if not _COLOUR.fullmatch(text):
        raise MoreThanLinesError(f"colour {text}")
    digits = text[1:] if len(text) > 4 else "".join(2 * digit for digit in text[1:])
    return " ".join(f"{int(digits[at : at + 2], 16) / 255:.3g}" for at in (0, 2, 4)).encode()


@lru_cache(maxsize=64)
def _looks(family: str, size: float, weight: int, fonts: Any) -> Any:
    """Return the style of a text in a drawing."""
    from weasyprint.css.properties import INITIAL_VALUES
    from weasyprint.svg.text import Style

    style = Style()
    style.update(INITIAL_VALUES)
    style.font_config = fonts
    style["font_family"] = [name.strip("\"' ") for name in family.split(",")]
    style["font_size"] = size
    style["font_weight"] = weight
    return style


# as those of the pages: fonts lie in a folder that goes with them
atexit.register(_looks.cache_clear)
