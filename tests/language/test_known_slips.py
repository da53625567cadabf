"""Slips of real hands: each gets a message that says it, and a remedy that mends it."""

from __future__ import annotations

import re

import pytest
from syrupy.assertion import SnapshotAssertion

from tests.every import every
from tests.jobs import TRIM
from trimlang.compiler import check_job
from trimlang.diagnostics.mend import Mend
from trimlang.diagnostics.mending import mends
from trimlang.language.parse import read_line
from trimlang.language.regional_names import PARTS_ELSEWHERE
from trimlang.language.slips.known_slips import KNOWN_SLIPS

EXAMPLES = [(slip, *example) for slip in KNOWN_SLIPS for example in slip.examples]

ROOM = 'room "R", trim base, ends in, open walk\n'
LINES = (
    "N: 40 in,, left=butt", "N: 40 in,", "stock base: 12 ft at 17,40", "N: l2 ft", "N: 16.1/2",
    "N: 161/2 in", "N: 12 in 4 1/8 in", "N: 3/10", "N: 3/10 in, left=butt", "N: O ft",
    "stock base: 12 ft at", "N\t40\tin\tbutt", "N;40;in;butt", "room Den", "room Den, trim base",
    '"Den" room', "base stock: 12 ft at 17.40", "40 in N", "trim cap: thick 3/4 in",
    "corners: rake gap 1/16 in", "stock base: 12 ft = 17.40", "stock base: 12 ft 17.40",
    'door 32 "to hall"', "N: 40 in, left=in-corner 91 deg", "N: 9 7 in", "N: 2 740", "N: 3\"1/8",
    "N 40 in left=butt", "N: 40 in, rigth=butt", "N: 40 in, left=insde", "opning 32 in",
    "dor 32 in", "N: forty in", "N:", "N: 40 furlong", "N 40 in, entrance", "ends return",
    "N: 40 in, left=butt, left=in", "N: 40 in; left=butt", "N: 40 in @ 91",
)  # fmt: skip
SATURDAY = (
    "N 10 ft E 8 ft", "N: 10 ft, E: 8 ft", "N 10 ft, 32 in door to hall", "door 32 to hall",
    "door to hall, 32", "door 32in x 80in", "door 2868", "door 2-8", "N 10-2-1/4",
    "closet 30, N 10 ft", "N 40, tub 60", "N 40, right return", "N 40, out 91, E 30",
    "N 29 1/8 strong", "N 29 1/8+",
    "wall N 40", "N = 40 in", "N 40, no the shoe", "N: 40 in, right=mitre", "N 40 (closet)",
)  # fmt: skip
SUNDAY = (
    "N,120 1/4,in-corner,in-corner", "Kitchen,N,3.25", "N, 10 ft, E, 8 ft",
    "N: 40 in, right=rake gap 1/16 in", "rake gap 1/16 in", "room Living Room trim base",
    'trim base, room "Den"', "left=in, N 10 ft", "N: left=in, 10 ft", "10 ft N, 8 ft 3 E",
    "saw: 1/8 in kerf", "1/8 in kerf", "N 10 ft, door 32, 8 ft 2", "door 32, 21 9/16, E 8 ft",
    "stock base: 12 ft at 1.45/ft", "stock base: 12 ft 1.45/lf", "stock base: 12 ft at 17.40 each",
    "bought base 4 of 16 ft", "bought 4 x 16 ft base", "bought base 16 ft",
)  # fmt: skip
MONDAY = (
    "// measured twice", "N) 40 in", "North wall 40 in", "N: 40 in, L=in", "N: 40 in, both=in",
    "N: 40 in (in, butt)", "N: 40 in, in-corner, butt", "N 40, E 30 outside", "N 40, corner, E 30",
    "N: 29 in and a half", "N: 40 in +1/16", "N: ~40 in", "N: 3m25", "door 2-6 x 6-8",
    "door: 32 in", "door to the hall: 32", '32" door', 'door 32" to hall', "bare 6ft cabinets",
    "opening 30 no trim", "N: 40 in, skip shoe", "N: 40 in, note behind the radiator",
)  # fmt: skip

