"""Reads finished tickets back from a PDF, as an eye would: by where a text stands and how large.

A ticket of any shape (card, wide, strip, label) begins with three bold lines one under the
other, the last of them the length; what stands below them and right of them, up to the next such
three, is its own.  Its left end is what stands further left.
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from dataclasses import dataclass

from tests.proof.tickets_seen import JOINTS, POINT, SETTING, Seen, where

_CUT = re.compile(rf"({'|'.join(JOINTS)}) ({SETTING})(?= )".replace(", bevel", " bevel"))
_ARROWS = "↙↘↖↗"
_ID = re.compile(r"[A-Z][A-Z0-9]*-\S+(?: …)?")
_LENGTH = re.compile(r"[\d /.]+ (?:in|mm)(?= |$)")
_FOOT = re.compile(r"page \d+ of \d+")
CLOSE = 0.5
"""Points by which two texts on one line may differ in height."""


@dataclass(frozen=True)
class Word:
    """A text on the page: its left end and base line (points from the lower left), its size."""

    text: str
    x: float
    y: float
    size: float
    bold: bool


def in_pdf(data: bytes) -> list[Seen]:
    """Return the tickets of a PDF in the order in which they are drawn."""
    from pypdf import PdfReader

    seen: list[Seen] = []
    for page in PdfReader(io.BytesIO(data)).pages:
        words: list[Word] = []

        def heard(text: str, cm: list[float], tm: list[float], font: object, size: float,
                  words: list[Word] = words) -> None:  # fmt: skip
            name = font.get("/BaseFont", "") if isinstance(font, dict) else ""
            if text.strip():
                x, y = tm[4] * cm[0] + tm[5] * cm[2] + cm[4], tm[4] * cm[1] + tm[5] * cm[3] + cm[5]
                scale = abs(tm[3] * cm[3])
                words.append(Word(" ".join(text.split()), x, y, size * scale, "Bold" in name))

        page.extract_text(visitor_text=heard)
        lines = [line for line in _lines(words) if line and not _FOOT.fullmatch(line[-1].text)]
        heads = [at for at in range(len(lines)) if _is_head(lines[at : at + 3])]
        if not heads:
            continue
        own: dict[int, list[list[Word]]] = {at: [] for at in heads}
        # A flap may be drawn before the head above it, and is read behind it.
        for at in [*range(heads[0], len(lines)), *range(heads[0])]:
            head = _above(lines[at][0], lines, heads)
            if head is not None:
                own[head].append(lines[at])
        for at in heads:
            later = own[at].index(lines[at])
            seen.append(_seen([*own[at][later:], *own[at][:later]]))
    return seen


def _above(word: Word, lines: list[list[Word]], heads: list[int]) -> int | None:
    """Which head a text belongs to: of the row next above it, the last that is not right of it.

    None for what stands above all heads, which is the page's own.
    """
    above = [at for at in heads if lines[at][0].y + lines[at][0].size > word.y]
    if not above:
        return None
    row = min(lines[at][0].y for at in above)
    beside = [at for at in above if abs(lines[at][0].y - row) < CLOSE]
    left = [at for at in beside if lines[at][0].x - CLOSE < word.x]
    # A flap begins left of its head where that stands behind a tab.
    return max(left or beside[:1], key=lambda at: lines[at][0].x)


def _lines(words: list[Word]) -> Iterator[list[Word]]:
    """Words drawn one after the other on one base line, further and further right."""
    line: list[Word] = []
    for word in words:
        if line and (abs(word.y - line[-1].y) > CLOSE or word.x <= line[-1].x):
            yield line
            line = []
        line.append(word)
    yield line


def _is_head(lines: list[list[Word]]) -> bool:
    if len(lines) < 3 or not all(line[0].bold for line in lines):
        return False
    name, about, length = (line[0] for line in lines)
    return (
        bool(_ID.fullmatch(_said(lines[0])))
        and max(name.x, about.x, length.x) - min(name.x, about.x, length.x) < CLOSE
        and name.y > about.y > length.y
        and length.size > max(name.size, about.size)
        and length.text[0].isdigit()
    )


def _said(words: list[Word]) -> str:
    return " ".join(word.text for word in words)


def _seen(lines: list[list[Word]]) -> Seen:
    name, about, length = (_said(line) for line in lines[:3])
    words = [word for line in lines[3:] for word in line]
    size = _LENGTH.match(length)
    assert size, length
    facts = _facts(words)
    if "…" in name:  # cut short; the whole of it stands below, perhaps in two lines
        name = facts["id"].replace("- ", "-")
    if "…" in about:
        about = facts["room"]
    room, trim, part = where(name, about)
    return Seen(name, room, trim, part, size[0], _cuts(words, facts))


def _facts(words: list[Word]) -> dict[str, str]:
    """The small print, each line by the bold word before it."""
    found: dict[str, list[str]] = {}
    term = ""
    for word in words:
        if word.bold and re.fullmatch(r"[a-z]+", word.text):
            term = word.text
            found.setdefault(term, [])
        elif term:
            found[term].append(word.text)
    return {term: " ".join(texts) for term, texts in found.items()}


def _cuts(words: list[Word], facts: dict[str, str]) -> tuple[tuple[str, ...], ...]:
    """The two ends from left to right; where the long point is stands below, or on the flap."""
    starts: list[int] = []
    said = ""
    for word in words:
        starts.append(len(said))
        # an arrow beside a setting says the same once more
        said += word.text.rstrip(_ARROWS) + " "
    found = list(_CUT.finditer(said))
    if not found:
        return ()  # of a kind that has other joints
    ends: list[tuple[float, str, str, str]] = []
    for cut, until in zip(found, [*(one.start() for one in found[1:]), len(said)], strict=True):
        below = said[cut.end() : until].split(" measured ")[0]
        point = POINT.search(re.split(r" (?:left|right) ", below)[0])
        place = words[starts.index(cut.start())].x
        setting = cut[2].replace(" bevel", ", bevel")
        ends.append((place, setting, cut[1], point[0] if point else ""))
    cuts = []
    for side, (_, setting, joint, seen) in zip(("left", "right"), sorted(ends), strict=False):
        folded = POINT.search(facts.get(side, ""))
        cuts.append((setting, joint, seen or (folded[0] if folded else "")))
    return tuple(cuts)
