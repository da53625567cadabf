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
from itertools import chain
from pathlib import Path
from typing import Any, Final

import mpmath

BEYOND: Final = ("prices", "site-log")
"""Examples that the oracle does not work out at all: one has no walls, one is under way."""

STEPS: Final = "a stair with steps"
NO_MODEL: Final = {
    r"curves ": "a curved wall",
    r" rise$| run$|open side|notch |level (left|right) ": STEPS,
    r"bullnose": "a rounded corner",
    r"corner\(block ": "a block in a corner",
    r"=taper": "a taper",
    r"^taken upright$": "a length taken upright",
}
"""Facts of a wall of which the oracle has no model, and their kind: it leaves such pieces out.

``tests/joinery`` and ``tests/proof/test_solids.py`` see these kinds as shapes."""

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
    implied: bool = False
    bevel: Fraction = Fraction(0)
    long: str = ""
    wider: Fraction = Fraction(0)  # at the floor than at the top, of a corner out of plumb


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
    word: str = ""
    stops: list[str] | None = None
    ceiling: bool = False
    plinth: str = ""
    rosette: str = ""
    stool: tuple[str, str] | None = None
    faces: bool = False
    four_sides: bool = False
    band: str = ""
    jamb: str = ""
    turns: str = ""
    own_ends: dict[tuple[str, str], str] = field(default_factory=dict)
    no_model: list[tuple[str, str]] = field(default_factory=list)


@dataclass
class Boxes:
    """Frames of mitred trim: on one wall, from one to another, or over or below an opening."""

    where: str
    name: str
    count: int
    trim: str
    tall: Fraction = Fraction(0)
    margin: Fraction = Fraction(0)
    wide: Fraction = Fraction(0)


@dataclass
class Room:
    name: str
    tag: str
    settings: dict[str, Any]
    open_walk: bool
    trims: list[str]
    walk: list[Stretch] = field(default_factory=list)
    boxes: list[Boxes] = field(default_factory=list)
    pieces: list[tuple[str, int, Fraction]] = field(default_factory=list)
    mitred_loose: list[str] = field(default_factory=list)


@dataclass
class Job:
    trims: dict[str, dict[str, Any]]
    rooms: list[Room]
    kerf: Fraction
    squares_off: Fraction
    blocks: dict[str, dict[str, Fraction]] = field(default_factory=dict)
    heads: dict[str, list[dict[str, Any]]] = field(default_factory=dict)


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
    "lap": Fraction(0),
    "horn": Fraction(3, 4),
    "head": "mitre",
    "height": Fraction(80),
    "proud": "",
    "ends in": False,
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
    together = {line[0].split()[1].rstrip(":"): [line[0].partition(":")[2].strip(), *line[1:]]
                for line in lines if line[0].startswith("assembly ")}  # fmt: skip
    heads = [at for at, line in enumerate(lines) if line[0].startswith("room ")]
    above = lines[: heads[0]]
    for line in sorted(above, key=lambda line: not line[0].startswith("unit ")):
        _setting(line, settings, job)
    for line in above:
        _trim(line, trims, settings["unit"])
        _block_or_head(line, job, settings["unit"])
    for members in together.values():
        for at, member in enumerate(members):
            members[at], _, front = member.partition(" in front of ")
            members[at] = members[at].partition(" on ")[0]
            if front:
                trims[members[at]]["front"] = front
    settings["usual trims"] = [
        name
        for line in above if line[0].startswith("every room:")
        for fact in (line[0].partition(":")[2], *line[1:])
        if not fact.strip().startswith("casing")
        for name in [fact.strip().removeprefix("trim").strip()]
    ]  # fmt: skip
    for start, end in zip(heads, [*heads[1:], len(lines)], strict=True):
        job.rooms.append(_room(lines[start], lines[start + 1 : end], settings, job, together))
    return job


def _trim(line: list[str], trims: dict[str, dict[str, Any]], unit: str) -> None:
    head = re.match(r"(trim|stock|on-hand) ([\w-]+):\s*(.*)", line[0])
    if not head:
        return
    facts = [head[3], *line[1:]]
    trim = trims.setdefault(head[2], {"sticks": [], "rests": []})
    for fact in facts:
        if head[1] in ("stock", "on-hand"):
            many = r"^(pack of \d+|bundle of \d+ of|pick from \d+ of|\d+ of|any length from .* to) "
            size = re.sub(many, "", fact)
            if re.match(r"\d[\d /]*(ft|in|mm|m)?\b", size):
                trim["sticks" if head[1] == "stock" else "rests"].append(length(size, unit)[0])
        elif fact.startswith("spring"):
            trim["spring"] = degrees(fact.removeprefix("spring"))
        elif fact.startswith("in front of"):
            trim["front"] = fact.removeprefix("in front of").strip()
        elif re.match(r"\d", fact):
            size, word = length(fact, unit)
            trim["thick" if "thick" in word else "tall"] = size


