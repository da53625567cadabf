"""Compares values by what they mean, whatever place in a file they come from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from typing import Any

from trimlang.diagnostics import Span


def meaning(value: Any) -> Any:
    """Return plain data that is equal for equal meanings: the value with its places left out."""
    if isinstance(value, Span):
        return None
    # The class's name counts: two facts with equal fields may mean different things.
    if is_dataclass(value) and not isinstance(value, type):
        said = [meaning(getattr(value, one.name)) for one in fields(value)]
        return (type(value).__name__, *said)
    if isinstance(value, tuple | list):
        return tuple(meaning(one) for one in value)
    if isinstance(value, Mapping):
        return {key: meaning(one) for key, one in value.items()}
    return value


def same_meaning(one: Any, other: Any) -> bool:
    """Tell whether two values differ in nothing but their places in their files."""
    return bool(meaning(one) == meaning(other))
