"""The sizes that are nested, grouped by how they are laid."""

from __future__ import annotations

from typing import Any

from trimlang.record import record


@record
class Single:
    """A size laid once at most, and the sets of such sizes with and without it, as arrays."""

    size: int
    with_it: Any
    without: Any


@record
class Group:
    """Sizes whose two ends lean alike: their weights and values, as arrays."""

    left: int
    right: int
    members: tuple[int, ...]
    weights: Any
    values: Any
