"""The sheets' names and titles."""

from __future__ import annotations

from typing import Final

from trimlang.marking import N_

TITLES: Final = {
    "tickets": N_("Cut tickets"),
    "stock-order": N_("Stock order"),
    "checklist": N_("Checklist"),
    "stick-layouts": N_("Stick layouts"),
    "saw-sheet": N_("Saw sheet"),
    "floor-plan": N_("Floor plan"),
}
SITE_TITLES: Final = {**TITLES, "flats": N_("Flats and sticks")}
"""The sheets of several jobs that are bought together have one more."""

CHANGED: Final = "tickets-changed"
"""One more sheet of a job under way: the tickets again, only those that changed."""
CHANGED_TITLE: Final = N_("Cut tickets that changed")

INDEX: Final = "index"
"""The page to open first; it is made last, when all the files are known that it leads to."""
INDEX_TITLE: Final = N_("The job at a glance")
