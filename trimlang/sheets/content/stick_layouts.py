"""Stick layouts: each stick to scale with its pieces in cutting order and its tape marks."""

from __future__ import annotations

from fractions import Fraction
from typing import Final

from trimlang.compiler import Result
from trimlang.joinery.at_the_saw import AtSaw, Hand, both_ends, saw_for
from trimlang.joinery.piece import Piece
from trimlang.planning.layout import CutStick, StickPlace
from trimlang.record import record
from trimlang.sheets.content.stick_cuts import by_hold, cuts_of, is_kept, spare_for
from trimlang.sheets.wording import material_words, saw_words
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.sticks import SoundPart

Ends = tuple[Piece, tuple[AtSaw, AtSaw]]
WIDE: Final = 186.0
TALL: Final = 8.0
SLANT: Final = 1.6
"""How far a mitre's line leans on paper (mm): so that it is seen, not to scale."""
LETTER: Final = 1.75
"""About how wide a letter of an id is on paper (mm)."""
SHORT_SETTING: Final = 15
"""Letters of a setting that the stylesheet's narrow columns hold: ``44 1/2° derecha``."""


@record
class Block:
    """A piece on the bar: its shape, and its number in cutting order with its id if that fits."""

    points: str
    middle: str
    label: str


@record
class LayoutEnd:
    """How an end is cut: the saw's setting in lines, its sides, and how the piece lies for it."""

    settings: tuple[str, ...]
    swing: str
    tilt: str
    lay: str


@record
class LayoutRow:
    """A piece in the list under the bar.  ``start`` and ``end`` are tape marks."""

    number: str
    id: str
    length: str
    left: LayoutEnd
    right: LayoutEnd
    start: str
    end: str
    shared: bool


@record
class StickLayout:
    """A stick: bar, list, offcut.  Coordinates are millimetres on paper.

    ``part`` says what is to be cut out of a stick with defects, and which part of it this is.
    ``lay`` says how its pieces lie where the trim's others lie differently.
    ``next_cut`` is the mark of the first cut and ``then`` those of the others, in an order that
    leaves enough to hold; ``offcut_use`` says whether what is left is kept, and what for.
    """

    id: str
    source: str
    blocks: tuple[Block, ...]
    rows: tuple[LayoutRow, ...]
    wide: str
    offcut_from: str
    offcut_wide: str
    offcut: str
    offcut_use: str
    square_off: str
    next_cut: str
    then: tuple[str, ...]
    part: str = ""
    lay: str = ""


@record
class TrimSticks:
    """One trim's sticks, and the longest of them, which sets the scale.

    ``lay`` says how its pieces lie at the saw if all lie alike; otherwise each stick says it, and
    where its pieces too lie differently each end.
    ``one_way`` tells that no piece may be turned end for end.
    ``wordy`` tells that some of its settings are too long for a narrow column.
    ``above`` names the edge that is drawn at the top of its bars, where it is one for all.
    """

    trim: str
    scale: str
    lay: str
    above: str
    one_way: bool
    wordy: bool
    sticks: tuple[StickLayout, ...]


def stick_layouts(result: Result, pen: Pen) -> tuple[TrimSticks, ...]:
    """Return the layout of every stick that is cut, trim by trim."""
    pieces = {piece.id: piece for piece in result.pieces}
    drawn: list[TrimSticks] = []
    for plan in result.plans:
        if not plan.sticks:
            continue
        # All sticks of a trim are drawn to one scale, so that their lengths can be compared by eye.
        longest = max(stick.length for stick in plan.sticks)
        scale = WIDE / float(longest)
        saw = saw_for(result.job.trim(plan.trim), result.job.settings)
        # What an offcut is good for is asked of all pieces, cut or not: any of them may be spoiled.
        again = [piece for piece in result.pieces if piece.trim == plan.trim]
        kerf = result.job.settings.kerf
        ends = {
            place.piece: (pieces[place.piece], both_ends(pieces[place.piece], saw))
            for stick in plan.sticks
            for place in stick.places
        }
        # Where all ends lie alike that is said once above the sticks, and not at each end.
        every = [end for _, both in ends.values() for end in both]
        once = saw_words.lay_for_all(every, pen.words)
        above = saw_words.drawn_above(every, pen.words)
        drawn.append(
            TrimSticks(
                trim=plan.trim,
                scale=pen.stick(longest),
                lay=once,
                above=above,
                one_way=result.job.trim(plan.trim).one_way,
                wordy=any(
                    len(line) > SHORT_SETTING
                    for end in every
                    for line in saw_words.setting_lines(end, pen)
                ),
                sticks=tuple(
                    _stick(stick, ends, scale, pen, lay=not once, use=_use(stick, again, kerf, pen))
                    for stick in plan.sticks
                ),
            )
        )
    return tuple(drawn)


def _use(stick: CutStick, pieces: list[Piece], kerf: Fraction, pen: Pen) -> str:
    """Say what becomes of an offcut; empty where nothing is left."""
    if not stick.offcut:
        return ""
    if not is_kept(stick):
        return pen.words("too short to keep")
    spare = spare_for(stick, pieces, kerf)
    if spare is None:
        return pen.words("keep it on hand")
    long = str(pen.mark(spare.length))
    return pen.words("keep it: gives {piece} ({length}) once more", piece=spare.id, length=long)


