"""The oracle's own reader of job files: plain, slow, and apart from trimlang.

It reads the forms of the language that the proof needs, line by line with
regular expressions, and keeps what it read in dictionaries and small records.
It reports nothing: a file that it cannot read is no file for the proof.
"""

from __future__ import annotations

import re
from copy import deepcopy
from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path
from typing import Any, Final

import mpmath

BEYOND: Final = ("prices", "site-log", "ferncote", "round-end", "stair-hall", "attic", "shop-stock")
"""Examples that the oracle does not work out: without walls, under way, or with curves, blocks and
climbing corners, which ``tests/joinery`` and ``tests/proof/test_solids.py`` see as shapes."""

mpmath.mp.dps = 45
FINE = 10**28

UNITS = {"in": Fraction(1), "ft": Fraction(12), "mm": Fraction(10, 254), "m": Fraction(10000, 254)}
NUMBER = re.compile(r"\s*(\d+\s+\d+/\d+|\d+/\d+|\d*\.\d+|\d+)")


def exactly(value: Any) -> Fraction:
    """A number of mpmath's, to 28 places."""
    return Fraction(int(mpmath.nint(value * FINE)), FINE)


def tan(degrees: Fraction) -> Fraction:
    return exactly(mpmath.tan(radians(degrees)))


def radians(degrees: Fraction) -> Any:
    return mpmath.mpf(degrees.numerator) / degrees.denominator * mpmath.pi / 180


def number(text: str) -> tuple[Fraction, str]:
    found = NUMBER.match(text)
    assert found, text
    return sum((Fraction(part) for part in found[1].split()), Fraction(0)), text[found.end() :]


def length(text: str, unit: str) -> tuple[Fraction, str]:
    """Inches, and what stands behind: ``5 ft 2 1/4 in``, ``740 mm``, ``900.5``."""
    amount, rest = number(text)
    found = re.match(r"\s*(ft|in|mm|m)\b", rest)
    if not found:
        return amount * UNITS[unit], rest
    inches, rest = amount * UNITS[found[1]], rest[found.end() :]
    if found[1] == "ft" and re.match(r"\s*\d[\d/ ]*in\b", rest):
        more, rest = length(rest, unit)
        inches += more
    return inches, rest


def degrees(text: str) -> Fraction:
    return number(text)[0]


@dataclass
class End:
    joint: str
    angle: Fraction | None = None
    coped: bool = False
    taken: str | None = None
    short: Fraction = Fraction(0)
    bevel: Fraction = Fraction(0)
    long: str = ""


@dataclass
class Stretch:
    """A run (its name is ``label``), an opening or bare wall."""

    kind: str
    length: Fraction
    label: str = ""
    called: str = ""
    reaches: int | None = None
    left: End | None = None
    right: End | None = None
    trims: list[str] = field(default_factory=list)
    taken: str = "wall"
    splice: bool = False
    first_stud: Fraction | None = None
    pitch: Fraction = Fraction(0)
    entrance: bool = False
    casing: list[str] = field(default_factory=list)
    height: Fraction = Fraction(0)


@dataclass
class Room:
    name: str
    tag: str
    settings: dict[str, Any]
    open_walk: bool
    trims: list[str]
    walk: list[Stretch] = field(default_factory=list)


@dataclass
class Job:
    trims: dict[str, dict[str, Any]]
    rooms: list[Room]
    kerf: Fraction
    squares_off: Fraction


DEFAULTS: dict[str, Any] = {
    "unit": "in",
    "step": None,
    "taken": "wall",
    "mitre": {"out-corner": Fraction("45.5"), "in-corner": Fraction("44.5")},
    "cope": False,
    "saw": Fraction(1, 2),
    "scarf": Fraction(45),
    "least": Fraction(24),
    "studs": Fraction(16),
    "reveal": Fraction(3, 16),
    "off_floor": Fraction(0),
    "overhang": Fraction(0),
    "head": "mitre",
    "round": {},
}


def parts(line: str) -> list[str]:
    """The line's parts between commas, without its comment."""
    found, depth, quoted = [""], 0, False
    for sign in line:
        if sign == '"':
            quoted = not quoted
        if sign == "#" and not quoted:
            break
        if not quoted:
            depth += (sign == "(") - (sign == ")")
            if sign == "," and not depth:
                found.append("")
                continue
        found[-1] += sign
    return [part.strip() for part in found]


