"""``trimlang convert``: makes a job file from a survey in CSV, or a table from a job file."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Final

from trimlang.cli.options import ConvertOptions
from trimlang.cli.replies import (
    CLEAN,
    JOB_ERRORS,
    WRONG_USAGE,
    complain,
    print_whole,
)
from trimlang.diagnostics import Span, has_errors, say
from trimlang.diagnostics.show import show
from trimlang.diagnostics.source import Source
from trimlang.output.one_file import is_one_of, new_file, replace_file
from trimlang.reading import MOST_MEGABYTES, UnreadableError, decode
from trimlang.tables.from_csv import from_csv
from trimlang.tables.to_csv import to_csv

TABLES: Final = (".csv", ".tsv", ".txt")


def convert(options: ConvertOptions) -> int:
    """Convert the file; return the exit code."""
    source, target = options.source, options.target
    if target is not None and is_one_of(target, _read(options)):
        complain(f"{target} is a file that this is made from; name another one to write")
        return WRONG_USAGE
    if target is not None and target.exists() and not options.force:
        complain(f"{target} is there already; name another file, or add --force")
        return WRONG_USAGE
    if options.include is not None and not options.include.isprintable():
        complain(f"no job file can include {options.include}: its name has signs that are no text")
        return WRONG_USAGE
    try:
        with source.open("rb") as file:
            # One byte more than allowed is enough to see that a file is too large.
            data = file.read(MOST_MEGABYTES * 2**20 + 1)
    except OSError as error:
        complain(f"cannot read {source}: {(error.strerror or str(error)).lower()}")
        return WRONG_USAGE
    if len(data) > MOST_MEGABYTES * 2**20:
        complain(f"{source} is larger than {MOST_MEGABYTES} MB")
        return WRONG_USAGE
    # By the name alone: a table and a job file can both begin with any text.
    made = _table(options, data) if source.suffix.lower() == ".trim" else _job(options, data)
    if made is None:
        return JOB_ERRORS
    if target is None:
        print_whole(made)
        return CLEAN
    # With a byte order mark, as spreadsheets take a CSV without one for the system's old encoding.
    encoding = "utf-8-sig" if target.suffix.lower() in TABLES else "utf-8"
    return _write(target, made.encode(encoding), force=options.force)


def _read(options: ConvertOptions) -> tuple[Path, ...]:
    """Return the file that is converted, and the one that the job file to be written includes."""
    if options.include is None or options.target is None:
        return (options.source,)
    return options.source, options.target.parent / options.include


def _job(options: ConvertOptions, data: bytes) -> str | None:
    """Return the job file made from a table, None where it has errors; print its findings."""
    made = from_csv(data, options.source, options.include)
    sources = {made.source.name: made.source}
    show(made.findings, sources, sys.stderr, form=options.messages)
    for line in made.remarks:
        sys.stderr.write(f"{options.source.name}: {line}\n")
    return None if has_errors(made.findings) else made.text


def _table(options: ConvertOptions, data: bytes) -> str | None:
    name = options.source.name
    try:
        source = Source(name, decode(data, name))
    except UnreadableError as error:
        finding = say(error.code, Span(name, 1, 1, 2), **error.facts)
        show((finding,), {}, sys.stderr, form=options.messages)
        return None
    table, findings = to_csv(source)
    show(findings, {name: source}, sys.stderr, form=options.messages)
    return None if has_errors(findings) else table


def _write(target: Path, data: bytes, *, force: bool) -> int:
    """Write a file whole or not at all, over one that has appeared meanwhile only if forced."""
    try:
        (replace_file if force else new_file)(target, data)
    except OSError as error:
        complain(f"cannot write {target}: {(error.strerror or str(error)).lower()}")
        return WRONG_USAGE
    return CLEAN
