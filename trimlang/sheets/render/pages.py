"""Every sheet of a job as one self-contained HTML document each."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from markupsafe import Markup

from trimlang.compiler import Result
from trimlang.lengths.tape import Shown, Unit
from trimlang.sheets.content.heading import file_stem, heading
from trimlang.sheets.content.job_at_a_glance import TITLES_OF_DATA, at_a_glance
from trimlang.sheets.render.paper import AREAS, LETTER, label, page_rule, running
from trimlang.sheets.render.stylesheet import screen_style, stylesheet
from trimlang.sheets.render.template_filling import TemplateFiller
from trimlang.sheets.sheet_table import (
    INDEX,
    INDEX_TITLE,
    PHONE,
    PHONE_TITLE,
    SHEET_TITLES,
    SHEETS,
    Printing,
)
from trimlang.sheets.wording.catalogue import NO_BREAK, Words, words_in
from trimlang.sheets.wording.quantities import Pen

if TYPE_CHECKING:
    from trimlang.shared_order.shared_result import SharedOrder


def render_sheets(
    result: Result,
    *,
    paper: str = "letter",
    templates: Path | None = None,
    show: str | None = None,
    language: str = "en",
    qr: bool = True,
    ticket: str | None = None,
    only: Collection[str] | None = None,
    shared: SharedOrder | None = None,
    filler: TemplateFiller | None = None,
) -> dict[str, str]:
    """Return the sheets of a compiled job: name to a complete HTML document.

    Args:
        result: a job without errors.
        paper: ``letter`` or ``a4``.
        templates: a folder whose templates stand in for the shipped ones.
        show: ``in``, ``ft`` (12 ft 2 1/4 in) or ``mm`` on the sheets, whatever the job file is in.
        language: the language of the sheets.
        qr: whether tickets carry a QR code.
        ticket: a label's size (``100mm x 50mm``), to print one ticket on each.
        only: the names of the sheets to make, where not all are wanted.
        shared: the purchase that the job is, which gives the sheet of flats and sticks.
        filler: one that has filled ``templates`` before, which is quicker.

    Raises:
        ValueError: the job has errors, or an argument names nothing known.
        SheetTemplateError: a template cannot be read or filled.
    """
    words = words_in(language)
    # A filler that has read the templates before saves most of the time of a watched build.
    filler = filler or TemplateFiller(templates)
    printing = Printing(
        result=result,
        pen=_pen(result, words, show),
        area=AREAS.get(paper.lower(), LETTER),
        codes=qr,
        label=label(ticket) if ticket is not None else None,
        shared=shared,
        drawings=filler.drawings,
    )
    pages = _Pages(result, filler, words, paper)
    return {
        sheet.name: pages.page(
            sheet.file,
            words(sheet.title),
            sheet.context(printing),
            on_its_side=sheet.on_its_side,
        )
        for sheet in SHEETS
        if (only is None or sheet.name in only) and sheet.wanted(printing)
    }


def render_phone(
    result: Result,
    *,
    templates: Path | None = None,
    show: str | None = None,
    language: str = "en",
    only: Collection[str] | None = None,
    shared: SharedOrder | None = None,
    filler: TemplateFiller | None = None,
) -> str:
    """Return all sheets of a job in one HTML document that needs no other file.

    For the arguments and what is raised see ``render_sheets``.
    """
    words = words_in(language)
    filler = filler or TemplateFiller(templates)
    printing = Printing(
        result=result,
        pen=_pen(result, words, show),
        area=LETTER,
        # On the phone's own screen a code to be read with a phone is of no use.
        codes=False,
        shared=shared,
        drawings=filler.drawings,
    )
    pages = _Pages(result, filler, words, "letter")
    wanted = [
        sheet
        for sheet in SHEETS
        # The changed tickets, which fill the template of all tickets, are among those already.
        if (only is None or sheet.name in only) and sheet.wanted(printing) and not sheet.template
    ]
    sections = [
        Markup(  # noqa: S704 - a template made it, and escaped what the job says
            pages.page(
                sheet.file,
                words(sheet.title),
                {**sheet.context(printing), "in_one": True, "name": sheet.name},
            )
        )
        for sheet in wanted
    ]
    # The list at the top turns to a sheet's section by its name, which no language changes.
    turns = [(sheet.name, words(sheet.title)) for sheet in wanted]
    return pages.page(f"{PHONE}.html", words(PHONE_TITLE), {"turns": turns, "sections": sections})


def render_index(
    result: Result,
    files: Collection[str],
    *,
    paper: str = "letter",
    templates: Path | None = None,
    show: str | None = None,
    language: str = "en",
    other_folders: Sequence[tuple[str, str]] = (),
    filler: TemplateFiller | None = None,
) -> str:
    """Return the job at a glance, a complete HTML document that leads to all ``files``.

    ``other_folders`` are titles and addresses of pages in other folders; for the other arguments
    and what is raised see ``render_sheets``.
    """
    words = words_in(language)
    filler = filler or TemplateFiller(templates)
    pages = _Pages(result, filler, words, paper)
    glance = at_a_glance(
        result,
        _pen(result, words, show),
        files,
        # Data files have titles too, so that the index names each file in words.
        titles={**SHEET_TITLES, phone_file(result): PHONE_TITLE, **TITLES_OF_DATA},
        other_folders=other_folders,
        cache=filler.drawings,
    )
    return pages.page(f"{INDEX}.html", words(INDEX_TITLE), {"glance": glance})


def phone_file(result: Result) -> str:
    """Return the name, without its ending, of the file that ``render_phone`` is written to."""
    return f"{file_stem(result)}-{PHONE}"


def _pen(result: Result, words: Words, show: str | None) -> Pen:
    if not result.ok:
        raise ValueError("a job with errors has no sheets")
    if show is not None and show not in list(Shown):
        raise ValueError(f"lengths are shown in 'in', 'ft' or 'mm', not {show!r}")
    settings = result.job.settings
    return Pen(
        words,
        result.job.currency,
        own=settings.unit,
        # Nothing asked means each room in the unit in which it was measured.
        show=None if show is None else Unit.MM if show == Shown.MM else Unit.INCH,
        feet=show == Shown.FEET,
        tape=settings.tape_step,
        by_length=result.job.by_length,
        scale=settings.saw_step,
        gap=NO_BREAK,
    )


class _Pages:
    """What the pages of one printing share: head and foot, words, paper and looks."""

    def __init__(self, result: Result, filler: TemplateFiller, words: Words, paper: str) -> None:
        self._filler = filler
        self._words = words
        self._head = heading(result)
        # Elevations lie on their side; all else stands.
        self._sizes = {side: page_rule(paper, on_its_side=side) for side in (False, True)}
        self._common = {
            "job": self._head,
            "_": words,
            "language": words.language,
            "style": stylesheet(filler),
            "screen_style": screen_style(filler),
            "in_one": False,
            "script": Markup(filler.source("parts/phone.js")),  # noqa: S704
        }

    def page(
        self, template: str, title: str, own: Mapping[str, object], *, on_its_side: bool = False
    ) -> str:
        """Fill a template; what is its ``own`` goes before what all share."""
        # Paper repeats head and foot on every page, which a browser takes from rules, not text.
        rules = running(self._head.job, title, self._head.revision, self._words)
        rule = Markup(f"{self._sizes[on_its_side]}\n{rules}")  # noqa: S704 - escaped
        return self._filler.fill(
            template, {**self._common, "sheet": title, "page_rule": rule, **own}
        )
