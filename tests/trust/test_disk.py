"""What can go wrong on a disk: a clear line, nothing lost."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Iterable
from pathlib import Path

import pytest

from tests.conftest import ROOT
from tests.jobs import TRIM, walls
from tests.trust.commanding import given as in_this_process
from trimlang.cli import main
from trimlang.output import folder
from trimlang.output.folder import write_folder
from trimlang.output.made_by import MARK

GOOD = walls("N: 40 in, left=butt, right=butt")


@pytest.fixture
def job(tmp_path: Path) -> Path:
    path = tmp_path / "job.trim"
    path.write_text(GOOD, encoding="utf-8")
    return path


def build(job: Path, *options: str, code: str = "") -> subprocess.CompletedProcess[str]:
    start = f"{code}\nimport sys\nfrom trimlang.cli import main\nsys.exit(main(sys.argv[1:]))"
    words = [sys.executable, "-c", start, "build", str(job), "--plan", "quick", *options]
    # where coverage is measured, its own file would not fit on a full disk either
    own = {name: value for name, value in os.environ.items() if not name.startswith("COVERAGE_")}
    return subprocess.run(words, cwd=ROOT, env=own, capture_output=True, text=True, check=False)


def test_a_full_disk(job: Path) -> None:
    assert build(job, "--format", "json").returncode == 0
    before = (job.parent / "job-sheets" / "plan.json").read_bytes()
    job.write_text(GOOD.replace("40", "41"), encoding="utf-8")
    # without bytecode: Python 3.11 keeps a compiled module that the limit cut short
    full = (
        "import resource, sys; sys.dont_write_bytecode = True;"
        " resource.setrlimit(resource.RLIMIT_FSIZE, (4000, 4000))"
    )
    done = build(job, "--format", "html", code=full)
    assert done.returncode == 2
    assert "cannot write" in done.stderr
    assert done.stderr.count("\n") == 1
    assert (job.parent / "job-sheets" / "plan.json").read_bytes() == before
    assert sorted(path.name for path in job.parent.iterdir()) == ["job-sheets", "job.trim"]


PRINT = {
    "explain": ["explain", "T101"],
    "check": ["check", "closed.trim"],
    "convert": ["convert", "job.trim"],
    "compare": ["compare", "job.trim", "job.trim", "--plan", "quick"],
    "start -": ["start", "-"],
    "tidy": ["tidy", "--print", "job.trim"],
    "help": ["--help"],
}
"""What prints what it was asked for."""

DO = {
    "build": (["build", "job.trim", "--format", "json", "--plan", "quick"], "job-sheets"),
    "mark": (["mark", "job.trim", "bought 1 base 12 ft"], "job.site"),
    "tidy": (["tidy", "untidy.trim"], "untidy.trim"),
    "start": (["start", "fresh.trim"], "fresh.trim"),
    "room": (["start", "job.trim", "--room", "Attic"], "job.trim"),
}
"""What writes a file, and the file."""


def given(job: Path, command: list[str], redirected: str) -> subprocess.CompletedProcess[str]:
    """Give a command in the job's folder, beside a room that closes and a file that is not tidy."""
    room = "".join(f"  {run} 40\n" for run in "NESW")
    closed = f'{TRIM}room "Den", trim base, ends in\n{room}'
    (job.parent / "closed.trim").write_text(closed, encoding="utf-8")
    (job.parent / "untidy.trim").write_text(GOOD.replace("N: 40", "N:   40"), encoding="utf-8")
    return subprocess.run(
        ["sh", "-c", f'"$@" {redirected}', "sh", sys.executable, "-m", "trimlang", *command],
        cwd=job.parent, env={**os.environ, "PYTHONPATH": str(ROOT)}, stdin=subprocess.DEVNULL,
        capture_output=True, text=True, check=False,
    )  # fmt: skip


FULL = [">/dev/full"] if Path("/dev/full").exists() else []


