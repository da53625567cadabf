"""Elevations: what is drawn is what is cut, where it is, and every piece is named or numbered."""

from __future__ import annotations

import re
from collections import Counter
from functools import cache
from itertools import pairwise
from math import atan2, cos, sin

import pytest
from shapely import Polygon, unary_union

from tests.conftest import EXAMPLES
from tests.jobs import BASE, CASE, CROWN, SIXTEEN_FEET
from tests.sheets.jobs import compiled
from trimlang.compiler import Result, check_job
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.joinery.piece_in_place import PieceInPlace
from trimlang.joinery.wall_faces import WallFace, wall_faces
from trimlang.sheets.content.elevations import Elevation, ElevationSheet, elevations
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen

PEN = Pen(words_in("en"), "$")
DRAWN = ("attic", "crown", "doors", "ferncote", "house", "stair", "stair-hall")
"""The examples with stairs, casing, crown, boxes and windows."""
CLOSE = 0.03
"""Inches at 1 : 32: there two decimals of a millimetre on paper are 0.013 in."""


@cache
def example(name: str) -> Result:
    path = EXAMPLES / f"{name}.trim"
    return check_job(path.read_text(encoding="utf-8"), path=path)


@cache
def sheet_of(name: str) -> ElevationSheet:
    return elevations(example(name), PEN)


def walls(sheet: ElevationSheet) -> list[Elevation]:
    return [wall for row in sheet.rows for wall in row]


def polygons(wall: Elevation, scale: int) -> list[list[tuple[float, float]]]:
    """What is drawn as pieces, in inches."""
    found = []
    for layer in wall.layers:
        if layer.look == "piece":
            for part in layer.path.removesuffix("Z").split("Z"):
                numbers = [float(one) * scale / 25.4 for one in re.findall(r"-?[\d.]+", part)]
                found.append(list(zip(numbers[::2], numbers[1::2], strict=True)))
    return found


def long(points: list[tuple[float, float]]) -> float:
    """How far a drawn piece reaches along its lower edge, with which its path begins."""
    one, other = points[:2]
    turn = atan2(other[1] - one[1], other[0] - one[0])
    along = [x * cos(turn) + y * sin(turn) for x, y in points]
    return max(along) - min(along)


def cut(piece: Piece) -> float:
    """How long a piece is from its one long point to the other; crown as it looks from before."""
    if piece.wall_edge is None:
        return float(piece.length)
    ends = [
        float(end.inset) * {"face": 1, "back": 0}.get(end.long_edge, 0) if end.crown else 0.0
        for end in (piece.left, piece.right)
    ]
    return float(piece.wall_edge) + sum(ends)


def faces_of(result: Result) -> list[WallFace]:
    pieces = {one.id: one for one in result.pieces}
    rooms = [room for room in result.job.rooms if room.walk]
    return [face for room in rooms for face in wall_faces(result.job, room, pieces, lambda _: True)]


@pytest.mark.parametrize("name", DRAWN)
def test_each_piece_is_drawn_as_long_as_it_is_cut(name: str) -> None:
    result, sheet = example(name), sheet_of(name)
    scale = int(re.findall(r"1 : (\d+)", sheet.scale)[0])
    texts = " ".join(wall.alt for wall in walls(sheet))
    shown = [one for one in result.pieces if re.search(rf" {re.escape(one.id)} ", texts)]
    assert len(shown) > 3
    # What steps and notches are sawn from has no straight edge to measure by.
    sawn = {one.id for one in shown for text in one.remarks if "step off" in str(text)}
    wanted = sorted(cut(one) for one in shown if one.id not in sawn)
    drawn = sorted(long(one) for wall in walls(sheet) for one in polygons(wall, scale))
    blocks = sum(len(face.blocks) for face in faces_of(result))
    assert len(drawn) == len(shown) + blocks
    for length in wanted:
        nearest = min(drawn, key=lambda one: abs(one - length))
        assert nearest == pytest.approx(length, abs=CLOSE * scale / 32)
        drawn.remove(nearest)


