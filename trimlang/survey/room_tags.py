"""Short tags for rooms, so that a piece's id can be pencilled on its end."""

from __future__ import annotations

import re
from collections.abc import Container


def room_tag(name: str, taken: Container[str]) -> str:
    """Return a tag for a room: initials, or the first letters of a single word.

    The tag depends only on the name, so that adding another room does not change it, unless a
    room above has the same tag: then it gets a number, and the survey says so (T641).
    """
    words = re.findall(r"[^\W\d_]+|\d+", name)
    # A name of signs alone has no letters to take.
    if not words:
        tag = "R"
    elif len(words) == 1:
        tag = words[0][:2]
    else:
        tag = "".join(word if word.isdigit() else word[0] for word in words)[:4]
    tag = tag.upper()
    if tag not in taken:
        return tag
    number = 2
    while f"{tag}{number}" in taken:
        number += 1
    return f"{tag}{number}"
