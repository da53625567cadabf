"""What lines of the log do to the plan: sticks, money, tickets, frozen lengths."""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path

import pytest

from tests.conftest import ROOT
from tests.every import every
from tests.jobs import BASE, CASE_STOCK, TWELVE_FEET, WIDE_CASE
from tests.site_log.test_days_of_work import METRIC
from trimlang.compiler import Result, compile_job
from trimlang.sheets.render.pages import render_sheets
from trimlang.site_log.progress_of_job import State
from trimlang.stock.planner import Watch
from trimlang.stock.problem import Status

JOB = """\
trim base: 9/16 in thick, 5 1/4 in tall, mdf
stock base: 8 ft at 11.60, 12 ft at 17.40
room "Porch" as PO, trim base, open walk
  N: 29 1/8 in, left=butt, right=out-corner
  E: 6 ft 4 in, left=out-corner, right=in-corner
  S: 8 ft 1/2 in, left=in-corner, right=butt
"""
LONG = (
    f"{BASE}\n"
    + """\
stock base: 12 ft at 17.40{more}
room "Hall" as HA, trim base, open walk
  N: 15 ft 6 in, left=butt, right=butt
  S: 40 in, left=butt, right=butt
"""
)
ORDER = "bought 1 base 12 ft at 17.40, 2 base 8 ft at 11.60\n"


def done(log: str, job: str = JOB) -> Result:
    result = compile_job(job + log)
    assert result.ok, result.diagnostics
    assert result.progress is not None
    return result


def codes(log: str, job: str = JOB) -> list[str]:
    return [finding.code for finding in compile_job(job + log).diagnostics]


def sticks(result: Result) -> dict[str, str]:
    return {
        place.piece: stick.id
        for plan in result.plans
        for stick in plan.sticks
        for place in stick.places
    }


def test_the_page_for_carpenters_is_so() -> None:
    page = (ROOT / "docs" / "site-log.md").read_text(encoding="utf-8")
    blocks = re.findall(r"^```trim (\w+)\n(.*?)^```", page, re.MULTILINE | re.DOTALL)
    job = next(block for kind, block in blocks if kind == "job")
    logs = [block for kind, block in blocks if kind == "log"]
    assert len(logs) == 6
    story, survey, rack = logs[:4], logs[4], logs[5]
    told = "".join(story[:3])
    for log in (*("".join(story[:count]) for count in range(1, 5)), survey, rack):
        assert not compile_job(job + log).diagnostics, log
    from trimlang.cli.site_progress import site_words

    said = "".join(f"    {line}\n" for line in site_words(done(told, job)).splitlines())
    assert said in page
    assert done("".join(story), job).progress.count(State.FITTED) == 3


def test_what_is_bought_is_in_hand_and_paid() -> None:
    before = compile_job(JOB)
    result = done("bought 1 base 12 ft, 1 base 8 ft\n")
    assert (result.spent, result.progress.to_buy) == (Fraction("29.00"), Fraction("11.60"))
    assert result.cost == before.cost
    assert sticks(result) == sticks(before)
    assert result.progress.changed == ()


def test_a_spoiled_piece_is_cut_again_and_no_other_ticket_changes() -> None:
    log = ORDER + "cut PO-S-base, PO-E-base\n"
    before, result = done(log), done(log + "spoiled PO-E-base into 40 in\n")
    assert result.progress.state("PO-E-base") is State.SPOILED
    assert result.progress.changed == ("PO-E-base",)
    assert result.progress.to_buy == 0
    where = sticks(result)
    assert where.pop("PO-E-base") == "base-3"
    assert where.items() <= sticks(before).items()
    assert ("40", 1) in [(str(one.length), one.count) for one in result.progress.in_hand]


def test_it_tells_what_to_buy_where_the_stock_does_not_do() -> None:
    log = ORDER + "cut PO-S-base, PO-E-base\nspoiled PO-S-base\n"
    result = done(log)
    (plan,) = result.plans
    assert [(line.length, line.packs) for line in plan.bought] == [(144, 1)]
    assert result.progress.to_buy == Fraction("17.40")


def test_the_spare_is_used_up_before_anything_is_bought() -> None:
    assert done(ORDER).plans[0].whole_sticks == (96,)
    used = done(ORDER + "cut PO-E-base\nspoiled PO-E-base\n")
    assert used.plans[0].whole_sticks == ()
    assert used.progress.to_buy == 0


