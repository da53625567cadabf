"""Makes ``docs/diagnostics.md`` from the pages; a test compares the file with them."""

from __future__ import annotations

from trimlang.diagnostics.code_pages import PAGES


def reference() -> str:
    """Return the reference of all diagnostics as Markdown."""
    parts = [
        "# Diagnostics\n",
        "*For anyone who got a message and wants to know what it means and what to do.*\n",
        "Every message of trimlang, by code. Made from the pages in `trimlang/diagnostics/`;",
        "`trimlang explain CODE` prints the same. T1xx: the line cannot be read; T2xx: what it",
        "says cannot be so; T3xx: two walls do not meet; T4xx: a piece cannot be cut; T5xx: the",
        "stock is not enough; T6xx: a file cannot be read; T7xx: the site log contradicts itself",
        "or the job.",
    ]
    for page in sorted(PAGES.values(), key=lambda page: page.code):
        parts += [
            f"\n## {page.code}: {page.title}\n",
            f"*{page.severity.value}*: {page.message}.\n",
        ]
        parts += [f"Remedy: {page.remedy}\n", page.why]
        # The example of a line that is too long is one: `trimlang explain` prints it.
        if page.example and len(page.example) < 600:
            parts += ["\n```", page.example.rstrip(), "```"]
    return "\n".join(parts) + "\n"
