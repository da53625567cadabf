"""The lines that most pages' example jobs begin with."""

from typing import Final

TRIM: Final = "trim base: 9/16 in thick, 5 1/4 in tall\n"
STOCK: Final = "stock base: 12 ft at 17.40\n"
OPEN_ROOM: Final = 'room "Study", trim base, open walk\n'
RUN: Final = "  N: 40 in, left=butt, right=butt\n"

JOB_TO_ROOM: Final = TRIM + STOCK + OPEN_ROOM
"""A job up to its room's first wall."""

JOB_TO_CLOSED_ROOM: Final = TRIM + STOCK + 'room "Study", trim base\n'
"""The same where the walls must lead back to where they began."""
