"""Rows and headings of a table that stand in a job file as they were pasted."""

from __future__ import annotations

import re
from typing import Final

from trimlang.language.slips.slip_row import slip

_A_ROW: Final = (
    "This looks like a row of a spreadsheet: save it as CSV, and “trimlang convert” makes a job"
    " file of it"
)
_CELL: Final = (
    r"(?:\d[\d./ ]*(?:[¼½¾⅐-⅞])?(?: ?(?:ft|feet|in|mm|cm|m|['\"″′])(?: ?\d[\d/ ]*[\"″]?)?)?)"
)
"""A length alone in a cell of a table."""
_HEAD: Final = r"\"?[^\W\d_][^\d,;\t|:=#\"]*\"?"
"""A column's name in a table's heading."""
_JOINT: Final = r"(?:(?:in|out)(?:-corner)?|inside|outside|butt|return|open|rake|splice|taper)"


TABLE_SLIPS: Final = (
    slip(
        ("room,wall,length,left,right", None),
        ("Wall; Length (in); Left", None),
        ('"Room","Length"', None),
        # The heading of a table: words alone, of which one says that a length stands below it.
        written=rf"^\s*(?P<slip>{_HEAD}(?:\s*[,;\t|]\s*{_HEAD})*?\s*[,;\t|]\s*\"?(?:length|len|width|long"
        rf"|measure\w*|distance)\b[^,;\t|]*(?:[,;\t|]\s*{_HEAD}\s*)*)$",
        wanted="a line of a job file",
        remedy=f"{_A_ROW.replace('a row', 'the heading')}.",
        instead=None,
    ),
    slip(
        ("N\t40\tin-corner\tbutt", None),
        ("run;N;40;butt;butt", None),
        # The same separator twice, and no comma: a row of a table.
        written=r"^[^,#\"]*?([\t;])[^,#\"]*?\1.*$",
        wanted="a line of a job file",
        remedy=f"{_A_ROW}.",
        instead=None,
    ),
    slip(
        ("N,120 1/4,in-corner,in-corner", "N: 120 1/4, left=in-corner, right=in-corner"),
        ("E2,8 ft 7,in,butt", "E2: 8 ft 7, left=in, right=butt"),
        written=rf"^\s*(?P<slip>(?P<wall>[^\W\d_][\w\-]*),\s*(?P<long>{_CELL}),\s*(?P<left>{_JOINT})"
        rf",\s*(?P<right>{_JOINT})),*\s*$",
        wanted="a line of a job file",
        remedy=f"{_A_ROW}; by hand it is {{}}.",
        instead=lambda found: (
            f"{found['wall']}: {found['long']}, left={found['left']}, right={found['right']}"
        ),
    ),
    slip(
        ("N, 10 ft, E, 8 ft 7", "N 10 ft, E 8 ft 7"),
        ("N, 10 ft", "N 10 ft"),
        ("N, 10 ft, left=in, right=butt", "N 10 ft, left=in, right=butt"),
        written=rf"^\s*(?P<slip>[^\W\d_][\w\-]*, ?{_CELL}(?:, ?[^\W\d_][\w\-]*, ?{_CELL})*)"
        r"(?=\s*(?:#|$|,\s*\w+\s*=))",
        wanted="a wall's length right behind its name",
        remedy="Write {}.",
        instead=lambda found: re.sub(r"([^\W\d_][\w\-]*), ?(?=\d)", r"\1 ", found["slip"]),
    ),
    slip(
        ("Kitchen,N,3.25", None),
        ("run,Den,N,10 ft,in,in", None),
        ('"Den",N,10 ft 2 1/4,in', None),
        # Cells of a name, with a length alone in one of those behind.
        # The words left out begin lines that rightly have a bare length behind a comma.
        written=rf"^\s*(?!(?:door|window|opening|stair|bare|cabinets|radiator|newel|beam|cut|spoiled"
        r"|shortened|fitted|bought)\b)"
        rf"[^\W\d_\"][^,:=#\d]*,(?:[^,:=#]*,)*\s*{_CELL}\s*(?:,[^:=#]*)?$"
        rf"|^\s*\"[^\"]*\",(?:[^,:=#]*,)*\s*{_CELL}\s*(?:,[^:=#]*)?$",
        wanted="a line of a job file",
        remedy=f"{_A_ROW}.",
        instead=None,
    ),
)
"""What comes out of a spreadsheet, and where it goes instead."""
