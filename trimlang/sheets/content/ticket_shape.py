"""The shape of a ticket: no taller than its trim, if it can still be read then.

A trim of 3 in and more gets a card, one from 2 1/8 in a wide ticket with its small
print beside, a lower one a strip.  Label stock takes whichever lets the type be
largest.  Text is measured before it is printed: what does not fit above the trim's
height goes on a flap that is folded back.  Lengths here are millimetres on paper,
type is in points at full scale (9 pt to the em).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.lengths.tape import MM
from trimlang.record import record
from trimlang.sheets.content.ticket_room import CODE_WIDE, EM, FRACTION, UNIT, Format, TicketRoom
from trimlang.sheets.content.ticket_text import EndPrint, Print, TicketFact
from trimlang.sheets.drawing.end_views import CARD_ENDS, STRIP_ENDS, Frame
from trimlang.sheets.drawing.typeface import lines, run, shortened, size_for

TALLEST: Final = 150.0
LEAST_SCALE: Final = 0.5
"""The smallest scale of a label's type: small print of 4 pt, lengths of 11 (strip: 9) pt."""


ARROW: Final = "W"
"""The arrow behind a setting takes as much room as this letter."""


@record
class Shape:
    """How a ticket is laid out.

    ``kind`` is ``card``, ``wide`` or ``strip``; ``across`` and ``down`` are millimetres
    (``down`` the least, without the flap), ``type`` points, other sizes ems of it.
    ``name`` and ``room`` are shortened where they must be (the whole is then among the
    facts), ``face`` and ``flap`` the small print above and below the fold, ``left`` and
    ``right`` the small lines under each joint.  ``flag``: the ticket is taller than its trim.
    """

    kind: Format
    across: str
    down: str
    type: str
    name: str
    name_size: str
    room: str
    room_size: str
    length_size: str
    setting_size: str
    left: tuple[str, ...]
    right: tuple[str, ...]
    face: tuple[TicketFact, ...]
    flap: tuple[TicketFact, ...]
    flag: bool


def on_paper(text: Print, tall: Fraction | None, *, code: bool) -> Shape:
    """Return the shape of a ticket for trim of that height (inches)."""
    limit = float(tall / MM) if tall is not None else TALLEST
    # From 76 mm (3 in) on a trim gets a card, from 53.5 mm (2 1/8 in) a wide ticket.
    for kind, across, down, scale, least in (
        (Format.CARD, 92.0, 75.0, 1.0, 76.0),
        (Format.WIDE, 188.0, 51.0, 0.92, 53.5),
    ):
        if limit < least:
            continue
        room = TicketRoom(
            kind=kind, across=across, down=down, limit=min(limit, TALLEST), scale=scale, code=code
        )
        shape = _laid(text, room)
        if shape is not None:
            return shape
    strip = TicketRoom(kind=Format.STRIP, across=188.0, down=18.6, limit=18.6, scale=1.0, code=code)
    strip = replace(strip, limit=max(min(limit, 44.0), 18.6), flag=limit < strip.down)
    # First within the trim's height, and if the text does not fit there as tall as it needs.
    shape = _laid(text, strip) or _laid(text, replace(strip, limit=TALLEST))
    assert shape is not None  # noqa: S101 - nothing is so tall
    return shape


def on_label(text: Print, across: Fraction, down: Fraction, *, code: bool) -> Shape | None:
    """Return the shape with the largest type that fits a label; None where none does.

    Small print that may be left off has gone to ``flap`` where the label cannot hold it.
    """
    best: Shape | None = None
    tall = float(down) - 0.3  # a page is not to overflow by a rounding
    # From the largest type down; once one fits, only scales near it can still give a longer length.
    for step in range(40):
        scale = 2.5 - step * 0.05
        if scale < LEAST_SCALE or (best is not None and scale < float(best.type) / EM * 0.8):
            break
        for kind in Format:
            room = TicketRoom(
                kind=kind, across=float(across), down=tall, limit=tall, scale=scale, code=code
            )
            shape = _laid(text, room) if room.facts() >= 14 * scale else None
            if shape is None or not all(fact.extra for fact in shape.flap):
                continue
            if best is None or _rank(shape) > _rank(best):
                best = shape
    return best


def _rank(shape: Shape) -> tuple[bool, float]:
    """Rank shapes: all small print on the face in readable type first, then the largest length."""
    size = float(shape.type)
    return (not shape.flap and size >= 0.7 * EM, float(shape.length_size) * size)


