"""Measure how the sheets grow with the job: ``python -m benchmarks.sheets``.

One invented trim of so many pieces, planned without a proof; then all six
sheets as HTML, and all six as PDF, in seconds of one core.  Beside each stands
the time for a piece against that of the first row.
"""

import argparse
from time import process_time

from trimlang.compiler import Result, compile_job
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.pdf import to_pdf
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


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--pieces", type=int, nargs="+", default=[10, 100, 1000])
    choices = parser.parse_args()
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
