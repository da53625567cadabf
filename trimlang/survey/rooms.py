"""Reads rooms and the lines below their headings."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction

from trimlang.diagnostics import Span
from trimlang.diagnostics.place import place
from trimlang.joints import Joint
from trimlang.language import facts, tree
from trimlang.language.facts import Side
from trimlang.settings.table import Settings
from trimlang.survey.box_layout import read_boxes
from trimlang.survey.diagonals import read_diagonals
from trimlang.survey.ends import Taken, read_sides
from trimlang.survey.gaps import lost_wall, read_gap
from trimlang.survey.job import End, Room, Run, Stretch, Trim
from trimlang.survey.level_returns import with_level_returns
from trimlang.survey.measures import Findings, length, not_negative
from trimlang.survey.near_names import may_be_heading, unknown_trim
from trimlang.survey.own_ends import read_own_ends
from trimlang.survey.room_tags import room_tag
from trimlang.survey.said_blocks import ByName, read_by_name
from trimlang.survey.said_pieces import note_in, read_loose_pieces
from trimlang.survey.said_settings import apply
from trimlang.survey.stairs import climbing
from trimlang.survey.unsaid_ends import WallLine, fill_ends
from trimlang.survey.wall_blocks import on_floor

# Words that may stand where a trim's name was expected, to suggest for a misspelled one.
RUN_WORDS = (
    "left", "right", "splice", "note", "no splice", "taken", "trim", "open side", "wall side",
)  # fmt: skip
_BELOW = (
    tree.RunLine,
    tree.GapLine,
    tree.DiagonalLine,
    tree.LoosePieceLine,
    tree.BoxesLine,
    tree.SettingLine,
    tree.Unreadable,
)


def read_rooms(
    lines: Iterable[tree.Statement], settings: Settings, trims: dict[str, Trim], findings: Findings
) -> tuple[Room, ...]:
    """Return the job's rooms in the order of the file."""
    lines = tuple(lines)
    by_name = read_by_name(lines, trims, settings.unit, findings)
    groups: list[tuple[tree.RoomLine, list[tree.Statement]]] = []
    lost = False
    for line in lines:
        if isinstance(line, tree.RoomLine):
            groups.append((line, []))
            lost = False
        elif may_be_heading(line):
            lost = True  # reported already; its walls must not go to the room above
        elif isinstance(line, _BELOW) and not lost:
            if groups:
                groups[-1][1].append(line)
            elif not isinstance(line, tree.SettingLine | tree.Unreadable):
                findings.say("T220", line.span)
                lost = True  # said once of all walls down to the next room
    rooms: list[Room] = []
    named: dict[str, Span] = {}
    tags: dict[str, str] = {}
    for heading, below in groups:
        name = heading.name.text
        # Names are compared without case: on a ticket, “Den” and “DEN” are one room to the reader.
        again = name.casefold() in named
        if again:
            before = place(named[name.casefold()], heading.span)
            findings.say("T221", heading.name.span, room=name, line=before)
        named.setdefault(name.casefold(), heading.span)
        tag = heading.tag.text if heading.tag else room_tag(name, tags)
        if heading.tag and tag in tags:
            findings.say("T222", heading.tag.span, tag=tag, room=tags[tag])
        # The number depends on the room above: who puts another room before it would change ids
        # that are already pencilled on pieces.
        elif not heading.tag and not again and tag != (plain := room_tag(name, ())):
            findings.say(
                "T641", heading.name.span, room=name, tag=tag, other=tags[plain], plain=plain
            )
        tags.setdefault(tag, name)
        reader = _RoomReader(heading, tag, settings, trims, by_name, findings)
        rooms.append(reader.room(below, groups[0][0].span))
    return tuple(rooms)


