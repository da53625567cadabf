"""The job at a glance: its rooms, what it takes, what is proven, and where each sheet is."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from functools import partial
from pathlib import PurePosixPath
from typing import TYPE_CHECKING, Final

from trimlang.diagnostics import Severity
from trimlang.incremental.cache import placeless
from trimlang.lengths.tape import Unit
from trimlang.marking import N_
from trimlang.record import record
from trimlang.sheets.content.overview import strokes
from trimlang.sheets.content.proofs import CostProofs, cost_proofs
from trimlang.sheets.content.stock_order import Order, order
from trimlang.sheets.drawing.plan_scale import MARGIN, DrawnLine, DrawnWall, Paper, fixed, walls
from trimlang.sheets.wording.closing_words import closing_words
from trimlang.site_log.progress_of_job import State
from trimlang.survey.outline import outline

if TYPE_CHECKING:
    from trimlang.compiler import Result
    from trimlang.incremental.cache import Cache
    from trimlang.sheets.wording.quantities import Pen

TALL: Final = 44.0
"""How tall the tallest room is drawn (mm)."""
OPEN_WALK: Final = N_("Open walk: it need not come round.")
EDGE: Final = 2.5
"""White space round a small plan (mm), for the strokes at the sides of openings."""

TITLES_OF_DATA: Final = {
    "plan": N_("The whole plan, for programs"),
    "cut-list": N_("Cut list"),
    "sticks": N_("Sticks and cuts"),
}


@record
class RoomPicture:
    """A room's walls drawn small: lines in millimetres, and the SVG window that shows them all."""

    lines: tuple[DrawnLine, ...]
    window: str
    wide: str


@record
class RoomAtAGlance:
    """A room: its small plan, its pieces, how far its walk is from closing."""

    name: str
    picture: RoomPicture
    pieces: int
    cut: int
    closing: str
    note: str


@record
class TrimAtAGlance:
    """A trim: how many pieces and sticks, at what cost, and what is proven about it."""

    trim: str
    pieces: int
    sticks: int
    spare: int
    cost: str
    status: str


@record
class OpenWarning:
    """A warning: its code, where it is in the job file, what it says."""

    code: str
    place: str
    message: str
    remedy: str


@record
class SheetFiles:
    """A sheet by its title, and its files: each format with the file's name."""

    title: str
    files: tuple[tuple[str, str], ...]


@record
class Glance:
    """The page; ``order`` and ``proofs`` are None where the order is in another folder.

    ``cut`` and ``fitted`` count pieces, both None where there is no site log.
    """

    pieces: int
    cut: int | None
    fitted: int | None
    order: Order | None
    proofs: CostProofs | None
    trims: tuple[TrimAtAGlance, ...]
    warnings: tuple[OpenWarning, ...]
    rooms: tuple[RoomAtAGlance, ...]
    sheets: tuple[SheetFiles, ...]
    other_folders: tuple[tuple[str, str], ...]


def at_a_glance(
    result: Result,
    pen: Pen,
    files: Collection[str],
    *,
    titles: Mapping[str, str] = TITLES_OF_DATA,
    other_folders: Sequence[tuple[str, str]] = (),
    cache: Cache[RoomPicture] | None = None,
) -> Glance:
    """Return the page of a job for which these ``files`` were written.

    ``titles`` are the sheets' by the name of their files, in the order to list them;
    ``other_folders`` are titles and addresses of other folders' pages.  Rooms in ``cache``
    are not drawn again.
    """
    progress = result.progress
    fitted = None if progress is None else progress.count(State.FITTED)
    cut = None if progress is None else progress.count(State.CUT, State.FITTED)
    # In a pool each flat's folder has no order; then nothing is said of cost and proofs.
    bought = any(PurePosixPath(name).stem == "stock-order" for name in files)
    # The order is made from the same result as its own sheet, so that no sum can differ.
    ordered = order(result, pen) if bought else None
    proofs = cost_proofs(result, pen) if bought else None
    return Glance(
        pieces=len(result.pieces),
        cut=cut,
        fitted=fitted,
        order=ordered,
        proofs=proofs,
        trims=_trims(result, proofs, pen),
        warnings=tuple(
            OpenWarning(
                one.code,
                pen.words("{file}, line {line}", file=one.span.file, line=one.span.line),
                one.message,
                one.remedy,
            )
            for one in result.diagnostics
            if one.severity is Severity.WARNING
        ),
        rooms=_rooms(result, pen, cache),
        sheets=_sheets(files, titles, pen),
        other_folders=tuple(other_folders),
    )


