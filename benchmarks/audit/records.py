"""Records of known weaknesses in the OSV form, and which versions each of them touches.

The form: https://ossf.github.io/osv-schema/.  The database of the Python Packaging Authority keeps
one YAML file a record in a folder ``vulns``; JSON, which is YAML too, is read as well.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from packaging.utils import NormalizedName, canonicalize_name
from packaging.version import InvalidVersion, Version

KINDS = (".yaml", ".yml", ".json")
EVENTS = ("introduced", "fixed", "last_affected")
# as every value is read as text: YAML would take version 1.10 for the number 1.1
NOTHING = ("", "~", "null")


class UnreadableError(ValueError):
    """A record that can't be read, or can't be judged for a package; the text says why."""


@dataclass(frozen=True, slots=True)
class Affected:
    """What a record says of one package.

    A range is its kind and its events, each a word of ``EVENTS`` and a version as it was written.
    """

    package: NormalizedName
    ranges: tuple[tuple[str, tuple[tuple[str, str], ...]], ...]
    versions: tuple[str, ...]

    def touches(self, version: Version) -> bool:
        """Tell whether ``version`` is affected.

        Raises:
            UnreadableError: neither versions nor a range of versions are given, or one can't be
                put in order.
        """
        ranges = self.judged_ranges()
        if not ranges and not self.versions:
            raise UnreadableError(f"neither versions nor a range of versions of {self.package}")
        version = Version(version.public)
        in_range = [_within(events, version) for events in ranges]
        return any(in_range) or any(_same(listed, version) for listed in self.versions)

    def fixed_after(self, version: Version) -> tuple[Version, ...]:
        """Return the versions, lowest first, that are newer and said to mend it."""
        said = {
            _version(at)
            for events in self.judged_ranges()
            for kind, at in events
            if kind == "fixed"
        }
        return tuple(sorted(one for one in said if one > version))

    def judged_ranges(self) -> list[tuple[tuple[str, str], ...]]:
        """Return the events of the ranges of versions; ranges of commits say nothing of a release.

        Raises:
            UnreadableError: a range of another kind, which nobody here knows how to judge.
        """
        for kind, _ in self.ranges:
            if kind not in ("ECOSYSTEM", "GIT"):
                raise UnreadableError(f"a range of kind {kind} for {self.package}")
        return [events for kind, events in self.ranges if kind == "ECOSYSTEM"]


@dataclass(frozen=True, slots=True)
class Record:
    """One weakness; ``affected`` holds only packages of the Python package index."""

    id: str
    aliases: tuple[str, ...]
    modified: datetime
    withdrawn: bool
    affected: tuple[Affected, ...]


def record_files(folder: Path) -> Iterator[Path]:
    """Yield the files of a clone (its folder ``vulns`` where it has one), in a fixed order."""
    kept = folder / "vulns"
    for path in sorted((kept if kept.is_dir() else folder).rglob("*")):
        if path.suffix in KINDS and path.is_file():
            yield path


def read_record(text: str) -> Record:
    """Read one record.

    Raises:
        UnreadableError: it is not in the OSV form.
    """
    import yaml

    loader = getattr(yaml, "CBaseLoader", yaml.BaseLoader)
    try:
        # a base loader makes nothing but texts, lists and mappings of them
        whole = yaml.load(text, loader)  # noqa: S506
    except yaml.YAMLError as error:
        raise UnreadableError(" ".join(str(error).split())) from error
    name = _text(whole, "id")
    try:
        modified = datetime.fromisoformat(_text(whole, "modified")).astimezone(UTC)
    except ValueError as error:
        raise UnreadableError(f"{name}: {error}") from error
    return Record(
        name,
        tuple(_texts(whole, "aliases")),
        modified,
        _has(whole, "withdrawn"),
        tuple(_affected(one) for one in _list(whole, "affected") if _of_python(one)),
    )


def _of_python(one: Any) -> bool:
    # a record may also name a system's packages, or none at all but commits
    if not isinstance(one, dict):
        raise UnreadableError("an affected package is no mapping")
    return _has(one, "package") and _text(one["package"], "ecosystem").split(":")[0] == "PyPI"


def _affected(one: dict[str, Any]) -> Affected:
    ranges = tuple(
        (_text(part, "type"), tuple(_events(part))) for part in _optional_list(one, "ranges")
    )
    name = canonicalize_name(_text(one["package"], "name"))
    return Affected(name, ranges, tuple(_texts(one, "versions")))


def _events(part: dict[str, Any]) -> Iterator[tuple[str, str]]:
    for event in _list(part, "events"):
        if not isinstance(event, dict) or len(event) != 1:
            raise UnreadableError(f"not one event: {event}")
        ((kind, at),) = event.items()
        if not isinstance(at, str):
            raise UnreadableError(f"not one event: {event}")
        yield kind, at


def _within(events: tuple[tuple[str, str], ...], version: Version) -> bool:
    # as the OSV form says: in order of the versions, and the last event before this one counts
    order: list[tuple[bool, Version, str]] = []
    for kind, at in events:
        if kind not in EVENTS:
            raise UnreadableError(f"an event of kind {kind}")
        # the form's "0" stands before every version, 0.dev1 as well
        first = (kind, at) == ("introduced", "0")
        order.append((not first, _version(at), kind))
    if not any(kind == "introduced" for _, _, kind in order):
        raise UnreadableError("a range that begins nowhere")
    touched = False
    for later, bound, kind in sorted(order, key=lambda one: one[:2]):
        if kind == "introduced" and (not later or version >= bound):
            touched = True
        elif (kind == "fixed" and version >= bound) or (
            kind == "last_affected" and version > bound
        ):
            touched = False
    return touched


def _version(at: str) -> Version:
    try:
        return Version(at)
    except InvalidVersion as error:
        raise UnreadableError(f"not a version: {at}") from error


def _same(listed: str, version: Version) -> bool:
    try:
        return Version(listed) == version
    except InvalidVersion:
        # what stood on the index before versions had a form is never the one that is locked
        return False


def _has(part: Any, key: str) -> bool:
    return isinstance(part, dict) and part.get(key, "") not in NOTHING


def _text(part: Any, key: str) -> str:
    if not isinstance(part, dict) or not isinstance(part.get(key), str) or not part[key]:
        raise UnreadableError(f"no {key}")
    return str(part[key])


def _list(part: Any, key: str) -> list[Any]:
    if not isinstance(part, dict) or not isinstance(part.get(key), list):
        raise UnreadableError(f"no list {key}")
    return list(part[key])


def _optional_list(part: dict[str, Any], key: str) -> list[Any]:
    return _list(part, key) if _has(part, key) else []


def _texts(part: dict[str, Any], key: str) -> list[str]:
    found = _optional_list(part, key)
    if not all(isinstance(one, str) for one in found):
        raise UnreadableError(f"{key} holds more than texts")
    return found
