"""Finds the grammar, the templates and the docs, in a checkout and in an installed wheel."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from importlib.resources.abc import Traversable


@cache
def folder(name: str) -> Traversable:
    """Return the shipped folder ``grammar``, ``templates`` or ``docs``.

    A wheel carries them inside the package; a checkout has them beside it.
    """
    package = Path(__file__).resolve().parent
    # The package's own folder first: beside an installed package may lie a folder of the same name
    # that is somebody else's.
    for place in (package / name, package.parent / name):
        if place.is_dir():
            return place
    # Packed in an archive: rare, and what reads it is slow to load.
    from importlib.resources import files

    return files("trimlang") / name


@cache
def page_address(code: str, title: str) -> str | None:
    """Return the address of a diagnostic's page on this machine, None where it is not shipped."""
    page = folder("docs") / "diagnostics.md"
    if not isinstance(page, Path) or not page.is_file():
        return None
    # As a heading's anchor is made on the usual sites that show Markdown: small letters, hyphens
    # for blanks, no other signs.
    words = "".join(sign for sign in f"{code}: {title}".lower() if sign.isalnum() or sign in " -")
    return f"{page.as_uri()}#{words.replace(' ', '-')}"
