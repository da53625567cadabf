"""Pieces that are cut already, held against what is asked for now."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping

from trimlang.compare.matching import Matched
from trimlang.compare.piece_facts import PieceFact, cut_facts
from trimlang.joinery.piece import Piece
from trimlang.lengths.tape import length_text
from trimlang.record import record
from trimlang.site_log.cut_lengths import frozen
from trimlang.site_log.ledger import Standing, standing
from trimlang.survey.job import Job
from trimlang.survey.log_entries import Entry, Spoiled


@record
class Wrong:
    """A piece that is cut already and is not wanted as it was cut: why, and what to do."""

    id: str
    why: str
    remedy: str


@record
class Saw:
    """What has been sawn: ``before`` is known of the old version, ``now`` of the new one.

    Both are by the ids of their own version.  ``named`` are ids of the old one that
    were told by hand, ``again`` those of the new one that were spoiled and are to cut.
    """

    before: Mapping[str, Standing]
    now: Mapping[str, Standing]
    named: Collection[str]
    again: Collection[str]

    def was_cut(self, old: Piece, new: Piece) -> bool:
        """Tell whether a piece lies there cut; one that was spoiled since does not."""
        if new.id in self.now:
            return True
        known = old.id in self.before or old.id in self.named
        return known and new.id not in self.again


def sawn(old: Iterable[Entry], new: Iterable[Entry], named: Collection[str]) -> Saw:
    """Return what two versions' logs say of their pieces, and what was told by hand."""
    now = standing(new)
    lost = {entry.piece for entry in new if isinstance(entry, Spoiled)}
    return Saw(standing(old), now, named, lost - now.keys())


def wrong_pieces(matched: Matched, saw: Saw, old: Job, new: Job) -> Iterator[Wrong]:
    """Yield the pieces that lie there cut and are not what is asked for now."""
    for piece in matched.gone:
        if piece.id in saw.before or piece.id in saw.named:
            yield Wrong(piece.id, "no longer in the job", "Keep the wood as an offcut.")
    for before, after in matched.pairs:
        if not saw.was_cut(before, after):
            continue
        in_old = before.id in saw.before or before.id in saw.named
        # what was cut since has the ends that the new version gives it
        done, job = (before, old) if in_old else (after, new)
        for told in (saw.before.get(before.id), saw.now.get(after.id)):
            if told is not None and told.length is not None:
                done = frozen((done,), {done.id: told})[0]
        facts = tuple(cut_facts(done, after, job, new))
        if facts:
            why = "; ".join(f"{one.what}: {one.before} → {one.after}" for one in facts)
            yield Wrong(done.id, why, _remedy(done, after, facts))
        elif done.id != after.id:
            yield Wrong(done.id, f"now called {after.id}", "Write the new name on it.")


def _remedy(done: Piece, new: Piece, facts: tuple[PieceFact, ...]) -> str:
    """Say what to do with a piece that was cut as it was: never more than its length allows."""
    if any(fact.what == "trim" for fact in facts):
        return "Cut it again from the trim as it is now."
    by = new.length - done.length
    if {fact.what for fact in facts} <= {"length", "taken of the stick"}:
        long = length_text(abs(by), new.unit)
        if by < 0:
            return f"It is {long} too long: cut it down."
        return f"It is {long} too short: cut it again."
    if by > 0:
        return f"It is {length_text(by, new.unit)} too short: cut it again."
    return "It is long enough: try whether its ends can be cut again, or cut a new one."
