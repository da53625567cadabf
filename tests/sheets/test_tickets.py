"""What a ticket says, and that the pages lose nothing."""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction
from io import BytesIO

import pytest
from pypdf import PdfReader

from tests.jobs import TWELVE_FOR_TEN
from tests.sheets.jobs import compiled, example, house, many, odd, small
from trimlang.joinery.at_the_saw import both_ends, saw_for
from trimlang.lengths.tape import Unit
from trimlang.sheets.content.ticket import Ticket, tickets
from trimlang.sheets.drawing.end_views import CARD_ENDS, STRIP_ENDS, Frame, draw_ends
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.pdf import to_pdf
from trimlang.sheets.wording.catalogue import NO_BREAK, words_in
from trimlang.sheets.wording.quantities import Pen

ROOM = f"""\
job "Check"
trim base: 3/4 in thick, 4 in tall
{TWELVE_FOR_TEN}
room "Room" as RO, trim base
"""


def _pen(show: Unit | None = None) -> Pen:
    return Pen(words_in("en"), "$", Unit.INCH, show)


def _tickets(walls: str, show: Unit | None = None) -> dict[str, Ticket]:
    return {one.id: one for one in tickets(compiled(ROOM + walls), _pen(show))}


def test_rounding_is_told_with_its_reason() -> None:
    one = _tickets("  N: 29 5/32 in, left=butt, right=butt\n")["RO-N-base"]
    assert str(one.length) == "29 1/8 in"
    assert one.rounding == "rounded down: between stops: must slip in"
    assert one.measured == "end to end, both ends square"
    assert one.edges == ""


def test_cuts_lean_as_the_drawing_shows() -> None:
    walls = """\
  N: 40 in, left=butt, right=out-corner(90 deg)
  E: 30 in, left=out-corner(90 deg), right=in-corner(90 deg)
  S: 20 in, left=in-corner(90 deg), right=butt
"""
    made = _tickets(walls)
    north, east, south = made["RO-N-base"], made["RO-E-base"], made["RO-S-base"]
    assert (north.left.setting, north.right.setting) == ("square", "45° right")
    assert (east.left.setting, east.right.setting) == ("45° left", "45° left")
    assert south.left.setting == "45° right"
    assert north.right.long_point == "long point at the face"
    assert south.left.long_point == "long point at the back"
    assert str(north.length) == "40 3/4 in"
    assert north.edges == "back 40 in"  # the face is the length itself
    assert east.measured.startswith("overall: long point at the face left")
    assert north.right.mate == "RO-E-base"
    assert east.left.mate == "RO-N-base"
    assert east.mates == "left RO-N-base, right RO-S-base"


def test_exact_angle_and_gap_stand_beside_the_setting() -> None:
    walls = """\
  N: 40 in, left=butt, right=out-corner(91.3 deg)
  E: 30 in, left=out-corner(91.3 deg), right=butt
"""
    end = _tickets(walls)["RO-N-base"].right
    assert end.setting == "44 1/2° right"
    assert (
        end.exact
        == "exact: 1/8° less; so set, closes at the face and opens under 1/16 in at the back"
    )


def test_cope_and_its_mate_are_told() -> None:
    by_id = {one.id: one for one in tickets(small(), _pen())}
    assert "cope" in by_id["BR-N2-base"].right.then
    assert by_id["BR-N2-base"].drawing.waste
    assert by_id["BR-E-base"].left.joint == "inside corner, square in"
    assert by_id["BR-S-base-right-return"].caution
    assert by_id["BR-S-base"].mates == "right BR-S-base-right-return"
    assert by_id["BR-N-base-a"].part == "part 1 of 2"


def test_crown_gives_both_ways_to_lay_it() -> None:
    one = next(one for one in tickets(odd(), _pen()) if one.id == "PA-N-crown")
    assert one.left.setting == "mitre 31 1/2° left, bevel 34° left"
    assert one.right.setting == "mitre 31 1/2° right, bevel 34° left"
    assert "wall edge to the fence" in one.left.lay
    assert "ceiling edge to the fence" in one.right.lay
    lines = (*one.shape.face, *one.shape.flap)
    (nested,) = [fact.text for line in lines for fact in line if fact.term == "or"]
    assert nested.startswith("nested upside down, wall edge to the fence")
    assert nested.endswith("no bevel: left end 45° left, right end 45° right")
    assert one.left.exact.startswith("exact: mitre under 1/8° more, bevel 1/8° less; so set")
    assert one.measured == "along the wall edge, from end to end"
    assert str(one.length) == "120 in"


