"""Finds the known word that an unknown one is probably a slip for."""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from itertools import islice
from typing import Final

# Comparing two words takes some microseconds, and both the wrong words and the known ones may be
# thousands: above this many known ones the quick way is taken.
MOST_COMPARED: Final = 100
MOST_LISTED: Final = 12
_LONGEST_WORD: Final = 60
"""Letters of a name that are compared: comparing grows with their square."""


def nearest(word: str, known: list[str] | tuple[str, ...]) -> str | None:
    """Return the known word that ``word`` is most likely a slip for, if one is near.

    Among many words only a single slip of a key is looked for: comparing each unknown word with
    each known one would take minutes for a large file.
    """
    if len(known) > MOST_COMPARED:
        return _one_slip_away(word, tuple(known))
    from difflib import get_close_matches

    # A name in other capitals is not a slip to the language, but the suggestion must have its own
    # spelling.
    by_fold = {candidate.casefold(): candidate for candidate in known}
    close = get_close_matches(word.casefold()[:_LONGEST_WORD], list(by_fold), n=1, cutoff=0.6)
    return by_fold[close[0]] if close else None


def _one_slip_away(word: str, known: tuple[str, ...]) -> str | None:
    """Return a known word that ``word`` is with one letter added, lost, changed or swapped."""
    found = _with_a_letter_less(known)
    ways = _letter_less(word.casefold()[:_LONGEST_WORD])
    return next((found[way] for way in ways if way in found), None)


# A file asks about the same few lists over and over: its trims, its pieces.
@lru_cache(maxsize=4)
def _with_a_letter_less(known: tuple[str, ...]) -> dict[str, str]:
    found: dict[str, str] = {}
    for candidate in known:
        for way in _letter_less(candidate.casefold()[:_LONGEST_WORD]):
            found.setdefault(way, candidate)
    return found


def _letter_less(word: str) -> list[str]:
    """Return a word, and all that is left of it when one letter is taken out.

    Two words share one of these where a single slip turns one into the other.
    """
    return [word, *(word[:at] + word[at + 1 :] for at in range(len(word)))]


def listed(names: Iterable[str]) -> str:
    """List names in quotes for a remedy; only the first ``MOST_LISTED`` where there are more."""
    first = list(islice(names, MOST_LISTED + 1))
    more = [" and others"] if len(first) > MOST_LISTED else []
    return ", ".join(f"“{name}”" for name in first[:MOST_LISTED]) + "".join(more)
