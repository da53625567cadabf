"""Finds the stick that a line of the log means."""

from __future__ import annotations

from fractions import Fraction

from trimlang.lengths.tape import feet_text, length_text
from trimlang.record import record
from trimlang.site_log.keeping import next_number
from trimlang.site_log.ledger import SAME, trim_of_stick
from trimlang.site_log.rack import Rack
from trimlang.site_log.whole_units import PlanInForce, PlannedStick, ScaledTrim
from trimlang.stock.problem import Part
from trimlang.survey.log_entries import CutPiece, From, Spoiled
from trimlang.survey.measures import Findings


@record
class StickFinder:
    """Where the stick that a line means is looked for: in hand, and in the plan in force."""

    scaled: ScaledTrim
    rack: Rack
    layout: PlanInForce
    findings: Findings

    def meant(
        self, entry: CutPiece | Spoiled, laid: PlannedStick | None, part: Part
    ) -> tuple[str, Fraction] | None:
        """Return the stick's name and how long it was when whole, None where the line is wrong.

        ``laid`` is the stick that the plan in force has for the piece, if any.
        """
        source = entry.source
        # What the line says decides, as far as it goes; then the ticket's stick; then whatever
        # holds the piece.
        if source is not None and source.stick is not None:
            return self._named(source, source.stick)
        if source is not None and source.length is not None:
            if laid is not None and abs(laid.length - source.length) < SAME:
                return laid.name, laid.length
            return self._new_name(), self._known(source.length)
        if laid is not None:
            return laid.name, laid.length
        return self._any_stick(entry, part)

    def _named(self, source: From, name: str) -> tuple[str, Fraction] | None:
        if trim_of_stick(name) != self.scaled.trim.name:
            self.findings.say("T719", source.span, stick=name, trim=self.scaled.trim.name)
            return None
        begun = self.rack.started.get(name)
        # A stick that is begun has its length on record; a line that says another means another
        # stick.
        if begun is not None:
            if source.length is not None and abs(source.length - begun.length) >= SAME:
                long = feet_text(begun.length, self.scaled.unit)
                self.findings.say("T717", source.span, stick=name, length=long)
                return None
            return name, begun.length
        if source.length is not None:
            return name, self._known(source.length)
        # A new name without a length: only the plan can know how long that stick is.
        laid = next((one for one in self.layout.sticks if one.name == name), None)
        if laid is None:
            self.findings.say("T715", source.span, stick=name)
            return None
        return name, laid.length

    def _any_stick(self, entry: CutPiece | Spoiled, part: Part) -> tuple[str, Fraction] | None:
        """Return a stick for a piece that no plan has: the smallest rest with room, or a new."""
        able = [
            (self.scaled.rest(stick.length, stick.done), name, stick.length)
            for name, stick in self.rack.started.items()
            if self.scaled.reach([*stick.done, part]) <= self.scaled.between(stick.length)
        ]
        # The smallest rest first: a longer one may still be wanted for a longer piece.
        if able:
            return min(able)[1:]
        # Then a whole stick: in hand or, as one may have been bought and not been written down,
        # from the yard.
        lengths = [kind.length for kind, count in self.rack.whole.items() if count]
        lengths += [offer.length for offer in self.scaled.trim.offers]
        holding = [one for one in lengths if part.length <= self.scaled.between(one)]
        if holding:
            return self._new_name(), min(holding)
        need = length_text(self.scaled.inches(part.length), self.scaled.unit)
        none = "no stick in hand or on the stock lines is so long"
        self.findings.say("T713", entry.span, piece=entry.piece, need=need, stick=none)
        return None

    def _known(self, length: Fraction) -> Fraction:
        """Return the stick's exact length; the line gives it to four decimal places at most."""
        lengths = [kind.length for kind, count in self.rack.whole.items() if count]
        lengths += [offer.length for offer in (*self.scaled.trim.offers, *self.scaled.trim.logged)]
        near = [one for one in lengths if abs(one - length) < SAME]
        return min(near, key=lambda one: (abs(one - length), one), default=length)

    def _new_name(self) -> str:
        number = next_number(self.scaled, self.rack, [laid.name for laid in self.layout.sticks])
        return f"{self.scaled.trim.name}-{number}"
