"""How much a finding matters."""

from enum import StrEnum


class Severity(StrEnum):
    """Errors stop the sheets; warnings are printed with them."""

    ERROR = "error"
    WARNING = "warning"
