"""Reads what sticks lie in the shop, and what is wrong with them."""

from __future__ import annotations

from fractions import Fraction

from trimlang.language import tree
from trimlang.language.end_facts import Side
from trimlang.language.stick_facts import WrittenDefect
from trimlang.lengths.tape import Unit, feet_text, length_text
from trimlang.survey.measures import Findings, length, money, not_negative
from trimlang.survey.offers import read_count
from trimlang.survey.sticks import (
    SAFE_TO_HOLD,
    Defect,
    FlawedStick,
    Rest,
    share_price,
    sound_parts,
)


def read_rests(
    line: tree.WrittenRest, unit: Unit, findings: Findings, *, kerf: Fraction
) -> tuple[Rest, ...]:
    """Return the offcuts that a part of an on-hand line says; none where it cannot be.

    A stick with defects is as many offcuts as they leave of it, which are cut apart first with
    the blade in the defect.
    """
    long = length(line.length, unit, findings, what="an offcut")
    price = money(line.price, findings)
    count = read_count(line.count, findings)
    if long is None or price is None or count is None:
        return ()
    batch = "" if line.batch is None else line.batch.name.text
    if not line.defects:
        if long < SAFE_TO_HOLD:
            texts = {"long": long, "least": SAFE_TO_HOLD}
            shown = {name: length_text(one, unit) for name, one in texts.items()}
            findings.say("T721", line.length.span, **shown)
        return (Rest(long, count, price, line.span, batch=batch),)
    # Two sticks do not have their knots at the same places.
    if count > 1:
        findings.say("T466", line.defects[0].span, count=count, long=feet_text(long, unit))
        return ()
    found = [_defect(one, long, unit, findings) for one in line.defects]
    stick = FlawedStick(long, tuple(one for one in found if one is not None), line.span)
    # With a defect unknown, every part might have it in it.
    if len(stick.defects) < len(found):
        return ()
    parts = sound_parts(stick, kerf)
    # What is not used of the stick stays in the shop with its worth.
    worths = share_price(price, [part.end - part.start for part in parts])
    if not parts:
        findings.say("T467", line.span, long=feet_text(long, unit))
    return tuple(
        Rest(
            length=part.end - part.start,
            count=1,
            price=worth,
            span=line.span,
            part=part,
            batch=batch,
        )
        for part, worth in zip(parts, worths, strict=True)
    )


def _defect(line: WrittenDefect, long: Fraction, unit: Unit, findings: Findings) -> Defect | None:
    what = f"where the {line.kind} begins"
    start = not_negative(line.start, unit, findings, what=what)
    end = length(line.end, unit, findings, what=f"where the {line.kind} ends")
    if start is None or end is None:
        return None
    if start >= end or end > long:
        found = {"kind": line.kind.value, "long": feet_text(long, unit), "side": line.side.value}
        places = {"start": length_text(start, unit), "end": length_text(end, unit)}
        # From the second mark to the first: the two were swapped, if the stick is that long.
        turned = end < start <= long
        findings.say("T465", line.span, **found, **places, turned=turned)
        return None
    # From here on all places are from the left end, as everywhere on a stick.
    if line.side is Side.RIGHT:
        start, end = long - end, long - start
    return Defect(line.kind, start, end)