class _RoomReader:
    """Reads one room; it holds what the room's lines have in common."""

    def __init__(
        self,
        heading: tree.RoomLine,
        tag: str,
        settings: Settings,
        trims: dict[str, Trim],
        by_name: ByName,
        findings: Findings,
    ) -> None:
        self._heading = heading
        self._tag = tag
        self._settings = settings
        self._trims = trims
        self._by_name = by_name
        self._findings = findings
        self._room_trims: tuple[str, ...] = ()
        self._scraps_of: str | None = None

    def room(self, below: list[tree.Statement], first: Span) -> Room:
        """Return the room; ``first`` is where the job's first room begins."""
        heading, findings = self._heading, self._findings
        self._room_trims = self._named_trims(heading.facts, ("open walk", "taken", "note", "trim"))
        note = note_in(heading.facts)
        for fact in heading.facts:
            if isinstance(fact, facts.WrittenTaken):
                self._settings = self._settings.having(Settings.taken, fact.at)
                self._scraps_of = self._scraps(fact)
            elif isinstance(fact, facts.Stated):
                said = tree.SettingLine((fact,), fact.span)
                self._settings = apply(self._settings, said, findings, in_room=heading.name.text)
        lines: list[WallLine] = []
        # All settings first, wherever they stand below the heading: they hold for every wall of the
        # room.
        for one in below:
            if isinstance(one, tree.SettingLine):
                self._settings = apply(
                    self._settings, one, findings, in_room=heading.name.text, first=first
                )
            elif isinstance(one, WallLine):
                lines.extend(with_level_returns(one))
        self._ask_for_trims(line for line in lines if isinstance(line, tree.RunLine))
        walk: list[Stretch] = []
        labels: dict[str, Span] = {}
        open_walk = any(isinstance(fact, facts.OpenWalk) for fact in heading.facts)
        for line, ends in zip(lines, self._ends(lines, open_walk=open_walk), strict=True):
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
                # A wall that could not be read keeps its place: without it the walls beside it
                # would seem to meet, and their corners would be reported for no fault of their own.
                walk.append(self._run(line, ends) or lost_wall(line.span))
            elif isinstance(line, tree.GapLine):
                gap = read_gap(
                    line,
                    ends,
                    settings=self._settings,
                    trims=self._trims,
                    by_name=self._by_name,
                    findings=findings,
                    # A block stops what stands on the floor at both its sides.
                    on_floor=on_floor(
                        self._room_trims,
                        lines if isinstance(line.width, tree.Word) else (),
                        self._trims,
                    ),
                )
                walk.append(gap or lost_wall(line.span))
            else:
                walk.append(lost_wall(line.span))
        loose = read_loose_pieces(
            (line for line in below if isinstance(line, tree.LoosePieceLine)),
            labels=labels,
            room_trims=self._room_trims,
            settings=self._settings,
            trims=self._trims,
            findings=findings,
        )
        if not walk and not any(isinstance(line, tree.LoosePieceLine) for line in below):
            findings.say("T224", heading.name.span, room=heading.name.text)
        across = [line for line in below if isinstance(line, tree.DiagonalLine)]
        return Room(
            name=heading.name.text,
            tag=self._tag,
            walk=tuple(walk),
            open_walk=open_walk,
            settings=self._settings,
            note=note,
            span=heading.name.span,
            diagonals=read_diagonals(across, walk, self._settings, findings, open_walk=open_walk),
            loose=loose,
            boxes=read_boxes(
                (line for line in below if isinstance(line, tree.BoxesLine)),
                walk,
                settings=self._settings,
                trims=self._trims,
                findings=findings,
            ),
        )

    def _named_trims(self, said: tuple[facts.Fact, ...], also: tuple[str, ...]) -> tuple[str, ...]:
        """Return the trims that a line names, as in “trim base, shoe”."""
        named: list[str] = []
        for fact in said:
            if not isinstance(fact, facts.NamedTrim):
                continue
            word = fact.trim
            if word.text not in self._trims:
                unknown_trim(word, self._trims, self._findings, also)
            elif word.text not in named:
                named.append(word.text)
        return tuple(named)

    def _ask_for_trims(self, runs: Iterable[tree.RunLine]) -> None:
        """Say which walls have nothing to cut: neither they nor the room name a trim."""
        heading = self._heading
        # A part that could not be read may be the one that names a trim.
        naming, said = {facts.NamedTrim, facts.Unread}, heading.facts
        bare = [one.label for one in runs if naming.isdisjoint(map(type, (*said, *one.facts)))]
        if bare:
            self._findings.say(
                "T217",
                heading.name.span if bare[1:] else bare[0].span,
                runs=("runs " if bare[1:] else "run ") + ", ".join(one.text for one in bare),
                room=heading.name.text,
                lacks_at=heading.span,
                trim=next(iter(self._trims), "base"),
                trims=tuple(self._trims),
            )

    def _scraps(self, fact: facts.WrittenTaken) -> str | None:
        """Return the trim whose scraps the tape ran over, None where the line names none."""
        if fact.of is not None and fact.of.text not in self._trims:
            unknown_trim(fact.of, self._trims, self._findings)
            return None
        return fact.of.text if fact.of is not None else None

    def _ends(self, lines: Sequence[WallLine], *, open_walk: bool) -> list[dict[Side, End]]:
        """Return the ends of all walls; a joint may be said at either side or for the room."""
        said: list[dict[Side, End]] = []
        for line in lines:
            stated = () if isinstance(line, tree.Unreadable) else line.facts
            taken = Taken(self._settings.taken, self._scraps_of)
            for fact in stated:
                if isinstance(fact, facts.WrittenTaken):
                    taken = Taken(fact.at, self._scraps(fact))
                elif isinstance(fact, facts.AtEnd):
                    # An end may be taken over other scraps than its wall; here their names are only
                    # checked.
                    for one in fact.end.facts:
                        if isinstance(one, facts.WrittenTaken):
                            self._scraps(one)
            said.append(read_sides(stated, taken, self._settings, self._findings, self._by_name))
        usual = Joint.of(self._settings.ends) if self._settings.ends else None
        return fill_ends(lines, said, usual, self._findings, self._heading, open_walk=open_walk)

    def _run(self, line: tree.RunLine, ends: dict[Side, End]) -> Run | None:
        findings, label = self._findings, line.label.text
        long = length(line.length, self._settings.unit, findings, what=f"run {label}")
        # A run's own trims replace the room's.
        trims = self._named_trims(line.facts, RUN_WORDS)
        if not trims:
            trims = self._room_trims
        splice, may_splice = False, self._settings.may_splice
        stud: Fraction | None = None
        floor_gap = Fraction(0)
        for fact in line.facts:
            match fact:
                case facts.Without(trim=word):
                    if word.text not in self._trims:
                        unknown_trim(word, self._trims, findings, ("splice",))
                    trims = tuple(trim for trim in trims if trim != word.text)
                case facts.Spliced():
                    splice = may_splice = fact.wanted
                case facts.FirstStud(at=at):
                    stud = not_negative(at, self._settings.unit, findings, what="the first stud")
                case facts.FloorGap(gap=gap):
                    measured = not_negative(gap, self._settings.unit, findings, what="a floor gap")
                    floor_gap = measured or Fraction(0)
        # What is wrong with these was reported above; the wall keeps its place in the walk as lost.
        left, right = ends.get(Side.LEFT), ends.get(Side.RIGHT)
        if long is None or left is None or right is None:
            return None
        run = Run(
            label=label,
            length=long,
            left=left,
            right=right,
            trims=trims,
            must_splice=splice,
            may_splice=may_splice,
            note=note_in(line.facts),
            span=line.label.span,
            first_stud=stud,
            floor_gap=floor_gap,
            own_ends=read_own_ends(line, trims, self._trims, ends, self._settings, findings),
        )
        return climbing(run, line.facts, self._settings, findings)
