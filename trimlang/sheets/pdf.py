"""HTML sheets as PDF, through WeasyPrint, which is loaded only when a PDF is asked for."""

from __future__ import annotations

from contextlib import redirect_stdout
from io import StringIO
from typing import Any, Final

INSTALL: Final = (
    "PDF needs the Pango libraries:"
    " apt install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0"
    " (HTML and JSON work without them)"
)


class PangoMissingError(RuntimeError):
    """WeasyPrint cannot load the libraries that set its text; the message says what to install."""


class ReachesOutError(ValueError):
    """A sheet asks for something outside itself."""


def to_pdf(html: str) -> bytes:
    """Return a sheet as PDF; the same HTML gives the same bytes.

    Raises:
        PangoMissingError: WeasyPrint or the libraries under it are missing.
        ReachesOutError: the sheet asks for a file or an address outside itself.
    """
    try:
        # where a library is missing WeasyPrint prints a page of advice of its own
        with redirect_stdout(StringIO()):
            import weasyprint
    except (ImportError, OSError) as error:
        raise PangoMissingError(INSTALL) from error
    from weasyprint import urls

    refused: type[BaseException] = getattr(urls, "FatalURLFetchingError", ReachesOutError)
    document = weasyprint.HTML(string=html, url_fetcher=_within(), media_type="print")
    try:
        data: bytes = document.write_pdf(pdf_tags=True)
    except refused as error:
        raise ReachesOutError(f"a sheet may load nothing from outside itself: {error}") from None
    return data


def _within() -> Any:
    """Return a fetcher for what is in the sheet itself (data:), and nothing else."""
    from weasyprint import urls

    if not hasattr(urls, "URLFetcher"):  # before release 68 a fetcher was a function
        return _only_data
    return urls.URLFetcher(allowed_protocols=("data",), fail_on_errors=True)


def _only_data(url: str, *args: Any, **options: Any) -> Any:
    if not url.startswith("data:"):
        raise ReachesOutError(f"a sheet may not load {url[:80]}")
    from weasyprint import default_url_fetcher

    return default_url_fetcher(url, *args, **options)
