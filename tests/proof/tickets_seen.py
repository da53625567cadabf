"""Reads finished tickets back from what a person holds: the PDF's text, or the page's."""

from __future__ import annotations

import io
import re
from dataclasses import dataclass
from html.parser import HTMLParser

JOINTS = (
    "inside corner, coped",
    "inside corner, square in",
    "inside corner",
    "outside corner",
    "butt",
    "return",
    "scarf",
    "open end",
    "rake",
    "plumb cut",
    "level cut",
    "casing corner",
)
_SETTING = (
    r"square"
    r"|mitre [\d.]+° (?:left|right), bevel [\d.]+°"
    r"|(?:bevel )?[\d.]+° (?:left|right)"
)
_CUT = re.compile(
    rf"({_SETTING})\s*({'|'.join(JOINTS)})\s*(long point at the (?:wall edge|ceiling edge|outer"
    r" edge|\w+)|both edges the same)"
)
_HEAD = re.compile(r"^(?P<room>.+?) · (?P<trim>[\w.-]+)(?: · (?P<part>part \d+ of \d+))?$")


@dataclass(frozen=True)
class Seen:
    """A ticket as printed; a cut is its setting, joint and long point."""

    id: str
    room: str
    trim: str
    part: str
    length: str
    cuts: tuple[tuple[str, ...], ...]


def in_pdf(data: bytes) -> list[Seen]:
    """Return the tickets of a PDF, as pypdf reads its text."""
    from pypdf import PdfReader

    seen: list[Seen] = []
    for page in PdfReader(io.BytesIO(data)).pages:
        lines = [" ".join(line.split()) for line in page.extract_text().splitlines()]
        heads = [at for at in range(1, len(lines)) if _HEAD.match(lines[at])]
        for at, after in zip(heads, [*heads[1:], len(lines)], strict=True):
            body = " ".join(lines[at + 1 : after])
            head = _HEAD.match(lines[at])
            size = re.match(r"[\d /.]+ (?:in|mm)", body)
            assert head
            assert size, body
            cuts = tuple(_CUT.findall(body))
            seen.append(
                Seen(lines[at - 1], head["room"], head["trim"], head["part"] or "", size[0], cuts)
            )
    return seen


class _Page(HTMLParser):
    """Collects the text of each ticket by the class of the element that it stands in."""

    def __init__(self) -> None:
        super().__init__()
        self.tickets: list[dict[str, list[str]]] = []
        self._classes: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if tag == "article" and given.get("class") == "ticket":
            self.tickets.append({})
            self._classes = []
        if tag in ("h2", "p", "dd", "article"):
            self._classes.append("id" if tag == "h2" else given.get("class") or tag)

    def handle_endtag(self, tag: str) -> None:
        if tag in ("h2", "p", "dd", "article") and self._classes:
            self._classes.pop()

    def handle_data(self, data: str) -> None:
        if self.tickets and self._classes and data.strip():
            text = " ".join(data.split())
            self.tickets[-1].setdefault(self._classes[-1], []).append(text)


def in_page(html: str) -> list[Seen]:
    """Return the tickets of the HTML page."""
    page = _Page()
    page.feed(html)
    seen: list[Seen] = []
    for ticket in page.tickets:
        head = _HEAD.match(" ".join(ticket["room"]))
        assert head
        cuts = tuple(zip(ticket["setting"], ticket["joint"], ticket["point"], strict=True))
        seen.append(
            Seen(
                " ".join(ticket["id"]), head["room"], head["trim"], head["part"] or "",
                " ".join(ticket["length"]), cuts,
            )
        )  # fmt: skip
    return seen
