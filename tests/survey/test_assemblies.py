"""One name for several trims that go up together."""

from fractions import Fraction

from tests import jobs
from tests.jobs import CASE_STOCK, CROWN_STOCK, SHOE_STOCK
from trimlang.compiler import check_job

TRIMS = f"""\
trim frieze: 3/4 in thick, 3 1/2 in tall
trim crown: 11/16 in thick, 3 5/8 in wide, spring 38 deg, in front of frieze
trim bead: 1/4 in thick, 1/2 in tall, in front of frieze
stock frieze: 12 ft at 12.00
{CROWN_STOCK}
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
        f"trim shoe: 1/2 in thick, 3/4 in tall, in front of cap\n{SHOE_STOCK}\n"
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


HANG = f"""\
trim frieze: 3/4 in thick, 3 1/2 in tall
trim crown: 11/16 in thick, 4 in wide, spring 30 deg
trim bead: 1/4 in thick, 1/2 in tall
stock frieze: 12 ft at 12.00
{CROWN_STOCK}
stock bead: 12 ft at 4.20
assembly cornice: frieze, crown in front of frieze, bead in front of crown
"""


def test_an_assembly_says_what_its_trims_stand_in_front_of():
    text = f"""{jobs.TRIM}{HANG}
room "Hall", trim base, cornice, open walk
  N: 40 in, left=butt, right=in-corner(90 deg), cornice left=return
  E: 50 in, right=butt
  opening 30 in
  E2: 20 in, right=out-corner(90 deg)
  F: 30 in, right=butt, cornice return
"""
    got = lengths(text)
    # The crown stands out 4 × sin 30° = 2 in, 2 3/4 in from the wall with its frieze. At the return
    # its ceiling edge goes on past the run by 2 in, and the bead's face by 1/4 in more.
    assert got["HA-N-crown"] == 40 - Fraction(3, 4)
    assert got["HA-N-bead"] == 40 + Fraction(9, 4) - Fraction(11, 4)
    # round the crown's return, and its frieze's, to the wall
    assert got["HA-N-bead-left-return"] == 3
    # all of the cornice goes on over the opening, and 3 in past the outside corner with its face
    assert got["HA-E-frieze"] == 100 + Fraction(3, 4)
    assert got["HA-E-bead"] == 100 - Fraction(11, 4) + 3
    assert got["HA-F-bead"] == 30 + 3 + Fraction(9, 4)


def test_the_trims_own_line_may_say_the_same_and_nothing_else():
    text = HANG.replace("4 in wide", "4 in wide, in front of frieze")
    walls = f'room "Hall", trim cornice, open walk\n{WALLS}'
    assert lengths(jobs.TRIM + text + walls) == lengths(jobs.TRIM + HANG + walls)
    bad = text.replace("crown in front of frieze", "crown in front of bead")
    found = {one.code: one for one in check_job(jobs.TRIM + bad + walls).diagnostics}
    assert found["T483"].span.line == 9


def test_without_its_crown_a_bead_goes_on_what_is_behind_that():
    text = jobs.TRIM + HANG + 'room "Hall", trim base, cornice, open walk\n'
    text += "  N: 40 in, left=butt, right=in-corner(90 deg), no crown\n"
    text += "  E: 50 in, right=butt, no crown\n  F: 30 in, left=butt, right=butt\n"
    got = lengths(text)
    assert got["HA-N-bead"] == 40 - Fraction(3, 4)


def test_its_name_stands_wherever_trims_on_a_wall_are_named():
    named = f"""{jobs.TRIM}{HANG}block corbel: 3 in wide, 6 in tall, 5 in thick, at 9.00
room "Hall", trim base, WORD, open walk
  N: 40 in, left=butt, right=in-corner(90 deg), WORD left=return, WORD right=cope
  E: 50 in, right=butt
  cabinets 30 in, stops WORD
  E2: 20 in, left=butt, right=in-corner(block corbel stops WORD)
  F: 30 in, right=butt, WORD butt, no bead
