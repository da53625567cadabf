"""Names from elsewhere as known slips: each is answered with the usual word in its place."""

from __future__ import annotations

from typing import Final

from trimlang.language.regional_names import NAME, PARTS_ELSEWHERE, PartElsewhere
from trimlang.language.slips.slip_row import WRITTEN_LENGTH, Found, KnownSlip, slip

ANY_TRIM: Final = slip(
    written=rf"^\s*(?P<slip>(?!trim\b)(?P<kind>{NAME}(?: +{NAME}){{0,2}}))"
    rf" *: *{WRITTEN_LENGTH} *thick\b",
    wanted="a line that begins with the word trim",
    remedy="Write {}: a trim's own name follows that word.",
    instead=lambda found: "trim " + "-".join(found["kind"].split()),
)
"""``skirting board: 9/16 in thick``: the word is missing, whatever the trim is called."""


def _answered(row: PartElsewhere) -> KnownSlip:
    def usual(_found: Found) -> str:
        return row.usual

    return slip(
        written=row.pattern,
        wanted=f"“{row.usual}”, this part's usual name",
        remedy="Write {}.",
        instead=usual,
    )


REGIONAL_SLIPS: Final = tuple(map(_answered, PARTS_ELSEWHERE))
"""The same as known slips, in the order of the table."""
