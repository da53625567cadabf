"""Applies lines of settings, above all rooms or below a room's heading."""

from __future__ import annotations

from fractions import Fraction
from typing import TypeVar, cast

from trimlang.diagnostics import Span
from trimlang.diagnostics.suggestion import Suggestion
from trimlang.language.facts import Stated
from trimlang.language.tree import Angle, Measure, Number, Price, SettingLine, Word
from trimlang.lengths.tape import Direction, Unit, length_text
from trimlang.lengths.units import LengthUnit, VolumeUnit, in_cubic_inches, in_inches
from trimlang.settings.setting_kinds import (
    AngleSetting,
    AnySetting,
    Bevels,
    BevelsSetting,
    EndSetting,
    LengthSetting,
    NumberSetting,
    Packed,
    PackedSetting,
    PriceSetting,
    RoundingRows,
    RoundingSetting,
    SpreadSetting,
    Switch,
    TakenAt,
    TakenSetting,
    UnitSetting,
)
from trimlang.settings.table import Settings
from trimlang.survey.measures import Findings, length, money, not_negative


def apply(
    settings: Settings,
    line: SettingLine,
    findings: Findings,
    *,
    in_room: str | None,
    first: Span | None = None,
) -> Settings:
    """Return ``settings`` with what ``line`` states; ``in_room`` is the room's name, if any."""
    for said in line.facts:
        if in_room is not None and not said.for_room:
            findings.say("T230", said.span, room=in_room, first=first)
            continue
        # A setting with a row for each end (`corners: out-corner gap`): this end has none.
        row = said.row()
        if row is None:
            end = _first(said, Word)
            findings.say(said.rows[0].wrong_end, end.span, joint=end.text)
        else:
            # A cast to the union of all kinds, so that mypy reports a kind that has no case below.
            settings = _with(settings, cast("AnySetting", row), said, findings)
    return settings


def _with(settings: Settings, row: AnySetting, said: Stated, findings: Findings) -> Settings:
    """Return the settings with a row's new value, or unchanged where the value is refused."""
    match row:
        case LengthSetting():
            return _having_length(settings, row, said, findings)
        case AngleSetting():
            angle = _first(said, Angle)
            # At 90° a mitre has no length and no end, so some limits are not reached, only
            # approached.
            high = angle.degrees >= row.most if row.below_most else angle.degrees > row.most
            if high or angle.degrees < row.least or not angle.degrees:
                what = {"what": row.what, "least": row.least, "most": row.most}
                findings.say("T233", angle.span, **what)
                return settings
            return settings.having(row, angle.degrees)
        case NumberSetting():
            number = _first(said, Number)
            if not _within(number, row.what, row.least, row.most, findings):
                return settings
            return settings.having(row, number.value)
        case PriceSetting():
            price = money(_first(said, Price), findings)
            return settings if price is None else settings.having(row, price)
        case Switch():
            return settings.having(row, said.yes)
        case UnitSetting():
            word = _first(said, Word)
            if word.text not in list(Unit):
                findings.say("T231", word.span, unit=word.text)
                return settings
            return settings.having(row, Unit(word.text))
        case TakenSetting():
            return settings.having(row, TakenAt(_first(said, Word).text))
        case BevelsSetting():
            return settings.having(row, Bevels(_first(said, Word).text))
        case EndSetting():
            word = _first(said, Word)
            if word.text not in row.kinds:
                written = " or ".join(f"“{row.words} {kind}”" for kind in row.kinds)
                told = f"Write {written}, and say other ends at their runs."
                remedy = Suggestion(told, *row.kinds)
                findings.say("T253", word.span, what=row.what, joint=word.text, remedy=remedy)
                return settings
            return settings.having(row, word.text)
        case PackedSetting():
            packed = _packed(row, said, findings)
            return settings if packed is None else settings.having(row, packed)
        case SpreadSetting():
            spread = _spread(row, said, findings)
            return settings if spread is None else settings.having(row, spread)
        case RoundingSetting():
            rows = _rounding(settings, row, said, findings)
            return settings if rows is None else settings.having(row, rows)


_Written = TypeVar("_Written", Word, Number, Measure, Angle, Price)


def _first(said: Stated, kind: type[_Written]) -> _Written:
    """Return the first value of a kind; the grammar ensures that there is one."""
    return next(value for value in said.values if isinstance(value, kind))


def _having_length(
    settings: Settings, row: LengthSetting, said: Stated, findings: Findings
) -> Settings:
    measure = _first(said, Measure)
    # Some measures may be nothing, such as a gap; a thickness of nothing is a slip.
    if row.from_nothing:
        measured = not_negative(measure, settings.unit, findings, what=row.what)
    else:
        measured = length(measure, settings.unit, findings, what=row.what, fine=True)
    if measured is None:
        return settings
    if row.at_most is not None and measured > row.at_most:
        sizes = {row.fact: measured, "most": row.at_most}
        texts = {name: length_text(size, settings.unit) for name, size in sizes.items()}
        findings.say(row.too_much, measure.span, **texts)
        return settings
    return settings.having(row, measured)


def _within(number: Number, what: str, least: int, most: int, findings: Findings) -> bool:
    if least <= number.value <= most:
        return True
    findings.say("T235", number.span, what=what, least=least, most=most)
    return False


def _packed(row: PackedSetting, said: Stated, findings: Findings) -> Packed | None:
    number = _first(said, Number)
    # A box of nails is counted, a tub holds ounces: without a unit the row's own is meant.
    words = (VolumeUnit(value.text) for value in said.values if isinstance(value, Word))
    unit = next(words, row.default.unit)
    written = next((value for value in said.values if isinstance(value, Price)), None)
    price = money(written, findings)
    if number.value <= 0:
        findings.say("T235", number.span, what=row.what, least=1, most=100000)
        return None
    return None if price is None else Packed(number.value, price, unit)


def _spread(row: SpreadSetting, said: Stated, findings: Findings) -> Fraction | None:
    number, per = _first(said, Number), VolumeUnit(_first(said, Word).text)
    if not 0 < number.value <= row.most:
        findings.say("T235", number.span, what=row.what, least=1, most=row.most)
        return None
    one = Fraction(1)
    # Paint is kept as square inches covered by a cubic inch, whatever units it was given in.
    area = in_inches(one, LengthUnit.METRE if per is VolumeUnit.LITRE else LengthUnit.FOOT) ** 2
    return number.value * area / in_cubic_inches(one, per)


def _rounding(
    settings: Settings, row: RoundingSetting, said: Stated, findings: Findings
) -> RoundingRows | None:
    end, direction = (value.text for value in said.values if isinstance(value, Word))
    by = next((value for value in said.values if isinstance(value, Measure)), None)
    raised: Fraction | None = Fraction(0)
    if by is not None:
        raised = not_negative(by, settings.unit, findings, what=row.what)
    if raised is None:
        return None
    new = (Direction(direction), raised)
    # Only the row of this end changes; the order of the rows decides which one holds.
    return tuple((name, new if name == end else old) for name, old in settings.rounding)