def test_rests_of_a_spoiled_piece_are_cut_from() -> None:
    # the last of two walls still fits what is left of the first piece
    job = JOB.replace("8 ft at 11.60, 12 ft at 17.40", "12 ft at 17.40")
    log = "bought 2 base 12 ft\ncut PO-S-base, PO-E-base\nspoiled PO-S-base into 60 in\n"
    where = sticks(done(log, job))
    (plan,) = done(log, job).plans
    rest = [stick for stick in plan.sticks if stick.on_hand]
    assert all(stick.length == 60 for stick in rest)
    assert where["PO-N-base"] in {"base-1", "base-2", *(stick.id for stick in rest)}


def test_a_line_in_full_means_what_it_says_whatever_the_plan() -> None:
    result = done("cut PO-N-base 29 3/4 in from base-7 of 12 ft\n")
    assert sticks(result)["PO-N-base"] == "base-7"
    short = done("cut PO-N-base\n")
    assert sticks(short)["PO-N-base"] == sticks(compile_job(JOB))["PO-N-base"]


def test_a_cut_piece_keeps_its_length_when_the_survey_changes() -> None:
    log = "cut PO-N-base 29 3/4 in from base-1 of 12 ft\n"
    for wall, code in (("28 7/8", "T710"), ("29 3/8", "T711")):
        result = done(log, JOB.replace("29 1/8", wall))
        assert [one.code for one in result.diagnostics] == [code]
        assert next(one for one in result.pieces if one.id == "PO-N-base").length == Fraction(
            119, 4
        )
        assert "29 3/4" in render_sheets(result)["checklist"]
    mended = log + "shortened PO-N-base to 29 1/2 in\n"
    assert not done(mended, JOB.replace("29 1/8", "28 7/8")).diagnostics


def test_a_piece_cut_shorter_than_its_mitres_takes_what_they_need() -> None:
    """9/16 in of trim at 45.5° is 9/16 in along the stick at each end, to the mark."""
    job = JOB.replace("29 1/8 in, left=butt", "29 1/8 in, left=out-corner")
    (plan,) = done("cut PO-N-base 1/16 in from base-1 of 12 ft\n", job).plans
    assert plan.sticks[0].places[0].end == 2 * Fraction(9, 16)


def test_the_other_piece_of_a_spliced_wall_takes_up_the_difference() -> None:
    job = LONG.format(more="")
    plain = {one.id: one for one in compile_job(job).pieces}
    first, last = plain["HA-N-base-a"], plain["HA-N-base-b"]
    # up to a whole stick
    for less in (Fraction(2), 144 - last.length, Fraction(1, 64)):
        cut = first.length - less
        result = done(f"cut HA-N-base-a {float(cut)} in from base-1 of 12 ft\n", job)
        pieces = {one.id: one for one in result.pieces}
        assert not result.diagnostics
        assert pieces["HA-N-base-a"].length == cut
        assert pieces["HA-N-base-b"].to_mark == last.to_mark + (less if less > 1 else 0)


def test_a_joint_that_the_plan_moved_is_where_the_saw_made_it() -> None:
    """24 in and two walls of 70 in are more than a stick, so the plan joins elsewhere."""
    job = LONG.format(more="").replace("15 ft 6 in", "146 in").replace("40 in", "70 in")
    job = f"spare 0 %\n{job}  T: 70 in, left=butt, right=butt\n"
    (splice,) = compile_job(job).splices
    first, last = splice.cut
    moved = {one.id: one.length for one in compile_job(job).pieces}
    assert abs(moved["HA-N-base-a"] - first) > 24
    result = compile_job(f"{job}cut HA-N-base-a {float(first)} in from base-1 of 12 ft\n")
    assert {one.id: one.length for one in result.pieces}["HA-N-base-b"] == last


def test_pieces_of_a_plan_without_the_sticks_that_run_out_are_known() -> None:
    """One stick of 16 ft does not do for two such walls: both are joined from 12 ft."""
    job = LONG.format(more=", 16 ft at 24.10 at most 1\nspare 0 %").replace("40 in", "15 ft 6 in")
    for log in ("cut HA-N-base-a", "cut HA-S-base-b 43 in from base-3 of 12 ft"):
        result = done(f"bought 4 base 12 ft at 17.40\n{log}\n", job)
        assert [one.id for one in result.pieces if one.parts == 1] == []
        assert result.progress is not None
        assert result.progress.is_cut(log.split()[1])
        assert result.progress.to_buy == 0
    assert codes("cut HA-N-base-d\n", job) == ["T702"]


