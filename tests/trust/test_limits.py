"""Wrong, long and misleading input: a diagnostic each, with its place."""

from __future__ import annotations

from collections.abc import Callable
from cProfile import Profile
from pathlib import Path
from typing import Final

import pytest

from tests.conftest import examples
from tests.every import every
from tests.jobs import TRIM, walls
from trimlang.cli import main
from trimlang.compiler import Result, check_job
from trimlang.diagnostics.source import MOST_LINES
from trimlang.letters import looks_like, stranger_in

RUN: Final = "N: 40 in, left=butt, right=butt"


def found(result: Result) -> set[str]:
    return {one.code for one in result.diagnostics}


@every(
    "line, code",
    [
        ("N: 40 in, left=in-corner" + "(" * 900, "T101"),
        ("N: 40 in, left=in-corner" + "(cope" * 300, "T101"),
        ("(" * 1900, "T100"),
        ("# " + "x" * 10_000_000, "T105"),
        ("N: " + "9" * 10_000 + " in, left=butt, right=butt", "T105"),
        ("N: " + "9" * 1_900 + " in, left=butt, right=butt", "T110"),
        ("N: 1/" + "9" * 1_900 + " in, left=butt, right=butt", "T110"),
        ("N: 0." + "0" * 1_900 + "1 in, left=butt, right=butt", "T110"),
        ("N: 40 1/99991 in, left=butt, right=butt", "T120"),
        ("N: 40 in, left=butt, right=butt\x00", "T101"),
        ('room "a\x00b", trim base, open walk', "T119"),
        ('room "a\x1b[2Jb", trim base, open walk', "T119"),
        ('room "a\u202eb", trim base, open walk', "T115"),
        ('room "a\u061cb", trim base, open walk', "T115"),
        ("N\u200f: 40 in, left=butt, right=butt", "T101"),
        ("\u200fN: 40 in, left=butt, right=butt", "T101"),
        ("bаse2: 40 in, left=butt, right=butt", "T118"),
        ("ｂase2: 40 in, left=butt, right=butt", "T118"),
        ("N٣: 40 in, left=butt, right=butt, left=٣", "T101"),
    ],
)
def test_one_line(line: str, code: str) -> None:
    result = check_job(walls(f"{RUN}\n{line}"))
    here = [one for one in result.diagnostics if one.code == code]
    assert here, result.diagnostics
    assert here[0].span.line == 6


def test_slips_of_one_line_are_told_up_to_a_number() -> None:
    result = check_job(walls("N: 40 in" + ",x=1" * 400))
    assert 1 < sum(one.code.startswith("T1") for one in result.diagnostics) <= 20


@pytest.mark.parametrize(
    ("encoding", "text"), [("utf-16", "N: 1"), ("latin-1", "Küche"), ("cp1252", "29⅛”")]
)
def test_other_encodings(
    encoding: str, text: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    path = tmp_path / "job.trim"
    path.write_bytes(text.replace("⅛", "").encode(encoding))
    assert main(["check", str(path)]) == 1
    assert "T604" in capsys.readouterr().err


def test_more_lines_than_any_job_has() -> None:
    result = check_job(TRIM + "\n" * MOST_LINES)
    assert "T117" in found(result)
    assert not result.ok


def test_names_of_two_alphabets() -> None:
    assert stranger_in("bаse") == 1
    assert stranger_in("ｂase") == 0
    for name in ("base", "Плинтус", "Größe", "底板", "Sockel-Küche", "кухня-2", "Ν"):
        assert stranger_in(name) is None, name
    assert looks_like("оса") == looks_like("oca")
    assert looks_like("кухня") != looks_like("kyxnya")


@pytest.mark.parametrize(
    "lines",
    [
        "oca: 40 in, left=butt, right=butt\nоса: 40 in, left=butt, right=butt",
        f'{RUN}\nroom "Oca", trim base, open walk\n{RUN}\nroom "Оса", trim base, open walk\n{RUN}',
    ],
)
def test_names_that_look_alike(lines: str) -> None:
    assert "T121" in found(check_job(walls(lines)))


def test_a_warning_does_not_hide_what_is_missing() -> None:
    """A run with an odd fraction and no ends was once left out of the job without a word."""
    result = check_job(walls("N: 12 ⅓ ' 1 ″"))
    assert found(result) == {"T113", "T225"}
    assert not result.ok


def test_sticks_that_nobody_sells() -> None:
    for stick in ("0.000001 ft at 2", "5 in at 2"):
        result = check_job(walls(RUN, settings=f"stock base: {stick}"))
        assert found(result) == {"T116"}
    assert check_job(walls(RUN, settings="on-hand base: 5 in, 6 in")).ok


def test_thousands_of_walls_are_checked() -> None:
    """The time is measured in benchmarks/long_input.py; here it is only that it is done."""
    count = examples(1000)
    lines = "\n".join(f"{n}: 40 in, left=butt, right=butt" for n in range(count))
    result = check_job(walls(lines))
    assert result.ok
    assert len(result.pieces) == count


def calls(text: str) -> int:
    """Count the calls of functions that checking a job takes: unlike time the same everywhere."""
    profile = Profile()
    # under a name of its own, so that no line was read before
    profile.runcall(check_job, text, name=f"{len(text)} characters")
    return sum(entry.callcount for entry in profile.getstats())


def many_trims(count: int) -> str:
    return "".join(
        f"trim t{one}: 1/2 in thick, 3 in tall, pine\nstock t{one}: 8 ft at 9\n"
        for one in range(count)
    )


def a_log_of_wrong_names(count: int) -> str:
    names = [f"A{number}" for number in range(count)]
    runs = "".join(f"{one}: 40 in, left=butt, right=butt\nopening 30 in\n" for one in names)
    return walls(runs) + "".join(f"cut ST-X{one}-base\n" for one in names)


def rooms_with(name: str) -> Callable[[int], str]:
    def job(count: int) -> str:
        rooms = (
            f'room "{one}" as R{one}, trim {name}{one}, open walk\n  {RUN}\n'
            for one in range(count)
        )
        return many_trims(count) + "".join(rooms)

    return job


@every(
    "job, count, step",
    [
        (a_log_of_wrong_names, 101, 20),
        (rooms_with("t"), 31, 20),
        # Near names are looked up another way among more than a hundred.
        (rooms_with("x"), 101, 10),
    ],
)
def test_each_name_takes_no_longer_where_there_are_more(
    job: Callable[[int], str], count: int, step: int
) -> None:
    # a first time, for what is worked out once
    check_job(job(20))
    # What each takes by itself, and what all take together, falls out of this difference of
    # differences: few names suffice to see what each takes for each other one.
    one, two, three = (calls(job(count + many * step)) for many in range(3))
    assert three - 2 * two + one < step**2
