"""Reads a command line: options may stand anywhere, and no word can control the terminal."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from typing import Any

from trimlang.letters import printable


class PlainParser(argparse.ArgumentParser):
    """Prints messages without the characters in the user's words that a terminal would obey."""

    def _print_message(self, message: str, file: Any = None) -> None:
        # A file's name or an option's value, as typed, is part of argparse's messages.
        text = "\n".join(map(printable, message.split("\n")))
        if file is sys.stdout:
            file.write(text)  # argparse would say nothing of a help that cannot be printed
        else:
            super()._print_message(text, file)


class CommandParser(PlainParser):
    """Reads what follows a command's name.

    By itself, argparse takes job files and lines from one place only, so it would reject the line
    in ``mark JOB.trim --anyway "cut ST-N-base"``.
    """

    _mixing = False

    def parse_known_args(  # type: ignore[override]
        self, args: Sequence[str] | None = None, namespace: Any = None
    ) -> tuple[Any, list[str]]:
        """Read words; return what they ask for, and the words that are left; see argparse."""
        # Without an option there is nothing to mix; and the intermixed reading calls this again
        # for each of its two passes.
        plain = args is not None and not any(word.startswith("-") for word in args)
        if plain or self._mixing:
            return super().parse_known_args(args, namespace)
        self._mixing = True
        try:
            return self.parse_known_intermixed_args(args, namespace)
        finally:
            self._mixing = False
