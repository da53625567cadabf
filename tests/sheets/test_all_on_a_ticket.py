"""All that a ticket says: each line of its small print, what is left off a label, what is new."""

from __future__ import annotations

from functools import cache

import pytest

from tests.every import every
from tests.jobs import BASE, CROWN, CROWN_STOCK, TWELVE_FEET
from tests.sheets.jobs import LONG_WORD, compiled, odd, small
from trimlang.sheets.content.ticket import SHORT, Ticket, tickets
from trimlang.sheets.render.paper import LabelSize, UnknownPaperError, label
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.quantities import Pen

PEN = Pen(words_in("en"), "$")
STANDING = "standing, face to you, back to the fence, left end at left"
CARE = ("Short piece: never hold it by hand at the blade; cut it off a long length as the saw"
        " maker's manual says.")  # fmt: skip
JOB = f"""\
job "Check"
{BASE}
{TWELVE_FEET}
saw: kerf 1/8 in
spare 0 %
room "Hall" as HA, trim base, open walk
  N: 60 in, left=butt, right=out-corner
  E: 40 in, left=out-corner, right=butt, note "mind the pipe"
  opening 30 in
  S: 5 in, left=butt, right=butt
  opening 30 in
  W: 12 in, left=butt, right=butt
"""
AGAIN = f"{JOB}bought 2 base 12 ft\ncut HA-N-base\nspoiled HA-N-base\n"


@cache
def made(text: str, *, only_changed: bool = False) -> dict[str, Ticket]:
    found = tickets(compiled(text), PEN, only_changed=only_changed, dated=False)
    return {one.id: one for one in found}


def print_of(one: Ticket) -> list[tuple[str, str]]:
    lines = (*one.shape.face, *one.shape.flap)
    return [(fact.term, fact.text) for line in lines for fact in line]


def test_each_line_of_the_small_print() -> None:
    every = made(JOB)
    assert print_of(every["HA-E-base"]) == [
        ("lies", STANDING),
        ("measured", "square end to long point, on the face edge: back 40 1/16 in"),
        ("stick", "base-1 (12 ft stick), cut 3 of 4"),
        ("meets", "left HA-N-base"),
        ("note", "mind the pipe"),
        ("length", "rounded up: an outside corner"),
    ]
    assert print_of(every["HA-S-base"]) == [
        ("measured", "end to end, both ends square"),
        ("stick", "base-1 (12 ft stick), cut 1 of 4"),
        ("care", CARE),
    ]
    assert every["HA-W-base"].order == "cut 4 of 4, shares its left cut"
    assert all(one.shape.coded and one.part == "" for one in every.values())


def test_a_label_leaves_off_what_the_page_has_and_keeps_what_a_hand_needs() -> None:
    by_id = {one.id: one for one in tickets(compiled(JOB), PEN, paper=label("100mm x 60mm"))}
    lines = (*by_id["HA-E-base"].shape.face, *by_id["HA-E-base"].shape.flap)
    facts = {fact.term: fact for line in lines for fact in line}
    assert {term for term, fact in facts.items() if fact.extra} == {
        "measured", "stick", "meets", "job", "length"}  # fmt: skip
    assert [term for term, fact in facts.items() if fact.strong] == ["note"]
    (care,) = [fact for line in by_id["HA-S-base"].shape.face for fact in line
               if fact.term == "care"]  # fmt: skip
    assert (care.strong, care.extra) == (True, False)


def test_job_and_revision_stand_on_dated_tickets_alone() -> None:
    def job(*, dated: bool) -> str:
        one = tickets(compiled(JOB), PEN, dated=dated)[0]
        return dict(print_of(one)).get("job", "")

    assert job(dated=True).startswith("Check · ")
    assert len(job(dated=True)) == len("Check · ") + 8
    assert job(dated=False) == ""


def test_a_piece_that_a_new_plan_changed_says_so() -> None:
    every = made(AGAIN)
    assert list(every) == ["HA-N-base", "HA-E-base", "HA-S-base", "HA-W-base"]
    assert [name for name, one in every.items() if one.changed] == ["HA-N-base"]
    assert list(made(AGAIN, only_changed=True)) == ["HA-N-base"]
    assert len(tickets(compiled(AGAIN), PEN)) == 4
    spoiled = every["HA-N-base"]
    assert spoiled.shape.room == "Hall · base · changed"
    assert every["HA-E-base"].shape.room == "Hall · base"
    assert spoiled.note == "cut again: the first was spoiled"
    assert made(AGAIN.replace("right=out-corner", 'right=out-corner, note "by the door"'))[
        "HA-N-base"].note == "cut again: the first was spoiled; by the door"  # fmt: skip
    # cut and done: no ticket
    assert list(made(f"{JOB}bought 2 base 12 ft\ncut HA-N-base\n")) == [
        "HA-E-base", "HA-S-base", "HA-W-base"]  # fmt: skip
    assert not any(one.changed for one in made(JOB).values())


