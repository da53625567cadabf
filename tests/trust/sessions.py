"""What somebody does with a job file, command after command or two at once: grown from a seed."""

from __future__ import annotations

import json
from dataclasses import dataclass
from random import Random
from typing import Final, TypeAlias

from tests.trust.growing import any_file, slipped
from tests.trust.jobs_at_limits import job_at_limits, log_lines
from tests.trust.near_limits import near_limits

Command: TypeAlias = tuple[str, ...]
RENAME: Final = "rename"
"""Stands for a rename in the editor: which of the names, and the new one."""


@dataclass(frozen=True)
class Session:
    """Files in a folder, and the commands given there; those of one step run at once."""

    files: dict[str, str]
    steps: tuple[tuple[Command, ...], ...]

    def written(self) -> str:
        """Return it as a text that ``read_session`` reads."""
        return json.dumps({"files": self.files, "steps": self.steps}, indent=1, ensure_ascii=False)


def read_session(text: str) -> Session:
    """Return a session that was written down."""
    said = json.loads(text)
    steps = tuple(tuple(tuple(command) for command in step) for step in said["steps"])
    return Session(said["files"], steps)


def grown_session(random: Random) -> Session:
    """Return a job, and one to three steps with it."""
    text = _job(random)
    files = {"job.trim": text}
    if random.random() < 0.25:
        files["old.trim"] = slipped(text, random) if random.random() < 0.3 else _near(text, random)
    if random.random() < 0.2:
        log = "\n".join(log_lines(random, text, 6)) + random.choice(("\n", "\n", ""))
        files["job.site"] = slipped(log, random) if random.random() < 0.2 else log
    if random.random() < 0.1:
        files["survey.csv"] = _table(random)
    steps = [
        _at_once(random, text) if random.random() < 0.06 else (any_command(random, files),)
        for _ in range(random.choice((1, 1, 2, 3)))
    ]
    return Session(files, tuple(steps))


def _job(random: Random) -> str:
    turn = random.random()
    if turn < 0.7:
        return job_at_limits(random)
    if turn < 0.85:
        return near_limits(random)
    return slipped(job_at_limits(random) if turn < 0.93 else any_file(random), random)


def _near(text: str, random: Random) -> str:
    """Return a version of a job with one number of it changed, or a line left out."""
    lines = text.splitlines()
    at = random.randrange(len(lines))
    if random.random() < 0.3:
        del lines[at]
    else:
        lines[at] = lines[at].replace(random.choice("123456789"), random.choice("0123456789"), 1)
    return "\n".join(lines) + "\n"


def _table(random: Random) -> str:
    """Return a survey as a table, with slips."""
    rows = ["room,wall,length,left,right,note"]
    for room in ("Study", "Hall")[: random.randint(1, 2)]:
        for run in "NESW"[: random.randint(1, 4)]:
            length = random.choice(
                ("40", "40 1/8 in", "12'", "2.740", "2,740", "1e3", "-1", "0", "")
            )
            ends = (
                random.choice(("in-corner", "out-corner", "butt", "=1+1", "in", "")) for _ in "lr"
            )
            rows.append(
                f'"{room}",{run},{length},{",".join(ends)},{random.choice(("", "a", "＝1"))}'
            )
    text = "\r\n".join(rows) + "\r\n"
    return slipped(text, random) if random.random() < 0.5 else text


def _at_once(random: Random, text: str) -> tuple[Command, ...]:
    """Return commands of which none may undo another."""
    kinds = (
        ("mark", "--anyway", "job.trim", *log_lines(random, text, 2)),
        ("mark", "job.trim", "bought 1 base 12 ft at 17.40", "--anyway"),
        ("mark", "job.trim", "--undo"),
        ("tidy", "job.trim"),
        ("build", "job.trim", "--plan", "quick", "--format", random.choice(("json", "csv"))),
        ("convert", "job.trim", "once.csv"),
        ("start", "once"),
        (RENAME, str(random.randrange(30)), random.choice(NAMES)),
    )
    return tuple(random.choices(kinds, (4, 6, 2, 3, 3, 1, 1, 2), k=random.choice((2, 2, 3))))


