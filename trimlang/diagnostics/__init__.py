"""What trimlang says about a job file: codes, places, causes and remedies."""

from trimlang.diagnostics.diagnostic import Diagnostic, Span, has_errors, say
from trimlang.diagnostics.severity import Severity

__all__ = ["Diagnostic", "Severity", "Span", "has_errors", "say"]
