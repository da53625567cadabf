"""Reads rooms and their walls."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from fractions import Fraction

from trimlang.diagnostics import Span
from trimlang.diagnostics.place import place
from trimlang.language import tree
from trimlang.survey.ends import read_sides
from trimlang.survey.gaps import read_gap
from trimlang.survey.job import Gap, Room, Run, Stretch, Trim
from trimlang.survey.measures import Findings, length, not_negative
from trimlang.survey.near_names import unknown_trim
from trimlang.survey.room_tags import room_tag
from trimlang.survey.setting import apply
from trimlang.survey.settings import Settings
from trimlang.survey.stairs import read_slope

RUN_WORDS = ("left", "right", "splice", "note", "no splice", "taken", "trim")
_BELOW = (tree.RunLine, tree.GapLine, tree.SettingLine, tree.Unreadable)


def read_rooms(
    lines: Iterable[tree.Statement], settings: Settings, trims: dict[str, Trim], findings: Findings
) -> tuple[Room, ...]:
    """Return the job's rooms in the order of the file."""
    groups: list[tuple[tree.RoomLine, list[tree.Statement]]] = []
    lost = False
    for line in lines:
        if isinstance(line, tree.RoomLine):
            groups.append((line, []))
            lost = False
        elif _is_heading(line):
            lost = True  # reported already; its walls belong to no other room
        elif isinstance(line, _BELOW):
            if lost:
                continue
            if groups:
                groups[-1][1].append(line)
            elif not isinstance(line, tree.SettingLine | tree.Unreadable):
                findings.say("T220", line.span)
    rooms: list[Room] = []
    named: dict[str, Span] = {}
    tags: dict[str, str] = {}
    for heading, below in groups:
        name = heading.name.text
        again = name.casefold() in named
        if again:
            before = place(named[name.casefold()], heading.span)
            findings.say("T221", heading.name.span, room=name, line=before)
        named.setdefault(name.casefold(), heading.span)
        tag = heading.tag.text if heading.tag else room_tag(name, tags)
        if heading.tag and tag in tags:
            findings.say("T222", heading.tag.span, tag=tag, room=tags[tag])
        elif not heading.tag and not again and tag != (plain := room_tag(name, ())):
            findings.say(
                "T641", heading.name.span, room=name, tag=tag, other=tags[plain], plain=plain
            )
        tags.setdefault(tag, name)
        rooms.append(_Reader(heading, tag, settings, trims, findings).room(below))
    return tuple(rooms)


