"""What is said where the verifier rejects a plan; light, as every command knows it."""

from __future__ import annotations


class WrongPlanError(RuntimeError):
    """The verifier found a fault in a plan: a defect of trimlang, never of the job file."""
