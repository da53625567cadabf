"""Loose pieces: cut to the length that the file gives, on the same sticks as all else."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.jobs import BASE, CROWN, CROWN_STOCK, TWELVE_FEET
from trimlang.compiler import Result, check_job, compile_job
from trimlang.joinery.piece import Piece, PieceKind

TRIMS = f"""\
{BASE}
trim pine: 3/4 in thick, 1 1/2 in tall
{TWELVE_FEET}
stock pine: 8 ft at 6.20
"""


def job(lines: str, *, heading: str = 'room "Hall closet", trim base, open walk') -> str:
    return f"{TRIMS}{heading}\n  N: 40 in, left=butt, right=butt\n{lines}\n"


def loose(result: Result) -> list[Piece]:
    return [piece for piece in result.pieces if piece.kind is PieceKind.LOOSE]


def codes(text: str) -> list[str]:
    return [one.code for one in check_job(text).diagnostics]


def test_each_of_a_kind_is_a_piece_of_its_own_as_long_as_the_file_says():
    result = compile_job(job('  piece "shelf cleat", 4 of 22 1/2 in, trim pine, square'))
    pieces = loose(result)
    assert [piece.id for piece in pieces] == [f"HC-shelf-cleat-pine-{n}" for n in range(1, 5)]
    assert {piece.length for piece in pieces} == {Fraction(45, 2)}
    assert {piece.left.setting for piece in pieces} == {0}
    # 4 × 22 1/2 in and the kerfs between them lie on one stick of 8 ft
    (plan,) = (plan for plan in result.plans if plan.trim == "pine")
    assert sorted(place.piece for stick in plan.sticks for place in stick.places) == [
        piece.id for piece in pieces
    ]
    assert len(plan.sticks) == 1


def test_nothing_is_added_at_a_mitred_end():
    """A run of that length round an outside corner would grow by the trim's thickness."""
    (piece,) = loose(
        check_job(
            job('  piece "toe kick", 31 1/4 in, trim base, left=out-corner(90 deg), right=butt')
        )
    )
    assert piece.length == Fraction(125, 4)
    assert piece.left.setting == 45
    assert piece.face == Fraction(125, 4)
    assert piece.back == Fraction(125, 4) - Fraction(9, 16)


def test_in_a_room_with_one_trim_a_piece_need_not_name_it():
    (piece,) = loose(check_job(job('  piece "stop", 22 in')))
    assert piece.trim == "base"
    two = job('  piece "stop", 22 in', heading='room "Hall closet", trim base, pine, open walk')
    assert codes(two) == ["T280"]


def test_a_room_may_hold_nothing_but_loose_pieces():
    text = f'{TRIMS}room "Shop"\n  piece "door stop", 2 of 80 in, trim pine\n'
    result = compile_job(text)
    assert [piece.id for piece in result.pieces] == ["SH-door-stop-pine-1", "SH-door-stop-pine-2"]
    assert [one.code for one in result.diagnostics] == ["T214"]  # base is not used


@pytest.mark.parametrize("end", ["return", "splice", "plumb", "level", "rake"])
def test_an_end_that_only_a_wall_has_is_refused(end: str):
    assert codes(job(f'  piece "stop", 22 in, left={end}')) == ["T281"]


def test_slips_are_all_told():
    wrong = """\
  piece "stop", 22 in, trim pin
  piece "cleat", 0 of 22 in, trim pine
  piece "cleat", 14 ft, trim pine
  piece "kick", 13 ft, trim base
  piece "kick", 2 ft, trim base"""
    # how long a stick is is asked once all pieces are known
    assert sorted(codes(job(wrong))) == ["T210", "T235", "T282"]
    assert codes(job('  piece "kick", 13 ft, trim base')) == ["T214", "T420"]
    assert "T220" in codes(f'{TRIMS}piece "kick", 3 ft, trim base')


def test_a_label_of_a_run_is_not_taken_again():
    (piece,) = loose(check_job(job('  piece "n", 22 in')))
    assert piece.id == "HC-n-2-base"


def test_crown_is_as_long_along_its_wall_edge():
    text = (
        f"{CROWN}\n{CROWN_STOCK}\n"
        'room "Study", trim crown, open walk\n'
        '  piece "sample", 20 in, left=out-corner(90 deg), right=open\n'
    )
    (piece,) = loose(check_job(text))
    assert piece.to_mark == 20
    assert piece.length > 20


@given(
    st.integers(1, 6),
    st.integers(8, 90 * 16),
    st.sampled_from(("open", "butt", "in-corner", "out-corner")),
    st.sampled_from(("open", "butt", "in-corner", "out-corner")),
)
def test_a_length_on_the_tape_stays_and_none_is_lost(count, sixteenths, left, right):
    long = Fraction(sixteenths, 16)
    line = f'  piece "stop", {count} of {sixteenths}/16 in, trim pine, left={left}, right={right}'
    result = check_job(job(line))
    if any(one.code in ("T122", "T420") for one in result.diagnostics):
        return
    assert [piece.length for piece in loose(result)] == [long] * count
