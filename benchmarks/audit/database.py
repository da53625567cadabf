"""Ask a clone of a database of weaknesses that lies on this disk."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection
from pathlib import Path

from benchmarks.audit.findings import Audit, Finding
from benchmarks.audit.lock import Locked
from benchmarks.audit.records import Record, UnreadableError, read_record, record_files


def ask(locked: Collection[Locked], folder: Path) -> Audit:
    """Hold each record of ``folder`` against what is locked; each that can't be read is named."""
    audit = Audit()
    versions: defaultdict[str, list[Locked]] = defaultdict(list)
    for one in locked:
        versions[one.package].append(one)
    read: list[Record] = []
    named = 0
    for path in record_files(folder):
        try:
            record = read_record(path.read_text(encoding="utf-8"))
            read.append(record)
            if record.withdrawn:
                continue
            named += any(part.package in versions for part in record.affected)
            audit.findings += _findings(record, versions)
        except (UnreadableError, OSError, UnicodeDecodeError) as error:
            audit.unreadable.append(f"{path}: {error}")
    if not read:
        audit.no_answer = f"no record could be read in {folder}"
        return audit
    newest = max(record.modified for record in read).date()
    withdrawn = sum(record.withdrawn for record in read)
    audit.source = (
        f"{len(read)} records, the newest of {newest} (what came to light later is not in them); "
        f"{withdrawn} are withdrawn, {named} name a locked package"
    )
    return audit


def _findings(record: Record, versions: dict[str, list[Locked]]) -> list[Finding]:
    found: dict[Locked, Finding] = {}
    for part in record.affected:
        for one in versions.get(part.package, ()):
            if part.touches(one.version):
                mended = tuple(str(at) for at in part.fixed_after(one.version))
                found[one] = Finding(record.id, record.aliases, one, mended)
    return list(found.values())