ABOVE_THE_ROOMS = (
    "trim base 9/16 in thick", "stock: base 12 ft at 17.40", "tax: 8.25 %", "tax 8.25",
    "currency $", "include prices.trim", 'room "Den": trim base', 'room "Den" (trim base)',
    'room "Den", trim base and shoe', "all rooms: trim base", "on hand base: 40 in", "waste 10 %",
    "surveyed 18.4.2026", "trim cap: 9/16 x 5 1/4", "trim cap: 9/16 in thick, 5 1/4 in high",
    "stock base: 12 ft: 17.40", "stock base: 12 ft at 17.40 USD", "stock base: 1.45 a foot",
    "on-hand base: 2 x 40 in", "stock base: 10 x 12 ft at 17.40", "ends in, trim base",
    "surveyed 31.2.2026", "trim cap: 5½ x ¾",
)  # fmt: skip

TUESDAY = (
    "N 10' 2 1/4\" E 8' 7\"", "N: 40 in, return right", "N: 40 in, base=return",
    "cut 30 in R-A-base", "bought 2 base of 12 ft", "stock base: 12 ft - 18.10",
    "N 10 ft, gap 1/16, E 8 ft", "N 10 ft, gap 32, E 8 ft", "N 10 ft, door, E 8 ft",
)  # fmt: skip

WEDNESDAY = (
    "N: 10'2-1/4\", in/in", "N: 40 in ic, oc", "N: 40 in, in-corner both ends", "N ten feet",
    "N: 40 in, left - in, right=butt", "N: 122 1/4\" (10' 2 1/4\")", "N - 40", "N => 40",
    "N 40 to casing", "N 40 then door 32", "N 40 / E 30", "N40 in, E30 in", "1. 10 ft 2",
    "wall 1 10 ft 2", "door 32 hinge left", "door 2'8\" x 6'8\"", "door 32, lh", "door-32",
    "double door 60", "window 36 wide 48 high", "window 36, sill at 30", "closet opening 48",
    "N 40, 45 corner, E 30", "N 40, base only", "N: 40 in, leave out base", "N 40, scribe 1/4",
    "N: 40 in, coped right", "N: 40 in, mitre left", "N 40, open end", "N 40 note: check",
    "N 40 ?", "N: 40 in, inside corners", "N 40, joint at 24",
)  # fmt: skip
PRICE_LIST = (
    "job: Quince Row", "surveyed 18 April 2026", "spare 10 percent", "round to the nearest 1/16",
    "splice: never", "cope inside corners", "all ends in-corner", "nails: 16 in o.c.",
    "offcuts base: 40 in", "on-hand: 2 base 40 in", "stock base: 8/20/24 ft at 1.45 a foot",
    "stock base: 8 to 20 ft at 1.45 a foot", "stock base: 20 ft (28.40)",
    "stock base: 20 ft at 28.40 max 6", "stock base: 20' 28.40", "stock base: 20 ft, at 28.40",
    "stock base: 28.40 for 20 ft", "stock base: 20 ft at 1,028.40", "stock base: Hill Yard, 20 ft",
    "trim Cap Board: 9/16 in thick", "trim cap = 9/16 in thick", "trim cap: 1/2\" by 1\" pine",
    "trim cap: 1/2 in thick, in front base", "trim cap: 1/2 in thick, on top of base",
    "trim cap: 1/2 in thick, 1", "caulk: yes",
)  # fmt: skip
ON_THE_SITE = (
    "cut all N", "cut R-A-base @ 30", "cut R A base", "R-A-base cut", "R-A-base done",
    "cut R-A-base today", "cut \"R-A-base\"", "cut R-A-base (30 in)", "spoiled R-A-base left 22 in",
    "spoiled R-A-base 1/2 in short", "shortened R-A-base by 1/8", "shortened R-A-base 28 7/8",
    "cut R-A-base from base 1", "cut R-A-base from the 12 ft", "bought 2 base", "bought 2 12 ft",
    "bought 2 sticks 12 ft base at 17.40", "rack: base 2 of 12 ft", "broke R-A-base",
    "stock base: 20 ft at 28.40 pro lfm", "N: 40 in, rechts=in", "puerta 32",
)  # fmt: skip
HEADINGS = (
    "Room: Den", 'room "Den" - trim base', 'room "Den", base and shoe', 'room "Den", with base',
    'room "Den", trim base, no shoe', 'room "Den", trim base, 9 ft ceiling', "Den:", '"Den"',
    'room "Den", all corners inside', 'rm "Den", trim base', "living room, trim base",
)  # fmt: skip
THURSDAY = (
    'trim base room "Q"', "room,wall,length,left,right", "window 36, stops base, rail",
    "window 36 in, stops base & shoe, N 3 ft", "N 4 ft, door 36, full height, N 3 ft",
    "opening 36, floor to ceiling", "tape: 1/32 in", "step 1/32", "precision: 1/16 in",
    "round 1/32", "measure to 1/32 in", "tape: mm", "base trim: 9/16 in thick",
    "N: 40 in, L inside, right=butt", "N 8/20 ft", "N: 3'250", "N: 3'250 mm", "N 3/10, E 8 ft",
    "N: 10 ft, left=in, joint at 24", "N 10 ft, scarf at 24 in", "cut base A 30 in",
    "cut A-base 30 in", "cut base-A", "cut R A base 30 in",
)  # fmt: skip
FRIDAY = (
    "N 10 ft, E 8 ft, S same, W 8 ft", "N/S 10 ft, E/W 8 ft", "N 10 ft. E 8 ft. S 10 ft.",
    "N 10 ft;E 8 ft;S 10 ft", "N: 10 ft E: 8 ft", "N 5 ft, french door 60, N 3 ft",
    "N 5 ft, slider 72, N 3 ft", "kerf: 1/8 in", "waste: 10%", "stock base: 12 ft x 6 at 18.10",
    "stock base: 12-footers at 17.40", "price base 1.45/ft", "trim cap: 9/16 thick 5 1/4 tall",
    "N 1/3'-0.5\"", "N 3/10 in, left=butt",
)  # fmt: skip