def gathered(text: str, folder: Path | None) -> list[str]:
    lines: list[str] = []
    for line in text.splitlines():
        included = re.match(r'\s*include "([^"]+)"', line)
        if included and folder is not None:
            lines += gathered((folder / included[1]).read_text(encoding="utf-8"), folder)
        else:
            lines.append(line)
    return lines


def read_job(text: str, folder: Path | None = None) -> Job:
    """Read a sound job file."""
    lines = [parts(line) for line in gathered(text, folder)]
    lines = [line for line in lines if line[0]]
    settings = deepcopy(DEFAULTS)
    trims: dict[str, dict[str, Any]] = {}
    job = Job(trims, [], Fraction(1, 8), Fraction(0))
    heads = [at for at, line in enumerate(lines) if line[0].startswith("room ")]
    above = lines[: heads[0]]
    for line in sorted(above, key=lambda line: not line[0].startswith("unit ")):
        _setting(line, settings, job)
    for line in above:
        _trim(line, trims, settings["unit"])
    for start, end in zip(heads, [*heads[1:], len(lines)], strict=True):
        job.rooms.append(_room(lines[start], lines[start + 1 : end], settings, job))
    return job


def _trim(line: list[str], trims: dict[str, dict[str, Any]], unit: str) -> None:
    head = re.match(r"(trim|stock|on-hand) ([\w-]+):\s*(.*)", line[0])
    if not head:
        return
    facts = [head[3], *line[1:]]
    trim = trims.setdefault(head[2], {"sticks": [], "rests": []})
    for fact in facts:
        if head[1] == "stock":
            trim["sticks"].append(length(re.sub(r"^pack of \d+ ", "", fact), unit)[0])
        elif head[1] == "on-hand":
            trim["rests"].append(length(re.sub(r"^\d+ of ", "", fact), unit)[0])
        elif fact.startswith("spring"):
            trim["spring"] = degrees(fact.removeprefix("spring"))
        elif fact.startswith("in front of"):
            trim["front"] = fact.removeprefix("in front of").strip()
        elif re.match(r"\d", fact):
            size, word = length(fact, unit)
            trim["thick" if "thick" in word else "tall"] = size


def _setting(line: list[str], settings: dict[str, Any], job: Job) -> None:
    topic, _, rest = line[0].partition(":")
    unit = settings["unit"]
    if topic == "saw":
        for fact in [rest.strip(), *line[1:]]:
            if fact.startswith("reads to"):
                settings["saw"] = degrees(fact.removeprefix("reads to"))
            elif fact.startswith("squares off"):
                job.squares_off = length(fact.removeprefix("squares off"), unit)[0]
    elif topic in ("corners", "splices", "casings"):
        for fact in [rest.strip(), *line[1:]]:
            _corner_or_casing(topic, fact, settings, unit)
    elif line[0].startswith("unit "):
        settings["unit"] = line[0].split()[1]
    elif line[0].startswith("taken "):
        settings["taken"] = line[0].split()[1]
    elif line[0].startswith("round to"):
        settings["step"] = length(line[0].removeprefix("round to"), unit)[0]
    elif line[0].startswith("round "):
        _, row, way, *by = line[0].split(maxsplit=4)
        raised = length(by[1], unit)[0] if by else Fraction(0)
        settings["round"][row] = (way, raised)


def _corner_or_casing(topic: str, fact: str, settings: dict[str, Any], unit: str) -> None:
    words = fact.split()
    if topic == "corners" and words[1] == "mitre" and len(words) > 2:
        settings["mitre"][words[0]] = degrees(" ".join(words[2:]))
    elif topic == "corners" and words[1] in ("cope", "mitre"):
        settings["cope"] = words[1] == "cope"
    elif fact.startswith("angle"):
        settings["scarf"] = degrees(fact.removeprefix("angle"))
    elif fact.startswith("least"):
        settings["least"] = length(fact.removeprefix("least"), unit)[0]
    elif fact.startswith("studs every"):
        settings["studs"] = length(fact.removeprefix("studs every"), unit)[0]
    elif fact.startswith("head"):
        settings["head"] = words[1]
    elif topic == "casings":
        name = {"reveal": "reveal", "off": "off_floor", "overhang": "overhang"}[words[0]]
        settings[name] = length(re.sub(r"^[a-z ]+", "", fact), unit)[0]


