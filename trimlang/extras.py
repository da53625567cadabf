"""Libraries that only some uses of trimlang need, and how to install them.

``pyproject.toml`` lists them as extras.  trimlang may be installed from a checkout or a wheel,
and no package index need know it, so ``pip install trimlang[...]`` may not work.  A message
therefore names the library itself, and the Python that lacks it.
"""

from __future__ import annotations

import shlex
import sys

from trimlang.record import record


@record
class Extra:
    """A use of trimlang that needs one more library: its name, and the modules it brings."""

    name: str
    use: str
    library: str
    modules: tuple[str, ...]

    def lacks(self, error: ModuleNotFoundError) -> bool:
        """Whether an import failed because this library is missing, and for no other reason."""
        # Another module that fails within the library is a fault in it; to install it again would
        # not help.
        return (error.name or "").partition(".")[0] in self.modules

    def remedy(self) -> str:
        """Return what is missing and the command that installs it, on one line.

        >>> WATCH.remedy()  # doctest: +SKIP
        "--watch needs watchfiles: .venv/bin/python -m pip install 'watchfiles<2,>=1.0'"
        """
        command = [sys.executable, "-m", "pip", "install", self._wanted()]
        return f"{self.use} needs {self.library}: {shlex.join(command)}"

    def _wanted(self) -> str:
        """Return the library with the versions that trimlang works with, as pip wants it."""
        # Imported here: slow to load, and needed only when something is missing.
        from importlib.metadata import PackageNotFoundError, requires

        try:
            listed = requires("trimlang") or []
        except PackageNotFoundError:  # run from a folder, not installed
            listed = []
        rows = (row.partition(";") for row in listed)
        ours = f"extra == '{self.name}'"
        return next(
            (wanted.strip() for wanted, _, when in rows if when.strip().replace('"', "'") == ours),
            self.library,
        )


DRAWING = Extra(name="drawing", use="DXF", library="ezdxf", modules=("ezdxf",))
EDITOR = Extra(
    name="editor",
    use="the language server",
    library="pygls",
    modules=("pygls", "lsprotocol"),
)
WATCH = Extra(name="watch", use="--watch", library="watchfiles", modules=("watchfiles", "anyio"))
