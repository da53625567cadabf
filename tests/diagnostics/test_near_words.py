"""An unknown name is answered with the near one, in a file of any size."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from tests.conftest import examples
from trimlang.compiler import check_job
from trimlang.diagnostics.near_words import MOST_COMPARED, listed, nearest

MANY = tuple(f"wall{number:05d}" for number in range(5000))
SLIPS = {
    "wal04711": "wall04711",
    "wall04711q": "wall04711",
    "wxll04711": "wall04711",
    "wlal04711": "wall04711",
    "WALL04711": "wall04711",
}


def test_among_many_one_slip_is_found() -> None:
    for word, meant in SLIPS.items():
        assert nearest(word, MANY) == meant
    assert nearest("casing", MANY) is None


@given(st.text(max_size=200), st.lists(st.text(max_size=80), min_size=MOST_COMPARED + 1))
def test_what_is_found_is_a_known_word(word: str, known: list[str]) -> None:
    found = nearest(word, known)
    assert found is None or found in known


def test_a_file_of_unknown_trims_is_answered_briefly() -> None:
    count = examples(200)
    known = "".join(f"trim a{number}b: 1/2 in thick, 4 in tall\n" for number in range(count))
    asked = "".join(f'room "R{number}", trim q{number}\n' for number in range(count))
    result = check_job(known + asked)
    unknown = [one for one in result.diagnostics if one.code == "T210"]
    assert len(unknown) == count
    # each remedy would else list all of so many trims
    assert max(len(one.remedy) for one in unknown) < 300


def test_many_names_are_listed_in_short() -> None:
    assert listed(["a", "b"]) == "“a”, “b”"
    assert listed(MANY).endswith("“wall00011” and others")
