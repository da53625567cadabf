"""What a finding takes to be whole, and what another tells is not."""

from enum import Enum, auto


class Whole(Enum):
    """Something that a finding can only judge where all of it was read.

    A page says which of them its finding ``needs``, and which of them is not whole where its
    finding is made (``loses``).  What needs a thing that another finding has lost says nothing
    that is sure, so it is not told: mending the other may mend it too.
    """

    LINE = auto()
    """The line that is marked: an end that could not be read is not missing."""
    FILES = auto()
    """All that is included."""
    WALLS = auto()
    """Every wall of the room: without one of them the others do not meet."""
    TRIMS = auto()
    """The lines that say what the trims are."""
    USES = auto()
    """Every name of a trim at a wall."""
