"""The output folder holds the whole old set or the whole new one."""

from pathlib import Path

import pytest

from trimlang.output import folder
from trimlang.output.folder import write_folder
from trimlang.output.made_by import MARK

OLD = {"a.html": b"old a", "b.html": b"old b"}
NEW = {"a.html": b"new a", "c.html": b"new c"}


def held(target: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in target.iterdir() if path.name != MARK}


@pytest.fixture(params=["exchange", "two renames"])
def target(request: pytest.FixtureRequest, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    if request.param == "two renames":
        monkeypatch.setattr(folder, "exchange", lambda *_: False)
    return tmp_path / "deep" / "shop"


def test_a_new_set_takes_the_old_ones_place(target: Path) -> None:
    write_folder(target, OLD)
    assert held(target) == OLD
    write_folder(target, NEW)
    assert held(target) == NEW
    assert [path.name for path in target.parent.iterdir()] == ["shop"]


def test_a_failure_while_writing_leaves_the_old_set(
    target: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_folder(target, OLD)
    wrote = folder.write_file

    def full_disk(path: Path, data: bytes) -> None:
        if path.name == "c.html":
            raise OSError(28, "No space left on device")
        wrote(path, data)

    monkeypatch.setattr(folder, "write_file", full_disk)
    with pytest.raises(OSError, match="No space"):
        write_folder(target, NEW)
    assert held(target) == OLD
    assert [path.name for path in target.parent.iterdir()] == ["shop"]


def test_a_failure_while_renaming_leaves_the_old_set(
    target: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    write_folder(target, OLD)
    monkeypatch.setattr(folder, "exchange", lambda *_: False)
    rename = Path.rename

    def fail(self: Path, to: Path) -> Path:
        if to == target and self.name == "new":
            raise OSError(5, "Input/output error")
        return rename(self, to)

    monkeypatch.setattr(Path, "rename", fail)
    with pytest.raises(OSError, match="Input/output"):
        write_folder(target, NEW)
    monkeypatch.setattr(Path, "rename", rename)
    assert held(target) == OLD


def test_an_empty_folder_is_taken(target: Path) -> None:
    target.mkdir(parents=True)
    write_folder(target, NEW)
    assert held(target) == NEW
