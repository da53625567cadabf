"""Writes lines of the log out in full, so that a later change of the job cannot change them."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from fractions import Fraction
from typing import Final

from trimlang.diagnostics import Span
from trimlang.lengths.tape import MM, Unit, feet_text, length_text
from trimlang.money import money_text
from trimlang.site_log.trim_progress import FullEntry
from trimlang.survey.job import Job
from trimlang.survey.log_entries import BoughtSticks, CutPiece, Spoiled

_BEGIN: Final = frozenset({"cut", "spoiled", "shortened", "fitted", "bought", "rack"})
"""The words that lines of the log begin with."""


def whole_lines(given: Iterable[str]) -> list[str]:
    """Return lines of the log, put together where their quotation marks were left out."""
    lines: list[str] = []
    for words in given:
        begins = words.split()[:1]
        if lines and begins and begins[0].casefold() not in _BEGIN:
            lines[-1] += f" {words}"
        else:
            lines.append(words)
    return lines


def in_full(
    job: Job, full_entries: tuple[FullEntry, ...], units: Mapping[str, Unit]
) -> dict[Span, str]:
    """Return the full text of each part of a line that does not say everything, by its place.

    ``units`` are the units of the pieces' tickets, by the pieces' ids.
    """
    unit = job.settings.unit
    said = {one.entry: one for one in full_entries}
    full: dict[Span, str] = {}
    for entry in job.log:
        text = None
        if isinstance(entry, BoughtSticks):
            text = None if entry.priced else _bought(entry, unit)
        # A line that could not be followed has no full text; it is left as it stands.
        elif entry in said and isinstance(entry, CutPiece | Spoiled):
            text = _sawn(entry, said[entry], units.get(entry.piece, unit), unit)
        if text is not None:
            full[entry.span] = text
    return full


def _sawn(entry: CutPiece | Spoiled, full: FullEntry, own: Unit, unit: Unit) -> str | None:
    source = entry.source
    if entry.length is not None and source is not None and source.stick and source.length:
        return None
    into = ""
    if isinstance(entry, Spoiled) and entry.rests:
        into = "into " + " and ".join(length_text(rest, own) for rest in entry.rests)
    return sawn_words(
        entry.piece,
        full.length,
        own,
        into=into,
        stick=full.stick,
        stick_length=full.stick_length,
        unit=unit,
    )


def sawn_words(
    piece: str,
    length: Fraction,
    own: Unit,
    *,
    stick: str,
    stick_length: Fraction,
    unit: Unit,
    into: str = "",
) -> str:
    """Say in full what was sawn: ``PO-N-base 29 3/4 in from base-1 of 12 ft``.

    ``own`` is the unit of the piece's ticket, ``unit`` the job's; lengths in inches.
    """
    parts = (piece, length_text(length, own), into)
    source = f"from {stick} of {_stick_long(stick_length, unit)}"
    return " ".join(part for part in (*parts, source) if part)


def _stick_long(length: Fraction, unit: Unit) -> str:
    """Write a stick's length so that it is read back as the same stick.

    A stick of 12 ft is 3657.6 mm; as 3.658 m it would be another one, that nobody has bought.
    """
    if unit is Unit.MM and (length / MM).denominator > 1:
        return length_text(length, unit)
    return feet_text(length, unit)


def _bought(entry: BoughtSticks, unit: Unit) -> str:
    long = _stick_long(entry.length, unit)
    each = entry.price / entry.count
    # A price that does not divide into whole cents is written for the lot, so that nothing is
    # rounded.
    if (each * 100).denominator == 1:
        return f"{entry.count} {entry.trim} {long} at {_readable(each)}"
    return f"pack of {entry.count} {entry.trim} {long} at {_readable(entry.price)}"


def _readable(price: Fraction) -> str:
    """Write a price as the log can be read again: a round one of nine digits without its cents."""
    return money_text(price) if price < 10**7 else money_text(price).removesuffix(".00")


def in_place(text: str, spans: dict[Span, str]) -> str:
    """Return a file's text with parts of its lines replaced; everything else stays."""
    mark = "\ufeff" if text.startswith("\ufeff") else ""
    # Lines and their ends alternate, so line n is part 2 (n - 1).
    parts = re.split(r"(\r\n|\r|\n)", text.removeprefix(mark))
    # From the end, so that the columns of places still to come stay right.
    for span in sorted(spans, reverse=True):
        at = 2 * (span.line - 1)
        line = parts[at]
        parts[at] = line[: span.column - 1] + spans[span] + line[span.end - 1 :]
    return mark + "".join(parts)
