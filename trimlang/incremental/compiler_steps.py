"""What the compiler works with: how it comes by files, lines and rooms.

An editor puts its own in their place: it has files that are not saved yet, and
remembers the lines and rooms that did not change since the last key.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Final

from trimlang.joinery.pieces import JoinRoom, join_room
from trimlang.language.parse import ReadLine, read_line
from trimlang.reading import read_text
from trimlang.record import record


@record
class Means:
    """``read`` gives an included file's text, ``line`` a statement, ``room`` its pieces."""

    read: Callable[[Path], str] = read_text
    line: ReadLine = read_line
    room: JoinRoom = join_room


USUAL: Final = Means()
