"""Works out corners that nobody measured from the room's other corners."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.lengths.angles import TENTH, degrees_text
from trimlang.lengths.tape import steps_nearest
from trimlang.survey.job import End, Room
from trimlang.survey.measured_walk import READING_DOUBT, called
from trimlang.survey.measures import Findings
from trimlang.survey.outline import MOST_SHARED, WHOLE_TURN, Turn, shared, turn_between

# Angles that are worked out are given to a tenth of a degree.
_TOO_FAR: Final = 2
"""How many times its doubt a corner may be off square before its angle is offered."""


def imply_corners(room: Room, findings: Findings) -> Room:
    """Return the room with angles for the corners that the file wants implied by the others.

    Where the measured corners leave the others far from square, and the file does not say what is
    meant, a warning offers the angle.
    """
    count = len(room.walk)
    turns = tuple(
        turn_between(one, room.walk[(at + 1) % count]) for at, one in enumerate(room.walk)
    )
    wanted = [at for at in range(count) if any(end.implied for end in _sides(room, at))]
    lacking = WHOLE_TURN - sum(turn.degrees for turn in turns)
    # A walk that does not come round has no sum of turns to keep, and a sum far from one turn means
    # that a corner is written wrongly: sharing that out would spoil the sound ones.
    follows = not room.open_walk and abs(lacking) <= MOST_SHARED
    if not follows or any(turn.disputed or not turn.known for turn in turns):
        for at in wanted:
            span = next(end.span for end in _sides(room, at) if end.implied)
            findings.say("T317", span, room=room.name)
        return room
    whole = shared(turns)
    if not wanted:
        _offer(room, turns, whole, findings)
        return room
    for at in wanted:
        # A measured angle is not overruled by the others.
        if turns[at].measured:
            continue
        # A tenth of a degree is finer than the doubt that remains.
        angle = steps_nearest(turns[at].corner(whole[at]), TENTH)
        after = (at + 1) % count
        walk = list(room.walk)
        if (right := walk[at].right) is not None:
            walk[at] = replace(walk[at], right=replace(right, corner=angle, implied=True))
        if (left := walk[after].left) is not None:
            walk[after] = replace(walk[after], left=replace(left, corner=angle, implied=True))
        room = replace(room, walk=tuple(walk))
    return room


def _offer(
    room: Room, turns: tuple[Turn, ...], whole: tuple[Fraction, ...], findings: Findings
) -> None:
    """Warn where corners would be cut as square and the measured ones say that they are not."""
    if not any(turn.measured for turn in turns):
        return
    takers = [at for at, turn in enumerate(turns) if turn.degrees and not turn.measured]
    if not takers:
        return
    at = takers[0]
    # Within what corners may be off by anyway, square is as good a guess as any: each of them, and
    # all together.
    doubt, share = room.settings.corner_doubt, abs(whole[at] - turns[at].degrees)
    together = len(takers) * doubt + READING_DOUBT * sum(turn.measured for turn in turns)
    if share <= _TOO_FAR * doubt and share * len(takers) <= together:
        return
    after = (at + 1) % len(room.walk)
    side = next(iter(_sides(room, at)))
    angle = steps_nearest(turns[at].corner(whole[at]), TENTH)
    findings.say(
        "T313",
        side.span,
        room=room.name,
        which=f"the corner of {called(room.walk[at])} and {called(room.walk[after])}"
        if len(takers) == 1
        else f"each of the {len(takers)} others",
        angle=degrees_text(angle),
        square=degrees_text(turns[at].corner(turns[at].degrees)),
        joint=side.joint,
    )


def _sides(room: Room, at: int) -> list[End]:
    one, other = room.walk[at], room.walk[(at + 1) % len(room.walk)]
    return [end for end in (one.right, other.left) if end is not None and end.joint.is_corner]
