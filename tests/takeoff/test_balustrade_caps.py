"""A balustrade's cap has no wall behind it: nothing is nailed or caulked there."""

from tests import jobs
from trimlang.compiler import Result, compile_job
from trimlang.joinery.fixings import fixings
from trimlang.sheets.content.room_list import room_lists
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen

CAP = "trim cap: 2 1/4 in thick, 1 1/2 in tall\nstock cap: 12 ft at 44.00\nsaw: reaches 55 deg\n"
STAIR = """\
room "Balustrade", trim cap, open walk
  newel 3 1/2 in
  A: 10 ft 7 in, rising right 7 3/4 in rise, 10 in run
  newel 3 1/2 in
  B: 42 in, right=return
"""
DEN = 'room "Den", trim base, open walk\n  newel 4 in\n  N: 40 in, left=butt, right=butt\n'


def needs(result: Result) -> dict[str, object]:
    return {one.what: one.need for one in result.supplies if one.what in ("nails", "caulk")}


def test_nothing_is_nailed_or_caulked_to_posts():
    with_cap = compile_job(jobs.TRIM + CAP + DEN + STAIR)
    assert len(needs(with_cap)) == 2
    assert needs(with_cap) == needs(compile_job(jobs.TRIM + DEN))
    assert [one.trim for one in fixings(with_cap.job)] == ["base"]
    assert "T408" not in {one.code for one in with_cap.diagnostics}
    _, stair = room_lists(with_cap, Pen(words_in("en"), "$"))
    assert [line.nails for line in stair.pieces] == ["–", "–", "glue"]


def test_base_beside_a_newel_is_nailed_as_ever():
    (den,) = room_lists(compile_job(jobs.TRIM + DEN), Pen(words_in("en"), "$"))
    assert [line.nails for line in den.pieces] == ["8"]
