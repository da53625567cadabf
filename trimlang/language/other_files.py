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
    """A kind of file that is no job: a pattern of how it begins, its name, what to do instead."""

    begins: str
    what: str
    remedy: str = _OF_A_JOB


# The heading of a survey in columns, which names at least the room and the length.
TABLE: Final = OtherKind(
    r"(?=.*\broom\b)(?=.*\blength\b)[\w ]+(?:[,;\t][\w ]*){2,}\r?(?:\n|$)",
    "a table (CSV)",
    "Make a job file of it first: trimlang convert {name} job.trim.",
)
# No line of a job file begins like any of these.  A brace alone may be a slip, and is none of them.
_KINDS: Final = (
    OtherKind(r'\s*[{\[]\s*["{\[}\]]', "JSON, such as a plan.json"),
    OtherKind(r"(?i)\s*<(?:!doctype|html|\?xml|svg)\b", "a web page or a drawing"),
    OtherKind(r"%PDF-", "a PDF"),
    OtherKind(r"(?:\s*999\s*\n.*\n)?\s*0\s*\n\s*SECTION\b", "a drawing (DXF)"),
    TABLE,
)


def other_kind(text: str) -> OtherKind | None:
    """Return what kind of file a text is where it is no job file at all."""
    # Many job files begin with a remark, and no other kind does: then nothing is to be compiled.
    if text.startswith("#"):
        return None
    return next((kind for kind in _KINDS if re.match(kind.begins, text)), None)
