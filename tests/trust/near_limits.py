"""Changes numbers in good job files to numbers near the limits where a rule turns.

Slips of letters seldom make a corner of 179.99 degrees or a piece a hair shorter than the
least: here a number's place in the line says what it is, and so where its limits are.
"""

from __future__ import annotations

import re
from random import Random
from typing import Final

from tests.trust.growing import good_files
from tests.trust.jobs_at_limits import job_at_limits, least_job, log_lines

_NUMBER: Final = re.compile(r"\d+(?:\.\d+)?(?: \d+/\d+)?(?:/\d+)?")
_ANGLES: Final = (0, 1, 2, 5, 30, 45, 60, 89, 90, 91, 135, 178, 179, 180, 270, 359, 360)
_LENGTHS: Final = (0, 1, 3, 12, 24, 29, 48, 96, 120, 144, 192, 1200, 25, 254, 600, 2440, 30480)
_COUNTS: Final = (0, 1, 2, 3, 99, 100, 999, 1000, 10000, 999999999)
_HAIRS: Final = ("", ".0", ".01", ".000001", ".5", ".499999", ".99", ".999999", ".9999999")
_FRACTIONS: Final = ("", " 1/128", " 1/64", " 1/32", " 1/16", " 15/16", " 63/64", " 127/128")
_LOG: Final = (
    "bought {count} {trim} {length} ft",
    "cut {piece}",
    "cut {piece} {length} in from {trim}-{count} of {length} ft",
    "spoiled {piece}",
    "spoiled {piece} {length} in into {length} in and {length} in from {trim}-1 of 12 ft",
    "fitted {piece}",
    "rack {trim}: {length} in, {count} of {length} in",
    "shortened {piece} to {length} in",
)


def any_near_limits(random: Random) -> tuple[str, str]:
    """Return a job with numbers near limits, and the text of its site log, which may be empty."""
    turn = random.random()
    if turn < 0.62:
        text = least_job(random)
    elif turn < 0.985:
        text = near_limits(random)
    else:
        text = job_at_limits(random)
    if random.random() < 0.8:
        return text, ""
    if random.random() < 0.5:
        return text, "".join(f"{line}\n" for line in log_lines(random, text))
    return text, "".join(f"{_log_line(text, random)}\n" for _ in range(random.randint(1, 4)))


def near_limits(random: Random) -> str:
    """Return a good job file with some of its numbers moved to a limit, or a log behind it."""
    # of three the shortest: more jobs are tried in the same time
    text = min(random.choices(good_files(), k=3), key=len)
    places = list(_NUMBER.finditer(text))
    new: dict[int, str] = {}
    for place in random.sample(places, min(len(places), random.randint(1, 4))):
        number = _moved(text[place.end() : place.end() + 6], random)
        new[place.start()] = number
        if random.random() < 0.5:
            # as long as its twin: a room whose two long walls change together still closes
            new |= {one.start(): number for one in places if one[0] == place[0]}
    for place in reversed(places):
        if (number := new.get(place.start())) is not None:
            text = text[: place.start()] + number + text[place.end() :]
    if random.random() < 0.3:
        text += "".join(f"{_log_line(text, random)}\n" for _ in range(random.randint(1, 5)))
    return text


def _moved(behind: str, random: Random) -> str:
    if behind.lstrip().startswith(("deg", "°")):
        return f"{_below(random.choice(_ANGLES), random)}"
    if behind.lstrip().startswith(("in", "ft", "mm", '"', "'")):
        if random.random() < 0.5:
            return f"{random.choice(_LENGTHS)}{random.choice(_FRACTIONS)}"
        return _below(random.choice(_LENGTHS), random)
    return str(random.choice(_COUNTS)) + random.choice(("", "", *_HAIRS))


def _below(limit: int, random: Random) -> str:
    """Write a number a hair above a limit, or a hair below."""
    return f"{max(limit - random.randint(0, 1), 0)}{random.choice(_HAIRS)}"


def _log_line(text: str, random: Random) -> str:
    trims = re.findall(r"^trim (\S+):", text, re.M) or ["base"]
    runs = re.findall(r"^\s+(\w+):", text, re.M) or ["N"]
    tags = re.findall(r'^room ".*?" as (\w+)', text, re.M) or ["ST", "R"]
    trim = random.choice(trims)
    return random.choice(_LOG).format(
        count=random.choice(_COUNTS[:4]),
        length=f"{random.choice(_LENGTHS)}{random.choice(_FRACTIONS)}",
        trim=trim,
        piece=f"{random.choice(tags)}-{random.choice(runs)}-{trim}",
    )
