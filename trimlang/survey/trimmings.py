"""Reads what an opening gets besides legs and head: stool, apron, jambs, blocks, a backband."""

from __future__ import annotations

from trimlang.language import facts, tree
from trimlang.survey.job import Trim
from trimlang.survey.measures import Findings
from trimlang.survey.near_names import unknown_trim
from trimlang.survey.on_walls import HeadMember, Trimmings
from trimlang.survey.said_blocks import ByName, find_block

_NEED_CASING = (
    facts.FourSides,
    facts.Stooled,
    facts.BothFaces,
    facts.Plinthed,
    facts.CornerBlocked,
    facts.Backbanded,
)


def read_trimmings(
    line: tree.GapLine,
    cased: bool,
    trims: dict[str, Trim],
    by_name: ByName,
    findings: Findings,
    *,
    high: bool,
    head: tuple[HeadMember, ...] = (),
) -> Trimmings:
    """Return what a line says besides its casing, and report what does not go together.

    ``high`` tells that the opening's height is known, ``head`` are the parts of its head.
    """
    # Each kind of fact stands at most once in a line (`repeats` reports a second).
    said = {type(fact): fact for fact in line.facts}
    unread = facts.Unread in said
    casing_said = cased or facts.Cased in said  # a casing that cannot be is reported already
    for kind in _NEED_CASING:
        if kind in said and not casing_said and not unread:
            findings.say("T283", said[kind].span)
    # Strips at the sides are as long as the opening is high.
    if facts.Jambed in said and facts.ClearHeight not in said and not high and not unread:
        findings.say("T285", said[facts.Jambed].span)
    stooled, jambed = said.get(facts.Stooled), said.get(facts.Jambed)
    # A window has a stool below or a fourth leg of casing, never both: they take the same place.
    if stooled is not None and facts.FourSides in said:
        findings.say("T284", said[facts.FourSides].span)
    stool = apron = jambs = band = plinth = corner = None
    match said.get(facts.Plinthed):
        case facts.Plinthed(block=word):
            plinth = find_block(word, by_name, findings)
    match said.get(facts.CornerBlocked):
        case facts.CornerBlocked(block=word):
            corner = find_block(word, by_name, findings)
    match said.get(facts.Backbanded):
        case facts.Backbanded(trim=word):
            band = _known(word, trims, findings)
            if band is not None and trims[band].height is None:
                findings.say("T241", word.span, trim=band)
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
        plinth=plinth,
        corner_block=corner,
        backband=band,
        head=head,
    )


def _known(word: tree.Word, trims: dict[str, Trim], findings: Findings) -> str | None:
    if word.text in trims:
        return word.text
    unknown_trim(word, trims, findings)
    return None
