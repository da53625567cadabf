"""Shows the sheets of ``build --watch`` in browsers on this machine, and makes them reload.

The server answers from memory, so that no request can reach the disk.  Only the served copy of
a sheet carries the script that asks for news; the files in the folder do not.  A request for
news is held until there are any (long polling).
"""

from __future__ import annotations

import secrets
from collections.abc import Mapping
from hashlib import sha256
from html import escape
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import PurePosixPath
from threading import Condition, Thread
from types import TracebackType
from typing import Any, Final

from trimlang.record import record
from trimlang.sheets.sheet_table import INDEX

_HOME: Final = "127.0.0.1"
_NEWS: Final = ".news"
_HELD: Final = 10.0
"""Seconds that a request for news is held while there are none."""

_MOST_HELD: Final = 4
"""Requests held at a time: a browser opens six connections to a host, and needs some to load."""

_TYPES: Final = {
    ".pdf": "application/pdf",
    ".json": "application/json",
    ".csv": "text/csv",
    ".dxf": "image/vnd.dxf",
}
"""The media types of the other files that are shown, by the end of their name."""

# Small and self-contained, as a sheet may load nothing. A hidden tab asks nothing, so it does not
# use up a connection; an answer comes in three parts: the turn, the page's stamp, a notice.
_SCRIPT: Final = """<script>(function(){
var turn="",stamp="%s",busy=false,bar=null;
function tell(text){
if(bar){bar.remove();bar=null;}
if(!text){return;}
var look=document.createElement("style");
look.textContent="@media print{#trimlang-news{display:none}}";
bar=document.createElement("div");bar.id="trimlang-news";bar.setAttribute("role","status");
bar.style.cssText="position:fixed;z-index:9;left:0;right:0;bottom:0;padding:.6em 1em;"
+"background:#000;color:#fff;font:16px sans-serif;white-space:pre-wrap";
bar.textContent=text;bar.append(look);document.body.append(bar);}
function ask(){
if(busy||document.hidden){return;}
busy=true;
var began=Date.now();
function again(wait){busy=false;setTimeout(ask,wait);}
fetch("%s?"+turn).then(function(r){return r.ok?r.text():"\\n\\nThis sheet is made no more.";})
.then(function(text){
var news=text.split("\\n");
if(news[1]&&news[1]!==stamp){location.reload();return;}
var told=news[0]!==turn;
if(told){turn=news[0];tell(news.slice(2).join("\\n"));}
again(told||Date.now()-began>1000?0:250);})
.catch(function(){turn="";again(2000);
tell("trimlang watches no more: this page stays as it is.");});}
document.addEventListener("visibilitychange",ask);
ask();})();</script>"""


@record
class _Page:
    data: bytes
    stamp: str

    def with_script(self, name: str) -> bytes:
        """Return the page with the script that asks for its news."""
        script = _SCRIPT % (self.stamp, f"{name}{_NEWS}")
        # A sheet's own policy forbids all requests; the served copy may ask this server.
        html = self.data.decode("utf-8", "replace").replace(
            "default-src 'none';", "default-src 'none'; connect-src 'self';", 1
        )
        body, end, rest = html.rpartition("</body>")
        return (f"{body}{script}{end}{rest}" if end else f"{html}{script}").encode()


class PreviewServer:
    """A server for this machine only: ``with PreviewServer() as preview: preview.put(files)``."""

    def __init__(self) -> None:
        self._pages: Mapping[str, _Page] = {}
        self._others: Mapping[str, tuple[str, bytes]] = {}
        self._notice = ""
        self._turn = 1
        self._turned = Condition()
        self.held = 0
        # A random path keeps out other users of this machine.
        self._way = f"/{secrets.token_urlsafe(9)}/"
        self._server = _Server((_HOME, 0), _handler(self))
        self._thread = Thread(target=self._server.serve_forever, args=(0.05,), daemon=True)

    @property
    def address(self) -> str:
        """The address of the index of the sheets, with the random path."""
        return f"http://{self.host}{self._way}"

    @property
    def host(self) -> str:
        """The one name that this server answers to: address and port."""
        return f"{_HOME}:{self._server.server_port}"

    def __enter__(self) -> PreviewServer:
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
        """Show these sheets from now on, and take away any notice."""
        pages = {
            name: _Page(data, sha256(data).hexdigest()[:16])
            for name, data in files.items()
            if name.endswith(".html")
        }
        # The index links to these too.
        self._others = {
            name: (_TYPES[suffix], data)
            for name, data in files.items()
            if (suffix := PurePosixPath(name).suffix) in _TYPES
        }
        self._go_on(pages, "")

    def tell(self, notice: str) -> None:
        """Show a notice at the foot of every sheet, or take it away where it is empty."""
        if notice != self._notice:
            self._go_on(self._pages, notice)

    def _go_on(self, pages: Mapping[str, _Page], notice: str) -> None:
        with self._turned:
            self._pages, self._notice = pages, notice
            self._turn += 1
            self._turned.notify_all()

    def answer(self, path: str) -> tuple[str, bytes] | None:
        """Return the media type and the contents of a path, None where there is no such thing.

        A request for a sheet's news that names the turn it knows is held until the next turn.
        """
        if not path.startswith(self._way):
            return None
        name, _, query = path.removeprefix(self._way).partition("?")
        if not name:
            name = f"{INDEX}.html"
            if name not in self._pages:
                return "text/html", _contents(self._pages)
        if name.endswith(_NEWS):
            return self._news(name.removesuffix(_NEWS), query)
        page = self._pages.get(name)
        return self._others.get(name) if page is None else ("text/html", page.with_script(name))

    def _news(self, name: str, known: str) -> tuple[str, bytes] | None:
        with self._turned:
            # One request too many is answered at once with the news as they are: the browser asks
            # again.
            if name in self._pages and self.held < _MOST_HELD:
                self.held += 1
                try:
                    self._turned.wait_for(lambda: str(self._turn) != known, _HELD)
                finally:
                    self.held -= 1
            page = self._pages.get(name)
            if page is None:
                return None
            return "text/plain", f"{self._turn}\n{page.stamp}\n{self._notice}".encode()


class _Server(ThreadingHTTPServer):
    daemon_threads = True

    def handle_error(self, request: Any, client_address: Any) -> None:
        """Say nothing: a browser that was closed is not the job's mistake."""


def _contents(pages: Mapping[str, _Page]) -> bytes:
    links = "".join(
        f'<li><a href="{escape(name)}">{escape(name.removesuffix(".html"))}</a></li>'
        for name in pages
    )
    return f"<!DOCTYPE html><meta charset=utf-8><title>trimlang</title><ul>{links}</ul>".encode()


def _handler(preview: PreviewServer) -> type[BaseHTTPRequestHandler]:
    class Handler(BaseHTTPRequestHandler):
        timeout = 10

        def do_GET(self) -> None:
            # A page from elsewhere may have its own name resolve to our address (DNS rebinding) and
            # read the sheets: answer only to our own name.
            asked = self.headers.get("Host") == preview.host
            found = preview.answer(self.path) if asked else None
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
            """Say nothing: the terminal is for messages about the job."""

    return Handler
