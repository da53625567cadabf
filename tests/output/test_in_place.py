"""Folders that must stay the ones that they are, and files that only look like trimlang's."""

from __future__ import annotations

import errno
import os
from collections.abc import Callable
from hashlib import sha256
from pathlib import Path

import pytest

from trimlang.output import folder, in_place
from trimlang.output.folder import write_folder
from trimlang.output.made_by import MARK, NotOursError, mark_of

OLD = {"a.html": b"old a", "b.html": b"old b", "site/plan.json": b"{}"}
NEW = {"a.html": b"new a", "c.html": b"new c"}


class Killed(BaseException):
    """Ends a build where it stands."""


def held(target: Path) -> dict[str, bytes]:
    files = [path for path in target.rglob("*") if path.is_file()]
    named = {path.relative_to(target).as_posix(): path.read_bytes() for path in files}
    return {name: data for name, data in named.items() if name != MARK}


@pytest.mark.parametrize("mode", [0o700, 0o750, 0o2775])
def test_a_folder_keeps_its_mode(mode: int, tmp_path: Path) -> None:
    target = tmp_path / "out"
    write_folder(target, OLD)
    target.chmod(mode)
    write_folder(target, NEW)
    assert target.stat().st_mode & 0o7777 == mode


def test_the_folder_that_a_shell_stands_in_stays(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "out"
    write_folder(target, OLD)
    (target / "mine.txt").write_text("mine", encoding="utf-8")
    monkeypatch.chdir(target)
    before = target.stat().st_ino
    write_folder(Path(), NEW)
    assert target.stat().st_ino == before
    assert held(target) == {**NEW, "mine.txt": b"mine"}
    assert not (target / "site").exists()
    write_folder(Path(), OLD)
    assert held(target) == {**OLD, "mine.txt": b"mine"}


@pytest.mark.parametrize("told", [True, False])
def test_a_place_where_a_disk_begins_is_written_to(
    told: bool, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "out"
    target.mkdir()
    rename = Path.rename

    def busy(path: Path, to: Path) -> Path:
        if path == target:
            raise OSError(errno.EBUSY, "busy")
        return rename(path, to)

    monkeypatch.setattr(os.path, "ismount", lambda path: told and Path(path) == target)
    monkeypatch.setattr(folder, "exchange", lambda *_: False)
    monkeypatch.setattr(Path, "rename", busy)
    for files in (OLD, NEW):
        write_folder(target, files)
        assert held(target) == files
    assert [path.name for path in tmp_path.iterdir()] == ["out"]


@pytest.mark.parametrize("step", range(12))
def test_what_a_kill_leaves_half_done_is_finished(
    step: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Killed before any move and after; the next build finds the old set or makes the new one."""
    target = tmp_path / "out"
    write_folder(target, OLD)
    left = iter(range(step))

    def dying(real: Callable[..., object]) -> Callable[..., object]:
        def call(*given: object, **more: object) -> object:
            if next(left, None) is None:
                raise Killed
            return real(*given, **more)

        return call

    with monkeypatch.context() as patch:
        for name in ("replace", "unlink", "touch", "write_bytes"):
            patch.setattr(Path, name, dying(getattr(Path, name)))
        patch.setattr(in_place.shutil, "rmtree", lambda *_, **__: None)
        try:
            in_place.write_in_place(target, NEW)
        except Killed:
            journal = (target / ".trimlang-work" / "journal").is_file()
        else:
            journal = True
    in_place.finish(target)
    assert held(target) == (NEW if journal else OLD)
    write_folder(target, NEW)
    assert held(target) == NEW


def test_a_folder_of_the_first_builds_is_to_be_moved_away_once(tmp_path: Path) -> None:
    target = tmp_path / "out"
    write_folder(target, OLD)
    (target / MARK).write_text("a.html\nb.html\nsite/plan.json\n", encoding="utf-8")
    with pytest.raises(FileExistsError, match="an earlier trimlang made it; move it away"):
        write_folder(target, NEW)
    assert held(target) == OLD


def test_a_planted_list_deletes_nothing(tmp_path: Path) -> None:
    target = tmp_path / "out"
    target.mkdir()
    (target / "thesis.txt").write_text("mine", encoding="utf-8")
    (target / MARK).write_text(f"thesis.txt\n{'0' * 64}  thesis.txt\n", encoding="utf-8")
    write_folder(target, NEW)
    assert held(target)["thesis.txt"] == b"mine"


def test_a_list_that_is_a_link_is_none(tmp_path: Path) -> None:
    target = tmp_path / "out"
    target.mkdir()
    (tmp_path / "list").write_bytes(mark_of({"thesis.txt": b"mine"}))
    (target / "thesis.txt").write_text("mine", encoding="utf-8")
    (target / MARK).symlink_to(tmp_path / "list")
    with pytest.raises(NotOursError):
        write_folder(target, NEW)


def test_a_sheet_that_was_changed_by_hand_is_not_written_over(tmp_path: Path) -> None:
    target = tmp_path / "out"
    write_folder(target, OLD)
    (target / "a.html").write_text("with my notes", encoding="utf-8")
    with pytest.raises(FileExistsError, match=r"a\.html in it is not as trimlang made it"):
        write_folder(target, NEW)
    (target / "a.html").rename(tmp_path / "kept.html")
    (target / "b.html").write_text("with my notes", encoding="utf-8")
    write_folder(target, NEW)
    # no sheet of the new set has its name, so it stays as the user's own
    assert held(target) == {**NEW, "b.html": b"with my notes"}


def test_a_planted_journal_moves_nothing_over_what_is_the_user_s(tmp_path: Path) -> None:
    target, outside = tmp_path / "out", tmp_path / "outside.txt"
    fresh = target / ".trimlang-work" / "new"
    fresh.mkdir(parents=True)
    (fresh.parent / "journal").touch()
    outside.write_text("mine", encoding="utf-8")
    (target / "thesis.txt").write_text("mine", encoding="utf-8")
    (fresh / "thesis.txt").write_bytes(b"theirs")
    names = {"thesis.txt": b"theirs", "../outside.txt": b"theirs"}
    (fresh / MARK).write_bytes(mark_of(names))
    (fresh.parent / "outside.txt").write_bytes(b"theirs")
    (target / MARK).write_text(f"{sha256(b'mine').hexdigest()}  ../outside.txt\n", encoding="utf-8")
    in_place.finish(target)
    assert outside.read_text(encoding="utf-8") == "mine"
    assert (target / "thesis.txt").read_text(encoding="utf-8") == "mine"


def test_where_a_disk_takes_no_account_of_case_the_user_s_file_stays(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "out"
    write_folder(target, OLD)
    (target / "C.html").write_text("mine", encoding="utf-8")
    link = os.link

    def as_such_a_disk(path: Path, to: Path, **more: bool) -> None:
        if Path(to).name.casefold() in {one.name.casefold() for one in Path(to).parent.iterdir()}:
            raise FileExistsError(errno.EEXIST, "File exists", str(to))
        link(path, to, **more)

    monkeypatch.setattr(os, "link", as_such_a_disk)
    with pytest.raises(FileExistsError):
        write_folder(target, NEW)
    assert held(target) == {**OLD, "C.html": b"mine"}
