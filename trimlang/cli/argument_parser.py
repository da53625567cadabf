"""How a command line is read: options stand anywhere, and no word steers a terminal."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from typing import Any


class PlainParser(argparse.ArgumentParser):
    """Tells what is wrong with a word without writing the signs in it that a terminal obeys."""

    def _print_message(self, message: str, file: Any = None) -> None:
        from trimlang.letters import printable

        super()._print_message("\n".join(map(printable, message.split("\n"))), file)


class CommandParser(PlainParser):
    """Reads what stands behind a command's name.

    By itself argparse takes job files and lines from one place only, so that it would call
    the line unknown in ``mark JOB.trim --anyway "cut ST-N-base"``.
    """

    _mixing = False

    def parse_known_args(  # type: ignore[override]
        self, args: Sequence[str] | None = None, namespace: Any = None
    ) -> tuple[Any, list[str]]:
        """Read words, and return what they ask for and those that are left; see argparse."""
        if self._mixing:  # argparse reads options and the rest in two goes of its own
            return super().parse_known_args(args, namespace)
        self._mixing = True
        try:
            return self.parse_known_intermixed_args(args, namespace)
        finally:
            self._mixing = False
