"""Finds the grammar and the templates, in a checkout and when installed from a wheel."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path


def folder(name: str) -> Traversable:
    """Return the shipped folder ``grammar``, ``templates`` or ``docs``.

    A wheel carries them inside the package; a checkout has them beside it.
    """
    inside = files("trimlang") / name
    if inside.is_dir():
        return inside
    return Path(__file__).resolve().parent.parent / name


@cache
def page_address(code: str, title: str) -> str | None:
    """Return the address of a diagnostic's page on this machine, None where it is not shipped."""
    page = folder("docs") / "diagnostics.md"
    if not isinstance(page, Path) or not page.is_file():
        return None
    words = "".join(sign for sign in f"{code}: {title}".lower() if sign.isalnum() or sign in " -")
    return f"{page.as_uri()}#{words.replace(' ', '-')}"
