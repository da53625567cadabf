"""Where every piece is cut from, as its ticket shows it."""

from __future__ import annotations

from fractions import Fraction
from typing import TypeAlias

from trimlang.site_log.rack import SPOILED, Rack
from trimlang.site_log.whole_units import PlanInForce, ScaledTrim

ShownPlace: TypeAlias = tuple[str, Fraction, bool]
"""What a ticket shows of a piece's stick: its name, its length, whether the cut is shared.

How many pieces are cut before and after it makes no difference at the saw.
"""


def shown_places(scaled: ScaledTrim, rack: Rack, layout: PlanInForce) -> dict[str, ShownPlace]:
    """Return where every piece is cut from, whether cut already or still to be cut."""
    places: dict[str, ShownPlace] = {}
    begun = {name: (stick.length, stick.done) for name, stick in rack.started.items()}
    todo = {laid.name: laid for laid in layout.sticks}
    # A stick that is begun stands in both: what was cut from it lies before what is still to come.
    for name in dict.fromkeys([*begun, *todo]):
        length, done = begun.get(name) or (todo[name].length, ())
        coming = todo[name].todo if name in todo else ()
        parts = [*done, *(scaled.parts[one] for one in coming)]
        before = None
        for part in parts:
            shared = before is not None and scaled.parting(before, part).one_pass
            if not part.id.startswith(SPOILED):
                places[part.id] = (name, length, shared)
            before = part
    return places