def _block_or_head(line: list[str], job: Job, unit: str) -> None:
    """As in ``block plinth: 3 in wide, 7 in tall`` and ``head one: fillet returned, board``."""
    named = re.match(r"(block|head) ([\w-]+):\s*(.*)", line[0])
    if not named:
        return
    facts = [named[3], *line[1:]]
    if named[1] == "block":
        sizes = (length(fact, unit) for fact in facts if re.match(r"\d", fact))
        job.blocks[named[2]] = {word.strip(): size for size, word in sizes}
        return
    job.heads[named[2]] = [
        {
            "trim": fact.split()[0],
            "overhang": length(fact.split("overhang")[1], unit)[0]
            if "overhang" in fact
            else Fraction(0),
            "returned": fact.endswith("returned"),
        }
        for fact in facts
    ]


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
    elif line[0] == "ends in":
        settings["ends in"] = True
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
    elif fact.startswith("proud ends"):
        settings["proud"] = words[2]
    elif fact.startswith("head"):
        settings["head"] = words[1]
    elif topic == "casings":
        name = {"off": "off_floor"}.get(words[0], words[0])
        settings[name] = length(re.sub(r"^[a-z ]+", "", fact), unit)[0]


GAP = r"(opening|door|window|bare|stair|cabinets|radiator|newel|beam) (\d.*)"
SEVERAL = r"([A-Z]\w*) (\d.*)"
"""A wall in a line of several, which has no colon behind its name."""


def _one_by_one(line: list[str]) -> list[list[str]]:
    """A line of several walls and openings, taken apart."""
    if not re.match(rf"{SEVERAL}|{GAP}", line[0]):
        return [line]
    found: list[list[str]] = []
    for fact in line:
        if re.match(rf"{SEVERAL}|{GAP}", fact):
            found.append([])
        found[-1].append(fact)
    return found


def _room(
    head: list[str], below: list[list[str]], settings: dict[str, Any], job: Job,
    together: dict[str, list[str]],
) -> Room:  # fmt: skip
    named = re.match(r'room "([^"]+)"(?: as (\w+))?', head[0])
    assert named
    own = {**deepcopy(settings), "known": set(job.trims), "together": together}
    for line in below:
        if re.match(r"(unit |taken |round |corners:|splices:|casings:)", line[0]):
            _setting(line, own, job)
    trims: list[str] = []
    for fact in head[1:]:
        if fact.startswith("taken"):
            own["taken"] = fact.split()[1]
        elif fact == "ends in":
            own["ends in"] = True
        elif fact.startswith("casing "):
            own["casing"] = [fact]
        elif not fact.startswith(("open walk", "note")):
            name = fact.removeprefix("trim").strip()
            trims += together.get(name, [name])
    for name in [] if trims else settings["usual trims"]:
        trims += together.get(name, [name])
    tag = named[2] or _tag(named[1], [room.tag for room in job.rooms])
    room = Room(named[1], tag, own, "open walk" in head, trims)
    for line in chain.from_iterable(map(_one_by_one, below)):
        gap = re.match(GAP, line[0])
        run = re.match(r"(\w+):\s*(\d.*)", line[0]) or re.match(SEVERAL, line[0])
        if gap:
            said = [fact for fact in line[1:] if fact != "no casing"]
            if gap[1] in ("opening", "door", "window") and said == line[1:]:
                own_casing = any(fact.startswith("casing ") for fact in said)
                said += [] if own_casing else own.get("casing", [])
            made = _stretch("bare", "", gap[2], said, room)
            made.word = gap[1]
            made.kind = "opening" if gap[1] in ("opening", "door", "window") else "bare"
            room.walk.append(made)
        elif run:
            room.walk.append(_stretch("run", run[1], run[2], line[1:], room))
        elif line[0].startswith("boxes "):
            room.boxes.append(_boxes(line, own["unit"]))
        elif line[0].startswith("piece "):
            count, size = re.match(r"(?:(\d+) of )?(.*)", line[1]).groups()  # type: ignore[union-attr]
            (trim,) = [fact.split()[1] for fact in line if fact.startswith("trim ")]
            name = "-".join(line[0].split('"')[1].lower().split())
            if any("corner" in fact for fact in line):
                room.mitred_loose.append(f"{name}-{trim}")
                continue
            room.pieces.append((f"{name}-{trim}", int(count or 1), length(size, own["unit"])[0]))
    _unsaid_ends(room)
    _implied(room)
    return room


def _boxes(line: list[str], unit: str) -> Boxes:
    """As in ``boxes N1 to N2 "lower": 4, 18 in tall, margin 3 in, trim panel``."""
    where, _, count = line[0].removeprefix("boxes ").partition(":")
    named = re.match(r'((?:over |under )"[^"]+"|\w+(?: to \w+)?)\s*(?:"([^"]+)")?', where)
    assert named, line
    made = Boxes(named[1], named[2] or "", int(count), "")
    for fact in line[1:]:
        if fact.startswith("trim "):
            made.trim = fact.split()[1]
        elif fact.startswith("margin "):
            made.margin = length(fact.removeprefix("margin"), unit)[0]
        elif re.match(r"\d", fact):
            size, word = length(fact, unit)
            setattr(made, word.strip(), size)
    return made


