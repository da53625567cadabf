"""A wall that a door breaks may keep its name: its later parts are called by numbers."""

from __future__ import annotations

import pytest

from tests.jobs import TRIM
from trimlang.compiler import check_job


def room(lines: str) -> str:
    return f'{TRIM}room "R", trim base, ends in, open walk\n{lines}\n'


@pytest.mark.parametrize(
    ("lines", "called"),
    [
        ("N 40, door 32, N 30", ["N", "N2"]),
        ("N 40, door 32, N 30, cabinets 60, N 20, E 30", ["N", "N2", "N3", "E"]),
        ("N: 40 in\ndoor 32\nwindow 30\nn: 30 in", ["N", "N2"]),
        ("north 40, door 32, north 30", ["north", "north-2"]),
        ("N2 40, door 32, N2 30", ["N2", "N3"]),
        # the number is taken
        ("N 40, door 32, N 30, E 20, N2 10", ["N", "N3", "E", "N2"]),
    ],
)
def test_its_parts_get_the_next_number_that_is_free(lines: str, called: list[str]) -> None:
    result = check_job(room(lines))
    assert [run.label for run in result.job.rooms[0].runs] == called
    assert not [one for one in result.diagnostics if one.code == "T223"]


@pytest.mark.parametrize(
    "lines",
    [
        "N 40, N 30",
        "N 40, in, door 32, N 30",
        "N 40, door 32, left=in, N 30",
        "N: 40 in, right=in\ndoor 32\nN: 30 in",
        "N: 40 in\ndoor 32\nN: 30 in, left=in",
        "N 40, door 32, E 30, N 20",
        "1: 40 in\ndoor 32\n1: 30 in",
    ],
)
def test_walls_of_one_name_that_a_corner_parts_are_a_mistake(lines: str) -> None:
    assert "T223" in {one.code for one in check_job(room(lines)).diagnostics}
