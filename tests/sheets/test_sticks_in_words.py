"""What the saw sheet, the stick layouts and the order say of odd sticks: begun, flawed, batched.

All lengths are worked by hand: the kerf is 1/8 in, a mitre of 45 1/2 degrees takes 3/16 in.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import cache

from tests.jobs import BASE, CASE, TWELVE_FEET
from tests.sheets.jobs import compiled, example, odd, small
from trimlang.compiler import Result
from trimlang.sheets.content.order_reasons import order_reasons
from trimlang.sheets.content.saw_sheet import SawSheet, Stroke, saw_sheet
from trimlang.sheets.content.stick_layouts import StickLayout, stick_layouts
from trimlang.sheets.content.stock_order import OrderedLine, order
from trimlang.sheets.wording.catalogue import NO_BREAK, words_in
from trimlang.sheets.wording.quantities import Pen

PEN = Pen(words_in("en"), "$")
ROOM = """
saw: kerf 1/8 in
room "Hall" as HA, trim base, open walk
  N: 60 in, left=butt, right=out-corner
  E: 40 in, left=out-corner, right=butt
  opening 30 in
  S: 30 in, left=butt, right=butt
"""


@cache
def built(stock: str, log: str = "") -> Result:
    return compiled(f"{BASE}\n{stock}{ROOM}{log}")


def sheet(result: Result) -> SawSheet:
    return saw_sheet(result, PEN)


def test_every_pass_of_the_saw_by_its_setting() -> None:
    made = sheet(built(f"{TWELVE_FEET}\nspare 0 %"))
    assert (made.changes, made.cuts, made.copes) == ("2", "4", ())
    square, left, right = made.groups
    assert square.strokes == (
        Stroke("base-1", "101 7/16 in", "right end of HA-E-base, and left end of HA-S-base"),
        Stroke("base-1", "131 9/16 in", "right end of HA-S-base"),
    )
    assert left.strokes == (Stroke("base-1", "60 13/16 in", "left end of HA-E-base"),)
    assert right.strokes == (Stroke("base-1", "60 5/8 in", "right end of HA-N-base"),)
    assert [(one.setting, one.settings, one.swing, one.tilt) for one in made.groups] == [
        ("square", ("square",), "", ""),
        ("45 1/2° left", ("45 1/2° left",), "left", ""),
        ("45 1/2° right", ("45 1/2° right",), "right", ""),
    ]
    standing = "standing, face to you, back to the fence"
    assert [one.lay for one in made.groups] == [
        "", f"{standing}, piece right of the blade", f"{standing}, piece left of the blade"
    ]  # fmt: skip
    assert [[cut.piece for cut in one.cuts] for one in made.groups] == [
        [""], ["piece right of the blade"], ["piece left of the blade"]]  # fmt: skip
    assert square.picture is None
    assert [one.picture and one.picture.text for one in made.groups[1:]] == ["back", "back"]


def test_where_all_ends_are_square_no_setting_changes() -> None:
    square = sheet(compiled(f"{BASE}\n{TWELVE_FEET}{ROOM.replace('out-corner', 'butt')}"))
    assert (square.changes, len(square.groups)) == ("0", 1)


def test_crown_has_its_tilt_and_a_copes_end_its_name() -> None:
    crown = [one for one in sheet(odd()).groups if one.tilt]
    assert [(one.setting, one.swing, one.tilt, one.lay) for one in crown] == [
        ("mitre 31 1/2° left, bevel 34° left", "left", "left",
         "flat, face up, wall edge to the fence, piece left of the blade"),
        ("mitre 31 1/2° right, bevel 34° left", "right", "left",
         "flat, face up, ceiling edge to the fence, piece left of the blade"),
    ]  # fmt: skip
    assert [one.mark for one in crown[0].strokes] == ["stick's end"] * 4
    assert sheet(small()).copes == ("right end of BR-N2-base",)


def test_a_stick_says_once_how_its_pieces_lie_where_other_sticks_lie_differently() -> None:
    """Casing lies flat round the window and stands for the apron below it."""
    made = built(
        f"{TWELVE_FEET}\n{CASE}\ntrim shelf: 3/4 in thick, 5 in wide\n"
        "stock shelf: 4 ft at 9.00\nstock case: 5 ft at 12.10\nspare 0 %",
        'room "Den" as DE, trim base, open walk\n  N: 40 in, left=butt, right=butt\n'
        "  window 36 in, casing case, height 54 in, stool shelf apron case\n"
        "  N2: 40 in, left=butt, right=butt\n",
    )
    (case,) = (one for one in stick_layouts(made, PEN) if one.trim == "case")
    assert (case.lay, case.above) == ("", "")
    alike = {one.lay.partition(",")[0]: one for one in case.sticks if one.lay}
    assert set(alike) == {"flat", "standing"}
    assert not any(
        end.lay for one in alike.values() for row in one.rows for end in (row.left, row.right)
    )
    assert all("apron" in row.id for row in alike["standing"].rows)
    assert not any("apron" in row.id for row in alike["flat"].rows)


def test_a_column_of_settings_is_as_wide_as_its_words_need() -> None:
    made = built(f"{TWELVE_FEET}\nspare 0 %")
    for language, wordy in (("en", False), ("de", False), ("es", True)):
        (base,) = stick_layouts(made, Pen(words_in(language), "$"))
        assert base.wordy == wordy
    # “45 1/2° derecha” still fits
    right = compiled(
        f"{BASE}\n{TWELVE_FEET}{ROOM.replace('E: 40 in, left=out-corner', 'E: 40 in, left=butt')}"
    )
    assert [one.wordy for one in stick_layouts(right, Pen(words_in("es"), "$"))] == [False]
    assert [one.wordy for one in stick_layouts(odd(), PEN) if one.trim == "crown"] == [True]


FLAWED = (
    'on-hand base: 12 ft batch "A", knot 62 in to 64 in, split 0 in to 5 in from the right end\n'
    'stock base: 8 ft at 41.40 batch "A"\nspare 0 %'
)


def drawn(result: Result) -> dict[str, StickLayout]:
    return {one.id: one for trim in stick_layouts(result, PEN) for one in trim.sticks}


def test_the_part_of_a_flawed_stick_says_what_is_cut_out() -> None:
    """144 in with 62 to 64 and the last 5 in cut out leave 0 to 62 and 64 to 139 in."""
    made = drawn(built(FLAWED))
    out = ("Part of a stick of 12 ft: from its left end, cut out knot 62 in to 64 in,"
           " split 139 in to 144 in; this is {}.")  # fmt: skip
    assert {one.part for one in made.values()} == {
        out.format("0 in to 62 in"), out.format("64 in to 139 in")}  # fmt: skip
    assert {one.source for one in made.values()} == {
        "62 in shop offcut, batch A", "75 in shop offcut, batch A"}  # fmt: skip
    assert {one.part for one in drawn(built(f"{TWELVE_FEET}\nspare 0 %")).values()} == {""}


def test_a_bundle_and_a_batch_are_named_in_the_order() -> None:
    """Three of 7 ft and two of 11 ft are 43 ft: of 12.00 they are 5.86 and 6.14."""
    bundle = built(
        'stock base: from "Hill Lumber", code "B-514", bundle of 3 of 7 ft, 2 of 11 ft at 12.00\n'
        "spare 0 %"
    )
    (trim,) = order(bundle, PEN).trims
    assert trim.lines == (
        OrderedLine("1", "3 of 7 ft, of bundle 1, sold whole", "$5.86", "$5.86"),
        OrderedLine("1", "2 of 11 ft, of bundle 1, sold whole", "$6.14", "$6.14"),
    )
    assert (trim.supplier, trim.profile) == ("Hill Lumber", "B-514")
    batched = order(built(f'{TWELVE_FEET} batch "B"\nspare 0 %'), PEN)
    assert batched.trims[0].lines == (OrderedLine("1", "12 ft, batch B", "$17.40", "$17.40"),)
    assert batched.to_write == (
        "supplier", "quote or account", "ordered by, telephone", "wanted by", "deliver to"
    )  # fmt: skip


def test_reasons_name_their_trim_its_least_order_and_what_is_still_to_buy() -> None:
    least = built(f"{TWELVE_FEET}, at least 3 sticks\nspare 12.5 %")
    (trim,) = order_reasons(least, PEN).trims
    # three of 12 ft at 17.40
    assert (trim.trim, trim.cost) == ("base", "$52.20")
    told = dict(trim.terms)
    assert told["least order"] == order(least, PEN).trims[0].minimum == "3 sticks"
    assert told["for mistakes"].startswith("12.5 % more than the pieces need: ")
    # one of two sticks is bought: one more is to buy
    begun = built("stock base: 8 ft at 9.00\nspare 0 %", "bought 1 base 8 ft\n")
    told_of = order_reasons(begun, PEN)
    assert (told_of.spent, told_of.to_buy) == ("$9.00", "$9.00")
    # 144 less 101 7/16 in of N and E, a kerf, 30 in and a kerf more
    held = built(f"{TWELVE_FEET}\nspare 0 %",
                 "bought 2 base 12 ft\ncut HA-N-base, HA-E-base\ncut HA-S-base\n")  # fmt: skip
    (trim,) = order_reasons(held, PEN).trims
    assert dict(trim.terms)["in hand besides"] == "rest of base-1, 12 1/4 in, 1 of 12 ft"


def test_what_is_proven_of_the_number_of_sticks_is_more_than_none() -> None:
    """That fewer than one cannot do is said too: it is what was proven."""
    result = built(f"{TWELVE_FEET}\nspare 0 %")
    (plan,) = result.plans
    two = replace(plan, sticks=(*plan.sticks, *plan.sticks), stick_bound=1)
    (trim,) = order_reasons(replace(result, plans=(two,)), PEN).trims
    assert dict(trim.terms)["sticks cut"].endswith("is not known; fewer than 1 cannot.")
    third = replace(plan, whole_sticks=(Fraction(144), Fraction(144), Fraction(96)))
    (trim,) = order_reasons(replace(result, plans=(third,)), PEN).trims
    assert dict(trim.terms)["sticks left whole"] == "1 of 8 ft, 2 of 12 ft"


def test_an_offcut_keeps_the_length_that_it_was_measured_in() -> None:
    """The shop has a 10 ft stick and parts of 99 and 38 in; sticks from the yard go by feet."""
    drawn = stick_layouts(example("shop-stock"), PEN)
    (base,) = [trim for trim in drawn if trim.trim == "base"]
    said = [stick.source.replace(NO_BREAK, " ") for stick in base.sticks]
    assert said[:4] == [
        "10 ft shop offcut, batch A",
        "99 in shop offcut, batch A",
        "38 in shop offcut, batch A",
        "16 ft stick, batch B",
    ]


def test_a_yard_is_told_the_radius_that_flexible_trim_bends_to() -> None:
    told = {trim.trim: trim.bends_to for trim in order(example("round-end"), PEN).trims}
    assert told["base"] == ""
    assert told["shoe"].replace(NO_BREAK, " ") == "99 1/4 in"
