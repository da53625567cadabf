"""Fills the templates: the shipped ones, or the user's own in their place.

A user's template runs in a sandbox and sees the same context as ours; what is
wrong in it is reported with file and line.  Where there is no such folder all
templates are ours and need no sandbox, which asks at every attribute.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, MutableMapping
from contextlib import nullcontext
from functools import cache
from importlib.machinery import SourceFileLoader
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING, Any, Final

from jinja2 import (
    BaseLoader,
    ChoiceLoader,
    DictLoader,
    Environment,
    FileSystemLoader,
    FunctionLoader,
    ModuleLoader,
    StrictUndefined,
    Template,
    TemplateNotFound,
    TemplateSyntaxError,
)
from jinja2 import __version__ as jinja_version
from jinja2.loaders import split_template_path

from trimlang import made_ahead
from trimlang.reading import UnreadableError, read_regular
from trimlang.resources import folder
from trimlang.sheets.render.template_limits import (
    MOST_SECONDS,
    BoundedEnvironment,
    TooMuchError,
    bounded,
)

if TYPE_CHECKING:
    from importlib.resources.abc import Traversable

    from trimlang.incremental.cache import Cache


_OPTIONS: Final[dict[str, Any]] = {
    "autoescape": True,
    "trim_blocks": True,
    "lstrip_blocks": True,
    "keep_trailing_newline": True,
}


class SheetTemplateError(Exception):
    """A template cannot be read or filled: ``file``, ``line`` and what is wrong."""

    def __init__(self, file: str, line: int, wrong: str) -> None:
        super().__init__(f"{file}:{line}: {wrong}" if line else f"{file}: {wrong}")
        self.file = file
        self.line = line
        self.wrong = wrong


class TemplateFiller:
    """Fills templates into sheets: those in the folder ``own`` first, then the shipped ones.

    ``drawings`` are those of an earlier set, which serve again where nothing of them has
    changed.  ``before_sheet`` is called before each sheet; what it raises ends the set.
    ``seconds`` of CPU time are what a sheet from a template of the user's may take.
    """

    def __init__(
        self,
        own: Path | None,
        *,
        drawings: Cache[Any] | None = None,
        before_sheet: Callable[[], None] | None = None,
        seconds: float = MOST_SECONDS,
    ) -> None:
        self.drawings = drawings
        self._own = own
        self._before_sheet = before_sheet
        self._seconds = seconds
        shipped = FunctionLoader(_shipped)
        loaders: list[BaseLoader] = [shipped]
        if own is not None:
            if not own.is_dir():
                raise SheetTemplateError(str(own), 0, "there is no such folder")
            loaders.insert(0, _InItsFolder(own))
        self._sources = ChoiceLoader(loaders)
        made = Environment if own is None else BoundedEnvironment
        self._env = _set_up(made, self._sources)
        if own is None and (ready := made_ahead.FOLDER / _compiled_name()).is_dir():
            # compiled for use outside the sandbox only
            self._env.loader = ChoiceLoader([_MadeAhead(ready), shipped])

    def source(self, name: str) -> str:
        """Return a file that is no template (the stylesheet), the user's own first.

        Raises:
            SheetTemplateError: it cannot be read.
        """
        try:
            return self._sources.get_source(self._env, name)[0]
        except (OSError, UnicodeDecodeError, TemplateNotFound) as error:
            raise SheetTemplateError(name, 0, str(error)) from None

    def fill(self, name: str, context: Mapping[str, object]) -> str:
        """Fill the template ``name``.

        Raises:
            SheetTemplateError: it cannot be read or filled.
        """
        # A printing is given up between two sheets, never within one.
        if self._before_sheet is not None:
            self._before_sheet()
        try:
            # What is ours needs no watch; it is large where the job is.
            with nullcontext() if self._own is None else bounded(self._seconds):
                return self._env.get_template(name).render(context)
        except SheetTemplateError:
            raise
        except TemplateSyntaxError as error:
            file = error.filename or error.name or name
            raise SheetTemplateError(file, error.lineno, error.message or "syntax") from None
        except TemplateNotFound as error:
            wrong = f"there is no template {error.name!r}"
            file, line = _where(error.__traceback__, name)
            raise SheetTemplateError(file, line, wrong) from None
        except UnicodeDecodeError:
            raise SheetTemplateError(name, 0, "is no UTF-8 text") from None
        except Exception as error:
            if self._own is None:
                raise  # a shipped template fails: a defect of ours, not of what was asked for
            file, line = _where(error.__traceback__, name)
            if isinstance(error, TooMuchError):
                raise SheetTemplateError(file, line, str(error)) from None
            if isinstance(error, MemoryError):
                raise SheetTemplateError(file, line, "makes more than memory holds") from None
            raise SheetTemplateError(file, line, f"{type(error).__name__}: {error}") from None


class _InItsFolder(FileSystemLoader):
    """Reads a user's templates, and nothing that a link in their folder leads out to."""

    def get_source(
        self,
        environment: Environment,  # noqa: ARG002 - as jinja2 calls it
        template: str,
    ) -> tuple[str, str, Callable[[], bool]]:
        """Return a template's text; see jinja2.

        Raises:
            SheetTemplateError: it is no regular file of the folder.
        """
        inside = Path(self.searchpath[0]).resolve()
        place = inside.joinpath(*split_template_path(template))
        if not place.exists():
            raise TemplateNotFound(template)
        target = place.resolve()
        if not target.is_relative_to(inside):
            raise SheetTemplateError(template, 0, "is a link that leads out of its folder")
        try:
            text = read_regular(target)
        except UnreadableError:
            raise SheetTemplateError(template, 0, "is no UTF-8 text, or too large") from None
        except OSError as error:
            raise SheetTemplateError(template, 0, error.strerror or str(error)) from None
        return text, str(place), lambda: True


