"""How walls meet, and that one mistake is reported once."""

from collections.abc import Callable

import pytest

from tests.jobs import TRIM, walls
from trimlang.compiler import Result
from trimlang.joint_row import Fit

Check = Callable[[str], Result]


def codes(result: Result) -> list[str]:
    return [finding.code for finding in result.diagnostics]


def test_an_angle_measured_at_one_side_holds_at_both(check: Check) -> None:
    room = check(
        walls("N: 40 in, left=butt, right=in-corner(91 deg)\nE: 50 in, left=in-corner, right=butt")
    ).job.rooms[0]
    assert room.runs[0].right.corner == room.runs[1].left.corner == 91


def test_the_walk_closes_on_the_first_run(check: Check) -> None:
    text = TRIM + (
        'room "Study", trim base\n'
        "N: 40 in, left=out-corner, right=in-corner\nE: 50 in, left=in-corner, right=in-corner"
    )
    assert "T301" in codes(check(text))
    assert "T301" not in codes(check(text.replace("trim base\n", "trim base, open walk\n")))


@pytest.mark.parametrize(
    ("lines", "fits"),
    [
        ("N: 40 in, left=butt, right=in-corner\nE: 50 in, left=in-corner cope, right=butt", "SC"),
        ("N: 40 in, left=butt, right=in-corner cope\nE: 50 in, left=in-corner, right=butt", "CS"),
        ("N: 40 in, left=butt, right=in-corner\nE: 50 in, left=in-corner, right=butt", "MM"),
    ],
)
def test_a_cope_has_a_square_mate(check: Check, lines: str, fits: str) -> None:
    runs = check(walls(lines)).job.rooms[0].runs
    found = "".join(fit.name[0] for fit in (runs[0].right.fit, runs[1].left.fit))
    assert found == fits


def test_a_coped_room_has_one_coped_side_a_corner_and_no_piece_with_two(check: Check) -> None:
    text = (
        TRIM
        + 'room "Study", trim base\ncorners: in-corner cope\n'
        + "".join(f"{side}: 80 in, left=in-corner, right=in-corner\n" for side in "NESW")
    )
    runs = check(text).job.rooms[0].runs
    for one, other in zip(runs, (*runs[1:], runs[0]), strict=True):
        assert {one.right.fit, other.left.fit} == {Fit.COPED, Fit.SQUARE}
    assert all({run.left.fit, run.right.fit} == {Fit.COPED, Fit.SQUARE} for run in runs)


@pytest.mark.parametrize(
    "line",
    [
        "N: 40 furlgs, left=butt, right=in-corner",
        "N: 40 in, left=butt",
        "N 40 in, left=butt, right=in-corner",
        "opning 32 in",
    ],
)
def test_a_wall_that_is_lost_makes_no_second_mistake(check: Check, line: str) -> None:
    result = check(
        walls(
            "A: 40 in, left=butt, right=out-corner\n"
            + line
            + "\nE: 50 in, left=in-corner, right=butt"
        )
    )
    assert len(result.diagnostics) == 1


def test_a_trim_line_that_is_lost_makes_no_second_mistake(check: Check) -> None:
    text = walls("N: 40 in, left=out-corner, right=butt")
    assert codes(check(text.replace("9/16 in thick", "9/16 inn thik"))) == ["T101"]
    assert codes(check(text.replace("at 17.40", "fr 17.40"))) == ["T101"]


def test_settings_of_a_room_win_over_the_files(check: Check) -> None:
    text = (
        TRIM
        + "taken point\nround to 1/8 in\n"
        + 'room "A", trim base, open walk\ntaken wall\nN: 40 in, left=out-corner, right=butt\n'
        + 'room "B", trim base, open walk\nN: 40 in, left=out-corner, right=butt\n'
        + 'room "C", trim base, open walk, taken wall\n'
        + "N: 40 in, left=out-corner, right=butt, taken point\n"
    )
    result = check(text)
    assert result.ok
    assert [piece.length > 40 for piece in result.pieces] == [True, False, False]
    assert all((piece.length * 8).denominator == 1 for piece in result.pieces)


def test_room_tags_are_stable_and_unique(check: Check) -> None:
    def tags(*names: str) -> list[str]:
        lines = "".join(
            f'room "{name}", trim base, open walk\nN: 40 in, left=butt, right=butt\n'
            for name in names
        )
        return [room.tag for room in check(TRIM + lines).job.rooms]

    assert tags("Study", "Back bedroom", "Bedroom 2", "Stairs", "Élan", "12") == [
        "ST",
        "BB",
        "B2",
        "ST2",
        "ÉL",
        "12",
    ]
    assert tags("Study", "Hall")[:2] == tags("Study", "Hall", "Stairs")[:2]


def test_a_missing_thickness_is_said_once_a_trim(check: Check) -> None:
    lines = "".join(f"{n}: 40 in, left=out-corner, right=out-corner\n" for n in range(4))
    text = walls(lines).replace("9/16 in thick, ", "")
    assert codes(check(text)) == ["T211"]


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("N: 40 in, left=butt, right=out-corner(90 deg, 91 deg)", "T209"),
        ("N: 40 in, left=butt, right=butt, no splice, splice", "T724"),
        ('N: 40 in, left=butt, right=butt, note "a", note "b"', "T209"),
        ("N: 9 ft 14 in, left=butt, right=butt", "T113"),
        ("N: 9.5 ft 3 in, left=butt, right=butt", "T113"),
        ("N: 40,5 in, left=butt, right=butt", "T114"),
        ("N: 2,740 mm, left=butt, right=butt", "T114"),
    ],
)
def test_what_cannot_both_be_meant(check: Check, line: str, code: str) -> None:
    assert codes(check(walls(line))) == [code]


def test_a_setting_given_twice_is_told(check: Check) -> None:
    run = "N: 40 in, left=butt, right=butt"
    text = walls(run, settings="saw: kerf 1/8 in\nspare 5 %\nsaw: kerf 3/32 in")
    assert codes(check(text)) == ["T207"]
    assert codes(check(walls(run, settings="round butt up\nround open up"))) == []


def test_a_misspelt_heading_keeps_its_walls_from_the_room_above(check: Check) -> None:
    run = "N: 40 in, left=butt, right=butt"
    assert codes(check(walls(f"{run}\nrom “Hall”, trim base\n{run}"))) == ["T100"]
    assert codes(check(walls(f"{run}\nroom Hall, trim base\n{run}"))) == ["T101"]
