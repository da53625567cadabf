"""What a finding needs to have been read completely, and what another says was not."""

from enum import Enum, auto


class Whole(Enum):
    """Something that a finding can only judge where all of it could be read.

    A page says which of them its finding ``needs``, and which of them is incomplete once its
    finding is made (``loses``).  A finding that needs what another has lost is not certain, so it
    is not told: mending the other may mend it too.
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
