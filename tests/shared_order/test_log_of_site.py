"""Flats that were bought together and are under way: one log, one rack."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from tests.conftest import examples
from tests.shared_order.jobs import TRIM, flat, pool, search_ends_early
from trimlang.cli import main
from trimlang.compiler import compile_job
from trimlang.diagnostics.source import Source
from trimlang.shared_order import shared_plan
from trimlang.shared_order.shared_plan import plan_together
from trimlang.stock.planner import QUICK

WALLS = st.lists(st.integers(20, 260), min_size=1, max_size=4)


def walls(lengths: list[int]) -> str:
    return "\n".join(f"  {n}: {long} in, left=butt, right=butt" for n, long in enumerate(lengths))


@settings(max_examples=examples(10))
@given(WALLS, WALLS, st.data())
def test_a_site_goes_on_as_one_job_with_the_same_rooms(
    one: list[int], other: list[int], data: st.DataObject
) -> None:
    rooms = [f"trim base, open walk\n{walls(lengths)}\n" for lengths in (one, other)]
    flats = pool(*(f'{TRIM}spare 0 %\nroom "Study", {room}' for room in rooms))
    named = [f'room "F{n} Study" as F{n}-ST, {room}' for n, room in enumerate(rooms, start=1)]
    first = plan_together(flats, QUICK)
    # where buying apart is found cheaper the one job has another plan to go on from
    assume(first.result.ok and not first.apart)
    pieces = [piece.id for piece in first.result.pieces]
    cut = data.draw(st.lists(st.sampled_from(pieces), unique=True))
    spoiled = data.draw(st.lists(st.sampled_from(cut), unique=True)) if cut else []
    log = "".join(f"cut {name}\n" for name in cut)
    log += "".join(f"spoiled {name} into 12 in\n" for name in spoiled)
    assume(log)

    site = plan_together(flats, QUICK, log=Source("mill.site", log))
    same = compile_job(f"{TRIM}spare 0 %\n{''.join(named)}{log}", effort=QUICK)
    assert (site.result.ok, site.result.cost) == (same.ok, same.cost)
    assume(same.ok)  # what was spoiled may have been the last that the yard had
    assert site.result.plans == same.plans
    now, then = site.result.progress, same.progress
    assert now is not None
    assert then is not None
    assert (now.states, now.spent, now.to_buy) == (then.states, then.spent, then.to_buy)
    # each flat knows the state of its own pieces, and of no others
    told = [one.result.progress for one in site.flats]
    states = {name: state for one in told if one is not None for name, state in one.states.items()}
    assert states == now.states


@pytest.fixture
def flats(tmp_path: Path) -> list[str]:
    for number in (1, 2):
        text = f'{TRIM}room "Study", trim base, open walk\n  N: 70 in, left=butt, right=butt\n'
        (tmp_path / f"flat-{number}.trim").write_text(text, encoding="utf-8")
    return [str(tmp_path / f"flat-{number}.trim") for number in (1, 2)]


def test_the_log_of_a_site_is_kept_and_built_from(
    flats: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    log, out = tmp_path / "mill.site", tmp_path / "sheets"
    mark = ["mark", flats[0], "--with", flats[1], "--log", str(log)]
    assert main([*mark, "bought 2 base 12 ft", "cut F2-ST-N-base"]) == 0
    kept = "bought 2 base 12 ft at 17.40\ncut F2-ST-N-base 70 in from base-1 of 12 ft\n"
    assert log.read_text(encoding="utf-8") == kept
    assert "2 pieces: 1 cut" in capsys.readouterr().out
    # a line with a mistake never gets in
    assert main([*mark, "cut F3-ST-N-base"]) == 1
    assert "the job has no piece “F3-ST-N-base”" in capsys.readouterr().err
    assert log.read_text(encoding="utf-8") == kept
    assert main([*mark, "spoiled F2-ST-N-base into 40 in"]) == 0
    build = ["build", *flats, "--pool", "--log", str(log), "--out", str(out), "--format", "html"]
    assert main(build) == 0
    assert "the stock in hand covers what is left" in capsys.readouterr().out
    changed = (out / "flat-2" / "tickets-changed.html").read_text(encoding="utf-8")
    assert "cut again: the first was spoiled" in changed
    assert not (out / "flat-1" / "tickets-changed.html").exists()


def test_what_a_log_of_a_site_cannot_be(
    flats: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    log, out = tmp_path / "mill.site", tmp_path / "sheets"
    log.write_text("cut N\nroom “X”\n", encoding="utf-8")
    build = ["build", *flats, "--out", str(out), "--log", str(log)]
    assert main([*build, "--pool"]) == 1
    told = capsys.readouterr().err
    assert "mill.site:1:" in told
    assert "mill.site:2:" in told
    assert not out.exists()
    assert main(build) == 2
    assert "add --pool" in capsys.readouterr().err
    assert main(["mark", flats[0], "--log", str(log), "cut N"]) == 2
    assert "named by --with" in capsys.readouterr().err
    # a flat's own log has no order with the others'
    (tmp_path / "flat-1.site").write_text("bought 1 base 12 ft\n", encoding="utf-8")
    log.write_text("", encoding="utf-8")
    assert main([*build, "--pool"]) == 1
    assert "T720" in capsys.readouterr().err


def test_what_is_planned_apart_goes_on_as_it_was_planned(monkeypatch: pytest.MonkeyPatch) -> None:
    search_ends_early(monkeypatch)
    walls = "  N: 300 in, left=butt, right=butt\n  bare 3 in\n  E: 19 ft, left=butt, right=butt"
    made = pool(*(flat(walls, trim=TRIM.replace(" at most 3", "")) for _ in range(2)))
    first = plan_together(made)
    assert first.apart == ("base",)
    (stick, *_), pieces = first.result.plans[0].sticks, first.result.pieces
    log = "".join(f"cut {place.piece}\n" for place in stick.places)
    site = plan_together(made, log=Source("mill.site", log))
    assert site.result.ok, site.result.diagnostics
    assert {one.id: one.length for one in site.result.pieces} == {
        one.id: one.length for one in pieces
    }
    assert site.result.cost == first.result.cost


def test_a_log_that_errs_is_told_before_anything_is_planned(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    def too_early(*_: object) -> None:
        raise AssertionError("the pool was planned")

    monkeypatch.setattr(shared_plan, "first_plan", too_early)
    made = pool(*(flat("  N: 70 in, left=butt, right=butt") for _ in range(2)))
    site = plan_together(made, log=Source("mill.site", "cut F9-ST-N-base\n"))
    assert [one.code for one in site.result.diagnostics] == ["T702"]
    assert site.result.plans == ()
