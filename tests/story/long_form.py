"""Writes a job as it had to be written before: one wall a line, and both ends of each."""

from __future__ import annotations

from trimlang.diagnostics.source import Source
from trimlang.language import facts, tree
from trimlang.language.facts import Side
from trimlang.language.parse import parse
from trimlang.lengths.tape import length_text
from trimlang.survey.job import Gap, Job, Room

COMMENT = "#"


def long_form(text: str, job: Job) -> str:
    """Return a job file with everything said at each wall; ``job`` is what it means."""
    lines = text.split("\n")
    statements, _ = parse(Source("x", text))
    walks = iter(job.rooms)
    walk = iter(())
    room: Room | None = None
    made: list[str] = []
    for one in statements:
        written = lines[one.span.line - 1]
        if isinstance(one, tree.RoomLine):
            room = next(walks)
            walk = iter(room.walk)
            made.append(written.replace(", ends in", ""))
        elif isinstance(one, tree.RunLine | tree.GapLine):
            assert room is not None
            made.append(_wall(one, written, next(walk), job))
        elif not written.startswith("ends"):
            made.append(written)
    return "\n".join(made) + "\n"


def _wall(one: tree.RunLine | tree.GapLine, written: str, stretch: object, job: Job) -> str:
    length = one.length if isinstance(one, tree.RunLine) else one.width
    long = written[length.span.column - 1 : length.span.end - 1]
    bare = any(unit is None for _, unit in length.parts) or long[-1:].isdigit()
    if job.settings.unit == "in" and bare:
        long += " in"
    said = {fact.side: fact for fact in one.facts if isinstance(fact, facts.AtEnd)}
    parts = []
    for side in Side:
        end = getattr(stretch, side.value)
        if isinstance(stretch, Gap) and side not in said:
            continue
        inside = f"({end.corner} deg)" if end.corner is not None and side in said else ""
        parts.append(f"{side.value}={end.joint}{inside}")
    for fact in one.facts:
        if not isinstance(fact, facts.AtEnd):
            text = written[fact.span.column - 1 : fact.span.end - 1]
            bare_name = isinstance(fact, facts.Called) and text[:1] != '"'
            parts.append(f'"{text}"' if bare_name else text)
    spoken = any(isinstance(fact, facts.ClearHeight) for fact in one.facts)
    if isinstance(stretch, Gap) and stretch.clear_height is not None and not spoken:
        parts.append(f"height {length_text(stretch.clear_height, job.settings.unit)}")
    head = f"{one.label.text}: {long}" if isinstance(one, tree.RunLine) else f"{one.kind} {long}"
    return ", ".join([head, *parts])


def keystrokes(text: str) -> int:
    """Count what is typed: each sign, blank and line end, but no indentation and no remark."""
    lines = (line.split(COMMENT)[0].strip() for line in text.split("\n"))
    return sum(len(line) + 1 for line in lines if line)


def walls_of(text: str) -> str:
    """Return the rooms and walls of a job file: what is written while measuring."""
    return text[text.index("\nroom ") + 1 :]