def test_sticks_that_the_yard_no_longer_has_stay_good() -> None:
    log = "bought 1 base 16 ft at 24.10\n"
    result = done(log, LONG.format(more=""))
    assert not result.diagnostics
    assert [one.id for one in result.pieces] == ["HA-N-base", "HA-S-base"]
    (plan,) = result.plans
    assert all(line.length == 144 for line in plan.bought)
    assert sticks(result)["HA-N-base"] in {s.id for s in plan.sticks if s.length == 192}


def test_the_rack_as_counted_is_all_there_is() -> None:
    result = done(ORDER + "rack base: nothing\n")
    assert result.progress.in_hand == ()
    assert result.progress.to_buy == compile_job(JOB).cost
    assert done(ORDER + "rack base: 2 of 12 ft, 1 of 8 ft\n").progress.to_buy == 0


@every(
    "log, code",
    [
        ("cut PO-S-base\ncut PO-S-base\n", "T704"),
        ("fitted PO-S-base\n", "T705"),
        ("shortened PO-S-base to 9 in\n", "T705"),
        ("spoiled PO-S-base into 13 ft\n", "T713"),
        ("cut PO-Z-base\n", "T702"),
        ("spoiled PO-Z-base\n", "T702"),
        ("bought 2 bass 12 ft\n", "T210"),
        ("rack bass: nothing\n", "T210"),
    ],
)
def test_mistakes_are_errors(log: str, code: str) -> None:
    result = compile_job(JOB + log)
    assert code in {finding.code for finding in result.diagnostics}
    assert not result.ok
    assert not result.plans


def test_sticks_are_told_in_the_job_s_unit() -> None:
    log = "cut FL-N-base 1500 from base-1 of 2400\ncut FL-E-base 1900 from base-1 of 3600\n"
    told = {one.code: one.message for one in compile_job(METRIC + log).diagnostics}
    assert told["T717"] == "“base-1” is a stick of 2.4 m, as said above"
    long = compile_job(METRIC + "cut FL-W-base-a 5000 from base-1 of 2400\n").diagnostics
    (told["T713"],) = (one.message for one in long if one.code == "T713")
    assert told["T713"].endswith("needs 5000 mm, and base-1 has only 2380 mm left")
    once = METRIC.replace("11.60, 3600 at 17.40", "11.60 at most 1, 3600 at 17.40 at most 1")
    log = "rack base: nothing\nspoiled FL-W-base-a into 100\ncut FL-W-base-b 3800\n"
    told = {one.code: one.message for one in compile_job(once + log).diagnostics}
    assert told["T713"].startswith("“FL-W-base-b” needs 3800 mm, and no stick")


def test_the_log_file_beside_the_job_is_read(tmp_path: Path) -> None:
    path = tmp_path / "porch.trim"
    path.write_text(JOB, encoding="utf-8")
    (tmp_path / "porch.site").write_text(ORDER + "cut PO-Q-base\nspare 5 %\n", encoding="utf-8")
    found = compile_job(JOB, path=path).diagnostics
    assert [(one.code, one.span.file, one.span.line) for one in found] == [
        ("T702", "porch.site", 2),
        ("T701", "porch.site", 3),
    ]
    (tmp_path / "porch.site").write_text(ORDER, encoding="utf-8")
    assert compile_job(JOB, path=path).spent == Fraction("40.60")
    # nothing outside the job's folder is read, not even by way of a link
    (tmp_path / "porch.site").unlink()
    folder = tmp_path / "job"
    folder.mkdir()
    (tmp_path / "far.site").write_text(ORDER, encoding="utf-8")
    (folder / "porch.site").symlink_to(tmp_path / "far.site")
    found = compile_job(JOB, path=folder / "porch.trim").diagnostics
    assert [one.code for one in found] == ["T602"]


def test_tickets_are_of_what_is_left_and_of_what_changed() -> None:
    log = ORDER + "cut PO-S-base, PO-E-base\nfitted PO-S-base\n"
    sheets = render_sheets(done(log))
    assert 'id="PO-N-base"' in sheets["tickets"]
    assert 'id="PO-S-base"' not in sheets["tickets"]
    assert "tickets-changed" not in sheets
    again = render_sheets(done(log + "spoiled PO-E-base\n"))
    assert 'id="PO-E-base"' in again["tickets-changed"]
    assert 'id="PO-N-base"' not in again["tickets-changed"]
    ticked = re.findall(r'data-tick="(PO-S-base:[^"]+)"[^>]* checked', again["checklist"])
    assert ticked == [f"PO-S-base:{box}" for box in ("cut", "label", "dry-fit", "fix")]


