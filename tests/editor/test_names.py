"""Names and their places, and what a rename makes of a whole job with its log."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests import jobs
from tests.jobs import TRIM
from trimlang.editor.mention import Name, NameSort
from trimlang.editor.open_job import JobReading, read_job
from trimlang.editor.renaming import CannotRenameError, edited, rename
from trimlang.incremental.cached_steps import CachedSteps

HEAD = """\
trim base: 9/16 in thick, 5 1/4 in tall, mdf, primed
trim base-cap: 9/16 in thick, 1 1/4 in tall, pine
trim case: 3/4 in thick, 3 1/2 in wide, mdf
stock base: 8 ft at 11.60, 12 ft at 17.40
stock base-cap: 8 ft at 11.60
stock case: 8 ft at 11.60
"""
ROOMS = """\
room "Porch" as PO, trim base, base-cap, open walk
  N: 29 1/8 in, left=butt, right=out-corner
  N-2: 6 ft 4 in, left=out-corner, right=butt
  opening 32 in, height 80 in, casing case
  S: 8 ft 1/2 in, left=butt, right=butt
  opening 36 in, "Door to yard", height 80 in, casing case
room "Pond" , trim base, open walk
  1: 5 ft, left=butt, right=butt
room "Potting shed", trim base, open walk
  1: 5 ft, left=butt, right=butt
room "Pole", trim base, open walk
  1: 5 ft, left=butt, right=butt
