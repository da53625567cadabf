"""How many slips a room's closing finds, which it names, and how often it cries wolf.

    python -m benchmarks.closing --rooms 100
    python -m benchmarks.closing --curve

Rooms of five kinds are made up with fixed seeds: their corners a little off square, their walls
read a little wrong.  Into each a slip is put, and the room is checked as any job file is.  A slip
counts as named where the wall or corner that it is on stands among those that the finding names.
"""

from __future__ import annotations

import argparse
from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from math import radians
from random import Random

from trimlang.compiler import check_job
from trimlang.survey.closing import MOST_NAMED

HEAD = "trim base: 9/16 in thick, 5 1/4 in tall\nstock base: 12 ft at 17.40, 16 ft at 24.10\n"
FOUND = {"T301", "T302", "T304", "T310", "T311", "T312", "T316", "T320", "T324"}


@dataclass(frozen=True)
class Wall:
    """A stretch as it is written: inches, how it ends, and its right corner's angle (degrees)."""

    label: str
    long: Fraction
    left: str
    right: str
    angle: float | None = None
    opening: bool = False
    left_angle: float | None = None

    def line(self) -> str:
        """Write the line of a job file."""
        if self.opening:
            return f'  opening {self.long} in, "door"'
        angle = "" if self.angle is None else f"({self.angle:.2f} deg)"
        long = f"{self.long.numerator // self.long.denominator} {self.long % 1}".replace(" 0", "")
        before = "" if self.left_angle is None else f"({self.left_angle:.2f} deg)"
        return f"  {self.label}: {long} in, left={self.left}{before}, right={self.right}{angle}"


@dataclass(frozen=True)
class Survey:
    """How rooms are made and measured: corners off by so many degrees, and what is measured."""

    name: str
    off: float
    doubt: str
    corners: bool = False
    diagonals: bool = False
    every: bool = False


SURVEYS = (
    Survey("walls only, corners within 1/2°", 0.5, "1/2"),
    Survey("walls only, corners true to 1/8° and said so", 0.125, "1/8"),
    Survey("corners measured to 1/8°", 0.5, "1/2", corners=True),
    Survey("diagonals measured", 0.5, "1/2", diagonals=True),
    Survey("corners and diagonals measured", 0.5, "1/2", corners=True, diagonals=True),
    Survey("every diagonal in view", 0.5, "1/2", diagonals=True, every=True),
)


def shape(random: Random, kind: str) -> tuple[list[float], list[float]]:
    """Return the true lengths (inches) and turns (degrees) of a room whose corners are true."""
    wide, deep = random.uniform(90, 210), random.uniform(90, 180)
    if kind == "rectangle":
        return [wide, deep, wide, deep], [90, 90, 90, 90]
    if kind == "ell":
        out, down = random.uniform(24, 60), random.uniform(30, 70)
        return [wide, deep, out, down, wide + out, deep + down], [90, -90, 90, 90, 90, 90]
    if kind == "breast":
        first, depth, face = random.uniform(24, 60), random.uniform(10, 24), random.uniform(40, 60)
        rest = random.uniform(30, 70)
        long = [first, depth, face, depth, rest, deep, first + face + rest, deep]
        return long, [90, -90, -90, 90, 90, 90, 90, 90]
    if kind == "alcove":
        first, depth, face = random.uniform(30, 60), random.uniform(14, 30), random.uniform(40, 60)
        rest = random.uniform(30, 70)
        long = [first, depth, face, depth, rest, deep, first + face + rest, deep]
        return long, [-90, 90, 90, -90, 90, 90, 90, 90]
    side = random.uniform(30, 44)
    first, rest = random.uniform(30, 60), random.uniform(30, 60)
    over = first + rest + side * (1 + 2**0.5)
    long = [first, side, side, side, rest, deep, over, deep]
    return long, [-45, 45, 45, -45, 90, 90, 90, 90]


KINDS = ("rectangle", "ell", "breast", "alcove", "bay")