def test_cuts_across_the_face_run_as_the_long_edge_says() -> None:
    """A left end with its long point at the outer edge, by the fence, runs right towards you."""
    by_id = {one.id: one for one in tickets(odd(), _pen())}
    head = by_id["SA-bedroom-case-head"]
    assert (head.left.setting, head.right.setting) == ("45° right", "45° left")
    assert head.left.long_point == "long point at the outer edge"
    assert [one.text for one in head.drawing.texts] == ["outer edge"]
    rake = by_id["SA-A-base"].right
    assert (rake.setting, rake.long_point) == ("18 1/2° right", "long point at the bottom")
    assert by_id["SA-A-base"].mates == "right SA-B-base"


def test_left_and_right_mean_the_same_in_every_drawing() -> None:
    """The slope drawn at each end runs to the side that its setting names."""
    for one in (*tickets(odd(), _pen()), *tickets(house(), _pen())):
        first, last = one.drawing.bodies[0].split(), one.drawing.bodies[-1].split()
        left = [float(point.split(",")[0]) for point in first[:2]]
        tail = last[3:1:-1] if one.drawing.whole else last[:2]
        right = [float(point.split(",")[0]) for point in tail]
        for (near, far), end in ((left, one.left), (right, one.right)):
            assert end.swing == ("right" if near > far else "left" if near < far else ""), one.id
            assert end.swing in end.settings[0]


def test_every_piece_has_its_stick_and_place() -> None:
    for one in tickets(house(), _pen()):
        assert re.fullmatch(r"cut \d+ of \d+(, shares its left cut)?", one.order), one
        assert one.stick


def test_metric_sheets_of_an_inch_job_say_millimetres() -> None:
    one = _tickets("  N: 29 1/8 in, left=butt, right=butt\n", Unit.MM)["RO-N-base"]
    assert str(one.length) == "740 mm"  # 739.775, to the mark of a metric tape


@pytest.mark.parametrize(("show", "other"), [(Unit.MM, r" (in|ft)\b"), (Unit.INCH, r" (mm|ft)\b")])
def test_notes_are_in_the_sheets_unit_and_their_angles_as_the_saw_shows_them(
    show: Unit, other: str
) -> None:
    notes = {
        f"{one.id}: {one.note}".replace(NO_BREAK, " ")
        for name in ("attic", "round-end", "stair-hall")
        for one in tickets(example(name), _pen(show))
        if one.note
    }
    assert [note for note in notes if re.search(other, note)] == []
    told = {re.findall(r"\d[\d/. ]*°", note)[0] for note in notes if "°" in note}
    if show is Unit.INCH:
        assert {"14°", "1/4°", "94 3/4°"} <= told
        assert not any("." in angle for angle in told)


@pytest.mark.parametrize("frame", [CARD_ENDS, STRIP_ENDS], ids=["card", "strip"])
@pytest.mark.parametrize("inches", [Fraction(9, 16), Fraction(3), Fraction(200)])
def test_the_drawing_keeps_its_slopes_to_scale_and_on_the_paper(
    inches: Fraction, frame: Frame
) -> None:
    piece = next(one for one in small().pieces if one.id == "BR-N-base-a")
    trim = small().job.trim("base")
    ends = both_ends(piece, saw_for(trim, small().job.settings))
    drawing = draw_ends(replace(piece, length=inches), ends, trim, frame=frame)
    numbers = [float(n) for body in drawing.bodies for n in re.findall(r"-?[\d.]+", body)]
    xs, ys = numbers[::2], numbers[1::2]
    assert all(0 <= x <= frame.wide for x in xs)
    assert {min(ys), max(ys)} == {frame.fence, frame.fence + frame.thick}
    assert drawing.whole is (inches < (5 if frame is CARD_ENDS else 2))


def _text(pdf: bytes) -> list[str]:
    return [page.extract_text() for page in PdfReader(BytesIO(pdf)).pages]


def test_every_piece_is_on_exactly_one_ticket_in_the_pdf() -> None:
    result = many(12)
    pdf = to_pdf(render_sheets(result, qr=False, only=["tickets"])["tickets"])
    lines = [line.strip() for page in _text(pdf) for line in page.splitlines()]
    for piece in result.pieces:
        assert lines.count(piece.id) == 1, piece.id
    reader = PdfReader(BytesIO(pdf))
    marks = next(one for one in reader.outline if isinstance(one, list))
    assert [one.title for one in marks] == [piece.id for piece in result.pieces]


def test_long_notes_are_not_cut_off() -> None:
    note = " ".join(f"word{number}" for number in range(220))
    job = ROOM + f'  N: 40 in, left=butt, right=butt, note "{note}"\n'
    text = " ".join(_text(to_pdf(render_sheets(compiled(job), only=["tickets"])["tickets"])))
    assert set(note.split()) <= set(text.split())


def test_lengths_read_as_one_reading_in_the_pdf() -> None:
    job = ROOM + "  N: 29 1/8 in, left=butt, right=butt\n"
    text = "\n".join(_text(to_pdf(render_sheets(compiled(job), only=["tickets"])["tickets"])))
    assert re.search(r"^29\s1/8\sin$", text, re.MULTILINE), text
