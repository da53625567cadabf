"""``build --watch`` as a carpenter with an editor and a browser meets it: a real process."""

from __future__ import annotations

import re
import signal
import subprocess
import sys
from collections.abc import Callable, Iterator
from pathlib import Path
from threading import Thread
from time import monotonic, sleep
from typing import Any
from urllib.error import HTTPError
from urllib.request import Request, urlopen

import pytest

from tests.browser import CHROMIUM, Browser
from tests.conftest import EXAMPLES
from tests.jobs import walls
from trimlang.cli import main, watching
from trimlang.cli.build_options import build_options
from trimlang.cli.command_line import arguments
from trimlang.extras import WATCH
from trimlang.watch.preview_server import PreviewServer

pytest.importorskip("watchfiles")

PATIENCE = 30
"""Seconds until a test gives up; a busy machine is no failure."""


def wall(inches: int) -> str:
    return walls(f"N: {inches} in, left=butt, right=butt")


class Watching:
    """The process, what it has printed, and its folder."""

    def __init__(self, job: Path, *options: str) -> None:
        self.out = job.parent / "shop"
        command = [sys.executable, "-m", "trimlang", "build", str(job), "--watch"]
        self.process = subprocess.Popen(
            [*command, "--out", str(self.out), *options],
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            encoding="utf-8",
        )
        self.lines: list[str] = []
        self._reader = Thread(target=self._listen, daemon=True)
        self._reader.start()

    def _listen(self) -> None:
        assert self.process.stdout is not None
        self.lines.extend(line for line in self.process.stdout)

    def until(self, held: Callable[[], bool]) -> None:
        ends = monotonic() + PATIENCE
        while not held():
            assert monotonic() < ends, "".join(self.lines)
            assert self.process.poll() is None, "".join(self.lines)
            sleep(0.01)

    def until_said(self, words: str, times: int = 1) -> None:
        self.until(lambda: sum(words in line for line in self.lines) >= times)

    def until_cut(self, inches: int) -> None:
        """Wait for sheets with a piece of this length, which both plans have been through."""
        self.until(lambda: f"{inches}" in self.read("saw-sheet.html"))

    def read(self, name: str) -> str:
        # the folders change places between two looks
        path = self.out / name
        return path.read_text(encoding="utf-8") if path.exists() else ""

    def stop(self) -> int:
        self.process.send_signal(signal.SIGINT)
        code = self.process.wait(PATIENCE)
        self._reader.join(PATIENCE)
        assert self.process.stdout is not None
        self.process.stdout.close()
        return code


@pytest.fixture
def begin(tmp_path: Path) -> Iterator[Callable[..., Watching]]:
    begun: list[Watching] = []

    def begun_with(*options: str) -> Watching:
        begun.append(Watching(tmp_path / "job.trim", *options))
        return begun[-1]

    yield begun_with
    for one in begun:
        if one.process.poll() is None:
            one.process.kill()
            one.process.wait()


def test_saves_reach_the_sheets_and_mistakes_do_not(
    tmp_path: Path, begin: Callable[..., Watching]
) -> None:
    job = tmp_path / "job.trim"
    job.write_text(wall(41), encoding="utf-8")
    one = begin()
    one.until_said("full plan")
    assert "41" in one.read("saw-sheet.html")
    assert {path.suffix for path in one.out.iterdir()} == {".html", ".json", ".csv", ""}

    job.write_text(wall(43), encoding="utf-8")
    one.until_said("full plan", 2)
    one.until_cut(43)
    before = {path.name: path.read_bytes() for path in one.out.iterdir()}
    assert b"trimlang-news" not in b"".join(before.values())

    job.write_text(wall(0), encoding="utf-8")
    one.until_said("T202")
    one.until_said("stay as they are")
    assert {path.name: path.read_bytes() for path in one.out.iterdir()} == before

    # many editors write a new file and rename it over the old one
    fresh = tmp_path / "job.trim.new"
    fresh.write_text(wall(47), encoding="utf-8")
    fresh.replace(job)
    one.until_said("full plan", 3)
    one.until_cut(47)

    # the other way is to set the old file aside first
    job.rename(tmp_path / "job.trim~")
    job.write_text(wall(53), encoding="utf-8")
    one.until_said("full plan", 4)
    one.until_cut(53)

    assert one.stop() == 130
    assert one.lines[-1] == "trimlang: stopped watching\n"
    assert {path.name for path in tmp_path.iterdir()} == {"job.trim", "job.trim~", "shop"}


