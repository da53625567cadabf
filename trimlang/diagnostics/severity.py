"""How much a finding matters."""

from enum import StrEnum


class Severity(StrEnum):
    """An error stops the sheets; a warning is printed and the sheets are made."""

    ERROR = "error"
    WARNING = "warning"
