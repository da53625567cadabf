"""The exact versions that ``.ci/lock`` has written down."""

from __future__ import annotations

from dataclasses import dataclass

from packaging.requirements import InvalidRequirement, Requirement
from packaging.utils import NormalizedName, canonicalize_name
from packaging.version import InvalidVersion, Version


@dataclass(frozen=True, slots=True, order=True)
class Locked:
    """A package, its name normalised, and the one version that is installed."""

    package: NormalizedName
    version: Version

    def __str__(self) -> str:
        return f"{self.package} {self.version}"


def read_lock(text: str) -> tuple[frozenset[Locked], tuple[str, ...]]:
    """Return what is locked, for whatever system, and the lines that say no exact version."""
    found: set[Locked] = set()
    unreadable: list[str] = []
    for line in text.replace("\\\n", " ").splitlines():
        said = line.partition(" --hash=")[0].partition(" #")[0].strip()
        if not said or said.startswith("#"):
            continue
        try:
            found.add(_locked(said))
        except (InvalidRequirement, InvalidVersion):
            unreadable.append(said)
    return frozenset(found), tuple(unreadable)


def _locked(said: str) -> Locked:
    asked = Requirement(said)
    if len(asked.specifier) == 1 and not asked.url:
        (only,) = asked.specifier
        if only.operator == "==":
            # "==1.*" is no version and is refused here
            return Locked(canonicalize_name(asked.name), Version(only.version))
    raise InvalidRequirement(said)
