"""The tape's marks against Python's own exact arithmetic (``fractions``)."""

from fractions import Fraction
from math import floor

from hypothesis import given
from hypothesis import strategies as st

from trimlang.lengths.tape import (
    MM,
    Unit,
    decimal_text,
    feet_text,
    is_tape_fraction,
    length_text,
    mixed_number,
    sixty_fourths,
    steps_down,
    steps_nearest,
    steps_up,
)

LENGTHS = st.fractions(min_value=0, max_value=2000, max_denominator=10_000)
STEPS = st.sampled_from([Fraction(1, 16), Fraction(1, 32), Fraction(1, 8), MM])


def test_every_sixteenth_reads_as_on_the_tape() -> None:
    names = "0 1/16 1/8 3/16 1/4 5/16 3/8 7/16 1/2 9/16 5/8 11/16 3/4 13/16 7/8 15/16 1".split()
    assert [mixed_number(Fraction(n, 16)) for n in range(17)] == names
    assert all(length_text(29 + Fraction(n, 16)) == f"29 {names[n]} in" for n in range(1, 16))


@given(LENGTHS, STEPS)
def test_rounding_lands_on_a_mark_within_one_step(length: Fraction, step: Fraction) -> None:
    down, near, up = (f(length, step) for f in (steps_down, steps_nearest, steps_up))
    assert all((mark / step).denominator == 1 for mark in (down, near, up))
    assert length - step < down <= length <= up < length + step
    assert abs(near - length) <= step / 2


@given(LENGTHS)
def test_the_nearest_sixteenth_is_pythons(length: Fraction) -> None:
    ours = steps_nearest(length, Fraction(1, 16))
    theirs = Fraction(round(length * 16), 16)
    tie = (length * 32).denominator == 1 and (length * 16).denominator == 2
    assert ours == (Fraction(floor(length * 16) + 1, 16) if tie else theirs)


@given(LENGTHS)
def test_inches_to_millimetres_and_back_is_exact(length: Fraction) -> None:
    assert length / MM * MM == length
    assert length / MM == length * Fraction(254, 10)


@given(st.integers(0, 5000), st.integers(0, 63))
def test_a_written_reading_reads_back(whole: int, parts: int) -> None:
    value = whole + Fraction(parts, 64)
    assert is_tape_fraction(value)
    assert sum(Fraction(part) for part in length_text(value).removesuffix(" in").split()) == value


def test_texts() -> None:
    assert feet_text(Fraction(136)) == "11 ft 4 in"
    assert feet_text(Fraction(144)) == "12 ft"
    assert feet_text(Fraction(7, 2)) == "3 1/2 in"
    assert feet_text(3600 * MM, Unit.MM) == "3.6 m"
    assert length_text(740 * MM, Unit.MM) == "740 mm"
    assert length_text(Fraction(1, 3)) == "0.3333 in"
    assert length_text(-Fraction(1, 16)) == "-1/16 in"
    assert decimal_text(-Fraction(5, 4), 1) == "-1.2"
    assert decimal_text(Fraction(7), 0) == "7"
    assert sixty_fourths(Fraction(1, 32)) == "2/64 in (0.8 mm)"
    assert decimal_text(Fraction(70), 0) == "70"
    assert decimal_text(Fraction(0), 2) == "0"
    assert sixty_fourths(Fraction(1, 2)) == "32/64 in (12.7 mm)"
    # a third of an inch is 8.4666… mm
    assert length_text(Fraction(1, 3), Unit.MM) == "8.47 mm"
    assert feet_text(Fraction("1234.5678") * MM, Unit.MM) == "1.235 m"
