"""The compiler's steps that can be replaced: read a file, read a line, join a room.

An editor replaces them: some of its files are not saved yet, and lines and rooms that did not
change since the last key stroke come out of a cache.
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
class Steps:
    """``read`` gives an included file's text, ``line`` a line's statement, ``room`` its pieces."""

    read: Callable[[Path], str] = read_text
    line: ReadLine = read_line
    room: JoinRoom = join_room


PLAIN: Final = Steps()
