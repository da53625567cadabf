"""The large house, which has every kind of trim, mirrored, in millimetres and laid out anew."""

import re
from collections import Counter
from dataclasses import replace
from fractions import Fraction
from functools import cache

from tests.conftest import ROOT
from trimlang.compiler import Result, check_job
from trimlang.diagnostics.source import Source
from trimlang.joinery.piece import Piece, PieceKind
from trimlang.language.tidy_file import tidy
from trimlang.lengths.angles import tangent

HOUSE = ROOT / "examples" / "ferncote.trim"
TEXT = HOUSE.read_text(encoding="utf-8")
LENGTH = re.compile(r"(?:(\d+) ft )?(?:(?:(\d+) )?(\d+)/(\d+)|(\d+)) in\b(?! all)|(\d+) ft\b")


@cache
def checked(text: str) -> Result:
    result = check_job(text, path=HOUSE)
    assert result.ok, [one.message for one in result.diagnostics]
    return result


def inches(found: re.Match[str]) -> Fraction:
    feet, whole, above, below, alone, only_feet = found.groups()
    long = 12 * Fraction(feet or only_feet or 0) + Fraction(whole or alone or 0)
    return long + Fraction(int(above or 0), int(below or 1))


def test_laid_out_anew_it_is_the_same_house():
    assert checked(tidy(Source("x", TEXT)).text).pieces == checked(TEXT).pieces


def test_in_millimetres_it_is_the_same_house():
    def in_mm(found: re.Match[str]) -> str:
        # 1 in is 25.4 mm exactly, and a 32nd of it ends after five places
        return f"{float(inches(found) * Fraction(254, 10)):.5f} mm"

    lines = (line.partition("#")[0] for line in TEXT.splitlines())
    metric = "\n".join(LENGTH.sub(in_mm, line) for line in lines)
    assert " in," not in metric
    for one, other in zip(checked(metric).pieces, checked(TEXT).pieces, strict=True):
        assert one == other


PAIR = re.compile(r"(?:(?<=diagonal )|(?<=boxes ))(\w+)(-| to )(\w+)")
IMAGE = {"left": "right", "right": "left", "E": "W", "W": "E"}
WALL = re.compile(r" +(?!piece|boxes|diagonal|corners|casings|round|closes)\w+:? ")
NEXT_WALL = re.compile(r", (?=[NESW]\d? \d|door )")
# Where a joint on a stud lies is counted from the left end of a wall 19 ft long.
STUDS = ("first stud 7 1/2 in", "first stud 12 1/2 in")
# Of corners that are coped for all trims one side is as good as the other, and the run that begins
# there is taken; so the file has to say which, before its image can be asked for the same.
COPES = re.compile(r"^  (N:  14 ft|E1: 51 1/2 in|S:  14 ft|W1: 39 1/2 in)$", re.M)
FROM_ONE_END = re.compile(
    r"goes on over|begins .* from|(?:top|bottom|side) of box|first half of that from|closes the"
    r"|goes round the"
)
"""What a ticket counts from the left, or by the name of the first wall."""


def swapped(text: str) -> str:
    """Change left and right, and east and west in the names of walls."""
    return re.sub(r"\b(left|right|[EW](?=\d*\b))", lambda one: IMAGE[one[0]], text)


def image_of(text: str) -> str:
    """Each room is walked the other way round, with left and right changed in every line."""
    rooms = re.split(r"^(?=room )", text.partition("#\n")[0], flags=re.M)
    made = [rooms[0]]
    for room in rooms[1:]:
        lines = [line.partition(" #")[0] for line in room.splitlines()]
        heading, *lines = [line for line in lines if line and not line.startswith("#")]
        walls = [one for line in lines if WALL.match(line) for one in NEXT_WALL.split(line)]
        rest = [line for line in lines if not WALL.match(line)]
        walls = [f"  {swapped(one).replace(*STUDS)}" for one in reversed(walls)]
        made.append("\n".join([heading, *walls, *(PAIR.sub(r"\3\2\1", swapped(r)) for r in rest)]))
    return "\n".join(made) + "\n"


