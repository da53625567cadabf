"""How each room closes, as a hint that an editor shows behind its heading."""

from __future__ import annotations

from collections.abc import Iterator

from trimlang.diagnostics import Span
from trimlang.editor.open_job import JobReading
from trimlang.record import record
from trimlang.sheets.wording.catalogue import words_in
from trimlang.sheets.wording.closing_words import closing_words
from trimlang.sheets.wording.quantities import Pen
from trimlang.survey.outline import outline


@record
class Hint:
    """A text to show behind a place in a document."""

    behind: Span
    text: str


def closing_hints(reading: JobReading, file: str, first: int, last: int) -> Iterator[Hint]:
    """Yield how the rooms close whose headings stand in some lines of a file (from 1)."""
    job = reading.result.job
    closings = {one.room: one for one in reading.result.closings}
    for named in reading.names.rooms:
        span = named.heading.span
        if span.file != file or not first <= span.line <= last:
            continue
        room = next((one for one in job.rooms if one.name == named.heading.name.text), None)
        # An open walk is not expected to come round, so there is nothing to say of it.
        if room is None or not room.walk or room.open_walk:
            continue
        pen = Pen(words_in("en"), job.currency, room.settings.unit)
        text = closing_words(room, outline(room, job.trims), closings.get(room.name), pen)
        if text:
            yield Hint(span, text)
