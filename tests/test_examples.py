"""The shipped examples compile without a word, and what their walk-throughs say is so."""

import re
from fractions import Fraction
from pathlib import Path

import pytest

from tests.conftest import LAWS
from trimlang.compiler import check_job, compile_job
from trimlang.joinery.piece import PieceKind
from trimlang.joint_row import Fit
from trimlang.language.grammar import parser
from trimlang.lengths.tape import length_text
from trimlang.stock.planner import FULL, QUICK
from trimlang.survey.outline import outline

ROOT = Path(__file__).resolve().parent.parent
EXAMPLES = sorted(path for path in (ROOT / "examples").glob("*.trim") if path.name != "prices.trim")
# to prove the least cost of all of them takes seconds
EFFORT = FULL if LAWS == "night" else QUICK
WALKTHROUGHS = sorted((ROOT / "docs" / "walkthroughs").glob("*.md"))


def checked(name):
    path = ROOT / "examples" / name
    return check_job(path.read_text(encoding="utf-8"), path=path)


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_an_example_is_clean(path):
    result = checked(path.name)
    assert not result.diagnostics, [one.message for one in result.diagnostics]
    assert result.pieces


def test_the_house_holds_every_kind_of_end():
    result = checked("house.trim")
    runs = [run for room in result.job.rooms for run in room.runs]
    assert len(result.job.rooms) >= 6
    assert len(runs) >= 40
    assert {trim for run in runs for trim in run.trims} == {"base", "shoe", "crown"}
    joints = {end.joint.value for run in runs for end in (run.left, run.right)}
    assert {"in-corner", "out-corner", "butt", "return"} <= joints
    longest = max(offer.length for trim in result.job.trims for offer in trim.offers)
    assert any(run.length > longest for run in runs)
    assert any(piece.parts > 1 for piece in result.pieces)
    assert PieceKind.HEAD in {piece.kind for piece in result.pieces}
    assert Fit.COPED in {end.fit for run in runs for end in (run.left, run.right)}


NOT_IN_THE_HOUSE = {
    "the site log": "bought cut cut_piece fitted from_stick into purchase rack shortened shorter"
    " spoiled wasted",
    "the short ways to write walls": "bare_length between gap_string gap_words measured_bare"
    " wide_bare wide_beam wide_transition",
    "metric paint in a house of inches": "paint_spread_metric",
    "what holds where nothing forbids it": "splices_allowed",
    "refused wherever it stands": "per_said sign",
    "each of its forms has a name of its own": "length number",
    "what takes proving the whole house over its two seconds": "joint_price spare",
}
"""What the large house does not say, of all that the grammar has a rule for."""


def test_the_large_house_says_nearly_all_that_the_language_can():
    house, prices = (ROOT / "examples" / name for name in ("ferncote.trim", "prices.trim"))
    text = house.read_text(encoding="utf-8") + prices.read_text(encoding="utf-8")
    used = {
        str(tree.data)
        for line in text.splitlines()
        for tree in parser().parse(line).iter_subtrees()
    }
    grammar = (ROOT / "grammar" / "trim.lark").read_text(encoding="utf-8")
    rules = {*re.findall(r"^([a-z]\w*):", grammar, re.M), *re.findall(r"-> (\w+)", grammar)}
    assert rules - used == set(" ".join(NOT_IN_THE_HOUSE.values()).split())
    rooms = checked("ferncote.trim").job.rooms
    stair = ("Stair", "Balustrade")
    assert len([room for room in rooms if not room.name.startswith(stair)]) == 12


def test_the_rooms_of_the_house_close():
    result = checked("house.trim")
    gaps = [outline(room, result.job.trims).gap for room in result.job.rooms]
    assert sum(gap is not None for gap in gaps) >= 6
    assert all(gap <= Fraction(3, 2) for gap in gaps if gap is not None)


@pytest.mark.parametrize("path", WALKTHROUGHS, ids=lambda path: path.stem)
def test_a_walkthrough_tells_each_length_as_it_is(path):
    """Lines “| `piece` | length |” of a walk-through are held against the example."""
    pieces = {piece.id: piece for piece in checked(f"{path.stem}.trim").pieces}
    told = re.findall(r"^\| `([^`]+)` \| ([^|]+?) \|", path.read_text(encoding="utf-8"), re.M)
    assert told
    for name, long in told:
        assert length_text(pieces[name].to_mark) == long


def test_four_doors_have_twelve_pieces_of_casing():
    kinds = [piece.kind for piece in checked("doors.trim").pieces]
    assert kinds.count(PieceKind.LEG) == 8
    assert kinds.count(PieceKind.HEAD) == 4


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_every_piece_of_an_example_lies_on_one_stick(path):
    result = compile_job(path.read_text(encoding="utf-8"), path=path, effort=EFFORT)
    placed = [
        place.piece for plan in result.plans for stick in plan.sticks for place in stick.places
    ]
    assert sorted(placed) == sorted(piece.id for piece in result.pieces)
