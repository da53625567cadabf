"""Fills the templates: the shipped ones, or the user's own in their place.

A user's template runs in a sandbox and sees the same context as ours; what is
wrong in it is reported with file and line.  Where there is no such folder all
templates are ours and need no sandbox, which asks at every attribute.
"""

from __future__ import annotations

from collections.abc import Mapping
from importlib.resources.abc import Traversable
from pathlib import Path
from types import TracebackType

from jinja2 import (
    BaseLoader,
    ChoiceLoader,
    Environment,
    FileSystemLoader,
    FunctionLoader,
    StrictUndefined,
    TemplateNotFound,
    TemplateSyntaxError,
)
from jinja2.sandbox import ImmutableSandboxedEnvironment

from trimlang.resources import folder


class SheetTemplateError(Exception):
    """A template cannot be read or filled: ``file``, ``line`` and what is wrong."""

    def __init__(self, file: str, line: int, wrong: str) -> None:
        super().__init__(f"{file}:{line}: {wrong}" if line else f"{file}: {wrong}")
        self.file = file
        self.line = line
        self.wrong = wrong


class Press:
    """Prints sheets from templates: those in the folder ``own`` first, then the shipped ones."""

    def __init__(self, own: Path | None) -> None:
        loaders: list[BaseLoader] = [FunctionLoader(_shipped)]
        if own is not None:
            if not own.is_dir():
                raise SheetTemplateError(str(own), 0, "there is no such folder")
            loaders.insert(0, FileSystemLoader(own))
        made = Environment if own is None else ImmutableSandboxedEnvironment
        self._env = made(
            loader=ChoiceLoader(loaders),
            autoescape=True,
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
            keep_trailing_newline=True,
        )

    def source(self, name: str) -> str:
        """Return a file that is no template (the stylesheet), the user's own first.

        Raises:
            SheetTemplateError: it cannot be read.
        """
        try:
            loader = self._env.loader
            return loader.get_source(self._env, name)[0] if loader else ""
        except (OSError, UnicodeDecodeError, TemplateNotFound) as error:
            raise SheetTemplateError(name, 0, str(error)) from None

    def sheet(self, name: str, context: Mapping[str, object]) -> str:
        """Fill the template ``name``.

        Raises:
            SheetTemplateError: it cannot be read or filled.
        """
        try:
            return self._env.get_template(name).render(context)
        except TemplateSyntaxError as error:
            file = error.filename or error.name or name
            raise SheetTemplateError(file, error.lineno, error.message or "syntax") from None
        except TemplateNotFound as error:
            wrong = f"there is no template {error.name!r}"
            file, line = _where(error.__traceback__, name)
            raise SheetTemplateError(file, line, wrong) from None
        except UnicodeDecodeError:
            raise SheetTemplateError(name, 0, "is no UTF-8 text") from None
        except Exception as error:  # noqa: BLE001 - whatever a user's template does is its fault
            file, line = _where(error.__traceback__, name)
            raise SheetTemplateError(file, line, f"{type(error).__name__}: {error}") from None


def _shipped(name: str) -> tuple[str, str, None] | None:
    """Find a template of ours by its name, which has no way out of the folder."""
    place: Traversable = folder("templates")
    parts = name.split("/")
    if any(part in ("", ".", "..") for part in parts):
        return None
    for part in parts:
        place = place / part
    if not place.is_file():
        return None
    return place.read_text(encoding="utf-8"), f"templates/{name}", None


def _where(trace: TracebackType | None, name: str) -> tuple[str, int]:
    """Return the innermost template line of a traceback."""
    found = (name, 0)
    while trace is not None:
        file = trace.tb_frame.f_code.co_filename
        if file.endswith((".html", ".svg", ".css", ".js")):
            found = (file, trace.tb_lineno)
        trace = trace.tb_next
    return found
