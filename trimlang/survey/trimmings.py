"""Reads what an opening gets besides legs and head: stool, apron, jamb strips, a fourth side."""

from __future__ import annotations

from trimlang.language import facts, tree
from trimlang.survey.job import Trim
from trimlang.survey.measures import Findings
from trimlang.survey.near_names import unknown_trim
from trimlang.survey.on_walls import Trimmings

_NEED_CASING = (facts.FourSides, facts.Stooled, facts.BothFaces)


def read_trimmings(
    line: tree.GapLine, cased: bool, trims: dict[str, Trim], findings: Findings, *, high: bool
) -> Trimmings:
    """Return what a line says besides its casing, and report what does not go together.

    ``high`` tells that the opening's height is known.
    """
    # Each kind of fact stands at most once in a line (`repeats` reports a second).
    said = {type(fact): fact for fact in line.facts}
    unread = facts.Unread in said
    casing_said = cased or facts.Cased in said  # a casing that cannot be is reported already
    for kind in _NEED_CASING:
        if kind in said and not casing_said and not unread:
            findings.say("T283", said[kind].span)
    if facts.Jambed in said and facts.ClearHeight not in said and not high and not unread:
        findings.say("T285", said[facts.Jambed].span)
    stooled, jambed = said.get(facts.Stooled), said.get(facts.Jambed)
    if stooled is not None and facts.FourSides in said:
        findings.say("T284", said[facts.FourSides].span)
    stool = apron = jambs = None
    if isinstance(stooled, facts.Stooled):
        stool = _known(stooled.stool, trims, findings)
        apron = _known(stooled.apron, trims, findings) if stooled.apron is not None else None
        if apron is not None and trims[apron].thickness is None:
            findings.say("T211", stooled.span, joint="return", trim=apron, run="the apron")
    if isinstance(jambed, facts.Jambed):
        jambs = _known(jambed.trim, trims, findings)
        if jambs is not None and trims[jambs].thickness is None:
            findings.say("T211", jambed.span, joint="lap", trim=jambs, run="the jamb")
    return Trimmings(
        stool=stool,
        apron=apron,
        jambs=jambs,
        four_sides=facts.FourSides in said,
        both_faces=facts.BothFaces in said,
    )


def _known(word: tree.Word, trims: dict[str, Trim], findings: Findings) -> str | None:
    if word.text in trims:
        return word.text
    unknown_trim(word, trims, findings)
    return None
