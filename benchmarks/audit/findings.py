"""What an audit found, and the weaknesses that are explained in ``explained.toml``."""

from __future__ import annotations

import tomllib
from collections.abc import Iterable
from dataclasses import dataclass, field
from pathlib import Path

from packaging.utils import canonicalize_name
from packaging.version import Version

from benchmarks.audit.lock import Locked


@dataclass(frozen=True, slots=True)
class Finding:
    """A weakness that touches a locked version; ``fixed_in``: the newer versions that mend it."""

    id: str
    aliases: tuple[str, ...]
    locked: Locked
    fixed_in: tuple[str, ...]

    @property
    def order(self) -> tuple[Locked, str]:
        return self.locked, self.id

    def __str__(self) -> str:
        also = f" ({', '.join(self.aliases)})" if self.aliases else ""
        mended = f"fixed in {', '.join(self.fixed_in)}" if self.fixed_in else "no fix is named"
        return f"{self.id}{also} touches {self.locked}: {mended}"


@dataclass(frozen=True, slots=True)
class Explained:
    """Why a weakness does no harm here; only for this version, so that a new one is looked at."""

    id: str
    locked: Locked
    why: str

    def covers(self, finding: Finding) -> bool:
        return self.locked == finding.locked and self.id in (finding.id, *finding.aliases)


@dataclass(slots=True)
class Audit:
    """What came of one way of asking.

    ``source`` names what was asked, how much there was and how new; it is empty where there was no
    answer at all, and ``no_answer`` then says why.  ``unaudited`` are those of which alone nothing
    is known, each with the reason.
    """

    source: str = ""
    no_answer: str = ""
    findings: list[Finding] = field(default_factory=list)
    unaudited: dict[Locked, str] = field(default_factory=dict)
    unreadable: list[str] = field(default_factory=list)


def read_explained(path: Path) -> tuple[Explained, ...]:
    """Read the list.

    Raises:
        ValueError, KeyError: an entry is not as the file's first lines ask.
    """
    rows = tomllib.loads(path.read_text(encoding="utf-8")).get("explained", [])
    return tuple(
        Explained(
            row["id"],
            Locked(canonicalize_name(row["package"]), Version(row["version"])),
            row["why"],
        )
        for row in rows
    )


def explanation(finding: Finding, explained: Iterable[Explained]) -> str | None:
    """Return why the finding does no harm, if somebody has looked."""
    return next((one.why for one in explained if one.covers(finding)), None)
