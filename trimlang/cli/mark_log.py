"""The log that ``trimlang mark`` writes to, and its last line taken back."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Final

from trimlang.cli.one_job import complained, read_job
from trimlang.cli.options import MarkOptions
from trimlang.cli.replies import CLEAN, WRONG_USAGE, MessageOptions, complain, tell_done
from trimlang.diagnostics.message_form import MessageForm
from trimlang.output.one_file import is_one_of, replace_file
from trimlang.reading import log_beside

_LINES: Final = re.compile(r"[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+")


def log_of(options: MarkOptions) -> Path:
    """Return the path of the log, whether it exists or not: mostly a file in the job's folder.

    Raises:
        StopError: it cannot be the log; the reason has been printed.
    """
    path = Path(options.job)
    log_path = options.log or log_beside(path)
    try:
        inside = log_path.resolve().is_relative_to(path.resolve().parent)
    except (OSError, RuntimeError):  # RuntimeError before Python 3.13
        raise complained(WRONG_USAGE, f"{log_path} is a link that leads nowhere") from None
    # A link could make this command write anywhere on the machine.
    if options.log is None and not inside:
        text = f"{log_path} is a link that leads out of the job's folder"
        raise complained(WRONG_USAGE, text)
    if log_path.exists() and not log_path.is_file():
        raise complained(WRONG_USAGE, f"{log_path} is no file")
    if options.file and is_one_of(log_path, (Path(options.file),)):
        text = f"{options.file} is the log itself; its lines would stand there twice"
        raise complained(WRONG_USAGE, text)
    if is_one_of(log_path, [Path(one) for one in (options.job, *options.others)]):
        text = f"{log_path} is a job file; name a log, such as order.site"
        raise complained(WRONG_USAGE, text)
    return log_path


def take_back(log_path: Path, form: MessageForm) -> int:
    """Take the last line that is not only a comment out of the log."""
    log = ""
    if log_path.exists():
        log = read_job(str(log_path), MessageOptions(form=form))[0]
    lines = _LINES.findall(log)
    said = [at for at, line in enumerate(lines) if line.partition("#")[0].strip()]
    if not said:
        complain(f"{log_path} has no line that could be taken back")
        return WRONG_USAGE
    # Only comments stand behind it, and they stay.
    gone = lines.pop(said[-1])
    try:
        replace_file(log_path, "".join(lines).encode("utf-8"))
    except OSError as error:
        complain(f"cannot write the log: {(error.strerror or str(error)).lower()}")
        return WRONG_USAGE
    tell_done(f"taken back: {gone.strip()}\n", log_path)
    return CLEAN
