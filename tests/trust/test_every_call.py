"""Whatever happens to the disk under a command, each file is the old one or the new one.

Every call of every command is tried, in every way, by ``python -m benchmarks.power_cut
--every-call``; here a part of them.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.trust.bad_disk import Trouble
from tests.trust.cut_commands import COMMANDS, points, try_at

AT_MOST = 2
"""Points of each command at which it is ended here; of a build, which takes long, one is tried."""


@pytest.mark.parametrize("name", COMMANDS)
def test_trouble_leaves_the_old_or_the_new(name: str, tmp_path: Path) -> None:
    count = points(name, tmp_path)
    assert count > 4
    some = range(1, count + 1, -(-count // AT_MOST))
    ended, each = some, range(1, count + 1)
    if name.startswith("build"):
        ended = each = some[1:2]
    for at in ended:
        try_at(name, at, tmp_path, Trouble.POWER_CUT)
    for at in each:
        try_at(name, at, tmp_path, Trouble.FAILS_ONCE)
    try_at(name, some[-1], tmp_path, Trouble.FULL)
