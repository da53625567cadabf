"""What hover says of a trim and of a room."""

from __future__ import annotations

from fractions import Fraction

from trimlang.editor.hover_pieces import plain
from trimlang.editor.mention import Mention
from trimlang.editor.open_job import JobReading
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.job import Offer, Trim


def trim_text(reading: JobReading, mention: Mention, pen: Pen) -> str | None:
    """Say of a trim its section, its stock and what of it the job takes."""
    name = mention.name.text
    trim = next((one for one in reading.result.job.trims if one.name == name), None)
    if trim is None:
        return None
    lines = [f"trim **{plain(name)}**: {_section(trim, pen)}"]
    lines += [f"- {_offer(offer, pen)}" for offer in trim.offers]
    for rest in trim.rests:
        price = f" at {pen.money(rest.price)}" if rest.price else ""
        lines.append(f"- on hand: {rest.count} of {pen.length(rest.length)}{price}")
    if not trim.offers and not trim.rests:
        lines.append("- no stock")
    pieces = [piece for piece in reading.result.pieces if piece.trim == name]
    if pieces:
        total = sum((piece.length for piece in pieces), Fraction(0))
        count = "1 piece" if len(pieces) == 1 else f"{len(pieces)} pieces"
        lines.append(f"- {count}, {pen.run_of(total)} in all")
    return "\n".join(lines)


def _section(trim: Trim, pen: Pen) -> str:
    parts: list[str] = []
    if trim.thickness is not None:
        parts.append(f"{pen.length(trim.thickness)} thick")
    if trim.height is not None:
        flat = "tall" if trim.spring is None else "wide"
        parts.append(f"{pen.length(trim.height)} {flat}")
    if trim.spring is not None:
        parts.append(f"spring {pen.angle(trim.spring)}")
    parts += [plain(word) for word in trim.material]
    if trim.in_front_of is not None:
        parts.append(f"in front of {plain(trim.in_front_of)}")
    if trim.upon is not None:
        parts.append(f"on {plain(trim.upon)}")
    return ", ".join(parts) or "no section given"


def _offer(offer: Offer, pen: Pen) -> str:
    what = pen.stick(offer.length)
    if offer.pack > 1:
        what = f"pack of {offer.pack}, {what}"
    most = f", at most {offer.at_most}" if offer.at_most is not None else ""
    price = "" if pen.by_length else f" at {pen.money(offer.price)}"
    return f"{what}{price}{most}"


def room_text(reading: JobReading, mention: Mention) -> str:
    """Say of a room how many runs and pieces it has."""
    room = reading.names.rooms[mention.name.room or 0]
    name = room.heading.name.text
    pieces = sum(piece.room == name for piece in reading.result.pieces)
    runs = "1 run" if len(room.runs) == 1 else f"{len(room.runs)} runs"
    made = f", {pieces} pieces" if pieces else ""
    return f"room **{plain(name)}**, tag {plain(room.tag)}: {runs}{made}"