"""
    short = named.replace("WORD", "cornice")
    long = named
    for end in ("left=return", "right=cope", "butt"):
        each = (f"{one} {end}" for one in ("frieze", "crown", "bead"))
        long = long.replace(f"WORD {end}", ", ".join(each))
    # the last run gets no bead, so an end of the cornice there is none of it
    long = long.replace("bead butt, ", "").replace("stops WORD", "stops frieze and crown and bead")
    long = long.replace("WORD", "frieze, crown, bead")
    assert lengths(short.replace("stops cornice)", "stops frieze and crown)")) == lengths(
        long.replace("stops frieze and crown and bead)", "stops frieze and crown)")
    )


FOOT = f"""{jobs.TRIM}\
trim cap: 11/16 in thick, 1 1/8 in tall
trim shoe: 1/2 in thick, 3/4 in tall
stock cap: 12 ft at 9.60
stock shoe: 12 ft at 7.10
assembly foot: base, cap on base, shoe in front of base
"""


def test_a_cap_lies_on_its_base_against_the_wall():
    got = lengths(f"""{FOOT}room "Hall", trim foot, open walk
  N: 40 in, left=butt, right=in-corner(90 deg)
  E: 50 in, right=out-corner(90 deg)
  S: 30 in, right=butt
""")
    # as long as the wall; round the corner its own thickness further, whatever the base's is
    assert (got["HA-N-cap"], got["HA-E-cap"]) == (40, 50 + Fraction(11, 16))
    assert (got["HA-N-shoe"], got["HA-E-base"]) == (40 - Fraction(9, 16), 50 + Fraction(9, 16))


def test_a_cap_goes_with_its_base():
    case = f"trim case: 13/16 in thick, 2 1/4 in wide\n{CASE_STOCK}\n"
    text = f"""{FOOT}{case}block plinth: 3 in wide, 6 in tall, 1 1/8 in thick, at 6.50
room "Hall", trim foot, open walk
  N: 40 in, left=butt, right=butt
  window 30 in, sill 6 in
  E: 50 in, left=butt, right=butt
  door 30 in, casing case, height 80 in, plinths plinth
  S: 50 in, left=butt, right=butt
"""
    result = check_job(text)
    # base 5 1/4 in and cap 1 1/8 in: over a sill at 6 in and a plinth of 6 in
    assert {one.code for one in result.diagnostics} == {"T434"}
    by_id = {piece.id: piece for piece in result.pieces}
    assert "HA-E-base" not in by_id, "the base goes on below the window"
    assert by_id["HA-E-cap"].to_mark == 50
    assert [one.text for one in by_id["HA-E-cap"].remarks] == [
        one.text for one in by_id["HA-N-base"].remarks if "block" in one.text
    ]


def test_a_crown_has_no_top_to_lie_on():
    wrong = HANG.replace("bead in front of crown", "bead on crown")
    found = check_job(f'{jobs.TRIM}{wrong}room "Hall", trim cornice, open walk\n{WALLS}')
    assert "T215" in {one.code for one in found.diagnostics}


def test_one_trim_is_asked_for_where_one_is_meant():
    wrong = f"""{jobs.TRIM}{HANG}stock cornice: 12 ft at 40.00
on-hand cornice: 40 in
head over: cornice
room "Hall", trim base, open walk, taken point of cornice
  N: 40 in, left=butt, right=butt
  opening 30 in, casing cornice, height 80 in, jambs cornice
  E: 50 in, left=butt, right=butt
  piece "cleat", 4 of 22 1/2 in, trim cornice, square
  boxes N: 1, 9 in tall, margin 4 in, trim cornice
"""
    found = check_job(wrong).diagnostics
    at = [one.span.line for one in found if one.code == "T484"]
    assert at == [10, 11, 12, 13, 15, 15, 17, 18]
    assert "T210" not in {one.code for one in found}


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


def test_an_assembly_that_cannot_be_read_is_no_unknown_trim():
    walls = (
        'room "Hall", trim cornice, open walk\n'
        "  N: 40 in, left=butt, right=butt, cornice return\n"
        "  opening 30 in, stops cornice\n"
        "  E: 50 in, left=butt, right=butt, no cornice\n"
    )
    for wrong in ("assembly cornice: frieze + crown", "stack cornice: frieze, crown"):
        found = check_job(f"{TRIMS}{wrong}\nstock cornice: 12 ft at 40.00\n{walls}").diagnostics
        assert [one.code for one in found] == ["T101"], wrong