@pytest.mark.parametrize("name", DRAWN)
def test_every_piece_of_a_drawn_wall_is_named_beside_it_or_numbered(name: str) -> None:
    for wall in walls(sheet_of(name)):
        told = re.findall(r"([A-Z]{2,3}-\S+) (\S.*? in)(?=,|$)", wall.alt.split(": ", 1)[1])
        named = {label.text.replace(" ", " ") for label in wall.labels if label.look == "piece"}
        named |= {text.replace(" ", " ") for _, text in wall.key}
        numbers = [label.text for label in wall.labels if label.text in dict(wall.key)]
        assert {number for number, _ in wall.key} <= set(numbers)
        frames = {one.id for one in example(name).pieces if one.kind is PieceKind.FRAME}
        for piece, length in told:
            if piece not in frames:
                assert f"{piece} {length}".replace(" ", " ") in named
        # The sides of boxes are named by their set.
        assert all("Boxes" in " ".join(wall.notes) for piece, _ in told if piece in frames)


def shape(one: PieceInPlace) -> Polygon:
    return Polygon([(float(spot.x), float(spot.y)) for spot in one.outline])


def of_kind(face: WallFace, *kinds: PieceKind) -> list[PieceInPlace]:
    return [one for one in face.pieces if one.piece.kind in kinds]


@pytest.mark.parametrize("name", DRAWN)
def test_pieces_of_one_trim_lie_on_no_other_and_leave_no_gap_at_a_scarf(name: str) -> None:
    for face in faces_of(example(name)):
        by_trim: dict[str, list[PieceInPlace]] = {}
        for one in face.runs:
            by_trim.setdefault(one.piece.trim, []).append(one)
        for pieces in by_trim.values():
            shapes = [shape(one) for one in pieces]
            for (one, first), (other, second) in pairwise(zip(pieces, shapes, strict=True)):
                shared = first.intersection(second).area / float(one.across or 1)
                scarf = one.piece.run == other.piece.run
                # Two parts share their lap; what was rounded up may touch.
                assert shared <= (1.3 if scarf else 0.13)
                if scarf:
                    assert first.distance(second) == 0


def test_legs_and_head_make_a_frame_round_the_opening() -> None:
    (face, *_) = [one for one in faces_of(example("doors")) if one.labels[0] == "N1"]
    for opening in face.openings:
        together = unary_union([shape(one) for one in opening.pieces])
        assert sum(shape(one).area for one in opening.pieces) == pytest.approx(
            together.area, abs=0.1
        )
        clear = Polygon(
            [
                (float(x), float(y))
                for x in (opening.left, opening.right)
                for y in (opening.low, opening.high or 0)
            ]
        ).convex_hull
        assert together.intersection(clear).area == 0
        # The reveal of 3/16 in is between them.
        assert together.distance(clear) == pytest.approx(3 / 16, abs=1 / 32)


def test_the_sides_of_a_box_close_to_a_frame_with_one_hole() -> None:
    seen = 0
    for face in faces_of(example("ferncote")):
        for boxes in face.boxes:
            for four in zip(*[iter(boxes.pieces)] * 4, strict=True):
                frame = unary_union([shape(one) for one in four])
                assert len(frame.interiors) == 1
                assert sum(shape(one).area for one in four) == pytest.approx(frame.area, abs=1e-6)
                seen += 1
    assert seen > 10


def test_a_rake_meets_its_level_neighbour_along_the_whole_cut() -> None:
    (face,) = [one for one in faces_of(example("stair")) if "RISE" in one.labels]
    hall, rise, *_ = [one for one in face.runs if one.piece.run in ("HALL", "RISE")]
    (low, high) = (hall.outline[1], hall.outline[2])
    for ours, theirs in ((low, rise.outline[0]), (high, rise.outline[3])):
        assert (float(ours.x), float(ours.y)) == pytest.approx(
            (float(theirs.x), float(theirs.y)), abs=1 / 16
        )


STAIR = f"""\
{BASE}
{CROWN}
{CASE}
{SIXTEEN_FEET}
stock crown: 16 ft at 31.00
stock case: 14 ft at 15
room "Hall", trim base, open walk
"""
RIGHT = """\
  A: 30 in, left=butt, right=butt
  opening 30 in, casing case, height 80 in
  B: 40 in, left=butt, right=rake
  C: 60 in, left=rake, right=plumb, rising right 7 in rise, 10 in run
"""
LEFT = """\
  C: 60 in, left=plumb, right=rake, rising left 7 in rise, 10 in run
  B: 40 in, left=rake, right=butt
  opening 30 in, casing case, height 80 in
  A: 30 in, left=butt, right=butt
"""


