"""What hover says of a number that a person wrote: how much it is, and what it is said of."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final, TypeAlias

from lark import Token

from trimlang.diagnostics import Span
from trimlang.editor.tokens import tokens
from trimlang.editor.word_meanings import meaning, setting_meaning
from trimlang.language import tree
from trimlang.language.stated import Stated
from trimlang.language.written import Angle, Measure, Number, Price
from trimlang.lengths.tape import MM, Unit, feet_text, is_tape_fraction, length_text
from trimlang.lengths.units import UnknownUnitError, in_inches
from trimlang.sheets.wording.quantities import Pen

_Written: TypeAlias = Measure | Angle | Price | Number
_ENDS_A_PART: Final = frozenset({"COMMA", "LPAR", "RPAR", "COLON", "EQUAL"})
_BEHIND: Final = frozenset(
    "THICK TALL WIDE DEEP LONG RISE UNIT_RUN RADIUS COATS SQFT SQM FL_OZ CUTS STICKS".split()
)
"""Words that stand behind the number that they are about; all others stand before it."""
_JOINING: Final = frozenset(
    "OF TO BY AT IN ON AND A FROM OVER LEAST SIDE BEND FOOT INCH METRIC OTHER_UNIT".split()
)
"""Words that join two others, or are units, and say little of a number beside them."""
_PLACES_OF_MM: Final = 1
_PLACES_OF_INCHES: Final = 3


def number_text(
    statement: tree.Statement, text: str, column: int, pen: Pen
) -> tuple[str, Span] | None:
    """Return what there is to say of the number at a column (from 1) of a line, and its place.

    None where the statement has no number there.
    """
    path = list(_path(statement, column))
    if not path:
        return None
    number = path[-1]
    assert isinstance(number, _Written)  # noqa: S101  a path ends at a number
    written = text[number.span.column - 1 : number.span.end - 1]
    said = [" = ".join((f"**{written}**", *(way for way in _ways(number, pen) if way != written)))]
    offer = next((one for one in path if isinstance(one, tree.WrittenOffer)), None)
    stated = next((one for one in path if isinstance(one, Stated)), None)
    row = stated.row() if stated is not None else None
    if row is not None:
        said.append(f"{row.words}: {setting_meaning(row)}")
    elif offer is not None and (sold := _sold(offer, number, pen)):
        said.append(sold)
    else:
        said += _about(text, number.span)
    return "\n\n".join(said), number.span


def _path(node: object, column: int) -> Iterator[object]:
    """Yield the values that hold the number at a column, from the outermost to the number."""
    if isinstance(node, Measure | Angle | Price | Number):
        if node.span.column <= column < node.span.end:
            yield node
        return
    within: Sequence[object] = ()
    if isinstance(node, tuple):
        within = node
    elif not isinstance(node, Span) and hasattr(node, "__dataclass_fields__"):
        within = [getattr(node, name) for name in node.__dataclass_fields__]
    for one in within:
        found = list(_path(one, column))
        if found:
            yield from (node, *found)
            return


def _ways(number: _Written, pen: Pen) -> Iterator[str]:
    """Yield a length in inches, in feet and in millimetres, each only once; nothing of others."""
    inches = _inches(number, pen.unit) if isinstance(number, Measure) else None
    if inches is None:
        return
    if is_tape_fraction(inches):
        yield from dict.fromkeys((length_text(inches), feet_text(inches)))
    else:
        yield f"{pen.decimal(inches, _PLACES_OF_INCHES)} in"
    yield f"{pen.decimal(inches / MM, _PLACES_OF_MM)} mm"


def _inches(written: Measure, unit: Unit) -> Fraction | None:
    try:
        return sum((in_inches(part, own or unit) for part, own in written.parts), Fraction(0))
    except UnknownUnitError:
        return None


def _sold(offer: tree.WrittenOffer, number: _Written, pen: Pen) -> str:
    """Say what a stick costs by the foot, or one that is sold by the foot; nothing of others."""
    long = _inches(offer.length, pen.unit)
    if offer.price is None or not long or number not in (offer.length, offer.price):
        return ""
    sticks = offer.pack.value if offer.pack is not None else 1
    if offer.per is not None:
        stick = offer.price.amount * long / in_inches(Fraction(1), offer.per.unit)
        return f"A stick of {pen.stick(long)} comes to {pen.money(stick)}."
    foot, metre = (
        pen.money(offer.price.amount * in_inches(Fraction(1), unit) / long / sticks)
        for unit in ("ft", "m")
    )
    each = "" if sticks == 1 else f" One stick comes to {pen.money(offer.price.amount / sticks)}."
    return f"That is {foot} a foot, {metre} a metre.{each}"


def _about(text: str, place: Span) -> Iterator[str]:
    """Yield what the word means that a number stands beside, or that its line begins with."""
    said = tokens(text)
    end = next((at for at, one in enumerate(said) if (one.column or 0) >= place.end), len(said))
    # Of boxes and blocks nothing but their own line says what is tall or wide.
    own = said[0].type not in ("BOXES", "BLOCK")
    if own and end < len(said) and said[end].type in _BEHIND:
        yield from _meant(said[end])
        return
    begin = next((at for at, one in enumerate(said) if (one.column or 0) >= place.column), end)
    for token in reversed(said[:begin]):
        if token.type in _ENDS_A_PART:
            break
        if token.type not in _JOINING and (found := list(_meant(token))):
            yield from found
            return
    yield from _meant(said[0])


def _meant(token: Token) -> Iterator[str]:
    found = meaning(token.type, str(token))
    if found is not None:
        yield f"{token}: {found}"
