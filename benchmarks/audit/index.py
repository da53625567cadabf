"""Ask the package index for weaknesses, through ``pip-audit``."""

from __future__ import annotations

import json
import subprocess
import sys
import tempfile
from collections.abc import Collection
from pathlib import Path
from typing import Any

from packaging.utils import canonicalize_name
from packaging.version import Version

from benchmarks.audit.findings import Audit, Finding
from benchmarks.audit.lock import Locked

# pip-audit calls a version sound of which it was told nothing.  This one is known to be weak since
# 2018: where that is not told either, there was no data.
KNOWN_WEAK = Locked(canonicalize_name("django"), Version("1.11"))
PIP_AUDIT = (sys.executable, "-m", "pip_audit")
# the versions are exact, so nothing needs to be resolved or installed
HOW = "--no-deps --disable-pip --progress-spinner off --format json --desc off --aliases on"


def ask(locked: Collection[Locked], seconds: float, command: tuple[str, ...] = PIP_AUDIT) -> Audit:
    """Ask for every locked version, also those of other systems; wait for at most ``seconds``."""
    with tempfile.TemporaryDirectory() as work:
        wanted = Path(work) / "locked.txt"
        lines = (f"{one.package}=={one.version}\n" for one in sorted({*locked, KNOWN_WEAK}))
        wanted.write_text("".join(lines), encoding="utf-8")
        try:
            done = subprocess.run(
                [*command, *HOW.split(), "--requirement", str(wanted)],
                stdin=subprocess.DEVNULL,
                capture_output=True,
                text=True,
                timeout=seconds,
                check=False,
            )
        except subprocess.TimeoutExpired:
            return Audit(no_answer=f"no answer within {seconds:g} s")
        except OSError as error:
            return Audit(no_answer=str(error))
    # it ends with 1 both for weaknesses and for errors: what it prints tells them apart
    try:
        return understood(json.loads(done.stdout), locked)
    except (ValueError, KeyError, TypeError):
        said = done.stderr.strip().splitlines() or ["it said nothing"]
        return Audit(no_answer=f"pip-audit gave no answer: {said[-1]}")


def understood(answer: dict[str, Any], locked: Collection[Locked]) -> Audit:
    """Read pip-audit's answer; what it leaves out, or says it has not found, is not audited.

    Raises:
        ValueError, KeyError, TypeError: it is not in the form that pip-audit gives.
    """
    told: dict[Locked, list[Finding]] = {}
    skipped: dict[str, str] = {}
    for row in answer["dependencies"]:
        package = canonicalize_name(row["name"])
        if "skip_reason" in row:
            skipped[package] = row["skip_reason"]
        else:
            one = Locked(package, Version(row["version"]))
            told[one] = [_finding(one, weakness) for weakness in row["vulns"]]
    unaudited = {
        one: skipped.get(one.package, "pip-audit left it out") for one in locked if one not in told
    }
    if not told.get(KNOWN_WEAK):
        if len(unaudited) == len(locked):
            return Audit(no_answer="the index has data of none of them", unaudited=unaudited)
        return Audit(no_answer=f"the index knows no weakness of {KNOWN_WEAK}, which has many")
    findings = [finding for one in locked for finding in told.get(one, ())]
    return Audit("the package index", "", findings, unaudited)


def _finding(locked: Locked, weakness: dict[str, Any]) -> Finding:
    mended = tuple(str(one) for one in weakness["fix_versions"])
    return Finding(weakness["id"], tuple(weakness.get("aliases", ())), locked, mended)
