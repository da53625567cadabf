"""The error for a plan that a verifier rejects; quick to import, as every command does."""

from __future__ import annotations


class WrongPlanError(RuntimeError):
    """A verifier found a fault in a plan: a defect in trimlang, never in the job file."""
