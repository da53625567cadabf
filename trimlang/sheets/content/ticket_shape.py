"""The shape of a ticket: no taller than its trim, if it can still be read then.

A trim of 3 in and more gets a card, one from 2 1/8 in a wide ticket with its drawing
beside, a lower one a strip; all are one design (``DESIGNS``) in three sizes.  Label stock
takes whichever lets the type be largest.  Text is measured before it is printed: what does not
fit above the trim's height goes on a flap that is folded back.  Lengths here are millimetres
on paper, type is in points at full scale (9 pt to the em).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.lengths.tape import MM
from trimlang.record import record
from trimlang.sheets.content.ticket_room import (
    CODE_WIDE,
    EM,
    FRACTION,
    LEAST,
    POINT,
    SMALL_LINE,
    TAB_WIDE,
    UNIT,
    Format,
    TicketRoom,
)
from trimlang.sheets.content.ticket_text import EndPrint, Print, TicketFact
from trimlang.sheets.drawing.end_views import CARD_ENDS, STRIP_ENDS, Frame
from trimlang.sheets.drawing.typeface import lines, run, shortened, size_for
from trimlang.sheets.render.paper import GAP, Area
from trimlang.sheets.wording.catalogue import NO_BREAK

TALLEST, SMALL = 150.0, LEAST * POINT
ARROW: Final = "↙"
"""The sign behind a setting; all four run alike."""

CARD_FROM: Final = 76.0
WIDE_FROM: Final = 53.5
"""The least height of a trim (mm: 3 in, 2 1/8 in) that gets a card, a wide ticket."""
MOST_LINES: Final = 2
"""A text of more lines below a cut goes to the small print, which is wider."""
FLAP_ASIDE, FLAP_OVER = 0.96, 0.4
"""What is left free about a flap's text (ems, as the stylesheet has it)."""
BETWEEN: Final = 3 * NO_BREAK + " "
"""What stands between two facts on one line, and none of it before the next: as in the template."""
STRIP_DOWN: Final = (18.6, 24.0, 32.0, 44.0, TALLEST)
"""How tall a strip may be (mm); the first that holds what stands above the fold."""


FactLine = tuple[TicketFact, ...]
"""Facts that are printed one behind the other."""


@record
class Shape:
    """How a ticket is laid out.

    ``kind`` is ``card``, ``wide`` or ``strip``; ``across`` and ``down`` are millimetres
    (``down`` above the fold, ``tall`` with the flap), ``type`` points, other sizes ems of it.
    ``name`` and ``room`` are shortened where they must be (the whole is then among the
    facts), ``face`` and ``flap`` the small print above and below the fold, ``left`` and
    ``right`` the small lines under each joint.  ``flag``: the ticket is taller than its trim;
    ``coded``: it has room for its code.
    """

    kind: Format
    across: float
    down: float
    tall: float
    type: float
    name: str
    name_size: float
    room: str
    room_size: float
    length_size: float
    setting_size: float
    joint_size: float
    small_size: float
    left: tuple[str, ...]
    right: tuple[str, ...]
    face: tuple[FactLine, ...]
    flap: tuple[FactLine, ...]
    flag: bool
    coded: bool

    @property
    def sizes(self) -> tuple[float, ...]:
        """All sizes of its type (ems)."""
        return (
            self.name_size,
            self.room_size,
            self.length_size,
            self.setting_size,
            self.joint_size,
            self.small_size,
        )