def test_part_and_glued_return_of_a_wall() -> None:
    by_id = {one.id: one for one in tickets(small(), PEN)}
    assert by_id["BR-N-base-b"].shape.room == "Box room · base · part 2 of 2"
    back = by_id["BR-S-base-right-return"]
    assert back.note == "closes the profile; glue it, do not nail it"
    assert back.is_return
    assert not by_id["BR-S-base"].is_return
    assert (by_id["BR-N-base-a"].left.swing, by_id["BR-N-base-a"].right.swing) == ("right", "left")
    assert (by_id["BR-S-base"].left.swing, by_id["BR-S-base"].left.tilt) == ("", "")
    (crown,) = [one for one in tickets(odd(), PEN) if one.id == "PA-N-crown"]
    lines = (*crown.shape.face, *crown.shape.flap)
    assert [fact.extra for line in lines for fact in line if fact.term == "or"] == [True]
    assert (crown.left.swing, crown.left.tilt, crown.right.tilt) == ("left", "left", "left")


def test_what_an_end_does_then_and_whom_it_meets() -> None:
    by_id = {one.id: one for one in tickets(small(), PEN)}
    assert by_id["BR-E-base"].left.then == "runs square into the corner; its mate is coped"
    assert by_id["BR-E-base"].right.then == ""
    assert (by_id["BR-S-base"].run, by_id["BR-S-base"].room, by_id["BR-S-base"].trim) == (
        "S", "Box room", "base")  # fmt: skip
    # the small piece at the end of S is met by S alone, and S by nothing at its butt end
    assert [by_id[name].mates for name in ("BR-S-base", "BR-S-base-right-return", "BR-E-base")] == [
        "right BR-S-base-right-return", "left BR-S-base", "left BR-N2-base"]  # fmt: skip
    # of two walls that do not say the same of their corner none meets the other
    apart = made(JOB.replace("E: 40 in, left=out-corner", "E: 40 in, left=butt"))
    assert (apart["HA-N-base"].mates, apart["HA-E-base"].mates) == ("", "")
    stopped = made(JOB.replace("=out-corner", "=butt"))
    assert (stopped["HA-N-base"].mates, stopped["HA-E-base"].mates) == ("", "")


def test_corners_behind_one_where_nothing_meets_are_met_all_the_same() -> None:
    further = 'note "mind the pipe"\n  F: 30 in, left=in-corner, right=butt\n'
    text = JOB.replace('note "mind the pipe"\n', further)
    apart = text.replace("left=out-corner, right=butt", "left=butt, right=in-corner")
    made_of = made(apart)
    assert [made_of[f"HA-{name}-base"].mates for name in "NEF"] == [
        "", "right HA-F-base", "left HA-E-base"]  # fmt: skip


def test_crown_that_goes_on_over_a_door_meets_both_its_neighbours() -> None:
    text = f"""\
{BASE}
{CROWN}
{TWELVE_FEET}
{CROWN_STOCK}
room "Hall" as HA, trim crown, open walk
  N: 60 in, left=butt, right=in-corner
  E1: 40 in, left=in-corner, right=butt
  door 32 in
  E2: 20 in, left=butt, right=in-corner
  S: 30 in, left=in-corner, right=butt
"""
    assert [one.mates for one in made(text).values()] == [
        "right HA-E1-crown", "left HA-N-crown, right HA-S-crown", "left HA-E1-crown"]  # fmt: skip


def test_a_return_at_the_left_is_met_by_its_right_end() -> None:
    made_of = made(JOB.replace("N: 60 in, left=butt", "N: 60 in, left=return"))
    assert made_of["HA-N-base-left-return"].mates == "right HA-N-base"
    assert made_of["HA-N-base"].mates == "left HA-N-base-left-return, right HA-E-base"


