"""Surveys of many shapes and slips: all that the closing says and weighs, in one table.

Single figures are worked by hand in the tests beside this one; here none of them may change unseen.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

import pytest
from syrupy.assertion import SnapshotAssertion

import trimlang
from tests.jobs import BASE, SIXTEEN_FEET
from trimlang.compiler import Result
from trimlang.survey.diagonals import span_of
from trimlang.survey.measured_walk import Course
from trimlang.survey.misfit import Chord, Walk, misfit
from trimlang.survey.outline import depths
from trimlang.survey.settling import Settling, diagonals, finer

INCHES = f"{BASE}\n{SIXTEEN_FEET}\n"
METRIC = "unit mm\ntrim base: 14 thick, 134 tall\nstock base: 4800 at 17.40\n"
READ = "corners: doubt 1/8 deg"


def rectangle(north: object, east: object, south: object, west: object, *more: str) -> str:
    return "\n".join([f"N: {north}", f"E: {east}", f"S: {south}", f"W: {west}", *more])


def corners(**angles: object) -> str:
    """A room of 12 ft by 10 ft that says the angle at the right end of some walls."""
    sizes = {"N": "12 ft", "E": "10 ft", "S": "12 ft", "W": "10 ft"}
    return "\n".join(
        f"{name}: {size}" + (f", right=in-corner({angles[name]})" if name in angles else "")
        for name, size in sizes.items()
    )


def breast(wide: object = "5 ft", deep: object = "14 in", more: str = "") -> str:
    """A room with a chimney breast in its north wall."""
    return f"""\
