"""Each stick says which cut comes next, and what its offcut is for."""

from __future__ import annotations

import re

from tests.sheets.jobs import compiled
from trimlang.sheets.render.pages import render_sheets

JOB = """
trim base: 1/2 in thick, 3 in tall
stock base: {stock} at 10
saw: kerf 1/8 in
room "R" as R, trim base, open walk
  A: 60 in, left=butt, right=butt
  opening 30 in, "door"
  B: {short}, left=butt, right=butt
"""


def small_print(stock: str, short: str) -> list[str]:
    """What stands under each stick: the order of its cuts, and its offcut."""
    job = compiled(JOB.format(stock=stock, short=short))
    assert job.ok
    page = render_sheets(job, only=("stick-layouts",))["stick-layouts"]
    found = re.findall(r'<p class="small">(.*?)</p>', page.partition('class="stick"')[2], re.S)
    return [re.sub(r"<[^>]+>", "", one).replace("\xa0", " ") for one in found]


def test_a_short_piece_is_cut_at_its_far_end_first_where_little_would_be_left_to_hold() -> None:
    # cut off at 60 in, what is left is 7 5/8 in: too short to hold for the cut at 66 1/8 in
    order, rest = small_print(stock="67 3/4 in", short="6 in")
    assert order == "next cut at 66 1/8 in, then at 60 in"
    assert rest == "offcut 1 1/2 in: too short to keep"


def test_with_enough_to_hold_the_cuts_run_from_the_left() -> None:
    order, rest = small_print(stock="10 ft", short="20 in")
    assert order == "next cut at 60 in, then at 80 1/8 in"
    assert rest == "offcut 39 3/4 in: keep it: gives R-B-base (20 in) once more"


def test_an_offcut_that_gives_no_piece_again_is_kept_on_hand() -> None:
    assert small_print(stock="10 ft", short="40 in")[-1] == "offcut 19 3/4 in: keep it on hand"
