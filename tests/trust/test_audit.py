"""The audit of the locked versions, on invented records, locks and answers of the index."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from packaging.version import Version

from benchmarks.audit.__main__ import LOCKS, NOT_AUDITED, SOUND, TOUCHED, UNREADABLE, main
from benchmarks.audit.lock import read_lock
from benchmarks.audit.records import UnreadableError, read_record
from tests.every import every

LOCK = """\
# exact versions and hashes
loose-nail==1.10 \\
    --hash=sha256:00 \\
    --hash=sha256:11
Spring_Level==2.0 ; sys_platform == 'win32' \\
    --hash=sha256:22
"""


def record(affected: str, *, more: str = "") -> str:
    return f"""\
id: PYSEC-0000-1
modified: 2024-03-02T01:00:00Z
aliases:
- CVE-0000-1
{more}
affected:
- package:
    ecosystem: PyPI
    name: Loose_Nail
{affected}
"""


def events(*said: str, kind: str = "ECOSYSTEM") -> str:
    rows = "".join(f"    - {one}\n" for one in said)
    return f"  - type: {kind}\n    events:\n{rows}"


def ranges(*said: str) -> str:
    return "  ranges:\n" + "".join(said)


@pytest.mark.parametrize(
    ("affected", "touched", "sound"),
    [
        pytest.param(
            ranges(events('introduced: "0"')), ["0.dev1", "0", "1.10", "99"], [], id="no fix"
        ),
        pytest.param(
            ranges(events("introduced: 1.2")), ["1.2", "1.10"], ["1.1.9", "1.2rc1"], id="begins"
        ),
        pytest.param(
            ranges(events('introduced: "0"', "fixed: 1.10")),
            ["1.9", "1.9.9", "1.10rc1", "1.10.dev2"],
            ["1.10", "1.10.post1", "1.10+local", "1.11"],
            id="fixed, and before it in early releases",
        ),
        pytest.param(
            ranges(events("introduced: 1.0", "last_affected: 1.10")),
            ["1.0", "1.10", "1.10+local"],
            ["0.9", "1.10.post1", "1.11"],
            id="last affected",
        ),
        pytest.param(
            ranges(events("fixed: 3.1", "introduced: 3.0", "fixed: 1.5", 'introduced: "0"')),
            ["1.4", "3.0", "3.0.9"],
            ["1.5", "2.9", "3.1"],
            id="twice in one range, out of order",
        ),
        pytest.param(
            ranges(
                events('introduced: "0"', "fixed: 1.5"), events("introduced: 2.0", "fixed: 2.1")
            ),
            ["1.4", "2.0"],
            ["1.5", "1.9", "2.1"],
            id="several ranges",
        ),
        pytest.param(
            "  versions:\n  - 1.10\n  - 2.0.0\n  - weird-one\n",
            ["1.10", "1.10.0", "2.0", "1.10+local"],
            ["1.1", "2.0.1", "2.0rc1"],
            id="listed, and 1.10 is not 1.1",
        ),
        pytest.param(
            ranges(events('introduced: "0"', "fixed: 1.0")) + "  versions: [1.4]\n",
            ["0.9", "1.4"],
            ["1.0", "1.3"],
            id="range or list",
        ),
        pytest.param(
            ranges(events('introduced: "0"', "limit: abc", kind="GIT")) + "  versions: [1.4]\n",
            ["1.4"],
            ["1.3"],
            id="commits say nothing",
        ),
    ],
)
def test_which_versions_are_touched(affected: str, touched: list[str], sound: list[str]) -> None:
    (said,) = read_record(record(affected)).affected
    assert said.package == "loose-nail"
    assert [one for one in touched if not said.touches(Version(one))] == []
    assert [one for one in sound if said.touches(Version(one))] == []


@pytest.mark.parametrize(
    ("affected", "why"),
    [
        ("", "neither versions nor a range"),
        (ranges(events("introduced: abc", kind="GIT")), "neither versions nor a range"),
        (ranges(events("introduced: 1.0", kind="SEMVER")), "SEMVER"),
        (ranges(events('introduced: "0"', "limit: 1.0")), "limit"),
        (ranges(events("fixed: 1.0")), "begins nowhere"),
        (ranges(events('introduced: "0"', "fixed: last Tuesday")), "last Tuesday"),
    ],
)
def test_what_cannot_be_judged_is_said(affected: str, why: str) -> None:
    (said,) = read_record(record(affected)).affected
    with pytest.raises(UnreadableError, match=why):
        said.touches(Version("1.0"))


@every(
    "text",
    [
        "",
        "- a list",
        "id: [unclosed",
        "modified: 2024-03-02T01:00:00Z\naffected: []",
        "id: PYSEC-0000-1\naffected: []",
        "id: PYSEC-0000-1\nmodified: yesterday\naffected: []",
        "id: PYSEC-0000-1\nmodified: 2024-03-02T01:00:00Z",
        "id: PYSEC-0000-1\nmodified: 2024-03-02T01:00:00Z\naffected: [loose-nail]",
        record("    more: 1").replace("    name: Loose_Nail\n", ""),
        record(ranges(events("{introduced: 1.0, fixed: 2.0}"))),
        record(ranges(events("[introduced, 1.0]"))),
        record(ranges(events("introduced: [1.0]"))),
        record("  ranges: all"),
        record("  versions: [[1.0]]"),
        record(ranges("  - type: ECOSYSTEM\n")),
    ],
)
def test_a_record_out_of_form_is_refused(text: str) -> None:
    with pytest.raises(UnreadableError):
        read_record(text)


def test_packages_of_other_systems_are_no_concern() -> None:
    text = record("  versions: [1.10]").replace("PyPI", "Debian:12")
    assert read_record(text).affected == ()
    commits = "id: A-1\nmodified: 2024-03-02T01:00:00Z\naffected:\n- ranges: []\n"
    assert read_record(commits).affected == ()


def test_a_lock_is_read_for_every_system() -> None:
    locked, unreadable = read_lock(LOCK)
    assert sorted(map(str, locked)) == ["loose-nail 1.10", "spring-level 2.0"]
    assert unreadable == ()
    strange = ["nail>=1", "nail==1.*", "nail", "nail @ https://example.org/n.whl", "-r other.txt"]
    assert read_lock("\n".join(strange)) == (frozenset(), tuple(strange))


@pytest.mark.parametrize("lock", LOCKS, ids=lambda lock: lock.name)
def test_what_builds_trimlang_is_in_the_shipped_locks(lock: Path) -> None:
    locked, unreadable = read_lock(lock.read_text(encoding="utf-8"))
    assert unreadable == ()
    assert {"hatchling", "pathspec", "editables", "jinja2"} <= {one.package for one in locked}


class Desk:
    """A lock, a folder of records and a list of explanations, and the audit over them."""

    def __init__(self, folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
        self.folder, self.capsys = folder, capsys
        (folder / "clone" / "vulns" / "nail").mkdir(parents=True)
        (folder / "lock").write_text(LOCK, encoding="utf-8")
        (folder / "explained").write_text("", encoding="utf-8")

    def put(self, name: str, text: str) -> None:
        (self.folder / "clone" / "vulns" / "nail" / name).write_text(text, encoding="utf-8")

    def audit(self, *more: str) -> tuple[int, str]:
        given = {"--advisories": "clone", "--lock": "lock", "--explained": "explained"}
        words = [word for key, at in given.items() for word in (key, str(self.folder / at))]
        status = main([*words, *more])
        return status, self.capsys.readouterr().out


@pytest.fixture
def desk(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Desk:
    return Desk(tmp_path, capsys)


FIXED_LATER = ranges(
    events('introduced: "0"', "fixed: 2.0rc1"),
    *(events(f"introduced: {n}", f"fixed: {n}.4") for n in (10, 9, 3, 1.1)),
)


def test_a_weakness_is_printed_with_all_that_helps(desk: Desk) -> None:
    desk.put("a.yaml", record(FIXED_LATER))
    desk.put("b.yaml", record("  versions: [0.1]").replace("2024-03-02", "2025-06-07"))
    desk.put("notes.txt", "no record")
    (desk.folder / "clone" / "workflow.yaml").write_text("on: push", encoding="utf-8")
    status, said = desk.audit()
    assert status == TOUCHED
    assert (
        "PYSEC-0000-1 (CVE-0000-1) touches loose-nail 1.10: fixed in 2.0rc1, 3.4, 9.4, 10.4\n"
        in said
    )
    assert "2 records, the newest of 2025-06-07" in said
    assert "0 are withdrawn, 2 name a locked package" in said
    assert "touch 1 of the 2 locked versions" in said
    assert "could not be read" not in said
    # the records' own folder will do as well
    assert desk.audit("--advisories", str(desk.folder / "clone" / "vulns")) == (status, said)


def test_a_weakness_without_a_fix_says_so(desk: Desk) -> None:
    desk.put("a.json", json.dumps({**AS_JSON, "aliases": None}))
    assert desk.audit()[1].startswith("X-1 touches spring-level 2.0: no fix is named\n")


AS_JSON = {
    "id": "X-1",
    "modified": "2024-03-02T01:00:00.123Z",
    "withdrawn": None,
    "affected": [
        {
            "package": {"ecosystem": "PyPI", "name": "spring.level"},
            "ranges": [{"type": "ECOSYSTEM", "events": [{"introduced": "0"}]}],
        }
    ],
}


def test_the_locked_version_is_no_fix_of_itself(desk: Desk) -> None:
    # listed, though its range ends before it
    both = ranges(events('introduced: "0"', "fixed: 1.10")) + "  versions: [1.10]\n"
    desk.put("a.yaml", record(both))
    assert "touches loose-nail 1.10: no fix is named\n" in desk.audit()[1]


def test_every_lock_is_audited(desk: Desk) -> None:
    other = desk.folder / "other"
    other.write_text("plumb==3.0\n", encoding="utf-8")
    desk.put("a.yaml", record("  versions: [1.10]"))
    desk.put("b.yaml", record("  versions: [3.0]").replace("Loose_Nail", "plumb"))
    _, said = desk.audit("--lock", str(other))
    assert "touch 2 of the 3 locked versions audited" in said


def test_a_withdrawn_record_touches_nothing(desk: Desk) -> None:
    desk.put("a.yaml", record(FIXED_LATER, more="withdrawn: 2024-04-01T00:00:00Z"))
    status, said = desk.audit()
    assert status == SOUND
    assert "1 are withdrawn, 0 name a locked package" in said
    assert "touch 0 of the 2 locked versions" in said


def test_an_explained_weakness_is_shown_and_passes_for_that_version_only(desk: Desk) -> None:
    desk.put("a.yaml", record(FIXED_LATER))
    row = '[[explained]]\nid = "CVE-0000-1"\npackage = "Loose.Nail"\nversion = "{}"\nwhy = "held"\n'
    (desk.folder / "explained").write_text(row.format("1.10"), encoding="utf-8")
    status, said = desk.audit()
    assert (status, "    explained: held\n" in said) == (SOUND, True)
    (desk.folder / "explained").write_text(row.format("1.9"), encoding="utf-8")
    status, said = desk.audit()
    assert (status, "explained" in said) == (TOUCHED, False)


def test_what_could_not_be_read_is_counted_and_fails(desk: Desk) -> None:
    desk.put("a.yaml", record("  versions: [0.1]"))
    desk.put("b.yaml", "id: [unclosed")
    desk.put("c.yaml", record(ranges(events("introduced: 1.0", kind="SEMVER"))))
    (desk.folder / "clone/vulns/nail/d.yaml").write_bytes(b"\xff")
    (desk.folder / "lock").write_text(LOCK + "nail>=1\n", encoding="utf-8")
    status, said = desk.audit()
    assert status == UNREADABLE
    for part in ("lock: not an exact version: nail>=1", "b.yaml", "c.yaml: a range", "d.yaml"):
        assert f"{part}" in said
    assert "4 lines or records could not be read" in said


def test_a_weakness_weighs_more_than_what_could_not_be_read(desk: Desk) -> None:
    desk.put("a.yaml", record(FIXED_LATER))
    desk.put("b.yaml", "id: [unclosed")
    assert desk.audit()[0] == TOUCHED


def test_no_record_is_no_audit(desk: Desk) -> None:
    status, said = desk.audit()
    assert status == NOT_AUDITED
    assert said.startswith("dependencies not audited: none of 2: no record")
    assert "touch" not in said


@pytest.mark.parametrize("more", [("--advisories", "/nowhere"), ("--lock", "/nowhere"), ("--huh",)])
def test_wrong_use(desk: Desk, more: tuple[str, ...]) -> None:
    with pytest.raises(SystemExit) as stop:
        desk.audit(*more)
    assert stop.value.code == UNREADABLE


def test_an_explanation_without_a_reason_is_wrong_use(desk: Desk) -> None:
    (desk.folder / "explained").write_text("[[explained]]\nid = 'X-1'\n", encoding="utf-8")
    with pytest.raises(SystemExit) as stop:
        desk.audit()
    assert stop.value.code == UNREADABLE
