"""Finds the grammar and the templates, in a checkout and when installed from a wheel."""

from __future__ import annotations

from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path


def folder(name: str) -> Traversable:
    """Return the shipped folder ``grammar`` or ``templates``.

    A wheel carries them inside the package; a checkout has them beside it.
    """
    inside = files("trimlang") / name
    if inside.is_dir():
        return inside
    return Path(__file__).resolve().parent.parent / name
