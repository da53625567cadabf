"""Turns what lark read of signs, numbers, lengths, angles and prices into nodes of the tree.

The methods are named after the grammar's rules.
"""

from __future__ import annotations

import unicodedata
from fractions import Fraction
from typing import Any, Final

from lark import Token
from lark.tree import Meta
from lark.visitors import Discard

from trimlang.diagnostics import Diagnostic, Span, say
from trimlang.diagnostics.named_codes import ODD_FEET, OFF_TAPE
from trimlang.language import facts, tree
from trimlang.language.log_lines import Children
from trimlang.language.vocabulary import whole_joint
from trimlang.language.wall_lines import WallLines
from trimlang.lengths.tape import (
    SIXTEENTH,
    feet_text,
    is_tape_fraction,
    length_text,
    steps_nearest,
)
from trimlang.lengths.units import LengthUnit
from trimlang.letters import STEERING, is_hidden, stranger_in

_MOST_DIGITS: Final = 9
_THREE_FIGURES: Final = 100
_SPEAKING: Final = frozenset(
    "NAME PIECE_ID STRING WORDS DATE TAKEN_AT DIRECTION SIDE TILT JOINT IN INCH METRIC OTHER_UNIT"
    " SWINGS QUART GALLON LITRE MONEY OPENING BARE METRE DEFECT TAKEN_ALONG STAIR_SIDE"
    " TWO_PIECE BEND BEAM BATCH_OF BETWEEN GAP_NAME".split()
)
NUMBER_TOKENS: Final = frozenset({"COUNT", "DECIMAL", "FRACTION", "VULGAR"})
_NAMES: Final = frozenset({"NAME", "PIECE_ID", "STRING", "WORDS", "GAP_NAME", "DATE", "MONEY"})
_ANY_CASE: Final = _SPEAKING - _NAMES
_FINEST: Final = 128
_UNIT_NAMES: Final = {
    "in.": LengthUnit.INCH,
    "inch": LengthUnit.INCH,
    "inches": LengthUnit.INCH,
    '"': LengthUnit.INCH,
    "″": LengthUnit.INCH,
    "”": LengthUnit.INCH,
    "''": LengthUnit.INCH,
}


def _above_and_below(written: str) -> tuple[int, int]:
    """Return the two whole numbers of a fraction, whichever of the three bars it has."""
    above, below = written.replace("⁄", "/").replace("∕", "/").split("/")
    return int(above), int(below)


def _meant_by(above: str, below: int) -> tuple[str, str]:
    """Guess what a fraction that no tape has should be, and why: a lost blank, or feet."""
    # “291/8” was most likely “29 1/8”: the whole number takes two digits at least, and what is left
    # must be less than one.
    whole, part = next(
        ((above[:at], above[at:]) for at in range(2, len(above)) if 0 < int(above[at:]) < below),
        ("", ""),
    )
    on_tape = is_tape_fraction(Fraction(1, below))
    if whole and on_tape:
        return "If a blank was left out", f"{whole} {part}/{below}"
    # “9/10” can be nine feet ten only where the second number is less than a foot.
    if 0 < int(above) < below < 12 and not on_tape:
        return "If feet and inches were meant", f"{above} ft {below}"
    return "", ""