class _MadeAhead(BaseLoader):
    """Takes the compiled templates from their files.

    Jinja's own loader makes a package of them, which stands in ``sys.modules`` as a reference that
    dies with the loader, and so at any moment while others walk through the modules.
    """

    has_source_access = False

    def __init__(self, ready: Path) -> None:
        self._ready = ready

    def load(
        self,
        environment: Environment,
        name: str,
        globals: MutableMapping[str, Any] | None = None,  # noqa: A002 - as jinja2 calls it
    ) -> Template:
        """Return a template; see jinja2."""
        path = self._ready / ModuleLoader.get_module_filename(name)
        if not path.is_file():
            raise TemplateNotFound(name)
        code = SourceFileLoader(path.stem, str(path)).get_code(path.stem)
        assert code is not None  # noqa: S101  it is Python
        return environment.template_class.from_code(environment, code, globals or {})


def _set_up(made: type[Environment], loader: BaseLoader) -> Environment:
    # Strict: a name that nothing has is an error, not an empty place on a ticket.
    return made(loader=loader, undefined=StrictUndefined, **_OPTIONS)


def make_compiled(into: Path) -> None:
    """Write all shipped templates as Python into a folder in ``into``, in jinja2's own form."""
    env = _set_up(Environment, DictLoader(_shipped_texts()))
    env.compile_templates(into / _compiled_name(), zip=None, ignore_errors=False)


def _compiled_name() -> str:
    # Named by all that the Python code was made from: a template or a jinja2 that has changed finds
    # no such folder, and is compiled again.
    named = (part for item in _shipped_texts().items() for part in item)
    return made_ahead.made_name("templates", jinja_version, repr(_OPTIONS), *named)


def _shipped_texts() -> dict[str, str]:
    return {name: _text(name) or "" for name in shipped_templates()}


def shipped_templates() -> tuple[str, ...]:
    """Return the names of the templates that are filled: sheets and their parts."""
    ours = folder("templates")
    return tuple(
        sorted(
            f"{under}{entry.name}"
            for under, place in (("", ours), ("parts/", ours / "parts"))
            for entry in place.iterdir()
            if entry.name.endswith((".html", ".svg"))
        )
    )


def _shipped(name: str) -> tuple[str, str, None] | None:
    """Find a template of ours, for jinja2."""
    text = _text(name)
    return None if text is None else (text, f"templates/{name}", None)


@cache
def _text(name: str) -> str | None:
    """Find a template of ours by its name, which has no way out of the folder."""
    place: Traversable = folder("templates")
    parts = name.split("/")
    if any(part in ("", ".", "..") for part in parts):
        return None
    for part in parts:
        place = place / part
    if not place.is_file():
        return None
    return place.read_text(encoding="utf-8")


def _where(trace: TracebackType | None, name: str) -> tuple[str, int]:
    """Return the innermost template line of a traceback."""
    found = (name, 0)
    while trace is not None:
        file = trace.tb_frame.f_code.co_filename
        # jinja2 rewrites tracebacks so that a template's frame has its file and line.
        if file.endswith((".html", ".svg", ".css", ".js")):
            found = (file, trace.tb_lineno)
        trace = trace.tb_next
    return found
