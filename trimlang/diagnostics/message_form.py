"""The ways in which diagnostics are written."""

from enum import StrEnum


class MessageForm(StrEnum):
    """For people with line and caret, or for programs as a JSON object a line."""

    TEXT = "text"
    JSON = "json"