def _after(line: str, mend: Mend) -> str:
    """Return a line with a mend's edits made, from its end to its beginning."""
    for edit in sorted(mend.edits, key=lambda one: -one.span.column):
        line = line[: edit.span.column - 1] + edit.text + line[edit.span.end - 1 :]
    return line


IN_A_HURRY = (
    "stock base: at 28.40 20 ft", "stock base: 28.40 20 ft", "stock 20 ft base at 28.40",
    "base 20 ft at 28.40", "stock base at 28.40: 20 ft", "on-hand 40 in base",
    'room trim base, "Den"', 'room base "Den"', 'room as D "Den"', 'room "Den" base',
    'room "Den" base shoe', "10 % spare", "2026-04-18 surveyed", '"hall" door 32',
    "in left, N 10 ft", 'note "bowed", N 10 ft', "E 8 ft, corner in right", "E: 8 ft, corner in",
    "E 8 ft, right corner in",
    "N 10 ft, 91 deg", "N: 10 ft, left=butt, 91 deg", "N 10 ft @ 91, E 8 ft", "N: 10 ft, right=91",
    "S 10 ft, W", "N 10 ft, north, S 8 ft", "N: 2 l/4", "N: 10.2 1/4", "N 10 ft 2 1/4.",
    "N: 40 in, left=butt, right=butt.", "N: 40 in, in-corner, in-corner", "N: 40 in, butt, out",
    "door closet 30 in wide", "N: 40 in, right=mitered", "N 40, right mitred, E 30",
    "N 10 ft IN E 8 ft", "N 10 ft out E 8 ft in door 32", "N-10 ft, E-8 ft", "N-120 1/4, E 96",
    "N-10 2 1/4, E 8 ft", "dr 32 in", "dwr 32", "N 10 ft, wdw 36, E 8 ft", "cabs 60", "fp 60",
    "stock base: 20 ft at 1.45 per ft", "stock base: 3.6 m at 4.75 per metre", "ends mitred",
)  # fmt: skip

