"""What a message tells to install serves a checkout and a wheel alike."""

from __future__ import annotations

import shlex
import sys
import tomllib

import pytest
from packaging.requirements import Requirement

from tests.conftest import ROOT
from trimlang.extras import DRAWING, EDITOR, WATCH, Extra


@pytest.mark.parametrize("extra", [DRAWING, EDITOR, WATCH], ids=lambda extra: extra.name)
def test_a_message_names_this_python_and_what_the_extra_wants(extra: Extra) -> None:
    said, command = extra.remedy().split(": ", 1)
    assert said == f"{extra.use} needs {extra.library}"
    *install, wanted = shlex.split(command)
    assert install == [sys.executable, "-m", "pip", "install"]
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    (listed,) = project["optional-dependencies"][extra.name]
    assert Requirement(wanted) == Requirement(listed)
    assert extra.library == Requirement(wanted).name


def test_only_the_library_itself_is_told_as_missing() -> None:
    assert WATCH.lacks(ModuleNotFoundError(name="watchfiles.main"))
    assert not WATCH.lacks(ModuleNotFoundError(name="watchfiles_of_mine"))
    assert not WATCH.lacks(ModuleNotFoundError("nameless"))
