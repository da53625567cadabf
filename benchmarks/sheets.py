"""Measure how the sheets grow with the job: ``python -m benchmarks.sheets``.

One invented trim of so many pieces, planned without a proof; then all six
sheets as HTML, and all six as PDF, in seconds of one core.  Beside each stands
the time for a piece against that of the first row.

``python -m benchmarks.sheets --floor examples/house.trim``: what a job's PDFs take, and
what the same texts take as plain paragraphs, with no looks, drawings or tables.
"""

import argparse
from collections.abc import Iterator
from html import escape
from pathlib import Path
from time import process_time
from xml.etree.ElementTree import Element

from trimlang.compiler import Result, compile_job
from trimlang.sheets.render.page_tree import SVG, page_tree
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.pdf import ready, to_pdf
from trimlang.stock.planner import QUICK

MOST_SECONDS = 180.0
"""A PDF that would take longer, by the row before, is not made."""


def job(pieces: int) -> Result:
    """So many runs, four to a room, fewer in the last where it does not come out."""
    lines = [
        'job "Long row"',
        "trim base: 1/2 in thick, 4 in tall",
        "stock base: 12 ft at 16.00, 16 ft at 20.00",
    ]
    for number in range(pieces):
        room, wall = divmod(number, 4)
        if wall == 0:
            lines.append(f'room "Room {room}" as R{room}, trim base, open walk')
        size = 40 + (room * 7 + wall) % 50
        lines.append(f"  {'NESW'[wall]}: {size} in, left=in-corner, right=in-corner")
    result = compile_job("\n".join(lines), name="row.trim", effort=QUICK)
    assert result.ok, result.diagnostics
    assert len(result.pieces) == pieces
    return result


def texts(element: Element) -> Iterator[str]:
    """Yield each stretch of text that a page's layout is given by itself, but for drawings'."""
    if element.tag == f"{SVG}svg":
        return
    yield (element.text or "").strip()
    for child in element:
        yield from texts(child)
        yield (child.tail or "").strip()


def plain(html: str) -> str:
    """Return a page's texts as paragraphs, in the one look that they need to be read."""
    tree = page_tree(html)
    body = tree.find("body") if tree is not None else None
    assert body is not None
    paragraphs = "".join(f"<p>{escape(text)}</p>" for text in texts(body) if text)
    look = "html { font: 7pt/1.1 'DejaVu Sans'; } p { margin: 0; }"
    head = f"<title>plain</title><style>{look}</style>"
    return f'<!DOCTYPE html>\n<html lang="en"><head>{head}</head><body>{paragraphs}</body></html>'


def seconds(html: str) -> float:
    start = process_time()
    to_pdf(html)
    return process_time() - start


def floor(file: Path) -> None:
    """Print what each sheet's PDF takes beside its texts alone."""
    sheets = render_sheets(compile_job(file.read_text(encoding="utf-8"), path=file, effort=QUICK))
    ready(sheets["checklist"].partition("<style>")[2].partition("</style>")[0])
    sums = [0.0, 0.0]
    print(f"{'sheet':16} {'PDF s':>8} {'plain s':>8}")
    for name, html in sheets.items():
        pair = [min(seconds(page) for _ in range(2)) for page in (html, plain(html))]
        sums = [before + now for before, now in zip(sums, pair, strict=True)]
        print(f"{name:16} {pair[0]:8.2f} {pair[1]:8.2f}", flush=True)
    print(f"{'all':16} {sums[0]:8.2f} {sums[1]:8.2f}")


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--floor", type=Path, metavar="JOB.trim")
    parser.add_argument("--pieces", type=int, nargs="+", default=[10, 100, 1000])
    choices = parser.parse_args()
    if choices.floor is not None:
        floor(choices.floor)
        return
    to_pdf(render_sheets(job(4))["checklist"])  # loads what is loaded once
    print(f"{'pieces':>6} {'HTML s':>8} {'a piece':>8} {'PDF s':>8} {'a piece':>8}")
    first_html = first_pdf = 0.0
    before: tuple[int, float] | None = None
    for pieces in choices.pieces:
        result = job(pieces)
        start = process_time()
        sheets = render_sheets(result)
        html = process_time() - start
        first_html = first_html or html / pieces
        row = f"{pieces:6} {html:8.3f} {html / pieces / first_html:7.2f}x"
        if before is not None and before[1] * pieces / before[0] > MOST_SECONDS:
            print(f"{row}   no PDF: it would take more than {MOST_SECONDS:g} s", flush=True)
            continue
        start = process_time()
        for sheet in sheets.values():
            to_pdf(sheet)
        pdf = process_time() - start
        before = pieces, pdf
        first_pdf = first_pdf or pdf / pieces
        print(f"{row} {pdf:8.2f} {pdf / pieces / first_pdf:7.2f}x", flush=True)


if __name__ == "__main__":
    main()
