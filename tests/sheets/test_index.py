"""The page to open first: what it says of the job, and that it leads to every file."""

from __future__ import annotations

import re
from pathlib import Path
from urllib.parse import unquote

import pytest
from syrupy.assertion import SnapshotAssertion

from tests.jobs import BASE, TWELVE_FOR_TEN
from tests.sheets.jobs import SMALL, compiled, house, small
from tests.sheets.test_pages import _body
from trimlang.cli import main
from trimlang.sheets.content.job_at_a_glance import at_a_glance
from trimlang.sheets.render.pages import render_index
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen

PEN = Pen(words_in("en"), "$")
ALL = ("html", "pdf", "json", "csv", "dxf")


def links(html: str) -> list[str]:
    """Where a page leads."""
    return [unquote(link) for link in re.findall(r'href="([^"]*)"', html)]


def built(folder: Path, *formats: str, text: str = SMALL) -> Path:
    job = folder / "box.trim"
    job.write_text(text, encoding="utf-8")
    chosen = [word for one in formats for word in ("--format", one)]
    assert main(["build", str(job), "--out", str(folder / "shop"), *chosen]) == 0
    return folder / "shop"


def test_the_index_of_a_small_job(snapshot: SnapshotAssertion) -> None:
    assert _body(render_index(small(), ["tickets.html", "tickets.pdf", "plan.json"])) == snapshot


@pytest.mark.parametrize(
    "formats",
    [pytest.param((), marks=pytest.mark.nightly, id="usual"), pytest.param(ALL, id="all")],
)
def test_the_index_leads_to_every_file_once(formats: tuple[str, ...], tmp_path: Path) -> None:
    if "dxf" in formats:
        pytest.importorskip("ezdxf")
    pytest.importorskip("weasyprint")
    shop = built(tmp_path, *formats)
    there = {path.name for path in shop.iterdir() if not path.name.startswith(".")}
    led = links((shop / "index.html").read_text(encoding="utf-8"))
    assert sorted(led) == sorted(there - {"index.html"})
    assert {Path(name).suffix for name in led} >= {".html", ".pdf", ".json", ".csv"}


def test_without_html_there_is_no_index(tmp_path: Path) -> None:
    assert not (built(tmp_path, "json") / "index.html").exists()


def test_a_file_that_is_no_sheet_of_ours_is_listed_under_its_own_name() -> None:
    told = at_a_glance(small(), PEN, ["my notes.html"]).sheets
    assert [(one.title, one.files) for one in told] == [("my notes", (("HTML", "my notes.html"),))]
    assert links(render_index(small(), ["my notes.html"])) == ["my notes.html"]


def test_every_piece_is_in_one_room_and_under_one_trim() -> None:
    glance = at_a_glance(house(), PEN, ["stock-order.html"])
    count = len(house().pieces)
    assert sum(room.pieces for room in glance.rooms) == count == glance.pieces
    assert sum(trim.pieces for trim in glance.trims) == count
    assert sum(trim.sticks for trim in glance.trims) == sum(
        len(plan.sticks) for plan in house().plans
    )
    assert [room.name for room in glance.rooms] == [room.name for room in house().job.rooms]


def test_rooms_say_how_far_they_are_from_closing() -> None:
    text = f"""\
{BASE}
{TWELVE_FOR_TEN}
closes within 2 in
room "Den", trim base
  N: 100 in, left=in-corner(90 deg), right=in-corner(90 deg)
  E: 90 in, left=in-corner, right=in-corner(90 deg)
  S: 100 3/8 in, left=in-corner, right=in-corner(90 deg)
  W: 90 in, left=in-corner, right=in-corner
room "Landing", trim base, open walk
  N: 40 in, left=butt, right=butt
"""
    den, landing = at_a_glance(compiled(text), PEN, []).rooms
    assert den.closing == "Closes within 3/8 in; the file allows 2 in."
    exact, _ = at_a_glance(compiled(text.replace("100 3/8 in", "100 in")), PEN, []).rooms
    assert exact.closing == "Closes; the file allows 2 in."
    assert landing.closing == "Open walk: it need not come round."


def test_small_plans_are_drawn_to_one_scale_and_inside_their_window() -> None:
    rooms = at_a_glance(house(), PEN, []).rooms
    wide = {}
    for room in rooms:
        left, top, across, down = (float(side) for side in room.picture.window.split())
        for line in room.picture.lines:
            assert left <= min(float(line.x1), float(line.x2))
            assert max(float(line.x1), float(line.x2)) <= left + across
            assert top <= min(float(line.y1), float(line.y2))
            assert max(float(line.y1), float(line.y2)) <= top + down
        wide[room.name] = across
    hall, kitchen = wide["Hall"] - 5, wide["Kitchen"] - 5  # without the white at both sides
    assert hall / kitchen == pytest.approx(247 / 114, rel=0.01)


def test_warnings_stand_there_with_what_to_do() -> None:
    text = SMALL.replace("29 1/8 in", "29 5/12 in")
    warnings = at_a_glance(compiled(text), PEN, []).warnings
    (one,) = (one for one in warnings if "5/12" in one.message)
    assert one.place == "small.trim, line 10"
    html = render_index(compiled(text), [])
    assert f"<b>{one.code}</b>" in html
    assert "7/16" in one.remedy
    assert one.remedy in html
    assert "No warning is open." not in html
    assert "No warning is open." in render_index(house(), [])


def test_a_job_under_way_says_what_is_cut() -> None:
    done = compiled(SMALL + "bought 4 base 8 ft\ncut BR-S-base\nfitted BR-S-base\n")
    glance = at_a_glance(done, PEN, [])
    assert (glance.cut, glance.fitted) == (1, 1)
    assert [room.cut for room in glance.rooms] == [1]
    assert "cut so far" in render_index(done, [])
    assert "cut so far" not in render_index(small(), [])


def test_what_is_bought_together_stands_in_one_folder(tmp_path: Path) -> None:
    for number in (1, 2):
        flat = SMALL.replace("Plum Lane 3", f"Flat {number}")
        (tmp_path / f"flat-{number}.trim").write_text(flat, encoding="utf-8")
    jobs = [str(tmp_path / f"flat-{number}.trim") for number in (1, 2)]
    out = tmp_path / "out"
    assert main(["build", *jobs, "--pool", "--format", "html", "--out", str(out)]) == 0
    for folder in ("site", "flat-1", "flat-2"):
        page = (out / folder / "index.html").read_text(encoding="utf-8")
        assert ("What the plan proves" in page) is (folder == "site")
        led = links(page)
        assert all((out / folder / link).is_file() for link in led)
        others = {"site", "flat-1", "flat-2"} - {folder}
        across = {link.split("/")[1] for link in led if link.startswith("../")}
        assert across == (others if folder == "site" else {"site"})
        own = {path.name for path in (out / folder).iterdir()} - {"index.html"}
        assert {link for link in led if "/" not in link} == own


def test_the_index_leads_nowhere_but_to_its_files() -> None:
    html = render_index(house(), ["tickets.html"])
    assert links(html) == ["tickets.html"]
    assert not re.search(r"""src\s*=|@import|url\((?!data:)""", html)
    assert "default-src 'none'" in html
