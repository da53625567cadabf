"""Tries mutants in forks of one warm test run.

pytest collects the tests once.  A first fork runs all of them and notes which lines of the
code each reaches and how long it takes.  Then each mutant gets a fork of its own, in which
the tests that reach its statement run, quickest first, until one fails.
"""

from __future__ import annotations

import gc
import importlib
import json
import os
import pickle
import resource
import signal
import sys
from collections import defaultdict
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from functools import _lru_cache_wrapper
from pathlib import Path
from time import process_time
from typing import Any

import pytest
from _pytest.runner import runtestprotocol
from coverage import Coverage
from hypothesis import Phase, settings

from benchmarks.mutation.mutants import Mutant

CAUGHT = ("caught", "endless", "died")
MEMORY = 3 << 30
"""More than this is a mutant's appetite."""
# a mutant's test may take as much longer as this before it is taken for endless (CPU seconds)
TIMES, AND = 10, 3.0
MOST_EXAMPLES = 15
AT_MOST = 600
"""Seconds by the clock, for one that waits."""


@dataclass(frozen=True)
class Seen:
    """What the first run saw of a test."""

    seconds: float
    lines: frozenset[tuple[str, int]]


@dataclass
class Trial:
    """A pytest plugin that tries mutants in the place of running the tests."""

    root: Path
    mutants: list[Mutant]
    tests: Callable[[Mutant], tuple[str, ...]]
    results: Path

    def pytest_collection(self) -> None:
        """Examples are the same for every mutant, and nobody reads the smallest that fails."""
        settings.register_profile(
            "mutation",
            deadline=None, derandomize=True, database=None,
            phases=(Phase.explicit, Phase.generate), report_multiple_bugs=False,
        )  # fmt: skip
        settings.load_profile("mutation")

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        """Run all tests once, then some for each mutant."""
        items = session.items
        for item in items:
            _with_fewer_examples(item)
        seen, loaded = in_fork(lambda: _first_run(items, self.root, self.mutants))
        for name in loaded:
            with suppress(Exception):
                importlib.import_module(name)
        _forget()
        gc.collect()
        gc.freeze()
        seconds = sum(one.seconds for one in seen)
        say(f"{len(items)} tests, {seconds:.0f} s; {len(self.mutants)} mutants")
        caught: defaultdict[str, set[str]] = defaultdict(set)
        with self.results.open("a", encoding="utf-8") as kept:
            for number, mutant in enumerate(self.mutants, start=1):
                before = caught[mutant.module + mutant.function]
                chosen = _that_reach(mutant, self.tests(mutant), items, seen)
                # what noticed one change to a function most likely notices another
                chosen.sort(key=lambda place: items[place].nodeid not in before)
                status, by = _try(mutant, [items[place] for place in chosen], seen, chosen)
                if status == "caught":
                    before.add(by)
                row = {"key": mutant.key, "status": status, "by": by, "tests": len(chosen)}
                kept.write(json.dumps(row, ensure_ascii=False) + "\n")
                kept.flush()
                if number % 100 == 0:
                    say(f"{number} tried")
        return True


def _with_fewer_examples(item: pytest.Item) -> None:
    """What few examples notice, many do; a survivor would cost all of them."""
    test = getattr(item, "obj", None)
    asked = getattr(test, "_hypothesis_internal_use_settings", None)
    if asked is not None:
        fewer = settings(asked, max_examples=min(asked.max_examples, MOST_EXAMPLES))
        test._hypothesis_internal_use_settings = fewer


def say(text: str) -> None:
    """Tell how far it is, past pytest's capturing."""
    os.write(2, f"{text}\n".encode())


