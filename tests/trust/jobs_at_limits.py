"""Writes small jobs whose numbers lie where a rule turns: right angles, steps, least pieces.

Most of a job is plain, so that it can be cut, and one to three of its numbers are moved to a
limit, a hair above or below.  Everything comes from the random numbers handed in.
"""

from __future__ import annotations

from random import Random
from typing import Final

from tests.jobs import WIDE_CASE

_HAIRS: Final = ("0.000001", "0.0001", "0.001", "0.01", "0.05", "0.125", "0.2", "0.25", "0.5", "1")
_ANGLES: Final = (
    0,
    0.5,
    1,
    2,
    30,
    44.5,
    45,
    60,
    89,
    90,
    91,
    120,
    135,
    178,
    179,
    180,
    181,
    270,
    360,
)
_LENGTHS: Final = (
    "0", "1/128", "1/64", "1/32", "1/16", "1/8", "3/16", "1/2", "9/16", "1", "2 15/16", "3",
    "23 15/16", "24", "24 1/16", "29 1/8", "47 63/64", "48", "95 15/16", "96", "96 1/16", "143 7/8",
    "143 15/16", "144", "144 1/16", "191 31/32", "192", "240", "1199 15/16", "1200", "1200 1/16",
    "0.0625", "0.03125", "143.9999999", "29.1249999", "12.0000001", "3.14159265358979", "1e3",
)  # fmt: skip
_MILLIMETRES: Final = (
    "0", "0.1", "0.5", "1", "1.5", "2", "14", "600", "609.6", "2399", "2400", "2400.5", "2440",
    "3600", "3657.6", "30479", "30480", "30481", "2.740", "2,740", "25.4",
)  # fmt: skip
_COUNTS: Final = ("0", "1", "2", "3", "99", "100", "1000", "9999", "10000", "999999999")
_PERCENT: Final = ("0", "1", "10", "99.9", "100", "100.1", "1000")
_MATERIALS: Final = ("", ", mdf", ", pine", ", primed", ", white oak")
_SETTINGS: Final = (
    "saw: kerf {l}", "saw: reads to {a} deg", "saw: reaches {a} deg", "saw: squares off {l}",
    "spare {p} %", "spare covers any one piece spoiled", "corners: out-corner mitre {a} deg",
    "corners: in-corner mitre {a} deg", "corners: in-corner cope", "corners: out-corner gap {l}",
    "corners: doubt {a} deg", "splices: angle {a} deg", "splices: least {l}",
    "splices: studs every {l}", "splices: never", "closes within {l}", "nails: every {l}",
    "nails: {l} long", "nails: plate {l}", "nails: floor {l}", "nails: box of {c} at {m}",
    "caulk: bead {l}", "caulk: tube {d} fl oz at {m}", "caulk: waste {p} %",
    "filler: tub {d} fl oz", "paint: {c} coats", "paint: {d} sqft a gallon", "round to {l}",
    "round out-corner nearest", "round cope up by {l}", "taken point", "ends in", "ends out",
    "unit mm", "casings: reveal {l}", "casings: overhang {l}", "casings: head butt",
    "on-hand base: {c} of {l}, {l}", "currency \"€\"", "surveyed 2026-04-18",
)  # fmt: skip
_LOG: Final = (
    "bought {c} base {l}", "bought {c} base 12 ft at {m}", "cut {piece}", "cut {piece}, {piece}",
    "cut {piece} {l} from base-1 of 12 ft", "cut {piece} {l} from base-{c} of {l}",
    "spoiled {piece}", "spoiled {piece} into {l} and {l}", "shortened {piece} to {l}",
    "fitted {piece}", "rack base: 1 of 12 ft, {l}", "rack base: nothing", "rack base: {c} of {l}",
    "bought 1 pack of {c} base 12 ft", "# a word", "",
)  # fmt: skip


