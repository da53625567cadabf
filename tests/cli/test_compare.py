"""``trimlang compare`` as its user meets it, with files and with a real git repository."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from html.parser import HTMLParser
from pathlib import Path

import pytest
from syrupy.assertion import SnapshotAssertion

from tests.conftest import ROOT
from tests.jobs import CASE_STOCK, TWELVE_FEET, WIDE_CASE
from trimlang.cli import main

PRICES = f"""\
trim base: 9/16 in thick, 5 1/4 in tall, mdf
{WIDE_CASE}
{TWELVE_FEET}
{CASE_STOCK}
"""
JOB = """\
job "Kiln Lane 3"
currency "$"
include "lists/prices.trim"
room "Study", trim base, open walk
  N: 40 in, left=butt, right=out-corner
  E: 50 in, left=out-corner, right=butt
  opening 30 in, "bath", casing case, height 80 in
  S: 60 in, left=butt, right=butt
room "Den", trim base, open walk
  1: 90 in, left=butt, right=butt
"""


@pytest.fixture
def job(tmp_path: Path) -> Path:
    (tmp_path / "lists").mkdir()
    (tmp_path / "lists" / "prices.trim").write_text(PRICES, encoding="utf-8")
    path = tmp_path / "job.trim"
    path.write_text(JOB, encoding="utf-8")
    return path


def git(folder: Path, *words: str) -> str:
    done = subprocess.run(
        ["git", "-c", "user.name=x", "-c", "user.email=x@example.com", *words],
        cwd=folder,
        env={**os.environ, "PYTHONPATH": str(ROOT), "GIT_CONFIG_GLOBAL": os.devnull},
        capture_output=True,
        check=True,
        text=True,
    )
    return done.stdout


@pytest.fixture
def repository(job: Path) -> Path:
    git(job.parent, "init", "--quiet")
    git(job.parent, "add", ".")
    git(job.parent, "commit", "--quiet", "-m", "as surveyed")
    return job


def changed(job: Path, *swaps: tuple[str, str], name: str = "new.trim") -> Path:
    text = job.read_text(encoding="utf-8")
    for old, new in swaps:
        assert old in text
        text = text.replace(old, new)
    path = job.with_name(name)
    path.write_text(text, encoding="utf-8")
    return path


SWAPS = (
    ('room "Den"', 'room "Snug" as SG'),
    ("E: 50 in", "E: 50 1/4 in"),
    ("N: 40 in, left=butt, right=out-corner", "N: 40 in, left=butt, right=out-corner(92 deg)"),
    ('  opening 30 in, "bath", casing case, height 80 in\n', '  bare 30 in\n'),
    ("S: 60 in", "S2: 60 in"),
    ("  1: 90 in, left=butt, right=butt\n", "  1: 90 in, left=butt, right=butt\n  bare 2 ft\n"
     "  2: 12 ft 6 in, left=butt, right=butt\n"),
)  # fmt: skip


def test_all_that_can_change(
    job: Path, capsys: pytest.CaptureFixture[str], snapshot: SnapshotAssertion
) -> None:
    new = changed(job, *SWAPS)
    cut = ["--cut", "st-n-base, ST-S-base", "--cut", "ST-bath-case-head,DE-1-base"]
    assert main(["compare", str(job), str(new), *cut]) == 0
    out, err = capsys.readouterr()
    assert not err
    assert out.replace(str(job.parent) + os.sep, "") == snapshot


LOG = """\
bought 2 base 12 ft, 1 case 16 ft
cut ST-S-base 60 in from base-1 of 12 ft
cut ST-E-base, DE-1-base
"""


def test_the_log_tells_which_pieces_are_cut(
    repository: Path, capsys: pytest.CaptureFixture[str], snapshot: SnapshotAssertion
) -> None:
    """From the revision to the files as they are: each with its own log."""
    home, log = repository.parent, repository.with_suffix(".site")
    log.write_text(LOG, encoding="utf-8")
    git(home, "add", ".")
    git(home, "commit", "--quiet", "-m", "the first cuts")
    changed(repository, ("E: 50 in", "E: 50 1/4 in"), ("S: 60 in", "S: 59 in"), name="job.trim")
    log.write_text(
        f"{LOG}spoiled DE-1-base into 40 in\nshortened ST-S-base to 59 in\ncut ST-N-base\n",
        encoding="utf-8",
    )
    assert main(["compare", str(repository), "--git", "HEAD"]) == 0
    out, err = capsys.readouterr()
    assert not err
    assert re.sub(r"\S*job\.trim|[0-9a-f]{7,}", "…", out) == snapshot


@pytest.mark.parametrize("with_log", ["old", "new"])
def test_one_log_tells_of_both_versions(
    job: Path, capsys: pytest.CaptureFixture[str], with_log: str
) -> None:
    """What was done is held against another survey; the orders are those of whole jobs."""
    new = changed(job, ("E: 50 in", "E: 49 in"))
    asked = ["compare", str(job), str(new)]
    assert main([*asked, "--cut", "ST-E-base", "--cut", "DE-1-base"]) == 0
    by_hand = capsys.readouterr().out
    log = LOG.replace("cut ST-E-base", "cut ST-E-base 50 5/8 in from base-1 of 12 ft")
    (job if with_log == "old" else new).with_suffix(".site").write_text(log, encoding="utf-8")
    assert main(asked) == 0
    assert capsys.readouterr().out == by_hand
    assert "It is 1 in too long: cut it down." in by_hand


def test_a_door_under_another_name_is_known_again(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    new = changed(job, ('"bath"', '"wash room"'))
    asked = ["compare", str(job), str(new), "--form", "json", "--cut", "ST-bath-case-head"]
    assert main(asked) == 0
    data = json.loads(capsys.readouterr().out)
    assert not data["added"] + data["gone"]
    names = {one["was"]: one["id"] for one in data["changed"]}
    assert names["ST-bath-case-head"] == "ST-wash-room-case-head"
    (told,) = data["already_cut_and_wrong"]
    assert told["remedy"] == "Write the new name on it."


def test_moving_lines_and_remarks_is_no_change(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = JOB.replace('currency "$"\n', "").replace(
        "\nroom", '\n\n# a room\ncurrency "$"\nroom', 1
    )
    new = job.with_name("new.trim")
    new.write_text(text, encoding="utf-8")
    assert main(["compare", str(job), str(new), "--exit-code"]) == 0
    assert "Nothing has changed" in capsys.readouterr().out
    assert main(["compare", str(job), str(changed(job, ("40 in", "41 in"))), "--exit-code"]) == 4


def test_json_tells_the_same(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    new = changed(job, ("E: 50 in", "E: 50 1/4 in"), ('"Den"', '"Snug"'))
    assert main(["compare", str(job), str(new), "--form", "json", "--cut", "ST-E-base"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert not data["same"]
    assert data["renamed"] == [{"what": "room", "old": "Den", "new": "Snug", "room": None}]
    (cut,) = [one for one in data["changed"] if one["cut"]]
    assert cut["id"] == "ST-E-base"
    assert cut["cut"][0]["what"] == "length"
    assert data["already_cut_and_wrong"][0]["remedy"] == "It is 1/4 in too short: cut it again."
    assert {"ST-E-base", "SN-1-base"} <= set(data["reprint"])
    assert data["old_cost"]["trim"] == data["new_cost"]["trim"]


def test_without_prices_trim_is_counted_in_feet(
    job: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    prices = tmp_path / "lists" / "prices.trim"
    prices.write_text(re.sub(r" at [\d.]+", "", PRICES) + "nails: box of 1000 at 9.50\n", "utf-8")
    new = changed(job, ("1: 90 in", "1: 300 in"))
    assert main(["compare", str(job), str(new)]) == 0
    text = capsys.readouterr().out
    assert "base, 12 ft: 3 → 5 (36 ft → 60 ft)" in text
    assert "Cost: 84 ft → 108 ft (+24 ft) of trim, supplies $9.50 as before" in text
    assert main(["compare", str(job), str(new), "--form", "json"]) == 0
    data = json.loads(capsys.readouterr().out)
    assert (data["old_cost"]["trim"], data["old_cost"]["trim_length_in"]) == (None, "1008")
    assert data["old_cost"]["total"] is None
    assert [line["old_cost"] for line in data["order"] if line["what"] == "base"] == [None]


class Fetches(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.links: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.links += [value or "" for name, value in attrs if name in ("src", "href")]


def test_the_page_stands_alone_and_quotes_what_the_file_says(job: Path) -> None:
    out = job.with_name("changes.html")
    new = changed(job, ('"Den"', '"<b>Den & co</b>"'), ("90 in", "91 in"), ("40 in", "40 1/8 in"))
    asked = ["compare", str(job), str(new), "--form", "html", "--out", str(out), "--paper", "a4"]
    assert main([*asked, "--cut", "DE-1-base"]) == 0
    page = out.read_text(encoding="utf-8")
    assert page.startswith("<!DOCTYPE html>")
    reader = Fetches()
    reader.feed(page)
    assert not reader.links
    assert not re.search(r"url\((?!data:)", page)
    assert "<b>Den" not in page
    assert "&lt;b&gt;Den &amp; co&lt;/b&gt;" in page
    assert "Already cut and wrong now" in page
    assert "size: A4" in page or "size: a4" in page
    assert out.stat().st_mode & 0o444


def test_against_git_with_its_includes(
    repository: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(repository.parent)
    asked = ["compare", "job.trim", "--git", "HEAD"]
    assert main([*asked, "--exit-code"]) == 0
    assert "Nothing has changed" in capsys.readouterr().out
    prices = repository.parent / "lists" / "prices.trim"
    prices.write_text(PRICES.replace("17.40", "18.40"), encoding="utf-8")
    assert main([*asked, "--exit-code"]) == 4
    out = capsys.readouterr().out
    assert re.match(r"job\.trim at HEAD \([0-9a-f]{7,}\) → job\.trim\n", out)
    assert "(+$" in out
    assert git(repository.parent, "status", "--porcelain") == " M lists/prices.trim\n"
    # the file has gone to another folder since: git knows it as it was
    monkeypatch.chdir(repository.parent / "lists")
    assert main(["compare", "../job.trim", "--git", "HEAD~0"]) == 0


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["job.trim"], "two job files"),
        (["job.trim", "job.trim", "--git", "HEAD"], "two job files"),
        (["job.trim", "--git", "nowhere"], "no revision “nowhere”"),
        (["job.trim", "--git", "--upload-pack=x"], "expected one argument"),
        (["job.trim", "--git=--all"], "is no revision"),
        (["new.trim", "--git", "HEAD"], "is not in revision"),
        (["none/job.trim", "--git", "HEAD"], "there is no folder"),
        (["none.trim", "job.trim"], "cannot read"),
        (["-", "-"], "read once"),
        (["job.trim", "job.trim", "--cut", "ST-N-bse"], "Did you mean “ST-N-base”?"),
        (["job.trim", "job.trim", "--out", "none/x.txt"], "cannot write"),
    ],
)
def test_wrong_usage(
    repository: Path,
    words: list[str],
    said: str,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.chdir(repository.parent)
    changed(repository)
    try:
        code = main(["compare", *words])
    except SystemExit as stop:
        code = int(stop.code or 0)
    assert code == 2
    out, err = capsys.readouterr()
    assert not out
    assert said in err


def test_outside_a_repository(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["compare", str(job), "--git", "HEAD"]) == 2
    assert "not a git repository" in capsys.readouterr().err


def test_a_version_with_errors(
    repository: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(repository.parent)
    changed(repository, ("90 in", "0 in"), name="job.trim")
    assert main(["compare", "job.trim", "--git", "HEAD"]) == 1
    out, err = capsys.readouterr()
    assert not out
    assert err.startswith("trimlang: job.trim has errors:\njob.trim:10:6: error T202")


def test_git_shows_the_tidy_text_in_its_diffs(repository: Path) -> None:
    """The set-up of docs/commands.md, for real."""
    home = repository.parent
    (home / ".gitattributes").write_text("*.trim diff=trim\n", encoding="utf-8")
    driver = f"{sys.executable} -m trimlang tidy --print"
    git(home, "config", "diff.trim.textconv", driver)
    git(home, "config", "diff.trim.xfuncname", "^[ \t]*(room[ \t].*)$")
    repository.write_text(
        JOB.replace("  1: 90 in", '      1:90"').replace("job ", "JOB\t"), encoding="utf-8"
    )
    assert git(home, "diff", "job.trim") == ""
    repository.write_text(JOB.replace("1: 90 in", '1:91" oops'), encoding="utf-8")
    diff = git(home, "diff", "--unified=0", "job.trim")
    assert '@@ room "Den", trim base, open walk' in diff
    assert [line for line in diff.splitlines() if line[0] in "+-"][2:] == [
        "-  1: 90 in, left=butt, right=butt",
        '+  1:91" oops, left=butt, right=butt',
    ]
