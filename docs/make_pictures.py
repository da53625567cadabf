"""Makes the pictures of docs/sheets.md from a shipped example.

    python docs/make_pictures.py

Needs pdftoppm (Debian: poppler-utils) and Pillow.
"""

from __future__ import annotations

import subprocess
import tempfile
from pathlib import Path

from PIL import Image

from trimlang.compiler import compile_job
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.pdf import to_pdf

HERE = Path(__file__).resolve().parent
JOB = HERE.parent / "examples" / "house.trim"
PAGES = {"checklist": 2}
"""The page to show, where it is not the first."""
GREYS = 16


def make() -> None:
    """Write docs/pictures/*.png."""
    result = compile_job(JOB.read_text(encoding="utf-8"), path=JOB)
    sheets = render_sheets(result)
    sheets["label"] = render_sheets(result, ticket="100mm x 50mm")["tickets"]
    for name, html in sheets.items():
        _picture(to_pdf(html), HERE / "pictures" / f"{name}.png", PAGES.get(name, 1))


def _picture(pdf: bytes, target: Path, page: int) -> None:
    with tempfile.TemporaryDirectory() as folder:
        source = Path(folder) / "sheet.pdf"
        source.write_bytes(pdf)
        how = f"pdftoppm -r 80 -gray -png -f {page} -l {page} -singlefile sheet.pdf sheet"
        subprocess.run(how.split(), cwd=folder, check=True)  # noqa: S603
        target.parent.mkdir(exist_ok=True)
        with Image.open(source.with_suffix(".png")) as picture:
            picture.quantize(GREYS).save(target, optimize=True)


if __name__ == "__main__":
    make()
