"""What two jobs of one pool say differently, and where."""

from __future__ import annotations

import pytest
from syrupy.assertion import SnapshotAssertion

from tests.shared_order.jobs import TRIM, flat, pool
from trimlang.shared_order.agreement import disagreements

WALL = "  N: 40 in, left=butt, right=butt"


def told(*texts: str) -> list[str]:
    return [
        f"{finding.code} {finding.span.file}:{finding.span.line} {finding.message}"
        for _, finding in disagreements(pool(*texts))
    ]


def test_jobs_that_agree_are_told_nothing() -> None:
    other = TRIM.replace("mdf", "MDF").replace("5 1/4 in", "133.35 mm")
    first, *rest = TRIM.splitlines()[1].removeprefix("stock base: ").split(", ")
    swapped = f"{other.splitlines()[0]}\nstock base: {', '.join([*rest, first])}\n"
    assert told(flat(WALL), flat(WALL, trim=other), flat(WALL, trim=swapped)) == []


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("9/16 in thick", "5/8 in thick"),
        ("5 1/4 in tall", "4 in tall"),
        (", 5 1/4 in tall", ""),
        ("mdf", "pine, primed"),
        ("17.40", "17.90"),
        ("at most 3", "at most 2"),
        ("12 ft at 17.40, ", ""),
        ("12 ft at 17.40, ", "12 ft at 17.40, 12 ft at 17.40, "),
    ],
)
def test_trims_that_differ(old: str, new: str, snapshot: SnapshotAssertion) -> None:
    assert told(flat(WALL), flat(WALL, trim=TRIM.replace(old, new))) == snapshot


def test_every_difference_is_told() -> None:
    thin = TRIM.replace("9/16", "1/2").replace("17.40", "18")
    found = told(flat(WALL), flat(WALL, trim=thin), flat(WALL, trim=thin))
    assert [one[:4] for one in found] == ["T661"] * 4
    assert all("flat-1.trim, line 1" in one for one in found)


def test_crown_and_place() -> None:
    crown = "trim crown: 5/8 in thick, 4 in wide, spring 38 deg\nstock crown: 12 ft at 9\n"
    shoe = "trim shoe: 1/2 in thick{}\nstock shoe: 8 ft at 4\n"
    walls = f'{WALL}\nroom "Hall", trim crown, shoe, open walk\n{WALL}'
    one = TRIM + crown + shoe.format(", in front of base")
    other = TRIM + crown.replace("38", "45") + shoe.format("")
    assert told(flat(walls, trim=one), flat(walls, trim=other)) == [
        "T661 flat-2.trim:3 the spring angle of trim “crown” is 45° here, and 38° in"
        " flat-1.trim, line 3",
        "T661 flat-2.trim:5 the place of trim “shoe” is on the wall here, and in front of base in"
        " flat-1.trim, line 5",
    ]


@pytest.mark.parametrize(
    "said",
    [
        "saw: kerf 3/32 in\n",
        "saw: squares off 1/4 in\n",
        "spare 5 %\n",
        "spare covers any one piece spoiled\n",
        'currency "€"\n',
    ],
)
def test_settings_that_differ(said: str, snapshot: SnapshotAssertion) -> None:
    plain = "spare 0 %\n"
    second = plain + said if not said.startswith("spare 5") else said
    assert told(flat(WALL, settings=plain), flat(WALL, settings=second)) == snapshot


def test_a_trim_that_a_job_does_not_use_may_differ() -> None:
    other = TRIM.replace("base", "skirt").replace("9/16", "1/2")
    room = flat(WALL, trim=TRIM + other.splitlines()[0] + "\n")
    assert told(room, flat(WALL.replace("N:", "S:"), trim=TRIM)) == []


def test_a_job_that_is_under_way_is_not_pooled() -> None:
    walls = "N: 70 in, left=butt, right=butt"
    told = disagreements(pool(flat(walls), flat(walls) + "bought 1 base 12 ft\ncut ST-N-base\n"))
    assert [(one.file, finding.code) for one, finding in told] == [("flat-2.trim", "T720")]
