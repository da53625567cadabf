"""The shipped examples compile clean, and the house has what a house has."""

from pathlib import Path

import pytest

from tests.conftest import EXAMPLES
from trimlang.compiler import Result, compile_job
from trimlang.joinery.piece import Kind
from trimlang.survey.job import Joint

INCLUDED = {"prices.trim"}
JOBS = sorted(path for path in EXAMPLES.glob("*.trim") if path.name not in INCLUDED)


def compiled(path: Path) -> Result:
    return compile_job(path.read_text(encoding="utf-8"), path=path)


@pytest.mark.parametrize("path", JOBS, ids=lambda path: path.stem)
def test_it_compiles_without_a_word(path: Path) -> None:
    result = compiled(path)
    assert result.diagnostics == ()
    placed = [
        place.piece for plan in result.plans for stick in plan.sticks for place in stick.places
    ]
    assert sorted(placed) == sorted(piece.id for piece in result.pieces)


def test_the_house() -> None:
    result = compiled(EXAMPLES / "house.trim")
    rooms = result.job.rooms
    runs = [run for room in rooms for run in room.runs]
    joints = {end.joint for run in runs for end in (run.left, run.right)}
    assert len(rooms) >= 6
    assert len(runs) >= 40
    assert joints >= {Joint.IN_CORNER, Joint.OUT_CORNER, Joint.BUTT, Joint.RETURN}
    assert {trim.name for trim in result.job.trims} >= {"base", "shoe"}
    longest = max(offer.length for offer in result.job.trim("base").offers)
    assert any(run.length > longest for run in runs)
    assert any(piece.parts > 1 for piece in result.pieces)
    assert any(piece.kind is Kind.RETURN for piece in result.pieces)
