"""Pieces that are already cut, checked against what the new version asks for."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping

from trimlang.compare.matching import Matched
from trimlang.compare.piece_facts import FactName, PieceFact, cut_facts
from trimlang.joinery.piece import Piece
from trimlang.lengths.tape import length_text
from trimlang.record import record
from trimlang.site_log.cut_lengths import frozen
from trimlang.site_log.ledger import Standing, standing
from trimlang.survey.job import Job
from trimlang.survey.log_entries import Entry, Spoiled


@record
class Wrong:
    """A piece that is already cut and is wrong by the new version: why, and what to do."""

    id: str
    why: str
    remedy: str


@record
class Saw:
    """What has been sawn by the logs of both versions, and by what the user adds.

    ``before`` comes from the old version's log and ``now`` from the new one's, each by the ids
    of its own version.  ``named`` are ids of the old version that the user says are cut;
    ``again`` are ids of the new version that were spoiled and must be cut again.
    """

    before: Mapping[str, Standing]
    now: Mapping[str, Standing]
    named: Collection[str]
    again: Collection[str]

    def was_cut(self, old: Piece, new: Piece) -> bool:
        """Tell whether a piece is cut and still good: one that was spoiled later is not."""
        if new.id in self.now:
            return True
        known = old.id in self.before or old.id in self.named
        return known and new.id not in self.again


def sawn(old: Iterable[Entry], new: Iterable[Entry], named: Collection[str]) -> Saw:
    """Return what the two versions' logs and the user (``named``) say is sawn."""
    now = standing(new)
    # A spoiled piece that was cut once more afterwards stands in `now` again, so it is not lost.
    lost = {entry.piece for entry in new if isinstance(entry, Spoiled)}
    return Saw(standing(old), now, named, lost - now.keys())


def wrong_pieces(matched: Matched, saw: Saw, old: Job, new: Job) -> Iterator[Wrong]:
    """Yield the pieces that are cut already and do not fit the new version."""
    for piece in matched.gone:
        if piece.id in saw.before or piece.id in saw.named:
            yield Wrong(piece.id, "no longer in the job", "Keep the wood as an offcut.")
    for before, after in matched.pairs:
        if not saw.was_cut(before, after):
            continue
        in_old = before.id in saw.before or before.id in saw.named
        # A piece that only the new log knows was cut after the change, so its ends are the new
        # version's.
        done, job = (before, old) if in_old else (after, new)
        # The log may say which length was really cut. The new log is read last, so that the later
        # word wins.
        for entry in (saw.before.get(before.id), saw.now.get(after.id)):
            if entry is not None and entry.length is not None:
                done = frozen((done,), {done.id: entry})[0]
        facts = tuple(cut_facts(done, after, job, new))
        if facts:
            why = "; ".join(f"{one.what}: {one.before} → {one.after}" for one in facts)
            yield Wrong(done.id, why, _remedy(done, after, facts))
        elif done.id != after.id:
            yield Wrong(done.id, f"now called {after.id}", "Write the new name on it.")


def _remedy(done: Piece, new: Piece, facts: tuple[PieceFact, ...]) -> str:
    """Say what to do with a piece that is already cut; only what its length allows."""
    if any(fact.what is FactName.TRIM for fact in facts):
        return "Cut it again from the trim as it is now."
    by = new.length - done.length
    # Only the length differs: the ends may stay, so a piece that is too long needs one more cut.
    if {fact.what for fact in facts} <= {FactName.LENGTH, FactName.TAKEN}:
        long = length_text(abs(by), new.unit)
        if by < 0:
            return f"It is {long} too long: cut it down."
        return f"It is {long} too short: cut it again."
    if by > 0:
        return f"It is {length_text(by, new.unit)} too short: cut it again."
    return "It is long enough: try whether its ends can be cut again, or cut a new one."