class _Reader:
    """Reads one room; it holds what the room's lines share."""

    def __init__(
        self,
        heading: tree.RoomLine,
        tag: str,
        settings: Settings,
        trims: dict[str, Trim],
        findings: Findings,
    ) -> None:
        self._heading = heading
        self._tag = tag
        self._settings = settings
        self._trims = trims
        self._findings = findings
        self._room_trims: tuple[str, ...] = ()

    def room(self, below: list[tree.Statement]) -> Room:
        heading, findings = self._heading, self._findings
        self._room_trims = self._named_trims(heading.facts, ("open walk", "taken", "note", "trim"))
        note = _note(heading.facts)
        for fact in heading.facts:
            if fact.kind == "taken" and isinstance(fact.values[0], tree.Word):
                self._settings = replace(self._settings, taken=fact.values[0].text)
        for line in below:
            if isinstance(line, tree.SettingLine):
                self._settings = apply(self._settings, line, findings, in_room=heading.name.text)
        walk: list[Stretch] = []
        labels: dict[str, Span] = {}
        for line in below:
            if isinstance(line, tree.RunLine):
                label = line.label.text
                if label.casefold() in labels:
                    findings.say(
                        "T223",
                        line.label.span,
                        run=label,
                        room=heading.name.text,
                        line=place(labels[label.casefold()], line.span),
                    )
                labels.setdefault(label.casefold(), line.span)
                walk.append(self._run(line) or _lost(line.span))
            elif isinstance(line, tree.GapLine):
                gap = read_gap(line, self._settings, self._trims, findings)
                walk.append(gap or _lost(line.span))
            elif isinstance(line, tree.Unreadable):
                walk.append(_lost(line.span))
        if not walk:
            findings.say("T224", heading.name.span, room=heading.name.text)
        open_walk = any(fact.kind == "open_walk" for fact in heading.facts)
        return Room(
            heading.name.text,
            self._tag,
            tuple(walk),
            open_walk,
            self._settings,
            note,
            heading.name.span,
        )

    def _named_trims(self, facts: tuple[tree.Fact, ...], also: tuple[str, ...]) -> tuple[str, ...]:
        """Return the trims that a line names: “trim base, shoe”."""
        named: list[str] = []
        listed = False
        for fact in facts:
            if fact.kind not in ("trims", "also_trim"):
                continue
            listed = listed or fact.kind == "trims"
            word = fact.values[0]
            assert isinstance(word, tree.Word)  # noqa: S101  the grammar says so
            if word.text not in self._trims:
                unknown_trim(word, self._trims, self._findings, also)
            elif not listed:
                self._findings.say("T216", word.span, trim=word.text)
            elif word.text not in named:
                named.append(word.text)
        return tuple(named)

    def _run(self, line: tree.RunLine) -> Run | None:
        findings, label = self._findings, line.label.text
        long = length(line.length, self._settings.unit, findings, what=f"run {label}")
        trims = self._named_trims(line.facts, RUN_WORDS)
        if not trims:
            trims = self._room_trims
        taken, splice, may_splice = self._settings.taken, False, self._settings.may_splice
        stud: Fraction | None = None
        floor_gap = Fraction(0)
        for fact in line.facts:
            word = fact.values[0] if fact.values else None
            if fact.kind == "without" and isinstance(word, tree.Word):
                if word.text not in self._trims:
                    unknown_trim(word, self._trims, findings, ("splice",))
                trims = tuple(trim for trim in trims if trim != word.text)
            elif fact.kind == "taken" and isinstance(word, tree.Word):
                taken = word.text
            elif fact.kind == "may_splice":
                splice = may_splice = True
            elif fact.kind == "no_splice":
                splice, may_splice = False, False
            elif fact.kind == "first_stud" and isinstance(word, tree.Measure):
                stud = not_negative(word, self._settings.unit, findings, what="the first stud")
            elif fact.kind == "floor_gap" and isinstance(word, tree.Measure):
                measured = not_negative(word, self._settings.unit, findings, what="a floor gap")
                floor_gap = measured or Fraction(0)
        ends = read_sides(line.facts, taken, self._settings, findings)
        for side in ("left", "right"):
            if side not in ends:
                findings.say("T225", line.label.span, run=label, side=side)
        if not any(_names_a_trim(facts) for facts in (line.facts, self._heading.facts)):
            findings.say("T217", line.label.span, run=label, room=self._heading.name.text)
        left, right = ends.get("left"), ends.get("right")
        if long is None or left is None or right is None:
            return None
        return Run(
            label,
            long,
            left,
            right,
            trims,
            splice,
            may_splice,
            _note(line.facts),
            line.label.span,
            stud,
            read_slope(line.facts, self._settings, findings),
            floor_gap,
        )


def _is_heading(line: tree.Statement) -> bool:
    """Tell whether an unreadable line was most likely a room's heading."""
    if not isinstance(line, tree.Unreadable) or not line.words:
        return False
    from trimlang.language.mistakes import line_words
    from trimlang.language.near_words import nearest

    return nearest(line.words[0], line_words()) == "room"


def _lost(span: Span) -> Gap:
    return Gap("lost", Fraction(0), None, False, None, None, None, span)


def _names_a_trim(facts: tuple[tree.Fact, ...]) -> bool:
    # a part that could not be read may be the one that names it
    return any(fact.kind in ("trims", "also_trim", "unread") for fact in facts)


def _note(facts: tuple[tree.Fact, ...]) -> str | None:
    word = next((fact.values[0] for fact in facts if fact.kind == "note"), None)
    return word.text if isinstance(word, tree.Word) else None
