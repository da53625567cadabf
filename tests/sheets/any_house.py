"""Writes invented jobs with all that sheets must find room for: long names, many trims, odd sizes.

Rooms with crown, casing, windows, boxes, stairs and notes; everything comes from the random
numbers handed in.
"""

from __future__ import annotations

from random import Random
from typing import Final

_TRIMS: Final = """\
trim base: 9/16 in thick, 5 1/4 in tall, mdf, primed
trim shoe: 1/2 in thick, 3/4 in tall, in front of base, pine
trim rail: 11/16 in thick, 2 1/2 in tall, poplar
trim crown: 11/16 in thick, 3 5/8 in wide, spring 38 deg, poplar
trim case: 11/16 in thick, 2 1/4 in wide, pine
trim band: 1 1/16 in thick, 1 1/4 in wide, pine
trim shelf: 3/4 in thick, 5 1/2 in wide, poplar
trim panel: 5/8 in thick, 1 1/4 in wide, pine
trim skirt: 3/4 in thick, 11 1/4 in tall, oak
"""
_STOCK: Final = """\
stock base: 12 ft at 17.40, 16 ft at 24.10
stock shoe: 8 ft at 5.20, 16 ft at 10.10
stock rail: 12 ft at 15.60, 16 ft at 21.00
stock crown: 12 ft at 28.80, 16 ft at 38.50
stock case: 7 ft at 7.60, 14 ft at 14.90
stock band: 8 ft at 9.90
stock shelf: 8 ft at 17.60
stock panel: 16 ft at 9.40
stock skirt: 12 ft at 41.00, 16 ft at 55.50
"""
_ROOMS: Final = (
    "Hall", "Study", "WC", "Bedroom of the twins under the roof", "Großes Wohnzimmer", "Pantry",
    "Despacho de la señora de la casa", "Utility room behind the garage", "Flur", "A",
)  # fmt: skip
_DOORS: Final = ("hall", "bath", "door to the winter garden", "Kellertür", "WC", "study", "x")
_NOTES: Final = (
    "", "", "", ", note \"mind the pipe\"",
    ", note \"the plaster is loose here; fix it before anything is nailed to this wall\"",
    ", note \"Heizkörpernischenverkleidung\"",
)  # fmt: skip
_BELOW: Final = ("four sides", "stool shelf apron case", "four sides, backband band")
_SETTINGS: Final = (
    "spare 5 %", "spare covers any one piece spoiled", "taken wall", "filler: tub 8 fl oz at 6.00",
    "saw: kerf 3/32 in, reads to 1/8 deg", "saw: stands 4 in, bevels left", "casings: head butt",
    "paint: 2 coats, 350 sqft a gallon, can 1 quart at 24.50", "splices: studs every 16 in",
    "round to 1/32 in", "tax 8.25 %",
)  # fmt: skip


def any_house(random: Random) -> str:
    """Return a job of one to three rooms."""
    lines = [f'job "{random.choice(("Plum Lane 3", "House of many rooms " * 4))}"', "ends in"]
    lines += random.sample(_SETTINGS, random.randint(0, 4))
    names = random.sample(_ROOMS, random.randint(1, 3))
    for number, name in enumerate(names):
        lines += (
            _stair(name, number, random) if random.random() < 0.2 else _room(name, number, random)
        )
    return _TRIMS + _STOCK + "\n".join(lines) + "\n"


def _room(name: str, number: int, random: Random) -> list[str]:
    trims = ["base", *(one for one in ("shoe", "rail", "crown") if random.random() < 0.4)]
    lines = [f'room "{name}" as R{number}, trim {", ".join(trims)}, open walk']
    doors: list[str] = []
    for wall in "NESW"[: random.randint(1, 4)]:
        long = random.choice((random.randint(6, 60), random.randint(40, 260)))
        note = random.choice(_NOTES)
        if random.random() < 0.5:
            lines.append(f"  {wall}: {_inches(long, random)}{note}")
            if random.random() < 0.3 and long > 30:
                lines.append(_boxes(wall, long, random))
            continue
        lines.append(f"  {wall}1: {_inches(random.randint(6, 90), random)}, right=butt")
        lines.append(_opening(random, doors))
        lines.append(f"  {wall}2: {_inches(random.randint(6, 90), random)}, left=butt{note}")
    boxes = [line for line in lines if line.startswith("  boxes")]
    return [*(line for line in lines if line not in boxes), *boxes]


def _inches(whole: int, random: Random) -> str:
    return f"{whole}{random.choice(('', ' 1/2', ' 3/16', ' 7/8'))} in"


def _boxes(wall: str, long: int, random: Random) -> str:
    tall, count = random.randint(10, 40), random.randint(1, min(long // 20, 4))
    count = max(count, long // 90 + 1)  # no side is longer than a stick
    return f"  boxes {wall}: {count}, {tall} in tall, margin {random.randint(2, 5)} in, trim panel"


def _opening(random: Random, doors: list[str]) -> str:
    free = [one for one in _DOORS if one not in doors]
    name = random.choice(free)
    doors.append(name)
    wide = random.randint(14, 72)
    match random.randint(0, 3):
        case 0:
            return f'  opening {wide} in, "{name}"'
        case 1:
            below = random.choice(
                ("four sides", "stool shelf apron case", "four sides, backband band")
            )
            sill = random.choice(("", f", sill {random.randint(20, 40)} in"))
            tall = random.randint(12, 60)
            return f'  window {wide} in, "{name}", casing case, height {tall} in, {below}{sill}'
        case 2:
            return f'  door {wide} in, "{name}", casing case, height 80 in, backband band'
        case _:
            return f'  door {wide} in, "{name}", casing case, height 80 in'


def _stair(name: str, number: int, random: Random) -> list[str]:
    way = random.choice(("right", "left"))
    ends = "left=plumb, right=plumb"
    return [
        f'room "{name}" as R{number}, trim skirt, open walk',
        f"  FLIGHT: {random.randint(40, 150)} in, {ends}, rising {way}"
        f" {random.randint(6, 8)} in rise, {random.randint(9, 11)} in run",
    ]
