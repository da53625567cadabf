"""Loads the parser, from the one that was made ahead if it is the present grammar's."""

from __future__ import annotations

import pickle
from functools import cache
from importlib import import_module
from io import BytesIO
from pathlib import Path
from types import ModuleType
from typing import Any, Final

from lark import Lark
from lark import __version__ as lark_version
from lark.grammar import Rule
from lark.parsers.lalr_analysis import Action

from trimlang import made_ahead
from trimlang.language import word_lexer
from trimlang.resources import folder

_OPTIONS: Final[dict[str, Any]] = {
    # A line's first word decides its rule, so LALR with one word of lookahead is enough, and quick.
    # A wrong line stops at the exact word, which is what a message needs.
    "parser": "lalr",
    "start": "line",
    "propagate_positions": True,
    "maybe_placeholders": False,
    "_plugins": {"ContextualLexer": word_lexer.LineLexer},
}


def grammar_text() -> str:
    """Return the grammar file's text."""
    return (folder("grammar") / "trim.lark").read_text(encoding="utf-8")


def read_grammar(text: str) -> Lark:
    """Return the parser made from a grammar's text."""
    return Lark(text, **_OPTIONS)


@cache
def parser() -> Lark:
    """Return the parser for one line of a job file."""
    text = grammar_text()
    try:
        with (made_ahead.FOLDER / _made_name(text)).open("rb") as made:
            # It is for this very grammar, lexer, lark version and options: the file's name is
            # their digest.
            ready: Lark = pickle.load(made)  # noqa: S301 - the build wrote it, as it did the code
            return ready
    except FileNotFoundError:
        return read_grammar(text)


def make_parser(into: Path) -> None:
    """Write the parser into a folder, ready to be used.

    Lark's own format holds only what it makes its objects from, one by one, which takes three
    times as long as reading the objects themselves.
    """
    text = grammar_text()
    tables = BytesIO()
    read_grammar(text).save(tables)
    tables.seek(0)
    # Loaded from lark's format first, because that leaves out the grammar's own tree.
    ready = Lark.load(tables)
    _share_equal_parts(ready)
    with (into / _made_name(text)).open("wb") as made:
        _ParserPickler(made, pickle.HIGHEST_PROTOCOL).dump(ready)


class _OneRule(Rule):
    """A rule that equals only itself: lark's own compares and hashes what it says at every step."""

    __slots__ = ()
    __eq__ = object.__eq__
    __hash__ = object.__hash__


def _share_equal_parts(ready: Lark) -> None:
    """Let rules share their equal symbols and options, the table its rows, states their lexers.

    Lark makes each anew wherever it stands.  Most of the time that a made parser takes to load goes
    into objects, and a pickle holds a shared one only once.
    """
    parts: dict[Any, Any] = {}

    def shared(part: Any) -> Any:
        # Lark's own equality of symbols leaves out whether a token is kept in the tree.
        said = (getattr(part, field) for field in part.__serialize_fields__)
        return parts.setdefault((type(part), *said), part)

    # Rules of one name that leave out the same of what they read build the same node.
    builders = ready._callbacks
    for rule, builder in builders.items():
        builders[rule] = parts.setdefault(pickle.dumps(builder), builder)
    for rule in ready.rules:
        rule.origin = shared(rule.origin)
        rule.expansion = [shared(symbol) for symbol in rule.expansion]
        rule.options = shared(rule.options)
        rule.__class__ = _OneRule
    states = ready.parser.parser._parse_table.states
    for state, steps in states.items():
        row = {name: parts.setdefault(step, step) for name, step in steps.items()}
        states[state] = parts.setdefault(tuple(row.items()), row)
    lexers = ready.parser.lexer.lexers
    for state, lexer in lexers.items():
        # Lark tells apart what differs only in whether the line may end there.
        known = (*(one.name for one in lexer.terminals), *lexer.words.items())
        lexers[state] = lexer = parts.setdefault(known, lexer)
        for name in ("ignore_types", "newline_types"):
            types = getattr(lexer, name)
            setattr(lexer, name, parts.setdefault(types, types))
    # It has made the callbacks, which are all that a line's tree is built with.
    del ready._parse_tree_builder


class _ParserPickler(pickle.Pickler):
    """Writes a lark parser, with names for the two kinds of object that a pickle cannot hold."""

    def reducer_override(self, obj: Any) -> Any:
        if isinstance(obj, ModuleType):
            return import_module, (obj.__name__,)
        if isinstance(obj, Action):
            # Lark asks `action is Shift`, so it has to be that very object again.
            return obj.name
        return NotImplemented


def _made_name(text: str) -> str:
    lexer = Path(word_lexer.__file__).read_text(encoding="utf-8")
    return made_ahead.made_name("parser", lark_version, repr(_OPTIONS), lexer, text)
