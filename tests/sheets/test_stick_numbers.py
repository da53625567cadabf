"""Numbers on the stick layouts, worked by hand: where each piece begins, ends and is drawn.

The stick is 144 in and drawn 186 mm long, 31/24 mm to an inch.  The kerf is 1/8 in square and
0.178 in at 45 1/2 degrees; 1/4 in is squared off an end.  Arithmetic; no outside source.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from tests.jobs import BASE, SHOE, SHOE_STOCK, TWELVE_FEET
from trimlang.compiler import Result, compile_job
from trimlang.sheets.content.left_to_cut import left_to_cut
from trimlang.sheets.content.stick_layouts import Block, LayoutEnd, StickLayout, stick_layouts
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen

PEN = Pen(words_in("en"), "$")
JOB = f"""\
{BASE}
{TWELVE_FEET}
saw: kerf 1/8 in, squares off 1/4 in
spare 0 %
room "Hall" as HA, trim base, open walk
  N: 60 in, left=butt, right=out-corner
  E: 40 in, left=out-corner, right=butt
  opening 30 in
  S: 1 in, left=butt, right=butt
  opening 30 in
  W: 12 in, left=butt, right=butt
"""
SHOD = f"{SHOE}\n{SHOE_STOCK}\nsaw:"
SQUARE = LayoutEnd(settings=("square",), swing="", tilt="", lay="")


def compiled(text: str) -> Result:
    result = compile_job(text)
    assert result.ok, result.diagnostics
    return result


def drawn(result: Result) -> StickLayout:
    (trim,) = stick_layouts(result, PEN)
    (stick,) = trim.sticks
    return stick


def test_a_stick_from_end_to_end() -> None:
    """S 1/4 to 1 1/4; N from 1 3/8 to 62; E from 62 3/16 to 102 13/16; W to 114 15/16 in."""
    result = compiled(JOB)
    (trim,) = stick_layouts(result, PEN)
    assert (trim.trim, trim.scale, trim.one_way) == ("base", "12 ft", False)
    assert trim.lay == "standing, face to you, back to the fence, left end at left"
    assert trim.above == "back"
    stick = drawn(result)
    assert [(row.number, row.id, row.length, row.start, row.end, row.shared)
            for row in stick.rows] == [
        ("1", "HA-S-base", "1 in", "1/4 in", "1 1/4 in", False),
        ("2", "HA-N-base", "60 5/8 in", "1 3/8 in", "62 in", True),
        ("3", "HA-E-base", "40 5/8 in", "62 3/16 in", "102 13/16 in", False),
        ("4", "HA-W-base", "12 in", "102 15/16 in", "114 15/16 in", True),
    ]  # fmt: skip
    right, left = (
        LayoutEnd(settings=(f"45 1/2° {side}",), swing=side, tilt="", lay="")
        for side in ("right", "left")
    )
    ends = [(row.left, row.right) for row in stick.rows]
    assert ends == [(SQUARE, SQUARE), (SQUARE, right), (left, SQUARE), (SQUARE, SQUARE)]
    assert stick.next_cut == "1/4 in"
    assert stick.then == ("1 1/4 in", "62 in", "62 3/16 in", "102 13/16 in", "114 15/16 in")
    # 144 less 1/4, less 114 15/16 and a kerf
    assert (stick.id, stick.source, stick.offcut) == ("base-1", "12 ft stick", "28 5/8 in")
    assert stick.offcut_use == "keep it: gives HA-W-base (12 in) once more"
    assert (stick.square_off, stick.part) == ("1/4 in", "")


def test_what_is_drawn_is_to_scale() -> None:
    """A mitre's line leans 1.6 mm on paper; a name that does not fit gives way to its number."""
    stick = drawn(compiled(JOB))
    assert stick.blocks == (
        Block("0.32,0.00 1.61,0.00 1.61,8.00 0.32,8.00", "0.97", ""),
        Block("1.78,0.00 78.48,0.00 80.08,8.00 1.78,8.00", "40.93", "2  HA-N-base"),
        Block("81.93,0.00 132.80,0.00 132.80,8.00 80.33,8.00", "106.56", "3  HA-E-base"),
        Block("132.96,0.00 148.46,0.00 148.46,8.00 132.96,8.00", "140.71", "4"),
    )
    # 144 - 1/4 - 28 5/8 = 115 1/8 in, and 28 5/8 in beside it
    assert (stick.wide, stick.offcut_from, stick.offcut_wide) == ("186.00", "148.70", "36.97")


def test_a_piece_of_a_metric_room_is_cut_by_the_metric_tape() -> None:
    """And laid by the stick's own, in inches."""
    loft = 'room "Loft" as LO, trim base, open walk\nunit mm\n  W: 305, left=butt, right=butt\n'
    (row,) = [row for row in drawn(compiled(JOB + loft)).rows if row.id == "LO-W-base"]
    assert (row.length, row.start) == ("305 mm", "102 15/16 in")


def test_a_piece_of_three_inches_and_a_half_has_its_number() -> None:
    """It is 4.52 mm on paper; a letter takes 1.75.  17 in are 21.96, its name 21 and two slants."""
    stick = drawn(compiled(JOB.replace("S: 1 in", "S: 3 1/2 in").replace("W: 12", "W: 17")))
    assert [one.label for one in stick.blocks] == ["1", "2  HA-N-base", "3  HA-E-base", "4"]