def ways(names: Iterable[str], quick: str, full: Iterable[str]) -> list[object]:
    """Some commands with a full disk, and one with its output closed, which ends no other way.

    The others follow at night.
    """
    return [
        pytest.param(name, nowhere, marks=() if name in some else pytest.mark.nightly)
        for nowhere, some in (*((one, full) for one in FULL), (">&-", (quick,)))
        for name in names
    ]


@pytest.mark.parametrize(("name", "nowhere"), ways(PRINT, "check", ("check", "compare", "help")))
def test_what_cannot_be_printed_is_told(job: Path, name: str, nowhere: str) -> None:
    done = given(job, PRINT[name], nowhere)
    reason = "no space left on device" if "full" in nowhere else "standard output is closed"
    assert done.stderr == f"trimlang: reading or writing failed: {reason}\n"
    assert done.returncode == 2


@pytest.mark.parametrize(("name", "nowhere"), ways(DO, "mark", ("build", "mark", "room")))
def test_what_is_written_and_cannot_be_told_is_no_failure(
    job: Path, name: str, nowhere: str
) -> None:
    command, written = DO[name]
    done = given(job, command, nowhere)
    assert f"{written} is written, and only this could not be printed" in done.stderr
    assert done.returncode == 0
    assert (job.parent / written).exists()


@pytest.mark.parametrize("closed", ["<&-", "2>&-", "<&- >&- 2>&-", ">&-"])
def test_closed_streams(job: Path, closed: str) -> None:
    done = given(job, ["check", "-" if "<&-" in closed else "job.trim"], closed)
    # how its rooms close is what `check` is asked for; without findings stderr says nothing
    assert done.returncode == (0 if closed == "2>&-" else 2)
    assert "Traceback" not in done.stderr


def test_no_space_for_a_new_job_file(job: Path) -> None:
    done = given(job, ["start", "fresh.trim"], "2>&1")
    assert done.returncode == 0
    (job.parent / "fresh.trim").unlink()
    start = (
        "import resource, sys; sys.dont_write_bytecode = True\n"
        "resource.setrlimit(resource.RLIMIT_FSIZE, (10, 10))\n"
        "from trimlang.cli import main; sys.exit(main(['start', 'fresh.trim']))"
    )
    done = subprocess.run(
        [sys.executable, "-c", start], cwd=job.parent, capture_output=True, text=True, check=False,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
    )  # fmt: skip
    # what counts the tests' lines has no room for its own file either, and says so behind
    assert done.stderr.startswith("trimlang: cannot write fresh.trim: file too large\n")
    assert done.returncode == 2
    assert sorted(path.name for path in job.parent.iterdir() if "fresh" in path.name) == []
    assert not list(job.parent.glob(".trimlang-*"))