@pytest.mark.nightly
def test_includes_and_templates_are_watched(tmp_path: Path, begin: Callable[..., Watching]) -> None:
    templates = tmp_path / "mine"
    templates.mkdir()
    job, walls_file = tmp_path / "job.trim", tmp_path / "walls" / "north.trim"
    head, _, run = wall(41).rstrip("\n").rpartition("\n")
    job.write_text(f'{head}\ninclude "walls/north.trim"\n', encoding="utf-8")
    one = begin("--templates", str(templates), "--plan", "quick", "--format", "html")
    one.until_said("nothing is written yet")
    # neither the file nor its folder was there
    walls_file.parent.mkdir()
    walls_file.write_text(f"{run}\n", encoding="utf-8")
    one.until_cut(41)
    walls_file.write_text(f"{run}\n".replace("41", "43"), encoding="utf-8")
    one.until_cut(43)

    # the log is begun while the job is watched
    assert main(["mark", str(job), "bought 1 base 12 ft"]) == 0
    one.until_said("still to buy")

    own = templates / "checklist.html"
    own.write_text("{% for %}", encoding="utf-8")
    one.until_said("a template is wrong")
    own.write_text("<p>done by {{ job.job }}", encoding="utf-8")
    one.until(lambda: one.read("checklist.html").startswith("<p>done by"))
    assert not any("full plan" in line for line in one.lines)
    assert one.stop() == 130


@pytest.mark.skipif(CHROMIUM is None, reason="no chromium here")
def test_an_open_page_follows_the_file(
    tmp_path: Path, begin: Callable[..., Watching], browser: Browser
) -> None:
    job = tmp_path / "job.trim"
    job.write_text(wall(41), encoding="utf-8")
    one = begin("--plan", "quick")
    one.until_said("in a browser")
    address = next(line for line in one.lines if "in a browser" in line).split()[-1]
    browser.open(f"{address}saw-sheet.html")
    browser.until("41 in")
    browser.value("document.title = 'as it was opened'")

    job.write_text(wall(43), encoding="utf-8")
    assert "41 in" not in browser.until("43 in")
    browser.value("document.title = 'mark'")

    job.write_text(wall(0), encoding="utf-8")
    told = browser.until("These are the sheets from before.")
    assert "43 in" in told
    assert "T202" in told
    assert browser.value("document.title") == "mark"

    # back to what it was: the sheets are the same, and nothing is wrong any more
    job.write_text(wall(43), encoding="utf-8")
    browser.until("These are the sheets from before.", gone=True)
    assert browser.value("document.title") == "mark"

    job.write_text(wall(0), encoding="utf-8")
    browser.until("These are the sheets from before.")
    job.write_text(wall(47), encoding="utf-8")
    assert "sheets from before" not in browser.until("47 in")

    assert one.stop() == 130
    browser.until("watches no more")


