"""The words of the sheets, in English or from a message catalogue."""

from __future__ import annotations

import gettext
import re
from functools import cache, lru_cache
from io import BytesIO
from typing import Final

from trimlang.marking import N_
from trimlang.resources import folder

ENGLISH: Final = "en"


NO_BREAK: Final = "\xa0"
_BREAKS: Final = re.compile(r"(?<=\d) (?=\d+/\d|(?:in|ft|mm|m)\b)")


# Limited, as not only the sheets' own words come here but also what jobs say, without end.
@lru_cache(maxsize=4096)
def unbroken(text: str) -> str:
    """Return a text whose numbers hold together: no line ends within one, or before its unit."""
    return _BREAKS.sub(NO_BREAK, text)


class UnknownLanguageError(ValueError):
    """There is no catalogue for that language."""


class Words:
    """Says the sheets' words in one language: ``words("cut {n} of {all}", n=1, all=3)``.

    The English text is the key, so a message that a catalogue lacks still reads.
    """

    def __init__(self, language: str, catalogue: gettext.NullTranslations) -> None:
        self.language = language
        self._catalogue = catalogue
        # A catalogue says how its language writes figures by writing this one.
        sample = catalogue.gettext(N_("1,234.5"))
        self._marks = str.maketrans({",": sample[1], ".": sample[-2]})

    def __call__(self, text: str, **facts: object) -> str:
        """Say a text, its ``{names}`` filled in."""
        said = unbroken(self._catalogue.gettext(text))
        # Without facts the text is not a pattern: a brace in it is a brace.
        return said.format(**facts) if facts else said

    def figures(self, text: str) -> str:
        """Write figures (``1,234.50``, ``44.5°``) as the language does: ``1.234,50``, ``44,5°``."""
        return text.translate(self._marks)


@cache
def words_in(language: str) -> Words:
    """Return the words of a language by its code (``en``, ``es``).

    Raises:
        UnknownLanguageError: no catalogue is shipped for it.
    """
    # English needs no file: its texts are the keys themselves.
    if language == ENGLISH:
        return Words(ENGLISH, gettext.NullTranslations())
    if language not in languages():
        known = ", ".join(languages())
        raise UnknownLanguageError(f"no sheets in {language!r}; there are: {known}")
    data = (folder("templates") / "words" / f"{language}.mo").read_bytes()
    return Words(language, gettext.GNUTranslations(BytesIO(data)))


def languages() -> tuple[str, ...]:
    """Return the codes of the languages that the sheets speak."""
    shipped = folder("templates") / "words"
    names = [entry.name for entry in shipped.iterdir()] if shipped.is_dir() else []
    return (ENGLISH, *sorted(name.removesuffix(".mo") for name in names if name.endswith(".mo")))