N1: 50 in
N2: {deep}, right=out-corner
N3: {wide}, left=out-corner, right=out-corner
N4: 14 in, left=out-corner
N5: 46 in
E: 11 ft
S: 13 ft
W: 11 ft
{more}"""


# three walls of 40 in stand out at 135°: 36 + 40 cos 45° + 40 + 40 cos 45° + 35 7/16 = 168
BAY = """\
N1: 36 in, right=out-corner(135 deg)
N2: {bay}, left=out-corner(135 deg), right=in-corner(135 deg)
N3: 40 in, right=in-corner(135 deg)
N4: 40 in, right=out-corner(135 deg)
N5: 35 7/16 in, left=out-corner(135 deg)
E: 10 ft
S1: 132 in, right=butt
opening 36 in, right=in-corner
W: 10 ft"""
# one side at 30° and one at 60°: 40 cos 30° + 40 + 23 1/8 cos 60° + 36 + 45 13/16 = 168
UNLIKE = """\
N1: 36 in, right=out-corner(150 deg)
N2: 40 in, left=out-corner(150 deg), right=in-corner({one})
N3: 40 in, right=in-corner({other})
N4: 23 1/8 in, right=out-corner(120 deg)
N5: 45 13/16 in, left=out-corner(120 deg)
E: 10 ft
S: 14 ft
W: 10 ft"""


# each way round eight runs that step down, so many corners that no diagonal is offered any more
def steps(count: int) -> str:
    pairs = (
        (f"C{at}: 20 in, right=out-corner", f"D{at}: 10 in, left=out-corner") for at in range(count)
    )
    walls = [line for pair in pairs for line in pair]
    return "\n".join([f"A: {100 + 20 * count} in", "B: 26 in", *walls, "E: 100 in",
                      f"F: {26 + 10 * count} in"])  # fmt: skip


DOORS = """\
N: 12 ft
E: 8 ft
S: {south}, right=butt
door 36 in "hall"{said}
W: {west}{left}"""
ROOMS = {
    "sound": rectangle("12 ft", "10 ft", "12 ft", "10 ft"),
    "in front": rectangle("12 ft", "10 ft 5 in", "12 ft", "10 ft"),
    "behind and right": rectangle("12 ft", "10 ft 1/8 in", "11 ft 11 3/4 in", "10 ft 3/8 in"),
    "of two walls": rectangle("12 ft", "10 ft", "11 ft", "10 ft"),
    "a hall": rectangle("30 ft", "40 in", "29 ft", "40 in"),
    "eleven inches": rectangle("12 ft", "10 ft", "11 ft 1 in", "10 ft"),
    "three inches of wall": rectangle("12 ft", "3 in", "12 ft", "8 in"),
    "allowed": rectangle("12 ft", "10 ft", "11 ft 11 in", "10 ft", "closes within 2 in"),
    "allowed and across": rectangle("12 ft", "10 ft", "11 ft 11 in", "10 ft", "closes within 2 in",
                                    "diagonal N-E 15 ft 7 1/2 in"),
    "not allowed": rectangle("12 ft", "10 ft", "11 ft 11 in", "10 ft", "closes within 1/2 in"),
    "both across": rectangle("12 ft", "10 ft", "12 ft", "10 ft", "diagonal N-E 15 ft 7 1/2 in",
                             "diagonal E-S 15 ft 7 3/8 in"),
    "one short": rectangle("12 ft", "10 ft", "12 ft", "10 ft", "diagonal N-E 15 ft 1 1/2 in",
                           "diagonal E-S 15 ft 7 1/2 in"),
    "one long": rectangle("12 ft", "10 ft", "12 ft", "10 ft", "diagonal N-E 15 ft 7 1/2 in",
                          "diagonal E-S 16 ft 7 1/2 in"),
    "an inch across": rectangle("12 ft", "10 ft", "12 ft 1 in", "10 ft", READ,
                                "diagonal N-E 15 ft 7 1/2 in", "diagonal E-S 15 ft 7 3/8 in"),
    "a foot across": rectangle("12 ft", "10 ft", "13 ft", "10 ft", "diagonal N-E 15 ft 7 1/2 in"),
    "a third across": breast(more="diagonal N1-E 17 ft 1/4 in\ndiagonal E-S 17 ft 1/2 in"),
    "true corners": rectangle("12 ft", "10 ft", "12 ft", "10 ft", READ),
    "sure and wrong": corners(N="94 deg") + "\ncorners: doubt 1/8 deg",
    "one read": corners(N="93 deg"),
    "three read": corners(N="93 deg", E="87 deg", S="92 deg"),
    "all read": corners(N="90 deg", E="90 deg", S="90 deg", W="90 deg"),
    "all read, 3 short": corners(N="90 deg", E="90 deg", S="90 deg", W="87 deg"),
    "by a diagonal": corners(N="corner by 36 in, 36 in, diagonal 51 1/4 in"),
    "read from the other side": corners(N="95 deg", E="95 deg", S="95 deg", W="85 deg"),
    "a corner misread": corners(N="97 deg", E="83 deg", S="90 deg", W="90 deg")
    + "\ndiagonal N-E 15 ft 7 1/2 in\ndiagonal E-S 15 ft 7 1/2 in",
    "mitres": corners(N="45 deg", E="45 deg", S="45 deg", W="45 deg"),
    "fifteen over": corners(N="105 deg"),
    "breast": breast(),
    "breast a foot wide": breast(wide="6 ft"),
    "breast an inch deep": breast(deep="15 in", more=READ),
    "breast and three across": breast(wide="61 in", more="diagonal N1-E 17 ft 1/4 in\n"
                                      "diagonal E-S 17 ft 1/2 in\ndiagonal N2-S 12 ft 6 1/4 in"),
    "bay": BAY.format(bay="40 in"),
    "bay, a foot": BAY.format(bay="52 in"),
    "bay, two": BAY.format(bay="40 in") + "\ndiagonal E-S1 178 3/8 in\ndiagonal N3-W 70 1/4 in",
    "bay, in for out": BAY.format(bay="40 in").replace("out-corner", "in-corner"),
    "bay, a face skipped": BAY.format(bay="40 in").replace("N3: 40 in, right=in-corner(135 deg)\n",
                                                           ""),
    "unlike sides": UNLIKE.format(one="150 deg", other="120 deg"),
    "unlike sides, angles swapped": UNLIKE.format(one="120 deg", other="150 deg"),
    "unlike sides, a mitre for a corner": UNLIKE.format(one="15 deg", other="120 deg"),
    "unlike sides, the other side read": UNLIKE.format(one="150 deg", other="60 deg"),
    "steps": steps(7),
    "steps, sixteen corners": steps(6),
    "steps, thirty-two stretches": steps(14),
    "steps, thirty-six": steps(16),
    "a triangle": "A: 10 ft, right=in-corner(60 deg)\nB: 10 ft, right=in-corner(60 deg)\n"
    "C: 10 ft, right=in-corner(60 deg)",
    "a short wall": rectangle("12 ft", "3 in, right=butt\nE2: 122 in, left=butt", "12 ft",
                              "10 ft"),
    "a short wall of five": rectangle("12 ft", "5 in, right=butt\nE2: 10 ft, left=butt", "12 ft",
                                      "10 ft"),
    "a short wall of five and a half": rectangle("12 ft", "5 1/2 in, right=butt\nE2: 119 1/2 in, "
                                                 "left=butt", "12 ft", "10 ft"),
    "less than an inch": rectangle("12 ft", "10 ft", "11 ft 11 3/8 in", "10 ft", "corners: doubt "
                                   "1/16 deg"),
    "less than an inch across": rectangle("12 ft", "10 ft", "12 ft", "10 ft", READ,
                                          "diagonal N-E 186 9/16 in", "diagonal E-S 187 7/16 in"),
    "less than an inch too long": rectangle("12 ft", "10 ft", "12 ft", "10 ft", READ,
                                            "diagonal N-E 188 3/16 in",
                                            "diagonal E-S 187 7/16 in"),
    "diagonals both short": rectangle("12 ft", "10 ft", "12 ft", "10 ft", "diagonal N-E 15 ft",
                                      "diagonal E-S 15 ft"),
    "in for out, and 2 1/2 in": breast(deep="16 1/2 in").replace("N2: 16 1/2 in, right=out",
                                                                 "N2: 16 1/2 in, right=in")
    .replace("N3: 5 ft, left=out", "N3: 5 ft, left=in"),
    "in for out, and 3 7/16 in": breast(deep="17 7/16 in").replace("N2: 17 7/16 in, right=out",
                                                                   "N2: 17 7/16 in, right=in")
    .replace("N3: 5 ft, left=out", "N3: 5 ft, left=in"),
    "steps, a foot": steps(7).replace("F: 96 in", "F: 9 ft"),
    "steps, ends swapped": steps(7).replace("C3: 20 in, right=out", "C3: 20 in, left=out-corner, "
                                         "right=in").replace("D3: 10 in, left=out", "D3: 10 in, "
                                                             "left=in"),
    "door": DOORS.format(south="9 ft", said=", right=in-corner", west="8 ft", left=""),
    "door, corner unsaid": DOORS.format(south="9 ft", said="", west="8 ft", left=", left=butt"),
    "door, and a length": DOORS.format(south="9 ft", said="", west="7 ft", left=", left=butt"),
    "door, and two lengths": DOORS.format(south="9 ft 2 3/16 in", said="", west="7 ft",
                                          left=", left=butt"),
    "corner at an opening that says nothing": rectangle(
        "12 ft", "10 ft", "9 ft, right=butt\nopening 36 in", "9 ft, left=in-corner"
    ),
    "door forgotten": rectangle("12 ft", "10 ft", "5 ft, right=butt\nS2: 52 in, left=butt",
                                "10 ft"),
    "opening too wide": rectangle("20 ft", "10 ft", "5 ft, right=butt\nS2: 52 in, left=butt",
                                  "10 ft"),
    "a wall skipped": "N: 12 ft\nE: 10 ft\nW: 10 ft",
    "both sides contradict": breast().replace("N3: 5 ft, left=out-corner", "N3: 5 ft"),
    "swapped": breast().replace("N2: 14 in, right=out-corner", "N2: 14 in, left=out-corner, "
                                "right=in-corner"),
    "swapped, and 3 7/16 in": breast(deep="17 7/16 in").replace("in, right=out-corner",
                                                                "in, left=out-corner, "
                                                                "right=in-corner", 1),
}  # fmt: skip
IN_METRES = {
    "metric": rectangle(3600, 3000, 3612, 3000),
    "metric, swapped figures": rectangle(3640, 2460, 3640, 2640),
    "metric, door forgotten": rectangle(3600, 3000, "1500, right=butt\nS2: 1286, left=butt", 3000),
    "metric, a wall skipped": "N: 3600\nE: 3000\nW: 3000",
    "metric, across": rectangle(3600, 3000, 3600, 3000, "diagonal N-E 4686", "diagonal E-S 4600"),
}

# of few runs, most of whose corners were read: one corner or several diagonals more would help
ALL_READ = "\n".join(
    f"{name}: {size}, right={kind}(90 deg)"
    for name, size, kind in (
        ("A", "26 ft", "in-corner"), ("B", "20 ft", "in-corner"), ("C", "8 ft", "in-corner"),
        ("D", "9 ft", "out-corner"), ("E", "10 ft", "out-corner"), ("F", "9 ft", "in-corner"),
        ("G", "8 ft", "in-corner"), ("H", "20 ft", "in-corner"),
    )
)  # fmt: skip
MORE_ROOMS = [
    ALL_READ,
    ALL_READ.replace("(90 deg)", "", 2) + "\ncorners: doubt 5 deg",
    f"{ALL_READ}\n{READ}",
    # no diagonal can be named where doors stand in the corners
    "\n".join(
        f"opening 32 in, left=in-corner{read}\n{name}: 80 in, left=butt, right=butt"
        f"\nopening 32 in, right=in-corner{then}"
        for name, read, then in (
            ("N", "", "(90 deg)"),
            ("E", "(90 deg)", "(90 deg)"),
            ("S", "(90 deg)", ""),
            ("W", "", ""),
        )
    )
    + "\ncorners: doubt 5 deg",
]


def said(number: Fraction | float | None) -> str:
    return "" if number is None else f"{float(number):.3f}"


def told(result: Result) -> Iterator[str]:
    """Yield what is found of the room's walk, and what the closing weighed it by."""
    for found in result.diagnostics:
        place = f"{found.code} {found.span.line}:{found.span.column}-{found.span.end}"
        yield f"{place} {found.message} / {found.remedy}"
    (one,) = result.closings
    yield f"{one.room}: {one.text} [{said(one.gap)} of {said(one.tolerance)}] {one.where}"
    for slip in one.slips:
        yield f"  {slip.about} {slip.words} {slip.score:.2f} {said(slip.amount)}"
    for left in one.residuals:
        kind = "°" if left.is_corner else " in"
        yield f"  {left.of}: {said(left.off)}{kind}, alone {said(left.alone)}, {left.sure:.2f}"


