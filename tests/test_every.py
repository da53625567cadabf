"""A scan that is one test tells of each case that fails."""

from __future__ import annotations

import pytest

from tests.every import every


def test_every_case_is_tried_and_each_that_fails_is_told() -> None:
    tried = []

    @every("one", [1, 2, 3])
    @every("other, wanted", [(4, 5), (6, 7)])
    def hold(one: int, other: int, wanted: int) -> None:
        tried.append((one, other))
        if (one, other) != (2, 4):
            pytest.fail("wrong")
        with pytest.raises(ValueError, match="nothing"):
            assert one + other + 1 == wanted

    with pytest.raises(BaseExceptionGroup) as told:
        hold()
    assert tried == [(one, other) for one in (1, 2, 3) for other in (4, 6)]
    assert [(*group.__notes__, len(group.exceptions)) for group in told.value.exceptions] == [
        ("case: one=1", 2),
        ("case: one=2", 2),
        ("case: one=3", 2),
    ]
    assert told.value.exceptions[1].exceptions[0].__notes__ == ["case: other=4, wanted=5"]


def test_a_scan_of_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="no case"):
        every("one", [])
