"""What each trim stands in front of, or lies on, and what hangs below the ceiling because of that.

Shoe stands on the face of base, bead on the face of a frieze.  A crown leans: what stands in front
of one lies on the ceiling, along the crown's ceiling edge, which is as far from the wall as the
crown stands out.  (A bead along the crown's foot stands on the frieze or the wall there, and its
line says that.)  Crown, what it lies on and what stands in front of either hang below the ceiling.
"""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Mapping
from dataclasses import replace
from fractions import Fraction

from trimlang.language import facts, tree
from trimlang.survey.job import Trim
from trimlang.survey.measures import Findings
from trimlang.survey.near_names import unknown_trim


def in_front(
    lines: Iterable[tree.Statement], trims: Mapping[str, Trim], findings: Findings
) -> dict[str, Trim]:
    """Return the trims with what is known of each from those that it stands in front of.

    Reports trims in front of an unknown one, or of themselves by way of others.
    """
    checked = dict(trims)
    for line in lines:
        if not isinstance(line, tree.TrimLine):
            continue
        for fact in line.facts:
            if isinstance(fact, facts.InFrontOf | facts.StandsOn):
                _check(line.name.text, fact, checked, findings)
    # What hangs is told by the crown, so from each crown down to what is behind it, and only then
    # up to all that stands in front.
    hanging = {
        behind.name
        for trim in checked.values()
        if trim.spring is not None
        for behind in _behind(trim, checked)
    }
    return {
        name: replace(
            trim,
            hangs=any(one.name in hanging for one in _behind(trim, checked)),
            before_crown=next(
                (
                    one.name
                    for one in _behind(trim, checked)
                    if one.spring is not None and one.name != name
                ),
                None,
            ),
        )
        for name, trim in checked.items()
    }


def _check(
    name: str,
    fact: facts.InFrontOf | facts.StandsOn,
    trims: dict[str, Trim],
    findings: Findings,
) -> None:
    word = fact.trim
    on_top = isinstance(fact, facts.StandsOn)
    behind = trims.get(word.text)
    if behind is None:
        unknown_trim(word, trims, findings)
    # A crown's foot is on the wall or on the face of what is behind it, never on an upper edge.
    elif on_top and trims[name].spring is not None:
        instead = f"in front of {behind.name}"
        findings.say("T722", fact.span, trim=name, other=behind.name, instead=instead)
    # A crown has no top that anything could lie on.
    elif any(one.name == name for one in _behind(behind, trims)) or (on_top and behind.spring):
        where = "on" if on_top else "in front of"
        findings.say("T215", fact.span, trim=name, where=where, behind=behind.name)
    else:
        return
    # Kept without what it stands on or in front of, so that its runs are still checked.
    trim = trims[name]
    trims[name] = replace(trim, upon=None) if on_top else replace(trim, in_front_of=None)


def height_below(trim: Trim, trims: Mapping[str, Trim], there: Container[str]) -> Fraction:
    """Return how high a trim begins above what the trims on its wall stand on (inches).

    ``there`` are the names of those: a cap whose base a run does not get lies on nothing.
    """
    below = Fraction(0)
    while trim.upon is not None and trim.upon in there:
        trim = trims[trim.upon]
        below += trim.height or 0
    return below


def _behind(trim: Trim, trims: Mapping[str, Trim]) -> Iterator[Trim]:
    """Yield a trim and all that it stands in front of or on, one after the other."""
    names, seen = [trim.name], set[str]()
    while names:
        name = names.pop(0)
        if name in trims and name not in seen:
            seen.add(name)
            yield trims[name]
            names += [one for one in (trims[name].in_front_of, trims[name].upon) if one]
