"""A repository that someone sent runs nothing when a job is compared with what it was."""

from __future__ import annotations

import os
import subprocess
from pathlib import Path

import pytest

from trimlang.cli import main
from trimlang.reading import MOST_MEGABYTES

JOB = 'job "x"\n'


def git(folder: Path, *words: str) -> str:
    done = subprocess.run(
        ["git", "-c", "user.name=x", "-c", "user.email=x@example.com", *words],
        cwd=folder,
        env={**os.environ, "GIT_CONFIG_GLOBAL": os.devnull},
        capture_output=True,
        check=True,
        text=True,
    )
    return done.stdout.strip()


def committed(folder: Path, text: str) -> Path:
    folder.mkdir()
    git(folder, "init", "--quiet")
    job = folder / "job.trim"
    job.write_text(text, encoding="utf-8")
    git(folder, "add", ".")
    git(folder, "commit", "--quiet", "-m", "as surveyed")
    return job


@pytest.mark.parametrize("remote", ["../elsewhere", "ext::sh -c touch%%20ran"])
@pytest.mark.parametrize("lazy", ["0", "1"])
def test_a_missing_file_is_not_fetched_by_the_repository_s_own_command(
    remote: str, lazy: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    committed(tmp_path / "elsewhere", JOB)
    job = committed(tmp_path / "sent", JOB)
    ran = tmp_path / "ran"
    blob = git(job.parent, "rev-parse", "HEAD:job.trim")
    (job.parent / ".git" / "objects" / blob[:2] / blob[2:]).unlink()
    for name, value in (
        ("core.repositoryFormatVersion", "1"),
        ("extensions.partialClone", "origin"),
        ("remote.origin.promisor", "true"),
        ("remote.origin.url", remote),
        ("remote.origin.uploadpack", f"sh -c 'touch {ran}; false'"),
        ("protocol.allow", "always"),
        ("protocol.ext.allow", "always"),
    ):
        git(job.parent, "config", name, value)
    if lazy == "0":
        # as with a git that is too old to know the word
        monkeypatch.setattr(
            "trimlang.cli.git_revision.FETCH_NOTHING", {"GIT_ALLOW_PROTOCOL": ""}, raising=True
        )
    monkeypatch.chdir(job.parent)
    assert main(["compare", str(job), "--git", "HEAD"]) == 2
    assert not ran.exists()
    assert not (job.parent / "ran").exists()


def test_a_giant_file_is_refused_before_it_is_read(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    job = committed(tmp_path / "sent", "#" * (MOST_MEGABYTES * 2**20 + 1))
    job.write_text(JOB, encoding="utf-8")
    run = subprocess.run
    asked: list[list[str]] = []

    def watched(words: list[str], **more: object) -> object:
        asked.append(words)
        return run(words, **more)  # type: ignore[call-overload]

    monkeypatch.setattr(subprocess, "run", watched)
    assert main(["compare", str(job), "--git", "HEAD"]) == 2
    assert "larger than 16 MB" in capsys.readouterr().err
    assert not [words for words in asked if "blob" in words]
