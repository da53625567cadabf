"""Codes that not only their page and the one place that says them need.

They stand apart from the pages, which nothing needs to read in a job that has no findings.
"""

from __future__ import annotations

from typing import Final

MISPLACED: Final = "T101"
"""What is said of a slip that has no page of its own."""

OFF_TAPE: Final = "T112"
"""Told as a slip, and not only as a question, where no wall can be so short."""

ODD_FEET: Final = "T113"
"""Not told of a stick's length where what stands behind its feet is a price."""

SIDES_DISAGREE: Final = "T301"
"""Not told where one slip explains all corners of a room whose two sides disagree."""

NOT_IN_FULL: Final = "T712"
"""Told of a line that does not say all: `mark` writes it out, and so does not tell it."""

NO_PRICE: Final = "T709"
"""In a job with prices `mark` asks for this one too before it writes."""

NOBODY_BOUGHT: Final = "T714"
"""Where it costs nothing the stick is on no list either, and `mark` asks before it writes."""
