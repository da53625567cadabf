"""What trimlang says is wrong with a job file: codes, places, causes and remedies."""

from trimlang.diagnostics.diagnostic import Diagnostic, Span, has_errors, say
from trimlang.diagnostics.severity import Severity
from trimlang.diagnostics.whole import Whole

__all__ = ["Diagnostic", "Severity", "Span", "Whole", "has_errors", "say"]
