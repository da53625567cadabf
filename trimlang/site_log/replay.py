"""Replays one trim's log, line by line, over the plan in force.

Every line that changes what there is (``bought``, ``spoiled``, ``rack``) makes a new plan at
once, as the build of that day did, so that a short ``cut ST-N-base`` after it means the stick
that its ticket showed then.  A cut that is written in full and departs from the plan makes a
new plan only when the next short line needs one.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from math import ceil

from trimlang.diagnostics import Span
from trimlang.joinery.piece import Piece
from trimlang.lengths.tape import feet_text, length_text
from trimlang.money import money_text
from trimlang.site_log.entry_facts import changes_stock, most_for, same_line
from trimlang.site_log.keeping import StillToCut, fits
from trimlang.site_log.rack import SPOILED, Origin, Rack
from trimlang.site_log.replan import WatchedEffort, kept_layout, replan
from trimlang.site_log.shown_places import ShownPlace, shown_places
from trimlang.site_log.trim_progress import FullEntry, TrimProgress
from trimlang.site_log.what_is_left import Spare, spare_asked
from trimlang.site_log.which_stick import StickFinder
from trimlang.site_log.whole_units import PlanInForce, ScaledTrim
from trimlang.stock.problem import Part
from trimlang.survey.log_entries import (
    BoughtSticks,
    Counted,
    CutPiece,
    Entry,
    Fitted,
    Shortened,
    Spoiled,
)
from trimlang.survey.measures import Findings


class Replay:
    """Follows one trim's log; ``first`` is the plan before the first line."""

    def __init__(
        self,
        scaled: ScaledTrim,
        pieces: Mapping[str, Piece],
        first: PlanInForce,
        percent: Fraction,
        effort: WatchedEffort,
    ) -> None:
        self._scaled = scaled
        self._pieces = pieces
        self._percent = percent
        self._effort = effort
        self._rack = Rack(scaled.trim)
        self._layout = first
        # Not cut yet; `_live` holds the pieces that are cut, as they were cut.
        self._to_cut = set(scaled.parts)
        self._live: dict[str, Part] = {}
        # Whether a cut has departed from the plan, so that a new one is due.
        self._stale = False
        # Changes that follow one another count as one: `_before` is from before the first of them.
        self._grouped = False
        self._before: Mapping[str, ShownPlace] = {}
        self._again: set[str] = set()
        self._changed: frozenset[str] | None = None
        # What purchases since the last plan may have taken off the order's bound; None where a line
        # came that says nothing sure about it.
        self._covered: Fraction | None = Fraction(0)
        self._full_entries: list[FullEntry] = []
        self._findings = Findings()

    def run(self, log: Sequence[Entry]) -> TrimProgress:
        """Replay the trim's entries in their order, and plan what is left."""
        for place, entry in enumerate(log):
            if isinstance(entry, CutPiece):
                self._cut(entry)
            elif isinstance(entry, Shortened):
                self._shortened(entry)
            elif not isinstance(entry, Fitted):
                self._changes(entry)
                # Several purchases in one line are one visit to the yard, and one new plan.
                after = log[place + 1] if place + 1 < len(log) else None
                if after is None or not same_line(entry, after) or not changes_stock(after):
                    self._new_plan()
        if self._stale:
            self._new_plan()
        else:
            self._refresh()
        return TrimProgress(
            scaled=self._scaled,
            rack=self._rack,
            layout=self._layout,
            changed=None if self._changed is None else self._changed & self._to_cut,
            cut=dict(self._live),
            full_entries=tuple(self._full_entries),
            findings=tuple(self._findings.found),
        )

    def _work(self) -> StillToCut:
        return StillToCut(self._scaled, self._rack, self._layout, frozenset(self._to_cut))

    def _new_plan(self) -> None:
        to_cut = frozenset(self._to_cut)
        spare = spare_asked(self._scaled, self._pieces, to_cut, self._percent)
        self._layout = replan(self._work(), spare, self._effort, self._floor(spare))
        self._stale, self._covered = False, Fraction(0)
        places = shown_places(self._scaled, self._rack, self._layout)
        self._changed = frozenset(
            name
            for name in to_cut
            if name in self._again or places.get(name) != self._before.get(name)
        )

    def _refresh(self) -> None:
        """Bring the order of the plan in force up to date, with its sticks as they are."""
        layout = self._layout
        # Glued returns that are left over ask for no spare, so none is to be bought for them.
        asked_now = spare_asked(self._scaled, self._pieces, self._to_cut, self._percent)
        spare = Spare(layout.spare, layout.survives_loss) if asked_now != Spare() else Spare()
        for asked, floor in ((spare, layout.bound), (Spare(), 0)):
            as_before = kept_layout(self._work(), asked, floor)
            if as_before is not None and not layout.unplaced:
                self._layout = as_before
                return
        self._new_plan()

    def _floor(self, spare: Spare) -> int:
        """Return a lower bound on the rest of the order: the last one less purchases since."""
        layout, covered = self._layout, self._covered
        # The old bound holds only if no less is asked for than when it was proven, and not where it
        # counted the least that the yard sells.
        asked = spare.whole >= layout.spare and spare.any_one >= layout.survives_loss
        least = self._scaled.question.problem.has_minimum
        if covered is None or not asked or least or layout.unplaced:
            return 0
        return max(layout.bound - self._coins(covered), 0)

    def _coins(self, money: Fraction) -> int:
        return ceil(money * self._scaled.question.per_coin)

    def _group(self, places: Mapping[str, ShownPlace]) -> None:
        """Remember where the pieces were to be cut, once for changes that follow one another."""
        if not self._grouped:
            self._before, self._grouped, self._again = places, True, set()

    # ---- lines -----------------------------------------------------------------------

    def _changes(self, entry: Entry) -> None:
        if isinstance(entry, Spoiled) and entry.piece not in self._live:
            self._up_to_date(entry)
        self._group(shown_places(self._scaled, self._rack, self._layout))
        if isinstance(entry, BoughtSticks):
            # What was bought may be part of the order, which then costs less; its bound falls by no
            # more than the sticks can have cost.
            self._rack.buy(entry.length, entry.count, entry.price)
            most = most_for(self._scaled.trim, entry)
            if most is None or self._covered is None:
                self._covered = None
            else:
                self._covered += most
            return
        self._covered = None
        if isinstance(entry, Counted):
            self._rack.count(entry.sticks)
        elif isinstance(entry, Spoiled):
            self._spoiled(entry)

    def _shortened(self, entry: Shortened) -> None:
        part = self._live.get(entry.piece)
        if part is None:
            return
        shorter = self._part(entry.piece, entry.length)
        if shorter.length >= part.length:
            self._say("T716", entry.span, piece=entry.piece)
        self._live[entry.piece] = shorter

    def _cut(self, entry: CutPiece) -> None:
        if entry.piece in self._live:
            return  # cut twice, which the ledger reports
        self._up_to_date(entry)
        part = self._part(entry.piece, entry.length)
        places = shown_places(self._scaled, self._rack, self._layout)
        on_plan = self._saw(entry, part)
        if on_plan is None:
            return
        self._live[entry.piece] = part
        self._to_cut.discard(entry.piece)
        if on_plan:
            self._grouped = self._grouped and self._stale
        else:
            self._group(places)
            self._stale, self._covered = True, None

    def _up_to_date(self, entry: CutPiece | Spoiled) -> None:
        """Plan anew where a short line needs it.

        It means what the ticket of that day showed, so the plan must be what it was then.
        """
        if self._stale and not entry.pinned:
            self._new_plan()

    def _spoiled(self, entry: Spoiled) -> None:
        rests = self._scaled.question.room_for(sum(entry.rests, Fraction(0)))  # gone: rounded up
        part = self._live.pop(entry.piece, None)
        if part is not None:
            if rests > part.length:
                long = self._long(self._scaled.inches(part.length))
                into = self._long(sum(entry.rests, Fraction(0)))
                self._say("T708", entry.span, piece=entry.piece, rests=into, had=long)
                return
            self._rack.waste(entry.piece)
        # Spoiled without a line that it was cut: it was cut from its stick all the same, and all
        # that is left of it came from there.
        elif entry.piece in self._pieces or entry.length is not None:
            wanted = self._part(entry.piece, entry.length)
            cuts = max(len(entry.rests) - 1, 0) * self._scaled.kerf
            length = max(wanted.length, rests + cuts)
            wasted = replace(wanted, id=f"{SPOILED}{entry.piece}", length=length)
            if self._saw(entry, wasted) is None:
                return
        else:
            return
        for rest in entry.rests:
            self._rack.put_back(rest)
        if entry.piece in self._pieces:
            self._to_cut.add(entry.piece)
            self._again.add(entry.piece)

    def _part(self, name: str, marked: Fraction | None) -> Part:
        """Return a piece as it was cut: by the length in the line, or by its present ticket."""
        room_for = self._scaled.question.room_for
        piece = self._pieces.get(name)
        if piece is None:
            return Part(name, max(room_for(marked or Fraction(0)), 1))
        part = self._scaled.parts[name]
        if marked is None:
            return part
        longer = room_for(marked) - room_for(piece.to_mark)
        # A part is never shorter than the two mitres that it is made of.
        leans = abs(part.left_lean) + abs(part.right_lean)
        return replace(part, length=max(part.length + longer, leans, 1))

    def _saw(self, entry: CutPiece | Spoiled, part: Part) -> bool | None:
        """Cut a part off its stick; return whether that was as planned, None if it cannot be."""
        laid = next((one for one in self._layout.sticks if entry.piece in one.todo), None)
        scaled, rack = self._scaled, self._rack
        finder = StickFinder(scaled, rack, self._layout, self._findings)
        found = finder.meant(entry, laid, part)
        if found is None:
            return None
        name, length = found
        begun = rack.started.get(name)
        done = () if begun is None else begun.done
        if scaled.reach([*done, part]) > scaled.between(length):
            left = scaled.inches(scaled.rest(length, done))
            self._say(
                "T713",
                entry.span,
                piece=entry.piece,
                need=self._long(scaled.inches(part.length)),
                stick=f"{name} has only {self._long(left)} left",
            )
            return None
        if begun is None:
            # Whether the log speaks of purchases at all: only then is a stick that nobody bought
            # worth a finding.
            listed = any(offer.length == length for offer in scaled.trim.offers)
            knows = bool(rack.bought) or not listed
            prefers = Origin.HAND if laid is None or laid.name != name else laid.origin
            spent = rack.spent
            in_hand = rack.take(name, length, prefers)
            # The stick is paid for now, so the rest of the order may cost that much less.
            owed = self._layout.bound - self._coins(rack.spent - spent)
            self._layout = replace(self._layout, bound=max(owed, 0))
            if not in_hand and knows:
                price = money_text(rack.started[name].price)
                self._say("T714", entry.span, length=feet_text(length, scaled.unit), price=price)
        rack.saw(name, part)
        marked = entry.length
        if marked is None:
            piece = self._pieces.get(entry.piece)
            marked = Fraction(0) if piece is None else piece.to_mark
        self._full_entries.append(FullEntry(entry, marked, name, length))
        as_planned = laid is not None and laid.name == name and laid.length == length
        sticks = tuple(one.without(entry.piece) for one in self._layout.sticks)
        self._layout = replace(self._layout, sticks=sticks)
        if as_planned and laid is not None:
            rest = [one for one in laid.todo if one != entry.piece]
            # Cut longer than planned, the piece may push the last one off the stick.
            as_planned = fits(scaled, length, rack.started[name].done, rest)
        return as_planned and isinstance(entry, CutPiece)

    def _long(self, inches: Fraction) -> str:
        return length_text(inches, self._scaled.unit)

    def _say(self, code: str, span: Span, **facts: object) -> None:
        self._findings.say(code, span, **facts)
