"""A second opinion on every ticket: what the job file asks, worked out again the slow way.

``faults(job text, tickets)`` reads the file with a reader of its own and works
out each piece from the written rules (docs/language.md and the geometry in
docs/survey-and-joinery.md), in fractions, sharing no code with trimlang.  Where
the rules leave a choice (which side of a corner is coped, where a long wall is
pieced together) it takes the tickets' own answer and checks what must hold of it.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import mpmath

from tests.proof.oracle_casings import at_floor, members, outer
from tests.proof.oracle_reading import (
    STEPS,
    UNITS,
    Boxes,
    End,
    Job,
    Room,
    Stretch,
    exactly,
    number,
    radians,
    read_job,
    tan,
)  # fmt: skip
from tests.proof.tickets_seen import Seen, trim_in

CORNERS = ("in-corner", "out-corner")
# the first row that either end has decides; “raise” is a sprung fit
ROWS = {
    "out-corner": "up",
    "open": "nearest",
    "return": "nearest",
    "cope": "down",
    "rake": "nearest",
    "level": "nearest",
    "head": "nearest",
    "splice": "nearest",
    "in-corner": "down",
    "butt": "down",
    "plumb": "down",
}
NAMES = {
    "in-corner": "inside corner",
    "cope": "inside corner, coped",
    "square": "inside corner, square in",
    "out-corner": "outside corner",
    "butt": "butt",
    "floor": "floor",
    "top": "top",
    "stool": "stool",
    "return": "return",
    "splice": "scarf",
    "open": "open end",
    "rake": "rake",
    "plumb": "plumb cut",
    "level": "level cut",
    "head": "casing corner",
    "frame": "frame corner",
    "taper": "taper",
}
FAR = ("back", "top", "outer edge")
"""Edges that lie at the fence."""


@dataclass(frozen=True)
class Cut:
    """What one end must say: its joint, mitre (and bevel) from square, and the long edge."""

    joint: str
    mitre: Fraction = Fraction(0)
    long: str = "both"
    bevel: Fraction = Fraction(0)
    inset: Fraction = Fraction(0)
    swing: str = ""

    def says(self, side: str, step: Fraction, seen: tuple[str, ...]) -> list[str]:
        """Return what is wrong with the printed cut."""
        setting, joint, point = seen
        wrong = [] if joint == NAMES[self.joint] else [f"is “{joint}”, not “{NAMES[self.joint]}”"]
        edges = "both edges the same" if self.long == "both" else f"long point at the {self.long}"
        if point != edges:
            wrong.append(f"says “{point}”, not “{edges}”")
        runs = self.swing or ("right" if (self.long in FAR) == (side == "left") else "left")
        # at an outside corner the steeper mark, which closes at the face; crown takes the nearest
        up = self.joint == "out-corner" and not self.bevel
        angles = [on_scale(angle, step, up=up) for angle in (self.mitre, self.bevel) if angle]
        if not angles:
            return wrong if setting == "square" else [*wrong, f"is set {setting}, not square"]
        shown = [
            sum(map(Fraction, text.split()), Fraction(0))
            for text in re.findall(r"(\d+ \d/[248]|[\d.]+)°", setting)
            if text != "0"
        ]
        same = len(shown) == len(angles) and all(
            abs(one - other) <= Fraction(1, 200) for one, other in zip(shown, angles, strict=True)
        )
        # the blade always tilts to the left: a bevel alone names no side
        told = self.mitre == 0 or runs in setting
        if not same or not told or ("bevel" in setting) != bool(self.bevel):
            wanted = " / ".join(f"{float(angle):g}°" for angle in angles)
            wrong.append(f"is set {setting}, not {wanted} {runs}")
        return wrong


def on_scale(angle: Fraction, step: Fraction, *, up: bool = False) -> Fraction:
    """The nearest mark of the saw's scale, the higher one of two equally near, or the next up."""
    marks = angle // step * step
    if up:
        return marks if angle - marks < Fraction(1, 10**18) else marks + step
    return marks + step if angle - marks >= step / 2 else marks


def to_step(exact: Fraction, way: str, raised: Fraction, step: Fraction) -> Fraction:
    below = exact // step * step
    above = below if below == exact else below + step
    if raised:
        sprung = (exact + raised) // step * step
        return sprung if sprung >= exact else above
    if way == "nearest":
        return below if exact - below < step / 2 else below + step
    return above if way == "up" else below