def crooked(random: Random, kind: str, off: float) -> tuple[list[float], list[float]]:
    """Return a true room whose corners are off square; two walls take up what that opens."""
    long, turns = shape(random, kind)
    errors = [random.uniform(-off, off) for _ in turns]
    turns = [turn + error - sum(errors) / len(errors)
             for turn, error in zip(turns, errors, strict=True)]  # fmt: skip
    places, ways = walked(long, turns)
    one, other, end = ways[-2], ways[-1], places[-1]
    size = one.real * other.imag - one.imag * other.real
    long[-2] += (-end.real * other.imag + end.imag * other.real) / size
    long[-1] += (-one.real * end.imag + one.imag * end.real) / size
    return long, turns


def walked(long: list[float], turns: list[float]) -> tuple[list[complex], list[complex]]:
    """Return the corners in order, the start again last, and each wall's way."""
    from cmath import exp

    places, ways, heading = [0j], [], 0.0
    for length, turn in zip(long, turns, strict=True):
        ways.append(exp(-1j * radians(heading)))
        places.append(places[-1] + length * ways[-1])
        heading += turn
    return places, ways


def tape(random: Random, inches: float) -> Fraction:
    """Return what the tape says of a length: an eighth off at most, to the sixteenth."""
    return Fraction(round((inches + random.uniform(-0.125, 0.125)) * 16), 16)


