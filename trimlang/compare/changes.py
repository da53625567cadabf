"""What changed from one version of a job to the next: pieces, tickets, order and money."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from trimlang.compare.cut_already import Wrong, sawn, wrong_pieces
from trimlang.compare.matching import Matched, Renamed, match_pieces
from trimlang.compare.order_changes import CostParts, OrderLine, money_of, order_lines
from trimlang.compare.piece_facts import (
    ON_STICKS,
    FactName,
    PieceFact,
    cut_facts,
    pen_of,
    ticket_facts,
)
from trimlang.compiler import Result
from trimlang.joinery.piece import Piece
from trimlang.record import record
from trimlang.sheets.content.ticket import tickets
from trimlang.site_log.progress_of_job import State
from trimlang.survey.log_entries import Entry


@record
class Change:
    """A piece that both versions have, and how it differs.

    ``cut`` is what the saw does differently, ``on_ticket`` what else its ticket says
    differently; with either, the ticket must be printed again.  ``sticks`` are the labels of
    the sticks that it is cut from in the old and the new version.
    """

    old: Piece
    new: Piece
    cut: tuple[PieceFact, ...]
    on_ticket: tuple[PieceFact, ...]
    sticks: tuple[str, str]

    @property
    def only_moved(self) -> bool:
        """Whether the piece is the same and is only cut from another place on the sticks."""
        return not self.cut and {fact.what for fact in self.on_ticket} <= set(ON_STICKS)


@record
class Stood:
    """A piece that the two versions' site logs do not agree about, such as cut, then fitted."""

    id: str
    before: State
    now: State


@record
class Comparison:
    """Everything that differs in meaning; ``same`` is true where nothing does.

    ``reprint`` are the ids of the tickets to print, in the order of the new job: new pieces,
    pieces to cut again, and pieces whose ticket now says something else.  A piece that is
    already cut and would only come from another stick needs no new ticket.
    """

    renamed: tuple[Renamed, ...]
    added: tuple[Piece, ...]
    gone: tuple[Piece, ...]
    changed: tuple[Change, ...]
    stood: tuple[Stood, ...]
    wrong: tuple[Wrong, ...]
    reprint: tuple[str, ...]
    order: tuple[OrderLine, ...]
    old_money: CostParts
    new_money: CostParts

    @property
    def same(self) -> bool:
        """Whether both versions mean the same."""
        lists = (
            self.renamed, self.added, self.gone, self.changed, self.stood, self.order
        )  # fmt: skip
        return not any(lists) and self.old_money == self.new_money

    @property
    def recut(self) -> tuple[Change, ...]:
        """The pieces that the saw must cut differently."""
        return tuple(change for change in self.changed if change.cut)

    @property
    def only_on_paper(self) -> tuple[Change, ...]:
        """The pieces that are cut as before, whose tickets differ in more than the stick."""
        return tuple(one for one in self.changed if not one.cut and not one.only_moved)

    @property
    def moved(self) -> tuple[Change, ...]:
        """The pieces that are only cut from another place on the sticks."""
        return tuple(change for change in self.changed if change.only_moved)


def compare(
    old: Result,
    new: Result,
    cut: Collection[str] = (),
    logs: tuple[Sequence[Entry], Sequence[Entry]] | None = None,
) -> Comparison:
    """Compare two compiled jobs, both without errors.

    ``cut`` are ids of the old job that the user says are cut, besides those in the site logs.
    ``logs`` are the old and the new site log where the jobs were planned without them; where
    it is None, each job's own log is read.
    """
    # Three things are found one after the other, each from the one before: what is already sawn,
    # which piece of the old job is which of the new one, and how the two of a pair differ.
    saw = sawn(*(logs or (old.job.log, new.job.log)), cut)
    matched = match_pieces(old.job, _asked(old), new.job, _asked(new))
    # The tickets are compared, not the plans, since a ticket is what a hand holds: what does not
    # show on it needs no new print.
    printed = [
        {ticket.id: ticket for ticket in tickets(result, pen_of(result.job), dated=False)}
        for result in (old, new)
    ]
    labels = [_sticks(result) for result in (old, new)]
    changed: list[Change] = []
    for before, after in matched.pairs:
        facts = tuple(cut_facts(before, after, old.job, new.job))
        on_ticket: tuple[PieceFact, ...] = ()
        if before.id in printed[0] and after.id in printed[1]:
            on_ticket = tuple(ticket_facts(printed[0][before.id], printed[1][after.id]))
        # One of the two has no ticket (as when it is fitted already), but a new name is still news.
        elif before.id != after.id:
            on_ticket = (PieceFact(FactName.NAME, before.id, after.id),)
        if facts and on_ticket and on_ticket[0].what is FactName.DRAWING:
            on_ticket = ()  # the cut facts say it already
        if facts or on_ticket:
            sticks = (labels[0].get(before.id, ""), labels[1].get(after.id, ""))
            changed.append(
                Change(old=before, new=after, cut=facts, on_ticket=on_ticket, sticks=sticks)
            )
    # a piece that is cut and right needs no ticket that says which stick it would come from
    done = {one.new.id for one in changed if one.only_moved and saw.was_cut(one.old, one.new)}
    again = {change.new.id for change in changed} | {piece.id for piece in matched.added}
    # A piece that had no ticket in the old version has none on paper yet.
    again |= {after.id for before, after in matched.pairs if before.id not in printed[0]}
    again = (again & printed[1].keys()) - done
    return Comparison(
        renamed=tuple(sorted(matched.renamed, key=lambda one: one.what)),
        added=matched.added,
        gone=matched.gone,
        changed=tuple(changed),
        stood=tuple(_stood(matched, old, new)),
        wrong=tuple(wrong_pieces(matched, saw, old.job, new.job)),
        reprint=tuple(piece.id for piece in new.pieces if piece.id in again),
        order=tuple(order_lines(old, new)),
        old_money=money_of(old),
        new_money=money_of(new),
    )


def _asked(result: Result) -> tuple[Piece, ...]:
    """Return the pieces as the survey asks for them, even where they were cut to another length."""
    if result.progress is None:
        return result.pieces
    return tuple(result.progress.asked.get(piece.id, piece) for piece in result.pieces)


def _stood(matched: Matched, old: Result, new: Result) -> Iterator[Stood]:
    if old.progress is None or new.progress is None:
        return
    for before, after in matched.pairs:
        was, now = old.progress.state(before.id), new.progress.state(after.id)
        if was is not now:
            yield Stood(after.id, was, now)


def _sticks(result: Result) -> dict[str, str]:
    """Return the label of the stick that each piece is cut from, by the piece's id."""
    return {
        place.piece: stick.id
        for plan in result.plans
        for stick in plan.sticks
        for place in stick.places
    }