def step_of(room: Room) -> Fraction:
    own: Fraction | None = room.settings["step"]
    if own is not None:
        return own
    return UNITS["mm"] if room.settings["unit"] == "mm" else Fraction(1, 16)


def printed(text: str) -> Fraction:
    """Inches of a printed length: ``29 1/8 in``, ``740 mm``."""
    return number(text)[0] * UNITS[text.split()[-1]]


class Checker:
    """Goes through a job room by room and takes each expected ticket from the pile."""

    def __init__(self, job: Job, tickets: list[Seen]) -> None:
        self.job = job
        self.wrong: list[str] = []
        self.left = {ticket.id: ticket for ticket in tickets}
        # what there is no model of, and the tickets that are left out for it
        self.out: defaultdict[str, list[str]] = defaultdict(list)
        twice = [name for name, times in Counter(t.id for t in tickets).items() if times > 1]
        self.wrong += [f"{name} is on more than one ticket" for name in twice]
        self.parts: defaultdict[str, list[str]] = defaultdict(list)
        for name in self.left:
            whole, _, part = name.rpartition("-")
            if len(part) == 1 and part.isalpha() and part.islower():
                self.parts[whole].append(name)

    def all_rooms(self) -> list[str]:
        for room in self.job.rooms:
            self.room(room)
        self.wrong += [f"{name} is on a ticket and not in the job" for name in self.left]
        return self.wrong

    def take(
        self, name: str, room: Room, trim: str, part: str, long: Fraction | None,
        cuts: tuple[Cut, Cut],
    ) -> Fraction | None:  # fmt: skip
        """Take a ticket from the pile and hold it against what it must say."""
        seen = self.left.pop(name, None)
        if seen is None:
            self.wrong.append(f"{name} is on no ticket")
            return None
        shown = printed(seen.length)
        if long is not None and shown != long:
            self.wrong.append(f"{name} is {seen.length}, not {float(long)} in")
        for what, is_, should in (
            ("room", seen.room, room.name), ("trim", seen.trim, trim), ("part", seen.part, part),
        ):  # fmt: skip
            if is_ != should:
                self.wrong.append(f"{name}: {what} “{is_}”, not “{should}”")
        if len(seen.cuts) != 2:
            self.wrong.append(f"{name} has {len(seen.cuts)} cuts")
            return shown
        for side, cut, told in zip(("left", "right"), cuts, seen.cuts, strict=True):
            for fault in cut.says(side, room.settings["saw"], told):
                self.wrong.append(f"{name}: the {side} end {fault}")
        return shown

    # ---- rooms and runs -----------------------------------------------------------

    def room(self, room: Room) -> None:
        self._share_corners(room)
        entrance, places = self._walk(room)
        for boxes in room.boxes:
            self._boxes(room, boxes)
        for name, count, long in room.pieces:
            for number_ in range(1, count + 1):
                whole = f"{room.tag}-{name}" + (f"-{number_}" if count > 1 else "")
                trim = whole.split("-", 2)[2]
                self.take(whole, room, trim, "", long, (Cut("open"), Cut("open")))
        for name in room.mitred_loose:
            self._leave_out(rf"{room.tag}-{name}(-\d+)?", "a loose piece that is mitred")
        for index, run in enumerate(room.walk):
            if run.casing:
                # every cased opening of the examples has a name of its own
                self._casing(room, run, f"{room.tag}-{'-'.join(run.called.lower().split())}")
            if run.kind != "run":
                continue
            for trim in run.trims:
                whole = self._past_openings(room, index, trim)
                if whole is None:
                    continue
                kind = self._no_model(room, index, whole, trim)
                if kind:
                    name = f"{room.tag}-{run.label}(-left|-right)?-{trim}"
                    self._leave_out(rf"{name}(-[a-z]|-(left|right)-[a-z]+)?", kind)
                    continue
                whole = self._alone(room, index, whole, trim)
                self._run(room, whole, trim, entrance, places[index])

    def _leave_out(self, form: str, kind: str) -> None:
        names = [name for name in self.left if re.fullmatch(form, name)]
        self.out[kind] += names
        for name in names:
            del self.left[name]

    def _no_model(self, room: Room, index: int, run: Stretch, trim: str) -> str:
        """Say what of a run, or of the walls that it meets, the oracle has no model of."""
        count, last = len(room.walk), run.reaches or index
        parts = room.walk[index : last + 1]
        before, after = room.walk[index - 1], room.walk[(last + 1) % count]
        own = [kind for one in parts for side, kind in one.no_model if not side]
        alone = {side for side, at in (("left", index), ("right", last))
                 if (trim, side) in room.walk[at].own_ends}  # fmt: skip
        # a corner is what either of its two walls says of it
        for one, at, there in (
            (before, "right", "left"),
            (parts[0], "left", "left"),
            (parts[-1], "right", "right"),
            (after, "left", "right"),
        ):
            own += [kind for side, kind in one.no_model if side == at and there not in alone]
        for one, end in ((before, run.left), (after, run.right)):
            if any(kind == STEPS for _, kind in one.no_model) and end and end.joint != "butt":
                own.append("a wall beside a stair with steps")
        sprung = "spring" in self.job.trims[trim]
        if sprung and any(one.ceiling for one in (*parts, before, after)):
            own.append("crown below a slope")
        if trim in (before.turns, after.turns):
            own.append("crown that a beam turns")
        if "spring" in self.job.trims.get(self.job.trims[trim].get("front", ""), {}):
            own.append("a bead before crown")
        if any(
            "taper" in (one.own_ends.get((trim, at)) for at in ("left", "right")) for one in parts
        ):
            own.append("an end of one trim alone")
        return own[0] if own else ""

    @staticmethod
    def _is_rail(trim: str) -> bool:
        return trim == "rail"

    def _passes(self, gap: Stretch, trim: str) -> bool:
        """Whether a trim goes on past an opening or bare wall."""
        if gap.kind == "run":
            return False
        mates = [name for name, one in self.job.trims.items() if one.get("front") == trim]
        behind = [self.job.trims[trim]["front"]] if "front" in self.job.trims[trim] else []
        crown = any("spring" in self.job.trims[name] for name in (trim, *mates, *behind))
        if gap.word == "beam":
            return not crown
        if gap.stops is not None:
            return trim not in gap.stops
        below = gap.word == "window" and not self._is_rail(trim)
        return gap.kind == "opening" and (crown or below)

    def _alone(self, room: Room, index: int, run: Stretch, name: str) -> Stretch:
        """A trim whose mate the next wall lacks runs square into an inside corner.

        Shoe ends at the base of that wall.
        """
        ends = {"left": run.left, "right": run.right}
        behind = self.job.trims[name].get("front")
        for side, at in (("left", index - 1), ("right", (run.reaches or index) + 1)):
            end = ends[side]
            if room.open_walk and not 0 <= at < len(room.walk):
                continue
            other = room.walk[at % len(room.walk)]
            if end is not None and end.joint == "butt" and other.plinth and self._is_rail(name):
                # above the plinth it goes on to the leg
                past = at_floor(self.job, room, other) - outer(self.job, room, other)
                ends[side] = replace(end, short=-past)
            meets = other.kind == "run" and at % len(room.walk) != index
            if end is None or not meets or name in other.trims:
                continue
            if end.joint in ("in-corner", "cope", "square"):
                there = behind is not None and behind in other.trims
                here = behind is not None and behind in run.trims
                off = self.job.trims[behind]["thick"] if there else Fraction(0)
                own = self.job.trims[behind]["thick"] if here else Fraction(0)
                trim = self.job.trims[name]
                deep = self._stands_out(trim) if "spring" in trim else trim["thick"]
                angle = Fraction(90) if end.angle is None else end.angle
                across = exactly(mpmath.sin(radians(angle)))
                along = exactly(mpmath.cos(radians(angle)))
                back, face = ((off + out * along) / across for out in (own, own + deep))
                bevel = Fraction(0) if 85 <= angle <= 95 else abs(90 - angle)
                short = max(back, face) if not bevel else min(back, face)
                if bevel and "spring" in trim:
                    short = back  # its number is along the wall edge
                long = "back" if angle < 90 else "face"
                ends[side] = replace(end, joint="butt", short=short, bevel=bevel, long=long)
        return Stretch(**{**vars(run), **ends})

    def _share_corners(self, room: Room) -> None:
        """A measured angle at one side of a corner holds for both."""
        count = len(room.walk)
        for index in range(count if not room.open_walk else count - 1):
            one, other = room.walk[index].right, room.walk[(index + 1) % count].left
            if one is None or other is None or one.joint != other.joint:
                continue
            if one.joint in CORNERS:
                one.wider = other.wider = one.wider if one.angle is not None else other.wider
                one.angle = other.angle = one.angle if one.angle is not None else other.angle
            both = room.walk[index].kind == room.walk[(index + 1) % count].kind == "run"
            coped = one.coped or other.coped or room.settings["cope"]
            if one.joint == "in-corner" and both and coped:
                self._coped(room, index, one, other)

    def _coped(self, room: Room, index: int, one: End, other: End) -> None:
        """Exactly one side is coped: the one that the file names, or as the tickets choose."""
        before, after = room.walk[index], room.walk[(index + 1) % len(room.walk)]
        trim = next(t for t in before.trims if t in after.trims)
        names = [self._ends_of(room, before, trim)[1], self._ends_of(room, after, trim)[0]]
        fits = [
            self.left[name].cuts[at][1].removeprefix("inside corner, ")
            if name in self.left else ""
            for name, at in zip(names, (1, 0), strict=True)
        ]  # fmt: skip
        if one.coped or other.coped:
            one.joint, other.joint = ("cope", "square") if one.coped else ("square", "cope")
            return
        if sorted(fits) != ["coped", "square in"]:
            self.wrong.append(f"{' and '.join(names)} are {' and '.join(fits)}")
        one.joint, other.joint = (
            ("cope", "square") if fits[0] == "coped" else ("square", "cope")
        )  # fmt: skip

    def _ends_of(self, room: Room, run: Stretch, trim: str) -> tuple[str, str]:
        whole = f"{room.tag}-{run.label}-{trim}"
        pieces = sorted(self.parts.get(whole, [])) or [whole]
        if pieces == [whole] and whole not in self.left:
            # what goes on past an opening has the first run's name
            index = room.walk.index(run)
            while pieces[0] not in self.left and index > 0:
                index -= 1
                pieces = [f"{room.tag}-{room.walk[index].label}-{trim}"]
        return pieces[0], pieces[-1]

    def _past_openings(self, room: Room, index: int, trim: str) -> Stretch | None:
        """A trim between butts that goes on past openings; None where an earlier run has it."""

        def on(at: int) -> int | None:
            right = self._end(room, at, "right", trim)
            if right is None or right.joint != "butt":
                return None
            after = at + 1
            while after < len(room.walk) and self._passes(room.walk[after], trim):
                if room.walk[after].left or room.walk[after].right:
                    return None
                after += 1
            if after == at + 1 or after == len(room.walk):
                return None
            other = room.walk[after]
            joined = other.kind == "run" and trim in other.trims
            left = self._end(room, after, "left", trim)
            return after if joined and left and left.joint == "butt" else None

        for before in range(index):
            earlier = room.walk[before]
            if earlier.kind == "run" and trim in earlier.trims and on(before) == index:
                return None
        run = room.walk[index]
        reach, at = run.length, index
        while (after := on(at)) is not None:
            reach += sum(self._along(room, gap) for gap in room.walk[at + 1 : after + 1])
            at = after
        last, right = room.walk[at], self._end(room, at, "right", trim)
        assert right
        # how its last wall was taken says how the number at that end was
        right = replace(right, taken=right.taken or last.taken)
        left = self._end(room, index, "left", trim)
        whole = Stretch(**{**vars(run), "length": reach, "left": left, "right": right})
        whole.reaches = at
        whole.splice = any(room.walk[i].splice for i in range(index, at + 1))
        return whole

    def _end(self, room: Room, at: int, side: str, trim: str) -> End | None:
        """How one trim ends at a side of a wall: as the file says of it alone, or as the wall."""
        run = room.walk[at]
        wall: End | None = getattr(run, side)
        if wall is not None and wall.wider:
            wall = replace(
                wall, angle=self._at_its_height(room, run, wall, trim), wider=Fraction(0)
            )
        other = room.walk[(at + (1 if side == "right" else -1)) % len(room.walk)]
        there = "left" if side == "right" else "right"
        own, mate = run.own_ends.get((trim, side)), other.own_ends.get((trim, there))
        inside = wall is not None and wall.joint in ("in-corner", "cope", "square")
        if wall is not None and inside and "mitre" in (own, mate):
            return replace(wall, joint="in-corner")
        if wall is not None and inside and "cope" in (own, mate):
            return replace(wall, joint="cope" if own == "cope" else "square")
        if own is None and wall is not None and self._is_proud(room, run, other, trim, wall):
            return replace(wall, joint=room.settings["proud"])
        return wall if own is None else End(own)

    def _is_proud(self, room: Room, run: Stretch, gap: Stretch, trim: str, end: End) -> bool:
        """Whether a trim stands out past the casing that it butts, and the file says how it ends.

        By a sixteenth it is left as it is.
        """
        if not room.settings["proud"] or not gap.casing or end.joint != "butt":
            return False
        own = self.job.trims[trim]
        if "spring" in own or self._passes(gap, trim):
            return False
        front = own.get("front")
        deep = own["thick"] + (self.job.trims[front]["thick"] if front in run.trims else 0)
        past = self.job.trims[gap.band or gap.casing[0]]["thick"]
        if gap.plinth and not self._is_rail(trim):
            past = self.job.blocks[gap.plinth]["thick"]
        return bool(deep - past > Fraction(1, 16))

    def _at_its_height(self, room: Room, run: Stretch, end: End, trim: str) -> Fraction:
        """The angle of a corner out of plumb: of crown at the ceiling, of base at the floor."""
        assert end.angle is not None
        crowns = {name for name, one in self.job.trims.items() if "spring" in one}
        hang = crowns | {self.job.trims[name].get("front", "") for name in crowns}
        named = {name for one in room.walk for name in one.trims}
        if not named & hang:
            return end.angle  # the second was taken at the trim's own top
        if trim in hang:
            return end.angle - end.wider / 2
        floor = next(name for name in run.trims if name not in hang)
        low = floor in (trim, self.job.trims[trim].get("front"))
        return end.angle + end.wider / 2 if low else end.angle

    def _mitre(self, end: End, room: Room) -> Fraction:
        if end.joint == "square":
            return Fraction(0)
        joint = "in-corner" if end.joint == "cope" else end.joint
        if joint not in CORNERS:
            return {"return": Fraction(45), "splice": room.settings["scarf"]}.get(
                joint, Fraction(0)
            )
        if end.angle is not None:
            return 90 - end.angle / 2
        mitre: Fraction = room.settings["mitre"][joint]
        return mitre

    def _grows(
        self, end: End, side: str, run: Stretch, trim: dict[str, Any], room: Room
    ) -> Fraction:
        """What an end adds to the tape's number."""
        scraps = (end.taken or run.taken) == "point"
        joint = "in-corner" if end.joint in ("cope", "square") else end.joint
        own = trim.get("thick", Fraction(0))
        behind = self.job.trims[trim["front"]]["thick"] if "front" in trim else Fraction(0)
        corner = End(joint, end.angle)
        if end.joint == "square" and end.angle is not None and end.angle < 90:
            # its face comes to the other wall before its back would
            deep = self._stands_out(trim) if "spring" in trim else own
            end = replace(end, short=end.short + deep * tan(90 - end.angle))
        if "spring" in trim:
            # its wall edge lies on the frieze that it stands in front of
            behind *= tan(self._mitre(corner, room)) if joint in CORNERS else 0
            if joint != "out-corner" or not scraps:
                return (behind if joint == "out-corner" else -behind) - end.short
            # the number reaches the long point of the wall's first trim
            first = self.job.trims[run.trims[0]]
            deep = self._stands_out(first) if "spring" in first else first["thick"]
            return -deep * tan(self._mitre(corner, room))
        if joint == "in-corner":
            return -behind * tan(self._mitre(corner, room)) - end.short
        if joint == "out-corner":
            adds = (behind + own) if not scraps else (own if behind else Fraction(0))
            return adds * tan(self._mitre(corner, room))
        if joint == "splice" and side == "right" and not scraps:
            return own * tan(room.settings["scarf"])
        return -end.short

    @staticmethod
    def _stands_out(trim: dict[str, Any]) -> Fraction:
        width: Fraction = trim["tall"]
        return width * exactly(mpmath.sin(radians(trim["spring"])))

    def _cut(
        self, end: End, side: str, run: Stretch, trim: dict[str, Any], room: Room, bend: Fraction
    ) -> Cut:
        joint, thick = end.joint, trim.get("thick", Fraction(0))
        if joint in ("rake", "plumb", "level"):
            return self._stair_cut(joint, side, run, trim, bend)
        mitre = end.bevel or self._mitre(end, room)
        if not mitre:
            return Cut(joint)
        inside = joint in ("in-corner", "cope") or (bool(end.bevel) and end.long == "back")
        if "spring" in trim:
            flat = mpmath.atan(mpmath.sin(radians(trim["spring"])) * mpmath.tan(radians(mitre)))
            tilt = mpmath.asin(mpmath.cos(radians(trim["spring"])) * mpmath.sin(radians(mitre)))
            return Cut(
                joint,
                exactly(mpmath.degrees(flat)),
                "wall edge" if inside else "ceiling edge",
                exactly(mpmath.degrees(tilt)),
                swing="right" if inside == (side == "right") else "left",
            )
        return Cut(joint, mitre, "back" if inside else "face", inset=thick * tan(mitre))

    @staticmethod
    def _stair_cut(
        joint: str, side: str, run: Stretch, trim: dict[str, Any], bend: Fraction
    ) -> Cut:
        pitch = abs(run.pitch)
        upper = (run.pitch > 0) == (side == "right")
        if joint == "rake":
            mitre, long = abs(bend) / 2, "bottom" if bend > 0 else "top"
        elif joint == "plumb":
            mitre, long = pitch, "top" if upper else "bottom"
        else:
            mitre, long = 90 - pitch, "bottom" if upper else "top"
        return Cut(joint, mitre, long, inset=trim["tall"] * tan(mitre))

    def _run(
        self, room: Room, run: Stretch, name: str, entrance: Any, place: tuple[Any, Any]
    ) -> None:
        trim, whole = self.job.trims[name], f"{room.tag}-{run.label}-{name}"
        assert run.left
        assert run.right
        ends = {"left": run.left, "right": run.right}
        cuts = {
            side: self._cut(end, side, run, trim, room, self._bend(room, run, side))
            for side, end in ends.items()
        }
        for side, at in (("left", Fraction(0)), ("right", run.length)):
            if ends[side].joint == "splice":
                cuts[side] = self._own_scarf(whole, side, cuts[side], entrance, place, at)
        exact = run.length + sum(
            self._grows(end, side, run, trim, room) for side, end in ends.items()
        )
        exact += sum(cut.inset for cut in cuts.values() if cut.long == "top")
        kinds = {"in-corner" if e.joint == "square" else e.joint for e in ends.values()}
        # beside a casing a taper takes a corner off a square end
        kinds = {"butt" if kind == "taper" else kind for kind in kinds}
        row = next(row for row in ROWS if row in kinds)
        way, raised = room.settings["round"].get(row, (ROWS[row], Fraction(0)))
        step = step_of(room)
        long = to_step(exact, way, raised, step)
        pieces = sorted(self.parts.get(whole, []))
        sticks = trim["sticks"] or trim["rests"]
        longest = max(sticks) - 2 * self.job.squares_off
        fits = long + sum(c.inset for c in cuts.values() if c.bevel) <= longest
        if bool(pieces) != (run.splice or not fits):
            self.wrong.append(f"{whole}: {len(pieces)} parts, where {float(long)} in are wanted")
        if not pieces:
            self.take(whole, room, name, "", long, (cuts["left"], cuts["right"]))
        else:
            last = (exact, way, raised, longest)
            self._scarfed(room, run, name, pieces, last, cuts, entrance, place)
        for side, end in ends.items():
            if end.joint == "return":
                self._return(room, whole, name, trim, side, step)

    def _own_scarf(
        self, whole: str, side: str, cut: Cut, entrance: Any, place: tuple[Any, Any], at: Fraction
    ) -> Cut:  # fmt: skip
        """A scarf that the file itself lays at a run's end."""
        ends = sorted(self.parts.get(whole, [])) or [whole]
        seen = self.left.get(ends[0 if side == "left" else -1])
        over = seen is not None and "face" in seen.cuts[0 if side == "left" else 1][2]
        shown = side if (side == "left") != over else {"left": "right", "right": "left"}[side]
        laps = self._laps(entrance, place, at, shown)
        return replace(cut, long="back" if side == laps else "face")

    def _scarfed(
        self, room: Room, run: Stretch, name: str, pieces: list[str],
        last: tuple[Fraction, str, Fraction, Fraction], cuts: dict[str, Cut],
        entrance: Any, place: tuple[Any, Any],
    ) -> None:  # fmt: skip
        """The pieces of a long wall: together its length and the laps, none too long or short."""
        exact, way, raised, longest = last
        step, angle = step_of(room), room.settings["scarf"]
        lap = self.job.trims[name]["thick"] * tan(angle)
        at, laps = Fraction(0), "left"

        def scarf(long: str) -> Cut:
            # lying flat, crown's scarf is the blade's tilt alone
            if "spring" in self.job.trims[name]:
                return Cut("splice", long=long, bevel=angle)
            return Cut("splice", angle, long)

        for number_, piece in enumerate(pieces):
            final = number_ == len(pieces) - 1
            left = cuts["left"]
            if number_:
                left = scarf("back" if laps == "left" else "face")
            shown = printed(self.left[piece].length) if piece in self.left else Fraction(0)
            wanted = to_step(exact - at, way, raised, step) if final else None
            if not final and shown % step:
                self.wrong.append(f"{piece} is no whole number of steps")
            if shown > longest or shown < room.settings["least"] - step:
                self.wrong.append(f"{piece} of {float(shown)} in is too long or too short")
            right = cuts["right"]
            if not final:
                at += shown - lap
                laps = self._laps(entrance, place, at + lap / 2, self._printed_lap(piece))
                right = scarf("face" if laps == "left" else "back")
                self._on_stud(room, run, piece, at + lap / 2, cuts["left"])
            part = f"part {number_ + 1} of {len(pieces)}"
            self.take(piece, room, name, part, wanted, (left, right))

    def _printed_lap(self, piece: str) -> str:
        seen = self.left.get(piece)
        return "left" if seen and "face" in seen.cuts[1][2] else "right"

    @staticmethod
    def _laps(entrance: Any, place: tuple[Any, Any], at: Fraction, shown: str) -> str:
        """The piece nearer the entrance laps over; the left one where there is none."""
        if entrance is None:
            return "left"
        start, along = place
        opposite = ((entrance - start) * mpmath.conj(along)).real
        if abs(opposite - float(at)) < 2:
            return shown  # too near to tell which the rule means
        return "right" if opposite > float(at) else "left"

    def _on_stud(self, room: Room, run: Stretch, piece: str, middle: Fraction, left: Cut) -> None:
        if run.first_stud is None:
            return
        # along a stair the studs stand further apart; the trim begins at its long point
        spacing = room.settings["studs"] / exactly(mpmath.cos(radians(run.pitch)))
        past = left.inset if left.long in ("face", "top") else Fraction(0)
        off = (middle - past - run.first_stud) % spacing
        if min(off, spacing - off) > step_of(room):
            self.wrong.append(f"{piece} ends {float(off)} in past a stud")

    def _return(
        self, room: Room, whole: str, name: str, trim: dict[str, Any], side: str, step: Fraction
    ) -> None:
        deep = self._stands_out(trim) if "spring" in trim else trim["thick"]
        if "spring" in trim and "front" in trim:
            # along its wall edge it reaches round the frieze's own return, back to the wall
            deep = self.job.trims[trim["front"]]["thick"]
        way, raised = room.settings["round"].get("return", ("nearest", Fraction(0)))
        # crown's is cut lying flat, as its run's end is
        there = "right" if side == "left" else "left"
        mitred = self._cut(End("return"), there, Stretch("run", deep), trim, room, Fraction(0))
        square = Cut("butt")
        cuts = (square, mitred) if side == "left" else (mitred, square)
        long = to_step(deep, way, raised, step)
        known = f"{whole}-{side}-return"
        self.take(known, room, self._shown(known, name), "", long, cuts)

    def _casing(self, room: Room, gap: Stretch, door: str) -> None:
        step = step_of(room)
        way, raised = room.settings["round"].get("head", ("nearest", Fraction(0)))
        for one in members(self.job, room, gap):
            name = f"{door}-{one.part}"
            cuts = tuple(
                Cut(end, Fraction(45), "outer edge") if end == "head" else Cut(end)
                for end in one.ends
            )
            if one.returned:
                cuts = (Cut("return", Fraction(45), "face"),) * 2
                for side in ("left", "right"):
                    self._return(room, name, one.trim, {"thick": one.returned}, side, step)
            self.take(
                name, room, self._shown(name, one.trim), "",
                to_step(one.long, way, raised, step), (cuts[0], cuts[1]),
            )  # fmt: skip

    def _shown(self, name: str, trim: str) -> str:
        """A strip that has no room for its trim's name shows the end of its id."""
        seen = self.left.get(name)
        return trim if seen is not None and seen.trim == trim else trim_in(name)

    def _boxes(self, room: Room, boxes: Boxes) -> None:
        """Frames side by side with equal margins, all round the same trim with 45° mitres."""
        side, _, opening = boxes.where.partition(' "')
        ends = [one.label for one in room.walk]
        names = [boxes.where.split()[0], boxes.where.split()[-1]]
        if opening:
            (at,) = [i for i, one in enumerate(room.walk) if one.called == opening.rstrip('"')]
            walls, first = (
                [room.walk[at]],
                f"{'-'.join(room.walk[at].called.lower().split())}-{side}",
            )
        else:
            start, end = (ends.index(name) for name in names)
            walls, first = room.walk[start : end + 1], names[0]
        known = "-".join(part for part in (first, boxes.name, boxes.trim) if part)
        if any(side == "" and kind == STEPS for one in walls for side, kind in one.no_model):
            self._leave_out(rf"{room.tag}-{known}-.*", "boxes on a stair")
            return
        reach = sum((self._along(room, one) for one in walls), Fraction(0))
        wide = boxes.wide or (reach - (boxes.count + 1) * boxes.margin) / boxes.count
        corner = Cut("frame", Fraction(45), "outer edge")
        for number_ in range(1, boxes.count + 1):
            for edge, long in (
                ("top", wide), ("bottom", wide), ("left", boxes.tall), ("right", boxes.tall),
            ):  # fmt: skip
                name = f"{room.tag}-{known}-{number_}-{edge}"
                self.take(name, room, name.split("-", 2)[2], "", long, (corner, corner))

    # ---- the plan of the room, as far as laps and rakes need it ---------------------

    def _bend(self, room: Room, run: Stretch, side: str) -> Fraction:
        """How much steeper the trim goes on past a rake, as one walks to the right."""
        at = next((i for i, one in enumerate(room.walk) if one.label == run.label), 0)
        other = room.walk[(at + (1 if side == "right" else -1)) % len(room.walk)]
        return other.pitch - run.pitch if side == "right" else run.pitch - other.pitch

    def _along(self, room: Room, one: Stretch) -> Fraction:
        return one.length + (2 * at_floor(self.job, room, one) if one.casing else 0)

    def _walk(self, room: Room) -> tuple[Any, list[tuple[Any, Any]]]:
        """Return the middle of the entrance, and each stretch's start and direction (floats)."""
        walk, count = room.walk, len(room.walk)
        turns: list[float] = []
        measured: list[bool] = []
        for index in range(count):
            ends = (walk[index].right, walk[(index + 1) % count].left)
            joints = ("in-corner", "cope", "square", "out-corner")
            corner = next((end for end in ends if end and end.joint in joints), None)
            angle = None if corner is None else corner.angle
            size = 0.0 if corner is None else float(180 - (90 if angle is None else angle))
            turns.append(-size if corner and corner.joint == "out-corner" else size)
            measured.append(angle is not None)
        lacking = 360 - sum(turns)
        if not room.open_walk and abs(lacking) <= 15:
            takers = [i for i in range(count) if turns[i] and not measured[i]]
            for index in takers:
                turns[index] += lacking / len(takers)
        here, heading, entrance = 0j, 0.0, None
        places: list[tuple[Any, Any]] = []
        for stretch, turn in zip(walk, turns, strict=True):
            along = complex(mpmath.expj(-mpmath.radians(heading)))
            places.append((here, along))
            reach = float(self._along(room, stretch))
            if stretch.entrance:
                entrance = here + along * reach / 2
            here, heading = here + along * reach, heading + turn
        return entrance, places


def faults(text: str, tickets: list[Seen], folder: Path | None = None) -> list[str]:
    """Return everything in which the tickets are not what the job file asks."""
    return Checker(read_job(text, folder), tickets).all_rooms()


def left_out(text: str, tickets: list[Seen], folder: Path | None = None) -> dict[str, int]:
    """Return how many tickets are not worked out, by the kind that there is no model of."""
    checker = Checker(read_job(text, folder), tickets)
    checker.all_rooms()
    return {kind: len(names) for kind, names in sorted(checker.out.items()) if names}