def _trims(result: Result, proofs: CostProofs | None, pen: Pen) -> tuple[TrimAtAGlance, ...]:
    # Costs belong to the order; where that is in another folder, half of it here would mislead.
    if proofs is None:
        return ()
    pieces = Counter(piece.trim for piece in result.pieces)
    return tuple(
        TrimAtAGlance(
            trim=plan.trim,
            pieces=pieces[plan.trim],
            sticks=len(plan.sticks),
            spare=len(plan.whole_sticks),
            cost=pen.cost(plan.cost),
            status=status,
        )
        for plan, status in zip(result.plans, proofs.trims, strict=True)
    )


def _rooms(result: Result, pen: Pen, cache: Cache[RoomPicture] | None) -> tuple[RoomAtAGlance, ...]:
    # A room of loose pieces alone has no walls to draw.
    rooms = [room for room in result.job.rooms if room.walk]
    trims = tuple(placeless(trim) for trim in result.job.trims)
    drawn = [outline(room, trims) for room in rooms]
    walks = [walls(room, walk) for room, walk in zip(rooms, drawn, strict=True)]
    # One scale for all rooms, so that a small room also looks small.
    scale = max((Paper(walk, pen.unit, TALL).scale for walk in walks), default=0)
    # Counted once for all rooms, not once for each.
    pieces = Counter(piece.room for piece in result.pieces)
    progress = result.progress
    cut = Counter(
        piece.room for piece in result.pieces if progress is not None and progress.is_cut(piece.id)
    )
    closings = {one.room: one for one in result.closings}
    made = []
    for room, closed, walk in zip(rooms, drawn, walks, strict=True):
        draw = partial(_picture, walk, pen.unit, scale)
        # The cache also holds the large plans of the same rooms.
        known = ("small", placeless(room), trims, pen.unit, scale)
        made.append(
            RoomAtAGlance(
                name=room.name,
                picture=draw() if cache is None else cache.get(known, draw),
                pieces=pieces[room.name],
                cut=cut[room.name],
                closing=pen.words(OPEN_WALK)
                if room.open_walk
                else closing_words(
                    room, closed, closings.get(room.name), pen.of(room.settings.unit)
                ),
                note=room.note or "",
            )
        )
    return tuple(made)


def _picture(walk: tuple[DrawnWall, ...], unit: Unit, scale: int) -> RoomPicture:
    paper = Paper(walk, unit, TALL, scale)
    # The large plan leaves a margin for its texts; the small one has none.
    edge = MARGIN - EDGE
    wide, tall = (fixed(side - 2 * edge) for side in (paper.wide, paper.tall))
    return RoomPicture(
        tuple(strokes(walk, paper)), f"{fixed(edge)} {fixed(edge)} {wide} {tall}", wide
    )


def _sheets(files: Collection[str], titles: Mapping[str, str], pen: Pen) -> tuple[SheetFiles, ...]:
    """Return each sheet with its files, in the order in which sheets are listed everywhere."""
    of: dict[str, list[str]] = {}
    for name in sorted(files, key=_by_format):
        of.setdefault(PurePosixPath(name).stem, []).append(name)
    # Sheets of a user's own template folder come behind ours, by name.
    listed = [*(stem for stem in titles if stem in of), *sorted(of.keys() - titles.keys())]
    return tuple(
        SheetFiles(
            pen.words(titles[stem]) if stem in titles else stem,
            tuple((PurePosixPath(name).suffix[1:].upper(), name) for name in of[stem]),
        )
        for stem in listed
    )


def _by_format(name: str) -> tuple[int, str]:
    """Order files by format: pages to look at, then to print, then data."""
    # The next thing that one does with a sheet is to look at it.
    order_of = {".html": 0, ".pdf": 1}
    return (order_of.get(PurePosixPath(name).suffix, 2), name)