@pytest.mark.skipif(os.name == "nt", reason="names there are no bytes")
def test_a_name_that_is_no_utf_8(job: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(job.parent)
    name = os.fsdecode(b"j\xffb.trim")
    (job.parent / name).write_text(GOOD, encoding="utf-8")
    quick = ["--plan", "quick"]
    for command in (
        ["check", name],
        ["build", name, *quick, "--format", "html", "--format", "csv"],
        ["mark", name, "bought 1 base 12 ft"],
        ["compare", name, "job.trim", *quick],
        ["compare", name, "job.trim", *quick, "--form", "json"],
        ["compare", name, "job.trim", *quick, "--form", "html"],
        ["convert", name],
        ["tidy", name],
    ):
        done = in_this_process(tuple(command))
        assert done.code == 0, (command, done.err)


@pytest.mark.skipif(os.name == "nt" or os.geteuid() == 0, reason="root may write everywhere")
def test_a_folder_that_may_not_be_written(job: Path, capsys: pytest.CaptureFixture[str]) -> None:
    job.parent.chmod(0o500)
    try:
        assert main(["build", str(job), "--format", "json"]) == 2
    finally:
        job.parent.chmod(0o700)
    assert "cannot write" in capsys.readouterr().err


def test_a_disk_that_may_only_be_read(
    job: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def refuse(*_: object, **__: object) -> str:
        raise OSError(30, "Read-only file system")

    monkeypatch.setattr(folder.tempfile, "mkdtemp", refuse)
    assert main(["build", str(job), "--format", "json"]) == 2
    assert "read-only file system" in capsys.readouterr().err


def test_an_include_that_vanishes(job: Path) -> None:
    from trimlang.compiler import check_job
    from trimlang.incremental.compiler_steps import Steps
    from trimlang.reading import read_text

    (job.parent / "prices.trim").write_text("", encoding="utf-8")

    def vanished(path: Path) -> str:
        path.unlink()
        return read_text(path)

    steps = Steps(read=vanished)
    result = check_job('include "prices.trim"\n' + GOOD, path=job, steps=steps)
    assert [one.code for one in result.diagnostics] == ["T601"]


def test_an_include_that_becomes_a_link_is_not_followed_out(job: Path, tmp_path: Path) -> None:
    from trimlang.compiler import check_job

    secret = tmp_path.parent / f"{tmp_path.name}-secret.trim"
    secret.write_text("trim secret: 1 in thick\n", encoding="utf-8")
    (tmp_path / "deep").mkdir()
    (tmp_path / "deep" / "out").symlink_to(tmp_path.parent)
    for name in (f"deep/out/{secret.name}", f"deep/../../{secret.name}", f"./..//{secret.name}"):
        result = check_job(f'include "{name}"\n' + GOOD, path=job)
        assert [one.code for one in result.diagnostics] == ["T602"], name


def test_two_builds_at_once(job: Path) -> None:
    words = [sys.executable, "-m", "trimlang", "build", str(job), "--format", "json"]
    both = [subprocess.Popen(words, cwd=ROOT, stdout=subprocess.DEVNULL) for _ in range(2)]
    assert [one.wait() for one in both] == [0, 0]
    assert sorted(path.name for path in job.parent.iterdir()) == ["job-sheets", "job.trim"]
    assert {path.name for path in (job.parent / "job-sheets").iterdir()} == {"plan.json", MARK}


@pytest.fixture(params=["exchange", "two renames"])
def shop(request: pytest.FixtureRequest, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    if request.param == "two renames":
        monkeypatch.setattr(folder, "exchange", lambda *_: False)
    target = tmp_path / "shop"
    write_folder(target, {"a": b"old"})
    return target


def test_what_comes_into_the_folder_meanwhile_is_kept(
    shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (shop / "photos").mkdir()
    (shop / "photos" / "a.jpg").write_bytes(b"a")
    (shop / "list.txt").write_text("one", encoding="utf-8")
    swap = folder.put_in_place

    def late(*places: Path) -> Path | None:
        (shop / "photos" / "b.jpg").write_bytes(b"b")
        (shop / "late.txt").write_text("late", encoding="utf-8")
        (shop / "list.txt").unlink()
        (shop / "list.txt").write_text("two", encoding="utf-8")
        return swap(*places)

    monkeypatch.setattr(folder, "put_in_place", late)
    write_folder(shop, {"a": b"new"})
    found = {
        str(path.relative_to(shop)): path.read_bytes() for path in shop.rglob("*") if path.is_file()
    }
    found.pop(MARK)
    assert found == {
        "a": b"new",
        "late.txt": b"late",
        "list.txt": b"two",
        "photos/a.jpg": b"a",
        "photos/b.jpg": b"b",
    }


def test_where_there_are_no_second_links_the_users_own_is_copied(
    shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object, **__: object) -> None:
        raise OSError(1, "Operation not permitted")

    monkeypatch.setattr(folder.os, "link", refuse)
    (shop / "list.txt").write_text("one", encoding="utf-8")
    (shop / "way").symlink_to("list.txt")
    write_folder(shop, {"a": b"new"})
    assert (shop / "list.txt").read_text(encoding="utf-8") == "one"
    assert (shop / "way").readlink() == Path("list.txt")


def test_a_copy_that_was_changed_meanwhile_is_told_by_its_bytes(
    shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """On a disk without second links that keeps times to two seconds, times say nothing."""

    def refuse(*_: object, **__: object) -> None:
        raise OSError(1, "Operation not permitted")

    def late(*places: Path) -> Path | None:
        before = (shop / "list.txt").stat()
        (shop / "list.txt").write_text("two", encoding="utf-8")
        os.utime(shop / "list.txt", ns=(before.st_atime_ns, before.st_mtime_ns))
        return swap(*places)

    swap = folder.put_in_place
    monkeypatch.setattr(folder.os, "link", refuse)
    monkeypatch.setattr(folder, "put_in_place", late)
    (shop / "list.txt").write_text("one", encoding="utf-8")
    write_folder(shop, {"a": b"new"})
    assert (shop / "list.txt").read_text(encoding="utf-8") == "two"


def test_a_file_of_the_users_is_never_overwritten(
    job: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["build", str(job), "--format", "json"]) == 0
    own = job.parent / "job-sheets" / "checklist.html"
    own.write_text("mine", encoding="utf-8")
    assert main(["build", str(job), "--format", "html"]) == 2
    assert "checklist.html in it is not as trimlang made it" in capsys.readouterr().err
    assert own.read_text(encoding="utf-8") == "mine"


def test_what_killed_builds_left_is_cleared_away(tmp_path: Path) -> None:
    for name in (".shop-trimlang-12-abcd1234", ".a job of yesterday-trimlang-7-a_c_1234"):
        left = tmp_path / name
        (left / "new").mkdir(parents=True)
        (left / "new" / "a").write_bytes(b"half")
    others = [tmp_path / ".shop-trimlang-mine", tmp_path / ".own-trimlang-1-abcd1234"]
    for other in others:
        other.mkdir()
        (other / "notes.txt").write_bytes(b"mine")
    write_folder(tmp_path / "shop", {"a": b"new"})
    kept = sorted([*(other.name for other in others), "shop"])
    assert sorted(path.name for path in tmp_path.iterdir()) == kept


def test_a_set_left_between_two_renames_is_put_back(tmp_path: Path) -> None:
    for name in ("shop", "another"):
        target = tmp_path / name
        write_folder(target, {"a": b"old"})
        (target / "mine.txt").write_bytes(b"mine")
    for name in ("shop", "another"):
        aside = tmp_path / f".{name}-trimlang-12-abcd1234"
        aside.mkdir()
        (tmp_path / name).rename(aside / "old")
    write_folder(tmp_path / "shop", {"a": b"new"})
    assert (tmp_path / "shop" / "mine.txt").read_bytes() == b"mine"
    assert (tmp_path / "shop" / "a").read_bytes() == b"new"
    assert (tmp_path / "another" / "mine.txt").read_bytes() == b"mine"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["another", "shop"]


def test_a_set_that_can_neither_be_replaced_nor_put_back_waits(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_folder(tmp_path / "shop", {"a": b"old"})
    renames: list[object] = []
    real = os.rename

    def rename(*places: Path) -> None:
        renames.append(places)
        if len(renames) > 1:
            raise OSError(28, "No space left on device")
        real(*places)

    monkeypatch.setattr(folder, "exchange", lambda *_: False)
    with monkeypatch.context() as bad:
        bad.setattr(os, "rename", rename)
        with pytest.raises(OSError, match="No space"):
            write_folder(tmp_path / "shop", {"a": b"new"})
    write_folder(tmp_path / "another", {"b": b"new"})
    assert (tmp_path / "shop" / "a").read_bytes() == b"old"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["another", "shop"]


def test_the_new_set_is_on_the_disk_before_it_is_in_its_place(
    shop: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    order: list[str] = []
    sync, swap = os.fsync, folder.put_in_place
    monkeypatch.setattr(folder.os, "fsync", lambda fd: (order.append("sync"), sync(fd))[1])
    monkeypatch.setattr(
        folder, "put_in_place", lambda *places: (order.append("swap"), swap(*places))[1]
    )
    write_folder(shop, {"a": b"1", "b": b"2"})
    # two files, the mark and their folder; then the folder that they lie in
    assert order == ["sync"] * 4 + ["swap", "sync"]
