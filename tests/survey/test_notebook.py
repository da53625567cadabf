"""A job file copied from a notebook page, with three mistakes in it: each is found."""

import trimlang
from tests.jobs import BASE, TWELVE_FEET

NOTEBOOK = f"""\
job "Back bedroom, from the notebook"
{BASE}
{TWELVE_FEET}
closes within 1 in

room "Back bedroom" as BB, trim base
  N:  11 ft 5 in, left=in-corner, right=in-corner
  E1: 5 ft 2 5/12 in, left=in-corner, right=out-corner
  E2: 14 in, left=in-corner, right=out-corner
  E3: 4 ft 9 in, left=in-corner, right=in-corner
  S1: 7 ft 3 in, left=in-corner, right=butt
  opening 30 in, "door", entrance
  S2: 34 in, left=butt, right=in-corner
  W:  9 ft 11 1/2 in, left=in-corner, right=in-corner

room "Closet" as CL, trim base
  N: 6 ft 2 in, left=in-corner, right=in-corner
  E: 3 ft 5 in, left=in-corner, right=in-corner
  S1: 20 in, left=in-corner, right=butt
  opening 30 in, "closet door", entrance
  S2: 12 in, left=butt, right=in-corner
  W: 3 ft 5 in, left=in-corner, right=in-corner
"""


def test_each_of_the_three_mistakes_is_found():
    result = trimlang.compile(NOTEBOOK)
    found = {one.code: one for one in result.diagnostics}
    # a fraction no tape has, in line 8
    assert found["T112"].span.line == 8
    # left and right of E2 swapped: both its joints contradict their neighbours'
    assert "T301" not in found
    assert found["T312"].span.line == 9
    assert found["T312"].message.endswith(
        "; room “Back bedroom” closes if left and right of run E2 are swapped"
    )
    # the closet's south side is a foot short of its north side
    assert found["T310"].message.startswith("room “Closet” does not close: its walls end 1 ft")
    assert "read a foot too short" in found["T310"].remedy


def test_without_them_it_is_clean():
    mended = (
        NOTEBOOK.replace("5/12", "1/2")
        .replace("E2: 14 in, left=in-corner, right=out-corner",
                 "E2: 14 in, left=out-corner, right=in-corner")
        .replace("S2: 12 in", "S2: 24 in")
    )  # fmt: skip
    assert not trimlang.compile(mended).diagnostics
