"""Frozen dataclasses that are quick to define: a check of a job defines some 200 of them.

``dataclass`` writes the source of eight methods for each class and compiles it, which took an
eighth of every command's time.  All but ``__init__`` are the same for every record, so all share
them; and an ``__init__`` is compiled where a class has many records.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import MISSING, Field, FrozenInstanceError, dataclass, field, fields
from functools import cache
from operator import attrgetter
from typing import Any, Final, NoReturn, TypeVar, dataclass_transform

_Class = TypeVar("_Class")

_FEW: Final = 15
"""So many records are made before a class's own ``__init__`` is compiled."""


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


def _plain_init(self: Any, *values: Any, **named: Any) -> None:
    """Set field after field; replaced in a class of many records.

    Compiling an ``__init__`` takes as long as setting the fields of some thirty records, and in a
    check of a whole house three classes of four have fewer.
    """
    made: Any = self.__class__
    of = _signature(made)
    of.made_so_far += 1
    given = dict(zip(of.in_order, values, strict=False)) | named
    each_once = len(given) == len(values) + len(named)
    if of.made_so_far > _FEW or not (each_once and of.needed <= given.keys() <= of.allowed):
        # A wrong call is compiled too: Python then says what is wrong with it.
        made.__init__ = _compiled(made)
        made.__init__(self, *values, **named)
        return
    for name, put, default, new in of.slots:
        if name in given:
            put(self, given[name])
        else:
            put(self, default if new is MISSING else new())


class _Signature:
    """What the ``__init__`` of a record takes, and where it puts it."""

    def __init__(self, made: Any) -> None:
        self.made_so_far = 0
        taken = [one for one in fields(made) if one.init]
        self.in_order = [one.name for one in taken if not one.kw_only]
        self.allowed = {one.name for one in taken}
        self.needed = {
            one.name for one in taken if one.default is MISSING and one.default_factory is MISSING
        }
        # Setting the slot itself gets past the frozen class.
        self.slots = [
            (one.name, getattr(made, one.name).__set__, one.default, one.default_factory)
            for one in fields(made)
        ]


_signature = cache(_Signature)


def _compiled(made: Any) -> Callable[..., None]:
    """Return the ``__init__`` of a class of many records, as quick as if it were written out."""
    known: dict[str, Any] = {"_missing": MISSING}
    body: list[str] = []
    parameters: list[str] = ["self"]
    # Keyword-only fields come last, behind the "*".
    for one in sorted(fields(made), key=lambda one: bool(one.kw_only)):
        if one.kw_only and "*" not in parameters:
            parameters.append("*")
        name, value = one.name, one.name
        # Setting the slot itself gets past the frozen class, and is quicker than
        # object.__setattr__.
        known[f"_set_{name}"] = getattr(made, name).__set__
        if not one.init:
            known[f"_default_{name}"] = one.default
            value = f"_default_{name}"
        elif one.default is not MISSING:
            known[f"_default_{name}"] = one.default
            parameters.append(f"{name}=_default_{name}")
        elif one.default_factory is not MISSING:
            known[f"_new_{name}"] = one.default_factory
            parameters.append(f"{name}=_missing")
            value = f"_new_{name}() if {name} is _missing else {name}"
        else:
            parameters.append(name)
        body.append(f" _set_{name}(self, {value})")
    text = f"def __init__({', '.join(parameters)}):\n" + "\n".join(body or [" pass"])
    exec(text, known)  # noqa: S102 - names of fields alone, as in dataclasses itself
    init: Callable[..., None] = known["__init__"]
    init.__qualname__ = f"{made.__qualname__}.__init__"
    return init


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
    "__init__": _plain_init,
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
