"""Where long walls are pieced together: cheaper where it can be, within the rules, never dearer."""

from fractions import Fraction
from unittest.mock import patch

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.conftest import EXAMPLES, LAWS, examples
from tests.jobs import BASE, CROWN, TWELVE_FEET
from trimlang.compiler import Result, compile_job
from trimlang.joinery.splice_choices import other_cuts
from trimlang.planning import first_plan, moved_joints, placing
from trimlang.planning.ask import ask
from trimlang.planning.drawn_joints import DrawnJoints, least_anywhere
from trimlang.planning.placing import with_places
from trimlang.settings.table import Settings
from trimlang.stock.planner import QUICK, Effort, plan_stock
from trimlang.stock.problem import Plan

HEAD = f"{BASE}\nspare 0 %\n"
ROOM = 'room "R", trim base, open walk\n'
TWO_LENGTHS = HEAD + "stock base: 8 ft at 9.00, 12 ft at 17.40\n"


def planned(text: str, effort: Effort | None = None) -> Result:
    result = compile_job(text, effort=effort)
    assert result.ok, result.diagnostics
    return result


def usual(text: str, effort: Effort | None = None) -> Result:
    with (
        patch.object(first_plan, "place_splices", lambda *_: {}),
        patch.object(DrawnJoints, "places", lambda *_: {}),
    ):
        return planned(text, effort)


def wall(feet: str, facts: str = "") -> str:
    return ROOM + f"N: {feet}, left=butt, right=butt{facts}\n"


@pytest.mark.parametrize("effort", [None, QUICK])
def test_two_short_sticks_where_a_long_and_a_short_one_cost_more(effort: Effort | None) -> None:
    # 15 ft and a lap of 9/16: the usual 12 ft and a remainder take one of each length
    text = TWO_LENGTHS + wall("15 ft")
    assert usual(text, effort).cost == Fraction("26.40")
    result = planned(text, effort)
    assert result.cost == 18
    assert [piece.length for piece in result.pieces] == [96, Fraction(1353, 16)]


def test_rests_in_the_shop_decide_where_the_joint_is() -> None:
    text = TWO_LENGTHS + "on-hand base: 93 in, 90 in\n" + wall("15 ft")
    assert usual(text).cost > 0
    assert planned(text).cost == 0


def test_what_other_walls_leave_decides_where_the_joint_is() -> None:
    inches = (54, 71, 153, 57, 270, 74)
    text = HEAD + f"{TWELVE_FEET}\n" + ROOM
    text += "bare 1 ft\n".join(f"N{n}: {n} in, left=butt, right=butt\n" for n in inches)
    assert usual(text).cost == 6 * Fraction("17.40")
    assert planned(text).cost == 5 * Fraction("17.40")


def test_a_supply_that_suffices_only_with_other_joints_is_found() -> None:
    inches = (54, 71, 153, 57, 270, 74)
    runs = "bare 1 ft\n".join(f"N{n}: {n} in, left=butt, right=butt\n" for n in inches)
    for most, codes in ((5, []), (4, ["T501"])):
        text = HEAD + f"stock base: 12 ft at 17.40 at most {most}\n" + ROOM + runs
        assert [one.code for one in compile_job(text).diagnostics] == codes


def middles(result: Result) -> list[Fraction]:
    """Return where along the wall the middle of each lap lies."""
    (splice,) = result.splices
    exact = [piece.rounding.exact for piece in result.pieces]
    return [sum(exact[:n]) - n * splice.lap + splice.lap / 2 for n in range(1, len(exact))]


@pytest.mark.parametrize(("rest", "at_most"), [("", 18), ("on-hand base: 86 in\n", 9)])
def test_a_joint_moves_from_stud_to_stud(rest: str, at_most: int) -> None:
    text = TWO_LENGTHS + rest + wall("15 ft", ", first stud 5 in")
    before, after = usual(text), planned(text)
    assert after.cost <= at_most < before.cost
    for result in (before, after):
        # on a stud, every 16 in from 5 in, to within a step of the tape
        assert all((at - 5 + Fraction(1, 16)) % 16 <= Fraction(1, 16) for at in middles(result))


def test_a_joint_stays_where_no_other_stud_is_cheaper() -> None:
    text = HEAD + f"{TWELVE_FEET}\n" + wall("15 ft", ", first stud 5 in")
    assert planned(text).pieces == usual(text).pieces


def test_halves_that_the_file_asks_for_stay_halves() -> None:
    text = TWO_LENGTHS + wall("10 ft", ", splice")
    assert planned(text).pieces == usual(text).pieces


def test_walls_of_one_length_are_cut_alike_in_every_room() -> None:
    rooms = "".join(
        f'room "R{n}", trim base, open walk\nN: 200 in, left=butt, right=butt\n' for n in range(3)
    )
    result = planned(f"{TWO_LENGTHS}on-hand base: 1 of 75 in\n{rooms}")
    cuts = {
        tuple(piece.length for piece in result.pieces if piece.room == f"R{n}") for n in range(3)
    }
    assert [len(cut) for cut in cuts] == [2]


def test_work_is_bounded(monkeypatch: pytest.MonkeyPatch) -> None:
    about, made = placing.Asking.about, []

    def counted(*facts: object) -> object:
        made.append(facts)
        return about(*facts)  # type: ignore[arg-type]

    monkeypatch.setattr(placing.Asking, "about", counted)
    walls = "bare 1 ft\n".join(f"N{n}: {13 + n} ft, left=butt, right=butt\n" for n in range(20))
    planned(TWO_LENGTHS + ROOM + walls, Effort(seconds=1))
    # besides the plans with and without places, and those with joints drawn anew
    assert 20 < len(made) <= placing.PLANS + 3 + moved_joints.DRAWN


