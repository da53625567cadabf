"""Slips in what stands round an opening: its sizes, its casing, stool, blocks and head."""

from __future__ import annotations

from typing import Final

from trimlang.language.regional_names import NAME
from trimlang.language.slips.slip_row import END_OF_PART, GAP, WRITTEN_LENGTH, KnownSlip, slip

_OPENING: Final = r"(?:^|,)\s*(?:door|window|opening)\b(?:[^#\"]|\"[^\"]*\")*?"
_LONG: Final = rf"(?P<long>{WRITTEN_LENGTH})"


def _nameless(words: str, cut_from: str, example: str, remedy: str) -> KnownSlip:
    """Return the row of a part that is cut from a trim, or is a block, and does not say which."""
    return slip(
        (f"window 36 in, casing case, height 54 in, {words}", None),
        (f"window 36 in, casing case, height 54 in, {words}, note {example}", None),
        written=rf",\s*(?P<slip>{words})\s*(?=,|#|$)",
        wanted=cut_from,
        remedy=remedy,
        # only the writer knows which of his trims or blocks it is
        instead=None,
    )


CASING_SLIPS: Final = (
    _nameless("stool", "the trim that it is cut from", '"x"', "Name it: stool shelf."),
    _nameless("jambs", "the trim that they are cut from", '"x"', "Name it: jambs strip."),
    _nameless("backband", "the trim that it is cut from", '"x"', "Name it: backband band."),
    _nameless("casing", "the trim that it is cut from", '"x"', "Name it: casing case."),
    _nameless("plinths", "the block that stands there", '"x"', "Name it: plinths plinth."),
    _nameless(
        "corner blocks", "the block that stands there", '"x"', "Name it: corner blocks rosette."
    ),
    slip(
        ("door 32 in, casing case, plinth blocks", None),
        ("door 32 in, casing case, rosettes, height 80 in", None),
        written=r",\s*(?P<slip>plinth blocks?|foot blocks?|rosettes?|corner rosettes?)\s*(?=,|#|$)",
        wanted="“plinths” or “corner blocks”, and which block it is",
        remedy="Write plinths and the name of the block at the legs' feet, corner blocks and"
        " that of"
        " the block at the head.",
        instead=None,
    ),
    slip(
        (
            "window 36 in, casing case, height 54 in, stool shelf, apron case",
            "window 36 in, casing case, height 54 in, stool shelf apron case",
        ),
        written=rf"\bstool +{NAME}(?P<slip>\s*,\s*(?:and +)?apron)(?= +{NAME})",
        wanted="the apron right behind its stool",
        remedy="Leave the comma out: {}.",
        instead=lambda _: " apron",
    ),
    slip(
        ("window 36 in, casing case, height 54 in, apron case", None),
        written=rf",\s*(?P<slip>apron +{NAME})",
        wanted="the stool above the apron",
        remedy="An apron hangs below a stool: stool shelf apron case. Where casing goes round below"
        " too, write four sides.",
        instead=None,
    ),
    slip(
        (
            "window 36 in, casing case, height 54 in, stool shelf horn 1 in",
            "window 36 in, casing case, height 54 in, stool shelf",
        ),
        written=rf"\bstool +{NAME}(?: +apron +{NAME})?(?P<slip>,?\s+horns? +{WRITTEN_LENGTH})",
        wanted="the stool without its horns",
        remedy="Leave them out here. Horns are said once, above the rooms: casings: horn 1 in.",
        instead=lambda _: "",
    ),
    slip(
        (
            "window 36 in, casing case, height 54 in, 3 sides",
            "window 36 in, casing case, height 54 in",
        ),
        written=r"(?P<slip>\s*,\s*(?:on )?(?:3|three) sides)\b",
        wanted="nothing of three sides",
        remedy="Casing goes over the head and down both legs anyway: leave it out.",
        instead=lambda _: "",
    ),
    slip(
        (
            "window 36 in, casing case, height 54 in, picture frame",
            "window 36 in, casing case, height 54 in, four sides",
        ),
        (
            "window 36 in, casing case, height 54 in, 4 sides",
            "window 36 in, casing case, height 54 in, four sides",
        ),
        written=rf"{_OPENING},\s*(?P<slip>picture[ -]?fram(?:e|ed)|all round|all(?: four)? sides"
        r"|4[ -]sides|four[ -]sided)\b",
        wanted="“four sides”",
        remedy="Write {}.",
        instead=lambda _: "four sides",
    ),
    slip(
        (
            "door 32 in, casing case, height 80 in, both sides",
            "door 32 in, casing case, height 80 in, both faces",
        ),
        written=rf"{_OPENING},\s*(?P<slip>both sides|two faces|2 faces|two[ -]sided|both walls)\b",
        wanted="“both faces”",
        remedy="Write {}.",
        instead=lambda _: "both faces",
    ),
    slip(
        ("window 36 in, casing case, sill at 30 in", "window 36 in, casing case, sill 30 in"),
        ("door 32 in, casing case, height = 80 in", "door 32 in, casing case, height 80 in"),
        written=rf"{_OPENING},\s*(?:sill|height)(?P<slip>\s*(?:at|of|is|=|:)\s*)(?=\d)",
        wanted="the measure right behind the word",
        remedy="Leave that out.",
        instead=lambda _: " ",
    ),
    slip(
        ("window 36 in, casing case, 30 in sill", "window 36 in, casing case, sill 30 in"),
        written=rf"{_OPENING},\s*(?P<slip>{_LONG}\s*sill)\b",
        wanted="“sill” before its measure",
        remedy="Write {}.",
        instead=lambda found: f"sill {found['long'].strip()}",
    ),
    slip(
        ("window 36 in, casing case, 54 in high", "window 36 in, casing case, height 54 in"),
        ("door 32 in, casing case, 80 in tall", "door 32 in, casing case, height 80 in"),
        written=rf"{_OPENING},\s*(?P<slip>{_LONG}\s*(?:high|tall|height|in height))\b",
        wanted="“height” before its measure",
        remedy="Write {}.",
        instead=lambda found: f"height {found['long'].strip()}",
    ),
    slip(
        ("window, casing case", None),
        ("door, height 80 in", None),
        written=rf"^\s*(?P<slip>{GAP})\s*(?=,|#|$)",
        wanted="its width",
        remedy="Say how wide it is, right behind its name: window 36 in.",
        instead=None,
    ),
    slip(
        ("window 36 in, trim case, height 54 in", "window 36 in, casing case, height 54 in"),
        ("door 32 in, cased with case, height 80 in", "door 32 in, casing case, height 80 in"),
        written=rf"{_OPENING},\s*(?P<slip>trim|trimmed in|cased(?: in| with)?)"
        rf"(?= +{NAME}{END_OF_PART})",
        wanted="“casing” before the trim round an opening",
        remedy="Write {}.",
        instead=lambda _: "casing",
    ),
    slip(
        ("window 36 in, case casing, height 54 in", "window 36 in, casing case, height 54 in"),
        written=rf"{_OPENING},\s*(?P<slip>(?P<name>(?!no\b|door\b"
        rf"|window\b){NAME})\s+casing){END_OF_PART}",
        wanted="“casing” before the trim's name",
        remedy="Write {}.",
        instead=lambda found: f"casing {found['name']}",
    ),
    slip(
        (
            "door 32 in, casing case, head cap, height 80 in",
            "door 32 in, casing case head cap, height 80 in",
        ),
        written=rf"\bcasing +{NAME}(?P<slip>\s*,\s*head)(?= +{NAME})",
        wanted="the head right behind the casing",
        remedy="Leave the comma out: {}.",
        instead=lambda _: " head",
    ),
    slip(
        ("door 32 in, casing case, height 80 in, head", None),
        ("door 32 in, head cap, casing case, height 80 in", None),
        written=rf",\s*(?P<slip>head(?: +{NAME})?){END_OF_PART}",
        wanted="the casing before its head",
        remedy="A head stands behind its casing: casing case head cap.",
        instead=None,
    ),
    # ---- blocks and heads of several parts, above the rooms
    slip(
        ("head cross: board, cap with returns", "head cross: board, cap returned"),
        written=rf"^\s*head\b[^#]*?{NAME}(?P<slip> +(?:with +|and +)?(?:mitred +)?returns?)"
        rf"{END_OF_PART}",
        wanted="“returned”",
        remedy="Write {}.",
        instead=lambda _: " returned",
    ),
    slip(
        ("block plinth: 3 in, 7 in, 1 1/8 in", None),
        ("block plinth: 3 x 7 x 1 1/8", None),
        written=rf"^\s*block\b[^:#]*:\s*(?P<slip>{WRITTEN_LENGTH}\s*(?:,|x|×|by)\s*{WRITTEN_LENGTH}"
        rf"(?:\s*(?:,|x|×|by)\s*{WRITTEN_LENGTH})?){END_OF_PART}",
        wanted="which size is which",
        remedy="Write 3 in wide, 7 in tall, 1 1/8 in thick.",
        # which of three sizes is the height is not to be seen from the numbers
        instead=None,
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
        written=rf"^\s*(?P<slip>(?!trim\b){NAME})\s*:\s*{WRITTEN_LENGTH}\s*wide\s*,[^#]*\btall\b",
        wanted="a line that begins with the word block",
        remedy="Write {}.",
        instead=lambda found: f"block {found['slip']}",
    ),
    slip(
        (
            "head crosshead: fillet 3/8 in overhang, frieze",
            "head crosshead: fillet overhang 3/8 in, frieze",
        ),
        written=rf"^\s*head\b[^#]*?{NAME}\s+(?P<slip>{_LONG}\s*overhang)\b",
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
    # ---- blocks in a wall
    slip(
        ("transition", None),
        written=r"^\s*(?P<slip>transition)\s*(?=,|#|$)",
        wanted="the block that stands there",
        remedy="Name it: transition foot.",
        instead=None,
    ),
    slip(
        ("transition foot 3 in", "transition foot"),
        written=rf"^\s*transition +{NAME}(?P<slip>\s+{WRITTEN_LENGTH}){END_OF_PART}",
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
"""What is often written of an opening's trim and of blocks, and how the language says it."""
