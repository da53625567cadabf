"""The floor plan as DXF: read back by a DXF library, in real-world size."""

from __future__ import annotations

import builtins
from importlib.util import find_spec
from io import StringIO
from math import dist
from pathlib import Path
from typing import Any

import pytest

from tests.conftest import EXAMPLES
from tests.sheets.jobs import SMALL, compiled, house, odd, small
from trimlang.compiler import Result, check_job
from trimlang.sheets.export.dxf import LAYERS, DrawingMissingError, floor_plan_dxf
from trimlang.survey.job import Gap, Run
from trimlang.survey.outline import outline

pytestmark = pytest.mark.skipif(find_spec("ezdxf") is None, reason="no ezdxf here")


def read(result: Result) -> Any:
    # a large library, of no use to the process that runs the other tests
    import ezdxf

    document = ezdxf.read(StringIO(floor_plan_dxf(result).decode("utf-8")))
    auditor = document.audit()
    assert not auditor.errors
    assert not auditor.fixes
    return document


def metric() -> Result:
    path = EXAMPLES / "metric.trim"
    return check_job(path.read_text(encoding="utf-8"), path=path)


@pytest.mark.parametrize(
    ("make", "units", "size"),
    [(small, 1, 1.0), (odd, 1, 1.0), (house, 1, 1.0), (metric, 4, 25.4)],
)
def test_every_stretch_is_drawn_as_long_as_it_is(make: Any, units: int, size: float) -> None:
    result = make()
    document = read(result)
    assert document.header["$INSUNITS"] == units
    walks = [
        (room.walk[leg.index], dist((leg.start.x, leg.start.y), (leg.end.x, leg.end.y)))
        for room in result.job.rooms
        for leg in outline(room, result.job.trims).legs
    ]
    space = document.modelspace()
    for layer, kind in (("WALLS", "run"), ("OPENINGS", "opening"), ("BARE-WALLS", "bare")):
        lines = [
            line.dxf.start.distance(line.dxf.end) / size
            for line in space.query(f'LINE[layer=="{layer}"]')
        ]
        long = [
            float(far)
            for stretch, far in walks
            if (stretch.kind if isinstance(stretch, Gap) else "run") == kind
        ]
        for far in long:
            # each stretch, and for openings the short strokes at their sides besides
            near = min(lines, key=lambda one: abs(one - far))
            assert near == pytest.approx(far, abs=1e-4)
            lines.remove(near)
        assert len(lines) == (0 if kind == "run" else 2 * len(long))


def test_runs_and_pieces_and_rooms_are_named_on_their_layers() -> None:
    result = house()
    document = read(result)
    space = document.modelspace()
    assert {layer.dxf.name for layer in document.layers} >= set(LAYERS)
    assert {entity.dxf.layer for entity in space} <= set(LAYERS)
    texts = {
        layer: [text.dxf.text for text in space.query(f'TEXT[layer=="{layer}"]')]
        for layer in LAYERS
    }
    runs = [(room, run) for room in result.job.rooms for run in room.walk if isinstance(run, Run)]
    assert sorted(text.split("  ")[0] for text in texts["WALL-IDS"]) == sorted(
        f"{room.tag}-{run.label}" for room, run in runs
    )
    pieces = [piece.id for piece in result.pieces if piece.kind == "run"]
    assert sorted(texts["PIECE-IDS"]) == sorted(pieces)
    assert {room.name for room in result.job.rooms} <= set(texts["ROOM-NAMES"])
    assert "front door (entrance)" in texts["OPENING-NAMES"]
    assert len(space.query('LINE[layer=="SPLICES"]')) == 1


def test_rooms_lie_beside_each_other_and_not_over() -> None:
    space = read(house()).modelspace()
    names = [text for text in space.query('TEXT[layer=="ROOM-NAMES"]') if len(text.dxf.text) == 2]
    places = [(text.dxf.align_point.x, text.dxf.align_point.y) for text in names]
    assert min(dist(a, b) for n, a in enumerate(places) for b in places[:n]) > 60


def test_signs_that_steer_a_drawing_program_are_only_text() -> None:
    result = compiled(SMALL.replace('"door"', '"100 %%d ^J door"'))
    document = read(result)
    (text,) = document.modelspace().query('TEXT[layer=="OPENING-NAMES"]')
    assert text.plain_text() == "100 %%d ^J door (entrance)"


def test_a_drawing_begins_as_every_dxf_does() -> None:
    assert floor_plan_dxf(small()).startswith(b"  0\nSECTION")


def test_without_the_library_it_is_said(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    real = builtins.__import__

    def fail(name: str, *rest: Any, **more: Any) -> Any:
        if name.startswith("ezdxf"):
            raise ImportError(name)
        return real(name, *rest, **more)

    monkeypatch.setattr(builtins, "__import__", fail)
    with pytest.raises(DrawingMissingError, match="DXF needs ezdxf: "):
        floor_plan_dxf(small())
    from trimlang.cli import main

    job = tmp_path / "job.trim"
    job.write_text(SMALL, encoding="utf-8")
    assert main(["build", str(job), "--format", "dxf"]) == 2
    assert "DXF needs ezdxf: " in capsys.readouterr().err
    assert not (tmp_path / "job-sheets").exists()
