"""Inside corners that one trim turns otherwise than the rest: coped, or mitred (``shoe cope``).

A run says it of its own end; the trim's mate on the next wall follows from that, as where the
corner is coped for all trims.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import chain

from trimlang.joint_row import Fit
from trimlang.language.end_facts import Side
from trimlang.survey.job import End, OwnEnd, Room, Run
from trimlang.survey.measures import Findings


def cope_alone(room: Room, findings: Findings) -> Room:
    """Return the room with both sides of each corner that one trim turns by itself."""
    walk = list(room.walk)
    changed: set[tuple[str, str]] = set()
    count = len(walk)
    for at in range(count - 1 if room.open_walk else count):
        after = (at + 1) % count
        one, other = walk[at], walk[after]
        if not isinstance(one, Run) or not isinstance(other, Run) or one is other:
            continue
        for trim in dict.fromkeys(own.trim for own in chain(one.own_ends, other.own_ends)):
            right, left = one.own_end(trim, Side.RIGHT), other.own_end(trim, Side.LEFT)
            said = [end for end in (right, left) if end is not None]
            # Where one of them stops before the corner, nothing meets the other.
            if not said or not all(end.joint.is_corner for end in said):
                continue
            coped = [end is not None and end.fit is Fit.COPED for end in (right, left)]
            if all(coped):
                findings.say("T305", said[1].span)
            fits = (
                [Fit.COPED if cope else Fit.SQUARE for cope in coped]
                if any(coped)
                else [Fit.MITRED, Fit.MITRED]
            )
            # A mitre that one side asks for is meant on the other as well.
            meant = not any(coped) and any(end.mitred for end in said)
            ends = (
                replace(wall, fit=fit, mitred=meant or wall.mitred, span=(own or wall).span)
                for wall, own, fit in zip((one.right, other.left), (right, left), fits, strict=True)
            )
            one = _with_own(one, trim, Side.RIGHT, next(ends))
            other = _with_own(other, trim, Side.LEFT, next(ends))
            changed |= {(one.label, trim), (other.label, trim)}
        walk[at], walk[after] = one, other
    for run in walk:
        for trim in run.trims if isinstance(run, Run) else ():
            if isinstance(run, Run) and (run.label, trim) in changed:
                ends = (run.end_of(trim, side) for side in Side)
                if all(end.joint.is_corner and end.fit is Fit.COPED for end in ends):
                    findings.say("T306", run.span, run=run.label)
    return replace(room, walk=tuple(walk))


def _with_own(run: Run, trim: str, side: Side, end: End) -> Run:
    """Return a run one of whose trims has the wall's corner on a side, fitted in its own way."""
    if trim not in run.trims:
        return run
    others = tuple(one for one in run.own_ends if (one.trim, one.side) != (trim, side))
    own = OwnEnd(trim=trim, side=side, end=end)
    return replace(run, own_ends=(*others, own))
