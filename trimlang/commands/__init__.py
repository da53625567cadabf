"""The command line: ``trimlang build``, ``check`` and ``explain``."""

from trimlang.commands.line import main

__all__ = ["main"]
