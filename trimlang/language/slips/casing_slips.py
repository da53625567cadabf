"""Slips in what stands round an opening: its sizes, its casing and stool."""

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
    slip(
        (
            "door 32 in, casing case, height 80 in, jambs of strip",
            "door 32 in, casing case, height 80 in, jambs strip",
        ),
        (
            "window 36 in, casing case, height 54 in, stool from shelf",
            "window 36 in, casing case, height 54 in, stool shelf",
        ),
        written=r",\s*(?:jambs|stool|backband|casing|plinths|corner blocks)(?P<slip> +"
        rf"(?:cut +|made +)?(?:of|from|in|out of|with|=)(?: +the)? +)(?={NAME})",
        wanted="the trim's or the block's name right behind",
        remedy="Leave that out.",
        instead=lambda _: " ",
    ),
)
"""What is often written of an opening's trim, and how the language says it."""
