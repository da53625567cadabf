"""The passes together."""

from __future__ import annotations

import pytest

from tests.conftest import EXAMPLES, LAWS
from tests.jobs import BASE, walls
from trimlang.compiler import check_job, compile_job, plan_checked
from trimlang.incremental.cache import Cache
from trimlang.planning import first_plan
from trimlang.sheets.content.floor_plan import RoomPlan, floor_plan
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen
from trimlang.stock.planner import QUICK

LIMITED = (
    f"{BASE}\n"
    "stock base: 12 ft at 17.40, 16 ft at 24.10 at most 1\n"
    'room "Study", trim base, open walk\n'
)
TWO_LONG_WALLS = (
    "  N: 15 ft, left=butt, right=butt\n  bare 2 ft\n  E: 15 ft, left=butt, right=butt\n"
)


def test_walls_are_spliced_where_the_long_sticks_run_out() -> None:
    result = compile_job(LIMITED + TWO_LONG_WALLS)
    assert result.ok
    assert all(piece.length <= 144 for piece in result.pieces)
    placed = [
        place.piece for plan in result.plans for stick in plan.sticks for place in stick.places
    ]
    assert sorted(placed) == sorted(piece.id for piece in result.pieces)


def test_one_long_stick_covers_one_long_wall() -> None:
    result = compile_job(LIMITED + "  N: 15 ft, left=butt, right=butt\n")
    assert [piece.id for piece in result.pieces] == ["ST-N-base"]


def test_a_supply_that_runs_out_is_said() -> None:
    only = LIMITED.replace("12 ft at 17.40, ", "")
    result = compile_job(only + TWO_LONG_WALLS)
    assert [finding.code for finding in result.diagnostics] == ["T501"]
    assert not result.plans


def test_a_job_without_includes_needs_no_file() -> None:
    assert compile_job(walls("N: 40 in, left=butt, right=butt")).ok


EDITS = (
    ("radiator", "heater"),
    ("spare 8 %", "spare 9 %"),
    ("8 ft 9 in, left", "8 ft 10 in, left"),
    ('"door to hall", entrance', '"door to hall"'),
    ("# A small house", "# moved\n# A small house"),
    (", splice ", ", no splice "),
)


ANEW = ("radiator", "spare 8 %")
"""After these all is planned anew too: one changes no piece, one every plan."""


def test_what_is_kept_is_what_would_be_made(monkeypatch: pytest.MonkeyPatch) -> None:
    path = EXAMPLES / "house.trim"
    text = path.read_text(encoding="utf-8")
    made: list[str] = []
    plan_trim = first_plan.plan_trim
    monkeypatch.setattr(
        first_plan, "plan_trim", lambda *asked: (made.append(asked[1].name), plan_trim(*asked))[1]
    )
    cache: first_plan.PlanCache = Cache()
    rooms: Cache[RoomPlan] = Cache()
    pen = Pen(words_in("en"), "$")
    first = check_job(text, path=path)
    plan_checked(first, effort=QUICK, cache=cache)
    asked: dict[str, list[str]] = {}
    for old, new in EDITS if LAWS == "night" else EDITS[:5]:
        assert old in text
        checked = check_job(text.replace(old, new, 1), path=path)
        cache.next_turn()
        made.clear()
        now = plan_checked(checked, effort=QUICK, cache=cache)
        asked[old] = made.copy()
        rooms.next_turn()
        assert floor_plan(now, pen, rooms) == floor_plan(now, pen)
        if old in ANEW or LAWS == "night":
            assert now == plan_checked(checked, effort=QUICK)
        # back to the first
        cache.next_turn()
        plan_checked(first, effort=QUICK, cache=cache)
    assert asked["radiator"] == asked["# A small house"] == []
    assert asked["spare 8 %"] == ["base", "shoe", "crown", "case"]
    assert asked["8 ft 9 in, left"] == ["base", "shoe"]
