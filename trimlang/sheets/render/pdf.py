"""HTML sheets as PDF, through WeasyPrint, which is loaded only when a PDF is asked for."""

from __future__ import annotations

import atexit
import gc
import re
from collections.abc import Iterator, Mapping
from contextlib import contextmanager, redirect_stdout
from functools import lru_cache
from io import StringIO
from typing import TYPE_CHECKING, Any, Final

if TYPE_CHECKING:
    from xml.etree.ElementTree import Element

INSTALL: Final = (
    "PDF needs the Pango libraries:"
    " apt install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0"
    " (HTML and JSON work without them)"
)


class PangoMissingError(RuntimeError):
    """WeasyPrint cannot load the libraries that set its text; the message says what to install."""


class ReachesOutError(ValueError):
    """A sheet asks for something outside itself."""


LEFT_LYING: Final = 1_500_000
"""How many characters of HTML are laid out, at about 0.6 kB of memory each, before a process
that collects no garbage by itself does so."""
_OF_ONE_PAGE: Final = re.compile(r"@(counter-style|color-profile|layer|import)\b")
"""What a stylesheet says to the page that it stands in and to no other."""
_ONE_WORD: Final = (
    '<!DOCTYPE html>\n<html lang="en"><head><title>-</title><style>{style}</style></head>'
    "<body><p>-</p></body></html>"
)
_FOOTNOTES: Final = re.compile(r"^::(foot)?note-.*$", re.MULTILINE)


def ready(style: str = "") -> None:
    """Load what every PDF needs, and fonts and rules of ``style``, before processes are forked.

    Raises:
        PangoMissingError: WeasyPrint or the libraries under it are missing.
        ReachesOutError: the style asks for a file or an address outside itself.
    """
    try:
        # where a library is missing WeasyPrint prints a page of advice of its own
        with redirect_stdout(StringIO()):
            import weasyprint  # noqa: F401
    except (ImportError, OSError) as error:
        raise PangoMissingError(INSTALL) from error
    if style and not _OF_ONE_PAGE.search(style):
        with _refusals():
            # A page of one word: its fonts and rules, and WeasyPrint's own, stay for all others.
            _printed(_ONE_WORD.format(style=style))


def to_pdf(html: str) -> bytes:
    """Return a sheet as PDF; the same HTML gives the same bytes.

    Raises:
        PangoMissingError: WeasyPrint or the libraries under it are missing.
        ReachesOutError: the sheet asks for a file or an address outside itself.
    """
    ready()
    with _refusals(), _undisturbed():
        data: bytes = _printed(html)
    return data


def to_pdfs(sheets: Mapping[str, str]) -> dict[str, bytes]:
    """Return each sheet as PDF, by its name; for what is raised see ``to_pdf``."""
    printed = {}
    lying = 0
    for name, html in sheets.items():
        if lying > LEFT_LYING and not gc.isenabled():
            gc.collect()
            lying = 0
        printed[name] = to_pdf(html)
        lying += len(html)
    return printed


@contextmanager
def _refusals() -> Iterator[None]:
    from weasyprint import urls

    refused: type[BaseException] = getattr(urls, "FatalURLFetchingError", ReachesOutError)
    try:
        yield
    except refused as error:
        raise ReachesOutError(f"a sheet may load nothing from outside itself: {error}") from None


def _printed(html: str) -> Any:
    """Return a page as PDF, read the quick way where that can be."""
    import weasyprint

    from trimlang.sheets.render.page_tree import page_tree

    tree = page_tree(html)
    if tree is None:
        page = weasyprint.HTML(string=html, url_fetcher=data_fetcher(), media_type="print")
        return page.write_pdf(pdf_variant="pdf/ua-1")
    style = tree.find("head/style")
    if style is None or not style.text or style.attrib or _OF_ONE_PAGE.search(style.text):
        return _read_page(tree).write_pdf(pdf_variant="pdf/ua-1")
    # All sheets of a job begin with the same style. WeasyPrint would read it again for each, and
    # load its fonts again, which takes longer than laying a page out.
    rules, fonts = _looks(style.text.strip())
    style.text = ""
    return _read_page(tree).write_pdf(
        stylesheets=[rules], font_config=fonts, pdf_variant="pdf/ua-1"
    )


@lru_cache(maxsize=2)
def _looks(style: str) -> tuple[Any, Any]:
    """Return a style's rules as WeasyPrint has read them, and its fonts."""
    import weasyprint
    from weasyprint.text.fonts import FontConfiguration

    fonts = FontConfiguration()
    rules = weasyprint.CSS(string=style, font_config=fonts, url_fetcher=data_fetcher())
    return rules, fonts


@lru_cache(maxsize=1)
def _plain_html() -> Any:
    """Return WeasyPrint's rules for HTML without footnotes, which no sheet has.

    It works out how the call, the marker and the text of a footnote would look for every element:
    six styles each, a tenth of the time of a PDF.
    """
    from weasyprint import CSS, html

    rules = _FOOTNOTES.sub("", html.UA).replace("::marker", "li::marker")
    return CSS(string=rules, counter_style=html.UA_COUNTER_STYLE)


# fonts lie in a folder that goes with them, while the modules that delete it are still there
atexit.register(_looks.cache_clear)


def _read_page(tree: Element) -> Any:
    """Return a page that is read already as WeasyPrint takes it."""
    import cssselect2
    import weasyprint

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

        def _ua_stylesheets(self, *_forms: bool) -> list[Any]:
            return [_plain_html()]

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