class _Numbers:
    """Plain numbers, and now and then one at a limit."""

    def __init__(self, random: Random, *, share: float | None = None) -> None:
        self.random = random
        self.metric = random.random() < 0.15
        self.share = random.choice((0.03, 0.06, 0.12)) if share is None else share

    def moved(self) -> bool:
        return self.random.random() < self.share

    def length(self, low: int = 20, high: int = 200, *, moved: bool | None = None) -> str:
        random = self.random
        if self.moved() if moved is None else moved:
            if self.metric:
                return random.choice(_MILLIMETRES)
            limit = random.choice(_LENGTHS)
            if random.random() < 0.3 and limit.isdigit():
                hair = random.choice((-1, 1)) * float(random.choice(_HAIRS))
                limit = f"{max(int(limit) + hair, 0):.7f}"
            return f"{limit} {random.choice(('in', 'in', 'in', 'ft', 'mm', 'm'))}"
        if self.metric:
            return str(random.randint(low, high) * 25)
        part = random.choice(("", "", " 1/2", " 1/8", " 7/16", " 3/4"))
        return f"{random.randint(low, high)}{part} in"

    def angle(self, usual: float = 90) -> str:
        random = self.random
        if self.moved():
            angle = random.choice(_ANGLES) + random.choice((-1, 0, 1)) * float(
                random.choice(_HAIRS)
            )
            return f"{angle:.6f}".rstrip("0").rstrip(".")
        return f"{usual + random.choice((-2, -1, -0.5, 0, 0, 0.25, 0.5, 1))}"

    def filled(self, form: str, pieces: tuple[str, ...] = ()) -> str:
        """Put numbers into the places of a line."""
        random = self.random
        small = random.random() < 0.4
        choices = {
            "{a}": tuple(f"{angle}{more}" for angle in _ANGLES for more in ("", ".001")),
            "{c}": ("1", "2", "3") if small else _COUNTS,
            "{p}": _PERCENT,
            "{m}": ("0", "0.01", "17.40", "999999.99", "0.001"),
            "{d}": ("0", "0.5", "8", "10.1", "350", "999999"),
            "{piece}": pieces or ("R-N-base",),
        }
        while "{l}" in form:
            form = form.replace("{l}", self.length(1, 40, moved=not small), 1)
        for place, values in choices.items():
            while place in form:
                form = form.replace(place, random.choice(values), 1)
        return form


def job_at_limits(random: Random) -> str:
    """Return a small job file, some of its numbers at a limit."""
    numbers = _Numbers(random)
    lines = ["unit mm"] if numbers.metric else []
    trims = ["base", *random.sample(("shoe", "crown", "cap"), random.choice((0, 0, 0, 1, 2)))]
    lines += [_trim(name, numbers) for name in trims]
    lines += [_stock(name, numbers) for name in trims]
    if cased := random.random() < 0.2:
        lines += [WIDE_CASE, "stock case: 7 ft at 8.80"]
    for _ in range(random.choice((0, 0, 1, 1, 2, 3))):
        lines.append(numbers.filled(random.choice(_SETTINGS)))
    for name in ("R", "Q")[: random.choice((1, 1, 1, 2))]:
        lines += _room(name, trims, numbers, cased=cased)
    return "\n".join(lines) + "\n"


