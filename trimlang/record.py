"""Frozen dataclasses that are quick to define: a check of a job defines some 200 of them.

``dataclass`` writes the source of eight methods for each class and compiles it, which took an
eighth of every command's time.  All but ``__init__`` are the same for every record, so all share
them; and what an ``__init__`` is compiled to is the same for all classes of as many fields.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import MISSING, Field, FrozenInstanceError, dataclass, field, fields
from functools import cache
from operator import attrgetter
from types import CodeType, FunctionType
from typing import Any, Final, NoReturn, TypeVar, dataclass_transform

_Class = TypeVar("_Class")


@dataclass_transform(frozen_default=True, field_specifiers=(field,))
def record(cls: type[_Class]) -> type[_Class]:
    """Make a class a frozen dataclass with slots, like ``dataclass(frozen=True, slots=True)``.

    Two records are equal where their classes are the same and their fields are equal.  A class
    that defines ``__eq__``, ``__hash__`` or ``__repr__`` itself keeps its own.
    """
    own = _fields_of(cls)
    inherited: dict[str, Field[Any]] = {}
    for base in reversed(cls.__mro__[1:]):
        inherited |= base.__dict__.get("__dataclass_fields__", {})
    left_out = {*own, "__dict__", "__weakref__"}
    # All at once: a class whose methods are set one by one is worked over at each.
    body = {name: value for name, value in cls.__dict__.items() if name not in left_out}
    # Python sets ``__hash__`` to None in a class that defines ``__eq__``.
    said = {name: value for name, value in body.items() if value is not None}
    body |= _SHARED | {name: said[name] for name in _MAY_BE_OWN if name in said}
    body["__qualname__"] = cls.__qualname__
    body["__slots__"] = tuple(name for name in own if name not in inherited)
    body["__dataclass_fields__"] = every = inherited | own
    body["__match_args__"] = tuple(name for name, one in every.items() if not one.kw_only)
    make: Any = type(cls)
    return make(cls.__name__, cls.__bases__, body)  # type: ignore[no-any-return]


@dataclass(init=False, repr=False, eq=False)
class _Plain:
    """What a plain field is like, as the standard library makes one."""

    one: object


_PLAIN: Final[Any] = fields(_Plain)[0]


def _fields_of(cls: type) -> dict[str, Field[Any]]:
    """Return the fields that a class states itself, as ``dataclass`` makes them of their texts."""
    own: dict[str, Field[Any]] = {}
    by_keyword = False
    for name, said in cls.__annotations__.items():
        if said == "KW_ONLY":
            by_keyword = True
            continue
        default = cls.__dict__.get(name, MISSING)
        one: Any = default if isinstance(default, Field) else field(default=default)
        one.name, one.type, one.kw_only = name, said, by_keyword
        # A record has no fields of the other kinds, class variables and what only __init__ takes.
        one._field_type = _PLAIN._field_type
        own[name] = one
    return own


def _init(self: Any, *values: Any, **named: Any) -> None:
    """Give the class its own ``__init__``, at its first record: not all classes have one."""
    made: Any = self.__class__
    made.__init__ = _init_of(made)
    made.__init__(self, *values, **named)


def _init_of(made: Any) -> Callable[..., None]:
    """Return the ``__init__`` of a class, as quick as if it were written out.

    It is what those of all classes with as many fields are, but for the names of its parameters.
    """
    # Keyword-only fields come last, behind the "*".
    taken = sorted(fields(made), key=lambda one: bool(one.kw_only))
    by_name_alone = sum(bool(one.kw_only) for one in taken)
    code = _setting(len(taken)).replace(
        co_argcount=1 + len(taken) - by_name_alone,
        co_kwonlyargcount=by_name_alone,
        co_varnames=("self", *(one.name for one in taken)),
    )
    init = FunctionType(code, {f"put{place}": _put(made, one) for place, one in enumerate(taken)})
    # Of a field that is to have a new value in each record, the default is that none is given.
    may_lack = [one for one in taken if one.default_factory is not one.default]
    init.__defaults__ = tuple(one.default for one in may_lack if not one.kw_only)
    init.__kwdefaults__ = {one.name: one.default for one in may_lack if one.kw_only}
    init.__qualname__ = f"{made.__qualname__}.__init__"
    return init


@cache
def _setting(count: int) -> CodeType:
    """Return the code that sets so many fields: compiling it takes longer than making a class."""
    values = [f"value{place}" for place in range(count)]
    puts = [f" put{place}(self, {value})" for place, value in enumerate(values)]
    text = f"def __init__({', '.join(['self', *values])}):\n" + "\n".join(puts or [" pass"])
    known: dict[str, Any] = {}
    exec(text, known)  # noqa: S102 - nothing from outside is in it
    code: CodeType = known["__init__"].__code__
    return code


def _put(made: Any, one: Field[Any]) -> Callable[[Any, Any], None]:
    """Return what sets a field: its slot's own way, which gets past the frozen class."""
    put: Callable[[Any, Any], None] = getattr(made, one.name).__set__
    new = one.default_factory
    if new is MISSING:
        return put
    return lambda self, value: put(self, new() if value is MISSING else value)


def _refused(self: Any, name: str, *_: object) -> NoReturn:
    raise FrozenInstanceError(f"cannot change field {name!r} of {self.__class__.__qualname__}")


def _state(self: Any) -> list[Any]:
    return [getattr(self, one.name) for one in fields(self)]


def _restored(self: Any, state: list[Any]) -> None:
    for one, value in zip(fields(self), state, strict=True):
        object.__setattr__(self, one.name, value)


@cache
def _values(of: Any) -> Callable[[Any], object]:
    """Return what gives the values that count where two records of a class are compared."""
    names = [one.name for one in fields(of) if one.compare]
    return attrgetter(*names) if names else lambda _: ()


def _equal(self: Any, other: object) -> object:
    if self is other:
        return True
    # Python then asks the other value, and takes the two for unequal if that knows no better.
    if other.__class__ is not self.__class__:
        return NotImplemented
    made: Any = self.__class__
    values = _values(made)
    return values(self) == values(other)


def _hash(self: Any) -> int:
    made: Any = self.__class__
    return hash(_values(made)(self))


def _text(self: Any) -> str:
    inner = ", ".join(f"{one.name}={getattr(self, one.name)!r}" for one in fields(self) if one.repr)
    return f"{self.__class__.__qualname__}({inner})"


_MAY_BE_OWN: Final = ("__eq__", "__hash__", "__repr__")
_SHARED: Final[dict[str, object]] = {
    "__init__": _init,
    "__eq__": _equal,
    "__hash__": _hash,
    "__repr__": _text,
    "__setattr__": _refused,
    "__delattr__": _refused,
    # pickle, which carries records to workers, would set the slots one by one, and be refused.
    "__getstate__": _state,
    "__setstate__": _restored,
}
"""The methods of every record."""