def _room(head: list[str], below: list[list[str]], settings: dict[str, Any], job: Job) -> Room:
    named = re.match(r'room "([^"]+)"(?: as (\w+))?', head[0])
    assert named
    own = deepcopy(settings)
    for line in below:
        if re.match(r"(unit |taken |round |corners:|splices:|casings:)", line[0]):
            _setting(line, own, job)
    trims: list[str] = []
    for fact in head[1:]:
        if fact.startswith("taken"):
            own["taken"] = fact.split()[1]
        elif not fact.startswith(("open walk", "note")):
            trims.append(fact.removeprefix("trim").strip())
    tag = named[2] or _tag(named[1], [room.tag for room in job.rooms])
    room = Room(named[1], tag, own, "open walk" in head, trims)
    for line in below:
        gap = re.match(r"(opening|bare) (.*)", line[0])
        run = re.match(r"(\w+):\s*(\d.*)", line[0])
        if gap:
            room.walk.append(_stretch(gap[1], "", gap[2], line[1:], room))
        elif run:
            room.walk.append(_stretch("run", run[1], run[2], line[1:], room))
    return room


def _tag(name: str, taken: list[str]) -> str:
    words = name.split()
    tag = words[0][:2] if len(words) == 1 else "".join(w if w.isdigit() else w[0] for w in words)
    tag = tag[:4].upper()
    numbers = [tag, *(f"{tag}{n}" for n in range(2, 99))]
    return next(one for one in numbers if one not in taken)


def _stretch(kind: str, label: str, size: str, facts: list[str], room: Room) -> Stretch:
    unit = room.settings["unit"]
    made = Stretch(kind, length(size, unit)[0], label, taken=room.settings["taken"])
    made.trims = list(room.trims)
    named = [fact.removeprefix("trim ").strip() for fact in facts if fact.startswith("trim ")]
    made.trims = named or made.trims
    for fact in facts:
        side = re.match(r"(left|right)=([a-z-]+)\s*(?:\((.*)\))?\s*(cope)?$", fact)
        if side:
            setattr(made, side[1], _end(side[2], side[3] or "", bool(side[4]), unit))
        elif fact.startswith('"'):
            made.called = fact.strip('"')
        elif fact == "splice":
            made.splice = True
        elif fact.startswith("taken"):
            made.taken = fact.split()[1]
        elif fact.startswith("first stud"):
            made.first_stud = length(fact.removeprefix("first stud"), unit)[0]
        elif fact.startswith("no ") and fact != "no splice":
            made.trims = [trim for trim in made.trims if trim != fact[3:]]
        elif fact.startswith("rising"):
            made.pitch = _pitch(fact, unit)
        elif fact == "entrance":
            made.entrance = True
        elif fact.startswith("casing "):
            made.casing = [word for word in fact.split()[1:] if word != "head"]
        elif fact.startswith("height "):
            made.height = length(fact.removeprefix("height "), unit)[0]
    return made


def _pitch(fact: str, unit: str) -> Fraction:
    _, side, how = fact.split(maxsplit=2)
    if "over" in how:
        rise, run = (length(size, unit)[0] for size in how.split("over"))
        pitch = exactly(mpmath.degrees(mpmath.atan(mpmath.mpf(str(float(rise / run))))))
    else:
        pitch = degrees(how)
    return pitch if side == "right" else -pitch


def _end(joint: str, inside: str, cope: bool, unit: str) -> End:
    end = End(joint, coped=cope)
    if inside.startswith("corner by"):
        legs = [length(part.replace("diagonal", ""), unit)[0]
                for part in inside.removeprefix("corner by").split(",")]  # fmt: skip
        one, other, across = legs
        ratio = (one**2 + other**2 - across**2) / (2 * one * other)
        turn = mpmath.acos(mpmath.mpf(ratio.numerator) / ratio.denominator)
        end.angle = exactly(mpmath.degrees(turn))
    else:
        for fact in (part.strip() for part in inside.split(",")):
            if fact.startswith("taken"):
                end.taken = fact.split()[1]
            elif fact == "cope":
                end.coped = True
            elif fact:
                end.angle = degrees(fact)
    if joint == "out-corner" and end.angle is not None and end.angle > 180:
        end.angle = 360 - end.angle
    return end
