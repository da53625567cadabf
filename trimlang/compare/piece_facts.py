"""What is cut differently on a piece, and what else differs on its ticket, in words."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields
from enum import StrEnum
from fractions import Fraction
from typing import Final

from trimlang.joinery.at_the_saw import at_saw, saw_for
from trimlang.joinery.piece import Cut, Piece
from trimlang.language.facts import Side
from trimlang.lengths.tape import length_text
from trimlang.record import record
from trimlang.sheets.content.ticket import Ticket
from trimlang.sheets.wording import phrases, saw_words
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.job import Job


class FactName(StrEnum):
    """What of a piece or of its ticket changed, as a report calls it."""

    TRIM = "trim"
    LENGTH = "length"
    TAKEN = "taken of the stick"
    MEASURED = "measured"
    LEFT_END = "left end"
    RIGHT_END = "right end"
    NAME = "name"
    ROOM = "room"
    RUN = "run"
    PART = "part"
    STICK = "stick"
    PLACE = "place on the stick"
    MATES = "mates"
    NOTE = "note"
    FIT = "fit"
    EDGES = "edges"
    ROUNDING = "rounding"
    CAUTION = "caution"
    DRAWING = "how the ends are cut or drawn"


ON_STICKS: Final = (FactName.STICK, FactName.PLACE)
"""The facts of a ticket that only say where on the sticks a piece is cut."""

# Which fields of a ticket are told, by what they are called there. Lengths and ends are left out:
# `cut_facts` tells them.
_NAMES_OF_FIELDS: Final = {
    "room": FactName.ROOM,
    "run": FactName.RUN,
    "part": FactName.PART,
    "stick": FactName.STICK,
    "order": FactName.PLACE,
    "mates": FactName.MATES,
    "note": FactName.NOTE,
    "fit": FactName.FIT,
    "edges": FactName.EDGES,
    "rounding": FactName.ROUNDING,
    "caution": FactName.CAUTION,
}


@record
class PieceFact:
    """One thing that changed, in words: as it was and as it is; empty where there is no word."""

    what: FactName
    before: str
    after: str


def pen_of(job: Job) -> Pen:
    """Return the pen that writes a version's quantities, in its own unit and currency."""
    return Pen(words_in("en"), job.currency, job.settings.unit, scale=job.settings.saw_step)


def cut_facts(old: Piece, new: Piece, old_job: Job, new_job: Job) -> Iterator[PieceFact]:
    """Yield what is sawn differently between a piece of the old job and the same of the new."""
    was, now = pen_of(old_job).of(old.unit), pen_of(new_job).of(new.unit)
    sections = (_section(old, old_job, was), _section(new, new_job, now))
    if sections[0] != sections[1]:
        yield PieceFact(FactName.TRIM, *sections)
    if old.to_mark != new.to_mark:
        yield _length(FactName.LENGTH, old.to_mark, new.to_mark, was, now)
    # The mark on the tape stayed, but the piece takes more or less of the stick, as when a mitre
    # reaches further.
    elif old.length != new.length:
        yield _length(FactName.TAKEN, old.length, new.length, was, now)
    if old.measured_on is not new.measured_on:
        yield PieceFact(
            FactName.MEASURED, phrases.measured(old, was.words), phrases.measured(new, now.words)
        )
    for side in Side:
        if _as_sawn(side.of(old.left, old.right)) != _as_sawn(side.of(new.left, new.right)):
            yield PieceFact(
                side.of(FactName.LEFT_END, FactName.RIGHT_END),
                _end(side, old, old_job, was),
                _end(side, new, new_job, now),
            )


def _length(what: FactName, old: Fraction, new: Fraction, was: Pen, now: Pen) -> PieceFact:
    # The pen rounds to what a tape shows. Two lengths that differ by less than that would read as
    # "8 in → 8 in", so they are written out in full.
    fact = PieceFact(what, was.length(old), now.length(new))
    if fact.before != fact.after:
        return fact
    return PieceFact(what, length_text(old, was.unit), length_text(new, now.unit))


def _section(piece: Piece, job: Job, pen: Pen) -> str:
    trim = job.trim(piece.trim)
    sizes = [
        f"{pen.length(size)} {word}"
        for size, word in ((trim.thickness, "thick"), (trim.height, "tall"))
        if size is not None
    ]
    spring = [] if trim.spring is None else [f"spring {pen.angle(trim.spring)}"]
    return ", ".join([*sizes, *spring, *trim.material])


def _as_sawn(cut: Cut) -> tuple[object, ...]:
    return (
        cut.joint, cut.fit, cut.setting, cut.bevel_setting, cut.lean, cut.long_edge, cut.inset,
        cut.through_edge,
    )  # fmt: skip


def _end(side: Side, piece: Piece, job: Job, pen: Pen) -> str:
    cut = side.of(piece.left, piece.right)
    at = at_saw(cut, side, saw_for(job.trim(piece.trim), job.settings))
    joint = phrases.joint_name(cut, pen.words)
    return f"{joint}, {saw_words.setting(at, pen)}, {phrases.long_point(cut, pen.words)}"


def ticket_facts(old: Ticket, new: Ticket) -> Iterator[PieceFact]:
    """Yield what a ticket says differently, its name first."""
    if old == new:
        return
    if old.id != new.id:
        yield PieceFact(FactName.NAME, old.id, new.id)
    said = False
    for field in fields(Ticket):
        before, after = getattr(old, field.name), getattr(new, field.name)
        if before != after and field.name in _NAMES_OF_FIELDS:
            said = True
            yield PieceFact(_NAMES_OF_FIELDS[field.name], before, after)
    # The tickets differ in a field that no word above stands for.
    if not said and old.id == new.id:
        yield PieceFact(FactName.DRAWING, "", "")
