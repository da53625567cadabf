"""What the README shows is so: its job, its pictures, where its links lead."""

from __future__ import annotations

import re
import runpy
from functools import cache
from typing import Any

import pytest

from tests.conftest import ROOT
from tests.every import every
from tests.sheets.jobs import house
from trimlang.compiler import Result, compile_job
from trimlang.joinery.piece import PieceKind

README = (ROOT / "README.md").read_text(encoding="utf-8")


@cache
def drawing() -> dict[str, Any]:
    """What docs/make_pictures.py holds."""
    return runpy.run_path(str(ROOT / "docs" / "make_pictures.py"))


@cache
def job() -> Result:
    return compile_job(drawing()["readme_job"]())


def test_the_job_is_ten_lines_and_clean() -> None:
    lines = [line for line in drawing()["readme_job"]().splitlines() if line.strip()]
    assert len(lines) == 10
    assert job().ok
    assert not job().diagnostics


def test_the_job_has_a_cased_door_and_a_return() -> None:
    kinds = [piece.kind for piece in job().pieces]
    assert [kinds.count(kind) for kind in (PieceKind.LEG, PieceKind.HEAD, PieceKind.RETURN)] == [
        2,
        1,
        1,
    ]


def test_every_picture_shows_the_sheet_of_today() -> None:
    lines = drawing()["MADE_FROM"].read_text(encoding="utf-8").splitlines()
    made = {one.name: one.made_from for one in drawing()["pictures"](house())}
    assert dict(line.split() for line in lines) == made, "run python docs/make_pictures.py"
    assert {f"{name}.png" for name in made} == {
        path.name for path in drawing()["FOLDER"].glob("*.png")
    }


@every("link", sorted(set(re.findall(r"\]\(([^)#]+)\)", README))))
def test_a_link_leads_somewhere(link: str) -> None:
    assert (ROOT / link).exists()


@pytest.mark.parametrize("command", re.findall(r"^    sh (\S+)$", README, re.MULTILINE))
def test_a_command_is_there(command: str) -> None:
    assert (ROOT / command).is_file()
