"""Where the work lies that the libraries did ahead, when trimlang was built or installed.

Lark reads the grammar, jinja2 compiles the templates and pint works out the units.  That
takes them longer than all the rest of ``trimlang check``, so ``hatch_build.py`` has them do
it once and writes what they made into this package.  Each thing's name holds a digest of
all that it was made from, the library's version too: what is out of date is not found
under the name that is looked for, and the library does its work there and then.
"""

from __future__ import annotations

from hashlib import sha256
from pathlib import Path
from typing import Final

FOLDER: Final = Path(__file__).with_name("made")
"""Written by the build and never kept in git."""


def made_name(what: str, *sources: str) -> str:
    """Return the name of what was made from these texts and versions: ``grammar-1f0c...``."""
    digest = sha256("".join(f"{len(source)}:{source}" for source in sources).encode())
    return f"{what}-{digest.hexdigest()[:16]}"
