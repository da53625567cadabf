"""Slips in boxes on a wall, and in loose pieces: how many, how tall, what of."""

from __future__ import annotations

from typing import Final

from trimlang.diagnostics.near_words import nearest
from trimlang.language.regional_names import NAME
from trimlang.language.slips.slip_row import END_OF_PART, Found, slip
from trimlang.language.slips.slip_row import WRITTEN_LENGTH as LONG
from trimlang.language.vocabulary import words_after

_NUMBERS: Final = {
    word: str(count)
    for count, word in enumerate("one two three four five six seven eight nine ten".split(), 1)
}
_SPELT: Final = "|".join(_NUMBERS)
_BOXES: Final = r"^\s*boxes\b[^#]*?"
_PIECE: Final = r"^\s*piece\b[^#]*?"
_TIMES: Final = r"(?:x|×|\*|@|at|pcs?\.?(?: of)?|pieces?(?: of)?|off|each)"


def _in_figures(found: Found) -> str:
    return _NUMBERS[found["slip"].casefold()]


def _trim_of_piece(found: Found) -> str | None:
    # “squared” is a misspelt word of the line, and the name of no trim
    known = words_after('piece "x", 1 in,')
    return None if nearest(found["slip"], known) else f"trim {found['slip']}"


def _piece(found: Found) -> str:
    if found["name"]:
        return f"piece {found['name']}, {found['said'].strip()}"
    return f"piece {found['called']}, {found['count']} of {found['long'].strip()}"