def on_paper(text: Print, tall: Fraction | None, area: Area, *, code: bool) -> Shape:
    """Return the shape of a ticket for trim of that height (inches) on a page's area."""
    limit = float(tall / MM) if tall is not None else TALLEST
    strip = TicketRoom(
        kind=Format.STRIP, across=area.across, down=STRIP_DOWN[0], limit=limit, scale=1.0, code=code
    )
    card = replace(strip, kind=Format.CARD, across=area.column, down=0.0, limit=min(limit, TALLEST))
    # From the shape that is read best to the one that holds most; the first that fits is taken.
    tried = [
        *([card] if limit >= CARD_FROM else []),
        *([replace(card, kind=Format.WIDE, across=area.across)] if limit >= WIDE_FROM else []),
        # Within the trim's height, and if the text does not fit there as tall as it needs.
        *(replace(strip, down=down, limit=down, flag=limit < down) for down in STRIP_DOWN),
    ]
    shape = next((shape for room in tried if (shape := laid_out(text, room)) is not None), None)
    assert shape is not None  # noqa: S101 - nothing is so tall
    third = (area.down - 2 * GAP) / 3
    if shape.kind is Format.CARD and shape.tall > third:
        # A page holds three rows of cards: closer print is better than a page a third empty.
        closer = laid_out(text, card, running=True)
        if closer is not None and closer.tall <= third:
            return closer
    return shape


def laid_out(
    text: Print, room: TicketRoom, *, label: bool = False, bare: bool = False, running: bool = False
) -> Shape | None:
    """Lay a ticket out; None where the part that must be above the fold does not fit.

    On a ``label`` what may be left out comes last.  ``bare``: only joint and setting stand at the
    cuts.  ``running``: facts follow each other in one text, as on a strip.
    """
    size, points = room.design.type, room.points
    name, name_size = _fitted(text.id, room.name(), *size.name, room)
    said = text.about if room.kind is not Format.STRIP else text.room_and_part
    called, room_size = _fitted(said, room.name(), *size.room, room)
    length_size = _length_size(text.length, room)
    # A length too small to be read at arm's length is no ticket.
    if length_size is None:
        return None
    # A name that is cut short stands whole among the facts.
    extra = [TicketFact(text.id_word, text.id)] if name != text.id else []
    if called != said:
        extra.append(TicketFact(text.room_word, text.about, extra=bare))
    setting = min(
        size_for(line + ARROW, room.cut(), points(size.setting[0]), points(size.setting[1]))
        for end in (text.left, text.right)
        for line in end.setting
    )
    head = name_size * 1.1 + room_size * 1.2 + length_size
    high = room.limit - room.about()
    # What stands above the cuts, and above the small print.
    over_cuts = over_facts = 0.0
    if room.kind is Format.STRIP:
        if head > high:
            return None
    else:
        head = max(head, (CODE_WIDE * room.scale + 0.5) if room.code else 0.0)
        over_cuts = room.at_saw() * CARD_ENDS.tall / CARD_ENDS.wide + room.ems(0.15)
        over_facts = head
    if room.kind is Format.CARD:
        over_cuts += head
    free = high - over_cuts
    cuts = [_cut(end, room, setting, free, bare=bare) for end in (text.left, text.right)]
    if any(cut is None for cut in cuts):
        return None
    (left, left_tall, left_moved), (right, right_tall, right_moved) = (
        cut for cut in cuts if cut is not None
    )
    under_cuts = over_cuts + max(left_tall, right_tall)
    if room.kind is Format.CARD:
        over_facts = under_cuts + room.ems(0.5)
    moved = [
        TicketFact(end.side, "; ".join(lost), extra=True)
        for end, lost in ((text.left, left_moved), (text.right, right_moved))
        if lost
    ]
    facts = [*moved, *extra, *text.facts]
    if label:
        facts.sort(key=lambda fact: fact.extra)
    facts = [replace(fact, text=fact.brief) if fact.brief else fact for fact in facts]
    running = running or room.kind is Format.STRIP
    face, below, facts_tall = _folded(facts, room.facts(), high - over_facts, running=running)
    down = max(room.down, max(over_facts + facts_tall, under_cuts) + room.about())
    flap: list[FactLine] = []
    folded = 0.0
    if below:
        aside = room.across - room.ems(2 * FLAP_ASIDE) - (room.ems(TAB_WIDE) if room.flag else 0)
        flap, _, folded = _folded(below, aside, TALLEST * 10, running=running)
        folded += room.ems(2 * FLAP_OVER)
    return Shape(
        kind=room.kind,
        across=room.across,
        down=down,
        tall=down + folded,
        type=room.scale * EM,
        name=name,
        name_size=_in_ems(name_size, room),
        room=called,
        room_size=_in_ems(room_size, room),
        length_size=_in_ems(length_size, room),
        setting_size=_in_ems(setting, room),
        joint_size=_in_ems(points(size.joint), room),
        small_size=_in_ems(SMALL, room),
        left=tuple(left),
        right=tuple(right),
        face=tuple(face),
        flap=tuple(flap),
        flag=room.flag,
        coded=room.code,
    )


