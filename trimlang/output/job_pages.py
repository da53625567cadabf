"""Makes a job's pages, as HTML and PDF, and tells what is wrong with a template or an option.

Everything here needs the library that fills templates, which is slow to load; ``job_files``
comes here only where pages are wanted.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from contextlib import contextmanager

from trimlang.compiler import Result
from trimlang.output.sheet_options import FileFormat, SheetOptions
from trimlang.shared_order.shared_result import SharedOrder
from trimlang.sheets.render.pages import phone_file, render_index, render_phone, render_sheets
from trimlang.sheets.render.paper import UnknownPaperError, usual_paper
from trimlang.sheets.render.pdf import PangoMissingError, ReachesOutError, ready, to_pdfs
from trimlang.sheets.render.stylesheet import stylesheet
from trimlang.sheets.render.template_filling import SheetTemplateError, TemplateFiller
from trimlang.sheets.wording.catalogue import UnknownLanguageError
from trimlang.workers.forked import RefusedError


def load_ahead(options: SheetOptions) -> None:
    """Load once what every process would load for itself.

    Raises:
        RefusedError: a template cannot be followed.
    """
    with _refusals():
        ready(stylesheet(TemplateFiller(options.templates)))


def pages(
    options: SheetOptions,
    result: Result,
    names: Collection[str],
    shared: SharedOrder | None,
    filler: TemplateFiller | None,
) -> dict[str, bytes]:
    """Return the sheets with these names as HTML and PDF.

    Raises:
        RefusedError: an option or a template cannot be followed.
    """
    files: dict[str, bytes] = {}
    with _refusals():
        sheets = render_sheets(
            result,
            paper=_paper(options, result),
            templates=options.templates,
            show=options.show,
            language=options.language,
            qr=options.codes,
            ticket=options.ticket,
            only=names,
            shared=shared,
            filler=filler,
        )
    if options.wants(FileFormat.HTML):
        files |= {f"{name}.html": html.encode() for name, html in sheets.items()}
    if options.wants(FileFormat.PDF):
        with _refusals():
            files |= {f"{name}.pdf": data for name, data in to_pdfs(sheets).items()}
    return files


def phone_page(
    options: SheetOptions,
    result: Result,
    only: Collection[str] | None,
    shared: SharedOrder | None,
    filler: TemplateFiller | None,
) -> dict[str, bytes]:
    """Return all sheets as one page.

    Raises:
        RefusedError: an option or a template cannot be followed.
    """
    with _refusals():
        html = render_phone(
            result,
            templates=options.templates,
            show=options.show,
            language=options.language,
            only=only,
            shared=shared,
            filler=filler,
        )
    return {f"{phone_file(result)}.html": html.encode()}


def index_page(
    options: SheetOptions,
    result: Result,
    files: Collection[str],
    other_folders: Sequence[tuple[str, str]],
    filler: TemplateFiller | None,
) -> bytes:
    """Return the page to open first, with links to all files that were made.

    Raises:
        RefusedError: an option or a template cannot be followed.
    """
    with _refusals():
        html = render_index(
            result,
            files,
            paper=_paper(options, result),
            templates=options.templates,
            show=options.show,
            language=options.language,
            other_folders=other_folders,
            filler=filler,
        )
    return html.encode()


@contextmanager
def _refusals() -> Iterator[None]:
    """Turn what is wrong with an option or a template into a refusal in the user's words."""
    try:
        yield
    except SheetTemplateError as error:
        raise RefusedError(f"a template is wrong: {error}") from None
    except (UnknownLanguageError, UnknownPaperError, PangoMissingError, ReachesOutError) as error:
        raise RefusedError(str(error)) from None


def _paper(options: SheetOptions, result: Result) -> str:
    return options.paper or usual_paper(result.job.settings.unit)
