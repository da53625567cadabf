"""T64x: names that would not stay with their pieces."""

from typing import Final

from trimlang.diagnostics.code_page import Page
from trimlang.diagnostics.severity import Severity

NAME_PAGES: Final = (
    Page(
        "T641",
        "a tag that hangs on the order of the rooms",
        "“{room}” is tagged {tag} only because “{other}” above it has {plain}",
        "Write “as” and a tag of its own behind its name: room “{room}” as {tag}.",
        "A piece's name begins with its room's tag and is written on the wood. Two rooms with the"
        " same initials get their tags by which stands first, so a room added above them would"
        " change the names of pieces that may be cut already. A tag that is written out stays.",
        """\
trim base: 9/16 in thick, 5 1/4 in tall
stock base: 12 ft at 17.40
room "Living room", trim base, open walk
  N: 40 in, left=butt, right=butt
room "Laundry room", trim base, open walk
  N: 50 in, left=butt, right=butt
""",
        Severity.WARNING,
    ),
)