@pytest.mark.parametrize(
    ("head", "rooms"), [(INCHES, ROOMS), (METRIC, IN_METRES)], ids=["inches", "metres"]
)
def test_what_is_said_of_each_room(
    head: str, rooms: dict[str, str], snapshot: SnapshotAssertion
) -> None:
    shown: list[str] = []
    for name, walls in rooms.items():
        shown += [f"## {name}"]
        shown += told(trimlang.check(f'{head}room "R", trim base, ends in\n{walls}\n'))
    assert "\n".join(shown) == snapshot


def offered(walls: str) -> tuple[Walk, Settling, Walk] | None:
    """What would tell more of a room, as offered, and the room's walk with that measured."""
    result = trimlang.check(f'{INCHES}room "R", trim base, ends in\n{walls}\n')
    room = result.job.rooms[0]
    across = [Chord(*span_of(one, len(room.walk)), float(one.length), one.name)
              for one in room.diagonals]  # fmt: skip
    course = Course(room, room.walk, depths(result.job.trims), tuple(across))
    walk = course.walk()
    if not walk.goes_round:
        return None
    more = finer(course, walk, misfit(walk))
    if more is None:
        return None
    corners = {f"the corner of {name} and {course.names[(at + 1) % len(course.names)]}": at
               for at, name in enumerate(course.names)}  # fmt: skip
    chords = [one for one in diagonals(course, walk)
              if one.name in re.split(r"[ ,]+", more.words) or "every" in more.words]  # fmt: skip
    read = [more.words == "measuring all its corners" or corners.get(more.words) == at
            for at in range(len(walk.turns))]  # fmt: skip
    turns = tuple(replace(turn, measured=turn.measured or now)
                  for turn, now in zip(walk.turns, read, strict=True))  # fmt: skip
    return walk, more, replace(walk, chords=(*walk.chords, *chords), turns=turns)


def test_a_survey_with_the_measurement_that_was_offered_tells_what_was_promised() -> None:
    kinds = set()
    for walls in [*ROOMS.values(), *MORE_ROOMS]:
        found = offered(walls)
        if found is not None:
            walk, more, measured = found
            assert more.tolerance == pytest.approx(misfit(measured).tells, rel=1e-9)
            assert more.tolerance < misfit(walk).tells
            kinds.add(more.words.split()[0])
    assert kinds == {"diagonal", "diagonals", "measuring", "the"}
