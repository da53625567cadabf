"""The families of diagnostics: the kinds of things that can be wrong."""

from __future__ import annotations

from enum import StrEnum


class Family(StrEnum):
    """What a diagnostic is about; the value is how the family's codes begin."""

    SYNTAX = "T1"
    MEANING = "T2"
    MEETING = "T3"
    CUTTING = "T4"
    STOCK = "T5"
    FILES = "T60"
    PLAN_FILE = "T63"
    NAMES = "T64"
    TABLE = "T65"
    SHARED_ORDER = "T66"
    LIST = "T67"
    LOG = "T7"

    @property
    def is_of_tables(self) -> bool:
        """Whether it is about a survey in CSV or a list of measurements, and no job file."""
        return self in (Family.TABLE, Family.LIST)

    @classmethod
    def of(cls, code: str) -> Family:
        """Return the family of a code; no other code looks into the text of a code."""
        # No value of one family begins another's: each code has exactly one.
        return next(family for family in cls if code.startswith(family.value))
