"""What is told where the verifier rejects a plan, and that nothing is printed then."""

from __future__ import annotations

from copy import copy
from pathlib import Path

import pytest

from trimlang.cli import main
from trimlang.planning import sound_plan
from trimlang.planning.wrong_plan import WrongPlanError, reject_faults

HOUSE = Path(__file__).parents[2] / "examples" / "one-room.trim"
FAULTS = ("the piece A is cut twice", "the sticks do not add up")


def test_a_plan_without_faults_goes_on() -> None:
    reject_faults("base", ())


def test_the_error_keeps_whose_plan_it_is_and_what_is_wrong() -> None:
    with pytest.raises(WrongPlanError) as caught:
        reject_faults("base", FAULTS)
    # as it is made anew where it comes out of another process
    error = copy(caught.value)
    assert (error.trim, error.faults) == ("base", FAULTS)
    assert str(error) == "base: the piece A is cut twice; the sticks do not add up"


def test_a_rejected_plan_is_our_fault_and_prints_nothing(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(sound_plan, "faults", lambda _: FAULTS)
    out = tmp_path / "sheets"
    assert main(["build", str(HOUSE), "--out", str(out)]) == 3
    assert FAULTS[0] in capsys.readouterr().err
    assert not out.exists()
