"""Mends that add what a finding lacks, or move a line to where it belongs."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction
from typing import Final

from trimlang.diagnostics.diagnostic import Span
from trimlang.diagnostics.leaving_out import end_of_words, without_fit, without_words
from trimlang.diagnostics.mend import Edit, Facts, Mend, marked, write
from trimlang.letters import looks_like

USUAL_JOINTS: Final = ("in-corner", "butt", "out-corner", "open")
"""The usual ends first, as an editor lists them."""

_CLIMBING: Final = ("plumb", "level")
"""How trim that climbs ends where level trim would return."""

_LARGEST_SETTING: Final = 60
"""Degrees; a saw that mitres further is rare (common practice, no source)."""

MOST_OFFERED: Final = 3
"""Trims that are offered: more are not read through."""
_END: Final = re.compile(r"\b(?P<side>left|right)\s*=\s*[^,(#]*(?:\([^)]*\))?[^,#]*", re.IGNORECASE)


def add(words: str) -> Callable[[Span, Facts, str], Iterator[Mend]]:
    """Return what puts ``words``, filled with the finding's facts, behind the part it marks.

    That is before the next comma, or at the end of the line, before a remark.
    """

    def offer(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
        said = words.format(**facts)
        if said.startswith("height ") and re.search(r"\bheight\b", line, re.IGNORECASE):
            return  # it says one, which could not be read
        # Behind the whole part, not behind the words that are marked: a part may say more than what
        # is wrong.
        rest = re.match(r"[^,#]*", line[span.end - 1 :])
        at = len(line[: span.end - 1] + (rest[0] if rest else "").rstrip()) + 1
        yield Mend(f"Add {said}", (Edit(Span(span.file, span.line, at, at), f", {said}"),))

    return offer


def per_what(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """Say for how much a price is that buys by length."""
    place = Span(span.file, span.line, facts["at"], facts["at"])
    for unit in ("a foot", "a metre"):
        yield Mend(f"Add {unit}", (Edit(place, f" {unit}"),))


def add_price(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """Say what a stick cost: as much a foot as the nearest one in the stock lines."""
    if facts["likely"] is not None:
        place = replace(span, column=span.end)
        yield Mend(f"Add at {facts['likely']}", (Edit(place, f" at {facts['likely']}"),))


def hinges(span: Span, _facts: Facts, _line: str) -> Iterator[Mend]:
    """Say on which side a door is hinged that swings."""
    place = replace(span, column=span.end)
    for side in ("left", "right"):
        yield Mend(f"Add hinged {side}", (Edit(place, f", hinged {side}"),))


def name_trim(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Name a trim of the job, where the finding says that it lacks, or at the line's end."""
    # A finding knows the place where a heading stops; the line's end is the next best.
    lacks = facts.get("lacks_at")
    at = lacks.end if lacks is not None else end_of_words(line)
    place = replace(lacks or span, column=at, end=at)
    for trim in list(facts.get("trims", ()))[:MOST_OFFERED]:
        yield Mend(f"Add trim {trim}", (Edit(place, f", trim {trim}"),))


