"""Applies lines of settings, at file level or below a room's heading."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import Any, Final

from trimlang.language.tree import Angle, Fact, Measure, Number, Price, SettingLine, Word
from trimlang.lengths.tape import MM, length_text
from trimlang.survey.measures import Findings, length, money, not_negative
from trimlang.survey.settings import Direction, Settings

ROOM_TOO: Final = frozenset(
    {
        "unit",
        "taken",
        "round_step",
        "round_joint",
        "round_cope",
        "round_head",
        "assumed_mitre",
        "gap_limit",
        "coped_corners",
        "mitred_corners",
        "splices_never",
        "splices_allowed",
        "splice_angle",
        "splice_least",
        "stud_spacing",
        "closes",
        "reveal",
        "casing_floor",
        "head_mitred",
        "head_butt",
        "head_overhang",
    }
)
"""Facts that a room may set for itself; the rest hold for the whole job."""

COARSEST_STEP: Final = Fraction(1, 2)
WIDEST_KERF: Final = Fraction(1, 2)
"""More than half an inch (12.7 mm) is no rounding and no saw cut (no source: sanity)."""

_LENGTHS: Final = {
    "kerf": ("kerf", "a kerf"),
    "squares_off": ("squares_off", "what is squared off"),
    "reveal": ("reveal", "a reveal"),
    "casing_floor": ("casing_floor", "what the legs stand off the floor"),
    "head_overhang": ("head_overhang", "an overhang"),
    "nail_plate": ("nail_plate", "a plate"),
    "nail_floor": ("nail_floor", "a floor's thickness"),
    "nail_wallboard": ("nail_wallboard", "wallboard"),
}
_SIZES: Final = {
    "round_step": ("step", "a rounding step"),
    "stud_spacing": ("stud_spacing", "stud spacing"),
    "closes": ("closes_within", "the misclosure allowed"),
    "splice_least": ("splice_least", "the least piece"),
    "nail_every": ("nail_every", "nail spacing"),
    "nail_long": ("nail_long", "a nail"),
    "caulk_bead": ("caulk_bead", "a bead"),
}


METRIC: Final[dict[str, Fraction | tuple[Fraction, str, Fraction]]] = {
    "nail_every": 400 * MM,
    "nail_long": 50 * MM,
    "nail_plate": 38 * MM,
    "nail_wallboard": Fraction(25, 2) * MM,
    "caulk_bead": 5 * MM,
    "paint_can": (Fraction(1), "litre", Fraction(0)),
}
"""What holds in a metric file where nothing is said (common practice, no source)."""


def apply(
    settings: Settings, line: SettingLine, findings: Findings, *, in_room: str | None
) -> Settings:
    """Return ``settings`` with the facts of ``line`` in place of what they held."""
    for fact in line.facts:
        if in_room is not None and fact.kind not in ROOM_TOO:
            findings.say("T230", fact.span, room=in_room)
            continue
        changes = _changes(settings, fact, findings)
        if changes:
            stated = settings.stated | {fact.kind}
            settings = replace(settings, stated=stated, **changes)
    return settings


def _changes(settings: Settings, fact: Fact, findings: Findings) -> dict[str, Any]:
    """Return the fields that the fact changes; none where it was wrong."""
    value = fact.values[0] if fact.values else None
    if fact.kind in _LENGTHS and isinstance(value, Measure):
        name, what = _LENGTHS[fact.kind]
        measured = not_negative(value, settings.unit, findings, what=what)
        if fact.kind == "kerf" and measured is not None and measured > WIDEST_KERF:
            findings.say("T250", value.span, **_too_much("kerf", measured, WIDEST_KERF, settings))
            return {}
        return {} if measured is None else {name: measured}
    if fact.kind in _SIZES and isinstance(value, Measure):
        name, what = _SIZES[fact.kind]
        measured = length(value, settings.unit, findings, what=what, fine=True)
        if fact.kind == "round_step" and measured is not None and measured > COARSEST_STEP:
            findings.say("T249", value.span, **_too_much("step", measured, COARSEST_STEP, settings))
            return {}
        return {} if measured is None else {name: measured}
    return _OTHERS[fact.kind](settings, fact, findings)


def _too_much(
    what: str, measured: Fraction, most: Fraction, settings: Settings
) -> dict[str, object]:
    sizes = {what: measured, "most": most}
    return {name: length_text(size, settings.unit) for name, size in sizes.items()}


def _unit(settings: Settings, fact: Fact, findings: Findings) -> dict[str, Any]:
    (word,) = fact.values
    assert isinstance(word, Word)  # noqa: S101  the grammar says so
    if word.text not in ("in", "mm"):
        findings.say("T231", word.span, unit=word.text)
        return {}
    # what the file does not say is a round length of its own unit: a nail of 50 mm
    plain = METRIC if word.text == "mm" else {name: getattr(Settings(), name) for name in METRIC}
    unsaid = {name: value for name, value in plain.items() if name not in settings.stated}
    return {"unit": word.text, **unsaid}


def _taken(_settings: Settings, fact: Fact, _findings: Findings) -> dict[str, Any]:
    (word,) = fact.values
    return {"taken": word.text} if isinstance(word, Word) else {}


def _round_joint(settings: Settings, fact: Fact, findings: Findings) -> dict[str, Any]:
    words = [value.text for value in fact.values if isinstance(value, Word)]
    by = next((value for value in fact.values if isinstance(value, Measure)), None)
    raised = Fraction(0)
    if by is not None:
        measured = not_negative(by, settings.unit, findings, what="a sprung fit")
        if measured is None:
            return {}
        raised = measured
    row = (Direction(words[1]), raised)
    return {
        "rounding": tuple((key, row if key == words[0] else old) for key, old in settings.rounding)
    }


def _round_row(row: str) -> Callable[..., dict[str, Any]]:
    def read(settings: Settings, fact: Fact, findings: Findings) -> dict[str, Any]:
        words = (Word(row, fact.span), *fact.values)
        return _round_joint(settings, replace(fact, values=words), findings)

    return read


def _assumed_mitre(_settings: Settings, fact: Fact, findings: Findings) -> dict[str, Any]:
    joint, angle = fact.values
    assert isinstance(joint, Word) and isinstance(angle, Angle)  # noqa: S101, PT018
    if joint.text not in ("in-corner", "out-corner"):
        findings.say("T232", joint.span, joint=joint.text)
        return {}
    if not 0 < angle.degrees < 80:
        findings.say("T233", angle.span, what="a mitre", least=0, most=80)
        return {}
    return {"mitre_out" if joint.text == "out-corner" else "mitre_in": angle.degrees}


def _gap_limit(settings: Settings, fact: Fact, findings: Findings) -> dict[str, Any]:
    joint, gap = fact.values
    assert isinstance(joint, Word) and isinstance(gap, Measure)  # noqa: S101, PT018
    if joint.text not in ("in-corner", "out-corner"):
        findings.say("T232", joint.span, joint=joint.text)
        return {}
    limit = not_negative(gap, settings.unit, findings, what="a gap")
    name = "gap_out" if joint.text == "out-corner" else "gap_in"
    return {} if limit is None else {name: limit}


def _cope(_settings: Settings, fact: Fact, findings: Findings) -> dict[str, Any]:
    (joint,) = fact.values
    assert isinstance(joint, Word)  # noqa: S101
    if joint.text != "in-corner":
        findings.say("T234", joint.span, joint=joint.text)
        return {}
    return {"cope": fact.kind == "coped_corners"}


def _head(_settings: Settings, fact: Fact, findings: Findings) -> dict[str, Any]:
    word = fact.values[0] if fact.values else None
    if isinstance(word, Word) and word.text != "butt":
        findings.say("T242", word.span, joint=word.text)
        return {}
    return {"head_butt": fact.kind == "head_butt"}


def _spare_covers(_settings: Settings, _fact: Fact, _findings: Findings) -> dict[str, Any]:
    return {"spare_covers": True}


def _splices(_settings: Settings, fact: Fact, _findings: Findings) -> dict[str, Any]:
    return {"may_splice": fact.kind == "splices_allowed"}


def _angle_between(name: str, what: str, least: int, most: int) -> Callable[..., dict[str, Any]]:
    def read(_settings: Settings, fact: Fact, findings: Findings) -> dict[str, Any]:
        (angle,) = fact.values
        assert isinstance(angle, Angle)  # noqa: S101
        if not least <= angle.degrees <= most or angle.degrees == 0:
            findings.say("T233", angle.span, what=what, least=least, most=most)
            return {}
        return {name: angle.degrees}

    return read


def _number(name: str, what: str, least: int, most: int) -> Callable[..., dict[str, Any]]:
    def read(_settings: Settings, fact: Fact, findings: Findings) -> dict[str, Any]:
        (number,) = fact.values
        assert isinstance(number, Number)  # noqa: S101
        if not least <= number.value <= most:
            findings.say("T235", number.span, what=what, least=least, most=most)
            return {}
        return {name: number.value}

    return read


def _priced(name: str, what: str) -> Callable[..., dict[str, Any]]:
    def read(_settings: Settings, fact: Fact, findings: Findings) -> dict[str, Any]:
        number = fact.values[0]
        assert isinstance(number, Number)  # noqa: S101
        unit = next((value.text for value in fact.values if isinstance(value, Word)), None)
        written = next((value for value in fact.values if isinstance(value, Price)), None)
        price = money(written, findings)
        if number.value <= 0:
            findings.say("T235", number.span, what=what, least=1, most=100000)
            return {}
        if price is None:
            return {}
        held = (number.value, price) if unit is None else (number.value, unit, price)
        return {name: held}

    return read


def _spread(_settings: Settings, fact: Fact, findings: Findings) -> dict[str, Any]:
    from trimlang.lengths.units import in_cubic_inches, in_inches

    number = fact.values[0]
    assert isinstance(number, Number)  # noqa: S101
    if not 0 < number.value <= 2000:
        findings.say("T235", number.span, what="a spread rate", least=1, most=2000)
        return {}
    if fact.kind == "paint_spread":
        area, volume = in_inches(Fraction(1), "ft") ** 2, in_cubic_inches(Fraction(1), "gallon")
    else:
        area, volume = in_inches(Fraction(1), "m") ** 2, in_cubic_inches(Fraction(1), "litre")
    return {"paint_spread": number.value * area / volume}


_OTHERS: Final[dict[str, Callable[[Settings, Fact, Findings], dict[str, Any]]]] = {
    "unit": _unit,
    "taken": _taken,
    "round_joint": _round_joint,
    "round_cope": _round_row("cope"),
    "round_head": _round_row("head"),
    "assumed_mitre": _assumed_mitre,
    "gap_limit": _gap_limit,
    "coped_corners": _cope,
    "mitred_corners": _cope,
    "head_mitred": _head,
    "head_butt": _head,
    "splices_never": _splices,
    "splices_allowed": _splices,
    "splice_angle": _angle_between("splice_angle", "a splice", 30, 45),
    "reaches": _angle_between("saw_reach", "what the saw swings to", 1, 75),
    "reads_to": _angle_between("saw_step", "what the saw reads to", 0, 5),
    "spare": _number("spare", "the spare allowance", 0, 100),
    "spare_covers": _spare_covers,
    "caulk_waste": _number("caulk_waste", "caulk lost", 0, 100),
    "paint_coats": _number("paint_coats", "coats", 0, 10),
    "caulk_tube": _priced("caulk_tube", "a tube"),
    "filler_tub": _priced("filler_tub", "a tub"),
    "nail_box": _priced("nail_box", "a box"),
    "paint_can": _priced("paint_can", "a can"),
    "paint_spread": _spread,
    "paint_spread_metric": _spread,
}
