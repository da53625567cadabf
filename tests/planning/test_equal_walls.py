"""Walls of one length get the same parts, in whatever rooms, where that costs no more."""

from random import Random
from unittest.mock import patch

from tests.every import every
from tests.jobs import BASE
from trimlang.compiler import Result, compile_job
from trimlang.planning import first_plan


def job(seed: int) -> str:
    """Two or three rooms with a wall of one length, longer than a stick, and some shorter ones."""
    random = Random(seed)
    long, rooms = random.randint(150, 300), random.randint(2, 3)
    sticks = ("144 in at 14.40", "96 in at 9.00, 144 in at 14.00", "120 in at 12, 144 in at 15")
    lines = [BASE, "spare 0 %", f"stock base: {random.choice(sticks)}"]
    if random.random() < 0.5:
        lines.append(f"on-hand base: {random.randint(1, 2)} of {random.randint(30, 110)} in")
    for number in range(rooms):
        lines += [f'room "R{number}" as R{number}, trim base, open walk']
        inches = [long, *(random.randint(24, 140) for _ in range(random.randint(0, 2)))]
        for wall, length in enumerate(inches):
            lines += [f"W{wall}: {length} in, left=butt, right=butt", "bare 1 ft"]
    return "\n".join(lines) + "\n"


def cuts(result: Result) -> set[tuple[object, ...]]:
    rooms = dict.fromkeys(piece.room for piece in result.pieces)
    return {
        tuple(sorted(one.length for one in result.pieces if (one.room, one.run) == (room, "W0")))
        for room in rooms
    }


@every("seed", (5, 19))
def test_equal_walls_are_cut_alike_where_it_costs_no_more(seed: int) -> None:
    result = compile_job(job(seed))
    assert result.ok, result.diagnostics
    with patch.object(first_plan, "cut_alike", lambda _asking, _pieces, _moving, best, _: best):
        other = compile_job(job(seed))
    assert result.cost == other.cost
    assert len(result.plans[0].sticks) <= len(other.plans[0].sticks)
    assert len(cuts(other)) > 1
    # with seed 5 no cut for both walls costs as little
    assert len(cuts(result)) == (2 if seed == 5 else 1)
