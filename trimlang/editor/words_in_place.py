"""Which of the words that the grammar takes at a place make sense there.

The grammar says what can be read.  A line that says something twice, names steps of a wall that
does not climb, or a wall of a mile is read too, and refused later: such words are not proposed.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import cache
from types import MappingProxyType
from typing import Final

from lark import Token

from trimlang.editor.tokens import expected
from trimlang.joints import Joint
from trimlang.language.vocabulary import whole_joint
from trimlang.lengths.tape import Unit
from trimlang.lengths.units import LengthUnit, in_inches
from trimlang.settings.setting_kinds import EndSetting
from trimlang.settings.table import Settings
from trimlang.survey.measures import LONGEST_WALL
from trimlang.survey.offers import YARD_SHORTEST

UNITS: Final = MappingProxyType({"FOOT": LengthUnit.FOOT, "IN": LengthUnit.INCH})
METRIC: Final = "METRIC"
_WALLS_BEGIN: Final = frozenset({"OPENING", "BARE", "BEAM", "TRANSITION"})
_CORNERS: Final = frozenset({"JOINT", "BETWEEN"})
_MANY: Final = frozenset(
    {"NO", "TRIM", "SIDE", "PACK", "BUNDLE", "PICK", "ANY", "DEFECT", "AT", "STOPS", "NAME"}
    | _CORNERS
    | _WALLS_BEGIN
)
"""Words that begin several parts of one line, each about something else."""

_BEHIND_A_NUMBER: Final = frozenset({"THICK", "TALL", "WIDE", "COATS", "GIRTH", "DEEP", "RADIUS"})
"""Words that end a part, and stand once in a line."""

_AT_MOST: Final = MappingProxyType({"OPENING": Fraction(240), "CORNER": Fraction(120)})
"""Inches: 32 is how a door is said, and 36 the leg of a corner measured with the tape; neither is
said in feet (common practice, no source)."""

_NEEDS: Final = MappingProxyType(
    {
        "SWINGS": "HINGED",
        "STAIR_SIDE": "RISING",
        "TAKEN_ALONG": "RISING",
        "NOTCH": "RISING",
        "LEVEL": "RISING",
    }
)
"""What a word is of no use without, said before it."""


def has_place(
    kind: str, way: str, before: Sequence[Token], behind: Sequence[Token], unit: Unit | None
) -> bool:
    """Tell whether a word (its kind in the grammar, and its spelling) makes sense in a line.

    ``before`` are the words of the line so far, ``behind`` those behind the cursor, from a comma
    on.  ``unit`` is what its bare numbers mean, None where the word is begun already: who wants the
    other system's unit has to type a letter of it.
    """
    here = _of_this_wall(before)
    line = [*here, *behind[: next(_walls_begin(behind), None)]]
    kinds = [word.type for word in line]
    if _begins_a_part(here, len(here)) and kind in _of_the_other(here):
        return False
    needed = _NEEDS.get(kind)
    if needed is not None and needed not in kinds:
        return False
    if kind in UNITS or kind == METRIC:
        return _may_follow(UNITS.get(kind) or LengthUnit(way), here, unit)
    if kind == "JOINT" and not _ends_so(way, here):
        return False
    if kind == "SIDE" and here and here[-1].type == "TRANSITION":
        # Climbing crown is turned level in an inside corner only.
        said = zip(line, line[2:], strict=False)
        return any(
            one == way and Joint.of(_whole(other)).is_inside
            for one, other in said
            if one.type == "SIDE" and other.type in _CORNERS
        )
    if kind in ("COPE", "BULLNOSE", "TWO_PIECE"):
        joints = [Joint.of(_whole(word)) for word in here if word.type in _CORNERS]
        # Only an inside corner is coped, and only an outside one is rounded.
        return not joints or (joints[-1].is_inside if kind == "COPE" else joints[-1].is_outside)
    if kind == "SIDE" and _begins_a_part(here, len(here)):
        return not any(
            word.lower() == way and _begins_a_part(line, at) for at, word in enumerate(line)
        )
    if kind in _BEHIND_A_NUMBER:
        return kind not in kinds
    if _begins_a_part(here, len(here)) and kind not in _MANY:
        return not any(
            word.type == kind and _begins_a_part(line, at) for at, word in enumerate(line)
        )
    return True


@cache
def _kinds_after(line: str) -> frozenset[str]:
    return frozenset(expected(line)[1])


def _of_the_other(here: Sequence[Token]) -> frozenset[str]:
    """Return what is said of openings only, where a list is at a wall, or the other way round."""
    of_walls, of_gaps = map(_kinds_after, ("x: 1 in,", "opening 1 in,"))
    if here and here[0].type in _WALLS_BEGIN:
        return of_walls - of_gaps - _MANY
    return of_gaps - of_walls - _MANY if here and here[0].type == "NAME" else frozenset()


def _whole(word: Token) -> str:
    return whole_joint(word.lower())


def _ends_so(way: str, here: Sequence[Token]) -> bool:
    """Tell whether a loose piece, or the setting that is being said, can have such an end."""
    if here and here[0].type == "PIECE":
        return Joint.of(way).row.on_loose_piece
    begins = max((at for at in range(len(here)) if _begins_a_part(here, at)), default=0)
    part = " ".join(word.lower() for word in here[begins:])
    for row in Settings.rows():
        if isinstance(row, EndSetting) and row.words.rpartition(": ")[2] == part:
            return way in row.kinds
    return True


def _of_this_wall(before: Sequence[Token]) -> list[Token]:
    """Return the words of the wall that the line is at: it may have several."""
    *_, start = (0, *_walls_begin(before))
    return list(before[start:])


def _walls_begin(words: Sequence[Token]) -> Iterator[int]:
    for at, word in enumerate(words):
        named = word.type == "NAME" and _begins_a_part(words, at) and _is_number(words, at + 1)
        if named or word.type in _WALLS_BEGIN:
            yield at


def _is_number(words: Sequence[Token], at: int) -> bool:
    return at < len(words) and words[at].type in ("COUNT", "DECIMAL", "FRACTION", "VULGAR")


def _begins_a_part(words: Sequence[Token], at: int) -> bool:
    return at > 0 and words[at - 1].type in ("COMMA", "COLON")


def _may_follow(one: LengthUnit, here: Sequence[Token], unit: Unit | None) -> bool:
    """Tell whether a unit makes sense behind a number: nobody measures a kerf in feet."""
    metric = one not in (LengthUnit.INCH, LengthUnit.FOOT)
    # A file is in inches or in millimetres; the other units stand behind single numbers.
    if here and here[0].type == "UNIT":
        return one in (LengthUnit.INCH, LengthUnit.MM)
    # The job's own system first: proposals of the other one would only be in the way.
    if unit is not None and metric is not (unit is Unit.MM):
        return False
    number = here[-1] if here else None
    if number is None or number.type not in ("COUNT", "DECIMAL"):
        return one in (LengthUnit.INCH, LengthUnit.MM)
    long = in_inches(Fraction(str(number)), one.value)
    sold = here[0].type == "STOCK" and _begins_a_part(here, len(here) - 1)
    most = min((_AT_MOST[one.type] for one in here if one.type in _AT_MOST), default=LONGEST_WALL)
    return (YARD_SHORTEST[Unit.INCH] if sold else 0) <= long <= most
