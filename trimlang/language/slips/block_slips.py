"""Slips in blocks, in heads of several parts, and in where a block stands in a wall."""

from __future__ import annotations

from typing import Final

from trimlang.language.regional_names import NAME
from trimlang.language.slips.slip_row import END_OF_PART, Found, slip
from trimlang.language.slips.slip_row import WRITTEN_LENGTH as _LONG

_BY: Final = r"\s*(?:,|x|×|by)\s*"
_THREE_SIZES: Final = (
    rf"^\s*block\b[^:#]*:\s*(?P<slip>(?P<one>{_LONG}){_BY}(?P<other>{_LONG})"
    rf"(?:{_BY}(?P<thick>{_LONG}))?){END_OF_PART}"
)


def _square(found: Found) -> str | None:
    return _sizes(found)[0] if found["one"].strip() == found["other"].strip() else None


def _sizes(found: Found) -> tuple[str, str]:
    one, other = found["one"].strip(), found["other"].strip()
    thick = f", {found['thick'].strip()} thick" if found["thick"] else ""
    return f"{one} wide, {other} tall{thick}", f"{other} wide, {one} tall{thick}"


BLOCK_SLIPS: Final = (
    # ---- above the rooms
    slip(
        ("head cross: board, cap with returns", "head cross: board, cap returned"),
        written=rf"^\s*head\b[^#]*?{NAME}(?P<slip> +(?:with +|and +)?(?:mitred +)?returns?)"
        rf"{END_OF_PART}",
        wanted="“returned”",
        remedy="Write {}.",
        instead=lambda _: " returned",
    ),
    slip(
        ("block rosette: 2 1/2 by 2 1/2 by 1", "block rosette: 2 1/2 wide, 2 1/2 tall, 1 thick"),
        written=_THREE_SIZES,
        wanted="which size is which",
        remedy="Write {}.",
        instead=_square,
    ),
    slip(
        (
            "block plinth: 3 in, 7 in, 1 1/8 in",
            "block plinth: 3 in wide, 7 in tall, 1 1/8 in thick",
        ),
        ("block plinth: 3 x 7 in", "block plinth: 3 wide, 7 in tall"),
        written=_THREE_SIZES,
        wanted="which size is which",
        remedy="If the width is first, write {}; if the height is, {}.",
        instead=_sizes,
    ),
    slip(
        ("block plinth: 3 in wide, 7 in high", "block plinth: 3 in wide, 7 in tall"),
        (
            "block plinth: 3 in wide, 7 in tall, 1 in deep",
            "block plinth: 3 in wide, 7 in tall, 1 in thick",
        ),
        written=r"^\s*block\b.*?\d[^,]*?\b(?P<slip>(?P<high>height|high)|deep|depth)\b",
        wanted="“wide”, “tall” or “thick”",
        remedy="Write {}.",
        instead=lambda found: "tall" if found["high"] else "thick",
    ),
    slip(
        (
            "block plinth: 3 in wide, 7 in tall, 6.50",
            "block plinth: 3 in wide, 7 in tall, at 6.50",
        ),
        written=r"^\s*block\b[^:#]*:.*,\s*(?P<slip>[$€£¥]?\d+\.\d\d)(?: +each)?\s*(?=,|#|$)",
        wanted="“at” before the price",
        remedy="Write {}.",
        instead=lambda found: f"at {found['slip']}",
    ),
    slip(
        ("block: 3 in wide, 7 in tall", None),
        ("head: frieze, cap", None),
        written=r"^\s*(?P<slip>block|head)\s*:",
        wanted="its name before the colon",
        remedy="Give it a name that an opening can say: block plinth: …, head crosshead: ….",
        instead=None,
    ),
    slip(
        ("plinth: 3 in wide, 7 in tall", "block plinth: 3 in wide, 7 in tall"),
        written=rf"^\s*(?P<slip>(?!trim\b){NAME})\s*:\s*{_LONG}\s*wide\s*,[^#]*\btall\b",
        wanted="a line that begins with the word block",
        remedy="Write {}.",
        instead=lambda found: f"block {found['slip']}",
    ),
    slip(
        (
            "head crosshead: fillet 3/8 in overhang, frieze",
            "head crosshead: fillet overhang 3/8 in, frieze",
        ),
        written=rf"^\s*head\b[^#]*?{NAME}\s+(?P<slip>(?P<long>{_LONG})\s*overhang)\b",
        wanted="“overhang” before its measure",
        remedy="Write {}.",
        instead=lambda found: f"overhang {found['long'].strip()}",
    ),
    slip(
        ("head crosshead: frieze over fillet", "head crosshead: fillet, frieze"),
        ("head crosshead: frieze on fillet", "head crosshead: fillet, frieze"),
        written=rf"^\s*head\b[^#]*?:\s*(?P<slip>(?P<upper>{NAME})\s+(?:over|on(?: top of)?"
        rf"|above)\s+"
        rf"(?P<lower>{NAME}))(?=\s*(?:#|$))",
        wanted="a head's parts from the legs upwards",
        remedy="Write {}.",
        instead=lambda found: f"{found['lower']}, {found['upper']}",
    ),
    slip(
        ("head cross: fillet strip", "head cross: fillet, strip"),
        (
            "head cross: fillet overhang 3/8 in returned board, cap",
            "head cross: fillet overhang 3/8 in returned, board, cap",
        ),
        written=rf"^\s*head +{NAME}\s*(?::[^#]*?)?(?:[:,]\s*{NAME}|\breturned)(?P<slip> +"
        r"(?!overhang\b|returned\b|with\b|and\b|over\b|on\b|in\b|note\b|above\b)"
        rf"(?P<next>{NAME}))\s*(?=,|#|$|overhang|returned)",
        wanted="a comma between two parts of a head",
        remedy="Put a comma before {}; the lowest part is first.",
        instead=lambda found: f", {found['next']}",
    ),
    # ---- in a wall
    slip(
        ("transition", None),
        ("transition block between", None),
        ("transition block between N and E", None),
        written=r"^\s*(?P<slip>transition(?:(?: +(?:block|piece))? +between\b[^,#]*)?)\s*(?=,|#|$)",
        wanted="the block that stands there",
        remedy="Name it: transition foot. Its line stands between those of the two runs.",
        instead=None,
    ),
    slip(
        ("transition foot 3 in", "transition foot"),
        written=rf"^\s*transition +{NAME}(?P<slip>\s+{_LONG}){END_OF_PART}",
        wanted="the block alone",
        remedy="It is as wide as the block's own line says: leave the width out.",
        instead=lambda _: "",
    ),
    slip(
        ("transition block foot", "transition foot"),
        ("block foot", "transition foot"),
        ("block foot between N and E", "transition foot"),
        written=rf"^\s*(?P<slip>(?:transition +)?block +(?P<name>{NAME})"
        rf"(?: +between [^#,]*)?)\s*(?=,|#|$)",
        wanted="“transition” and the block's name, where it stands in a wall",
        remedy="Write {}.",
        instead=lambda found: f"transition {found['name']}",
    ),
)
"""What is often written of blocks and heads, and how the language says it."""
