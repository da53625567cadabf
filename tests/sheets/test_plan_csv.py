"""The plan as CSV: every piece and every stick, exact, and harmless in a spreadsheet."""

from __future__ import annotations

import csv
from fractions import Fraction
from io import StringIO

from tests.sheets.jobs import SMALL, SOME_OF_ALL, compiled, house, odd, small
from trimlang.compiler import Result
from trimlang.joinery.at_the_saw import at_saw, lay_of, saw_for
from trimlang.language.end_facts import Side
from trimlang.sheets.export.plan_csv import PIECE_COLUMNS, STICK_COLUMNS, cut_list_csv, sticks_csv
from trimlang.sheets.export.plan_json import plan_values
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen
from trimlang.sheets.wording.saw_words import setting


def rows(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(StringIO(text)))


def test_every_piece_once_and_exact() -> None:
    for result in (small(), odd(), house()):
        listed = rows(cut_list_csv(result))
        assert [row["piece"] for row in listed] == [piece.id for piece in result.pieces]
        for row, piece in zip(listed, result.pieces, strict=True):
            number, unit = row["length_exact"].split()
            assert unit == "in"
            assert Fraction(number) == piece.to_mark
            assert abs(Fraction(row["length_in"]) - piece.to_mark) <= Fraction(1, 20000)


def test_the_sticks_hold_what_the_plan_says() -> None:
    for result in (small(), odd(), house()):
        held = [(row["stick"], int(row["cut"]), row["piece"]) for row in rows(sticks_csv(result))]
        assert held == [
            (stick.id, number, place.piece)
            for plan in result.plans
            for stick in plan.sticks
            for number, place in enumerate(stick.places, start=1)
        ]
        cut = {row["piece"]: (row["stick"], int(row["cut"])) for row in rows(cut_list_csv(result))}
        assert cut == {piece: (stick, number) for stick, number, piece in held}


def test_left_and_right_are_those_of_the_ticket() -> None:
    """Flat cuts too: a rake, a casing's mitre and crown would otherwise be cut in the mirror."""
    result = compiled(SOME_OF_ALL)
    listed = {row["piece"]: row for row in rows(cut_list_csv(result))}
    planned = {piece.id: piece for piece in plan_values(result).pieces}
    runs = set()
    for piece in result.pieces:
        for side, cut in (("left", piece.left), ("right", piece.right)):
            saw = saw_for(result.job.trim(piece.trim), result.job.settings)
            at = at_saw(cut, Side(side), saw)
            said = setting(at, Pen(words_in("en"), "$")).partition(",")[0].split()[-1]
            assert listed[piece.id][f"{side}_lean"] == getattr(planned[piece.id], side).lean == said
            runs.add((lay_of(cut), said))
    assert runs == {
        (how, way) for how in ("standing", "raking", "casing", "crown") for way in ("left", "right")
    } | {("standing", "square")}


def test_the_columns_and_a_line() -> None:
    listed = cut_list_csv(small()).splitlines()
    assert listed[0] == ",".join(PIECE_COLUMNS)
    assert sticks_csv(small()).splitlines()[0] == ",".join(STICK_COLUMNS)
    (line,) = [one for one in listed if one.startswith("BR-E-base,")]
    assert line.startswith("BR-E-base,Box room,E,base,run,1,1,29 1/8 in,29.125,233/8 in,")
    assert "mind the <b>heater" in line


def test_a_formula_is_only_text() -> None:
    wicked = SMALL.replace('"Box room"', '"=1+2"').replace("mind the", "@SUM(A1) the")
    result: Result = compiled(wicked)
    listed = rows(cut_list_csv(result))
    assert {row["room"] for row in listed} == {"'=1+2"}
    assert any(row["note"].startswith("'@SUM(A1)") for row in listed)
    cells = [cell for row in listed + rows(sticks_csv(result)) for cell in row.values()]
    assert not [cell for cell in cells if cell.startswith(("=", "+", "@", "\t", "\r"))]