"""
LOG = """\
bought 2 base 12 ft at 17.40, 2 base-cap 8 ft at 11.60, 3 case 8 ft
cut PO-S-base from base-1 of 12 ft
cut PO-N-2-base-cap from base-cap-1 of 8 ft
cut PO-after-N-2-case-head from case-2
spoiled PO-door-to-yard-case-left-leg into 30 in from case-1
cut PO2-1-base 60 in
fitted PO-S-base, PO-N-2-base-cap
rack base: 12 ft
"""
JOB = HEAD + ROOMS + LOG


def read(text: str) -> JobReading:
    return read_job(None, "job.trim", {Path("job.trim"): text}, CachedSteps())


def errors(text: str) -> list[tuple[str, int, str]]:
    found = read(text).result.diagnostics
    return [(one.code, one.span.line, one.message) for one in found if one.severity == "error"]


def place(text: str, marked: str) -> tuple[int, int]:
    """Return the line and the column of the ``|``; ``text`` holds ``marked`` without it."""
    before, after = marked.split("|")
    at = text.index(before + after) + len(before)
    return text.count("\n", 0, at) + 1, at - text.rfind("\n", 0, at)


def renamed(text: str, marked: str, new: str) -> str:
    """Return the job after what stands at the mark got a new name."""
    reading = read(text)
    mention = reading.names.at("job.trim", *place(text, marked))
    assert mention is not None
    return edited(text, rename(reading, mention, new))


def name_at(text: str, marked: str) -> Name | None:
    mention = read(text).names.at("job.trim", *place(text, marked))
    return None if mention is None else mention.name


def test_the_job_is_sound() -> None:
    assert errors(JOB) == []


@pytest.mark.parametrize(
    ("marked", "new", "wanted"),
    [
        (
            "trim |base:",
            "skirt",
            [
                "trim skirt: 9",
                "trim base-cap",
                "stock skirt:",
                "as PO, trim skirt, base-cap, open",
                "bought 2 skirt 12 ft at 17.40, 2 base-cap",
                "cut PO-S-skirt from skirt-1 of 12 ft",
                "cut PO-N-2-base-cap from base-cap-1",
                "cut PO2-1-skirt 60 in",
                "fitted PO-S-skirt, PO-N-2-base-cap",
                "rack skirt: 12 ft",
            ],
        ),
        (
            "from base-|cap-1",
            "moulding",
            [
                "trim base: 9",
                "trim moulding: 9",
                "cut PO-S-base from base-1",
                "cut PO-N-2-moulding from moulding-1 of 8 ft",
                "2 moulding 8 ft",
            ],
        ),
        (
            "cut PO-after-N-2-ca|se-head",
            "frame",
            [
                "height 80 in, casing frame",
                "cut PO-after-N-2-frame-head from frame-2",
                "spoiled PO-door-to-yard-frame-left-leg into 30 in from frame-1",
                "3 frame 8 ft",
            ],
        ),
        (
            "\n  N-|2:",
            "East",
            [
                "\n  N: 29",
                "\n  East: 6 ft",
                "cut PO-East-base-cap from",
                "cut PO-after-East-case-head",
                "fitted PO-S-base, PO-East-base-cap",
            ],
        ),
        ("\n  |N:", "North", ["\n  North: 29", "\n  N-2: 6", "cut PO-N-2-base-cap", "after-N-2-c"]),
        (
            "spoiled P|O-door",
            "PX",
            [
                '"Porch" as PX,',
                "cut PX-S-base",
                "cut PX-N-2-base-cap",
                "cut PX-after-N-2-case",
                "spoiled PX-door-to-yard-case-left-leg",
                "cut PO2-1-base",
                # its own tag was made from the one above
                'room "Pond" as PO2 ,',
            ],
        ),
    ],
)
def test_a_rename_reaches_every_line_of_the_log(marked: str, new: str, wanted: list[str]) -> None:
    after = renamed(JOB, marked, new)
    assert [one for one in wanted if one not in after] == []
    assert errors(after) == []
    assert len(read(after).result.pieces) == len(read(JOB).result.pieces)


def test_the_parts_of_a_broken_wall_keep_their_names() -> None:
    text = f'{TRIM}room "R", trim base, ends in, open walk\n  N 40, door 32, N 30, window 20, N 9\n'
    assert "  B 40, door 32, N2 30, window 20, N3 9\n" in renamed(text, "|N 40", "B")
    assert "  N 40, door 32, B 30, window 20, N3 9\n" in renamed(text, "|N 30", "B")


def test_a_tag_that_a_name_gave_is_written_down_when_the_log_has_it() -> None:
    assert 'room "Summer house" as PO2 , trim' in renamed(JOB, 'room "Po|nd"', "Summer house")
    # nothing in the log is of this room: it may get the tag of its new name
    assert 'room "Attic", trim' in renamed(JOB, 'room "Potting |shed"', "Attic")


def test_a_tag_may_be_renamed_where_only_the_log_has_it() -> None:
    after = renamed(JOB, "cut PO|2-1-base", "KO")
    assert 'room "Pond" as KO , trim' in after
    assert "cut KO-1-base 60 in" in after
    assert errors(after) == []


def test_a_room_below_keeps_the_tag_that_the_log_has() -> None:
    job = HEAD + ROOMS.replace(" as PO,", ",") + "cut PO2-1-base 60 in\n"
    after = renamed(job, 'room "Por|ch"', "Veranda")
    assert 'room "Veranda", trim' in after
    assert 'room "Pond" as PO2 , trim' in after
    assert errors(after) == []


@pytest.mark.parametrize(
    ("log", "marked", "wanted"),
    [
        pytest.param("cut PO-S-base", "PO-S-b|ase", Name(NameSort.TRIM, "base"), id="trim"),
        pytest.param("cut PO-n-base", "PO-|n-base", Name(NameSort.RUN, "n", 0), id="small letters"),
        pytest.param("cut PO-S-oak", "PO-S-o|ak", Name(NameSort.TRIM, "oak"), id="no such trim"),
        pytest.param("cut PO-Q-base", "PO-|Q-base", None, id="no such run"),
        pytest.param("cut QQ-S-base", "Q|Q-S-base", None, id="no such room"),
        pytest.param("cut PO-S-base from 8 ft", "8| ft", None, id="a length"),
        pytest.param("cut PO-S-base from base-x", "from ba|se-x", None, id="no stick"),
        pytest.param(
            "cut PO-S-base-left-return", "base|-left", Name(NameSort.TRIM, "base"), id="part"
        ),
        pytest.param(
            "cut PO-D1-case-head", "D1-cas|e", Name(NameSort.TRIM, "case"), id="old opening"
        ),
        pytest.param("cut PO-D1-case-head", "PO-D|1-case", None, id="opening itself"),
        pytest.param("cut PO-after-Q-case-head", "after-|Q", None, id="after no run"),
        pytest.param(
            "cut PO-after-S-2-case-head", "after-|S-2", Name(NameSort.RUN, "s", 0), id="the second"
        ),
        pytest.param("rack oak: 8 ft", "rack o|ak", Name(NameSort.TRIM, "oak"), id="rack"),
    ],
)
def test_what_a_line_of_the_log_names(log: str, marked: str, wanted: Name | None) -> None:
    assert name_at(HEAD + ROOMS + log + "\n", marked) == wanted


def test_a_label_of_letters_that_fold_to_more_is_found() -> None:
    job = HEAD + ROOMS.replace("  S:", "  Straße:") + "cut PO-Straße-base\n"
    assert "cut PO-Hof-base\n" in renamed(job, "PO-Stra|ße-base", "Hof")


@pytest.mark.parametrize(
    ("marked", "new", "why"),
    [
        ("trim |base:", "case", "already stands"),
        ('room "Po|nd"', 'a "b"', "without quotation marks"),
        ('room "Po|nd"', " ", "without quotation marks"),
        ("\n  |N:", "N 3", "a word or a number"),
        ("as P|O,", "PO3", "cannot stand there"),
    ],
)
def test_a_rename_that_would_do_harm_is_refused(marked: str, new: str, why: str) -> None:
    job = JOB.replace('room "Pole",', 'room "Pole" as PO3,')
    with pytest.raises(CannotRenameError, match=why):
        renamed(job, marked, new)


def test_a_rename_keeps_how_lines_end_and_the_mark_at_the_start() -> None:
    text = "\ufeff" + JOB.replace("\n", "\r\n")
    reading = read(text)
    mention = next(
        one for one in reading.names.mentions if one.name == Name(NameSort.TRIM, "base-cap")
    )
    after = edited(text, rename(reading, mention, "cap"))
    assert after == text.replace("base-cap", "cap")


def test_an_error_that_was_there_before_is_no_hindrance() -> None:
    job = JOB.replace("opening 32 in, height 80 in, casing", "opening 32 in, casing")
    found = errors(job)
    assert "T240" in {code for code, _, _ in found}
    after = renamed(job, "trim |case:", "frame")
    assert [one[:2] for one in errors(after)] == [one[:2] for one in found]


def test_a_setting_said_twice_is_no_hindrance() -> None:
    twice = "paint: 2 coats\npaint: 2 coats\n"
    assert "stock skirt: 8 ft" in renamed(twice + JOB, "trim ba|se:", "skirt")


def test_a_blocks_name_follows_to_every_place_where_one_stands() -> None:
    job = (
        f"{jobs.TRIM}{jobs.CASE}\nstock case: 16 ft at 12.10\n"
        "block foot: 3 in wide, 7 in tall, 1 1/8 in thick, at 6.50\n"
        'room "Den", trim base, open walk\n'
        "  N: 40 in, left=butt, right=in-corner(block foot)\n"
        "  E: 40 in, right=butt\n  transition foot\n  E2: 20 in, left=butt, right=butt\n"
        "  door 32 in, casing case, height 80 in, plinths foot, corner blocks foot\n"
    )
    after = renamed(job, "block f|oot: 3", "post")
    assert after == job.replace("foot", "post")
    assert after == renamed(job, "transition foo|t", "post")
    with pytest.raises(CannotRenameError):
        renamed(job, "transition foo|t", "base")
