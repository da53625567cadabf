"""How a wall ends, as a list says it in a cell: in the language's words, or in another tongue.

Only what is known is read.  A guess would make an outside corner an inside one without a word.
"""

from __future__ import annotations

import re
from types import MappingProxyType
from typing import Final

from trimlang.diagnostics import has_errors
from trimlang.language.facts import AtEnd
from trimlang.language.parse import read_line
from trimlang.language.tree import RunLine
from trimlang.tables.list_words import plain

_ENDS: Final = MappingProxyType(
    {
        word: joint
        for joint, words in {
            "in-corner": "interior, internal, inner, int, innen, innenecke, inneneck, innenwinkel,"
            " innere ecke, interna, interno, dentro, adentro, rincon, esquina interior, interieur,"
            " interieure, rentrant, angle rentrant, coin interieur, angolo interno, binnen,"
            " binnenhoek",
            "out-corner": "exterior, external, outer, ext, aussen, aussenecke, ausseneck,"
            " aussenwinkel, aussere ecke, externa, externo, fuera, afuera, esquina exterior,"
            " exterieur, exterieure, saillant, angle saillant, coin exterieur, esterno, esterna,"
            " angolo esterno, buiten, buitenhoek, fora",
            "butt": "square, butted, stumpf, tope, a tope, droit, bout a bout",
            "return": "returned, retorno, retour, ritorno",
            "open": "free, frei, offen, abierto, libre, ouvert, aperto, libero",
        }.items()
        for word in words.split(", ")
    }
)
"""Words for ends that the language does not read itself, from everyday dictionaries, from memory.

“Esquina” alone, “corner” and “Gehrung” say not which corner, and are asked about.
"""

_NOTHING: Final = frozenset({"", "-", "–", "—", "n/a", "?"})
_WITH_ANGLE: Final = re.compile(
    r"(?P<word>[^\W\d_][^\d()]*?)[\s(,]*(?P<angle>\d+(?:[.,]\d+)?)?\s*(?:deg|degrees|grad|°)?\)?\.?"
)


def says_nothing(text: str) -> bool:
    """Tell whether a cell leaves the end to be asked."""
    return text.strip() in _NOTHING


def end_of(text: str) -> str | None:
    """Return an end as a job file writes it, None where the cell's text is not understood.

    >>> end_of("in-corner(91 deg)"), end_of("Außenecke 91,5°"), end_of("Gehrung")
    ('in-corner(91 deg)', 'out-corner(91.5)', None)
    """
    written = " ".join(text.split())
    if _is_an_end(written):
        return written
    found = _WITH_ANGLE.fullmatch(written)
    if found is None:
        return None
    word, angle = plain(found["word"]).strip(" .-"), found["angle"]
    joint = _ENDS.get(word.replace("-", " "), _ENDS.get(word.replace("-", ""), word))
    end = joint + (f"({angle.replace(',', '.')})" if angle else "")
    return end if _is_an_end(end) else None


def _is_an_end(text: str) -> bool:
    if "#" in text:
        return False
    statement, problems = read_line(f"X: 1 in, left={text}", "x", 1)
    return (
        isinstance(statement, RunLine)
        and not has_errors(problems)
        and len(statement.facts) == 1
        and isinstance(statement.facts[0], AtEnd)
    )