def _in_ems(size: float, room: TicketRoom) -> float:
    """Return a size (mm) in ems of the ticket's type, rounded down to a thousandth."""
    # Rounded down: rounded up, a line that just fits would break.
    return int(size / room.ems(1) * 1000) / 1000


def _length_size(length: tuple[str, str, str], room: TicketRoom) -> float | None:
    """Return the largest size (mm) that the length can be set in; None where that is too small."""
    whole, fraction, unit = length
    most, least = (room.points(size) for size in room.design.type.length)
    wide = (
        run(whole, most)
        + (run(" " + fraction, most * FRACTION) if fraction else 0.0)
        + run(" " + unit, most * UNIT)
    )
    # Widths grow in proportion to the size of the type, so one measurement gives the largest size.
    size = min(most, most * room.name() / wide)
    return None if size < least else size


def _fitted(
    text: str, across: float, most: float, least: float, room: TicketRoom
) -> tuple[str, float]:
    """Return a text, shortened if need be, and its size (mm) so that it fits one line."""
    size = size_for(text, across, room.points(most), room.points(least))
    return shortened(text, across, size), size


def _cut(
    end: EndPrint, room: TicketRoom, setting: float, free: float, *, bare: bool
) -> tuple[list[str], float, list[str]] | None:
    """Return the small lines under a joint, the height, and the lines moved elsewhere."""
    across = room.cut()
    tall = sum(lines(line + ARROW, across, setting) for line in end.setting) * setting * 1.1
    joint = room.points(room.design.type.joint)
    tall += lines(end.joint, across, joint) * joint * 1.2
    if tall > free:
        return None
    kept: list[str] = []
    moved: list[str] = []
    for text in end.small:
        count = lines(text, across, SMALL)
        # Once one line has gone elsewhere those after it follow, so that they stay in their order.
        if bare or moved or count > MOST_LINES or tall + count * SMALL_LINE > free:
            moved.append(text)
        else:
            kept.append(text)
            tall += count * SMALL_LINE
    return kept, tall, moved


def _folded(
    facts: Sequence[TicketFact], across: float, space: float, *, running: bool
) -> tuple[list[FactLine], list[TicketFact], float]:
    """Divide the small print at the fold; return both parts and the height of the upper one.

    A fact begins a line of its own, unless a line holds it together with those before.
    ``running``: facts follow each other in one text, as on a strip.
    """
    face: list[FactLine] = []
    before, over, above = "", 0.0, 0.0
    for number, fact in enumerate(facts):
        text = f"{fact.term}  {fact.text}"
        joined = f"{before}{BETWEEN}{text}".replace("  ", " \xa0")
        count = lines(joined, across, SMALL) if before else 0
        goes_on = bool(before) and (running or count == 1)
        if goes_on:
            text = joined
        else:
            over, count = above, lines(text, across, SMALL)
        tall = over + count * SMALL_LINE
        if tall > space:
            return face, list(facts[number:]), above
        if goes_on:
            face[-1] = (*face[-1], fact)
        else:
            face.append((fact,))
        before, above = text, tall
    return face, [], above


def frame_of(shape: Shape) -> Frame:
    """Return the frame in which a ticket of that shape draws its ends."""
    return STRIP_ENDS if shape.kind is Format.STRIP else CARD_ENDS
