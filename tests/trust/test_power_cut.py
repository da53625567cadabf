"""A build that is killed leaves the whole old set or the whole new one."""

from pathlib import Path
from random import Random

import pytest

from tests.trust.killing import Bench, Tally


# Where folders cannot change places is tried at every call in test_cut_at_every_call.py.
@pytest.mark.parametrize(
    "exchange",
    [True, pytest.param(False, marks=pytest.mark.nightly)],
    ids=["exchange", "two renames"],
)
def test_a_killed_build_leaves_a_whole_set(tmp_path: Path, exchange: bool) -> None:
    bench, tally = Bench(tmp_path, ("json",), exchange=exchange), Tally()
    bench.kill(3, Random(1), tally)
    assert sum(tally.held.values()) == 3
    bench.heal()
