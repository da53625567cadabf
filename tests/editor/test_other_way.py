"""A room's walls listed in the other direction: the mirror image, and twice the same file."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest

from tests.conftest import ROOT
from tests.diagnostics.test_mending import after_edits
from tests.every import every
from tests.jobs import TRIM
from trimlang.compiler import Result
from trimlang.editor.open_job import JobReading, read_job
from trimlang.editor.other_way import in_the_other_direction
from trimlang.incremental.cached_steps import CachedSteps
from trimlang.joinery.piece import PieceKind
from trimlang.joint_row import Fit

SHIPPED = ROOT / "examples"


def _read(path: Path, text: str, cached: CachedSteps) -> JobReading:
    return read_job(path, path.name, {path: text}, cached)


def _pieces(result: Result, room: str, *, mirrored: bool) -> Counter[tuple[object, ...]]:
    """What the saw is told of a room's walls, each piece's ends changed over in the image.

    Of a wall in several pieces the scarfs lie where the planner lays them from its left end.
    """
    return Counter(
        (one.trim, one.kind, one.to_mark, one.length, *ends[:: -1 if mirrored else 1])
        for one in result.pieces
        if one.room == room and one.parts == 1 and one.kind is not PieceKind.LOOSE
        for ends in [
            [(cut.joint, cut.fit, cut.exact, cut.inset, cut.gap) for cut in (one.left, one.right)]
        ]
    )


def _turned(path: Path) -> int:
    text, cached = path.read_text(encoding="utf-8"), CachedSteps()
    before = _read(path, text, cached)
    turned = 0
    for named in before.names.rooms:
        room, line = named.heading.name.text, named.heading.span.line
        edits = in_the_other_direction(before, path.name, line)
        if not edits:
            continue
        turned += 1
        other = after_edits(text, edits)
        after = _read(path, other, cached)
        assert after_edits(other, in_the_other_direction(after, path.name, line)) == text
        told = {one.code for one in after.result.diagnostics} - {"T315"}
        assert told <= {one.code for one in before.result.diagnostics}, room
        # Of two sides that trimlang may cope alike it takes the one that the walk begins with.
        if not any(
            cut.fit is Fit.COPED for one in before.result.pieces for cut in (one.left, one.right)
        ):
            mine, its = (
                _pieces(one.result, room, mirrored=one is after) for one in (before, after)
            )
            assert mine == its, room
    return turned


@every("name", ["bay", "doors", "metric", "stair-hall", "one-room", "shop-stock", "site-log"])
def test_twice_is_the_same_file_and_once_the_image_of_its_pieces(name: str) -> None:
    assert _turned(SHIPPED / f"{name}.trim")


@pytest.mark.nightly
@every("path", sorted(SHIPPED.glob("*.trim")))
def test_every_shipped_room_is_turned(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert _turned(path) or "first stud" in text or 'room "' not in text


@every(
    "walls, other",
    [
        ("N 9 ft, E 8 ft, S 9 ft, W 8 ft", "W 8 ft, S 9 ft, E 8 ft, N 9 ft"),
        ("N 6 ft, out, E 4 ft, S 2 ft, in, bare 30", "bare 30, in, S 2 ft, E 4 ft, out, N 6 ft"),
        ("N 9 ft\ncabinets 3 ft, left=butt\nE 8 ft", "N 9 ft\nE 8 ft\ncabinets 3 ft, right=butt"),
        ("N 9 ft\nE 8 ft  # wet\nS 9 ft", "N 9 ft\nS 9 ft\nE 8 ft  # wet"),
        ("N 9 ft\nE 8 ft\n# dry\ndiagonal N-E 12 ft", "N 9 ft\nE 8 ft\n# dry\ndiagonal E-N 12 ft"),
        (
            "N 9 ft\nwindow 3 ft, sill 2 ft\nN2 9 ft\nboxes N to N2: 2, 9 in tall, margin 3 in",
            "N2 9 ft\nwindow 3 ft, sill 2 ft\nN 9 ft\nboxes N2 to N: 2, 9 in tall, margin 3 in",
        ),
        (
            "N 9 ft, rising right 30 deg, left=rake\nE 8 ft",
            "N 9 ft, rising left 30 deg, right=rake\nE 8 ft",
        ),
        ('N 9 ft, out, note "left"\nE: 8 ft', 'N 9 ft, note "left"\nE: 8 ft, right=out'),
    ],
)
def test_each_end_and_corner_stays_where_it_was(walls: str, other: str) -> None:
    text = f'{TRIM}room "A", trim base, ends in\n{walls}\n'
    heading = len(TRIM.splitlines()) + 1
    reading = _read(Path("a.trim"), text, CachedSteps())
    edits = in_the_other_direction(reading, "a.trim", heading)
    assert after_edits(text, edits).splitlines()[heading:] == other.splitlines()
