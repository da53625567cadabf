"""Whatever the commands and the job, nothing is lost, half written or told as a traceback.

The long run is ``python -m benchmarks.any_command``; here are the sessions that once broke a
promise, and a short run of new ones.
"""

from __future__ import annotations

from pathlib import Path
from random import Random

import pytest

from tests.conftest import ROOT
from tests.trust.commanding import Tally, hold
from tests.trust.sessions import grown_session, read_session

KEPT = sorted((ROOT / "tests" / "corpus").glob("*.json"))


@pytest.mark.parametrize("path", KEPT, ids=[path.stem for path in KEPT])
def test_the_kept_sessions(path: Path, tmp_path: Path) -> None:
    hold(read_session(path.read_text(encoding="utf-8")), tmp_path, Tally())


def test_new_sessions(tmp_path: Path) -> None:
    random, tally = Random(20261128), Tally()
    for number in range(20):
        folder = tmp_path / str(number)
        folder.mkdir()
        hold(grown_session(random), folder, tally)
    assert tally.codes[0] > 5
    assert tally.codes[1] > 5
