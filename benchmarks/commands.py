"""How long the commands take, as multiples of ``python -c pass`` in the same run.

``python -m benchmarks.commands`` prints a table; each row is the least of many runs, taken in
turns, because the least is what a noisy machine disturbs least.  Targets: check 15, HTML and
JSON 40, PDF 1.3 times what WeasyPrint alone needs for the same HTML.
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
HOUSE = str(ROOT / "examples" / "house.trim")
ROUNDS = 12

ALONE = """
import sys
from pathlib import Path
from weasyprint import HTML
for name in sys.argv[1:]:
    HTML(filename=name).write_pdf(name + ".pdf")
"""


def _seconds(command: list[str]) -> float:
    start = time.perf_counter()
    subprocess.run(command, check=True, capture_output=True, cwd=ROOT)
    return time.perf_counter() - start


def _least(commands: dict[str, list[str]], rounds: int) -> dict[str, float]:
    least = dict.fromkeys(commands, float("inf"))
    for _ in range(rounds + 1):
        for name, command in commands.items():
            least[name] = min(least[name], _seconds(command))
    return least


def main() -> None:
    """Print the table."""
    with tempfile.TemporaryDirectory() as folder:
        out = f"{folder}/shop"
        build = [sys.executable, "-m", "trimlang", "build", HOUSE, "--out", out]
        least = _least(
            {
                "python -c pass": [sys.executable, "-c", "pass"],
                "check": [sys.executable, "-m", "trimlang", "check", HOUSE],
                "json": [*build, "--format", "json"],
                "html + json": [*build, "--format", "html", "--format", "json"],
                "html + json, quick": [*build, "--format", "html", "--plan", "quick"],
            },
            ROUNDS,
        )
        base = least["python -c pass"]
        print(f"{'command':24} {'seconds':>8} {'× pass':>8}")
        for name, seconds in least.items():
            print(f"{name:24} {seconds:8.3f} {seconds / base:8.1f}")
        subprocess.run([*build, "--format", "html"], check=True, capture_output=True)
        pages = sorted(str(path) for path in Path(out).rename(f"{folder}/html").glob("*.html"))
        pdf = _least(
            {
                "WeasyPrint alone": [sys.executable, "-c", ALONE, *pages],
                "pdf": [*build, "--format", "pdf"],
            },
            2,
        )
        alone = pdf["WeasyPrint alone"]
        for name, seconds in pdf.items():
            print(f"{name:24} {seconds:8.3f} {seconds / alone:8.2f} × WeasyPrint alone")


if __name__ == "__main__":
    main()
