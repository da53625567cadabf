"""The forms in which diagnostics are printed."""

from enum import StrEnum


class MessageForm(StrEnum):
    """Text for people, with the line and a caret, or one JSON object a line for programs."""

    TEXT = "text"
    JSON = "json"
