"""Slips in boxes on a wall: where, how many, how tall and wide, what of."""

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
_COUNTED: Final = r"^\s*boxes\b[^:#]*:\s*"


def _in_figures(found: Found) -> str:
    return _NUMBERS[found["slip"].casefold()]


def _sizes(found: Found) -> tuple[str, str]:
    one, other = found["one"].strip(), found["other"].strip()
    count = found["count"]
    return f"{count}, {one} wide, {other} tall", f"{count}, {one} tall, {other} wide"


def _trim_of_boxes(found: Found) -> str | None:
    # “margn” is a misspelt word of the line, and the name of no trim
    known = words_after("boxes N: 3,")
    return None if nearest(found["slip"], known) else f"trim {found['slip']}"


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
        ("boxes N: equal, 3, 24 in tall, margin 3 in", "boxes N: 3, 24 in tall, margin 3 in"),
        ("boxes N: equally spaced 3, 24 in tall", "boxes N: 3, 24 in tall"),
        written=rf"{_COUNTED}(?P<slip>equal(?:ly)?(?: +spaced)?\s*,?\s*)(?=\d)",
        wanted="how many there are, and no more",
        remedy="The boxes of one line are equal anyway: leave it out.",
        instead=lambda _: "",
    ),
    slip(
        ("boxes N: 3, equal, 24 in tall, margin 3 in", "boxes N: 3, 24 in tall, margin 3 in"),
        ("boxes N: 3, 24 in tall, margin 3 in, all alike", "boxes N: 3, 24 in tall, margin 3 in"),
        written=rf"{_COUNTED}[^#]*?(?P<slip>\s*,\s*(?:all +)?(?:equal(?:ly)?(?: +spaced)?"
        rf"|alike|the same)){END_OF_PART}",
        wanted="sizes, margin and trim, and no more",
        remedy="The boxes of one line are equal anyway: leave it out.",
        instead=lambda _: "",
    ),
    slip(
        (
            "boxes N: 3, 24 in tall, margin 3 in, panel",
            "boxes N: 3, 24 in tall, margin 3 in, trim panel",
        ),
        (
            "boxes N: 3, panel, 24 in tall, margin 3 in",
            "boxes N: 3, trim panel, 24 in tall, margin 3 in",
        ),
        written=rf"{_COUNTED}[^#]*?\d[^#]*?,\s*(?P<slip>{NAME}){END_OF_PART}",
        wanted="“trim” before the trim's name",
        remedy="Write {}.",
        instead=_trim_of_boxes,
    ),
    slip(
        (
            "boxes N: 3 of 24 in by 30 in, trim panel",
            "boxes N: 3, 24 in wide, 30 in tall, trim panel",
        ),
        ("boxes N: 3, 24 x 14 in, trim panel", "boxes N: 3, 24 wide, 14 in tall, trim panel"),
        written=rf"{_COUNTED}(?P<slip>(?P<count>\d+)\s*(?:,|of|at|@|x|×)\s*(?P<one>{LONG})"
        rf"\s*(?:x|×|by)\s*(?P<other>{LONG})){END_OF_PART}",
        wanted="which size is which",
        remedy="If the width is first, write {}; if the height is, {}.",
        instead=_sizes,
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
        ("boxes N: 3, 24 in, margin 3 in", None),
        written=rf"{_BOXES},\s*(?P<slip>{LONG}(?:\s*(?:x|×|by)\s*{LONG})?){END_OF_PART}",
        wanted="which size is which",
        remedy="Say so: 24 in tall, 14 in wide.",
        instead=None,
    ),
)
"""What is often written of boxes, and how the language says it."""
