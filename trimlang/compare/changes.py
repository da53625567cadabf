"""What has changed from one version of a job to the next: pieces, tickets, order and money."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence

from trimlang.compare.cut_already import Wrong, sawn, wrong_pieces
from trimlang.compare.matching import Matched, Renamed, match_pieces
from trimlang.compare.order_changes import CostParts, OrderLine, money_of, order_lines
from trimlang.compare.piece_facts import ON_STICKS, PieceFact, cut_facts, pen_of, told_facts
from trimlang.compiler import Result
from trimlang.joinery.piece import Piece
from trimlang.record import record
from trimlang.sheets.content.ticket import tickets
from trimlang.site_log.progress_of_job import State
from trimlang.survey.log_entries import Entry


@record
class Change:
    """A piece of both versions: what is cut otherwise, and what else its ticket says otherwise.

    Its ticket is to be printed again.  ``sticks`` are the labels of the sticks that
    it came off and comes off.
    """

    old: Piece
    new: Piece
    cut: tuple[PieceFact, ...]
    told: tuple[PieceFact, ...]
    sticks: tuple[str, str]

    @property
    def only_moved(self) -> bool:
        """Whether it only lies elsewhere on the sticks."""
        return not self.cut and {fact.what for fact in self.told} <= set(ON_STICKS)


@record
class Stood:
    """A piece that stands otherwise by the logs of the two versions."""

    id: str
    before: State
    now: State


@record
class Comparison:
    """All that differs in meaning.  Where nothing does, ``same`` is true.

    ``reprint`` are the ids of the tickets to print, in the order of the new job:
    of new pieces, of those to be cut again, and those that say something else.  A piece
    that is cut and only lies elsewhere on the sticks now needs none.
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
        """The pieces that are cut otherwise."""
        return tuple(change for change in self.changed if change.cut)

    @property
    def told_otherwise(self) -> tuple[Change, ...]:
        """The pieces that are cut as before, whose tickets say more than another place."""
        return tuple(one for one in self.changed if not one.cut and not one.only_moved)

    @property
    def moved(self) -> tuple[Change, ...]:
        """The pieces that only lie elsewhere on the sticks."""
        return tuple(change for change in self.changed if change.only_moved)


def compare(
    old: Result,
    new: Result,
    cut: Collection[str] = (),
    logs: tuple[Sequence[Entry], Sequence[Entry]] | None = None,
) -> Comparison:
    """Compare two compiled jobs without errors.

    ``cut`` are the ids of pieces cut from the old one besides those that the site
    logs tell of: the jobs' own, or ``logs`` where the jobs were planned without.
    """
    saw = sawn(*(logs or (old.job.log, new.job.log)), cut)
    matched = match_pieces(old.job, _asked(old), new.job, _asked(new))
    printed = [
        {ticket.id: ticket for ticket in tickets(result, pen_of(result.job))}
        for result in (old, new)
    ]
    labels = [_sticks(result) for result in (old, new)]
    changed: list[Change] = []
    for before, after in matched.pairs:
        facts = tuple(cut_facts(before, after, old.job, new.job))
        told: tuple[PieceFact, ...] = ()
        if before.id in printed[0] and after.id in printed[1]:
            told = tuple(told_facts(printed[0][before.id], printed[1][after.id]))
        elif before.id != after.id:
            told = (PieceFact("name", before.id, after.id),)
        if facts and told and told[0].what == "how the ends are cut or drawn":
            told = ()  # said already
        if facts or told:
            sticks = (labels[0].get(before.id, ""), labels[1].get(after.id, ""))
            changed.append(Change(old=before, new=after, cut=facts, told=told, sticks=sticks))
    # a piece that is cut and right needs no ticket to say where it would come from
    done = {one.new.id for one in changed if one.only_moved and saw.was_cut(one.old, one.new)}
    again = {change.new.id for change in changed} | {piece.id for piece in matched.added}
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
    """Return the pieces as the survey asks for them, whatever they were cut to."""
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
    """Return the label of each piece's stick."""
    return {
        place.piece: stick.id
        for plan in result.plans
        for stick in plan.sticks
        for place in stick.places
    }