def _stick(
    stick: CutStick, ends: dict[str, Ends], scale: float, pen: Pen, *, lay: bool, use: str
) -> StickLayout:
    words = pen.words
    at_saw = {name: both for name, (_, both) in ends.items()}
    on_it = [end for place in stick.places for end in at_saw[place.piece]]
    all_alike = saw_words.lay_for_all(on_it, words) if lay else ""
    cuts = by_hold(cuts_of(stick, at_saw), stick)
    marks = [str(pen.mark(cut.place)) if cut.place else words("stick's end") for cut in cuts]
    squared = stick.squared
    # The offcut ends where the far end is squared off, so it is drawn from there back.
    offcut_from = stick.length - stick.squared_right - stick.offcut
    source = material_words.stick(stick, pen)
    # A stick that was begun is drawn as what is left of it.
    if stick.gone:
        source = f"{pen.stick(stick.length)} {words('rest, cut from before')}"
    return StickLayout(
        id=stick.id,
        source=source + material_words.of_batch(stick.batch, pen),
        blocks=tuple(
            _block(number, place, ends[place.piece], scale)
            for number, place in enumerate(stick.places, start=stick.before + 1)
        ),
        rows=tuple(
            _row(number, place, ends[place.piece], pen, lay=lay and not all_alike)
            for number, place in enumerate(stick.places, start=stick.before + 1)
        ),
        wide=_fixed(float(stick.length) * scale),
        offcut_from=_fixed(float(offcut_from) * scale),
        offcut_wide=_fixed(float(stick.offcut) * scale),
        offcut=str(pen.mark(stick.offcut)) if stick.offcut else "",
        offcut_use=use,
        square_off=str(pen.mark(squared)) if squared else "",
        next_cut=marks[0] if marks else "",
        then=tuple(marks[1:]),
        part="" if stick.part is None else _part(stick.part, pen),
        lay=all_alike,
    )


def _part(part: SoundPart, pen: Pen) -> str:
    """Say what is cut out of the stick, and which part of it is meant."""
    words, stick = pen.words, part.stick
    defects = ", ".join(
        words(
            "{defect} {start} to {end}",
            defect=words(one.kind.value),
            start=pen.length(one.start),
            end=pen.length(one.end),
        )
        for one in stick.defects
    )
    return words(
        "Part of a stick of {long}: from its left end, cut out {defects};"
        " this is {start} to {end}.",
        long=pen.stick(stick.length),
        defects=defects,
        start=pen.length(part.start),
        end=pen.length(part.end),
    )


def _block(number: int, place: StickPlace, ends: Ends, scale: float) -> Block:
    piece, (one, other) = ends
    start, end = float(place.start) * scale, float(place.end) * scale
    # A short piece keeps at least a third of its length between two slants.
    slant = min(SLANT, (end - start) / 3)
    left = _slope(start, slant, one, opens=1)
    right = _slope(end, slant, other, opens=-1)
    label = f"{number}  {piece.id}"
    if len(label) * LETTER > end - start - 2 * slant:
        # Where the id does not fit the number alone stands there, and where that does not fit
        # nothing.
        label = str(number) if end - start > 2 * LETTER else ""
    points = [(left[0], 0.0), (right[0], 0.0), (right[1], TALL), (left[1], TALL)]
    return Block(
        " ".join(f"{_fixed(x)},{_fixed(y)}" for x, y in points),
        _fixed((start + end) / 2),
        label,
    )


def _slope(x: float, slant: float, at: AtSaw, *, opens: int) -> tuple[float, float]:
    """Return the x of an end at the far (top) and at the near edge of the bar.

    ``x`` is the long point; the short edge lies further inside the piece, in the direction
    ``opens`` (1 right, -1 left).  A piece turned end for end leans the same way, so one drawing
    serves both.
    """
    if at.swing is None:
        return x, x
    inside = x + opens * slant
    return (x, inside) if (at.swing is Hand.RIGHT) == (opens > 0) else (inside, x)


def _end(at: AtSaw, pen: Pen, *, lay: bool) -> LayoutEnd:
    return LayoutEnd(
        settings=saw_words.setting_lines(at, pen),
        swing=at.swing or "",
        tilt=at.tilt or "",
        lay=saw_words.lay_and_side(at, pen.words) if lay else "",
    )


def _row(number: int, place: StickPlace, ends: Ends, pen: Pen, *, lay: bool) -> LayoutRow:
    piece, (one, other) = ends
    own = pen.of(piece.unit)
    return LayoutRow(
        number=str(number),
        id=piece.id,
        length=str(own.mark(piece.to_mark)),
        left=_end(one, pen, lay=lay),
        right=_end(other, pen, lay=lay),
        start=str(pen.mark(place.start)) if place.start else pen.words("stick's end"),
        end=str(pen.mark(place.end)),
        shared=place.shared,
    )


def _fixed(value: float) -> str:
    return f"{value:.2f}"