def test_a_browser_sees_the_sheets_and_when_they_are_new() -> None:
    head = "<meta content=\"default-src 'none'; style-src 'unsafe-inline'\">"
    with PreviewServer() as preview:
        preview.put({"a.html": f"{head}<body>one</body>".encode(), "plan.json": b"{}"})
        assert '"a.html"' in _got(preview.address)
        page = _got(f"{preview.address}a.html")
        assert "default-src 'none'; connect-src 'self'" in page
        turn, stamp, told = _got(f"{preview.address}a.html.news").split("\n")
        assert f'"{stamp}"' in page
        assert not told
        assert re.search(r"</script></body>$", page)

        # who knows this turn is answered at the next, and one too many at once
        news = f"{preview.address}a.html.news?{turn}"
        heard: list[str] = []
        asking = [Thread(target=lambda: heard.append(_got(news))) for _ in range(4)]
        for one in asking:
            one.start()
        ends = monotonic() + PATIENCE
        while preview.held < len(asking):
            assert monotonic() < ends
            sleep(0.01)
        assert _got(news) == f"{turn}\n{stamp}\n"
        assert not heard
        preview.tell("a mistake")
        for one in asking:
            one.join(PATIENCE)
        assert heard == [f"{int(turn) + 1}\n{stamp}\na mistake"] * 4
        preview.put({"a.html": b"<body>two</body>"})
        turn, other, told = _got(f"{preview.address}a.html.news?{turn}").split("\n")
        assert (other != stamp, told) == (True, "")
        for wrong in ("plan.json", "../a.html", "b.html", "plan.json.news", "b.html.news"):
            assert _refused(Request(f"{preview.address}{wrong}"))  # noqa: S310
        assert _refused(Request(f"http://{preview.host}/a.html"))
        # a name of the network that was made to lead here
        elsewhere = {"Host": "sheets.example"}
        assert _refused(Request(f"{preview.address}a.html", headers=elsewhere))  # noqa: S310


def _got(address: str) -> str:
    with urlopen(address, timeout=PATIENCE) as answer:  # noqa: S310 - our own server
        text: str = answer.read().decode()
        return text


def _refused(request: Request) -> bool:
    with pytest.raises(HTTPError) as refusal:
        urlopen(request, timeout=PATIENCE)  # noqa: S310 - our own server
    refusal.value.close()
    return refusal.value.code == 404


@pytest.mark.parametrize(
    "words",
    [
        ["job.trim", "other.trim"],
        ["job.trim", "--pool"],
        ["-"],
        ["none.trim"],
        ["job.trim", "--language", "tlh"],
        ["job.trim", "--templates", "none"],
        ["job.trim", "--out", "photos"],
    ],
)
def test_what_cannot_be_watched_is_told_in_a_line(
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    words: list[str],
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("job.trim").write_text(wall(41), encoding="utf-8")
    Path("photos").mkdir()
    Path("photos/a.jpg").write_bytes(b"x")
    assert main(["build", "--watch", *words]) == 2
    assert capsys.readouterr().err.count("\n") == 1
    assert sorted(path.name for path in tmp_path.iterdir()) == ["job.trim", "photos"]


def test_without_the_library_a_line_says_how_to_get_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    job = tmp_path / "job.trim"
    job.write_text(wall(41), encoding="utf-8")
    monkeypatch.setitem(sys.modules, "watchfiles", None)
    monkeypatch.delitem(sys.modules, "trimlang.watch.file_changes", raising=False)
    assert main(["build", str(job), "--watch"]) == 2
    assert WATCH.remedy() in capsys.readouterr().err


def test_a_save_ends_the_search_for_the_full_plan(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    from trimlang.watch.file_changes import FileWatcher

    printed: list[str] = []
    made = watching.sheet_files

    def spy(*given: Any, **named: Any) -> dict[str, bytes]:
        printed.append("a set")
        return made(*given, **named)

    monkeypatch.setattr(watching, "sheet_files", spy)
    monkeypatch.setattr(FileWatcher, "hinted", lambda _: True)
    job, out = str(EXAMPLES / "house.trim"), str(tmp_path / "shop")
    words = ["build", job, "--watch", "--format", "json", "--out", out]
    options = build_options(arguments().parse_args(words)).only_job()
    with FileWatcher() as changes, PreviewServer() as preview:
        watcher = watching.WatchedJob(options, changes, preview)
        with pytest.raises(watching.OvertakenError):
            watcher.build()
    assert printed == ["a set"]
    said = capsys.readouterr().out
    assert said.startswith("quick plan")
    assert "browser" not in said
    assert (tmp_path / "shop" / "plan.json").exists()
