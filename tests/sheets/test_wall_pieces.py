"""The floor plan names the pieces of each wall, also where they began on the wall before."""

from tests import jobs
from tests.conftest import EXAMPLES
from trimlang.compiler import check_job
from trimlang.sheets.content.floor_plan import floor_plan
from trimlang.sheets.content.wall_pieces import wall_pieces
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen


def test_a_wall_whose_trim_comes_past_a_beam_is_part_of_the_piece_before():
    text = jobs.walls(
        "  A: 60 in, left=butt, right=butt\n  beam 6 in\n  B: 50 in, left=butt, right=in-corner\n"
        "  C: 50 in, left=in-corner, right=butt"
    )
    result = check_job(text)
    along = wall_pieces(result.job, result.pieces)["Study"]
    pen = Pen(words_in("en"), "$")
    told = {run: along.along(run, pen) for run in "ABC"}
    assert told == {"A": "ST-A-base", "B": "part of ST-A-base", "C": "ST-C-base"}


def test_a_room_that_is_alone_leaves_room_for_its_list():
    pen = Pen(words_in("en"), "$")

    def tall(name: str) -> float:
        path = EXAMPLES / f"{name}.trim"
        (room,) = floor_plan(check_job(path.read_text(encoding="utf-8"), path=path), pen)
        return float(room.tall)

    # six trims on each of eleven walls, and one trim on each of four
    assert tall("cornice") < 105 < tall("one-room")
