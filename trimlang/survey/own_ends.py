"""Where one trim of a wall ends otherwise than the rest, or goes on past what stops them.

A room is surveyed once for all its trims.  What is true of one alone is said beside the ends
of the run (``right=butt, shoe return``) or at what stands in the way (``stops base``).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import Final

from trimlang.diagnostics.named_codes import MISPLACED
from trimlang.diagnostics.suggestion import Suggestion
from trimlang.joints import Joint
from trimlang.joints_by_role import STOPPED
from trimlang.language import facts, tree
from trimlang.language.facts import Side
from trimlang.settings.setting_kinds import TakenAt
from trimlang.settings.table import Settings
from trimlang.survey.ends import Taken, read_end
from trimlang.survey.job import End, OwnEnd, Trim
from trimlang.survey.measures import Findings
from trimlang.survey.near_names import unknown_trim

_SIDES: Final = MappingProxyType(
    {"l": Side.LEFT, "lh": Side.LEFT, "r": Side.RIGHT, "rh": Side.RIGHT}
)
"""Letters that stand for a side on a pad, and that would be a trim's name here."""
_FITTED: Final[Mapping[type | None, str]] = MappingProxyType(
    {facts.CopedHere: "cope", facts.MitredHere: "mitre"}
)
"""How a trim alone is fitted into a corner, as a job file says it."""


def read_own_ends(
    line: tree.RunLine,
    trims: tuple[str, ...],
    known: Mapping[str, Trim],
    ends: Mapping[Side, End],
    settings: Settings,
    findings: Findings,
) -> tuple[OwnEnd, ...]:
    """Return the ends that a run says of one trim alone; ``trims`` are those that it gets."""
    found: list[OwnEnd] = []
    climbs = any(isinstance(fact, facts.Rising) for fact in line.facts)
    for fact in line.facts:
        if not isinstance(fact, facts.TrimEnd):
            continue
        name, said = fact.trim.text, fact.end
        joint = Joint.of(said.joint.text)
        wall = ends.get(fact.side) if fact.side is not None else None
        corner = None if wall is None else wall.joint
        # `rail right=mitre` stands for whichever corner the wall has there.
        if corner is not None and corner.is_outside and said.joint.span == said.span:
            joint = corner if _mitred(said.facts) else joint
        if name not in known and (side := _SIDES.get(name.casefold())) and fact.side is None:
            remedy = Suggestion(f"Write {side}={joint}.", f"{side}={joint}")
            wanted = f"“{side}=” before the joint"
            findings.say(MISPLACED, fact.span, word=name, wanted=wanted, remedy=remedy)
        elif name not in known:
            unknown_trim(fact.trim, known, findings)
        elif name not in trims:
            findings.say("T255", fact.trim.span, trim=name, run=line.label.text)
        elif fact.side is None:
            findings.say("T256", fact.span, trim=name, joint=joint)
        elif (why := why_not_alone(joint, corner, said.facts, climbs=climbs)) is not None:
            word = _FITTED.get(next(map(type, said.facts), None), joint.word)
            remedy = _other_ways(fact, joint, word, ends, climbs=climbs)
            findings.say("T257", fact.span, trim=name, joint=word, why=why, remedy=remedy)
        elif any((one.trim, one.side) == (name, fact.side) for one in found):
            findings.say("T226", fact.span, side=fact.side)
        else:
            end = read_end(said, Taken(TakenAt.WALL), settings, findings)
            if joint.is_outside and wall is not None:
                end = replace(wall, mitred=True, span=said.span)
            found.append(OwnEnd(trim=name, side=fact.side, end=end))
    return tuple(found)


def why_not_alone(
    joint: Joint, wall: Joint | None, said: tuple[facts.EndFact, ...], *, climbs: bool
) -> str | None:
    """Return why one trim alone cannot end so on a wall, None where it can.

    ``wall`` is the wall's own end there, ``said`` what the trim's end has in brackets or behind it.
    """
    inside = wall is not None and wall.is_inside
    if joint.is_inside and inside:
        # Of the wall's own corner a trim can only say how it is fitted.
        only = all(isinstance(fact, facts.CopedHere | facts.MitredHere) for fact in said)
        return None if only else "the corner is measured once, at the wall's own end"
    if joint.is_outside and wall is joint and _mitred(said):
        return None
    if joint.is_corner and wall is joint:
        return "it turns the corner as the wall does, without being told"
    if joint.is_corner:
        where = "inside" if joint.is_inside else "outside"
        return f"a corner is one of the wall, and this end of the wall is no {where} corner"
    if joint.goes_on:
        return "the wall goes on there for all its trims"
    if joint.row.on_slope and not climbs:
        return "only trim that climbs is cut so"
    # In an inside corner a single trim can only butt: a return would run into the other wall.
    if inside and not joint.stops:
        return "it would run into the other wall of the corner"
    return None if joint.row.ends_alone or joint.row.on_slope else "it ends with the others"


def _other_ways(
    fact: facts.TrimEnd, joint: Joint, word: str, ends: Mapping[Side, End], *, climbs: bool
) -> Suggestion:
    """Return how one trim alone can end there, first of all as said but at its wall's other end."""
    trim, side = fact.trim.text, fact.side
    assert side is not None  # noqa: S101  what has none is asked for its side
    other, wall = ends.get(side.other), ends.get(side)
    alone = [one.word for one in Joint if one.row.ends_alone]
    if wall is not None and wall.joint.is_inside:
        alone = [*_FITTED.values(), STOPPED.word]
    ways = [f"{trim} {side}={one}" for one in alone]
    told = f"At the {side} end it can be {', '.join(alone[:-1])} or {alone[-1]}."
    # A plain corner says nothing at an end where the wall has one already.
    if (
        other is not None
        and word != other.joint
        and why_not_alone(joint, other.joint, fact.end.facts, climbs=climbs) is None
    ):
        ways.insert(0, f"{trim} {side.other}={word}")
        told = f"If that is its {side.other} end, write {ways[0]}. {told}"
    return Suggestion(told, *ways)


def _mitred(said: tuple[facts.EndFact, ...]) -> bool:
    """Tell whether an end says that it is mitred, and nothing else."""
    return bool(said) and all(isinstance(fact, facts.MitredHere) for fact in said)
