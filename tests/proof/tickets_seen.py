"""Reads finished tickets back from the page: by the class of each text's element."""

from __future__ import annotations

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
    "frame corner",
    "taper",
    "floor",
    "stool",
    "top",
)
ANGLE = r"(?:(?:\d+ )?\d/[248]|[\d.]+)°"
SETTING = (
    r"square"
    rf"|mitre {ANGLE}(?: left| right)?, bevel {ANGLE} (?:left|right)|{ANGLE} (?:left|right)"
)
POINT = re.compile(
    r"long point at the (?:wall edge|ceiling edge|outer edge|\w+)|both edges the same"
)


@dataclass(frozen=True)
class Seen:
    """A ticket as printed; a cut is its setting, joint and long point."""

    id: str
    room: str
    trim: str
    part: str
    length: str
    cuts: tuple[tuple[str, ...], ...]


def in_page(html: str) -> list[Seen]:
    """Return the tickets of the HTML page."""
    page = _Page()
    page.feed(html)
    return [_seen(ticket) for ticket in page.tickets]


class _Page(HTMLParser):
    """Collects the text of each ticket by the class of the element that it stands in."""

    def __init__(self) -> None:
        super().__init__()
        self.tickets: list[dict[str, list[str]]] = []
        self._classes: list[str] = []
        self._side = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        classes = (given.get("class") or "").split()
        if tag == "article" and "ticket" in classes:
            self.tickets.append({"id": [given.get("id") or ""]})
            self._classes, self._side = [], ""
        if tag == "div":
            self._side = classes[1] if classes[:1] == ["cut"] else ""
        if tag in ("h2", "p"):
            # how large a text is set is a class as well, and says nothing of what it is
            said = [one for one in classes if not re.fullmatch(r"[a-z]\d+", one)]
            named = " ".join(said) or tag
            self._classes.append(f"{self._side} {named}".strip())

    def handle_endtag(self, tag: str) -> None:
        if tag in ("h2", "p") and self._classes:
            self._classes.pop()

    def handle_data(self, data: str) -> None:
        if self.tickets and self._classes and data.strip():
            text = " ".join(data.split())
            self.tickets[-1].setdefault(self._classes[-1], []).append(text)


def _seen(ticket: dict[str, list[str]]) -> Seen:
    (name,) = ticket["id"]
    about, small = " ".join(ticket["room"]), ticket.get("p", [])
    if "…" in about and "room" in small:  # cut short; the whole of it stands below
        about = small[small.index("room") + 1]
    room, trim, part = where(name, about)
    cuts = tuple(
        (
            ", ".join(ticket[f"{side} setting"]),
            " ".join(ticket[f"{side} joint"]),
            _point(ticket, side),
        )
        for side in ("left", "right")
    )
    return Seen(name, room, trim, part, " ".join(ticket["length"]), cuts)


def where(name: str, about: str) -> tuple[str, str, str]:
    """Return room, trim and part from the line under a ticket's id."""
    head = about.split(" · ")
    part = next((one for one in head if re.fullmatch(r"part \d+ of \d+", one)), "")
    rest = [one for one in head if one not in (part, "changed")]
    # where a strip has no room for the trim's name, the piece's own id ends in it
    return rest[0], rest[-1] if len(rest) > 1 else trim_in(name), part


def trim_in(name: str) -> str:
    """Return what a piece's id says of its trim, with what is behind it."""
    found = re.fullmatch(r"[^-]+-[^-]+-(.+?)(?:-[a-z])?(?:-(?:left|right)-return)?", name)
    assert found, name
    return found[1]


def _point(ticket: dict[str, list[str]], side: str) -> str:
    """Where the long point of an end is: below its cut, or on the flap after the end's name."""
    below = [found[0] for text in ticket.get(f"{side} p", []) if (found := POINT.search(text))]
    if below:
        return below[0]
    facts = " ".join(ticket.get("p", []))
    found = re.search(rf"\b{side}\b[^|]*?({POINT.pattern})", facts)
    assert found, (side, ticket)
    return found[1]