ON_A_PHONE = (
    "• N 10 ft 2 1/4", "– N 10 ft, E 8 ft", "1. N 10 ft 2 1/4", "a) N 10 ft", "N 10` 2 1/4, E 8 ft",
    "N N 10 ft, E 8 ft", "N 10 ft ft, E 8 ft", "N 10 10 ft, E 8 ft", "N 120 1\\4, E 96",
    "N 120 1:4", "N 10 foot 2 and 1/4", "N 10 ft 2 & 1/4", "N 20 ft & 6", "N 10 ft 2 1/4 - E 8 ft",
    "Wand N 3.25 m", "N 3.25 m, Tür Flur 80 cm, E 2.4 m", "N 12 ft, dor closet 30, N2 6 ft",
    "N 10 ft, E ???, S 10 ft", "N 10 ft, S tbd", "NE corner 91", "corner N-E 91 deg",
    "N 40, corner 91, E 8 ft", "N 10 ft, insde, E 8 ft", "N 10 ft, ouside, E 8 ft",
    "N 10 ft, door 32, E", "door 32 in swing in left", "door ‘to hall’ 32", "N 240cm ?",
    "N: 10 ft left=in right=in", "N: 40 in, left=in, right=Gehrung", 'room "Den, trim base',
    'room Den", trim base', "room «Den», trim base", 'Zimmer "Bad", trim base',
    'room "Den", end in',
    'room "Den", ends in ends in',
)  # fmt: skip


@every("slip, written, meant", EXAMPLES)
def test_an_example_brings_its_slip_up_and_is_mended(
    slip: object, written: str, meant: str | tuple[str, ...] | None
) -> None:
    statement, (found, *_) = read_line(written, "x", 1)
    assert found.code == slip.code  # type: ignore[attr-defined]
    assert slip.wanted in found.message or found.code == "T114"  # type: ignore[attr-defined]
    made = mends(found, written)
    if meant is None:
        assert not made
        return
    ways = tuple(_after(written, one) for one in made)
    # What was measured and is left out of the line stays as a remark behind it.
    for after in ways:
        left = re.findall(r"\d+", after)
        for number in re.findall(r"\d+", written):
            assert not int(number) or any(number in other for other in left), after
    if "#" not in f"{written}{meant}":
        ways = tuple(one.partition("  #")[0] for one in ways)
    assert meant == (ways[0] if isinstance(meant, str) else ways)
    # where it may be meant in two ways, neither is made without asking
    assert len(ways) == 1 or not any(one.sure for one in made)
    for after in ways:
        statement, findings = read_line(after, "x", 1)
        assert statement is not None or after.startswith("#")
        assert not findings


def test_names_from_elsewhere_are_answered_with_the_usual_one() -> None:
    told: dict[str, str] = {}
    names = 0
    for row in PARTS_ELSEWHERE:
        for written, meant in row.written():
            names += 1
            _, (found, *_) = read_line(written, "x", 1)
            ((edit,),) = [one.edits for one in mends(found, written)]
            told[written] = (
                written[: edit.span.column - 1] + edit.text + written[edit.span.end - 1 :]
            )
            assert told[written] == meant, written
            statement, left = read_line(meant, "x", 1)
            assert statement is not None
            assert not left, meant
    assert names > 150


def test_a_trim_may_go_by_another_name() -> None:
    room = 'room "R", trim WORD, open walk\nA: 30 in, left=butt, right=butt\n'
    for word, usual in (("skirting", "base"), ("quadrant", "shoe"), ("architrave", "case")):
        trims = "".join(
            f"trim {one}: 1/2 in thick, 2 in tall\n" for one in ("base", "shoe", "case")
        )
        found = {one.code: one for one in check_job(trims + room.replace("WORD", word)).diagnostics}
        assert f"“{usual}”" in found["T210"].remedy
    # what the user calls a trim is never asked about
    own = f"{TRIM}trim skirting: 1/2 in thick, 2 in tall\nstock skirting: 8 ft at 5.20\n"
    assert not [one for one in check_job(own + room.replace("WORD", "skirting, base")).diagnostics
                if one.code == "T210"]  # fmt: skip
    joint = f'{TRIM}room "R", trim base, open walk\nA: 30 in, left=butt, right=butt, scarf\n'
    assert "“splice”" in next(
        one.remedy for one in check_job(joint).diagnostics if one.code == "T210"
    )