def _laid(text: Print, room: TicketRoom) -> Shape | None:
    """Lay a ticket out; None where the part that must be above the fold does not fit."""
    size = room.type()
    points = room.points
    name, name_size = _fitted(text.id, room.name(), *size.name, room)
    said = text.about if room.kind is not Format.STRIP else text.room_and_part
    called, room_size = _fitted(said, room.name(), *size.room, room)
    whole, fraction, unit = text.length
    most, least = size.length
    wide = (
        run(whole, points(most))
        + (run(" " + fraction, points(most) * FRACTION) if fraction else 0.0)
        + run(" " + unit, points(most) * UNIT)
    )
    # Widths grow in proportion to the size of the type, so one measurement gives the largest size.
    length_size = min(most, most * room.name() / wide)
    if length_size < least:
        return None
    head = points(name_size * 1.1 + room_size * 1.2 + length_size)
    extra: list[TicketFact] = []
    if name != text.id:
        extra.append(TicketFact(text.id_word, text.id))
    if called != said:
        extra.append(TicketFact(text.room_word, text.about))
    setting = min(
        size_for(line + ARROW, room.cut(), points(size.setting[0]), points(size.setting[1]))
        for end in (text.left, text.right)
        for line in end.setting
    )
    if room.kind is Format.STRIP:
        high = min(room.down, room.limit) - room.about()
        if head > high:
            return None
        free = high
    else:
        code = CODE_WIDE[room.kind] * room.scale + 0.5 if room.code else 0.0
        drawn = room.main() * float(CARD_ENDS.tall) / CARD_ENDS.wide
        head = max(head, code) + drawn + points(EM) * 0.5
        free = room.limit - room.about() - head
    cuts = [_cut(end, room, setting, free) for end in (text.left, text.right)]
    if any(cut is None for cut in cuts):
        return None
    (left, left_tall, left_moved), (right, right_tall, right_moved) = (
        cut for cut in cuts if cut is not None
    )
    moved = [
        TicketFact(end.side, "; ".join(lost))
        for end, lost in ((text.left, left_moved), (text.right, right_moved))
        if lost
    ]
    facts = [*moved, *extra, *text.facts]
    if room.kind is Format.STRIP:
        facts = [replace(fact, text=fact.brief or fact.text) for fact in facts]
    space = min(room.down, room.limit) if room.kind is Format.STRIP else room.limit
    space -= room.about()
    if room.kind is Format.CARD:
        space -= head + max(left_tall, right_tall) + points(EM) * 0.5
    face, flap, facts_tall = _folded(
        facts, room.facts(), points(size.small), space, running=room.kind is Format.STRIP
    )
    # The small print of a wide ticket stands beside the rest, so the ticket is as tall as either.
    down = max(room.down, facts_tall + room.about()) if room.kind is Format.WIDE else room.down
    print_size = room.scale * EM
    return Shape(
        kind=room.kind,
        across=f"{room.across:.2f}",
        down=f"{down:.2f}",
        type=f"{print_size:.2f}",
        name=name,
        name_size=f"{name_size / EM:.3f}",
        room=called,
        room_size=f"{room_size / EM:.3f}",
        length_size=f"{int(length_size / EM * 100) / 100:.2f}",
        setting_size=f"{int(setting / points(size.small) * 100) / 100:.2f}",
        left=tuple(left),
        right=tuple(right),
        face=tuple(face),
        flap=tuple(flap),
        flag=room.flag,
    )


def _fitted(
    text: str, across: float, most: float, least: float, room: TicketRoom
) -> tuple[str, float]:
    """Return a text, shortened if need be, and its size (points) so that it fits one line."""
    points = room.points
    size = size_for(text, across, points(most), points(least)) / points(1)
    return shortened(text, across, points(size)), size


def _cut(
    end: EndPrint, room: TicketRoom, setting: float, free: float
) -> tuple[list[str], float, list[str]] | None:
    """Return the small lines under an end's joint, the height, and the lines moved elsewhere."""
    size, across = room.type(), room.cut()
    tall = sum(lines(line + ARROW, across, setting) for line in end.setting) * setting * 1.1
    joint = room.points(size.joint)
    tall += lines(end.joint, across, joint) * joint * 1.2
    if tall > free:
        return None
    small = room.points(size.small)
    fitting: list[str] = []
    for number, text in enumerate(end.small):
        more = lines(text, across, small) * small * 1.2
        if tall + more > free:
            return fitting, tall, list(end.small[number:])
        fitting.append(text)
        tall += more
    return fitting, tall, []


def _folded(
    facts: Sequence[TicketFact], across: float, size: float, space: float, *, running: bool
) -> tuple[list[TicketFact], list[TicketFact], float]:
    """Divide the small print at the fold; return both parts and the height of the upper one.

    ``running``: facts follow each other on one line, as on a strip.
    """
    face: list[TicketFact] = []
    before, tall, above = "", 0.0, 0.0
    for number, fact in enumerate(facts):
        text = f"{fact.term}  {fact.text}"
        if running:
            before = f"{before}    {text}"
            tall = lines(before.replace("  ", " \xa0"), across, size) * size * 1.15
        else:
            tall += lines(text, across, size) * size * 1.2
        if tall > space:
            return face, list(facts[number:]), above
        face.append(fact)
        above = tall
    return face, [], above


def frame_of(shape: Shape) -> Frame:
    """Return the frame in which a ticket of that shape draws its ends."""
    return STRIP_ENDS if shape.kind is Format.STRIP else CARD_ENDS
