"""Frozen dataclasses that are quick to make: trimlang's passes have a hundred and fifty of them.

``dataclass`` writes the source of six methods for each class and compiles it, which came to a
tenth of every command's time.  Equality, hash and text are the same for all, so they are made
here without compiling anything.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, fields
from operator import attrgetter
from typing import Any, TypeVar, dataclass_transform

_Class = TypeVar("_Class")


@dataclass_transform(frozen_default=True, field_specifiers=(field,))
def record(cls: type[_Class]) -> type[_Class]:
    """Make a class a frozen dataclass with slots, as ``dataclass(frozen=True, slots=True)`` does.

    Records are equal where they are of one class and their fields are; what a class
    defines itself of ``__eq__``, ``__hash__`` and ``__repr__`` stays.
    """
    made: Any = dataclass(frozen=True, slots=True, eq=False, repr=False)(cls)
    compared = [one.name for one in fields(made) if one.compare]
    shown = [one.name for one in fields(made) if one.repr]
    values = _values(compared)
    for name, method in (
        ("__eq__", _equality(values)),
        ("__hash__", lambda self: hash(values(self))),
        ("__repr__", _text(shown)),
    ):
        if name not in cls.__dict__ or cls.__dict__[name] is None:
            setattr(made, name, method)
    return made  # type: ignore[no-any-return]


def _values(names: list[str]) -> Callable[[Any], object]:
    return attrgetter(*names) if names else lambda _: ()


def _equality(values: Callable[[Any], object]) -> Callable[[Any, object], object]:
    def equal(self: Any, other: object) -> object:
        if self is other:
            return True
        if other.__class__ is not self.__class__:
            return NotImplemented
        return values(self) == values(other)

    return equal


def _text(names: list[str]) -> Callable[[Any], str]:
    def text(self: Any) -> str:
        inner = ", ".join(f"{name}={getattr(self, name)!r}" for name in names)
        return f"{self.__class__.__qualname__}({inner})"

    return text
