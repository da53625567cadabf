"""What is raised where a verifier rejects a plan; it loads fast, as every command imports it."""

from __future__ import annotations

from collections.abc import Sequence


class WrongPlanError(RuntimeError):
    """A verifier found faults in a plan: a defect of trimlang, never of the job file.

    ``trim`` is the trim's name, ``faults`` what is wrong with its plan, a phrase each.
    """

    def __init__(self, trim: str, faults: Sequence[str]) -> None:
        super().__init__(trim, tuple(faults))
        self.trim = trim
        self.faults = tuple(faults)

    def __str__(self) -> str:
        return f"{self.trim}: {'; '.join(self.faults)}"


def reject_faults(trim: str, faults: Sequence[str]) -> None:
    """Go on where the verifier found no faults in the plan of a trim.

    Raises:
        WrongPlanError: it found some.
    """
    if faults:
        raise WrongPlanError(trim, faults)