def test_a_rounded_corner_s_small_piece_comes_between_two() -> None:
    made_of = made(JOB.replace("right=out-corner", "right=out-corner(bullnose 3/4 in)"))
    between = "HA-N-base-right-bullnose"
    assert made_of["HA-N-base"].mates == f"right {between}"
    assert made_of[between].mates == "left HA-N-base, right HA-E-base"
    assert made_of["HA-E-base"].mates == f"left {between}"


def test_where_the_walk_begins_at_a_rounded_corner_its_small_piece_is_met_at_the_left() -> None:
    alone = JOB.replace("  N: 60 in, left=butt, right=out-corner\n", "")
    made_of = made(alone.replace("left=out-corner", "left=out-corner(bullnose 3/4 in)"))
    assert made_of["HA-E-base-left-bullnose"].mates == "right HA-E-base"
    assert made_of["HA-E-base"].mates == "left HA-E-base-left-bullnose"


def test_all_that_is_to_be_done_at_the_wall_is_told() -> None:
    corner = "right=in-corner(corner by 36 in, 36 in, diagonal 51 1/4 in), floor gap 3/16 in"
    text = JOB.replace("right=out-corner", corner).replace("left=out-corner", "left=in-corner")
    one = made(text.replace("right=butt, note", "right=butt, floor gap 3/16 in, note"))["HA-N-base"]
    assert one.fit == ("scribe up to 3/16 in off the foot; corner taken by its diagonal:"
                       " a sixteenth there is 1/8°")  # fmt: skip
    lines = (*one.shape.face, *one.shape.flap)
    assert [(fact.text, fact.extra) for line in lines for fact in line if fact.term == "fit"] == [
        (one.fit, True)]  # fmt: skip


@every("tall, kind", [("3", "card"), ("2 15/16", "wide"), ("2 1/8", "wide"), ("2", "strip")])
def test_a_ticket_is_no_taller_than_its_trim(tall: str, kind: str) -> None:
    one = made(JOB.replace("5 1/4 in tall", f"{tall} in tall"))["HA-E-base"]
    assert one.shape.kind.value == kind
    # and so is the drawing on it
    assert one.drawing.wide == ("24.00" if kind == "strip" else "84.00")


def test_what_a_code_holds_reads_plainly() -> None:
    (north,) = [one for one in tickets(compiled(JOB), PEN) if one.id == "HA-N-base"]
    assert north.payload == "HA-N-base\n60 5/8 in\nL butt: square\nR outside corner: 45 1/2° right"


def test_from_which_length_a_piece_is_short() -> None:
    def care(inches: str) -> str:
        return made(JOB.replace("S: 5 in", f"S: {inches} in"))["HA-S-base"].caution

    assert care(f"{SHORT}") == ""
    assert care(f"{SHORT - 1} 15/16") == CARE


def test_the_stick_of_an_offcut_is_the_shops() -> None:
    # N and E do not fit on 8 ft with the others; 42 in from the shop hold one of them
    short = JOB.replace(TWELVE_FEET, "stock base: 8 ft at 9\non-hand base: 42 in")
    assert {one.stick.partition(" ")[2] for one in made(short).values()} == {
        "(8 ft stick)", "(42 in shop offcut)"}  # fmt: skip


def test_a_ticket_shows_the_edge_by_the_fence_at_both_its_ends() -> None:
    one = made(JOB)["HA-N-base"]
    assert [text.text for text in one.drawing.texts] == ["back"]
    (turned,) = [one for one in tickets(odd(), PEN) if one.id == "PA-N-crown"]
    assert [text.text for text in turned.drawing.texts] == ["wall edge", "ceiling edge"]


# cut short at 25, 60 or 120 characters it ends within a word
LONG_NOTE = "mind the warm pipe " * 30
NOTED = JOB.replace("mind the pipe", LONG_NOTE)


@pytest.mark.parametrize(
    ("size", "kept"),
    [("100mm x 60mm", 120), ("80mm x 50mm", 60), ("90mm x 40mm", 25), ("60mm x 40mm", 0)],
)
def test_a_note_too_long_for_a_label_is_cut_short_and_says_so(size: str, kept: int) -> None:
    (one,) = [one for one in tickets(compiled(NOTED), PEN, paper=label(size), code=False)
              if one.id == "HA-E-base"]  # fmt: skip
    printed = dict(print_of(one))
    assert printed["note"] == LONG_NOTE[:kept].rstrip() + " …"
    assert one.note == LONG_NOTE
    assert not one.shape.coded
    # a note of which nothing is left may be left off altogether
    lines = (*one.shape.face, *one.shape.flap)
    assert {fact.extra for line in lines for fact in line if fact.term == "note"} == {not kept}
    assert printed["measured"].endswith("back 40 1/16 in")