def test_the_sheets_pieces_are_those_of_the_plan() -> None:
    result = planned(TWO_LENGTHS + wall("15 ft").replace("right=butt", "right=return"))
    placed = {
        place.piece: place.end - place.start
        for plan in result.plans
        for stick in plan.sticks
        for place in stick.places
    }
    assert placed == {piece.id: piece.length for piece in result.pieces}
    assert result.pieces[-1].mates == (result.pieces[-2].id,)


def test_crown_keeps_within_its_sticks() -> None:
    text = (
        f"{CROWN}\nspare 0 %\n"
        "stock crown: 8 ft at 20, 12 ft at 40\n"
        'room "R", trim crown, open walk\nN: 15 ft, left=out-corner, right=in-corner\n'
    )
    result = planned(text)
    assert result.cost == 40 < usual(text).cost
    assert all(piece.length <= 96 for piece in result.pieces)


lengths = st.integers(24, 400).map(lambda n: f"{n} in")


@st.composite
def jobs(draw: st.DrawFn) -> str:
    sticks = draw(
        st.dictionaries(st.integers(8, 16), st.integers(500, 3000), min_size=1, max_size=3)
    )
    offers = ", ".join(f"{feet} ft at {price / 100}" for feet, price in sticks.items())
    rests = draw(st.lists(st.integers(20, 140), max_size=3))
    text = HEAD.replace(
        "0 %", draw(st.sampled_from(("0 %", "10 %", "covers any one piece spoiled")))
    )
    text += f"stock base: {offers}\n"
    if rests:
        text += "on-hand base: " + ", ".join(f"{rest} in" for rest in rests) + "\n"
    ends = st.sampled_from(("butt", "open", "return"))
    runs = [
        f"N{n}: {draw(lengths)}, left={draw(ends)}, right={draw(ends)}\n"
        for n in range(draw(st.integers(1, 5)))
    ]
    return text + ROOM + "bare 1 ft\n".join(runs)


@settings(max_examples=examples(12))
@given(jobs())
def test_never_dearer_and_always_within_the_rules(text: str) -> None:
    before = usual(text)
    after = planned(text)
    if LAWS == "night":
        assert after == planned(text)
    assert after.cost <= before.cost
    assert [piece.id for piece in after.pieces] == [piece.id for piece in before.pieces]
    lap = Fraction(9, 16)
    for splice in after.splices:
        parts = [piece for piece in after.pieces if piece.id in {p.id for p in splice.pieces()}]
        assert (
            sum(part.rounding.exact for part in parts) - (len(parts) - 1) * lap
            == splice.whole.rounding.exact
        )
        assert all(Settings().splice_least <= part.rounding.exact for part in parts)
        assert all(part.length <= splice.longest for part in parts)


@given(jobs(), st.lists(st.fractions(1, 200, max_denominator=16), max_size=6))
def test_every_other_cut_is_within_the_rules(text: str, wanted: list[Fraction]) -> None:
    result = compile_job(text, effort=QUICK)
    for splice in result.splices:
        cuts = other_cuts(splice, wanted)
        assert splice.cut not in cuts
        assert len(set(cuts)) == len(cuts)
        for cut in cuts:
            assert len(cut) == len(splice.cut)
            assert sum(cut) == sum(splice.cut)
            assert min(cut) >= Settings().splice_least
            assert max(cut) <= splice.longest


@settings(max_examples=examples(15))
@given(jobs(), st.lists(st.fractions(1, 200, max_denominator=16), max_size=4))
def test_no_other_cut_costs_less_than_the_bound_for_all(text: str, wanted: list[Fraction]) -> None:
    result = planned(text, QUICK)
    free = tuple(splice for splice in result.splices if splice.free)
    trim = result.job.trim("base")
    question = ask(result.job, trim, result.pieces)
    least = least_anywhere(question, free, 10**9)
    for splice in free:
        for cut in (splice.cut, *other_cuts(splice, wanted)[:3]):
            pieces = with_places(result.pieces, free, {splice.whole.id: cut})
            asked = ask(result.job, trim, pieces)
            plan = plan_stock(asked.problem)
            if isinstance(plan, Plan):
                cost = Fraction(plan.cost, asked.per_coin)
                assert Fraction(least, question.per_coin) <= cost


def test_the_examples_cost_no_more() -> None:
    for path in sorted(EXAMPLES.glob("*.trim")):
        text = path.read_text(encoding="utf-8")
        with patch.object(first_plan, "place_splices", lambda *_: {}):
            before = compile_job(text, path=path, effort=QUICK)
        assert compile_job(text, path=path, effort=QUICK).cost <= before.cost


def test_the_splices_are_those_of_the_pieces_where_long_sticks_ran_out() -> None:
    trim = f"{BASE}\n"
    stock = "stock base: 8 ft at 10, 12 ft at 17.40, 16 ft at 24.10 at most 1\n"
    walls = "bare 1 ft\n".join(
        f"N{n}: {feet} ft, left=butt, right=butt\n" for n, feet in enumerate((30, 15, 15))
    )
    result = compile_job(trim + stock + ROOM + walls)
    of_splices = [piece.id for splice in result.splices for piece in splice.pieces()]
    assert of_splices == [piece.id for piece in result.pieces if piece.parts > 1]
    assert len(of_splices) == 7
