"""Guesses what the columns of a list of measurements hold, by their headings and their cells.

What a laser measure or a phone writes names its columns as it likes.  A heading is looked up
word by word; where it is not known, the column whose cells read as lengths is the length's.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from trimlang.joints import Joint
from trimlang.language.vocabulary import whole_joint
from trimlang.lengths.units import LengthUnit
from trimlang.record import record
from trimlang.tables.cells import TableRow
from trimlang.tables.list_words import HEADINGS, ListColumn, plain
from trimlang.tables.table_columns import names_columns, of_surveys_alone
from trimlang.tables.written_length import UNITS, length_of

_WORD: Final = re.compile(r"[^\W\d_]+|[″\"']+")
_RUNNING: Final = re.compile(r"\d{1,4}")
_DATE_OR_TIME: Final = re.compile(r"[\d\s.:/TZ-]*\d[./:-]\d[\d\s.:/TZ-]*")
_AN_AREA: Final = re.compile(r"\d[\d.,]*\s*(?:m2|m²|qm|sq.*|ft2|ft²)?", re.IGNORECASE)
_EITHER: Final = (None, LengthUnit.MM)
_RUNS: Final = frozenset("no nr number pos index item nummer numero".split())
"""The words of headings below which running numbers stand."""
_ENDINGS: Final = tuple(word for word in HEADINGS if len(word) > 4)
_TITLES: Final = 6
"""Rows among which a heading is looked for: titles may stand above it."""


@record
class ListColumns:
    """The place of each column that is used, the unit that a heading names, and what to tell.

    ``begins`` is the first row (from 0) that is no heading.  ``corner`` is the heading of a column
    that says a corner, and not of which end.
    """

    places: dict[ListColumn, int]
    unit: LengthUnit | None
    begins: int
    remarks: tuple[str, ...]
    corner: str = ""


def _meant(words: Sequence[str]) -> ListColumn | None:
    """Return the column that a heading's words name.

    “Wall length” holds lengths: those for lengths are asked first, then the first word that is
    known.  “Wandlänge” is one word in some languages, so its end is asked last.
    """
    # Whole words first: an ending may be part of another word by chance.
    known = [HEADINGS[word] for word in words if word in HEADINGS]
    if not known:
        ends = (next((one for one in _ENDINGS if word.endswith(one)), None) for word in words)
        known = [HEADINGS[one] for one in ends if one is not None]
    of_an_end = [one for one in known if one in (ListColumn.LEFT, ListColumn.RIGHT)]
    if ListColumn.CORNER in known and of_an_end:
        return of_an_end[0]
    return ListColumn.LENGTH if ListColumn.LENGTH in known else next(iter(known), None)


def _is_a_unit(written: str, words: Sequence[str]) -> bool:
    a_number = any(map(str.isdigit, written))
    return bool(words) and not a_number and all(word in UNITS for word in words)


def columns_by_heading(
    rows: Sequence[TableRow], *, comma_is_decimal: bool = False
) -> ListColumns | None:
    """Return what the heading, the first row, says; None where it names neither lengths nor notes.

    Where it names notes alone, the lengths stand in their lines.
    """
    heading, below = rows[0], rows[1:]
    places: dict[ListColumn, int] = {}
    unit: LengthUnit | None = None
    remarks: list[str] = []
    corner = ""
    read = [[plain(word) for word in _WORD.findall(cell.text)] for cell in heading.cells]
    # “Feet” or “mm” alone heads lengths in that unit.
    meant = [
        ListColumn.LENGTH if _is_a_unit(cell.text, words) else _meant(words)
        for cell, words in zip(heading.cells, read, strict=True)
    ]
    for place, column in enumerate(meant):
        if column is ListColumn.ROOM and _are_areas(below, place):
            meant[place] = None
    units = [next((UNITS[word] for word in words if word in UNITS), None) for words in read]
    lengths = [place for place, column in enumerate(meant) if column is ListColumn.LENGTH]
    in_feet = [place for place in lengths if units[place] == LengthUnit.FOOT]
    in_inches = [place for place in lengths if units[place] == LengthUnit.INCH]
    if len(lengths) == 2 and in_feet and in_inches:
        # Feet in one column and inches beside them are one length.
        meant[in_feet[0]] = ListColumn.FEET
    elif below and lengths:
        # A column may be called “Measurement” and hold what was measured: its cells decide.
        counts = {
            place: _lengths_in(below, place, comma_is_decimal=comma_is_decimal) for place in lengths
        }
        best = max(lengths, key=lambda place: (counts[place], -place))
        for place in lengths:
            if place != best and not counts[place]:
                meant[place] = None if ListColumn.WALL in meant else ListColumn.WALL
        if not counts[best] and len(lengths) < len(read):
            return None
        places[ListColumn.LENGTH] = best
    # A wall is called by its name; only one that has none gets a running number.
    named = any(
        column is ListColumn.WALL and not _RUNS & {*words}
        for column, words in zip(meant, read, strict=True)
    )
    for place, (cell, words, column) in enumerate(zip(heading.cells, read, meant, strict=True)):
        if column is ListColumn.WALL and named and _RUNS & {*words}:
            column = None
        written = " ".join(cell.text.split())
        if not written:
            continue
        # The first column of a kind is taken. What is left out is said, so that nothing is lost
        # unseen.
        if column is None or places.get(column, place) != place:
            remarks.append(f"column “{written}” is left out")
            continue
        places[column] = place
        if column is ListColumn.CORNER:
            corner = written
        if column is ListColumn.LENGTH and units[place] and ListColumn.FEET not in meant:
            unit = units[place]
            remarks.append(f"column “{written}” is read as the length, in {unit}")
        else:
            remarks.append(f"column “{written}” is read as the {column}")
    if ListColumn.LENGTH not in places and ListColumn.NOTE not in places:
        return None
    return ListColumns(places=places, unit=unit, begins=1, remarks=tuple(remarks), corner=corner)


def _are_areas(rows: Sequence[TableRow], place: int) -> bool:
    """Tell whether a column holds areas and no rooms: “area” heads either."""
    cells = [row.cells[place].text.strip() for row in rows if place < len(row.cells)]
    return any(cells) and all(_AN_AREA.fullmatch(one) for one in cells if one)


def _lengths_in(rows: Sequence[TableRow], place: int, *, comma_is_decimal: bool) -> int:
    """Return how many cells of a column read as lengths, in one unit or another."""
    return sum(
        any(
            length_of(row.cells[place].text.strip(), unit, comma_is_decimal=comma_is_decimal)
            for unit in _EITHER
        )
        for row in rows
        if place < len(row.cells)
    )


def below_its_title(
    rows: Sequence[TableRow], *, comma_is_decimal: bool
) -> tuple[list[TableRow], tuple[str, ...]]:
    """Return the rows from the heading on, and what to tell of titles that stand above it."""
    for at, row in enumerate(rows[:_TITLES]):
        # A first row with figures is a date or a title with a number, or already a wall.
        if any(sign.isdigit() for cell in row.cells for sign in cell.text) and at == 0:
            continue
        filled = [cell for cell in row.cells if cell.text.strip()]
        if len(filled) > 1 and _heads(rows[at:], comma_is_decimal=comma_is_decimal):
            above = [" ".join("; ".join(_texts(one)).split()).strip("; ") for one in rows[:at]]
            told = (f"“{text}” stands above the heading and is left out" for text in above)
            return list(rows[at:]), tuple(told)
    return list(rows), ()


def _heads(rows: Sequence[TableRow], *, comma_is_decimal: bool) -> bool:
    if any(sign.isdigit() for cell in rows[0].cells for sign in cell.text):
        return False
    if names_columns(rows[0]):
        return True
    headed = columns_by_heading(rows, comma_is_decimal=comma_is_decimal)
    return headed is not None and ListColumn.LENGTH in headed.places


def is_a_list(rows: Sequence[TableRow], *, comma_is_decimal: bool) -> bool:
    """Tell whether a table is a list, which may name ends too, and other columns as it likes."""
    if not names_columns(rows[0]):
        return True
    if of_surveys_alone(rows[0]):
        return False
    headed = columns_by_heading(rows, comma_is_decimal=comma_is_decimal)
    return headed is not None and ListColumn.LENGTH in headed.places


def columns_by_cells(rows: Sequence[TableRow], *, comma_is_decimal: bool) -> ListColumns | None:
    """Return what the cells look like; None where no column can be the length's."""
    width = max((len(row.cells) for row in rows), default=0)
    columns = [
        [row.cells[place].text.strip() for row in rows if place < len(row.cells)]
        for place in range(width)
    ]
    reads = [
        sum(
            any(length_of(text, unit, comma_is_decimal=comma_is_decimal) for unit in _EITHER)
            for text in column
        )
        for column in columns
    ]
    # A single column would have lengths without a wall to give them to.
    if width < 2 or not max(reads, default=0):
        return None
    # a running number reads as a length too, so the last of the best is taken
    length = max(range(width), key=lambda place: (reads[place], place))
    # A first row without any figure, above rows that have one, is a heading in a language that is
    # not known here.
    begins = int(len(rows) > 1 and not any(map(str.isdigit, "".join(_texts(rows[0])))))
    below = {
        place: [text for text in column[begins:] if text] for place, column in enumerate(columns)
    }
    places = {ListColumn.LENGTH: length}
    unit = next((at for at, cells in below.items() if at != length and _are_units(cells)), None)
    if unit is not None:
        places[ListColumn.UNIT] = unit
    # A survey's rows without their heading: the left end stands before the right one.
    joints = [at for at, cells in below.items() if at != length and _are_joints(cells)]
    if len(joints) == 2:
        places |= {ListColumn.LEFT: joints[0], ListColumn.RIGHT: joints[1]}
    others = [place for place in range(width) if place not in places.values()]
    named = [place for place in others if not _tells_nothing(below[place])] or others
    before = [place for place in named if place < length]
    # “Kitchen, north, 3.25”: what stands before a length is most often the wall's name, and before
    # that the room's; what is behind is a remark.
    places |= dict(zip((ListColumn.WALL, ListColumn.ROOM), reversed(before), strict=False))
    behind = [place for place in named if place > length]
    places |= dict(
        zip(
            (ListColumn.NOTE,) if before else (ListColumn.WALL, ListColumn.NOTE),
            behind,
            strict=False,
        )
    )
    remarks = [f"column {place + 1} is read as the {column}" for column, place in places.items()]
    left_out = [place for place in range(width) if place not in places.values()]
    remarks += [f"column {place + 1} is left out" for place in left_out]
    written = "; ".join(text for text in _texts(rows[0]) if text)
    told = f"the heading “{written}” is not understood" if begins else "there is no heading"
    return ListColumns(places, None, begins, (told, *remarks))


def _texts(row: TableRow) -> list[str]:
    return [" ".join(cell.text.replace('"', " ").split()) for cell in row.cells]


def _are_units(cells: Sequence[str]) -> bool:
    return bool(cells) and all(cell.casefold().rstrip(".") in UNITS for cell in cells)


def _are_joints(cells: Sequence[str]) -> bool:
    return bool(cells) and all(whole_joint(cell.casefold()) in set(Joint) for cell in cells)


def _tells_nothing(cells: Sequence[str]) -> bool:
    """Tell whether a column holds running numbers, or dates and times, which name no wall."""
    return not cells or all(
        _RUNNING.fullmatch(one) or _DATE_OR_TIME.fullmatch(one) for one in cells
    )
