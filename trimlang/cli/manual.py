"""Makes the manual page from the commands' own descriptions.

The wheel installs ``docs/trimlang.1``; a test compares it with what is made here.
"""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from textwrap import wrap
from typing import Final

from trimlang.cli.command_line import arguments
from trimlang.cli.replies import EXITS
from trimlang.version import __version__

_DATE: Final = "2026-11-25"
"""The date of the last release that changed the commands."""

_EXAMPLES: Final = (
    ("trimlang start kitchen.trim", "Write a job file to begin from."),
    ("trimlang build kitchen.trim --out shop", "Write tickets, order and checklist into shop/."),
    ("trimlang tidy *.trim", "Lay all job files out in the one canonical way."),
    ("trimlang compare kitchen.trim --git HEAD", "Tell what has changed since the last commit."),
)


def manual_page() -> str:
    """Return the manual page as roff (the man macros)."""
    return "".join(f"{line}\n" for line in _page(arguments()))


def _page(parser: argparse.ArgumentParser) -> Iterator[str]:
    yield '.\\" Made from what the commands say of themselves: change them, not this file.'
    yield f'.TH TRIMLANG 1 {_DATE} "trimlang {__version__}" "User Commands"'
    yield ".SH NAME"
    yield "trimlang \\- cut tickets and stock order from a survey of interior trim"
    yield ".SH SYNOPSIS"
    commands = _commands(parser)
    for number, (name, command, _) in enumerate(commands):
        if number:
            yield ".br"
        yield f".B trimlang {_roff(name)}"
        yield from _arguments(command)
    yield ".SH DESCRIPTION"
    yield from _filled(parser.description or "")
    yield ".SH COMMANDS"
    for name, command, help_text in commands:
        yield f".SS {_roff(name)}"
        yield from _filled(_sentence(help_text))
        for action in command._actions:
            if not isinstance(action, argparse._HelpAction) and action.help != argparse.SUPPRESS:
                yield ".TP"
                yield _named(action)
                yield from _filled(_help(action, command))
        # The usual exit codes are said once for all commands, further down.
        if command.epilog and command.epilog != EXITS:
            yield ".PP"
            yield from _filled(_sentence(command.epilog))
    yield ".SH EXIT STATUS"
    yield from _filled(_sentence(EXITS))
    yield "A command that has its own says so above."
    yield ".SH ENVIRONMENT"
    yield ".TP"
    yield ".B NO_COLOR"
    yield "Where it is set, messages on a terminal are not coloured."
    yield ".SH EXAMPLES"
    for line, does in _EXAMPLES:
        yield ".TP"
        yield f".B {_roff(line)}"
        yield _roff(does)


def _commands(
    parser: argparse.ArgumentParser,
) -> list[tuple[str, argparse.ArgumentParser, str]]:
    """Return each command's name, its parser and what it does."""
    # argparse has no public way to ask a parser for its commands and their help.
    (action,) = (one for one in parser._actions if isinstance(one, argparse._SubParsersAction))
    help_text = {one.dest: one.help or "" for one in action._choices_actions}
    return [(name, command, help_text.get(name, "")) for name, command in action.choices.items()]


def _arguments(command: argparse.ArgumentParser) -> Iterator[str]:
    if any(action.option_strings for action in command._actions if action.dest != "help"):
        yield "[\\fIoptions\\fR]"
    for action in command._actions:
        if action.option_strings:
            continue
        name = f"\\fI{_roff(_metavar(action))}\\fR"
        if action.nargs in ("+", "*"):
            name += " .\\|.\\|."
        yield f"[{name}]" if action.nargs in ("?", "*") else name


def _named(action: argparse.Action) -> str:
    """Return the heading of an argument's entry."""
    if not action.option_strings:
        return f".I {_roff(_metavar(action))}"
    options = ", ".join(f"\\fB{_roff(option)}\\fR" for option in action.option_strings)
    return options if action.nargs == 0 else f"{options} \\fI{_roff(_metavar(action))}\\fR"


def _metavar(action: argparse.Action) -> str:
    if action.metavar is not None:
        return str(action.metavar)
    if action.choices is not None:
        return "|".join(str(choice) for choice in action.choices)
    return action.dest.upper() if action.option_strings else action.dest


def _help(action: argparse.Action, command: argparse.ArgumentParser) -> str:
    # As argparse itself fills in %(default)s and %(prog)s.
    return _sentence((action.help or "") % {**vars(action), "prog": command.prog})


def _sentence(text: str) -> str:
    """Return a text as a sentence: a capital letter first, a full stop last."""
    text = " ".join(text.split())
    return f"{text[:1].upper()}{text[1:]}{'' if text.endswith('.') else '.'}" if text else ""


def _filled(text: str) -> Iterator[str]:
    """Yield a text as source lines of moderate length."""
    # Not at hyphens: an option's name stays in one piece.
    yield from (_roff(line) for line in wrap(text, 64, break_on_hyphens=False))


def _roff(text: str) -> str:
    """Return a text such that roff takes nothing in it for a request."""
    # A plain hyphen may be printed as a dash, and then an option cannot be copied.
    signs = {"\\": "\\e", "-": "\\-"}
    text = "".join(
        signs.get(sign, sign if sign.isascii() else f"\\[u{ord(sign):04X}]") for sign in text
    )
    # A line that begins with a point or an apostrophe would be a request.
    return f"\\&{text}" if text.startswith((".", "'")) else text
