"""Makes the pictures of docs/sheets.md from the shipped house, and the README's from its own job.

    python docs/make_pictures.py

Needs pdftoppm (Debian: poppler-utils) and Pillow.  What each was made from is written down
beside them, so that a test can tell without drawing whether they still show today's sheets.
"""

from __future__ import annotations

import subprocess
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path

from PIL import Image, ImageChops, ImageOps

from trimlang.compiler import Result, check_job, compile_job
from trimlang.shared_order.flat import flats
from trimlang.shared_order.shared_plan import plan_together
from trimlang.sheets.render.pages import render_sheets
from trimlang.sheets.render.pdf import to_pdf

HERE = Path(__file__).resolve().parent
FOLDER = HERE / "pictures"
EXAMPLES = HERE.parent / "examples"
JOB = EXAMPLES / "house.trim"
README = HERE.parent / "README.md"
MADE_FROM = FOLDER / "made-from.txt"
PAGES = {"checklist": 2, "elevations": 3}
"""The page to show, where it is not the first."""
GREYS = 16

_ALONE = """
@page {{ @top-left {{ content: none }} @top-right {{ content: none }}
  @bottom-left {{ content: none }} @bottom-right {{ content: none }} }}
body {{ visibility: hidden }}
{part} {{ visibility: visible }}
{other} {{ display: none }}
"""
PARTS = {
    "one-ticket": ("tickets", '[data-piece="KI-N2-base"]', ".how"),
    "one-stick": (
        "stick-layouts",
        ".stick",
        ".stick:not(:first-of-type), main > section:not(:first-of-type)",
    ),
}
"""The README's pictures: the sheet, what of it is to be seen, and what else would show through."""
MARGIN = 8
"""White round what is cut out, in dots."""


@dataclass(frozen=True)
class Picture:
    """A page to draw: as it is, or cut down to its ink; ``dots`` to the inch."""

    name: str
    html: str
    page: int = 1
    dots: int = 80
    cut_out: bool = False

    @property
    def made_from(self) -> str:
        """What tells one picture from another."""
        told = f"{self.page} {self.dots} {self.cut_out}\n{self.html}"
        return sha256(told.encode()).hexdigest()[:16]


def pictures(house: Result | None = None) -> Iterator[Picture]:
    """Yield all pictures, none of them drawn yet; ``house`` spares a second compile of it."""
    result = house or compile_job(JOB.read_text(encoding="utf-8"), path=JOB)
    sheets = render_sheets(result)
    sheets["label"] = render_sheets(result, ticket="100mm x 60mm")["tickets"]
    for name, html in sheets.items():
        yield Picture(name, html, page=PAGES.get(name, 1))
    yield Picture("tickets-changed", changed_tickets())
    yield Picture("flats", flats_and_sticks())
    own = render_sheets(compile_job(readme_job()))
    for name, (sheet, part, other) in PARTS.items():
        alone = _ALONE.format(part=part, other=other)
        html = own[sheet].replace("</head>", f"<style>{alone}</style></head>", 1)
        yield Picture(name, html, dots=120, cut_out=True)


def changed_tickets() -> str:
    """Return the tickets that a site log has changed."""
    job = EXAMPLES / "site-log.trim"
    result = compile_job(job.read_text(encoding="utf-8"), path=job)
    return render_sheets(result, only=("tickets-changed",))["tickets-changed"]


def flats_and_sticks() -> str:
    """Return the sheet of a site: three flats with the same room, bought together."""
    room = check_job((EXAMPLES / "one-room.trim").read_text(encoding="utf-8"))
    shared = plan_together(flats((f"flat-{number}.trim", room) for number in (1, 2, 3)))
    return render_sheets(shared.result, only=("flats",), shared=shared)["flats"]


def readme_job() -> str:
    """Return the job that the README shows."""
    parts = README.read_text(encoding="utf-8").split("```")
    return next(part for part in parts if "trim base:" in part)


def draw(picture: Picture) -> None:
    """Write a picture as docs/pictures/NAME.png."""
    with tempfile.TemporaryDirectory() as folder:
        source = Path(folder) / "sheet.pdf"
        source.write_bytes(to_pdf(picture.html))
        how = (
            f"pdftoppm -r {picture.dots} -gray -png -f {picture.page} -l {picture.page}"
            " -singlefile sheet.pdf sheet"
        )
        subprocess.run(how.split(), cwd=folder, check=True)  # noqa: S603
        with Image.open(source.with_suffix(".png")) as drawn:
            shown = _cut_out(drawn) if picture.cut_out else drawn
            FOLDER.mkdir(exist_ok=True)
            shown.quantize(GREYS).save(FOLDER / f"{picture.name}.png", optimize=True)


def _cut_out(drawn: Image.Image) -> Image.Image:
    """Cut a drawing down to its ink, and a little white round it."""
    grey = drawn.convert("L")
    return ImageOps.expand(grey.crop(ImageChops.invert(grey).getbbox()), MARGIN, fill=255)


if __name__ == "__main__":
    made = list(pictures())
    for each in made:
        draw(each)
    lines = [f"{each.name} {each.made_from}\n" for each in made]
    MADE_FROM.write_text("".join(lines), encoding="utf-8")
