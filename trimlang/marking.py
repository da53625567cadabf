"""Marks texts that sheets say in other languages, in code that does not know the language."""

from __future__ import annotations


def N_(text: str) -> str:  # noqa: N802 - gettext's own name for "collect, translate later"
    """Return the text as it is, marked for the catalogues; it is translated where it is used."""
    return text