@pytest.mark.parametrize(
    "lines",
    [
        LINES,
        SATURDAY,
        SUNDAY,
        MONDAY,
        TUESDAY,
        WEDNESDAY,
        THURSDAY,
        FRIDAY,
        IN_A_HURRY,
        ON_A_PHONE,
        PRICE_LIST,
        ON_THE_SITE,
        HEADINGS,
        ABOVE_THE_ROOMS,
    ],
    ids=[
        "forty",
        "on a Saturday",
        "on a Sunday",
        "on a Monday",
        "on a Tuesday",
        "on a Wednesday",
        "on a Thursday",
        "on a Friday",
        "in a hurry",
        "on a phone",
        "off a price list",
        "on the site",
        "in headings",
        "above the rooms",
    ],
)
def test_what_real_hands_write(lines: tuple[str, ...], snapshot: SnapshotAssertion) -> None:
    assert len(LINES) == 40
    told = {}
    for line in lines:
        found = check_job(f"{TRIM}{ROOM}A: 30 in, left=butt\n{line}\nZ: 30 in, right=butt\n")
        here = [one for one in found.diagnostics if one.span.line == TRIM.count("\n") + 3]
        assert here, line
        told[line] = [f"{one.code}: {one.message}. {one.remedy}" for one in here]
    assert told == snapshot


@every(
    "line",
    [
        *LINES,
        *SATURDAY,
        *SUNDAY,
        *MONDAY,
        *TUESDAY,
        *WEDNESDAY,
        *THURSDAY,
        *FRIDAY,
        *IN_A_HURRY,
        *ON_A_PHONE,
        *PRICE_LIST,
        *ON_THE_SITE,
        *HEADINGS,
        *ABOVE_THE_ROOMS,
    ],
)
def test_each_remedy_that_can_be_applied_mends_its_slip(line: str) -> None:
    """Applied, the finding is gone and the line is read; where only a person knows, none is."""
    before = f"{TRIM}{ROOM}A: 30 in, left=butt\n"
    number = before.count("\n") + 1
    found = check_job(f"{before}{line}\nZ: 30 in, right=butt\n").diagnostics
    for finding in [one for one in found if one.span.line == number]:
        for mend in mends(finding, line):
            after = _after(line, mend)
            again = check_job(f"{before}{after}\nZ: 30 in, right=butt\n").diagnostics
            here = [one for one in again if one.span.line == number]
            assert (finding.code, finding.message) not in [(one.code, one.message) for one in here]
            assert not [one for one in here if one.code.startswith("T10")], after


def test_a_misspelt_word_that_begins_a_line_is_told_before_what_follows_it() -> None:
    """What may stand behind it is known once it is spelled right, and is told then."""
    _, (first,) = read_line("dor 32, 16", "x", 1)
    (mend,) = mends(first, "dor 32, 16")
    assert _after("dor 32, 16", mend) == "door 32, 16"
    _, (then,) = read_line("door 32, 16", "x", 1)
    assert "N2" in then.remedy


def test_most_slips_have_a_remedy_that_can_be_applied() -> None:
    mended = 0
    for line in LINES:
        found = check_job(f"{TRIM}{ROOM}A: 30 in, left=butt\n{line}\nZ: 30 in, right=butt\n")
        number = TRIM.count("\n") + 3
        mended += any(mends(one, line) for one in found.diagnostics if one.span.line == number)
    assert mended >= 28


@pytest.mark.parametrize("size", ["1/0 x 5", "9/16 x 5..2", "1/2/3 x 5"])
def test_a_size_that_is_no_number_is_told_and_not_reckoned_with(size: str) -> None:
    found = check_job(f"trim cap: {size}\n").diagnostics
    assert [one.span.line for one in found if one.code == "T101"] == [1]


def test_a_vulgar_fraction_tells_thick_from_tall() -> None:
    (finding,) = [
        one
        for one in check_job("trim cap: 1¾ in x 1½ in\n").diagnostics
        if one.span.line == 1 and one.code == "T101"
    ]
    assert "1½ in thick, 1¾ in tall" in finding.remedy
