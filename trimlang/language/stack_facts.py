"""How trims go up together: one on the face of another, or on its top."""

from __future__ import annotations

from trimlang.diagnostics import Span
from trimlang.language.written import Word
from trimlang.record import record


@record
class InFrontOf:
    """``in front of base``."""

    trim: Word
    span: Span


@record
class StandsOn:
    """``on base``: a cap that lies on the top of another trim, against the wall."""

    trim: Word
    span: Span


@record
class AssemblyMember:
    """``shoe in front of base``: a trim of an assembly, and what it stands in front of or on."""

    trim: Word
    stands: InFrontOf | StandsOn | None
    span: Span