def _first_run(
    items: list[pytest.Item], root: Path, mutants: list[Mutant]
) -> tuple[list[Seen], list[str]]:
    """Run every test as it is; they must pass."""
    before = set(sys.modules)
    modules = {
        str(root / (mutant.module.replace(".", "/") + ".py")): mutant.module for mutant in mutants
    }
    watch = Coverage(data_file=None, config_file=False, include=sorted(modules))
    watch.start()
    took: list[float] = []
    for place, (item, after) in enumerate(zip(items, [*items[1:], None], strict=True)):
        _forget()
        watch.switch_context(str(place))
        began = process_time()
        for report in runtestprotocol(item, nextitem=after, log=False):
            if report.failed:
                say(f"{item.nodeid} fails as it is:\n{report.longreprtext}")
                raise SystemExit(1)
        took.append(process_time() - began)
    watch.stop()
    lines: defaultdict[str, set[tuple[str, int]]] = defaultdict(set)
    data = watch.get_data()
    for file in data.measured_files():
        for line, places in data.contexts_by_lineno(file).items():
            for place in places:
                lines[place].add((modules[file], line))
    found = [Seen(seconds, frozenset(lines[str(at)])) for at, seconds in enumerate(took)]
    return found, sorted(set(sys.modules) - before)


def _forget() -> None:
    """Empty the compiler's caches, which hold what the unbroken code worked out."""
    for thing in gc.get_objects():
        if isinstance(thing, _lru_cache_wrapper) and thing.__module__.startswith(
            ("trimlang.lengths", "trimlang.joinery", "trimlang.stock")
        ):
            thing.cache_clear()


def _that_reach(
    mutant: Mutant, within: tuple[str, ...], items: list[pytest.Item], seen: list[Seen]
) -> list[int]:
    """Return the places of the tests that run a mutant's statement, the quickest first."""
    statement = {(mutant.module, line) for line in range(mutant.first, mutant.last + 1)}
    reach = [
        place
        for place, one in enumerate(seen)
        if items[place].nodeid.startswith(within) and not statement.isdisjoint(one.lines)
    ]
    return sorted(reach, key=lambda place: seen[place].seconds)


def _try(
    mutant: Mutant, tests: list[pytest.Item], seen: list[Seen], chosen: list[int]
) -> tuple[str, str]:
    def run() -> str:
        mutant.put_in_place()
        signal.alarm(AT_MOST)
        for at, item in enumerate(tests):
            os.ftruncate(note, 0)
            os.pwrite(note, item.nodeid.encode(), 0)
            # counted in CPU time, so that a busy machine makes nothing endless
            signal.setitimer(signal.ITIMER_VIRTUAL, seen[chosen[at]].seconds * TIMES + AND)
            after = tests[at + 1] if at + 1 < len(tests) else None
            if any(report.failed for report in runtestprotocol(item, nextitem=after, log=False)):
                return item.nodeid
        return ""

    note = os.memfd_create("note")
    try:
        failed = in_fork(run, quiet=True)
    except Died as end:
        by = os.pread(note, 4096, 0).decode()
        endless = end.number in (signal.SIGVTALRM, signal.SIGALRM)
        return ("endless" if endless else "died"), by
    finally:
        os.close(note)
    return ("caught", failed) if failed else ("survived" if tests else "not reached", "")


class Died(Exception):  # noqa: N818
    """A fork ended by a signal or without an answer."""

    def __init__(self, number: int) -> None:
        super().__init__(number)
        self.number = number


def in_fork(work: Callable[[], Any], *, quiet: bool = False) -> Any:
    """Return what ``work`` returns in a copy of this process, which changes nothing here."""
    reading, writing = os.pipe()
    child = os.fork()
    if not child:
        code = 1
        try:
            os.close(reading)
            os.setpgid(0, 0)
            if quiet:
                resource.setrlimit(resource.RLIMIT_AS, (MEMORY, MEMORY))
                nowhere = os.open(os.devnull, os.O_WRONLY)
                os.dup2(nowhere, 1)
                os.dup2(nowhere, 2)
            answer = pickle.dumps(work())
            with os.fdopen(writing, "wb") as pipe:
                pipe.write(answer)
            code = 0
        finally:
            os._exit(code)
    os.close(writing)
    with os.fdopen(reading, "rb") as pipe:
        answer = pipe.read()
    _, status = os.waitpid(child, 0)
    with suppress(ProcessLookupError):
        os.killpg(child, signal.SIGKILL)
    if status:
        raise Died(os.WTERMSIG(status) if os.WIFSIGNALED(status) else 0)
    return pickle.loads(answer)  # noqa: S301  our own copy wrote it
