"""A stick that is cut as tightly as its marks allow is not called overfilled."""

from tests import jobs
from trimlang.compiler import compile_job
from trimlang.stock.planner import QUICK

JOB = f"""\
{jobs.BASE}
stock base: 12 ft at 17.40, pack of 4 8 ft at 40, 16 ft at 24.10
on-hand base: 1 of 20 3/8 in at 2.00
saw: kerf 1/8 in, squares off 1/4 in
spare 0 %
room "Den" as DE, trim base, open walk
  0: 74 3/16 in, left=butt, right=butt
  bare 3 in
  1: 154 3/16 in, left=butt, right=butt
  bare 3 in
  2: 162 3/16 in, left=butt, right=butt
  bare 3 in
  3: 168 3/16 in, left=butt, right=butt
  bare 3 in
  4: 20 3/16 in, left=butt, right=butt
  bare 3 in
  5: 20 3/16 in, left=return, right=return
  bare 3 in
  6: 96 3/16 in, left=return, right=return
  bare 3 in
bought 5 base 12 ft at 17.40
cut DE-1-base, DE-6-base, DE-0-base, DE-4-base
"""


def test_a_square_cut_takes_less_than_the_steepest_one():
    """The kerf of a mitre is 3/16 in along the stick, that of a square cut 1/8 in."""
    result = compile_job(JOB + "spoiled DE-5-base-left-return\n", effort=QUICK)
    assert result.ok
    assert result.progress is not None
    assert not result.progress.is_cut("DE-5-base-left-return")


def test_a_piece_behind_a_mitre_that_it_shares_takes_the_whole_rest():
    """20 5/8 in twice with one slanting cut between are 40 15/16 in of 41 in."""
    job = f"""\
{jobs.BASE}
stock base: 10 ft at 12.00
on-hand base: 2 of 41 in at 2.00
saw: kerf 1/8 in
spare 0 %
room "Den" as DE, trim base, open walk
  N: 20 in, left=out-corner, right=in-corner(mitre)
  bare 3 in
spoiled DE-N-base into 20 in
"""
    (plan,) = compile_job(job, effort=QUICK).plans
    (stick,) = plan.sticks
    assert (stick.id, stick.offcut) == ("base-1", 0)
    assert [float(place.end) for place in stick.places] == [40.9375]


def test_what_is_planned_behind_a_cut_keeps_room_for_the_steepest_kerf():
    """96 in of old trim stands behind the corner: a cut there takes 1 ft 9 in of kerf."""
    job = f"""\
{jobs.BASE}
trim old: 96 in thick, 7 1/4 in tall
{jobs.TWELVE_FEET}
stock old: 25 ft at 19.80
corners: in-corner cope
room "Back hall", trim base, open walk
  N: 40 in, left=butt, right=in-corner(mitre)
  E: 31 in, right=out-corner(90 deg, mitre)
  S: 30 in, trim old, right=butt
"""
    # what was cut first takes the stick on which the long piece was planned
    result = compile_job(f"{job}cut BH-N-base 2 3/4 in from base-1 of 12 ft\n", effort=QUICK)
    assert result.ok, result.diagnostics
    assert [len(stick.places) for stick in result.plans[0].sticks] == [1, 1]
    # X leans away from Y, so that nothing of the kerf lies within a mitre
    den = """room "Den" as DE, trim base, open walk
  X: 20 in, left=butt, right=in-corner(90 deg)
  bare 30 in
  Y: 25 in, left=in-corner(90 deg), right=butt
cut DE-X-base 20 1/2 in from base-9 of 66 1/2 in
spoiled DE-Y-base 26 in from base-8 of 26 1/2 in
"""
    result = compile_job(job + den, effort=QUICK)
    assert result.ok, result.diagnostics
    (begun,) = (stick for stick in result.plans[0].sticks if stick.id == "base-9")
    assert [place.piece for place in begun.places] == ["DE-X-base"]
