"""The texts of a ticket, before they are fitted to its shape."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from trimlang.record import record


@record
class TicketFact:
    """A line of small print: what it is about, what it says, and a shorter version.

    ``extra``: a label may leave it out; the HTML page has it.  ``least`` is what a label says that
    has no room for all.
    """

    term: str
    text: str
    strong: bool = False
    brief: str = ""
    least: str = ""
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


def shorter(text: Print, note_word: str) -> Iterator[Print]:
    """Yield the texts with less and less of what can give way, for labels that cannot hold all.

    First what has a least form takes it, then the note is cut short and in the end left off.
    """
    yield text
    least = tuple(replace(fact, text=fact.least or fact.text) for fact in text.facts)
    last = text.facts
    # Characters of the note that are kept, from all of them down.
    for keep in (None, 120, 60, 25, 0):
        facts = tuple(
            replace(fact, text=fact.text[:keep].rstrip() + " …", extra=not keep)
            if keep is not None and fact.term == note_word and len(fact.text) > keep
            else fact
            for fact in least
        )
        if facts != last:
            yield replace(text, facts=facts)
        last = facts
