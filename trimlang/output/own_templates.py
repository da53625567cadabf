"""Checks whether a folder of the user's own templates can be used."""

from __future__ import annotations

from difflib import get_close_matches
from pathlib import Path
from typing import TYPE_CHECKING

from trimlang.resources import folder

if TYPE_CHECKING:
    from importlib.resources.abc import Traversable


def unusable(templates: Path | None) -> str | None:
    """Say why a folder of templates cannot be used; None where it can, or none is given.

    A folder without any name that trimlang asks for would change nothing, so it is refused.
    """
    if templates is None:
        return None
    if not templates.is_dir():
        return f"there is no folder {templates}"
    shipped = _files(folder("templates"))
    own = _files(templates)
    # An empty folder is no mistake in a name.
    if not own or own & shipped:
        return None
    first = min(own)
    close = get_close_matches(first, sorted(shipped), n=1, cutoff=0.8)
    instead = f"; is {first} meant to be {close[0]}?" if close else ", such as tickets.html"
    return f"no file in {templates} has the name of a template{instead}"


def _files(place: Traversable, before: str = "") -> set[str]:
    """Return the names of the templates in a folder and in the folders within it."""
    found: set[str] = set()
    for entry in place.iterdir():
        name = before + entry.name
        if entry.is_dir():
            found |= _files(entry, f"{name}/")
        elif name.endswith((".html", ".css", ".svg")):
            found.add(name)
    return found
