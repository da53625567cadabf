"""Finds what the libraries worked out ahead, when trimlang was built or installed.

Lark reads the grammar, jinja2 compiles the templates and pint works out the units.  That takes
longer than all the rest of ``trimlang check``, so ``hatch_build.py`` has them do it once and
writes the results into this package.  The name of each result holds a digest of everything that
it was made from, with the library's version.  So a result that is out of date is not found under
the name that is looked for, and the library does its work at once.
"""

from __future__ import annotations

from hashlib import sha256
from pathlib import Path
from typing import Final

FOLDER: Final = Path(__file__).with_name("made")
"""The folder of the results; the build writes it, and it is never kept in git."""


def made_name(what: str, *sources: str) -> str:
    """Return the name of a result made from these texts and versions: ``grammar-1f0c...``."""
    # With each length, so that moving a character from one text to the next gives another digest.
    digest = sha256("".join(f"{len(source)}:{source}" for source in sources).encode())
    return f"{what}-{digest.hexdigest()[:16]}"
