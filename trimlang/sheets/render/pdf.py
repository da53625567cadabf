"""HTML sheets as PDF, through WeasyPrint, which is loaded only when a PDF is asked for."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager, redirect_stdout
from io import StringIO
from typing import Any, Final

from trimlang.sheets.render.page_tree import page_tree

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
            import weasyprint  # noqa: F401
    except (ImportError, OSError) as error:
        raise PangoMissingError(INSTALL) from error
    from weasyprint import urls

    refused: type[BaseException] = getattr(urls, "FatalURLFetchingError", ReachesOutError)
    try:
        with _undisturbed():
            data: bytes = _document(html).write_pdf(pdf_variant="pdf/ua-1")
    except refused as error:
        raise ReachesOutError(f"a sheet may load nothing from outside itself: {error}") from None
    return data


def _document(html: str) -> Any:
    """Return a page as WeasyPrint takes it, read the quick way where that can be."""
    import cssselect2
    import weasyprint

    tree = page_tree(html)
    if tree is None:
        return weasyprint.HTML(string=html, url_fetcher=data_fetcher(), media_type="print")

    class ReadPage(weasyprint.HTML):  # type: ignore[misc]
        """A page that is read already: what WeasyPrint's own class has after its reading."""

        def __init__(self) -> None:
            self.base_url = None
            self.url_fetcher = data_fetcher()
            self.media_type = "print"
            self.wrapper_element = cssselect2.ElementWrapper.from_html_root(
                tree, content_language=None
            )
            self.etree_element = self.wrapper_element.etree_element

    return ReadPage()


@contextmanager
def _undisturbed() -> Iterator[None]:
    """Keep the cyclic garbage collector out while a sheet is laid out.

    A sheet is millions of small objects that are all in use until its PDF is written.
    The collector would walk them again and again, and the more of them there are the more
    often in vain: a third of the time of a long sheet, and more a piece the longer it is.
    """
    was = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was:
            gc.enable()


def data_fetcher() -> Any:
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
