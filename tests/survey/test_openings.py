"""What the pieces of cased openings are called."""

from __future__ import annotations

from tests.every import every
from tests.jobs import CASE_STOCK, TRIM, WIDE_CASE
from trimlang.compiler import check_job
from trimlang.survey.openings import opening_names

HEAD = TRIM + f"{WIDE_CASE}\n{CASE_STOCK}\n"
CASED = "casing case, height 80 in"


def names(*lines: str, walk: str = ", open walk") -> list[str]:
    text = "\n".join(lines).replace("*", CASED)
    result = check_job(f'{HEAD}room "Hall", trim base{walk}\n{text}\n')
    assert len(result.job.rooms[0].walk) == len(lines)
    return list(opening_names(result.job.rooms[0]).values())


def run(label: str) -> str:
    return f"{label}: 40 in, left=butt, right=butt"


@every(
    "lines, called",
    [
        (['opening 30 in, "Door to hall (2)", *', run("N")], ["door-to-hall-2"]),
        (['opening 30 in, "children\'s room, upstairs left", *'], ["childrens-room"]),
        (['opening 30 in, "Küche", *', run("N")], ["küche"]),
        ([run("N"), "opening 30 in, *", "bare 9 in", "opening 30 in, *"], ["after-N", "after-N-2"]),
        (["opening 30 in, *", run("N")], ["before-N"]),
        (["opening 30 in, *"], ["opening"]),
        ([run("N"), 'opening 30 in, "!", *', "opening 30 in"], ["after-N"]),
        (['opening 30 in, "bath", *', 'opening 30 in, "bath", *'], ["bath", "bath-2"]),
        # a name of its own goes before one that is made
        ([run("N"), "opening 30 in, *", 'opening 30 in, "after n", *'], ["after-N-2", "after-n"]),
        (["opening 30 in, *", 'opening 30 in, "opening", *'], ["opening-2", "opening"]),
    ],
)
def test_an_opening_goes_by_its_name_or_its_wall(lines: list[str], called: list[str]) -> None:
    assert names(*lines) == called


def test_round_a_room_the_last_run_stands_before_the_first_opening() -> None:
    lines = ["opening 30 in, *", run("N"), run("W")]
    assert names(*lines, walk="") == ["after-W"]
