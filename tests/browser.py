"""Chromium without a window, driven over two pipes: opens a page and asks it things."""

from __future__ import annotations

import json
import shutil
import subprocess
from pathlib import Path
from time import monotonic, sleep
from typing import Any

CHROMIUM = shutil.which("chromium") or shutil.which("google-chrome")
PATIENCE = 60
"""Seconds until a test gives up; a busy machine is no failure."""

_OPTIONS = (
    "--headless --no-sandbox --disable-gpu --no-first-run --disable-background-networking"
    " --disable-component-update --disable-sync --disable-extensions --remote-debugging-pipe"
).split()

# null where a page may keep nothing, as about:blank
_KEPT = """(() => {
  try { return JSON.stringify([location.origin, Object.entries(localStorage).sort()]); }
  catch (error) { return null; }
})()"""


class Browser:
    """A browser with one page at a time; ``with Browser(profile) as page``."""

    def __init__(self, profile: Path) -> None:
        assert CHROMIUM
        # it reads what to do from its third pipe and answers on the fourth
        own = ["sh", "-c", 'exec "$@" 3<&0 4>&1 </dev/null >/dev/null', "sh", CHROMIUM]
        self._process = subprocess.Popen(
            [
                *own,
                *_OPTIONS,
                "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1",
                f"--user-data-dir={profile}",
            ],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
        )
        self._number = 0
        self._session: str | None = None
        self._visit: str | None = None

    def __enter__(self) -> Browser:
        return self

    def __exit__(self, *_: object) -> None:
        self._process.kill()
        self._process.wait()
        for pipe in (self._process.stdin, self._process.stdout):
            assert pipe
            pipe.close()

    def forget(self) -> None:
        """Let the next page find nothing of what the pages before it have kept."""
        self._session = None
        if self._visit is not None:
            self.ask("Target.disposeBrowserContext", browserContextId=self._visit)
            self._visit = None

    def open(self, address: str, *, dark: bool = False, size: tuple[int, int] = (800, 600)) -> None:
        """Open a page in the place of the last one, and wait until it is loaded."""
        kept = None
        if self._session is None:
            self._visit = self.ask("Target.createBrowserContext")["browserContextId"]
            target = self.ask(
                "Target.createTarget", url="about:blank", browserContextId=self._visit
            )["targetId"]
            attached = self.ask("Target.attachToTarget", targetId=target, flatten=True)
            self._session = attached["sessionId"]
        else:
            kept = self.value(_KEPT)
        wide, tall = size
        self.ask(
            "Emulation.setDeviceMetricsOverride",
            width=wide, height=tall, deviceScaleFactor=1, mobile=False,
        )  # fmt: skip
        scheme = {"name": "prefers-color-scheme", "value": "dark" if dark else "light"}
        self.ask("Emulation.setEmulatedMedia", features=[scheme])
        self._go(address)
        if kept is None:
            return
        # What a page has kept is on its way to the browser's own process when the page goes, and
        # may be lost on a busy machine. It is put back, and the page starts anew where it is.
        origin, items = json.loads(kept)
        found = self.value(_KEPT)
        if items and found not in (None, kept) and json.loads(found)[0] == origin:
            self.value(
                f"for (const [name, held] of {json.dumps(items)}) localStorage.setItem(name, held);"
                " window.gone = true"
            )
            self.ask("Page.reload")
            self._until("!window.gone && document.readyState === 'complete'", address)

    def save_to(self, folder: Path) -> None:
        """Let the page that is open save files there."""
        self.ask(
            "Browser.setDownloadBehavior",
            behavior="allow", browserContextId=self._visit, downloadPath=str(folder),
        )  # fmt: skip

    def _go(self, address: str) -> None:
        for place in ("about:blank", address):  # so that it is seen when the old page is gone
            self.ask("Page.navigate", url=place)
            there = f"(location.href === 'about:blank') === {str(place == 'about:blank').lower()}"
            self._until(f"{there} && document.readyState === 'complete'", place)

    def _until(self, held: str, address: str) -> None:
        ends = monotonic() + PATIENCE
        while not self.value(held):
            assert monotonic() < ends, address
            sleep(0.01)

    def text(self) -> str:
        """Return what a reader of the page reads."""
        text = self.value("document.body ? document.body.innerText : ''") or ""
        # between a number and its unit stands a blank at which no line breaks
        return str(text).replace("\xa0", " ")

    def value(self, script: str, *, tapped: bool = False) -> Any:
        """Return what a script says in the page, or promises; None while the page is loaded.

        ``tapped`` lets it do what a page may do only when its reader taps on it.
        """
        said = self.ask(
            "Runtime.evaluate",
            expression=script,
            returnByValue=True,
            awaitPromise=True,
            userGesture=tapped,
        )
        return said.get("result", {}).get("value")

    def until(self, words: str, *, gone: bool = False) -> str:
        """Wait until a reader reads these words, or no longer does; return the page's text."""
        ends = monotonic() + PATIENCE
        while (words in (text := self.text())) == gone:
            assert monotonic() < ends, text
            sleep(0.02)
        return text

    def ask(self, what: str, **how: Any) -> dict[str, Any]:
        """Send a command of the DevTools protocol and return its answer."""
        pipe, answers = self._process.stdin, self._process.stdout
        assert pipe
        assert answers
        self._number += 1
        asked: dict[str, Any] = {"id": self._number, "method": what, "params": how}
        if self._session is not None:
            asked["sessionId"] = self._session
        pipe.write(json.dumps(asked).encode() + b"\0")
        pipe.flush()
        while True:
            said = json.loads(_message(answers))
            if said.get("id") == self._number:
                found: dict[str, Any] = said.get("result", {})
                return found


def _message(answers: Any) -> bytes:
    """Read what stands before the next zero."""
    parts = bytearray()
    while (sign := answers.read(1)) != b"\0":
        assert sign, "the browser has ended"
        parts += sign
    return bytes(parts)
