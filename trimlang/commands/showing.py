"""Shows the sheets of ``build --watch`` to browsers of this machine, and has them reload.

What is shown is kept here, so that nothing of the disk can be asked for; the
sheets in the folder know nothing of all this.  Only the served copy of a sheet
carries the script that asks whether it is out of date.
"""

from __future__ import annotations

import secrets
from collections.abc import Mapping
from hashlib import sha256
from html import escape
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from threading import Thread
from types import TracebackType
from typing import Final

from trimlang.record import record

_HOME: Final = "127.0.0.1"
_STAMP: Final = ".stamp"
_SCRIPT: Final = (
    "<script>setInterval(function(){if(document.hidden){return;}"
    'fetch("%s.stamp").then(function(r){return r.ok?r.text():"";})'
    '.then(function(t){if(t&&t!=="%s"){location.reload();}})'
    ".catch(function(){});},250);</script>"
)
"""Asks four times a second: a connection held open for each sheet would soon be too many."""


@record
class _Page:
    html: bytes
    stamp: bytes


class Showing:
    """A server for this machine alone: ``with Showing() as showing: showing.put(files)``."""

    def __init__(self) -> None:
        self._pages: Mapping[str, _Page] = {}
        # the name keeps out whoever else works on this machine
        self._way = f"/{secrets.token_urlsafe(9)}/"
        self._server = ThreadingHTTPServer((_HOME, 0), _handler(self))
        self._server.daemon_threads = True
        self._thread = Thread(target=self._server.serve_forever, args=(0.05,), daemon=True)

    @property
    def address(self) -> str:
        """Where the list of sheets is."""
        return f"http://{self.host}{self._way}"

    @property
    def host(self) -> str:
        """The one name that this server goes by."""
        return f"{_HOME}:{self._server.server_port}"

    def __enter__(self) -> Showing:
        self._thread.start()
        return self

    def __exit__(
        self,
        _kind: type[BaseException] | None,
        _error: BaseException | None,
        _at: TracebackType | None,
    ) -> None:
        self._server.shutdown()
        self._server.server_close()
        self._thread.join()

    def put(self, files: Mapping[str, bytes]) -> None:
        """Show these sheets from now on."""
        self._pages = {name: _page(name, data) for name, data in files.items() if _shown(name)}

    def answer(self, path: str) -> tuple[str, bytes] | None:
        """Return the type and the contents of what is asked for, None where it is not there."""
        if not path.startswith(self._way):
            return None
        name = path.removeprefix(self._way).partition("?")[0]
        pages = self._pages
        if not name:
            return "text/html", _contents(pages)
        page = pages.get(name.removesuffix(_STAMP))
        if page is None:
            return None
        return ("text/plain", page.stamp) if name.endswith(_STAMP) else ("text/html", page.html)


def _shown(name: str) -> bool:
    return name.endswith(".html")


def _page(name: str, data: bytes) -> _Page:
    stamp = sha256(data).hexdigest()[:16]
    script = _SCRIPT % (name, stamp)
    # a sheet lets nothing in or out; this copy may ask where it comes from
    html = data.decode("utf-8", "replace").replace(
        "default-src 'none';", "default-src 'none'; connect-src 'self';", 1
    )
    body, end, rest = html.rpartition("</body>")
    html = f"{body}{script}{end}{rest}" if end else f"{html}{script}"
    return _Page(html.encode(), stamp.encode())


def _contents(pages: Mapping[str, _Page]) -> bytes:
    links = "".join(
        f'<li><a href="{escape(name)}">{escape(name.removesuffix(".html"))}</a></li>'
        for name in pages
    )
    return f"<!DOCTYPE html><meta charset=utf-8><title>trimlang</title><ul>{links}</ul>".encode()


def _handler(showing: Showing) -> type[BaseHTTPRequestHandler]:
    class Handler(BaseHTTPRequestHandler):
        timeout = 10

        def do_GET(self) -> None:
            # a page from elsewhere that gave its own name our number is sent away
            asked = self.headers.get("Host") == showing.host
            found = showing.answer(self.path) if asked else None
            kind, data = found or ("text/plain", b"not here\n")
            self.send_response(200 if found else 404)
            self.send_header("Content-Type", f"{kind}; charset=utf-8")
            self.send_header("Content-Length", str(len(data)))
            self.send_header("Cache-Control", "no-store")
            self.send_header("X-Content-Type-Options", "nosniff")
            self.send_header("Cross-Origin-Resource-Policy", "same-origin")
            self.send_header("Referrer-Policy", "no-referrer")
            self.end_headers()
            self.wfile.write(data)

        def log_message(self, *_: object) -> None:
            """Say nothing: the terminal is for the job."""

    return Handler
