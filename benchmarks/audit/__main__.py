"""Tell whether a known weakness touches a locked version: ``python -m benchmarks.audit``.

    sh .ci/audit                         ask the package index, through pip-audit
    sh .ci/audit --advisories FOLDER     ask a clone of a database of OSV records, without a network

It ends with 0 when nothing touches (or each that does is explained in ``explained.toml``), with 1
when something does, with 2 for wrong use or when something could not be read, with 3 when there was
no data on some or all of the versions: those are not audited.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from benchmarks.audit import database, index
from benchmarks.audit.findings import Audit, Explained, explanation, read_explained
from benchmarks.audit.lock import Locked, read_lock

ROOT = Path(__file__).resolve().parent.parent.parent
LOCKS = tuple(ROOT / ".ci" / name for name in ("requirements-dev.txt", "requirements.txt"))
SOUND, TOUCHED, UNREADABLE, NOT_AUDITED = 0, 1, 2, 3


def main(arguments: Sequence[str] | None = None) -> int:
    parser = argparse.ArgumentParser("benchmarks.audit", description=(__doc__ or "").split("\n")[0])
    parser.add_argument("--advisories", type=Path, metavar="FOLDER", help="clone of OSV records")
    parser.add_argument("--seconds", type=float, default=120, help="wait so long for the index")
    parser.add_argument("--lock", type=Path, action="append", help="instead of the two in .ci")
    parser.add_argument(
        "--explained", type=Path, default=Path(__file__).with_name("explained.toml"), metavar="FILE"
    )
    options = parser.parse_args(arguments)
    if options.advisories and not options.advisories.is_dir():
        parser.error(f"no folder {options.advisories}")
    locked: set[Locked] = set()
    strange: list[str] = []
    try:
        for lock in options.lock or LOCKS:
            here, unreadable = read_lock(lock.read_text(encoding="utf-8"))
            locked |= here
            strange += [f"{lock}: not an exact version: {line}" for line in unreadable]
        explained = read_explained(options.explained)
    except (OSError, ValueError, KeyError, TypeError) as error:
        parser.error(f"{type(error).__name__}: {error}")
    if options.advisories:
        audit = database.ask(locked, options.advisories)
    else:
        audit = index.ask(locked, options.seconds)
    audit.unreadable[:0] = strange
    return tell(audit, locked, explained)


def tell(audit: Audit, locked: set[Locked], explained: tuple[Explained, ...]) -> int:
    """Print what was found, and return the status to end with."""
    open_ones = 0
    for finding in sorted(audit.findings, key=lambda one: one.order):
        why = explanation(finding, explained)
        open_ones += why is None
        print(finding if why is None else f"{finding}\n    explained: {why}")
    for line in audit.unreadable:
        print(f"could not be read: {line}")
    if audit.source:
        touched = len({finding.locked for finding in audit.findings})
        audited = len(locked) - len(audit.unaudited)
        print(f"asked: {audit.source}")
        print(f"known weaknesses touch {touched} of the {audited} locked versions audited")
    if audit.no_answer:
        print(f"dependencies not audited: none of {len(locked)}: {audit.no_answer}")
    elif audit.unaudited:
        names = ", ".join(str(one) for one in sorted(audit.unaudited))
        print(f"dependencies not audited: {len(audit.unaudited)} of {len(locked)}: {names}")
    if audit.unreadable:
        print(
            f"{len(audit.unreadable)} lines or records could not be read, so this is no whole audit"
        )
    if open_ones:
        return TOUCHED
    if audit.unreadable:
        return UNREADABLE
    return NOT_AUDITED if audit.no_answer or audit.unaudited else SOUND


if __name__ == "__main__":
    sys.exit(main())