def test_a_short_piece_keeps_a_third_of_its_length_between_two_slants() -> None:
    """3 in and two mitres of 9/16 in: 4 1/8 in long point to long point, 5.33 mm on 186."""
    text = JOB.replace("  E: 40 in, left=out-corner, right=butt",
                       "  E: 2 in, left=out-corner, right=out-corner\n"
                       "  E2: 30 in, left=out-corner, right=butt")  # fmt: skip
    stick = drawn(compiled(text))
    (block,) = [one for row, one in zip(stick.rows, stick.blocks, strict=True)
                if row.id == "HA-E-base"]  # fmt: skip
    far_left, far_right, near_right, near_left = (
        float(point.partition(",")[0]) for point in block.points.split()
    )
    long = near_right - near_left
    assert abs((far_left - near_left) - min(1.6, long / 3)) < 0.01
    assert abs((near_right - far_right) - min(1.6, long / 3)) < 0.01


def test_ends_of_an_inside_corner_are_longest_by_the_fence() -> None:
    stick = drawn(compiled(JOB.replace("out-corner", "in-corner")))
    by_id = {
        row.id: [float(point.partition(",")[0]) for point in block.points.split()]
        for row, block in zip(stick.rows, stick.blocks, strict=True)
    }
    far_left, far_right, near_right, near_left = by_id["HA-N-base"]
    assert (far_left - near_left, round(far_right - near_right, 2)) == (0, 1.6)
    far_left, far_right, near_right, near_left = by_id["HA-E-base"]
    assert (round(near_left - far_left, 2), far_right - near_right) == (1.6, 0)


def test_of_a_begun_stick_the_rest_is_drawn_and_measured() -> None:
    """N with its mitre is gone, 61 1/16 in with the kerf; the rest is 82 15/16 in, marked anew."""
    result = compiled(f"{JOB}bought 1 base 12 ft\ncut HA-N-base\n")
    stick = drawn(left_to_cut(result))
    assert stick.source == "6 ft 10 15/16 in rest, cut from before"
    assert [(row.number, row.id, row.start, row.end) for row in stick.rows] == [
        ("2", "HA-S-base", "stick's end", "1 in"),
        ("3", "HA-E-base", "1 3/16 in", "41 13/16 in"),
        ("4", "HA-W-base", "41 15/16 in", "53 15/16 in"),
    ]
    assert [block.label for block in stick.blocks] == ["", "3  HA-E-base", "4  HA-W-base"]
    assert (stick.next_cut, stick.square_off) == ("1 in", "")
    # the far end is squared off yet: the offcut begins 3/16 in behind W, at 54 1/8 of 82 15/16 in
    assert (stick.wide, stick.offcut_from, stick.offcut_wide) == ("186.00", "121.38", "64.06")
    left = left_to_cut(result)
    assert [piece.id for piece in left.pieces] == ["HA-E-base", "HA-S-base", "HA-W-base"]
    (cut,) = left.plans[0].sticks
    assert (cut.before, cut.squared, cut.places[0].start) == (1, 0, 0)
    assert cut.gone + cut.length == 144


def test_a_mitre_at_the_very_beginning_is_cut_at_the_stick_s_end() -> None:
    lines = [line for line in JOB.splitlines() if line[:4] not in ("  N:", "  S:", "  W:")]
    stick = drawn(compiled("\n".join(lines).replace(", squares off 1/4 in", "")))
    assert [row.start for row in stick.rows] == ["stick's end"]
    assert {stick.next_cut, *stick.then} == {"stick's end", "40 5/8 in"}


def test_a_stick_whose_pieces_are_all_cut_is_left_out() -> None:
    every = "HA-N-base, HA-E-base, HA-S-base, HA-W-base"
    result = compiled(f"{JOB}bought 1 base 12 ft\ncut {every}\n")
    assert left_to_cut(result).plans[0].sticks == ()
    assert stick_layouts(left_to_cut(result), PEN) == ()
    shod = JOB.replace("trim base, open", "trim base, shoe, open").replace("saw:", SHOD)
    result = compiled(f"{shod}bought 1 base 12 ft\ncut {every}\n")
    assert [one.trim for one in stick_layouts(left_to_cut(result), PEN)] == ["shoe"]
    fresh = compiled(JOB)
    assert left_to_cut(fresh) is fresh


def test_what_becomes_of_an_offcut() -> None:
    """What is kept is 1 ft long or longer; a piece must fit with a kerf at both its ends."""
    result = compiled(JOB)
    (plan,) = result.plans
    (stick,) = plan.sticks

    def use(offcut: Fraction, *, on_hand: bool = False) -> tuple[str, str, str]:
        other = replace(stick, offcut=offcut, on_hand=on_hand)
        made = drawn(replace(result, plans=(replace(plan, sticks=(other,)),)))
        return made.offcut_use, made.offcut, made.source

    assert use(Fraction(0)) == ("", "", "12 ft stick")
    assert use(Fraction(3)) == ("too short to keep", "3 in", "12 ft stick")
    kept = "keep it: gives {} once more"
    assert use(Fraction(49, 4))[0] == kept.format("HA-W-base (12 in)")
    assert use(Fraction(195, 16))[0] == kept.format("HA-S-base (1 in)")
    assert use(Fraction(61), on_hand=True)[0] == kept.format("HA-N-base (60 5/8 in)")
    assert use(Fraction(61), on_hand=True)[2] == "12 ft shop offcut"
