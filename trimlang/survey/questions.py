"""Asks about what makes sense to a program but hardly to a carpenter."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from trimlang.language import tree
from trimlang.language.facts import Cased, ClearHeight, Jambed, Unread
from trimlang.lengths.tape import feet_text, mixed_number
from trimlang.lengths.units import LengthUnit
from trimlang.settings.table import Settings
from trimlang.survey.job import Gap, Room, Run, Trim
from trimlang.survey.measures import Findings

_CROWNS: Final = {"crown", "cornice", "cove"}
_WORD: Final = re.compile(r"[a-z]+")
# Trim thicker than twice its height was most likely written with the two swapped.
_TIMES_AS_THICK: Final = 2
_SOLD_IN_FEET: Final = (6, 7, 8, 10, 12, 14, 16)
"""The lengths that trim is usually sold in (common practice, no source)."""
# A foot has 192 sixteenths; a decimal of a foot that is a whole number of them may well be meant.
_SIXTEENTHS_A_FOOT: Final = 192
_TEN: Final = 10


def ask_of_lines(lines: Iterable[tree.Statement], findings: Findings) -> None:
    """Ask about lengths whose unit or decimal point is probably not what was meant."""
    for line in lines:
        if isinstance(line, tree.RunLine):
            _ask_of_feet(line.length, findings)
        elif isinstance(line, tree.GapLine):
            if isinstance(line.width, tree.Measure):
                _ask_of_feet(line.width, findings)
            used = (Cased, Jambed, Unread)
            # A height is only used for a casing or for jamb strips: perhaps the word for them was
            # forgotten.
            if _stated(line, ClearHeight) and not any(_stated(line, kind) for kind in used):
                findings.say("T265", line.span)
        elif isinstance(line, tree.DiagonalLine | tree.LoosePieceLine):
            _ask_of_feet(line.length, findings)
        elif isinstance(line, tree.StockLine):
            for offer in line.offers:
                _ask_of_feet(offer.length, findings)
                _ask_of_stick(offer.length, findings)


def ask_of_trims(trims: Iterable[Trim], rooms: tuple[Room, ...], findings: Findings) -> None:
    """Ask about trims with an unlikely section or stock."""
    # Each room is walked once, not once for each trim: a job may have thousands of both.
    walls: dict[str, list[tuple[Settings, Run]]] = {}
    elsewhere: set[str] = set()
    for room in rooms:
        for run in room.runs:
            for name in run.trims:
                walls.setdefault(name, []).append((room.settings, run))
        elsewhere.update(room.trims_besides)
        elsewhere.update(name for gap in room.walk if isinstance(gap, Gap) for name in gap.trims)
    for trim in trims:
        words = set(_WORD.findall(" ".join((trim.name, *trim.material)).lower()))
        if trim.spring is None and words & _CROWNS:
            findings.say("T262", trim.span, trim=trim.name)
        thick, tall = trim.thickness, trim.height
        if thick is not None and tall is not None and thick > _TIMES_AS_THICK * tall:
            findings.say("T263", trim.span, trim=trim.name)
        # Casing, boxes and loose pieces may want shorter sticks than any wall.
        if trim.name in walls and trim.name not in elsewhere:
            _ask_of_short_sticks(trim, walls[trim.name], findings)


def ask_of_room(room: Room, findings: Findings) -> None:
    """Ask about a second entrance, which is not used."""
    gaps = [one for one in room.walk if isinstance(one, Gap)]
    # Laps face away from one entrance and copes are seen from it; two would contradict each other.
    for second in [gap for gap in gaps if gap.entrance][1:]:
        findings.say("T266", second.span, room=room.name)


def _stated(line: tree.GapLine, kind: type) -> bool:
    return any(isinstance(fact, kind) for fact in line.facts)


def _ask_of_feet(measure: tree.Measure, findings: Findings) -> None:
    """Ask about 4.2 ft: it is 4 ft 2 3/8 in, and nearly always meant as 4 ft 2 in."""
    (amount, unit), *more = measure.parts
    whole, part = divmod(amount, 1)
    if (
        unit != LengthUnit.FOOT
        or more
        or not part
        # A fraction of a foot was said already; a decimal number has places.
        or not measure.places
        or (amount * _SIXTEENTHS_A_FOOT).denominator == 1
    ):
        return
    # 4.2 ft may mean 4 ft 2 in; 4.10 and 4.11 ft may mean 4 ft 10 and 11 in, but 4.25 ft means what
    # it says.
    if measure.places == 2 and part * _TEN**2 < 12:
        meant = part * _TEN**2
    elif (part * _TEN).denominator == 1:
        meant = part * _TEN
    else:
        return
    instead = feet_text(whole * 12 + meant)
    findings.say(
        "T260", measure.span, instead=instead, feet=f"{float(amount):.{max(measure.places, 1)}f} ft"
    )


def _ask_of_stick(measure: tree.Measure, findings: Findings) -> None:
    (amount, unit), *more = measure.parts
    if unit == LengthUnit.INCH and not more and amount in _SOLD_IN_FEET:
        number = mixed_number(amount)
        findings.say("T261", measure.span, long=f"{number} in", instead=f"{number} ft")


def _ask_of_short_sticks(trim: Trim, runs: list[tuple[Settings, Run]], findings: Findings) -> None:
    """Ask about sticks that no run can be cut from, whole or spliced."""
    shortest = min(run.length for _, run in runs)
    if all(offer.length < shortest for offer in trim.offers):
        return  # nothing fits at all, and the joinery says so
    for offer in trim.offers:
        pieced = any(
            run.may_splice and offer.length >= settings.splice_least for settings, run in runs
        )
        # What the joints take away is not known here, so a piece may be a little shorter than its
        # run.
        if offer.length in _SOLD_IN_FEET:
            continue  # asked about already
        if offer.length < shortest - 2 * (trim.thickness or 0) and not pieced:
            long = feet_text(offer.length)
            findings.say("T264", offer.span, trim=trim.name, long=long, run=feet_text(shortest))
