"""What pip-audit answers is never taken for more than it says; here its answers are invented."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

import pytest
from packaging.utils import canonicalize_name
from packaging.version import Version

from benchmarks.audit import index
from benchmarks.audit.__main__ import NOT_AUDITED, SOUND, TOUCHED, main, tell
from benchmarks.audit.lock import Locked

NAIL = Locked(canonicalize_name("loose-nail"), Version("1.10"))
LEVEL = Locked(canonicalize_name("spring-level"), Version("2.0"))
BOTH = {NAIL, LEVEL}

WEAKNESS = {"id": "PYSEC-0000-1", "fix_versions": ["1.11"], "aliases": ["CVE-0000-1"]}
KNOWN = {"name": "django", "version": "1.11", "vulns": [WEAKNESS]}


def told(name: str, version: str, *weaknesses: dict[str, Any]) -> dict[str, Any]:
    return {"name": name, "version": version, "vulns": list(weaknesses)}


def missing(name: str) -> dict[str, Any]:
    return {"name": name, "skip_reason": f"Dependency not found on PyPI: {name}"}


def audited(capsys: pytest.CaptureFixture[str], *rows: dict[str, Any]) -> tuple[int, str]:
    audit = index.understood({"dependencies": list(rows)}, BOTH)
    status = tell(audit, BOTH, ())
    return status, capsys.readouterr().out


def test_sound_when_all_are_told_and_the_known_weakness_too(
    capsys: pytest.CaptureFixture[str],
) -> None:
    rows = (KNOWN, told("Loose_Nail", "1.10"), told("spring-level", "2.0"))
    status, said = audited(capsys, *rows)
    assert status == SOUND
    assert "touch 0 of the 2 locked versions" in said


def test_a_weakness_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    rows = (KNOWN, told("loose-nail", "1.10", WEAKNESS), missing("spring-level"))
    status, said = audited(capsys, *rows)
    assert status == TOUCHED
    assert said.startswith("PYSEC-0000-1 (CVE-0000-1) touches loose-nail 1.10: fixed in 1.11\n")
    assert "not audited: 1 of 2: spring-level 2.0" in said


@pytest.mark.parametrize(
    "rows",
    [
        pytest.param((KNOWN, told("loose-nail", "1.10"), missing("spring-level")), id="not found"),
        pytest.param((KNOWN, told("loose-nail", "1.10")), id="left out"),
        pytest.param(
            (KNOWN, told("loose-nail", "1.10"), told("spring-level", "1.9")), id="another version"
        ),
    ],
)
def test_one_that_is_not_told_is_not_audited(
    capsys: pytest.CaptureFixture[str], rows: tuple[dict[str, Any], ...]
) -> None:
    status, said = audited(capsys, *rows)
    assert status == NOT_AUDITED
    assert "touch 0 of the 1 locked versions audited" in said
    assert "dependencies not audited: 1 of 2: spring-level 2.0\n" in said


@pytest.mark.parametrize(
    ("rows", "why"),
    [
        pytest.param((), "has data of none", id="nothing"),
        pytest.param(
            (missing("loose-nail"), missing("spring-level"), missing("django")),
            "has data of none",
            id="404",
        ),
        pytest.param(
            (told("django", "1.11"), told("loose-nail", "1.10"), told("spring-level", "2.0")),
            "knows no weakness of django 1.11",
            id="an index that passes no weaknesses on",
        ),
    ],
)
def test_no_data_is_one_line_and_never_sound(
    capsys: pytest.CaptureFixture[str], rows: tuple[dict[str, Any], ...], why: str
) -> None:
    status, said = audited(capsys, *rows)
    assert status == NOT_AUDITED
    assert said.startswith(f"dependencies not audited: none of 2: the index {why}")
    assert said.count("\n") == 1


def stand_in(code: str) -> tuple[str, ...]:
    return sys.executable, "-c", code


def test_every_locked_version_is_asked_for_and_the_known_one() -> None:
    # it gives back as sound what it was asked for
    asked = index.ask(
        BOTH,
        30,
        stand_in(
            "import json, pathlib, sys\n"
            "lines = pathlib.Path(sys.argv[-1]).read_text().split()\n"
            "rows = [dict(zip(('name', 'version'), one.split('=='))) for one in lines]\n"
            f"weak = {WEAKNESS!r}\n"
            "print(json.dumps({'dependencies': [row | {'vulns': [weak]} for row in rows]}))\n"
            "sys.exit(1)"
        ),
    )
    assert {finding.locked for finding in asked.findings} == BOTH
    assert (asked.no_answer, asked.unaudited) == ("", {})


@pytest.mark.parametrize(
    ("command", "why"),
    [
        (stand_in("import sys; sys.exit('first\\nno way to the index')"), "no way to the index"),
        (stand_in("print('[]')"), "it said nothing"),
        (stand_in("import time; time.sleep(60)"), "no answer within 0.1 s"),
        ((str(Path("/nowhere/pip-audit")),), "/nowhere/pip-audit"),
    ],
)
def test_without_an_answer_nothing_is_audited(
    capsys: pytest.CaptureFixture[str], command: tuple[str, ...], why: str
) -> None:
    seconds = 0.1 if "sleep" in command[-1] else 30
    status = tell(index.ask(BOTH, seconds, command), BOTH, ())
    said = capsys.readouterr().out
    assert status == NOT_AUDITED
    assert said.startswith("dependencies not audited: none of 2: ")
    assert why in said
    assert said.count("\n") == 1


def test_the_command_asks_pip_audit(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    lock = tmp_path / "lock"
    lock.write_text("loose-nail==1.10\n", encoding="utf-8")
    rows = json.dumps({"dependencies": [KNOWN, told("loose-nail", "1.10", WEAKNESS)]})
    fake = tmp_path / "pip_audit.py"
    fake.write_text(f"print({rows!r})\n", encoding="utf-8")
    monkeypatch.setenv("PYTHONPATH", str(tmp_path))
    assert main(["--lock", str(lock)]) == TOUCHED
    assert "touch 1 of the 1 locked versions" in capsys.readouterr().out
