"""The checklist's rooms: each piece once, and what is to be done to fit it."""

from __future__ import annotations

from tests.jobs import BASE
from tests.sheets.jobs import compiled, example, house
from trimlang.sheets.content.checklist import checklist
from trimlang.sheets.content.floor_plan import floor_plan
from trimlang.sheets.content.room_list import room_lists
from trimlang.sheets.wording.catalogue import NO_BREAK, words_in
from trimlang.sheets.wording.quantities import Pen

PEN = Pen(words_in("en"), "$")

FLOOR = f"""\
{BASE}
stock base: 8 ft at 9.00
room "Den", trim base, open walk
  N: 12 ft, left=in-corner(88 deg), right=out-corner, splice, floor gap 1/4 in
  E: 40 3/64 in, left=out-corner, right=return
  S: 29 7/64 in, left=in-corner, right=in-corner
"""


def test_every_piece_is_in_one_room() -> None:
    rooms = room_lists(house(), PEN)
    assert [room.name for room in rooms] == [room.name for room in house().job.rooms]
    listed = [piece.id for room in rooms for piece in room.pieces]
    assert sorted(listed) == sorted(piece.id for piece in house().pieces)


def test_what_is_to_be_scribed_shimmed_and_glued() -> None:
    job = compiled(FLOOR)
    (den,) = room_lists(job, PEN)
    tasks = {task.what: task.pieces for task in den.tasks}
    assert tasks["scribe to the floor, at most"] == ("DE-N-base-a 1/4 in", "DE-N-base-b 1/4 in")
    assert tasks["glue scarfs"] == ("DE-N-base-a + DE-N-base-b",)
    assert tasks["glue returns"] == ("DE-E-base-right-return + DE-E-base",)
    # cut 3/64 in short, the corners are packed out by the mark nearest to that
    assert tasks["shim at the bottom where the corner gaps"] == ("DE-S-base 1/16 in",)


def test_a_room_without_such_work_has_none() -> None:
    *_, back = room_lists(house(), PEN)
    assert back.tasks == ()


def test_loose_pieces_are_in_their_rooms_list() -> None:
    cleats = '  piece "shelf cleat", 2 of 22 1/2 in, trim base, square\n'
    (den,) = room_lists(compiled(FLOOR + cleats), PEN)
    assert [piece.id for piece in den.pieces][-2:] == [
        "DE-shelf-cleat-base-1",
        "DE-shelf-cleat-base-2",
    ]


def test_trim_that_gets_no_coat_is_not_painted() -> None:
    for coats, painted in (("2", True), ("0", False)):
        before = checklist(compiled(f"paint: {coats} coats\n{FLOOR}"), PEN).before
        assert any("coats in all" in step for stage in before for step in stage.steps) == painted


def test_a_wall_that_climbs_is_measured_again_along_its_slope() -> None:
    stair = example("stair")
    hall, _ = room_lists(stair, PEN)
    said = [f"{label} {length}".replace(NO_BREAK, " ") for label, length in hall.walls]
    assert said[:2] == ["HALL 62 1/2 in", "RISE 157 1/4 in along the slope"]
    hall_plan, _ = floor_plan(stair, PEN)
    noted = [row.label for row in hall_plan.rows if "length along the slope" in row.note]
    assert noted == ["RISE"]


def test_a_piece_too_short_for_two_nails_takes_one_in_its_middle() -> None:
    """Less than 2 in long (common practice, no source)."""
    short = '  piece "filler", 1 of 1 3/4 in, trim base, square\n'
    two = '  piece "block", 1 of 2 in, trim base, square\n'
    (den,) = room_lists(compiled(FLOOR + short + two), PEN)
    # Two rows of nails, for the base is taller than 2 in.
    assert [piece.nails for piece in den.pieces[-2:]] == ["2", "4"]