def test_a_mirrored_wall_is_drawn_mirrored() -> None:
    (right,), (left,) = (faces_of(compiled(STAIR + walk)) for walk in (RIGHT, LEFT))
    whole = float(right.wall.long)
    assert float(left.wall.long) == pytest.approx(whole)
    ours = unary_union([shape(one) for one in right.pieces])
    theirs = unary_union(
        [
            Polygon([(whole - float(spot.x), float(spot.y)) for spot in one.outline])
            for one in left.pieces
        ]
    )
    # Rounding takes up to a sixteenth off either end.
    assert ours.symmetric_difference(theirs).area < 1.0


def test_steps_are_drawn_as_many_as_the_run_has() -> None:
    (wall,) = walls(elevations(compiled(STAIR + RIGHT), PEN))
    (steps,) = [layer.path for layer in wall.layers if layer.look == "steps"]
    # 60 in along a pitch of 7 in 10 are 49.15 in level: four steps, each a tread and a riser
    assert len(re.findall(r"[ML]", steps)) == 1 + 2 * 4
    assert "each step 7 in up and 10 in on" in wall.notes[0].replace(" ", " ")


def test_only_walls_with_more_than_base_are_drawn() -> None:
    base = f"{BASE}\n{SIXTEEN_FEET}\nblock post: 2 in wide, 8 in tall, 1 in thick\n"
    room = 'room "Hall", trim base, open walk\n  A: 30 in, left=butt, right='
    blocked = check_job(f"{base}{room}in-corner(block post)\n  B: 30 in, right=butt\n")
    # what a plan does not show of a block is how high it is
    assert [wall.name for wall in walls(elevations(blocked, PEN))] == ["A", "B"]
    plain = f'{base}room "Hall", trim base, open walk\n  A: 30 in, left=butt, right=butt\n'
    assert "elevations" not in render_sheets(compiled(plain))
    names = Counter(wall.room for wall in walls(sheet_of("house")))
    assert set(names) == {"Sitting room", "Hall"}


def test_what_nobody_measured_is_said() -> None:
    notes = " ".join(note for wall in walls(sheet_of("ferncote")) for note in wall.notes)
    assert "Nobody measured how high these are: rail, the boxes" in notes
    assert "On the other side of the wall: PA-library-far-case-left-leg" in notes
    assert "Glued to their ends: EH-front-door-fillet-head-1-left-return" in notes


def test_a_block_in_the_wall_stands_between_the_two_trims_that_it_joins() -> None:
    sheet = sheet_of("ferncote")
    scale = int(re.findall(r"1 : (\d+)", sheet.scale)[0])
    (wall,) = [one for one in walls(sheet) if one.room == "Dressing room" and "E4" in one.name]
    shapes = [Polygon(points).bounds for points in polygons(wall, scale)]
    # 2 1/2 in wide and 8 in tall, as its own line says; what nobody measured is not drawn at it
    blocks = [
        one
        for one in shapes
        if abs(one[2] - one[0] - 2.5) < CLOSE and abs(one[3] - one[1] - 8) < CLOSE
    ]
    block, corner = sorted(blocks)
    on_floor = [one for one in shapes if one != block and abs(one[3] - block[3]) < CLOSE]
    assert any(abs(one[2] - block[0]) < CLOSE for one in on_floor)
    assert any(abs(one[0] - block[2]) < CLOSE for one in on_floor)
    # the one round the corner stands past the wall's end by its thickness, 1 3/8 in
    assert corner[0] - block[2] == pytest.approx(20 - 1.125, abs=CLOSE)
    dashed = "".join(layer.path for layer in wall.layers if layer.look == "unmeasured")
    assert dashed.count("M") == 2  # the radiator's sides


def test_no_number_stands_beyond_another_piece_than_its_own() -> None:
    # The band lies round the casing: a number on its far side would seem to be the band's.
    sheet = sheet_of("ferncote")
    scale = int(re.findall(r"1 : (\d+)", sheet.scale)[0])
    wall = next(one for one in walls(sheet) if "DR-kitchen-case-left-leg" in one.alt)
    numbers = {text.split(" ")[0]: number for number, text in wall.key}
    at = {one.text: float(one.x) * scale / 25.4 for one in wall.labels if one.look == "piece"}
    shapes = [Polygon(points).bounds for points in polygons(wall, scale)]
    legs = [(left, right) for left, low, right, high in shapes if high - low > 80]
    assert len(legs) == 4
    for side in ("left", "right"):
        number = at[numbers[f"DR-kitchen-case-{side}-leg"]]
        assert min(left for left, _ in legs) < number < max(right for _, right in legs)
