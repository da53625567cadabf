"""Laws of comparing: what is written elsewhere or otherwise changes no piece's name or cut."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.conftest import examples
from tests.jobs import CASE_STOCK, SHOE, SHOE_STOCK, TRIM, WIDE_CASE
from trimlang.compare.changes import compare
from trimlang.compare.matching import Matched, match_pieces
from trimlang.compiler import Result, check_job, compile_job
from trimlang.joinery.piece import Piece
from trimlang.stock.planner import QUICK

quietly = settings(deadline=None, suppress_health_check=list(HealthCheck))

NAMES = ["Study", "Stairs", "Hall", "Living room", "Laundry room", "Bedroom 2", "Back bedroom"]
HEAD = TRIM + f"{SHOE}\n{SHOE_STOCK}\n"
HEAD += f"{WIDE_CASE}\n{CASE_STOCK}\n"


@st.composite
def runs(draw: st.DrawFn, label: str) -> list[str]:
    """A run with bare wall behind it, so that it meets no other."""
    ends = [
        draw(st.sampled_from(["in-corner", "out-corner(89 deg)", "butt", "return", "open"]))
        for _ in "lr"
    ]
    trims = draw(st.sampled_from(["", ", no shoe", ", splice"]))
    long = draw(st.integers(60, 300))
    door = draw(
        st.sampled_from(
            [
                "bare 9 in",
                f'opening 30 in, "{label}", casing case, height 80 in',
                "opening 30 in, casing case, height 80 in",
            ]
        )
    )
    return [f"  {label}: {long} in, left={ends[0]}, right={ends[1]}{trims}", f"  {door}"]


@st.composite
def rooms(draw: st.DrawFn, name: str) -> list[list[str]]:
    count = draw(st.integers(1, 4))
    heading = [f'room "{name}", trim base, shoe, open walk']
    return [heading, *(draw(runs(f"W{number}")) for number in range(count))]


@st.composite
def houses(draw: st.DrawFn) -> list[list[list[str]]]:
    names = draw(st.lists(st.sampled_from(NAMES), min_size=1, max_size=4, unique=True))
    return [draw(rooms(name)) for name in names]


def written(house: list[list[list[str]]]) -> str:
    return HEAD + "\n".join(line for room in house for part in room for line in part) + "\n"


def checked(text: str) -> Result:
    result = check_job(text)
    assert result.ok, result.diagnostics
    return result


def matched(old: Result, new: Result) -> Matched:
    """Match the pieces; each is paired once, or gone, or added."""
    found = match_pieces(old.job, old.pieces, new.job, new.pieces)
    pairs = found.pairs
    assert len({one.id for one, _ in pairs}) == len({other.id for _, other in pairs}) == len(pairs)
    assert len(pairs) + len(found.gone) == len(old.pieces)
    assert len(pairs) + len(found.added) == len(new.pieces)
    return found


def shape(piece: Piece) -> Piece:
    """What is sawn, without names."""
    return replace(piece, id="", room="", run="", mates=(), note=None, remarks=())


@given(houses(), st.data())
@settings(quietly, max_examples=examples(10))
def test_a_room_added_elsewhere_renames_no_piece(house: list, data: st.DataObject) -> None:
    """Unless the survey says that a tag hangs on the order of the rooms."""
    old = checked(written(house))
    used = {room[0][0].split('"')[1] for room in house}
    name = data.draw(st.sampled_from([name for name in [*NAMES, "Attic"] if name not in used]))
    at = data.draw(st.integers(0, len(house)))
    new = checked(written([*house[:at], data.draw(rooms(name)), *house[at:]]))
    found = matched(old, new)
    assert not found.gone
    assert not found.renamed
    assert {piece.room for piece in found.added} == {name}
    assert all(shape(one) == shape(other) for one, other in found.pairs)
    if not any(one.code == "T641" for one in new.diagnostics):
        assert all(one.id == other.id for one, other in found.pairs)


@given(houses(), st.data())
@settings(quietly, max_examples=examples(10))
def test_a_run_or_door_added_elsewhere_renames_no_piece(house: list, data: st.DataObject) -> None:
    old = checked(written(house))
    room = data.draw(st.integers(0, len(house) - 1))
    at = data.draw(st.integers(1, len(house[room])))
    more = [*house[room][:at], data.draw(runs("NEW")), *house[room][at:]]
    new = checked(written([*house[:room], more, *house[room + 1 :]]))
    found = matched(old, new)
    assert not found.gone
    assert all(shape(one) == shape(other) for one, other in found.pairs)
    assert all(one.id == other.id for one, other in found.pairs)


@given(houses(), st.data())
@settings(quietly, max_examples=examples(8))
def test_a_room_under_another_name_and_moved_is_known_again(
    house: list, data: st.DataObject
) -> None:
    old = checked(written(house))
    at = data.draw(st.integers(0, len(house) - 1))
    before = house[at][0][0].split('"')[1]
    renamed = [[house[at][0][0].replace(f'"{before}"', '"Quiet corner"')], *house[at][1:]]
    others = data.draw(st.permutations([*house[:at], *house[at + 1 :]]))
    new = checked(written([renamed, *others]))
    found = matched(old, new)
    assert [(one.what, one.old, one.new) for one in found.renamed] == [
        ("room", before, "Quiet corner")
    ]
    assert not found.gone
    assert not found.added
    assert all(shape(one) == shape(other) for one, other in found.pairs)


@given(houses(), st.data())
@settings(quietly, max_examples=examples(8))
def test_remarks_blanks_and_moved_settings_change_nothing(house: list, data: st.DataObject) -> None:
    extra = ["saw: kerf 3/32 in", "spare 5 %", 'currency "$"', "round out-corner up"]
    text = "\n".join(extra) + "\n" + written(house)
    moved = "\n".join(data.draw(st.permutations([*HEAD.splitlines(), *extra])))
    rest = written(house).removeprefix(HEAD).replace("\n", "   # remark\n\n#  \n")
    old, new = compile_job(text, effort=QUICK), compile_job(f"{moved}\n{rest}", effort=QUICK)
    assert compare(old, new).same


@given(houses(), st.data())
@settings(quietly, max_examples=examples(5))
def test_what_is_cut_is_wrong_where_the_survey_asks_for_something_else(
    house: list, data: st.DataObject
) -> None:
    """Whatever the logs say, of which the newer goes on where the older ends."""
    text = written(house)
    ids = [piece.id for piece in checked(text).pieces if piece.parts == 1]
    cut = data.draw(st.lists(st.sampled_from(ids), unique=True)) if ids else []
    done = data.draw(st.integers(0, len(cut)))
    logs = [f"{text}{''.join(f'cut {one}{chr(10)}' for one in part)}" for part in (cut[:done], cut)]
    assert compare(compile_job(logs[0], effort=QUICK), compile_job(logs[0], effort=QUICK)).same
    run = data.draw(st.sampled_from([part[0] for room in house for part in room[1:]]))
    long = int(run.split(": ")[1].split(" in")[0])
    resurveyed = run.replace(f"{long} in", f"{long + data.draw(st.sampled_from([-2, 3]))} in")
    pair = [
        compile_job(log.replace(*swap), effort=QUICK)
        for log, swap in zip(logs, ((run, run), (run, resurveyed)), strict=True)
    ]
    assert all(result.ok for result in pair), [one.diagnostics for one in pair]
    found = compare(*pair)
    recut = {change.new.id for change in found.changed if change.cut}
    wrong = {one.id for one in found.wrong}
    # what was cut since in short was cut as the newer survey says
    assert wrong == recut & set(cut[:done])
    assert not set(found.reprint) & set(cut)
