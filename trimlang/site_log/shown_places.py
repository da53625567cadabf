"""Where every piece lies, as its ticket tells."""

from __future__ import annotations

from fractions import Fraction
from typing import TypeAlias

from trimlang.site_log.rack import SPOILED, Rack
from trimlang.site_log.whole_units import PlanInForce, ScaledTrim

ShownPlace: TypeAlias = tuple[str, Fraction, bool]
"""What a ticket says of a piece's stick: its name, its length, whether the cut is shared.

How many are cut before and behind it changes nothing that matters at the saw.
"""


def shown_places(scaled: ScaledTrim, rack: Rack, layout: PlanInForce) -> dict[str, ShownPlace]:
    """Return where every piece lies, cut or to be cut."""
    places: dict[str, ShownPlace] = {}
    begun = {name: (stick.length, stick.done) for name, stick in rack.started.items()}
    todo = {laid.name: laid for laid in layout.sticks}
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
