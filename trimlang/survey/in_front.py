"""What each trim stands in front of, and what hangs below the ceiling because of that.

Shoe stands on the face of base, bead on the face of a frieze.  A crown leans: what stands in front
of one lies on the ceiling, along the crown's ceiling edge, which is as far from the wall as the
crown stands out.  (A bead along the crown's foot stands on the frieze or the wall there, and its
line says that.)  Crown, what it lies on and what stands in front of either hang below the ceiling.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

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
            if isinstance(fact, facts.InFrontOf):
                _check(line.name.text, fact.trim, checked, findings)
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


def _check(name: str, word: tree.Word, trims: dict[str, Trim], findings: Findings) -> None:
    behind = trims.get(word.text)
    if behind is None:
        unknown_trim(word, trims, findings)
    elif any(one.name == name for one in _behind(behind, trims)):
        findings.say("T215", word.span, trim=name, behind=behind.name)
    else:
        return
    # Kept without what it stands in front of, so that its runs are still checked.
    trims[name] = replace(trims[name], in_front_of=None)


def _behind(trim: Trim, trims: Mapping[str, Trim]) -> Iterator[Trim]:
    """Yield a trim and all that it stands in front of, one before the other."""
    seen: set[str] = set()
    while trim.name not in seen:
        seen.add(trim.name)
        yield trim
        trim = trims.get(trim.in_front_of or "", trim)
