"""One name for several trims that go up together."""

from fractions import Fraction

from tests import jobs
from trimlang.compiler import check_job

TRIMS = f"""\
trim frieze: 3/4 in thick, 3 1/2 in tall
trim crown: 11/16 in thick, 3 5/8 in wide, spring 38 deg, in front of frieze
trim bead: 1/4 in thick, 1/2 in tall, in front of frieze
stock frieze: 12 ft at 12.00
stock crown: 12 ft at 28.80
stock bead: 12 ft at 4.20
{jobs.TRIM}"""

CORNICE = "assembly cornice: frieze, crown, bead\n"
WALLS = "  N: 40 in, left=butt, right=in-corner(90 deg)\n  E: 50 in, right=butt\n"


def lengths(text: str) -> dict[str, Fraction]:
    result = check_job(text)
    assert {one.code for one in result.diagnostics} <= {"T214"}
    return {piece.id: piece.to_mark for piece in result.pieces}


def test_it_means_what_its_trims_mean():
    short = f'{TRIMS}{CORNICE}room "Hall", trim cornice, base, open walk\n'
    long = f'{TRIMS}room "Hall", trim frieze, crown, bead, base, open walk\n'
    assert lengths(short + WALLS) == lengths(long + WALLS)
    # each member follows what it stands on: the crown and the bead are short by the frieze
    assert (
        lengths(short + WALLS)["HA-N-bead"] == 40 - lengths(short + WALLS)["HA-N-frieze"] % 1 - 0.75
    )


def test_a_run_may_leave_it_out_whole():
    text = f'{TRIMS}{CORNICE}room "Hall", trim base, cornice, open walk\n'
    got = lengths(text + "  N: 40 in, left=butt, right=butt, no cornice\n")
    assert list(got) == ["HA-N-base"]


def test_three_may_stand_one_before_the_other():
    text = (
        f"{jobs.TRIM}trim cap: 1/2 in thick, 1 in tall, in front of base\n"
        "stock cap: 12 ft at 9.00\n"
        "trim shoe: 1/2 in thick, 3/4 in tall, in front of cap\nstock shoe: 8 ft at 5.20\n"
        'room "Hall", trim base, cap, shoe, open walk\n' + WALLS
    )
    got = lengths(text)
    assert got["HA-N-base"] - got["HA-N-cap"] == Fraction(9, 16)
    assert got["HA-N-cap"] - got["HA-N-shoe"] == Fraction(1, 2)


def test_no_trim_is_behind_itself():
    text = (
        "trim a: 1/2 in thick, 1 in tall, in front of b\nstock a: 8 ft at 5.20\n"
        "trim b: 1/2 in thick, 1 in tall, in front of a\nstock b: 8 ft at 5.20\n"
        'room "Hall", trim a, b, open walk\n' + WALLS
    )
    assert "T215" in {one.code for one in check_job(text).diagnostics}


def test_slips_are_told():
    heading = 'room "Hall", trim base, open walk\n' + WALLS
    taken = {
        one.code for one in check_job(f"{jobs.TRIM}assembly base: base\n{heading}").diagnostics
    }
    assert taken == {"T291"}
    unknown = check_job(
        f'{jobs.TRIM}assembly foot: base, shooe\nroom "Hall", trim foot, open walk\n{WALLS}'
    )
    assert [(one.code, one.span.line) for one in unknown.diagnostics] == [("T210", 3)]
    bare = check_job(
        f'{jobs.TRIM}assembly foot: base\nroom "Hall", foot, open walk\n{WALLS}'
    ).diagnostics
    assert [(one.code, one.span.line, one.remedy) for one in bare] == [
        ("T216", 4, "Write “trim foot”.")
    ]
