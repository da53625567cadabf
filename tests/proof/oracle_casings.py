"""The oracle's own reckoning of what goes round an opening (docs/language.md, "Casing")."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from tests.proof.oracle_reading import Job, Room, Stretch

CORNER, FLOOR, STOOL, TOP, BUTT, OPEN, RETURN = (
    "head", "floor", "stool", "top", "butt", "open", "return",
)  # fmt: skip


@dataclass(frozen=True)
class Member:
    """A piece round an opening: the end of its id, its trim, its length and how its ends are cut.

    ``returned`` is how long the return is that each end has, 0 without one.
    """

    part: str
    trim: str
    long: Fraction
    ends: tuple[str, str]
    returned: Fraction = Fraction(0)


def members(job: Job, room: Room, gap: Stretch) -> Iterator[Member]:
    """Yield all pieces round a cased opening, those of its other face too."""
    for face in ("", "far-") if gap.faces else ("",):
        for one in (*_casing(job, room, gap), *_band(job, room, gap)):
            yield Member(face + one.part, one.trim, one.long, one.ends, one.returned)
    if gap.jamb:
        across = gap.length + 2 * job.trims[gap.jamb]["thick"]
        for part, long in (("left", gap.height), ("right", gap.height), ("head", across)):
            yield Member(f"{gap.jamb}-{part}-jamb", gap.jamb, long, (BUTT, BUTT))


def outer(job: Job, room: Room, gap: Stretch) -> Fraction:
    """How much wall the casing takes up at each side, from the jamb: reveal, leg and backband."""
    return room.settings["reveal"] + job.trims[gap.casing[0]]["tall"] + _over(job, room, gap)


def at_floor(job: Job, room: Room, gap: Stretch) -> Fraction:
    """The same at the floor, where a leg stands on a plinth."""
    if gap.plinth:
        return room.settings["reveal"] + job.blocks[gap.plinth]["wide"]
    return outer(job, room, gap)


def _over(job: Job, room: Room, gap: Stretch) -> Fraction:
    """How far a backband goes past the casing that it lies over."""
    return job.trims[gap.band]["tall"] - room.settings["lap"] if gap.band else Fraction(0)


def _casing(job: Job, room: Room, gap: Stretch) -> Iterator[Member]:
    own, legs, head = room.settings, gap.casing[0], gap.casing[-1]
    wide: Fraction = job.trims[legs]["tall"]
    across = gap.length + 2 * (own["reveal"] + wide)
    block = job.blocks[gap.rosette] if gap.rosette else None
    mitred = len(gap.casing) == 1 and own["head"] == "mitre" and block is None
    top = wide if mitred else Fraction(0)
    past = Fraction(0) if mitred else own["overhang"]
    if block is not None:
        top, past = (wide - block["tall"]) / 2, -(wide + block["wide"]) / 2
    below = job.blocks[gap.plinth]["tall"] if gap.plinth else own["off_floor"]
    leg = gap.height + own["reveal"] + top - (0 if gap.stool else below)
    foot, end = STOOL if gap.stool else FLOOR, CORNER if mitred else TOP
    if gap.four_sides:
        foot, leg = CORNER, gap.height + 2 * (own["reveal"] + wide)
    yield Member(f"{legs}-left-leg", legs, leg, (foot, end))
    yield Member(f"{legs}-right-leg", legs, leg, (end, foot))
    if head in job.heads:
        yield from _head(job, job.heads[head], across)
    else:
        there = CORNER if mitred else BUTT
        yield Member(f"{head}-head", head, across + 2 * past, (there, there))
        if gap.four_sides:
            yield Member(f"{head}-bottom", head, across, (there, there))
    if gap.stool:
        shelf, apron = gap.stool
        yield Member(f"{shelf}-stool", shelf, across + 2 * own["horn"], (BUTT, BUTT))
        ends, thick = (RETURN, RETURN), job.trims[apron]["thick"]
        yield Member(f"{apron}-apron", apron, across, ends, thick)


def _head(job: Job, parts: list[dict[str, Any]], across: Fraction) -> Iterator[Member]:
    """The parts of a head, from the legs upwards; one in front of another goes round its ends."""
    for number, part in enumerate(parts, start=1):
        trim = job.trims[part["trim"]]
        behind = job.trims[trim["front"]]["thick"] if "front" in trim else Fraction(0)
        # its back is as long as what it lies on, and its mitres turn it round the ends of that
        long = across + 2 * (part["overhang"] + (trim["thick"] if behind else 0))
        ends = (RETURN, RETURN) if part["returned"] else (OPEN, OPEN)
        deep = trim["thick"] + behind if part["returned"] else Fraction(0)
        yield Member(f"{part['trim']}-head-{number}", part["trim"], long, ends, deep)


def _band(job: Job, room: Room, gap: Stretch) -> Iterator[Member]:
    if not gap.band:
        return
    past = outer(job, room, gap)
    across = gap.length + 2 * past
    side = gap.height + (2 * past if gap.four_sides else past - room.settings["off_floor"])
    foot = CORNER if gap.four_sides else FLOOR
    yield Member(f"{gap.band}-left-band", gap.band, side, (foot, CORNER))
    yield Member(f"{gap.band}-right-band", gap.band, side, (CORNER, foot))
    for part in ("head-band", "bottom-band")[: 2 if gap.four_sides else 1]:
        yield Member(f"{gap.band}-{part}", gap.band, across, (CORNER, CORNER))