def told(piece: Piece, *, mirrored: bool = False) -> tuple[object, ...]:
    """All that a ticket says of a piece but its name, with the ends of its image changed over."""
    ends = [
        (
            *(cut.joint, cut.fit, cut.setting, cut.exact, cut.bevel_setting, cut.gap, cut.opens_at),
            *(cut.long_edge, cut.inset, cut.through_edge),
            swapped(cut.lean) if mirrored else cut.lean.value,
        )
        for cut in (piece.left, piece.right)
    ]
    notes = [one for one in piece.all_notes.split("; ") if not FROM_ONE_END.search(one)]
    if mirrored:
        ends, notes = ends[::-1], [swapped(one) for one in notes]
    what = (piece.room, piece.trim, piece.kind, piece.to_mark, piece.length, piece.wall_edge)
    return (*what, *ends, *sorted(notes))


def spliced(result: Result, *, mirrored: bool = False) -> Counter[tuple[object, ...]]:
    """The walls in several pieces: how long all are, and how the wall ends at both sides."""
    walls: dict[tuple[str, str, str], list[Piece]] = {}
    for piece in result.pieces:
        if piece.parts > 1:
            walls.setdefault((piece.room, piece.run, piece.trim), []).append(piece)
    step = -1 if mirrored else 1
    return Counter(
        (
            *(room, trim, sum(one.to_mark for one in parts)),
            *(parts[0].left.setting, parts[-1].right.setting)[::step],
        )
        for (room, _, trim), parts in walls.items()
    )


def test_mirrored_it_has_the_mirror_images_of_its_pieces():
    """Every piece of every room has an image with its joints, settings, edges and notes."""
    text = COPES.sub(r"  \1, left=in-corner cope", TEXT)
    mine, its = checked(text), checked(image_of(text))
    # that is the side that trimlang chose
    assert mine.pieces == checked(TEXT).pieces
    image = {piece.id: piece for piece in its.pieces}
    # A piece that goes on past an opening goes by its first wall, which is now the other one.
    named = [one for one in mine.pieces if one.parts == 1 and swapped(one.id) in image]
    assert len(named) > 0.8 * len(mine.pieces)
    for one in named:
        assert told(one) == told(image[swapped(one.id)], mirrored=True), one.id
    assert Counter(told(one) for one in mine.pieces if one.parts == 1) == Counter(
        told(one, mirrored=True) for one in its.pieces if one.parts == 1
    )
    assert spliced(mine) == spliced(its, mirrored=True)
    assert {piece.kind for piece in mine.pieces} == set(PieceKind)


LONG_ENOUGH = 53
"""Inches: two pieces of 24 in and their lap, also where shoe begins beside a casing."""
SPLICED = re.compile(r"^(  \w+: +(?!.*first stud).*?)( *#.*)?$", re.M)


def runs(result: Result) -> dict[tuple[str, str, str], list[Piece]]:
    found: dict[tuple[str, str, str], list[Piece]] = {}
    for piece in result.pieces:
        if piece.kind is PieceKind.RUN:
            found.setdefault((piece.room, piece.run, piece.trim), []).append(piece)
    return found


def test_spliced_wherever_it_can_be_no_wall_changes_its_ends_or_its_length():
    """Parts of each kind of trim, of bends and of crown below a slope, are the whole and a lap."""

    def in_two(found: re.Match[str]) -> str:
        long = LENGTH.search(found[1])
        return f"{found[1]}, splice" if long and inches(long) > LONG_ENOUGH else found[0]

    text = TEXT.replace(", no splice", "")
    whole, parted = checked(text), checked(SPLICED.sub(in_two, text))
    trims = {trim.name: trim for trim in whole.job.trims}
    # but for the part that a small piece is glued to
    others = [
        [
            replace(one, mates=(), remarks=())
            for one in result.pieces
            if one.kind is not PieceKind.RUN
        ]
        for result in (whole, parted)
    ]
    assert others[0] == others[1]
    mine, its = runs(whole), runs(parted)
    assert mine.keys() == its.keys()
    more = [at for at, parts in its.items() if len(parts) > len(mine[at])]
    assert len(more) > 70
    for at in more:
        parts = its[at]
        assert parts[0].left == mine[at][0].left
        assert parts[-1].right == mine[at][-1].right
        # a scarf of 30° laps by the thickness × tan 30°; the last part is rounded by its own ends
        laps = trims[at[2]].thickness * tangent(Fraction(30)) * (len(parts) - len(mine[at]))
        gained = sum(one.to_mark for one in parts) - sum(one.to_mark for one in mine[at])
        assert abs(gained - laps) <= Fraction(1, 16), at
