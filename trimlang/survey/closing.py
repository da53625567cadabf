"""Whether the walls of a room, one after the other, come back to where they began."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from itertools import pairwise, product
from typing import Final

from trimlang.lengths.angles import degrees_text
from trimlang.lengths.tape import feet_text, steps_nearest
from trimlang.survey.job import Gap, Room, Run, Stretch, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.outline import MOST_SHARED, Outline, Point, depths, outline, wall_length
from trimlang.survey.slips import Slip, Walk, likely_slips, miss

FEWEST_STRETCHES: Final = 3
MOST_DISPUTED: Final = 6
MOST_NAMED: Final = 4


def check_closure(room: Room, trims: Iterable[Trim], findings: Findings) -> None:
    """Report a room whose walk does not come back to its start, and the likeliest reason.

    Open walks are left alone, and so are rooms whose corners do not go once
    round where the file does not say how all stretches meet.
    """
    if room.open_walk or len(room.walk) < FEWEST_STRETCHES:
        return
    if any(isinstance(stretch, Gap) and stretch.is_lost for stretch in room.walk):
        # a wall that could not be read is reported already, and without it nothing closes
        return
    trims = tuple(trims)
    drawn = outline(room, trims)
    if any(turn.disputed for turn in drawn.turns):
        _settle(room, trims, drawn, findings)
        return
    within = float(room.settings.closes_within)
    gap = drawn.gap
    if gap is not None and drawn.misclosure is not None:
        if gap > room.settings.closes_within:
            slips = likely_slips(_walk(room, trims, drawn), within=min(within, float(gap) / 2))
            findings.say(
                "T310",
                room.span,
                room=room.name,
                gap=_rough(gap, room),
                where=_where(drawn.misclosure, room),
                likely=_likely(slips),
            )
    elif all(turn.known for turn in drawn.turns):
        slips = likely_slips(_walk(room, trims, drawn), within=within)
        findings.say(
            "T311",
            room.span,
            room=room.name,
            turned=degrees_text(drawn.turned),
            likely=_likely(slips),
        )


def _settle(room: Room, trims: tuple[Trim, ...], drawn: Outline, findings: Findings) -> None:
    """Where two sides of a corner contradict each other, say which one closes the room."""
    disputed = [index for index, turn in enumerate(drawn.turns) if turn.disputed]
    if len(disputed) > MOST_DISPUTED:
        return
    walk = _walk(room, trims, drawn)
    lengths = tuple(float(length) for length in walk.lengths)
    closing: list[tuple[int, ...]] = []
    for signs in product((1, -1), repeat=len(disputed)):
        turns = list(walk.turns)
        for index, sign in zip(disputed, signs, strict=True):
            turns[index] *= sign
        goes_round = abs(sum(turns) - 360) < MOST_SHARED
        if goes_round and abs(miss(lengths, tuple(turns))) <= float(room.settings.closes_within):
            closing.append(signs)
    if len(closing) != 1:
        return
    count = len(room.walk)
    wrong: list[tuple[int, str]] = []
    for index, sign in zip(disputed, closing[0], strict=True):
        # the walk takes the left-hand stretch's word; where that is turned over, it was wrong
        wrong.append((index, "right") if sign < 0 else ((index + 1) % count, "left"))
    stretches = {index for index, _ in wrong}
    sides = ", and ".join(_two_sides(room, index) for index in disputed)
    if len(wrong) == 2 and len(stretches) == 1:
        slip = f"left and right of {_name(room.walk[wrong[0][0]])} are swapped"
    else:
        slip = " and ".join(
            f"the {side} end of {_name(room.walk[index])} is wrong" for index, side in wrong
        )
    # one slip reads as one finding: this one stands for those at the joints that it settles
    joints = {room.walk[(index + 1) % count].left for index in disputed}
    settled = {end.span for end in joints if end is not None}
    findings.drop("T301", settled)
    index, side = wrong[0]
    end = room.walk[index].left if side == "left" else room.walk[index].right
    findings.say(
        "T312", room.span if end is None else end.span, room=room.name, slip=slip, sides=sides
    )


def _two_sides(room: Room, index: int) -> str:
    """Say how the two ends of a joint contradict each other."""
    one, other = room.walk[index], room.walk[(index + 1) % len(room.walk)]
    right, left = one.right, other.left
    assert right is not None and left is not None  # noqa: S101, PT018  only such are disputed
    return f"{_name(one)} ends with {right.joint} and {_name(other)} begins with {left.joint}"


def _walk(room: Room, trims: tuple[Trim, ...], drawn: Outline) -> Walk:
    thick = depths(trims)
    count = len(room.walk)
    headings = [float(leg.heading) for leg in drawn.legs]
    turns = [after - before for before, after in pairwise(headings)]
    turns.append(float(drawn.turns[-1].degrees))
    return Walk(
        names=tuple(_name(stretch) for stretch in room.walk),
        lengths=tuple(wall_length(stretch, room, thick) for stretch in room.walk),
        turns=tuple(turns),
        loose=tuple(_loose(room.walk[i], room.walk[(i + 1) % count]) for i in range(count)),
        unit=room.settings.unit,
    )


def _loose(one: Stretch, other: Stretch) -> bool:
    return (
        isinstance(one, Run)
        and isinstance(other, Run)
        and one.right.joint.stops
        and other.left.joint.stops
    )


def _name(stretch: Stretch) -> str:
    if isinstance(stretch, Gap):
        if stretch.called:
            return f"“{stretch.called}”"
        return f"the {stretch.kind} in line {stretch.span.line}"
    return f"run {stretch.label}"


def _rough(inches: Fraction, room: Room) -> str:
    step = room.settings.rounding_step
    return feet_text(steps_nearest(inches, step), room.settings.unit)


def _where(point: Point, room: Room) -> str:
    """Say where the walk ends, in words of someone who faces the first wall."""
    parts = []
    for size, plus, minus in (
        (point.x, "to the right of", "to the left of"),
        (point.y, "in front of", "behind"),
    ):
        text = _rough(abs(size), room)
        if steps_nearest(size, room.settings.rounding_step):
            parts.append(f"{text} {plus if size > 0 else minus}")
    return f"{' and '.join(parts)} its start, facing {_name(room.walk[0])}"


def _likely(slips: tuple[Slip, ...]) -> str:
    if not slips:
        return (
            "None of the usual single slips explains it: measure the room again, or mark it"
            " “open walk” if it is not to be closed."
        )
    if len(slips) == 1:
        return f"Most likely: {slips[0].words}."
    named = "; or ".join(slip.words for slip in slips[:MOST_NAMED])
    more = f"; and {len(slips) - MOST_NAMED} others" if len(slips) > MOST_NAMED else ""
    return f"Several slips explain it equally well: {named}{more}. Measure these again."
