"""No cut leaves a piece too short to hold for its next one."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st

from trimlang.sheets.content.cut_order import Pass, visits

HOLD = Fraction(8)
NO = Fraction(0)


def at(setting: int, place: int, long: int = 96, stick: str = "base-1") -> Pass:
    key = (setting, "", NO, "", NO, "")
    return Pass(setting=key, stick=stick, at=Fraction(place), long=Fraction(long))


def held(passes: list[Pass], order: list[int]) -> list[Fraction]:
    """What is left to hold at each cut, worked out by walking through the order."""
    parted = {one.stick: {NO, one.long} for one in passes}
    found = []
    for number in order:
        one = passes[number]
        before = max(place for place in parted[one.stick] if place <= one.at)
        after = min(place for place in parted[one.stick] if place >= one.at)
        found.append(max(one.at - before, after - one.at))
        parted[one.stick].add(one.at)
    return found


def test_settings_are_made_in_their_order_where_all_is_long() -> None:
    passes = [at(2, 40), at(1, 20), at(2, 60), at(1, 80)]
    assert visits(passes, HOLD) == ((1, 3), (0, 2))


def test_a_short_piece_is_cut_off_last() -> None:
    # 90 to 96: after its left end it would be 6 in; its right end has to be made first
    passes = [at(1, 90), at(2, 95), at(1, 40)]
    assert visits(passes, HOLD) == ((1,), (0, 2))


def test_a_setting_is_visited_twice_where_it_must_be() -> None:
    # the short pieces 10 to 14 and 86 to 90 ask for the two settings in turn
    passes = [at(1, 2), at(2, 6), at(2, 90), at(1, 94)]
    order = visits(passes, HOLD)
    assert min(held(passes, [one for visit in order for one in visit])) >= HOLD


def test_what_is_too_short_from_the_first_is_listed_all_the_same() -> None:
    passes = [at(1, 2, long=6), at(2, 4, long=6)]
    assert visits(passes, HOLD) == ((0,), (1,))


@given(
    st.lists(
        st.tuples(st.integers(1, 5), st.integers(1, 95), st.sampled_from(["a", "b"])),
        min_size=1, max_size=24, unique_by=lambda one: one[1:],
    )
)  # fmt: skip
def test_every_cut_is_made_once_and_none_that_can_be_held_is_lost(
    cuts: list[tuple[int, int, str]],
) -> None:
    passes = [at(setting, place, stick=stick) for setting, place, stick in cuts]
    order = visits(passes, HOLD)
    flat = [one for visit in order for one in visit]
    assert sorted(flat) == list(range(len(passes)))
    assert all(len({passes[one].setting for one in visit}) == 1 for visit in order)
    # with a length of 12 in left whole anywhere on a stick, all else can be cut off it in turn
    for stick in ("a", "b"):
        places = sorted([0, 96, *(place for _, place, on in cuts if on == stick)])
        if max(after - one for one, after in pairwise(places)) >= HOLD:
            own = [one for one in flat if passes[one].stick == stick]
            assert min(held(passes, own), default=HOLD) >= HOLD