def _unsaid_ends(room: Room) -> None:
    """What no one said: square beside a newel, and with “ends in” an inside corner of two walls."""
    count = len(room.walk)
    for at, run in enumerate(room.walk):
        for side, other, there in (("left", at - 1, "right"), ("right", at + 1, "left")):
            beyond = room.open_walk and not 0 <= other < count
            mate = room.walk[other % count]
            if run.kind != "run" or getattr(run, side) is not None:
                continue
            if not room.settings["ends in"] and mate.word != "newel":
                continue
            said = getattr(mate, there)
            if beyond or mate.kind != "run":
                end = End("butt")
            elif said is not None and said.joint in ("in-corner", "out-corner"):
                end = End(said.joint)
            else:
                end = End("in-corner")
            setattr(run, side, end)


def _implied(room: Room) -> None:
    """The one corner that is what the others leave of a whole turn."""
    count, turned, wanted = len(room.walk), Fraction(0), []
    for at, one in enumerate(room.walk):
        sides = [end for end in (one.right, room.walk[(at + 1) % count].left)
                 if end and end.joint in ("in-corner", "out-corner")]  # fmt: skip
        if any(end.implied for end in sides):
            wanted = sides
        elif sides:
            angle = next((end.angle for end in sides if end.angle is not None), Fraction(90))
            turned += (180 - angle) * (1 if sides[0].joint == "in-corner" else -1)
    for end in wanted:
        end.angle = 180 - (360 - turned)


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
    known = room.settings["known"]
    named = [fact.removeprefix("trim ").strip() for fact in facts
             if fact.startswith("trim ") or fact in known]  # fmt: skip
    together = room.settings["together"]
    made.trims = named or made.trims
    made.height = room.settings["height"]
    beside = ""
    for fact in facts:
        end = re.match(r"(left|right)=", fact)
        made.no_model += [(end[1] if end else "", kind)
                          for form, kind in NO_MODEL.items() if re.search(form, fact)]  # fmt: skip
        side = re.match(r"(left|right)=([a-z-]+)\s*(?:\((.*)\))?\s*(cope)?$", fact)
        own = re.match(r"(\w+) (?:(left|right)=)?(return|taper|open|butt|cope|mitre)$", fact)
        if side:
            beside = side[1]
            setattr(made, side[1], _end(side[2], side[3] or "", bool(side[4]), unit))
        elif fact.startswith('"'):
            made.called = fact.strip('"')
        elif fact == "splice":
            made.splice = True
        elif fact == "four sides":
            made.four_sides = True
        elif fact.startswith("taken"):
            made.taken = fact.split()[1]
        elif fact.startswith("first stud"):
            made.first_stud = length(fact.removeprefix("first stud"), unit)[0]
        elif fact.startswith("no ") and fact != "no splice":
            made.trims = [trim for trim in made.trims if trim != fact[3:]]
        elif own:
            # without a side it is said beside the end of the wall
            for trim in together.get(own[1], [own[1]]):
                made.own_ends[trim, own[2] or beside] = own[3]
        elif fact.startswith("stops "):
            named = fact.removeprefix("stops ").split(" and ")
            named = sorted(room.settings["known"]) if named == ["all"] else named
            made.stops = [] if named == ["nothing"] else [
                one for name in named for one in together.get(name, [name])
            ]  # fmt: skip
        elif fact.startswith("turns "):
            made.turns = fact.removeprefix("turns ")
        elif fact.startswith("ceiling"):
            made.ceiling = True
        elif fact.startswith(("backband", "jambs")):
            setattr(made, fact.split()[0].replace("back", "").rstrip("s"), fact.split()[1])
        elif fact.startswith("rising") and not made.no_model:
            made.pitch = _pitch(fact, unit)
        elif fact == "entrance":
            made.entrance = True
        elif fact.startswith("casing "):
            made.casing = [word for word in fact.split()[1:] if word != "head"]
        elif fact.startswith("plinths "):
            made.plinth = fact.split()[1]
        elif fact.startswith("corner blocks "):
            made.rosette = fact.split()[2]
        elif fact.startswith("stool "):
            made.stool = fact.split()[1], fact.split()[3]
        elif fact == "both faces":
            made.faces = True
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
            elif fact == "implied":
                end.implied = True
            elif fact == "mitre":
                continue  # says that the mitre is meant, and no angle
            elif fact.startswith("mitre"):
                end.angle = 180 - 2 * degrees(fact.removeprefix("mitre"))
            elif not re.match(r"[\d.]", fact):
                continue
            elif fact.endswith(" at floor"):
                end.wider = end.angle = degrees(fact)
            elif fact.endswith(" at top"):
                top = degrees(fact)
                end.angle, end.wider = (end.wider + top) / 2, end.wider - top
            elif fact:
                end.angle = degrees(fact)
    if joint == "out-corner" and end.angle is not None and end.angle > 180:
        end.angle = 360 - end.angle
    return end
