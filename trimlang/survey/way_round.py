"""Finds rooms whose walls were listed turning left instead of right.

Walls listed the wrong way round close just as well, but every left and right is then wrong; only
names and diagonals can show it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise
from typing import Final

from trimlang.survey.job import Room
from trimlang.survey.measured_walk import Course
from trimlang.survey.measures import Findings
from trimlang.survey.misfit import Chord, Walk, misfit
from trimlang.survey.possible_slip import Slip

_COMPASS: Final = re.compile(r"(n|e|s|w|north|east|south|west)\W?[0-9]*[a-z]?")
"""A wall's name after the compass, in small letters."""
_ORDER: Final = "nesw"
_ONCE_ROUND: Final = 4


def check_names(room: Room, findings: Findings) -> None:
    """Warn of walls named after the compass that come in the order N, W, S, E.

    Whoever faces the north wall has the east wall at the right hand.
    """
    found = [_COMPASS.fullmatch(run.label.casefold()) for run in room.runs]
    sides = [_ORDER.index(match[1][0]) for match in found if match]
    # One wall with another name, or a side that is missing, and the order may mean anything.
    if len(sides) < len(found) or len(set(sides)) < _ONCE_ROUND:
        return
    closed = sides if room.open_walk else [*sides, sides[0]]
    turned = 0
    for one, other in pairwise(closed):
        # A step to the next wall is a quarter right (1) or left (3 quarters right); an opposite
        # wall says nothing. Only three quarters left or more are clearly the wrong way.
        step = (other - one) % _ONCE_ROUND
        turned += {0: 0, 1: 1, 3: -1}.get(step, 0)
    if turned <= 1 - _ONCE_ROUND:
        order = ", ".join(dict.fromkeys(run.label for run in room.runs))
        findings.say("T315", room.span, room=room.name, order=order, listed=(room.span,))


def walked_left(course: Course, walk: Walk) -> Iterator[Slip]:
    """Yield the slip of listing the room the wrong way round, where diagonals were measured.

    The left end of each wall is then where its right end was thought to be.
    """
    diagonals = course.room.diagonals
    if not diagonals:
        return
    count = len(walk.lengths)
    chords = []
    for one, chord in zip(diagonals, walk.chords, strict=True):
        # Where the two ends of each wall are swapped, so are those that a diagonal is named by.
        start, end = sorted(((one.begin + 1) % count, one.end))
        if start == end:
            return
        chords.append(Chord(start, end, chord.length, chord.name))
    words = "the walls were listed turning left: list them the other way round"
    score = misfit(replace(walk, chords=tuple(chords))).total
    yield Slip(words, tuple(range(count)), score)