def own_alphabet(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Write a name with the letters that its others look like."""
    name = str(facts["name"])
    # Searched from the right: the name that is marked is the last before the mark ends.
    plain, at = looks_like(name), line.rfind(name, 0, span.end - 1 + len(name))
    if plain != name and plain.isascii() and at >= 0:
        yield write(replace(span, column=at + 1, end=at + 1 + len(name)), plain, sure=True)


def moved_above_rooms(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Move the whole line above the heading of the first room."""
    # In an include, or already above the first room, there is nowhere better to move it to.
    first = facts.get("first")
    if isinstance(first, Span) and (first.file, first.line) < (span.file, span.line):
        yield Mend(
            "Move the line above the first room",
            (
                Edit(Span(span.file, span.line, 1, len(line) + 1), ""),
                Edit(Span(first.file, first.line, 1, 1), f"{line.strip()}\n"),
            ),
            True,
        )


def either_uncoped(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Leave one or the other end of a run uncoped."""
    for end in _END.finditer(line, span.column - 1):
        place = replace(span, column=end.start() + 1, end=end.end() + 1)
        for mend in without_fit("cope")(place, facts, line):
            yield replace(mend, words=f"Leave the {end['side'].lower()} end uncoped")


def logged(words: str, *, below: bool = False) -> Callable[[Span, Facts, str], Iterator[Mend]]:
    """Return what writes a line of the site log above the finding's, or ``below`` it."""

    def offer(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
        said = words.format(**facts)
        # A log is read from above: what explains a later line goes before it, what follows from it
        # behind.
        at = len(line) + 1 if below else 1
        text = f"\n{said}" if below else f"{said}\n"
        yield Mend(f"Write “{said}”", (Edit(Span(span.file, span.line, at, at), text),))

    return offer


def own_tag(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """Give a room a tag of its own."""
    tag = f"as {facts['tag']}"
    yield Mend(f"Add “{tag}”", (Edit(replace(span, column=span.end), f" {tag}"),), True)


def usual_ends(span: Span, facts: Facts, _line: str) -> Iterator[Mend]:
    """Finish a line that stops before an end's joint."""
    for joint in USUAL_JOINTS:
        # Only what the grammar would take here; the finding lists it.
        if f"“{joint}”" in str(facts["wanted"]):
            yield Mend(f"Add {joint}", (Edit(replace(span, end=span.column), joint),))


def named_boxes(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Give boxes on a wall that has some already a name of their own."""
    found = re.match(r"\s*boxes\s+[^:\"“]+?(?=\s*:)", line, re.IGNORECASE)
    if found is not None:
        place = replace(span, column=found.end() + 1, end=found.end() + 1)
        yield Mend("Call them “second set”", (Edit(place, ' "second set"'),))


def moved_behind_an_opening(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Move what is said of an opening behind the opening that follows in the line."""
    # What belongs elsewhere is moved only where the line has the place for it.
    if "opening" not in str(facts["other"]):
        return
    part = line[span.column - 1 : span.end - 1]
    before = len(line[: span.column - 1].rstrip(", "))
    found = re.compile(r",\s*(?:door|window|opening|stair)\b[^,#]*[^,#\s]", re.IGNORECASE).search(
        line, span.end - 1
    )
    if found is not None:
        behind = replace(span, column=found.end() + 1, end=found.end() + 1)
        edits = (Edit(behind, f", {part}"), Edit(replace(span, column=before + 1), ""))
        yield Mend(f"Move “{part}” behind the opening", edits)


def level_return(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Let what climbs go on level for a little before the corner that is marked."""
    sides = re.findall(r"\b(left|right)\s*=", line[: span.column - 1], re.IGNORECASE)
    if sides:
        yield from add(f"level {sides[-1].lower()} 6 in")(span, {}, line)


def in_brackets(words: str) -> Callable[[Span, Facts, str], Iterator[Mend]]:
    """Return what says ``words`` in the brackets behind a joint."""

    def offer(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
        # A joint that has brackets already gets no second pair.
        if line[span.end - 2] == ")":
            place, text = replace(span, column=span.end - 1, end=span.end - 1), f", {words}"
        else:
            place, text = replace(span, column=span.end), f"({words})"
        yield Mend(f"Say “{words}”", (Edit(place, text),))

    return offer


def add_an_end(*more: str) -> Callable[[Span, Facts, str], Iterator[Mend]]:
    """Return what adds the end that lacks, for each usual joint and for ``more``."""

    def offer(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
        place = Span(span.file, span.line, facts["at"], facts["at"])
        # What climbs ends upright or level in the places where level trim returns.
        climbs = re.search(r"(?<!ceiling )\brising\b", line, re.IGNORECASE)
        for joint in (*USUAL_JOINTS, *(_CLIMBING if climbs else more)):
            yield Mend(f"Add {facts['side']}={joint}", (Edit(place, f", {facts['side']}={joint}"),))

    return offer


def taken_of(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Say which of two trims the scraps were of."""
    found = re.search(r"\btaken point\b", line, re.IGNORECASE)
    if found is not None:
        place = Span(span.file, span.line, found.end() + 1, found.end() + 1)
        # Nobody but the surveyor knows which, so both are offered.
        for trim in (facts["trim"], facts["other"]):
            yield Mend(f"Add “of {trim}”", (Edit(place, f" of {trim}"),))


def as_a_mitre(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Say that an angle too sharp for a corner is how the saw was set there."""
    if Fraction(str(facts["degrees"])) <= _LARGEST_SETTING:
        yield write(span, f"mitre {marked(span, line)}")


def as_it_can_be_cut(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Write a joint with the angle that the remedy names, where it names one."""
    said = re.search(r"(?P<joint>[\w-]+)\([^)]*\)", str(facts["instead"]))
    here = said and re.match(rf"{said['joint']}\s*\([^)]*\)", marked(span, line), re.IGNORECASE)
    if said and here:
        yield write(replace(span, end=span.column + here.end()), said[0])


def as_bare_wall(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Leave a run bare, as long as it is, under its name."""
    found = re.match(r"\s*(?P<all>[^:#]*?\s*:\s*(?P<long>\d[^,#]*[^,#\s])[^#]*[^#\s])", line)
    if found is not None:
        place = replace(span, column=found.start("all") + 1, end=found.end("all") + 1)
        yield write(place, f'bare {found["long"]}, "{facts["run"]}"')


def uncased(span: Span, facts: Facts, line: str) -> Iterator[Mend]:
    """Leave an opening's casing out: its own, or the one that its room gives it."""
    own = list(without_words(r"casing [^,#]*[^,#\s]")(span, facts, line))
    yield from own or add("no casing")(span, facts, line)


def on_one_run(span: Span, _facts: Facts, line: str) -> Iterator[Mend]:
    """Lay boxes out on the first or on the last run alone, and not along the wall between."""
    found = re.match(r"\s*boxes\s+(?P<both>(?P<one>\S+)\s+to\s+(?P<other>[^\s:]+))", line)
    if found is not None:
        place = replace(span, column=found.start("both") + 1, end=found.end("both") + 1)
        yield from (write(place, found[run]) for run in ("one", "other"))