def surveyed(random: Random, kind: str, survey: Survey) -> tuple[list[Wall], list[str]]:
    """Return a sound room's walls as they are written, one with a door, and its diagonals."""
    long, turns = crooked(random, kind, survey.off)
    corners = ["in-corner" if turn > 0 else "out-corner" for turn in turns]
    walls = []
    for at, (length, turn) in enumerate(zip(long, turns, strict=True)):
        angle = 180 - abs(turn)
        read: float | None = None
        if survey.corners:
            read = angle + random.uniform(-0.125, 0.125)
        elif abs(abs(turn) - 90) > 20:
            read = round(angle * 2) / 2
        walls.append(Wall(f"W{at}", tape(random, length), corners[at - 1], corners[at], read))
    door = len(walls) - 2
    whole = walls[door]
    before = Fraction(random.randint(18, 30))
    after = whole.long - before - 32
    walls[door : door + 1] = [
        replace(whole, label=f"W{door}a", long=before, right="butt", angle=None),
        Wall("", Fraction(32), "", "", opening=True),
        replace(whole, label=f"W{door}b", long=after, left="butt"),
    ]
    lines = []
    if survey.diagonals:
        places, _ = walked(long, turns)
        count = len(long)
        half = [(start, (start + count // 2) % count) for start in range(count // 2)]
        for start, end in in_view(places[:-1]) if survey.every else half:
            one = f"W{start}" if start != door else f"W{door}a"
            last = (end - 1) % count
            other = f"W{last}" if last != door else f"W{door}b"
            across = tape(random, abs(places[end] - places[start]))
            lines.append(f"  diagonal {one}-{other} {float(across)} in")
    return walls, lines


def in_view(corners: list[complex]) -> list[tuple[int, int]]:
    """Return the pairs of corners, not next to each other, that a tape reaches across the room.

    It keeps an inch off every other corner, so what runs along a wall is no diagonal.
    """
    from shapely import LineString, Point, Polygon

    places = [(corner.real, corner.imag) for corner in corners]
    floor = Polygon(places).buffer(1e-6)
    count = len(places)
    return [
        (one, other)
        for one in range(count)
        for other in range(one + 2, count)
        if (one - other) % count != 1
        and floor.covers(tape_line := LineString([places[one], places[other]]))
        and all(
            tape_line.distance(Point(place)) > 1
            for at, place in enumerate(places)
            if at not in (one, other)
        )
    ]


Slipped = tuple[list[Wall], set[tuple[int, ...]]]


def _with(walls: list[Wall], at: int, long: Fraction) -> Slipped:
    return [*walls[:at], replace(walls[at], long=long), *walls[at + 1 :]], {(at,)}


def _run(random: Random, walls: list[Wall], over: int = 0) -> int:
    runs = [at for at, wall in enumerate(walls) if not wall.opening and wall.long > over]
    return random.choice(runs)


def inches_off(count: int) -> Callable[[Random, list[Wall]], Slipped | None]:
    """A wall read so many inches too long or too short."""

    def slip(random: Random, walls: list[Wall]) -> Slipped:
        at = _run(random, walls)
        off = count if walls[at].long <= count + 4 else count * random.choice((-1, 1))
        return _with(walls, at, walls[at].long + off)

    return slip


def up_to_a_foot(random: Random, walls: list[Wall]) -> Slipped | None:
    """A wall read whole inches too long or too short, one to twelve alike."""
    return inches_off(random.randint(1, 12))(random, walls)


def fraction_misread(random: Random, walls: list[Wall]) -> Slipped:
    """The fraction counted from the wrong mark: 1/4 for 3/4."""
    at = _run(random, walls)
    whole, part = divmod(walls[at].long, 1)
    part = part or Fraction(1, 4)
    part = Fraction(3, 16) if part == Fraction(1, 2) else part
    return _with(walls, at, whole + 1 - part)


def feet_for_inches(random: Random, walls: list[Wall]) -> Slipped:
    """10 in for 10 ft."""
    at = _run(random, walls, 23)
    return _with(walls, at, Fraction(round(walls[at].long / 12)))


def inches_for_feet(random: Random, walls: list[Wall]) -> Slipped | None:
    """12 ft for 12 in."""
    short = [at for at, wall in enumerate(walls) if not wall.opening and wall.long < 90]
    if not short:
        return None
    at = random.choice(short)
    return _with(walls, at, walls[at].long * 12)


def centimetres(random: Random, walls: list[Wall]) -> Slipped | None:
    """Centimetres written as inches."""
    at = _run(random, walls)
    long = Fraction(round(walls[at].long * Fraction(254, 100)))
    return _with(walls, at, long) if long < 1200 else None


def run_together(random: Random, walls: list[Wall]) -> Slipped | None:
    """161/2 for 16 1/2."""
    at = _run(random, walls)
    whole, part = divmod(walls[at].long, 1)
    part = part or Fraction(1, 2)
    long = Fraction(int(f"{whole}{part.numerator}"), part.denominator)
    return _with(walls, at, long) if long < 1200 else None


def corner_and_butt(_random: Random, walls: list[Wall]) -> Slipped:
    """The corner and the butt of the run beside the door swapped."""
    at = next(at for at, wall in enumerate(walls) if wall.opening) - 1
    one = walls[at]
    mended = replace(one, left=one.right, right=one.left, left_angle=one.angle, angle=None)
    return [*walls[:at], mended, *walls[at + 1 :]], {(at,)}


def left_and_right(random: Random, walls: list[Wall]) -> Slipped | None:
    """Left and right of a run with unlike corners swapped."""
    runs = [
        at
        for at, wall in enumerate(walls)
        if {wall.left, wall.right} == {"in-corner", "out-corner"}
    ]
    if not runs:
        return None
    at = random.choice(runs)
    one = walls[at]
    before = walls[at - 1].angle
    mended = replace(one, left=one.right, right=one.left, left_angle=one.angle, angle=before)
    return [*walls[:at], mended, *walls[at + 1 :]], {(at,)}


def in_for_out(random: Random, walls: list[Wall]) -> Slipped | None:
    """Both sides of an outside corner written as an inside one."""
    corners = [at for at, wall in enumerate(walls) if wall.right == "out-corner"]
    if not corners:
        return None
    at = random.choice(corners)
    after = (at + 1) % len(walls)
    changed = list(walls)
    changed[at] = replace(walls[at], right="in-corner")
    changed[after] = replace(changed[after], left="in-corner")
    return changed, {(at, after)}


def left_out(random: Random, walls: list[Wall]) -> Slipped | None:
    """A wall of a step left out."""
    steps = [at for at, wall in enumerate(walls) if "out-corner" in (wall.left, wall.right)]
    if not steps:
        return None
    at = random.choice(steps)
    changed = [*walls[:at], *walls[at + 1 :]]
    return changed, {((at - 1) % len(changed), at % len(changed))}


def angles_swapped(random: Random, walls: list[Wall]) -> Slipped | None:
    """Two measured angles that differ by more than 20° swapped."""
    pairs = [
        (one, other)
        for one, wall in enumerate(walls)
        for other in range(one + 1, len(walls))
        if wall.angle is not None
        and (angle := walls[other].angle) is not None
        and wall.right == walls[other].right
        and abs(wall.angle - angle) > 20
    ]
    if not pairs:
        return None
    one, other = random.choice(pairs)
    changed = list(walls)
    changed[one] = replace(walls[one], angle=walls[other].angle)
    changed[other] = replace(walls[other], angle=walls[one].angle)
    return changed, {(one, other)}


def bay_all_in(_random: Random, walls: list[Wall]) -> Slipped | None:
    """A bay or an alcove written all in-corner."""
    outs = [at for at, wall in enumerate(walls) if wall.right == "out-corner"]
    if len(outs) != 2:
        return None
    changed = [
        replace(
            wall,
            left=wall.left.replace("out", "in"),
            right=wall.right.replace("out", "in"),
        )
        for wall in walls
    ]
    return changed, {tuple(outs)}


def mitre_for_corner(random: Random, walls: list[Wall]) -> Slipped:
    """A square corner written 45 deg."""
    corners = [at for at, wall in enumerate(walls) if wall.right == "in-corner"]
    at = random.choice(corners)
    changed = list(walls)
    changed[at] = replace(walls[at], angle=45)
    return changed, {(at, (at + 1) % len(walls))}


SLIPS: dict[str, Callable[[Random, list[Wall]], Slipped | None]] = {
    "an inch": inches_off(1),
    "two inches": inches_off(2),
    "three inches": inches_off(3),
    "six inches": inches_off(6),
    "a foot": inches_off(12),
    "two feet": inches_off(24),
    "one to twelve inches": up_to_a_foot,
    "fraction misread": fraction_misread,
    "inches for feet (10 in for 10 ft)": feet_for_inches,
    "feet for inches (12 ft for 12 in)": inches_for_feet,
    "centimetres for inches": centimetres,
    "161/2 for 16 1/2": run_together,
    "corner and butt swapped": corner_and_butt,
    "left and right swapped": left_and_right,
    "in-corner for out-corner": in_for_out,
    "a wall of a step left out": left_out,
    "two angles swapped": angles_swapped,
    "a bay or alcove all in-corner": bay_all_in,
    "45 deg meant as a mitre": mitre_for_corner,
}


def text(walls: list[Wall], diagonals: list[str], doubt: str) -> str:
    """Write the job file."""
    # a diagonal of a wall that was left out is left out too
    labels = {wall.label for wall in walls}
    across = [line for line in diagonals if set(line.split()[1].split("-")) <= labels]
    lines = [f"  corners: doubt {doubt} deg", *(wall.line() for wall in walls), *across]
    return HEAD + 'room "R", trim base\n' + "\n".join(lines) + "\n"


def judged(job: str, about: set[tuple[int, ...]]) -> str:
    """Return how a slip was answered."""
    result = check_job(job)
    if not {one.code for one in result.diagnostics} & FOUND:
        return "missed"
    (closing,) = result.closings
    named = [slip.about for slip in closing.slips[:MOST_NAMED]]
    if not named:
        return "found, none named"
    if not about & set(named):
        return "wrong one alone" if len(named) == 1 else "wrong ones"
    return "right one alone" if len(named) == 1 else "right one among several"


def answers(
    count: int, survey: Survey, slip: str | None, sample: str = ""
) -> dict[str, Counter[str]]:
    """Return how the rooms of each kind were answered, seeds fixed by the sample's name."""
    said: dict[str, Counter[str]] = {kind: Counter() for kind in KINDS}
    for kind in KINDS:
        for seed in range(count):
            random = Random(f"{kind} {seed} {survey.name} {slip}{sample}")
            walls, diagonals = surveyed(random, kind, survey)
            about: set[tuple[int, ...]] = set()
            if slip is not None:
                slipped = SLIPS[slip](random, walls)
                if slipped is None:
                    continue
                walls, about = slipped
            said[kind][judged(text(walls, diagonals, survey.doubt), about)] += 1
    return said


def found(said: Counter[str]) -> str:
    """Write the share of rooms whose slip was found, or that were called out without one."""
    return percent(said.total() - said["missed"], said.total())


def percent(count: int, of: int) -> str:
    """Write a share."""
    return f"{100 * count / of:.1f}" if of else "–"


def table(count: int, surveys: Sequence[Survey], slips: Sequence[str], sample: str) -> None:
    """Print what is found and named, a table a survey, and what is found in each kind of room."""
    for survey in surveys:
        sound = answers(4 * count, survey, None, sample)
        each = ", ".join(f"{kind} {found(said)}" for kind, said in sound.items())
        every = sum(sound.values(), Counter())
        print(f"\n{survey.name}: {found(every)} % false alarms of {every.total()} sound rooms"
              f" ({each})\n", flush=True)  # fmt: skip
        heads = ("slip", "rooms", "found %", "right one alone", "among several", "none named",
                 "wrong one alone", "wrong ones", *KINDS)  # fmt: skip
        print(f"| {' | '.join(heads)} |\n|{' --- |' * len(heads)}")
        for slip in slips:
            rooms = answers(count, survey, slip, sample)
            said = sum(rooms.values(), Counter())
            of = said.total()
            if not of:
                continue
            cells = ("right one alone", "right one among several", "found, none named",
                     "wrong one alone", "wrong ones")  # fmt: skip
            shares = [found(said), *(percent(said[cell], of) for cell in cells),
                      *map(found, rooms.values())]  # fmt: skip
            print(f"| {slip} | {of} | {' | '.join(shares)} |", flush=True)


def curve(count: int, sample: str) -> None:
    """Print what is found against how crooked the corners are, and are said to be."""
    slips = ("an inch", "two inches", "three inches", "six inches", "a foot")
    print(
        f"| corners off by up to | false alarms % | {' | '.join(f'{slip} %' for slip in slips)} |"
    )
    print("| --- |" + " --- |" * (1 + len(slips)))
    for off in (Fraction(1, 16), Fraction(1, 8), Fraction(1, 4), Fraction(1, 2), Fraction(1)):
        survey = Survey(f"curve {off}", float(off), str(off))
        shares = []
        for slip in (None, *slips):
            rooms = answers(count if slip else 4 * count, survey, slip, sample)
            shares.append(found(sum(rooms.values(), Counter())))
        print(f"| {off}° | {' | '.join(shares)} |", flush=True)


def main() -> None:
    """Run one of the two."""
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--rooms", type=int, default=100, help="rooms of each kind and slip")
    parser.add_argument("--curve", action="store_true")
    parser.add_argument("--survey", help="only surveys with these words in their name")
    parser.add_argument("--slip", choices=SLIPS, action="append", help="only these slips")
    parser.add_argument("--sample", default="", help="a name: rooms with seeds of their own")
    options = parser.parse_args()
    if options.curve:
        curve(options.rooms, options.sample)
        return
    sample = f" {options.sample}" if options.sample else ""
    surveys = [one for one in SURVEYS if (options.survey or "") in one.name]
    table(options.rooms, surveys, options.slip or list(SLIPS), sample)


if __name__ == "__main__":
    main()
