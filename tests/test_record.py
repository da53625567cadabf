"""Records behave as the standard library's frozen dataclasses do."""

from __future__ import annotations

import pickle
from dataclasses import KW_ONLY, FrozenInstanceError, dataclass, field, replace

import pytest

from trimlang.record import record


@record
class Stick:
    length: int
    name: str = "base"
    found_at: object = field(default=None, compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Model:
    length: int
    name: str = "base"
    found_at: object = field(default=None, compare=False, repr=False)


@record
class Other:
    length: int
    name: str = "base"


@record
class Only:
    value: object


@record
class Named:
    length: int
    _: KW_ONLY
    unit: str = "mm"


@record
class Nothing:
    pass


@record
class Bundle:
    sticks: list[Stick] = field(default_factory=list)


@record
class Loud:
    value: int

    def __repr__(self) -> str:
        return "LOUD"

    def __eq__(self, other: object) -> bool:
        return True

    def __hash__(self) -> int:
        return 7


def test_equal_where_the_fields_that_count_are() -> None:
    assert Stick(3) == Stick(3, found_at=[1])
    assert hash(Stick(3)) == hash(Stick(3, found_at=[1])) == hash(Model(3))
    assert Stick(3) != Stick(4)
    assert Stick(3) != Stick(3, "shoe")
    assert len({Stick(3), Stick(3, found_at=1), Stick(4)}) == 2


def test_classes_are_told_apart() -> None:
    assert Stick(3) != Other(3)
    assert Stick(3) != (3, "base")
    assert Only((3, "base")) != Other(3)
    assert Nothing() == Nothing()
    assert Nothing() != Only(None)


def test_shown_as_a_dataclass_is() -> None:
    assert repr(Stick(3)) == repr(Model(3)).replace("Model", "Stick")
    assert repr(Nothing()) == "Nothing()"
    assert repr(Only("a")) == "Only(value='a')"


def test_cannot_be_changed_but_can_be_copied_and_pickled() -> None:
    stick = Stick(3, found_at=5)
    with pytest.raises(FrozenInstanceError):
        stick.length = 4  # type: ignore[misc]
    with pytest.raises((AttributeError, TypeError)):
        stick.colour = 4  # type: ignore[attr-defined]
    assert replace(stick, length=4) == Stick(4)
    copy = pickle.loads(pickle.dumps(stick))  # noqa: S301 - our own bytes
    assert copy == stick
    assert copy.found_at == 5
    with pytest.raises(FrozenInstanceError):
        del copy.length
    assert pickle.loads(pickle.dumps(Nothing())) == Nothing()  # noqa: S301


def test_what_a_class_defines_itself_stays() -> None:
    assert Loud(1) == Loud(2)
    assert hash(Loud(1)) == 7
    assert repr(Loud(1)) == "LOUD"


def test_made_as_a_dataclass_is() -> None:
    assert Stick(length=3, name="shoe") == Stick(3, "shoe")
    assert Bundle().sticks == []
    assert Bundle().sticks is not Bundle().sticks
    for wrong in ((), (3, "base", None, 4)):
        with pytest.raises(TypeError, match=r"Stick.__init__\(\)"):
            Stick(*wrong)


def test_fields_may_be_given_by_name_alone_or_not_at_all() -> None:
    assert Named(3, unit="mm") == Named(unit="mm", length=3)
    assert Named(3).unit == "mm"
    for wrong in ((3, "mm"), ()):
        with pytest.raises(TypeError):
            Named(*wrong)
