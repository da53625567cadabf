"""Plates: the shipped templates as Python, so that no build has to compile them again.

``python -m trimlang.sheets.render.template_filling`` makes them in ``trimlang/sheets/plate/``,
and a test tells when that was forgotten.  A plate is only used for the very text that it was made
from, by the jinja2 that made it; otherwise the template itself is read, which takes
longer and prints the same.
"""

from __future__ import annotations

from collections.abc import Callable, MutableMapping
from hashlib import sha256
from importlib import import_module
from pathlib import Path
from typing import Any, Final

from jinja2 import BaseLoader, Environment, Template, TemplateNotFound
from jinja2 import __version__ as jinja_version

PLATES: Final = Path(__file__).parent.parent / "plate"


class PlateLoader(BaseLoader):
    """Loads a template from its plate; without one jinja2 goes on to the next loader.

    ``source`` gives a template's text by its name, None where there is no such template.
    """

    def __init__(self, source: Callable[[str], str | None]) -> None:
        self._source = source

    def load(
        self,
        environment: Environment,
        name: str,
        globals: MutableMapping[str, Any] | None = None,  # noqa: A002 - jinja2's own name
    ) -> Template:
        """Return the template.

        Raises:
            TemplateNotFound: there is no plate of the template as it stands.
        """
        text = self._source(name)
        if text is None or not (PLATES / f"{module_name(name)}.py").is_file():
            raise TemplateNotFound(name)
        plate = import_module(f"trimlang.sheets.plate.{module_name(name)}")
        if made_from(text) != plate.MADE_FROM:
            raise TemplateNotFound(name)
        made = environment.template_class.from_module_dict
        return made(environment, plate.__dict__, {} if globals is None else globals)


def module_name(template: str) -> str:
    """Return the name of a template's plate: ``parts_page_html``."""
    return "".join(letter if letter.isalnum() else "_" for letter in template)


def made_from(text: str) -> str:
    """Return what a plate must be made from to serve: this jinja2 and this text."""
    return sha256(f"{jinja_version}\n{text}".encode()).hexdigest()


def plate_text(environment: Environment, name: str, text: str) -> str:
    """Return the plate of a template as the text of a module."""
    code = environment.compile(text, name, f"templates/{name}", raw=True, defer_init=True)
    return f"MADE_FROM = {made_from(text)!r}\n{code.rstrip()}\n"
