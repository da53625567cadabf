"""Files made in processes beside this one are those that would be made here."""

from __future__ import annotations

import os
import signal
import tempfile
from collections.abc import Callable
from multiprocessing import active_children
from pathlib import Path

import pytest

from trimlang.workers import forked as beside
from trimlang.workers.forked import RefusedError, side_by_side

BIG = os.urandom(3_000_000)


@pytest.fixture(params=[True, False], ids=["forked", "here"])
def forks(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> bool:
    monkeypatch.setattr(beside, "worth_it", lambda: request.param)
    return bool(request.param)


def refuse(why: str) -> Callable[[], dict[str, bytes]]:
    def make() -> dict[str, bytes]:
        raise RefusedError(why)

    return make


def test_both_sets_come_whole(forks: bool) -> None:
    here = os.getpid()
    found = side_by_side(
        lambda: {"big": BIG, "empty": b"", "who": str(os.getpid()).encode()},
        lambda: {"mine": b"\n{}", "where": str(os.getpid()).encode()},
    )
    assert list(found) == ["big", "empty", "who", "mine", "where"]
    assert (found["big"], found["empty"], found["mine"]) == (BIG, b"", b"\n{}")
    assert len({found["who"], found["where"], str(here).encode()}) == (3 if forks else 1)
    assert not active_children()


def test_the_first_reason_is_told(forks: bool) -> None:
    for first, second, why in (
        (refuse("no such language é"), dict, "no such language é"),
        (dict, refuse("no Pango"), "no Pango"),
        (refuse("one"), refuse("two"), "one"),
    ):
        with pytest.raises(RefusedError, match=f"^{why}$"):
            side_by_side(first, second)
        assert not active_children()


def test_what_is_lost_with_the_process_is_made_here(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(beside, "worth_it", lambda: True)
    here = os.getpid()

    def dies() -> dict[str, bytes]:
        if os.getpid() != here:
            os.kill(os.getpid(), signal.SIGKILL)
        return {"tickets": b"made after all"}

    def fails() -> dict[str, bytes]:
        if os.getpid() != here:
            raise MemoryError
        return {"tickets": b"made after all"}

    for make in (dies, fails):
        assert side_by_side(make, dict) == {"tickets": b"made after all"}
        assert not active_children()


def test_a_stop_ends_the_processes_too(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(beside, "worth_it", lambda: True)
    here = os.getpid()

    def stopped(*_: object) -> None:
        raise KeyboardInterrupt

    def stops() -> dict[str, bytes]:
        os.kill(here, signal.SIGUSR1)
        return waits()

    def waits() -> dict[str, bytes]:
        signal.pause()
        return {}

    # not SIGINT, which is ignored where the tests run in the background
    before = signal.signal(signal.SIGUSR1, stopped)
    try:
        with pytest.raises(KeyboardInterrupt):
            side_by_side(waits, stops)
    finally:
        signal.signal(signal.SIGUSR1, before)
    assert not active_children()


def test_what_a_process_keeps_on_the_disk_goes_with_it(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(beside, "worth_it", lambda: True)

    def leaves() -> dict[str, bytes]:
        return {"fonts": tempfile.mkdtemp().encode()}

    left = side_by_side(leaves)["fonts"].decode()
    assert left
    assert not Path(left).exists()