NAMES: Final = ("skirt", "A1", "7", "in", "Study", "a b", "", "R", "base", "ÉÉ", "N")
_WEIGHTS: Final = {
    "check": 30, "json": 14, "csv": 6, "dxf": 2, "html": 1.2, "pdf": 0.1, "full": 1, "tidy": 10,
    "look": 5, "mark": 14, "undo": 3, "pin": 2, "convert": 7, "back": 5, "compare": 7, "rename": 8,
    "start": 1, "explain": 0.5, "other": 1,
}  # fmt: skip


def any_command(random: Random, files: dict[str, str]) -> Command:
    """Return a command on these files."""
    kind = random.choices(tuple(_WEIGHTS), tuple(_WEIGHTS.values()))[0]
    if kind in ("json", "csv", "dxf", "html", "pdf", "full"):
        return _build(kind, random)
    old = "old.trim" if "old.trim" in files else "job.trim"
    table = "survey.csv" if "survey.csv" in files else "job.csv"
    form = random.choice(("text", "json"))
    return {
        "check": ("check", "job.trim", "--messages", form),
        "tidy": ("tidy", *random.choice((("job.trim",), ("job.trim",), ("job.trim", "job.site")))),
        "look": ("tidy", random.choice(("--check", "--diff", "--print")), "job.trim"),
        "mark": _mark(random, files["job.trim"]),
        "undo": ("mark", "job.trim", "--undo"),
        "pin": ("mark", "job.trim", "--pin"),
        "convert": ("convert", "job.trim", "job.csv", *random.choice(((), ("--force",)))),
        "back": ("convert", table, "back.trim", *random.choice(((), ("--include", "prices.trim")))),
        "compare": ("compare", old, "job.trim", "--plan", "quick", "--form",
                    random.choice(("text", "text", "json", "html")), *_cut(random)),
        "rename": (RENAME, str(random.randrange(30)), random.choice(NAMES)),
        "start": ("start", random.choice(("fresh", "job.trim", "ä b.trim", "a\nb", "deep/er"))),
        "explain": ("explain", random.choice(("T101", "T999", "", "x\x1b"))),
        "other": random.choice(_OTHERS),
    }[kind]  # fmt: skip


_OTHERS: Final = (
    ("check", "nowhere.trim"), ("check", "."), ("build", "job.trim", "--out", "job.trim"),
    ("check", "job.trim", "job.trim"), ("mark", "job.trim"), ("compare", "job.trim"),
    ("convert", "job.trim", "."), ("tidy", "."), ("check", "a\x00b"), ("check", "\udcff.trim"),
    ("build", "job.trim", "--format", "json", "--out", "\udcff", "--plan", "quick"),
    ("start", "\udcff.trim"), ("convert", "job.trim", "\udcff.csv"), ("tidy", "a" * 300),
    ("build", "job.trim", "--format", "json", "--plan", "quick", "--out", "."),
)  # fmt: skip


def _build(kind: str, random: Random) -> Command:
    if kind == "full":
        return ("build", "job.trim", "--format", "json", "--plan-seconds", "0.3")
    more: Command = ()
    if random.random() < 0.3:
        more = random.choice(
            (("--show", "mm"), ("--show", "in"), ("--paper", "a4"), ("--ticket", "100mm x 50mm"),
             ("--no-codes",), ("--language", "es"), ("--ticket", "1mm x 1mm"), ("--language", "xx"))
        )  # fmt: skip
    return ("build", "job.trim", "--plan", "quick", "--format", kind, *more)


def _mark(random: Random, text: str) -> Command:
    lines = log_lines(random, text)
    if random.random() < 0.1:
        lines = tuple(slipped(line or "cut", random) for line in lines)
    lines = tuple(line for line in lines if not line.startswith("-"))
    return ("mark", *random.choice(((), ("--anyway",), ("--pin",))), "job.trim", *lines)


def _cut(random: Random) -> Command:
    return (
        ("--cut", random.choice(("R-N-base", "r-n-base,R-E-base", "x")))
        if random.random() < 0.3
        else ()
    )
