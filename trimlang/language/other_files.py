"""Tells files of another kind, which were named instead of a job file.

Their lines would bring up two hundred mistakes of which none says what is wrong.
"""

from __future__ import annotations

import re
from typing import Final

from trimlang.record import record

_OF_A_JOB: Final = "Name the job file itself, which ends in .trim."


@record
class OtherKind:
    """A kind of file that is no job: how it begins, what it is called, what to do instead."""

    begins: re.Pattern[str]
    what: str
    remedy: str = _OF_A_JOB


# The heading of a survey in columns, which names at least the room and the length.
TABLE: Final = OtherKind(
    re.compile(r"(?=.*\broom\b)(?=.*\blength\b)[\w ]+(?:[,;\t][\w ]*){2,}\r?(?:\n|$)"),
    "a table (CSV)",
    "Make a job file of it first: trimlang convert {name} job.trim.",
)
# No line of a job file begins like any of these.  A brace alone may be a slip, and is none of them.
_KINDS: Final = (
    OtherKind(re.compile(r'\s*[{\[]\s*["{\[}\]]'), "JSON, such as a plan.json"),
    OtherKind(re.compile(r"\s*<(?:!doctype|html|\?xml|svg)\b", re.I), "a web page or a drawing"),
    OtherKind(re.compile(r"%PDF-"), "a PDF"),
    OtherKind(re.compile(r"(?:\s*999\s*\n.*\n)?\s*0\s*\n\s*SECTION\b"), "a drawing (DXF)"),
    TABLE,
)


def other_kind(text: str) -> OtherKind | None:
    """Return what kind of file a text is where it is no job file at all."""
    return next((kind for kind in _KINDS if kind.begins.match(text)), None)
