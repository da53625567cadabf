"""Slips in loose pieces: their name, how many, how long, what of."""

from __future__ import annotations

from typing import Final

from trimlang.diagnostics.near_words import nearest
from trimlang.language.regional_names import NAME
from trimlang.language.slips.slip_row import END_OF_PART, Found, slip
from trimlang.language.slips.slip_row import WRITTEN_LENGTH as LONG
from trimlang.language.vocabulary import words_after

_PIECE: Final = r"^\s*piece\b[^#]*?"
_TIMES: Final = r"(?:x|×|\*|@|at|pcs?\.?(?: of)?|pieces?(?: of)?|off|each)"


def _trim_of_piece(found: Found) -> str | None:
    # “squared” is a misspelt word of the line, and the name of no trim
    known = words_after('piece "x", 1 in,')
    return None if nearest(found["slip"], known) else f"trim {found['slip']}"


def _piece(found: Found) -> str:
    if found["name"]:
        return f"piece {found['name']}, {found['said'].strip()}"
    return f"piece {found['called']}, {found['count']} of {found['long'].strip()}"


PIECE_SLIPS: Final = (
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
"""What is often written of loose pieces, and how the language says it."""