def test_a_begun_stick_is_drawn_as_its_rest() -> None:
    html = render_sheets(done("cut PO-S-base 96 1/2 in from base-1 of 12 ft\n"))["stick-layouts"]
    row = next(line for line in html.splitlines() if "PO-N-base</th>" in line)
    assert '<td class="number">2</td>' in row
    assert "stick's end" in row.replace("&#39;", "'")


DOORS = (
    JOB
    + f"""\
  opening 30 in, "bath", casing case, height 80 in
  opening 30 in, casing case, height 80 in
{WIDE_CASE}
{CASE_STOCK}
"""
)


@pytest.mark.parametrize(
    ("former", "now"),
    [("PO-D1-case-left-leg", "PO-bath-case-left-leg"), ("PO-D2-case-head", "PO-after-S-case-head")],
)
def test_pieces_that_were_counted_are_known_by_their_names(former: str, now: str) -> None:
    """Logs of the time when openings were D1, D2 go on meaning what they meant."""
    told = f"bought 4 case 16 ft\ncut {former}\nfitted {former}\n"
    result = done(told, DOORS)
    assert result.progress.state(now) is State.FITTED
    assert done(told.replace(former, now), DOORS).progress.states == result.progress.states
    assert codes("cut PO-D3-case-head\n", DOORS) == ["T702"]


def test_a_length_that_cannot_be_is_told_once() -> None:
    cut = "cut PO-N-base 29 3/4 in from base-1 of 12 ft\n"
    assert codes(f"{cut}shortened PO-N-base to 31 in\n") == ["T716"]


def test_a_spoiled_piece_is_not_said_to_be_uncut() -> None:
    cut = "cut PO-N-base 29 3/4 in from base-1 of 12 ft\n"
    log = f"{cut}spoiled PO-N-base into 20 in\nfitted PO-N-base\n"
    (one,) = (found for found in compile_job(JOB + log).diagnostics if found.code == "T705")
    assert "it was spoiled (line 8) and no line since says that it was cut again" in one.message
    again = log.replace("fitted", f"{cut}fitted")
    assert "T705" not in codes(again)


@pytest.mark.parametrize(
    "log",
    [
        "cut PO-N-base\n",
        "bought 1 base 8 ft\n",
        "bought 1 base 12 ft\n",
        "cut PO-N-base\nfitted PO-N-base\n",
        f"{ORDER}bought 1 base 12 ft\ncut PO-S-base\n",
    ],
)
def test_spare_for_one_spoiled_piece_is_bought_with_the_rest(log: str) -> None:
    """A line of the log that changes nothing once dropped the spare from what is to be bought."""
    job = f"spare covers any one piece spoiled\n{JOB}"
    planned = compile_job(job)
    under_way = done(log, job)
    assert under_way.cost >= planned.cost
    for plan in under_way.plans:
        assert plan.survives_loss
        assert plan.status is Status.PROVEN


def test_no_spare_is_bought_for_a_glued_return_alone() -> None:
    job = f"""{BASE}
{TWELVE_FEET}
room "Hall" as HA, trim base, open walk
  N: 68 in, left=butt, right=butt
  E: 68 in, left=butt, right=return
"""
    first = "cut HA-N-base 68 in from base-0 of 6 ft\n"
    for second in ("cut HA-E-base\n", "cut HA-E-base 68 in from base-1 of 12 ft\n"):
        result = done(first + second, job)
        assert result.cost == Fraction("17.40")
        assert [plan.bought for plan in result.plans] == [()]


def test_spare_for_one_spoiled_piece_is_used_up_first() -> None:
    job = f"spare covers any one piece spoiled\n{JOB}"
    bought = f"{ORDER}bought 1 base 12 ft\n"
    used = done(f"{bought}cut PO-S-base\nspoiled PO-S-base\n", job)
    assert used.progress is not None
    assert used.progress.to_buy == 0


def test_who_watches_the_planner_hears_of_each_plan_of_the_day() -> None:
    """One plan for the survey, and one more for what was bought and what was spoiled."""
    heard: list[str] = []

    def watch(trim: str) -> Watch:
        return lambda _cost, _bound: heard.append(trim)

    counts = []
    for log in ("", ORDER, f"{ORDER}cut PO-N-base\nspoiled PO-N-base\nrack base: nothing\n"):
        heard.clear()
        assert compile_job(JOB + log, watch=watch).ok
        counts.append(len(heard))
    assert 0 < counts[0] < counts[2]
    assert set(heard) == {"base"}
