"""Slips in what trims go up: assemblies under one name, and names of two words."""

from __future__ import annotations

from typing import Final

from trimlang.language.regional_names import NAME
from trimlang.language.slips.slip_row import END_OF_PART, slip

_ASSEMBLY: Final = r"^\s*assembly\b[^#]*?"
_TWO_WORDS: Final = "|".join(
    f"{one} +{two}"
    for one, two in (
        ("(?:dado|chair|picture|plate)", "rail"),
        ("(?:panel|crown|ceiling|bed)", "mou?ld(?:ing)?"),
        ("quarter", "round"),
        ("skirting", "board"),
        ("door", "stop"),
        ("toe", "kick"),
    )
)
"""Trims that have two words for a name where people talk of them."""

STACK_SLIPS: Final = (
    slip(
        ("assembly: frieze, crown", None),
        written=r"^\s*(?P<slip>assembly)\s*:",
        wanted="the assembly's name before the colon",
        remedy="Give it a name of its own: assembly cornice: frieze, crown in front of frieze.",
        # the first trim behind the colon is a member, and hardly ever the name
        instead=None,
    ),
    slip(
        ("assembly foot = base, shoe", "assembly foot: base, shoe"),
        written=rf"^\s*assembly +{NAME}(?P<slip>\s*=\s*)",
        wanted="a colon behind its name",
        remedy="Write a colon there.",
        instead=lambda _: ": ",
    ),
    slip(
        ("assembly cornice: frieze and crown", "assembly cornice: frieze, crown"),
        ("assembly cornice: frieze + crown", "assembly cornice: frieze, crown"),
        written=rf"{_ASSEMBLY}{NAME}(?P<slip>\s*(?:\band\b|with\b|[&+/;])\s*)",
        wanted="a comma between two members",
        remedy="Put a comma between them.",
        instead=lambda _: ", ",
    ),
    slip(
        (
            "assembly cornice: frieze, crown before frieze",
            "assembly cornice: frieze, crown in front of frieze",
        ),
        (
            "assembly cornice: frieze, crown over frieze",
            "assembly cornice: frieze, crown in front of frieze",
        ),
        written=rf"^\s*(?:assembly|trim)\b[^#]*?(?P<slip>(?<!in )\b(?:before|over|against|(?:at "
        rf"|the )?front of|ahead of))"
        rf"(?= +(?:the +)?{NAME})",
        wanted="“in front of”, or “on” where it lies on the other's top",
        remedy="Write {}.",
        instead=lambda _: "in front of",
    ),
    slip(
        (
            "assembly cornice: frieze, crown, bead behind crown",
            "assembly cornice: frieze, bead, crown in front of bead",
        ),
        (
            "assembly cornice: crown, frieze behind crown, bead",
            "assembly cornice: frieze, crown in front of frieze, bead",
        ),
        written=rf"{_ASSEMBLY}[:,]\s*(?P<slip>(?P<front>{NAME})\s*,\s*(?P<back>{NAME})\s+"
        rf"(?:behind|(?:in |at the )?back of)\s+(?P=front)){END_OF_PART}",
        wanted="what stands behind first, and then what stands in front of it",
        remedy="Write {}.",
        instead=lambda found: f"{found['back']}, {found['front']} in front of {found['back']}",
    ),
    slip(
        ("assembly cornice: frieze, crown in front of frieze, bead behind crown", None),
        written=rf"{_ASSEMBLY},\s*(?P<slip>{NAME}\s+(?:behind|(?:in |at the )?back of)\s+{NAME})",
        wanted="what stands in front",
        remedy="Say it of the trim that stands further out: crown in front of frieze. What stands"
        " before two others names the nearer of them.",
        instead=None,
    ),
    slip(
        (
            "assembly foot: base, cap on top of base",
            "assembly foot: base, cap on base",
        ),
        written=rf"^\s*(?:assembly|trim)\b[^#]*?(?P<slip>\b(?:on top of|atop|above"
        rf"|on the top of))(?= +{NAME})",
        wanted="“on”",
        remedy="Write {}.",
        instead=lambda _: "on",
    ),
    slip(
        ("assembly foot: base, shoe in front", None),
        ("assembly foot: base, cap on, shoe", None),
        written=rf"{_ASSEMBLY}{NAME}\s+(?P<slip>in front(?: of)?|on)\s*(?=,|#|$)",
        wanted="the trim that it stands before or lies on",
        remedy="Name it: shoe in front of base, cap on base.",
        instead=None,
    ),
    slip(
        (
            "cornice: frieze, crown in front of frieze",
            "assembly cornice: frieze, crown in front of frieze",
        ),
        ("foot: base, cap on base", "assembly foot: base, cap on base"),
        written=rf"^\s*(?P<slip>{NAME})\s*:\s*{NAME}\s*,[^#]*?\b(?:in front of|on) +{NAME}",
        wanted="a line that begins with the word assembly",
        remedy="Write {}: its name follows that word.",
        instead=lambda found: f"assembly {found['slip']}",
    ),
    slip(
        ('room "L", trim base, dado rail', 'room "L", trim base, dado-rail'),
        ("N: 40 in, left=butt, right=butt, dado rail taper",
         "N: 40 in, left=butt, right=butt, dado-rail taper"),
        ("N: 40 in, left=butt, right=butt, no chair rail",
         "N: 40 in, left=butt, right=butt, no chair-rail"),
        written=rf"(?:\btrim|\bno|\bstops|,)\s+(?P<slip>(?:{_TWO_WORDS})\b)(?!\s*:)",
        wanted="a trim's name of one word",
        remedy="A trim's name is one word, as in its own line above: write {}, or that name.",
        instead=lambda found: "-".join(found["slip"].split()),
    ),
)  # fmt: skip
"""What is often written of trims that go up together, and how the language says it."""
