"""The survey pass: turns a parsed file into a job."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

from trimlang.diagnostics import Diagnostic, Span, Whole
from trimlang.diagnostics.place import place
from trimlang.language import tree
from trimlang.language.facts import Side, Unread
from trimlang.settings.table import Settings
from trimlang.survey.assemblies import spelled_out
from trimlang.survey.closing import check_closure
from trimlang.survey.copes import choose_copes
from trimlang.survey.crooked import lean
from trimlang.survey.every_room import said_for_each
from trimlang.survey.implied import imply_corners
from trimlang.survey.job import Gap, Job, Room, Trim
from trimlang.survey.lookalikes import find_lookalikes
from trimlang.survey.measures import Findings
from trimlang.survey.offers import bought_by_length
from trimlang.survey.own_copes import cope_alone
from trimlang.survey.questions import ask_of_lines, ask_of_room, ask_of_trims
from trimlang.survey.repeats import find_repeats
from trimlang.survey.rooms import read_rooms
from trimlang.survey.said_settings import apply
from trimlang.survey.shared_openings import check_shared_openings
from trimlang.survey.stairs import bend_rakes
from trimlang.survey.trim_lists import with_lists_begun
from trimlang.survey.trims import lost_names, read_trims
from trimlang.survey.verdict import Closing
from trimlang.survey.walk import meet
from trimlang.survey.wall_blocks import blocks_of
from trimlang.survey.way_round import check_names

if TYPE_CHECKING:
    from trimlang.survey.log_entries import Entry


def survey(
    statements: tuple[tree.Statement, ...], file: str
) -> tuple[Job, tuple[Closing, ...], tuple[Diagnostic, ...]]:
    """Return the job that the statements describe, how its rooms close, and what is wrong.

    The job holds everything that could be understood; it may be built from only where no finding
    is an error.
    """
    findings = Findings()
    # On the lines as they were written, before any meaning is given to them: what stands twice
    # would otherwise win or lose by its place.
    find_repeats(statements, findings)
    # What is said once for all, and assemblies, first: nothing below this line knows of them.
    statements = with_lists_begun(statements, findings)
    statements = spelled_out(said_for_each(statements, findings), findings)
    find_lookalikes(statements, findings)
    # The settings come before the trims, since `unit` says what the trims' bare numbers mean.
    settings = _file_settings(statements, findings)
    trims = read_trims(statements, settings, findings)
    # Each step needs the one before it: how walls meet, then the corners that the others imply,
    # then how rakes bend, and last which sides are coped, which looks at the finished plan.
    rooms = tuple(
        _joined(room, trims, findings) for room in read_rooms(statements, settings, trims, findings)
    )
    log: tuple[Entry, ...] = ()
    if any(isinstance(line, tree.LOG_LINES) for line in statements):
        # Imported here: most jobs have no log.
        from trimlang.survey.log_reading import read_log, with_logged

        log = read_log(statements, trims, settings.unit, findings)
        # Lengths that only the log knows must be known before pieces are planned on them.
        trims = with_logged(trims, log)
    # Trims whose missing thickness has been reported, by walls or by loose pieces.
    said: set[str] = set()
    closings: list[Closing] = []
    for room in rooms:
        _check_thickness(room, trims, said, findings)
        _check_loose(room, trims, said, findings)
        closings.append(check_closure(room, trims.values(), findings))
        check_names(room, findings)
        ask_of_room(room, findings)
    check_shared_openings(rooms, tuple(trims.values()), findings)
    ask_of_lines(statements, findings)
    ask_of_trims(trims.values(), rooms, findings)
    _check_trims(statements, trims, rooms, findings)
    if not rooms and not any(isinstance(line, tree.Unreadable) for line in statements):
        findings.say("T206", Span(file, 1, 1, 2))
    name, surveyed, currency = _headings(statements, findings)
    # Without a `currency` line the sign of the first price that has one is taken.
    signs = [offer.price.sign for line in statements if isinstance(line, tree.StockLine)
             for offer in line.offers if offer.price and offer.price.sign]  # fmt: skip
    job = Job(
        by_length=bought_by_length(statements),
        name=name or "Trim job",
        surveyed=surveyed,
        currency=currency or (signs[0] if signs else ""),
        settings=settings,
        trims=tuple(trims.values()),
        rooms=rooms,
        log=log,
    )
    return job, tuple(closings), tuple(findings.found)


def _joined(room: Room, trims: dict[str, Trim], findings: Findings) -> Room:
    """Return a room whose walls meet as the file says, with corners, bends and copes filled in."""
    room = lean(imply_corners(meet(room, findings), findings), trims.values())
    room = choose_copes(bend_rakes(room, trims, findings), trims, findings)
    return cope_alone(room, findings)


def _file_settings(statements: tuple[tree.Statement, ...], findings: Findings) -> Settings:
    """Apply the settings above the first room; the unit first, as it says what numbers mean."""
    above: list[tree.SettingLine] = []
    for line in statements:
        if isinstance(line, tree.RoomLine):
            break
        if isinstance(line, tree.SettingLine):
            above.append(line)
    settings = Settings()
    # Only the unit is moved to the front; sorted() keeps the others as they stand, since the last
    # of two lines holds.
    for line in sorted(above, key=lambda line: line.facts[0].row() is not Settings.unit):
        settings = apply(settings, line, findings, in_room=None)
    return settings


def _headings(
    statements: tuple[tree.Statement, ...], findings: Findings
) -> tuple[str | None, str | None, str | None]:
    found: dict[tree.Topic, tree.Heading] = {}
    for line in statements:
        if not isinstance(line, tree.Heading):
            continue
        if line.topic in found:
            before = place(found[line.topic].span, line.span)
            findings.say("T207", line.span, word=f"“{line.topic}”", line=before)
        else:
            found[line.topic] = line
    if tree.Topic.SURVEYED in found:
        _check_date(found[tree.Topic.SURVEYED].word, findings)
    name, surveyed, currency = (
        found[topic].word.text if topic in found else None for topic in tree.Topic
    )
    return name, surveyed, currency


def _check_date(word: tree.Word, findings: Findings) -> None:
    try:
        date.fromisoformat(word.text)
    except ValueError:
        findings.say("T208", word.span, date=word.text)


def _check_thickness(
    room: Room, trims: dict[str, Trim], said: set[str], findings: Findings
) -> None:
    """Report ends whose length depends on a size of the trim that the file does not give."""
    for run in room.runs:
        for name in run.trims:
            # Crown climbs with a ceiling, which is said of the ceiling; at a stair's pitch its back
            # would not lie on wall and ceiling.
            if run.slope and trims[name].spring is not None:
                findings.say("T247", run.span, run=run.label, trim=name)
        for side in Side:
            for name in run.trims:
                end = run.end_of(name, side)
                # On a slope trim ends upright in a corner too, and turns it by its thickness.
                turns = bool(run.slope) and end.joint.is_corner
                if (turns or end.joint.row.needs_height) and trims[name].height is None:
                    findings.say("T246", end.span, joint=end.joint, trim=name, run=run.label)
                # How long a crown is follows from its wall edge; only a scarf goes through its
                # thickness.
                if trims[name].spring is not None and not end.joint.laps:
                    continue
                thin = trims[name].thickness is None
                if (turns or end.joint.row.needs_thickness) and thin and name not in said:
                    findings.say("T211", end.span, joint=end.joint, trim=name, run=run.label)
                    said.add(name)  # told once: one line in the file mends it everywhere


def _check_loose(room: Room, trims: dict[str, Trim], said: set[str], findings: Findings) -> None:
    """Report loose pieces whose short edge depends on a thickness that the file does not give."""
    for loose in room.loose:
        for end in (loose.left, loose.right):
            thin = trims[loose.trim].thickness is None
            if end.joint.is_corner and thin and loose.trim not in said:
                findings.say(
                    "T211", end.span, joint=end.joint, trim=loose.trim, run=f"“{loose.called}”"
                )
                said.add(loose.trim)


def _check_trims(
    statements: tuple[tree.Statement, ...],
    trims: dict[str, Trim],
    rooms: tuple[Room, ...],
    findings: Findings,
) -> None:
    used = {name for room in rooms for run in room.runs for name in run.trims}
    # A stock line that could not be read may be the one that sells a trim: do not report it
    # missing.
    stocked = lost_names(statements, "stock") | lost_names(statements, "on-hand")
    stocked |= {
        line.name.text for line in statements if isinstance(line, tree.StockLine | tree.OnHandLine)
    }
    # A line that could not be read may be the one that uses a trim.
    all_read = not any(
        isinstance(line, tree.Unreadable)
        or (
            isinstance(line, tree.RoomLine | tree.RunLine | tree.LoosePieceLine | tree.BoxesLine)
            and any(isinstance(fact, Unread) for fact in line.facts)
        )
        for line in statements
    )
    all_read = all_read and not any(
        isinstance(stretch, Gap) and stretch.is_lost for room in rooms for stretch in room.walk
    )
    # An error elsewhere may have taken a wall out of the job, and with it the use of a trim.
    all_known = all(finding.page.loses is not Whole.USES for finding in findings.found)
    blocks: set[str] = set()
    for room in rooms:
        used |= set(room.trims_besides)
        blocks |= {there.block.name for there in blocks_of(room)}
        for gap in room.walk:
            if isinstance(gap, Gap):
                used |= set(gap.trims)
    for line in statements:
        if isinstance(line, tree.BlockLine) and line.name.text not in blocks and all_read:
            findings.say("T438", line.name.span, block=line.name.text)
    for name, trim in trims.items():
        if name not in used:
            if all_read and all_known:
                findings.say("T214", trim.span, trim=name)
        elif name not in stocked:
            findings.say("T212", trim.span, trim=name)
        if name in used and trim.spring is not None and trim.height is None:
            findings.say("T239", trim.span, trim=name)
        behind = trim.in_front_of
        if name in used and behind is not None and trims[behind].thickness is None:
            findings.say("T211", trim.span, joint="lap", trim=behind, run="every run")
