"""Hover tells something true of every number that a person wrote."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.jobs import CASE, CROWN, TRIM
from trimlang.editor.hover import hover
from trimlang.editor.open_job import JobReading, read_job
from trimlang.editor.tokens import tokens
from trimlang.incremental.cached_steps import CachedSteps
from trimlang.language.number_rules import NUMBER_TOKENS

EXAMPLES = Path(__file__).parents[2] / "examples"
JOB = f"""{TRIM}{CROWN}
stock crown: 8 ft, 16 ft at 1.45 a foot, at least 2 sticks
{CASE}
stock case: pack of 4 2.4 m at 33.00
saw: kerf 3/32 in
tax 8.25 %
room "Hall", trim base, crown, casing case, open walk
  N: 29 1/8 in, left=butt, right=out-corner(91 deg), floor gap 3/16 in
  E: 740 mm, left=out-corner, right=butt
  door 32 in, height 80 in
  newel 3 1/2 in
  piece "cleat", 3 of 22 1/2 in, trim base, square, note "closet"
  boxes N: 2, 12 in tall, margin 4 in, trim case
"""


def reading(text: str) -> JobReading:
    return read_job(None, "job.trim", {Path("job.trim"): text}, CachedSteps())


@pytest.fixture(scope="module")
def job() -> JobReading:
    return reading(JOB)


def told(job: JobReading, line: str, number: str) -> str:
    at = next(at for at, text in enumerate(JOB.splitlines(), 1) if text.strip().startswith(line))
    column = JOB.splitlines()[at - 1].index(number) + 1
    found = hover(job, "job.trim", at, column, {})
    assert found is not None
    return found.text


@pytest.mark.parametrize(
    ("line", "number", "said"),
    [
        ("trim base", "1/4 in tall", "**5 1/4 in** = 133.4 mm\n\ntall: The trim's height"),
        ("trim crown", "38", "**38 deg**\n\nspring: The angle that a crown's back makes"),
        # 12 ft for 17.40 is 1.45 a foot
        ("stock base", "17.40", "**17.40**\n\nThat is 1.45 a foot, 4.76 a metre."),
        ("stock crown", "16", "A stick of 16 ft comes to 23.20."),
        ("stock crown", "2 sticks", "sticks: at least 10 sticks: the yard sells so many"),
        ("stock case", "33.00", "One stick comes to 8.25."),
        ("saw", "3/32", "**3/32 in** = 2.4 mm\n\nsaw: kerf: what each cut turns to dust."),
        ("tax", "8.25", "sales tax on the order's goods"),
        ("N:", "91", "**91 deg**\n\n- HA-N-base: outside corner, saw at **44 1/2° right**"),
        ("N:", "3/16", "floor gap: under a run."),
        ("door", "80", "**80 in** = 6 ft 8 in = 2032 mm\n\nheight: The opening's height"),
        ("newel", "3 1/2", "newel: A newel: trim stops at it"),
        ("boxes", "12", "boxes: Frames on a wall, all alike: how many, how tall"),
    ],
)
def test_a_number_says_how_much_it_is_and_of_what(
    job: JobReading, line: str, number: str, said: str
) -> None:
    assert said in told(job, line, number)


def test_a_wall_in_the_other_unit_is_told_with_its_pieces(job: JobReading) -> None:
    assert "- the wall is 29.134 in" in told(job, "E:", "740")


def test_a_loose_piece_s_own_line_says_why_it_is_so_long(job: JobReading) -> None:
    for place in ("cleat", "22 1/2"):
        said = told(job, "piece", place)
        assert said.startswith("**HA-cleat-base-1**: **22 1/2 in**")
        assert "- as long as it was measured: 22 1/2 in" in said
        assert said.endswith("likewise: HA-cleat-base-2, HA-cleat-base-3")


@pytest.mark.parametrize("name", ["ferncote.trim", "metric.trim", "site-log.trim"])
def test_no_number_of_an_example_is_without_an_answer(name: str) -> None:
    read = read_job(EXAMPLES / name, name, {}, CachedSteps())
    numbers = [
        (file, line, token.column or 1)
        for file, lines in read.lines.items()
        for line, text in enumerate(lines, 1)
        for token in tokens(text)
        if token.type in NUMBER_TOKENS
    ]
    assert len(numbers) > 30
    # A few of a large job: each takes the pieces of its wall anew.
    few = numbers[:: max(len(numbers) // 30, 1)]
    assert not [one for one in few if hover(read, *one, {}) is None]