class NumberRules(WallLines):
    """The rules of words, numbers and lengths, which collect what is odd about them."""

    # ---- leaves -------------------------------------------------------------------

    def __default_token__(self, token: Token) -> Any:
        # Commas, colons and words that only mark a rule have done their work in the grammar.
        if token.type not in _SPEAKING and token.type not in NUMBER_TOKENS:
            return Discard
        column = token.column or 1
        span = Span(self._file, self._line, column, column + len(token))
        if token.type in NUMBER_TOKENS:
            return self._number(token, span)
        if token.type == "STRING":
            return tree.Word(self._seen(str(token)[1:-1], span), span)
        if token.type in _ANY_CASE:
            # “swings in” may have a tab or two blanks between its words.
            return tree.Word(" ".join(token.lower().split()), span)
        if token.type == "NAME" and not token.isascii():
            self._one_alphabet(token, span)
        # An accent may be typed as one character or two; names must compare equal either way.
        text = unicodedata.normalize("NFC", str(token))
        # how far apart the words of a material stand says nothing
        spread = token.type in ("WORDS", "GAP_NAME")
        return tree.Word(" ".join(text.split()) if spread else text, span)

    def _seen(self, text: str, span: Span) -> str:
        """Return a text without what cannot be seen in it."""
        # Nearly every text is, and this asks it at once for all signs.
        if text.isprintable():
            return text
        if any(sign in STEERING for sign in text):
            self.problems.append(say("T115", span))
            text = "".join(sign for sign in text if sign not in STEERING)
        hidden = {sign for sign in text if is_hidden(sign)}
        if hidden:
            which = ", ".join(f"U+{ord(sign):04X}" for sign in sorted(hidden)[:3])
            self.problems.append(say("T119", span, which=which))
            text = "".join(sign for sign in text if sign not in hidden)
        return text

    def _one_alphabet(self, name: Token, span: Span) -> None:
        stranger = stranger_in(name)
        if stranger is not None:
            place = Span(span.file, span.line, span.column + stranger, span.column + stranger + 1)
            sign = name[stranger]
            what = unicodedata.name(sign, "of no alphabet").lower()
            self.problems.append(say("T118", place, name=str(name), sign=sign, what=what))

    def _number(self, token: Token, span: Span) -> tree.Number:
        # Arithmetic with huge numbers could take unbounded time; no length or price needs so many.
        if len(token) > _MOST_DIGITS and sum(map(str.isdigit, token)) > _MOST_DIGITS:
            self.problems.append(say("T110", span))
            return tree.Number(Fraction(1), span)
        if token.type == "VULGAR":
            # `numeric` gives a float, which the small denominator turns back into an exact ⅓ or ⅞.
            return tree.Number(Fraction(unicodedata.numeric(token)).limit_denominator(16), span)
        if token.type == "COUNT":
            return tree.Number(Fraction(int(token)), span)
        if token.type != "FRACTION":
            return tree.Number(Fraction(token), span, len(token.partition(".")[2]))
        above, below = _above_and_below(token)
        if below == 0:
            self.problems.append(say("T111", span, written=str(token)))
            return tree.Number(Fraction(1), span)
        # No tape is finer, and arbitrary denominators would make every later sum slow.
        if below > _FINEST:
            self.problems.append(say("T120", span, written=str(token)))
            return tree.Number(Fraction(1), span)
        value = Fraction(above, below)
        on_tape = value < 1 and is_tape_fraction(Fraction(1, below))
        # Whether it is to be on a tape is known only where it turns out to be part of a length.
        off_tape = None if on_tape else tree.Word(str(token), span)
        return tree.Number(value, span, off_tape=off_tape)

    def _same(self, _meta: Meta, children: Children) -> tree.Number:
        number: tree.Number = children[0]
        return number

    whole = decimal = fraction = _same

    def mixed(self, meta: Meta, children: Children) -> tree.Number:
        whole, part = children
        return tree.Number(whole.value + part.value, self._span(meta), off_tape=part.off_tape)

    def _check_on_tape(self, number: tree.Number) -> None:
        """Report a fraction in a length that no tape has.

        The number stays as it was written: what follows is checked with it, so that one slip
        brings up one finding.
        """
        off = number.off_tape
        if off is None:
            return
        above, below = _above_and_below(off.text)
        nearest = length_text(steps_nearest(Fraction(above, below), SIXTEENTH))
        # Behind a whole number it is a fraction, whatever it looks like alone.
        alone = number.span == off.span
        why, meant = _meant_by(str(above), below) if alone else ("", "")
        guess = f"{why}, write {meant}. " if meant else ""
        facts = {"written": off.text, "nearest": nearest, "guess": guess, "instead": meant}
        self.problems.append(say(OFF_TAPE, off.span, **facts))

    def unit_word(self, meta: Meta, children: Children) -> tree.Word:
        word = children[0].text.lower()
        return tree.Word(_UNIT_NAMES.get(word, word), self._span(meta))

    can_unit = unit_word

    def sign(self, _meta: Meta, _children: Children) -> str:
        return "-"

    def _length(self, meta: Meta, children: Children) -> tree.Measure:
        number = next(child for child in children if isinstance(child, tree.Number))
        unit = next((child.text for child in children if isinstance(child, tree.Word)), None)
        self._check_on_tape(number)
        amount = -number.value if "-" in children else number.value
        return tree.Measure(((amount, unit),), self._span(meta), number.places)

    bare_length = unit_length = _length

    def feet_only(self, meta: Meta, children: Children) -> tree.Measure:
        return self._feet(meta, children)

    def feet_and_inches(self, meta: Meta, children: Children) -> tree.Measure:
        return self._feet(meta, children)

    def _feet(self, meta: Meta, children: Children) -> tree.Measure:
        read = [child for child in children if isinstance(child, tree.Number)]
        numbers = [one.value for one in read]
        # Of a foot a tape has other parts than of an inch: 8/20 ft is 4 13/16 in.
        part = read[0].off_tape if read[0].value < 1 else None
        for one in read if part is None else read[1:]:
            self._check_on_tape(one)
        # “9 1/2 ft 6 in” says a part of the foot twice, and nobody reads a tape so.
        if numbers[0].denominator != 1 and len(numbers) > 1:
            odd = "part of a foot, and then inches"
            self.problems.append(self._odd_feet(meta, odd, numbers))
        elif len(numbers) > 1 and numbers[1] >= 12:
            odd = "twelve inches or more after feet"
            self.problems.append(self._odd_feet(meta, odd, numbers))
        elif part is not None and not is_tape_fraction(numbers[0] * 12):
            inches = steps_nearest(numbers[0] * 12, SIXTEENTH)
            odd = f"“{part.text}” of a foot is on no tape"
            said = say(ODD_FEET, self._span(meta), odd=odd, guess="", instead=length_text(inches))
            self.problems.append(said)
        if "-" in children:
            # A minus before feet and inches is one for both of them.
            numbers = [-number for number in numbers]
        parts = tuple(zip(numbers, (LengthUnit.FOOT, LengthUnit.INCH), strict=False))
        return tree.Measure(parts, self._span(meta), read[0].places if len(read) == 1 else 0)

    def _odd_feet(self, meta: Meta, odd: str, numbers: list[Fraction]) -> Diagnostic:
        feet, inches = numbers
        instead, guess = feet_text(feet * 12 + inches), ""
        # Three figures behind a mark are no inches: 3'250 is how some part thousands.
        if feet.denominator == inches.denominator == 1 and inches >= _THREE_FIGURES:
            instead = f"{feet}{inches} mm"
            guess = f"If the mark parts thousands, write {instead}. "
        return say(ODD_FEET, self._span(meta), odd=odd, guess=guess, instead=instead)

    def angle(self, meta: Meta, children: Children) -> tree.Angle:
        return tree.Angle(children[0].value, self._span(meta))

    def price(self, meta: Meta, children: Children) -> tree.Price:
        amount = next(child.value for child in children if isinstance(child, tree.Number))
        sign = next((child.text for child in children if isinstance(child, tree.Word)), None)
        return tree.Price(-amount if "-" in children else amount, sign, self._span(meta))

    def measured_bare(self, meta: Meta, children: Children) -> facts.WrittenCorner:
        span = self._span(meta)
        return facts.WrittenCorner(tree.Angle(children[0].value, span), span)

    def joint(self, _meta: Meta, children: Children) -> tree.Word:
        word: tree.Word = children[0]
        return tree.Word(whole_joint(word.text), word.span)

    def label(self, _meta: Meta, children: Children) -> tree.Word:
        child = children[0]
        if isinstance(child, tree.Number):
            # A wall may be called 1 or 2; in ids and messages that is a name like any other.
            return tree.Word(str(child.value), child.span)
        word: tree.Word = child
        return word
