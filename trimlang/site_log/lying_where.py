"""Where every piece lies, as its ticket tells."""

from __future__ import annotations

from fractions import Fraction
from typing import TypeAlias

from trimlang.site_log.in_hand import Yard
from trimlang.site_log.whole_units import Bench, Layout

Where: TypeAlias = tuple[str, Fraction, bool]
"""What a ticket says of a piece's stick: its name, its length, whether the cut is shared.

How many are cut before and behind it changes nothing that matters at the saw.
"""


def where(bench: Bench, yard: Yard, layout: Layout) -> dict[str, Where]:
    """Return where every piece lies, cut or to be cut."""
    lies: dict[str, Where] = {}
    begun = {name: (stick.length, stick.done) for name, stick in yard.started.items()}
    todo = {laid.name: laid for laid in layout.sticks}
    for name in dict.fromkeys([*begun, *todo]):
        length, done = begun.get(name) or (todo[name].length, ())
        coming = todo[name].todo if name in todo else ()
        parts = [*done, *(bench.parts[one] for one in coming)]
        known = [part for part in parts if part.id]
        for place, part in enumerate(known, start=1):
            before = known[place - 2] if place > 1 else None
            shared = (
                before is not None
                and before.right_lean * part.left_lean > 0
                and before.right_lean == part.left_lean
            )
            lies[part.id] = (name, length, shared)
    return lies
