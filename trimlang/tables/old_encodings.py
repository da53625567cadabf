"""Reads a table that an older program saved in one of the system's own code pages.

Such a file does not say which page it is in.  What tells are the few signs beyond plain letters
that a survey has: a fraction, a degree or an inch mark stands right behind a figure, a letter
between other letters.  Only a page in which all of them make sense is believed.

Source of the pages: the Unicode Consortium's mapping tables, as Python's codecs have them.
"""

from __future__ import annotations

from typing import Final

from trimlang.record import record

_PAGES: Final = (
    ("cp1252", "Windows 1252, western Europe"),
    ("cp850", "code page 850, DOS in western Europe"),
    ("cp437", "code page 437, DOS"),
    ("cp1250", "Windows 1250, central Europe"),
)
"""Likelier ones first: of two in which everything makes sense, the first is taken."""

_BEHIND_A_FIGURE: Final = frozenset("¼½¾°²³ªº”“’′″")
_BETWEEN_WORDS: Final = frozenset("–—·•…«»“”„‘’\xa0§€£×±")
_PLAIN_LETTERS: Final = 127
_FIRST_LETTER, _LAST_LETTER = "À", "ž"
"""Between them lie the letters of Europe's Latin alphabets."""
_RUBBISH: Final = "ÿ"
"""The letter of the byte 255, which fills much that is no text, and stands in hardly a word."""


@record
class OldText:
    """A table's text, the page that it was read in, and a word that shows how it was read."""

    text: str
    page: str
    sample: str


def in_an_old_page(data: bytes) -> OldText | None:
    """Return a text in the old code page in which it makes sense, None where it does in none."""
    for codec, page in _PAGES:
        try:
            text = data.decode(codec)
        except UnicodeDecodeError:
            continue
        odd = [at for at, sign in enumerate(text) if ord(sign) > _PLAIN_LETTERS]
        if odd and all(_makes_sense(text, at) for at in odd):
            return OldText(text, page, _around(text, odd[0]))
    return None


def _makes_sense(text: str, at: int) -> bool:
    sign, before, after = text[at], text[at - 1 : at], text[at + 1 : at + 2]
    if sign.isalpha() and _FIRST_LETTER <= sign <= _LAST_LETTER and sign != _RUBBISH:
        # A capital stands at the beginning of a word, or in a word of capitals.
        within = before.isalpha() and (before.islower() or after.islower())
        capital = sign.isupper() and within
        return (before.isalpha() or after.isalpha()) and not before.isdigit() and not capital
    if sign in "¼½¾":
        return not before.isalpha()
    return sign in _BETWEEN_WORDS or (sign in _BEHIND_A_FIGURE and before.isdigit())


def _around(text: str, at: int) -> str:
    """Return the cell, or the part of it up to the next sign that parts cells, around a place."""
    parts = ',;\t\n\r"'
    begin = max(text.rfind(sign, 0, at) for sign in parts) + 1
    end = min((found for sign in parts if (found := text.find(sign, at)) >= 0), default=len(text))
    return text[begin:end].strip()