def refused(text: str, size: LabelSize, *, code: bool) -> str:
    with pytest.raises(UnknownPaperError) as caught:
        tickets(compiled(text), PEN, paper=size, code=code)
    return str(caught.value)


ONE_WALL = f"""{BASE}
{TWELVE_FEET}
room "Hall" as HA, trim base, open walk
  {{name}}: 60 in, left=butt, right=butt
"""


def test_a_label_that_is_too_small_is_refused_with_what_would_do() -> None:
    job = ONE_WALL.format(name="N")
    # neither size that it takes lies on the search's steps of 5 mm from there
    told = refused(job, label("42mm x 24mm"), code=False)
    assert told == ("a label of 42mm x 24mm is too small for ticket HA-N-base to be legible;"
                    " it fits 42mm x 34mm or 62mm x 24mm")  # fmt: skip
    for size in ("42mm x 34mm", "62mm x 24mm"):
        assert tickets(compiled(job), PEN, paper=label(size), code=False)
    for size in ("42mm x 30mm", "59mm x 24mm"):
        refused(job, label(size), code=False)
    # no label is refused for a note that it does not hold
    noted = f'{job.rstrip()}, note "{"the pipe is warm " * 4}"\n'
    assert refused(noted, label("42mm x 24mm"), code=False) == told
    # a code is left off before a label is refused
    assert refused(job, label("42mm x 24mm"), code=True) == told
    job = ONE_WALL.format(name=LONG_WORD)
    long = refused(job, label("40mm x 20mm"), code=False)
    assert f"ticket HA-{LONG_WORD[:57]} to be" in long
    # a name that is cut short stands whole in the small print
    (one,) = tickets(compiled(job), PEN, paper=label("120mm x 60mm"))
    assert ("id", f"HA-{LONG_WORD}-base") in print_of(one)


UNDER_THE_SLOPE = f"""job "Check"
{BASE}
{CROWN}
{TWELVE_FEET}
{CROWN_STOCK}
saw: kerf 1/8 in, reads to 1/8 deg
room "Drawing room on the landing" as DR, trim base, crown
  N: 13 ft 7 3/16 in, left=in-corner, right=out-corner(91 deg)
  E: 3 in, left=out-corner(91 deg), right=in-corner
  S: 40 in, left=in-corner, right=return, note "behind the radiator, where the pipe is warm"
  opening 30 in
  W: 1 in, left=return, right=in-corner
"""


def test_an_end_that_lies_differently_says_so_in_full_on_a_label_too() -> None:
    text = UNDER_THE_SLOPE.replace("right=return, note", "right=in-corner, note").replace(
        "  opening 30 in\n  W: 1 in, left=return", "  W: 30 in, left=in-corner"
    )
    (south,) = [one for one in tickets(compiled(text), PEN, paper=label("100mm x 50mm"))
                if one.id == "DR-S-crown"]  # fmt: skip
    assert ("room", "Drawing room on the landing · crown") in print_of(south)
    assert [text for term, text in print_of(south) if term in ("left", "right")][:2] == [
        "flat, face up, wall edge to the fence, piece left of the blade",
        "flat, face up, ceiling edge to the fence, piece left of the blade",
    ]


@pytest.mark.parametrize("language", ["en", "es", "de"])
def test_every_ticket_fits_a_label_of_100_by_50_with_length_cuts_and_room(language: str) -> None:
    """The longest texts: crown, splices, returns and short pieces with their caution."""
    words = words_in(language)
    result = compiled(UNDER_THE_SLOPE)
    labels = tickets(result, Pen(words, "$"), paper=label("100mm x 50mm"), code=True)
    assert len(labels) == len(result.pieces) > 10
    for one in labels:
        shape = one.shape
        assert shape.length_size * shape.type >= 9
        assert shape.room.startswith("Drawing")
        assert all(term.extra for line in shape.flap for term in line)
        said = [fact.text for line in shape.face for fact in line]
        # a short form of the caution is the least that stands on it
        least = words("Short piece: never hold it by hand at the blade.")[:-1]
        assert bool(one.caution) is any(text.startswith(least) for text in said)
        # how both its ends lie, turned end for end, is said at the left one
        assert words("piece right of the blade") in said or one.id != "DR-S-crown"
