"""The texts of a ticket, before they are fitted to its shape."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from trimlang.record import record


@record
class TicketFact:
    """A line of small print: what it is about, what it says, and a shorter version.

    ``extra``: a label may leave it out; the HTML page has it.
    """

    term: str
    text: str
    strong: bool = False
    brief: str = ""
    extra: bool = False


@record
class EndPrint:
    """One end's texts: joint, setting in lines, and small lines that may be moved elsewhere."""

    side: str
    setting: tuple[str, ...]
    joint: str
    small: tuple[str, ...]


@record
class Print:
    """All texts that a ticket must find room for, the most important first."""

    id: str
    id_word: str
    room_word: str
    room_and_part: str
    about: str
    length: tuple[str, str, str]
    left: EndPrint
    right: EndPrint
    facts: tuple[TicketFact, ...]


def shorter_notes(text: Print, note_word: str) -> Iterator[Print]:
    """Yield the texts with less and less of the note, for labels that cannot hold all of it."""
    yield text
    # Characters of the note that are kept.
    for keep in (120, 60, 25, 0):
        facts = tuple(
            replace(fact, text=fact.text[:keep].rstrip() + " …")
            if fact.term == note_word and len(fact.text) > keep
            else fact
            for fact in text.facts
        )
        yield replace(text, facts=facts)
