"""Finds which room, run and piece of the old version is which of the new one.

Rooms are matched by name, runs by label, and cased openings by the name that their pieces
have.  What is left over is recognised by its walls.  So a piece is followed through a rename,
although the name of its room or run is part of its id.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Sequence
from difflib import SequenceMatcher
from typing import Final, TypeAlias, TypeVar

from trimlang.joinery.piece import Piece
from trimlang.record import record
from trimlang.survey.job import Gap, Job, Room, Run, Stretch
from trimlang.survey.openings import opening_names

ALIKE: Final = 0.5
"""A room under a new name is the same one where at least this share of its walls agrees."""

# What the same tag adds to that share, so that a renamed room needs fewer equal walls where its tag
# stayed. Chosen by hand.
_SAME_TAG: Final = 0.3

Key: TypeAlias = tuple[Hashable, ...]
One = TypeVar("One")


@record
class Renamed:
    """A room or a run that has a new name; ``room`` is the new name of the run's room."""

    what: str
    old: str
    new: str
    room: str = ""


@record
class Matched:
    """Pairs of pieces, the pieces that only one version has, and what was renamed."""

    pairs: tuple[tuple[Piece, Piece], ...]
    gone: tuple[Piece, ...]
    added: tuple[Piece, ...]
    renamed: tuple[Renamed, ...]


def match_pieces(
    old: Job, old_pieces: Sequence[Piece], new: Job, new_pieces: Sequence[Piece]
) -> Matched:
    """Return which piece of the old job is which of the new one."""
    renamed: list[Renamed] = []
    rooms = dict(_rooms(old.rooms, new.rooms))
    walls: dict[tuple[str, str], str] = {}
    doors: dict[tuple[str, str], str] = {}
    for before, after in rooms.items():
        for door, same in _paired(_doors(before), _doors(after), lambda door: door[0], _door):
            doors[before.name, door[0]] = same[0]
        if before.name != after.name:
            renamed.append(Renamed("room", before.name, after.name))
        for one, other in _paired(before.runs, after.runs, lambda run: run.label, _wall):
            walls[before.name, one.label] = other.label
            if one.label != other.label:
                renamed.append(Renamed("run", one.label, other.label, after.name))
    # A piece's key says where it belongs in the words of the new version, so that a piece of the
    # old one and a piece of the new one are the same where their keys are.
    names = {before.name: after.name for before, after in rooms.items()}

    def now(piece: Piece) -> Key:
        room = names.get(piece.room)
        if room is None:
            # The room is no longer there; no key of the new version begins so.
            return ("gone", piece.id)
        known = doors if piece.kind.of_casing else walls
        return (room, *_place(piece, known.get((piece.room, piece.run), piece.run), old))

    before_by = {now(piece): piece for piece in old_pieces}
    after_by = {(piece.room, *_place(piece, piece.run, new)): piece for piece in new_pieces}
    return Matched(
        tuple((before_by[key], after) for key, after in after_by.items() if key in before_by),
        tuple(piece for key, piece in before_by.items() if key not in after_by),
        tuple(piece for key, piece in after_by.items() if key not in before_by),
        tuple(renamed),
    )


def _place(piece: Piece, called: str, job: Job) -> Key:
    """Return where a piece belongs: its wall or door, and which part of the trim there it is."""
    room = next(room for room in job.rooms if room.name == piece.room)
    # What the id says after its room and run: the trim, and which part of a spliced run. Ids are
    # not compared whole, since the tag and the run's label in them may be new.
    part = piece.id.removeprefix(f"{room.tag}-{piece.run}")
    return ("door" if piece.kind.of_casing else "wall", called, part)


def _doors(room: Room) -> list[tuple[str, Stretch]]:
    return [(name, room.walk[place]) for place, name in opening_names(room).items()]


def _door(door: tuple[str, Stretch]) -> Key:
    gap = door[1]
    assert isinstance(gap, Gap)  # noqa: S101  only openings are cased
    return (gap.width, gap.clear_height, gap.casing, gap.head, gap.trimmings)


def _rooms(old: Sequence[Room], new: Sequence[Room]) -> Iterable[tuple[Room, Room]]:
    # A name is the surest sign, so equal names are paired before anything is judged by its walls.
    by_name = {room.name.casefold(): room for room in new}
    same = [
        (room, by_name[room.name.casefold()]) for room in old if room.name.casefold() in by_name
    ]
    yield from same
    known = {room.name for pair in same for room in pair}
    # The best likeness is taken first. Between equal ones the places in the file decide, so that
    # the same two files always pair in the same way.
    scores = [
        (_likeness(one, other), -at, -place, one, other)
        for at, one in enumerate(old)
        for place, other in enumerate(new)
        if one.name not in known and other.name not in known
    ]
    scores.sort(key=lambda score: score[:3], reverse=True)
    taken: set[str] = set()
    for score, _, _, one, other in scores:
        if score >= ALIKE and one.name not in taken and other.name not in taken:
            taken |= {one.name, other.name}
            yield one, other


def _likeness(one: Room, other: Room) -> float:
    walls = [[_wall(run) for run in room.runs] for room in (one, other)]
    # SequenceMatcher keeps the order of the walls, and so two rooms with the same walls in another
    # order are less alike. autojunk would drop what stands often, as equal walls do in a long room.
    ratio = SequenceMatcher(None, walls[0], walls[1], autojunk=False).ratio()
    return ratio + (_SAME_TAG if ratio and one.tag == other.tag else 0)


def _wall(run: Run) -> Key:
    return (run.length, run.left.joint, run.right.joint, run.trims)


def _paired(
    old: Sequence[One],
    new: Sequence[One],
    name: Callable[[One], str],
    key_of: Callable[[One], Key],
) -> Iterable[tuple[One, One]]:
    """Yield what has the same name, then what looks the same, in order."""
    by_name = {name(one): one for one in new}
    yield from ((one, by_name[name(one)]) for one in old if name(one) in by_name)
    names = {name(one) for one in old}
    left = [one for one in new if name(one) not in names]
    for one in old:
        if name(one) in by_name:
            continue
        alike = next((other for other in left if key_of(other) == key_of(one)), None)
        if alike is not None:
            # Each is taken once, so that of two equal walls the first goes to the first.
            left.remove(alike)
            yield one, alike