class _FewNumbers(_Numbers):
    """Of the plain lengths only a few, so that most lines were read before.

    The longest still comes from one stick of 12 ft: a long wall takes three times as long.
    """

    def length(self, low: int = 20, high: int = 144, *, moved: bool | None = None) -> str:
        if self.moved() if moved is None else moved:
            return super().length(low, high, moved=True)
        plain = ((27 * low, 12 * (low + high), 25 * high - 10) if self.metric else
                 (f"{low + 1} 1/2", low + high // 3, f"{high - 1} 7/16"))  # fmt: skip
        return f"{self.random.choice(plain)}{'' if self.metric else ' in'}"


def least_job(random: Random) -> str:
    """Return a job of one trim and one or two walls, some of its numbers at a limit."""
    numbers = _FewNumbers(random, share=0.12)
    lines = ["unit mm"] if numbers.metric else []
    trim = random.choice(("base", "base", "crown"))
    lines += [_trim(trim, numbers), _stock(trim, numbers)]
    if random.random() < 0.4:
        lines.append(numbers.filled(random.choice(_SETTINGS)))
    first, last = random.choices(("butt", "return", "open"), (6, 2, 2), k=2)
    turn = random.choice(("in-corner", "out-corner", "splice", "", "", ""))
    if turn.endswith("corner") and random.random() < 0.7:
        turn += f"({numbers.angle()} deg)"
    lines.append(f'room "R" as R, trim {trim}, open walk')
    lines.append(f"  N: {numbers.length()}, left={first}, right={turn or last}")
    if turn:
        lines.append(f"  E: {numbers.length()}, left={turn}, right={last}")
    return "\n".join(lines) + "\n"


def log_lines(random: Random, text: str, most: int = 4) -> tuple[str, ...]:
    """Return lines of a site log for a job of these."""
    trims = [name for name in ("base", "shoe", "crown", "cap") if f"trim {name}:" in text]
    pieces = tuple(f"R-{run}-{trim}" for run in "NESW" for trim in trims or ["base"])
    numbers = _Numbers(random)
    lines = (numbers.filled(random.choice(_LOG), pieces) for _ in range(random.randint(1, most)))
    return tuple(lines)


def _trim(name: str, numbers: _Numbers) -> str:
    random = numbers.random
    thick = numbers.length() if numbers.moved() else "14 mm" if numbers.metric else "9/16 in"
    tall = numbers.length(3, 6)
    if name == "crown":
        return f"trim crown: {thick} thick, {tall} wide, spring {numbers.angle(38)} deg"
    front = ", in front of base" if name == "shoe" else ""
    return f"trim {name}: {thick} thick, {tall} tall{random.choice(_MATERIALS)}{front}"


def _stock(name: str, numbers: _Numbers) -> str:
    random = numbers.random
    first = numbers.length() if numbers.moved() else "12 ft"
    if random.random() < 0.15:
        return f"stock {name}: {first}, 16 ft at 1.45 a foot"
    price = random.choice((" at 17.40", " at 17.40", " at 0", " at 0.01"))
    rest = random.choice(
        ("", ", 16 ft at 24.10", ", 8 ft at 9.90 at most 2", ", pack of 10 12 ft at 99")
    )
    return f"stock {name}: {first}{price}{rest}"


def _room(name: str, trims: list[str], numbers: _Numbers, *, cased: bool) -> list[str]:
    random = numbers.random
    closed = random.random() < 0.4
    said = ", ".join(f"trim {one}" if at == 0 else one for at, one in enumerate(trims))
    lines = [f'room "{name}" as {name}, {said}{"" if closed else ", open walk"}']
    if closed:
        long, wide = numbers.length(), numbers.length()
        sides = [long, wide, long, wide]
        if numbers.moved():
            sides[2] = numbers.length()
        ends = ["in-corner"] * 5
    else:
        sides = [numbers.length() for _ in range(random.choice((1, 2, 2, 3)))]
        turns = random.choices(("in-corner", "out-corner", "splice"), (5, 5, 1), k=len(sides) - 1)
        first, last = random.choices(
            ("butt", "return", "open", "plumb", "level"), (8, 3, 2, 1, 1), k=2
        )
        ends = [first, *turns, last]
    for at, (side, run) in enumerate(zip(sides, "NESW", strict=False)):
        left, right = ends[at], ends[at + 1]
        if right.endswith("corner") and random.random() < 0.5:
            right += f"({numbers.angle()} deg)"
        if left == "in-corner" and random.random() < 0.1:
            left += "(cope)"
        line = f"  {run}: {side}, left={left}, right={right}"
        more = (
            f", rising right {numbers.angle(35)} deg", ", rising left 7 1/2 in over 10 in",
            ", splice", ", no splice", ", taken point", ', note "a word"',
            f", floor gap {numbers.length(1, 3, moved=True)}",
            f", first stud {numbers.length(1, 20)}",
        )  # fmt: skip
        if {left, right} & {"plumb", "level"} and random.random() < 0.9:
            line += random.choice(more[:2])
        elif random.random() < 0.08:
            line += random.choice(more)
        lines.append(line)
        if random.random() < (0.5 if cased else 0.1):
            casing = ", casing case, height 80 in" if cased else ""
            lines.append(f'  opening {numbers.length(20, 40)}, "bath"{casing}')
    if closed and random.random() < 0.3:
        lines.append(f"  diagonal N-E {numbers.length(50, 200)}")
    return lines
