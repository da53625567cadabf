"""The house overview: which rooms are joined, and that they lie back to back."""

from __future__ import annotations

import pytest

from tests.jobs import BASE, TWELVE_FOR_TEN
from tests.sheets.jobs import compiled, house, small
from trimlang.compiler import Result
from trimlang.sheets.content import overview
from trimlang.sheets.content.overview import House
from trimlang.sheets.drawing.neighbours import GAP
from trimlang.sheets.drawing.plan_scale import MARGIN, WIDE
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen

HEAD = f"""\
job "Two rooms"
{BASE}
{TWELVE_FOR_TEN}
"""


def _overview(*rooms: str) -> House:
    return overview.house(compiled(HEAD + "".join(rooms)), Pen(words_in("en"), "$"))


def _square(name: str, tag: str, *doors: str) -> str:
    """A room of 100 in by 100 in, with doors in the middles of its walls."""
    lines = [f'room "{name}" as {tag}, trim base']
    for number in range(4):
        if number < len(doors):
            lines += [
                f"  A{number}: 35 in, left=in-corner, right=butt",
                f'  opening 30 in, "{doors[number]}"',
                f"  B{number}: 35 in, left=butt, right=in-corner",
            ]
        else:
            lines.append(f"  A{number}: 100 in, left=in-corner, right=in-corner")
    return "\n".join(lines) + "\n"


def test_the_rooms_of_the_shipped_house_hang_together() -> None:
    drawn = overview.house(house(), Pen(words_in("en"), "$"))
    assert [[tag for tag, _ in group.rooms] for group in drawn.groups] == [
        ["SR", "HA", "KI", "ST", "FB", "BB"]
    ]
    assert drawn.apart == drawn.across == ()


def test_there_is_a_drawing_for_each_storey() -> None:
    drawn = _overview(
        _square("Hall", "HA", "to kitchen"),
        _square("Kitchen", "KI", "to hall"),
        _square("Landing", "LA", "to bedroom"),
        _square("Bedroom", "BE", "to landing", "window"),
        _square("Attic", "AT", "hatch"),
    )
    assert [group.rooms for group in drawn.groups] == [
        (("HA", "Hall"), ("KI", "Kitchen")),
        (("LA", "Landing"), ("BE", "Bedroom")),
    ]
    assert drawn.apart == ("Attic",)
    assert len({group.scale for group in drawn.groups}) == 1


@pytest.mark.parametrize("wall", range(4))
def test_rooms_lie_back_to_back_at_their_doors(wall: int) -> None:
    doors = [*(f"window {number}" for number in range(wall)), "Door to the DEN"]
    (group,) = _overview(_square("Hall", "HA", *doors), _square("Den", "DE", "to hall")).groups
    scale = int(group.scale.split(": ")[1].rstrip(")"))
    sides = sorted(float(side) - 2 * MARGIN for side in (group.wide, group.tall))
    assert sides == pytest.approx([100 * 25.4 / scale, (200 + GAP) * 25.4 / scale], abs=0.02)
    assert float(group.wide) <= WIDE + 2 * MARGIN
    assert {label.text for label in group.labels} == {"HA", "DE", "Hall", "Den"}


def test_a_name_counts_only_whole_and_from_both_sides() -> None:
    assert _overview(_square("Hall", "HA", "to den"), _square("Den", "DE", "door")).groups == ()
    part = _overview(_square("Hall", "HA", "garden"), _square("Den", "DE", "shallow step"))
    assert part.apart == ("Hall", "Den")


def test_the_longest_name_in_a_label_is_meant() -> None:
    drawn = _overview(
        _square("Hall", "HA", "to back bedroom"),
        _square("Bedroom", "BE", "to hall"),
        _square("Back bedroom", "BB", "to hall"),
    )
    assert [group.rooms for group in drawn.groups] == [(("HA", "Hall"), ("BB", "Back bedroom"))]
    assert drawn.apart == ("Bedroom",)


def test_what_would_lie_over_another_room_is_listed() -> None:
    # two doors in one wall, nearer to each other than the rooms behind them are wide
    hall = """room "Hall" as HA, trim base
  A: 10 in, left=in-corner, right=butt
  opening 30 in, "to den"
  B: 20 in, left=butt, right=butt
  opening 30 in, "to bath"
  C: 10 in, left=butt, right=in-corner
  D: 100 in, left=in-corner, right=in-corner
  E: 100 in, left=in-corner, right=in-corner
  F: 100 in, left=in-corner, right=in-corner
"""
    drawn = _overview(hall, _square("Den", "DE", "to hall"), _square("Bath", "BA", "to hall"))
    assert [group.rooms for group in drawn.groups] == [(("HA", "Hall"), ("DE", "Den"))]
    assert drawn.across == ("Bath",)


def floor_plan(job: Result) -> str:
    return render_sheets(job, only=["floor-plan"])["floor-plan"]


def test_no_overview_where_nothing_is_joined() -> None:
    assert "The house" not in floor_plan(small())
    html = floor_plan(house())
    assert "Not joined by a named opening" not in html
    assert html == floor_plan(house())
    den = compiled(
        HEAD
        + _square("Hall", "HA", "to den")
        + _square("Attic", "AT", "hatch")
        + _square("Den", "DE", "to hall")
    )
    assert "Not joined by a named opening: Attic." in floor_plan(den)
