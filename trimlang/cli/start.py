"""``trimlang start``: writes a commented job file to begin from."""

from __future__ import annotations

import codecs
from datetime import date
from pathlib import Path

from trimlang.cli.options import StartOptions
from trimlang.cli.replies import CLEAN, WRONG_USAGE, complain, print_whole, tell_done
from trimlang.diagnostics.source import Source
from trimlang.language.room_skeleton import RoomThereError, with_room
from trimlang.output.lock import alone_in
from trimlang.output.one_file import new_file, replace_file
from trimlang.reading import UnreadableError, decode
from trimlang.resources import folder


def start(options: StartOptions) -> int:
    """Write the file; return the exit code."""
    path = Path(options.file)
    if options.file != "-" and not path.suffix:
        path = path.with_suffix(".trim")
    if options.room is not None:
        return _add_room(path, options.room)
    # Local time, not UTC: a survey is dated where it is made.
    today = date.today().isoformat()
    data = first_file("New job" if options.file == "-" else path.stem, today, options.metric)
    if options.file == "-":
        print_whole(data)
        return CLEAN
    try:
        new_file(path, data.encode("utf-8"))
    except FileExistsError:
        complain(f"{path} is there already; name another file")
        return WRONG_USAGE
    except (OSError, ValueError) as error:
        complain(f"cannot write {path}: {(getattr(error, 'strerror', None) or str(error)).lower()}")
        return WRONG_USAGE
    tell_done(f"{path} is written; put your own walls into it, then: trimlang check {path}\n", path)
    return CLEAN


def _add_room(path: Path, name: str) -> int:
    """Add a room to a job file, with its folder locked from reading to writing."""
    called = " ".join("".join(sign for sign in name if sign not in '"“”').split())
    if not called or not called.isprintable():
        complain("a room needs a name")
        return WRONG_USAGE
    if str(path) == "-":
        complain("a room is added to a file; name one")
        return WRONG_USAGE
    try:
        with alone_in(path.resolve().parent):
            data = path.read_bytes()
            # What reads the mark at the front expects it back.
            mark = codecs.BOM_UTF8 if data.startswith(codecs.BOM_UTF8) else b""
            text = with_room(Source(path.name, decode(data, path.name)), called)
            replace_file(path, mark + text.encode("utf-8"))
    except RoomThereError:
        complain(f"{path} has a room “{called}” already")
        return WRONG_USAGE
    except UnreadableError as error:
        complain(f"{path} cannot be read as a job file ({error.code})")
        return WRONG_USAGE
    except OSError as error:
        complain(f"cannot add to {path}: {(error.strerror or str(error)).lower()}")
        return WRONG_USAGE
    tell_done(f"room “{called}” is in {path}; put your own walls into it\n", path)
    return CLEAN


def first_file(name: str, today: str, metric: bool) -> str:
    """Return the text of a job named after the file ``name``, surveyed on ``today``."""
    shipped = folder("templates") / "start" / ("metric.trim" if metric else "inch.trim")
    # A file's name may hold quotes or control characters; in the job file they would be a mistake.
    called = "".join(sign for sign in name if sign.isprintable() and sign not in '"“”')
    called = " ".join(called.replace("-", " ").replace("_", " ").split()) or "New job"
    text = shipped.read_text(encoding="utf-8")
    return text.replace("New job", called, 1).replace("2026-01-01", today, 1)
