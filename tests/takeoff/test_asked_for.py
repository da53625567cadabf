"""Putty, glue, primer and blades: on the order where the file asks for them, reckoned by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest

from tests import jobs
from trimlang.compiler import check_job, compile_job
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.material_words import need
from trimlang.sheets.wording.quantities import Pen
from trimlang.takeoff.supply import Supply

# One outside corner and a return; 40 and 50 in: four and five stations of two nails.
WALLS = """room "Hall", trim base, open walk
  N: 40 in, left=butt, right=out-corner(90 deg)
  E: 50 in, left=out-corner, right=return
"""


def asked(*lines: str, walls: str = WALLS) -> dict[str, Supply]:
    text = "\n".join((jobs.BASE, jobs.TWELVE_FEET, *lines, walls))
    result = compile_job(text)
    assert not result.diagnostics
    return {one.named: one for one in result.supplies}


def test_they_stand_on_no_order_that_does_not_ask() -> None:
    assert not {"putty", "glue", "primer", "saw blade"} & set(asked())


def test_putty_takes_the_nail_holes_from_the_filler() -> None:
    before, now = asked(), asked("putty: tub 4 fl oz at 3.50")
    holes = dict(before["filler"].facts)["holes"]
    assert holes == before["nails"].need
    putty = now["putty"]
    assert dict(putty.facts)["holes"] == holes
    # A hole of 1/8 in each way, twice; a fluid ounce is 231/128 cubic inches (NIST Handbook 44).
    assert putty.need == holes * Fraction(1, 512) * 2 * Fraction(128, 231)
    assert (putty.count, putty.cost) == (1, Fraction("3.50"))
    assert dict(now["filler"].facts)["holes"] == 0
    assert before["filler"].need - now["filler"].need == putty.need
    # and none is named where only joints are left for it
    pen = Pen(words_in("en"), "$")
    for filler, holes_said in ((before["filler"], True), (now["filler"], False)):
        assert ("nail holes" in need(filler, pen)) is holes_said
        assert ("nail holes" in filler.detail) is holes_said
        assert "scarfs and outside corners" in need(filler, pen)


def test_glue_by_the_joint() -> None:
    glue = asked("glue: bottle 1 fl oz at 5.90")["glue"]
    assert dict(glue.facts)["joints"] == 2
    # Two cuts at 45° across 5 1/4 by 9/16 in: each √2 times as large as the section.
    film = 2 * 5.25 * 0.5625 * 2**0.5 / 128 * 2 * 128 / 231
    assert float(glue.need) == pytest.approx(film, rel=1e-6)
    square = WALLS.replace("out-corner(90 deg)", "butt").replace("out-corner", "butt")
    assert "glue" not in asked("glue: bottle 1 fl oz", walls=square.replace("return", "butt"))


def test_primer_on_backs_and_bottom_edges() -> None:
    lines = ("primer: backs, can 1 quart at 19.00", "paint: 100 sqft a gallon")
    primer = asked(*lines)["primer"]
    result = compile_job("\n".join((jobs.BASE, jobs.TWELVE_FEET, *lines, WALLS)))
    lengths = sum(one.length for one in result.pieces if not one.kind.is_glued)
    area = lengths * (Fraction(21, 4) + Fraction(9, 16))
    assert dict(primer.facts)["area"] == area
    assert primer.need == area / 144 / 100
    assert primer.cost == 19


def test_a_litre_has_two_spellings() -> None:
    lines = ("primer: backs, can 1 {}", "paint: 10 sq m a {}", "paint: can 2 {}")
    one, other = (asked(*(line.format(said) for line in lines)) for said in ("litre", "liter"))
    assert one == other
    assert one["primer"].need < 1


def test_blades_by_their_cuts() -> None:
    blade = asked("saw: blade 4 cuts at 39.00")["saw blade"]
    # Two runs and a return: six ends.
    assert (blade.need, blade.count, blade.cost) == (6, 2, 78)


def test_the_sheets_say_what_they_were_reckoned_from() -> None:
    lines = (
        "glue: bottle 8 fl oz\nprimer: backs, can 1 litre\nsaw: blade 900 cuts\nputty: tub 4 fl oz"
    )
    pages = render_sheets(compile_job(f"{jobs.BASE}\n{jobs.TWELVE_FEET}\n{lines}\n{WALLS}"))
    said = pages["order-explained"].replace("\u00a0", " ")
    for text in (
        "2 outside corners, scarfs and returns",
        "6 cuts, two a piece; a blade makes 900",
        "of backs and bottom edges",
    ):
        assert text in said
    assert "8 fl oz bottle" in pages["stock-order"].replace("\u00a0", " ")


@pytest.mark.parametrize("line", ["glue: bottle 0 fl oz", "saw: blade 0 cuts"])
def test_nothing_holds_nothing(line: str) -> None:
    text = f"{jobs.BASE}\n{jobs.TWELVE_FEET}\n{line}\n{WALLS}"
    assert [one.code for one in check_job(text).diagnostics] == ["T235"]
