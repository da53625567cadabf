"""Wherever a command is killed or the power is cut, each file is the old one or the new one.

Every call of every command is tried by ``python -m benchmarks.power_cut --every-call``; here a
part of them.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.trust.cut_commands import COMMANDS, points, try_at

AT_MOST = 2
"""Points of each command that are tried here; of a build, which takes long, one in its midst."""


@pytest.mark.parametrize("name", COMMANDS)
def test_a_cut_leaves_the_old_or_the_new(name: str, tmp_path: Path) -> None:
    count = points(name, tmp_path)
    assert count > 4
    some = range(1, count + 1, -(-count // AT_MOST))
    for at in some[1:2] if name.startswith("build") else some:
        try_at(name, at, tmp_path, loses=at % 3 > 0)