BOX_SLIPS: Final = (
    slip(
        (
            "boxes N: 3 equal, 24 in tall, margin 3 in",
            "boxes N: 3, 24 in tall, margin 3 in",
        ),
        written=r"^\s*boxes\b[^:#]*:\s*\d+(?P<slip>\s+equal(?:ly)?(?: +spaced)?(?: +boxes)?)\b",
        wanted="how many there are, and no more",
        remedy="The boxes of one line are equal anyway: leave it out.",
        instead=lambda _: "",
    ),
    slip(
        (
            "boxes N: 3, 24 in tall, spaced 3 in",
            "boxes N: 3, 24 in tall, margin 3 in",
        ),
        written=r"^\s*boxes\b[^#]*?,\s*(?P<slip>spaced|spacing|apart)(?= +\d)",
        wanted="“margin”: the wall before, between and behind them",
        remedy="Write {}.",
        instead=lambda _: "margin",
    ),
    slip(
        (
            "boxes N: trim panel, 3, 24 in tall, margin 3 in",
            "boxes N: 3, trim panel, 24 in tall, margin 3 in",
        ),
        written=rf"^\s*boxes\b[^:#]*:\s*(?P<slip>(?P<trim>trim +{NAME})\s*,\s*(?P<count>\d+))"
        rf"{END_OF_PART}",
        wanted="how many there are first",
        remedy="Write {}.",
        instead=lambda found: f"{found['count']}, {found['trim']}",
    ),
    slip(
        ('piece 4 of 22 1/2 in, "cleat"', 'piece "cleat", 4 of 22 1/2 in'),
        ('4 pieces "cleat" of 22 1/2 in', 'piece "cleat", 4 of 22 1/2 in'),
        written=rf"^\s*(?P<slip>pieces? +(?P<said>(?:\d+ *of +)?{LONG})\s*,\s*(?P<name>\"[^\"]*\")"
        rf"|(?P<count>\d+) +pieces? +(?P<called>\"[^\"]*\") +of +(?P<long>{LONG}))",
        wanted="“piece” and its name first",
        remedy="Write {}.",
        instead=_piece,
    ),
    slip(
        ("toe kick 93 in, trim rail", 'piece "toe kick", 93 in, trim rail'),
        ("door stop, 2 of 80 in, trim rail", 'piece "door stop", 2 of 80 in, trim rail'),
        ("shelf cleats: 4 of 22 1/2 in", 'piece "shelf cleats", 4 of 22 1/2 in'),
        written=r"^\s*(?P<slip>(?P<name>(?:toe[ -]?kick|(?:shelf |closet |wall )?cleat)s?(?=\W+\d)"
        r"|(?:door[ -]?)?(?:stop|jamb)s?(?=\W+\d+ +of\b))\s*[:,]?\s+)",
        wanted="“piece” and its name in quotes, where it stands on no wall of the walk",
        remedy="Write {}.",
        instead=lambda found: f'piece "{found["name"]}", ',
    ),
    slip(
        ("3 boxes N, 24 in tall, margin 3 in", "boxes N: 3, 24 in tall, margin 3 in"),
        ("3 boxes on N: 24 in tall, margin 3 in", "boxes N: 3, 24 in tall, margin 3 in"),
        written=rf"^\s*(?P<slip>(?P<count>\d+) +boxes +(?:on +|along +)?"
        rf"(?P<wall>{NAME})\s*[:,]\s*)",
        wanted="“boxes” first, then the run and how many",
        remedy="Write {}.",
        instead=lambda found: f"boxes {found['wall']}: {found['count']}, ",
    ),
    slip(
        ("boxes on N: 3, 24 in tall, margin 3 in", "boxes N: 3, 24 in tall, margin 3 in"),
        written=rf"^\s*boxes(?P<slip> +(?:on|along|at|in))(?= +{NAME}\s*:)",
        wanted="the run's name right behind",
        remedy="Leave the word out.",
        instead=lambda _: "",
    ),
    slip(
        ("boxes: 3, 24 in tall, margin 3 in", None),
        written=r"^\s*(?P<slip>boxes)\s*:",
        wanted="where the boxes are",
        remedy='Name the run: boxes N: 3, …; or the opening: boxes under "garden": 1, ….',
        instead=None,
    ),
    slip(
        ("boxes under window: 2, 24 in tall", 'boxes under "window": 2, 24 in tall'),
        written=rf"^\s*boxes +(?:under|over) +(?P<slip>{NAME}(?: +{NAME})*)(?=\s*:)",
        wanted="the opening's name in quotes",
        remedy="Write {}.",
        instead=lambda found: f'"{found["slip"]}"',
    ),
    slip(
        ("boxes N: three, 24 in tall, margin 3 in", "boxes N: 3, 24 in tall, margin 3 in"),
        ('piece "cleat", four of 22 1/2 in', 'piece "cleat", 4 of 22 1/2 in'),
        ("paint: two coats", "paint: 2 coats"),
        written=rf"^\s*(?:boxes\b[^:#]*:|piece\b[^#]*?,|paint\s*:)\s*(?P<slip>{_SPELT})\b",
        wanted="a count in figures",
        remedy="Write {}.",
        instead=_in_figures,
    ),
    slip(
        ("boxes N: 3 of 24 in tall, margin 3 in", "boxes N: 3, 24 in tall, margin 3 in"),
        ("boxes N: 3 24 in tall, margin 3 in", "boxes N: 3, 24 in tall, margin 3 in"),
        written=r"^\s*boxes\b[^:#]*:\s*\d+(?P<slip>\s*(?:of|x|×)?\s+)(?=\d+(?:\.\d+)?(?! ?[/\d]))",
        wanted="a comma behind how many there are",
        remedy="Put a comma there.",
        instead=lambda _: ", ",
    ),
    slip(
        ("boxes N: 24 in tall, margin 3 in, trim panel", None),
        written=rf"^\s*boxes\b[^:#]*:\s*(?P<slip>{LONG}\s*(?:tall|wide|high))",
        wanted="how many boxes there are, first",
        remedy="Write how many, and then how tall: boxes N: 3, 24 in tall.",
        instead=None,
    ),
    slip(
        ("boxes N: 3, 24 in high, margin 3 in", "boxes N: 3, 24 in tall, margin 3 in"),
        written=rf"{_BOXES},\s*{LONG}\s*(?P<slip>high|height|in height)\b",
        wanted="“tall” or “wide”",
        remedy="Write {}.",
        instead=lambda _: "tall",
    ),
    slip(
        ("boxes N: 3, height 24 in, margin 3 in", "boxes N: 3, 24 in tall, margin 3 in"),
        ("boxes N: 3, 24 in tall, width 14 in", "boxes N: 3, 24 in tall, 14 in wide"),
        written=rf"{_BOXES},\s*(?P<slip>(?:(?P<tall>height|tall)|width|wide) +"
        rf"(?P<long>{LONG})){END_OF_PART}",
        wanted="the size first",
        remedy="Write {}.",
        instead=lambda found: f"{found['long'].strip()} {'tall' if found['tall'] else 'wide'}",
    ),
    slip(
        ("boxes N: 3, 24 in tall, 3 in margin", "boxes N: 3, 24 in tall, margin 3 in"),
        written=rf"{_BOXES},\s*(?P<slip>(?P<long>{LONG})\s*(?:margins?|stiles?|gaps?|between"
        rf"|apart))\b",
        wanted="“margin” before its size",
        remedy="Write {}.",
        instead=lambda found: f"margin {found['long'].strip()}",
    ),
    slip(
        ("boxes N: 3, 24 x 14 in, trim panel", None),
        ("boxes N: 3, 24 in, margin 3 in", None),
        written=rf"{_BOXES},\s*(?P<slip>{LONG}(?:\s*(?:x|×|by)\s*{LONG})?){END_OF_PART}",
        wanted="which size is which",
        remedy="Say so: 24 in tall, 14 in wide.",
        instead=None,
    ),
    # ---- loose pieces
    slip(
        ("piece cleat, 4 of 22 1/2 in", 'piece "cleat", 4 of 22 1/2 in'),
        ("piece closet cleat, 4 of 22 1/2 in", 'piece "closet cleat", 4 of 22 1/2 in'),
        written=rf"^\s*piece +(?P<slip>{NAME}(?: +{NAME})*)(?=\s*,)",
        wanted="the piece's name in quotes",
        remedy="Write {}.",
        instead=lambda found: f'"{found["slip"]}"',
    ),
    slip(
        ('piece "cleat": 4 of 22 1/2 in', 'piece "cleat", 4 of 22 1/2 in'),
        ('piece "cleat" 4 of 22 1/2 in', 'piece "cleat", 4 of 22 1/2 in'),
        written=r"^\s*piece +\"[^\"]*\"(?P<slip>\s*:?\s*)(?=\d)",
        wanted="a comma behind its name",
        remedy="Put a comma there.",
        instead=lambda _: ", ",
    ),
    slip(
        ('4 of piece "cleat", 22 1/2 in', 'piece "cleat", 4 of 22 1/2 in'),
        ('4 pieces "cleat", 22 1/2 in', 'piece "cleat", 4 of 22 1/2 in'),
        written=r"^\s*(?P<slip>(?P<count>\d+) +(?:of +)?(?:loose +)?pieces? +"
        r"(?P<name>\"[^\"]*\")\s*,\s*)(?=\d)",
        wanted="“piece” and its name first",
        remedy="Write {}.",
        instead=lambda found: f"piece {found['name']}, {found['count']} of ",
    ),
    slip(
        ('loose "cleat", 4 of 22 1/2 in', 'piece "cleat", 4 of 22 1/2 in'),
        ('loose piece "cleat", 4 of 22 1/2 in', 'piece "cleat", 4 of 22 1/2 in'),
        written=r"^\s*(?P<slip>loose(?: +pieces?)?)(?=\s+\")",
        wanted="“piece”",
        remedy="Write {}.",
        instead=lambda _: "piece",
    ),
    slip(
        ('piece "cleat", 22 1/2 in, 4 of', 'piece "cleat", 4 of 22 1/2 in'),
        ('piece "cleat", 22 1/2 in x 4, square', 'piece "cleat", 4 of 22 1/2 in, square'),
        written=rf"^\s*piece +\"[^\"]*\"\s*,\s*(?P<slip>(?P<long>{LONG})\s*(?:,\s*"
        rf"|{_TIMES}\s*)?(?P<count>\d+)"
        rf"(?:\s*(?:of|off|pcs?\.?|pieces?|each))?){END_OF_PART}",
        wanted="how many and then how long",
        remedy="Write {}.",
        instead=lambda found: f"{found['count']} of {found['long'].strip()}",
    ),
    slip(
        ('piece "cleat", 4 x 22 1/2 in', 'piece "cleat", 4 of 22 1/2 in'),
        ('piece "cleat", 4 @ 22 1/2 in', 'piece "cleat", 4 of 22 1/2 in'),
        written=rf"^\s*piece +\"[^\"]*\"\s*,\s*\d+(?P<slip>\s*{_TIMES}\s*)(?=\d)",
        wanted="“of” between how many and how long",
        remedy="Write {} there.",
        instead=lambda _: " of ",
    ),
    slip(
        (
            'piece "cleat", trim rail, 22 1/2 in',
            'piece "cleat", 22 1/2 in, trim rail',
        ),
        (
            'piece "cleat", trim rail, 4 of 22 1/2 in',
            'piece "cleat", 4 of 22 1/2 in, trim rail',
        ),
        written=rf"^\s*piece +\"[^\"]*\"\s*,\s*(?P<slip>(?P<said>(?:trim +{NAME}|square)),\s*"
        rf"(?P<long>(?:\d+ +of +)?{LONG})){END_OF_PART}",
        wanted="its length first",
        remedy="Write {}.",
        instead=lambda found: f"{found['long'].strip()}, {found['said']}",
    ),
    slip(
        ('piece "cleat", 4 of, trim rail', None),
        ('piece "cleat", trim rail', None),
        written=r"^\s*piece +\"[^\"]*\"\s*(?P<slip>,\s*(?:\d+\s*of\s*(?=,|#|$)|(?=trim\b"
        r"|square\b|note\b)))",
        wanted="how long it is",
        remedy="Say it right behind the name: 4 of 22 1/2 in.",
        instead=None,
    ),
    slip(
        ('piece "cleat", 4 of 22 1/2 in, rail', 'piece "cleat", 4 of 22 1/2 in, trim rail'),
        written=rf"{_PIECE},[^#]*?\d[^,#]*,\s*(?P<slip>{NAME}){END_OF_PART}",
        wanted="“trim” before the trim's name",
        remedy="Write {}.",
        instead=_trim_of_piece,
    ),
)
"""What is often written of boxes and loose pieces, and how the language says it."""
